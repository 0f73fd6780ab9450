//! Pieces: how many squares they reach, the bishop pair, rooks on open files and the seventh rank,
//! outposts, and what stands attacked.

use shakmaty::{Bitboard, Color, Rank, Role};

use super::{
    Value, value,
    view::{View, ahead, attacked_by_pawns, beside, rank_of},
};

/// For a role: squares it reaches on the average, and the worth of each more or less.
const fn mobility(role: Role) -> (i32, Value) {
    match role {
        Role::Knight => (4, value(4, 4)),
        Role::Bishop => (6, value(4, 5)),
        Role::Rook => (7, value(2, 4)),
        Role::Queen => (13, value(1, 2)),
        _ => (0, value(0, 0)),
    }
}

const PAIR: Value = value(22, 45);
const OPEN_FILE: Value = value(22, 8);
const HALF_OPEN_FILE: Value = value(9, 6);
const SEVENTH: Value = value(6, 16);
const KNIGHT_OUTPOST: Value = value(18, 10);
const BISHOP_OUTPOST: Value = value(9, 4);
/// A pawn attacks a piece.
const BY_PAWN: Value = value(38, 30);
/// A knight or bishop attacks a rook or queen.
const BY_MINOR: Value = value(22, 20);
/// A rook attacks a queen.
const BY_ROOK: Value = value(20, 14);
/// Something attacks a piece that nothing guards.
const LOOSE: Value = value(14, 16);
const LOOSE_PAWN: Value = value(2, 10);

/// All of it for one side.
pub(super) fn pieces(view: &View<'_>, color: Color) -> Value {
    let mut sum = threats(view, color);
    let pawns = view.men(color, Role::Pawn);
    let their_pawns = view.men(!color, Role::Pawn);
    let open = !(pawns | view.men(color, Role::King) | view.pawn_attacks(!color));
    for role in [Role::Knight, Role::Bishop, Role::Rook, Role::Queen] {
        let (usual, each) = mobility(role);
        for from in view.men(color, role) {
            sum += each * ((view.sight(role, from) & open).count() as i32 - usual);
        }
    }
    if view.men(color, Role::Bishop).more_than_one() {
        sum += PAIR;
    }
    let seventh = Bitboard::from_rank(Rank::Seventh.flip_if(color));
    let eighth = Bitboard::from_rank(Rank::Eighth.flip_if(color));
    let worthwhile = (their_pawns & seventh).any() || eighth.contains(view.king(!color));
    for rook in view.men(color, Role::Rook) {
        let file = Bitboard::from(rook.file());
        if (file & pawns).is_empty() {
            sum += if (file & their_pawns).is_empty() {
                OPEN_FILE
            } else {
                HALF_OPEN_FILE
            };
        }
        if worthwhile && seventh.contains(rook) {
            sum += SEVENTH;
        }
    }
    // Squares that no enemy pawn can come to attack, guarded by a pawn of ours.
    let coverable = beside(ahead(their_pawns, !color));
    let outposts = attacked_by_pawns(pawns, color) & !coverable;
    for (role, worth) in [
        (Role::Knight, KNIGHT_OUTPOST),
        (Role::Bishop, BISHOP_OUTPOST),
    ] {
        for square in view.men(color, role) & outposts {
            if (3..=5).contains(&rank_of(square, color)) {
                sum += worth;
            }
        }
    }
    sum
}

/// What one side attacks with something cheaper, or what is left unguarded.
fn threats(view: &View<'_>, color: Color) -> Value {
    let theirs = view.board.by_color(!color);
    let their_pawns = view.men(!color, Role::Pawn);
    let valuable = theirs & !their_pawns & !view.men(!color, Role::King);
    let (rooks, queens) = (view.men(!color, Role::Rook), view.men(!color, Role::Queen));
    let minors = view.attacks_by(color, Role::Knight) | view.attacks_by(color, Role::Bishop);
    let count = |squares: Bitboard| squares.count() as i32;
    let loose = view.attacks(color) & !view.attacks(!color);
    BY_PAWN * count(valuable & view.pawn_attacks(color))
        + BY_MINOR * count((rooks | queens) & minors)
        + BY_ROOK * count(queens & view.attacks_by(color, Role::Rook))
        + LOOSE * count(valuable & loose)
        + LOOSE_PAWN * count(their_pawns & loose)
}

/// Ranks as a side counts them.
trait FlipIf {
    fn flip_if(self, color: Color) -> Self;
}

impl FlipIf for Rank {
    fn flip_if(self, color: Color) -> Self {
        match color {
            Color::White => self,
            Color::Black => self.flip_vertical(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;
    use shakmaty::Position;

    fn of(fen: &str) -> Value {
        let position = parse_fen(fen).expect("a position").position;
        pieces(&View::of(position.board()), Color::White)
    }

    /// The first position is better for White's pieces than the second by `by` and what the pieces see.
    fn better(good: &str, bad: &str) {
        let (good_value, bad_value) = (of(good), of(bad));
        assert!(
            good_value.mg > bad_value.mg && good_value.eg > bad_value.eg,
            "{good} {good_value:?}, {bad} {bad_value:?}"
        );
    }

    // All composed for these tests.
    #[test]
    fn free_pieces_are_better_than_shut_in_ones() {
        better("4k3/8/8/8/3N4/8/8/4K3 w - -", "4k3/8/8/8/8/8/8/N3K3 w - -");
        better(
            "4k3/8/8/8/8/4P3/8/2B1K3 w - -",
            "4k3/8/8/8/8/8/3P4/2B1K3 w - -",
        );
    }

    #[test]
    fn two_bishops_are_more_than_twice_one() {
        let (one, other, both) = (
            of("4k3/8/8/8/8/8/8/2B1K3 w - -"),
            of("4k3/8/8/8/8/8/8/4KB2 w - -"),
            of("4k3/8/8/8/8/8/8/2B1KB2 w - -"),
        );
        assert_eq!(both, one + other + PAIR);
    }

    #[test]
    fn rooks_like_open_files_and_the_seventh_rank() {
        let open = of("4k3/8/8/8/8/8/P7/1R2K3 w - -");
        let half = of("4k3/1p6/8/8/8/8/P7/1R2K3 w - -");
        assert!(open.mg > half.mg);
        let shut = of("4k3/8/8/8/8/8/1P6/1R2K3 w - -");
        assert!(half.mg > shut.mg + 10);
        better(
            "4k3/R4p2/8/8/8/8/8/4K3 w - -",
            "4k3/5p2/R7/8/8/8/8/4K3 w - -",
        );
    }

    #[test]
    fn an_outpost_is_guarded_and_safe_from_pawns() {
        better(
            "4k3/5p2/8/4N3/3P4/8/8/4K3 w - -",
            "4k3/5p2/8/4N3/8/3P4/8/4K3 w - -",
        );
    }

    #[test]
    fn attacks_on_dearer_or_loose_men_count() {
        let quiet = of("4k3/8/3r4/8/4P3/8/8/4K3 w - -");
        assert_eq!(
            of("4k3/8/8/3r4/4P3/8/8/4K3 w - -") - quiet,
            BY_PAWN + LOOSE,
            "attacked by a pawn and not guarded"
        );
    }
}
