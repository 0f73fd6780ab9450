//! Replies that an earlier run wrote down and did not come to judge.

use chrono::TimeDelta;

use super::{Kept, kept_reply};
use crate::desk::{Desk, ErrandKind, error::Done, groups::place_of};

/// Replies that a crash left without a verdict are judged at the next start while their post is open
/// or closed no longer ago than this; older ones wait for the coach's hand.
const JUDGED_AFTERWARDS: TimeDelta = TimeDelta::days(7);

impl Desk {
    /// Judges the replies that an earlier run wrote down and did not come to judge, and tells their
    /// members; returns how many. Done once before the first errand goes out, so that a reveal that is
    /// due at the start knows of them.
    pub async fn judge_pending(&self) -> Done<usize> {
        let now = self.now();
        let pending = self
            .read(move |db| {
                let mut pending = Vec::new();
                for unjudged in db.unjudged_replies()? {
                    let kept = kept_reply(db, unjudged.reply)?;
                    let recent = kept
                        .post
                        .closed_at
                        .is_none_or(|at| now - at <= JUDGED_AFTERWARDS);
                    if recent && kept.counts() {
                        pending.push(kept);
                    }
                }
                Ok(pending)
            })
            .await?;
        let mut judged = 0;
        for kept in pending {
            let reply = kept.reply.id;
            match self.judge_one_pending(kept).await {
                Ok(told) => judged += usize::from(told),
                // One that cannot be judged must not keep the others, nor the bot, from going on.
                Err(error) => {
                    tracing::error!(reply, %error, "a reply of an earlier run could not be judged")
                }
            }
        }
        Ok(judged)
    }

    async fn judge_one_pending(&self, kept: Kept) -> Done<bool> {
        let (member, place) = (kept.reply.member_id, place_of(&kept.group));
        let user = self
            .read(move |db| Ok(db.member(member)?.map(|member| member.chat_user)))
            .await?;
        let Some(user) = user else { return Ok(false) };
        let _turn = self.inner.turns.take(kept.post.id, &user).await;
        // Read again: it may have been judged, or others before it, since the list was made.
        let reply = kept.reply.id;
        let kept = self
            .read(move |db| match db.reply(reply)? {
                Some(reply) if db.current_verdict(reply.id)?.is_none() => {
                    kept_reply(db, reply).map(Some)
                }
                _ => Ok(None),
            })
            .await?;
        let Some(kept) = kept else { return Ok(false) };
        if self
            .problem(&kept.position.fen, &kept.position.stipulation)
            .await?
            .is_none()
        {
            return Ok(false);
        }
        let text = kept.reply.text.clone();
        let sheet = self.verdict_on(kept).await?;
        self.inner.errands.tell(
            place,
            ErrandKind::TellMember {
                user,
                text,
                sheet: Box::new(sheet),
            },
        );
        Ok(true)
    }
}
