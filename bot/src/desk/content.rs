//! What a post holds: a problem (a position with its task), a question (words that members answer in their
//! own), or words alone. What a kind has or has not is said here; what does something else for each matches
//! over the three.
//!
//! A problem comes from a position that was checked ([`super::CoachDesk::enqueue`]). A question and words alone
//! come from a coach's words ([`super::CoachDesk::enqueue_question`], [`super::CoachDesk::enqueue_words`]) or a
//! file; they may have a position beside them, which is shown and never proved.

use sealed_move_store::{self as store, Group, Post, Waits, Written};
use serde::{Deserialize, Serialize};

use super::{
    ContentId, Desk, InLesson, Picture, Place, PostId, Settings, drawing,
    error::{DeskError, Done, bad_request, not_found},
    handle::position_of,
    problems::Posed,
    refusal::{Lacking, Refusal, Removed},
};
use crate::chess::{Stipulation, fact::Side};

/// Which kind of content something is, as a list shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Kind {
    /// A position with its task.
    Problem {
        /// The stipulation's sign.
        stipulation: String,
    },
    /// What members answer in their own words.
    Question,
    /// What members read.
    Words,
}

/// The kinds by name, without what is a kind's own: what a sentence about a post needs to know of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum KindName {
    /// A position with its task.
    Problem,
    /// What members answer in their own words.
    Question,
    /// What members read.
    Words,
}

impl Kind {
    /// Its name.
    pub fn name(&self) -> KindName {
        match self {
            Self::Problem { .. } => KindName::Problem,
            Self::Question => KindName::Question,
            Self::Words => KindName::Words,
        }
    }

    /// The sign of what is asked, which only a problem has.
    pub fn task(&self) -> Option<&str> {
        match self {
            Self::Problem { stipulation } => Some(stipulation),
            Self::Question | Self::Words => None,
        }
    }

    /// What it is called where programs read it.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Problem { .. } => "problem",
            Self::Question => "question",
            Self::Words => "words",
        }
    }

    /// What stands for it in a list: a problem's sign, or the name of the kind.
    pub fn sign(&self) -> &str {
        self.task().unwrap_or(self.word())
    }

    /// Whether members answer it.
    pub fn takes_answers(&self) -> bool {
        match self {
            Self::Problem { .. } | Self::Question => true,
            Self::Words => false,
        }
    }

    /// Why an answer without a word in it is none.
    pub(super) fn nothing_written(&self) -> Refusal {
        match self {
            Self::Problem { .. } | Self::Words => Refusal::NothingToJudge,
            Self::Question => Refusal::NothingAnswered,
        }
    }

    pub(super) fn of(content: &store::Content) -> Self {
        match content {
            store::Content::Problem { stipulation, .. } => Self::Problem {
                stipulation: stipulation.clone(),
            },
            store::Content::Question { .. } => Self::Question,
            store::Content::Words(_) => Self::Words,
        }
    }
}

/// What a post holds, as everyone may see it. Gives nothing away.
#[derive(Clone)]
pub enum Content {
    /// A position with its task.
    Problem {
        /// What is asked.
        stipulation: Stipulation,
        /// Who is to move.
        side: Side,
        /// The coach's words with the post; often empty.
        words: String,
        /// The diagram; its file name is `position-NUMBER.png`.
        picture: Picture,
    },
    /// What members answer in their own words.
    Question(WrittenSheet),
    /// What members read.
    Words(WrittenSheet),
}

/// A coach's words, with or without a position beside them.
#[derive(Clone)]
pub struct WrittenSheet {
    /// The words; never empty.
    pub words: String,
    /// The position beside them.
    pub picture: Option<Picture>,
}

impl Content {
    /// Which kind it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Problem { stipulation, .. } => Kind::Problem {
                stipulation: stipulation.to_string(),
            },
            Self::Question(_) => Kind::Question,
            Self::Words(_) => Kind::Words,
        }
    }

    /// The picture, where there is one.
    pub fn picture(&self) -> Option<&Picture> {
        match self {
            Self::Problem { picture, .. } => Some(picture),
            Self::Question(written) | Self::Words(written) => written.picture.as_ref(),
        }
    }
}

/// The beginning of a text, in one line.
pub(super) fn beginning(words: &str) -> String {
    const MOST: usize = 40;
    let line = words.split_whitespace().collect::<Vec<_>>().join(" ");
    match line.chars().count() {
        0..=MOST => line,
        _ => line.chars().take(MOST - 1).chain(['…']).collect(),
    }
}

