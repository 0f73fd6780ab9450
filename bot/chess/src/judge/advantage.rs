//! Judging replies to a win or a draw: by the solution's moves, and off them by endgame tables or by
//! search.
//!
//! A written line is followed move by move. Each move of the solver has to keep what the task asks,
//! listed or not; the line has to go on until the point is plain ([`plain`] says when that is, and that
//! it is never far); and where it answers a weaker defence than the best, the better one is asked for.
//! What search says is a judgement, not a proof, and is worded as one. Between what plainly wins and
//! what plainly does not it says nothing and leaves the reply to the coach.

mod coached;
mod opinion;
mod plain;
mod verdicts;
mod why;

use std::cell::Cell;

use shakmaty::{Chess, Move, Position};

use super::{Case, Judgement, choice};
use crate::Branch;
use crate::check::Problem;
use crate::coach_lines::CoachTree;
use crate::fact::Remark;
use crate::reply::{NodeId, Tree};
use crate::search::{Score, search};
use opinion::{By, Opinion, Says, opinion, within};
use plain::{Aim, End};

/// Defences whose scores are this close to the best, in hundredths of a pawn, resist equally well.
pub const EQUAL_DEFENCES: i32 = 30;
/// A defence that the member left out is asked for when it saves this much more than the one given.
const STRONGER_DEFENCE: i32 = 150;
/// How deep, and over how many positions, defences are compared.
const COMPARED: (u32, u64) = (8, 150_000);
/// Most defences that are compared.
const MOST_COMPARED: usize = 4;
/// Most positions of one reply that are searched; a reply that needs more is left to the coach.
const MOST_SEARCHED: usize = 24;

/// Judges what was read.
pub(super) fn judge(case: &Case<'_>, tree: &Tree) -> Judgement {
    let problem = case.problem;
    let walk = Walk {
        case,
        tree,
        coach: problem.coach.as_deref(),
        aim: Aim::of(&problem.position, problem.stipulation),
        searched: Cell::new(0),
    };
    let cursor = walk.tree.cursor();
    match walk.moves(cursor, &walk.known_at(cursor)) {
        Some(Found::Stop(judgement)) => *judgement,
        Some(Found::Missing(missing)) => walk.on_the_way(&missing),
        Some(Found::Solved(node, other, end)) => walk.solved(node, other, end),
        None => case.plain(super::Verdict::OnTheWay, vec![Remark::GoOn]),
    }
}

/// A move that keeps what the task asks, where the solution knows none: by tables, else by search; `None`
/// when there is none, or none that is sure.
pub(super) fn next_move(problem: &Problem, position: &Chess) -> Option<Move> {
    opinion::best(problem, position)
}

/// What became of a line.
enum Found {
    /// A move of it is wrong, or cannot be judged.
    Stop(Box<Judgement>),
    /// A defence is not dealt with.
    Missing(Missing),
    /// It is as much as is asked: at which move, by what right where the solution does not have that
    /// move, and why the line may end there.
    Solved(NodeId, Option<By>, End),
}

/// A defence that a right line does not deal with.
struct Missing {
    /// The moves from the start of the problem to the defence, itself last.
    line: Vec<Move>,
    /// The weaker defence that was dealt with instead.
    instead: Option<Move>,
}

struct Walk<'a, 'b> {
    case: &'a Case<'b>,
    tree: &'a Tree,
    /// The coach's own lines.
    coach: Option<&'a CoachTree>,
    aim: Aim,
    searched: Cell<usize>,
}

