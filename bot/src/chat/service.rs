//! A chat's whole life as a value: what the supervisor starts, watches, and starts again.
//!
//! A chat runs in one call from start to stop. It says when it is up, says when its line wavers, and ends
//! with the reason when it cannot go on. It spawns nothing: what it must do besides, it does in that call
//! or by [`super::Tasks`], which it waits for before it returns.

use std::sync::Arc;

use async_trait::async_trait;
use tokio::sync::mpsc;

use super::{Chat, Shutdown};
use crate::desk::{ChatKey, DeskError, Sentence};

/// A chat that can be run, and run again.
#[async_trait]
pub trait Service: Send + Sync {
    /// Which chat it is.
    fn key(&self) -> ChatKey;
    /// Done before any chat starts, such as founding a group whose coach is to hear of whatever fails first.
    /// As it stands, nothing is.
    ///
    /// # Errors
    /// When the desk cannot read or write its store.
    async fn prepare(&self) -> Result<(), DeskError> {
        Ok(())
    }
    /// Starts the chat, says so to `report`, and serves until `shutdown`; then finishes what is in hand.
    ///
    /// # Errors
    /// When it cannot start, or cannot go on.
    async fn run(&self, report: Report, shutdown: Shutdown) -> Result<(), Down>;
    /// Ends when something has changed that makes another start worth trying after [`Down::ForGood`].
    /// As it stands, nothing has.
    async fn mended(&self) {
        std::future::pending().await
    }
}

/// Why a chat is down.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Down {
    /// Worth starting again after a while.
    #[error("{0}")]
    ForNow(Sentence),
    /// Nothing will help but what the text says.
    #[error("{0}")]
    ForGood(Sentence),
}

/// What a running chat tells its supervisor.
pub enum News {
    /// It is up: errands may be given to `chat`, and whoever started the program reads `lines`.
    Up {
        /// The chat.
        chat: Arc<dyn Chat>,
        /// What to say of it, a line each.
        lines: Vec<Sentence>,
    },
    /// Its line is lost, and it works on that itself.
    Wavering(Sentence),
    /// Its line is back.
    Steady,
}

/// How a running chat reports.
#[derive(Clone, Debug)]
pub struct Report(mpsc::UnboundedSender<News>);

impl Report {
    /// A report, and where what is reported arrives.
    pub fn new() -> (Self, mpsc::UnboundedReceiver<News>) {
        let (sender, receiver) = mpsc::unbounded_channel();
        (Self(sender), receiver)
    }

    /// The chat is up.
    pub fn up(&self, chat: Arc<dyn Chat>, lines: Vec<Sentence>) {
        self.send(News::Up { chat, lines });
    }

    /// The chat's line is lost for now.
    pub fn wavering(&self, why: Sentence) {
        self.send(News::Wavering(why));
    }

    /// The chat's line is back.
    pub fn steady(&self) {
        self.send(News::Steady);
    }

    fn send(&self, news: News) {
        // Nobody listens any more when the chat is being stopped.
        let _ = self.0.send(news);
    }
}
