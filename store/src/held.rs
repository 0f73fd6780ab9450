//! Messages that wait for their writer's word, and the ids of those that were settled.

use rusqlite::{Row, params};
use serde_json::Value;

use crate::{ChatKey, Db, Doubt, GroupId, Moment, StoreError, Tx, time};

/// A message that waits.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// The group it was written in.
    pub group_id: GroupId,
    /// The chat's id of the message.
    pub message: String,
    /// The chat's id of where it was written.
    pub channel: String,
    /// The chat's id of its writer, who need be no member.
    pub chat_user: String,
    /// Its words.
    pub text: String,
    /// Why it waits.
    pub why: Doubt,
    /// The posts it may be an answer to, as the desk writes them.
    pub posts: Value,
    /// Whether it was taken out of sight.
    pub hidden: bool,
    /// Since when it waits.
    pub since: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Held> {
    let posts: String = row.get("posts")?;
    Ok(Held {
        group_id: row.get("group_id")?,
        message: row.get("message")?,
        channel: row.get("channel")?,
        chat_user: row.get("chat_user")?,
        text: row.get("text")?,
        why: row.get("why")?,
        // The schema lets JSON in only.
        posts: serde_json::from_str(&posts).unwrap_or_default(),
        hidden: row.get("hidden")?,
        since: time::get(row, "since")?,
    })
}

const OF_CHAT: &str = "SELECT h.* FROM held h JOIN groups g ON g.id = h.group_id WHERE g.chat = ?1";

impl Db<'_> {
    /// Every message that waits in a chat, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn held_in(&self, chat: ChatKey) -> Result<Vec<Held>, StoreError> {
        self.all(&format!("{OF_CHAT} ORDER BY h.id"), [chat], read)
    }

    /// The message of that id, where it waits.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn held(&self, chat: ChatKey, message: &str) -> Result<Option<Held>, StoreError> {
        self.maybe_one(
            &format!("{OF_CHAT} AND h.message = ?2"),
            params![chat, message],
            read,
        )
    }

    /// The messages of a person that wait in a group, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn held_of(&self, group: GroupId, user: &str) -> Result<Vec<Held>, StoreError> {
        self.all(
            "SELECT * FROM held WHERE group_id = ?1 AND chat_user = ?2 ORDER BY id",
            params![group, user],
            read,
        )
    }

    /// Whether a message was settled.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn is_settled(&self, chat: ChatKey, message: &str) -> Result<bool, StoreError> {
        let found = self.maybe_one(
            "SELECT 1 FROM held_settled WHERE chat = ?1 AND message = ?2",
            params![chat, message],
            |_| Ok(()),
        )?;
        Ok(found.is_some())
    }
}

