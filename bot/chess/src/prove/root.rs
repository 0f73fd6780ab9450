//! The first move: every one of them is a key, fails to one defence only, or fails to several.
//!
//! Works through the lengths from one upwards, so the shortest mate is found on the way, and splits
//! the moves among threads. What is found does not depend on which thread found it.

use std::sync::{
    Mutex, PoisonError,
    atomic::{AtomicBool, Ordering},
};

use shakmaty::{Chess, Move, Position};

use super::search::{Worker, played};
use super::table::Table;
use crate::{Budget, Spent};

/// A first move and what is known of it.
pub(super) struct First {
    pub(super) mv: Move,
    pub(super) after: Chess,
    /// It mates within this many moves, itself counted, by every defence.
    pub(super) mates_in: Option<u8>,
    /// The length that `holds` speaks of.
    failed_at: u8,
    /// Defences (two at most) known to hold at that length.
    holds: Vec<Held>,
    /// Whether `holds` is all there is at that length.
    all_known: bool,
}

impl First {
    /// The only defence that holds at length `moves`, if there is just one and it is a move.
    pub(super) fn sole_refutation(&self, moves: u8) -> Option<Move> {
        if self.failed_at == moves && self.all_known && self.holds.len() == 1 {
            self.holds[0].by()
        } else {
            None
        }
    }

    /// Whether it is known if the move mates within `moves`.
    pub(super) fn is_settled(&self, moves: u8) -> bool {
        self.mates_in.is_some_and(|length| length <= moves)
            || self.failed_at >= moves && !self.holds.is_empty()
    }

    /// Whether it is known, of a move that fails at length `moves`, if it is a try.
    fn is_try_settled(&self, moves: u8) -> bool {
        // A move that should mate at once fails to whatever the defender plays.
        moves == 1
            || self.mates_in.is_some_and(|length| length <= moves)
            || self.failed_at == moves && (self.all_known || self.holds.len() > 1)
    }
}

/// How a defence holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Held {
    /// By this move.
    By(Move),
    /// The defender has no move and is not in check.
    Stalemate,
    /// The defender is not mated, and the attacker has no move left.
    InTime,
}

impl Held {
    /// The move that holds, where there is one.
    pub(super) fn by(self) -> Option<Move> {
        match self {
            Self::By(mv) => Some(mv),
            Self::Stalemate | Self::InTime => None,
        }
    }
}

/// All first moves of a position under proof.
pub(super) struct Firsts {
    pub(super) moves: Vec<First>,
    /// No mate in this many moves or fewer.
    none_within: u8,
    shortest: Option<u8>,
}

/// How much is asked about each first move.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Depth {
    /// Whether any first move mates; stops at the first that does.
    Any,
    /// For every move whether it is a key.
    Keys,
    /// For every move that is no key, whether more than one defence holds.
    Tries,
}

impl Firsts {
    pub(super) fn of(position: &Chess) -> Self {
        let mut moves: Vec<First> = position
            .legal_moves()
            .into_iter()
            .map(|mv| {
                let mut after = position.clone();
                after.play_unchecked(mv);
                First {
                    mv,
                    after,
                    mates_in: None,
                    failed_at: 0,
                    holds: Vec::new(),
                    all_known: false,
                }
            })
            .collect();
        // Forcing moves first: it is the search's order only, and the same on every run.
        moves
            .sort_by_cached_key(|first| (!first.after.is_check(), first.after.legal_moves().len()));
        Self {
            moves,
            none_within: 0,
            shortest: None,
        }
    }

    /// The shortest mate within `most`.
    pub(super) fn shortest(
        &mut self,
        most: u8,
        budget: &Budget<'_>,
        table: &Table,
    ) -> Result<Option<u8>, Spent> {
        while self.shortest.is_none() && self.none_within < most {
            let moves = self.none_within + 1;
            self.settle(moves, Depth::Any, budget, table)?;
            if self.moves.iter().any(|first| first.mates_in == Some(moves)) {
                self.shortest = Some(moves);
            } else {
                self.none_within = moves;
            }
        }
        Ok(self.shortest.filter(|shortest| *shortest <= most))
    }

    /// Whether every try at length `moves` is known.
    pub(super) fn are_tries_settled(&self, moves: u8) -> bool {
        self.moves.iter().all(|first| first.is_try_settled(moves))
    }

