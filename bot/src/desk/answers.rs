//! A coach's private answer to a reply, as its member is told it.

use chrono::{DateTime, Utc};
use sealed_move_store::{CoachWords, Db, Group, Reply};
use serde::Serialize;

use super::{
    Kind, KindName, ReplyId,
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
