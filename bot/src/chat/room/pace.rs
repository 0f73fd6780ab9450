//! How fast one member may write. A person never reaches it; a script does, and then waits, so that
//! nobody takes the judge away from the others.

use std::{
    collections::HashMap,
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

/// So many in a row, …
const AT_ONCE: u32 = 20;
/// … and then one in each of these.
const EACH: Duration = Duration::from_secs(1);
/// Members remembered before those who have rested are forgotten.
const MANY: usize = 1_000;

/// What each member has left.
#[derive(Debug, Default)]
pub(super) struct Pace {
    /// The moment at which a member will have rested fully.
    rested: Mutex<HashMap<String, Instant>>,
}

impl Pace {
    /// Counts one request of `user` at `now`; errs with how long to wait when it comes too soon.
    pub(super) fn count(&self, user: &str, now: Instant) -> Result<(), Duration> {
        let mut rested = self.rested.lock().unwrap_or_else(PoisonError::into_inner);
        if rested.len() >= MANY {
            rested.retain(|_, at| *at > now);
        }
        let at = rested.get(user).copied().unwrap_or(now).max(now);
        let owed = at - now + EACH;
        let most = EACH * AT_ONCE;
        if owed > most {
            return Err(owed - most);
        }
        rested.insert(user.to_owned(), now + owed);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_script_waits_and_a_person_does_not() {
        let pace = Pace::default();
        let start = Instant::now();
        let after = |millis| start + Duration::from_millis(millis);
        for _ in 0..AT_ONCE {
            assert_eq!(pace.count("a", start), Ok(()));
        }
        assert_eq!(pace.count("a", start), Err(EACH));
        assert_eq!(pace.count("a", after(400)), Err(Duration::from_millis(600)));
        assert_eq!(pace.count("b", start), Ok(()), "others are not held up");
        assert_eq!(pace.count("a", after(1_000)), Ok(()));
        assert!(pace.count("a", after(1_000)).is_err());
        for second in 2..60 {
            assert_eq!(pace.count("a", after(second * 1_000)), Ok(()));
        }
    }

    #[test]
    fn those_who_have_rested_are_forgotten() {
        let pace = Pace::default();
        let start = Instant::now();
        for n in 0..3 * MANY {
            let now = start + EACH * 2 * u32::try_from(n).expect("small");
            assert_eq!(pace.count(&n.to_string(), now), Ok(()));
        }
        assert!(pace.rested.lock().expect("unpoisoned").len() <= MANY);
    }
}
