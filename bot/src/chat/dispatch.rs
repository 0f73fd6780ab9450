//! A chat's round of errands: fetch from the desk what must go out next, let the chat carry it, and report
//! back. One round per chat, so that a slow chat never holds up another.
//!
//! Knows the trait and the desk's calls only.

use std::{sync::Arc, time::Duration};

use super::{Chat, ChatError, Shutdown};
use crate::desk::Desk;

/// How long to wait after the desk could not say what is next.
const BREATHER: Duration = Duration::from_secs(5);

/// Carries the errands of one chat until asked to stop. An errand in hand is finished first, so that what
/// was sent is also written down.
pub async fn run(desk: Desk, chat: Arc<dyn Chat>, mut shutdown: Shutdown) {
    while !shutdown.asked() {
        // An errand that was handed out is carried, even when the stop comes at that moment.
        let next = tokio::select! {
            biased;
            next = desk.rounds().next_errand(chat.key()) => next,
            () = shutdown.wait() => return,
        };
        let errand = match next {
            Ok(errand) => errand,
            Err(error) => {
                tracing::error!(chat = ?chat.key(), "cannot see what must go out next: {error}");
                tokio::select! {
                    () = shutdown.wait() => return,
                    () = tokio::time::sleep(BREATHER) => continue,
                }
            }
        };
        let reported = match chat.carry(&errand).await {
            Ok(delivered) => match desk.rounds().errand_done(&errand, &delivered).await {
                Ok(()) => {
                    chat.settled(&errand).await;
                    Ok(())
                }
                failed => failed,
            },
            Err(error) => {
                let why = error.why();
                match &error {
                    ChatError::Later(_) => {
                        tracing::warn!(place = ?errand.place, "will be tried again: {why}");
                    }
                    ChatError::Never(_) => {
                        tracing::error!(place = ?errand.place, "needs a person: {why}");
                    }
                }
                desk.rounds().errand_failed(&errand, why.clone()).await
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
