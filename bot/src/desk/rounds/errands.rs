//! What goes out unasked, and when: the loop that a chat runs asks here for the next errand, carries it
//! out and reports back.
//!
//! The store holds where each post stands, and that alone decides what is still to do; so a restart at
//! any point loses nothing. Kept in memory only, since a restart may well begin afresh: what the chat is
//! carrying at the moment, how often an errand failed and when it may be tried again.
//!
//! A post is written down as `intended` before the chat gets it, and as open when the chat has reported
//! where it went. Found `intended` and with nobody carrying it, it may have been sent before a crash or
//! a timeout: it comes `again`, and the chat looks for its nonce before it sends. Reveals likewise, and words
//! to people, which are in the `outbox` until they have arrived. What
//! takes a chat several requests is recorded step by step, and goes on at the first step missing.
//! That a slot found the queue empty is written down once the chat has told it.

use chrono::{DateTime, Utc};
use sealed_move_store::{PostState, StoreError};

use super::Rounds;
use crate::desk::{
    ChatKey, Delivered, Errand, ErrandKind, Kind, KindName, Notice, Place, Sentence, Step,
    error::Done,
    ledger::{Key, empty_queue_key, key_of},
    posting::close_words,
};

/// After so many failures the coaches are told, once.
const TELL_AFTER: u32 = 3;

/// A private word is given up after so many failures, some two hours.
const WORD_TRIES: u32 = 9;

/// What a look at the store came to.
pub(in crate::desk) enum Look {
    /// Something to carry.
    Go(Errand),
    /// Something was done; look again.
    Again,
    /// Nothing before this moment, or before something changes.
    Wait(Option<DateTime<Utc>>),
}

/// What could not be sent.
#[derive(Clone, Debug)]
pub(super) enum Unsent {
    Post(KindName, i64),
    Reveal(KindName, i64),
    /// A queue entry that is due, with its name where it has one.
    Due(Option<String>),
    /// An example behind its reveal, by the number of the post.
    Example(i64),
    /// A word to somebody: nobody is told of that.
    Word,
}

impl Unsent {
    fn of(errand: &Errand) -> Self {
        match &errand.kind {
            ErrandKind::Post { sheet, .. } => Self::Post(sheet.content.kind().name(), sheet.number),
            ErrandKind::Reveal { sheet, .. } => {
                Self::Reveal(sheet.post.content.kind().name(), sheet.post.number)
            }
            ErrandKind::TellCoach(_)
            | ErrandKind::TellMember { .. }
            | ErrandKind::AnswerMember(_)
            | ErrandKind::AskLeave(_) => Self::Word,
            ErrandKind::Example(sheet) => Self::Example(sheet.number),
        }
    }

    /// What the coaches are told of it.
    fn notice(self, why: Sentence) -> Option<Notice> {
        Some(match self {
            Self::Post(kind, number) => Notice::PostNotSent { kind, number, why },
            Self::Reveal(kind, number) => Notice::RevealNotSent { kind, number, why },
            Self::Due(name) => Notice::DueNotSent {
                name: name.map(Into::into),
                why,
            },
            Self::Example(number) => Notice::ExampleNotSent { number, why },
            Self::Word => return None,
        })
    }
}

