//! The last move of a mate: which moves give check, and whether a check is mate.
//!
//! Most of a proof's work is asking "is there a mate in one here?", so this looks at checking moves
//! only, and at the king's flights before anything else.

use shakmaty::{Bitboard, Board, Chess, Color, Move, Position, Role, Square, attacks};

/// From where each piece of the side to move would check the enemy king.
pub(super) struct CheckMap {
    king: Square,
    pawn: Bitboard,
    knight: Bitboard,
    bishop: Bitboard,
    rook: Bitboard,
    /// Men of the side to move that stand between a line piece of theirs and the king.
    batteries: Bitboard,
}

impl CheckMap {
    /// The map for the side to move; `None` only when the enemy has no king.
    pub(super) fn of(position: &Chess) -> Option<Self> {
        let board = position.board();
        let us = position.turn();
        let king = board.king_of(!us)?;
        let occupied = board.occupied();
        Some(Self {
            king,
            pawn: attacks::pawn_attacks(!us, king),
            knight: attacks::knight_attacks(king),
            bishop: attacks::bishop_attacks(king, occupied),
            rook: attacks::rook_attacks(king, occupied),
            batteries: batteries(board, us, king),
        })
    }

    /// Whether the legal move `mv` gives check.
    pub(super) fn is_check(&self, position: &Chess, mv: Move) -> bool {
        match mv {
            Move::Normal {
                role,
                from,
                to,
                promotion,
                ..
            } => {
                if self.batteries.contains(from) && !attacks::aligned(self.king, from, to) {
                    return true;
                }
                if let Some(role) = promotion {
                    // The pawn's own square opens with the move.
                    let occupied = position.board().occupied().without(from);
                    let piece = role.of(position.turn());
                    return attacks::attacks(to, piece, occupied).contains(self.king);
                }
                match role {
                    Role::Pawn => self.pawn.contains(to),
                    Role::Knight => self.knight.contains(to),
                    Role::Bishop => self.bishop.contains(to),
                    Role::Rook => self.rook.contains(to),
                    Role::Queen => (self.bishop | self.rook).contains(to),
                    Role::King => false,
                }
            }
            // Two men leave or change their squares at once: simply look.
            Move::EnPassant { .. } | Move::Castle { .. } => {
                let mut after = position.clone();
                after.play_unchecked(mv);
                after.is_check()
            }
            Move::Put { .. } => false,
        }
    }
}

fn batteries(board: &Board, us: Color, king: Square) -> Bitboard {
    let snipers = board.by_color(us)
        & (attacks::rook_attacks(king, Bitboard::EMPTY) & board.rooks_and_queens()
            | attacks::bishop_attacks(king, Bitboard::EMPTY) & board.bishops_and_queens());
    let mut men = Bitboard::EMPTY;
    for sniper in snipers {
        let between = attacks::between(king, sniper) & board.occupied();
        if !between.more_than_one() {
            men |= between & board.by_color(us);
        }
    }
    men
}

/// Whether the side to move, known to be in check, is mated.
pub(super) fn is_mated(position: &Chess) -> bool {
    let board = position.board();
    let us = position.turn();
    let Some(king) = board.king_of(us) else {
        return false;
    };
    let through = board.occupied().without(king);
    for flight in attacks::king_attacks(king) & !board.by_color(us) {
        if board.attacks_to(flight, !us, through).is_empty() {
            return false;
        }
    }
    if position.checkers().more_than_one() {
        return true;
    }
    position.legal_moves().is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chess::parse_fen;

    /// Every check and mate of a walk through positions rich in pins, promotions, castling and
    /// captures in passing, against the rules library's own word.
    #[test]
    fn agrees_with_the_rules_on_checks_and_mates() {
        fn walk(position: &Chess, depth: u32, seen: &mut (u32, u32)) {
            let map = CheckMap::of(position).expect("kings");
            for &mv in &position.legal_moves() {
                let mut after = position.clone();
                after.play_unchecked(mv);
                assert_eq!(
                    map.is_check(position, mv),
                    after.is_check(),
                    "{position:?} {mv}"
                );
                if after.is_check() {
                    seen.0 += 1;
                    assert_eq!(is_mated(&after), after.is_checkmate(), "{position:?} {mv}");
                    seen.1 += u32::from(after.is_checkmate());
                }
                if depth > 1 {
                    walk(&after, depth - 1, seen);
                }
            }
        }
        let mut seen = (0, 0);
        for fen in [
            "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq -",
            "r3k2r/8/8/8/8/8/8/R3K2R w KQkq -",
            "8/PPP4k/8/8/8/8/4Kppp/8 w - -",
            "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - -",
            "8/8/8/2k1p3/3pP3/8/B3K2Q/8 b - e3",
            "4k3/8/5P2/8/4N3/8/K7/4R3 w - -",
            "1k1K4/1P6/8/8/8/8/6R1/B7 w - -",
        ] {
            walk(&parse_fen(fen).expect("a position").position, 3, &mut seen);
        }
        assert!(seen.0 > 3_000 && seen.1 > 10, "{seen:?}");
    }
}
