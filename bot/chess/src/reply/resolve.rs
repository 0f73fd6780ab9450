//! From what a written move may mean to the move it does mean in a position.

use shakmaty::{CastlingSide, Chess, File, Move, MoveList, Position, Role, Square};

use super::notation::{ENGLISH, EXACT, Shape, Target, WrittenMove};

/// What a written move means in a position.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Resolved {
    /// One legal move.
    One(Move),
    /// Several, all equally well written.
    Several(Vec<Move>),
    /// No legal move; the shape that was most likely meant.
    None(Shape),
}

/// The square a piece arrives on; for castling the king's.
pub(super) fn arrival(mv: Move) -> Square {
    match mv {
        Move::Castle { king, rook } => {
            let side = CastlingSide::from_king_side(rook > king);
            Square::from_coords(side.king_to_file(), king.rank())
        }
        _ => mv.to(),
    }
}

/// Finds the move. `last` is where the last move arrived, for captures that name no square.
pub(super) fn resolve(position: &Chess, last: Option<Square>, written: &WrittenMove) -> Resolved {
    let legal = position.legal_moves();
    let mut at = 0;
    let seen = |shape: &Shape| shape.seen_by(position.turn());
    let shapes: Vec<Shape> = written.shapes.iter().map(seen).collect();
    while at < shapes.len() {
        let rank = shapes[at].rank;
        let mut found: Vec<Move> = Vec::new();
        let mut near = false;
        while at < shapes.len() && shapes[at].rank == rank {
            let shape = &shapes[at];
            let before = found.len();
            for &mv in legal.iter().filter(|mv| fits(shape, **mv, last)) {
                if !found.contains(&mv) && on_wing(position, shape, mv) {
                    found.push(mv);
                }
            }
            near |= found.len() == before && rank <= ENGLISH && reachable(position, shape);
            at += 1;
        }
        narrow(&mut found, position, written);
        match found.len() {
            // A piece that was named exactly and could go there but for a pin or a check was meant:
            // no other reading may slip in.
            0 if near => break,
            0 => {}
            1 => return Resolved::One(found[0]),
            _ => return Resolved::Several(found),
        }
    }
    let meant = shapes
        .iter()
        .find(|shape| reachable(position, shape))
        .or(shapes.first());
    Resolved::None(
        meant
            .copied()
            .unwrap_or(Shape::to(None, Target::Last, EXACT)),
    )
}

/// Drops the moves that do not capture, check or mate when the text says that it does.
fn narrow(found: &mut Vec<Move>, position: &Chess, written: &WrittenMove) {
    let keep = |found: &mut Vec<Move>, is: &dyn Fn(&Move) -> bool| {
        if found.len() > 1 && found.iter().any(is) {
            found.retain(is);
        }
    };
    if written.shapes.iter().any(|shape| shape.takes) {
        keep(found, &|mv| mv.is_capture());
    }
    let after = |mv: &Move| {
        let mut next = position.clone();
        next.play_unchecked(*mv);
        next
    };
    if written.mate {
        keep(found, &|mv| after(mv).is_checkmate());
    }
    if written.check {
        keep(found, &|mv| after(mv).is_check());
    }
}

fn fits(shape: &Shape, mv: Move, last: Option<Square>) -> bool {
    if let Move::Castle { king, rook } = mv {
        let side = CastlingSide::from_king_side(rook > king);
        if let Some(wanted) = shape.castles {
            return wanted.is_none_or(|wanted| wanted == side);
        }
        // UCI and long algebraic write castling as the king's two steps.
        return shape.from() == Some(king) && shape.to == Target::Square(arrival(mv));
    }
    if shape.castles.is_some() || shape.role.is_some_and(|role| role != mv.role()) {
        return false;
    }
    let Some(from) = mv.from() else { return false };
    if shape.from_file.is_some_and(|file| file != from.file())
        || shape.from_rank.is_some_and(|rank| rank != from.rank())
        || shape.promotion.is_some_and(|to| mv.promotion() != Some(to))
    {
        return false;
    }
    match shape.to {
        Target::Square(to) => {
            mv.to() == to && (shape.role.is_some() || shape.from().is_some() || mv.is_capture())
        }
        Target::File(file) => mv.is_capture() && mv.to().file() == file,
        Target::Man(role) => mv.capture() == Some(role),
        Target::ManOn(role, files) => {
            mv.capture() == Some(role) && files >> mv.to().file().to_u32() & 1 == 1
        }
        Target::Passant => mv.is_en_passant(),
        Target::Promotes => mv.promotion().is_some(),
        Target::Last => mv.is_capture() && last.is_none_or(|last| last == mv.to()),
    }
}

