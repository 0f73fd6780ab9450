//! The coach's words on a position: kept apart by when they go out, read back, and written anew.

use sealed_move_store::{Position, Words};
use serde::{Deserialize, Serialize};

use super::{
    Desk, Person, Place, PositionId, checking,
    error::{DeskError, Done, bad_request},
    handle::{coached, position_of},
    problems,
    refusal::{Refusal, When},
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

/// Whether words go out with a post although they tell a move of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telling {
    /// Words that tell a move are refused.
    Refused,
    /// The coach has said: send them all the same.
    Meant,
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

impl Desk {
    /// Writes a position's words anew; those beside moves stay. Coaches only.
    ///
    /// # Errors
    /// When they are too long, or those for the post tell a move and that is not [`Telling::Meant`].
    pub async fn set_words(
        &self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        with_post: &str,
        at_reveal: &str,
        telling: Telling,
    ) -> Done<()> {
        let bounded = |words: &str, when: When, most: usize| match text::body(words, most) {
            (words, false) => Ok(words),
            (_, true) => bad_request(Refusal::WordsTooLong {
                when,
                most: most.into(),
            }),
        };
        let with_post = bounded(with_post, When::Post, MOST_WITH_POST)?;
        let at_reveal = bounded(at_reveal, When::Reveal, MOST_AT_REVEAL)?;
        let (at, by) = (place.clone(), coach.clone());
        let kept = self
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                position_of(db, &group, position)
            })
            .await?;
        if telling == Telling::Refused && !with_post.is_empty() {
            let (board, _) = problems::parse(&kept.fen, &kept.stipulation)?;
            let report = checking::report(&kept.check.report)?;
            let words = with_post.clone();
            let limit = self.inner.options.check_seconds;
            let told = self
                .inner
                .checks
                .run("reading the coach's words", limit, move |_| {
                    comments::gives_away(&board, &report.keys, &report.line, &words)
                })
                .await?;
            if let Some(mv) = told {
                return bad_request(Refusal::WordsTellMove { line: mv.into() });
            }
        }
        let (at, by) = (place.clone(), coach.clone());
        self.write(move |tx| {
            let group = coached(tx, &at, &by)?;
            let kept = position_of(tx, &group, position)?;
            let words = Words {
                with_post,
                at_reveal,
                notes: kept.words.notes,
            };
            Ok(tx.set_position_words(kept.id, &words)?)
        })
        .await
    }
}
