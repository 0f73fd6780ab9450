//! Names the mate on the board.

use std::collections::BTreeMap;

use serde::Serialize;
use shakmaty::Chess;

/// What is to be said of the mate on the board; serialises to the object that `name --json` writes.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Naming {
    /// Whether the side to move is mated at all.
    pub mate: bool,
    /// Names of the patterns that fit, the most particular first.
    pub patterns: Vec<String>,
    /// Squares of the checking pieces.
    pub checkers: Vec<String>,
    /// For each flight of the mated king, the squares of the pieces that take it.
    pub guards: BTreeMap<String, Vec<String>>,
    /// Neighbouring squares blocked by the king's own men.
    pub blocked: Vec<String>,
}

/// Names the mate on the board; `mate` is false when there is none.
pub fn name(position: &Chess) -> Naming {
    let _ = position;
    todo!()
}
