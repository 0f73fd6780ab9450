//! The coach's own lines in a verdict: the variation for a wrong move with the coach's words on it, and the
//! words on the right moves of a line that is solved.
//!
//! Here it is found out what the coach has and whether it may be shown; whether the variation refutes is
//! for the prover and the search to say ([`super::mate`], [`super::advantage`]). Of a wrong move nothing is
//! shown that gives away a move still to be found, in words or in moves; the coach's words are then kept
//! for the reveal.

use shakmaty::{Chess, Color, Move, Position};

use super::{Case, told};
use crate::coach_lines::{CoachTree, NodeAt};
use crate::comments::Secrets;
use crate::fact::{Remark, Why};
use crate::{Branch, Stipulation, line};

/// The most half-moves of a coach's variation that a verdict shows.
const LONGEST: usize = 16;
/// The most comments that stand with a verdict.
const MOST_COMMENTS: usize = 4;
/// The most characters of comments that stand with a verdict.
const MOST_CHARACTERS: usize = 800;
/// The most moves still to be found that words are held against.
const MOST_SECRETS: usize = 200;
/// How many moves of the solver further the line of a search counts as still to be found: no more are
/// asked ([`super::advantage`]). A mate's is proved, and all of it counts.
const SEARCHED: usize = 3;

/// A coach's words on the move that a line ends with.
struct Comment {
    /// The moves from the start of the problem to it.
    moves: Vec<Move>,
    words: String,
}

/// What the coach has on a wrong move.
pub(super) struct OnWrong {
    /// The answer and what follows; empty where the coach gives words only.
    pub(super) line: Vec<Move>,
    on_move: Vec<Comment>,
    along: Vec<Comment>,
}

/// What the coach has on the wrong move that `moves` end with, where it may be shown.
pub(super) fn on_wrong(case: &Case<'_>, moves: &[Move]) -> Option<OnWrong> {
    let tree = case.problem.coach.as_deref()?;
    let at = tree.at(moves)?;
    let mut places = tree.main_line(at);
    let solver = case.problem.position.turn();
    let task = case.problem.stipulation;
    let said_to_fail = tree.node(at).is_marked_wrong()
        || places
            .last()
            .is_some_and(|&end| tree.says_failed(end, solver, task));
    if !said_to_fail {
        return None;
    }
    places.truncate(LONGEST);
    let line = tree.moves(&places);
    let mut room = Room::new();
    let on_move = room.comments(tree, at, moves);
    let mut along = Vec::new();
    let mut upto = moves.to_vec();
    for (&place, &mv) in places.iter().zip(&line) {
        upto.push(mv);
        along.extend(room.comments(tree, place, &upto));
    }
    if on_move.is_empty() && line.is_empty() {
        return None;
    }
    let secrets = secrets(case, tree, moves);
    let own: Vec<Move> = line.iter().skip(1).step_by(2).copied().collect();
    let mut words = on_move.iter().chain(&along);
    let tells =
        secrets.shown_by(&own) || words.any(|comment| secrets.told_by(&comment.words).is_some());
    (!tells).then_some(OnWrong {
        line,
        on_move,
        along,
    })
}

impl OnWrong {
    /// The defence that the coach gives.
    pub(super) fn defence(&self) -> Option<Move> {
        self.line.first().copied()
    }

    /// The coach's words on the wrong move itself.
    pub(super) fn on_the_move(&self, start: &Chess) -> Vec<Remark> {
        self.on_move.iter().map(|on| on.told(start)).collect()
    }

    /// The coach's variation after `moves`, with the words along it; where there are none, with the reason
    /// that the program has.
    pub(super) fn variation(&self, start: &Chess, moves: &[Move], why: &Why) -> Vec<Remark> {
        let mut all = moves.to_vec();
        all.extend(&self.line);
        let line = told::numbered_end(start, &all, self.line.len()).into();
        let silent = self.on_move.is_empty() && self.along.is_empty();
        let mut said = vec![match silent && !why.is_empty() {
            true => Remark::CoachShowsBecause {
                line,
                why: why.clone(),
            },
            false => Remark::CoachShows { line },
        }];
        said.extend(self.along.iter().map(|on| on.told(start)));
        said
    }
}

