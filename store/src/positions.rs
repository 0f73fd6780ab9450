//! Positions with what was checked, how deep and with what.

use rusqlite::{Row, params};
use serde_json::Value;

use crate::{
    Db, GroupId, LessonId, Moment, PositionId, Soundness, StoreError, TopicId, Tx, db::json, time,
};

/// What a check found.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// In a word.
    pub soundness: Soundness,
    /// In full, as the checker wrote it.
    pub report: Value,
    /// Version of the checker; an older one asks for a new check.
    pub checker_version: i64,
    /// When.
    pub checked_at: Moment,
}

/// A position as the coach's file gave it, with best moves and variations.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Given {
    /// Its part of the file; empty where that is not known.
    pub text: String,
    /// The line of the file on which it begins, from 1.
    pub line: i64,
}

/// The coach's words on a position.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Words {
    /// Shown with the post.
    pub with_post: String,
    /// Shown at the reveal.
    pub at_reveal: String,
    /// Shown at the reveal beside the moves they are on: a list, whatever its items are.
    pub notes: Value,
}

impl Default for Words {
    fn default() -> Self {
        Self {
            with_post: String::new(),
            at_reveal: String::new(),
            notes: Value::Array(Vec::new()),
        }
    }
}

/// A post of a position.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Posted {
    /// Its number within the group.
    pub number: i64,
    /// When it was put before the group, or meant to be.
    pub at: Moment,
}

/// A position to be kept.
#[derive(Clone, Debug, PartialEq)]
pub struct NewPosition {
    /// The group.
    pub group_id: GroupId,
    /// Its topic.
    pub topic_id: Option<TopicId>,
    /// File and id as the coach gave them.
    pub source: String,
    /// FEN.
    pub fen: String,
    /// The stipulation's sign.
    pub stipulation: String,
    /// The coach's words.
    pub words: Words,
    /// What the coach gave.
    pub given: Given,
    /// What the check found.
    pub check: Check,
    /// Now.
    pub created_at: Moment,
}

/// A position.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// Its id.
    pub id: PositionId,
    /// The group.
    pub group_id: GroupId,
    /// Its topic's id.
    pub topic_id: Option<TopicId>,
    /// Its topic's name.
    pub topic: Option<String>,
    /// Names of the topics it has besides, which are shown and not counted.
    pub further_topics: Vec<String>,
    /// File and id as the coach gave them.
    pub source: String,
    /// FEN.
    pub fen: String,
    /// The stipulation's sign.
    pub stipulation: String,
    /// The coach's words.
    pub words: Words,
    /// What the coach gave.
    pub given: Given,
    /// What the check found.
    pub check: Check,
    /// Whether the coach said: post it anyway.
    pub anyway: bool,
    /// When it was first kept.
    pub created_at: Moment,
}

const SELECT: &str = "SELECT p.*, t.name AS topic,
        (SELECT json_group_array(name) FROM (
            SELECT name FROM further_topics f JOIN topics ON topics.id = f.topic_id
            WHERE f.position_id = p.id ORDER BY name)) AS further
     FROM positions p LEFT JOIN topics t ON t.id = p.topic_id";

fn read(row: &Row<'_>) -> rusqlite::Result<Position> {
    Ok(Position {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        topic_id: row.get("topic_id")?,
        topic: row.get("topic")?,
        further_topics: json(row, "further")?,
        source: row.get("source")?,
        fen: row.get("fen")?,
        stipulation: row.get("stipulation")?,
        words: Words {
            with_post: row.get("post_words")?,
            at_reveal: row.get("comment")?,
            notes: json(row, "notes")?,
        },
        given: Given {
            text: row.get("given")?,
            line: row.get("given_line")?,
        },
        check: Check {
            soundness: row.get("soundness")?,
            report: json(row, "report")?,
            checker_version: row.get("checker_version")?,
            checked_at: time::get(row, "checked_at")?,
        },
        anyway: row.get("anyway")?,
        created_at: time::get(row, "created_at")?,
    })
}

