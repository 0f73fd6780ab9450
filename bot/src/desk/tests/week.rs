//! A week of posts and reveals, by the clock.

use super::*;

#[tokio::test]
async fn a_week_goes_out_on_time_and_is_revealed() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 3).await;
    assert_eq!(club.errand().await.as_ref().map(said), None);
    assert_eq!(
        waits_until(&club.desk, ROOM).await,
        Some(at("2026-11-23T18:00:00Z"))
    );

    club.set("2026-11-23T17:59:59Z");
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-23T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
    let open = club
        .desk
        .open_post(&club.place)
        .await
        .expect("read")
        .expect("open");
    assert_eq!(open.closes_at, at("2026-11-24T17:00:00Z"));
    let problem = open.problem();
    assert_eq!(
        (problem.side, problem.stipulation),
        (shakmaty::Color::White.into(), Stipulation::Mate(1))
    );
    assert_eq!(open.topic.as_deref(), Some("Back rank"));
    assert_eq!(
        waits_until(&club.desk, ROOM).await,
        Some(at("2026-11-24T17:00:00Z"))
    );

    club.set("2026-11-24T17:00:00Z");
    assert_eq!(club.carry_all().await, ["reveal 1"]);
    let reveal = club
        .desk
        .reveal(&club.place, open.post)
        .await
        .expect("closed");
    assert_eq!(reveal.solution().solution, ["1.Ra8#"]);
    assert_eq!(reveal.solution().patterns, ["back-rank"]);
    assert_eq!((reveal.took_part, reveal.solution().solved.len()), (0, 0));

    club.set("2026-11-24T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 2"]);
    club.set("2026-11-25T18:00:00Z");
    assert_eq!(club.carry_all().await, ["reveal 2", "post 3"]);
    let rows = club.desk.posts(&club.place, 10).await.expect("read");
    assert_eq!(
        rows.iter()
            .map(|row| (row.number, row.open))
            .collect::<Vec<_>>(),
        [(3, true), (2, false), (1, false)]
    );
}

#[tokio::test]
async fn six_oclock_is_six_oclock_on_both_sides_of_both_clock_changes() {
    // Europe/Berlin, IANA: forward on 2026-03-29, back on 2026-10-25, both at 01:00 UTC.
    for (start, slots) in [
        (
            "2026-03-27T20:00:00Z",
            [
                "2026-03-28T17:00:00Z",
                "2026-03-29T16:00:00Z",
                "2026-03-30T16:00:00Z",
            ],
        ),
        (
            "2026-10-23T20:00:00Z",
            [
                "2026-10-24T16:00:00Z",
                "2026-10-25T17:00:00Z",
                "2026-10-26T17:00:00Z",
            ],
        ),
    ] {
        let club = Club::new(start, chrono_tz::Europe::Berlin).await;
        club.fill(&club.place, 3).await;
        let due: Vec<_> = club
            .desk
            .coach()
            .queue(&club.place)
            .await
            .expect("read")
            .iter()
            .map(|item| item.due_at)
            .collect();
        assert_eq!(due, slots.map(|slot| Some(at(slot))));
        for (n, slot) in slots.iter().enumerate() {
            club.clock.set(at(slot) - chrono::TimeDelta::seconds(1));
            let before = club.carry_all().await;
            assert!(
                before.iter().all(|said| said.starts_with("reveal")),
                "{before:?}"
            );
            club.set(slot);
            assert_eq!(club.carry_all().await, [format!("post {}", n + 1)]);
        }
    }
}

#[tokio::test]
async fn sleeping_and_waking_follow_the_clock_and_the_queue() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 2).await;
    let waiting = tokio::spawn({
        let desk = club.desk.clone();
        async move { desk.rounds().next_errand(ROOM).await }
    });
    tokio::task::yield_now().await;
    club.set("2026-11-23T18:00:00Z");
    let errand = waiting.await.expect("ran").expect("an errand");
    assert_eq!(said(&errand), "post 1");
    club.carried(&errand).await;

    // Nothing is due for hours; the coach's word wakes the one who waits.
    let waiting = tokio::spawn({
        let desk = club.desk.clone();
        async move { desk.rounds().next_errand(ROOM).await }
    });
    tokio::task::yield_now().await;
    club.desk
        .coach()
        .post_now(&club.place, &club.coach, None)
        .await
        .expect("posted");
    let errand = waiting.await.expect("ran").expect("an errand");
    assert_eq!(said(&errand), "post 2");
}

