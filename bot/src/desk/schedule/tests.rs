use super::*;
use proptest::prelude::*;

fn utc(text: &str) -> DateTime<Utc> {
    DateTime::parse_from_rfc3339(text).expect("a time").to_utc()
}

fn calendar(zone: Tz, time: &str, days: u8) -> Calendar {
    Calendar::of(&Settings {
        zone,
        post_times: time.parse().expect("times of a day"),
        days: days.try_into().expect("days of a week"),
        ..Settings::default()
    })
}

fn free(item: i64) -> Waiting {
    Waiting {
        item: ItemId::of(item),
        fit: true,
        fixed: None,
        after: Vec::new(),
    }
}

/// One that waits until another of the queue is revealed.
fn behind(item: i64, other: i64) -> Waiting {
    Waiting {
        after: vec![After::Item(ItemId::of(other))],
        ..free(item)
    }
}

fn fixed(item: i64, at: &str) -> Waiting {
    Waiting {
        item: ItemId::of(item),
        fit: true,
        fixed: Some(utc(at)),
        after: Vec::new(),
    }
}

fn times(plan: &Plan) -> Vec<(i64, String)> {
    plan.due
        .iter()
        .map(|due| (due.item.get(), due.at.format("%m-%dT%H:%M").to_string()))
        .collect()
}

// Clock changes from the IANA time zone database: Europe/Berlin goes from UTC+1 to UTC+2 on
// 2026-03-29 at 01:00 UTC and back on 2026-10-25 at 01:00 UTC; America/New_York from UTC-5 to
// UTC-4 on 2026-03-08 at 07:00 UTC; Australia/Lord_Howe shifts by half an hour on 2026-04-05;
// Pacific/Apia had no 2011-12-30.
#[test]
fn six_in_the_evening_stays_six_in_the_evening() {
    let berlin = calendar(Tz::Europe__Berlin, "18:00", 0x7f);
    let mut at = utc("2026-03-27T17:30:00Z");
    let mut slots = Vec::new();
    for _ in 0..4 {
        at = berlin.next_after(at).expect("a slot");
        slots.push(at.format("%dT%H:%M").to_string());
    }
    assert_eq!(slots, ["28T17:00", "29T16:00", "30T16:00", "31T16:00"]);
    let mut at = utc("2026-10-23T23:00:00Z");
    let mut slots = Vec::new();
    for _ in 0..3 {
        at = berlin.next_after(at).expect("a slot");
        slots.push(at.format("%dT%H:%M").to_string());
    }
    assert_eq!(slots, ["24T16:00", "25T17:00", "26T17:00"]);
}

#[test]
fn a_time_left_out_moves_to_the_end_of_the_gap() {
    let new_york = calendar(Tz::America__New_York, "02:30", 0x7f);
    assert_eq!(
        new_york.next_after(utc("2026-03-07T12:00:00Z")),
        Some(utc("2026-03-08T07:00:00Z"))
    );
    assert_eq!(
        new_york.next_after(utc("2026-03-08T07:00:00Z")),
        Some(utc("2026-03-09T06:30:00Z"))
    );
    assert_eq!(
        new_york.latest_until(utc("2026-03-08T12:00:00Z")),
        Some(utc("2026-03-08T07:00:00Z"))
    );
}

#[test]
fn a_time_shown_twice_is_taken_once_the_first_time() {
    let berlin = calendar(Tz::Europe__Berlin, "02:30", 0x7f);
    assert_eq!(
        berlin.next_after(utc("2026-10-24T12:00:00Z")),
        Some(utc("2026-10-25T00:30:00Z"))
    );
    assert_eq!(
        berlin.next_after(utc("2026-10-25T00:30:00Z")),
        Some(utc("2026-10-26T01:30:00Z"))
    );
    let lord_howe = calendar(Tz::Australia__Lord_Howe, "01:45", 0x7f);
    assert_eq!(
        lord_howe.next_after(utc("2026-04-04T12:00:00Z")),
        Some(utc("2026-04-04T14:45:00Z"))
    );
    assert_eq!(
        lord_howe.next_after(utc("2026-04-04T14:45:00Z")),
        Some(utc("2026-04-05T15:15:00Z"))
    );
}

