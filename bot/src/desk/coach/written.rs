//! Questions, and words alone: from a coach's own words or from a file, into the week.

use chrono::{DateTime, Utc};
use sealed_move_store::{CardShown, ContentId, Group, NewContent, NewHolds, Tx, Written};
use serde::Serialize;
use shakmaty::fen::Fen;

use super::{CoachDesk, import::light};
use crate::chess::{
    self,
    read::{self, Item},
};
use crate::desk::{
    ItemId, Person, Place, TopicName,
    error::{Done, bad_request},
    handle::{coached, coaching},
    queue::{item_of, waits_as},
    refusal::{Named, Refusal, When},
    secrets::{Beside, Piece},
    text,
};

/// The most characters of a question's words, of words alone, and of the words for a question's reveal.
pub const LONGEST_CONTENT: usize = 1_000;

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

impl FoundWritten {
    /// What stands in a file behind so many positions, where it is no problem.
    pub fn of(item: Item, before: usize) -> Option<Self> {
        let found = match item {
            Item::Problem(_) => return None,
            Item::Question(written) => Self::question(written),
            Item::Words(written) => Self::words(written),
        };
        Some(Self { before, ..found })
    }

    /// A question of a file.
    pub(super) fn question(written: read::Written) -> Self {
        Self {
            content: NewPostContent::Question {
                fen: fen(written.position.as_ref()),
                words: written.words,
                at_reveal: written.at_reveal,
            },
            id: written.id,
            topic: written.topic,
            before: 0,
        }
    }

    /// Words of a file.
    pub(super) fn words(written: read::Written) -> Self {
        Self {
            content: NewPostContent::Words {
                fen: fen(written.position.as_ref()),
                words: written.words,
            },
            id: written.id,
            topic: written.topic,
            before: 0,
        }
    }
}

fn fen(position: Option<&shakmaty::Chess>) -> Option<String> {
    let setup = |board| Fen::from_position(board, shakmaty::EnPassantMode::Legal).to_string();
    position.map(setup)
}

