//! What the loopback Discord remembers: servers, people, channels, messages, interactions, and a log of
//! every request. Kept under one lock; nothing here waits or speaks to a network.

use std::{
    collections::{BTreeMap, HashMap, HashSet},
    time::Instant,
};

use serde_json::Value;

use super::{
    chronicle::Chronicle, faults::Faults, gateway::Sessions, ids::Ids, log::LogEntry,
    openapi::OpenApi, permissions, rates::Rates,
};
use crate::tongue::Tongue;

/// Everything there is.
#[derive(Debug)]
pub struct World {
    /// Makes ids.
    pub ids: Ids,
    /// Where this server listens, such as `http://127.0.0.1:40001`.
    pub url: String,
    /// The bot's token, the only one that is accepted.
    pub token: String,
    /// Id of the application, which is also the bot's user.
    pub bot: u64,
    /// Privileged intents granted in the application's settings.
    pub granted_intents: u64,
    /// How often the bot must send a heartbeat, in milliseconds.
    pub heartbeat_ms: u64,
    /// People, the bot among them.
    pub users: BTreeMap<u64, User>,
    /// Servers.
    pub guilds: BTreeMap<u64, Guild>,
    /// Channels, threads and direct conversations.
    pub channels: BTreeMap<u64, Channel>,
    /// Messages, private ones (ephemeral) too.
    pub messages: BTreeMap<u64, Message>,
    /// Uploaded files.
    pub files: BTreeMap<u64, File>,
    /// Interactions by id.
    pub interactions: BTreeMap<u64, Interaction>,
    /// Commands as the bot registered them.
    pub commands: Vec<Value>,
    /// Nonces of the last minutes: channel and nonce to when and which message.
    pub nonces: HashMap<(u64, String), (Instant, u64)>,
    /// Gateway sessions.
    pub sessions: Sessions,
    /// Rate limits.
    pub rates: Rates,
    /// Trouble that a test asked for.
    pub faults: Faults,
    /// Every request in order.
    pub log: Vec<LogEntry>,
    /// What people's clients speak, and what they press and write in.
    pub tongue: Tongue,
    /// The conversation as people see it.
    pub chronicle: Chronicle,
    /// Where the bot broke a rule of the interface: each must fail a test.
    pub violations: Vec<String>,
    /// Discord's own description of the interface, where it is at hand.
    pub openapi: Option<OpenApi>,
}

/// A person or the bot.
#[derive(Clone, Debug)]
pub struct User {
    /// Id.
    pub id: u64,
    /// Account name.
    pub name: String,
    /// Name to show.
    pub shown: String,
    /// Whether this is the bot.
    pub bot: bool,
    /// Whether the person takes direct messages from those they share a server with.
    pub takes_direct: bool,
    /// The language of the person's client.
    pub locale: String,
}

/// A server.
#[derive(Clone, Debug)]
pub struct Guild {
    /// Id; also the id of the role everyone has.
    pub id: u64,
    /// Name.
    pub name: String,
    /// Who owns it.
    pub owner: u64,
    /// Roles.
    pub roles: Vec<Role>,
    /// Members by user id.
    pub members: BTreeMap<u64, Member>,
}

/// A role.
#[derive(Clone, Debug)]
pub struct Role {
    /// Id.
    pub id: u64,
    /// Name.
    pub name: String,
    /// Permission bits.
    pub permissions: u64,
}

/// A user's part in a server.
#[derive(Clone, Debug, Default)]
pub struct Member {
    /// Name in this server only.
    pub nick: Option<String>,
    /// Roles besides everyone's.
    pub roles: Vec<u64>,
}

/// Kinds of channel that matter here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChannelKind {
    /// A text channel of a server.
    Text,
    /// A public thread.
    Thread,
    /// The conversation of the bot with one person.
    Direct,
}

/// A channel.
#[derive(Clone, Debug)]
pub struct Channel {
    /// Id.
    pub id: u64,
    /// Kind.
    pub kind: ChannelKind,
    /// Server, but for direct conversations.
    pub guild: Option<u64>,
    /// The channel a thread belongs to.
    pub parent: Option<u64>,
    /// Name.
    pub name: String,
    /// Who made the thread, or the person of a direct conversation.
    pub owner: u64,
    /// Permissions changed for a role or a member.
    pub overwrites: Vec<Overwrite>,
    /// For threads: put away.
    pub archived: bool,
    /// For threads: only those who may manage threads write.
    pub locked: bool,
}

/// Permissions changed in one channel.
#[derive(Clone, Copy, Debug)]
pub struct Overwrite {
    /// Role or user.
    pub of: u64,
    /// Whether `of` is a user.
    pub user: bool,
    /// Bits given.
    pub allow: u64,
    /// Bits taken.
    pub deny: u64,
}

