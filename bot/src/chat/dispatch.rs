//! The round of errands: for each chat, fetch from the desk what must go out next, let the chat carry
//! it, and report back. One round per chat, so that a slow chat never holds up another.
//!
//! Knows the trait and the desk's calls only.

use std::{sync::Arc, time::Duration};

use futures::future::join_all;

use super::{Chat, ChatError, Shutdown};
use crate::desk::Desk;

/// How long to wait after the desk could not say what is next.
const BREATHER: Duration = Duration::from_secs(5);

/// Carries errands for `chats` until asked to stop. An errand in hand is finished first, so that what
/// was sent is also written down.
pub async fn run(desk: Desk, chats: Vec<Arc<dyn Chat>>, shutdown: Shutdown) {
    join_all(
        chats
            .into_iter()
            .map(|chat| round(desk.clone(), chat, shutdown.clone())),
    )
    .await;
}

/// One chat's round.
async fn round(desk: Desk, chat: Arc<dyn Chat>, mut shutdown: Shutdown) {
    while !shutdown.asked() {
        let next = tokio::select! {
            () = shutdown.wait() => return,
            next = desk.next_errand(chat.name()) => next,
        };
        let errand = match next {
            Ok(errand) => errand,
            Err(error) => {
                tracing::error!(chat = ?chat.name(), "cannot see what must go out next: {error}");
                tokio::select! {
                    () = shutdown.wait() => return,
                    () = tokio::time::sleep(BREATHER) => continue,
                }
            }
        };
        let reported = match chat.carry(&errand).await {
            Ok(delivered) => match desk.errand_done(&errand, &delivered).await {
                Ok(()) => {
                    chat.settled(&errand).await;
                    Ok(())
                }
                failed => failed,
            },
            Err(error) => {
                let why = error.to_string();
                match error {
                    ChatError::Later(_) => {
                        tracing::warn!(place = ?errand.place, "will be tried again: {why}");
                    }
                    ChatError::Never(_) => {
                        tracing::error!(place = ?errand.place, "needs a person: {why}");
                    }
                }
                desk.errand_failed(&errand, &why).await
            }
        };
        if let Err(error) = reported {
            // The errand comes again, marked so that the chat looks for this attempt first.
            tracing::error!(place = ?errand.place, "cannot write down what became of an errand: {error}");
            tokio::select! {
                () = shutdown.wait() => return,
                () = tokio::time::sleep(BREATHER) => {}
            }
        }
    }
}
