//! The everyday names of men and sides.

use shakmaty::{Color, Role};

/// The everyday name of a man.
pub(crate) fn man(role: Role) -> &'static str {
    match role {
        Role::Pawn => "pawn",
        Role::Knight => "knight",
        Role::Bishop => "bishop",
        Role::Rook => "rook",
        Role::Queen => "queen",
        Role::King => "king",
    }
}

/// The name of a side.
pub(crate) fn side(color: Color) -> &'static str {
    color.fold_wb("White", "Black")
}
