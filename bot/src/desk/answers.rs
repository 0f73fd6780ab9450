//! A coach's private answer to a reply, as its member is told it; how replies stand with the coach, and which count.

use std::collections::HashSet;

use chrono::{DateTime, Utc};
use sealed_move_store::{CoachWords, Db, Group, Post, Reply, ReplyOf};
use serde::Serialize;

use super::{
    Kind, KindName, MemberId, ReplyId, Settled,
    attempt::decided,
    errand::Answered,
    error::{Done, not_found},
    refusal::Refusal,
};

/// A coach's private answer, for the member it is for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WordsRow {
    /// The reply it answers.
    pub reply: ReplyId,
    /// Number of the post.
    pub number: i64,
    /// What the post holds.
    pub kind: KindName,
    /// What the member had written.
    pub text: String,
    /// The answer.
    pub words: String,
    /// The coach's name; `None` once they were erased.
    pub by: Option<String>,
    /// When.
    pub at: DateTime<Utc>,
}

/// A reply to a post of the group.
pub(super) fn reply_of(db: &Db<'_>, group: &Group, reply: ReplyId) -> Done<Reply> {
    if let Some(reply) = db.reply(reply)?
        && db
            .post(reply.post_id)?
            .is_some_and(|post| post.group_id == group.id)
    {
        return Ok(reply);
    }
    not_found(Refusal::NoReply)
}

pub(super) fn told_of(db: &Db<'_>, row: WordsRow) -> Done<Option<Answered>> {
    let Some(reply) = db.reply(row.reply)? else {
        return Ok(None);
    };
    Ok(db.member(reply.member_id)?.map(|member| Answered {
        user: member.chat_user,
        row,
    }))
}

pub(super) fn row(db: &Db<'_>, words: CoachWords) -> Done<Option<(WordsRow, Group)>> {
    let Some(reply) = db.reply(words.reply_id)? else {
        return Ok(None);
    };
    let Some(post) = db.post(reply.post_id)? else {
        return Ok(None);
    };
    Ok(db.group(post.group_id)?.map(|group| {
        let row = WordsRow {
            reply: reply.id,
            number: post.number,
            kind: Kind::of(&post.content).name(),
            text: reply.text,
            words: words.words,
            by: words.by,
            at: words.given_at,
        };
        (row, group)
    }))
}

/// How a reply stands with the coach.
pub(super) fn settled(reply: &ReplyOf) -> Settled {
    let judged = reply
        .verdict
        .as_ref()
        .is_some_and(|verdict| verdict.by_coach || decided(verdict.verdict));
    match &reply.words {
        _ if judged => Settled::Judged,
        Some(words) if words.words.is_empty() => Settled::NeedsNone,
        Some(_) => Settled::Answered,
        None => Settled::Unjudged,
    }
}

/// Which of the answers to a question count: each member's last one that came in time.
pub(super) fn counting(replies: &[ReplyOf], post: &Post) -> Vec<bool> {
    let mut seen: HashSet<MemberId> = HashSet::new();
    let mut counts = vec![false; replies.len()];
    for (at, reply) in replies.iter().enumerate().rev() {
        let in_time = reply.reply.received_at < post.closes_at;
        counts[at] = in_time && seen.insert(reply.reply.member_id);
    }
    counts
}
