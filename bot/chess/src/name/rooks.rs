//! Mates given by a rook (or a queen like a rook) with a knight, a bishop or a pawn.

use shakmaty::{Bitboard, Role, Square};

use super::frame::Frame;

/// The rook beside the cornered king, held by the knight two squares off on the diagonal.
pub(super) fn arabian(frame: &Frame) -> bool {
    frame.in_corner()
        && frame
            .checker_of(Role::Rook)
            .is_some_and(|rook| frame.offset(rook) == (0, -1))
        && frame.has(Role::Knight, -2, -2)
}

/// A heavy piece checks along the edge; on the next line stands one of the king's own pieces, and a knight
/// two squares beyond that piece takes the rest of the line.
pub(super) fn anastasia(frame: &Frame) -> bool {
    frame.on_right_edge()
        && frame
            .heavy_checker()
            .is_some_and(|checker| checker.file() == frame.king.file())
        && (-1..=1).any(|row| {
            let Some(knight) = frame
                .at(-3, row)
                .filter(|square| frame.mating(Role::Knight).contains(*square))
            else {
                return false;
            };
            frame.own(-1, row)
                && (-1..=1)
                    .filter(|&other| other != row && frame.at(-1, other).is_some())
                    .all(|other| frame.guards(-1, other).contains(knight))
        })
}

/// The rook beside the king is held by a knight, the knight beside the king by a pawn, and the king's
/// own piece does the rest.
pub(super) fn hook(frame: &Frame) -> bool {
    let Some(rook) = frame.checker_of(Role::Rook) else {
        return false;
    };
    frame.blocked.any()
        && (frame.guards_of(rook) & frame.mating(Role::Knight))
            .into_iter()
            .any(|knight| frame.guards_of(knight).intersects(frame.mating(Role::Pawn)))
}

/// The rook stands in front of the king on the edge, the knight behind the rook.
pub(super) fn vukovic(frame: &Frame) -> bool {
    frame.on_top_edge()
        && !frame.in_any_corner()
        && frame
            .checker_of(Role::Rook)
            .is_some_and(|rook| frame.offset(rook) == (0, -1))
        && frame.at(0, -2).is_some_and(|square| {
            frame.mating(Role::Knight).contains(square)
                && (frame.taken(-1, 0, square.into()) || frame.taken(1, 0, square.into()))
                && (frame.own(-1, 0) || frame.taken(-1, 0, square.into()))
                && (frame.own(1, 0) || frame.taken(1, 0, square.into()))
        })
}

/// A heavy piece checks down the edge file; a bishop takes the corner's neighbour on the first rank and
/// the king's own piece stands on the diagonal.
pub(super) fn greco(frame: &Frame) -> bool {
    frame.in_corner()
        && frame
            .heavy_checker()
            .is_some_and(|checker| checker.file() == frame.king.file())
        && frame.own(-1, -1)
        && frame.taken(-1, 0, frame.mating(Role::Bishop))
}

/// The rook next to the king on his first rank, with the bishops of the mating side that hold it.
fn held_rook(frame: &Frame) -> Option<(Square, Bitboard)> {
    let rook = frame.checker_of(Role::Rook)?;
    if !frame.on_top_edge() || frame.offset(rook) != (1, 0) {
        return None;
    }
    let bishops = frame.guards_of(rook) & frame.mating(Role::Bishop);
    bishops.any().then_some((rook, bishops))
}

/// The rook next to the uncastled king, held by a bishop that also takes the square in front of him.
pub(super) fn opera(frame: &Frame) -> bool {
    held_rook(frame).is_some_and(|(rook, bishops)| {
        !Bitboard::CORNERS.contains(rook) && frame.taken(0, -1, bishops) && frame.blocked.any()
    })
}

/// The rook in the corner next to the castled king, held by a bishop from afar.
pub(super) fn mayet(frame: &Frame) -> bool {
    held_rook(frame).is_some_and(|(rook, bishops)| {
        Bitboard::CORNERS.contains(rook) && frame.taken(0, -1, bishops)
    })
}

/// Rook or queen in the corner next to the castled king, held by a pawn or bishop in front of him.
pub(super) fn anderssen(frame: &Frame) -> bool {
    frame.on_top_edge()
        && frame.heavy_checker().is_some_and(|checker| {
            frame.offset(checker) == (1, 0) && Bitboard::CORNERS.contains(checker)
        })
        && (frame.has(Role::Pawn, 0, -1) || frame.has(Role::Bishop, 0, -1))
}

/// A rook checks the king beside the corner along his file; a bishop takes the corner and the king's
/// own piece stands in front of it.
pub(super) fn pillsbury(frame: &Frame) -> bool {
    frame.king == Square::G8
        && frame
            .checker_of(Role::Rook)
            .is_some_and(|rook| rook.file() == frame.king.file())
        && frame.own(1, -1)
        && frame.taken(1, 0, frame.mating(Role::Bishop))
}
