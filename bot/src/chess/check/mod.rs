//! The verdict on a position before it is posted: does its stipulation hold, and with one key only?

use serde::{Deserialize, Serialize};
use shakmaty::Chess;

use super::{
    Budget, Solution, Stipulation,
    read::{Entry, ReadError},
};

/// Version of the checker; a stored check with another version is done again.
pub const CHECKER_VERSION: u32 = 1;

/// What the check says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Soundness {
    /// The stipulation holds, with one key.
    Sound,
    /// It holds, with more than one key.
    SeveralKeys,
    /// Mate is possible in fewer moves.
    Short,
    /// It does not hold.
    Unsound,
    /// The position is not one the rules can be applied to.
    Illegal,
    /// Out of time or work.
    Undecided,
}

/// The report on one position; serialises to the object that `check --json` writes.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Report {
    /// The entry's id.
    pub id: String,
    /// The position, with all six FEN fields; the text as given when it could not be read.
    pub fen: String,
    /// The task checked; the one found when the file stated none; absent when nothing was found.
    pub stipulation: Option<Stipulation>,
    /// The verdict.
    pub verdict: Soundness,
    /// Every key in SAN.
    pub keys: Vec<String>,
    /// The best line found in SAN, whatever the verdict.
    pub line: Vec<String>,
    /// Names of the mating patterns in the main line's final position.
    pub patterns: Vec<String>,
    /// True only where the verdict rests on exhaustive search (or an endgame table).
    pub proved: bool,
    /// Positions visited.
    pub nodes: u64,
    /// Seconds taken, filled in by whoever holds a clock.
    pub seconds: f64,
    /// What is wrong and what to do, in words for a coach; empty when all is well.
    pub message: String,
    /// Variations for reading, main line first, as numbered SAN.
    #[serde(default)]
    pub variations: Vec<String>,
    /// Tries with their refutation, as numbered SAN.
    #[serde(default)]
    pub tries: Vec<String>,
    /// Oddities of the position and of the coach's own variations.
    #[serde(default)]
    pub warnings: Vec<String>,
    /// Depth in half-moves when judged by evaluation.
    #[serde(default)]
    pub depth: Option<u32>,
    /// Estimated difficulty, 1 (easy) to 10 (hard).
    #[serde(default)]
    pub difficulty: Option<f64>,
    /// [`CHECKER_VERSION`] at the time of the check.
    #[serde(default)]
    pub version: u32,
}

impl Report {
    /// The report on an entry that could not be read.
    pub fn unreadable(error: &ReadError) -> Self {
        Self {
            id: error
                .id
                .clone()
                .unwrap_or_else(|| format!("{}:{}", error.file, error.line)),
            fen: error.text.clone(),
            stipulation: None,
            verdict: Soundness::Illegal,
            keys: Vec::new(),
            line: Vec::new(),
            patterns: Vec::new(),
            proved: false,
            nodes: 0,
            seconds: 0.0,
            message: error.to_string(),
            variations: Vec::new(),
            tries: Vec::new(),
            warnings: Vec::new(),
            depth: None,
            difficulty: None,
            version: CHECKER_VERSION,
        }
    }
}

/// A position with its task and solution, ready to judge replies. Cheap to clone.
#[derive(Clone, Debug)]
pub struct Problem {
    /// The position.
    pub position: Chess,
    /// The task.
    pub stipulation: Stipulation,
    /// Keys, variations and tries.
    pub solution: std::sync::Arc<Solution>,
}

/// How to check.
#[derive(Clone, Debug)]
pub struct CheckOptions {
    /// Longest mate sought when the file states no task.
    pub moves: u8,
    /// Margin in hundredths of a pawn by which a winning key must win.
    pub win_margin: i32,
    /// What every other move may reach at most, in hundredths of a pawn, for the key to be the only one.
    pub other_margin: i32,
    /// Depth in half-moves for judging by evaluation.
    pub depth: u32,
}

impl Default for CheckOptions {
    fn default() -> Self {
        Self {
            moves: 5,
            win_margin: 200,
            other_margin: 100,
            depth: 18,
        }
    }
}

/// Checks one entry.
pub fn check(entry: &Entry, options: &CheckOptions, budget: &Budget<'_>) -> Report {
    let _ = (entry, options, budget);
    todo!()
}

/// The position with its solution, for judging replies; `None` when the stipulation does not hold
/// or the budget ended first.
pub fn problem(
    position: &Chess,
    stipulation: Stipulation,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Option<Problem> {
    let _ = (position, stipulation, options, budget);
    todo!()
}