#[test]
fn several_times_a_day_keep_to_the_clocks() {
    // In Berlin's spring night 02:00 to 03:00 is left out: what lies in it meets at the end of the gap.
    let night = calendar(Tz::Europe__Berlin, "02:15 02:45 03:00", 0x7f);
    assert_eq!(
        slots(&night, "2026-03-28T12:00:00Z", 4),
        ["29T01:00", "30T00:15", "30T00:45", "30T01:00"]
    );
    assert_eq!(
        night.latest_until(utc("2026-03-29T12:00:00Z")),
        Some(utc("2026-03-29T01:00:00Z"))
    );
    // In autumn 02:30 is shown twice, and is taken the first time.
    let night = calendar(Tz::Europe__Berlin, "03:30 02:30", 0x7f);
    assert_eq!(
        slots(&night, "2026-10-24T12:00:00Z", 3),
        ["25T00:30", "25T02:30", "26T01:30"]
    );
    let twice = calendar(Tz::Europe__Berlin, "09:00 18:00", 0x7f);
    assert_eq!(
        slots(&twice, "2026-03-28T07:30:00Z", 4),
        ["28T08:00", "28T17:00", "29T07:00", "29T16:00"]
    );
    // Wednesdays only.
    let wednesdays = calendar(Tz::UTC, "09:00 18:00", 1 << 2);
    assert_eq!(
        slots(&wednesdays, "2026-11-25T10:00:00Z", 3),
        ["25T18:00", "02T09:00", "02T18:00"]
    );
}

#[test]
fn of_several_missed_slots_the_latest_is_made_up_for_while_it_is_nearer_than_the_next() {
    let twice = calendar(Tz::UTC, "09:00 18:00", 0x7f);
    let settled = utc("2026-11-20T18:00:00Z");
    let queue = [free(1), free(2), free(3)];
    let planned = |now: &str| times(&plan(&twice, utc(now), settled, Pause::No, &queue));
    let evening = [
        (1, "11-25T18:00".into()),
        (2, "11-26T09:00".into()),
        (3, "11-26T18:00".into()),
    ];
    assert_eq!(planned("2026-11-25T20:00:00Z"), evening);
    // Nine hours lie between morning and evening, fifteen between evening and morning.
    assert_eq!(
        planned("2026-11-25T13:30:00Z")[0],
        (1, "11-25T09:00".into())
    );
    assert_eq!(planned("2026-11-25T13:30:01Z"), evening);
    assert_eq!(
        planned("2026-11-25T01:30:00Z")[0],
        (1, "11-24T18:00".into())
    );
    assert_eq!(
        planned("2026-11-25T01:30:01Z")[0],
        (1, "11-25T09:00".into())
    );
    // A pause that ends between two skips the first of them for good.
    let until = Pause::Until(utc("2026-11-25T12:00:00Z"));
    let paused = plan(&twice, utc("2026-11-25T12:30:00Z"), settled, until, &queue);
    assert_eq!(times(&paused), evening);
    // Nothing waits: the slot that has come is empty, and each is by itself.
    let empty =
        |now: &str, settled: &str| plan(&twice, utc(now), utc(settled), Pause::No, &[]).empty;
    assert_eq!(
        empty("2026-11-25T09:00:00Z", "2026-11-24T18:00:00Z"),
        Some(utc("2026-11-25T09:00:00Z"))
    );
    assert_eq!(empty("2026-11-25T17:59:00Z", "2026-11-25T09:00:00Z"), None);
    assert_eq!(
        empty("2026-11-25T18:00:00Z", "2026-11-25T09:00:00Z"),
        Some(utc("2026-11-25T18:00:00Z"))
    );
}

/// The next few slots behind a moment, in UTC.
fn slots(calendar: &Calendar, from: &str, count: usize) -> Vec<String> {
    let next = |at: &DateTime<Utc>| calendar.next_after(*at);
    std::iter::successors(next(&utc(from)), next)
        .take(count)
        .map(|slot| slot.format("%dT%H:%M").to_string())
        .collect()
}

#[test]
fn a_day_that_was_skipped_has_no_slot() {
    let apia = calendar(Tz::Pacific__Apia, "18:00", 0x7f);
    assert_eq!(
        apia.next_after(utc("2011-12-30T05:00:00Z")),
        Some(utc("2011-12-31T04:00:00Z"))
    );
    let fridays = calendar(Tz::Pacific__Apia, "18:00", 1 << 4);
    assert_eq!(
        fridays.next_after(utc("2011-12-29T00:00:00Z")),
        Some(utc("2012-01-06T04:00:00Z"))
    );
}