#[tokio::test]
async fn what_another_program_writes_is_noticed() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    let other = club.elsewhere();
    let waiting = tokio::spawn({
        let desk = club.desk.clone();
        async move { desk.rounds().next_errand(ROOM).await }
    });
    tokio::task::yield_now().await;
    other
        .coach()
        .post_now(&club.place, &club.coach, None)
        .await
        .expect("noted");
    let errand = waiting.await.expect("ran").expect("an errand");
    assert!(said(&errand).starts_with("post 1"));
}

#[tokio::test]
async fn two_groups_keep_their_own_time() {
    let club = Club::new("2026-11-23T00:00:00Z", chrono_tz::Asia::Kolkata).await;
    let other = Place {
        chat: ROOM,
        channel: "other".into(),
    };
    club.found(&other, chrono_tz::America::New_York).await;
    let elsewhere = Place {
        chat: DISCORD,
        channel: "7".into(),
    };
    club.found(&elsewhere, chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.fill(&other, 1).await;
    club.fill(&elsewhere, 1).await;

    club.set("2026-11-23T12:30:00Z");
    let errand = club.errand().await.expect("due in Kolkata");
    assert_eq!(
        (errand.place.clone(), said(&errand)),
        (club.place.clone(), "post 1".into())
    );
    club.carried(&errand).await;
    assert!(club.errand().await.is_none());
    club.set("2026-11-23T23:00:00Z");
    let errand = club.errand().await.expect("due in New York");
    assert_eq!(
        (errand.place.clone(), said(&errand)),
        (other, "post 1".into())
    );
    let errand = errand_in(&club.desk, DISCORD).await.expect("due there too");
    assert_eq!(errand.place, elsewhere);
}

#[tokio::test]
async fn an_empty_queue_is_told_once_a_slot_and_nothing_unchecked_goes_out() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    // Two keys: not sound, and so not queued without the coach's word.
    let twice = "6k1/5ppp/8/8/8/8/8/RR4K1 w - - id \"twice\"; dm 1;";
    let checked = club.import(&club.place, twice).await;
    assert_eq!(checked[0].report.verdict, Soundness::SeveralKeys);
    let position = checked[0].position.expect("kept");
    let refused = club
        .desk
        .coach()
        .enqueue(&club.place, &club.coach, position, false)
        .await;
    assert!(
        refused
            .expect_err("refused")
            .in_english()
            .contains("more than one key")
    );

    club.set("2026-11-23T18:00:00Z");
    let told = club.carry_all().await;
    assert_eq!(told.len(), 1);
    assert!(told[0] == "coach: {\"is\":\"slot-empty\"}", "{told:?}");
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-23T23:00:00Z");
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-24T18:00:00Z");
    assert_eq!(club.carry_all().await.len(), 1);

    // What is queued after the slot waits for the next one, or for the coach.
    club.desk
        .coach()
        .enqueue(&club.place, &club.coach, position, true)
        .await
        .expect("the coach's word");
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-25T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
}