impl<'a> Walk<'a, '_> {
    /// The solver's moves that the solution has at a node.
    fn known_at(&self, node: NodeId) -> Vec<&'a Branch> {
        self.case.problem.solution.after(&self.tree.moves_to(node))
    }

    /// The positions of the line before `node`.
    fn path(&self, node: NodeId) -> Vec<Chess> {
        let mut path = self.tree.path(node);
        path.pop();
        path.into_iter()
            .map(|node| self.tree.node(node).position.clone())
            .collect()
    }

    /// Judges the solver's moves written at a node: the first counts, and each has to hold. `None`
    /// where there is none.
    fn moves(&self, node: NodeId, known: &[&'a Branch]) -> Option<Found> {
        let mut first = None;
        for &child in &self.tree.node(node).children {
            match self.solver_move(child, known) {
                stop @ Found::Stop(_) => return Some(stop),
                found => first = first.or(Some(found)),
            }
        }
        first
    }

    /// Judges the solver's move that leads to `node`, and what is written after it.
    fn solver_move(&self, node: NodeId, known: &[&'a Branch]) -> Found {
        let here = self.tree.node(node);
        let branch = known
            .iter()
            .find(|branch| Some(branch.mv) == here.mv)
            .copied();
        let moves = self.tree.moves_to(node);
        let coachs = self.coachs(&moves);
        if let Some(found) =
            coachs.and_then(|place| self.along_the_coachs(node, branch, &moves, place))
        {
            return found;
        }
        let mut expected = branch.map_or_else(Vec::new, main_line);
        let mut other = None;
        if branch.is_none() && coachs.is_none() && !here.position.is_checkmate() {
            let Some(opinion) = self.opinion(node) else {
                return Found::Stop(Box::new(self.open(&moves, None)));
            };
            match opinion.says {
                Says::Good => {}
                Says::Bad => return Found::Stop(Box::new(self.wrong(node, &moves, &opinion))),
                Says::Open => {
                    return Found::Stop(Box::new(self.open(&moves, Some(&opinion))));
                }
            }
            other = Some(opinion.by);
            expected = opinion.line;
        } else if expected.is_empty() && !here.position.is_checkmate() {
            // What follows is not known, as where a table has judged, or the coach gives the move alone.
            expected = self.opinion(node).map_or_else(Vec::new, |o| o.line);
        }
        let path = self.path(node);
        if let Some(end) = self.enough(&path, &here.position, moves.len(), &expected) {
            return match end {
                End::Enough => self.written_on(node, branch, moves.len(), other),
                end => Found::Solved(node, other, end),
            };
        }
        let Some(&best) = expected.first() else {
            return Found::Solved(node, other, End::Enough);
        };
        self.defences(node, branch, &moves, best)
    }

    /// Enough is shown at `node` though nothing is plain yet: what the member wrote beyond has to be
    /// right all the same, as far as it could have been asked.
    fn written_on(
        &self,
        node: NodeId,
        branch: Option<&'a Branch>,
        half_moves: usize,
        other: Option<By>,
    ) -> Found {
        let solved = Found::Solved(node, other, End::Enough);
        if half_moves.div_ceil(2) >= plain::MOST_ASKED {
            return solved;
        }
        for &child in &self.tree.node(node).children {
            let written = self.tree.node(child);
            let listed = branch.and_then(|b| b.defences.iter().find(|d| Some(d.mv) == written.mv));
            let known: Vec<&Branch> =
                listed.map_or_else(Vec::new, |d| d.continuations.iter().collect());
            match self.moves(child, &known) {
                Some(Found::Stop(judgement))
                    if judgement.verdict == super::Verdict::Wrong && !written.assumed =>
                {
                    return Found::Stop(judgement);
                }
                Some(further @ Found::Solved(..)) => return further,
                _ => {}
            }
        }
        solved
    }

    /// Why no more is asked after the solver's move that leads to `position`.
    fn enough(
        &self,
        before: &[Chess],
        position: &Chess,
        half_moves: usize,
        expected: &[Move],
    ) -> Option<End> {
        if let Some(end) = self.aim.plain(before, position) {
            return Some(end);
        }
        let done = half_moves.div_ceil(2);
        let seen = done < plain::ASKED_UNSEEN || {
            let mut before = before.to_vec();
            before.push(position.clone());
            self.aim.in_sight(&before, position, expected)
        };
        if done >= plain::MOST_ASKED || !seen {
            return Some(End::Enough);
        }
        // After a defence that ends the game nothing can be asked.
        let mut next = position.clone();
        next.play_unchecked(*expected.first()?);
        (next.legal_moves().is_empty() || next.is_insufficient_material()).then_some(End::Enough)
    }

    /// Holds what is written after a right move at `node` against the best defence.
    fn defences(
        &self,
        node: NodeId,
        branch: Option<&'a Branch>,
        moves: &[Move],
        best: Move,
    ) -> Found {
        let mut dealt = match self.dealt(node, branch, self.written_defences(node, best)) {
            Ok(dealt) => dealt,
            Err(stop) => return stop,
        };
        if dealt.is_empty() {
            let position = &self.tree.node(node).position;
            let chosen = self.chosen(position, moves, best);
            return missing(moves, chosen, None);
        }
        if let Some(place) = dealt.iter().position(|(defence, _)| *defence == best) {
            return dealt.swap_remove(place).1;
        }
        self.stronger(node, moves, best, &[best], dealt)
    }

    /// What became of a right move at `node` after which none of `own` was dealt with, and other defences
    /// were or none: one of them may resist as well as all of these. If not, `asked` is asked for.
    fn stronger(
        &self,
        node: NodeId,
        moves: &[Move],
        asked: Move,
        own: &[Move],
        mut dealt: Vec<(Move, Found)>,
    ) -> Found {
        let strong = dealt
            .iter()
            .position(|(defence, _)| own.iter().all(|&best| self.as_strong(node, *defence, best)));
        match (strong, dealt.first()) {
            (Some(place), _) => dealt.swap_remove(place).1,
            (None, weaker) => missing(moves, asked, weaker.map(|(defence, _)| *defence)),
        }
    }

    /// What became of each of these defences at `node` that is dealt with; the first that is dealt with
    /// wrongly stops.
    fn dealt(
        &self,
        node: NodeId,
        branch: Option<&'a Branch>,
        written: Vec<NodeId>,
    ) -> Result<Vec<(Move, Found)>, Found> {
        let mut dealt: Vec<(Move, Found)> = Vec::new();
        for child in written {
            let written = self.tree.node(child);
            let Some(defence) = written.mv else { continue };
            let listed = branch.and_then(|b| b.defences.iter().find(|d| d.mv == defence));
            let known: Vec<&Branch> =
                listed.map_or_else(Vec::new, |d| d.continuations.iter().collect());
            match self.moves(child, &known) {
                None => {}
                // The member never wrote this defence; then it is not dealt with, and no more.
                // Unless it was the only one: then there was nothing to write.
                Some(Found::Stop(_)) if written.assumed && !self.is_forced(node) => {}
                Some(stop @ Found::Stop(_)) => return Err(stop),
                Some(found) => dealt.push((defence, found)),
            }
        }
        Ok(dealt)
    }

    /// Whether the defender has but one move at a node.
    fn is_forced(&self, node: NodeId) -> bool {
        self.tree.node(node).position.legal_moves().len() == 1
    }

    /// The written defences that are to be looked at. Of those that the member left out and that were
    /// filled in, only the best one, or if the written move does not fit it, the first.
    fn written_defences(&self, node: NodeId, best: Move) -> Vec<NodeId> {
        let children = &self.tree.node(node).children;
        let (assumed, mut written): (Vec<NodeId>, Vec<NodeId>) = children
            .iter()
            .partition(|&&child| self.tree.node(child).assumed);
        let is_best = |child: &&NodeId| self.tree.node(**child).mv == Some(best);
        written.extend(assumed.iter().find(is_best).or(assumed.first()));
        written
    }

    /// What is thought of the move that leads to `node`; `None` when too much of one reply would have
    /// to be searched.
    fn opinion(&self, node: NodeId) -> Option<Opinion> {
        if self.searched.get() >= MOST_SEARCHED {
            return None;
        }
        self.searched.set(self.searched.get() + 1);
        let after = &self.tree.node(node).position;
        Some(opinion(self.case, &self.path(node), after))
    }

    /// Whether a defence resists about as well as the best; where that is not soon known, it does.
    fn as_strong(&self, node: NodeId, defence: Move, best: Move) -> bool {
        if self.searched.get() >= MOST_SEARCHED {
            return true;
        }
        self.searched.set(self.searched.get() + 1);
        let value = |mv: Move| {
            let mut after = self.tree.node(node).position.clone();
            after.play_unchecked(mv);
            let (depth, nodes) = COMPARED;
            let judged = within(self.case, nodes, |budget| search(&after, depth, 1, budget));
            let best = judged.lines.first()?;
            let sure = judged.depth >= depth / 2 || matches!(best.score, Score::Mate(_));
            sure.then(|| best.score.rank())
        };
        match (value(defence), value(best)) {
            (Some(given), Some(least)) => given - least < STRONGER_DEFENCE,
            _ => true,
        }
    }

    /// The defence to play: the main one, or with a choice one of those that stand as well.
    fn chosen(&self, position: &Chess, path: &[Move], main: Move) -> Move {
        if self.case.defence_choice == 0 {
            return main;
        }
        let mut equal = equal_defences(self.case, position, main);
        choice::lead_with(&mut equal, self.case.defence_choice, path);
        equal.first().copied().unwrap_or(main)
    }
}

/// A defence that is not dealt with after these moves, where another one may have been `instead`.
fn missing(moves: &[Move], defence: Move, instead: Option<Move>) -> Found {
    let mut line = moves.to_vec();
    line.push(defence);
    Found::Missing(Missing { line, instead })
}

/// What the solution expects after a move of its, the defence first.
fn main_line(branch: &Branch) -> Vec<Move> {
    let mut line = Vec::new();
    let mut at = branch.defences.first();
    while let Some(defence) = at {
        line.push(defence.mv);
        let Some(next) = defence.continuations.first() else {
            break;
        };
        line.push(next.mv);
        at = next.defences.first();
    }
    line
}

/// The defences that stand as well as the best, within [`EQUAL_DEFENCES`]; `main` is always one.
fn equal_defences(case: &Case<'_>, position: &Chess, main: Move) -> Vec<Move> {
    let (depth, nodes) = COMPARED;
    let judged = within(case, nodes, |budget| {
        search(position, depth, MOST_COMPARED, budget)
    });
    let mut equal = vec![main];
    let Some(best) = judged.lines.first() else {
        return equal;
    };
    let least = best.score.rank() - EQUAL_DEFENCES;
    equal.extend(
        judged
            .lines
            .iter()
            .filter(|ranked| ranked.score.rank() >= least)
            .filter_map(|ranked| ranked.line.first().copied())
            .filter(|&mv| mv != main),
    );
    equal
}

#[cfg(test)]
mod tests;
