//! What a capture wins when both sides go on taking on the same square, cheapest man first.

use shakmaty::{Bitboard, Chess, Color, Move, Position, Role, Square, attacks};

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

/// Balance of the exchange that `mv` begins, in hundredths of a pawn, for the side that moves.
/// Pins are not seen.
pub(super) fn exchange(position: &Chess, mv: Move) -> i32 {
    let Some(from) = mv.from() else { return 0 };
    if mv.is_castle() {
        return 0;
    }
    let to = mv.to();
    let board = position.board();
    let mut occupied = board.occupied().without(from);
    if mv.is_en_passant() {
        occupied = occupied.without(Square::from_coords(to.file(), from.rank()));
    }
    let mut on_square = mv.promotion().unwrap_or(mv.role());
    let mut gains = [0i32; 32];
    gains[0] = mv.capture().map_or(0, worth)
        + mv.promotion()
            .map_or(0, |role| worth(role) - worth(Role::Pawn));
    let mut depth = 0;
    let mut side = !position.turn();
    while let Some((next, role)) = cheapest(position, to, side, occupied) {
        if role == Role::King && cheapest(position, to, !side, occupied.without(next)).is_some() {
            break;
        }
        depth += 1;
        gains[depth] = worth(on_square) - gains[depth - 1];
        if depth + 1 == gains.len() {
            break;
        }
        on_square = role;
        occupied = occupied.without(next);
        side = !side;
    }
    while depth > 0 {
        gains[depth - 1] = -(-gains[depth - 1]).max(gains[depth]);
        depth -= 1;
    }
    gains[0]
}

/// The cheapest man of `side` among `occupied` that can take on `square`.
fn cheapest(
    position: &Chess,
    square: Square,
    side: Color,
    occupied: Bitboard,
) -> Option<(Square, Role)> {
    let board = position.board();
    let men = board.by_color(side) & occupied;
    Role::ALL.into_iter().find_map(|role| {
        let reach = match role {
            Role::Pawn => attacks::pawn_attacks(!side, square),
            Role::Knight => attacks::knight_attacks(square),
            Role::Bishop => attacks::bishop_attacks(square, occupied),
            Role::Rook => attacks::rook_attacks(square, occupied),
            Role::Queen => attacks::queen_attacks(square, occupied),
            Role::King => attacks::king_attacks(square),
        };
        (reach & men & board.by_role(role))
            .first()
            .map(|from| (from, role))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chess::parse_fen;

    fn balance(fen: &str, uci: &str) -> i32 {
        let position = parse_fen(fen).expect("a position").position;
        let mv = uci
            .parse::<shakmaty::uci::UciMove>()
            .expect("uci")
            .to_move(&position)
            .expect("legal");
        exchange(&position, mv)
    }

    #[test]
    fn counts_both_sides() {
        assert_eq!(
            balance("4k3/8/8/3p4/8/8/8/3RK3 w - -", "d1d5"),
            100,
            "a free pawn"
        );
        assert_eq!(
            balance("4k3/8/4p3/3p4/8/8/8/3RK3 w - -", "d1d5"),
            100 - 500,
            "a guarded pawn"
        );
        assert_eq!(
            balance("3rk3/8/8/3p4/8/8/3R4/3RK3 w - -", "d2d5"),
            100,
            "two rooks against one"
        );
        assert_eq!(
            balance("4k3/8/8/8/3r4/8/8/R2QK3 w - -", "d1d4"),
            500,
            "a free rook"
        );
    }
}
