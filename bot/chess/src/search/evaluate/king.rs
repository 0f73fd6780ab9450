//! The king's safety while there are pieces to attack it: the pawns before it, and attacks on the
//! squares about it.
//!
//! Attackers are counted as described in "King Safety", section "Attacking King Zone", of the Chess
//! Programming Wiki: each attacked square of the zone counts by the attacker's role, and the sum weighs
//! the more the more pieces take part. The figures are ours.

use shakmaty::{Bitboard, Color, File, Role, Square};

use super::{
    Value, value,
    view::{View, ahead, rank_of},
};

/// Per file at the king: the nearest own pawn stands one, two, or more ranks before it, or there is none.
const SHIELD: [i32; 4] = [0, -8, -16, -24];
/// Per file at the king without any pawn, while the enemy has rooks or a queen.
const OPEN: i32 = -12;
/// Percentage by the number of pieces that attack the zone.
const TOGETHER: [i32; 8] = [0, 0, 50, 75, 88, 94, 97, 100];
/// A queen, rook, bishop, knight could give check from a square where nothing takes it.
const CHECK: i32 = 14;

/// Worth of one attacked square of the zone.
const fn pressure(role: Role) -> i32 {
    match role {
        Role::Knight | Role::Bishop => 11,
        Role::Rook => 18,
        Role::Queen => 24,
        _ => 0,
    }
}

/// How safe the king of `color` is; 0 is quite safe.
pub(super) fn safety(view: &View<'_>, color: Color) -> Value {
    let danger = danger(view, color);
    value(shield(view, color) - danger, -danger / 8)
}

fn shield(view: &View<'_>, color: Color) -> i32 {
    let king = view.king(color);
    let pawns = view.men(color, Role::Pawn);
    let heavy = view.board.rooks_and_queens() & view.board.by_color(!color);
    // At the edge, the three files nearest to it.
    let middle = i32::from(king.file()).clamp(1, 6);
    (middle - 1..=middle + 1)
        .filter_map(|file| File::try_from(file).ok())
        .map(|file| {
            let from = Square::from_coords(file, king.rank());
            let nearest = (ahead(Bitboard::from(from), color) & pawns)
                .into_iter()
                .map(|pawn| rank_of(pawn, color) - rank_of(king, color))
                .min();
            let shield = SHIELD[nearest.map_or(3, |ranks| (ranks - 1).min(3)) as usize];
            let open = (Bitboard::from(file) & view.board.pawns()).is_empty();
            shield + if open && heavy.any() { OPEN } else { 0 }
        })
        .sum()
}

fn danger(view: &View<'_>, color: Color) -> i32 {
    let zone = view.zone(color);
    let (mut attackers, mut sum) = (0, 0);
    for role in [Role::Knight, Role::Bishop, Role::Rook, Role::Queen] {
        for from in view.men(!color, role) {
            let hits = (view.sight(role, from) & zone).count() as i32;
            if hits > 0 {
                attackers += 1;
                sum += hits * pressure(role);
            }
        }
    }
    if attackers < 2 {
        return 0;
    }
    let safe = !view.attacks(color) & !view.board.by_color(!color);
    let king = view.king(color);
    for role in [Role::Knight, Role::Bishop, Role::Rook, Role::Queen] {
        let checks = view.sight(role, king) & view.attacks_by(!color, role) & safe;
        sum += if checks.any() { CHECK * 2 } else { 0 };
    }
    sum * TOGETHER[attackers.min(7)] / 100
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;
    use shakmaty::Position;

    fn of(fen: &str) -> Value {
        let position = parse_fen(fen).expect("a position").position;
        safety(&View::of(position.board()), Color::White)
    }

    // All composed for these tests.
    #[test]
    fn pawns_before_the_king_shield_it() {
        let whole = of("4k3/8/8/8/8/8/5PPP/6K1 w - -");
        assert_eq!(whole.mg, 0);
        let advanced = of("4k3/8/8/8/8/6P1/5P1P/6K1 w - -");
        let torn = of("4k3/8/8/8/8/8/5P1P/6K1 w - -");
        assert!(whole.mg > advanced.mg && advanced.mg > torn.mg);
        let open = of("r3k3/8/8/8/8/8/5P1P/6K1 w - -");
        assert!(torn.mg > open.mg, "a rook may use the open file");
    }

    #[test]
    fn one_attacker_is_none_and_several_are_more_than_their_sum() {
        let shielded = of("4k3/8/8/8/8/8/5PPP/6K1 w - -").mg;
        assert_eq!(of("4k3/8/8/8/6n1/8/5PPP/6K1 w - -").mg, shielded);
        let two = of("4k3/8/8/8/6nq/8/5PPP/6K1 w - -").mg;
        let three = of("4k3/8/3b4/8/6nq/8/5PPP/6K1 w - -").mg;
        assert!(two < shielded - 20, "{two}");
        assert!(three < two - 20, "{three}");
    }
}
