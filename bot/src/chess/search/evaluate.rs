//! The value of a quiet position: material and squares, tapered from middlegame to endgame, with a few
//! terms of our own for what decides won endgames (passed pawns, the bishop pair, driving a bare king).

use shakmaty::{Bitboard, Board, Chess, Color, Position, Role, Square};

use super::squares::{material, phase, tables};

/// Value for the side to move, in hundredths of a pawn.
pub(super) fn evaluate(position: &Chess) -> i32 {
    let board = position.board();
    let (mut mg, mut eg, mut weight) = (0, 0, 0);
    for color in Color::ALL {
        let sign = if color == Color::White { 1 } else { -1 };
        for role in Role::ALL {
            let (on_mg, on_eg) = tables(role);
            let (value_mg, value_eg) = material(role);
            for square in board.by_color(color) & board.by_role(role) {
                // The tables begin with the eighth rank as White sees it.
                let index = usize::from(if color == Color::White {
                    square.flip_vertical()
                } else {
                    square
                });
                mg += sign * (value_mg + on_mg[index]);
                eg += sign * (value_eg + on_eg[index]);
                weight += phase(role);
            }
        }
        if (board.bishops() & board.by_color(color)).more_than_one() {
            mg += sign * 25;
            eg += sign * 45;
        }
        let passed = passed_pawns(board, color);
        for pawn in passed {
            let advance = advance(pawn, color);
            mg += sign * 4 * advance;
            eg += sign * (6 * advance * advance / 2 + king_race(board, pawn, color));
        }
    }
    let weight = weight.min(24);
    let mut value = (mg * weight + eg * (24 - weight)) / 24;
    value += drive(board);
    value = scale(board, value);
    10 + if position.turn() == Color::White {
        value
    } else {
        -value
    }
}

/// Ranks a pawn has left its own second rank behind, 0 to 5.
fn advance(pawn: Square, color: Color) -> i32 {
    let rank = if color == Color::White {
        pawn.rank()
    } else {
        pawn.rank().flip_vertical()
    };
    i32::from(rank) - 1
}

/// Pawns with no enemy pawn before them on their own file or the next ones.
fn passed_pawns(board: &Board, color: Color) -> Bitboard {
    let theirs = board.pawns() & board.by_color(!color);
    (board.pawns() & board.by_color(color))
        .into_iter()
        .filter(|&pawn| {
            theirs.into_iter().all(|other| {
                let beside = (i32::from(other.file()) - i32::from(pawn.file())).abs() <= 1;
                let ahead = match color {
                    Color::White => other.rank() > pawn.rank(),
                    Color::Black => other.rank() < pawn.rank(),
                };
                !(beside && ahead)
            })
        })
        .collect()
}

/// A passed pawn is worth more when the enemy king is far from its path and the own king near.
fn king_race(board: &Board, pawn: Square, color: Color) -> i32 {
    let ahead = pawn
        .offset(if color == Color::White { 8 } else { -8 })
        .unwrap_or(pawn);
    let distance = |side| {
        board
            .king_of(side)
            .map_or(0, |king| king.distance(ahead) as i32)
    };
    let near = advance(pawn, color).min(4);
    (distance(!color) * 5 - distance(color) * 2) * near / 2
}

/// Against a bare king: drive it to the edge and bring the own king near.
fn drive(board: &Board) -> i32 {
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
    sign * (10 * edge + 6 * (7 - hunter.distance(hunted) as i32))
}

/// Where the stronger side has no pawn and at most a minor piece more, it hardly wins.
fn scale(board: &Board, value: i32) -> i32 {
    let stronger = if value > 0 {
        Color::White
    } else {
        Color::Black
    };
    if (board.pawns() & board.by_color(stronger)).any() {
        return value;
    }
    let weight = |color| -> i32 {
        Role::ALL
            .into_iter()
            .filter(|&role| role != Role::Pawn)
            .map(|role| {
                material(role).1 * (board.by_role(role) & board.by_color(color)).count() as i32
            })
            .sum()
    };
    match weight(stronger) - weight(!stronger) {
        ..=400 => value / 8,
        _ => value,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chess::parse_fen;

    fn value(fen: &str) -> i32 {
        evaluate(&parse_fen(fen).expect("a position").position)
    }

    #[test]
    fn colours_are_alike() {
        for (white, black) in [
            ("4k3/8/8/3P4/8/8/8/4K3 w - -", "4k3/8/8/8/3p4/8/8/4K3 b - -"),
            (
                "r3k3/8/8/8/8/8/5PPP/4K2R w - -",
                "4k2r/5ppp/8/8/8/8/8/R3K3 b - -",
            ),
        ] {
            assert_eq!(value(white), value(black), "{white}");
        }
    }

    #[test]
    fn knows_what_is_worth_more() {
        assert!(value("4k3/8/8/8/8/8/8/4K2Q w - -") > 800);
        assert!(value("4k3/8/8/8/8/8/8/4K2Q b - -") < -800);
        assert!(
            value("4k3/8/8/8/8/8/8/4KB2 w - -") < 100,
            "a bishop alone does not win"
        );
        assert!(value("4k3/4P3/4K3/8/8/8/8/8 w - -") > value("4k3/8/8/8/8/4P3/4K3/8 w - -"));
    }
}