/// The coach's words on the moves of a line that solves the problem.
pub(super) fn on_solved(case: &Case<'_>, sans: &[String]) -> Vec<Remark> {
    let Some(tree) = case.problem.coach.as_deref() else {
        return Vec::new();
    };
    let start = &case.problem.position;
    let moves = line::moves(start, sans);
    let mut room = Room::new();
    let mut said = Vec::new();
    for upto in 1..=moves.len() {
        let Some(at) = tree.at(&moves[..upto]) else {
            break;
        };
        if !tree.node(at).is_marked_wrong() {
            let comments = room.comments(tree, at, &moves[..upto]);
            said.extend(comments.iter().map(|on| on.told(start)));
        }
    }
    said
}

impl Comment {
    fn told(&self, start: &Chess) -> Remark {
        Remark::CoachOnMove {
            line: told::numbered_end(start, &self.moves, 1).into(),
            words: self.words.as_str().into(),
        }
    }
}

/// How much may still be said.
struct Room {
    comments: usize,
    characters: usize,
}

impl Room {
    fn new() -> Self {
        Self {
            comments: MOST_COMMENTS,
            characters: MOST_CHARACTERS,
        }
    }

    /// The words at a place that there is room for; what is left out is told at the reveal.
    fn comments(&mut self, tree: &CoachTree, at: NodeAt, moves: &[Move]) -> Vec<Comment> {
        let mut out = Vec::new();
        for words in &tree.node(at).words {
            let long = words.chars().count();
            if self.comments == 0 || long > self.characters {
                continue;
            }
            self.comments -= 1;
            self.characters -= long;
            out.push(Comment {
                moves: moves.to_vec(),
                words: words.clone(),
            });
        }
        out
    }
}

/// What is still to be found where the wrong move was made that `moves` end with.
fn secrets(case: &Case<'_>, tree: &CoachTree, moves: &[Move]) -> Secrets {
    let (tried, before) = match moves.split_last() {
        Some((tried, before)) => (Some(*tried), before),
        None => (None, moves),
    };
    let mut start = case.problem.position.clone();
    for &mv in before {
        start.play_unchecked(mv);
    }
    let mut secrets = Secrets {
        start: start.clone(),
        keys: Vec::new(),
        later: Vec::new(),
        tried,
    };
    let known = case.problem.solution.after(before);
    secrets
        .keys
        .extend(known.iter().map(|branch| (start.clone(), branch.mv)));
    let deep = match case.problem.stipulation {
        Stipulation::Mate(moves) => moves.into(),
        Stipulation::Win | Stipulation::Draw => SEARCHED,
    };
    for branch in known {
        later(&mut secrets.later, &start, branch, deep);
    }
    if let Some(at) = tree.at(before) {
        along(&mut secrets, tree, at, &start, start.turn(), 0);
    }
    secrets
}

/// The solver's moves after a branch's own, as many in a line as `deep` says.
fn later(found: &mut Vec<(Chess, Move)>, before: &Chess, branch: &Branch, deep: usize) {
    if deep == 0 {
        return;
    }
    let after = played(before, branch.mv);
    for defence in &branch.defences {
        let position = played(&after, defence.mv);
        for next in &defence.continuations {
            if found.len() >= MOST_SECRETS {
                return;
            }
            found.push((position.clone(), next.mv));
            later(found, &position, next, deep - 1);
        }
    }
}

/// The solver's moves of the coach's own lines from a place on, but for those marked as wrong.
fn along(
    secrets: &mut Secrets,
    tree: &CoachTree,
    at: NodeAt,
    position: &Chess,
    solver: Color,
    deep: usize,
) {
    for &next in &tree.node(at).next {
        let node = tree.node(next);
        let Some(mv) = node.mv else { continue };
        if secrets.later.len() >= 2 * MOST_SECRETS {
            return;
        }
        if position.turn() == solver {
            if node.is_marked_wrong() || Some(mv) == secrets.tried && deep == 0 {
                continue;
            }
            match deep {
                0 => secrets.keys.push((position.clone(), mv)),
                _ => secrets.later.push((position.clone(), mv)),
            }
        }
        along(secrets, tree, next, &played(position, mv), solver, deep + 1);
    }
}

fn played(position: &Chess, mv: Move) -> Chess {
    let mut after = position.clone();
    after.play_unchecked(mv);
    after
}

#[cfg(test)]
mod tests;
