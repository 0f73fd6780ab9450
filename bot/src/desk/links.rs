//! What a chat needs to be found and to find people by: the secrets of its links, and the channels in which it
//! talks with people directly.

pub use sealed_move_store::Link;

use super::{ChatKey, Desk, error::Done};

impl Desk {
    /// The secret of one of a chat's links.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn link_secret(&self, chat: ChatKey, link: Link) -> Done<Option<String>> {
        self.read(move |db| Ok(db.link_secret(chat, link)?)).await
    }

    /// Keeps the secret of a link in place of an earlier one.
    ///
    /// # Errors
    /// When the store cannot be written, or the secret is empty.
    pub async fn set_link_secret(&self, chat: ChatKey, link: Link, secret: &str) -> Done<()> {
        let secret = secret.to_owned();
        self.write(move |tx| Ok(tx.set_link_secret(chat, link, &secret)?))
            .await
    }

    /// Every direct channel of a chat: the chat's id of the person, and that of the channel.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn direct_channels(&self, chat: ChatKey) -> Done<Vec<(String, String)>> {
        self.read(move |db| Ok(db.direct_channels(chat)?)).await
    }

    /// Keeps the channel in which a chat talks with a person, in place of an earlier one.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn set_direct_channel(&self, chat: ChatKey, user: &str, channel: &str) -> Done<()> {
        let (user, channel) = (user.to_owned(), channel.to_owned());
        self.write(move |tx| Ok(tx.set_direct_channel(chat, &user, &channel)?))
            .await
    }
}
