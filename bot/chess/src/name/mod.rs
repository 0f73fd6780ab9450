//! Names the mate on the board.
//!
//! Pure geometry: where the king stands, who checks him, who takes each flight, what his own pieces
//! block. [`frame`] lays that out, the families of patterns ([`lines`], [`knights`], [`bishops`],
//! [`rooks`], [`queens`], [`general`]) recognise it, and [`table`] puts them in order. Takes a position, gives a
//! [`Naming`], of which [`facts`] are told to people; touches nothing else. [`called`] knows which pattern
//! somebody means.

mod bishops;
mod called;
mod facts;
mod frame;
mod general;
mod knights;
mod lines;
mod queens;
mod rooks;
mod table;

use std::collections::BTreeMap;

use serde::Serialize;
use shakmaty::{Bitboard, Chess, Position, Role, Square};

pub use called::meant;
pub use facts::Seen;
use frame::Frame;
pub use table::{Source, names, source};

/// What is to be said of the mate on the board; serialises to the object that `name --json` writes.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Naming {
    /// Whether the side to move is mated at all.
    pub mate: bool,
    /// Names of the patterns that fit, the most particular first; none for a mate without a name.
    pub patterns: Vec<String>,
    /// Squares of the checking pieces.
    pub checkers: Vec<String>,
    /// For each flight of the king to move, the squares of the pieces that take it. A flight is a
    /// neighbouring square that is empty or holds an enemy piece; one that the king may go to is not
    /// listed, so that in a mate every flight is.
    pub guards: BTreeMap<String, Vec<String>>,
    /// Neighbouring squares blocked by the king's own pieces.
    pub blocked: Vec<String>,
    /// The pieces on the squares named above, for [`Naming::facts`].
    #[serde(skip)]
    pieces: BTreeMap<Square, Role>,
}

/// Names the mate on the board; `mate` is false and `patterns` empty when there is none.
///
/// ```
/// use sealed_move_chess::{name::name, parse_fen};
///
/// let read = parse_fen("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1").unwrap();
/// let naming = name(&read.position);
/// assert_eq!(naming.patterns, ["back-rank"]);
/// assert_eq!(naming.checkers, ["d8"]);
/// assert_eq!(naming.guards["h8"], ["d8"]); // the rook looks through the king
/// assert_eq!(naming.blocked, ["f7", "g7", "h7"]);
/// ```
pub fn name(position: &Chess) -> Naming {
    let Some(frame) = Frame::of_king(position.board(), position.turn()) else {
        return Naming::default();
    };
    let mate = position.is_checkmate();
    let patterns = if mate {
        table::fitting(&frame.as_black(position.turn()))
    } else {
        Vec::new()
    };
    let mut pieces = BTreeMap::new();
    let mut squares = |set: Bitboard| -> Vec<String> {
        set.into_iter()
            .map(|square: Square| {
                if let Some(role) = position.board().role_at(square) {
                    pieces.insert(square, role);
                }
                square.to_string()
            })
            .collect()
    };
    Naming {
        mate,
        patterns: patterns.into_iter().map(str::to_owned).collect(),
        checkers: squares(frame.checkers),
        guards: frame
            .flights
            .iter()
            .filter(|flight| flight.guards.any())
            .map(|flight| (flight.square.to_string(), squares(flight.guards)))
            .collect(),
        blocked: squares(frame.blocked),
        pieces,
    }
}

#[cfg(test)]
mod tests;
