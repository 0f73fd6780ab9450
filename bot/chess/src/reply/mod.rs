//! Reading what a member wrote into moves.
//!
//! A reply goes through these stages, each in a file of its own: [`marks`] spells out signs and strikes out
//! what is struck out, [`scan`] cuts characters into tokens ([`notation`] knows what a single move looks
//! like), [`words`] gives the words their meaning in the languages the reply is written in, [`phrase`]
//! makes moves out of words, [`stance`] finds out what its writer claims, [`build`] fits that into a tree
//! with the help of [`resolve`], [`doubt`] finds the ways to take what can be taken in several, and
//! [`talk`] tells an answer from chatter. [`reason`] says why a move is not possible.
//! Pure text and rules: what a move is worth is the judge's business.

mod build;
mod descriptive;
mod doubt;
mod found;
mod letters;
mod link;
mod marks;
pub mod mentions;
mod notation;
mod phrase;
pub(crate) mod reason;
mod resolve;
mod scan;
mod stance;
mod talk;
mod tree;
mod words;

#[cfg(test)]
mod table;
#[cfg(test)]
mod talk_tests;
#[cfg(test)]
mod tests;

use shakmaty::{Chess, Move, Position};

pub use found::{Spoken, first_move, spoken_of};
pub use stance::Doubt;
pub use tree::{Node, NodeId, Tree};

use super::Language;
use crate::fact::Because;

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
    /// Why nothing in it is claimed as the answer; the tree then holds what is spoken of.
    pub doubt: Option<Doubt>,
    /// The other ways to take the reply, and, where the tree itself holds several answers, each of
    /// them: empty when there is one way only.
    pub ways: Vec<Way>,
    /// Later claims by themselves, where words stand before them: never credited, and a reason to ask before
    /// the reply is charged.
    pub guards: Vec<Way>,
}

/// A way to take a reply.
#[derive(Clone, Debug)]
pub struct Way {
    /// The moves, from the start of the problem.
    pub tree: Tree,
    /// What could not be read, in the order written.
    pub troubles: Vec<Trouble>,
    /// True when it is one of several answers that the reading's own tree holds.
    pub parts: bool,
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
    /// Why it is not possible, where there is something to say.
    pub reason: Option<Because>,
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
/// use sealed_move_chess::{Language, reply};
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
    let plain = scan::plain(&marks::spelled_out(text));
    let tokens = words::understand(scan::scan(&plain, language), &plain, language);
    let pieces = phrase::group(&tokens, language);
    let mut stance = stance::of(&pieces, &plain, start.turn());
    let build =
        |marks: &[stance::Mark]| build::Builder::new(&plain, start, played).run(&pieces, marks);
    if let Some(otherwise) = stance.otherwise.take()
        && stance.plans.iter().all(|marks| build(marks).placed == 0)
    {
        stance = *otherwise;
    }
    let mut built: Vec<(build::Built, &Vec<stance::Mark>)> = Vec::new();
    for marks in &stance.plans {
        let new = build(marks);
        if !built.iter().any(|(known, _)| known.tree.same_as(&new.tree)) {
            built.push((new, marks));
        }
    }
    if let Some(marks) = &stance.strange
        && built.first().is_some_and(|(first, _)| first.assumed > 0)
    {
        let new = build(marks);
        if !built.iter().any(|(known, _)| known.tree.same_as(&new.tree)) {
            built.push((new, marks));
        }
    }
    // A way that makes no sense is none when another does.
    let faults = |built: &build::Built| built.troubles.len() + built.passed_over;
    let least = built.iter().map(|(built, _)| faults(built)).min();
    built.retain(|(built, _)| Some(faults(built)) == least);
    let mut ways = built.into_iter();
    let Some((first, marks)) = ways.next() else {
        return Ok(Reading::nothing(start, played));
    };
    let kept: Vec<phrase::Piece> = pieces
        .iter()
        .zip(marks)
        .filter(|(_, mark)| **mark == stance::Mark::Keep)
        .map(|(piece, _)| piece.clone())
        .collect();
    let mut others = doubt::answers(&first.tree, &first.troubles);
    others.extend(ways.map(|(built, _)| Way {
        tree: built.tree,
        troubles: built.troubles,
        parts: false,
    }));
    let guards = stance
        .guards
        .iter()
        .map(|marks| build(marks))
        .filter(|built| built.placed > 0 && built.troubles.len() <= first.troubles.len())
        .map(|built| Way {
            tree: built.tree,
            troubles: built.troubles,
            parts: false,
        })
        .collect();
    let answer = stance.doubt.is_none() && talk::is_answer(&kept, &first);
    Ok(Reading {
        tree: first.tree,
        troubles: first.troubles,
        placed: first.placed,
        passed_over: first.passed_over,
        answer,
        doubt: stance.doubt,
        ways: others,
        guards,
    })
}

impl Reading {
    fn nothing(start: &Chess, played: &[Move]) -> Self {
        Self {
            tree: Tree::new(start, played),
            troubles: Vec::new(),
            placed: 0,
            passed_over: 0,
            answer: false,
            doubt: None,
            ways: Vec::new(),
            guards: Vec::new(),
        }
    }
}

/// A move whose piece is written with the letter of a language, with the English one in its place.
pub(crate) fn in_english(written: &str, language: Language) -> Option<String> {
    letters::in_english(written, language)
}

/// The piece that a word in lower case names, in any language that is read.
pub(crate) fn man_named(word: &str) -> Option<shakmaty::Role> {
    match words::meaning(word) {
        words::Word::Man(role) => Some(role),
        _ => None,
    }
}
