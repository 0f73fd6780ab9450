//! What an earlier run wrote down and did not come to judge, taken up once.

use std::collections::HashSet;

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::Entry;

use super::Rounds;
use crate::desk::{
    Edited, Place, PostId, ReplyId,
    error::Done,
    groups::place_of,
    replies::{Arrival, Case, arrival, kept_reply},
    text::LONGEST_REPLY,
};

/// Replies that a crash left without a verdict are judged at the next start while their post is open
/// or closed no longer ago than this; older ones wait for the coach's hand.
pub(super) const JUDGED_AFTERWARDS: TimeDelta = TimeDelta::days(7);

/// One thing that an earlier run left.
enum Left {
    /// A reply without a verdict.
    Reply(Box<Case>),
    /// A message in the inbox, with where it was written.
    Entry(Place, Entry),
}

/// What an entry of the inbox turns out to be.
enum Found {
    /// It is there no more: judged meanwhile, taken back, or too old.
    Gone,
    /// A message that may be an answer.
    New(Box<Arrival>),
    /// The new text of an answer.
    Edit,
}

impl Left {
    fn came_at(&self) -> DateTime<Utc> {
        match self {
            Self::Reply(kept) => kept.reply.received_at,
            Self::Entry(_, entry) => entry.received_at,
        }
    }

    /// The post, and the chat's id of the sender.
    fn whose(&self) -> (PostId, String) {
        match self {
            Self::Reply(kept) => (kept.post.id, kept.user.clone()),
            Self::Entry(_, entry) => (entry.post_id, entry.chat_user.clone()),
        }
    }
}

