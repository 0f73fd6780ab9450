//! What a chat needs to be found and to find people by: the secrets of its links, and the channels in which it
//! talks with people directly.

use rusqlite::params;

use crate::{ChatKey, Db, Link, StoreError, Tx};

impl Db<'_> {
    /// The secret of one of a chat's links.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn link_secret(&self, chat: ChatKey, link: Link) -> Result<Option<String>, StoreError> {
        self.maybe_one(
            "SELECT secret FROM link_secrets WHERE chat = ?1 AND link = ?2",
            params![chat, link],
            |row| row.get(0),
        )
    }

    /// Every direct channel of a chat: the chat's id of the person, and that of the channel.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn direct_channels(&self, chat: ChatKey) -> Result<Vec<(String, String)>, StoreError> {
        self.all(
            "SELECT chat_user, channel FROM direct_channels WHERE chat = ?1 ORDER BY chat_user",
            [chat],
            |row| Ok((row.get(0)?, row.get(1)?)),
        )
    }
}

impl Tx<'_> {
    /// Keeps the secret of a link in place of an earlier one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it, as an empty secret.
    pub fn set_link_secret(
        &self,
        chat: ChatKey,
        link: Link,
        secret: &str,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO link_secrets (chat, link, secret) VALUES (?1, ?2, ?3)
             ON CONFLICT (chat, link) DO UPDATE SET secret = excluded.secret",
            params![chat, link, secret],
        )?;
        Ok(())
    }

    /// Keeps the channel in which a chat talks with a person, in place of an earlier one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn set_direct_channel(
        &self,
        chat: ChatKey,
        user: &str,
        channel: &str,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO direct_channels (chat, chat_user, channel) VALUES (?1, ?2, ?3)
             ON CONFLICT (chat, chat_user) DO UPDATE SET channel = excluded.channel",
            params![chat, user, channel],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::Fixture;

    const HERE: ChatKey = ChatKey::of("room");
    const THERE: ChatKey = ChatKey::of("lines");

    #[test]
    fn a_secret_is_one_links_of_one_chat_and_is_replaced() {
        let f = Fixture::new();
        let secret = |chat, link| f.read(move |db| db.link_secret(chat, link));
        assert_eq!(secret(HERE, Link::Member), None);
        f.write(|tx| tx.set_link_secret(HERE, Link::Member, "one"));
        f.write(|tx| tx.set_link_secret(HERE, Link::Member, "two"));
        f.write(|tx| tx.set_link_secret(THERE, Link::Member, "three"));
        assert_eq!(secret(HERE, Link::Member).as_deref(), Some("two"));
        assert_eq!(secret(THERE, Link::Member).as_deref(), Some("three"));
        assert_eq!(secret(HERE, Link::Coach), None);
        let empty = f
            .store
            .write_blocking(|tx| tx.set_link_secret(HERE, Link::Coach, ""));
        assert!(matches!(empty, Err(StoreError::Rule(_))), "{empty:?}");
    }

    #[test]
    fn a_person_has_one_direct_channel_in_a_chat() {
        let f = Fixture::new();
        f.write(|tx| {
            tx.set_direct_channel(HERE, "ana", "1")?;
            tx.set_direct_channel(HERE, "ana", "2")?;
            tx.set_direct_channel(HERE, "bruno", "3")?;
            tx.set_direct_channel(THERE, "ana", "4")
        });
        let own = |text: &str| text.to_owned();
        assert_eq!(
            f.read(|db| db.direct_channels(HERE)),
            [(own("ana"), own("2")), (own("bruno"), own("3"))]
        );
    }
}
