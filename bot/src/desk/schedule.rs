//! When posts go out: the group's calendar, and the plan that gives each position of the queue its
//! moment. Pure computing on times; touches neither store nor clock. The queue that a coach sees and
//! the errands that go out come from the same [`plan`].
//!
//! A group has a slot at its post time on each of its days, in its own zone. Where clocks change:
//! a time that a spring night leaves out moves to the first moment after the gap, a time that an
//! autumn night has twice is taken the first time, and a day that a zone skipped has no slot.
//!
//! A slot that was missed (the program was down) is made up for when no more than [`LATE`] has passed,
//! and only the latest one: whatever happened, one post goes out late, never a burst. A slot that fell
//! into a pause, or lies before a change of the calendar, was not missed.

use chrono::{
    DateTime, Datelike, Days, LocalResult, NaiveDate, NaiveDateTime, NaiveTime, TimeDelta,
    TimeZone, Utc,
};
use chrono_tz::Tz;

use super::{
    Settings,
    error::{DeskError, Done, bad_request},
};

/// How late a missed slot is still made up for. Common practice: after half a day, better the next one.
pub const LATE: TimeDelta = TimeDelta::hours(12);

/// The days and the hour at which a group meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Calendar {
    zone: Tz,
    time: NaiveTime,
    days: u8,
}

impl Calendar {
    /// The calendar of a group's settings.
    ///
    /// # Errors
    /// When the post time is no time of day.
    pub(super) fn of(settings: &Settings) -> Done<Self> {
        Ok(Self {
            zone: settings.zone,
            time: time_of_day(&settings.post_time)?,
            days: settings.days & 0x7f,
        })
    }

    /// The first slot after `moment`; `None` when the group has no days.
    pub(super) fn next_after(&self, moment: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let mut day = self.day_of(moment).checked_sub_days(Days::new(1))?;
        // A week has every weekday; the second is for slots that a skipped day took with it.
        for _ in 0..16 {
            if let Some(slot) = self.slot_on(day).filter(|slot| *slot > moment) {
                return Some(slot);
            }
            day = day.succ_opt()?;
        }
        None
    }

    /// The latest slot that is not after `moment`.
    pub(super) fn latest_until(&self, moment: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let mut day = self.day_of(moment).succ_opt()?;
        for _ in 0..16 {
            if let Some(slot) = self.slot_on(day).filter(|slot| *slot <= moment) {
                return Some(slot);
            }
            day = day.pred_opt()?;
        }
        None
    }

    fn day_of(&self, moment: DateTime<Utc>) -> NaiveDate {
        moment.with_timezone(&self.zone).date_naive()
    }

    fn slot_on(&self, day: NaiveDate) -> Option<DateTime<Utc>> {
        if self.days >> day.weekday().num_days_from_monday() & 1 == 0 {
            return None;
        }
        match self.zone.from_local_datetime(&day.and_time(self.time)) {
            LocalResult::Single(slot) | LocalResult::Ambiguous(slot, _) => Some(slot.to_utc()),
            LocalResult::None => after_gap(self.zone, day.and_time(self.time))
                .filter(|slot| slot.date_naive() == day)
                .map(|slot| slot.to_utc()),
        }
    }
}

/// A time of day such as `18:00`.
///
/// # Errors
/// When the text is none.
pub(super) fn time_of_day(text: &str) -> Done<NaiveTime> {
    let proper = text.len() == 5 && text.is_ascii();
    NaiveTime::parse_from_str(text, "%H:%M")
        .ok()
        .filter(|_| proper)
        .ok_or_else(|| {
            let shown: String = text.chars().take(20).collect();
            DeskError::BadRequest(format!(
                "\"{shown}\" is not a time of day; write hours and minutes such as 18:00."
            ))
        })
}

