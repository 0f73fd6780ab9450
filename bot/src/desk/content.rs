//! What a post holds: a problem (a position with its task), a question (words that members answer in their
//! own), or words alone. Whatever is done with a post goes by this, in a `match` over the three.
//!
//! A problem comes from a position that was checked ([`Desk::enqueue`]). A question and words alone come from a
//! coach's words ([`Desk::enqueue_question`], [`Desk::enqueue_words`]) or a file; they may have a position beside
//! them, which is shown and never proved.

use sealed_move_store::{self as store, NewContent, NewHolds, Position, Post, Written};
use serde::{Deserialize, Serialize};

use super::{
    Desk, ItemId, Person, Picture, Place, PositionId, PostId, PostedBefore, ReplyId, Settings,
    Soundness, drawing,
    error::{Done, bad_request, not_found},
    handle::{coached, coaching},
    problems,
    queue::item_of,
    refusal::{Lacking, Named, Refusal, Removed, When},
    text,
};
use crate::chess::{self, Stipulation, fact::Side, read};
use shakmaty::fen::Fen;

/// The most characters of a question's words, of words alone, and of the words for a question's reveal.
pub const LONGEST_CONTENT: usize = 1_000;

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

    /// What stands for it in a list: a problem's sign, or the name of the kind.
    pub fn sign(&self) -> &str {
        match self {
            Self::Problem { stipulation } => stipulation,
            Self::Question => "question",
            Self::Words => "words",
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

/// What waits in the week.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Queued {
    /// A position with its task.
    Problem {
        /// Id of the position.
        position: PositionId,
        /// FEN.
        fen: String,
        /// The stipulation's sign.
        stipulation: String,
        /// Topics it has besides.
        further_topics: Vec<String>,
        /// Its latest post, where it was posted before.
        #[serde(skip_serializing_if = "Option::is_none")]
        posted: Option<PostedBefore>,
        /// What the check said.
        soundness: Soundness,
        /// Difficulty 1 to 10, where known.
        difficulty: Option<f64>,
    },
    /// What members answer in their own words.
    Question {
        /// What is asked.
        words: String,
        /// FEN of the position beside it.
        fen: Option<String>,
        /// The coach's words for the reveal; may be empty.
        at_reveal: String,
    },
    /// What members read.
    Words {
        /// The words.
        words: String,
        /// FEN of the position beside them.
        fen: Option<String>,
    },
}

impl Queued {
    /// Which kind it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Problem { stipulation, .. } => Kind::Problem {
                stipulation: stipulation.clone(),
            },
            Self::Question { .. } => Kind::Question,
            Self::Words { .. } => Kind::Words,
        }
    }

    /// What tells it apart from others of its kind: a problem's `source`, or the beginning of the words.
    pub fn label(&self, source: &str) -> String {
        match self {
            Self::Problem { .. } => source.to_owned(),
            Self::Question { words, .. } | Self::Words { words, .. } => beginning(words),
        }
    }
}

/// A question, or words alone, as a coach or a file gives them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum NewPostContent {
    /// What members answer in their own words.
    Question {
        /// What is asked.
        words: String,
        /// FEN of a position beside it.
        fen: Option<String>,
        /// Words for the reveal; may be empty.
        at_reveal: String,
    },
    /// What members read.
    Words {
        /// The words.
        words: String,
        /// FEN of a position beside them.
        fen: Option<String>,
    },
}

/// A question, or words alone, of a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct FoundWritten {
    /// The file's own id, or `file:line`.
    pub id: String,
    /// What it is.
    #[serde(flatten)]
    pub content: NewPostContent,
    /// Topic, where the file names one.
    pub topic: Option<String>,
    /// How many positions stand before it in the file, those that cannot be read among them.
    #[serde(skip)]
    pub before: usize,
}

/// One item of a file, in the order of the file.
#[derive(Clone, Debug)]
pub enum InFile<P> {
    /// A position.
    Position(P),
    /// A question, or words alone.
    Written(FoundWritten),
}

/// The positions of a file and what is written between them, as the file has them.
pub fn in_file_order<P>(positions: Vec<P>, written: Vec<FoundWritten>) -> Vec<InFile<P>> {
    let mut all = Vec::with_capacity(positions.len() + written.len());
    let mut written = written.into_iter().peekable();
    for (before, position) in positions.into_iter().enumerate() {
        while let Some(found) = written.next_if(|found| found.before <= before) {
            all.push(InFile::Written(found));
        }
        all.push(InFile::Position(position));
    }
    all.extend(written.map(InFile::Written));
    all
}