/// A message.
#[derive(Clone, Debug, Default)]
pub struct Message {
    /// Id.
    pub id: u64,
    /// Channel.
    pub channel: u64,
    /// Author.
    pub author: u64,
    /// Text.
    pub content: String,
    /// Embeds as sent.
    pub embeds: Vec<Value>,
    /// Rows of buttons and menus, as sent.
    pub components: Vec<Value>,
    /// Files.
    pub attachments: Vec<u64>,
    /// Flags; 64 is for one pair of eyes only.
    pub flags: u64,
    /// Type; 0 ordinary, 19 a reply, 20 an answer to a command, 21 the first line of a thread.
    pub kind: u8,
    /// The message this one answers.
    pub reference: Option<u64>,
    /// The only person who sees it, when it is private.
    pub only: Option<u64>,
    /// The interaction that made it.
    pub interaction: Option<u64>,
    /// Whether it waits for the bot's text after a deferral.
    pub loading: bool,
    /// When it was edited, in milliseconds since 1970.
    pub edited: Option<u64>,
    /// Users it notified.
    pub pings: HashSet<u64>,
    /// Whether it notified everyone or a role.
    pub pings_many: bool,
    /// Users named in it.
    pub mentions: Vec<u64>,
    /// The sender's nonce.
    pub nonce: Option<Value>,
    /// Reactions: emoji and user.
    pub reactions: Vec<(String, u64)>,
}

/// An uploaded file.
#[derive(Clone, Debug)]
pub struct File {
    /// Id.
    pub id: u64,
    /// Name.
    pub name: String,
    /// Alt text.
    pub description: Option<String>,
    /// Content type.
    pub kind: String,
    /// Content.
    pub bytes: Vec<u8>,
    /// Size told to the bot, when a test makes it lie.
    pub told_size: Option<u64>,
}

/// What an interaction is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InteractionKind {
    /// Slash command.
    Command = 2,
    /// Button or menu.
    Component = 3,
    /// Autocomplete.
    Autocomplete = 4,
    /// A modal sent off.
    Modal = 5,
}

/// Where an interaction stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Answered {
    /// Not yet.
    No,
    /// With a message, shown.
    Message,
    /// A message is promised.
    Deferred,
    /// The message with the button was, or will be, changed.
    Update,
    /// With a modal.
    Modal(Value),
    /// With choices.
    Choices(Value),
}

/// An interaction.
#[derive(Clone, Debug)]
pub struct Interaction {
    /// Id.
    pub id: u64,
    /// Token.
    pub token: String,
    /// What it is.
    pub kind: InteractionKind,
    /// Who.
    pub user: u64,
    /// Where.
    pub channel: u64,
    /// When.
    pub at: Instant,
    /// What came of it.
    pub answered: Answered,
    /// How long the first answer took.
    pub took: Option<std::time::Duration>,
    /// The message that answers it, or for a component the one it sits on.
    pub original: Option<u64>,
    /// Further messages, oldest first.
    pub followups: Vec<u64>,
    /// The message the component sits on.
    pub on: Option<u64>,
    /// What the person did, in words, for the record.
    pub what: String,
}

impl World {
    /// The channel, when it exists.
    pub fn channel(&self, id: u64) -> Option<&Channel> {
        self.channels.get(&id)
    }

    /// What the bot may do in a channel.
    pub fn bot_may(&self, channel: &Channel, bits: u64) -> bool {
        permissions::in_channel(self, channel, self.bot) & bits == bits
    }

    /// Everyone who can read a channel, the bot left out.
    pub fn readers(&self, channel: &Channel) -> HashSet<u64> {
        match channel.guild.and_then(|id| self.guilds.get(&id)) {
            Some(guild) => guild
                .members
                .keys()
                .copied()
                .filter(|&user| user != self.bot)
                .filter(|&user| {
                    permissions::in_channel(self, channel, user) & permissions::VIEW_CHANNEL != 0
                })
                .collect(),
            None => HashSet::from([channel.owner]),
        }
    }

    /// The name a user goes by in a server.
    pub fn name_in(&self, guild: Option<u64>, user: u64) -> String {
        guild
            .and_then(|id| self.guilds.get(&id)?.members.get(&user)?.nick.clone())
            .or_else(|| self.users.get(&user).map(|user| user.shown.clone()))
            .unwrap_or_default()
    }

    /// The direct conversation with a user, if there has been one.
    pub fn direct_with(&self, user: u64) -> Option<u64> {
        self.channels
            .values()
            .find(|channel| channel.kind == ChannelKind::Direct && channel.owner == user)
            .map(|channel| channel.id)
    }

    /// Opens the direct conversation with a user.
    pub fn open_direct(&mut self, user: u64) -> u64 {
        if let Some(id) = self.direct_with(user) {
            return id;
        }
        let id = self.ids.next();
        self.channels.insert(
            id,
            Channel {
                id,
                kind: ChannelKind::Direct,
                guild: None,
                parent: None,
                name: String::new(),
                owner: user,
                overwrites: Vec::new(),
                archived: false,
                locked: false,
            },
        );
        id
    }

    /// Notes that the bot broke a rule.
    pub fn violation(&mut self, text: impl Into<String>) {
        self.violations.push(text.into());
    }
}
