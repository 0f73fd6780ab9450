//! What only a coach may do, and what a coach hands over.

use super::*;
use crate::chess::{
    PositionError,
    check::{Finding, Statement},
    read::Fault,
};
use std::sync::Mutex;

#[tokio::test]
async fn reports_come_in_the_files_order_with_progress() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let file = format!(
        "{FILE}8/8/8/8/8/8/8/K7 w - - id \"no king\"; dm 1;\n6k1/5ppp/8/8/8/8/8/6KR w - - id \"none\"; dm 1;\nnonsense\n"
    );
    let seen = Arc::new(Mutex::new(Vec::new()));
    let progress = {
        let seen = seen.clone();
        Arc::new(move |done, of| seen.lock().expect("unpoisoned").push((done, of)))
    };
    let reports = club
        .desk
        .coach()
        .import(
            &club.place,
            &club.coach,
            "week.epd",
            file.into_bytes(),
            progress,
        )
        .await
        .expect("read");
    let verdicts: Vec<_> = reports.iter().map(|one| one.report.verdict).collect();
    let mut expected = vec![Soundness::Sound; 8];
    expected.extend([Soundness::Illegal, Soundness::Unsound, Soundness::Illegal]);
    assert_eq!(verdicts, expected);
    assert_eq!(reports[8].position, None);
    let [Statement::Found(Finding::Unreadable { row: 9, what, .. })] =
        &reports[8].report.message[..]
    else {
        panic!("{:?}", reports[8].report.message);
    };
    let why = PositionError::NoKing {
        side: shakmaty::Color::Black.into(),
    };
    assert_eq!(what, &Fault::NoPositionHere { why });
    let [Statement::Found(Finding::Unreadable { row: 11, .. })] = &reports[10].report.message[..]
    else {
        panic!("{:?}", reports[10].report.message);
    };
    assert!(
        reports
            .iter()
            .take(8)
            .all(|one| one.position.is_some() && one.picture.is_some())
    );
    assert_eq!(reports[6].report.keys, ["Rxd8+"]);
    let mut seen = seen.lock().expect("unpoisoned").clone();
    seen.sort_unstable();
    assert_eq!(seen, (1..=11).map(|done| (done, 11)).collect::<Vec<_>>());

    // The same file again: the same positions, not new ones.
    let again = club.import(&club.place, FILE).await;
    let ids = |reports: &[CheckedPosition]| {
        reports
            .iter()
            .take(8)
            .map(|one| one.position)
            .collect::<Vec<_>>()
    };
    assert_eq!(ids(&again), ids(&reports));
    assert_eq!(
        club.desk.topics(&club.place).await.expect("read"),
        ["Back rank"]
    );
}

#[tokio::test]
async fn files_that_cannot_be_taken_are_refused_with_a_reason() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let import = async |bytes: Vec<u8>| {
        club.desk
            .coach()
            .import(
                &club.place,
                &club.coach,
                "f.epd",
                bytes,
                Arc::new(|_, _| {}),
            )
            .await
    };
    let empty = import(Vec::new()).await.expect("a report");
    assert_eq!((empty.len(), empty[0].position), (1, None));
    let [Statement::Found(Finding::Unreadable { what, .. })] = &empty[0].report.message[..] else {
        panic!("{:?}", empty[0].report.message);
    };
    assert_eq!(what, &Fault::FileHoldsNothing);
    let large = import(vec![b' '; (16 << 20) + 1])
        .await
        .expect_err("too large")
        .in_english();
    assert!(large.contains("17 MB; 16 MB are the most"), "{large}");
}

#[tokio::test]
async fn a_stranger_may_not_do_what_a_coach_may() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let items = club.fill(&club.place, 1).await;
    let ana = person("Ana");
    club.desk
        .member()
        .enter(&club.place, &ana)
        .await
        .expect("entered");
    let (desk, place) = (&club.desk, &club.place);
    let item = items[0];
    let position = desk.coach().queue(place).await.expect("read")[0]
        .problem()
        .position;
    let settings = Settings::default();
    let refusals = [
        desk.coach()
            .change_settings(place, &ana, settings)
            .await
            .err(),
        desk.coach().add_coach(place, &ana, &ana).await.err(),
        desk.coach()
            .remove_coach(place, &ana, &club.coach.user)
            .await
            .err(),
        desk.coach()
            .import(place, &ana, "f", FILE.into(), Arc::new(|_, _| {}))
            .await
            .err(),
        desk.coach()
            .set_topic(place, &ana, position, None)
            .await
            .err(),
        desk.coach()
            .enqueue(place, &ana, position, true)
            .await
            .err(),
        desk.coach().reorder(place, &ana, item, 0).await.err(),
        desk.coach().fix_time(place, &ana, item, None).await.err(),
        desk.coach().dequeue(place, &ana, item).await.err(),
        desk.coach().taken_out(place, &ana).await.err(),
        desk.coach().preview(place, &ana, position).await.err(),
        desk.coach().post_now(place, &ana, None).await.err(),
        desk.coach().pause(place, &ana, None).await.err(),
        desk.coach().resume(place, &ana).await.err(),
        desk.coach()
            .close_now(place, &ana, PostId::of(1))
            .await
            .err(),
        desk.coach()
            .overrule(
                place,
                &ana,
                ReplyId::of(1),
                Verdict::Solved,
                Points::FULL,
                "",
            )
            .await
            .err(),
        desk.coach().replies(place, &ana, PostId::of(1)).await.err(),
        desk.coach().homework(place, &ana).await.err(),
        desk.coach().shelf(place, &ana, 1).await.err(),
        desk.coach().checked(place, &ana, position).await.err(),
    ];
    for (n, refusal) in refusals.into_iter().enumerate() {
        assert!(
            matches!(refusal, Some(DeskError::NotAllowed(_))),
            "call {n}: {refusal:?}"
        );
    }
    assert!(!desk.is_coach(place, &ana.user).await.expect("read"));
}

