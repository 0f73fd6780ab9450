//! Floor 3: chats. One trait, the small set of messages that pass through it (the desk's sheets), one list
//! of the chats there are (`registry`), what they do alike (`common`), and one folder per chat. Never touches the store, nor chess beyond the types the desk hands over.

pub mod common;
pub mod discord;
pub mod dispatch;
pub mod pictures;
pub mod registry;
pub mod room;
pub mod said;
pub mod service;
pub mod shutdown;
pub mod status;
pub mod tasks;

pub use registry::{Registration, Registry};
pub use service::{Down, News, Report, Service};
pub use shutdown::{Shutdown, Stop};
pub use status::{Status, Statuses};
pub use tasks::Tasks;

use async_trait::async_trait;

use crate::desk::{ChatKey, Delivered, DeskError, Errand, Sentence};

/// A chat that study groups talk in.
///
/// Incoming traffic (answers, talk, buttons, files) is each chat's own affair and goes straight to the
/// desk's calls; what goes out unasked comes through here.
#[async_trait]
pub trait Chat: Send + Sync {
    /// Which chat this is.
    fn key(&self) -> ChatKey;
    /// Carries out one errand: sends a post, a reveal or a word to the coach. When the errand says an
    /// earlier attempt may have got through, looks for it first and reports that one.
    async fn carry(&self, errand: &Errand) -> Result<Delivered, ChatError>;
    /// Told once the desk has written down where the errand went. A chat that shows what the desk has
    /// written down, as the room does, shows it now; others have nothing left to do.
    async fn settled(&self, _errand: &Errand) {}
}

/// Why an errand could not be carried out.
#[derive(Debug, thiserror::Error)]
pub enum ChatError {
    /// Worth trying again later.
    #[error("{0}")]
    Later(Sentence),
    /// Nothing will help but what the text says.
    #[error("{0}")]
    Never(Sentence),
}

impl ChatError {
    /// The desk could not do what the chat asked of it.
    pub fn of_desk(error: &DeskError) -> Self {
        Self::Later(Sentence::of(error))
    }

    /// Why.
    pub fn why(&self) -> &Sentence {
        match self {
            Self::Later(why) | Self::Never(why) => why,
        }
    }
}
