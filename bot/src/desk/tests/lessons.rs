//! Lessons: in from a file, into the week, before the group step by step, and out again.

use super::*;
use crate::desk::error::Done;

/// Words, two stops of one game, a position that goes on from the first, a contrast position, and homework.
const LESSON: &str = r#"[Lesson "Crossing lines"]
[Topic "Boden's mate"]

{Two bishops on two long diagonals that cross in front of a king.} *

[FEN "1nkr1r2/p2pp2p/1p3qp1/2p2p2/5B2/P2QPN2/2P1B1PP/4R2K w - - 0 1"]

{Look at the king on c8.} 1. Qa6+ {[stop #2] The queen asks the only piece that can answer.}
(1. Qxd7+ $2 {Taking what can be taken only lets the king out.} Rxd7) 1... Nxa6 2. Bxa6# *

[FEN "2kr1r2/p2pp2p/np3qp1/2p2p2/5B2/P3PN2/2P1B1PP/4R2K w - - 0 2"]

{And if you see only this?} 2. Bxa6# {[stop #1]} *

[FEN "6k1/5ppp/8/8/8/8/r4PPP/1R4K1 w - - 0 1"]
[Contrast "yes"]

1. h3 {A quiet move.} h6 2. Rb8+ Kh7 {Air. What do you take from it?} *
"#;

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

async fn import(club: &Club, text: &str) -> Done<LessonSheet> {
    let progress = Arc::new(|_: usize, _: usize| {});
    club.desk
        .coach()
        .import_lesson(
            &club.place,
            &club.coach,
            LessonFile {
                name: "crossing.pgn".into(),
                bytes: text.into(),
                title: None,
                replaces: None,
            },
            SameChoice::Keep,
            progress,
        )
        .await
}

pub(super) async fn kept(club: &Club) -> LessonId {
    let sheet = import(club, LESSON).await.expect("taken in");
    sheet.lesson.expect("kept")
}

pub(super) async fn planned(club: &Club, lesson: LessonId, plan: LessonPlan) -> Done<Planned> {
    club.desk
        .coach()
        .plan_lesson(&club.place, &club.coach, lesson, plan, false, false)
        .await
}

async fn week(club: &Club) -> Vec<(ItemId, Option<String>)> {
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    let due = |item: &QueueItem| item.due_at.map(|at| at.format("%m-%dT%H:%M").to_string());
    queue.iter().map(|item| (item.id, due(item))).collect()
}

fn kinds(sheet: &LessonSheet) -> Vec<&'static str> {
    let parts = sheet.steps.iter().flat_map(|step| &step.parts);
    parts
        .map(|part| match &part.holds {
            PartHolds::Stop(_) => "stop",
            PartHolds::Written(NewPostContent::Question { .. }) => "question",
            PartHolds::Written(NewPostContent::Words { .. }) => "words",
        })
        .collect()
}

#[tokio::test]
async fn a_lesson_is_checked_and_kept_step_by_step() {
    let club = club().await;
    let sheet = import(&club, LESSON).await.expect("taken in");
    assert_eq!(sheet.title, "Crossing lines");
    assert_eq!(sheet.topic.as_deref(), Some("Boden's mate"));
    assert_eq!(kinds(&sheet), ["words", "stop", "stop", "question"]);
    let contrast: Vec<bool> = sheet.steps.iter().map(|step| step.contrast).collect();
    assert_eq!(contrast, [false, false, false, true]);
    let PartHolds::Stop(first) = &sheet.steps[1].parts[0].holds else {
        panic!("a stop");
    };
    assert_eq!(first.report.verdict, Soundness::Sound);
    assert_eq!(first.report.keys, ["Qa6+"]);
    assert_eq!(first.topic.as_deref(), Some("Boden's mate"));
    assert_eq!(first.words.with_post, "Look at the king on c8.");
    assert!(!first.words.notes.is_empty());
    // The third step is what the second leads to, so it waits for it.
    assert_eq!(sheet.steps[2].parts[0].waits_for, [(2, 1)]);
    assert!(sheet.steps[3].parts[0].waits_for.is_empty());

    let again = club
        .desk
        .coach()
        .lesson(&club.place, &club.coach, sheet.lesson.expect("kept"))
        .await
        .expect("there");
    assert_eq!(kinds(&again), kinds(&sheet));
    assert_eq!(again.steps[2].parts[0].waits_for, [(2, 1)]);
    assert_eq!(again.steps[3].parts[0].lead, sheet.steps[3].parts[0].lead);
    assert!(
        again
            .steps
            .iter()
            .flat_map(|step| &step.parts)
            .all(|part| part.stands == PartStands::Kept)
    );
    let rows = club.desk.coach().lessons(&club.place, &club.coach).await;
    let rows = rows.expect("read");
    assert_eq!((rows[0].steps, rows[0].parts, rows[0].waiting), (4, 4, 0));

    // Another of that title is refused, and nothing is lost of the first.
    let error = import(&club, LESSON).await.expect_err("there already");
    assert!(error.to_string().contains("lesson-there"), "{error}");
    // Nobody but coaches.
    let member = person("Ana");
    let looked = club.desk.coach().lessons(&club.place, &member).await;
    assert!(looked.is_err());
}

#[tokio::test]
async fn a_lesson_goes_out_step_by_step_and_tells_nothing_before_its_time() {
    let club = club().await;
    let lesson = kept(&club).await;
    let planned = planned(&club, lesson, LessonPlan::InOrder).await;
    let items = planned.expect("planned").items;
    assert_eq!(items.len(), 4);
    let order: Vec<ItemId> = week(&club).await.iter().map(|(item, _)| *item).collect();
    assert_eq!(order, items);

    // Put before the step that it would tell, the third lets that go first; by hand it cannot go out.
    let (place, coach) = (&club.place, &club.coach);
    let desk = club.desk.coach();
    desk.reorder(place, coach, items[2], 0)
        .await
        .expect("moved");
    let due = week(&club).await;
    let of = |item: ItemId| {
        due.iter()
            .find(|(id, _)| *id == item)
            .and_then(|(_, at)| at.clone())
    };
    assert!(of(items[1]) < of(items[2]), "{due:?}");
    let error = desk
        .post_now(place, coach, Some(items[2]))
        .await
        .expect_err("it would tell");
    assert!(error.to_string().contains("would-tell-other"), "{error}");

    // The words, then the stop; while it is open the next one is not told by hand either.
    let words = club.post_of(items[0]).await;
    let sheet = club.desk.post(place, words).await.expect("there");
    let at = sheet.lesson.expect("in a lesson");
    assert_eq!(
        (at.title.as_str(), at.step, at.steps),
        ("Crossing lines", 1, 4)
    );
    let stop = club.post_of(items[1]).await;
    let sheet = club.desk.post(place, stop).await.expect("there");
    assert_eq!(sheet.lesson.expect("in a lesson").step, 2);
    let error = desk
        .post_now(place, coach, Some(items[2]))
        .await
        .expect_err("it would tell");
    assert!(error.to_string().contains("\"would-tell\""), "{error}");
    desk.close_now(place, coach, stop).await.expect("closed");
    club.carry_all().await;
    let third = club.post_of(items[2]).await;
    assert!(club.desk.post(place, third).await.is_ok());

    // The example of the last step goes out with its question.
    let last = club.post_of(items[3]).await;
    let sheet = club.desk.post(place, last).await.expect("there");
    let lead = note_lines(&sheet.lesson.expect("in a lesson").lead, str::to_owned);
    assert_eq!(lead[0], "1.h3 A quiet move.");
    assert!(matches!(sheet.content, Content::Question(_)));

    // Where each stands; and all of it is out.
    let sheet = desk.lesson(place, coach, lesson).await.expect("there");
    assert!(matches!(
        sheet.steps[1].parts[0].stands,
        PartStands::Closed { .. }
    ));
    assert!(matches!(
        sheet.steps[2].parts[0].stands,
        PartStands::Open { .. }
    ));
    let error = self::planned(&club, lesson, LessonPlan::InOrder)
        .await
        .expect_err("all out");
    assert!(error.to_string().contains("lesson-all-out"), "{error}");
}

#[tokio::test]
async fn a_lesson_goes_out_at_once_or_by_dates() {
    let club = club().await;
    let lesson = kept(&club).await;
    let local =
        |text: &str| chrono::NaiveDateTime::parse_from_str(text, "%Y-%m-%dT%H:%M").expect("a time");
    let past = planned(&club, lesson, LessonPlan::AtOnce(local("2026-03-01T10:00"))).await;
    assert!(past.expect_err("past").to_string().contains("time-past"));
    assert!(week(&club).await.is_empty(), "nothing is changed");
    let items = planned(&club, lesson, LessonPlan::AtOnce(local("2026-03-03T10:00")))
        .await
        .expect("planned")
        .items;
    let due = week(&club).await;
    let at = |item: ItemId| {
        let found = due.iter().find(|(id, _)| *id == item).expect("waits");
        found.1.clone().expect("due")
    };
    assert_eq!(at(items[0]), "03-03T10:00");
    assert_eq!(at(items[1]), "03-03T10:01");
    assert_eq!(at(items[3]), "03-03T10:02");
    assert_eq!(at(items[2]), "03-04T18:00", "after the reveal it waits for");

    // By dates, those that wait already keep their places.
    let no = planned(
        &club,
        lesson,
        LessonPlan::Dates(vec![(9, local("2026-03-05T10:00"))]),
    )
    .await;
    assert!(
        no.expect_err("no such step")
            .to_string()
            .contains("no-step")
    );
    planned(
        &club,
        lesson,
        LessonPlan::Dates(vec![(4, local("2026-03-09T09:30"))]),
    )
    .await
    .expect("planned");
    let due = week(&club).await;
    let last = due.iter().find(|(id, _)| *id == items[3]).expect("waits");
    assert_eq!(last.1.as_deref(), Some("03-09T09:30"));
}

/// What is shown of each entry of the week: its lesson's step, and for what it waits.
async fn shown(club: &Club) -> Vec<(i64, Vec<WaitsFor>)> {
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    let of = |item: QueueItem| (item.lesson.map_or(0, |at| at.step), item.waits_for);
    queue.into_iter().map(of).collect()
}

#[tokio::test]
async fn a_step_taken_out_goes_back_with_what_waits_for_it() {
    let club = club().await;
    let lesson = kept(&club).await;
    let plan = planned(&club, lesson, LessonPlan::InOrder).await;
    let items = plan.expect("planned").items;
    let (place, coach, desk) = (&club.place, &club.coach, club.desk.coach());
    let local = "2026-03-05T10:00:00".parse().expect("a time");
    desk.fix_time(place, coach, items[1], Some(local))
        .await
        .expect("fixed");
    let before = week(&club).await;
    // The stop at its date is behind the two that are free; what goes on from it, behind both.
    let steps: Vec<i64> = shown(&club).await.iter().map(|(step, _)| *step).collect();
    assert_eq!(steps, [1, 4, 2, 3]);
    assert_eq!(shown(&club).await[3].1.len(), 1);

    let taken = desk.dequeue(place, coach, items[1]).await.expect("out");
    assert_eq!(
        shown(&club).await[1],
        (3, Vec::new()),
        "nothing to wait for"
    );
    let lately = desk.taken_out(place, coach).await.expect("read");
    assert_eq!(lately.len(), 1);
    assert_eq!(lately[0].lesson.as_ref().map(|at| at.step), Some(2));

    let back = desk.put_back_in_week(place, coach, taken).await;
    let back = back.expect("put back");
    let after = week(&club).await;
    let times = |week: &[(ItemId, Option<String>)]| -> Vec<Option<String>> {
        week.iter().map(|(_, at)| at.clone()).collect()
    };
    assert_eq!(times(&after), times(&before));
    assert_eq!(after[2].0, back);
    assert!(matches!(
        &shown(&club).await[3].1[..],
        [WaitsFor::Item { item, .. }] if *item == back
    ));
    let sheet = desk.lesson(place, coach, lesson).await.expect("there");
    assert_eq!(
        sheet.steps[1].parts[0].stands,
        PartStands::Waits { item: back }
    );
    // Once it is back it cannot be put back again.
    let again = desk.put_back_in_week(place, coach, taken).await;
    assert!(
        again
            .expect_err("is back")
            .to_string()
            .contains("not-taken-out")
    );
}

/// A card queued before a lesson waits for the stop that it would tell.
#[tokio::test]
async fn a_card_waits_for_the_stop_of_a_lesson() {
    let club = club().await;
    let (place, coach, desk) = (&club.place, &club.coach, club.desk.coach());
    let new = NewCard {
        definition: "Two long diagonals.".into(),
        fen: "2kr1r2/p2pp2p/np3qp1/2p2p2/5B2/P3PN2/2P1B1PP/4R2K w - - 0 1".into(),
        ..NewCard::default()
    };
    let topic = "Diagonals".parse().expect("a topic");
    let card = desk.write_topic_card(place, coach, topic, &new).await;
    let card = card.expect("written");
    let card = crate::chat::common::card::enqueue(&club.desk, place, coach, card)
        .await
        .expect("queued");
    assert_eq!(week(&club).await[0].0, card);
    let lesson = kept(&club).await;
    let plan = planned(&club, lesson, LessonPlan::InOrder).await;
    let items = plan.expect("planned").items;
    let queue = desk.queue(place).await.expect("read");
    let waits = queue.iter().find(|item| item.id == card).expect("waits");
    let stops: Vec<ItemId> = waits
        .waits_for
        .iter()
        .filter_map(|what| match what {
            WaitsFor::Item { item, .. } => Some(*item),
            WaitsFor::Post { .. } => None,
        })
        .collect();
    assert_eq!(
        stops,
        [items[1], items[2]],
        "what leads there, and it itself"
    );
}

#[tokio::test]
async fn a_bad_step_is_told_with_its_place_and_the_good_ones_stand() {
    let club = club().await;
    let text = LESSON.replace("1. Qa6+", "1. Qb6+");
    let sheet = import(&club, &text).await.expect("taken in");
    let trouble: Vec<Option<i64>> = sheet
        .steps
        .iter()
        .map(|step| step.trouble.as_ref().map(|_| step.line))
        .collect();
    assert_eq!(trouble, [None, Some(8), None, None]);
    assert_eq!(
        sheet.steps.iter().map(|step| step.step).collect::<Vec<_>>(),
        [1, 0, 2, 3]
    );
    let kept = club
        .desk
        .coach()
        .lesson(&club.place, &club.coach, sheet.lesson.expect("kept"))
        .await
        .expect("there");
    assert_eq!(kinds(&kept), ["words", "stop", "question"]);
    // With nothing to keep, nothing is kept.
    let sheet = import(&club, "[Lesson \"Empty\"]\n\n1. Ke9 *").await;
    assert_eq!(sheet.expect("told").lesson, None);
    let rows = club.desk.coach().lessons(&club.place, &club.coach).await;
    assert_eq!(rows.expect("read").len(), 1);
    // A stop that fails is kept, and does not go out without the coach's word.
    let unsound = "[Lesson \"Unsound\"]\n[FEN \"6k1/5ppp/8/8/8/8/r4PPP/1R4K1 b - - 0 1\"]\n\n1... Ra1 {[stop #2]} *";
    let sheet = import(&club, unsound).await.expect("taken in");
    let lesson = sheet.lesson.expect("kept");
    let error = planned(&club, lesson, LessonPlan::InOrder).await;
    assert!(
        error
            .expect_err("unsound")
            .to_string()
            .contains("not-sound")
    );
    let anyway = club
        .desk
        .coach()
        .plan_lesson(
            &club.place,
            &club.coach,
            lesson,
            LessonPlan::InOrder,
            true,
            false,
        )
        .await;
    assert_eq!(anyway.expect("planned").items.len(), 1);
}

#[tokio::test]
async fn a_lesson_that_is_exported_and_taken_in_again_is_the_same() {
    let club = club().await;
    let lesson = kept(&club).await;
    let (place, coach) = (&club.place, &club.coach);
    let desk = club.desk.coach();
    let out = desk
        .export_lesson(place, coach, lesson)
        .await
        .expect("written");
    planned(&club, lesson, LessonPlan::InOrder)
        .await
        .expect("planned");
    desk.remove_lesson(place, coach, lesson)
        .await
        .expect("removed");
    assert!(week(&club).await.is_empty(), "taken out of the week");
    let sheet = import(&club, &out).await.expect("taken in");
    let again = sheet.lesson.expect("kept");
    assert_eq!(sheet.title, "Crossing lines");
    assert_eq!(kinds(&sheet), ["words", "stop", "stop", "question"]);
    assert_eq!(
        desk.export_lesson(place, coach, again)
            .await
            .expect("written"),
        out
    );
    // What its positions are called in a file, and their words, are as they were.
    assert!(
        sheet
            .steps
            .iter()
            .flat_map(|step| &step.parts)
            .all(|part| match &part.holds {
                PartHolds::Stop(checked) => checked.position.is_some(),
                _ => true,
            })
    );
}

#[tokio::test]
async fn words_on_the_way_to_a_stop_that_tell_its_move_wait_for_the_reveal() {
    let club = club().await;
    let text = "[Lesson \"Air\"]\n[FEN \"6k1/5ppp/8/8/8/8/r4PPP/1R4K1 b - - 0 1\"]\n\n1... Ra8 {He lets in the rook: 2.Rxa8 is mate.} 2. Rb8+ {[stop +]} *";
    let text = text.replace(
        "1... Ra8 {He lets in the rook: 2.Rxa8 is mate.}",
        "1... Ra3 {After this Rb8 mates.}",
    );
    let sheet = import(&club, &text.replace("[stop +]", "[stop #1]"))
        .await
        .expect("taken in");
    let part = &sheet.steps[0].parts[0];
    assert_eq!(note_lines(&part.lead, str::to_owned), ["1...Ra3"]);
    let PartHolds::Stop(checked) = &part.holds else {
        panic!("a stop");
    };
    assert_eq!(checked.words.at_reveal, "After this Rb8 mates.");
    assert!(!checked.report.warnings.is_empty());
}

#[tokio::test]
async fn the_same_stop_twice_in_a_lesson_is_told_and_goes_out_once() {
    let club = club().await;
    let stop = "[FEN \"6k1/5ppp/8/8/8/8/r4PPP/1R4K1 w - - 0 1\"]\n\n1. Rb8# {[stop #1]} *\n\n";
    let sheet = import(&club, &format!("[Lesson \"Twice\"]\n{stop}{stop}"))
        .await
        .expect("taken in");
    let stands: Vec<PartStands> = sheet
        .steps
        .iter()
        .flat_map(|step| &step.parts)
        .map(|part| part.stands)
        .collect();
    assert_eq!(stands, [PartStands::Kept, PartStands::AsBefore { step: 1 }]);
    let lesson = sheet.lesson.expect("kept");
    let planned = planned(&club, lesson, LessonPlan::InOrder).await;
    assert_eq!(planned.expect("planned").items.len(), 1);
}
