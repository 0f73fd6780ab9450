//! What decides endings and what draws them: driving a bare king, and advantages that do not win.

use shakmaty::{Bitboard, Board, Color, Role, Square};

use super::{squares::material, view::rank_of};

/// A scaled value is in parts of this.
const WHOLE: i32 = 64;
/// Hardly to be won.
const HARDLY: i32 = 8;
/// Bishops on squares of different colours and nothing else but pawns.
const OPPOSITE_BISHOPS: i32 = 32;
/// The same with other pieces.
const OPPOSITE_BISHOPS_AND_MORE: i32 = 56;

/// Against a bare king: drive it to the edge, with bishop and knight to a corner of the bishop's
/// colour, and bring the own king near. As White sees it.
pub(super) fn drive(board: &Board) -> i32 {
    let bare = |color: Color| board.by_color(color).count() == 1;
    let (winner, sign) = match (bare(Color::White), bare(Color::Black)) {
        (false, true) => (Color::White, 1),
        (true, false) => (Color::Black, -1),
        _ => return 0,
    };
    let (Some(hunter), Some(hunted)) = (board.king_of(winner), board.king_of(!winner)) else {
        return 0;
    };
    let from_middle = |n: u32| (2 * n as i32 - 7).abs();
    let edge = from_middle(u32::from(hunted.file())) + from_middle(u32::from(hunted.rank()));
    let mut push = 10 * edge;
    let men = board.by_color(winner) & !board.kings();
    if men.count() == 2 && (men & board.knights()).any() && (men & board.bishops()).any() {
        let light = (men & board.bishops() & Bitboard::LIGHT_SQUARES).any();
        let corners = if light {
            [Square::A8, Square::H1]
        } else {
            [Square::A1, Square::H8]
        };
        let far = corners
            .into_iter()
            .map(|corner| steps(corner, hunted))
            .min()
            .unwrap_or(0);
        push = 4 * edge + 20 * (7 - far);
    }
    sign * (push + 6 * (7 - hunter.distance(hunted) as i32))
}

/// Files and ranks between two squares, added.
fn steps(a: Square, b: Square) -> i32 {
    (i32::from(a.file()) - i32::from(b.file())).abs()
        + (i32::from(a.rank()) - i32::from(b.rank())).abs()
}

/// `white` brought down to what can be won of it.
pub(super) fn scale(board: &Board, white: i32) -> i32 {
    let stronger = if white > 0 {
        Color::White
    } else {
        Color::Black
    };
    white * part(board, stronger) / WHOLE
}

fn part(board: &Board, stronger: Color) -> i32 {
    let own = board.by_color(stronger);
    let pawns = board.pawns() & own;
    let pieces = own & !(board.pawns() | board.kings());
    if pawns.is_empty() {
        let weak = board.by_color(!stronger);
        if pieces.count() <= 2 && pieces == board.knights() & own && weak.count() == 1 {
            // Two knights cannot force mate.
            return 0;
        }
        // At most a minor piece more.
        return if weight(board, stronger) - weight(board, !stronger) <= 400 {
            HARDLY
        } else {
            WHOLE
        };
    }
    if pieces == board.bishops() & own && wrong_rook_pawn(board, stronger, pawns, pieces) {
        return 0;
    }
    if opposite_bishops(board) {
        let others = board.knights() | board.rooks_and_queens();
        return if others.is_empty() {
            OPPOSITE_BISHOPS
        } else {
            OPPOSITE_BISHOPS_AND_MORE
        };
    }
    WHOLE
}

fn weight(board: &Board, color: Color) -> i32 {
    [Role::Knight, Role::Bishop, Role::Rook, Role::Queen]
        .into_iter()
        .map(|role| material(role).1 * (board.by_role(role) & board.by_color(color)).count() as i32)
        .sum()
}

/// Each side has one bishop, and they never meet.
fn opposite_bishops(board: &Board) -> bool {
    let one = |color| (board.bishops() & board.by_color(color)).single_square();
    match (one(Color::White), one(Color::Black)) {
        (Some(white), Some(black)) => white.is_light() != black.is_light(),
        _ => false,
    }
}

