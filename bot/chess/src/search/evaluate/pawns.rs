//! Pawns: doubled, isolated, backward, side by side, and passed ones with what stands in their way.

use shakmaty::{Bitboard, Board, Color, Role, Square};

use super::{
    Value, value,
    view::{View, ahead, attacked_by_pawns, beside, forward, rank_of},
};

const DOUBLED: Value = value(-8, -18);
const ISOLATED: Value = value(-10, -12);
const BACKWARD: Value = value(-8, -9);
/// Beside another pawn or guarded by one, by ranks from the own first.
const TOGETHER: [Value; 8] = [
    value(0, 0),
    value(4, 0),
    value(6, 3),
    value(8, 6),
    value(14, 14),
    value(28, 26),
    value(45, 45),
    value(0, 0),
];
/// Passed, by ranks from the own first.
const PASSED: [Value; 8] = [
    value(0, 0),
    value(0, 4),
    value(2, 8),
    value(6, 18),
    value(18, 36),
    value(36, 62),
    value(55, 90),
    value(0, 0),
];
/// The next square is held by the enemy, or the whole way is clear of pieces and attacks: in parts of
/// 1/8 of [`PASSED`]'s endgame value.
const STOPPED: i32 = -3;
const FREE: i32 = 3;

/// The pawn hash table: values of pawn structures, which change seldom. Exact, as it keeps the pawns.
pub(in super::super) struct PawnTable(Vec<Known>);

#[derive(Clone, Copy, Default)]
struct Known {
    pawns: [Bitboard; 2],
    passed: Bitboard,
    value: Value,
}

impl PawnTable {
    const SIZE: usize = 1 << 12;

    pub fn new() -> Self {
        // No pawns at all are worth nothing: a new entry is true as it stands.
        Self(vec![Known::default(); Self::SIZE])
    }

    /// Value of both sides' structure as White sees it, and the passed pawns of both.
    pub(super) fn structure(&mut self, board: &Board) -> (Value, Bitboard) {
        let of = |color| board.pawns() & board.by_color(color);
        let pawns = [of(Color::Black), of(Color::White)];
        let mixed = pawns[0].0.wrapping_mul(0x9e37_79b9_7f4a_7c15)
            ^ pawns[1].0.wrapping_mul(0xc2b2_ae3d_27d4_eb4f);
        let entry = &mut self.0[(mixed >> 40) as usize % Self::SIZE];
        if entry.pawns != pawns {
            *entry = Known {
                pawns,
                passed: passed_pawns(pawns[1], pawns[0], Color::White)
                    | passed_pawns(pawns[0], pawns[1], Color::Black),
                value: shape(pawns[1], pawns[0], Color::White)
                    - shape(pawns[0], pawns[1], Color::Black),
            };
        }
        (entry.value, entry.passed)
    }
}

/// Pawns with no enemy pawn before them on their own file or the next ones.
fn passed_pawns(own: Bitboard, theirs: Bitboard, color: Color) -> Bitboard {
    let stoppers = ahead(theirs, !color);
    own & !(stoppers | beside(stoppers))
}

/// The structure of one side's pawns.
fn shape(own: Bitboard, theirs: Bitboard, color: Color) -> Value {
    let files = ahead(own, color) | ahead(own, !color) | own;
    let doubled = own & ahead(own, !color);
    let isolated = own & !beside(files);
    // No pawn beside or behind can guard it, and the square before it is attacked.
    let guarded_once = beside(own | ahead(own, color));
    let backward = own & !isolated & !guarded_once & {
        let attacked = attacked_by_pawns(theirs, !color);
        forward(attacked, !color)
    };
    let together = own & (beside(own) | attacked_by_pawns(own, color));
    let mut sum = DOUBLED * doubled.count() as i32
        + ISOLATED * isolated.count() as i32
        + BACKWARD * backward.count() as i32;
    for pawn in together {
        sum += TOGETHER[rank_of(pawn, color) as usize];
    }
    sum
}

