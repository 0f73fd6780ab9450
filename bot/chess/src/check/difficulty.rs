//! How hard a problem is for the solver, estimated from what the proof yields.
//!
//! The estimate starts from the length and is moved by what makes a key easy or hard to see:
//!
//! | feature | adds |
//! | --- | --- |
//! | length N | 1 + 1.5 × (N − 1) |
//! | the key gives no check | 1.0 |
//! | the key captures | −0.5 |
//! | the piece that makes the key can be taken (a sacrifice) | 0.7 |
//! | the key promotes to less than a queen | 1.0 |
//! | each try with a single refutation | 0.25, at most 1.5 in all |
//! | each defence to the key after the first | 0.05, at most 0.8 in all |
//!
//! held between 1 and 10 and rounded to one decimal. The weights are a rule of thumb (common
//! practice: longer, quieter and more deceptive is harder), to be set right by results.

use shakmaty::{Chess, Move, Position, Role};

use crate::Solution;

/// The estimate for a solution that holds in `moves`; `None` without a key.
pub(super) fn estimate(position: &Chess, solution: &Solution, moves: u8) -> Option<f64> {
    let key = solution.keys.first()?;
    let mut after = position.clone();
    after.play_unchecked(key.mv);
    let mut hard = 1.0 + 1.5 * f64::from(moves.saturating_sub(1));
    if !after.is_check() {
        hard += 1.0;
    }
    if key.mv.is_capture() {
        hard -= 0.5;
    }
    if is_sacrifice(&after, key.mv) {
        hard += 0.7;
    }
    if key.mv.promotion().is_some_and(|role| role != Role::Queen) {
        hard += 1.0;
    }
    hard += (0.25 * solution.tries.len() as f64).min(1.5);
    hard += (0.05 * after.legal_moves().len().saturating_sub(1) as f64).min(0.8);
    Some((hard.clamp(1.0, 10.0) * 10.0).round() / 10.0)
}

/// The piece that made the key is worth something and can be taken.
fn is_sacrifice(after: &Chess, key: Move) -> bool {
    let role = key.promotion().unwrap_or(key.role());
    role != Role::King
        && role != Role::Pawn
        && after
            .legal_moves()
            .iter()
            .any(|reply| reply.is_capture() && reply.to() == key.to())
}
