//! Everything the bot says on Discord, as facts by subject. What they say in each language stands in the
//! files `discord-*.ftl` of the package `words`, under the variant's name in kebab case.
//!
//! - What all see is said in the group's language, what one person sees in that person's; see
//!   `House::words_of_group` and `House::words_for`.
//! - People's words and moves become values through [`Plain`] and [`Moves`], which make them plain for
//!   Discord. In a [`Label`], where Discord reads no markup, they stay as they are.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

mod coach;
mod fault;
mod group;
mod post;
mod study;
mod talk;
#[cfg(test)]
mod tests;

pub use crate::chat::common::text::Tasked;
pub use crate::desk::values::{And, Decimal, List, Or, number};
pub use coach::Coach;
pub use fault::Fault;
pub use group::{Day, Days, Group, OpenFor};
pub use post::Posting;
pub use study::Study;
pub use talk::{Answerable, Talk};

use chrono::{DateTime, Utc};
use serde::Serialize;

use super::fit;
use crate::{chess::name, words::Words};

/// A person's words, or a file's, made plain among ours.
#[derive(Clone, Debug, Serialize)]
pub struct Plain {
    theirs: String,
}

impl Plain {
    /// These words, made plain.
    pub fn of(text: &str) -> Self {
        Self::already(fit::plain(text))
    }

    /// The first words on one line, to tell which message is meant.
    pub fn quote(text: &str) -> Self {
        Self::of(&fit::short(&text.replace('\n', " "), 200))
    }

    /// Words that are plain already.
    pub fn already(theirs: String) -> Self {
        Self { theirs }
    }
}

/// A person's words on a button, in a menu or in a thread's name.
#[derive(Clone, Debug, Serialize)]
pub struct Label {
    theirs: String,
}

impl Label {
    /// These words, as they are.
    pub fn of(text: &str) -> Self {
        Self {
            theirs: text.to_owned(),
        }
    }
}

/// Moves in SAN, numbered or not; shown with the reader's piece letters.
#[derive(Clone, Debug, Serialize)]
pub struct Moves {
    line: String,
}

impl Moves {
    /// These moves.
    pub fn of(line: &str) -> Self {
        Self {
            line: fit::plain(line),
        }
    }
}

/// A moment, in Discord's own markup: each reader sees it in their own time and language.
#[derive(Clone, Debug, Serialize)]
#[serde(transparent)]
pub struct Moment(String);

impl Moment {
    /// With day and time.
    pub fn of(at: DateTime<Utc>) -> Self {
        Self(format!("<t:{}:F>", at.timestamp()))
    }

    /// The day.
    pub fn day(at: DateTime<Utc>) -> Self {
        Self(format!("<t:{}:D>", at.timestamp()))
    }

    /// How long until then, or since.
    pub fn away(at: DateTime<Utc>) -> Self {
        Self(format!("<t:{}:R>", at.timestamp()))
    }
}

/// A topic's name in a list by topic, where posts without one have a line of their own.
pub fn topic(words: &Words, topic: Option<&str>) -> String {
    match topic {
        None => words.say(&Coach::NoTopic),
        Some(topic) => topic.to_owned(),
    }
}

/// A mating pattern's title, by its name.
pub fn pattern(words: &Words, pattern: &str) -> String {
    match name::names().any(|name| name == pattern) {
        true => words.text(&format!("pattern-{pattern}")),
        false => pattern.to_owned(),
    }
}
