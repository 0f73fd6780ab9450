//! Lessons that are being written: kept as they are typed, never overwritten in silence, shown as members will see
//! them, and taken in.

use super::*;
use crate::chess::{
    lesson::{DraftKind, DraftMove},
    read::Fault,
};
use crate::desk::error::Done;

const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

fn mv(san: &str) -> DraftMove {
    DraftMove {
        san: san.into(),
        ..DraftMove::default()
    }
}

/// Words, then a position to be solved with a side line and words on it.
fn two_steps() -> Draft {
    let words = DraftStep {
        words: "Look at the back rank.".into(),
        ..DraftStep::default()
    };
    let refuted = DraftMove {
        nags: vec![2],
        after: "The rook takes it.".into(),
        others: Vec::new(),
        ..mv("Rd7")
    };
    let key = DraftMove {
        stop: Some("#2".into()),
        after: "Everything is swapped on d8.".into(),
        others: vec![vec![refuted, mv("Rxd7")]],
        ..mv("Rxd8+")
    };
    let stop = DraftStep {
        kind: DraftKind::Stop,
        fen: BACK_RANK.into(),
        words: "White has two rooks.".into(),
        moves: vec![key, mv("Rxd8"), mv("Rxd8#")],
        ..DraftStep::default()
    };
    Draft {
        title: "Back ranks".into(),
        topic: "Back rank".into(),
        steps: vec![words, stop],
    }
}

async fn begun(club: &Club, content: Draft) -> DraftSheet {
    let begun = club
        .desk
        .coach()
        .begin_draft(&club.place, &club.coach, content);
    begun.await.expect("begun")
}

async fn save(club: &Club, sheet: &DraftSheet, revision: i64, content: Draft) -> DraftSaved {
    let desk = club.desk.coach();
    let saved = desk.save_draft(&club.place, &club.coach, sheet.draft, revision, content);
    saved.await.expect("written")
}

async fn taken_in(club: &Club, draft: DraftId, revision: i64) -> Done<LessonSheet> {
    let progress = Arc::new(|_: usize, _: usize| {});
    club.desk
        .coach()
        .take_in_draft(&club.place, &club.coach, (draft, revision), progress)
        .await
}

#[tokio::test]
async fn what_is_half_typed_is_kept_and_what_is_wrong_is_named() {
    let mut club = club().await;
    let sheet = begun(&club, Draft::default()).await;
    assert_eq!((sheet.revision, sheet.faults.len()), (1, 0));
    let mut half = two_steps();
    half.steps[1].fen = "r2r2k1/5ppp/8".into();
    half.steps[1].task = "#".into();
    let DraftSaved::Kept { revision, faults } = save(&club, &sheet, 1, half.clone()).await else {
        panic!("kept");
    };
    assert_eq!(revision, 2);
    let [DraftFault { step: 2, what }] = &faults[..] else {
        panic!("one fault: {faults:?}");
    };
    assert!(matches!(what, Fault::TagNoPosition { .. }), "{what:?}");
    club.restart();
    let again = club
        .desk
        .coach()
        .draft_sheet(&club.place, &club.coach, sheet.draft);
    let again = again.await.expect("there");
    assert_eq!((again.content, again.revision), (half, 2));
    // As a file it says the same.
    let desk = club.desk.coach();
    let text = desk
        .export_draft(&club.place, &club.coach, sheet.draft)
        .await;
    assert!(text.expect("a file").contains("[FEN \"r2r2k1/5ppp/8\"]"));
    let refused = taken_in(&club, sheet.draft, 2)
        .await
        .expect_err("not finished");
    assert!(matches!(
        refused.why(),
        Refusal::DraftStepWrong { step: 2, .. }
    ));
    let stranger = person("Anna");
    let refused = club.desk.coach().drafts(&club.place, &stranger).await;
    assert!(matches!(refused, Err(DeskError::NotAllowed(_))));
}

#[tokio::test]
async fn the_second_of_two_writers_is_told_and_loses_nothing() {
    let club = club().await;
    let sheet = begun(&club, two_steps()).await;
    let titled = |title: &str| Draft {
        title: title.into(),
        ..two_steps()
    };
    let first = save(&club, &sheet, 1, titled("First")).await;
    assert!(matches!(first, DraftSaved::Kept { revision: 2, .. }));
    let second = save(&club, &sheet, 1, titled("Second")).await;
    let DraftSaved::Overtaken(theirs) = second else {
        panic!("told: {second:?}");
    };
    assert_eq!(
        (theirs.revision, theirs.content.title.as_str()),
        (2, "First")
    );
    // It may become a draft of its own.
    begun(&club, titled("Second")).await;
    let rows = club.desk.coach().drafts(&club.place, &club.coach).await;
    let titles: Vec<String> = rows
        .expect("a list")
        .into_iter()
        .map(|row| row.title)
        .collect();
    assert_eq!(titles, ["Second", "First"]);
    let refused = taken_in(&club, sheet.draft, 1).await.expect_err("old");
    assert_eq!(refused.why(), Refusal::DraftChanged);
}

