//! The exact prover: shortest mate, every key, every variation, every try with its refutation.

use shakmaty::{Chess, Move};

use super::{Budget, Solution, Spent};

/// What exhaustive search found out about "mate in `moves`".
#[derive(Clone, Debug)]
pub struct MateProof {
    /// Length of the shortest mate, when one exists within the moves asked for.
    pub shortest: Option<u8>,
    /// Every key to the length asked for (moves that mate sooner included), with variations and tries.
    pub solution: Solution,
}

/// Proves or disproves mate in at most `moves` moves of the side to move.
///
/// # Errors
/// [`Spent`] when the budget ended first; nothing is claimed then.
pub fn mate(position: &Chess, moves: u8, budget: &Budget<'_>) -> Result<MateProof, Spent> {
    let _ = (position, moves, budget);
    todo!()
}

/// The shortest mate of the side to move within `most` moves; `None` is a proof that there is none.
///
/// # Errors
/// [`Spent`] when the budget ended first.
pub fn shortest_mate(position: &Chess, most: u8, budget: &Budget<'_>) -> Result<Option<u8>, Spent> {
    let _ = (position, most, budget);
    todo!()
}

/// With the defender to move: how the attacker's mate within `moves` more attacker moves is met.
/// `Ok(None)` when every defence still loses in time (or the defender is mated already),
/// otherwise a defence after which there is no mate in `moves`.
///
/// # Errors
/// [`Spent`] when the budget ended first.
pub fn refutation(position: &Chess, moves: u8, budget: &Budget<'_>) -> Result<Option<Move>, Spent> {
    let _ = (position, moves, budget);
    todo!()
}
