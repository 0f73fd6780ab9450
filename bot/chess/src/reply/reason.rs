//! Why a written move is not possible.

use shakmaty::{CastlingSide, Chess, Color, Move, Piece, Position, Rank, Role, Square, attacks};

use super::notation::{Shape, Target};
use super::resolve::{pseudo, senders};
use crate::fact::{At, Because, OnFile, Wing};

/// Why no legal move of `position` is what `shape` says.
pub(super) fn why_not(position: &Chess, shape: &Shape) -> Because {
    let us = position.turn();
    if let Some(side) = shape.castles {
        return castling(position, side);
    }
    let Target::Square(to) = shape.to else {
        return nothing_to_take(shape);
    };
    if let Some(from) = shape.from()
        && let Some(clause) = wrong_start(position, shape.role, from)
    {
        return clause;
    }
    let men = senders(position, shape);
    let Some(&first) = men.first() else {
        return nobody(us, shape);
    };
    let board = position.board();
    if let Some(own) = board.role_at(to).filter(|_| board.color_at(to) == Some(us)) {
        if men == [to] {
            return Because::StandsThere {
                piece: own.into(),
                on: At(to),
            };
        }
        return Because::OwnPieceThere {
            square: At(to),
            side: us.into(),
            own: own.into(),
        };
    }
    if let Some(&from) = men.iter().find(|&&from| pseudo(position, from, to)) {
        return exposed(position, from, to, shape);
    }
    let role = shape.role.or(board.role_at(first)).unwrap_or(Role::Pawn);
    if role == Role::Pawn {
        return pawn(position, shape, &men, to);
    }
    let blocked = men.iter().find_map(|&from| {
        let piece = Piece { color: us, role };
        let open = attacks::attacks(from, piece, shakmaty::Bitboard::EMPTY);
        let between = attacks::between(from, to) & board.occupied();
        let stone = if open.contains(to) {
            nearest(from, between)
        } else {
            None
        }?;
        Some(Because::InTheWay {
            stone: board.role_at(stone)?.into(),
            at: At(stone),
            piece: role.into(),
            from: At(from),
        })
    });
    blocked.unwrap_or_else(|| match men.as_slice() {
        [only] => Because::DoesNotReach {
            piece: role.into(),
            from: At(*only),
            to: At(to),
        },
        _ => Because::NoneReaches {
            piece: role.into(),
            to: At(to),
        },
    })
}

fn nearest(from: Square, stones: shakmaty::Bitboard) -> Option<Square> {
    stones.into_iter().min_by_key(|s| s.distance(from))
}

fn nothing_to_take(shape: &Shape) -> Because {
    let piece = shape.role.into();
    match shape.to {
        Target::Man(victim) => Because::NoneTakes {
            piece,
            victim: victim.into(),
        },
        Target::File(file) => Because::NoPawnTakesOnFile { file: OnFile(file) },
        Target::Passant => Because::NoEnPassant,
        Target::Promotes => Because::NoPromotion,
        _ => Because::NoneTakesThere { piece },
    }
}

/// What is wrong with the square a move is said to come from.
fn wrong_start(position: &Chess, role: Option<Role>, from: Square) -> Option<Because> {
    let us = position.turn();
    match position.board().piece_at(from) {
        None => Some(Because::NothingOn { square: At(from) }),
        Some(piece) if piece.color != us => Some(Because::NotYours {
            piece: piece.role.into(),
            on: At(from),
            theirs: (!us).into(),
            side: us.into(),
        }),
        Some(piece) => match role {
            Some(role) if role != piece.role => Some(Because::OtherKind {
                on: At(from),
                piece: piece.role.into(),
                named: role.into(),
            }),
            _ => None,
        },
    }
}

fn nobody(us: Color, shape: &Shape) -> Because {
    let (side, piece) = (us.into(), shape.role.into());
    match (shape.from_file, shape.from_rank) {
        (Some(file), _) => Because::HasNoneOnFile {
            side,
            piece,
            file: OnFile(file),
        },
        (None, Some(rank)) => Because::HasNoneOnRank {
            side,
            piece,
            rank: u32::from(rank) + 1,
        },
        _ => Because::HasNone { side, piece },
    }
}