impl CoachDesk<'_> {
    /// The questions and words of a file, in its order; nothing is kept of them until they are put into the
    /// week ([`CoachDesk::enqueue_found`]). Coaches only.
    ///
    /// # Errors
    /// When the file is too large, or the person does not coach the group.
    pub async fn written_in(
        self,
        place: &Place,
        coach: &Person,
        file: &str,
        bytes: Vec<u8>,
    ) -> Done<Vec<FoundWritten>> {
        let (at, by) = (place.clone(), coach.clone());
        self.desk.read(move |db| coached(db, &at, &by)).await?;
        let file = text::title(file, Named::File, 200)?;
        light(&file, bytes.len())?;
        let limit = self.desk.inner.options.check_seconds;
        let items = self
            .desk
            .inner
            .checks
            .run("reading a file", limit, move |_| {
                read::read_items(&file, &bytes)
            })
            .await?;
        let mut before = 0;
        let mut written = Vec::new();
        for item in items {
            match item {
                Ok(item @ (Item::Question(_) | Item::Words(_))) => {
                    written.extend(FoundWritten::of(item, before));
                }
                Ok(Item::Problem(_)) | Err(_) => before += 1,
            }
        }
        Ok(written)
    }

    /// Puts a question or words of a file at the end of the queue and returns the queue entry's id. Coaches
    /// only.
    ///
    /// # Errors
    /// As [`CoachDesk::enqueue_question`].
    pub async fn enqueue_found(
        self,
        place: &Place,
        coach: &Person,
        found: &FoundWritten,
    ) -> Done<ItemId> {
        let topic = TopicName::filled_in(found.topic.as_deref())?;
        self.enqueue_written(place, coach, &found.content, topic, &found.id, None)
            .await
    }

    /// Puts a question at the end of the queue and returns the queue entry's id. Coaches only.
    ///
    /// # Errors
    /// When there are no words or too many, or the position beside them is not legal.
    pub async fn enqueue_question(
        self,
        place: &Place,
        coach: &Person,
        words: &str,
        fen: Option<&str>,
        topic: Option<TopicName>,
        at_reveal: &str,
    ) -> Done<ItemId> {
        let new = NewPostContent::Question {
            words: words.to_owned(),
            fen: fen.map(str::to_owned),
            at_reveal: at_reveal.to_owned(),
        };
        self.enqueue_written(place, coach, &new, topic, "", None)
            .await
    }

    /// Puts words alone at the end of the queue and returns the queue entry's id. Coaches only.
    ///
    /// # Errors
    /// As [`CoachDesk::enqueue_question`].
    pub async fn enqueue_words(
        self,
        place: &Place,
        coach: &Person,
        words: &str,
        fen: Option<&str>,
        topic: Option<TopicName>,
    ) -> Done<ItemId> {
        let new = NewPostContent::Words {
            words: words.to_owned(),
            fen: fen.map(str::to_owned),
        };
        self.enqueue_written(place, coach, &new, topic, "", None)
            .await
    }

    /// Puts a question or words at the end of the queue; `source` says where in a file they stood, `card` what
    /// they show where they are a topic's card.
    pub(super) async fn enqueue_written(
        self,
        place: &Place,
        coach: &Person,
        new: &NewPostContent,
        topic: Option<TopicName>,
        source: &str,
        card: Option<(CardShown, Piece)>,
    ) -> Done<ItemId> {
        let holds = checked(new)?;
        let now = self.desk.now();
        let (place, coach, source) = (place.clone(), coach.clone(), source.to_owned());
        let (at, by) = (place.clone(), coach.clone());
        let (shown, piece) = match card {
            Some((shown, piece)) => (Some(shown), piece),
            None => (None, shows(&holds)),
        };
        let beside = self
            .desk
            .read(move |db| Beside::of(db, &coached(db, &at, &by)?))
            .await?;
        let tells = self.desk.holds(vec![piece], beside).await?;
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let content = keep(tx, &group, holds, topic, source, now)?;
                if let Some(shown) = &shown {
                    tx.keep_card_shown(content, shown)?;
                }
                for tells in &tells {
                    tells.keep(tx, content)?;
                }
                Ok(tx.enqueue_content(content, now)?)
            })
            .await
    }

    /// Sets the topic of a queue entry, whatever it holds; `None` takes it away. Coaches only.
    ///
    /// # Errors
    /// When it waits no longer.
    pub async fn set_item_topic(
        self,
        place: &Place,
        coach: &Person,
        item: ItemId,
        topic: Option<TopicName>,
    ) -> Done<()> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, _) = coaching(tx, &place, &coach)?;
                let item = item_of(tx, &group, item)?;
                let topic = match topic {
                    Some(topic) => Some(topic.in_group(tx, group.id)?),
                    None => None,
                };
                match waits_as(&item) {
                    Some(position) => tx.set_position_topic(position, topic)?,
                    None => tx.set_content_topic(item.content_id, topic)?,
                }
                Ok(())
            })
            .await
    }
}

/// What a question or words show, as they are to be kept.
fn shows(holds: &NewHolds) -> Piece {
    match holds {
        NewHolds::Question { asked, at_reveal } => Piece::words(asked, at_reveal),
        NewHolds::Words(written) => Piece::words(written, ""),
    }
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

/// Keeps a question or words, with the topic that is made when it is new.
pub(super) fn keep(
    tx: &Tx<'_>,
    group: &Group,
    holds: NewHolds,
    topic: Option<TopicName>,
    source: String,
    now: DateTime<Utc>,
) -> Done<ContentId> {
    let topic_id = match topic {
        Some(topic) => Some(topic.in_group(tx, group.id)?),
        None => None,
    };
    Ok(tx.insert_content(&NewContent {
        group_id: group.id,
        topic_id,
        source,
        holds,
        created_at: now,
    })?)
}

/// Made harmless, bounded, and with a position that can be set up.
pub(super) fn checked(new: &NewPostContent) -> Done<NewHolds> {
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
}
