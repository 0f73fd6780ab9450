//! Why a written move is not possible, in words.

use shakmaty::{CastlingSide, Chess, Color, Move, Piece, Position, Rank, Role, Square, attacks};

use super::notation::{Shape, Target};
use super::resolve::{file_name, pseudo, senders};
use crate::men::{man, side};

fn on(role: Role, square: Square) -> String {
    format!("the {} on {square}", man(role))
}

/// One clause that says why no legal move of `position` is what `shape` says.
pub(super) fn why_not(position: &Chess, shape: &Shape) -> String {
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
            return format!("the {} is on {to} already", man(own));
        }
        return format!("{to} is taken by {}'s own {}", side(us), man(own));
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
        Some(format!(
            "{} is in the way of {}",
            on(board.role_at(stone)?, stone),
            on(role, from)
        ))
    });
    blocked.unwrap_or_else(|| match men.as_slice() {
        [only] => format!("{} does not reach {to}", on(role, *only)),
        _ => format!("no {} reaches {to}", man(role)),
    })
}

fn nearest(from: Square, stones: shakmaty::Bitboard) -> Option<Square> {
    stones.into_iter().min_by_key(|s| s.distance(from))
}

fn nothing_to_take(shape: &Shape) -> String {
    match shape.to {
        Target::Man(victim) => format!(
            "no {} can take a {} here",
            shape.role.map_or("man", man),
            man(victim)
        ),
        Target::File(file) => format!("no pawn can take on the {}", file_name(file)),
        Target::Passant => "no pawn can take en passant here".to_owned(),
        Target::Promotes => "no pawn can promote here".to_owned(),
        _ => format!("no {} can take there", shape.role.map_or("man", man)),
    }
}

/// What is wrong with the square a move is said to come from.
fn wrong_start(position: &Chess, role: Option<Role>, from: Square) -> Option<String> {
    let us = position.turn();
    match position.board().piece_at(from) {
        None => Some(format!("there is nothing on {from}")),
        Some(piece) if piece.color != us => Some(format!(
            "the {} on {from} is {}'s, and it is {}'s move",
            man(piece.role),
            side(!us),
            side(us)
        )),
        Some(piece) => match role {
            Some(role) if role != piece.role => Some(format!(
                "the man on {from} is a {}, not a {}",
                man(piece.role),
                man(role)
            )),
            _ => None,
        },
    }
}

fn nobody(us: Color, shape: &Shape) -> String {
    let name = shape.role.map_or("man", man);
    match (shape.from_file, shape.from_rank) {
        (Some(file), _) => format!("{} has no {name} on the {}", side(us), file_name(file)),
        (None, Some(rank)) => format!("{} has no {name} on rank {}", side(us), rank.char()),
        _ => format!("{} has no {name}", side(us)),
    }
}

/// The move exists but leaves the king in check.
fn exposed(position: &Chess, from: Square, to: Square, shape: &Shape) -> String {
    let us = position.turn();
    let board = position.board();
    let (Some(king), Some(role)) = (board.king_of(us), board.role_at(from)) else {
        return "it is not possible".into();
    };
    let last = matches!(to.rank(), Rank::First | Rank::Eighth);
    if role == Role::King {
        let without = board.occupied() ^ shakmaty::Bitboard::from_square(from);
        let guard = board.attacks_to(to, !us, without).first();
        return match guard.and_then(|g| Some((g, board.role_at(g)?))) {
            Some((g, role)) => format!("{} guards {to}", on(role, g)),
            None => format!("the king would be in check on {to}"),
        };
    }
    if let Some(checker) = position.checkers().first() {
        let by = board.role_at(checker).map_or("man", man);
        if position.checkers().more_than_one() {
            return "the king is in double check and has to move".into();
        }
        return format!(
            "{}'s king is in check from the {by} on {checker}, and that does not meet it",
            side(us)
        );
    }
    // Take the man away and see who strikes the king.
    let captured = shakmaty::Bitboard::from_square(to) & board.occupied();
    let occupied = (board.occupied() ^ shakmaty::Bitboard::from_square(from))
        | shakmaty::Bitboard::from_square(to);
    let pinner = (board.attacks_to(king, !us, occupied) & !captured).first();
    if let Some(pinner) = pinner
        && let Some(by) = board.role_at(pinner)
    {
        return format!(
            "{} is pinned to the king by {}",
            on(role, from),
            on(by, pinner)
        );
    }
    if role == Role::Pawn && last && shape.promotion.is_some_and(|p| p == Role::King) {
        return "a pawn cannot become a king".into();
    }
    if role == Role::Pawn && !last && shape.promotion.is_some() {
        return format!("a pawn promotes on the last rank only, and {to} is not on it");
    }
    "it would leave the king in check".into()
}

fn pawn(position: &Chess, shape: &Shape, men: &[Square], to: Square) -> String {
    let us = position.turn();
    let board = position.board();
    let forward = us.fold_wb(8, -8);
    let there = board.role_at(to);
    if let Some(file) = shape.from_file.filter(|file| *file != to.file()) {
        if file.distance(to.file()) != 1 {
            return format!("a pawn of the {} cannot take on {to}", file_name(file));
        }
        let near = men
            .iter()
            .any(|&from| board.attacks_from(from).contains(to));
        return match (there, near) {
            (None, true) => format!("there is nothing to take on {to}"),
            _ => format!("no pawn of the {} reaches {to}", file_name(file)),
        };
    }
    if shape.takes && there.is_none() {
        return format!("there is nothing to take on {to}");
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
                return format!("the pawn on {from} is blocked by {}", on(role, stone));
            }
        }
    }
    format!("no pawn of {}'s can go to {to}", side(us))
}

fn castling(position: &Chess, wing: Option<CastlingSide>) -> String {
    let us = position.turn();
    let Some(wing) = wing else {
        return match (
            castling_clause(position, CastlingSide::KingSide),
            castling_clause(position, CastlingSide::QueenSide),
        ) {
            (a, b) if a == b => a,
            (a, b) => format!("short castling fails since {a}, long since {b}"),
        };
    };
    let _ = us;
    castling_clause(position, wing)
}

fn castling_clause(position: &Chess, wing: CastlingSide) -> String {
    let us = position.turn();
    let castles = position.castles();
    let board = position.board();
    if !castles.has(us, wing) {
        return format!(
            "{} may not castle {} in this position",
            side(us),
            wing_name(wing)
        );
    }
    if position.is_check() {
        return "the king is in check, and one cannot castle out of check".into();
    }
    let path = castles.path(us, wing) & board.occupied();
    if let Some(stone) = path.first()
        && let Some(role) = board.role_at(stone)
    {
        return format!("{} stands between king and rook", on(role, stone));
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
                return format!(
                    "the king would have to pass or reach {square}, which {} guards",
                    on(role, by)
                );
            }
        }
    }
    "castling is not possible".into()
}

fn wing_name(wing: CastlingSide) -> &'static str {
    match wing {
        CastlingSide::KingSide => "short",
        CastlingSide::QueenSide => "long",
    }
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
