//! Positions with what was checked, how deep and with what.

use rusqlite::{Row, params};
use serde_json::Value;

use crate::{Db, Moment, Soundness, StoreError, Tx, time};

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

/// A position to be kept.
#[derive(Clone, Debug, PartialEq)]
pub struct NewPosition {
    /// The group.
    pub group_id: i64,
    /// Its topic.
    pub topic_id: Option<i64>,
    /// File and id as the coach gave them.
    pub source: String,
    /// FEN.
    pub fen: String,
    /// The stipulation's sign.
    pub stipulation: String,
    /// The coach's words, shown at the reveal.
    pub comment: String,
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
    pub id: i64,
    /// The group.
    pub group_id: i64,
    /// Its topic's id.
    pub topic_id: Option<i64>,
    /// Its topic's name.
    pub topic: Option<String>,
    /// File and id as the coach gave them.
    pub source: String,
    /// FEN.
    pub fen: String,
    /// The stipulation's sign.
    pub stipulation: String,
    /// The coach's words, shown at the reveal.
    pub comment: String,
    /// What the coach gave.
    pub given: Given,
    /// What the check found.
    pub check: Check,
    /// Whether the coach said: post it anyway.
    pub anyway: bool,
    /// When it was first kept.
    pub created_at: Moment,
}

const SELECT: &str =
    "SELECT p.*, t.name AS topic FROM positions p LEFT JOIN topics t ON t.id = p.topic_id";

fn read(row: &Row<'_>) -> rusqlite::Result<Position> {
    let report = row.as_ref().column_index("report")?;
    Ok(Position {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        topic_id: row.get("topic_id")?,
        topic: row.get("topic")?,
        source: row.get("source")?,
        fen: row.get("fen")?,
        stipulation: row.get("stipulation")?,
        comment: row.get("comment")?,
        given: Given {
            text: row.get("given")?,
            line: row.get("given_line")?,
        },
        check: Check {
            soundness: row.get("soundness")?,
            report: serde_json::from_str(row.get_ref(report)?.as_str()?).map_err(|error| {
                rusqlite::Error::FromSqlConversionFailure(
                    report,
                    rusqlite::types::Type::Text,
                    Box::new(error),
                )
            })?,
            checker_version: row.get("checker_version")?,
            checked_at: time::get(row, "checked_at")?,
        },
        anyway: row.get("anyway")?,
        created_at: time::get(row, "created_at")?,
    })
}

impl Db<'_> {
    /// A position by id.
    pub fn position(&self, id: i64) -> Result<Option<Position>, StoreError> {
        self.maybe_one(&format!("{SELECT} WHERE p.id = ?1"), [id], read)
    }

    /// A group's positions, the latest first.
    pub fn positions(&self, group: i64) -> Result<Vec<Position>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE p.group_id = ?1 ORDER BY p.id DESC"),
            [group],
            read,
        )
    }

    /// Positions last checked by another version of the checker, the oldest first.
    pub fn positions_to_check_again(&self, version: i64) -> Result<Vec<Position>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE p.checker_version <> ?1 ORDER BY p.id"),
            [version],
            read,
        )
    }

    /// Whether a position was ever posted.
    pub fn was_posted(&self, position: i64) -> Result<bool, StoreError> {
        Ok(self
            .maybe_one(
                "SELECT 1 FROM posts WHERE position_id = ?1 LIMIT 1",
                [position],
                |_| Ok(()),
            )?
            .is_some())
    }
}

impl Tx<'_> {
    /// Keeps a position and returns its id. The same placement and stipulation in the same group is the
    /// same position: its source, text, check, and (where the new one has them) topic and comment are replaced.
    pub fn upsert_position(&self, new: &NewPosition) -> Result<i64, StoreError> {
        let mut statement = self.sql.prepare_cached(
            "INSERT INTO positions (group_id, topic_id, source, fen, stipulation, comment, soundness,
                                    report, checker_version, checked_at, created_at, given, given_line)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)
             ON CONFLICT (group_id, fen, stipulation) DO UPDATE SET
                 topic_id = coalesce(excluded.topic_id, topic_id),
                 source = excluded.source,
                 comment = CASE excluded.comment WHEN '' THEN comment ELSE excluded.comment END,
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
                new.comment,
                new.check.soundness,
                new.check.report.to_string(),
                new.check.checker_version,
                time::text(new.check.checked_at),
                time::text(new.created_at),
                new.given.text,
                new.given.line
            ],
            |row| row.get(0),
        )?)
    }

    /// Replaces what the check found.
    pub fn replace_check(&self, position: i64, check: &Check) -> Result<(), StoreError> {
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

    /// Sets or takes away a position's topic.
    pub fn set_position_topic(&self, position: i64, topic: Option<i64>) -> Result<(), StoreError> {
        self.run_one(
            "position",
            position,
            "UPDATE positions SET topic_id = ?2 WHERE id = ?1",
            params![position, topic],
        )
    }

    /// Notes that the coach said: post it anyway (or took that back).
    pub fn set_position_anyway(&self, position: i64, anyway: bool) -> Result<(), StoreError> {
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
    fn a_position_comes_back_as_it_was_written() {
        let f = Fixture::new();
        let group = f.group;
        let mut new = new_position(group, 1);
        new.comment = "Deflect, then mate.".into();
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
            (&kept.fen, &kept.check, &kept.comment),
            (&new.fen, &new.check, &new.comment)
        );
        assert_eq!(kept.topic.as_deref(), Some("Back rank"));
        assert!(!kept.anyway);
    }

    #[test]
    fn the_same_placement_and_task_is_the_same_position() {
        let f = Fixture::new();
        let group = f.group;
        let mut new = new_position(group, 1);
        new.comment = "first words".into();
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
        new.comment = String::new();
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
        assert_eq!(kept.comment, "first words", "an empty comment erases none");
        assert_eq!(kept.topic.as_deref(), Some("Back rank"));
        new.stipulation = "#3".into();
        assert_ne!(id, f.write(move |tx| tx.upsert_position(&new)));
    }

    #[test]
    fn those_checked_by_another_version_are_found_and_renewed() {
        let f = Fixture::new();
        let group = f.group;
        let id = f.write(move |tx| tx.upsert_position(&new_position(group, 1)));
        assert_eq!(f.read(|db| db.positions_to_check_again(1)).len(), 0);
        assert_eq!(f.read(|db| db.positions_to_check_again(2)).len(), 1);
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
        assert_eq!(f.read(|db| db.positions_to_check_again(2)).len(), 0);
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
            Ok(tx.post(post)?.unwrap().position_id)
        });
        assert!(f.read(move |db| db.was_posted(posted)));
    }
}