impl Rounds<'_> {
    /// Waits for the next thing that must go out in `chat` and records the intent. Sleeps until the next
    /// due moment; wakes when the queue, the settings or a post change, and within half a minute when
    /// another process changed them. Unfinished errands of an earlier run come first, marked `again`.
    ///
    /// May be dropped while it waits: nothing is lost.
    ///
    /// # Errors
    /// When the store fails; ask again after a pause.
    pub async fn next_errand(self, chat: ChatKey) -> Done<Errand> {
        let mut changes = self.desk.inner.store.changes();
        loop {
            changes.borrow_and_update();
            // The version is read before the queue is, so that what another process writes in between wakes us.
            let version = self.desk.inner.store.data_version().await?;
            // Listening starts before the check, so a word left in between wakes us.
            let woken = self.desk.inner.errands.wake.notified();
            tokio::pin!(woken);
            woken.as_mut().enable();
            let until = match self.look(chat).await? {
                Look::Go(errand) => return Ok(errand),
                Look::Again => continue,
                Look::Wait(until) => until,
            };
            let due = async {
                match until {
                    Some(moment) => self.desk.inner.clock.sleep_until(moment).await,
                    None => std::future::pending().await,
                }
            };
            tokio::select! {
                () = due => {}
                () = woken => {}
                changed = changes.changed() => {
                    if changed.is_err() {
                        return Err(StoreError::Stopped.into());
                    }
                }
                changed = self.other_process(version) => changed?,
            }
        }
    }

    /// Records where an errand went. Reporting one twice does no harm.
    pub async fn errand_done(self, errand: &Errand, delivered: &Delivered) -> Done<()> {
        let key = key_of(errand);
        let settled = self.settle(errand, delivered.clone(), &key).await;
        match &settled {
            Ok(()) => drop(self.desk.inner.errands.done(&key)),
            // It went out, and that could not be written down: it comes again before long, and the
            // chat finds it by its nonce.
            Err(_) => {
                self.desk.inner.errands.failed(&key, self.desk.now());
            }
        }
        settled
    }

    /// Records a step of a post or a reveal that is done, with the chat's id of what came of it: should
    /// the rest be broken off, it is not done again. With its first message a post is open.
    ///
    /// # Errors
    /// When the store cannot be written. The step may then be done twice, unless the chat looks for it.
    pub async fn step_done(self, errand: &Errand, step: Step, reference: Option<&str>) -> Done<()> {
        let post = match &errand.kind {
            ErrandKind::Post { sheet, .. } => sheet.post,
            ErrandKind::Reveal { sheet, .. } => sheet.post.post,
            ErrandKind::TellCoach(_)
            | ErrandKind::AnswerMember(_)
            | ErrandKind::TellMember { .. }
            | ErrandKind::AskLeave(_)
            | ErrandKind::Example(_) => return Ok(()),
        };
        let (now, reference) = (self.desk.now(), reference.map(str::to_owned));
        self.desk
            .write(move |tx| {
                let reference = reference.as_deref();
                tx.record_step(post, &step.code(), reference, now)?;
                let state = tx.post(post)?.map(|post| post.state);
                if step == Step::Post(0) && state == Some(PostState::Intended) {
                    tx.mark_post_half_sent(post, now, reference)?;
                }
                Ok(())
            })
            .await
    }

    async fn settle(self, errand: &Errand, delivered: Delivered, key: &Key) -> Done<()> {
        let now = self.desk.now();
        match &errand.kind {
            ErrandKind::Post { sheet, .. } => {
                let post = sheet.post;
                self.desk
                    .write(move |tx| {
                        match tx.post(post)? {
                            Some(kept) if kept.state == PostState::Intended => tx.mark_post_open(
                                post,
                                now,
                                delivered.message.as_deref(),
                                delivered.thread.as_deref(),
                            )?,
                            // A coach may have closed it in the meantime; its thread is told of the solution.
                            Some(kept)
                                if matches!(kept.state, PostState::Open | PostState::Closing)
                                    && kept.half_sent =>
                            {
                                tx.mark_post_whole(post, delivered.thread.as_deref())?;
                            }
                            _ => {}
                        }
                        // Words alone take no replies, so they are over as soon as they are out.
                        if let Some(kept) = tx.post(post)?
                            && kept.state == PostState::Open
                            && Kind::of(&kept.content) == Kind::Words
                        {
                            close_words(tx, &kept, now)?;
                        }
                        Ok(())
                    })
                    .await?;
                self.warm_up(post);
            }
            ErrandKind::Reveal { sheet, .. } => {
                let post = sheet.post.post;
                self.desk
                    .write(move |tx| match tx.post(post)? {
                        Some(kept) if kept.state == PostState::Closing => {
                            Ok(tx.mark_post_closed(post, now, delivered.message.as_deref())?)
                        }
                        _ => Ok(()),
                    })
                    .await?;
            }
            ErrandKind::TellCoach(_) => {
                if *key == empty_queue_key(&errand.place) {
                    self.settle_empty_slot(&errand.place, now).await?;
                }
                self.word_arrived(errand.word).await?;
            }
            ErrandKind::AnswerMember(told) => self.words_told(told.row.reply, now).await?,
            ErrandKind::TellMember { .. } => self.word_arrived(errand.word).await?,
            ErrandKind::AskLeave(asked) => self.leave_asked(asked.reply, now).await?,
            ErrandKind::Example(sheet) => self.example_stands(sheet, delivered).await?,
        }
        Ok(())
    }

    /// Records that an errand could not be carried out now; it comes again after a pause that doubles
    /// each time. After three failures the coaches are told.
    pub async fn errand_failed(self, errand: &Errand, why: Sentence) -> Done<()> {
        self.fail(key_of(errand), &errand.place, Unsent::of(errand), why)
            .await
    }

    pub(super) async fn fail(
        self,
        key: Key,
        place: &Place,
        what: Unsent,
        why: Sentence,
    ) -> Done<()> {
        let now = self.desk.now();
        let failures = self.desk.inner.errands.failed(&key, now);
        tracing::debug!(failures, chat = ?place.chat, channel = %place.channel, "could not send {what:?}: {why}");
        match &key {
            Key::Word(..) if failures >= WORD_TRIES => {
                if key == empty_queue_key(place) {
                    self.settle_empty_slot(place, now).await?;
                }
                let given_up = self.desk.inner.errands.done(&key);
                self.word_arrived(given_up.and_then(|left| left.word))
                    .await?;
            }
            // Its writer finds the question with their answer.
            Key::Leave(reply) if failures >= WORD_TRIES => {
                self.desk.inner.errands.done(&key);
                self.leave_asked(*reply, now).await?;
            }
            Key::Word(..) | Key::Leave(_) => {}
            Key::Post(_) | Key::Reveal(_) | Key::Due(_) | Key::Example(_) => {
                if failures == TELL_AFTER
                    && let Some(notice) = what.notice(why)
                {
                    self.tell_coaches(place, notice).await?;
                }
            }
        }
        Ok(())
    }

    /// The slot that found the queue empty is past.
    async fn settle_empty_slot(self, place: &Place, now: DateTime<Utc>) -> Done<()> {
        let group = self.desk.group(place).await?;
        self.desk
            .write(move |tx| Ok(tx.set_empty_told_at(group.id, Some(now))?))
            .await
    }

    /// Ends when another process has written to the store.
    async fn other_process(self, seen: i64) -> Done<()> {
        loop {
            tokio::time::sleep(self.desk.inner.options.look_for_others).await;
            if self.desk.inner.store.data_version().await? != seen {
                return Ok(());
            }
        }
    }
}
