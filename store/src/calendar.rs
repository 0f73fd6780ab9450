//! When a group meets: the days of its week, the time of day, and the zone of both. A column that holds none
//! of these is damaged.

use std::{fmt, str::FromStr};

use chrono::{NaiveTime, Timelike, Weekday, WeekdaySet};
use chrono_tz::Tz;
use rusqlite::{
    Row, ToSql,
    types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, Type, ValueRef},
};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Days of the week. In the store and in JSON a number, whose bit 0 is Monday and bit 6 is Sunday.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct Weekdays(WeekdaySet);

/// A number with bits beyond the seven days of a week.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0} is no set of weekdays; bit 0 is Monday and bit 6 is Sunday, so that the most is 127")]
pub struct NoWeekdays(pub u8);

impl Weekdays {
    /// All seven.
    pub const fn every_day() -> Self {
        Self(WeekdaySet::ALL)
    }

    /// None of them.
    pub const fn none() -> Self {
        Self(WeekdaySet::EMPTY)
    }

    /// Whether the day is one of them.
    pub const fn contains(self, day: Weekday) -> bool {
        self.0.contains(day)
    }

    /// Whether it is none of them.
    pub const fn is_empty(self) -> bool {
        self.0.is_empty()
    }

    /// Each of them once, Monday first.
    pub fn iter(self) -> impl ExactSizeIterator<Item = Weekday> + DoubleEndedIterator {
        self.0.iter(Weekday::Mon)
    }

    /// The number: bit 0 is Monday.
    pub fn bits(self) -> u8 {
        self.iter().map(|day| 1 << day.num_days_from_monday()).sum()
    }
}

impl<const N: usize> From<[Weekday; N]> for Weekdays {
    fn from(days: [Weekday; N]) -> Self {
        Self(WeekdaySet::from_array(days))
    }
}

impl FromIterator<Weekday> for Weekdays {
    fn from_iter<I: IntoIterator<Item = Weekday>>(days: I) -> Self {
        Self(days.into_iter().collect())
    }
}

impl TryFrom<u8> for Weekdays {
    type Error = NoWeekdays;
    fn try_from(bits: u8) -> Result<Self, NoWeekdays> {
        if bits > Self::every_day().bits() {
            return Err(NoWeekdays(bits));
        }
        let set = |day: &Weekday| bits >> day.num_days_from_monday() & 1 == 1;
        Ok(Self::every_day().iter().filter(set).collect())
    }
}

impl From<Weekdays> for u8 {
    fn from(days: Weekdays) -> Self {
        days.bits()
    }
}

impl ToSql for Weekdays {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(self.bits().into())
    }
}

impl FromSql for Weekdays {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        Self::try_from(u8::column_result(value)?).map_err(FromSqlError::other)
    }
}

/// A time of day in whole minutes. In the store, in JSON and in settings files it is written `HH:MM`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TimeOfDay(NaiveTime);

/// A text that is no time of day, cut to [`NoTimeOfDay::MOST`] characters.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("\"{0}\" is not a time of day; write hours and minutes such as 18:00")]
pub struct NoTimeOfDay(String);

impl NoTimeOfDay {
    /// How many characters of a text are shown.
    const MOST: usize = 20;

    /// The text, or its beginning.
    pub fn written(&self) -> &str {
        &self.0
    }
}

impl TimeOfDay {
    /// The time that the program knows; a constant made by it is checked when it is compiled.
    ///
    /// # Panics
    /// When a day has no such hour, or an hour no such minute.
    pub const fn of(hour: u32, minute: u32) -> Self {
        match Self::checked(hour, minute) {
            Some(time) => time,
            None => panic!("a day has hours from 0 to 23, and an hour minutes from 0 to 59"),
        }
    }

    /// The time with this hour, 0 to 23, and minute, 0 to 59; `None` for others.
    pub const fn checked(hour: u32, minute: u32) -> Option<Self> {
        match NaiveTime::from_hms_opt(hour, minute, 0) {
            Some(time) => Some(Self(time)),
            None => None,
        }
    }
}

impl From<TimeOfDay> for NaiveTime {
    fn from(time: TimeOfDay) -> Self {
        time.0
    }
}

impl From<NaiveTime> for TimeOfDay {
    /// Cuts it to whole minutes.
    fn from(time: NaiveTime) -> Self {
        Self::of(time.hour(), time.minute())
    }
}

impl fmt::Display for TimeOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0.hour(), self.0.minute())
    }
}

impl FromStr for TimeOfDay {
    type Err = NoTimeOfDay;

    /// Reads `HH:MM`, two digits each, and nothing else.
    fn from_str(text: &str) -> Result<Self, NoTimeOfDay> {
        let read = || {
            let &[h, hh, b':', m, mm] = text.as_bytes() else {
                return None;
            };
            let two = |tens: u8, ones: u8| {
                let digits = tens.is_ascii_digit() && ones.is_ascii_digit();
                digits.then(|| u32::from(tens - b'0') * 10 + u32::from(ones - b'0'))
            };
            Self::checked(two(h, hh)?, two(m, mm)?)
        };
        read().ok_or_else(|| NoTimeOfDay(text.chars().take(NoTimeOfDay::MOST).collect()))
    }
}

