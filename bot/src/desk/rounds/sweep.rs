//! Messages that have waited for their writer's word in vain, forgotten.

use chrono::TimeDelta;

use super::Rounds;
use crate::desk::{ChatKey, OpenPost, error::Done, posting::takes_replies, waiting::MOST};

/// How long a message waits at the most.
pub(in crate::desk) const LONGEST: TimeDelta = TimeDelta::days(2);

impl Rounds<'_> {
    /// Forgets what waits no longer: too old, or all its posts closed.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn sweep_waiting(self, chat: ChatKey) -> Done<()> {
        let now = self.desk.now();
        self.desk
            .write(move |tx| {
                for held in tx.held_in(chat)? {
                    let posts: Vec<OpenPost> =
                        serde_json::from_value(held.posts).unwrap_or_default();
                    let mut open = false;
                    for post in posts {
                        let post = tx.post(post.post)?;
                        open |= post.is_some_and(|post| takes_replies(&post, now));
                    }
                    if !open || now - held.since > LONGEST {
                        tx.settle_held(chat, &held.message, MOST)?;
                    }
                }
                Ok(())
            })
            .await
    }
}