/// The move exists but leaves the king in check.
fn exposed(position: &Chess, from: Square, to: Square, shape: &Shape) -> Because {
    let us = position.turn();
    let board = position.board();
    let (Some(king), Some(role)) = (board.king_of(us), board.role_at(from)) else {
        return Because::NotPossible;
    };
    let last = matches!(to.rank(), Rank::First | Rank::Eighth);
    if role == Role::King {
        let without = board.occupied() ^ shakmaty::Bitboard::from_square(from);
        let guard = board.attacks_to(to, !us, without).first();
        return match guard.and_then(|g| Some((g, board.role_at(g)?))) {
            Some((g, role)) => Because::SquareGuarded {
                piece: role.into(),
                from: At(g),
                square: At(to),
            },
            None => Because::KingInCheckOn { square: At(to) },
        };
    }
    if let Some(checker) = position.checkers().first() {
        if position.checkers().more_than_one() {
            return Because::DoubleCheck;
        }
        return Because::InCheck {
            side: us.into(),
            piece: board.role_at(checker).into(),
            from: At(checker),
        };
    }
    // Take the piece away and see who strikes the king.
    let captured = shakmaty::Bitboard::from_square(to) & board.occupied();
    let occupied = (board.occupied() ^ shakmaty::Bitboard::from_square(from))
        | shakmaty::Bitboard::from_square(to);
    let pinner = (board.attacks_to(king, !us, occupied) & !captured).first();
    if let Some(pinner) = pinner
        && let Some(by) = board.role_at(pinner)
    {
        return Because::Pinned {
            piece: role.into(),
            on: At(from),
            by: by.into(),
            from: At(pinner),
        };
    }
    if role == Role::Pawn && last && shape.promotion.is_some_and(|p| p == Role::King) {
        return Because::NoNewKing;
    }
    if role == Role::Pawn && !last && shape.promotion.is_some() {
        return Because::NotLastRank { square: At(to) };
    }
    Because::LeavesKingInCheck
}

fn pawn(position: &Chess, shape: &Shape, men: &[Square], to: Square) -> Because {
    let us = position.turn();
    let board = position.board();
    let forward = us.fold_wb(8, -8);
    let there = board.role_at(to);
    let nothing = Because::NothingToTake { to: At(to) };
    if let Some(from) = shape.from_file.filter(|file| *file != to.file()) {
        let file = OnFile(from);
        if from.distance(to.file()) != 1 {
            return Because::PawnTakesElsewhere { file, to: At(to) };
        }
        let near = men
            .iter()
            .any(|&from| board.attacks_from(from).contains(to));
        return match (there, near) {
            (None, true) => nothing,
            _ => Because::NoPawnOfFile { file, to: At(to) },
        };
    }
    if shape.takes && there.is_none() {
        return nothing;
    }
    // A pawn straight below it, blocked.
    let behind = [to.offset(-forward), to.offset(-2 * forward)];
    for from in behind.into_iter().flatten() {
        if men.contains(&from) && from.file() == to.file() {
            let stone = if there.is_some() {
                Some(to)
            } else {
                nearest(from, attacks::between(from, to) & board.occupied())
            };
            if let Some((stone, role)) = stone.and_then(|s| Some((s, board.role_at(s)?))) {
                return Because::PawnBlocked {
                    from: At(from),
                    stone: role.into(),
                    at: At(stone),
                };
            }
        }
    }
    Because::NoPawnReaches {
        side: us.into(),
        to: At(to),
    }
}

fn castling(position: &Chess, wing: Option<CastlingSide>) -> Because {
    match wing {
        Some(wing) => castling_to(position, wing),
        None => {
            let short = castling_to(position, CastlingSide::KingSide);
            let long = castling_to(position, CastlingSide::QueenSide);
            match short == long {
                true => short,
                false => Because::NeitherCastles {
                    short: short.into(),
                    long: long.into(),
                },
            }
        }
    }
}

fn castling_to(position: &Chess, wing: CastlingSide) -> Because {
    let us = position.turn();
    let castles = position.castles();
    let board = position.board();
    if !castles.has(us, wing) {
        return Because::MayNotCastle {
            side: us.into(),
            wing: match wing {
                CastlingSide::KingSide => Wing::Short,
                CastlingSide::QueenSide => Wing::Long,
            },
        };
    }
    if position.is_check() {
        return Because::CastlingOutOfCheck;
    }
    let path = castles.path(us, wing) & board.occupied();
    if let Some(stone) = path.first()
        && let Some(role) = board.role_at(stone)
    {
        return Because::CastlingBlocked {
            stone: role.into(),
            at: At(stone),
        };
    }
    let king = board.king_of(us);
    if let Some(king) = king {
        let to = Square::from_coords(wing.king_to_file(), king.rank());
        let mut way = attacks::between(king, to);
        way.add(to);
        for square in way {
            if let Some(by) = board.attacks_to(square, !us, board.occupied()).first()
                && let Some(role) = board.role_at(by)
            {
                return Because::CastlingGuarded {
                    square: At(square),
                    piece: role.into(),
                    from: At(by),
                };
            }
        }
    }
    Because::CastlingNotPossible
}

/// A legal move of the other side written as one's own.
pub(super) fn is_opponents(position: &Chess, fits: impl Fn(&Chess, Move) -> bool) -> bool {
    if position.is_check() {
        return false;
    }
    position
        .clone()
        .swap_turn()
        .is_ok_and(|other| other.legal_moves().iter().any(|&mv| fits(&other, mv)))
}
