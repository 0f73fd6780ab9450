//! How long to wait before a chat is started again: twice as long each time, up to a bound, and a little
//! more or less, so that several programs that lost the same server do not come back in one moment.

use std::time::Duration;

use rand::{RngExt as _, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// The first pause.
const FIRST: Duration = Duration::from_secs(1);
/// The longest pause, before jitter.
pub(super) const LONGEST: Duration = Duration::from_secs(300);
/// A pause is up to this share shorter or longer.
const JITTER: f64 = 0.25;

/// The pauses between the attempts at one thing.
#[derive(Debug)]
pub(super) struct Backoff {
    failures: u32,
    random: ChaCha8Rng,
}

impl Backoff {
    /// Pauses of a source of their own: the same seed gives the same ones.
    pub(super) fn new(seed: u64) -> Self {
        Self {
            failures: 0,
            random: ChaCha8Rng::seed_from_u64(seed),
        }
    }

    /// How often it has failed in a row.
    pub(super) fn failures(&self) -> u32 {
        self.failures
    }

    /// It failed once more: how long to wait.
    pub(super) fn next(&mut self) -> Duration {
        let doubled = FIRST.saturating_mul(2u32.saturating_pow(self.failures.min(16)));
        self.failures += 1;
        let share = self.random.random_range(1.0 - JITTER..=1.0 + JITTER);
        doubled.min(LONGEST).mul_f64(share)
    }

    /// It went well for long enough: what comes next is a first failure.
    pub(super) fn reset(&mut self) {
        self.failures = 0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pauses_double_up_to_the_bound_and_keep_near_it_for_ever() {
        let mut backoff = Backoff::new(7);
        for n in 0..200u32 {
            let usual = FIRST
                .saturating_mul(2u32.saturating_pow(n.min(16)))
                .min(LONGEST);
            let pause = backoff.next();
            assert!(
                pause >= usual.mul_f64(0.75) && pause <= usual.mul_f64(1.25),
                "{n}: {pause:?}, not about {usual:?}"
            );
        }
        backoff.reset();
        assert!(backoff.next() <= FIRST.mul_f64(1.25));
    }

    #[test]
    fn a_seed_gives_the_same_pauses_and_another_seed_others() {
        let pauses = |seed| {
            let mut backoff = Backoff::new(seed);
            (0..8).map(|_| backoff.next()).collect::<Vec<_>>()
        };
        assert_eq!(pauses(1), pauses(1));
        assert_ne!(pauses(1), pauses(2));
    }
}
