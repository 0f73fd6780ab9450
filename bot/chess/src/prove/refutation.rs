//! The defence that shows a move wrong: all that hold, the most convincing first.

use std::cmp::Reverse;

use shakmaty::{Chess, Color, Move, Position, Role};

use super::search::{Worker, played};
use super::strike::CheckMap;
use super::table::Table;
use crate::pieces::worth;
use crate::{Budget, Spent};

/// With the defender to move: how the attacker's mate within `moves` more attacker moves is met.
/// `Ok(None)` when every defence still loses in time, or the defender has no move at all (he is
/// mated, or it is stalemate: look at the position); otherwise the most convincing defence after
/// which there is no mate in `moves`; see [`refutations`] for the order.
///
/// # Errors
/// [`Spent`] when the budget ended first.
pub fn refutation(position: &Chess, moves: u8, budget: &Budget<'_>) -> Result<Option<Move>, Spent> {
    Ok(refutations(position, moves, budget)?.first().copied())
}

/// With the defender to move: every defence after which there is no mate in `moves`, the most
/// convincing first. Empty when every defence loses in time, or there is no move.
///
/// A defence convinces when a beginner sees at once that nothing is left of the attack: mate, then
/// what wins most material by a plain capture, then checks, then those that leave the attacker the
/// fewest checks, then the fixed order of moves. The order does not depend on the budget.
///
/// # Errors
/// [`Spent`] when the budget ended first.
pub fn refutations(position: &Chess, moves: u8, budget: &Budget<'_>) -> Result<Vec<Move>, Spent> {
    let table = Table::new(budget.table_size());
    let mut worker = Worker::new(budget, &table);
    let found = holding(&mut worker, position, moves);
    worker.settle();
    found
}

/// What [`refutations`] finds, with what a worker's table knows already.
pub(super) fn holding(
    worker: &mut Worker<'_>,
    position: &Chess,
    moves: u8,
) -> Result<Vec<Move>, Spent> {
    let mut holding = Vec::new();
    for &mv in &position.legal_moves() {
        if !worker.attack(&played(position, mv), moves)? {
            holding.push(mv);
        }
    }
    sort_by_conviction(position, &mut holding);
    Ok(holding)
}

/// Orders defences as [`refutations`] says.
fn sort_by_conviction(position: &Chess, defences: &mut [Move]) {
    let map = CheckMap::of(position);
    defences.sort_by_cached_key(|&mv| {
        let mut after = position.clone();
        after.play_unchecked(mv);
        let check = map.as_ref().is_some_and(|map| map.is_check(position, mv));
        let checks_left = CheckMap::of(&after).map_or(0, |map| {
            after
                .legal_moves()
                .into_iter()
                .filter(|next| map.is_check(&after, *next))
                .count()
        });
        (
            !(check && after.is_checkmate()),
            Reverse(gain(position, mv)),
            !check,
            checks_left,
            super::order_of(mv),
        )
    });
}

/// What a capture or promotion wins in pawns when the piece that made it may be taken back.
fn gain(position: &Chess, mv: Move) -> i32 {
    let taken = mv.capture().map_or(0, worth);
    let promoted = mv.promotion().map_or(0, |role| worth(role) - 1);
    if taken + promoted == 0 {
        return 0;
    }
    let mut after = position.clone();
    after.play_unchecked(mv);
    let them: Color = after.turn();
    let risked = if can_recapture(&after, mv, them) {
        worth(mv.promotion().unwrap_or(mv.role()))
    } else {
        0
    };
    (taken + promoted - risked).max(0)
}

fn can_recapture(after: &Chess, mv: Move, them: Color) -> bool {
    let to = mv.to();
    let board = after.board();
    if mv.role() == Role::King {
        return false;
    }
    let takers = board.attacks_to(to, them, board.occupied());
    // A king takes back only what is not guarded; any other piece is believed to.
    takers.into_iter().any(|taker| {
        board.role_at(taker) != Some(Role::King)
            || board
                .attacks_to(to, !them, board.occupied().without(taker))
                .is_empty()
    })
}
