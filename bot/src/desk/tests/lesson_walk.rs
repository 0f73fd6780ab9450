//! Lessons stepped through: what was revealed of them with all side lines, and nothing of what was not.

use super::{
    lessons::{kept, planned},
    *,
};

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

async fn walk(club: &Club, lesson: LessonId) -> Result<LessonWalk, DeskError> {
    club.desk.member().lesson_walk(&club.place, lesson).await
}

async fn close(club: &Club, post: PostId) {
    let coach = club.desk.coach();
    coach
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closed");
    club.carry_all().await;
}

/// All that a member is given of a walk, as one text.
fn all_of(walk: &LessonWalk) -> String {
    format!("{walk:?}")
}

/// The main line of a part.
fn main_line(part: &WalkPart) -> String {
    let mut line = Vec::new();
    let mut at = Some(0);
    while let Some(place) = at.map(|at| &part.places[at]) {
        line.push(place.written.as_str());
        at = place.next.first().copied();
    }
    line.join(" ").trim().to_owned()
}

/// The lines of a part.
fn lines(part: &WalkPart) -> Vec<String> {
    let ends = part.places.iter().filter(|place| place.next.is_empty());
    ends.map(|end| {
        let mut line = vec![end.written.clone()];
        let mut at = end.before;
        while let Some(place) = at.map(|at| &part.places[at]) {
            line.push(place.written.clone());
            at = place.before;
        }
        line.reverse();
        line.join(" ").trim().to_owned()
    })
    .collect()
}

#[tokio::test]
async fn a_lesson_is_stepped_through_as_far_as_it_is_revealed() {
    let club = club().await;
    let lesson = kept(&club).await;
    let items = planned(&club, lesson, LessonPlan::InOrder)
        .await
        .expect("planned")
        .items;
    let member = club.desk.member();
    let place = &club.place;

    // Before anything is out there is no such lesson.
    assert!(walk(&club, lesson).await.is_err());
    assert!(member.lessons(place).await.expect("read").is_empty());

    // The words are over as soon as they are out; the stop is open: nothing of it is there but that it is.
    club.post_of(items[0]).await;
    let stop = club.post_of(items[1]).await;
    let open = walk(&club, lesson).await.expect("begun");
    assert_eq!(open.parts.len(), 1);
    assert_eq!(open.parts[0].kind, KindName::Words);
    assert!(open.parts[0].places.is_empty());
    assert_eq!(open.to_come.open, [2]);
    assert_eq!(open.to_come.parts, 2);
    assert!(open.to_come.next.is_some(), "the week says when");
    let told = all_of(&open);
    for secret in ["Qa6", "Nxa6", "Bxa6", "asks the only piece", "c8", "Rb8"] {
        assert!(!told.contains(secret), "{secret} of {told}");
    }
    let board = PartAt { step: 2, part: 1 };
    let sealed = member
        .lesson_board(place, lesson, (board, 0), "en")
        .await
        .map(drop);
    assert!(matches!(sealed, Err(DeskError::NotFound(_))));

    // Revealed, it has its line, its side line, the words and signs beside the moves.
    close(&club, stop).await;
    let now = walk(&club, lesson).await.expect("goes on");
    assert_eq!(now.parts.len(), 2);
    let part = &now.parts[1];
    assert_eq!((part.at, part.number), (board, 2));
    assert_eq!(part.words, "Look at the king on c8.");
    assert_eq!(part.asked_at, Some(0));
    let all = lines(part);
    assert_eq!(main_line(part), "1.Qa6+ 1...Nxa6 2.Bxa6#");
    assert!(all.contains(&"1.Qxd7+? 1...Rxd7".to_owned()), "{all:?}");
    let by = |written: &str| {
        let found = part.places.iter().find(|place| place.written == written);
        found.expect(written)
    };
    assert!(by("1.Qa6+").words_after.contains("only piece"));
    assert!(by("1.Qxd7+?").words_after.contains("lets the king out"));
    let moved = |written: &str| -> Vec<String> {
        let facts = by(written).moved.iter();
        facts.map(|fact| english().say(fact)).collect()
    };
    assert_eq!(
        moved("2.Bxa6#"),
        ["White: bishop from e2 takes the knight on a6.", "Mate."]
    );
    let picture = member
        .lesson_board(place, lesson, (board, 1), "en")
        .await
        .expect("drawn");
    assert!(alt(&picture, english()).contains("a6"));
    // What comes later stands in the same file, and is not there.
    let told = all_of(&now);
    for secret in ["And if you see only this", "Rb8", "A quiet move", "Air."] {
        assert!(!told.contains(secret), "{secret}");
    }

    // The last one leads up to its question with an example.
    let third = club.post_of(items[2]).await;
    close(&club, third).await;
    let last = club.post_of(items[3]).await;
    let told = all_of(&walk(&club, lesson).await.expect("there"));
    assert!(
        !told.contains("A quiet move") && !told.contains("Rb8"),
        "{told}"
    );
    close(&club, last).await;
    let whole = walk(&club, lesson).await.expect("there");
    assert_eq!(whole.parts.len(), 4);
    assert_eq!(whole.to_come, ToCome::default());
    let question = &whole.parts[3];
    assert_eq!(lines(question), ["1.h3 1...h6 2.Rb8+ 2...Kh7"]);
    assert_eq!(question.asked_at, Some(4));
    let listed = member.lessons(place).await.expect("read");
    assert_eq!((listed.len(), listed[0].revealed), (1, 4));
    let gone = member
        .lesson_board(place, lesson, (question.at, 99), "en")
        .await
        .map(drop);
    assert!(matches!(gone, Err(DeskError::NotFound(_))));
}

/// What was posted before the lesson was there went out without its words; what waits is sealed again.
#[tokio::test]
async fn what_was_posted_before_is_no_part_of_the_lesson_yet() {
    let club = club().await;
    let before = "1nkr1r2/p2pp2p/1p3qp1/2p2p2/5B2/P2QPN2/2P1B1PP/4R2K w - - id \"old\"; dm 2;";
    let post = club.open_anyway(before).await;
    close(&club, post).await;
    club.set("2026-03-04T12:00:00Z");
    let lesson = kept(&club).await;
    let looked = walk(&club, lesson).await.map(drop);
    assert!(matches!(looked, Err(DeskError::NotFound(_))), "{looked:?}");
    let member = club.desk.member();
    assert!(member.lessons(&club.place).await.expect("read").is_empty());
}

#[tokio::test]
async fn a_lesson_of_another_group_is_none_of_theirs() {
    let club = club().await;
    let lesson = kept(&club).await;
    let items = planned(&club, lesson, LessonPlan::InOrder)
        .await
        .expect("planned")
        .items;
    club.post_of(items[0]).await;
    assert!(walk(&club, lesson).await.is_ok());
    let other = Place {
        chat: DISCORD,
        channel: "7".into(),
    };
    club.found(&other, chrono_tz::UTC).await;
    let looked = club.desk.member().lesson_walk(&other, lesson).await;
    assert!(matches!(looked.map(drop), Err(DeskError::NotFound(_))));
}
