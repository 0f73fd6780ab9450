//! Words on a position that were refused, kept in memory so that the form opens with them again.

use poise::serenity_prelude::UserId;

use super::House;
use crate::desk::PositionId;

/// A coach's words on a position as they were typed.
#[derive(Clone)]
pub struct Draft {
    /// For the post.
    pub with_post: String,
    /// For the reveal.
    pub at_reveal: String,
}

impl House {
    /// Keeps what a coach typed for a position.
    pub fn keep_draft(&self, coach: UserId, position: PositionId, draft: Draft) {
        self.memory().drafts.put((coach, position), draft);
    }

    /// What the coach typed last for a position and was refused; `None` after a restart.
    pub fn draft(&self, coach: UserId, position: PositionId) -> Option<Draft> {
        self.memory().drafts.map.get(&(coach, position)).cloned()
    }
}