#[tokio::test]
async fn what_belongs_to_another_group_is_out_of_reach() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let items = club.fill(&club.place, 1).await;
    let post = club.open("b").await;
    let position = club.desk.coach().queue(&club.place).await.expect("read")[0]
        .problem()
        .position;
    let other = Place {
        chat: ROOM,
        channel: "other".into(),
    };
    club.found(&other, chrono_tz::UTC).await;
    let (desk, coach) = (&club.desk, &club.coach);
    let refusals = [
        desk.coach().dequeue(&other, coach, items[0]).await.err(),
        desk.coach()
            .enqueue(&other, coach, position, true)
            .await
            .err(),
        desk.coach().preview(&other, coach, position).await.err(),
        desk.coach().close_now(&other, coach, post).await.err(),
        desk.post(&other, post).await.err(),
        desk.reveal(&other, post).await.err(),
        desk.coach().replies(&other, coach, post).await.err(),
        desk.member().hint(&other, coach, post).await.err(),
        desk.member()
            .answer(&other, coach, post, "m", "Ra8")
            .await
            .err(),
    ];
    for (n, refusal) in refusals.into_iter().enumerate() {
        assert!(
            matches!(refusal, Some(DeskError::NotFound(_))),
            "call {n}: {refusal:?}"
        );
    }
}

#[tokio::test]
async fn coaches_come_and_go_and_one_stays() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (desk, place, coach) = (&club.desk, &club.place, &club.coach);
    assert!(
        desk.coach()
            .remove_coach(place, coach, &coach.user)
            .await
            .expect_err("the last")
            .in_english()
            .contains("name another")
    );
    let eva = person("Eva\u{202e}");
    desk.coach()
        .add_coach(place, coach, &eva)
        .await
        .expect("named");
    desk.coach()
        .remove_coach(place, &eva, &coach.user)
        .await
        .expect("two of them");
    let coaches = desk.coaches(place).await.expect("read");
    assert_eq!(
        coaches
            .iter()
            .map(|coach| coach.name.as_str())
            .collect::<Vec<_>>(),
        ["Eva"]
    );
    let roll = desk.coach().roll(place, &eva).await.expect("read");
    assert_eq!(roll.len(), 2);
    let twice = desk
        .found_group(place, manners(place), None, Settings::default(), coach)
        .await;
    assert!(twice.expect_err("twice").in_english().contains("already"));
    assert_eq!(
        desk.places(ROOM).await.expect("read"),
        std::slice::from_ref(place)
    );
}

#[tokio::test]
async fn settings_out_of_bounds_are_refused() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let good = Settings::default;
    for (bad, why) in [
        (
            Settings {
                name: "  ".into(),
                ..good()
            },
            "name",
        ),
        (
            Settings {
                open_minutes: 0,
                ..good()
            },
            "minute",
        ),
        (
            Settings {
                open_minutes: 50_000,
                ..good()
            },
            "31 days",
        ),
    ] {
        let error = club
            .desk
            .coach()
            .change_settings(&club.place, &club.coach, bad)
            .await;
        let error = error.expect_err(why).in_english();
        assert!(error.contains(why), "{error}");
    }
}

#[test]
fn what_is_no_time_no_week_and_no_points_is_refused_in_words() {
    let said = |error: DeskError| error.in_english();
    let time = "6pm".parse::<TimeOfDay>().expect_err("no time");
    assert_eq!(
        said(time.into()),
        "\"6pm\" is not a time of day; write hours and minutes such as 18:00."
    );
    let several = |text: &str| said(text.parse::<TimesOfDay>().expect_err(text).into());
    assert_eq!(
        several("6pm"),
        "\"6pm\" is not a time of day; write hours and minutes such as 18:00."
    );
    assert_eq!(
        several("18:00 09:00 18:00"),
        "18:00 is there twice; give each time of day once."
    );
    assert_eq!(
        several("01:00 02:00 03:00 04:00 05:00 06:00 07:00"),
        "A group has at most 6 times of day to post at; leave some out."
    );
    let none = TimesOfDay::of([]).expect_err("none");
    assert_eq!(
        said(none.into()),
        "No time of day is set; give at least one, such as 18:00."
    );
    let long = "half past six in the evening".parse::<TimeOfDay>();
    let long = said(long.expect_err("no time").into());
    assert!(
        long.starts_with("\"half past six in the\" is not"),
        "{long}"
    );
    let days = Weekdays::try_from(0x80).expect_err("no week");
    let days = said(days.into());
    assert!(days.contains("bit 6 is Sunday"), "{days}");
    let points = Points::try_from(6.0).expect_err("too many");
    assert_eq!(said(points.into()), "Points go from 0 to 5.");
}

#[tokio::test]
async fn a_place_without_a_group_says_so() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let nowhere = Place {
        chat: DISCORD,
        channel: "9".into(),
    };
    let error = club
        .desk
        .settings(&nowhere)
        .await
        .expect_err("no group")
        .in_english();
    assert!(error.contains("a coach can set one up here"), "{error}");
}
