//! The outbox: words to people that are on their way, written before they are sent and deleted when they have
//! arrived. What is found here at a start was left by an earlier run.

use rusqlite::{Row, params};

use crate::{Db, GroupId, Moment, ReplyId, StoreError, Tx, time};

/// A word that is on its way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutboxRow {
    /// Its id; they rise.
    pub id: i64,
    /// The group it is about.
    pub group_id: GroupId,
    /// The reply whose writer is owed its verdict; `None` for a notice to the coaches.
    pub reply_id: Option<ReplyId>,
    /// The words of a notice; empty for a verdict.
    pub text: String,
    /// When it was first tried.
    pub tried_at: Option<Moment>,
    /// The text in which a verdict was tried last.
    pub tried_as: Option<String>,
    /// When it was written.
    pub written_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<OutboxRow> {
    Ok(OutboxRow {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        reply_id: row.get("reply_id")?,
        text: row.get("text")?,
        tried_at: time::get_maybe(row, "tried_at")?,
        tried_as: row.get("tried_as")?,
        written_at: time::get(row, "written_at")?,
    })
}

impl Db<'_> {
    /// Everything in the outbox, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn outbox(&self) -> Result<Vec<OutboxRow>, StoreError> {
        self.all("SELECT * FROM outbox ORDER BY id", [], read)
    }

    /// A word by id; `None` when it has arrived.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn outbox_row(&self, id: i64) -> Result<Option<OutboxRow>, StoreError> {
        self.maybe_one("SELECT * FROM outbox WHERE id = ?1", [id], read)
    }

    /// The verdict on a reply that is owed to its writer, if it is.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn owed_verdict(&self, reply: ReplyId) -> Result<Option<OutboxRow>, StoreError> {
        self.maybe_one("SELECT * FROM outbox WHERE reply_id = ?1", [reply], read)
    }
}

impl Tx<'_> {
    /// Writes down a notice to a group's coaches; gives its id.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn leave_notice(&self, group: GroupId, text: &str, now: Moment) -> Result<i64, StoreError> {
        self.insert(
            "INSERT INTO outbox (group_id, text, written_at) VALUES (?1, ?2, ?3)",
            params![group, text, time::text(now)],
        )
    }

    /// Writes down that the writer of a reply is owed its verdict, in place of an earlier one; gives the id.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn owe_verdict(
        &self,
        group: GroupId,
        reply: ReplyId,
        now: Moment,
    ) -> Result<i64, StoreError> {
        self.verdict_arrived(reply)?;
        self.insert(
            "INSERT INTO outbox (group_id, reply_id, text, written_at) VALUES (?1, ?2, '', ?3)",
            params![group, reply, time::text(now)],
        )
    }

    /// Marks that a word is being tried from now on: it may have got through.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn try_word(&self, id: i64, now: Moment) -> Result<(), StoreError> {
        self.run(
            "UPDATE outbox SET tried_at = coalesce(tried_at, ?2) WHERE id = ?1",
            params![id, time::text(now)],
        )?;
        Ok(())
    }

    /// Marks that an owed verdict is being tried from now on, in this text.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn try_verdict(&self, reply: ReplyId, text: &str, now: Moment) -> Result<(), StoreError> {
        self.run(
            "UPDATE outbox SET tried_at = coalesce(tried_at, ?3), tried_as = ?2 WHERE reply_id = ?1",
            params![reply, text, time::text(now)],
        )?;
        Ok(())
    }

    /// A word has arrived, or is given up.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn word_arrived(&self, id: i64) -> Result<(), StoreError> {
        self.run("DELETE FROM outbox WHERE id = ?1", [id])?;
        Ok(())
    }

    /// The verdict on a reply has arrived, where it was owed.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn verdict_arrived(&self, reply: ReplyId) -> Result<(), StoreError> {
        self.run("DELETE FROM outbox WHERE reply_id = ?1", [reply])?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, new_reply, open_post};

    #[test]
    fn a_word_is_there_until_it_has_arrived() {
        let f = Fixture::new();
        let group = f.group;
        let notice = f.write(move |tx| tx.leave_notice(group, "Something failed.", at(1)));
        f.write(move |tx| tx.try_word(notice, at(2)));
        f.write(move |tx| tx.try_word(notice, at(3)));
        let row = OutboxRow {
            id: notice,
            group_id: group,
            reply_id: None,
            text: "Something failed.".into(),
            tried_at: Some(at(2)),
            tried_as: None,
            written_at: at(1),
        };
        assert_eq!(f.read(move |db| db.outbox_row(notice)), Some(row.clone()));
        assert_eq!(f.read(|db| db.outbox()), [row]);
        f.write(move |tx| tx.word_arrived(notice));
        assert!(f.read(|db| db.outbox()).is_empty());
    }

    #[test]
    fn a_verdict_is_owed_once_and_goes_with_its_reply() {
        let f = Fixture::new();
        let group = f.group;
        let reply = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            let ana = tx.upsert_member(group, "ana", "Ana", at(0))?;
            Ok(tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?.id)
        });
        let first = f.write(move |tx| tx.owe_verdict(group, reply, at(1)));
        f.write(move |tx| tx.try_verdict(reply, "Not the solution.", at(2)));
        let tried = f.read(move |db| db.owed_verdict(reply)).unwrap();
        assert_eq!(
            (tried.tried_at, tried.tried_as.as_deref()),
            (Some(at(2)), Some("Not the solution."))
        );
        // Judged anew, it is another word, and not tried yet.
        let second = f.write(move |tx| tx.owe_verdict(group, reply, at(3)));
        assert!(second > first);
        let anew = f.read(|db| db.outbox());
        assert_eq!(
            (anew.len(), anew[0].id, anew[0].tried_at),
            (1, second, None)
        );
        f.write(move |tx| tx.delete_reply(reply));
        assert!(f.read(|db| db.outbox()).is_empty());
    }
}