impl Serialize for TimeOfDay {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for TimeOfDay {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

impl ToSql for TimeOfDay {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(self.to_string().into())
    }
}

impl FromSql for TimeOfDay {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        value.as_str()?.parse().map_err(FromSqlError::other)
    }
}

/// A name that is none of the IANA database's.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("\"{0}\" is no time zone that this program knows")]
struct NoZone(String);

/// Reads a time zone, which is kept by its IANA name, from a column.
pub(crate) fn zone(row: &Row<'_>, name: &str) -> rusqlite::Result<Tz> {
    let column = row.as_ref().column_index(name)?;
    let text = row.get_ref(column)?.as_str()?;
    text.parse().map_err(|_| {
        let unknown = NoZone(text.to_owned());
        rusqlite::Error::FromSqlConversionFailure(column, Type::Text, Box::new(unknown))
    })
}

#[cfg(test)]
mod tests {
    use Weekday::{Fri, Mon, Sat, Sun, Thu, Tue, Wed};
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_number_is_days_of_one_week_and_comes_back() {
        for bits in 0..=u8::MAX {
            match Weekdays::try_from(bits) {
                Ok(days) => {
                    assert!(bits < 128, "{bits}");
                    assert_eq!((days.bits(), u8::from(days)), (bits, bits));
                    assert_eq!(days.iter().count() as u32, bits.count_ones());
                    assert_eq!(days.is_empty(), bits == 0);
                }
                Err(wrong) => {
                    assert!(bits >= 128, "{bits}");
                    assert!(wrong.to_string().starts_with(&bits.to_string()), "{wrong}");
                }
            }
        }
        assert_eq!(Weekdays::every_day().bits(), 127);
        assert_eq!(Weekdays::none().bits(), 0);
    }

    #[test]
    fn days_come_in_the_weeks_order_each_once() {
        let days = Weekdays::from([Sun, Tue, Mon, Tue]);
        assert_eq!(days.iter().collect::<Vec<_>>(), [Mon, Tue, Sun]);
        assert_eq!(days, [Tue, Mon, Sun].into_iter().collect());
        assert_eq!(days.bits(), 0b100_0011);
        assert!(days.contains(Sun) && !days.contains(Sat));
        assert_eq!(
            Weekdays::every_day().iter().collect::<Vec<_>>(),
            [Mon, Tue, Wed, Thu, Fri, Sat, Sun]
        );
    }

    #[test]
    fn days_are_a_number_in_json() {
        let days = Weekdays::from([Mon, Wed]);
        assert_eq!(serde_json::json!(days), serde_json::json!(5));
        assert_eq!(serde_json::from_str::<Weekdays>("5").unwrap(), days);
        for wrong in ["128", "255", "256", "-1", "\"5\"", "null"] {
            assert!(serde_json::from_str::<Weekdays>(wrong).is_err(), "{wrong}");
        }
        let wrong = serde_json::from_str::<Weekdays>("128").unwrap_err();
        assert!(wrong.to_string().contains("bit 6 is Sunday"), "{wrong}");
    }

    #[test]
    fn every_minute_of_a_day_comes_back_from_its_text() {
        let mut before = None;
        for (hour, minute) in (0..24).flat_map(|hour| (0..60).map(move |minute| (hour, minute))) {
            let time = TimeOfDay::of(hour, minute);
            let text = format!("{hour:02}:{minute:02}");
            assert_eq!(time.to_string(), text);
            assert_eq!(text.parse(), Ok(time));
            let json = serde_json::json!(time);
            assert_eq!(json, serde_json::json!(text));
            assert_eq!(serde_json::from_value::<TimeOfDay>(json).unwrap(), time);
            assert_eq!(TimeOfDay::from(NaiveTime::from(time)), time);
            assert!(before < Some(time));
            before = Some(time);
        }
        assert_eq!(TimeOfDay::checked(24, 0), None);
        assert_eq!(TimeOfDay::checked(0, 60), None);
    }

    #[test]
    fn a_time_is_cut_to_its_minute() {
        let late = NaiveTime::from_hms_milli_opt(23, 59, 59, 1_999).unwrap();
        assert_eq!(TimeOfDay::from(late), TimeOfDay::of(23, 59));
    }

    #[test]
    fn what_is_no_time_is_named_by_its_beginning() {
        for wrong in [
            "",
            "6pm",
            "24:00",
            "25:00",
            "18:60",
            "8:00",
            " 8:00",
            "+8:00",
            "-1:00",
            "18:0 ",
            "18.00",
            "18:00:00",
            "١٨:٠٠",
            "1é:0",
        ] {
            let error = wrong.parse::<TimeOfDay>().expect_err(wrong);
            assert_eq!(error.written(), wrong);
            assert!(error.to_string().contains("such as 18:00"), "{error}");
        }
        let long = "half past eight in the evening".parse::<TimeOfDay>();
        assert_eq!(long.unwrap_err().written(), "half past eight in t");
        let accents = "é".repeat(30).parse::<TimeOfDay>();
        assert_eq!(accents.unwrap_err().written(), "é".repeat(20));
    }

    proptest! {
        /// Whatever is read is written in the same characters.
        #[test]
        fn what_is_read_as_a_time_was_written_as_one(text in "\\PC{0,6}|[0-9: ]{5}|[0-2][0-9]:[0-5][0-9]") {
            if let Ok(time) = text.parse::<TimeOfDay>() {
                prop_assert_eq!(time.to_string(), text);
            }
        }
    }
}
