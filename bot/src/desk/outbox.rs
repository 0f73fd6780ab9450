//! Words to people that are on their way: notices to coaches, and verdicts where the chat sends them. Each is
//! in the store before it is sent and until it has arrived, so that a crash loses none. What an earlier run
//! left is sent at the next start, once: what had been tried by then comes with [`Earlier`], and the chat
//! looks for it first.

use std::sync::{
    Arc,
    atomic::{AtomicI64, Ordering},
};

use chrono::{DateTime, Utc};
use sealed_move_store::{Delivery, Group, OutboxRow, Tx};

use super::{ReplyId, error::Done};

/// An attempt that was made at an errand before, and may have got through.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Earlier {
    /// When the first one began.
    pub since: DateTime<Utc>,
    /// The text in which it was sent, where the errand does not say.
    pub sent_as: Option<String>,
}

impl Earlier {
    pub(super) fn of(row: &OutboxRow) -> Option<Self> {
        row.tried_at.map(|since| Self {
            since,
            sent_as: row.tried_as.clone(),
        })
    }
}

/// From which id on the words are this run's own, so that those in hand are not taken for left behind. Noted
/// within the transaction that writes a word: whoever sees the word finds it noted.
#[derive(Clone, Debug)]
pub(super) struct Own(Arc<AtomicI64>);

impl Default for Own {
    fn default() -> Self {
        Self(Arc::new(AtomicI64::new(i64::MAX)))
    }
}

impl Own {
    pub(super) fn note(&self, id: i64) {
        self.0.fetch_min(id, Ordering::SeqCst);
    }

    /// Whether a word of that id is this run's own.
    pub(super) fn has(&self, id: i64) -> bool {
        id >= self.0.load(Ordering::SeqCst)
    }

    /// Writes down that the writer of a reply is owed its verdict, where the group's chat sends it.
    pub(super) fn owe(
        &self,
        tx: &Tx<'_>,
        group: &Group,
        reply: ReplyId,
        now: DateTime<Utc>,
    ) -> Done<Option<i64>> {
        if group.delivery == Delivery::Shown {
            return Ok(None);
        }
        let id = tx.owe_verdict(group.id, reply, now)?;
        self.note(id);
        Ok(Some(id))
    }
}
