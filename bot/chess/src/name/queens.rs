//! Mates given by the queen from next to the king.

use shakmaty::{File, Role};

use super::frame::Frame;

/// The queen touches the king at a corner; the two squares she cannot reach hold his own pieces.
pub(super) fn dovetail(frame: &Frame) -> bool {
    frame
        .checker_of(Role::Queen)
        .is_some_and(|queen| frame.offset(queen) == (1, 1))
        && frame.own(-1, 0)
        && frame.own(0, -1)
}

/// The queen faces the king; the two squares behind him that she cannot reach hold his own pieces.
pub(super) fn swallow_tail(frame: &Frame) -> bool {
    frame
        .checker_of(Role::Queen)
        .is_some_and(|queen| frame.offset(queen) == (0, -1))
        && frame.own(-1, 1)
        && frame.own(1, 1)
}

/// The queen beside the square in front of the king, held by a pawn two squares in front of him.
pub(super) fn damiano(frame: &Frame) -> bool {
    frame.on_top_edge()
        && frame
            .checker_of(Role::Queen)
            .is_some_and(|queen| frame.offset(queen) == (1, -1))
        && frame.has(Role::Pawn, 0, -2)
}

/// The queen before the castled king's position (not on the edge), held by a pawn on the third rank.
pub(super) fn lolli(frame: &Frame) -> bool {
    frame.on_top_edge()
        && frame.checker_of(Role::Queen).is_some_and(|queen| {
            let (files, ranks) = frame.offset(queen);
            ranks == -1
                && !matches!(queen.file(), File::A | File::H)
                && (files == 0 || frame.in_any_corner())
                && frame.guards_of(queen).intersects(frame.mating(Role::Pawn))
        })
}

/// The queen behind the king who stepped off the first rank, held by a bishop next to her that takes
/// the way out.
pub(super) fn max_lange(frame: &Frame) -> bool {
    frame.on_right_edge()
        && frame.at(0, 1).is_some()
        && frame.at(0, 2).is_none()
        && frame
            .checker_of(Role::Queen)
            .is_some_and(|queen| frame.offset(queen) == (-1, 1))
        && frame.has(Role::Bishop, -2, 0)
        && frame.taken(-1, -1, frame.mating(Role::Bishop))
        && frame.own(-1, 0)
}

/// The queen next to the king, held by another piece.
pub(super) fn kiss(frame: &Frame) -> bool {
    frame.checker_of(Role::Queen).is_some_and(|queen| {
        let (files, ranks) = frame.offset(queen);
        files.abs() <= 1 && ranks.abs() <= 1
    })
}
