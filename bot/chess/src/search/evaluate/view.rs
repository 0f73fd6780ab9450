//! What several terms need to know of a board: who attacks what.

use shakmaty::{Bitboard, Board, Color, Role, Square, attacks};

/// A board with its attacks.
pub(super) struct View<'a> {
    pub board: &'a Board,
    sides: [Side; 2],
}

struct Side {
    pawns: Bitboard,
    pieces: Vec4,
    king: Square,
    zone: Bitboard,
    all: Bitboard,
}

/// Attacks by knights, bishops, rooks and queens.
type Vec4 = [Bitboard; 4];

impl<'a> View<'a> {
    pub fn of(board: &'a Board) -> Self {
        let side = |color| Side::of(board, color);
        Self {
            board,
            sides: [side(Color::Black), side(Color::White)],
        }
    }

    fn side(&self, color: Color) -> &Side {
        &self.sides[color as usize]
    }

    /// Pieces or pawns of one side and kind.
    pub fn men(&self, color: Color, role: Role) -> Bitboard {
        self.board.by_color(color) & self.board.by_role(role)
    }

    /// What a side's pawns attack.
    pub fn pawn_attacks(&self, color: Color) -> Bitboard {
        self.side(color).pawns
    }

    /// What a side's knights (bishops, rooks, queens) attack.
    pub fn attacks_by(&self, color: Color, role: Role) -> Bitboard {
        match role {
            Role::Pawn => self.side(color).pawns,
            Role::King => attacks::king_attacks(self.side(color).king),
            other => self.side(color).pieces[other as usize - 2],
        }
    }

    /// All that a side attacks.
    pub fn attacks(&self, color: Color) -> Bitboard {
        self.side(color).all
    }

    pub fn king(&self, color: Color) -> Square {
        self.side(color).king
    }

    /// The squares about a side's king, and those before them.
    pub fn zone(&self, color: Color) -> Bitboard {
        self.side(color).zone
    }

    /// What one piece attacks; line-movers see through nothing.
    pub fn sight(&self, role: Role, from: Square) -> Bitboard {
        sight(self.board, role, from)
    }
}

fn sight(board: &Board, role: Role, from: Square) -> Bitboard {
    match role {
        Role::Knight => attacks::knight_attacks(from),
        Role::Bishop => attacks::bishop_attacks(from, board.occupied()),
        Role::Rook => attacks::rook_attacks(from, board.occupied()),
        Role::Queen => attacks::queen_attacks(from, board.occupied()),
        _ => Bitboard::EMPTY,
    }
}

impl Side {
    fn of(board: &Board, color: Color) -> Self {
        let men = board.by_color(color);
        let pawns = attacked_by_pawns(board.pawns() & men, color);
        let mut pieces = [Bitboard::EMPTY; 4];
        for (attacked, role) in
            pieces
                .iter_mut()
                .zip([Role::Knight, Role::Bishop, Role::Rook, Role::Queen])
        {
            for from in men & board.by_role(role) {
                *attacked |= sight(board, role, from);
            }
        }
        // A board read from a FEN always has both kings.
        let king = board.king_of(color).unwrap_or(Square::E1);
        let near = attacks::king_attacks(king);
        let all = pieces.iter().fold(pawns | near, |all, one| all | *one);
        Self {
            pawns,
            pieces,
            king,
            zone: near.with(king) | forward(near, color),
            all,
        }
    }
}

/// Squares that pawns of `color` on `pawns` attack.
pub(super) fn attacked_by_pawns(pawns: Bitboard, color: Color) -> Bitboard {
    let ahead = forward(pawns, color);
    beside(ahead)
}

/// One rank on, as `color` goes.
pub(super) fn forward(squares: Bitboard, color: Color) -> Bitboard {
    Bitboard(match color {
        Color::White => squares.0 << 8,
        Color::Black => squares.0 >> 8,
    })
}

/// The squares to the left and right.
pub(super) fn beside(squares: Bitboard) -> Bitboard {
    const A: u64 = 0x0101_0101_0101_0101;
    const H: u64 = A << 7;
    Bitboard(((squares.0 & !A) >> 1) | ((squares.0 & !H) << 1))
}

/// All squares ahead on the same files, as `color` goes.
pub(super) fn ahead(squares: Bitboard, color: Color) -> Bitboard {
    let mut all = forward(squares, color);
    all |= forward(all, color);
    let two = forward(forward(all, color), color);
    all |= two;
    let four = forward(forward(all, color), color);
    all | four | forward(forward(four, color), color)
}

/// How far a square lies from a side's own first rank, 0 to 7.
pub(super) fn rank_of(square: Square, color: Color) -> i32 {
    let rank = i32::from(square.rank());
    if color == Color::White {
        rank
    } else {
        7 - rank
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ahead_is_the_rest_of_the_file() {
        for square in Square::ALL {
            for color in Color::ALL {
                let expected: Bitboard = Square::ALL
                    .into_iter()
                    .filter(|other| {
                        other.file() == square.file()
                            && rank_of(*other, color) > rank_of(square, color)
                    })
                    .collect();
                assert_eq!(ahead(Bitboard::from(square), color), expected, "{square}");
            }
        }
    }

    #[test]
    fn pawns_attack_as_the_rules_say() {
        for square in Square::ALL {
            for color in Color::ALL {
                assert_eq!(
                    attacked_by_pawns(Bitboard::from(square), color),
                    attacks::pawn_attacks(color, square)
                );
            }
        }
    }
}
