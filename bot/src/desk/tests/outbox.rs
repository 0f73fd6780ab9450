//! The program ends while words to people are on their way: none is lost, and none comes twice where the chat
//! can find out that it got through.

use super::*;

/// A club in a chat that sends verdicts, with a post open, and the post.
async fn sending() -> (Club, PostId) {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.place = Place {
        chat: DISCORD,
        channel: "7".into(),
    };
    club.found(&club.place, chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.desk
        .coach()
        .post_now(&club.place, &club.coach, None)
        .await
        .expect("noted");
    let errand = errand_in(&club.desk, DISCORD).await.expect("the post");
    club.carried(&errand).await;
    let post = club.desk.posts(&club.place, 1).await.expect("read")[0].post;
    (club, post)
}

async fn wrong(club: &Club, post: PostId, source: &str) -> VerdictSheet {
    club.desk
        .member()
        .answer(&club.place, &person("Ana"), post, source, "Ra7")
        .await
        .expect("judged")
}

#[tokio::test]
async fn a_verdict_that_did_not_arrive_is_told_at_the_next_start_once() {
    let (mut club, post) = sending().await;
    let sheet = wrong(&club, post, "m1").await;
    assert_eq!(sheet.verdict(), Verdict::Wrong);

    club.restart();
    let told = errand_in(&club.desk, DISCORD).await.expect("the verdict");
    assert_eq!(said(&told), format!("u-Ana: {}", in_words(&sheet.said)));
    assert_eq!(told.earlier, None, "it was never tried");

    // Ended while the chat carries it: it was tried, and comes with that.
    club.restart();
    let again = errand_in(&club.desk, DISCORD).await.expect("the verdict");
    let earlier = again.earlier.clone().expect("an attempt");
    assert_eq!((earlier.since, earlier.sent_as), (club.clock.now(), None));
    club.carried(&again).await;

    club.restart();
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
}

#[tokio::test]
async fn a_verdict_that_was_on_its_way_comes_with_the_text_it_was_sent_in() {
    let (mut club, post) = sending().await;
    let sheet = wrong(&club, post, "m1").await;
    let tried_at = club.clock.now();
    club.desk
        .rounds()
        .verdict_on_its_way(sheet.reply, "You wrote Ra7. It is wrong.")
        .await
        .expect("noted");
    club.set("2026-11-23T09:30:00Z");
    club.restart();
    let told = errand_in(&club.desk, DISCORD).await.expect("the verdict");
    let earlier = told.earlier.expect("an attempt");
    assert_eq!(earlier.since, tried_at);
    assert_eq!(
        earlier.sent_as.as_deref(),
        Some("You wrote Ra7. It is wrong.")
    );
}

#[tokio::test]
async fn what_has_arrived_or_is_in_hand_is_not_told_again() {
    let (mut club, post) = sending().await;
    // The look in which earlier runs' words are found comes after this answer, which is this run's.
    club.restart();
    let sheet = wrong(&club, post, "m1").await;
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
    club.desk
        .rounds()
        .verdict_arrived(sheet.reply)
        .await
        .expect("noted");
    // The same message heard again owes nothing.
    wrong(&club, post, "m1").await;
    club.restart();
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
}

#[tokio::test]
async fn a_chat_that_shows_verdicts_owes_none() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let post = club.open("a").await;
    wrong(&club, post, "m1").await;
    club.restart();
    assert!(club.errand().await.is_none());
}

#[tokio::test]
async fn a_coachs_verdict_by_hand_survives_as_well() {
    let (mut club, post) = sending().await;
    let sheet = wrong(&club, post, "m1").await;
    club.desk
        .rounds()
        .verdict_arrived(sheet.reply)
        .await
        .expect("noted");
    club.desk
        .coach()
        .judge_by_hand(
            &club.place,
            &club.coach,
            sheet.reply,
            Verdict::Solved,
            Points::FULL,
            "Well seen.",
        )
        .await
        .expect("judged");
    club.restart();
    let told = errand_in(&club.desk, DISCORD).await.expect("the verdict");
    assert!(said(&told).contains("Well seen."), "{}", said(&told));
    club.carried(&told).await;
    club.restart();
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
}

fn room_is_back() -> Notice {
    Notice::ChatBack {
        chat: ChatName::of(ROOM, "The club room"),
    }
}

#[tokio::test]
async fn a_notice_to_the_coaches_survives_until_it_is_told() {
    let (mut club, _) = sending().await;
    let tell = async |desk: &Desk| {
        desk.rounds()
            .tell_coaches_elsewhere(ROOM, &room_is_back())
            .await
            .expect("left");
    };
    // Said twice before it has gone out, it is said once.
    tell(&club.desk).await;
    tell(&club.desk).await;
    club.restart();
    let told = errand_in(&club.desk, DISCORD).await.expect("the notice");
    let expected = serde_json::json!(room_is_back());
    assert_eq!(said(&told), format!("coach: {expected}"));
    assert_eq!(told.earlier, None);
    club.restart();
    let again = errand_in(&club.desk, DISCORD).await.expect("the notice");
    assert!(again.earlier.is_some());
    club.carried(&again).await;
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
    club.restart();
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
}

#[tokio::test]
async fn a_private_answer_that_was_perhaps_told_says_so() {
    let (mut club, post) = sending().await;
    let sheet = wrong(&club, post, "m1").await;
    club.desk
        .rounds()
        .verdict_arrived(sheet.reply)
        .await
        .expect("noted");
    club.desk
        .coach()
        .answer_privately(&club.place, &club.coach, sheet.reply, "Look again.")
        .await
        .expect("answered");
    let first = errand_in(&club.desk, DISCORD).await.expect("the answer");
    assert_eq!(first.earlier, None);
    club.restart();
    let again = errand_in(&club.desk, DISCORD).await.expect("the answer");
    assert!(again.earlier.is_some());
    club.carried(&again).await;
    club.restart();
    assert!(errand_in(&club.desk, DISCORD).await.is_none());
}

#[tokio::test]
async fn an_empty_queue_is_told_once_over_a_crash_and_not_when_it_is_filled_by_then() {
    let mut club = Club::new("2026-11-23T17:00:00Z", chrono_tz::UTC).await;
    club.set("2026-11-23T18:00:00Z");
    let told = club.errand().await.expect("the notice");
    assert!(said(&told).contains("slot-empty"), "{told:?}");
    club.restart();
    let again = club.errand().await.expect("the notice");
    assert_eq!(said(&again), said(&told));
    assert!(again.earlier.is_some(), "it may have got through");
    // Filled while the program is down.
    club.restart();
    let elsewhere = club.elsewhere();
    let filled = std::mem::replace(&mut club.desk, elsewhere);
    club.fill(&club.place, 2).await;
    club.desk = filled;
    let next = club.errand().await;
    assert!(
        next.as_ref()
            .is_none_or(|errand| said(errand).starts_with("post")),
        "{next:?}"
    );
}
