//! The inbox: what came in and is not judged yet. An entry is written before anything is made of it, and
//! taken out in the same transaction that keeps what was made of it.

use rusqlite::{Row, params};

use crate::{Db, Moment, PostId, StoreError, Tx, time};

/// Something that came in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewEntry {
    /// The post it may answer.
    pub post_id: PostId,
    /// The chat's id of the message; the same one is in the inbox once, with its latest text.
    pub source: String,
    /// The chat's id of whoever sent it, who need be no member yet.
    pub chat_user: String,
    /// Their name, 1 to 80 characters.
    pub name: String,
    /// What was written.
    pub text: String,
    /// When it came.
    pub received_at: Moment,
}

/// An entry of the inbox.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its id.
    pub id: i64,
    /// The post it may answer.
    pub post_id: PostId,
    /// The chat's id of the message.
    pub source: String,
    /// The chat's id of whoever sent it.
    pub chat_user: String,
    /// Their name.
    pub name: String,
    /// What was written.
    pub text: String,
    /// When it came.
    pub received_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Entry> {
    Ok(Entry {
        id: row.get("id")?,
        post_id: row.get("post_id")?,
        source: row.get("source")?,
        chat_user: row.get("chat_user")?,
        name: row.get("name")?,
        text: row.get("text")?,
        received_at: time::get(row, "received_at")?,
    })
}

impl Db<'_> {
    /// Everything in the inbox, in the order it came.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn inbox(&self) -> Result<Vec<Entry>, StoreError> {
        self.all("SELECT * FROM inbox ORDER BY id", [], read)
    }

    /// An entry of the inbox.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn inbox_entry(&self, id: i64) -> Result<Option<Entry>, StoreError> {
        self.maybe_one("SELECT * FROM inbox WHERE id = ?1", [id], read)
    }
}

impl Tx<'_> {
    /// Puts something into the inbox and returns the entry's id. What is there from the same source
    /// takes the new text and keeps the time at which it came.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn put_in_inbox(&self, new: &NewEntry) -> Result<i64, StoreError> {
        self.run(
            "INSERT INTO inbox (post_id, source, chat_user, name, text, received_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6)
             ON CONFLICT (source) DO UPDATE SET post_id = excluded.post_id,
                 chat_user = excluded.chat_user, name = excluded.name, text = excluded.text",
            params![
                new.post_id,
                new.source,
                new.chat_user,
                new.name,
                new.text,
                time::text(new.received_at)
            ],
        )?;
        let id = self.maybe_one(
            "SELECT id FROM inbox WHERE source = ?1",
            [&new.source],
            |row| row.get(0),
        )?;
        id.ok_or(StoreError::NoSuch {
            what: "inbox entry",
            id: 0,
        })
    }

    /// Takes an entry out of the inbox; `None` when it is there no more.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn take_from_inbox(&self, id: i64) -> Result<Option<Entry>, StoreError> {
        let entry = self.inbox_entry(id)?;
        self.run("DELETE FROM inbox WHERE id = ?1", [id])?;
        Ok(entry)
    }

    /// Forgets what a source has in the inbox; says whether there was anything.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn forget_in_inbox(&self, source: &str) -> Result<bool, StoreError> {
        Ok(self.run("DELETE FROM inbox WHERE source = ?1", [source])? > 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, open_post};

    fn entry(post: PostId, source: &str, text: &str, minute: i64) -> NewEntry {
        NewEntry {
            post_id: post,
            source: source.into(),
            chat_user: "u1".into(),
            name: "Ana".into(),
            text: text.into(),
            received_at: at(minute),
        }
    }

    #[test]
    fn what_came_in_is_there_once_until_it_is_taken() {
        let f = Fixture::new();
        let group = f.group;
        let post = f.write(move |tx| open_post(tx, group, 1, None, 10));
        let first = f.write(move |tx| tx.put_in_inbox(&entry(post, "m1", "Rd7", 11)));
        let other = f.write(move |tx| tx.put_in_inbox(&entry(post, "m2", "hello", 12)));
        let again = f.write(move |tx| tx.put_in_inbox(&entry(post, "m1", "Rd8+", 13)));
        assert_eq!(first, again);
        let kept = f.read(|db| db.inbox());
        let texts: Vec<_> = kept
            .iter()
            .map(|e| (e.text.as_str(), e.received_at))
            .collect();
        assert_eq!(texts, [("Rd8+", at(11)), ("hello", at(12))]);
        let taken = f.write(move |tx| tx.take_from_inbox(first));
        assert_eq!(taken.map(|e| e.text).as_deref(), Some("Rd8+"));
        assert_eq!(f.write(move |tx| tx.take_from_inbox(first)), None);
        assert!(f.write(|tx| tx.forget_in_inbox("m2")));
        assert!(!f.write(|tx| tx.forget_in_inbox("m2")));
        assert!(other > first && f.read(|db| db.inbox()).is_empty());
    }

    #[test]
    fn whoever_is_erased_has_nothing_left_in_the_inbox() {
        let f = Fixture::new();
        let group = f.group;
        let ana = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            tx.put_in_inbox(&entry(post, "m1", "Rd7", 11))?;
            let mut other = entry(post, "m2", "Rd6", 11);
            other.chat_user = "u2".into();
            tx.put_in_inbox(&other)?;
            Ok(ana)
        });
        assert!(f.write(move |tx| tx.delete_member(ana)));
        let left: Vec<_> = f
            .read(|db| db.inbox())
            .into_iter()
            .map(|e| e.source)
            .collect();
        assert_eq!(left, ["m2"]);
    }
}