/// Only rook pawns of one file, no bishop that guards the corner they go to, and the bare enemy king
/// there first: it cannot be driven out. Without a bishop likewise.
fn wrong_rook_pawn(board: &Board, stronger: Color, pawns: Bitboard, bishops: Bitboard) -> bool {
    let Some(front) = pawns
        .into_iter()
        .max_by_key(|pawn| rank_of(*pawn, stronger))
    else {
        return false;
    };
    let file = Bitboard::from(front.file());
    if !(file & (Bitboard::from(Square::A1) | Bitboard::from(Square::H1))).any()
        || !(pawns & !file).is_empty()
        || board.by_color(!stronger).count() > 1
    {
        return false;
    }
    let last = if stronger == Color::White { 7 } else { 0 };
    let Some(corner) = (file & rank(last)).first() else {
        return false;
    };
    let guarded = bishops
        .into_iter()
        .any(|bishop| bishop.is_light() == corner.is_light());
    let king = board.king_of(!stronger);
    !guarded && king.is_some_and(|king| king.distance(corner) <= 1)
}

fn rank(number: u32) -> Bitboard {
    Bitboard(0xff << (8 * number))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;
    use shakmaty::Position;

    fn board(fen: &str) -> Board {
        parse_fen(fen).expect("a position").position.board().clone()
    }

    fn part_of(fen: &str) -> i32 {
        part(&board(fen), Color::White)
    }

    // All composed for these tests; the draws are common knowledge.
    #[test]
    fn advantages_that_do_not_win_count_little() {
        assert_eq!(part_of("4k3/8/8/8/8/8/8/4KB2 w - -"), HARDLY);
        assert_eq!(part_of("4k3/8/8/8/8/8/8/1N2K1N1 w - -"), 0);
        assert_eq!(part_of("4k1n1/8/8/8/8/8/8/4K2R w - -"), HARDLY);
        assert_eq!(part_of("4k3/8/8/8/8/8/8/4K2R w - -"), WHOLE);
        assert_eq!(part_of("4k3/8/8/8/8/8/4P3/4KB2 w - -"), WHOLE);
    }

    #[test]
    fn a_rook_pawn_with_the_wrong_bishop_draws_once_the_king_is_in_the_corner() {
        assert_eq!(
            part_of("k7/8/8/P7/8/8/8/K1B5 w - -"),
            0,
            "c1 is dark, a8 light"
        );
        assert_eq!(
            part_of("k7/8/8/P7/8/8/8/K4B2 w - -"),
            WHOLE,
            "the right one"
        );
        assert_eq!(part_of("8/8/8/P6k/8/8/8/K1B5 w - -"), WHOLE, "too far");
        assert_eq!(part_of("k7/8/8/PP6/8/8/8/K1B5 w - -"), WHOLE, "two files");
        assert_eq!(part_of("k7/8/8/P7/P7/8/8/K7 w - -"), 0, "no bishop at all");
        assert_eq!(
            part(&board("4kb2/8/8/8/7p/8/8/7K b - -"), Color::Black),
            0,
            "black, to h1"
        );
    }

    #[test]
    fn opposite_bishops_draw_many_endings() {
        assert_eq!(part_of("4kb2/8/8/8/8/8/PP6/4KB2 w - -"), OPPOSITE_BISHOPS);
        assert_eq!(part_of("2b1k3/8/8/8/8/8/PP6/4KB2 w - -"), WHOLE);
        assert_eq!(
            part_of("r3kb2/8/8/8/8/8/PP6/R3KB2 w - -"),
            OPPOSITE_BISHOPS_AND_MORE
        );
    }

    #[test]
    fn a_bare_king_is_driven_to_where_it_is_mated() {
        let drive = |fen| drive(&board(fen));
        assert!(drive("k7/8/8/8/8/8/8/K6R w - -") > drive("8/8/8/3k4/8/8/8/K6R w - -"));
        assert!(drive("k7/8/1K6/8/8/8/8/7R w - -") > drive("k7/8/8/8/8/8/8/K6R w - -"));
        // A bishop on light squares mates in a8, not in h8.
        assert!(drive("k7/8/8/8/4K3/8/8/5BN1 w - -") > drive("7k/8/8/8/3K4/8/8/5BN1 w - -"));
        assert_eq!(drive("k7/p7/8/8/8/8/8/K6R w - -"), 0, "not bare");
    }
}