/// Whether the piece that moves is the king's or the queen's one, where that was said: of two the one
/// nearer to that wing, else one on its half of the board.
fn on_wing(position: &Chess, shape: &Shape, mv: Move) -> bool {
    let (Some(wing), Some(from)) = (shape.wing, mv.from()) else {
        return true;
    };
    let like = position.us() & position.board().by_role(mv.role());
    let mut others = like.into_iter().filter(|&square| square != from);
    let side = match (others.next(), others.next()) {
        (None, _) => return true,
        (Some(other), None) if other.file() != from.file() => from.file() > other.file(),
        _ => from.file() >= File::E,
    };
    side == (wing == CastlingSide::KingSide)
}

/// Whether a piece of the side to move could go there by its way of moving, were it not for checks and
/// pins.
pub(super) fn reachable(position: &Chess, shape: &Shape) -> bool {
    let shape = &shape.seen_by(position.turn());
    if shape.castles.is_some() {
        return true;
    }
    let Target::Square(to) = shape.to else {
        return false;
    };
    senders(position, shape)
        .into_iter()
        .any(|from| pseudo(position, from, to))
}

/// The pieces of the side to move that the shape may speak of.
pub(super) fn senders(position: &Chess, shape: &Shape) -> Vec<Square> {
    let board = position.board();
    position
        .us()
        .into_iter()
        .filter(|&from| {
            shape
                .role
                .is_none_or(|role| board.role_at(from) == Some(role))
                && shape.from_file.is_none_or(|file| file == from.file())
                && shape.from_rank.is_none_or(|rank| rank == from.rank())
        })
        .collect()
}

/// Whether the piece on `from` could move to `to` if its king did not matter.
pub(super) fn pseudo(position: &Chess, from: Square, to: Square) -> bool {
    let board = position.board();
    let Some(piece) = board.piece_at(from) else {
        return false;
    };
    if board.color_at(to) == Some(piece.color) {
        return false;
    }
    if piece.role != Role::Pawn {
        return board.attacks_from(from).contains(to);
    }
    let step = |square: Square| square.offset(piece.color.fold_wb(8, -8));
    if from.file() == to.file() {
        let Some(one) = step(from) else { return false };
        if board.color_at(one).is_some() {
            return false;
        }
        let home = piece.color.relative_rank(from.rank()) == shakmaty::Rank::Second;
        return one == to || (home && step(one) == Some(to) && board.color_at(to).is_none());
    }
    board.attacks_from(from).contains(to)
        && (board.color_at(to).is_some() || position.pseudo_legal_ep_square() == Some(to))
}

/// Legal moves of a kind, for saying what would be possible; in SAN without check and mate signs,
/// which would give too much away.
pub(super) fn bare_sans(position: &Chess, moves: &[Move]) -> Vec<String> {
    moves
        .iter()
        .map(|&mv| shakmaty::san::San::from_move(position, mv).to_string())
        .collect()
}

/// Legal moves of the pieces the shape may speak of.
pub(super) fn legal_of(position: &Chess, shape: &Shape) -> MoveList {
    let senders = senders(position, shape);
    let mut moves = position.legal_moves();
    moves.retain(|mv| mv.from().is_some_and(|from| senders.contains(&from)));
    moves
}
