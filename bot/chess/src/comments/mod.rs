//! A coach's comments: where each goes out, and how those on moves stand beside their moves.
//!
//! Words on the position as a whole go out with the post or at the reveal, as the file says
//! ([`Comment`]); words on a move are for the reveal ([`notes`]). Words that would tell a move of the
//! position before its time are held for the reveal ([`giveaway`]), unless the coach said otherwise.

mod giveaway;
mod glyphs;
mod notes;

use serde::{Deserialize, Serialize};

use super::{
    Stipulation,
    fact::{Line, Theirs, number},
    read::Entry,
};

pub use crate::read::{Comment, Goes};
pub(crate) use giveaway::Secrets;
pub use giveaway::gives_away;
pub use glyphs::sign;
pub use notes::{Note, lines, shown};

/// The most characters that go out with a post.
pub const MOST_WITH_POST: usize = 1_000;

/// The most characters on the position as a whole that are kept for the reveal.
pub const MOST_AT_REVEAL: usize = 4_000;

/// The most characters of moves and comments that are kept for the reveal.
pub const MOST_IN_NOTES: usize = 12_000;

/// A coach's comments on a position, by when they go out.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Comments {
    /// With the post.
    pub with_post: String,
    /// At the reveal, on the position as a whole; those held are among them.
    pub at_reveal: String,
    /// At the reveal, beside their moves: the coach's own line with its variations.
    pub notes: Vec<Note>,
    /// Words meant for the post that are held for the reveal.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub held: Vec<HeldBack>,
    /// Whether some words are left out because there are more than are kept.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub cut: bool,
}

/// Words meant for the post that wait for the reveal.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HeldBack {
    /// The words.
    pub words: String,
    /// Why they are held.
    pub why: WhyHeld,
}

/// Why words are held.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WhyHeld {
    /// They tell this move.
    Gives(String),
    /// There are more than go out with a post.
    TooLong,
}

/// What the coach has to know of their words, as a fact: a statement that stands behind a colon.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Withheld {
    /// Words for the post that tell a move are held.
    WordsHeld {
        /// The move.
        line: Line,
        /// The words, or their beginning.
        words: Theirs,
    },
    /// Words for the post that are too long are held.
    LongWordsHeld {
        /// The most characters that go out with a post.
        most: u32,
        /// The words, or their beginning.
        words: Theirs,
    },
    /// There are more words than are kept for the reveal.
    WordsCut {
        /// The most characters on the position as a whole.
        most: u32,
        /// The most characters beside the moves.
        beside: u32,
    },
}

impl Comments {
    /// Sorts the comments of an entry. `task`, `keys` and `line` (in SAN) are the solution as the check
    /// found it.
    pub fn of(entry: &Entry, task: Option<Stipulation>, keys: &[String], line: &[String]) -> Self {
        let mut sorted = Self::default();
        for Comment { text, goes } in &entry.comments {
            let why = match goes {
                Goes::AtReveal => {
                    sorted.keep(text);
                    continue;
                }
                _ if characters(&sorted.with_post) + characters(text) >= MOST_WITH_POST => {
                    Some(WhyHeld::TooLong)
                }
                Goes::WithPost => gives_away(&entry.position, keys, line, text).map(WhyHeld::Gives),
                Goes::WithPostAnyway => None,
            };
            match why {
                None => add(&mut sorted.with_post, text),
                Some(why) => {
                    sorted.keep(text);
                    sorted.held.push(HeldBack {
                        words: text.clone(),
                        why,
                    });
                }
            }
        }
        if let Some(tree) = &entry.variations {
            let proved = task.is_none_or(|task| task.mate_in().is_some());
            let (notes, cut) = notes::of(&entry.position, tree, proved);
            sorted.notes = notes;
            sorted.cut |= cut;
        }
        sorted
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.with_post.is_empty() && self.at_reveal.is_empty() && self.notes.is_empty()
    }

    /// Words that were meant for the post and are held for the reveal, as by [`Comments::of`].
    pub fn held(held: Vec<HeldBack>) -> Self {
        let mut comments = Self::default();
        for held in held {
            comments.keep(&held.words);
            comments.held.push(held);
        }
        comments
    }

    fn keep(&mut self, text: &str) {
        let room = MOST_AT_REVEAL.saturating_sub(characters(&self.at_reveal) + 1);
        let kept: String = text.chars().take(room).collect();
        self.cut |= kept.len() < text.len();
        add(&mut self.at_reveal, &kept);
    }

    /// What the coach has to know of them, a fact each.
    pub fn warnings(&self) -> Vec<Withheld> {
        let mut out: Vec<Withheld> = self
            .held
            .iter()
            .map(|held| match &held.why {
                WhyHeld::Gives(mv) => Withheld::WordsHeld {
                    line: mv.as_str().into(),
                    words: start(&held.words).into(),
                },
                WhyHeld::TooLong => Withheld::LongWordsHeld {
                    most: number(MOST_WITH_POST),
                    words: start(&held.words).into(),
                },
            })
            .collect();
        if self.cut {
            out.push(Withheld::WordsCut {
                most: number(MOST_AT_REVEAL),
                beside: number(MOST_IN_NOTES),
            });
        }
        out
    }
}

fn add(into: &mut String, text: &str) {
    if !into.is_empty() && !text.is_empty() {
        into.push('\n');
    }
    into.push_str(text);
}

fn characters(text: &str) -> usize {
    text.chars().count()
}

fn start(text: &str) -> String {
    const MOST: usize = 80;
    match text.char_indices().nth(MOST) {
        None => text.to_owned(),
        Some((at, _)) => format!("{}…", text[..at].trim_end()),
    }
}

#[cfg(test)]
mod tests;
