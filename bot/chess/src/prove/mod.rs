//! The exact prover: shortest mate, every key, every variation, every try with its refutation.
//!
//! A depth-first AND/OR search, full width on both sides: "mate in N" rests on an answer to every
//! defence, "no mate in N" on a defence to every move. The transposition table holds whole
//! positions, not hashes of them, so no collision can turn an answer round.
//!
//! # How draws bear on a proof
//!
//! - **Stalemate** is not mate: the defence that reaches it holds.
//! - **Dead positions** (FIDE Laws, article 5.2.2) are positions no sequence of legal moves leads to
//!   mate from. A forced mate is such a sequence, so no line of a proof passes through one.
//! - **Repetition** cannot save a defender from a shortest mate: along it the distance to mate falls
//!   with every move, so no position comes twice. What is known of a position is therefore the same
//!   however it was reached, which is what makes the table sound. Continuations that are longer than
//!   need be but still within the stipulation are listed too, and stand on the same footing: after
//!   each of them a forced mate within the moves left was proved afresh.
//! - **Fifty moves** are not counted, as is the convention for composed problems (Codex for Chess
//!   Composition, article 17; from memory): a proof is about the position, not the game before it.
//!   The check warns where the clock in a FEN would run out on the way.
//!
//! Touches no clock: whoever calls brings a [`Budget`]. When it ends, the answer is [`Spent`], never
//! a guess.

mod refutation;
mod root;
mod search;
mod strike;
mod table;
mod tree;

use shakmaty::{Chess, Move, Role};

use self::root::Firsts;
use self::search::Worker;
use self::table::Table;
use super::{Budget, Solution, Spent, Try};

pub use self::refutation::{refutation, refutations};
pub use self::tree::tree_limit;

/// What exhaustive search found out about "mate in `moves`".
#[derive(Clone, Debug)]
pub struct MateProof {
    /// Length of the shortest mate, when one exists within the moves asked for.
    pub shortest: Option<u8>,
    /// Every key to the length asked for (moves that mate sooner included), with variations and tries.
    pub solution: Solution,
}

/// The first moves by what is known of them at one length.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// They mate in time.
    pub keys: Vec<Move>,
    /// A defence is known that holds.
    pub failed: Vec<Move>,
    /// Neither is known yet.
    pub unsettled: Vec<Move>,
}

/// One position under proof. Lengths may be asked for one after another; what was found is kept.
pub struct Prover<'a> {
    position: Chess,
    budget: &'a Budget<'a>,
    table: Table,
    firsts: Firsts,
}

impl<'a> Prover<'a> {
    /// A prover for the side to move.
    pub fn new(position: &Chess, budget: &'a Budget<'a>) -> Self {
        Self {
            position: position.clone(),
            budget,
            table: Table::new(budget.table_size()),
            firsts: Firsts::of(position),
        }
    }

    /// The same prover with everything it knows, on another budget.
    pub fn go_on<'b>(self, budget: &'b Budget<'b>) -> Prover<'b> {
        Prover {
            position: self.position,
            budget,
            table: self.table,
            firsts: self.firsts,
        }
    }

    /// The shortest mate within `most` moves; `None` is a proof that there is none.
    ///
    /// # Errors
    /// [`Spent`] when the budget ended first; see [`Prover::none_within`] for what was proved by then.
    pub fn shortest(&mut self, most: u8) -> Result<Option<u8>, Spent> {
        self.firsts.shortest(most, self.budget, &self.table)
    }

    /// There is no mate in this many moves or fewer; as far as was proved.
    pub fn none_within(&self) -> u8 {
        self.firsts.none_within()
    }

    /// The shortest mate with a key to it, where it was found; there may be further keys.
    pub fn found(&self) -> Option<(u8, Move)> {
        let shortest = self.firsts.found()?;
        let key = self
            .firsts
            .moves
            .iter()
            .find(|first| first.mates_in == Some(shortest))?;
        Some((shortest, key.mv))
    }

    /// Every first move that mates within `moves`, the soonest first, with the moves it takes.
    ///
    /// # Errors
    /// [`Spent`] when the budget ended first.
    pub fn keys(&mut self, moves: u8) -> Result<Vec<(Move, u8)>, Spent> {
        self.firsts.settle_keys(moves, self.budget, &self.table)?;
        let mut worker = Worker::new(self.budget, &self.table);
        let shortest = self.none_within() + 1;
        let mut keys = Vec::new();
        for first in &self.firsts.moves {
            if first.mates_in.is_none_or(|length| length > moves) {
                continue;
            }
            let mut length = shortest;
            while worker.holds(&first.after, length - 1)? {
                length += 1;
            }
            keys.push((first.mv, length));
        }
        worker.settle();
        keys.sort_by_key(|(mv, length)| (*length, order_of(*mv)));
        Ok(keys)
    }

