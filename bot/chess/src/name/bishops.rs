//! Mates given by bishops, alone or with knights, and by minor pieces together.

use shakmaty::{Bitboard, Rank, Role, Square};

use super::frame::Frame;

/// How the second bishop's diagonals run to that of the checking one.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Run {
    Across,
    Along,
}

/// A bishop checks, a second one takes what the first leaves, nobody else is needed.
fn two_bishops(frame: &Frame, run: Run) -> bool {
    let Some(first) = frame.checker_of(Role::Bishop) else {
        return false;
    };
    let direction = |from: Square, to: Square| {
        let ((a, b), (c, d)) = (frame.offset(from), frame.offset(to));
        ((c - a).signum(), (d - b).signum())
    };
    let check = direction(frame.king, first);
    frame.blocked.any()
        && frame
            .mating(Role::Bishop)
            .without(first)
            .into_iter()
            .any(|second| {
                let mut mine = frame
                    .flights
                    .iter()
                    .filter(|flight| {
                        flight.guards.contains(second) && !flight.guards.contains(first)
                    })
                    .map(|flight| direction(flight.square, second))
                    .peekable();
                frame.all_taken(Bitboard::from_square(first).with(second))
                    && mine.peek().is_some()
                    && mine.all(|ray| {
                        let across = ray.0 * check.0 + ray.1 * check.1 == 0;
                        across == (run == Run::Across)
                    })
            })
}

/// Two bishops on crossing diagonals.
pub(super) fn boden(frame: &Frame) -> bool {
    two_bishops(frame, Run::Across)
}

/// A bishop checks from afar, and the queen takes what it leaves, two flights or more; nobody else is needed.
pub(super) fn balestra(frame: &Frame) -> bool {
    let Some(bishop) = frame.checker_of(Role::Bishop) else {
        return false;
    };
    let left = frame
        .flights
        .iter()
        .filter(|flight| !flight.guards.contains(bishop));
    let afar = frame.offset(bishop).0.abs() > 1;
    afar && left.count() >= 2
        && frame
            .mating(Role::Queen)
            .into_iter()
            .any(|queen| frame.all_taken(Bitboard::from_square(bishop).with(queen)))
}

/// Two bishops side by side on parallel diagonals.
pub(super) fn double_bishop(frame: &Frame) -> bool {
    two_bishops(frame, Run::Along)
}

/// Two knights and a bishop, all needed and nobody else, against a king on his first two ranks.
pub(super) fn legal(frame: &Frame) -> bool {
    let minor = matches!(frame.checker(), Some((_, Role::Knight | Role::Bishop)));
    if !minor || frame.king.rank() < Rank::Seventh || frame.blocked.is_empty() {
        return false;
    }
    let at_work = |pieces: Bitboard| -> Vec<Square> {
        pieces
            .into_iter()
            .filter(|&piece| frame.checkers.contains(piece) || frame.takes_one(piece))
            .collect()
    };
    let knights = at_work(frame.mating(Role::Knight));
    let bishops = at_work(frame.mating(Role::Bishop));
    let ([one, two], [bishop]) = (knights.as_slice(), bishops.as_slice()) else {
        return false;
    };
    let team = Bitboard::from_square(*one).with(*two).with(*bishop);
    frame.all_taken(team)
        && team
            .into_iter()
            .filter(|piece| !frame.checkers.contains(*piece))
            .all(|piece| !frame.all_taken(team.without(piece)))
}

/// A bishop checks from the square beside the castled king, held there by a knight; the other bishop
/// takes what is left.
pub(super) fn blackburne(frame: &Frame) -> bool {
    let Some(first) = frame.checker_of(Role::Bishop) else {
        return false;
    };
    if !frame.on_top_edge() || frame.offset(first) != (1, -1) {
        return false;
    }
    let knights = frame.guards_of(first) & frame.mating(Role::Knight);
    let second = frame.mating(Role::Bishop).without(first);
    knights.any()
        && second.into_iter().any(|bishop| frame.takes_one(bishop))
        && frame.all_taken(knights | second | Bitboard::from_square(first))
}

/// A bishop checks from next to the king, held by a heavy piece on its line, and four or more of the
/// king's own pieces hem him in.
pub(super) fn reti(frame: &Frame) -> bool {
    let Some(bishop) = frame.checker_of(Role::Bishop) else {
        return false;
    };
    frame.guards_of(bishop).intersects(frame.heavy())
        && frame.blocked.count() >= 4
        && frame.all_taken(frame.heavy().with(bishop))
}

/// A bishop checks the king in the corner along the long diagonal; a rook takes the file beside him and
/// his own piece stands in front.
pub(super) fn morphy(frame: &Frame) -> bool {
    frame.in_corner()
        && frame
            .checker_of(Role::Bishop)
            .is_some_and(|bishop| frame.offset(bishop).0 <= -2)
        && frame.own(0, -1)
        && (frame.guards(-1, 0) & frame.mating(Role::Rook))
            .into_iter()
            .any(|rook| frame.offset(rook).0 == -1)
}
