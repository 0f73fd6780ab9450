//! Messages that wait for their writer's word, for a chat that asks about them in private: kept over a restart,
//! since the question is. Forgotten with the answer, with the last of their posts, when their writer is erased,
//! and at the latest when the rounds find that they waited too long.

use chrono::{DateTime, Utc};
use sealed_move_store::{Doubt, Held};

use super::{
    ChatKey, Desk, OpenPost, Place, Why,
    error::{DeskError, Done},
    handle::group_at,
};

/// How many wait in a chat at the most, and how many that were settled are known; the oldest goes.
pub(super) const MOST: usize = 500;

/// A message that waits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waiting {
    /// The group it was written in.
    pub place: Place,
    /// The chat's id of it.
    pub message: String,
    /// The chat's id of where it was written.
    pub channel: String,
    /// The chat's id of its writer.
    pub user: String,
    /// Its words.
    pub text: String,
    /// Why it waits.
    pub why: Why,
    /// The posts it may be an answer to.
    pub posts: Vec<OpenPost>,
    /// Whether it was taken out of sight.
    pub hidden: bool,
    /// Since when it waits.
    pub since: DateTime<Utc>,
}

impl Waiting {
    fn kept(place: Place, held: Held) -> Done<Self> {
        Ok(Self {
            place,
            message: held.message,
            channel: held.channel,
            user: held.chat_user,
            text: held.text,
            why: match held.why {
                Doubt::Elsewhere => Why::Elsewhere,
                Doubt::Several => Why::Several,
                Doubt::MayTell => Why::MayTell,
            },
            posts: serde_json::from_value(held.posts).map_err(|error| {
                DeskError::damaged(format!("a message that waits cannot be read ({error})"))
            })?,
            hidden: held.hidden,
            since: held.since,
        })
    }
}

impl Desk {
    /// Lets a message wait, in place of an earlier text of it.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be written.
    pub async fn let_wait(&self, waiting: &Waiting) -> Done<()> {
        let waiting = waiting.clone();
        let posts = serde_json::to_value(&waiting.posts).map_err(|error| {
            DeskError::damaged(format!("a message that waits cannot be written ({error})"))
        })?;
        self.write(move |tx| {
            let group = group_at(tx, &waiting.place)?;
            let held = Held {
                group_id: group.id,
                message: waiting.message,
                channel: waiting.channel,
                chat_user: waiting.user,
                text: waiting.text,
                why: match waiting.why {
                    Why::Elsewhere => Doubt::Elsewhere,
                    Why::Several => Doubt::Several,
                    Why::MayTell => Doubt::MayTell,
                },
                posts,
                hidden: waiting.hidden,
                since: waiting.since,
            };
            Ok(tx.hold(waiting.place.chat, &held, MOST)?)
        })
        .await
    }

    /// The message of that id, where it waits.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn waiting(&self, chat: ChatKey, message: &str) -> Done<Option<Waiting>> {
        let message = message.to_owned();
        self.read(move |db| {
            let Some(held) = db.held(chat, &message)? else {
                return Ok(None);
            };
            let Some(group) = db.group(held.group_id)? else {
                return Ok(None);
            };
            let channel = group.place;
            Waiting::kept(Place { chat, channel }, held).map(Some)
        })
        .await
    }

    /// What waits of a person in a group, the oldest first.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be read.
    pub async fn waiting_of(&self, place: &Place, user: &str) -> Done<Vec<Waiting>> {
        let (place, user) = (place.clone(), user.to_owned());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let held = db.held_of(group.id, &user)?.into_iter();
            held.map(|held| Waiting::kept(place.clone(), held))
                .collect()
        })
        .await
    }

    /// Whether a message waits or was settled, and so was asked about.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn was_asked_about(&self, chat: ChatKey, message: &str) -> Done<bool> {
        let message = message.to_owned();
        self.read(
            move |db| Ok(db.is_settled(chat, &message)? || db.held(chat, &message)?.is_some()),
        )
        .await
    }

    /// Forgets the words of a message that waits; it is not asked about again.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn waits_no_longer(&self, chat: ChatKey, message: &str) -> Done<()> {
        let message = message.to_owned();
        self.write(move |tx| Ok(tx.settle_held(chat, &message, MOST).map(drop)?))
            .await
    }

    /// Forgets a message that was edited or deleted, whether it waits or was settled.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn forget_waiting(&self, chat: ChatKey, message: &str) -> Done<()> {
        // Most messages never waited; that is seen without a write.
        if !self.was_asked_about(chat, message).await? {
            return Ok(());
        }
        let message = message.to_owned();
        self.write(move |tx| Ok(tx.forget_held(chat, &message).map(drop)?))
            .await
    }

    /// Forgets all that waits of people in a group; it is not asked about again.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be written.
    pub async fn forget_waiting_of(&self, place: &Place, users: &[String]) -> Done<()> {
        let (place, users) = (place.clone(), users.to_vec());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            for user in users {
                for held in tx.held_of(group.id, &user)? {
                    tx.settle_held(place.chat, &held.message, MOST)?;
                }
            }
            Ok(())
        })
        .await
    }
}