impl Db<'_> {
    /// A position by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn position(&self, id: PositionId) -> Result<Option<Position>, StoreError> {
        self.maybe_one(&format!("{SELECT} WHERE p.id = ?1"), [id], read)
    }

    /// A group's positions, the latest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn positions(&self, group: GroupId) -> Result<Vec<Position>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE p.group_id = ?1 ORDER BY p.id DESC"),
            [group],
            read,
        )
    }

    /// A group's positions whose FEN begins with `placement` (board, side to move, castling, en
    /// passant), whatever their counters and tasks, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn positions_of_placement(
        &self,
        group: GroupId,
        placement: &str,
    ) -> Result<Vec<Position>, StoreError> {
        // What begins with the placement and goes on with a space, or ends there: '!' is next to the space.
        self.all(
            &format!(
                "{SELECT} WHERE p.group_id = ?1 AND p.fen >= ?2 AND p.fen < ?2 || '!'
                 ORDER BY p.id"
            ),
            params![group, placement],
            read,
        )
    }

    /// The lesson that a position is a stop of, with the step; of several the latest.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lesson_of_position(
        &self,
        position: PositionId,
    ) -> Result<Option<(LessonId, i64)>, StoreError> {
        self.maybe_one(
            "SELECT l.lesson_id, l.step FROM lesson_parts l JOIN contents c ON c.id = l.content_id
             WHERE c.position_id = ?1 ORDER BY l.lesson_id DESC, l.step LIMIT 1",
            [position],
            |row| Ok((row.get(0)?, row.get(1)?)),
        )
    }

    /// The number of the latest post that a position itself went out with; those on their way count.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn own_post(&self, position: PositionId) -> Result<Option<i64>, StoreError> {
        self.maybe_one(
            "SELECT o.number FROM posts o JOIN contents c ON c.id = o.content_id
             WHERE c.position_id = ?1 ORDER BY o.number DESC LIMIT 1",
            [position],
            |row| row.get(0),
        )
    }

    /// The latest post of a placement in a group, whatever the task was; those still on their way count.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn last_posted(
        &self,
        group: GroupId,
        placement: &str,
    ) -> Result<Option<Posted>, StoreError> {
        self.maybe_one(
            "SELECT o.number, coalesce(o.opened_at, o.intended_at) AS at
             FROM posts o JOIN contents c ON c.id = o.content_id JOIN positions p ON p.id = c.position_id
             WHERE p.group_id = ?1 AND p.fen >= ?2 AND p.fen < ?2 || '!'
             ORDER BY o.number DESC LIMIT 1",
            params![group, placement],
            |row| {
                Ok(Posted {
                    number: row.get("number")?,
                    at: time::get(row, "at")?,
                })
            },
        )
    }

    /// Whether a position was ever posted.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn was_posted(&self, position: PositionId) -> Result<bool, StoreError> {
        Ok(self
            .maybe_one(
                "SELECT 1 FROM posts o JOIN contents c ON c.id = o.content_id WHERE c.position_id = ?1 LIMIT 1",
                [position],
                |_| Ok(()),
            )?
            .is_some())
    }
}

