//! What a queue entry or a post holds: a problem, a question, or words alone.

use rusqlite::{Row, params};

use crate::{ContentId, Db, GroupId, Moment, PositionId, StoreError, TopicId, Tx, time};

/// Words of the coach's, with or without a position beside them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The words; never empty, at most 1,000 characters.
    pub words: String,
    /// FEN of a position to be shown beside them.
    pub fen: Option<String>,
}

/// What an item holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Content {
    /// A position with its task.
    Problem {
        /// The position.
        position_id: PositionId,
        /// Its stipulation's sign.
        stipulation: String,
    },
    /// What members answer in their own words.
    Question {
        /// What is asked.
        asked: Written,
        /// The coach's words for the reveal; may be empty.
        at_reveal: String,
    },
    /// What members read.
    Words(Written),
}

impl Content {
    /// The position, where it is a problem.
    pub fn position(&self) -> Option<PositionId> {
        match self {
            Self::Problem { position_id, .. } => Some(*position_id),
            Self::Question { .. } | Self::Words(_) => None,
        }
    }
}

/// A question, or words alone, to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewContent {
    /// The group.
    pub group_id: GroupId,
    /// Its topic.
    pub topic_id: Option<TopicId>,
    /// File and id, where a file gave it; else empty.
    pub source: String,
    /// What it holds.
    pub holds: NewHolds,
    /// Now.
    pub created_at: Moment,
}

/// What a new item holds. A problem comes from its position by itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NewHolds {
    /// As [`Content::Question`].
    Question {
        /// What is asked.
        asked: Written,
        /// The coach's words for the reveal.
        at_reveal: String,
    },
    /// As [`Content::Words`].
    Words(Written),
}

/// What words show that are a topic's card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CardShown {
    /// The example's moves in SAN, as JSON.
    pub line: serde_json::Value,
    /// Whether the words are a coach's.
    pub by_coach: bool,
}

/// The columns that [`read`] reads, of `contents c` and its position `p`.
pub(crate) const COLUMNS: &str =
    "c.kind, c.position_id, p.stipulation, c.words AS content_words, c.fen AS content_fen,
     c.at_reveal AS content_at_reveal";

/// What goes with [`COLUMNS`]: the position of a problem and the topic of any kind, behind `contents c`.
pub(crate) const JOINS: &str = "LEFT JOIN positions p ON p.id = c.position_id
     LEFT JOIN topics t ON t.id = coalesce(p.topic_id, c.topic_id)";

/// Reads the content that comes along in a row.
pub(crate) fn read(row: &Row<'_>) -> rusqlite::Result<Content> {
    let written = || {
        Ok::<_, rusqlite::Error>(Written {
            words: row.get("content_words")?,
            fen: row.get("content_fen")?,
        })
    };
    let kind = row.get_ref("kind")?;
    Ok(match kind.as_str()? {
        "problem" => Content::Problem {
            position_id: row.get("position_id")?,
            stipulation: row.get("stipulation")?,
        },
        "question" => Content::Question {
            asked: written()?,
            at_reveal: row.get("content_at_reveal")?,
        },
        "words" => Content::Words(written()?),
        other => {
            return Err(rusqlite::Error::FromSqlConversionFailure(
                row.as_ref().column_index("kind")?,
                rusqlite::types::Type::Text,
                format!("unknown kind of content \"{other}\"").into(),
            ));
        }
    })
}

impl Db<'_> {
    /// An item of content by id, with its group.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn content(&self, id: ContentId) -> Result<Option<(GroupId, Content)>, StoreError> {
        self.maybe_one(
            &format!("SELECT c.group_id, {COLUMNS} FROM contents c {JOINS} WHERE c.id = ?1"),
            [id],
            |row| Ok((row.get("group_id")?, read(row)?)),
        )
    }

    /// What words show as a topic's card; `None` where they are none.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn card_shown(&self, content: ContentId) -> Result<Option<CardShown>, StoreError> {
        self.maybe_one(
            "SELECT line, by_coach FROM cards_shown WHERE content_id = ?1",
            [content],
            |row| {
                Ok(CardShown {
                    line: crate::db::json(row, "line")?,
                    by_coach: row.get("by_coach")?,
                })
            },
        )
    }
}

