//! The coach's own variations, checked move by move.
//!
//! Mates are held to the prover ([`mates`]), wins and draws to the searcher or the endgame tables
//! ([`advantage`]). Either way every complaint names the line of the file and the move, and a budget
//! that ends is said so, with the place it ended at.

mod advantage;
mod mates;

use shakmaty::{Chess, Move, Position};

use super::words;
use crate::read::GameNode;

pub(super) use self::advantage::check as check_advantage;
pub(super) use self::mates::check as check_mates;

/// Said in a report when the variations have something wrong.
pub(super) const SEE_WARNINGS: &str =
    "Not all is right in the variations of the file: see the warnings.";

/// The most complaints about one entry.
const MOST: usize = 20;

/// Glyphs of the PGN standard, section 10: poor move, very poor move, questionable move.
const WRONG: [u8; 3] = [2, 4, 6];

fn marked_wrong(node: &GameNode) -> bool {
    node.nags.iter().any(|nag| WRONG.contains(nag))
}

/// Where the walk through the variations stands, and what it found.
#[derive(Default)]
struct Complaints {
    /// The move being looked at, in words.
    place: String,
    out: Vec<String>,
}

impl Complaints {
    fn at(&mut self, before: &Chess, node: &GameNode) {
        self.place = place(before, node);
    }

    fn add(&mut self, before: &Chess, node: &GameNode, what: &str) {
        self.out.push(format!("{}: {what}", place(before, node)));
    }

    /// A `#` on a move that does not mate.
    fn mate_sign(&mut self, before: &Chess, node: &GameNode, after: &Chess) {
        if node.mate_sign && !after.is_checkmate() {
            self.add(before, node, "it is written with #, but it is not mate");
        }
    }

    /// What to tell the coach; `spent` when the budget ended before the walk did.
    fn told(mut self, spent: bool) -> Vec<String> {
        let more = self.out.len().saturating_sub(MOST);
        if more > 0 {
            self.out.truncate(MOST);
            self.out.push(format!(
                "{more} more things are wrong in the variations of the file"
            ));
        }
        if spent {
            self.out.push(format!(
                "the time or work allowed ran out at {}, before all variations of the file were checked",
                self.place
            ));
        }
        self.out
    }
}

/// "line 9, move 2.Rd7".
fn place(before: &Chess, node: &GameNode) -> String {
    format!(
        "line {}, move {}",
        node.line,
        words::in_place(before, node.mv)
    )
}

/// "1...Qh4+, 1...Re1+ and 1...h6", three at most.
fn some_moves(position: &Chess, moves: &[Move]) -> String {
    let some: Vec<String> = moves
        .iter()
        .take(3)
        .map(|mv| words::in_place(position, *mv))
        .collect();
    words::list(&some)
}

#[cfg(test)]
mod tests;
