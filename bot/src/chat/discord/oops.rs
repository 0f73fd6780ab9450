//! What can go wrong on the way to an answer, in words for the person who asked.

use poise::serenity_prelude as serenity;
use serde::Serialize;
use serde_json::Value;

use super::{fit, text::Study};
use crate::{chat::said::refused, desk::DeskError, words::Words};

/// Why something could not be done.
#[derive(Debug, thiserror::Error)]
pub enum Oops {
    /// The desk says why.
    #[error(transparent)]
    Desk(#[from] DeskError),
    /// We say why: one of our texts.
    #[error("{0}")]
    Said(Value),
    /// Discord says why.
    #[error("{}", brief(.0))]
    Discord(Box<serenity::Error>),
    /// Something could not be written out.
    #[error("it could not be written out: {0}")]
    Unwritten(serde_json::Error),
}

impl Oops {
    /// Something could not be written out.
    pub fn unwritten(error: serde_json::Error) -> Self {
        Self::Unwritten(error)
    }

    /// In words, for the person who asked.
    pub fn in_words(&self, words: &Words) -> String {
        match self {
            Self::Desk(error) => fit::plain(&refused(error, words)),
            Self::Said(text) => words.say(text),
            Self::Discord(_) => words.say(&Study::DiscordRefused),
            Self::Unwritten(error) => fit::plain(&error.to_string()),
        }
    }
}

impl From<serenity::Error> for Oops {
    fn from(error: serenity::Error) -> Self {
        Self::Discord(Box::new(error))
    }
}

/// What an answer to an interaction comes to.
pub type Answer<T> = Result<T, Oops>;

/// An error that one of our texts tells.
pub fn said<T>(text: impl Serialize) -> Answer<T> {
    Err(Oops::Said(serde_json::to_value(text).unwrap_or_default()))
}

/// Discord's code for an error, where it gave one.
pub fn code(error: &serenity::Error) -> Option<isize> {
    match error {
        serenity::Error::Http(serenity::HttpError::UnsuccessfulRequest(response)) => {
            Some(response.error.code)
        }
        _ => None,
    }
}

/// The HTTP status of an error, where there was an answer.
pub fn status(error: &serenity::Error) -> Option<u16> {
    match error {
        serenity::Error::Http(serenity::HttpError::UnsuccessfulRequest(response)) => {
            Some(response.status_code.as_u16())
        }
        _ => None,
    }
}

/// What went wrong, for the log: never an address, which may hold an interaction's token.
pub fn brief(error: &serenity::Error) -> String {
    match error {
        // What the gate says when there was no answer at all.
        serenity::Error::Http(serenity::HttpError::UnsuccessfulRequest(response))
            if response.error.code == 0 =>
        {
            format!(
                "{} ({})",
                response.error.message,
                response.status_code.as_u16()
            )
        }
        serenity::Error::Http(serenity::HttpError::UnsuccessfulRequest(response)) => format!(
            "{} {} ({})",
            response.status_code.as_u16(),
            response.error.message,
            response.error.code
        ),
        serenity::Error::Http(_) => "the request could not be made".into(),
        other => other.to_string(),
    }
}

/// Codes of Discord's that call for something of our own.
pub mod codes {
    /// The channel is gone.
    pub const UNKNOWN_CHANNEL: isize = 10003;
    /// The message is gone.
    pub const UNKNOWN_MESSAGE: isize = 10008;
    /// The channel may not be seen.
    pub const MISSING_ACCESS: isize = 50001;
    /// The person takes no direct messages from us.
    pub const NO_DIRECT_MESSAGES: isize = 50007;
    /// A permission is missing.
    pub const MISSING_PERMISSIONS: isize = 50013;
    /// The message has its thread already.
    pub const THREAD_EXISTS: isize = 160_004;
}
