//! How each chat fares, as one value: the supervisor sets it, the console and the coach's page show it.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use serde::Serialize;
use tokio::sync::watch;

use crate::desk::ChatName;

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
        why: String,
    },
    /// It is down and will be started again.
    Failing {
        /// Since when.
        since: DateTime<Utc>,
        /// Why.
        why: String,
        /// When it is started again.
        next_try: DateTime<Utc>,
    },
    /// It is down until somebody does what the reason says.
    Refused {
        /// Since when.
        since: DateTime<Utc>,
        /// Why, with the remedy.
        why: String,
    },
    /// It was stopped with the program.
    Stopped,
}

/// How all chats fare. Cheap to clone; all clones are one.
#[derive(Clone, Debug)]
pub struct Statuses(Arc<watch::Sender<Vec<(ChatName, Status)>>>);

impl Default for Statuses {
    fn default() -> Self {
        Self(Arc::new(watch::Sender::new(Vec::new())))
    }
}

impl Statuses {
    /// How every chat fares, in the order of their first mention.
    pub fn all(&self) -> Vec<(ChatName, Status)> {
        self.0.borrow().clone()
    }

    /// Notes how a chat fares.
    pub fn set(&self, chat: ChatName, status: Status) {
        self.0
            .send_if_modified(|all| match all.iter_mut().find(|(name, _)| *name == chat) {
                Some((_, known)) if *known == status => false,
                Some((_, known)) => {
                    *known = status;
                    true
                }
                None => {
                    all.push((chat, status));
                    true
                }
            });
    }

    /// Hears of every change.
    pub fn changes(&self) -> watch::Receiver<Vec<(ChatName, Status)>> {
        self.0.subscribe()
    }
}

/// A chat's name as people read it.
pub fn name(chat: ChatName) -> &'static str {
    match chat {
        ChatName::Room => "The club room",
        ChatName::Discord => "Discord",
    }
}
