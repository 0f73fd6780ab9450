//! Permission bits and how they combine: roles first, then the channel's overwrites, as the published
//! documentation computes them.

use super::world::{Channel, ChannelKind, World};

/// A permission bit by its published name.
macro_rules! bits {
    ($($(#[$doc:meta])* $name:ident = $bit:expr;)+) => {
        $($(#[$doc])* pub const $name: u64 = 1 << $bit;)+
    };
}

bits! {
    /// Create Invite.
    CREATE_INVITE = 0;
    /// Administrator: everything.
    ADMINISTRATOR = 3;
    /// Manage Channels.
    MANAGE_CHANNELS = 4;
    /// Manage Server.
    MANAGE_GUILD = 5;
    /// Add Reactions.
    ADD_REACTIONS = 6;
    /// View Channel.
    VIEW_CHANNEL = 10;
    /// Send Messages.
    SEND_MESSAGES = 11;
    /// Manage Messages.
    MANAGE_MESSAGES = 13;
    /// Embed Links.
    EMBED_LINKS = 14;
    /// Attach Files.
    ATTACH_FILES = 15;
    /// Read Message History.
    READ_MESSAGE_HISTORY = 16;
    /// Mention everyone and all roles.
    MENTION_EVERYONE = 17;
    /// Use Application Commands.
    USE_APPLICATION_COMMANDS = 31;
    /// Manage Threads.
    MANAGE_THREADS = 34;
    /// Create Public Threads.
    CREATE_PUBLIC_THREADS = 35;
    /// Send Messages in Threads.
    SEND_MESSAGES_IN_THREADS = 38;
}

/// What a new server gives everyone, as far as this matters here.
pub const ORDINARY: u64 = ADD_REACTIONS
    | VIEW_CHANNEL
    | SEND_MESSAGES
    | EMBED_LINKS
    | ATTACH_FILES
    | READ_MESSAGE_HISTORY
    | MENTION_EVERYONE
    | USE_APPLICATION_COMMANDS
    | CREATE_PUBLIC_THREADS
    | SEND_MESSAGES_IN_THREADS;

/// What the bot's role is given when it is invited as the README says.
pub const AS_INVITED: u64 = VIEW_CHANNEL
    | SEND_MESSAGES
    | SEND_MESSAGES_IN_THREADS
    | CREATE_PUBLIC_THREADS
    | EMBED_LINKS
    | ATTACH_FILES
    | READ_MESSAGE_HISTORY
    | ADD_REACTIONS;

/// What `user` may do in `channel`.
pub fn in_channel(world: &World, channel: &Channel, user: u64) -> u64 {
    let Some(guild) = channel.guild.and_then(|id| world.guilds.get(&id)) else {
        // In a direct conversation the two may do everything that makes sense there.
        return if channel.kind == ChannelKind::Direct {
            ORDINARY
        } else {
            0
        };
    };
    if guild.owner == user {
        return u64::MAX;
    }
    let Some(member) = guild.members.get(&user) else {
        return 0;
    };
    let mut bits = guild
        .roles
        .iter()
        .filter(|role| role.id == guild.id || member.roles.contains(&role.id))
        .fold(0, |bits, role| bits | role.permissions);
    if bits & ADMINISTRATOR != 0 {
        return u64::MAX;
    }
    // A thread has the permissions of the channel it belongs to.
    let rules = channel
        .parent
        .filter(|_| channel.kind == ChannelKind::Thread)
        .and_then(|id| world.channels.get(&id))
        .unwrap_or(channel);
    let mut apply = |of: &dyn Fn(u64) -> bool| {
        let (mut allow, mut deny) = (0, 0);
        for rule in rules.overwrites.iter().filter(|rule| of(rule.of)) {
            allow |= rule.allow;
            deny |= rule.deny;
        }
        bits = bits & !deny | allow;
    };
    apply(&|of| of == guild.id);
    apply(&|of| of != guild.id && member.roles.contains(&of));
    apply(&|of| of == user);
    if bits & VIEW_CHANNEL == 0 {
        return 0;
    }
    bits
}
