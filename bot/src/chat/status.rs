//! How each chat fares, as one value: the supervisor sets it, the console and the coach's page show it.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use serde::Serialize;
use tokio::sync::watch;

use crate::desk::{ChatKey, Sentence};

/// How a chat fares.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "state", rename_all = "lowercase")]
pub enum Status {
    /// It is being started for the first time.
    Starting,
    /// It is up.
    Up {
        /// Since when.
        since: DateTime<Utc>,
    },
    /// It was up, and its line is lost; it connects anew by itself.
    Wavering {
        /// Since when.
        since: DateTime<Utc>,
        /// What is known of the reason.
        why: Sentence,
    },
    /// It is down and will be started again.
    Failing {
        /// Since when.
        since: DateTime<Utc>,
        /// Why.
        why: Sentence,
        /// When it is started again.
        next_try: DateTime<Utc>,
    },
    /// It is down until somebody does what the reason says.
    Refused {
        /// Since when.
        since: DateTime<Utc>,
        /// Why, with the remedy.
        why: Sentence,
    },
    /// It was stopped with the program.
    Stopped,
}

impl Status {
    /// Why the chat is not up, where that is known.
    pub fn why(&self) -> Option<&Sentence> {
        match self {
            Self::Wavering { why, .. } | Self::Failing { why, .. } | Self::Refused { why, .. } => {
                Some(why)
            }
            Self::Starting | Self::Up { .. } | Self::Stopped => None,
        }
    }
}

/// A chat and how it fares.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fares {
    /// Which chat.
    pub chat: ChatKey,
    /// Its name as people read it.
    pub name: &'static str,
    /// How it fares.
    pub status: Status,
}

/// How all chats fare. Cheap to clone; all clones are one.
#[derive(Clone, Debug)]
pub struct Statuses(Arc<watch::Sender<Vec<Fares>>>);

impl Default for Statuses {
    fn default() -> Self {
        Self(Arc::new(watch::Sender::new(Vec::new())))
    }
}

impl Statuses {
    /// How every chat fares, in the order in which they were added.
    pub fn all(&self) -> Vec<Fares> {
        self.0.borrow().clone()
    }

    /// Adds a chat that is about to be started.
    pub fn add(&self, chat: ChatKey, name: &'static str) {
        self.0.send_modify(|all| {
            all.push(Fares {
                chat,
                name,
                status: Status::Starting,
            });
        });
    }

    /// Notes how a chat fares that was added.
    pub fn set(&self, chat: ChatKey, status: Status) {
        self.0.send_if_modified(
            |all| match all.iter_mut().find(|known| known.chat == chat) {
                Some(known) if known.status != status => {
                    known.status = status;
                    true
                }
                _ => false,
            },
        );
    }

    /// Hears of every change.
    pub fn changes(&self) -> watch::Receiver<Vec<Fares>> {
        self.0.subscribe()
    }
}