impl FoundWritten {
    /// What stands in a file behind so many positions, where it is no problem.
    pub fn of(item: read::Item, before: usize) -> Option<Self> {
        let fen = |position: Option<shakmaty::Chess>| {
            position
                .map(|board| Fen::from_position(&board, shakmaty::EnPassantMode::Legal).to_string())
        };
        Some(match item {
            read::Item::Problem(_) => return None,
            read::Item::Question(written) => Self {
                id: written.id,
                topic: written.topic,
                before,
                content: NewPostContent::Question {
                    words: written.words,
                    fen: fen(written.position),
                    at_reveal: written.at_reveal,
                },
            },
            read::Item::Words(written) => Self {
                id: written.id,
                topic: written.topic,
                before,
                content: NewPostContent::Words {
                    words: written.words,
                    fen: fen(written.position),
                },
            },
        })
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
pub(super) enum Held {
    /// A position with its task.
    Problem(Box<Position>),
    /// What is asked, and the words for the reveal.
    Question(Written, String),
    /// What is said.
    Words(Written),
}

/// What a post holds.
pub(super) fn held(db: &store::Db<'_>, post: &Post) -> Done<Held> {
    Ok(match &post.content {
        store::Content::Problem { position_id, .. } => match db.position(*position_id)? {
            Some(position) => Held::Problem(Box::new(position)),
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

/// The position of a post that is a problem.
///
/// # Errors
/// When it is none: `wanted` is what a question has not got.
pub(super) fn problem_at(db: &store::Db<'_>, post: &Post, wanted: Lacking) -> Done<Position> {
    let number = post.number;
    match held(db, post)? {
        Held::Problem(position) => Ok(*position),
        Held::Question(..) => bad_request(Refusal::QuestionLacks {
            number,
            what: wanted,
        }),
        Held::Words(_) => bad_request(Refusal::WordsTakeNoAnswers { number }),
    }
}

impl Desk {
    /// Puts a question at the end of the queue and returns the queue entry's id. Coaches only.
    ///
    /// # Errors
    /// When there are no words or too many, or the position beside them is not legal.
    pub async fn enqueue_question(
        &self,
        place: &Place,
        coach: &Person,
        words: &str,
        fen: Option<&str>,
        topic: Option<&str>,
        at_reveal: &str,
    ) -> Done<ItemId> {
        let new = NewPostContent::Question {
            words: words.to_owned(),
            fen: fen.map(str::to_owned),
            at_reveal: at_reveal.to_owned(),
        };
        self.enqueue_written(place, coach, &new, topic, "").await
    }

    /// Puts words alone at the end of the queue and returns the queue entry's id. Coaches only.
    ///
    /// # Errors
    /// As [`Desk::enqueue_question`].
    pub async fn enqueue_words(
        &self,
        place: &Place,
        coach: &Person,
        words: &str,
        fen: Option<&str>,
        topic: Option<&str>,
    ) -> Done<ItemId> {
        let new = NewPostContent::Words {
            words: words.to_owned(),
            fen: fen.map(str::to_owned),
        };
        self.enqueue_written(place, coach, &new, topic, "").await
    }

    /// Puts a question or words at the end of the queue; `source` says where in a file they stood.
    pub(super) async fn enqueue_written(
        &self,
        place: &Place,
        coach: &Person,
        new: &NewPostContent,
        topic: Option<&str>,
        source: &str,
    ) -> Done<ItemId> {
        let holds = checked(new)?;
        let topic = topic
            .filter(|topic| !topic.trim().is_empty())
            .map(|topic| text::title(topic, Named::Topic, 80))
            .transpose()?;
        let now = self.now();
        let (place, coach, source) = (place.clone(), coach.clone(), source.to_owned());
        self.write(move |tx| {
            let group = coached(tx, &place, &coach)?;
            let topic_id = match topic {
                Some(topic) => Some(tx.ensure_topic(group.id, &topic)?),
                None => None,
            };
            let content = tx.insert_content(&NewContent {
                group_id: group.id,
                topic_id,
                source,
                holds,
                created_at: now,
            })?;
            Ok(tx.enqueue_content(content, now)?)
        })
        .await
    }

    /// Sets the topic of a queue entry, whatever it holds; `None` takes it away. Coaches only.
    ///
    /// # Errors
    /// When it waits no longer.
    pub async fn set_item_topic(
        &self,
        place: &Place,
        coach: &Person,
        item: ItemId,
        topic: Option<&str>,
    ) -> Done<()> {
        let topic = topic
            .map(|topic| text::title(topic, Named::Topic, 80))
            .transpose()?;
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
            let (group, _) = coaching(tx, &place, &coach)?;
            let item = item_of(tx, &group, item)?;
            let topic = match topic {
                Some(topic) => Some(tx.ensure_topic(group.id, &topic)?),
                None => None,
            };
            match item.holds {
                store::Waits::Problem(problem) => {
                    tx.set_position_topic(problem.position_id, topic)?;
                }
                store::Waits::Question { .. } | store::Waits::Words(_) => {
                    tx.set_content_topic(item.content_id, topic)?;
                }
            }
            Ok(())
        })
        .await
    }

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

    /// Gives an answer to a question the coach's mark: points, 0 to 5, and words to its member, which may be
    /// empty. An earlier mark gives way. Coaches only.
    ///
    /// # Errors
    /// When the reply is to a problem, which is judged.
    pub async fn mark_answer(
        &self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        points: f64,
        words: &str,
    ) -> Done<()> {
        self.rule(
            place,
            coach,
            reply,
            super::by_hand::Given::Mark,
            points,
            words,
        )
        .await
    }

    /// What a post holds, drawn in the group's style.
    pub(super) async fn content_sheet(&self, held: &Held, settings: &Settings) -> Done<Content> {
        Ok(match held {
            Held::Problem(position) => {
                let (board, task) = problems::parse(&position.fen, &position.stipulation)?;
                let turn = shakmaty::Position::turn(&board);
                Content::Problem {
                    stipulation: task,
                    side: turn.into(),
                    words: position.words.with_post.clone(),
                    picture: self.draw_plain(board, settings).await?,
                }
            }
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

/// Made harmless, bounded, and with a position that can be set up.
fn checked(new: &NewPostContent) -> Done<NewHolds> {
    let bounded = |raw: &str, when: When| match text::body(raw, LONGEST_CONTENT) {
        (words, false) => Ok(words),
        (_, true) => bad_request(Refusal::WordsTooLong {
            when,
            most: LONGEST_CONTENT.into(),
        }),
    };
    let written = |words: &str, fen: &Option<String>| {
        let words = bounded(words, When::Post)?;
        if words.is_empty() {
            return bad_request(Refusal::WordsWanted);
        }
        Ok(Written {
            words,
            fen: legal(fen.as_deref())?,
        })
    };
    Ok(match new {
        NewPostContent::Question {
            words,
            fen,
            at_reveal,
        } => NewHolds::Question {
            asked: written(words, fen)?,
            at_reveal: bounded(at_reveal, When::Reveal)?,
        },
        NewPostContent::Words { words, fen } => NewHolds::Words(written(words, fen)?),
    })
}

/// A legal position's FEN as it is kept.
fn legal(fen: Option<&str>) -> Done<Option<String>> {
    let Some(fen) = fen.map(str::trim).filter(|fen| !fen.is_empty()) else {
        return Ok(None);
    };
    match chess::parse_fen(fen) {
        Ok(read) => {
            let setup = Fen::from_position(&read.position, shakmaty::EnPassantMode::Legal);
            Ok(Some(setup.to_string()))
        }
        Err(why) => bad_request(Refusal::CannotBeSetUp { why }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_bounded_and_positions_legal() {
        let question = |words: &str, fen: Option<&str>| {
            checked(&NewPostContent::Question {
                words: words.into(),
                fen: fen.map(str::to_owned),
                at_reveal: String::new(),
            })
        };
        assert!(question("  \u{200b}\n", None).is_err());
        assert!(question(&"x".repeat(1_001), None).is_err());
        assert!(question("Why?", Some("8/8/8/8/8/8/8/8 w - - 0 1")).is_err());
        let initial = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
        for (fen, kept) in [
            (None, None),
            (Some(" "), None),
            (Some(initial), Some(initial)),
        ] {
            match question(" Why? ", fen).expect("fit") {
                NewHolds::Question { asked, .. } => {
                    assert_eq!((asked.words.as_str(), asked.fen.as_deref()), ("Why?", kept));
                }
                NewHolds::Words(_) => panic!("a question"),
            }
        }
    }

    #[test]
    fn a_file_keeps_its_order() {
        let found = |before| FoundWritten {
            id: format!("after {before}"),
            content: NewPostContent::Words {
                words: "Read.".into(),
                fen: None,
            },
            topic: None,
            before,
        };
        let order: Vec<String> = in_file_order(vec!["a", "b"], [0, 1, 1, 2].map(found).into())
            .into_iter()
            .map(|item| match item {
                InFile::Position(name) => name.to_owned(),
                InFile::Written(found) => found.id,
            })
            .collect();
        assert_eq!(
            order,
            ["after 0", "a", "after 1", "after 1", "b", "after 2"]
        );
    }

    #[test]
    fn a_label_is_one_line() {
        assert_eq!(beginning("What\n  now?"), "What now?");
        assert_eq!(beginning(&"ab ".repeat(40)).chars().count(), 40);
    }
}
