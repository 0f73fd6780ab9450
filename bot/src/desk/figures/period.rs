//! Periods in words: "this week", "last 4 weeks", "2026-03-02 to 2026-03-08".
//!
//! Days are those of the group's calendar, from local midnight to local midnight; where a clock change
//! leaves midnight out, the day begins when the clock shows it first. Weeks begin on Monday (ISO 8601).

use chrono::{
    DateTime, Datelike, Days, Months, NaiveDate, NaiveDateTime, NaiveTime, TimeDelta, TimeZone, Utc,
};
use chrono_tz::Tz;
use serde::Serialize;

use crate::desk::{
    Period,
    error::{DeskError, Done, bad_request},
    refusal::{Date, DayOfYear, Refusal},
};

/// What can be written, for the error and for `--help`.
pub(crate) const EXAMPLES: &str = "all, today, yesterday, this week, last week, last 4 weeks, last 10 days, this month, last month, \
     last 3 months, 2026-03, 2026-03-02, 2026-03-02 to 2026-03-08, since 2026-03-02";

/// What a report covers where nothing is said: the same in every chat and at the command line, in the
/// group's zone.
pub const USUAL: &str = "last 4 weeks";

/// The longest span asked for in words, in days: a century.
const LONGEST: u32 = 36_525;

impl Period {
    /// The days from `first` to `last`, both included, either of them open.
    ///
    /// # Errors
    /// When `last` is before `first`.
    pub fn days(first: Option<NaiveDate>, last: Option<NaiveDate>, zone: Tz) -> Done<Self> {
        if let (Some(first), Some(last)) = (first, last)
            && last < first
        {
            return bad_request(Refusal::PeriodBackwards {
                first: first.into(),
                last: last.into(),
            });
        }
        Ok(Self {
            from: first.and_then(|day| beginning(day, zone)),
            to: last.and_then(|day| beginning(day.succ_opt()?, zone)),
            topic: None,
        })
    }

    /// Reads a period written in words or dates, as the group's calendar has it at `now`. A count of
    /// days, weeks or months ends with today; "last week" and "last month" are the whole ones before
    /// this.
    ///
    /// ```
    /// use chrono::{TimeZone, Utc};
    /// use sealed_move::desk::Period;
    ///
    /// let now = Utc.with_ymd_and_hms(2026, 3, 5, 20, 0, 0).unwrap(); // a Thursday
    /// let week = Period::parse("this week", chrono_tz::UTC, now).unwrap();
    /// let covered = sealed_move::words::english().say(&week.covered(chrono_tz::UTC));
    /// assert_eq!(covered, "2 to 8 March 2026");
    /// ```
    ///
    /// # Errors
    /// When the words are none of these; the error lists what can be written.
    pub fn parse(words: &str, zone: Tz, now: DateTime<Utc>) -> Done<Self> {
        let unreadable = || {
            let shown: String = words.chars().take(60).collect();
            DeskError::BadRequest(Refusal::NoPeriod {
                words: shown.into(),
                examples: EXAMPLES.to_string(),
            })
        };
        let (first, last) =
            days_of(words, now.with_timezone(&zone).date_naive()).ok_or_else(unreadable)?;
        Self::days(first, last, zone)
    }

    /// The period of equal length just before this one, in the days of the group's calendar; `None` for
    /// one without a beginning. A period without an end ends now.
    pub fn before(&self, zone: Tz, now: DateTime<Utc>) -> Option<Self> {
        let from = self.from?;
        // In local time, so that a week before a clock change is a week of the calendar.
        let first = shown(from, zone);
        let length =
            (shown(self.to.unwrap_or(now).max(from), zone) - first).max(TimeDelta::days(1));
        let start = first.checked_sub_signed(length)?;
        Some(Self {
            from: Some(local(start, zone)?),
            to: self.from,
            topic: self.topic.clone(),
        })
    }

    /// The period itself once it is over; else the latest whole days of the same length, up to and without
    /// today. `None` for one without a beginning.
    pub(super) fn whole(&self, zone: Tz, now: DateTime<Utc>) -> Option<Self> {
        let from = self.from?;
        if self.to.is_some_and(|to| to <= now) {
            return Some(self.clone());
        }
        let today = now.with_timezone(&zone).date_naive();
        let end = match self.to {
            Some(to) => to,
            None => beginning(today.succ_opt()?, zone)?,
        };
        let length = shown(end, zone) - shown(from, zone);
        let last = today.and_time(NaiveTime::MIN);
        Some(Self {
            from: Some(local(last.checked_sub_signed(length)?, zone)?),
            to: Some(local(last, zone)?),
            topic: self.topic.clone(),
        })
    }

