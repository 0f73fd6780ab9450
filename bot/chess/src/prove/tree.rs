//! The variation tree: after each key every defence, after each defence every continuation.
//!
//! The main line is grown first and to its end, the rest breadth first, so that what a cut tree
//! lacks are the deepest side lines. Which branches there are, and in what order, depends on exact
//! distances alone, never on what the table happened to hold. Where the budget ends it, the tree is
//! what had grown by then, once it has its main line.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::sync::{
    Mutex, PoisonError,
    atomic::{AtomicBool, AtomicUsize, Ordering},
};

use shakmaty::{Chess, Move, MoveList, Position, Role};

use super::search::{Worker, played};
use super::strike::CheckMap;
use crate::pieces::worth;
use crate::{Branch, Defence, Solution, Spent};

/// The most branches (solver's moves) a tree may have, by the length of the mate. A node of the
/// tree of a long mate costs a proof of its own, so long mates get smaller trees.
pub const fn tree_limit(moves: u8) -> usize {
    match moves {
        0..=3 => 8_000,
        4 => 4_000,
        5 => 600,
        6 => 200,
        _ => 80,
    }
}

/// A dual is grown as if it stood this much deeper.
const DUAL_DEPTH: usize = 2;

/// A branch while the tree grows.
struct Twig {
    mv: Move,
    after: Chess,
    /// Attacker's moves left after this one.
    left: u8,
    defences: Vec<Stem>,
}

struct Stem {
    mv: Move,
    continuations: Vec<usize>,
}

struct Tree<'w, 'a> {
    twigs: Vec<Twig>,
    workers: &'w mut [Worker<'a>],
    limit: usize,
}

/// A defence against a twig, its continuations with the length of each, the shortest first.
struct Resistance {
    /// Which of the twigs looked into together it answers.
    twig: usize,
    mv: Move,
    after: Chess,
    /// Attacker's moves left.
    left: u8,
    continuations: Vec<(Move, u8)>,
}

/// Twigs looked into together where each is soon done.
const MANY: usize = 64;
/// A proof of this many moves is worth a thread of its own.
const WORTH_A_THREAD: u8 = 3;

