//! The last move of a mate: which moves give check, and whether a check is mate.
//!
//! Most of a proof's work is asking "is there a mate in one here?", so this makes checking moves
//! only, looks for the king's flights before a move is made on the board, and asks whether a single
//! move is legal without a list. Each of these says what the rules library says, only sooner, and
//! the tests hold them against it.

use shakmaty::{
    Bitboard, Board, CastlingSide, Chess, Color, Move, MoveList, Position, Rank, Role, Square,
    attacks,
};

/// From where each piece of the side to move would check the enemy king.
pub(super) struct CheckMap {
    king: Square,
    pawn: Bitboard,
    knight: Bitboard,
    bishop: Bitboard,
    rook: Bitboard,
    /// Pieces of the side to move that stand between a line piece of theirs and the king.
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
            // Two pieces leave or change their squares at once: simply look.
            Move::EnPassant { .. } | Move::Castle { .. } => {
                let mut after = position.clone();
                after.play_unchecked(mv);
                after.is_check()
            }
            Move::Put { .. } => false,
        }
    }
}

impl CheckMap {
    /// Adds every legal move that gives check to `moves`, which is empty.
    ///
    /// They are made straight from the squares that check, which leaves out the many moves that do
    /// not. In check, or where the king itself would uncover a check, the rules library's list is
    /// filtered instead.
    pub(super) fn checks(&self, position: &Chess, moves: &mut MoveList) {
        let us = position.turn();
        let board = position.board();
        let Some(king) = board.king_of(us) else {
            return;
        };
        let shields = shields(board, board.by_color(!us), king);
        if self.batteries.contains(king) || position.is_check() {
            self.filter_checks(position, &position.legal_moves(), moves);
            return;
        }
        let occupied = board.occupied();
        let free = !board.by_color(us);
        let roles = [
            (Role::Knight, self.knight),
            (Role::Bishop, self.bishop),
            (Role::Rook, self.rook),
            (Role::Queen, self.bishop | self.rook),
        ];
        for (role, checks) in roles {
            for from in board.by_piece(role.of(us)) {
                let mut reach = attacks::attacks(from, role.of(us), occupied) & free;
                if shields.contains(from) {
                    reach &= attacks::ray(king, from);
                }
                if self.batteries.contains(from) {
                    reach &= checks | !attacks::ray(self.king, from);
                } else {
                    reach &= checks;
                }
                for to in reach {
                    moves.push(Move::Normal {
                        role,
                        from,
                        capture: board.role_at(to),
                        to,
                        promotion: None,
                    });
                }
            }
        }
        self.pawn_checks(position, shields, king, moves);
        if position.maybe_ep_square().is_some() {
            self.filter_checks(position, &position.en_passant_moves(), moves);
        }
        for side in CastlingSide::ALL {
            // The rook checks down its new file or along the rank.
            let near = self.king.file() == side.rook_to_file() || self.king.rank() == king.rank();
            if near && position.castles().has(us, side) {
                self.filter_checks(position, &position.castling_moves(side), moves);
            }
        }
    }

    fn filter_checks(&self, position: &Chess, list: &MoveList, moves: &mut MoveList) {
        moves.extend(
            list.iter()
                .copied()
                .filter(|mv| self.is_check(position, *mv)),
        );
    }

    fn pawn_checks(&self, position: &Chess, shields: Bitboard, king: Square, moves: &mut MoveList) {
        const PROMOTIONS: [Option<Role>; 4] = [
            Some(Role::Queen),
            Some(Role::Rook),
            Some(Role::Bishop),
            Some(Role::Knight),
        ];
        let us = position.turn();
        let board = position.board();
        let occupied = board.occupied();
        let home = us.fold_wb(Rank::Second, Rank::Seventh);
        let last_but_one = us.fold_wb(Rank::Seventh, Rank::Second);
        let forward = us.fold_wb(8, -8);
        for from in board.by_piece(Role::Pawn.of(us)) {
            let promotes = from.rank() == last_but_one;
            let mut reach = attacks::pawn_attacks(us, from) & board.by_color(!us);
            if let Some(to) = from.offset(forward)
                && !occupied.contains(to)
            {
                reach.add(to);
                if from.rank() == home
                    && let Some(to) = to.offset(forward)
                    && !occupied.contains(to)
                {
                    reach.add(to);
                }
            }
            if shields.contains(from) {
                reach &= attacks::ray(king, from);
            }
            if !promotes && !self.batteries.contains(from) {
                reach &= self.pawn;
            }
            for to in reach {
                let options = if promotes { &PROMOTIONS[..] } else { &[None] };
                for &promotion in options {
                    let mv = Move::Normal {
                        role: Role::Pawn,
                        from,
                        capture: board.role_at(to),
                        to,
                        promotion,
                    };
                    if self.is_check(position, mv) {
                        moves.push(mv);
                    }
                }
            }
        }
    }

