//! The variation tree: after each key every defence, after each defence every continuation.
//!
//! The main line is grown first and to its end, the rest breadth first, so that what a cut tree
//! lacks are the deepest side lines. Which branches there are, and in what order, depends on exact
//! distances alone, never on what the table happened to hold.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use shakmaty::{Chess, Move, Position, Role};

use super::search::{Worker, worth};
use super::strike::CheckMap;
use crate::chess::{Branch, Defence, Solution, Spent, Try};

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
    worker: &'w mut Worker<'a>,
    limit: usize,
}

/// Grows the solution from its keys.
pub(super) fn grow(
    position: &Chess,
    keys: &[(Move, u8)],
    moves: u8,
    tries: Vec<Try>,
    worker: &mut Worker<'_>,
) -> Result<Solution, Spent> {
    let mut tree = Tree {
        twigs: Vec::new(),
        worker,
        limit: tree_limit(moves),
    };
    for &(mv, _) in keys {
        let mut after = position.clone();
        after.play_unchecked(mv);
        tree.twigs.push(Twig {
            mv,
            after,
            left: moves.saturating_sub(1),
            defences: Vec::new(),
        });
    }
    let complete = tree.fill()?;
    let keys = (0..keys.len()).map(|at| tree.branch(at)).collect();
    Ok(Solution {
        keys,
        tries,
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
            self.expand(at)?;
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
            if self.twigs.len() >= self.limit {
                return Ok(false);
            }
            self.expand(at)?;
            for stem in &self.twigs[at].defences {
                for (j, &next) in stem.continuations.iter().enumerate() {
                    queue.push(Reverse((rank + 1 + j.min(1) * DUAL_DEPTH, next)));
                }
            }
        }
        Ok(true)
    }

    /// Adds every defence to a branch, with the continuations of each.
    fn expand(&mut self, at: usize) -> Result<(), Spent> {
        let left = self.twigs[at].left;
        if left == 0 {
            return Ok(());
        }
        let position = self.twigs[at].after.clone();
        let mut found = Vec::new();
        for &mv in &position.legal_moves() {
            let mut after = position.clone();
            after.play_unchecked(mv);
            let continuations = continuations(self.worker, &after, left)?;
            // The branch is proved, so there is one; the shortest comes first.
            let length = continuations.first().map_or(u8::MAX, |next| next.1);
            found.push((mv, after, continuations, length));
        }
        let map = CheckMap::of(&position);
        found.sort_by_cached_key(|(mv, _, continuations, length)| {
            (
                Reverse(*length),
                Reverse(interest(&position, *mv, map.as_ref())),
                continuations.len(),
                super::order_of(*mv),
            )
        });
        for (mv, after, continuations, _) in found {
            let first = self.twigs.len();
            let last = first + continuations.len();
            for &(next, _) in &continuations {
                let mut then = after.clone();
                then.play_unchecked(next);
                self.twigs.push(Twig {
                    mv: next,
                    after: then,
                    left: left - 1,
                    defences: Vec::new(),
                });
            }
            self.twigs[at].defences.push(Stem {
                mv,
                continuations: (first..last).collect(),
            });
        }
        Ok(())
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

/// Every move that still mates within `moves`, with the length it takes; the shortest first.
pub(super) fn continuations(
    worker: &mut Worker<'_>,
    position: &Chess,
    moves: u8,
) -> Result<Vec<(Move, u8)>, Spent> {
    let mut found = Vec::new();
    let map = CheckMap::of(position);
    for &mv in &position.legal_moves() {
        if moves == 1 && !map.as_ref().is_some_and(|map| map.is_check(position, mv)) {
            continue;
        }
        let mut after = position.clone();
        after.play_unchecked(mv);
        // Most moves fail, and fail at full length at once; only for those that do not is the
        // exact length wanted.
        if worker.defend(&after, moves - 1)?.is_some() {
            continue;
        }
        let mut length = moves;
        while length > 1 && worker.defend(&after, length - 2)?.is_none() {
            length -= 1;
        }
        found.push((mv, length));
    }
    found.sort_by_key(|(mv, length)| (*length, super::order_of(*mv)));
    Ok(found)
}

/// How much a defence has to show, among defences that last equally long: a counter-check, a
/// capture by its worth, a promotion, then any man's move before the king's.
fn interest(position: &Chess, mv: Move, map: Option<&CheckMap>) -> i64 {
    let mut interest = mv.capture().map_or(0, |role| 10 * worth(role));
    if map.is_some_and(|map| map.is_check(position, mv)) {
        interest += 100;
    }
    if mv.promotion().is_some() {
        interest += 5;
    }
    interest + i64::from(mv.role() != Role::King)
}
