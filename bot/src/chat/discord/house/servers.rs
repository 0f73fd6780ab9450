//! Which channels are groups', on which servers, and who was seen there.

use std::{
    collections::HashSet,
    time::{Duration, Instant},
};

use poise::serenity_prelude::{self as serenity, ChannelId, GuildId, UserId};

use super::{House, KEY, Where, channel, place};
use crate::desk::{DeskError, Place};

/// For how long it is remembered which servers a person is on that were asked.
const ASKED_ANEW: Duration = Duration::from_secs(600);

impl House {
    /// Reads which channels are groups' places.
    pub async fn learn_groups(&self) -> Result<(), DeskError> {
        let places = self.desk.places(KEY).await?;
        self.memory().groups = places.iter().filter_map(channel).collect();
        Ok(())
    }

    /// Channels that are groups' places.
    pub fn groups(&self) -> Vec<ChannelId> {
        self.memory().groups.iter().copied().collect()
    }

    /// The group whose channel this is, or whose channel has this thread; the flag tells which.
    pub async fn group_of(&self, id: ChannelId) -> Option<(Place, Where)> {
        {
            let memory = self.memory();
            if memory.groups.contains(&id) {
                return Some((place(id), Where::Channel));
            }
            if let Some(parent) = memory.parents.map.get(&id) {
                let parent = parent.filter(|parent| memory.groups.contains(parent))?;
                return Some((place(parent), Where::Thread));
            }
        }
        let parent = self.parent_of(id).await?;
        self.memory().parents.put(id, parent);
        let parent = parent.filter(|parent| self.memory().groups.contains(parent))?;
        Some((place(parent), Where::Thread))
    }

    /// The channel a thread belongs to; outer `None` when Discord would not tell.
    async fn parent_of(&self, id: ChannelId) -> Option<Option<ChannelId>> {
        if let Some(cache) = self.cache.get() {
            for guild in cache.guilds() {
                let Some(guild) = cache.guild(guild) else {
                    continue;
                };
                if let Some(thread) = guild.threads.iter().find(|thread| thread.id == id) {
                    return Some(thread.parent_id);
                }
                if guild.channels.contains_key(&id) {
                    return Some(None);
                }
            }
        }
        let channel = self.http.get_channel(id).await.ok()?.guild()?;
        Some(channel.thread_metadata.and(channel.parent_id))
    }

    /// The server of a group's channel, as far as the cache knows.
    fn guild_of(&self, id: ChannelId) -> Option<GuildId> {
        let cache = self.cache.get()?;
        cache.guilds().into_iter().find(|guild| {
            cache
                .guild(*guild)
                .is_some_and(|guild| guild.channels.contains_key(&id))
        })
    }

    /// Servers that have groups, with those.
    pub fn servers_with_groups(&self) -> Vec<(GuildId, Vec<ChannelId>)> {
        let Some(cache) = self.cache.get() else {
            return Vec::new();
        };
        let groups = self.memory().groups.clone();
        cache
            .guilds()
            .into_iter()
            .filter_map(|id| {
                let guild = cache.guild(id)?;
                let own: Vec<ChannelId> = guild
                    .channels
                    .keys()
                    .filter(|channel| groups.contains(channel))
                    .copied()
                    .collect();
                (!own.is_empty()).then_some((id, own))
            })
            .collect()
    }

    /// Someone was seen on a server.
    pub fn note_seen(&self, user: UserId, guild: Option<GuildId>) {
        let Some(guild) = guild else { return };
        let mut memory = self.memory();
        match memory.seen_on.map.get_mut(&user) {
            Some(servers) => drop(servers.insert(guild)),
            None => memory.seen_on.put(user, HashSet::from([guild])),
        }
    }

    /// Servers on which someone was seen since the start.
    pub fn seen_on(&self, user: UserId) -> HashSet<GuildId> {
        self.memory()
            .seen_on
            .map
            .get(&user)
            .cloned()
            .unwrap_or_default()
    }

    /// Of these servers, those that someone was not asked for lately.
    pub fn not_asked(&self, user: UserId, servers: &[GuildId]) -> Vec<GuildId> {
        let memory = self.memory();
        let known = memory
            .asked
            .map
            .get(&user)
            .filter(|(when, _)| when.elapsed() < ASKED_ANEW);
        servers
            .iter()
            .filter(|guild| known.is_none_or(|(_, asked)| !asked.contains(guild)))
            .copied()
            .collect()
    }

    /// These servers were asked for someone.
    pub fn note_asked(&self, user: UserId, servers: &[GuildId]) {
        let mut memory = self.memory();
        let mut all: HashSet<GuildId> = servers.iter().copied().collect();
        let mut since = Instant::now();
        if let Some((when, asked)) = memory.asked.map.remove(&user)
            && when.elapsed() < ASKED_ANEW
        {
            all.extend(asked);
            since = when;
        }
        memory.asked.put(user, (since, all));
    }

    /// What the bot may do in a channel, as far as the cache knows.
    pub fn permissions_in(&self, id: ChannelId) -> Option<serenity::Permissions> {
        let cache = self.cache.get()?;
        let guild = cache.guild(self.guild_of(id)?)?;
        let me = guild.members.get(&self.me)?;
        Some(guild.user_permissions_in(guild.channels.get(&id)?, me))
    }

    /// Whether a post's thread may be opened in a group's channel, as far as is known.
    pub fn opens_threads(&self, place: &Place) -> bool {
        channel(place)
            .and_then(|channel| self.permissions_in(channel))
            .is_none_or(|have| have.contains(serenity::Permissions::CREATE_PUBLIC_THREADS))
    }

    /// A new group.
    pub fn add_group(&self, id: ChannelId) {
        self.memory().groups.insert(id);
    }
}