/// What a post holds, as the store has it.
#[derive(Clone)]
pub(super) enum Held {
    /// A position with its task.
    Problem(Box<Posed>),
    /// What is asked, and the words for the reveal.
    Question(Written, String),
    /// What is said.
    Words(Written),
}

impl Held {
    /// The position, where it is a problem.
    pub(super) fn problem(&self) -> Option<&Posed> {
        match self {
            Self::Problem(posed) => Some(posed),
            Self::Question(..) | Self::Words(_) => None,
        }
    }
}

/// What an item of the queue holds.
pub(super) fn waiting(db: &store::Db<'_>, group: &Group, holds: Waits) -> Done<Held> {
    Ok(match holds {
        Waits::Problem(problem) => {
            let position = position_of(db, group, problem.position_id)?;
            Held::Problem(Box::new(Posed::of(position)?))
        }
        Waits::Question { asked, at_reveal } => Held::Question(asked, at_reveal),
        Waits::Words(written) => Held::Words(written),
    })
}

/// What a post holds.
pub(super) fn held(db: &store::Db<'_>, post: &Post) -> Done<Held> {
    Ok(match &post.content {
        store::Content::Problem { position_id, .. } => match db.position(*position_id)? {
            Some(position) => Held::Problem(Box::new(Posed::of(position)?)),
            None => {
                return not_found(Refusal::RemovedMeanwhile {
                    what: Removed::PositionOfPost,
                });
            }
        },
        store::Content::Question { asked, at_reveal } => {
            Held::Question(asked.clone(), at_reveal.clone())
        }
        store::Content::Words(written) => Held::Words(written.clone()),
    })
}

/// Where an item of content stands in a lesson.
pub(super) fn in_lesson(db: &store::Db<'_>, content: ContentId) -> Done<Option<InLesson>> {
    let Some(kept) = db.in_lesson(content)? else {
        return Ok(None);
    };
    Ok(Some(InLesson {
        lead: serde_json::from_value(kept.lead).map_err(|error| {
            DeskError::damaged(format!("a lesson in it cannot be read ({error})"))
        })?,
        lesson: Some(kept.lesson_id),
        title: kept.title,
        step: kept.step,
        part: kept.part,
        steps: kept.steps,
    }))
}

/// The position of a post that is a problem.
///
/// # Errors
/// When it is none: `wanted` is what a question has not got.
pub(super) fn problem_at(db: &store::Db<'_>, post: &Post, wanted: Lacking) -> Done<Posed> {
    let number = post.number;
    match held(db, post)? {
        Held::Problem(posed) => Ok(*posed),
        Held::Question(..) => bad_request(Refusal::QuestionLacks {
            number,
            what: wanted,
        }),
        Held::Words(_) => bad_request(Refusal::WordsTakeNoAnswers { number }),
    }
}

impl Desk {
    /// Which kind a post of the group is.
    ///
    /// # Errors
    /// When there is no such post.
    pub async fn kind(&self, place: &Place, post: PostId) -> Done<Kind> {
        let place = place.clone();
        self.read(move |db| {
            let group = super::handle::group_at(db, &place)?;
            Ok(Kind::of(&super::handle::post_of(db, &group, post)?.content))
        })
        .await
    }

    /// What a post holds, drawn in the group's style.
    pub(super) async fn content_sheet(&self, held: &Held, settings: &Settings) -> Done<Content> {
        Ok(match held {
            Held::Problem(posed) => Content::Problem {
                stipulation: posed.task,
                side: shakmaty::Position::turn(&posed.board).into(),
                words: posed.position.words.with_post.clone(),
                picture: self.draw_plain(posed.board.clone(), settings).await?,
            },
            Held::Question(written, _) => {
                Content::Question(self.written_sheet(written, settings).await?)
            }
            Held::Words(written) => Content::Words(self.written_sheet(written, settings).await?),
        })
    }

    async fn written_sheet(&self, written: &Written, settings: &Settings) -> Done<WrittenSheet> {
        let picture = match written.fen.as_deref().and_then(drawing::board_of) {
            Some(board) => Some(self.draw_plain(board, settings).await?),
            None => None,
        };
        Ok(WrittenSheet {
            words: written.words.clone(),
            picture,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_label_is_one_line() {
        assert_eq!(beginning("What\n  now?"), "What now?");
        assert_eq!(beginning(&"ab ".repeat(40)).chars().count(), 40);
    }
}