impl Rounds<'_> {
    /// Takes up, once, what an earlier run has left; ends when that is done.
    pub(super) async fn taken_up(self) -> Done<()> {
        let begun = &self.desk.inner.errands.begun;
        begun.get_or_try_init(|| self.take_up()).await.map(drop)
    }

    /// Takes up where an earlier run has left off: replies it wrote down and did not judge, and the
    /// solutions of posts that are open.
    async fn take_up(self) -> Done<usize> {
        let open = self
            .desk
            .read(|db| {
                let mut open = Vec::new();
                for group in db.groups()? {
                    open.extend(db.open_posts(group.id)?.iter().map(|post| post.id));
                }
                Ok(open)
            })
            .await?;
        for post in open {
            self.warm_up(post);
        }
        self.words_left().await?;
        let left = self.left_in_outbox().await?;
        let judged = self.judge_pending().await?;
        self.leave_again(left).await?;
        Ok(judged)
    }

    /// Judges what an earlier run wrote down and did not come to judge, in the order it came, and tells
    /// its senders; returns how many answers that were. Done once before the first errand goes out, so
    /// that a reveal that is due at the start knows of them.
    pub async fn judge_pending(self) -> Done<usize> {
        let mut judged = 0;
        for left in self.left_behind().await? {
            let (post, user) = left.whose();
            let done = match left {
                Left::Reply(kept) => self.judge_one_pending(kept.reply.id, post, user).await,
                Left::Entry(place, entry) => self.judge_entry(place, entry).await,
            };
            match done {
                Ok(told) => judged += usize::from(told),
                // One that cannot be judged must not keep the others, nor the bot, from going on.
                Err(error) => {
                    tracing::error!(%post, %error, "what came in an earlier run could not be judged");
                }
            }
        }
        Ok(judged)
    }

    /// Lets what an earlier run left of this member's work on a post be judged before anything new of
    /// theirs, so that a line goes on in the order in which it was written.
    pub(in crate::desk) async fn earlier_first(self, post: PostId, user: &str) -> Done<()> {
        let errands = &self.desk.inner.errands;
        // Taken up already, so that nothing is left.
        if errands.begun.initialized() {
            return Ok(());
        }
        let whose = errands
            .left_behind
            .get_or_try_init(|| async {
                let left = self.left_behind().await?;
                Done::Ok(left.iter().map(Left::whose).collect::<HashSet<_>>())
            })
            .await?;
        if whose.contains(&(post, user.to_owned())) {
            self.taken_up().await?;
        }
        Ok(())
    }

    /// What an earlier run left, in the order it came.
    async fn left_behind(self) -> Done<Vec<Left>> {
        let now = self.desk.now();
        self.desk
            .read(move |db| {
                let mut all = Vec::new();
                for unjudged in db.unjudged_replies()? {
                    let reply = unjudged.reply.id;
                    let mut kept = match kept_reply(db, unjudged.reply) {
                        Ok(kept) => kept,
                        // One that cannot be read must not keep the others from being judged.
                        Err(error) => {
                            tracing::error!(%reply, %error, "what came in an earlier run cannot be read");
                            continue;
                        }
                    };
                    kept.cut = kept.reply.text.chars().count() >= LONGEST_REPLY;
                    let recent = kept
                        .post
                        .closed_at
                        .is_none_or(|at| now - at <= JUDGED_AFTERWARDS);
                    if recent && kept.counts() {
                        all.push(Left::Reply(Box::new(kept)));
                    }
                }
                for entry in db.inbox()? {
                    let post = db.post(entry.post_id)?;
                    let group = match &post {
                        Some(post) => db.group(post.group_id)?,
                        None => None,
                    };
                    if let Some(group) = group {
                        all.push(Left::Entry(place_of(&group), entry));
                    }
                }
                all.sort_by_key(Left::came_at);
                Ok(all)
            })
            .await
    }

    async fn judge_one_pending(self, reply: ReplyId, post: PostId, user: String) -> Done<bool> {
        let _turn = self.desk.inner.turns.take(post, &user).await;
        // Read again: it may have been judged, or others before it, since the list was made.
        let kept = self
            .desk
            .read(move |db| match db.reply(reply)? {
                Some(reply) if db.current_verdict(reply.id)?.is_none() => {
                    kept_reply(db, reply).map(Some)
                }
                _ => Ok(None),
            })
            .await?;
        let Some(mut kept) = kept else {
            return Ok(false);
        };
        if self.desk.judged_by(&kept.asks).await?.is_none() {
            return Ok(false);
        }
        kept.cut = kept.reply.text.chars().count() >= LONGEST_REPLY;
        let (place, text) = (place_of(&kept.group), kept.reply.text.clone());
        let sheet = self.desk.verdict_on(kept).await?;
        self.tell_later(place, user, text, sheet).await?;
        Ok(true)
    }

    /// A message that was left in the inbox: an answer, the new text of one, or talk.
    async fn judge_entry(self, place: Place, entry: Entry) -> Done<bool> {
        let (user, text) = (entry.chat_user.clone(), entry.text.clone());
        let _turn = self.desk.inner.turns.take(entry.post_id, &user).await;
        let now = self.desk.now();
        let (id, source) = (entry.id, entry.source.clone());
        let found = self
            .desk
            .write(move |tx| {
                let Some(entry) = tx.inbox_entry(id)? else {
                    return Ok(Found::Gone);
                };
                if now - entry.received_at > JUDGED_AFTERWARDS {
                    tx.take_from_inbox(id)?;
                    return Ok(Found::Gone);
                }
                if tx.reply_by_source(&entry.source)?.is_some() {
                    return Ok(Found::Edit);
                }
                Ok(Found::New(Box::new(arrival(tx, entry)?)))
            })
            .await?;
        let sheet = match found {
            Found::Gone => None,
            Found::New(arrival) => self.desk.judge_arrival(*arrival).await?,
            Found::Edit => match self.desk.take_edit(&place, &source, &user, &text).await? {
                Edited::Judged(sheet) => Some(*sheet),
                Edited::Unknown | Edited::Stands(_) | Edited::Talk => None,
            },
        };
        let told = sheet.is_some();
        if let Some(sheet) = sheet {
            self.tell_later(place, user, text, sheet).await?;
        }
        Ok(told)
    }
}
