//! Topic cards: what there is to show of each named pattern besides its words.
//!
//! A [`Card`] is made of a pattern's relatives, one clean example of our own, and where the name is from
//! (`table` has them). Whether an example shows a position that must not be shown now is asked of [`alike`].
//! The words stand with the other words, under the pattern's name: `look-NAME`, and `apart-A-B` for each two
//! relatives in the order of the alphabet. A card of something else than a mating pattern would be a further
//! table beside this one.

mod alike;
mod given;
mod table;
#[cfg(test)]
mod tests;

use shakmaty::{Chess, Move};

use super::{
    line::moves,
    name::{Source, names, source},
    position::parse_fen,
};

pub use alike::alike;
pub(crate) use given::one_move;
pub use given::{LONGEST_LINE, NoExample};

/// What there is to show of a pattern.
#[derive(Clone, Debug)]
pub struct Card {
    /// The pattern's name.
    pub pattern: &'static str,
    /// Where name and picture are from.
    pub source: Source,
    /// Patterns that are taken for it, in the order of the alphabet. It is a relative of each of them.
    pub relatives: Vec<&'static str>,
    /// A position to move whose line ends in the pattern.
    pub example: Example,
}

/// A position with the moves to be shown from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Example {
    /// FEN of the position.
    pub fen: String,
    /// The position.
    pub position: Chess,
    /// The line in SAN with English letters, `+` and `#`.
    pub line: Vec<String>,
}

impl Example {
    /// The moves of the line.
    pub fn moves(&self) -> Vec<Move> {
        moves(&self.position, &self.line)
    }

    /// Every position of it, the first and the last among them.
    pub fn positions(&self) -> Vec<Chess> {
        positions(&self.position, &self.line)
    }
}

/// A position and those that the moves of a line lead to, as far as they can be played.
pub fn positions(start: &Chess, line: &[String]) -> Vec<Chess> {
    let mut all = vec![start.clone()];
    let mut at = start.clone();
    for mv in moves(start, line) {
        shakmaty::Position::play_unchecked(&mut at, mv);
        all.push(at.clone());
    }
    all
}

/// The card of a pattern; `None` when it is not one of [`names`].
///
/// ```
/// use sealed_move_chess::card::card;
///
/// let boden = card("boden").unwrap();
/// assert!(boden.relatives.contains(&"double-bishop"));
/// assert_eq!(boden.example.line.last().unwrap(), "Ba3#");
/// ```
pub fn card(pattern: &str) -> Option<Card> {
    let (name, fen, line) = *table::EXAMPLES.iter().find(|(name, ..)| *name == pattern)?;
    Some(Card {
        pattern: name,
        source: source(name)?,
        relatives: relatives(name),
        example: Example {
            position: parse_fen(fen).ok()?.position,
            fen: fen.to_owned(),
            line: line.split(' ').map(str::to_owned).collect(),
        },
    })
}

/// The cards of all patterns, the most particular first.
pub fn cards() -> impl Iterator<Item = Card> {
    names().filter_map(card)
}

/// Patterns that are taken for this one, in the order of the alphabet.
fn relatives(pattern: &str) -> Vec<&'static str> {
    let mut all: Vec<&str> = table::RELATIVES
        .iter()
        .filter_map(|&(one, other)| match pattern {
            _ if pattern == one => Some(other),
            _ if pattern == other => Some(one),
            _ => None,
        })
        .collect();
    all.sort_unstable();
    all
}

/// The message that tells two relatives apart: their names in the order of the alphabet.
///
/// ```
/// use sealed_move_chess::card::apart;
///
/// assert_eq!(apart("hook", "arabian"), "apart-arabian-hook");
/// ```
pub fn apart(one: &str, other: &str) -> String {
    let (first, second) = if one <= other {
        (one, other)
    } else {
        (other, one)
    };
    format!("apart-{first}-{second}")
}