/// The passed pawns of one side: how far, whether they may go on, and which king is nearer.
pub(super) fn passed(view: &View<'_>, color: Color, passed: Bitboard) -> Value {
    let mut sum = Value::default();
    let theirs = view.board.by_color(!color);
    let attacked = view.attacks(!color);
    for pawn in passed & view.men(color, Role::Pawn) {
        let bonus = PASSED[rank_of(pawn, color) as usize];
        sum += bonus;
        let one = Bitboard::from(pawn);
        let way = ahead(one, color);
        let next = forward(one, color);
        if (next & theirs).any() {
            sum += value(0, bonus.eg * STOPPED / 8);
        } else if (way & (view.board.occupied() | attacked)).is_empty() {
            sum += value(0, bonus.eg * FREE / 8);
        }
        sum += value(0, king_race(view, pawn, next, color));
    }
    sum
}

/// A passed pawn is worth more when the enemy king is far from its path and the own king near.
fn king_race(view: &View<'_>, pawn: Square, next: Bitboard, color: Color) -> i32 {
    let Some(next) = next.first() else { return 0 };
    let distance = |side| view.king(side).distance(next) as i32;
    let near = (rank_of(pawn, color) - 1).min(4);
    (distance(!color) * 5 - distance(color) * 2) * near / 2
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;
    use shakmaty::Position;

    fn pawns(squares: &str) -> Bitboard {
        squares
            .split_whitespace()
            .map(|name| name.parse::<Square>().expect("a square"))
            .collect()
    }

    #[test]
    fn doubled_isolated_and_backward_pawns_cost() {
        let none = Bitboard::EMPTY;
        let shape = |own: &str, theirs: &str| shape(pawns(own), pawns(theirs), Color::White);
        assert_eq!(shape("e4", ""), ISOLATED);
        assert_eq!(shape("e3 e4", ""), ISOLATED * 2 + DOUBLED);
        assert_eq!(shape("d4 e3", ""), TOGETHER[3], "the one guards the other");
        assert_eq!(
            shape("d4 e3", "f6"),
            TOGETHER[3],
            "not backward: the next square is free"
        );
        assert_eq!(shape("d4 e2", "f4 f5"), BACKWARD, "e3 is attacked");
        assert_eq!(passed_pawns(none, pawns("e4"), Color::White), none);
    }

    #[test]
    fn passed_pawns_have_no_pawn_before_them() {
        let passed =
            |own: &str, theirs: &str| passed_pawns(pawns(own), pawns(theirs), Color::White);
        assert_eq!(passed("a4 e5 h2", "d6 h7"), pawns("a4"));
        assert_eq!(passed("e5", "d5 e4 f5"), pawns("e5"));
    }

    fn bonus(fen: &str) -> Value {
        let position = parse_fen(fen).expect("a position").position;
        let all = PawnTable::new().structure(position.board()).1;
        passed(&View::of(position.board()), Color::White, all)
    }

    #[test]
    fn a_passed_pawn_wants_a_free_way_and_kings_where_they_belong() {
        let alone = bonus("k7/8/8/8/4P3/8/8/K7 w - -").eg;
        assert!(bonus("k7/8/8/4P3/8/8/8/K7 w - -").eg > alone, "further on");
        assert!(bonus("k7/8/8/4n3/4P3/8/8/K7 w - -").eg < alone, "stopped");
        assert!(bonus("8/8/4k3/8/4P3/8/8/K7 w - -").eg < alone, "their king");
        assert!(bonus("k7/8/8/3K4/4P3/8/8/8 w - -").eg > alone, "our king");
    }

    #[test]
    fn remembering_changes_nothing() {
        let mut table = PawnTable::new();
        for fen in ["k7/pp6/8/8/4P3/8/8/K7 w - -", "k7/8/8/8/8/8/PP6/K7 w - -"] {
            let position = parse_fen(fen).expect("a position").position;
            let first = table.structure(position.board());
            assert_eq!(table.structure(position.board()), first);
            assert_eq!(PawnTable::new().structure(position.board()), first);
        }
    }
}
