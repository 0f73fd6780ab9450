//! The queue: items of content waiting in order.

use std::sync::LazyLock;

use rusqlite::{Row, params};

use crate::{
    Content, ContentId, Db, GroupId, ItemId, Moment, PositionId, Soundness, StoreError, Tx,
    Written, content, db::json, time,
};

/// An item waiting, with what a list of the week shows of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Queued {
    /// Id of the queue entry.
    pub id: ItemId,
    /// The group.
    pub group_id: GroupId,
    /// The item of content.
    pub content_id: ContentId,
    /// Place in the order; 0 is first, without gaps.
    pub rank: i64,
    /// When it is due, where the coach fixed that.
    pub due_at: Option<Moment>,
    /// When it was put there.
    pub added_at: Moment,
    /// File and id, where a file gave it; else empty.
    pub source: String,
    /// Its topic's name.
    pub topic: Option<String>,
    /// What it is.
    pub holds: Waits,
}

/// What waits.
#[derive(Clone, Debug, PartialEq)]
pub enum Waits {
    /// A position with its task.
    Problem(Box<QueuedProblem>),
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

/// A position waiting.
#[derive(Clone, Debug, PartialEq)]
pub struct QueuedProblem {
    /// The position.
    pub position_id: PositionId,
    /// Its FEN.
    pub fen: String,
    /// Its stipulation's sign.
    pub stipulation: String,
    /// What the check said.
    pub soundness: Soundness,
    /// The check in full.
    pub report: serde_json::Value,
    /// Version of the checker that said so.
    pub checker_version: i64,
    /// Whether the coach said: post it anyway.
    pub anyway: bool,
}

static SELECT: LazyLock<String> = LazyLock::new(|| select("queue"));

/// What reads the entries of the queue, or of what was taken out of it.
pub(crate) fn select(table: &str) -> String {
    format!(
        "SELECT q.*, {}, coalesce(p.source, c.source) AS source, p.fen, p.soundness, p.report,
             p.checker_version, p.anyway, t.name AS topic
         FROM {table} q JOIN contents c ON c.id = q.content_id {}",
        content::COLUMNS,
        content::JOINS
    )
}

pub(crate) fn read(row: &Row<'_>) -> rusqlite::Result<Queued> {
    Ok(Queued {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        content_id: row.get("content_id")?,
        rank: row.get("rank")?,
        due_at: time::get_maybe(row, "due_at")?,
        added_at: time::get(row, "added_at")?,
        source: row.get("source")?,
        topic: row.get("topic")?,
        holds: match content::read(row)? {
            Content::Problem {
                position_id,
                stipulation,
            } => Waits::Problem(Box::new(problem(row, position_id, stipulation)?)),
            Content::Question { asked, at_reveal } => Waits::Question { asked, at_reveal },
            Content::Words(written) => Waits::Words(written),
        },
    })
}

fn problem(
    row: &Row<'_>,
    position_id: PositionId,
    stipulation: String,
) -> rusqlite::Result<QueuedProblem> {
    Ok(QueuedProblem {
        position_id,
        stipulation,
        fen: row.get("fen")?,
        soundness: row.get("soundness")?,
        report: json(row, "report")?,
        checker_version: row.get("checker_version")?,
        anyway: row.get("anyway")?,
    })
}

impl Db<'_> {
    /// A group's queue in order.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn queue(&self, group: GroupId) -> Result<Vec<Queued>, StoreError> {
        self.all(
            &format!("{} WHERE q.group_id = ?1 ORDER BY q.rank", *SELECT),
            [group],
            read,
        )
    }

    /// A queue entry by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn queued(&self, item: ItemId) -> Result<Option<Queued>, StoreError> {
        self.maybe_one(&format!("{} WHERE q.id = ?1", *SELECT), [item], read)
    }
}

