//! The searcher for advantage: alpha-beta with a tapered evaluation, for `+` and `=` tasks.

use shakmaty::{Chess, Move};

use super::Budget;

/// A judgement of a position by search, from the view of the side to move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Score {
    /// Hundredths of a pawn.
    Cp(i32),
    /// Mates in this many moves (positive) or is mated in this many (negative or zero).
    Mate(i32),
}

/// One line of play with its score, best first.
#[derive(Clone, Debug)]
pub struct Ranked {
    /// The line; its first move is the one ranked.
    pub line: Vec<Move>,
    /// Score for the side to move at the root.
    pub score: Score,
}

/// What a search found.
#[derive(Clone, Debug)]
pub struct Judged {
    /// The best lines, best first; as many as were asked for and exist.
    pub lines: Vec<Ranked>,
    /// The last depth finished, in half-moves.
    pub depth: u32,
    /// Positions visited.
    pub nodes: u64,
}

/// Searches `position` to `depth` half-moves at most, or until the budget ends (the last finished
/// depth counts), and ranks the `lines` best first moves.
pub fn search(position: &Chess, depth: u32, lines: usize, budget: &Budget<'_>) -> Judged {
    let _ = (position, depth, lines, budget);
    todo!()
}
