//! Times as the store writes them: UTC, RFC 3339 with whole seconds and `Z`, so that the order of the
//! text is the order of time.

use chrono::{DateTime, DurationRound, TimeDelta, Utc};
use rusqlite::{Row, types::Type};

/// Cuts a moment to whole seconds, as the store keeps it.
pub fn to_seconds(moment: DateTime<Utc>) -> DateTime<Utc> {
    moment
        .duration_trunc(TimeDelta::seconds(1))
        .unwrap_or(moment)
}

/// The text of a moment.
pub(crate) fn text(moment: DateTime<Utc>) -> String {
    moment.format("%Y-%m-%dT%H:%M:%SZ").to_string()
}

/// The text of a moment that may be missing.
pub(crate) fn maybe(moment: Option<DateTime<Utc>>) -> Option<String> {
    moment.map(text)
}

fn parse(column: usize, text: &str) -> rusqlite::Result<DateTime<Utc>> {
    DateTime::parse_from_rfc3339(text)
        .map(|moment| moment.with_timezone(&Utc))
        .map_err(|error| {
            rusqlite::Error::FromSqlConversionFailure(column, Type::Text, Box::new(error))
        })
}

/// Reads a moment from a column.
pub(crate) fn get(row: &Row<'_>, name: &str) -> rusqlite::Result<DateTime<Utc>> {
    let column = row.as_ref().column_index(name)?;
    parse(column, row.get_ref(column)?.as_str()?)
}

/// Reads a moment that may be missing.
pub(crate) fn get_maybe(row: &Row<'_>, name: &str) -> rusqlite::Result<Option<DateTime<Utc>>> {
    let column = row.as_ref().column_index(name)?;
    match row.get::<_, Option<String>>(column)? {
        Some(text) => parse(column, &text).map(Some),
        None => Ok(None),
    }
}

#[cfg(test)]
mod tests {
    use chrono::TimeZone;
    use proptest::prelude::*;

    use super::*;

    proptest! {
        /// Text order is time order, and whole seconds come back as they went.
        #[test]
        fn the_order_of_the_text_is_the_order_of_time(a in 0i64..253_402_300_799, b in 0i64..253_402_300_799) {
            let (a, b) = (Utc.timestamp_opt(a, 0).unwrap(), Utc.timestamp_opt(b, 0).unwrap());
            prop_assert_eq!(text(a).cmp(&text(b)), a.cmp(&b));
            prop_assert_eq!(parse(0, &text(a)).unwrap(), a);
        }
    }

    #[test]
    fn fractions_are_cut_not_rounded() {
        let moment = Utc.timestamp_opt(1_700_000_000, 999_999_999).unwrap();
        assert_eq!(
            to_seconds(moment),
            Utc.timestamp_opt(1_700_000_000, 0).unwrap()
        );
        assert_eq!(text(moment), text(to_seconds(moment)));
    }
}
