//! A position as the search passes it down: with its hash and whether the side to move is in check.

use shakmaty::{Bitboard, Chess, EnPassantMode, Move, Position, Role, attacks, zobrist::Zobrist64};

#[derive(Clone)]
pub(super) struct Node {
    pub position: Chess,
    pub hash: u64,
    pub checked: bool,
}

impl Node {
    pub fn new(position: Chess) -> Self {
        Self {
            hash: hash(&position),
            checked: position.is_check(),
            position,
        }
    }

    pub fn after(&self, mv: Move) -> Self {
        let hash =
            self.position
                .update_zobrist_hash(Zobrist64(self.hash), mv, EnPassantMode::Legal);
        let mut position = self.position.clone();
        position.play_unchecked(mv);
        Self {
            hash: hash.map_or_else(|| self::hash(&position), |h| h.0),
            checked: position.is_check(),
            position,
        }
    }

    /// The same position with the other side to move; `None` in check.
    pub fn after_null_move(&self) -> Option<Self> {
        self.position.clone().swap_turn().ok().map(Self::new)
    }

    /// Whether a score found by other ways here may hide a draw by the fifty-move rule.
    pub fn is_near_fifty_moves(&self) -> bool {
        self.position.halfmoves() >= 80
    }

    /// Pieces of the side to move but for its king. Without any it may be in zugzwang, and
    /// passing proves nothing; with one alone it still may, now and then.
    pub fn pieces(&self) -> usize {
        let board = self.position.board();
        (self.position.us() & !(board.pawns() | board.kings())).count()
    }
}

pub(super) fn hash(position: &Chess) -> u64 {
    position.zobrist_hash::<Zobrist64>(EnPassantMode::Legal).0
}

/// From where each kind of piece would give check, and which pieces uncover one by moving away.
pub(super) struct Checks {
    from: [Bitboard; 6],
    uncover: Bitboard,
    king: shakmaty::Square,
}

impl Checks {
    /// `None` where there is no enemy king.
    pub fn of(position: &Chess) -> Option<Self> {
        let board = position.board();
        let king = board.king_of(!position.turn())?;
        let occupied = board.occupied();
        let (straight, slanted) = (
            attacks::rook_attacks(king, occupied),
            attacks::bishop_attacks(king, occupied),
        );
        let us = position.us();
        let mut from = [Bitboard::EMPTY; 6];
        from[Role::Pawn as usize - 1] = attacks::pawn_attacks(!position.turn(), king);
        from[Role::Knight as usize - 1] = attacks::knight_attacks(king);
        from[Role::Bishop as usize - 1] = slanted;
        from[Role::Rook as usize - 1] = straight;
        from[Role::Queen as usize - 1] = straight | slanted;
        // A piece of ours next to the king on a line, with a line-mover of ours behind it.
        let near = (straight | slanted) & us;
        let behind = occupied & !near;
        let liners = (attacks::rook_attacks(king, behind) & !straight & board.rooks_and_queens())
            | (attacks::bishop_attacks(king, behind) & !slanted & board.bishops_and_queens());
        let uncover = (liners & us)
            .into_iter()
            .fold(Bitboard::EMPTY, |all, liner| {
                all | (attacks::between(king, liner) & near)
            });
        Some(Self {
            from,
            uncover,
            king,
        })
    }

    /// Whether `mv` gives check; promotions, castling and en passant are looked at as plain moves of
    /// the piece they begin with.
    pub fn gives(&self, mv: Move) -> bool {
        let Some(from) = mv.from() else { return false };
        self.from[mv.role() as usize - 1].contains(mv.to())
            || (self.uncover.contains(from) && !attacks::aligned(self.king, from, mv.to()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;

    #[test]
    fn sees_every_plain_check_before_it_is_played() {
        // Composed for this test: plain and discovered checks by every kind of piece.
        for fen in [
            "4k3/8/8/4N3/1B6/3P4/8/Q3RK2 w - -",
            "8/2p1k3/8/3P4/1n2N3/B7/4R3/4K3 w - -",
            "rnbqkbnr/pppp1ppp/8/4p3/2B1P2Q/8/PPPP1PPP/RNB1K1NR w KQkq -",
            "3r2k1/8/6b1/8/3n4/3p1q2/3K4/8 b - -",
        ] {
            let node = Node::new(parse_fen(fen).expect("a position").position);
            let checks = Checks::of(&node.position).expect("a king");
            let mut any = 0;
            for mv in node.position.legal_moves() {
                if mv.is_promotion() || mv.is_castle() || mv.is_en_passant() {
                    continue;
                }
                let gives = node.after(mv).checked;
                any += usize::from(gives);
                assert_eq!(checks.gives(mv), gives, "{fen}: {mv:?}");
            }
            assert!(any > 0, "{fen}");
        }
    }
}
