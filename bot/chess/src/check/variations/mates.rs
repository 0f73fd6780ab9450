//! The coach's own variations of a mate, checked move by move.
//!
//! Every move of the solver must keep the mate within the moves left, except where the coach marks it
//! as wrong (`?`, `??` or `?!`): then it must fail, and the reply that follows must be one that holds.
//! Signs must tell the truth: `#` on a mate only, and no line of a mating solver judged level or lost.
//! Moves of the defence may be good or bad; they are the coach's to choose.

use shakmaty::{Chess, Color, Position};

use super::{Complaint, Complaints, Statement, marked_wrong, some_moves};
use crate::{
    Budget, Spent,
    check::written,
    fact::number,
    prove::{Prover, refutations},
    read::{Entry, GameNode, GameTree},
};

/// Glyphs for a level position: drawish, equal, unclear being left out.
const LEVEL: [u8; 3] = [10, 11, 12];

/// Checks every variation of an entry whose task is mate in `moves`, and says what is wrong, each
/// with its line in the file.
pub(in crate::check) fn check(
    entry: &Entry,
    moves: u8,
    prover: &Prover<'_>,
    budget: &Budget<'_>,
) -> Vec<Statement> {
    let Some(tree) = &entry.variations else {
        return Vec::new();
    };
    let mut walk = Walk {
        solver: entry.position.turn(),
        prover,
        budget,
        complaints: Complaints::default(),
    };
    let spent = walk.solver_moves(&entry.position, tree, moves).is_err();
    walk.complaints.told(spent)
}

struct Walk<'a> {
    solver: Color,
    prover: &'a Prover<'a>,
    budget: &'a Budget<'a>,
    complaints: Complaints,
}

impl Walk<'_> {
    /// The solver is to move and has `left` moves.
    fn solver_moves(&mut self, position: &Chess, tree: &GameTree, left: u8) -> Result<(), Spent> {
        for node in &tree.nodes {
            let mut after = position.clone();
            after.play_unchecked(node.mv);
            self.complaints.at(position, node);
            if left == 0 {
                self.complaints
                    .add(position, node, Complaint::GoesOnTooLong);
                continue;
            }
            let meets = self.prover.meets(&after, left - 1)?;
            match (marked_wrong(node), meets) {
                (false, true) => {
                    self.signs(position, node, &after);
                    self.defender_moves(&after, &node.next, left - 1)?;
                }
                (false, false) => {
                    let what = self.why_it_fails(position, &after, left)?;
                    self.complaints.add(position, node, what);
                }
                (true, true) => {
                    let moves = left.into();
                    self.complaints
                        .add(position, node, Complaint::WrongYetMates { moves });
                }
                (true, false) => {
                    self.complaints.mate_sign(position, node, &after);
                    self.refuting_reply(&after, node, left - 1)?;
                }
            }
        }
        Ok(())
    }

    /// The defender is to move and is mated within `left` more moves of the solver.
    fn defender_moves(&mut self, position: &Chess, tree: &GameTree, left: u8) -> Result<(), Spent> {
        for node in &tree.nodes {
            let mut after = position.clone();
            after.play_unchecked(node.mv);
            self.signs(position, node, &after);
            self.solver_moves(&after, &node.next, left)?;
        }
        Ok(())
    }

    /// After a move that the coach marks as wrong: the main reply given must hold.
    fn refuting_reply(
        &mut self,
        position: &Chess,
        wrong: &GameNode,
        left: u8,
    ) -> Result<(), Spent> {
        let Some(reply) = wrong.next.nodes.first() else {
            return Ok(());
        };
        let holding = refutations(position, left, self.budget)?;
        if !holding.is_empty() && !holding.contains(&reply.mv) {
            let what = Complaint::HoldsNot {
                holds: some_moves(position, &holding),
                number: number(holding.len()),
            };
            self.complaints.add(position, reply, what);
        }
        Ok(())
    }

    fn why_it_fails(&self, before: &Chess, after: &Chess, left: u8) -> Result<Complaint, Spent> {
        let holds = match left {
            1 => None,
            _ => refutations(after, left - 1, self.budget)?
                .first()
                .map(|reply| written::in_place(after, *reply).into()),
        };
        let better = self.prover.continuations(before, left)?;
        let better = better
            .first()
            .map(|(better, _)| written::in_place(before, *better).into());
        Ok(match left {
            1 => Complaint::HadToMate { better },
            _ => Complaint::LetsMateGo {
                moves: left.into(),
                holds,
                better,
            },
        })
    }

    /// The signs on a move of a line in which the solver mates.
    fn signs(&mut self, before: &Chess, node: &GameNode, after: &Chess) {
        self.complaints.mate_sign(before, node, after);
        if !node.next.nodes.is_empty() {
            return;
        }
        let lost = match self.solver {
            Color::White => 19,
            Color::Black => 18,
        };
        if node
            .nags
            .iter()
            .any(|nag| *nag == lost || LEVEL.contains(nag))
        {
            self.complaints.add(before, node, Complaint::SignYetMates);
        }
    }
}
