//! What every command, button and message handler shares: the desk, the client, and small memories that
//! need not outlive the process. A file for each subject: `servers`, `messages`, `people`, `drafts`, and
//! what is `paged`.

mod bounded;
mod drafts;
mod messages;
mod paged;
mod people;
mod servers;

use std::{
    collections::{HashSet, VecDeque},
    sync::{Arc, Mutex, MutexGuard, OnceLock},
    time::{Duration, Instant},
};

use poise::serenity_prelude as serenity;
use serenity::{Cache, ChannelId, GuildId, Http, MessageId, UserId};
use tokio::sync::watch;

use super::{KEY, turns::Turns};
use crate::desk::{Desk, Place, PositionId};
use bounded::Bounded;
pub use drafts::Draft;
pub use paged::{Opened, Parts};

/// How long a message waits for a post that is on its way.
const LONGEST_WAY: Duration = Duration::from_secs(30);

/// The house.
pub struct House {
    /// The desk.
    pub desk: Desk,
    /// The REST side of the client, through the gate.
    pub http: Arc<Http>,
    /// For files that people attach; goes to their address directly.
    pub files: reqwest::Client,
    /// The bot's own user.
    pub me: UserId,
    /// Whether people's messages are told to us.
    pub content: bool,
    /// The server that stands in for Discord, if one does.
    pub stand_in: Option<String>,
    /// The order of what each person writes.
    pub turns: Turns,
    cache: OnceLock<Arc<Cache>>,
    memory: Mutex<Memory>,
    /// Whether a post is on its way: members see it a moment before the desk has it written down.
    posting: watch::Sender<bool>,
}

#[derive(Default)]
struct Memory {
    /// Channels that are groups' places.
    groups: HashSet<ChannelId>,
    /// The channel a thread belongs to; `None` for what is no thread.
    parents: Bounded<ChannelId, Option<ChannelId>>,
    /// The last message heard in a channel.
    heard: Bounded<ChannelId, MessageId>,
    /// Messages that we took out of sight ourselves.
    hidden: Bounded<MessageId, ()>,
    /// Direct conversations.
    direct: Bounded<UserId, ChannelId>,
    /// Direct messages that wait to be told which group they are for.
    waiting: Bounded<UserId, (MessageId, String)>,
    /// Check reports that can be paged through.
    reports: VecDeque<(u64, Arc<Opened>)>,
    next_report: u64,
    /// Long answers that can be read part by part.
    parts: VecDeque<(u64, Arc<Parts>)>,
    next_parts: u64,
    /// Words for a position that were refused.
    drafts: Bounded<(UserId, PositionId), Draft>,
    /// Servers on which a person was seen.
    seen_on: Bounded<UserId, HashSet<GuildId>>,
    /// Servers that were asked for a person, and when.
    asked: Bounded<UserId, (Instant, HashSet<GuildId>)>,
}

/// The place of a channel.
pub fn place(channel: ChannelId) -> Place {
    Place {
        chat: KEY,
        channel: channel.to_string(),
    }
}

/// The channel of a place.
pub fn channel(place: &Place) -> Option<ChannelId> {
    place
        .channel
        .parse()
        .ok()
        .filter(|id: &u64| *id > 0)
        .map(ChannelId::new)
}

impl House {
    /// A house before its client is up.
    pub fn new(
        desk: Desk,
        http: Arc<Http>,
        files: reqwest::Client,
        me: UserId,
        content: bool,
        stand_in: Option<String>,
    ) -> Self {
        Self {
            desk,
            http,
            files,
            me,
            content,
            stand_in,
            turns: Turns::default(),
            cache: OnceLock::new(),
            memory: Mutex::default(),
            posting: watch::Sender::new(false),
        }
    }

    /// A post goes on its way, or has arrived.
    pub fn set_posting(&self, posting: bool) {
        self.posting.send_replace(posting);
    }

    /// Waits until no post is on its way, so that an answer that comes with it finds it open.
    pub async fn posts_arrived(&self) {
        let mut posting = self.posting.subscribe();
        let arrived = posting.wait_for(|posting| !*posting);
        let _ = tokio::time::timeout(LONGEST_WAY, arrived).await;
    }

    /// The client is up and keeps this cache.
    pub fn moved_in(&self, cache: Arc<Cache>) {
        let _ = self.cache.set(cache);
    }

    fn memory(&self) -> MutexGuard<'_, Memory> {
        match self.memory.lock() {
            Ok(memory) => memory,
            Err(poisoned) => poisoned.into_inner(),
        }
    }
}

/// Where in a group something was said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// In its channel.
    Channel,
    /// In a thread of it.
    Thread,
}

/// The name a user shows.
pub fn shown(user: &serenity::User, nick: Option<&str>) -> String {
    nick.or(user.global_name.as_deref())
        .unwrap_or(&user.name)
        .to_owned()
}
