//! The times of a day at which a group's posts go out.

use std::{fmt, str::FromStr};

use rusqlite::{
    ToSql,
    types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, ValueRef},
};
use serde::{
    Deserialize, Deserializer, Serialize, Serializer,
    de::{Error as _, SeqAccess, Visitor},
};

use crate::{NoTimeOfDay, TimeOfDay};

/// Times of one day: at least one and at most [`TimesOfDay::MOST`], each once, the earliest first.
///
/// In the store they are one text with a blank between two, `09:00 18:00`; in JSON and in settings files a text
/// where it is one time, and a list of texts where there are several.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct TimesOfDay(Vec<TimeOfDay>);

/// Why times are none of one day.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NoTimesOfDay {
    /// One of them is no time of day.
    #[error(transparent)]
    NoTime(#[from] NoTimeOfDay),
    /// There is none at all.
    #[error("no time of day is given; write at least one such as 18:00")]
    None,
    /// One is there twice.
    #[error("{0} is given twice; write each time of day once")]
    Twice(TimeOfDay),
    /// There are more than [`TimesOfDay::MOST`].
    #[error("{0} times of day are more than {most}; leave some out", most = TimesOfDay::MOST)]
    TooMany(usize),
}

impl TimesOfDay {
    /// The most times of one day: a group that posts more often than every four hours follows none of it.
    pub const MOST: usize = 6;

    /// One time alone.
    pub fn one(time: TimeOfDay) -> Self {
        Self(vec![time])
    }

    /// These times, in whatever order they are given.
    ///
    /// # Errors
    /// When there is none, one is there twice, or they are too many.
    pub fn of(times: impl IntoIterator<Item = TimeOfDay>) -> Result<Self, NoTimesOfDay> {
        let mut times: Vec<TimeOfDay> = times.into_iter().collect();
        times.sort_unstable();
        if let Some(twice) = times.windows(2).find(|pair| pair[0] == pair[1]) {
            return Err(NoTimesOfDay::Twice(twice[0]));
        }
        match times.len() {
            0 => Err(NoTimesOfDay::None),
            1..=Self::MOST => Ok(Self(times)),
            count => Err(NoTimesOfDay::TooMany(count)),
        }
    }

    /// Each of them, the earliest first.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = TimeOfDay> + DoubleEndedIterator {
        self.0.iter().copied()
    }
}

impl From<TimeOfDay> for TimesOfDay {
    fn from(time: TimeOfDay) -> Self {
        Self::one(time)
    }
}

impl fmt::Display for TimesOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, time) in self.0.iter().enumerate() {
            let before = if at == 0 { "" } else { " " };
            write!(f, "{before}{time}")?;
        }
        Ok(())
    }
}

impl FromStr for TimesOfDay {
    type Err = NoTimesOfDay;

    /// Reads times with one blank between two, in any order.
    fn from_str(text: &str) -> Result<Self, NoTimesOfDay> {
        let times = text.split(' ').map(str::parse);
        Self::of(times.collect::<Result<Vec<TimeOfDay>, _>>()?)
    }
}

impl Serialize for TimesOfDay {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0.as_slice() {
            [one] => one.serialize(serializer),
            several => several.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for TimesOfDay {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(OneOrSeveral)
    }
}

/// Reads a time, or a list of them.
struct OneOrSeveral;

impl<'de> Visitor<'de> for OneOrSeveral {
    type Value = TimesOfDay;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a time of day such as \"18:00\", or a list of them")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<TimesOfDay, E> {
        text.parse::<TimeOfDay>()
            .map(TimesOfDay::one)
            .map_err(E::custom)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<TimesOfDay, A::Error> {
        let mut times = Vec::new();
        while let Some(time) = list.next_element()? {
            times.push(time);
        }
        TimesOfDay::of(times).map_err(A::Error::custom)
    }
}

impl ToSql for TimesOfDay {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(self.to_string().into())
    }
}

impl FromSql for TimesOfDay {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        value.as_str()?.parse().map_err(FromSqlError::other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use serde_json::json;

    fn at(hour: u32) -> TimeOfDay {
        TimeOfDay::of(hour, 0)
    }

    #[test]
    fn times_come_the_earliest_first_each_once() {
        let times = TimesOfDay::of([at(18), at(9)]).unwrap();
        assert_eq!(times.iter().collect::<Vec<_>>(), [at(9), at(18)]);
        assert_eq!(times.to_string(), "09:00 18:00");
        assert_eq!("18:00 09:00".parse(), Ok(times));
        assert_eq!(TimesOfDay::of([]), Err(NoTimesOfDay::None));
        assert_eq!(
            TimesOfDay::of([at(18), at(9), at(18)]),
            Err(NoTimesOfDay::Twice(at(18)))
        );
        assert!(TimesOfDay::of((0..6).map(at)).is_ok());
        assert_eq!(
            TimesOfDay::of((0..7).map(at)),
            Err(NoTimesOfDay::TooMany(7))
        );
        for wrong in ["", "18:00 ", "18:00  19:00", "18:00,19:00", "6pm"] {
            assert!(
                matches!(wrong.parse::<TimesOfDay>(), Err(NoTimesOfDay::NoTime(_))),
                "{wrong:?}"
            );
        }
    }

    #[test]
    fn one_time_is_a_text_in_json_and_several_are_a_list() {
        let one = TimesOfDay::one(at(18));
        let two = TimesOfDay::of([at(9), at(18)]).unwrap();
        assert_eq!(json!(one), json!("18:00"));
        assert_eq!(json!(two), json!(["09:00", "18:00"]));
        for (written, read) in [
            (json!("18:00"), &one),
            (json!(["18:00"]), &one),
            (json!(["18:00", "09:00"]), &two),
        ] {
            assert_eq!(
                &serde_json::from_value::<TimesOfDay>(written).unwrap(),
                read
            );
        }
        for (wrong, named) in [
            (json!([]), "no time of day is given"),
            (json!("6pm"), "\"6pm\" is not a time of day"),
            (json!("09:00 18:00"), "is not a time of day"),
            (json!(["09:00", "noon"]), "\"noon\" is not a time of day"),
            (json!(["09:00", "09:00"]), "09:00 is given twice"),
            (json!(18), "a time of day such as \"18:00\", or a list"),
        ] {
            let error = serde_json::from_value::<TimesOfDay>(wrong).unwrap_err();
            assert!(error.to_string().contains(named), "{error}");
        }
    }

    proptest! {
        /// Whatever times a day has come back from their text and from JSON.
        #[test]
        fn times_come_back_as_they_were_written(minutes in proptest::collection::btree_set(0u32..1440, 1..=6)) {
            let times = TimesOfDay::of(minutes.iter().rev().map(|m| TimeOfDay::of(m / 60, m % 60))).unwrap();
            prop_assert_eq!(times.iter().len(), minutes.len());
            prop_assert_eq!(&times.to_string().parse::<TimesOfDay>().unwrap(), &times);
            let back: TimesOfDay = serde_json::from_value(json!(times)).unwrap();
            prop_assert_eq!(back, times);
        }
    }
}