    /// The days it covers, for a heading.
    pub fn covered(&self, zone: Tz) -> Covered {
        let first = self.from.map(|from| from.with_timezone(&zone).date_naive());
        // The last moment covered, not the first one that is not.
        let last = self.to.map(|to| {
            (to - TimeDelta::nanoseconds(1))
                .with_timezone(&zone)
                .date_naive()
        });
        match (first, last) {
            (None, None) => Covered::CoversAll,
            (Some(first), None) => Covered::CoversSince {
                first: first.into(),
            },
            (None, Some(last)) => Covered::CoversUpTo { last: last.into() },
            (Some(first), Some(last)) if first >= last => Covered::CoversDay { day: first.into() },
            (Some(first), Some(last))
                if (first.year(), first.month()) == (last.year(), last.month()) =>
            {
                Covered::CoversDaysOfMonth {
                    first: first.day(),
                    last: last.into(),
                }
            }
            (Some(first), Some(last)) if first.year() == last.year() => Covered::CoversDaysOfYear {
                first: first.into(),
                last: last.into(),
            },
            (Some(first), Some(last)) => Covered::CoversDays {
                first: first.into(),
                last: last.into(),
            },
        }
    }
}

/// The days that a period covers, both ends included.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
#[allow(missing_docs)]
pub enum Covered {
    CoversAll,
    CoversSince {
        first: Date,
    },
    CoversUpTo {
        last: Date,
    },
    CoversDay {
        day: Date,
    },
    /// `first` is the day of the month.
    CoversDaysOfMonth {
        first: u32,
        last: Date,
    },
    CoversDaysOfYear {
        first: DayOfYear,
        last: Date,
    },
    CoversDays {
        first: Date,
        last: Date,
    },
}

/// First and last day, both included.
type Days2 = (Option<NaiveDate>, Option<NaiveDate>);

fn days_of(words: &str, today: NaiveDate) -> Option<Days2> {
    // Bounded before it is taken apart.
    if words.len() > 200 {
        return None;
    }
    let words = words.to_lowercase().replace("..", " to ");
    let words: Vec<&str> = words.split_whitespace().collect();
    let span = |first, last| Some((Some(first), Some(last)));
    let monday =
        today.checked_sub_days(Days::new(today.weekday().num_days_from_monday().into()))?;
    match words[..] {
        [] | ["all"] | ["all", "time"] | ["everything"] => Some((None, None)),
        ["today"] => span(today, today),
        ["yesterday"] => span(today.pred_opt()?, today.pred_opt()?),
        ["this", "week"] => span(monday, monday.checked_add_days(Days::new(6))?),
        ["last", "week"] => span(monday.checked_sub_days(Days::new(7))?, monday.pred_opt()?),
        ["this", "month"] => month(today),
        ["last", "month"] => month(today.with_day(1)?.pred_opt()?),
        ["last", count, unit] => {
            let count: u32 = count.parse().ok().filter(|n| (1..=LONGEST).contains(n))?;
            let after = match unit {
                "day" | "days" => today.checked_sub_days(Days::new(count.into()))?,
                "week" | "weeks" => today.checked_sub_days(Days::new(7 * u64::from(count)))?,
                "month" | "months" => today.checked_sub_months(Months::new(count))?,
                _ => return None,
            };
            span(after.succ_opt()?, today)
        }
        ["since" | "from", first] => Some((Some(day(first)?), None)),
        ["until" | "to", last] => Some((None, Some(day(last)?))),
        [first, "to" | "-", last] | ["from", first, "to", last] => span(day(first)?, day(last)?),
        [one] => match day(one) {
            Some(day) => span(day, day),
            None => month(day(&format!("{one}-01"))?),
        },
        _ => None,
    }
}

fn month(day: NaiveDate) -> Option<Days2> {
    let first = day.with_day(1)?;
    let last = first.checked_add_months(Months::new(1))?.pred_opt()?;
    Some((Some(first), Some(last)))
}

