//! Judging replies to a mate problem: by the solution tree, and off it by the prover.
//!
//! Any move that mates in time is right, listed or not. A written line is held against the defences
//! it gives, and then against those it leaves out.

mod verdicts;

use shakmaty::{Chess, Color, Move, Position};

use super::coach::{self, OnWrong};
use super::{Case, Judgement, choice};
use crate::refute::{self, Refutation, Sealed};
use crate::reply::{NodeId, Tree};
use crate::{Branch, Spent, prove};

/// The solver's right move at some point, as far as it is known: from the tree, or proved.
#[derive(Clone, Copy)]
struct Right<'a> {
    /// Its branch, when the tree has it with its defences.
    branch: Option<&'a Branch>,
}

/// What is wrong in a reply.
struct Fault {
    /// Moves from the start of the problem to the wrong move, which comes last.
    moves: Vec<Move>,
    refutation: Refutation,
    /// What the coach has on it, where that may be shown.
    coach: Option<OnWrong>,
    /// Moves the solver had left there, the wrong one included.
    left: u8,
}

/// A defence the reply does not deal with: the moves to it, itself last.
type Missed = Vec<Move>;

/// How much of what can follow a right move is dealt with.
struct Cover {
    share: f64,
    missed: Option<Missed>,
}

struct Judge<'a, 'b> {
    case: &'a Case<'b>,
    tree: &'a Tree,
    moves: u8,
    sealed: Option<Sealed>,
    fault: Option<Fault>,
}

/// Judges what was read.
pub(super) fn judge(case: &Case<'_>, moves: u8, tree: &Tree) -> Judgement {
    let mut judge = Judge {
        case,
        tree,
        moves,
        sealed: None,
        fault: None,
    };
    match judge.run() {
        Ok(judgement) => judgement,
        Err(Spent) => {
            let mut written = case.played.to_vec();
            written.extend(tree.main_line());
            case.undecided(&written)
        }
    }
}