#[tokio::test]
async fn a_pause_holds_the_week_and_not_the_reveals() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 3).await;
    club.set("2026-11-23T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
    let until = at("2026-11-26T12:00:00Z");
    club.desk
        .coach()
        .pause(&club.place, &club.coach, Some(until))
        .await
        .expect("paused");
    assert_eq!(
        club.desk.coach().paused(&club.place).await.expect("read"),
        Some(Some(until))
    );
    let due: Vec<_> = club
        .desk
        .coach()
        .queue(&club.place)
        .await
        .expect("read")
        .iter()
        .map(|item| item.due_at)
        .collect();
    assert_eq!(
        due,
        [
            Some(at("2026-11-26T18:00:00Z")),
            Some(at("2026-11-27T18:00:00Z"))
        ]
    );
    club.set("2026-11-25T18:00:00Z");
    assert_eq!(club.carry_all().await, ["reveal 1"]);
    club.set("2026-11-26T12:30:00Z");
    assert!(club.carry_all().await.is_empty());
    assert_eq!(
        club.desk.coach().paused(&club.place).await.expect("read"),
        None
    );
    club.set("2026-11-26T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 2"]);

    club.desk
        .coach()
        .pause(&club.place, &club.coach, None)
        .await
        .expect("paused");
    assert!(
        club.desk
            .coach()
            .queue(&club.place)
            .await
            .expect("read")
            .iter()
            .all(|item| item.due_at.is_none())
    );
    club.set("2026-11-28T19:00:00Z");
    assert_eq!(club.carry_all().await, ["reveal 2"]);
    // Resumed an hour after the slot: that slot fell into the pause and is not made up for.
    club.desk
        .coach()
        .resume(&club.place, &club.coach)
        .await
        .expect("resumed");
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-29T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 3"]);
}

#[tokio::test]
async fn a_new_calendar_posts_nothing_for_slots_that_are_past() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.set("2026-11-23T12:00:00Z");
    let settings = Settings {
        post_times: TimeOfDay::of(10, 0).into(),
        ..club.desk.settings(&club.place).await.expect("read")
    };
    club.desk
        .coach()
        .change_settings(&club.place, &club.coach, settings)
        .await
        .expect("changed");
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-24T10:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
}

#[tokio::test]
async fn a_group_that_meets_twice_a_day_posts_twice_a_day() {
    let club = Club::new("2026-03-28T07:00:00Z", chrono_tz::Europe::Berlin).await;
    let settings = Settings {
        post_times: "09:00 18:00".parse().expect("times"),
        ..club.desk.settings(&club.place).await.expect("read")
    };
    club.desk
        .coach()
        .change_settings(&club.place, &club.coach, settings)
        .await
        .expect("changed");
    club.fill(&club.place, 3).await;
    club.set("2026-03-28T08:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
    club.set("2026-03-28T17:00:00Z");
    assert_eq!(club.carry_all().await, ["post 2"]);
    let open = club.desk.posts(&club.place, 9).await.expect("read");
    assert_eq!(open.iter().filter(|row| row.open).count(), 2);
    // After the clock change the first post is revealed at 08:00 by the clocks; the morning's slot was missed, the
    // evening's is made up for, and nothing is due twice.
    club.set("2026-03-29T17:30:00Z");
    assert_eq!(club.carry_all().await, ["reveal 1", "reveal 2", "post 3"]);
    club.set("2026-03-30T07:00:00Z");
    let told = club.carry_all().await;
    assert_eq!(told, ["coach: {\"is\":\"slot-empty\"}"]);
    club.set("2026-03-30T16:00:00Z");
    let told = club.carry_all().await;
    assert!(
        told.contains(&"coach: {\"is\":\"slot-empty\"}".to_owned()),
        "{told:?}"
    );
}

#[tokio::test]
async fn a_fixed_time_is_kept_and_a_wrong_one_refused() {
    let club = Club::new("2026-03-27T09:00:00Z", chrono_tz::Europe::Berlin).await;
    let items = club.fill(&club.place, 3).await;
    let local = |text: &str| text.parse::<chrono::NaiveDateTime>().expect("a time");
    let fix = async |item: ItemId, text: &str| {
        club.desk
            .coach()
            .fix_time(&club.place, &club.coach, item, Some(local(text)))
            .await
    };
    assert!(
        fix(items[0], "2026-03-27T09:59:00")
            .await
            .expect_err("past")
            .in_english()
            .contains("is past")
    );
    assert!(
        fix(items[0], "2026-03-29T02:30:00")
            .await
            .expect_err("left out")
            .in_english()
            .contains("leave out 02:30")
    );
    fix(items[2], "2026-03-29T21:00:00").await.expect("fixed");
    assert!(
        fix(items[0], "2026-03-29T21:00:00")
            .await
            .expect_err("taken")
            .in_english()
            .contains("already")
    );

    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    assert_eq!(queue[2].due_at, Some(at("2026-03-29T19:00:00Z")));
    assert!(queue[2].fixed && !queue[0].fixed);
    for (now, what) in [
        ("2026-03-27T17:00:00Z", "post 1"),
        ("2026-03-28T17:00:00Z", "post 2"),
        ("2026-03-29T19:00:00Z", "post 3"),
    ] {
        club.set(now);
        let carried = club.carry_all().await;
        assert_eq!(
            carried.last().map(String::as_str),
            Some(what),
            "{carried:?}"
        );
    }
}

#[tokio::test]
async fn the_order_is_the_coachs() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let items = club.fill(&club.place, 3).await;
    club.desk
        .coach()
        .reorder(&club.place, &club.coach, items[2], 0)
        .await
        .expect("moved");
    club.desk
        .coach()
        .dequeue(&club.place, &club.coach, items[0])
        .await
        .expect("taken out");
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    assert_eq!(
        queue.iter().map(|item| item.id).collect::<Vec<_>>(),
        [items[2], items[1]]
    );
    assert_eq!(queue[0].due_at, Some(at("2026-11-23T18:00:00Z")));
    let shelf = club
        .desk
        .coach()
        .shelf(&club.place, &club.coach, 10)
        .await
        .expect("read");
    assert_eq!(
        shelf
            .iter()
            .map(|one| one.report.id.as_str())
            .collect::<Vec<_>>(),
        ["a"]
    );
    let preview = club
        .desk
        .coach()
        .preview(&club.place, &club.coach, queue[0].problem().position)
        .await
        .expect("laid out");
    assert_eq!(
        (preview.number, preview.post, preview.closes_at),
        (1, PostId::of(0), at("2026-11-24T17:00:00Z"))
    );
}

