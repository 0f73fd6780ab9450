//! Kept positions written anew: checked again at once, and what members have seen stays.

use super::*;
use crate::desk::error::Done;

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

/// A position of a file with a line and words, kept.
async fn kept(club: &Club) -> PositionId {
    const FILE: &str = r##"[Id "two"]
[Task "#2"]
[Topic "Back rank"]
[FEN "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1"]

{Two rooks against two.} {[reveal] All is swapped.} 1. Rxd8+ {First.} (1. Rd7 $2 Rxd7) Rxd8 2. Rxd8# *
"##;
    let found = club.import(&club.place, FILE).await;
    found[0].position.expect("kept")
}

async fn opened(club: &Club, position: PositionId) -> PositionToEdit {
    let desk = club.desk.coach();
    let opened = desk.position_to_edit(&club.place, &club.coach, position);
    opened.await.expect("opened")
}

async fn edit(club: &Club, position: PositionId, edited: EditedPosition) -> Done<CheckedPosition> {
    let desk = club.desk.coach();
    desk.edit_position(&club.place, &club.coach, position, edited)
        .await
}

fn step(step: DraftStep) -> EditedPosition {
    EditedPosition::Step(Box::new(step))
}

#[tokio::test]
async fn a_position_is_opened_as_it_is_and_saved_as_the_same() {
    let club = club().await;
    let position = kept(&club).await;
    let before = club
        .desk
        .coach()
        .checked(&club.place, &club.coach, position);
    let before = before.await.expect("kept");
    let open = opened(&club, position).await;
    assert_eq!(open.barred, None);
    assert_eq!(
        (open.step.task.as_str(), open.step.topic.as_str()),
        ("#2", "Back rank")
    );
    assert_eq!(open.step.words, "Two rooks against two.");
    assert_eq!(open.step.at_reveal, "All is swapped.");
    assert_eq!(open.step.moves[0].others[0][0].nags, [2]);
    assert!(
        open.text.contains("[reveal] All is swapped."),
        "{}",
        open.text
    );
    let after = edit(&club, position, step(open.step)).await.expect("saved");
    assert_eq!(after.words, before.words);
    assert_eq!(after.topic, before.topic);
    assert_eq!(after.report.verdict, Soundness::Sound);
    assert_eq!(after.report.coach_lines, before.report.coach_lines);
    // A task that is left empty is found, and nothing is added to the lines for it.
    let open = opened(&club, position).await;
    let untold = DraftStep {
        task: String::new(),
        ..open.step.clone()
    };
    let after = edit(&club, position, step(untold)).await.expect("saved");
    assert_eq!(after.report.stipulation, Some(Stipulation::Mate(2)));
    assert_eq!(after.words, before.words);
    // As text, with task and topic beside it, as well.
    let text = EditedPosition::Text {
        text: open.text,
        task: "#2".into(),
        topic: "Back rank".into(),
    };
    let after = edit(&club, position, text).await.expect("saved");
    assert_eq!(after.words, before.words);
    assert_eq!(after.report.coach_lines, before.report.coach_lines);
}

#[tokio::test]
async fn another_board_has_another_verdict_and_keeps_its_place_in_the_week() {
    let club = club().await;
    let position = kept(&club).await;
    let desk = club.desk.coach();
    let item = desk
        .enqueue(&club.place, &club.coach, position, false)
        .await;
    let item = item.expect("in the week");
    // Without the second rook nothing comes of it, and Black is not even mated.
    let open = opened(&club, position).await;
    let changed = DraftStep {
        fen: "r2r2k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1".into(),
        moves: Vec::new(),
        words: "One rook against two.".into(),
        ..open.step
    };
    let after = edit(&club, position, step(changed)).await.expect("saved");
    assert_eq!(after.report.verdict, Soundness::Unsound);
    assert_eq!(after.words.with_post, "One rook against two.");
    assert!(after.words.notes.is_empty());
    let queue = desk.queue(&club.place).await.expect("a week");
    assert_eq!((queue.len(), queue[0].id), (1, item));
    let Queued::Problem { soundness, .. } = &queue[0].holds else {
        panic!("a position");
    };
    assert_eq!(*soundness, Soundness::Unsound);
    // What does not hold is not posted.
    let refused = desk.post_now(&club.place, &club.coach, Some(item)).await;
    assert!(matches!(
        refused,
        Err(DeskError::BadRequest(Refusal::NotSound { .. }))
    ));
    // A word to post it all the same is for this board, and gone with the next one.
    desk.dequeue(&club.place, &club.coach, item)
        .await
        .expect("out");
    desk.enqueue(&club.place, &club.coach, position, true)
        .await
        .expect("anyway");
    let again = opened(&club, position).await.step;
    let other = DraftStep {
        fen: "r2r2k1/5ppp/8/8/8/8/5PPP/4R1K1 w - - 0 1".into(),
        ..again.clone()
    };
    edit(&club, position, step(other)).await.expect("saved");
    let refused = desk.post_now(&club.place, &club.coach, None).await;
    assert!(refused.is_err(), "{refused:?}");
}