/// A date as `2026-03-02`, nothing shorter.
fn day(text: &str) -> Option<NaiveDate> {
    NaiveDate::parse_from_str(text, "%Y-%m-%d")
        .ok()
        .filter(|day| text.len() == 10 && (1..=9998).contains(&day.year()))
}

/// The first moment of a day.
fn beginning(day: NaiveDate, zone: Tz) -> Option<DateTime<Utc>> {
    local(day.and_time(NaiveTime::MIN), zone)
}

/// What the local clock shows, except that a day begins at midnight even where the clock leaves that out.
fn shown(moment: DateTime<Utc>, zone: Tz) -> NaiveDateTime {
    let local = moment.with_timezone(&zone).naive_local();
    match beginning(local.date(), zone) {
        Some(start) if start == moment => local.date().and_time(NaiveTime::MIN),
        _ => local,
    }
}

/// The moment at which the local clock first shows `time` or, where it leaves that out, goes on.
fn local(time: NaiveDateTime, zone: Tz) -> Option<DateTime<Utc>> {
    // No zone has ever skipped more than a day.
    (0..=25 * 60).find_map(|minutes| {
        let time = time.checked_add_signed(TimeDelta::minutes(minutes))?;
        Some(zone.from_local_datetime(&time).earliest()?.to_utc())
    })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn utc(text: &str) -> DateTime<Utc> {
        DateTime::parse_from_rfc3339(text)
            .expect("a moment of the test")
            .to_utc()
    }

    /// Thursday, 5 March 2026, 20:00 UTC.
    fn thursday() -> DateTime<Utc> {
        utc("2026-03-05T20:00:00Z")
    }

    fn said(covered: &Covered) -> String {
        crate::words::english().say(covered)
    }

    fn words(period: &str) -> String {
        let period = Period::parse(period, Tz::UTC, thursday());
        said(
            &period
                .unwrap_or_else(|error| panic!("{error}"))
                .covered(Tz::UTC),
        )
    }

    #[test]
    fn periods_in_words_are_days_of_the_calendar() {
        for (written, read) in [
            ("", "all posts so far"),
            ("all", "all posts so far"),
            ("today", "5 March 2026"),
            ("Yesterday", "4 March 2026"),
            ("this week", "2 to 8 March 2026"),
            ("last week", "23 February to 1 March 2026"),
            ("last 1 week", "27 February to 5 March 2026"),
            ("last 4 weeks", "6 February to 5 March 2026"),
            ("last 10 days", "24 February to 5 March 2026"),
            ("this month", "1 to 31 March 2026"),
            ("last month", "1 to 28 February 2026"),
            ("last 3 months", "6 December 2025 to 5 March 2026"),
            ("2026-02", "1 to 28 February 2026"),
            ("2024-02-29", "29 February 2024"),
            ("2026-03-02 to 2026-03-08", "2 to 8 March 2026"),
            ("2026-03-02..2026-03-08", "2 to 8 March 2026"),
            ("from 2026-03-02 to 2026-03-08", "2 to 8 March 2026"),
            ("since 2026-03-02", "since 2 March 2026"),
            ("until 2026-03-02", "up to 2 March 2026"),
        ] {
            assert_eq!(words(written), read, "{written}");
        }
    }

    #[test]
    fn what_is_no_period_is_answered_with_what_is() {
        for bad in [
            "soon",
            "last 0 days",
            "last -3 weeks",
            "last 4 fortnights",
            "2026-13",
            "2026-02-30",
            "26-03-02",
            "99999-01-01",
            "last 99999999999999 days",
            "to",
            &"week ".repeat(500),
        ] {
            let error = Period::parse(bad, Tz::UTC, thursday())
                .expect_err(bad)
                .in_english();
            assert!(error.contains("last 4 weeks"), "{error}");
            assert!(error.len() < 500);
        }
        let turned = Period::parse("2026-03-08 to 2026-03-02", Tz::UTC, thursday());
        assert!(
            turned
                .expect_err("turned round")
                .in_english()
                .contains("earlier day first")
        );
    }

    /// Europe put its clocks forward on 29 March 2026 at 01:00 UTC (IANA time zone database).
    #[test]
    fn a_week_with_a_clock_change_is_a_week_of_the_calendar() {
        let zone = Tz::Europe__Lisbon;
        let week = Period::parse("this week", zone, utc("2026-03-31T12:00:00Z")).expect("a period");
        assert_eq!(week.from, Some(utc("2026-03-29T23:00:00Z")));
        assert_eq!(week.to, Some(utc("2026-04-05T23:00:00Z")));
        // The week before began in winter time and lasted 167 hours.
        let before = week.before(zone, thursday()).expect("a week before");
        assert_eq!(before.from, Some(utc("2026-03-23T00:00:00Z")));
        assert_eq!(before.to, week.from);
    }

    /// Lebanon puts its clocks forward at midnight: on 29 March 2026 the day begins at 01:00 local time,
    /// 22:00 UTC the day before (IANA time zone database).
    #[test]
    fn a_day_without_midnight_begins_when_the_clock_goes_on() {
        let day = Period::parse("2026-03-29", Tz::Asia__Beirut, thursday()).expect("a period");
        assert_eq!(day.from, Some(utc("2026-03-28T22:00:00Z")));
        assert_eq!(day.to, Some(utc("2026-03-29T21:00:00Z")));
        assert_eq!(said(&day.covered(Tz::Asia__Beirut)), "29 March 2026");
    }

    /// Iran put its clocks forward at midnight on Monday, 22 March 2010 (IANA time zone database): that week
    /// began at 01:00 local time, and the one before it a week of the calendar earlier all the same.
    #[test]
    fn a_week_without_its_first_midnight_follows_a_whole_one() {
        let zone = Tz::Asia__Tehran;
        let now = utc("2010-03-24T12:00:00Z");
        let this = Period::parse("this week", zone, now).expect("a period");
        assert_eq!(this.from, Some(utc("2010-03-21T20:30:00Z")));
        let last = Period::parse("last week", zone, now).expect("a period");
        assert_eq!(last.from, Some(utc("2010-03-14T20:30:00Z")));
        assert_eq!(this.before(zone, now), Some(last));
    }

    /// The day is the group's, not the server's: at 20:00 UTC it is tomorrow in Auckland.
    #[test]
    fn today_is_the_groups() {
        let today = Period::parse("today", Tz::Pacific__Auckland, thursday()).expect("a period");
        assert_eq!(said(&today.covered(Tz::Pacific__Auckland)), "6 March 2026");
    }

    /// What is not over is compared by whole days up to yesterday, of the same length.
    #[test]
    fn a_period_under_way_is_taken_back_to_whole_days() {
        let zone = Tz::Europe__Lisbon;
        let whole = |words: &str| {
            let period = Period::parse(words, zone, thursday()).expect("a period");
            let whole = period.whole(zone, thursday()).expect("whole days");
            said(&whole.covered(zone))
        };
        assert_eq!(whole("this week"), "26 February to 4 March 2026");
        assert_eq!(whole("last week"), "23 February to 1 March 2026");
        assert_eq!(whole("last 4 weeks"), "5 February to 4 March 2026");
        assert_eq!(whole("since 2026-03-01"), "28 February to 4 March 2026");
        assert_eq!(Period::default().whole(zone, thursday()), None);
    }

    #[test]
    fn what_has_no_beginning_has_nothing_before() {
        assert_eq!(Period::default().before(Tz::UTC, thursday()), None);
        let since = Period::parse("since 2026-03-01", Tz::UTC, thursday()).expect("a period");
        let before = since.before(Tz::UTC, thursday()).expect("a period before");
        assert_eq!(before.from, Some(utc("2026-02-24T04:00:00Z")));
    }

    proptest! {
        #[test]
        fn no_text_makes_it_stumble(text in any::<String>()) {
            let _ = Period::parse(&text, Tz::Europe__Lisbon, thursday());
        }

        /// Whatever the zone and the day: a week has seven local midnights, and periods meet.
        #[test]
        fn this_week_and_last_week_meet(hours in 0i64..400_000, zone in 0usize..600) {
            let zone = chrono_tz::TZ_VARIANTS[zone % chrono_tz::TZ_VARIANTS.len()];
            let now = utc("2000-01-01T00:00:00Z") + TimeDelta::hours(hours);
            let this = Period::parse("this week", zone, now).expect("a period");
            let last = Period::parse("last week", zone, now).expect("a period");
            prop_assert!(this.from <= Some(now) && Some(now) < this.to);
            prop_assert_eq!(last.to, this.from);
            let before = this.before(zone, now).expect("a week before");
            prop_assert_eq!(before.from, last.from);
        }
    }
}