impl<'a> Judge<'a, '_> {
    fn run(&mut self) -> Result<Judgement, Spent> {
        let cursor = self.tree.cursor();
        let known = self.known_at(cursor);
        // Variations at earlier defences of what was played are looked at too, after the reply proper.
        let here = self.tree.node(cursor).children.clone();
        let mut cover: Option<(NodeId, Cover)> = None;
        for &first in &here {
            let found = self.solver_move(first, known.as_deref())?;
            if let (Some(found), true) = (found, cover.is_none()) {
                cover = Some((first, found));
            }
            if self.fault.is_some() && !self.key_is_enough() {
                break;
            }
        }
        for earlier in self.tree.path(cursor) {
            if earlier == cursor || self.fault.is_some() {
                continue;
            }
            for &child in &self.tree.node(earlier).children.clone() {
                if !self.tree.node(child).played {
                    self.defence(child, None)?;
                }
            }
        }
        let share = cover.as_ref().map_or(0.0, |(_, cover)| cover.share);
        if let Some(fault) = self.fault.take() {
            // In a two-mover the key is the whole task; what follows it is not judged.
            let after_key = fault.moves.len() > 1;
            if !(self.key_is_enough() && after_key && cover.is_some()) {
                return Ok(self.wrong(fault, share));
            }
            return Ok(self.solved(cover.map(|(first, _)| first), Some(fault)));
        }
        match cover {
            None => Ok(self.only_variations(cursor)),
            Some((first, Cover { missed: None, .. })) => Ok(self.solved(Some(first), None)),
            Some((
                first,
                Cover {
                    missed: Some(missed),
                    ..
                },
            )) => Ok(self.on_the_way(first, &missed, share)),
        }
    }

    /// Whether the task is a two-mover at its start.
    fn key_is_enough(&self) -> bool {
        self.moves <= 2
    }

    fn solver(&self) -> Color {
        self.case.problem.position.turn()
    }

    /// Moves left to the solver at `node`, where the solver is to move.
    fn left(&self, node: NodeId) -> u8 {
        let done = u8::try_from(self.tree.node(node).ply / 2).unwrap_or(u8::MAX);
        self.moves.saturating_sub(done)
    }

    /// The right moves at `node` when the tree lists them, which it then does completely.
    fn known_at(&self, node: NodeId) -> Option<Vec<&'a Branch>> {
        let mut known: Vec<&Branch> = self.case.problem.solution.keys.iter().collect();
        let moves = self.tree.moves_to(node);
        for pair in moves.chunks(2) {
            let [mv, answer] = pair else { return None };
            let branch = known.iter().find(|branch| branch.mv == *mv)?;
            let defence = branch.defences.iter().find(|d| d.mv == *answer)?;
            known = defence.continuations.iter().collect();
        }
        // The case outlives the judge; the branches are the problem's.
        (!known.is_empty()).then_some(known)
    }

    /// Judges the solver's move that leads to `node`, and everything written after it. `None` when it
    /// is wrong (then the fault is noted).
    fn solver_move(
        &mut self,
        node: NodeId,
        known: Option<&[&'a Branch]>,
    ) -> Result<Option<Cover>, Spent> {
        let Some((parent, mv)) = self.step(node) else {
            return Ok(None);
        };
        let left = self.left(parent);
        let before = self.tree.node(parent).position.clone();
        let after = &self.tree.node(node).position;
        if after.is_checkmate() && left > 0 {
            return Ok(Some(Cover {
                share: 1.0,
                missed: None,
            }));
        }
        let branch = known.and_then(|known| known.iter().find(|b| b.mv == mv).copied());
        let assumed = self.tree.node(parent).assumed;
        if branch.is_none() {
            if assumed && known.is_some() {
                return Ok(None);
            }
            let failed = match left {
                0 => None,
                left => self.fault_of(node, &before, mv, left)?,
            };
            if let Some(fault) = failed {
                if !assumed && self.fault.is_none() {
                    self.fault = Some(fault);
                }
                return Ok(None);
            }
        }
        let right = Right { branch };
        self.cover(node, right, left.saturating_sub(1)).map(Some)
    }

    /// What is wrong with the move `mv` that leads to `node`, with `left` moves to mate in; the coach's own
    /// defence is shown where it holds.
    fn fault_of(
        &mut self,
        node: NodeId,
        before: &Chess,
        mv: Move,
        left: u8,
    ) -> Result<Option<Fault>, Spent> {
        let solution = &self.case.problem.solution;
        let sealed = self.sealed.get_or_insert_with(|| Sealed::of(solution));
        let moves = self.tree.moves_to(node);
        let coach = coach::on_wrong(self.case, &moves);
        let defence = coach.as_ref().and_then(OnWrong::defence);
        let budget = self.case.budget;
        let failed = refute::mate_move_by(before, mv, left, sealed, defence, budget)?;
        let Some(refutation) = failed else {
            return Ok(None);
        };
        let coach = match coach {
            Some(coach) if self.refutes(&coach, &refutation, left)? => Some(coach),
            _ => None,
        };
        Ok(Some(Fault {
            moves,
            refutation,
            coach,
            left,
        }))
    }

    /// Whether the coach's variation keeps the mate from coming in time to its end; words alone do.
    fn refutes(&self, coach: &OnWrong, refutation: &Refutation, left: u8) -> Result<bool, Spent> {
        if coach.defence() != refutation.line.first().copied() {
            return Ok(coach.line.is_empty());
        }
        let mut position = refutation.after.clone();
        let mut left = left.saturating_sub(1);
        for (place, &mv) in coach.line.iter().enumerate() {
            position.play_unchecked(mv);
            match place {
                // This one is proved already.
                0 => {}
                _ if position.turn() != self.solver() => left = left.saturating_sub(1),
                _ if left == 0 => break,
                _ => {
                    if prove::shortest_mate(&position, left, self.case.budget)?.is_some() {
                        return Ok(false);
                    }
                }
            }
        }
        Ok(true)
    }

    fn step(&self, node: NodeId) -> Option<(NodeId, Move)> {
        let node = self.tree.node(node);
        Some((node.parent?, node.mv?))
    }

    /// How much of what can follow the right move at `node` the reply deals with; `left` moves remain.
    fn cover(&mut self, node: NodeId, right: Right<'a>, left: u8) -> Result<Cover, Spent> {
        // What the member wrote is judged first, whether or not it had to be written.
        let mut written = Vec::new();
        for &child in &self.tree.node(node).children.clone() {
            let defence = right.branch.and_then(|b| {
                b.defences
                    .iter()
                    .find(|d| Some(d.mv) == self.tree.node(child).mv)
            });
            let known: Option<Vec<&Branch>> = defence.map(|d| d.continuations.iter().collect());
            let covers = self.defence(child, known)?;
            written.push((child, covers));
        }
        self.left_out(&written)?;
        // The mating move need not be written, unless the reply is one move of a line being played.
        let lone = written.is_empty() && self.moves > 2 && self.tree.main_line().len() <= 2;
        if left <= 1 && !lone {
            return Ok(Cover {
                share: 1.0,
                missed: None,
            });
        }
        let mut full = self.full_length(node, right, left)?;
        let path = self.tree.moves_to(node);
        choice::lead_with(&mut full, self.case.defence_choice, &path);
        let missed_by = |defence: Move| {
            let mut missed = path.clone();
            missed.push(defence);
            missed
        };
        if written.is_empty() {
            return Ok(Cover {
                share: 0.0,
                missed: full.first().map(|&(mv, _)| missed_by(mv)),
            });
        }
        let answers: Vec<Move> = written
            .iter()
            .filter(|(_, cover)| cover.is_some())
            .flat_map(|(child, _)| self.tree.node(*child).children.clone())
            .filter_map(|next| self.tree.node(next).mv)
            .collect();
        let (mut sum, mut missed, mut missed_deeper) = (0.0, None, None);
        for &(mv, ref listed) in &full {
            let own = written
                .iter()
                .find(|(child, _)| self.tree.node(*child).mv == Some(mv));
            match own {
                Some((_, Some(cover))) => {
                    sum += cover.share;
                    if missed_deeper.is_none() {
                        missed_deeper.clone_from(&cover.missed);
                    }
                }
                _ => {
                    if self.met_by(node, mv, listed.as_deref(), &answers, left)? {
                        sum += 1.0;
                    } else if missed.is_none() {
                        missed = Some(missed_by(mv));
                    }
                }
            }
        }
        let share = if full.is_empty() {
            1.0
        } else {
            sum / full.len() as f64
        };
        Ok(Cover {
            share,
            missed: missed_deeper.or(missed),
        })
    }

    /// Where the writer left the defences out and the move they wrote holds after none of those after
    /// which it is possible, it is wrong, whichever they had in mind.
    fn left_out(&mut self, written: &[(NodeId, Option<Cover>)]) -> Result<(), Spent> {
        let assumed = |&(child, _): &&(NodeId, Option<Cover>)| self.tree.node(*child).assumed;
        let left_out: Vec<_> = written.iter().filter(assumed).collect();
        if self.fault.is_some()
            || left_out.len() != written.len()
            || left_out.iter().any(|(_, cover)| cover.is_some())
        {
            return Ok(());
        }
        let Some((defence, _)) = left_out.first() else {
            return Ok(());
        };
        let Some(&next) = self.tree.node(*defence).children.first() else {
            return Ok(());
        };
        let Some((parent, mv)) = self.step(next) else {
            return Ok(());
        };
        let left = self.left(parent);
        if left == 0 {
            return Ok(());
        }
        let before = self.tree.node(parent).position.clone();
        if let Some(fault) = self.fault_of(next, &before, mv, left)? {
            self.fault = Some(fault);
        }
        Ok(())
    }

    /// Judges what is written after the defence at `node`: `None` when nothing right is.
    fn defence(
        &mut self,
        node: NodeId,
        known: Option<Vec<&'a Branch>>,
    ) -> Result<Option<Cover>, Spent> {
        let known = known.or_else(|| self.known_at(node));
        let mut best: Option<Cover> = None;
        for &next in &self.tree.node(node).children.clone() {
            if let Some(cover) = self.solver_move(next, known.as_deref())?
                && best.as_ref().is_none_or(|known| known.share < cover.share)
            {
                best = Some(cover);
            }
        }
        Ok(best)
    }

    /// The defences at `node` that make the solver use every move left, strongest first, with the
    /// right moves after each where the tree lists them.
    #[allow(clippy::type_complexity)]
    fn full_length(
        &self,
        node: NodeId,
        right: Right<'a>,
        left: u8,
    ) -> Result<Vec<(Move, Option<Vec<Move>>)>, Spent> {
        let complete = self.case.problem.solution.complete;
        if let Some(branch) = right.branch.filter(|b| complete && !b.defences.is_empty()) {
            let longest = branch.defences.first().map_or(0, length_after);
            return Ok(branch
                .defences
                .iter()
                .take_while(|defence| length_after(defence) == longest)
                .map(|defence| {
                    let listed = defence.continuations.iter().map(|c| c.mv).collect();
                    (defence.mv, Some(listed))
                })
                .collect());
        }
        let position = &self.tree.node(node).position;
        let listed = right.branch.map_or(&[][..], |branch| &branch.defences);
        if !listed.is_empty() {
            // A cut tree: its order is right, its lengths may not be.
            let mut lasting = Vec::new();
            for defence in listed {
                if self.lasts(position, defence.mv, left)? {
                    let next = defence.continuations.iter().map(|c| c.mv).collect();
                    lasting.push((defence.mv, Some(next)));
                }
            }
            if lasting.is_empty() {
                lasting.extend(listed.first().map(|d| (d.mv, None)));
            }
            return Ok(lasting);
        }
        longest_resistance(position, left, self.case)
    }

    /// Whether the defence keeps the mate from coming before the last move.
    fn lasts(&self, position: &Chess, defence: Move, left: u8) -> Result<bool, Spent> {
        let mut after = position.clone();
        after.play_unchecked(defence);
        let sooner = prove::shortest_mate(&after, left.saturating_sub(1), self.case.budget)?;
        Ok(sooner.is_none())
    }

    /// Whether one of the continuations the member wrote after other defences does here too.
    fn met_by(
        &self,
        node: NodeId,
        defence: Move,
        listed: Option<&[Move]>,
        answers: &[Move],
        left: u8,
    ) -> Result<bool, Spent> {
        if let Some(listed) = listed {
            return Ok(answers.iter().any(|answer| listed.contains(answer)));
        }
        let mut after = self.tree.node(node).position.clone();
        after.play_unchecked(defence);
        for &answer in answers {
            if !after.is_legal(answer) {
                continue;
            }
            let mut next = after.clone();
            next.play_unchecked(answer);
            if next.is_checkmate() {
                return Ok(true);
            }
            if left > 1
                && !next.is_stalemate()
                && prove::refutation(&next, left - 1, self.case.budget)?.is_none()
            {
                return Ok(true);
            }
        }
        Ok(false)
    }
}

/// How many solver's moves it takes after the defence, by the tree.
fn length_after(defence: &crate::Defence) -> u8 {
    let mut length = 0;
    let mut at = defence.continuations.first();
    while let Some(branch) = at {
        length += 1;
        at = branch
            .defences
            .first()
            .and_then(|defence| defence.continuations.first());
    }
    length
}

/// Every defence that lasts longest, when the tree says nothing.
#[allow(clippy::type_complexity)]
fn longest_resistance(
    position: &Chess,
    left: u8,
    case: &Case<'_>,
) -> Result<Vec<(Move, Option<Vec<Move>>)>, Spent> {
    let mut found: Vec<(u8, Move)> = Vec::new();
    for &mv in &position.legal_moves() {
        let mut after = position.clone();
        after.play_unchecked(mv);
        let length = prove::shortest_mate(&after, left, case.budget)?.unwrap_or(left + 1);
        found.push((length, mv));
    }
    found.sort_by_key(|&(length, mv)| (std::cmp::Reverse(length), prove::order_of(mv)));
    let longest = found.first().map_or(0, |&(length, _)| length);
    Ok(found
        .into_iter()
        .take_while(|&(length, _)| length == longest)
        .map(|(_, mv)| (mv, None))
        .collect())
}