impl Tx<'_> {
    /// Keeps a position and returns its id. The same placement and stipulation in the same group is the
    /// same position: its source, text, check, and (where the new one has them) topic and words are replaced;
    /// whoever calls has asked first.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn upsert_position(&self, new: &NewPosition) -> Result<PositionId, StoreError> {
        let mut statement = self.sql.prepare_cached(
            "INSERT INTO positions (group_id, topic_id, source, fen, stipulation, comment, soundness,
                                    report, checker_version, checked_at, created_at, given, given_line,
                                    post_words, notes)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)
             ON CONFLICT (group_id, fen, stipulation) DO UPDATE SET
                 topic_id = coalesce(excluded.topic_id, topic_id),
                 source = excluded.source,
                 comment = iif(excluded.comment || excluded.post_words || excluded.notes = '[]',
                               comment, excluded.comment),
                 post_words = iif(excluded.comment || excluded.post_words || excluded.notes = '[]',
                                  post_words, excluded.post_words),
                 notes = iif(excluded.comment || excluded.post_words || excluded.notes = '[]',
                             notes, excluded.notes),
                 given = excluded.given,
                 given_line = excluded.given_line,
                 soundness = excluded.soundness,
                 report = excluded.report,
                 checker_version = excluded.checker_version,
                 checked_at = excluded.checked_at
             RETURNING id",
        )?;
        Ok(statement.query_row(
            params![
                new.group_id,
                new.topic_id,
                new.source,
                new.fen,
                new.stipulation,
                new.words.at_reveal,
                new.check.soundness,
                new.check.report.to_string(),
                new.check.checker_version,
                time::text(new.check.checked_at),
                time::text(new.created_at),
                new.given.text,
                new.given.line,
                new.words.with_post,
                new.words.notes.to_string()
            ],
            |row| row.get(0),
        )?)
    }

    /// Gives a kept position what another file says of it: source, text and check. Topic and words
    /// are set apart.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn renew_position(
        &self,
        position: PositionId,
        source: &str,
        given: &Given,
    ) -> Result<(), StoreError> {
        self.run_one(
            "position",
            position,
            "UPDATE positions SET source = ?2, given = ?3, given_line = ?4 WHERE id = ?1",
            params![position, source, given.text, given.line],
        )
    }

    /// Makes a position another one: placement, task, and what was given of it. Topic, words and check are set
    /// apart, and a coach's word to post it anyway, which was said of the old one, is gone.
    ///
    /// # Errors
    /// When there is no such row, the group has another position of that placement and task, or the store cannot
    /// be written.
    pub fn change_position(
        &self,
        position: PositionId,
        fen: &str,
        stipulation: &str,
        given: &Given,
    ) -> Result<(), StoreError> {
        self.run_one(
            "position",
            position,
            "UPDATE positions SET fen = ?2, stipulation = ?3, given = ?4, given_line = ?5, anyway = 0
             WHERE id = ?1",
            params![position, fen, stipulation, given.text, given.line],
        )
    }

    /// Replaces the coach's words on a position.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_position_words(
        &self,
        position: PositionId,
        words: &Words,
    ) -> Result<(), StoreError> {
        self.run_one(
            "position",
            position,
            "UPDATE positions SET post_words = ?2, comment = ?3, notes = ?4 WHERE id = ?1",
            params![
                position,
                words.with_post,
                words.at_reveal,
                words.notes.to_string()
            ],
        )
    }

    /// Gives a position a topic besides the one it has; one that it has already is no other.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn add_further_topic(
        &self,
        position: PositionId,
        topic: TopicId,
    ) -> Result<(), StoreError> {
        self.sql.execute(
            "INSERT OR IGNORE INTO further_topics (position_id, topic_id)
             SELECT id, ?2 FROM positions WHERE id = ?1 AND topic_id IS NOT ?2",
            params![position, topic],
        )?;
        Ok(())
    }

    /// Replaces what the check found.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn replace_check(&self, position: PositionId, check: &Check) -> Result<(), StoreError> {
        self.run_one(
            "position",
            position,
            "UPDATE positions SET soundness = ?2, report = ?3, checker_version = ?4, checked_at = ?5
             WHERE id = ?1",
            params![
                position,
                check.soundness,
                check.report.to_string(),
                check.checker_version,
                time::text(check.checked_at)
            ],
        )
    }

    /// Sets or takes away a position's topic, the one that is counted.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_position_topic(
        &self,
        position: PositionId,
        topic: Option<TopicId>,
    ) -> Result<(), StoreError> {
        self.sql.execute(
            "DELETE FROM further_topics WHERE position_id = ?1 AND topic_id = ?2",
            params![position, topic],
        )?;
        self.run_one(
            "position",
            position,
            "UPDATE positions SET topic_id = ?2 WHERE id = ?1",
            params![position, topic],
        )
    }

    /// Notes that the coach said: post it anyway (or took that back).
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_position_anyway(
        &self,
        position: PositionId,
        anyway: bool,
    ) -> Result<(), StoreError> {
        self.run_one(
            "position",
            position,
            "UPDATE positions SET anyway = ?2 WHERE id = ?1",
            params![position, anyway],
        )
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::fixture::{Fixture, at, new_position, open_post};

    #[test]
    fn a_position_becomes_another_and_leaves_a_word_for_the_old_one_behind() {
        let f = Fixture::new();
        let group = f.group;
        let given = Given {
            text: "8/8/8/8/8/5k2/5p2/5K2 w - -".into(),
            line: 1,
        };
        let (id, other) = f.write(move |tx| {
            let id = tx.upsert_position(&new_position(group, 1))?;
            tx.set_position_anyway(id, true)?;
            Ok((id, tx.upsert_position(&new_position(group, 2))?))
        });
        let new = given.clone();
        f.write(move |tx| tx.change_position(id, "8/8/8/8/8/5k2/5p2/5K2 w - - 0 1", "=", &new));
        let now = f.read(move |db| db.position(id)).unwrap();
        assert_eq!((now.stipulation.as_str(), &now.given), ("=", &given));
        assert!(!now.anyway, "said of the old one");
        assert_eq!(f.read(move |db| db.own_post(id)), None);
        assert_eq!(f.read(move |db| db.lesson_of_position(id)), None);
        let twice = f.store.write_blocking(move |tx| {
            tx.change_position(other, "8/8/8/8/8/5k2/5p2/5K2 w - - 0 1", "=", &given)
        });
        assert!(twice.unwrap_err().to_string().contains("UNIQUE"));
    }

    #[test]
    fn a_position_comes_back_as_it_was_written() {
        let f = Fixture::new();
        let group = f.group;
        let mut new = new_position(group, 1);
        new.words = Words {
            with_post: "Look at the back rank.".into(),
            at_reveal: "Deflect, then mate.".into(),
            notes: json!([{ "moves": "1.Rxd8+", "after": "a rook for a rook" }]),
        };
        new.check.report = json!({ "keys": ["Rxd8+"], "nodes": 37 });
        let id = f.write({
            let mut new = new.clone();
            move |tx| {
                new.topic_id = Some(tx.ensure_topic(group, "Back rank")?);
                tx.upsert_position(&new)
            }
        });
        let kept = f.read(move |db| db.position(id)).unwrap();
        assert_eq!(
            (&kept.fen, &kept.check, &kept.words),
            (&new.fen, &new.check, &new.words)
        );
        assert_eq!(kept.topic.as_deref(), Some("Back rank"));
        assert!(!kept.anyway);
    }

    #[test]
    fn the_same_placement_and_task_is_the_same_position() {
        let f = Fixture::new();
        let group = f.group;
        let mut new = new_position(group, 1);
        new.words.at_reveal = "first words".into();
        let id = f.write({
            let new = new.clone();
            move |tx| {
                let id = tx.upsert_position(&new)?;
                let topic = tx.ensure_topic(group, "Back rank")?;
                tx.set_position_topic(id, Some(topic))?;
                tx.set_position_anyway(id, true)?;
                Ok(id)
            }
        });
        new.words = Words::default();
        new.source = "again.epd:9".into();
        new.check.soundness = Soundness::SeveralKeys;
        let again = f.write({
            let new = new.clone();
            move |tx| tx.upsert_position(&new)
        });
        assert_eq!(id, again);
        let kept = f.read(move |db| db.position(id)).unwrap();
        assert_eq!(kept.source, "again.epd:9");
        assert_eq!(kept.check.soundness, Soundness::SeveralKeys);
        assert_eq!(kept.words.at_reveal, "first words", "no words erase none");
        assert_eq!(kept.topic.as_deref(), Some("Back rank"));
        new.stipulation = "#3".into();
        assert_ne!(id, f.write(move |tx| tx.upsert_position(&new)));
    }

    #[test]
    fn a_check_is_renewed() {
        let f = Fixture::new();
        let group = f.group;
        let id = f.write(move |tx| tx.upsert_position(&new_position(group, 1)));
        let check = Check {
            soundness: Soundness::Unsound,
            report: json!({}),
            checker_version: 2,
            checked_at: at(3),
        };
        f.write({
            let check = check.clone();
            move |tx| tx.replace_check(id, &check)
        });
        assert_eq!(f.read(move |db| db.position(id)).unwrap().check, check);
    }

    #[test]
    fn a_position_knows_whether_it_was_posted() {
        let f = Fixture::new();
        let group = f.group;
        let waiting = f.write(move |tx| tx.upsert_position(&new_position(group, 1)));
        assert!(!f.read(move |db| db.was_posted(waiting)));
        let posted = f.write(move |tx| {
            let post = open_post(tx, group, 2, None, 10)?;
            match tx.post(post)?.unwrap().content {
                crate::Content::Problem { position_id, .. } => Ok(position_id),
                other => panic!("a problem, not {other:?}"),
            }
        });
        assert!(f.read(move |db| db.was_posted(posted)));
    }

    #[test]
    fn a_placement_is_the_same_whatever_its_counters_and_tasks() {
        let f = Fixture::new();
        let group = f.group;
        let with = |fen: &str, task: &str| {
            let mut new = new_position(group, 1);
            (new.fen, new.stipulation) = (fen.into(), task.into());
            f.write(move |tx| tx.upsert_position(&new))
        };
        let ids = [
            with("6k1/8/8/8/8/8/8/R5K1 w - - 0 1", "#1"),
            with("6k1/8/8/8/8/8/8/R5K1 w - - 3 20", "#1"),
            with("6k1/8/8/8/8/8/8/R5K1 w - - 0 1", "+"),
        ];
        with("6K1/8/8/8/8/8/8/R5K1 w - - 0 1", "#1");
        with("6k1/8/8/8/8/8/8/R5K1 b - - 0 1", "#1");
        let placement = "6k1/8/8/8/8/8/8/R5K1 w - -";
        let found = f.read(move |db| db.positions_of_placement(group, placement));
        assert_eq!(found.iter().map(|p| p.id).collect::<Vec<_>>(), ids);
        assert_eq!(f.read(move |db| db.last_posted(group, placement)), None);
        f.write(move |tx| {
            let item = tx.enqueue(ids[1], at(0))?;
            tx.intend_post(&crate::NewPost {
                item,
                nonce: "n".into(),
                slot: at(5),
                closes_at: at(60),
                intended_at: at(5),
                prices: crate::fixture::PRICES,
            })
        });
        let posted = f.read(move |db| db.last_posted(group, placement));
        assert_eq!(
            posted,
            Some(Posted {
                number: 1,
                at: at(5)
            })
        );
    }

    #[test]
    fn further_topics_are_others_than_the_first() {
        let f = Fixture::new();
        let group = f.group;
        let id = f.write(move |tx| {
            let id = tx.upsert_position(&new_position(group, 1))?;
            let fork = tx.ensure_topic(group, "Fork")?;
            let pin = tx.ensure_topic(group, "Pin")?;
            tx.set_position_topic(id, Some(fork))?;
            for topic in [fork, pin, pin] {
                tx.add_further_topic(id, topic)?;
            }
            Ok(id)
        });
        let topics = move |f: &Fixture| {
            let kept = f.read(move |db| db.position(id)).unwrap();
            (kept.topic, kept.further_topics)
        };
        assert_eq!(topics(&f), (Some("Fork".into()), vec!["Pin".into()]));
        f.write(move |tx| {
            let pin = tx.ensure_topic(group, "pin")?;
            tx.set_position_topic(id, Some(pin))
        });
        assert_eq!(topics(&f), (Some("Pin".into()), vec![]));
        let foreign = f.write(|tx| {
            let other = tx.insert_group(&crate::fixture::new_group("other"))?;
            tx.ensure_topic(other, "Fork")
        });
        let refused = f
            .store
            .write_blocking(move |tx| tx.add_further_topic(id, foreign));
        assert!(refused.unwrap_err().to_string().contains("another group"));
    }
}
