//! Discord: the chat in its own manners, on poise and serenity, which nothing outside this folder knows.
//!
//! - [`start`] logs in, registers the commands and listens; [`carry`] sends what the desk has to say.
//! - `commands/` has a file for each command, `presses` the buttons and forms, `talk` the messages among
//!   others and the direct ones, `missed` what was said while no one listened, `turns` their order, `held` those
//!   that wait for their writer's word.
//! - `sheets/` lays the desk's sheets out; `letter` sends them; `words` makes text fit for Discord.
//! - `gate/` is what every request passes through: rate limits, patience, second attempts.
//!
//! Data comes in as gateway events, goes to the desk's calls, and what they give goes out by REST. The
//! store is never touched, and the token never written.

mod buttons;
mod carry;
mod client;
mod commands;
mod gate;
mod held;
mod house;
mod letter;
mod missed;
mod oops;
mod permissions;
mod presses;
mod private;
mod sheets;
mod talk;
mod token;
mod turns;
mod words;

use std::sync::Arc;

pub use token::{Token, TokenError};

use super::{Chat, Shutdown};
use crate::desk::Desk;

/// Where Discord is.
const DISCORD: &str = "https://discord.com";

/// How to go about Discord.
#[derive(Clone, Debug)]
pub struct DiscordOptions {
    /// The bot's token.
    pub token: Token,
    /// Another server that speaks as Discord does, such as `http://127.0.0.1:40000`.
    pub api: Option<String>,
    /// Whether the message-content intent was granted; without it, what members write in channels is
    /// heard only where they call the bot by name or reply to it.
    pub message_content: bool,
}

/// Why Discord could not be started.
#[derive(Debug, thiserror::Error)]
pub enum DiscordStartError {
    /// The token is refused.
    #[error(
        "Discord refuses the bot's token; copy it anew from the Bot page of your application (discord.com/developers) into DISCORD_TOKEN or the file that DISCORD_TOKEN_FILE names"
    )]
    Token,
    /// The message-content intent was not granted.
    #[error(
        "Discord refuses the message-content intent; switch it on under Bot → Privileged Gateway Intents of your application (discord.com/developers), or set message_content = false under [discord] in the settings"
    )]
    Intent,
    /// The address given is none.
    #[error(
        "SEALED_MOVE_DISCORD_API must be an address such as http://127.0.0.1:40000, not \"{0}\""
    )]
    Address(String),
    /// Nothing answers.
    #[error("Discord cannot be reached: {0}")]
    Unreachable(String),
    /// The desk failed.
    #[error(transparent)]
    Desk(#[from] crate::desk::DeskError),
}

/// Logs in and listens until `shutdown`. Gives the chat for the round of errands once Discord has
/// greeted the bot.
///
/// # Errors
/// When the token or an intent is refused, neither of which is worth trying again; or when Discord
/// cannot be reached for about half a minute.
pub async fn start(
    desk: Desk,
    options: DiscordOptions,
    shutdown: Shutdown,
) -> Result<Arc<dyn Chat>, DiscordStartError> {
    let house = client::start(desk, options, shutdown).await?;
    Ok(Arc::new(carry::Discord { house }))
}