#[test]
fn the_coach_is_told_of_a_time_left_out() {
    let local = NaiveDate::from_ymd_opt(2026, 3, 29)
        .and_then(|d| d.and_hms_opt(2, 30, 0))
        .expect("a time");
    let error = moment_of(Tz::Europe__Berlin, local)
        .expect_err("left out")
        .in_english();
    assert_eq!(
        error,
        "The clocks in Europe/Berlin leave out 02:30 on 29 March 2026: they are put forward there. Choose 03:00 on 29 March 2026 or later."
    );
}

#[test]
fn only_the_groups_days_have_slots() {
    // 2026-11-25 is a Wednesday.
    let tue_thu = calendar(Tz::UTC, "18:00", 0b1010);
    assert_eq!(
        tue_thu.next_after(utc("2026-11-25T10:00:00Z")),
        Some(utc("2026-11-26T18:00:00Z"))
    );
    assert_eq!(
        tue_thu.next_after(utc("2026-11-26T18:00:00Z")),
        Some(utc("2026-12-01T18:00:00Z"))
    );
    assert_eq!(
        tue_thu.latest_until(utc("2026-11-26T17:59:59Z")),
        Some(utc("2026-11-24T18:00:00Z"))
    );
    let never = calendar(Tz::UTC, "18:00", 0);
    assert_eq!(never.next_after(utc("2026-11-25T10:00:00Z")), None);
}

#[test]
fn a_week_goes_out_one_a_slot_in_order() {
    let daily = calendar(Tz::UTC, "18:00", 0x7f);
    let now = utc("2026-11-25T10:00:00Z");
    let unfit = Waiting {
        after: Vec::new(),
        item: ItemId::of(2),
        fit: false,
        fixed: None,
    };
    let plan = plan(
        &daily,
        now,
        now,
        Pause::No,
        &[
            free(1),
            unfit,
            free(3),
            fixed(4, "2026-11-26T18:00:00Z"),
            fixed(5, "2026-11-26T09:00:00Z"),
            free(6),
        ],
    );
    assert_eq!(
        times(&plan),
        [
            (1, "11-25T18:00".into()),
            (5, "11-26T09:00".into()),
            (4, "11-26T18:00".into()),
            (3, "11-27T18:00".into()),
            (6, "11-28T18:00".into()),
        ]
    );
    assert_eq!(plan.next, Some(utc("2026-11-25T18:00:00Z")));
    assert_eq!(plan.empty, None);
}

/// Every evening at six; a post is revealed an hour before the next.
#[test]
fn what_would_tell_goes_out_after_the_reveal_it_waits_for() {
    let berlin = calendar(Tz::Europe__Berlin, "18:00", 0x7f);
    let now = utc("2026-06-01T12:00:00Z");
    let planned = |waiting: &[Waiting]| times(&plan(&berlin, now, now, Pause::No, waiting));
    // A day after another it waits no longer than it would have to anyway.
    assert_eq!(
        planned(&[free(1), behind(2, 1), free(3)]),
        [
            (1, "06-01T16:00".to_owned()),
            (2, "06-02T16:00".to_owned()),
            (3, "06-03T16:00".to_owned())
        ]
    );
    // Put before what it would tell, it lets that go first.
    assert_eq!(
        planned(&[behind(2, 1), free(1), free(3)]),
        [
            (1, "06-01T16:00".to_owned()),
            (2, "06-02T16:00".to_owned()),
            (3, "06-03T16:00".to_owned())
        ]
    );
    // While a post is open, what is free goes before it.
    let open = |item, until: &str| Waiting {
        after: vec![After::Post(utc(until))],
        ..free(item)
    };
    assert_eq!(
        planned(&[open(2, "2026-06-02T20:00:00Z"), free(3)]),
        [(3, "06-01T16:00".to_owned()), (2, "06-03T16:00".to_owned())]
    );
    // Fixed at a moment when it would tell, it goes out at the next slot after.
    let early = Waiting {
        fixed: Some(utc("2026-06-01T18:00:00Z")),
        ..behind(2, 1)
    };
    assert_eq!(
        planned(&[free(1), early.clone()]),
        [(1, "06-01T16:00".to_owned()), (2, "06-02T16:00".to_owned())]
    );
    // What it waits for may itself be fixed; and it never goes out where that is not to go out at all.
    assert_eq!(
        planned(&[early, fixed(1, "2026-06-01T15:00:00Z")]),
        [(1, "06-01T15:00".to_owned()), (2, "06-02T16:00".to_owned())]
    );
    assert_eq!(
        planned(&[behind(2, 9), free(1)]),
        [(1, "06-01T16:00".to_owned())]
    );
    // Due now, and not yet to be told: the slot passes it over.
    let at = utc("2026-06-01T16:00:00Z");
    let due = plan(
        &berlin,
        at,
        now,
        Pause::No,
        &[open(2, "2026-06-01T20:00:00Z"), free(3)],
    );
    assert_eq!(times(&due)[0], (3, "06-01T16:00".to_owned()));
    let none = plan(
        &berlin,
        at,
        now,
        Pause::No,
        &[open(2, "2026-06-01T20:00:00Z")],
    );
    assert_eq!(times(&none), [(2, "06-02T16:00".to_owned())]);
    assert_eq!(none.empty, None, "something waits");
}

