//! Replies that a coach settled without a verdict: by a private answer, or as needing none.

use rusqlite::{Row, params};

use crate::{Db, MemberId, Moment, ReplyId, StoreError, Tx, time};

/// What a coach settled a reply with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CoachWords {
    /// The reply.
    pub reply_id: ReplyId,
    /// The answer to its sender; empty where none was needed.
    pub words: String,
    /// The coach's name; `None` once they were erased.
    pub by: Option<String>,
    /// When.
    pub given_at: Moment,
    /// When the answer was handed to its sender's chat.
    pub told_at: Option<Moment>,
}

/// Reads the words that come along in a reply's row.
pub(crate) fn read_maybe(row: &Row<'_>) -> rusqlite::Result<Option<CoachWords>> {
    Ok(match row.get::<_, Option<String>>("coach_words")? {
        Some(words) => Some(CoachWords {
            reply_id: row.get("id")?,
            words,
            by: row.get("words_by")?,
            given_at: time::get(row, "words_at")?,
            told_at: time::get_maybe(row, "words_told_at")?,
        }),
        None => None,
    })
}

fn read(row: &Row<'_>) -> rusqlite::Result<CoachWords> {
    Ok(CoachWords {
        reply_id: row.get("reply_id")?,
        words: row.get("words")?,
        by: row.get("by_name")?,
        given_at: time::get(row, "given_at")?,
        told_at: time::get_maybe(row, "told_at")?,
    })
}

const SELECT: &str = "SELECT w.*, m.name AS by_name
    FROM coach_words w LEFT JOIN members m ON m.id = w.by_id";

impl Db<'_> {
    /// What a reply was settled with, if it was.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn coach_words(&self, reply: ReplyId) -> Result<Option<CoachWords>, StoreError> {
        self.maybe_one(&format!("{SELECT} WHERE w.reply_id = ?1"), [reply], read)
    }

    /// Private answers that were not handed to their member's chat yet, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn untold_words(&self) -> Result<Vec<CoachWords>, StoreError> {
        self.all(
            &format!(
                "{SELECT} WHERE w.told_at IS NULL AND w.words <> '' ORDER BY w.given_at, w.reply_id"
            ),
            [],
            read,
        )
    }

    /// The private answers that a member was given, the oldest of the latest `most` first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn words_to(&self, member: MemberId, most: usize) -> Result<Vec<CoachWords>, StoreError> {
        let mut words = self.all(
            &format!(
                "{SELECT} JOIN replies r ON r.id = w.reply_id
                 WHERE r.member_id = ?1 AND w.words <> ''
                 ORDER BY w.given_at DESC, w.reply_id DESC LIMIT ?2"
            ),
            params![member, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )?;
        words.reverse();
        Ok(words)
    }
}

impl Tx<'_> {
    /// Settles a reply with a private answer (or none: empty words), in place of an earlier one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn settle_reply(
        &self,
        reply: ReplyId,
        words: &str,
        by: MemberId,
        now: Moment,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO coach_words (reply_id, words, by_id, given_at) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (reply_id) DO UPDATE SET words = excluded.words, by_id = excluded.by_id,
                 given_at = excluded.given_at, told_at = NULL",
            params![reply, words, by, time::text(now)],
        )?;
        Ok(())
    }

    /// A private answer was handed to its member's chat.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn mark_words_told(&self, reply: ReplyId, now: Moment) -> Result<(), StoreError> {
        self.run(
            "UPDATE coach_words SET told_at = ?2 WHERE reply_id = ?1",
            params![reply, time::text(now)],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use crate::fixture::{Fixture, at, new_reply, open_post};

    #[test]
    fn an_answer_is_kept_until_it_is_told_and_goes_with_its_reply() {
        let f = Fixture::new();
        let group = f.group;
        let (post, ana, reply, plain) = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            let kim = tx.upsert_member(group, "u2", "Kim", at(0))?;
            let reply = tx
                .insert_reply(&new_reply(post, ana, None, "may I castle?"))?
                .id;
            let plain = tx.insert_reply(&new_reply(post, ana, None, "oh"))?.id;
            tx.settle_reply(reply, "Yes.", kim, at(6))?;
            tx.settle_reply(plain, "", kim, at(6))?;
            Ok((post, ana, reply, plain))
        });
        let untold = f.read(|db| db.untold_words());
        assert_eq!(untold.len(), 1);
        assert_eq!(
            (
                untold[0].reply_id,
                untold[0].words.as_str(),
                untold[0].by.as_deref()
            ),
            (reply, "Yes.", Some("Kim"))
        );
        assert_eq!(f.read(move |db| db.words_to(ana, 5)), untold);
        f.write(move |tx| tx.mark_words_told(reply, at(7)));
        assert!(f.read(|db| db.untold_words()).is_empty());
        let rows = f.read(move |db| db.replies_of(post, ana));
        assert_eq!(rows[0].words.as_ref().unwrap().told_at, Some(at(7)));
        assert_eq!(rows[1].words.as_ref().unwrap().words, "");
        f.write(move |tx| {
            tx.delete_reply(reply)?;
            tx.delete_reply(plain)
        });
        assert!(f.read(move |db| db.coach_words(reply)).is_none());
    }
}
