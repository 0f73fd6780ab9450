//! Reading what a coach hands over: EPD, PGN with SetUp/FEN, and bare FEN lines.

use shakmaty::{Chess, Move};

use super::{Stipulation, Warning};

/// One position of a file, as the file states it.
#[derive(Clone, Debug)]
pub struct Entry {
    /// The file's own id (EPD `id`, PGN tags) or `file:line`.
    pub id: String,
    /// Line in the file, from 1.
    pub line: usize,
    /// The position.
    pub position: Chess,
    /// What is odd about the position.
    pub warnings: Vec<Warning>,
    /// The task, where the file states one.
    pub stipulation: Option<Stipulation>,
    /// Best moves that the file promises (EPD `bm`), and the first move of a PGN solution.
    pub best: Vec<Move>,
    /// Moves to avoid (EPD `am`).
    pub avoid: Vec<Move>,
    /// Topic, where the file names one (EPD `c0`, PGN `Topic` or `Event` tag).
    pub topic: Option<String>,
    /// Comments for the members or the coach (EPD `c1` to `c9`, PGN comments before the first move).
    pub comments: Vec<String>,
    /// The coach's own variations, for a PGN entry.
    pub variations: Option<GameTree>,
}

/// A coach's own game tree from a PGN.
#[derive(Clone, Debug, Default)]
pub struct GameTree {
    /// Main move first, then its alternatives.
    pub nodes: Vec<GameNode>,
}

/// A move of a game tree.
#[derive(Clone, Debug)]
pub struct GameNode {
    /// The move.
    pub mv: Move,
    /// Numeric annotation glyphs.
    pub nags: Vec<u8>,
    /// Comment after the move.
    pub comment: Option<String>,
    /// Line in the file, from 1.
    pub line: usize,
    /// What follows: main move first, then its alternatives.
    pub next: GameTree,
}

/// What is wrong with an entry of a file: where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{file}, line {line}: {problem}")]
pub struct ReadError {
    /// Name of the file as the coach gave it.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// The entry's id, where it was readable.
    pub id: Option<String>,
    /// The position as the file gives it, where the trouble is in the position; else empty.
    pub text: String,
    /// What is wrong and what to do.
    pub problem: String,
}

/// The most a file may weigh, in bytes.
pub const LARGEST_FILE: usize = 16 << 20;

/// Reads every position of a file; the kind (EPD, PGN, FEN lines) is seen from the content.
/// A bad entry is an error in its place and does not stop the others.
pub fn read_file(name: &str, bytes: &[u8]) -> Vec<Result<Entry, ReadError>> {
    let _ = (name, bytes);
    todo!()
}
