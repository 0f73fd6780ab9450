//! Discord: the chat in its own manners, on poise and serenity, which nothing outside this folder knows.
//!
//! - `client` logs in, registers the commands and listens; `carry` sends what the desk has to say;
//!   `way` makes each request of a post once; `hands` knows what is being dealt with at a stop.
//! - `commands/` has a file for each command, `presses/` the buttons, menus and forms that are sent,
//!   `forms` the forms, `talk` the messages among
//!   others and the direct ones, `edits` those that were edited or deleted, `which_post` which post is meant,
//!   `tell` what goes to one person directly, `missed` what was said while no one listened, `turns` their order, `held` those
//!   that wait for their writer's word.
//! - `text/` has everything that is said, as facts; `sheets/` lays the desk's sheets out; `letter` sends them;
//!   `fit` makes text fit for Discord.
//! - `gate/` is what every request passes through: rate limits, patience, second attempts.
//!
//! Data comes in as gateway events, goes to the desk's calls, and what they give goes out by REST. The
//! store is never touched, and the token never written.

mod buttons;
mod carry;
mod client;
mod commands;
mod edits;
mod fit;
mod forms;
mod gate;
mod hands;
mod held;
mod house;
mod letter;
mod missed;
mod oops;
mod permissions;
mod presses;
mod private;
mod registration;
mod sheets;
mod talk;
mod tell;
mod text;
mod token;
mod turns;
mod way;
mod which_post;

use std::{
    sync::{Mutex, MutexGuard, PoisonError},
    time::Duration,
};

use async_trait::async_trait;
pub use registration::registration;
pub use token::{Token, TokenError};

use text::Fault;

use super::{Down, Report, Service, Shutdown};
use crate::desk::{ChatKey, Delivery, Desk, DeskError, Manners, Names, Sentence};

/// Discord's key.
pub const KEY: ChatKey = ChatKey::of("discord");

/// Discord has names for people, and a verdict is a message.
const MANNERS: Manners = Manners {
    names: Names::ByChat,
    delivery: Delivery::Sent,
};

/// Where Discord is.
const DISCORD: &str = "https://discord.com";

/// How often another token is looked for after one was refused.
const LOOK_FOR_TOKEN: Duration = Duration::from_secs(20);

/// How to go about Discord.
#[derive(Clone, Debug)]
pub struct DiscordOptions {
    /// Another server that speaks as Discord does, such as `http://127.0.0.1:40000`.
    pub api: Option<String>,
    /// Whether the message-content intent was granted; without it, what members write in channels is
    /// heard only where they call the bot by name or reply to it.
    pub message_content: bool,
}

/// Why Discord could not be started.
#[derive(Debug)]
pub(super) enum StartError {
    /// Nothing will help but what this says.
    ForGood(Fault),
    /// Worth trying again.
    ForNow(Fault),
    /// The desk failed.
    Desk(DeskError),
}

impl From<DeskError> for StartError {
    fn from(error: DeskError) -> Self {
        Self::Desk(error)
    }
}

impl From<StartError> for Down {
    fn from(error: StartError) -> Self {
        match error {
            StartError::ForGood(fault) => Self::ForGood(Sentence::of(fault)),
            StartError::ForNow(fault) => Self::ForNow(Sentence::of(fault)),
            StartError::Desk(error) => Self::ForNow(Sentence::of(error)),
        }
    }
}

/// Discord as the supervisor runs it.
pub struct DiscordService {
    desk: Desk,
    options: DiscordOptions,
    /// The token it was started with last.
    tried: Mutex<Option<Token>>,
}

impl DiscordService {
    /// Discord with the token that the environment names when it is started.
    pub fn new(desk: Desk, options: DiscordOptions) -> Self {
        Self {
            desk,
            options,
            tried: Mutex::default(),
        }
    }

    fn tried(&self) -> MutexGuard<'_, Option<Token>> {
        self.tried.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[async_trait]
impl Service for DiscordService {
    fn key(&self) -> ChatKey {
        KEY
    }

    async fn run(&self, report: Report, shutdown: Shutdown) -> Result<(), Down> {
        *self.tried() = None;
        let token = Token::from_environment()
            .map_err(|error| StartError::ForGood(error.fault()))?
            .ok_or(StartError::ForGood(Fault::NoToken))?;
        *self.tried() = Some(token.clone());
        client::run(&self.desk, &self.options, &token, report, shutdown)
            .await
            .map_err(Down::from)
    }

    /// Another token is there, as where its file was written anew.
    async fn mended(&self) {
        loop {
            tokio::time::sleep(LOOK_FOR_TOKEN).await;
            let found = Token::from_environment().ok().flatten();
            if found.is_some() && found != *self.tried() {
                return;
            }
        }
    }
}
