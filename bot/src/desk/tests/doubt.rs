//! What is asked back: moves that fit another post, and text that may tell a move.

use super::{super::*, Club, person};

const MONDAY: &str = "2031-03-03T18:30:00Z";

async fn two_open() -> (Club, PostId, PostId) {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let two = club.open("two").await;
    let three = club.open("three").await;
    (club, two, three)
}

async fn replies(club: &Club, post: PostId) -> usize {
    let rows = club
        .desk
        .coach()
        .replies(&club.place, &club.coach, post)
        .await;
    rows.expect("read").len()
}

async fn take(club: &Club, chosen: Option<PostId>, source: &str, text: &str) -> Came {
    club.desk
        .member()
        .take(&club.place, &person("Ana"), chosen, source, text)
        .await
        .expect("taken")
}

#[tokio::test]
async fn an_answer_that_fits_another_post_only_is_booked_nowhere_and_asked_back() {
    let (club, two, three) = two_open().await;
    let ana = person("Ana");
    // Only in "three" does a queen stand on d1.
    let taken = club
        .desk
        .member()
        .answer_to(&club.place, &ana, two, "m1", "Qa1")
        .await
        .expect("taken");
    let Taken::AskedBack(asked) = taken else {
        panic!("it was judged");
    };
    assert_eq!(asked.why, Why::Elsewhere);
    assert_eq!(
        asked.posts.iter().map(|post| post.post).collect::<Vec<_>>(),
        [three]
    );
    assert_eq!(asked.posts[0].number, 2);
    assert_eq!(
        (replies(&club, two).await, replies(&club, three).await),
        (0, 0)
    );

    // Said among others to that post, it is the same.
    let Came::AskedBack(asked) = take(&club, Some(two), "m2", "Qa1").await else {
        panic!("it was taken");
    };
    assert_eq!(asked.why, Why::Elsewhere);
    assert_eq!(replies(&club, two).await, 0);

    // Where it fits the chosen one, or none, the choice stands.
    for (source, text) in [("m3", "Kf1"), ("m4", "Qxh8")] {
        let taken = club
            .desk
            .member()
            .answer_to(&club.place, &ana, two, source, text)
            .await
            .expect("taken");
        assert!(
            matches!(taken, Taken::Answer(sheet) if sheet.post == two),
            "{text}"
        );
    }
    // A line under way counts.
    club.desk
        .member()
        .answer(&club.place, &ana, three, "m5", "Rxd8+")
        .await
        .expect("judged");
    let Came::Answer(sheet) = take(&club, None, "m6", "Kf1").await else {
        panic!("it was asked back");
    };
    assert_eq!(sheet.post, three);
}

#[tokio::test]
async fn an_answer_to_several_posts_is_asked_about() {
    let (club, two, three) = two_open().await;
    let Came::AskedBack(asked) = take(&club, None, "m1", "Kf1").await else {
        panic!("it was taken");
    };
    assert_eq!(asked.why, Why::Several);
    assert_eq!(
        asked.posts.iter().map(|post| post.post).collect::<Vec<_>>(),
        [two, three]
    );
    assert!(
        matches!(take(&club, Some(two), "m2", "Kf1").await, Came::Answer(sheet) if sheet.post == two)
    );
}

#[tokio::test]
async fn what_may_tell_a_move_is_asked_about_while_a_sealed_post_is_open() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let words = "perhaps the rook takes on d8";
    assert!(
        matches!(take(&club, None, "m0", words).await, Came::Talk),
        "nothing is open"
    );
    let two = club.open("two").await;
    for text in [
        words,
        "spoiler: Rd7",
        "Л d 7",
        "what about the back: rook up",
    ] {
        let Came::AskedBack(asked) = take(&club, Some(two), "m1", text).await else {
            panic!("{text}");
        };
        assert_eq!(
            (asked.why, asked.posts[0].post),
            (Why::MayTell, two),
            "{text}"
        );
    }
    assert!(matches!(
        take(&club, Some(two), "m2", "see you at 6").await,
        Came::Talk
    ));
    assert_eq!(replies(&club, two).await, 0);
    assert!(
        club.desk
            .talk(&club.place, 0, 10)
            .await
            .expect("read")
            .is_empty()
    );
    let tells = async |name: &str| {
        club.desk
            .member()
            .name_tells_a_move(&club.place, name)
            .await
    };
    assert!(tells("Rd8 mate").await.expect("read"));
    assert!(!tells("Ana").await.expect("read"));

    // In an open group everyone may speak.
    let mut settings = club.desk.settings(&club.place).await.expect("read");
    settings.mode = Mode::Open;
    club.desk
        .coach()
        .change_settings(&club.place, &club.coach, settings)
        .await
        .expect("set");
    assert!(matches!(
        take(&club, Some(two), "m3", words).await,
        Came::Talk
    ));
}

#[tokio::test]
async fn a_reading_is_sent_once() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let two = club.open("two").await;
    let ana = person("Ana");
    let asked = club
        .desk
        .member()
        .answer(&club.place, &ana, two, "m1", "Rxd8+ or Rd7")
        .await
        .expect("judged");
    if asked.readings.is_empty() {
        // Nothing is asked, and nothing can be pressed.
        assert!(
            club.desk
                .member()
                .mean(&club.place, &ana, asked.reply, 0)
                .await
                .is_err()
        );
        return;
    }
    let (first, text) = club
        .desk
        .member()
        .mean(&club.place, &ana, asked.reply, 0)
        .await
        .expect("sent");
    let (again, _) = club
        .desk
        .member()
        .mean(&club.place, &ana, asked.reply, 1)
        .await
        .expect("shown again");
    assert_eq!(text, asked.readings[0]);
    assert_eq!(first.reply, again.reply);
    assert_eq!(replies(&club, two).await, 2);
    assert!(
        club.desk
            .member()
            .mean(&club.place, &person("Ben"), asked.reply, 0)
            .await
            .is_err()
    );
}

#[tokio::test]
async fn a_held_text_that_its_writer_calls_an_answer_is_judged_at_once() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let two = club.open("two").await;
    let sure = async |name: &str, text: &str| {
        let who = person(name);
        let taken = club
            .desk
            .member()
            .answer_surely(&club.place, &who, two, &format!("{name}-1"), text)
            .await;
        match taken.expect("taken") {
            Taken::Answer(sheet) => *sheet,
            Taken::AskedBack(asked) => panic!("{asked:?}"),
        }
    };
    // Said once more, as after a broken connection, it is the same answer.
    for _ in 0..2 {
        let sheet = sure("Ana", "hm, maybe Rxd8+").await;
        assert_eq!(
            (sheet.verdict(), sheet.points),
            (Verdict::Solved, Points::of(5.0))
        );
    }
    assert_eq!(
        sure("Ben", "is Rd7 any good?").await.verdict(),
        Verdict::Wrong
    );
    // Two things may be meant: that is still to be asked.
    let sheet = sure("Eva", "maybe Rxd8+ or Rd7").await;
    assert_eq!(
        (sheet.verdict(), sheet.readings.len()),
        (Verdict::Unclear, 2)
    );
}
