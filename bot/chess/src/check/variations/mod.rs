//! The coach's own variations, checked move by move.
//!
//! Mates are held to the prover ([`mates`]), wins and draws to the searcher or the endgame tables
//! ([`advantage`]). Either way every complaint names the line of the file and the move, and a budget
//! that ends is said so, with the place it ended at.

mod advantage;
mod mates;

use shakmaty::{Chess, Move, Position};

use super::{Complaint, Finding, Statement, written};
use crate::{
    coach_lines::mark_wrong,
    fact::{And, Line, number},
    read::GameNode,
};

pub(super) use self::advantage::check as check_advantage;
pub(super) use self::mates::check as check_mates;

/// The most complaints about one entry.
const MOST: usize = 20;

pub(super) fn marked_wrong(node: &GameNode) -> bool {
    mark_wrong(&node.nags)
}

/// Where the walk through the variations stands, and what it found.
#[derive(Default)]
struct Complaints {
    /// The move being looked at, with its line in the file.
    place: Option<(u32, Line)>,
    out: Vec<Finding>,
}

impl Complaints {
    fn at(&mut self, before: &Chess, node: &GameNode) {
        self.place = Some(place(before, node));
    }

    fn add(&mut self, before: &Chess, node: &GameNode, what: Complaint) {
        let (row, line) = place(before, node);
        self.out.push(Finding::InVariation { row, line, what });
    }

    /// A `#` on a move that does not mate.
    fn mate_sign(&mut self, before: &Chess, node: &GameNode, after: &Chess) {
        if node.mate_sign && !after.is_checkmate() {
            self.add(before, node, Complaint::MateSignWrong);
        }
    }

    /// What to tell the coach; `spent` when the budget ended before the walk did.
    fn told(mut self, spent: bool) -> Vec<Statement> {
        let more = self.out.len().saturating_sub(MOST);
        if more > 0 {
            self.out.truncate(MOST);
            let more = number(more);
            self.out.push(Finding::MoreInVariations { more });
        }
        if let Some((row, line)) = self.place.filter(|_| spent) {
            self.out.push(Finding::VariationsCut { row, line });
        }
        self.out.into_iter().map(Statement::from).collect()
    }
}

/// The line of a move in the file, and the move with the number that its place in the game gives it.
fn place(before: &Chess, node: &GameNode) -> (u32, Line) {
    let line = written::in_place(before, node.mv).into();
    (number(node.line), line)
}

/// "1...Qh4+, 1...Re1+ and 1...h6", three at most.
fn some_moves(position: &Chess, moves: &[Move]) -> And<Line> {
    let some: Vec<String> = moves
        .iter()
        .take(3)
        .map(|mv| written::in_place(position, *mv))
        .collect();
    written::list(&some)
}

#[cfg(test)]
mod tests;