#[test]
fn two_fixed_on_one_moment_do_not_go_out_together() {
    let daily = calendar(Tz::UTC, "18:00", 0x7f);
    let now = utc("2026-11-25T10:00:00Z");
    let both = [
        fixed(1, "2026-11-25T12:00:00Z"),
        fixed(2, "2026-11-25T12:00:00Z"),
    ];
    assert_eq!(
        times(&plan(&daily, now, now, Pause::No, &both)),
        [(1, "11-25T12:00".into()), (2, "11-25T18:00".into())]
    );
    let now = utc("2026-11-25T12:00:00Z");
    let settled = utc("2026-11-25T10:00:00Z");
    assert_eq!(
        times(&plan(&daily, now, settled, Pause::No, &both)),
        [(1, "11-25T12:00".into()), (2, "11-25T18:00".into())]
    );
}

#[test]
fn after_days_of_downtime_one_post_goes_out_late() {
    let daily = calendar(Tz::UTC, "18:00", 0x7f);
    let settled = utc("2026-11-20T18:00:00Z");
    let now = utc("2026-11-25T20:00:00Z");
    let queue = [free(1), free(2), fixed(3, "2026-11-24T12:00:00Z")];
    let first = plan(&daily, now, settled, Pause::No, &queue);
    assert_eq!(
        times(&first),
        [
            (1, "11-25T18:00".into()),
            (2, "11-26T18:00".into()),
            (3, "11-27T18:00".into())
        ]
    );
    // Once it has gone out, nothing else is due today.
    let then = plan(&daily, now, now, Pause::No, &queue[1..]);
    assert_eq!(
        times(&then),
        [(2, "11-26T18:00".into()), (3, "11-27T18:00".into())]
    );
}

#[test]
fn a_slot_missed_by_more_than_half_a_day_is_let_go() {
    let weekly = calendar(Tz::UTC, "18:00", 0b1);
    let settled = utc("2026-11-20T00:00:00Z");
    let on_time = plan(
        &weekly,
        utc("2026-11-24T06:00:00Z"),
        settled,
        Pause::No,
        &[free(1)],
    );
    assert_eq!(times(&on_time), [(1, "11-23T18:00".into())]);
    let too_late = plan(
        &weekly,
        utc("2026-11-24T06:00:01Z"),
        settled,
        Pause::No,
        &[free(1)],
    );
    assert_eq!(times(&too_late), [(1, "11-30T18:00".into())]);
}

#[test]
fn a_fixed_time_just_missed_is_kept_before_the_order() {
    let daily = calendar(Tz::UTC, "18:00", 0x7f);
    let settled = utc("2026-11-24T18:00:00Z");
    let queue = [free(1), fixed(2, "2026-11-25T19:00:00Z")];
    let plan = plan(
        &daily,
        utc("2026-11-25T20:00:00Z"),
        settled,
        Pause::No,
        &queue,
    );
    assert_eq!(
        times(&plan),
        [(2, "11-25T19:00".into()), (1, "11-26T18:00".into())]
    );
    assert!(plan.due.first().is_some_and(|due| due.fixed));
}

