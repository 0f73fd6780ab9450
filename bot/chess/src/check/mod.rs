//! The verdict on a position before it is posted: does its stipulation hold, and with one key only?

mod advantage;
mod difficulty;
mod ends;
mod finding;
mod mate;
mod tables;
mod topic;
mod variations;
mod written;

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, EnPassantMode, Position, fen::Fen};

use super::{
    Budget, Solution, Stipulation,
    coach_lines::{CoachLines, CoachTree},
    comments::Comments,
    fact::number,
    prove::Prover,
    read::{Entry, ReadError},
};

pub(super) use advantage::SHALLOWEST;
pub use ends::{Ends, FinalPicture, OwnLine, OwnMate};
pub use finding::{Assessment, Complaint, Finding, Stands, Statement, Whose};
pub use tables::{Endgames, TableVerdict};
pub use topic::{Extent, TopicCheck, TopicFact, TopicOn, TopicState, WhoseLine, topic_check};

/// Version of the checker; a stored check with another version is done again.
pub const CHECKER_VERSION: u32 = 5;

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

/// The report on one position, as the store keeps it.
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
    /// What is wrong and what to do, a sentence each; empty when all is well.
    #[serde(deserialize_with = "finding::sentences")]
    pub message: Vec<Statement>,
    /// Variations for reading, main line first, as numbered SAN.
    #[serde(default)]
    pub variations: Vec<String>,
    /// Tries with their refutation, as numbered SAN.
    #[serde(default)]
    pub tries: Vec<String>,
    /// Oddities of the position and of the coach's own variations, a statement each.
    #[serde(default)]
    pub warnings: Vec<Statement>,
    /// Depth in half-moves when judged by evaluation.
    #[serde(default)]
    pub depth: Option<u32>,
    /// How the lines end, for [`topic_check`]; none in reports before the fifth version.
    #[serde(default, skip_serializing_if = "Ends::is_empty")]
    pub ends: Ends,
    /// Estimated difficulty, 1 (easy) to 10 (hard).
    #[serde(default)]
    pub difficulty: Option<f64>,
    /// [`CHECKER_VERSION`] at the time of the check.
    #[serde(default)]
    pub version: u32,
    /// The coach's comments, by when they go out.
    #[serde(default, skip_serializing_if = "Comments::is_empty")]
    pub comments: Comments,
    /// The coach's own lines, whole; none in a report of a checker before the fifth.
    #[serde(default, skip_serializing_if = "CoachLines::is_empty")]
    pub coach_lines: CoachLines,
    /// What the check was allowed, filled in by whoever holds a clock.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limits: Option<Limits>,
}

/// What a check was allowed: with the report's own figures it says how far the verdict reaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Limits {
    /// The most seconds.
    pub seconds: f64,
    /// Longest mate sought where no task was stated.
    pub moves: u8,
    /// Deepest search, in half-moves, where judged by evaluation.
    pub depth: u32,
    /// Bytes of the prover's table.
    pub table_bytes: usize,
    /// Threads on one position.
    pub threads: usize,
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
            message: vec![Finding::from(error).into()],
            variations: Vec::new(),
            tries: Vec::new(),
            warnings: Vec::new(),
            depth: None,
            ends: Ends::default(),
            difficulty: None,
            version: CHECKER_VERSION,
            comments: Comments::default(),
            coach_lines: CoachLines::default(),
            limits: None,
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
    /// Endgame tables to judge other moves by, for a win or a draw.
    pub endgames: Option<std::sync::Arc<dyn Endgames>>,
    /// The coach's own lines, where there are any.
    pub coach: Option<std::sync::Arc<CoachTree>>,
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
    /// Endgame tables, where the user has them.
    pub endgames: Option<std::sync::Arc<dyn Endgames>>,
}

impl Default for CheckOptions {
    fn default() -> Self {
        Self {
            moves: 5,
            win_margin: 200,
            other_margin: 100,
            depth: 14,
            endgames: None,
        }
    }
}