#[tokio::test]
async fn what_cannot_be_kept_is_refused_and_changes_nothing() {
    let club = club().await;
    let position = kept(&club).await;
    club.import(&club.place, FILE).await;
    let before = opened(&club, position).await;
    let text = |text: &str, task: &str| EditedPosition::Text {
        text: text.into(),
        task: task.into(),
        topic: String::new(),
    };
    let fen = "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1";
    let two = format!("{fen}\n{fen}");
    for (edited, why) in [
        (text("8/8/8", "#1"), "edit-unreadable"),
        (text("", "#1"), "edit-unreadable"),
        (text(&two, "#1"), "edit-not-one"),
        (text(fen, "mate"), "edit-bad-task"),
        (text(fen, "#1"), "position-there"),
        (
            step(DraftStep {
                moves: vec![],
                fen: "6k1/5ppp/8/8/8/8/8/R5 w - - 0 1".into(),
                ..before.step.clone()
            }),
            "edit-unreadable",
        ),
    ] {
        let refused = edit(&club, position, edited).await.expect_err(why).why();
        let is = serde_json::to_value(&refused).expect("a fact")["is"].clone();
        assert_eq!(is, why, "{refused:?}");
    }
    assert_eq!(opened(&club, position).await.step, before.step);
    // Where no task is given a mate is sought, then a win: two kings have neither.
    let kings = text("6k1/8/8/8/8/8/8/6K1 w - - 0 1", "");
    let after = edit(&club, position, kings).await.expect("kept");
    assert_eq!(after.report.stipulation, Some(Stipulation::Win));
    assert_eq!(after.report.verdict, Soundness::Unsound);
}

#[tokio::test]
async fn what_members_have_seen_stays_and_a_stop_is_its_lessons() {
    let club = club().await;
    let position = kept(&club).await;
    let desk = club.desk.coach();
    desk.enqueue(&club.place, &club.coach, position, false)
        .await
        .expect("in the week");
    desk.post_now(&club.place, &club.coach, None)
        .await
        .expect("intended");
    let open = opened(&club, position).await;
    assert_eq!(open.barred, Some(Refusal::PositionWentOut { number: 1 }));
    let refused = edit(&club, position, step(open.step))
        .await
        .expect_err("posted");
    assert_eq!(refused.why(), Refusal::PositionWentOut { number: 1 });

    let lesson = LessonFile {
        name: "one.pgn".into(),
        bytes: b"[Lesson \"One\"]\n[FEN \"6k1/5ppp/8/8/8/8/8/4R1K1 w - - 0 1\"]\n\n1. Re8# {[stop #1]} *\n".into(),
        title: None,
        replaces: None,
    };
    let progress = Arc::new(|_: usize, _: usize| {});
    let taken = desk.import_lesson(&club.place, &club.coach, lesson, SameChoice::Keep, progress);
    let taken = taken.await.expect("taken in");
    let PartHolds::Stop(stop) = &taken.steps[0].parts[0].holds else {
        panic!("a stop");
    };
    let open = opened(&club, stop.position.expect("kept")).await;
    let Some(Refusal::PositionInLesson { step: 1, .. }) = open.barred else {
        panic!("its lesson's: {:?}", open.barred);
    };
}
