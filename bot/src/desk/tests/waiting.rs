//! What a chat lets the desk keep: messages that wait for their writer's word, and notes to coaches.

use super::*;

fn waiting(club: &Club, message: &str, post: PostId) -> Waiting {
    Waiting {
        place: club.place.clone(),
        message: message.into(),
        channel: "c1".into(),
        user: "u-Ana".into(),
        text: "perhaps Ra8".into(),
        why: Why::MayTell,
        posts: vec![OpenPost {
            post,
            number: 1,
            topic: None,
            holds: Kind::Question,
        }],
        hidden: true,
        since: club.desk.now(),
    }
}

#[tokio::test]
async fn a_message_waits_over_a_restart_until_it_is_settled() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let post = club.open("a").await;
    let first = waiting(&club, "m1", post);
    club.desk.let_wait(&first).await.expect("kept");
    club.restart();
    let desk = &club.desk;
    assert_eq!(
        desk.waiting(ROOM, "m1").await.expect("read"),
        Some(first.clone())
    );
    assert_eq!(
        desk.waiting_of(&club.place, "u-Ana").await.expect("read"),
        [first]
    );
    desk.waits_no_longer(ROOM, "m1").await.expect("settled");
    assert_eq!(desk.waiting(ROOM, "m1").await.expect("read"), None);
    assert!(desk.was_asked_about(ROOM, "m1").await.expect("read"));
    // Edited, it is another message.
    desk.forget_waiting(ROOM, "m1").await.expect("forgotten");
    assert!(!desk.was_asked_about(ROOM, "m1").await.expect("read"));
}

#[tokio::test]
async fn what_waits_ends_with_its_posts_or_after_two_days_or_with_its_writer() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let post = club.open("a").await;
    let desk = &club.desk;
    let waits = async |message: &str| desk.waiting(ROOM, message).await.expect("read").is_some();
    desk.let_wait(&waiting(&club, "stays", post))
        .await
        .expect("kept");
    desk.let_wait(&waiting(
        &club,
        "of a post that is gone",
        PostId::of(post.get() + 1),
    ))
    .await
    .expect("kept");
    let long_ago = Waiting {
        since: desk.now() - chrono::TimeDelta::days(3),
        ..waiting(&club, "of long ago", post)
    };
    desk.let_wait(&long_ago).await.expect("kept");
    desk.rounds().sweep_waiting(ROOM).await.expect("swept");
    assert!(waits("stays").await);
    assert!(!waits("of a post that is gone").await);
    assert!(!waits("of long ago").await);
    // Erasing a member takes what waits of theirs along, whatever the chat does.
    desk.member()
        .answer(&club.place, &person("Ana"), post, "m9", "Ra7")
        .await
        .expect("judged");
    desk.member()
        .erase_me(&club.place, &person("Ana"))
        .await
        .expect("erased");
    assert!(!waits("stays").await);
}

#[tokio::test]
async fn a_note_is_kept_once_by_two_attempts_at_one_errand() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let keep = async |earlier: Option<&Earlier>| {
        club.desk
            .note_for_coaches(&club.place, &Notice::SlotEmpty, 20, earlier)
            .await
            .expect("kept");
    };
    // Said long before, and again now: another note.
    keep(None).await;
    club.set("2026-11-23T10:00:00Z");
    let earlier = Earlier {
        since: club.desk.now(),
        sent_as: None,
    };
    keep(Some(&earlier)).await;
    keep(Some(&earlier)).await;
    let notes = club.desk.notes_for_coaches(&club.place).await;
    let notes = notes.expect("read");
    assert_eq!(notes.len(), 2);
    club.desk
        .notes_read(&club.place, notes[0].id)
        .await
        .expect("read");
    let left = club.desk.notes_for_coaches(&club.place).await;
    assert_eq!(left.expect("read"), notes[1..]);
}
