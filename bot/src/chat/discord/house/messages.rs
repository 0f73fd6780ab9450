//! Messages: the last one heard, those taken out of sight, direct ones and those that wait for their group.

use poise::serenity_prelude::{self as serenity, ChannelId, MessageId, UserId};

use super::{House, KEY};

impl House {
    /// A message was heard; gives whether it was the newest of its channel so far.
    pub fn note_heard(&self, channel: ChannelId, message: MessageId) {
        let mut memory = self.memory();
        let last = memory.heard.map.get(&channel).copied();
        if last.is_none_or(|last| last < message) {
            memory.heard.put(channel, message);
        }
    }

    /// The last message heard in a channel.
    pub fn last_heard(&self, channel: ChannelId) -> Option<MessageId> {
        self.memory().heard.map.get(&channel).copied()
    }

    /// A message is about to be taken out of sight by us.
    pub fn note_hidden(&self, message: MessageId) {
        self.memory().hidden.put(message, ());
    }

    /// Whether we took it out of sight ourselves.
    pub fn was_hidden(&self, message: MessageId) -> bool {
        self.memory().hidden.map.contains_key(&message)
    }

    /// Notes the direct conversation with a person, so that a later run knows it too.
    pub async fn meet(&self, user: UserId, channel: ChannelId) {
        let known = self.memory().direct.map.get(&user).copied();
        if known == Some(channel) {
            return;
        }
        self.note_direct(user, channel);
        let (user, channel) = (user.to_string(), channel.to_string());
        let kept = self.desk.set_direct_channel(KEY, &user, &channel);
        if let Err(error) = kept.await {
            tracing::warn!("a direct conversation could not be kept: {error}");
        }
    }

    /// A direct conversation with a person that is known already.
    pub fn note_direct(&self, user: UserId, channel: ChannelId) {
        self.memory().direct.put(user, channel);
    }

    /// Every direct conversation known.
    pub fn direct(&self) -> Vec<(UserId, ChannelId)> {
        self.memory()
            .direct
            .map
            .iter()
            .map(|(u, c)| (*u, *c))
            .collect()
    }

    /// A direct message waits for its group.
    pub fn let_wait(&self, user: UserId, message: MessageId, text: String) {
        self.memory().waiting.put(user, (message, text));
    }

    /// Changes the direct message that waits, where it is this one; false where it is not.
    pub fn change_waiting(&self, user: UserId, message: MessageId, text: &str) -> bool {
        match self.memory().waiting.map.get_mut(&user) {
            Some((waits, kept)) if *waits == message => {
                text.clone_into(kept);
                true
            }
            _ => false,
        }
    }

    /// Takes the direct message that waits.
    pub fn take_waiting(&self, user: UserId) -> Option<(MessageId, String)> {
        self.memory().waiting.map.remove(&user)
    }

    /// The direct conversation with a person, opened if need be.
    pub async fn direct_with(&self, user: UserId) -> serenity::Result<ChannelId> {
        if let Some(known) = self.memory().direct.map.get(&user) {
            return Ok(*known);
        }
        let map = serde_json::json!({ "recipient_id": user.to_string() });
        let channel = self.http.create_private_channel(&map).await?.id;
        self.meet(user, channel).await;
        Ok(channel)
    }
}
