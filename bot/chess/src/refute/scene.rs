//! The picture of a refutation: the position after the defence, with its point marked.

use shakmaty::{CastlingSide, Move, Square};

use super::reason::{Back, Facts, Reason};
use crate::scene::{Scene, SceneMark};

/// The square a piece arrives on; for castling the king's.
pub(crate) fn arrival(mv: Move) -> Square {
    match mv {
        Move::Castle { king, rook } => {
            let side = CastlingSide::from_king_side(rook > king);
            Square::from_coords(side.king_to_file(), king.rank())
        }
        _ => mv.to(),
    }
}

/// Draws what the reasons speak of.
pub(super) fn of(facts: &Facts, reasons: &[Reason]) -> Scene {
    let shown = facts.defence.unwrap_or(facts.mv);
    let squares = shown.from().map(|from| (from, arrival(shown)));
    let mut marks = Vec::new();
    if let (Some((from, to)), Some(_)) = (squares, facts.defence) {
        marks.push(SceneMark::Refutation(from, to));
    }
    for reason in reasons {
        match *reason {
            Reason::Flight { to, .. } => marks.push(SceneMark::OpenFlight(to)),
            Reason::Luft { square, .. } => marks.push(SceneMark::OpenFlight(square)),
            Reason::Guards { square, .. } => marks.push(SceneMark::Square(square)),
            Reason::Pins { on, .. } => marks.push(SceneMark::Square(on)),
            Reason::Takes {
                back: Back::Pinned(_, square),
                ..
            } => marks.push(SceneMark::Square(square)),
            _ => {}
        }
    }
    Scene {
        position: facts.beyond.clone(),
        last_move: squares,
        marks,
    }
}