    /// Whether the legal check `mv` is mate. Looks for a flight before anything is moved.
    pub(super) fn is_mate(&self, position: &Chess, mv: Move) -> bool {
        if let Move::Normal {
            role,
            from,
            to,
            promotion,
            ..
        } = mv
        {
            let board = position.board();
            let us = position.turn();
            let through = board.occupied().without(from).with(to).without(self.king);
            let reach = attacks::attacks(to, promotion.unwrap_or(role).of(us), through);
            let blocked = board.by_color(!us).without(to);
            for flight in attacks::king_attacks(self.king) & !blocked & !reach {
                let guards = board.attacks_to(flight, us, through).without(from);
                if guards.is_empty() {
                    return false;
                }
            }
        }
        let mut after = position.clone();
        after.play_unchecked(mv);
        is_mated(&after)
    }
}

/// Pieces of `us` between a line piece of theirs and the enemy `king`.
fn batteries(board: &Board, us: Color, king: Square) -> Bitboard {
    shields(board, board.by_color(us), king) & board.by_color(us)
}

/// Pieces of either side that alone stand between `king` and a line piece of `side`.
fn shields(board: &Board, side: Bitboard, king: Square) -> Bitboard {
    let snipers = side
        & (attacks::rook_attacks(king, Bitboard::EMPTY) & board.rooks_and_queens()
            | attacks::bishop_attacks(king, Bitboard::EMPTY) & board.bishops_and_queens());
    let mut shields = Bitboard::EMPTY;
    for sniper in snipers {
        let between = attacks::between(king, sniper) & board.occupied();
        if !between.more_than_one() {
            shields |= between;
        }
    }
    shields
}

/// Whether `mv`, legal in some other position, is legal in this one too.
pub(super) fn is_legal(position: &Chess, mv: Move) -> bool {
    let Move::Normal {
        role,
        from,
        capture,
        to,
        ..
    } = mv
    else {
        return position.is_legal(mv);
    };
    let board = position.board();
    let us = position.turn();
    if !board.by_piece(role.of(us)).contains(from) {
        return false;
    }
    let on_target = match capture {
        Some(role) => board.by_piece(role.of(!us)).contains(to),
        None => !board.occupied().contains(to),
    };
    if !on_target {
        return false;
    }
    let occupied = board.occupied();
    if role == Role::Pawn {
        // A double step needs an empty square between; what a pawn may do else lies in the move.
        let between = attacks::between(from, to);
        if (between & occupied).any() {
            return false;
        }
    } else if !attacks::attacks(from, role.of(us), occupied).contains(to) {
        return false;
    }
    let Some(king) = board.king_of(us) else {
        return false;
    };
    let then = occupied.without(from).with(to);
    let king = if role == Role::King { to } else { king };
    board.attacks_to(king, !us, then).without(to).is_empty()
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
    use crate::parse_fen;

    /// Every check and mate of a walk through positions rich in pins, promotions, castling and
    /// captures in passing, against the rules library's own word.
    #[test]
    fn agrees_with_the_rules_on_checks_and_mates() {
        fn sorted<'m>(moves: impl IntoIterator<Item = &'m Move>) -> Vec<Move> {
            let mut moves: Vec<Move> = moves.into_iter().copied().collect();
            moves.sort_by_key(|mv| (mv.from(), mv.to(), mv.promotion()));
            moves
        }
        fn walk(position: &Chess, others: &[Move], depth: u32, seen: &mut (u32, u32)) {
            let map = CheckMap::of(position).expect("kings");
            let legal = position.legal_moves();
            let mut checks = MoveList::new();
            map.checks(position, &mut checks);
            let expected = legal.iter().filter(|mv| map.is_check(position, **mv));
            assert_eq!(sorted(&checks), sorted(expected), "{position:?}");
            for mv in others {
                assert_eq!(
                    is_legal(position, *mv),
                    legal.contains(mv),
                    "{position:?} {mv}"
                );
            }
            for &mv in &legal {
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
                    assert_eq!(map.is_mate(position, mv), is_mated(&after));
                    seen.1 += u32::from(after.is_checkmate());
                }
                if depth > 1 {
                    // Moves of this position's mover and of his last turn, asked again elsewhere.
                    let mut asked = legal.to_vec();
                    asked.extend(others);
                    asked.extend(after.legal_moves().iter().take(3));
                    walk(&after, &asked, depth - 1, seen);
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
            walk(
                &parse_fen(fen).expect("a position").position,
                &[],
                3,
                &mut seen,
            );
        }
        assert!(seen.0 > 3_000 && seen.1 > 10, "{seen:?}");
    }
}