/// The moment of a local time that the coach names; the earlier one when the clock shows it twice.
///
/// # Errors
/// When the clocks leave that time out.
pub(super) fn moment_of(zone: Tz, local: NaiveDateTime) -> Done<DateTime<Utc>> {
    match zone.from_local_datetime(&local) {
        LocalResult::Single(moment) | LocalResult::Ambiguous(moment, _) => Ok(moment.to_utc()),
        LocalResult::None => {
            let next = after_gap(zone, local)
                .map(|moment| format!(" Choose {} or later.", moment.format("%H:%M on %-d %B")))
                .unwrap_or_default();
            bad_request(format!(
                "The clocks in {zone} leave out {}: they are put forward there.{next}",
                local.format("%H:%M on %-d %B %Y")
            ))
        }
    }
}

/// The moment `minutes` after another. From half a day on it is counted by the clocks of the zone, so
/// that a reveal an hour before the next post is that on the night of a clock change as well.
pub(super) fn later(zone: Tz, moment: DateTime<Utc>, minutes: u32) -> DateTime<Utc> {
    let span = TimeDelta::minutes(i64::from(minutes));
    let by_the_clocks = || {
        let local = moment
            .with_timezone(&zone)
            .naive_local()
            .checked_add_signed(span)?;
        let there = zone.from_local_datetime(&local).earliest();
        there
            .or_else(|| after_gap(zone, local))
            .map(|there| there.to_utc())
    };
    if span < TimeDelta::hours(12) {
        return moment + span;
    }
    by_the_clocks().unwrap_or(moment + span)
}

/// The first local time after a gap in which `local` lies. No zone has ever skipped more than a day.
fn after_gap(zone: Tz, local: NaiveDateTime) -> Option<DateTime<Tz>> {
    (1..=25 * 60).find_map(|minutes| {
        let later = local.checked_add_signed(TimeDelta::minutes(minutes))?;
        zone.from_local_datetime(&later).earliest()
    })
}

/// A pause of posting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Pause {
    /// None.
    No,
    /// Slots up to and with this moment are skipped.
    Until(DateTime<Utc>),
    /// Until the coach resumes.
    Open,
}

/// A position of the queue, as the plan sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Waiting {
    /// Id of the queue entry.
    pub item: i64,
    /// Whether it may be posted: found sound, or the coach said anyway.
    pub fit: bool,
    /// The moment the coach fixed.
    pub fixed: Option<DateTime<Utc>>,
}

/// When a position goes out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Due {
    /// Id of the queue entry.
    pub item: i64,
    /// The moment; past when it is due now.
    pub at: DateTime<Utc>,
    /// Whether it is the moment the coach fixed.
    pub fixed: bool,
}

/// What the queue comes to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Plan {
    /// The positions that will go out, the earliest first; at most one is due now.
    pub due: Vec<Due>,
    /// The slot that has come while nothing fit was waiting.
    pub empty: Option<DateTime<Utc>>,
    /// When to look again if nothing changes before.
    pub next: Option<DateTime<Utc>>,
}

