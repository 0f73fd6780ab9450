//! Whether two placements are one to whoever looks for a solution.

use shakmaty::Board;

/// Whether the pieces stand alike: on the same squares, on the other wing, with the colours turned, or both.
/// A solution of one is then a solution of the other.
///
/// ```
/// use sealed_move_chess::{card::alike, parse_fen};
/// use shakmaty::Position;
///
/// let board = |fen| parse_fen(fen).unwrap().position.board().clone();
/// let white = board("6k1/5ppp/8/8/8/8/8/3R2K1 w - - 0 1");
/// let black = board("1k2r3/8/8/8/8/8/PPP5/1K6 b - - 0 1");
/// assert!(alike(&white, &black));
/// assert!(!alike(&white, &board("6k1/5ppp/8/8/8/8/8/2R3K1 w - - 0 1")));
/// ```
pub fn alike(one: &Board, other: &Board) -> bool {
    let mut turned = one.clone();
    turned.flip_vertical();
    turned.swap_colors();
    [one.clone(), turned].into_iter().any(|board| {
        let mut mirrored = board.clone();
        mirrored.flip_horizontal();
        board == *other || mirrored == *other
    })
}
