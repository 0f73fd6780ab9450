//! Snowflakes: ids that carry their moment of making, as Discord's own do.

use std::{
    sync::atomic::{AtomicU64, Ordering},
    time::{SystemTime, UNIX_EPOCH},
};

use serde_json::Value;

/// Milliseconds from 1970 to the first second of 2015, from which Discord counts.
pub const EPOCH_MS: u64 = 1_420_070_400_000;

/// Makes ids that are unique and rise with time.
#[derive(Debug, Default)]
pub struct Ids(AtomicU64);

impl Ids {
    /// The next id.
    pub fn next(&self) -> u64 {
        let fresh = (now_ms() - EPOCH_MS) << 22;
        self.0
            .fetch_update(Ordering::Relaxed, Ordering::Relaxed, |last| {
                Some(fresh.max(last + 1))
            })
            .map_or(fresh, |last| fresh.max(last + 1))
    }
}

/// Milliseconds since 1970.
pub fn now_ms() -> u64 {
    SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .map_or(EPOCH_MS, |d| d.as_millis() as u64)
}

/// The moment an id was made, as RFC 3339.
pub fn timestamp(id: u64) -> String {
    rfc3339((id >> 22) + EPOCH_MS)
}

/// A moment in milliseconds since 1970 as RFC 3339 in UTC.
pub fn rfc3339(ms: u64) -> String {
    let (days, rest) = ((ms / 86_400_000) as i64, ms % 86_400_000);
    let (h, m, s, milli) = (
        rest / 3_600_000,
        rest / 60_000 % 60,
        rest / 1000 % 60,
        rest % 1000,
    );
    // Civil date from days, counting years from March so that the leap day ends a year.
    let z = days + 719_468;
    let era = z.div_euclid(146_097);
    let doe = z.rem_euclid(146_097);
    let yoe = (doe - doe / 1460 + doe / 36_524 - doe / 146_096) / 365;
    let doy = doe - (365 * yoe + yoe / 4 - yoe / 100);
    let mp = (5 * doy + 2) / 153;
    let (day, month) = (
        doy - (153 * mp + 2) / 5 + 1,
        if mp < 10 { mp + 3 } else { mp - 9 },
    );
    let year = yoe + era * 400 + i64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}T{h:02}:{m:02}:{s:02}.{milli:03}000+00:00")
}

/// An id out of JSON, written as text (as Discord does) or as a number (which it accepts).
pub fn id_of(value: &Value) -> Option<u64> {
    match value {
        Value::String(text) => text.parse().ok(),
        Value::Number(number) => number.as_u64(),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_rise_and_carry_their_time() {
        let ids = Ids::default();
        let (a, b) = (ids.next(), ids.next());
        assert!(b > a);
        // Discord's documentation gives this id and its moment as an example.
        assert_eq!(
            timestamp(175_928_847_299_117_063),
            "2016-04-30T11:18:25.796000+00:00"
        );
    }
}
