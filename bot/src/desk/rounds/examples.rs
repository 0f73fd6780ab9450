//! Answers that are to be shown, on their way: their writers are asked for their leave, and what they allow stands
//! in the chat behind the reveal, as long as they allow it. The store alone says what is still to do.

use chrono::{DateTime, Utc};
use sealed_move_store::{ExampleDue, ReplyId};

use super::{Rounds, errands::Look, look::Soonest};
use crate::desk::{
    ChatKey, Delivered, Earlier, Errand, ErrandKind, ExampleSheet, LeaveAsked, ShownAnswer,
    error::Done, groups::place_of, ledger::Key, replies::kept_reply,
};

impl Rounds<'_> {
    /// The next writer to be asked, or the next example that stands in the chat otherwise than it is to.
    pub(super) async fn examples(
        self,
        chat: ChatKey,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let (asked, due) = self
            .desk
            .read(move |db| Ok((db.leave_to_ask(chat)?, db.examples_due(chat)?)))
            .await?;
        let errands = &self.desk.inner.errands;
        for (reply, since) in asked {
            let key = Key::Leave(reply);
            if wait.held(errands.held_until(&key, now)) {
                continue;
            }
            if let Some(errand) = self.ask_for_leave(reply, since).await? {
                errands.hand_out(key, now);
                return Ok(Some(Look::Go(errand)));
            }
        }
        for due in due {
            let key = Key::Example(due.reply_id);
            if wait.held(errands.held_until(&key, now)) {
                continue;
            }
            if let Some(errand) = self.example(due).await? {
                errands.hand_out(key, now);
                return Ok(Some(Look::Go(errand)));
            }
        }
        Ok(None)
    }

    async fn ask_for_leave(self, reply: ReplyId, since: DateTime<Utc>) -> Done<Option<Errand>> {
        self.desk
            .read(move |db| {
                let (Some(reply), Some(example)) = (db.reply(reply)?, db.example(reply)?) else {
                    return Ok(None);
                };
                let kept = kept_reply(db, reply)?;
                Ok(Some(Errand {
                    place: place_of(&kept.group),
                    kind: ErrandKind::AskLeave(Box::new(LeaveAsked {
                        user: kept.user,
                        reply: kept.reply.id,
                        number: kept.post.number,
                        text: kept.reply.text,
                        words: example.words,
                    })),
                    done: Vec::new(),
                    // Whether an earlier run got through with it is not written down.
                    earlier: Some(Earlier {
                        since,
                        sent_as: None,
                    }),
                    word: None,
                }))
            })
            .await
    }

    async fn example(self, due: ExampleDue) -> Done<Option<Errand>> {
        self.desk
            .read(move |db| {
                let (Some(group), Some(post)) = (db.group(due.group_id)?, db.post(due.post_id)?)
                else {
                    return Ok(None);
                };
                let mut seen = db.examples_of(post.id)?.into_iter();
                let shown = seen.find(|shown| shown.reply_id == due.reply_id);
                // Changed since: the next look has it.
                if shown.is_none() != (due.version == 0) {
                    return Ok(None);
                }
                Ok(Some(Errand {
                    place: place_of(&group),
                    kind: ErrandKind::Example(Box::new(ExampleSheet {
                        post: post.id,
                        number: post.number,
                        thread: post.thread,
                        reply: due.reply_id,
                        shown: shown.map(ShownAnswer::of),
                        message: db.example_message(due.reply_id)?,
                        version: due.version,
                    })),
                    done: Vec::new(),
                    earlier: None,
                    word: None,
                }))
            })
            .await
    }

    /// A writer was asked for their leave.
    pub(super) async fn leave_asked(self, reply: ReplyId, now: DateTime<Utc>) -> Done<()> {
        self.desk
            .write(move |tx| Ok(tx.mark_leave_asked(reply, now)?))
            .await
    }

    /// An example stands in its chat as it is to.
    pub(super) async fn example_stands(
        self,
        sheet: &ExampleSheet,
        delivered: Delivered,
    ) -> Done<()> {
        let (post, reply, version) = (sheet.post, sheet.reply, sheet.version);
        self.desk
            .write(move |tx| {
                let Some(kept) = tx.post(post)? else {
                    return Ok(());
                };
                let due = ExampleDue {
                    group_id: kept.group_id,
                    post_id: post,
                    reply_id: reply,
                    version,
                };
                Ok(tx.note_example(&due, delivered.message.as_deref())?)
            })
            .await
    }
}
