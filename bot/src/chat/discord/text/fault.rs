//! Why Discord could not do something: told to the coaches, or to whoever runs the bot.

use serde::Serialize;

use super::Plain;

/// A sentence about what Discord could not do, with the remedy where there is one.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Fault {
    // Of a post, a reveal, or a word to somebody.
    NoDiscordChannel { channel: Plain },
    ChannelUnseen { channel: String },
    ChannelMute { channel: String },
    ChannelGone,
    DiscordAway,
    DiscordRefuses { why: String },
    DirectUnsent { why: String },
    PartMissing { why: String },
    ThreadMissing { why: String },
    ButtonsStay { why: String },

    // Of the connection.
    NoToken,
    TokenFileUnreadable { path: Plain, why: Plain },
    TokenUnfit,
    TokenFileUnfit,
    TokenRefused,
    IntentRefused,
    NotAnApi { address: Plain },
    DiscordUnreachable { why: String },
    CommandsRefused { why: String },
    TooManyLogins { minutes: u64 },
    GatewayClosed,
    NoGreeting,
    ConnectionLost,
    OnDiscord,
}