impl Tx<'_> {
    /// Puts a position at the end of its group's queue and returns the entry's id. One that is queued
    /// already keeps its place, and its entry's id is returned.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn enqueue(&self, position: PositionId, now: Moment) -> Result<ItemId, StoreError> {
        self.enqueue_content(self.problem_of(position, now)?, now)
    }

    /// Puts an item of content at the end of its group's queue and returns the entry's id. One that is
    /// queued already keeps its place, and its entry's id is returned.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn enqueue_content(&self, content: ContentId, now: Moment) -> Result<ItemId, StoreError> {
        if let Some(id) = self.maybe_one(
            "SELECT id FROM queue WHERE content_id = ?1",
            [content],
            |row| row.get(0),
        )? {
            return Ok(id);
        }
        let Some((group, _)) = self.content(content)? else {
            return Err(StoreError::NoSuch {
                what: "item of content",
                id: content.get(),
            });
        };
        self.insert(
            "INSERT INTO queue (group_id, content_id, rank, added_at)
             VALUES (?1, ?2, (SELECT count(*) FROM queue WHERE group_id = ?1), ?3)",
            params![group, content, time::text(now)],
        )
    }

    /// Moves an entry to place `to` (0 is first; past the end means the end).
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn move_queued(&self, item: ItemId, to: usize) -> Result<(), StoreError> {
        let group = self.group_of_item(item)?;
        let mut order = self.order(group)?;
        order.retain(|id| *id != item);
        order.insert(to.min(order.len()), item);
        self.rank(group, &order)
    }

    /// Puts other content into an entry's place, with its rank and its time.
    ///
    /// # Errors
    /// When there is no such row, the content waits already, or the store cannot be written.
    pub fn put_in_place(&self, item: ItemId, content: ContentId) -> Result<(), StoreError> {
        self.run_one(
            "queue entry",
            item,
            "UPDATE queue SET content_id = ?2 WHERE id = ?1",
            params![item, content],
        )
    }

    /// Fixes when an entry is due, or frees it.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_due_at(&self, item: ItemId, due_at: Option<Moment>) -> Result<(), StoreError> {
        self.run_one(
            "queue entry",
            item,
            "UPDATE queue SET due_at = ?2 WHERE id = ?1",
            params![item, time::maybe(due_at)],
        )
    }

    /// Takes an entry out of the queue; what it held stays.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn dequeue(&self, item: ItemId) -> Result<(), StoreError> {
        let group = self.group_of_item(item)?;
        self.run("DELETE FROM queue WHERE id = ?1", [item])?;
        let order = self.order(group)?;
        self.rank(group, &order)
    }

    fn group_of_item(&self, item: ItemId) -> Result<GroupId, StoreError> {
        self.maybe_one("SELECT group_id FROM queue WHERE id = ?1", [item], |row| {
            row.get(0)
        })?
        .ok_or(StoreError::NoSuch {
            what: "queue entry",
            id: item.get(),
        })
    }

    fn order(&self, group: GroupId) -> Result<Vec<ItemId>, StoreError> {
        self.all(
            "SELECT id FROM queue WHERE group_id = ?1 ORDER BY rank",
            [group],
            |row| row.get(0),
        )
    }

    /// Numbers the entries 0, 1, 2 … in the order given. Ranks are unique at every moment, so they go
    /// through negative numbers, which no entry has at rest.
    fn rank(&self, group: GroupId, order: &[ItemId]) -> Result<(), StoreError> {
        self.run(
            "UPDATE queue SET rank = -1 - rank WHERE group_id = ?1",
            [group],
        )?;
        for (rank, item) in order.iter().enumerate() {
            self.run(
                "UPDATE queue SET rank = ?2 WHERE id = ?1",
                params![item, i64::try_from(rank).unwrap_or(i64::MAX)],
            )?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, new_group, new_position, queue};

    fn order(f: &Fixture) -> Vec<(i64, ItemId)> {
        let group = f.group;
        f.read(move |db| db.queue(group))
            .into_iter()
            .map(|item| (item.rank, item.id))
            .collect()
    }

    #[test]
    fn entries_keep_dense_ranks_through_moves_and_removals() {
        let f = Fixture::new();
        let group = f.group;
        let ids = f.write(move |tx| queue(tx, group, 5));
        let [a, b, c, d, e] = ids[..] else {
            panic!("five were queued")
        };
        assert_eq!(order(&f), [(0, a), (1, b), (2, c), (3, d), (4, e)]);
        f.write(move |tx| tx.move_queued(e, 0));
        assert_eq!(order(&f), [(0, e), (1, a), (2, b), (3, c), (4, d)]);
        f.write(move |tx| tx.move_queued(a, 3));
        assert_eq!(order(&f), [(0, e), (1, b), (2, c), (3, a), (4, d)]);
        f.write(move |tx| tx.move_queued(b, 99));
        assert_eq!(order(&f), [(0, e), (1, c), (2, a), (3, d), (4, b)]);
        f.write(move |tx| tx.dequeue(c));
        assert_eq!(order(&f), [(0, e), (1, a), (2, d), (3, b)]);
        let last = f.write(move |tx| {
            let position = tx.upsert_position(&new_position(group, 9))?;
            tx.enqueue(position, at(0))
        });
        assert_eq!(order(&f).last(), Some(&(4, last)));
    }

    #[test]
    fn a_position_waits_once() {
        let f = Fixture::new();
        let group = f.group;
        let (first, again) = f.write(move |tx| {
            let position = tx.upsert_position(&new_position(group, 1))?;
            Ok((tx.enqueue(position, at(0))?, tx.enqueue(position, at(1))?))
        });
        assert_eq!(first, again);
        assert_eq!(order(&f).len(), 1);
    }

    #[test]
    fn a_time_is_fixed_and_freed() {
        let f = Fixture::new();
        let group = f.group;
        let item = f.write(move |tx| queue(tx, group, 1))[0];
        f.write(move |tx| tx.set_due_at(item, Some(at(30))));
        assert_eq!(
            f.read(move |db| db.queued(item)).unwrap().due_at,
            Some(at(30))
        );
        f.write(move |tx| tx.set_due_at(item, None));
        assert_eq!(f.read(move |db| db.queued(item)).unwrap().due_at, None);
    }

    #[test]
    fn groups_do_not_mix() {
        let f = Fixture::new();
        let group = f.group;
        let (mine, theirs) = f.write(move |tx| {
            let other = tx.insert_group(&new_group("other"))?;
            Ok((queue(tx, group, 2)?, queue(tx, other, 2)?))
        });
        f.write(move |tx| tx.move_queued(theirs[1], 0));
        assert_eq!(order(&f), [(0, mine[0]), (1, mine[1])]);
        // Not by a slip of ours either: the keys hold entry and content to one group.
        let slip = f.store.write_blocking(move |tx| {
            let position = tx.upsert_position(&new_position(group, 7))?;
            tx.run(
                "INSERT INTO queue (group_id, content_id, rank, added_at)
                 SELECT id, ?1, 50, '' FROM groups WHERE place = 'other'",
                [tx.problem_of(position, at(0))?],
            )
        });
        assert!(matches!(slip, Err(StoreError::Rule(_))), "{slip:?}");
    }
}
