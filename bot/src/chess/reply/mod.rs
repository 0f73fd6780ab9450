//! Reading what a member wrote into moves.
//!
//! A reply goes through six stages, each in a file of its own: [`scan`] cuts characters into tokens
//! ([`notation`] knows what a single move looks like), [`phrase`] makes moves out of words, [`retract`]
//! drops what the writer takes back, [`build`] fits the moves into a tree with the help of [`resolve`],
//! and [`talk`] tells an answer from chatter. [`reason`] says why a move is not possible.
//! Pure text and rules: what a move is worth is the judge's business.

mod build;
mod descriptive;
mod letters;
pub mod mentions;
mod notation;
mod phrase;
pub(crate) mod reason;
mod resolve;
mod retract;
mod scan;
mod talk;
mod tree;
mod words;

#[cfg(test)]
mod table;
#[cfg(test)]
mod talk_tests;
#[cfg(test)]
mod tests;

use shakmaty::{Chess, Move};

pub use tree::{Node, NodeId, Tree};

use super::judge::Language;

/// Most characters of a reply that are considered.
pub const MOST_CHARACTERS: usize = 4_000;

/// What could be made of a reply.
#[derive(Clone, Debug)]
pub struct Reading {
    /// The moves, from the start of the problem.
    pub tree: Tree,
    /// What could not be read, in the order written.
    pub troubles: Vec<Trouble>,
    /// Moves placed in the tree.
    pub placed: usize,
    /// Moves mentioned in prose that belong to no line.
    pub passed_over: usize,
    /// True when the reply is plainly an answer even among other messages.
    pub answer: bool,
}

/// Something in a reply that is no legal move.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// What is wrong.
    pub kind: TroubleKind,
    /// The text it is about.
    pub written: String,
    /// The node of the tree at which it stands.
    pub at: NodeId,
    /// Why it is not possible; empty when there is nothing to say.
    pub reason: String,
    /// Moves that would be possible, without check and mate signs.
    pub possible: Vec<String>,
}

/// What is wrong with a written move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TroubleKind {
    /// The rules do not allow it.
    Illegal,
    /// It could be several moves.
    Unclear,
    /// It looks like a move, and cannot be read as one.
    Garbled,
}

/// The reply is longer than [`MOST_CHARACTERS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the reply is longer than {MOST_CHARACTERS} characters")]
pub struct TooLong;

/// Reads a reply to the problem that starts at `start`, of which `played` has been played.
///
/// Takes time linear in the text, which is bounded by [`MOST_CHARACTERS`].
///
/// ```
/// use sealed_move::chess::{judge::Language, reply};
/// use shakmaty::Chess;
///
/// let reading = reply::read(&Chess::default(), &[], "pawn to e4", Language::English).unwrap();
/// assert_eq!(reading.tree.main_line().len(), 1);
/// ```
///
/// # Errors
/// [`TooLong`]; nothing is read then.
pub fn read(
    start: &Chess,
    played: &[Move],
    text: &str,
    language: Language,
) -> Result<Reading, TooLong> {
    if text.char_indices().nth(MOST_CHARACTERS).is_some() {
        return Err(TooLong);
    }
    let plain = scan::plain(text);
    let tokens = scan::scan(&plain, language);
    let grouped = phrase::group(&tokens, language);
    let build = |pieces: &[phrase::Piece]| build::Builder::new(&plain, start, played).run(pieces);
    let (mut pieces, other) = retract::readings(grouped);
    let mut built = build(&pieces);
    if let Some(other) = other {
        let again = build(&other);
        if again.troubles.len() < built.troubles.len() {
            (pieces, built) = (other, again);
        }
    }
    let answer = talk::is_answer(&pieces, &built);
    Ok(Reading {
        tree: built.tree,
        troubles: built.troubles,
        placed: built.placed,
        passed_over: built.passed_over,
        answer,
    })
}
