//! The coach's words on a position: kept apart by when they go out, and read back.

use sealed_move_store::{Position, Words};
use serde::{Deserialize, Serialize};

use super::{
    error::{DeskError, Done},
    text,
};
use crate::chess::comments::{self, Comments, MOST_AT_REVEAL, MOST_WITH_POST, Note};

/// The coach's words on a position.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct CoachWords {
    /// Shown with the post.
    pub with_post: String,
    /// Shown at the reveal, on the position as a whole.
    pub at_reveal: String,
    /// Shown at the reveal, beside the moves of the coach's own line.
    pub notes: Vec<Note>,
}

impl CoachWords {
    /// What a file says, made harmless.
    pub(super) fn of(comments: &Comments) -> Self {
        let clean = |words: &str, most| text::body(words, most).0;
        let beside = |words: &str| clean(words, comments::MOST_IN_NOTES);
        Self {
            with_post: clean(&comments.with_post, MOST_WITH_POST),
            at_reveal: clean(&comments.at_reveal, MOST_AT_REVEAL),
            notes: comments
                .notes
                .iter()
                .map(|note| Note {
                    before: beside(&note.before),
                    after: beside(&note.after),
                    ..note.clone()
                })
                .collect(),
        }
    }

    /// Those of a kept position.
    pub(super) fn kept(position: &Position) -> Done<Self> {
        Ok(Self {
            with_post: position.words.with_post.clone(),
            at_reveal: position.words.at_reveal.clone(),
            notes: serde_json::from_value(position.words.notes.clone()).map_err(|error| {
                DeskError::damaged(format!("a coach's note in it cannot be read ({error})"))
            })?,
        })
    }

    pub(super) fn to_keep(&self) -> Done<Words> {
        Ok(Words {
            with_post: self.with_post.clone(),
            at_reveal: self.at_reveal.clone(),
            notes: serde_json::to_value(&self.notes).map_err(|error| {
                DeskError::damaged(format!("a coach's note cannot be written ({error})"))
            })?,
        })
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.with_post.is_empty() && self.at_reveal.is_empty() && self.notes.is_empty()
    }

    /// These, and behind them what of the others is not among them. What would be too much for a post
    /// is said at the reveal.
    pub(super) fn joined(&self, others: &Self) -> Self {
        let join = |own: &str, other: &str| match (own.is_empty(), own.contains(other)) {
            (true, _) => other.to_owned(),
            (_, true) => own.to_owned(),
            (false, false) => format!("{own}\n{other}"),
        };
        let mut joined = Self {
            with_post: join(&self.with_post, &others.with_post),
            at_reveal: join(&self.at_reveal, &others.at_reveal),
            notes: self.notes.clone(),
        };
        if joined.with_post.chars().count() > MOST_WITH_POST {
            joined.with_post = self.with_post.clone();
            joined.at_reveal = join(&joined.at_reveal, &others.with_post);
        }
        if joined.notes != others.notes {
            joined.notes.extend(others.notes.iter().cloned());
        }
        joined
    }
}
