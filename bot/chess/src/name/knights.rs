//! Mates given by a knight.

use shakmaty::{Bitboard, Role};

use super::frame::Frame;

/// A knight checks a king who has no flight at all: his own pieces hold every neighbouring square.
pub(super) fn smothered(frame: &Frame) -> bool {
    frame.checker_of(Role::Knight).is_some() && frame.flights.is_empty()
}

/// A knight checks; what his own pieces leave free on the edge a single bishop takes.
pub(super) fn suffocation(frame: &Frame) -> bool {
    let Some(knight) = frame.checker_of(Role::Knight) else {
        return false;
    };
    frame.on_top_edge()
        && frame.blocked.any()
        && frame.mating(Role::Bishop).into_iter().any(|bishop| {
            frame.all_taken(Bitboard::from_square(bishop).with(knight))
                && frame
                    .flights
                    .iter()
                    .any(|flight| flight.guards.contains(bishop) && !flight.guards.contains(knight))
        })
}

/// A knight checks the king in the corner; a heavy piece takes the line beside him, and his own piece
/// stands on the other side.
pub(super) fn corner(frame: &Frame) -> bool {
    frame.in_corner()
        && frame.checker_of(Role::Knight).is_some()
        && frame.own(0, -1)
        && frame.heavy().into_iter().any(|piece| {
            frame.offset(piece).0 == -1
                && frame.guards(-1, 0).contains(piece)
                && frame.guards(-1, -1).contains(piece)
        })
}