#[tokio::test]
async fn a_step_is_shown_as_it_will_be_before_the_reveal_and_at_it() {
    let club = club().await;
    let shown = async |draft: Draft, step| {
        let desk = club.desk.coach();
        desk.preview_draft(&club.place, &club.coach, draft, step)
            .await
    };
    let words = shown(two_steps(), 1).await.expect("words");
    let [
        PartPreview {
            post: Some(post),
            reveal: None,
            checked: None,
        },
    ] = &words[..]
    else {
        panic!("one part: {words:?}");
    };
    assert!(matches!(&post.content, Content::Words(of) if of.words == "Look at the back rank."));
    let stands = post.lesson.clone().expect("in a lesson");
    assert_eq!(
        (stands.title.as_str(), stands.step, stands.steps),
        ("Back ranks", 1, 2)
    );

    let mut telling = two_steps();
    telling.steps[1].words = "White has two rooks.\nTake on d8 with Rxd8.".into();
    let stop = shown(telling, 2).await.expect("a stop");
    let [
        PartPreview {
            post: Some(post),
            reveal: Some(reveal),
            checked: Some(checked),
        },
    ] = &stop[..]
    else {
        panic!("one part: {stop:?}");
    };
    assert_eq!(checked.report.verdict, Soundness::Sound);
    let Content::Problem { words, .. } = &post.content else {
        panic!("a problem");
    };
    // Words that tell the move are held, as they will be.
    assert_eq!(words, "White has two rooks.");
    let Shown::Solution(solution) = &reveal.shows else {
        panic!("a solution");
    };
    assert!(
        solution.solution[0].starts_with("1.Rxd8+"),
        "{:?}",
        solution.solution
    );
    assert_eq!(solution.comment, "Take on d8 with Rxd8.");
    assert!(
        solution
            .notes
            .iter()
            .any(|note| note.after == "The rook takes it.")
    );
    // Nothing of it is kept.
    let shelf = club.desk.coach().shelf(&club.place, &club.coach, 10).await;
    assert!(shelf.expect("a shelf").is_empty());
    let refused = shown(two_steps(), 3).await.expect_err("no such step");
    assert!(matches!(
        refused,
        DeskError::NotFound(Refusal::NoStep { step: 3, steps: 2 })
    ));
}

#[tokio::test]
async fn a_draft_becomes_a_lesson_and_takes_its_place_again() {
    let club = club().await;
    let desk = club.desk.coach();
    let sheet = begun(&club, two_steps()).await;
    let lesson = taken_in(&club, sheet.draft, 1).await.expect("taken in");
    let first = lesson.lesson.expect("kept");
    assert_eq!(
        (lesson.title.as_str(), lesson.topic.as_deref()),
        ("Back ranks", Some("Back rank"))
    );
    assert_eq!(lesson.steps.len(), 2);
    desk.plan_lesson(
        &club.place,
        &club.coach,
        first,
        LessonPlan::InOrder,
        false,
        false,
    )
    .await
    .expect("in the week");

    // The draft is the lesson's; opened from there it is the same one.
    let opened = desk
        .open_lesson(&club.place, &club.coach, first)
        .await
        .expect("opened");
    assert_eq!((opened.draft, opened.lesson), (sheet.draft, Some(first)));
    let mut content = opened.content;
    content.steps[0].words = "Look at the eighth rank.".into();
    content.steps[1].words = String::new();
    content.steps[1].moves[0].others.clear();
    let saved = save(&club, &sheet, opened.revision, content).await;
    let DraftSaved::Kept { revision, .. } = saved else {
        panic!("kept");
    };
    let again = taken_in(&club, sheet.draft, revision)
        .await
        .expect("taken in again");
    let second = again.lesson.expect("kept");
    assert_ne!(second, first);
    let lessons = desk
        .lessons(&club.place, &club.coach)
        .await
        .expect("lessons");
    assert_eq!(lessons.len(), 1, "{lessons:?}");
    assert_eq!((lessons[0].lesson, lessons[0].waiting), (second, 2));
    // Both keep their places in the week, the words written anew and the position with what is said of it now.
    let queue = desk.queue(&club.place).await.expect("a week");
    let held: Vec<String> = queue
        .iter()
        .map(|item| item.holds.label(&item.source))
        .collect();
    assert_eq!(queue.len(), 2, "{held:?}");
    assert_eq!(held[0], "Look at the eighth rank.");
    let position = queue[1].holds.position().expect("a position");
    let kept = desk
        .checked(&club.place, &club.coach, position)
        .await
        .expect("kept");
    assert_eq!(kept.words.with_post, "");
    assert!(
        kept.words
            .notes
            .iter()
            .all(|note| note.after != "The rook takes it.")
    );
}