impl Tx<'_> {
    /// Lets a message wait, in place of an earlier text of it; of all that wait in its chat the latest `most`
    /// stay.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn hold(&self, chat: ChatKey, held: &Held, most: usize) -> Result<(), StoreError> {
        self.forget_settled(chat, &held.message)?;
        self.run(
            "INSERT INTO held (group_id, message, channel, chat_user, text, why, posts, hidden, since)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)
             ON CONFLICT (group_id, message) DO UPDATE SET channel = excluded.channel,
                 chat_user = excluded.chat_user, text = excluded.text, why = excluded.why,
                 posts = excluded.posts, hidden = excluded.hidden,
                 since = excluded.since",
            params![
                held.group_id,
                held.message,
                held.channel,
                held.chat_user,
                held.text,
                held.why,
                held.posts.to_string(),
                held.hidden,
                time::text(held.since)
            ],
        )?;
        self.run(
            "DELETE FROM held WHERE id IN (SELECT h.id FROM held h JOIN groups g ON g.id = h.group_id
                 WHERE g.chat = ?1 ORDER BY h.id DESC LIMIT -1 OFFSET ?2)",
            params![chat, i64::try_from(most).unwrap_or(i64::MAX)],
        )?;
        Ok(())
    }

    /// Forgets the words of a message that waits, which is not asked about again; says whether it waited. Of
    /// the ids that were settled the latest `most` stay.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn settle_held(
        &self,
        chat: ChatKey,
        message: &str,
        most: usize,
    ) -> Result<bool, StoreError> {
        if !self.drop_held(chat, message)? {
            return Ok(false);
        }
        self.run(
            "INSERT INTO held_settled (chat, message) VALUES (?1, ?2)",
            params![chat, message],
        )?;
        self.run(
            "DELETE FROM held_settled WHERE chat = ?1 AND id NOT IN
                 (SELECT id FROM held_settled WHERE chat = ?1 ORDER BY id DESC LIMIT ?2)",
            params![chat, i64::try_from(most).unwrap_or(i64::MAX)],
        )?;
        Ok(true)
    }

    /// Forgets that a message waits or was settled, as when it was edited or deleted; says whether it waited.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn forget_held(&self, chat: ChatKey, message: &str) -> Result<bool, StoreError> {
        self.forget_settled(chat, message)?;
        self.drop_held(chat, message)
    }

    fn drop_held(&self, chat: ChatKey, message: &str) -> Result<bool, StoreError> {
        let gone = self.run(
            "DELETE FROM held WHERE message = ?2
                 AND group_id IN (SELECT id FROM groups WHERE chat = ?1)",
            params![chat, message],
        )?;
        Ok(gone > 0)
    }

    fn forget_settled(&self, chat: ChatKey, message: &str) -> Result<(), StoreError> {
        self.run(
            "DELETE FROM held_settled WHERE chat = ?1 AND message = ?2",
            params![chat, message],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at};

    const CHAT: ChatKey = ChatKey::of("room");

    fn held(group: GroupId, message: &str) -> Held {
        Held {
            group_id: group,
            message: message.into(),
            channel: "2".into(),
            chat_user: "ana".into(),
            text: format!("perhaps Qh7 {message}"),
            why: Doubt::MayTell,
            posts: serde_json::json!([{ "post": 1, "number": 1, "topic": null }]),
            hidden: false,
            since: at(0),
        }
    }

    #[test]
    fn what_is_settled_keeps_no_words_and_is_not_asked_again() {
        let f = Fixture::new();
        let group = f.group;
        for message in ["1", "2"] {
            f.write(move |tx| tx.hold(CHAT, &held(group, message), 10));
        }
        assert_eq!(f.read(|db| db.held(CHAT, "1")), Some(held(group, "1")));
        assert!(f.write(|tx| tx.settle_held(CHAT, "1", 10)));
        assert!(!f.write(|tx| tx.settle_held(CHAT, "1", 10)));
        assert!(f.read(|db| db.is_settled(CHAT, "1")));
        assert!(!f.read(|db| db.is_settled(CHAT, "2")));
        assert_eq!(
            f.read(move |db| db.held_of(group, "ana")),
            [held(group, "2")]
        );
        assert_eq!(f.read(|db| db.held_in(CHAT)), [held(group, "2")]);
        // Edited or deleted, it is another message.
        assert!(f.write(|tx| tx.forget_held(CHAT, "2")));
        assert!(!f.write(|tx| tx.forget_held(CHAT, "1")));
        assert!(!f.read(|db| db.is_settled(CHAT, "1")));
    }

    #[test]
    fn the_latest_stay() {
        let f = Fixture::new();
        let group = f.group;
        for n in 0..6 {
            f.write(move |tx| tx.hold(CHAT, &held(group, &n.to_string()), 3));
        }
        // Another text of one that waits takes its place.
        f.write(move |tx| {
            let hidden = Held {
                hidden: true,
                ..held(group, "4")
            };
            tx.hold(CHAT, &hidden, 3)
        });
        let waits: Vec<(String, bool)> = f
            .read(|db| db.held_in(CHAT))
            .into_iter()
            .map(|held| (held.message, held.hidden))
            .collect();
        let own = |text: &str, hidden| (text.to_owned(), hidden);
        assert_eq!(waits, [own("3", false), own("4", true), own("5", false)]);
        for n in 3..6 {
            f.write(move |tx| tx.settle_held(CHAT, &n.to_string(), 2));
        }
        assert!(!f.read(|db| db.is_settled(CHAT, "3")));
        assert!(f.read(|db| db.is_settled(CHAT, "5")));
    }
}
