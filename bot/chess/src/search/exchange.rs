//! Static exchange evaluation: what a move wins when both sides go on taking on the square it goes to,
//! cheapest attacker first.

use shakmaty::{Bitboard, Chess, Move, Position, Role, Square, attacks};

/// Plain values for counting exchanges.
pub(super) const fn worth(role: Role) -> i32 {
    match role {
        Role::Pawn => 100,
        Role::Knight => 320,
        Role::Bishop => 330,
        Role::Rook => 500,
        Role::Queen => 950,
        Role::King => 20_000,
    }
}

/// What a move takes and promotes to, in hundredths of a pawn.
pub(super) fn gain(mv: Move) -> i32 {
    mv.capture().map_or(0, worth)
        + mv.promotion()
            .map_or(0, |role| worth(role) - worth(Role::Pawn))
}

/// Whether the exchange that `mv` begins leaves the side that moves at least `least` hundredths of a
/// pawn to the good. Either side may stop when going on would cost it. Pins are not seen.
pub(super) fn static_exchange_at_least(position: &Chess, mv: Move, least: i32) -> bool {
    let Some(from) = mv.from() else {
        return least <= 0;
    };
    if mv.is_castle() {
        return least <= 0;
    }
    // What the side that has just taken is ahead of what it needs, if the exchange stopped here.
    let mut ahead = gain(mv) - least;
    if ahead < 0 {
        return false;
    }
    let mut at_stake = worth(mv.promotion().unwrap_or(mv.role()));
    ahead = at_stake - ahead;
    if ahead <= 0 {
        return true;
    }
    let to = mv.to();
    let board = position.board();
    let mut occupied = board.occupied().without(from).with(to);
    if mv.is_en_passant() {
        occupied = occupied.without(Square::from_coords(to.file(), from.rank()));
    }
    let (slanted, straight) = (board.bishops_and_queens(), board.rooks_and_queens());
    let mut attackers = attackers(position, to, occupied);
    let mut side = position.turn();
    let mut ours = true;
    loop {
        side = !side;
        attackers &= occupied;
        let mine = attackers & board.by_color(side);
        let Some((attacker, role)) = Role::ALL.into_iter().find_map(|role| {
            (mine & board.by_role(role))
                .first()
                .map(|attacker| (attacker, role))
        }) else {
            break;
        };
        if role == Role::King && (attackers & board.by_color(!side)).any() {
            // The king may not take what is still guarded.
            break;
        }
        ours = !ours;
        at_stake = worth(role);
        ahead = at_stake - ahead;
        if ahead < i32::from(ours) {
            break;
        }
        occupied = occupied.without(attacker);
        // X-rays: line-movers behind the attacker join in.
        if matches!(role, Role::Pawn | Role::Bishop | Role::Queen) {
            attackers |= attacks::bishop_attacks(to, occupied) & slanted;
        }
        if matches!(role, Role::Rook | Role::Queen) {
            attackers |= attacks::rook_attacks(to, occupied) & straight;
        }
    }
    ours
}

/// All pieces and pawns among `occupied` that can take on `square`.
fn attackers(position: &Chess, square: Square, occupied: Bitboard) -> Bitboard {
    let board = position.board();
    let pawns = |side: shakmaty::Color| {
        attacks::pawn_attacks(!side, square) & board.by_color(side) & board.pawns()
    };
    (pawns(shakmaty::Color::White)
        | pawns(shakmaty::Color::Black)
        | (attacks::knight_attacks(square) & board.knights())
        | (attacks::bishop_attacks(square, occupied) & board.bishops_and_queens())
        | (attacks::rook_attacks(square, occupied) & board.rooks_and_queens())
        | (attacks::king_attacks(square) & board.kings()))
        & occupied
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;

    /// Checks that the exchange wins exactly `balance`.
    fn wins(fen: &str, uci: &str, balance: i32, why: &str) {
        let position = parse_fen(fen).expect("a position").position;
        let mv = uci
            .parse::<shakmaty::uci::UciMove>()
            .expect("uci")
            .to_move(&position)
            .expect("legal");
        assert!(
            static_exchange_at_least(&position, mv, balance),
            "{why}: not so much"
        );
        assert!(
            !static_exchange_at_least(&position, mv, balance + 1),
            "{why}: more"
        );
    }

    #[test]
    fn counts_both_sides() {
        let pawn = worth(Role::Pawn);
        let (knight, rook) = (worth(Role::Knight), worth(Role::Rook));
        for (fen, uci, balance, why) in [
            ("4k3/8/8/3p4/8/8/8/3RK3 w - -", "d1d5", pawn, "a free pawn"),
            (
                "4k3/8/4p3/3p4/8/8/8/3RK3 w - -",
                "d1d5",
                pawn - rook,
                "a guarded pawn",
            ),
            (
                "3rk3/8/8/3p4/8/8/3R4/3RK3 w - -",
                "d2d5",
                pawn,
                "two rooks against one",
            ),
            ("4k3/8/8/8/3r4/8/8/R2QK3 w - -", "d1d4", rook, "a free rook"),
            (
                "8/8/3k4/3p4/8/2N5/8/4K3 w - -",
                "c3d5",
                pawn - knight,
                "the king guards",
            ),
            (
                "8/8/3k4/3p4/8/2N5/8/3RK3 w - -",
                "c3d5",
                pawn,
                "the king may not take a guarded piece",
            ),
            (
                "4k3/8/8/8/8/8/3q4/R3K3 w - -",
                "e1d2",
                worth(Role::Queen),
                "the king takes",
            ),
            (
                "3rk3/2P5/8/8/8/8/8/4K3 w - -",
                "c7d8q",
                rook - pawn,
                "a promotion that is taken back",
            ),
            (
                "4k3/8/2p5/8/8/8/8/3RK3 w - -",
                "d1d5",
                -rook,
                "a quiet move to a guarded square",
            ),
        ] {
            wins(fen, uci, balance, why);
        }
    }
}
