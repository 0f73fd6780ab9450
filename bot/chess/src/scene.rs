//! A position with what should be pointed out on it; how floor 1 tells a picture what to show
//! without knowing how it is drawn.

use shakmaty::{Chess, Square};

/// What is to be seen: a position, the move that led to it, and marks.
#[derive(Clone, Debug)]
pub struct Scene {
    /// The position to draw.
    pub position: Chess,
    /// From and to of the last move.
    pub last_move: Option<(Square, Square)>,
    /// What is pointed out.
    pub marks: Vec<SceneMark>,
}

/// One thing pointed out on the board.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SceneMark {
    /// A move that refutes.
    Refutation(Square, Square),
    /// A move of a line, numbered from 1.
    Step(Square, Square, u8),
    /// A flight the king may use.
    OpenFlight(Square),
    /// A flight taken from the king by enemy guards.
    GuardedFlight(Square),
    /// A neighbouring square blocked by the king's own piece.
    BlockedFlight(Square),
    /// A guard: the piece on the first square takes the second from the king.
    Guard(Square, Square),
    /// A square to look at.
    Square(Square),
}