/// Checks one entry.
///
/// The verdict speaks of the stipulation alone: whether it holds, and by how many keys. Where the
/// file also promises a move (EPD `bm`, or the first move of a PGN solution) and that move is not
/// the key, the message says so and the verdict stays; the same for a move to avoid that is a key.
/// The variations of a PGN are checked move by move, and what is wrong in them is in the warnings; so
/// are words meant for the post that are held for the reveal, since they tell a move.
///
/// Where no task is stated, the shortest mate is sought with at most half of the budget (see
/// [`Budget::half`]), and a win is judged with the rest. A verdict but `undecided` is never given
/// for want of time or work; where the budget ends after the verdict is certain, what is missing
/// is what else would have been told: a longer mate, or the far side lines of the tree.
pub fn check(entry: &Entry, options: &CheckOptions, budget: &Budget<'_>) -> Report {
    let before = budget.used();
    let mut report = match entry.stipulation {
        Some(Stipulation::Mate(moves)) => mate::check_mate(entry, moves, budget),
        Some(task) => {
            advantage::check_advantage(entry, task, advantage::Sought::Nothing, options, budget)
        }
        None => mate::check_unstated(entry, options, budget),
    };
    report.comments = Comments::of(entry, report.stipulation, &report.keys, &report.line);
    let mut warnings: Vec<Statement> = entry
        .warnings
        .iter()
        .copied()
        .map(Statement::from)
        .collect();
    let odd = entry.odd_lines.iter().map(|odd| Finding::OddRow {
        row: number(odd.line),
        what: odd.what,
    });
    warnings.extend(odd.map(Statement::from));
    warnings.extend(report.comments.warnings().into_iter().map(Statement::from));
    if let Some(moves) = report.stipulation.and_then(Stipulation::mate_in) {
        warnings.extend(fifty_moves(&entry.position, moves).map(Statement::from));
    }
    warnings.append(&mut report.warnings);
    report.warnings = warnings;
    report.nodes = budget.used() - before;
    report
}

/// The position with its solution, for judging replies, without a coach's lines; `None` when the
/// stipulation does not hold or the budget ended first.
pub fn problem(
    position: &Chess,
    stipulation: Stipulation,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Option<Problem> {
    let solution = match stipulation {
        Stipulation::Mate(moves) => Prover::new(position, budget).solution(moves).ok()?,
        Stipulation::Win | Stipulation::Draw => {
            advantage::solution(position, stipulation, options, budget)?
        }
    };
    (!solution.keys.is_empty()).then(|| Problem {
        position: position.clone(),
        stipulation,
        solution: std::sync::Arc::new(solution),
        endgames: options.endgames.clone(),
        coach: None,
    })
}

/// A report with nothing in it yet but the entry.
fn blank(entry: &Entry) -> Report {
    Report {
        id: entry.id.clone(),
        fen: Fen::from_position(&entry.position, EnPassantMode::Legal).to_string(),
        stipulation: entry.stipulation,
        verdict: Soundness::Undecided,
        keys: Vec::new(),
        line: Vec::new(),
        patterns: Vec::new(),
        proved: false,
        nodes: 0,
        seconds: 0.0,
        message: Vec::new(),
        variations: Vec::new(),
        tries: Vec::new(),
        warnings: Vec::new(),
        depth: None,
        ends: Ends::default(),
        difficulty: None,
        version: CHECKER_VERSION,
        comments: Comments::default(),
        coach_lines: entry
            .variations
            .as_ref()
            .map_or_else(CoachLines::default, |tree| {
                CoachLines::of(&entry.position, tree)
            }),
        limits: None,
    }
}

/// Says so when the fifty moves that a FEN counts would be full before the mate.
fn fifty_moves(position: &Chess, moves: u8) -> Option<Finding> {
    let number = position.halfmoves();
    let last_before_mate = number + 2 * u32::from(moves) - 2;
    (last_before_mate >= 100).then_some(Finding::FiftyMoves { number })
}

#[cfg(test)]
mod properties;
#[cfg(test)]
mod tests;
