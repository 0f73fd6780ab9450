//! How much work the desk may do at a time, and what its pictures say.

use std::{num::NonZeroUsize, time::Duration};

use crate::diagram::text::Say;

/// Limits of the desk's computing, and what it takes from the floor above.
#[derive(Clone, Debug)]
pub struct DeskOptions {
    /// Seconds that the check of one position may take.
    pub check_seconds: f64,
    /// Seconds that the verdict on one reply may take.
    pub reply_seconds: f64,
    /// Computations at a time; checks, proofs of posted solutions, and verdicts are counted apart, so
    /// that a long import never keeps a member waiting.
    pub threads: usize,
    /// Bytes of the prover's table, for each computation.
    pub table_bytes: usize,
    /// Problems kept ready for judging.
    pub problems: usize,
    /// An engine to ask for a second opinion where a check could not prove its verdict.
    pub engine: Option<super::opinion::EngineSettings>,
    /// How often another process's writes (the command line's) are looked for. SQLite tells nobody of
    /// them; a look is one integer, and half a minute is soon enough for a week's plan.
    pub look_for_others: Duration,
    /// How positions are checked.
    pub check: crate::chess::check::CheckOptions,
    /// How each language says what stands in pictures.
    pub pictures: Say,
}

impl DeskOptions {
    /// The usual limits, with pictures that speak so.
    pub fn speaking(pictures: Say) -> Self {
        Self {
            pictures,
            check_seconds: 20.0,
            reply_seconds: 5.0,
            threads: std::thread::available_parallelism().map_or(1, NonZeroUsize::get),
            table_bytes: 64 << 20,
            problems: 128,
            look_for_others: Duration::from_secs(30),
            engine: None,
            check: crate::chess::check::CheckOptions::default(),
        }
    }
}