#[tokio::test]
async fn what_was_posted_is_not_taken_back() {
    let club = club().await;
    let desk = club.desk.coach();
    let sheet = begun(&club, two_steps()).await;
    let lesson = taken_in(&club, sheet.draft, 1).await.expect("taken in");
    let lesson = lesson.lesson.expect("kept");
    desk.plan_lesson(
        &club.place,
        &club.coach,
        lesson,
        LessonPlan::InOrder,
        false,
        false,
    )
    .await
    .expect("in the week");
    desk.post_now(&club.place, &club.coach, None)
        .await
        .expect("intended");
    // Under its title it would be a second one; under another it becomes that.
    let refused = taken_in(&club, sheet.draft, 1).await.expect_err("posted");
    assert!(
        matches!(refused.why(), Refusal::LessonThere { .. }),
        "{refused:?}"
    );
    let other = Draft {
        title: "More back ranks".into(),
        ..two_steps()
    };
    save(&club, &sheet, 1, other).await;
    let new = taken_in(&club, sheet.draft, 2)
        .await
        .expect("another lesson");
    assert_ne!(new.lesson, Some(lesson));
    let lessons = desk
        .lessons(&club.place, &club.coach)
        .await
        .expect("lessons");
    assert_eq!(lessons.len(), 2);
    // Opened from the posted one there is a copy.
    let copy = desk
        .open_lesson(&club.place, &club.coach, lesson)
        .await
        .expect("a copy");
    assert_eq!(copy.lesson, None);
    assert_ne!(copy.draft, sheet.draft);
    assert_eq!(copy.content.steps.len(), 2);
    let again = desk.open_lesson(&club.place, &club.coach, lesson).await;
    assert_eq!(again.expect("the same copy").draft, copy.draft);
}

#[tokio::test]
async fn a_draft_that_is_removed_leaves_its_lesson() {
    let club = club().await;
    let desk = club.desk.coach();
    let sheet = begun(&club, two_steps()).await;
    taken_in(&club, sheet.draft, 1).await.expect("taken in");
    desk.remove_draft(&club.place, &club.coach, sheet.draft)
        .await
        .expect("removed");
    let gone = desk
        .draft_sheet(&club.place, &club.coach, sheet.draft)
        .await;
    assert!(matches!(gone, Err(DeskError::NotFound(Refusal::NoDraft))));
    assert_eq!(
        desk.lessons(&club.place, &club.coach)
            .await
            .expect("lessons")
            .len(),
        1
    );
}

#[tokio::test]
async fn the_board_says_what_can_be_played_and_what_cannot() {
    let club = club().await;
    let on = async |fen: &str, line: &[&str], typed: Option<&str>| {
        let on = OnBoard {
            fen: fen.into(),
            line: line.iter().map(|san| (*san).to_owned()).collect(),
            typed: typed.map(str::to_owned),
        };
        club.desk.coach().board(&club.place, &club.coach, on).await
    };
    let stands = on(BACK_RANK, &["Rxd8+"], Some("Rxd8"))
        .await
        .expect("played");
    assert_eq!(stands.line, ["Rxd8+", "Rxd8"]);
    assert!(stands.legal.iter().any(|legal| legal.san == "Rxd8#"));
    let refused = async |fen: &str, line: &[&str], typed| {
        on(fen, line, typed).await.expect_err("refused").why()
    };
    assert!(matches!(
        refused("8/8", &[], None).await,
        Refusal::CannotBeSetUp { .. }
    ));
    let here = refused(BACK_RANK, &["Rxd8+"], Some("Kh1")).await;
    assert!(matches!(here, Refusal::NoMoveHere { .. }));
    let there = refused(BACK_RANK, &["Rxd8+", "Rxd7"], None).await;
    assert!(matches!(there, Refusal::LineBreaks { after: 1, .. }));
}
