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

use super::{
    Desk, ErrandKind, Notice, Place, ReplyId, VerdictSheet,
    error::Done,
    groups::place_of,
    handle::group_at,
    ledger::Left,
    queue::plan_of,
    replies::{JUDGED_AFTERWARDS, kept_reply},
};

/// An attempt that was made at an errand before, and may have got through.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Earlier {
    /// When the first one began.
    pub since: DateTime<Utc>,
    /// The text in which it was sent, where the errand does not say.
    pub sent_as: Option<String>,
}

impl Earlier {
    fn of(row: &OutboxRow) -> Option<Self> {
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
    fn note(&self, id: i64) {
        self.0.fetch_min(id, Ordering::SeqCst);
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

impl Desk {
    /// Leaves a notice to a group's coaches, once however often it is said before it has gone out.
    pub(super) async fn tell_coaches(&self, place: &Place, notice: Notice) -> Done<()> {
        let text = notice.to_keep();
        let kind = ErrandKind::TellCoach(Box::new(notice));
        let errands = &self.inner.errands;
        if errands.waits(place, &kind) {
            return Ok(());
        }
        let (now, at, own) = (self.now(), place.clone(), errands.own.clone());
        let word = self
            .write(move |tx| {
                let group = group_at(tx, &at)?;
                let id = tx.leave_notice(group.id, &text, now)?;
                own.note(id);
                Ok(id)
            })
            .await?;
        errands.tell(Left {
            word: Some(word),
            ..Left::new(place.clone(), kind)
        });
        Ok(())
    }

    /// A verdict is about to be sent to its writer in this text: should the program end now, the next run looks
    /// for it before it sends it again. Nothing is done where none is owed.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn verdict_on_its_way(&self, reply: ReplyId, text: &str) -> Done<()> {
        let (now, text) = (self.now(), text.to_owned());
        self.write(move |tx| Ok(tx.try_verdict(reply, &text, now)?))
            .await
    }

    /// The writer of a reply has its verdict, or cannot be sent it.
    ///
    /// # Errors
    /// When the store cannot be written. It may then be sent once more at the next start.
    pub async fn verdict_arrived(&self, reply: ReplyId) -> Done<()> {
        self.write(move |tx| Ok(tx.verdict_arrived(reply)?)).await
    }

    /// A word has arrived, or is given up.
    pub(super) async fn word_arrived(&self, word: Option<i64>) -> Done<()> {
        match word {
            Some(word) => self.write(move |tx| Ok(tx.word_arrived(word)?)).await,
            None => Ok(()),
        }
    }

    /// Marks that a word is handed out; gives the attempt before this one.
    pub(super) async fn word_tried(&self, word: i64) -> Done<Option<Earlier>> {
        let now = self.now();
        self.write(move |tx| {
            let row = tx.outbox_row(word)?;
            tx.try_word(word, now)?;
            Ok(row.as_ref().and_then(Earlier::of))
        })
        .await
    }

    /// Leaves a verdict to be told later than with its reply.
    pub(super) async fn tell_later(
        &self,
        place: Place,
        user: String,
        text: String,
        sheet: VerdictSheet,
    ) -> Done<()> {
        let reply = sheet.reply;
        let word = self
            .read(move |db| Ok(db.owed_verdict(reply)?.map(|row| row.id)))
            .await?;
        let sheet = Box::new(sheet);
        let kind = ErrandKind::TellMember { user, text, sheet };
        self.inner.errands.tell(Left {
            word,
            ..Left::new(place, kind)
        });
        Ok(())
    }

    /// What an earlier run left in the outbox.
    pub(super) async fn left_in_outbox(&self) -> Done<Vec<OutboxRow>> {
        let own = self.inner.errands.own.clone();
        self.read(move |db| {
            let mut rows = db.outbox()?;
            rows.retain(|row| row.id < own.0.load(Ordering::SeqCst));
            Ok(rows)
        })
        .await
    }

    /// Leaves again what an earlier run left in the outbox and has not been left since.
    pub(super) async fn leave_again(&self, rows: Vec<OutboxRow>) -> Done<()> {
        for row in rows {
            let id = row.id;
            if self.inner.errands.has_word(id) {
                continue;
            }
            let left = match self.left(row).await {
                Ok(left) => left,
                // One that cannot be told must not keep the others, nor the bot, from going on.
                Err(error) => {
                    tracing::error!("a word of an earlier run cannot be sent: {error}");
                    continue;
                }
            };
            let waits = left.is_some_and(|left| self.inner.errands.tell(left));
            if !waits {
                self.word_arrived(Some(id)).await?;
            }
        }
        Ok(())
    }

    /// A word of an earlier run; `None` where it is not worth sending any more.
    async fn left(&self, row: OutboxRow) -> Done<Option<Left>> {
        let (reply, group) = (row.reply_id, row.group_id);
        let now = self.now();
        let (group, kept, still_empty) = self
            .read(move |db| {
                let kept = match reply {
                    Some(reply) => db.reply(reply)?.map(|reply| kept_reply(db, reply)),
                    None => None,
                };
                let group = db.group(group)?;
                let still_empty = match &group {
                    Some(group) => {
                        let queue = db.queue(group.id)?;
                        plan_of(db, group, &queue, now)?.empty.is_some()
                    }
                    None => false,
                };
                Ok((group, kept.transpose()?, still_empty))
            })
            .await?;
        let Some(place) = group.as_ref().map(place_of) else {
            return Ok(None);
        };
        // Where something is queued by now it is no news any more.
        let notice = Notice::kept(&row.text);
        if notice == Notice::SlotEmpty && !still_empty {
            return Ok(None);
        }
        let kind = match (reply, kept) {
            (None, _) => ErrandKind::TellCoach(Box::new(notice)),
            (Some(_), Some(kept)) => {
                if now - kept.reply.received_at > JUDGED_AFTERWARDS {
                    return Ok(None);
                }
                let (user, text) = (kept.user.clone(), kept.reply.text.clone());
                let sheet = Box::new(self.verdict_on(kept).await?);
                ErrandKind::TellMember { user, text, sheet }
            }
            (Some(_), None) => return Ok(None),
        };
        Ok(Some(Left {
            word: Some(row.id),
            ..Left::new(place, kind)
        }))
    }
}
