//! Mates named for the check alone.

use shakmaty::Role;

use super::frame::Frame;

/// Two pieces check at once.
pub(super) fn double_check(frame: &Frame) -> bool {
    frame.checkers.more_than_one()
}

/// A pawn gives the check.
pub(super) fn pawn(frame: &Frame) -> bool {
    frame.checker_of(Role::Pawn).is_some()
}
