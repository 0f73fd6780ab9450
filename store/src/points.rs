//! Points of one post: what a reply is worth, and what a wrong move or a hint takes off. Sums over posts are no
//! such points; they have no upper end.

use std::str::FromStr;

use rusqlite::{
    ToSql,
    types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, ValueRef},
};
use serde::{Deserialize, Serialize};

/// Points from 0 to 5, to a hundredth, which is where they are rounded. In the store and in JSON a number.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(try_from = "f64", into = "f64")]
pub struct Points {
    hundredths: u16,
}

/// A number that is no points of one post.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{0} is out of the scale; points are from 0 to 5")]
pub struct NoPoints(pub f64);

impl Points {
    /// None.
    pub const ZERO: Self = Self { hundredths: 0 };
    /// For a full solution.
    pub const FULL: Self = Self { hundredths: 500 };

    /// Points that the program knows; a constant made by it is checked when it is compiled.
    ///
    /// # Panics
    /// When they are out of the scale.
    pub const fn of(points: f64) -> Self {
        match Self::checked(points) {
            Some(points) => points,
            None => panic!("points are from 0 to 5"),
        }
    }

    /// A number from 0 to 5, rounded to a hundredth; `None` for others.
    pub const fn checked(points: f64) -> Option<Self> {
        if points >= 0.0 && points <= 5.0 {
            let hundredths = (points * 100.0).round() as u16;
            return Some(Self { hundredths });
        }
        None
    }

    /// What is left of them when others are taken off; never less than nothing.
    pub const fn less(self, off: Self) -> Self {
        Self {
            hundredths: self.hundredths.saturating_sub(off.hundredths),
        }
    }

    /// Both together, and no more than [`Points::FULL`].
    pub const fn and(self, more: Self) -> Self {
        let hundredths = self.hundredths + more.hundredths;
        if hundredths < Self::FULL.hundredths {
            return Self { hundredths };
        }
        Self::FULL
    }

    /// So many times, and no more than [`Points::FULL`].
    pub fn times(self, count: usize) -> Self {
        // Five hundred times the least there is are all.
        (0..count.min(500)).fold(Self::ZERO, |sum, _| sum.and(self))
    }

    /// Whether it is none.
    pub const fn is_zero(self) -> bool {
        self.hundredths == 0
    }
}

impl TryFrom<f64> for Points {
    type Error = NoPoints;
    fn try_from(points: f64) -> Result<Self, NoPoints> {
        Self::checked(points).ok_or(NoPoints(points))
    }
}

impl From<Points> for f64 {
    fn from(points: Points) -> Self {
        Self::from(points.hundredths) / 100.0
    }
}

impl FromStr for Points {
    type Err = NoPoints;
    fn from_str(text: &str) -> Result<Self, NoPoints> {
        text.parse().unwrap_or(f64::NAN).try_into()
    }
}

impl ToSql for Points {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(f64::from(*self).into())
    }
}

impl FromSql for Points {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        Self::try_from(f64::column_result(value)?).map_err(FromSqlError::other)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn every_hundredth_comes_back_from_its_number() {
        for hundredths in 0..=500u16 {
            let number = f64::from(hundredths) / 100.0;
            let points = Points::of(number);
            assert_eq!((points.hundredths, f64::from(points)), (hundredths, number));
            let json = serde_json::json!(points);
            assert_eq!(json, serde_json::json!(number));
            assert_eq!(serde_json::from_value::<Points>(json).unwrap(), points);
        }
        assert_eq!(serde_json::from_str::<Points>("5").unwrap(), Points::FULL);
        assert_eq!(
            (Points::of(0.0), Points::of(5.0)),
            (Points::ZERO, Points::FULL)
        );
    }

    #[test]
    fn numbers_are_rounded_to_a_hundredth() {
        for (number, rounded) in [
            (1.0 / 3.0, 0.33),
            (2.0 / 3.0, 0.67),
            (0.004, 0.0),
            (-0.0, 0.0),
            (4.999, 5.0),
        ] {
            assert_eq!(Points::of(number), Points::of(rounded), "{number}");
        }
    }

    #[test]
    fn what_is_off_the_scale_is_no_points() {
        for wrong in [
            -0.001,
            5.001,
            -1.0,
            6.0,
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
        ] {
            assert_eq!(Points::checked(wrong), None, "{wrong}");
            let error = Points::try_from(wrong).unwrap_err().to_string();
            assert!(
                error.starts_with(&wrong.to_string()) && error.contains("from 0 to 5"),
                "{error}"
            );
        }
        for wrong in ["-1", "5.01", "1e9", "\"3\"", "null"] {
            assert!(serde_json::from_str::<Points>(wrong).is_err(), "{wrong}");
        }
        for wrong in ["", "five", "5,5", "6", "NaN"] {
            assert!(wrong.parse::<Points>().is_err(), "{wrong}");
        }
        assert_eq!("3.5".parse(), Ok(Points::of(3.5)));
    }

    proptest! {
        /// Sums and rests stay on the scale, and are what the hundredths come to.
        #[test]
        fn reckoning_stays_on_the_scale(a in 0u16..=500, b in 0u16..=500, count in 0usize..1000) {
            let (p, q) = (Points { hundredths: a }, Points { hundredths: b });
            prop_assert_eq!(p.less(q).hundredths, a.saturating_sub(b));
            prop_assert_eq!(p.and(q).hundredths, (a + b).min(500));
            prop_assert_eq!(usize::from(p.times(count).hundredths), (usize::from(a) * count).min(500));
        }
    }
}