#[test]
fn a_pause_skips_its_slots_for_good() {
    let daily = calendar(Tz::UTC, "18:00", 0x7f);
    let settled = utc("2026-11-20T18:00:00Z");
    let until = Pause::Until(utc("2026-11-28T00:00:00Z"));
    let queue = [free(1), fixed(2, "2026-11-26T12:00:00Z")];
    let during = plan(&daily, utc("2026-11-25T19:00:00Z"), settled, until, &queue);
    assert_eq!(
        times(&during),
        [(1, "11-28T18:00".into()), (2, "11-29T18:00".into())]
    );
    // An hour after its end, the slots inside are not taken for missed ones.
    let after = plan(&daily, utc("2026-11-28T01:00:00Z"), settled, until, &queue);
    assert_eq!(
        times(&after),
        [(1, "11-28T18:00".into()), (2, "11-29T18:00".into())]
    );
    assert_eq!(
        plan(
            &daily,
            utc("2026-11-25T19:00:00Z"),
            settled,
            Pause::Open,
            &queue
        ),
        Plan::default()
    );
}

#[test]
fn an_empty_queue_is_seen_once_its_slot_has_come() {
    let daily = calendar(Tz::UTC, "18:00", 0x7f);
    let settled = utc("2026-11-24T18:00:00Z");
    let unfit = [Waiting {
        after: Vec::new(),
        item: ItemId::of(1),
        fit: false,
        fixed: None,
    }];
    let before = plan(
        &daily,
        utc("2026-11-25T17:59:59Z"),
        settled,
        Pause::No,
        &unfit,
    );
    assert_eq!(
        (before.empty, before.next),
        (None, Some(utc("2026-11-25T18:00:00Z")))
    );
    let at = plan(
        &daily,
        utc("2026-11-25T18:00:00Z"),
        settled,
        Pause::No,
        &unfit,
    );
    assert_eq!(at.empty, Some(utc("2026-11-25T18:00:00Z")));
    assert!(at.due.is_empty());
    let told = utc("2026-11-25T18:00:00Z");
    assert_eq!(plan(&daily, told, told, Pause::No, &[]).empty, None);
}

#[test]
fn long_spans_follow_the_clocks_and_short_ones_the_minutes() {
    let berlin = Tz::Europe__Berlin;
    for (from, minutes, to) in [
        ("2026-03-28T17:00:00Z", 23 * 60, "2026-03-29T15:00:00Z"),
        ("2026-10-24T16:00:00Z", 23 * 60, "2026-10-25T16:00:00Z"),
        ("2026-03-29T00:30:00Z", 60, "2026-03-29T01:30:00Z"),
        ("2026-03-28T01:30:00Z", 24 * 60, "2026-03-29T01:00:00Z"),
    ] {
        assert_eq!(later(berlin, utc(from), minutes), utc(to), "{from}");
    }
}

proptest! {
    /// Slots march on, keep to the hour shown by the group's clocks, and agree both ways.
    #[test]
    fn slots_are_in_order_and_found_again(
        seconds in 1_700_000_000i64..2_000_000_000,
        minutes in proptest::collection::btree_set(0u32..1440, 1..=6),
        days in 1u8..128,
        zone in proptest::sample::select(vec![Tz::UTC, Tz::Europe__Berlin, Tz::America__New_York, Tz::Asia__Kolkata, Tz::Australia__Lord_Howe, Tz::Pacific__Chatham, Tz::Africa__Casablanca]),
    ) {
        let times: Vec<String> = minutes.iter().map(|m| format!("{:02}:{:02}", m / 60, m % 60)).collect();
        let calendar = calendar(zone, &times.join(" "), days);
        let moment = DateTime::from_timestamp(seconds, 0).expect("in range");
        let next = calendar.next_after(moment).expect("has days");
        prop_assert!(next > moment);
        prop_assert!(next - moment <= TimeDelta::days(8));
        prop_assert_eq!(calendar.latest_until(next), Some(next));
        prop_assert!(calendar.latest_until(next - TimeDelta::seconds(1)).is_some_and(|slot| slot <= moment));
    }
}
