//! What was taken out of the queue, with where it stood, so that it can be put back.

use rusqlite::params;

use crate::{
    ContentId, Db, GroupId, ItemId, Moment, Queued, StoreError, TakenOutId, Tx, queue, time,
};

/// What was taken out of a group's queue and is not in it again.
#[derive(Clone, Debug, PartialEq)]
pub struct TakenOut {
    /// By which it is put back.
    pub id: TakenOutId,
    /// When it was taken out.
    pub taken_at: Moment,
    /// What waited, with the place and the moment that it had. Its id is none of the queue any more.
    pub was: Queued,
}

/// How much of each group is remembered.
const REMEMBERED: u32 = 20;

impl Db<'_> {
    /// What was taken out of a group's queue, the latest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn taken_out(&self, group: GroupId) -> Result<Vec<TakenOut>, StoreError> {
        self.all(
            &format!(
                "{} WHERE q.group_id = ?1 ORDER BY q.id DESC",
                queue::select("taken_out")
            ),
            [group],
            |row| {
                Ok(TakenOut {
                    id: row.get("id")?,
                    taken_at: time::get(row, "taken_at")?,
                    was: queue::read(row)?,
                })
            },
        )
    }
}

impl Tx<'_> {
    /// Takes an entry out of the queue and remembers where it stood. Of what was taken out long before, words
    /// that nothing holds are forgotten.
    ///
    /// # Errors
    /// When there is no such entry, or the store cannot be written.
    pub fn take_out(&self, item: ItemId, now: Moment) -> Result<TakenOutId, StoreError> {
        let Some(queued) = self.queued(item)? else {
            return Err(StoreError::NoSuch {
                what: "queue entry",
                id: item.get(),
            });
        };
        let taken = self.insert(
            "INSERT INTO taken_out (group_id, content_id, rank, due_at, added_at, taken_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            params![
                queued.group_id,
                queued.content_id,
                queued.rank,
                time::maybe(queued.due_at),
                time::text(queued.added_at),
                time::text(now)
            ],
        )?;
        self.dequeue(item)?;
        self.forget_older(queued.group_id)?;
        Ok(taken)
    }

    /// Puts what was taken out back at its place, or at the end of a queue that has become shorter, with the
    /// moment `due_at`, and returns the new entry's id.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn put_back(&self, taken: &TakenOut, due_at: Option<Moment>) -> Result<ItemId, StoreError> {
        let item = self.enqueue_content(taken.was.content_id, taken.was.added_at)?;
        self.move_queued(item, usize::try_from(taken.was.rank).unwrap_or(0))?;
        self.set_due_at(item, due_at)?;
        Ok(item)
    }

    fn forget_older(&self, group: GroupId) -> Result<(), StoreError> {
        let older: Vec<(TakenOutId, ContentId)> = self.all(
            "SELECT id, content_id FROM taken_out WHERE group_id = ?1 ORDER BY id DESC LIMIT -1 OFFSET ?2",
            params![group, REMEMBERED],
            |row| Ok((row.get(0)?, row.get(1)?)),
        )?;
        for (id, content) in older {
            self.run("DELETE FROM taken_out WHERE id = ?1", [id])?;
            let posted = self.maybe_one(
                "SELECT 1 FROM posts WHERE content_id = ?1 LIMIT 1",
                [content],
                |row| row.get::<_, i64>(0),
            )?;
            if posted.is_none() {
                self.forget_content(content)?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        NewContent, NewHolds, Written,
        fixture::{Fixture, at, queue},
    };

    fn words(tx: &Tx<'_>, group: GroupId, words: String) -> Result<ContentId, StoreError> {
        tx.insert_content(&NewContent {
            group_id: group,
            topic_id: None,
            source: String::new(),
            holds: NewHolds::Words(Written { words, fen: None }),
            created_at: at(0),
        })
    }

    #[test]
    fn what_is_put_back_has_its_place_its_moment_and_what_it_waits_for() {
        let f = Fixture::new();
        let group = f.group;
        let items = f.write(move |tx| queue(tx, group, 3));
        let before = f.read(move |db| db.queue(group));
        let (first, taken) = (items[0], items[1]);
        f.write(move |tx| {
            let of = |item| tx.queued(item).map(|item| item.unwrap().content_id);
            tx.let_content_wait(of(taken)?, of(first)?)?;
            tx.set_due_at(taken, Some(at(600)))
        });
        let waits = move |f: &Fixture| f.read(move |db| db.awaited(group)).len();
        assert_eq!(waits(&f), 1);
        let id = f.write(move |tx| tx.take_out(taken, at(5)));
        assert_eq!((f.read(move |db| db.queue(group)).len(), waits(&f)), (2, 0));
        let kept = f.read(move |db| db.taken_out(group));
        assert_eq!(kept.len(), 1);
        assert_eq!((kept[0].id, kept[0].taken_at), (id, at(5)));
        assert_eq!((kept[0].was.rank, kept[0].was.due_at), (1, Some(at(600))));
        f.write(move |tx| {
            let kept = tx.taken_out(group)?;
            tx.put_back(&kept[0], kept[0].was.due_at)
        });
        let after = f.read(move |db| db.queue(group));
        let contents = |week: &[Queued]| -> Vec<ContentId> {
            week.iter().map(|item| item.content_id).collect()
        };
        assert_eq!(contents(&after), contents(&before));
        assert_eq!(after[1].due_at, Some(at(600)));
        assert_eq!(after[1].added_at, before[1].added_at);
        assert_eq!(waits(&f), 1);
        assert_eq!(f.read(move |db| db.taken_out(group)), []);
    }

    #[test]
    fn what_goes_into_the_queue_otherwise_is_taken_out_no_longer() {
        let f = Fixture::new();
        let group = f.group;
        f.write(move |tx| {
            let item = queue(tx, group, 1)?[0];
            let content = tx.queued(item)?.unwrap().content_id;
            tx.take_out(item, at(5))?;
            tx.enqueue_content(content, at(6))
        });
        assert_eq!(f.read(move |db| db.taken_out(group)), []);
    }

    #[test]
    fn words_taken_out_are_kept_until_they_are_long_past() {
        let f = Fixture::new();
        let group = f.group;
        let contents: Vec<ContentId> = f.write(move |tx| {
            let mut contents = Vec::new();
            for n in 0..=REMEMBERED {
                let content = words(tx, group, format!("Words {n}"))?;
                let item = tx.enqueue_content(content, at(0))?;
                tx.take_out(item, at(1))?;
                contents.push(content);
            }
            Ok(contents)
        });
        let kept = f.read(move |db| db.taken_out(group));
        assert_eq!(kept.len(), REMEMBERED as usize);
        assert_eq!(kept.last().unwrap().was.content_id, contents[1]);
        let (first, second) = (contents[0], contents[1]);
        assert_eq!(f.read(move |db| db.content(first)), None);
        assert!(f.read(move |db| db.content(second)).is_some());
    }
}
