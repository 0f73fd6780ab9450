//! A win or a draw along the coach's own lines.
//!
//! A sacrifice is accepted or declined, and the coach gives both. While a reply keeps to the coach's moves,
//! the defences it is asked about are the coach's: of several the member's number says which, so that over
//! a group all are met, and what a member wrote is taken as it is written. A line of the coach's that ends
//! in mate is asked to the mate, any other to a plain gain ([`super::plain`]) or to the coach's last move.
//! Only moves that the check found to hold count as the coach's; off them the reply is judged as any other.

use shakmaty::{Chess, Move, Position};

use super::{End, Found, Walk};
use crate::Branch;
use crate::coach_lines::NodeAt;
use crate::judge::choice;
use crate::reply::NodeId;

impl<'a> Walk<'a, '_> {
    /// The place in the coach's lines of a move of the solver's that holds, where these moves lead to one.
    pub(super) fn coachs(&self, moves: &[Move]) -> Option<NodeAt> {
        let tree = self.coach?;
        let place = tree.at(moves)?;
        tree.node(place).holds().then_some(place)
    }

    /// Judges what is written after the coach's own move at `place`, which leads to `node`. `None` where
    /// the coach gives no more than that move, and nothing before it.
    pub(super) fn along_the_coachs(
        &self,
        node: NodeId,
        branch: Option<&'a Branch>,
        moves: &[Move],
        place: NodeAt,
    ) -> Option<Found> {
        let here = &self.tree.node(node).position;
        let plain = || self.aim.plain(&self.path(node), here);
        let Some(line) = self.coachs_line(moves, place) else {
            let followed = moves.len() > 1;
            let end = followed.then(|| plain().unwrap_or(End::Enough));
            return end.map(|end| Found::Solved(node, None, end));
        };
        let chosen = line[0];
        let mut dealt = match self.dealt(node, branch, self.coachs_written(node, place, chosen)) {
            Ok(dealt) => dealt,
            Err(stop) => return Some(stop),
        };
        let tree = self.coach?;
        let answers = tree.moves(&tree.node(place).next);
        let is_coachs = |(defence, _): &(Move, Found)| answers.contains(defence);
        let solved = |one: &(Move, Found)| is_coachs(one) && matches!(one.1, Found::Solved(..));
        let best = dealt
            .iter()
            .position(solved)
            .or_else(|| dealt.iter().position(|(defence, _)| *defence == chosen))
            .or_else(|| dealt.iter().position(is_coachs));
        if let Some(best) = best {
            return Some(dealt.swap_remove(best).1);
        }
        if let Some(end) = plain().filter(|_| !ends_in_mate(here, &line)) {
            return Some(Found::Solved(node, None, end));
        }
        let own = tree.moves(&tree.met(place));
        Some(self.stronger(node, moves, chosen, &own, dealt))
    }

    /// The defences written at `node` that are to be looked at. Of those that the member left out, the
    /// coach's come first that the move written after them answers as the coach does.
    fn coachs_written(&self, node: NodeId, place: NodeAt, chosen: Move) -> Vec<NodeId> {
        let Some(tree) = self.coach else {
            return Vec::new();
        };
        let children = &self.tree.node(node).children;
        let answered = |child: &&NodeId| {
            let written = self.tree.node(**child);
            let defence = tree.node(place).next.iter();
            let mut defence = defence.filter(|&&next| tree.node(next).mv == written.mv);
            let next = written.children.first().map(|&id| self.tree.node(id).mv);
            defence.any(|&defence| {
                let answers = tree.node(defence).next.iter().map(|&id| tree.node(id));
                next.is_some_and(|mv| answers.clone().any(|own| own.holds() && own.mv == mv))
            })
        };
        let assumed = |child: &&NodeId| self.tree.node(**child).assumed;
        let fitting = children.iter().filter(assumed).find(answered);
        match fitting {
            None => self.written_defences(node, chosen),
            Some(fitting) => {
                let written = children.iter().filter(|child| !assumed(child));
                written.chain([fitting]).copied().collect()
            }
        }
    }

    /// The coach's line after the solver's move at `place`, the defence that is chosen first; `None` where
    /// the coach goes on from none.
    fn coachs_line(&self, moves: &[Move], place: NodeAt) -> Option<Vec<Move>> {
        let tree = self.coach?;
        let (mut line, mut upto, mut at) = (Vec::new(), moves.to_vec(), place);
        while let Some(defence) = self.coachs_defence(&upto, at) {
            let answer = tree.right(defence)?;
            let pair = tree.moves(&[defence, answer]);
            line.extend(&pair);
            upto.extend(&pair);
            at = answer;
        }
        (!line.is_empty()).then_some(line)
    }

    /// Of the coach's defences after the solver's move at `place` the one that this member meets.
    fn coachs_defence(&self, moves: &[Move], place: NodeAt) -> Option<NodeAt> {
        let tree = self.coach?;
        let ways = |place| tree.met(place).len();
        let earlier = (1..moves.len()).step_by(2);
        let earlier = earlier.filter_map(|upto| tree.at(&moves[..upto]).map(ways));
        let met = tree.met(place);
        let turn = choice::in_turn(self.case.line_choice, earlier, met.len());
        met.get(turn).copied()
    }

    /// How many moves of the solver the coach's line asks for that goes on from these moves, of which the
    /// last is a defence.
    pub(super) fn coachs_length(&self, moves: &[Move]) -> Option<usize> {
        let tree = self.coach?;
        let answer = tree.right(tree.at(moves)?)?;
        let mut upto = moves.to_vec();
        upto.extend(tree.moves(&[answer]));
        let rest = self.coachs_line(&upto, answer).map_or(0, |line| line.len());
        Some((upto.len() + rest).div_ceil(2))
    }
}

/// Whether a line from a position ends in mate.
fn ends_in_mate(from: &Chess, line: &[Move]) -> bool {
    let mut end = from.clone();
    for &mv in line {
        end.play_unchecked(mv);
    }
    end.is_checkmate()
}