    /// Keys with their variations, and tries, to the length `moves`. Where the budget ends with the
    /// keys and the main line known, the tree is what had grown by then, and the tries are those
    /// found by then; see [`Prover::are_tries_settled`].
    ///
    /// # Errors
    /// [`Spent`] when the budget ended sooner.
    pub fn solution(&mut self, moves: u8) -> Result<Solution, Spent> {
        let keys = self.keys(moves)?;
        let mut workers: Vec<Worker<'_>> = (0..root::threads(moves, self.budget))
            .map(|_| Worker::new(self.budget, &self.table))
            .collect();
        let solution = tree::grow(&self.position, &keys, moves, &mut workers);
        workers.iter_mut().for_each(Worker::settle);
        drop(workers);
        let mut solution = solution?;
        // The keys alone decide the verdict, and a second defence to every other move is as much
        // work again, so the tries come last and cost nothing else.
        let _ = self.firsts.settle_tries(moves, self.budget, &self.table);
        solution.tries = self
            .firsts
            .moves
            .iter()
            .filter_map(|first| {
                first.sole_refutation(moves).map(|refutation| Try {
                    mv: first.mv,
                    refutation,
                })
            })
            .collect();
        solution.tries.sort_by_key(|one| order_of(one.mv));
        Ok(solution)
    }

    /// Whether every try at length `moves` is known, rather than those found before the budget ended.
    pub fn are_tries_settled(&self, moves: u8) -> bool {
        self.firsts.are_tries_settled(moves)
    }

    /// What is known of every first move at length `moves`, whatever the budget left unsettled.
    pub fn standing(&self, moves: u8) -> Standing {
        let mut standing = Standing::default();
        for first in &self.firsts.moves {
            let place = if !first.is_settled(moves) {
                &mut standing.unsettled
            } else if first.mates_in.is_some_and(|length| length <= moves) {
                &mut standing.keys
            } else {
                &mut standing.failed
            };
            place.push(first.mv);
        }
        for moves in [
            &mut standing.keys,
            &mut standing.failed,
            &mut standing.unsettled,
        ] {
            moves.sort_by_key(|mv| order_of(*mv));
        }
        standing
    }

    /// With the defender to move in a position that can come of this one: whether he is mated, or
    /// every defence is met by a mate within `moves` more moves of the attacker.
    ///
    /// # Errors
    /// [`Spent`] when the budget ended first.
    pub fn meets(&self, position: &Chess, moves: u8) -> Result<bool, Spent> {
        let mut worker = Worker::new(self.budget, &self.table);
        let holds = worker.holds(position, moves);
        worker.settle();
        Ok(!holds?)
    }

    /// With the attacker to move in a position that can come of this one: every move that mates
    /// within `moves`, the soonest first, with the moves it takes.
    ///
    /// # Errors
    /// [`Spent`] when the budget ended first.
    pub fn continuations(&self, position: &Chess, moves: u8) -> Result<Vec<(Move, u8)>, Spent> {
        let mut worker = Worker::new(self.budget, &self.table);
        let found = tree::continuations(&mut worker, position, moves);
        worker.settle();
        found
    }

    /// With the defender to move in a position that can come of this one: every defence after which
    /// there is no mate in `moves`, the most convincing first; see [`refutations`].
    ///
    /// # Errors
    /// [`Spent`] when the budget ended first.
    pub fn refutations(&self, position: &Chess, moves: u8) -> Result<Vec<Move>, Spent> {
        let mut worker = Worker::new(self.budget, &self.table);
        let found = refutation::holding(&mut worker, position, moves);
        worker.settle();
        found
    }
}

/// Proves or disproves mate in at most `moves` moves of the side to move.
///
/// ```
/// use sealed_move_chess::{Budget, parse_fen, prove};
///
/// let read = parse_fen("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1")?;
/// let proof = prove::mate(&read.position, 2, &Budget::unlimited())?;
/// assert_eq!(proof.shortest, Some(2));
/// assert_eq!(proof.solution.keys.len(), 1);
/// assert_eq!(proof.solution.keys[0].mv.to_string(), "Rd2xd8");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`Spent`] when the budget ended first; nothing is claimed then.
pub fn mate(position: &Chess, moves: u8, budget: &Budget<'_>) -> Result<MateProof, Spent> {
    let mut prover = Prover::new(position, budget);
    let shortest = prover.shortest(moves)?;
    Ok(MateProof {
        shortest,
        solution: prover.solution(moves)?,
    })
}

/// The shortest mate of the side to move within `most` moves; `None` is a proof that there is none.
///
/// # Errors
/// [`Spent`] when the budget ended first.
pub fn shortest_mate(position: &Chess, most: u8, budget: &Budget<'_>) -> Result<Option<u8>, Spent> {
    Prover::new(position, budget).shortest(most)
}

/// An order of moves that is the same on every run: by role, then from and to.
pub(super) fn order_of(mv: Move) -> (u8, u16) {
    let strength = match mv.role() {
        Role::Queen => 0,
        Role::Rook => 1,
        Role::Bishop => 2,
        Role::Knight => 3,
        Role::Pawn => 4,
        Role::King => 5,
    };
    (strength, table::pack(mv))
}

#[cfg(test)]
pub(crate) mod properties;
#[cfg(test)]
mod tests;