#[tokio::test]
async fn a_failing_chat_is_tried_again_later_and_the_coach_is_told() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.set("2026-11-23T18:00:00Z");
    let mut said_so = Vec::new();
    for pause in [15, 30, 60] {
        let errand = club.errand().await.expect("the post");
        said_so.push(said(&errand));
        club.desk
            .rounds()
            .errand_failed(&errand, Sentence::plain("The channel is gone."))
            .await
            .expect("noted");
        let next = club.clock.now() + chrono::TimeDelta::seconds(pause);
        if pause < 60 {
            assert_eq!(waits_until(&club.desk, ROOM).await, Some(next));
        } else {
            let told = club.errand().await.expect("a word to the coach");
            let notice = Notice::PostNotSent {
                kind: KindName::Problem,
                number: 1,
                why: Sentence::plain("The channel is gone."),
            };
            assert_eq!(said(&told), format!("coach: {}", serde_json::json!(notice)));
            club.carried(&told).await;
        }
        club.clock.set(next);
    }
    assert_eq!(said_so, ["post 1", "post 1 again", "post 1 again"]);
    assert_eq!(club.carry_all().await, ["post 1 again"]);
}

#[tokio::test]
async fn a_post_gives_nothing_away() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let post = club.open("two").await;
    let sheet = club.desk.post(&club.place, post).await.expect("open");
    let shown = format!(
        "{sheet:?} {} {:?}",
        alt(sheet.problem().picture, english()),
        sheet.topic
    );
    for secret in ["Rxd8", "d8#", "Two rooks against two", "key"] {
        assert!(!shown.contains(secret), "{secret} in {shown}");
    }
    let sealed = club
        .desk
        .reveal(&club.place, post)
        .await
        .expect_err("sealed")
        .in_english();
    assert!(sealed.contains("sealed until the reveal"), "{sealed}");

    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closing");
    let errand = club.errand().await.expect("the reveal");
    let logged = format!("{errand:?}");
    assert!(!logged.contains("Rxd8"), "{logged}");
    let ErrandKind::Reveal {
        sheet,
        again: false,
    } = &errand.kind
    else {
        panic!("a reveal for the first time, not {errand:?}");
    };
    assert_eq!(sheet.solution().solution, ["1.Rxd8+ Rxd8 2.Rxd8#"]);
    assert_eq!(sheet.solution().comment, "Two rooks against two.");
}
