//! What every command, button and message handler shares: the desk, the client, and small memories that
//! need not outlive the process.

use std::{
    collections::{HashMap, HashSet, VecDeque},
    sync::{Arc, Mutex, MutexGuard, OnceLock},
    time::{Duration, Instant},
};

use poise::serenity_prelude as serenity;
use serenity::{Cache, ChannelId, GuildId, Http, MessageId, UserId};
use tokio::sync::watch;

use super::{KEY, turns::Turns};
use crate::{
    chat::said::words_of,
    desk::{CheckedPosition, Desk, DeskError, Person, Place},
    words::{Words, english, words},
};

/// How many remembered things of a kind are kept before the oldest goes.
const MOST_REMEMBERED: usize = 10_000;
/// How long a message waits for a post that is on its way.
const LONGEST_WAY: Duration = Duration::from_secs(30);
/// How many check reports, and how many long answers, stay open for paging.
const MOST_REPORTS: usize = 32;
/// For how long it is remembered which servers a person is on that were asked.
const ASKED_ANEW: Duration = Duration::from_secs(600);

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
    /// Servers on which a person was seen.
    seen_on: Bounded<UserId, HashSet<GuildId>>,
    /// Servers that were asked for a person, and when.
    asked: Bounded<UserId, (Instant, HashSet<GuildId>)>,
}

/// A long answer, in parts that each fit into a message.
pub struct Parts {
    /// Whose it is.
    pub user: UserId,
    /// The parts.
    pub texts: Vec<String>,
    /// Buttons under each.
    pub rows: Vec<serenity::CreateActionRow>,
    /// What the buttons that turn the parts are called in.
    pub words: &'static Words,
}

/// A check report that a coach pages through.
pub struct Opened {
    /// The group.
    pub place: Place,
    /// Whose it is.
    pub coach: String,
    /// The positions.
    pub positions: Vec<CheckedPosition>,
}

/// A map that forgets its oldest entry when it is full.
struct Bounded<K, V> {
    map: HashMap<K, V>,
    order: VecDeque<K>,
}

impl<K, V> Default for Bounded<K, V> {
    fn default() -> Self {
        Self {
            map: HashMap::new(),
            order: VecDeque::new(),
        }
    }
}

impl<K: Copy + Eq + std::hash::Hash, V> Bounded<K, V> {
    fn put(&mut self, key: K, value: V) {
        if self.map.insert(key, value).is_none() {
            self.order.push_back(key);
        }
        while self.map.len() > MOST_REMEMBERED {
            match self.order.pop_front() {
                Some(old) => drop(self.map.remove(&old)),
                None => break,
            }
        }
    }
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

    /// Opens a check report for paging; gives its number.
    pub fn open_report(&self, report: Opened) -> u64 {
        let mut memory = self.memory();
        memory.next_report += 1;
        let number = memory.next_report;
        memory.reports.push_back((number, Arc::new(report)));
        if memory.reports.len() > MOST_REPORTS {
            memory.reports.pop_front();
        }
        number
    }

    /// Puts a position of an open report in the place of what it was before.
    pub fn settle_in_report(&self, number: u64, at: usize, position: CheckedPosition) {
        let mut memory = self.memory();
        let Some((_, report)) = memory.reports.iter_mut().find(|(key, _)| *key == number) else {
            return;
        };
        let mut positions = report.positions.clone();
        if let Some(place) = positions.get_mut(at) {
            *place = position;
        }
        *report = Arc::new(Opened {
            place: report.place.clone(),
            coach: report.coach.clone(),
            positions,
        });
    }

    /// Opens a long answer for reading part by part; gives it with its number.
    pub fn open_parts(&self, parts: Parts) -> (u64, Arc<Parts>) {
        let mut memory = self.memory();
        memory.next_parts += 1;
        let opened = (memory.next_parts, Arc::new(parts));
        memory.parts.push_back(opened.clone());
        if memory.parts.len() > MOST_REPORTS {
            memory.parts.pop_front();
        }
        opened
    }

    /// A long answer that is still open.
    pub fn parts(&self, number: u64) -> Option<Arc<Parts>> {
        let memory = self.memory();
        let found = memory.parts.iter().find(|(key, _)| *key == number)?;
        Some(Arc::clone(&found.1))
    }

    /// A check report that is still open.
    pub fn report(&self, number: u64) -> Option<Arc<Opened>> {
        let memory = self.memory();
        let found = memory.reports.iter().find(|(key, _)| *key == number)?;
        Some(Arc::clone(&found.1))
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

    /// The words for what all see in a group.
    pub async fn words_of_group(&self, place: &Place) -> &'static Words {
        match self.desk.settings(place).await {
            Ok(settings) => words(settings.language.tag()),
            Err(_) => english(),
        }
    }

    /// The words for what one person sees in a group, or of one that is not there.
    pub async fn words_for(&self, place: &Place, person: &Person) -> &'static Words {
        match (self.desk.language_of(place, person).await, &person.language) {
            (Ok(language), _) => words_of(&language),
            (Err(_), Some(language)) => words_of(language),
            (Err(_), None) => english(),
        }
    }

    /// A group that a person belongs to, as far as is known without asking Discord.
    pub async fn group_with(&self, user: UserId) -> Option<Place> {
        let user = user.to_string();
        for place in self.groups().into_iter().map(place) {
            if let Ok(Some(_)) = self.desk.name_of(&place, &user).await {
                return Some(place);
            }
        }
        None
    }

    /// The person in a group: under the name they have there, or the one they come with.
    pub async fn person(&self, place: &Place, user: UserId, name: &str) -> Person {
        let user = user.to_string();
        let known = self.desk.name_of(place, &user).await.ok().flatten();
        Person {
            user,
            name: known.unwrap_or_else(|| name.to_owned()),
            language: None,
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
