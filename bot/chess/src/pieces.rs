//! What pieces are worth in plain counting.

use shakmaty::Role;

/// In pawns. A king counts nothing: he is never taken. Common practice.
pub(crate) fn worth(role: Role) -> i32 {
    match role {
        Role::Pawn => 1,
        Role::Knight | Role::Bishop => 3,
        Role::Rook => 5,
        Role::Queen => 9,
        Role::King => 0,
    }
}
