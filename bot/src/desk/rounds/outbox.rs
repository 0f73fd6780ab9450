//! The outbox: words left to be sent, marked when they are tried and when they have arrived, and what an
//! earlier run left sent at the next start, once.

use chrono::{DateTime, Utc};
use sealed_move_store::OutboxRow;

use super::{Rounds, pending::JUDGED_AFTERWARDS};
use crate::desk::{
    ChatKey, ErrandKind, Notice, Place, ReplyId, VerdictSheet,
    answers::{row, told_of},
    error::Done,
    groups::place_of,
    handle::group_at,
    ledger::Left,
    outbox::Earlier,
    queue::plan_of,
    replies::kept_reply,
};

impl Rounds<'_> {
    /// Leaves a word to the coaches of every group that is not in `chat`, as when that chat is down.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn tell_coaches_elsewhere(self, chat: ChatKey, notice: &Notice) -> Done<()> {
        let places = self.desk.all_places().await?.into_iter();
        for place in places.filter(|place| place.chat != chat) {
            self.tell_coaches(&place, notice.clone()).await?;
        }
        Ok(())
    }

    /// Leaves a notice to a group's coaches, once however often it is said before it has gone out.
    pub(super) async fn tell_coaches(self, place: &Place, notice: Notice) -> Done<()> {
        let text = notice.to_keep();
        let kind = ErrandKind::TellCoach(Box::new(notice));
        let errands = &self.desk.inner.errands;
        if errands.waits(place, &kind) {
            return Ok(());
        }
        let (now, at, own) = (self.desk.now(), place.clone(), errands.own.clone());
        let word = self
            .desk
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
    pub async fn verdict_on_its_way(self, reply: ReplyId, text: &str) -> Done<()> {
        let (now, text) = (self.desk.now(), text.to_owned());
        self.desk
            .write(move |tx| Ok(tx.try_verdict(reply, &text, now)?))
            .await
    }

    /// The writer of a reply has its verdict, or cannot be sent it.
    ///
    /// # Errors
    /// When the store cannot be written. It may then be sent once more at the next start.
    pub async fn verdict_arrived(self, reply: ReplyId) -> Done<()> {
        self.desk
            .write(move |tx| Ok(tx.verdict_arrived(reply)?))
            .await
    }

    /// A word has arrived, or is given up.
    pub(super) async fn word_arrived(self, word: Option<i64>) -> Done<()> {
        match word {
            Some(word) => self.desk.write(move |tx| Ok(tx.word_arrived(word)?)).await,
            None => Ok(()),
        }
    }

    /// Marks that a word is handed out; gives the attempt before this one.
    pub(super) async fn word_tried(self, word: i64) -> Done<Option<Earlier>> {
        let now = self.desk.now();
        self.desk
            .write(move |tx| {
                let row = tx.outbox_row(word)?;
                tx.try_word(word, now)?;
                Ok(row.as_ref().and_then(Earlier::of))
            })
            .await
    }

    /// Leaves a verdict to be told later than with its reply.
    pub(super) async fn tell_later(
        self,
        place: Place,
        user: String,
        text: String,
        sheet: VerdictSheet,
    ) -> Done<()> {
        let reply = sheet.reply;
        let word = self
            .desk
            .read(move |db| Ok(db.owed_verdict(reply)?.map(|row| row.id)))
            .await?;
        let sheet = Box::new(sheet);
        let kind = ErrandKind::TellMember { user, text, sheet };
        self.desk.inner.errands.tell(Left {
            word,
            ..Left::new(place, kind)
        });
        Ok(())
    }

    /// What an earlier run left in the outbox.
    pub(super) async fn left_in_outbox(self) -> Done<Vec<OutboxRow>> {
        let own = self.desk.inner.errands.own.clone();
        self.desk
            .read(move |db| {
                let mut rows = db.outbox()?;
                rows.retain(|row| !own.has(row.id));
                Ok(rows)
            })
            .await
    }

    /// Leaves again what an earlier run left in the outbox and has not been left since.
    pub(super) async fn leave_again(self, rows: Vec<OutboxRow>) -> Done<()> {
        for row in rows {
            let id = row.id;
            if self.desk.inner.errands.has_word(id) {
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
            let waits = left.is_some_and(|left| self.desk.inner.errands.tell(left));
            if !waits {
                self.word_arrived(Some(id)).await?;
            }
        }
        Ok(())
    }

    /// A word of an earlier run; `None` where it is not worth sending any more.
    async fn left(self, row: OutboxRow) -> Done<Option<Left>> {
        let (reply, group) = (row.reply_id, row.group_id);
        let now = self.desk.now();
        let (group, kept, still_empty) = self
            .desk
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
                let sheet = Box::new(self.desk.verdict_on(kept).await?);
                ErrandKind::TellMember { user, text, sheet }
            }
            (Some(_), None) => return Ok(None),
        };
        Ok(Some(Left {
            word: Some(row.id),
            ..Left::new(place, kind)
        }))
    }

    /// Leaves the private answers to be sent that an earlier run wrote down and did not send.
    pub(super) async fn words_left(self) -> Done<()> {
        let left = self
            .desk
            .read(|db| {
                let mut left = Vec::new();
                for words in db.untold_words()? {
                    if let Some((row, group)) = row(db, words)?
                        && let Some(told) = told_of(db, row)?
                    {
                        left.push((place_of(&group), told));
                    }
                }
                Ok(left)
            })
            .await?;
        for (place, told) in left {
            let earlier = Earlier {
                since: told.row.at,
                sent_as: None,
            };
            let kind = ErrandKind::AnswerMember(Box::new(told));
            self.desk.inner.errands.tell(Left {
                earlier: Some(earlier),
                ..Left::new(place, kind)
            });
        }
        Ok(())
    }

    /// A private answer was handed to its member's chat.
    pub(super) async fn words_told(self, reply: ReplyId, now: DateTime<Utc>) -> Done<()> {
        self.desk
            .write(move |tx| Ok(tx.mark_words_told(reply, now)?))
            .await
    }
}