/// Grows the solution, tries apart, from its keys, on as many threads as there are workers. How many there are
/// makes no difference to the tree.
pub(super) fn grow(
    position: &Chess,
    keys: &[(Move, u8)],
    moves: u8,
    workers: &mut [Worker<'_>],
) -> Result<Solution, Spent> {
    let mut tree = Tree {
        twigs: Vec::new(),
        workers,
        limit: tree_limit(moves),
    };
    for &(mv, _) in keys {
        tree.twigs.push(Twig {
            mv,
            after: played(position, mv),
            left: moves.saturating_sub(1),
            defences: Vec::new(),
        });
    }
    let complete = tree.fill()?;
    let keys = (0..keys.len()).map(|at| tree.branch(at)).collect();
    Ok(Solution {
        keys,
        tries: Vec::new(),
        complete,
    })
}

impl Tree<'_, '_> {
    fn fill(&mut self) -> Result<bool, Spent> {
        let roots = self.twigs.len();
        // Lower goes first: the depth of the branch, and deeper for each dual on the way.
        let mut queue = BinaryHeap::new();
        let mut main = (roots > 0).then_some(0);
        let mut depth = 0;
        while let Some(at) = main {
            for answers in self.look_into(&[at])? {
                self.expand(at, answers);
            }
            depth += 1;
            let stems = &self.twigs[at].defences;
            main = stems
                .first()
                .and_then(|stem| stem.continuations.first().copied());
            for (i, stem) in stems.iter().enumerate() {
                for (j, &next) in stem.continuations.iter().enumerate() {
                    if (i, j) != (0, 0) {
                        queue.push(Reverse((depth + j.min(1) * DUAL_DEPTH, next)));
                    }
                }
            }
        }
        queue.extend((1..roots).map(|at| Reverse((0, at))));
        while let Some(Reverse((rank, at))) = queue.pop() {
            // What grows from a twig ranks behind every twig of the same rank, so these can be
            // looked into together and still grow in the order in which they came.
            let mut batch = vec![at];
            while batch.len() < self.together(at)
                && let Some(&Reverse((next_rank, next))) = queue.peek()
                && next_rank == rank
            {
                queue.pop();
                batch.push(next);
            }
            if self.twigs.len() >= self.limit {
                return Ok(false);
            }
            let Ok(found) = self.look_into(&batch) else {
                return Ok(false);
            };
            for (at, answers) in batch.into_iter().zip(found) {
                if self.twigs.len() >= self.limit {
                    return Ok(false);
                }
                self.expand(at, answers);
                for stem in &self.twigs[at].defences {
                    for (j, &next) in stem.continuations.iter().enumerate() {
                        queue.push(Reverse((rank + 1 + j.min(1) * DUAL_DEPTH, next)));
                    }
                }
            }
        }
        Ok(true)
    }

    /// How many twigs to look into together: with one thread there is nothing to gain, and what is
    /// looked into beyond the tree's limit is lost.
    fn together(&self, at: usize) -> usize {
        match self.workers.len() {
            0 | 1 => 1,
            _ if self.twigs[at].left < WORTH_A_THREAD => MANY,
            threads => threads,
        }
    }

    /// Every defence against each of these twigs, with its continuations.
    fn look_into(&mut self, twigs: &[usize]) -> Result<Vec<Vec<Resistance>>, Spent> {
        let mut open = Vec::new();
        for (twig, &at) in twigs.iter().enumerate() {
            let Twig { after, left, .. } = &self.twigs[at];
            if *left > 0 {
                open.extend(after.legal_moves().iter().map(|&mv| Resistance {
                    twig,
                    mv,
                    after: played(after, mv),
                    left: *left,
                    continuations: Vec::new(),
                }));
            }
        }
        let mut found: Vec<Vec<Resistance>> = twigs.iter().map(|_| Vec::new()).collect();
        for answer in answer_all(open, self.workers)? {
            found[answer.twig].push(answer);
        }
        Ok(found)
    }

    /// Adds every defence to a twig, with the continuations of each.
    fn expand(&mut self, at: usize, mut answers: Vec<Resistance>) {
        let position = &self.twigs[at].after;
        let map = CheckMap::of(position);
        answers.sort_by_cached_key(|answer| {
            // The branch is proved, so there is a continuation; the shortest comes first.
            let length = answer.continuations.first().map_or(u8::MAX, |next| next.1);
            (
                Reverse(length),
                Reverse(interest(position, answer.mv, map.as_ref())),
                answer.continuations.len(),
                super::order_of(answer.mv),
            )
        });
        for answer in answers {
            let first = self.twigs.len();
            let last = first + answer.continuations.len();
            for (next, _) in answer.continuations {
                self.twigs.push(Twig {
                    mv: next,
                    after: played(&answer.after, next),
                    left: answer.left - 1,
                    defences: Vec::new(),
                });
            }
            self.twigs[at].defences.push(Stem {
                mv: answer.mv,
                continuations: (first..last).collect(),
            });
        }
    }

    fn branch(&self, at: usize) -> Branch {
        let twig = &self.twigs[at];
        Branch {
            mv: twig.mv,
            defences: twig
                .defences
                .iter()
                .map(|stem| Defence {
                    mv: stem.mv,
                    continuations: stem.continuations.iter().map(|&n| self.branch(n)).collect(),
                })
                .collect(),
        }
    }
}

/// Finds the continuations of every answer; in no certain order where threads share the work.
fn answer_all(
    mut open: Vec<Resistance>,
    workers: &mut [Worker<'_>],
) -> Result<Vec<Resistance>, Spent> {
    let long = open.iter().any(|answer| answer.left >= WORTH_A_THREAD);
    let [first, helpers @ ..] = workers else {
        return Ok(open);
    };
    if helpers.is_empty() || open.len() < 2 || !(long || open.len() >= MANY) {
        for answer in &mut open {
            answer.continuations = continuations(first, &answer.after, answer.left)?;
        }
        return Ok(open);
    }
    let next = AtomicUsize::new(0);
    let spent = AtomicBool::new(false);
    let slots: Vec<Mutex<Resistance>> = open.into_iter().map(Mutex::new).collect();
    let share = |worker: &mut Worker<'_>| {
        while let Some(slot) = slots.get(next.fetch_add(1, Ordering::Relaxed)) {
            let mut answer = slot.lock().unwrap_or_else(PoisonError::into_inner);
            match continuations(worker, &answer.after, answer.left) {
                Ok(found) => answer.continuations = found,
                Err(Spent) => {
                    spent.store(true, Ordering::Relaxed);
                    next.store(slots.len(), Ordering::Relaxed);
                }
            }
        }
    };
    std::thread::scope(|scope| {
        for helper in helpers {
            scope.spawn(|| share(helper));
        }
        share(first);
    });
    if spent.into_inner() {
        return Err(Spent);
    }
    Ok(slots
        .into_iter()
        .map(|slot| slot.into_inner().unwrap_or_else(PoisonError::into_inner))
        .collect())
}

/// Every move that still mates within `moves`, with the length it takes; the shortest first.
pub(super) fn continuations(
    worker: &mut Worker<'_>,
    position: &Chess,
    moves: u8,
) -> Result<Vec<(Move, u8)>, Spent> {
    let mut found = Vec::new();
    if moves == 1 {
        if let Some(map) = CheckMap::of(position) {
            let mut checks = MoveList::new();
            map.checks(position, &mut checks);
            for &mv in &checks {
                worker.visit()?;
                if map.is_mate(position, mv) {
                    found.push((mv, 1));
                }
            }
        }
    } else {
        for &mv in &position.legal_moves() {
            worker.visit()?;
            let after = played(position, mv);
            // Most moves fail, and fail at full length at once; only for those that do not is the
            // exact length wanted.
            if worker.holds(&after, moves - 1)? {
                continue;
            }
            let mut length = moves;
            while length > 1 && !worker.holds(&after, length - 2)? {
                length -= 1;
            }
            found.push((mv, length));
        }
    }
    found.sort_by_key(|(mv, length)| (*length, super::order_of(*mv)));
    Ok(found)
}

/// How much a defence has to show, among defences that last equally long: a counter-check, a
/// capture by its worth, a promotion, then any piece's move before the king's.
fn interest(position: &Chess, mv: Move, map: Option<&CheckMap>) -> i32 {
    let mut interest = mv.capture().map_or(0, |role| 10 * worth(role));
    if map.is_some_and(|map| map.is_check(position, mv)) {
        interest += 100;
    }
    if mv.promotion().is_some() {
        interest += 5;
    }
    interest + i32::from(mv.role() != Role::King)
}