/// Plans a group's queue, given in order. Slots up to and with `settled` are past: the latest post went
/// out then, or a pause or an old calendar ended.
pub(super) fn plan(
    calendar: &Calendar,
    now: DateTime<Utc>,
    settled: DateTime<Utc>,
    pause: Pause,
    waiting: &[Waiting],
) -> Plan {
    let settled = match pause {
        Pause::Open => return Plan::default(),
        Pause::Until(end) => settled.max(end),
        Pause::No => settled,
    };
    let alive = |moment: &DateTime<Utc>| *moment > settled;
    let late = |moment: &DateTime<Utc>| *moment <= now && now - *moment <= LATE;

    let fit = || waiting.iter().filter(|w| w.fit);
    let slot_now = calendar.latest_until(now).filter(alive).filter(late);
    let fixed_now = fit()
        .filter_map(|w| w.fixed.filter(alive).filter(late).map(|at| (at, w.item)))
        .max_by_key(|(at, item)| (*at, std::cmp::Reverse(*item)));
    let mut fixed_later: Vec<Due> = fit()
        .filter_map(|w| {
            let at = w.fixed.filter(alive).filter(|at| *at > now)?;
            Some(Due {
                item: w.item,
                at,
                fixed: true,
            })
        })
        .collect();
    fixed_later.sort_by_key(|due| due.at);
    // Two fixed on one moment: the second takes the next free slot like any other.
    fixed_later.dedup_by_key(|due| due.at);

    let mut free: Vec<i64> = fit()
        .map(|w| w.item)
        .filter(|item| fixed_later.iter().all(|due| due.item != *item))
        .collect();

    let due_now = match (slot_now, fixed_now) {
        (slot, Some((at, item))) if slot.is_none_or(|slot| at >= slot) => Some(Due {
            item,
            at,
            fixed: true,
        }),
        (Some(at), _) => free.first().map(|&item| Due {
            item,
            at,
            fixed: false,
        }),
        (None, _) => None,
    };
    if let Some(due) = due_now {
        free.retain(|item| *item != due.item);
    }

    let mut due: Vec<Due> = due_now.into_iter().collect();
    let mut slot = calendar.next_after(now.max(settled));
    for item in free {
        while slot.is_some_and(|at| fixed_later.iter().any(|due| due.at == at)) {
            slot = slot.and_then(|at| calendar.next_after(at));
        }
        let Some(at) = slot else { break };
        due.push(Due {
            item,
            at,
            fixed: false,
        });
        slot = calendar.next_after(at);
    }
    due.extend(fixed_later);
    due.sort_by_key(|due| due.at);

    let empty = slot_now.filter(|_| fit().next().is_none());
    let next = due
        .first()
        .map(|due| due.at)
        .or_else(|| calendar.next_after(now.max(settled)));
    Plan { due, empty, next }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn utc(text: &str) -> DateTime<Utc> {
        DateTime::parse_from_rfc3339(text).expect("a time").to_utc()
    }

    fn calendar(zone: Tz, time: &str, days: u8) -> Calendar {
        Calendar::of(&Settings {
            zone,
            post_time: time.into(),
            days,
            ..Settings::default()
        })
        .expect("a calendar")
    }

    fn free(item: i64) -> Waiting {
        Waiting {
            item,
            fit: true,
            fixed: None,
        }
    }

    fn fixed(item: i64, at: &str) -> Waiting {
        Waiting {
            item,
            fit: true,
            fixed: Some(utc(at)),
        }
    }

    fn times(plan: &Plan) -> Vec<(i64, String)> {
        plan.due
            .iter()
            .map(|due| (due.item, due.at.format("%m-%dT%H:%M").to_string()))
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
            .to_string();
        assert_eq!(
            error,
            "The clocks in Europe/Berlin leave out 02:30 on 29 March 2026: they are put forward there. Choose 03:00 on 29 March or later."
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
            item: 2,
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
            item: 1,
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

    #[test]
    fn times_of_day_are_read_strictly() {
        assert!(time_of_day("18:00").is_ok());
        for wrong in ["", "6pm", "25:00", "18:60", "8:00", "18:00:00", "١٨:٠٠"] {
            assert!(time_of_day(wrong).is_err(), "{wrong}");
        }
    }

    proptest! {
        /// Slots march on, keep to the hour shown by the group's clocks, and agree both ways.
        #[test]
        fn slots_are_in_order_and_found_again(
            seconds in 1_700_000_000i64..2_000_000_000,
            minutes in 0u32..1440,
            days in 1u8..128,
            zone in proptest::sample::select(vec![Tz::UTC, Tz::Europe__Berlin, Tz::America__New_York, Tz::Asia__Kolkata, Tz::Australia__Lord_Howe, Tz::Pacific__Chatham, Tz::Africa__Casablanca]),
        ) {
            let calendar = calendar(zone, &format!("{:02}:{:02}", minutes / 60, minutes % 60), days);
            let moment = DateTime::from_timestamp(seconds, 0).expect("in range");
            let next = calendar.next_after(moment).expect("has days");
            prop_assert!(next > moment);
            prop_assert!(next - moment <= TimeDelta::days(8));
            prop_assert_eq!(calendar.latest_until(next), Some(next));
            prop_assert!(calendar.latest_until(next - TimeDelta::seconds(1)).is_some_and(|slot| slot <= moment));
        }
    }
}