impl Tx<'_> {
    /// Keeps a question, or words alone, and returns the item's id.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_content(&self, new: &NewContent) -> Result<ContentId, StoreError> {
        let (kind, written, at_reveal) = match &new.holds {
            NewHolds::Question { asked, at_reveal } => ("question", asked, at_reveal.as_str()),
            NewHolds::Words(written) => ("words", written, ""),
        };
        self.insert(
            "INSERT INTO contents (group_id, kind, topic_id, source, words, fen, at_reveal, created_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
            params![
                new.group_id,
                kind,
                new.topic_id,
                new.source,
                written.words,
                written.fen,
                at_reveal,
                time::text(new.created_at)
            ],
        )
    }

    /// The item that a kept position is, made one when it is none yet.
    ///
    /// # Errors
    /// When there is no such position, or the store cannot be written.
    pub fn problem_of(&self, position: PositionId, now: Moment) -> Result<ContentId, StoreError> {
        self.run(
            "INSERT INTO contents (group_id, kind, position_id, created_at)
             SELECT group_id, 'problem', id, ?2 FROM positions WHERE id = ?1
             ON CONFLICT (position_id) DO NOTHING",
            params![position, time::text(now)],
        )?;
        self.maybe_one(
            "SELECT id FROM contents WHERE position_id = ?1",
            [position],
            |row| row.get(0),
        )?
        .ok_or(StoreError::NoSuch {
            what: "position",
            id: position.get(),
        })
    }

    /// Sets or takes away the topic of a question or of words alone.
    ///
    /// # Errors
    /// When there is no such row, it is a problem, or the store cannot be written.
    pub fn set_content_topic(
        &self,
        content: ContentId,
        topic: Option<TopicId>,
    ) -> Result<(), StoreError> {
        self.run_one(
            "item of content",
            content,
            "UPDATE contents SET topic_id = ?2 WHERE id = ?1",
            params![content, topic],
        )
    }

    /// Keeps that words are a topic's card, and what they show.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn keep_card_shown(&self, content: ContentId, shown: &CardShown) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO cards_shown (content_id, line, by_coach) VALUES (?1, ?2, ?3)",
            params![content, shown.line.to_string(), shown.by_coach],
        )?;
        Ok(())
    }

    /// Forgets a question, or words alone, that no queue, no post and no lesson holds any more.
    ///
    /// # Errors
    /// When the store cannot be written, or it is held.
    pub fn forget_content(&self, content: ContentId) -> Result<(), StoreError> {
        self.run(
            "DELETE FROM contents WHERE id = ?1 AND kind <> 'problem'
                 AND NOT EXISTS (SELECT 1 FROM queue WHERE content_id = ?1)
                 AND NOT EXISTS (SELECT 1 FROM lesson_parts WHERE content_id = ?1)",
            [content],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        AttemptState, NewPost, Verdict,
        fixture::{Fixture, PRICES, at, attempt, new_group, new_position, new_reply, new_verdict},
    };
    use crate::{MemberId, Points, PostId};

    fn written(words: &str, fen: Option<&str>) -> Written {
        Written {
            words: words.into(),
            fen: fen.map(str::to_owned),
        }
    }

    fn question(group: GroupId, words: &str) -> NewContent {
        NewContent {
            group_id: group,
            topic_id: None,
            source: String::new(),
            holds: NewHolds::Question {
                asked: written(words, Some("placement")),
                at_reveal: "Open files.".into(),
            },
            created_at: at(0),
        }
    }

    fn words(group: GroupId, text: &str) -> NewContent {
        NewContent {
            holds: NewHolds::Words(written(text, None)),
            ..question(group, text)
        }
    }

    /// An open post of something; `n` differs from post to post.
    fn posted(tx: &Tx<'_>, new: &NewContent, n: i64) -> Result<PostId, StoreError> {
        let content = tx.insert_content(new)?;
        let item = tx.enqueue_content(content, at(0))?;
        let post = tx.intend_post(&NewPost {
            item,
            nonce: format!("n{n}"),
            prices: PRICES,
            slot: at(n),
            closes_at: at(n + 60),
            intended_at: at(n),
        })?;
        tx.mark_post_open(post, at(n), None, None)?;
        Ok(post)
    }

    #[test]
    fn each_kind_comes_back_as_it_was_written() {
        let f = Fixture::new();
        let group = f.group;
        let (asked, said, problem, again) = f.write(move |tx| {
            let mut asked = question(group, "What does White want?");
            asked.topic_id = Some(tx.ensure_topic(group, "Plans")?);
            let position = tx.upsert_position(&new_position(group, 1))?;
            Ok((
                tx.insert_content(&asked)?,
                tx.insert_content(&words(group, "No lesson on Monday."))?,
                tx.problem_of(position, at(0))?,
                tx.problem_of(position, at(1))?,
            ))
        });
        assert_eq!(problem, again, "a position is one item");
        let kept = move |id| f.read(move |db| db.content(id)).unwrap();
        assert_eq!(
            kept(asked),
            (
                group,
                Content::Question {
                    asked: written("What does White want?", Some("placement")),
                    at_reveal: "Open files.".into(),
                }
            )
        );
        assert_eq!(
            kept(said).1,
            Content::Words(written("No lesson on Monday.", None))
        );
        assert!(
            matches!(kept(problem).1, Content::Problem { stipulation, .. } if stipulation == "#2")
        );
    }

    #[test]
    fn items_wait_and_are_posted_whatever_they_are() {
        let f = Fixture::new();
        let group = f.group;
        let post = f.write(move |tx| posted(tx, &question(group, "Why?"), 10));
        let found = f.read(move |db| db.post(post)).unwrap();
        assert!(matches!(found.content, Content::Question { .. }));
        let item = f.write(move |tx| {
            let content = tx.insert_content(&words(group, "Hello"))?;
            tx.enqueue_content(content, at(0))
        });
        let waits = f.read(move |db| db.queued(item)).unwrap();
        assert!(matches!(waits.holds, crate::Waits::Words(of) if of.words == "Hello"));
    }

    #[test]
    fn the_schema_keeps_each_kind_to_what_is_its_own() {
        let f = Fixture::new();
        let group = f.group;
        let (asked, said, ana) = f.write(move |tx| {
            Ok((
                posted(tx, &question(group, "Why?"), 10)?,
                posted(tx, &words(group, "Hello"), 20)?,
                tx.upsert_member(group, "u1", "Ana", at(0))?,
            ))
        });
        let refused = |what: Result<(), StoreError>, why: &str| {
            let error = what.unwrap_err().to_string();
            assert!(error.contains(why), "{error}");
        };
        type Work = fn(&Tx<'_>, (GroupId, PostId, PostId, MemberId)) -> Result<(), StoreError>;
        let write = |f: &Fixture, work: Work| {
            f.store
                .write_blocking(move |tx| work(tx, (group, asked, said, ana)))
        };
        // A question has words, and so have words alone.
        for empty in ["", "  "] {
            refused(
                f.store
                    .write_blocking(move |tx| tx.insert_content(&question(group, empty)).map(drop)),
                "CHECK",
            );
        }
        let long = "x".repeat(1_001);
        refused(
            f.store
                .write_blocking(move |tx| tx.insert_content(&words(group, &long)).map(drop)),
            "CHECK",
        );
        // A problem has a position of its group.
        refused(
            write(&f, |tx, (group, ..)| {
                tx.run(
                    "INSERT INTO contents (group_id, kind, created_at) VALUES (?1, 'problem', '2026-03-02T12:00:00Z')",
                    [group],
                )
                .map(drop)
            }),
            "CHECK",
        );
        refused(
            write(&f, |tx, _| {
                tx.run("UPDATE contents SET kind = 'words', at_reveal = ''", [])
                    .map(drop)
            }),
            "does not change",
        );
        // Words alone take no replies.
        refused(
            write(&f, |tx, (_, _, said, ana)| {
                tx.insert_reply(&new_reply(said, ana, None, "Thanks"))
                    .map(drop)
            }),
            "takes no replies",
        );
        refused(
            write(&f, |tx, (_, _, said, ana)| {
                tx.upsert_attempt(&attempt(said, ana, AttemptState::Playing, 0.0))
            }),
            "nobody takes part",
        );
        // A question has no hints, is not solved, and is marked by a coach.
        refused(
            write(&f, |tx, (_, asked, _, ana)| {
                tx.next_hint(asked, ana, 0, 3, at(8)).map(drop)
            }),
            "only a problem has hints",
        );
        refused(
            write(&f, |tx, (_, asked, _, ana)| {
                tx.upsert_attempt(&attempt(asked, ana, AttemptState::Solved, 5.0))
            }),
            "only a problem is solved",
        );
        refused(
            write(&f, |tx, (_, asked, _, ana)| {
                let reply = tx.insert_reply(&new_reply(asked, ana, None, "Space"))?.id;
                tx.insert_verdict(&new_verdict(reply, Verdict::Wrong, "e4"))
                    .map(drop)
            }),
            "is marked",
        );
        refused(
            write(&f, |tx, (_, asked, _, ana)| {
                let reply = tx.insert_reply(&new_reply(asked, ana, None, "Space"))?.id;
                tx.insert_verdict(&new_verdict(reply, Verdict::Marked, "e4"))
                    .map(drop)
            }),
            "CHECK",
        );
        f.write(move |tx| {
            let reply = tx.insert_reply(&new_reply(asked, ana, None, "Space"))?.id;
            let mut marked = new_verdict(reply, Verdict::Marked, "e4");
            (marked.by_coach, marked.points) = (true, Points::of(2.5));
            tx.insert_verdict(&marked)?;
            tx.upsert_attempt(&attempt(asked, ana, AttemptState::Playing, 2.5))
        });
        // A topic is one of the same group.
        let foreign = f.write(|tx| {
            let other = tx.insert_group(&new_group("other"))?;
            tx.ensure_topic(other, "Plans")
        });
        refused(
            f.store.write_blocking(move |tx| {
                let mut new = question(group, "Why?");
                new.topic_id = Some(foreign);
                tx.insert_content(&new).map(drop)
            }),
            "another group",
        );
    }
}