    /// The shortest mate, once it is found.
    pub(super) fn found(&self) -> Option<u8> {
        self.shortest
    }

    /// Lengths known to hold no mate.
    pub(super) fn none_within(&self) -> u8 {
        self.none_within
    }

    /// Settles for every first move whether it mates within `moves`.
    pub(super) fn settle_keys(
        &mut self,
        moves: u8,
        budget: &Budget<'_>,
        table: &Table,
    ) -> Result<(), Spent> {
        self.settle(moves, Depth::Keys, budget, table)
    }

    /// Settles for every first move that fails at length `moves` whether it is a try.
    pub(super) fn settle_tries(
        &mut self,
        moves: u8,
        budget: &Budget<'_>,
        table: &Table,
    ) -> Result<(), Spent> {
        self.settle(moves, Depth::Tries, budget, table)
    }

    fn settle(
        &mut self,
        moves: u8,
        depth: Depth,
        budget: &Budget<'_>,
        table: &Table,
    ) -> Result<(), Spent> {
        let found = AtomicBool::new(false);
        let spent = AtomicBool::new(false);
        let threads = threads(moves, budget);
        let queue = Mutex::new(self.moves.iter_mut());
        let work = || {
            let mut worker = Worker::new(budget, table).while_not(&found);
            loop {
                if found.load(Ordering::Relaxed) || spent.load(Ordering::Relaxed) {
                    break;
                }
                let next = queue.lock().unwrap_or_else(PoisonError::into_inner).next();
                let Some(first) = next else { break };
                match settle_one(first, moves, depth, &mut worker) {
                    Ok(()) => {
                        if depth == Depth::Any && first.mates_in.is_some() {
                            found.store(true, Ordering::Relaxed);
                        }
                    }
                    Err(Spent) => {
                        // Stopped because another thread found a mate, or because the budget is gone.
                        if !found.load(Ordering::Relaxed) {
                            spent.store(true, Ordering::Relaxed);
                        }
                        break;
                    }
                }
            }
            worker.settle();
        };
        std::thread::scope(|scope| {
            for _ in 1..threads {
                scope.spawn(work);
            }
            work();
        });
        if spent.into_inner() && !found.into_inner() {
            return Err(Spent);
        }
        Ok(())
    }
}

/// Up to this length keys and tries are settled at once: coming back to a first move would be more
/// work than its second defence.
const AT_ONCE: u8 = 3;

/// How many threads a proof of this length is worth; short ones end before another has started.
pub(super) fn threads(moves: u8, budget: &Budget<'_>) -> usize {
    if moves < 4 { 1 } else { budget.thread_count() }
}

fn settle_one(
    first: &mut First,
    moves: u8,
    depth: Depth,
    worker: &mut Worker<'_>,
) -> Result<(), Spent> {
    if first.mates_in.is_some_and(|known| known <= moves) {
        return Ok(());
    }
    let wanted = match depth {
        Depth::Any => 1,
        Depth::Keys if moves > AT_ONCE => 1,
        Depth::Keys | Depth::Tries => 2,
    };
    if first.failed_at == moves && (first.all_known || first.holds.len() >= wanted) {
        return Ok(());
    }
    let left = moves - 1;
    let replies = first.after.legal_moves();
    let mut holds = Vec::new();
    let mut all_known = true;
    worker.visit()?;
    if replies.is_empty() {
        if !first.after.is_check() {
            holds.push(Held::Stalemate);
        }
    } else if left == 0 {
        // The defender holds by not being mated, whatever he plays.
        holds.push(Held::InTime);
        all_known = false;
    } else {
        let mut order = worker.ordered_defence(&first.after, left)?;
        // What held before is the first thing to ask again.
        for held in first.holds.iter().rev() {
            if let Some(at) = held.by().and_then(|mv| order.iter().position(|o| *o == mv)) {
                let mv = order.remove(at);
                order.insert(0, mv);
            }
        }
        for (i, mv) in order.iter().enumerate() {
            if !worker.attack(&played(&first.after, *mv), left)? {
                holds.push(Held::By(*mv));
                if holds.len() == wanted {
                    all_known = i + 1 == order.len();
                    break;
                }
            }
        }
    }
    if holds.is_empty() {
        first.mates_in = Some(moves);
    }
    first.failed_at = moves;
    first.holds = holds;
    first.all_known = all_known;
    Ok(())
}
