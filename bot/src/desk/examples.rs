//! Answers to questions that a coach would show to the group: as the coach and the writer see them, and as the
//! group does. Only what its writer allows is ever shown, and what they take back goes out of sight.

use sealed_move_store::{Db, Example, ExampleShown, Group, Post, PostState};
use serde::Serialize;

use super::{
    PostId, ReplyId,
    answers::reply_of,
    error::{Done, bad_request, not_found},
    handle::post_of,
    refusal::Refusal,
};

pub use sealed_move_store::Leave;

/// The most characters of a coach's words beside an answer that is shown.
pub const LONGEST_BESIDE: usize = 1_000;

/// That a coach would show an answer, and what its writer says to it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ExampleRow {
    /// The coach's words beside it; may be empty.
    pub words: String,
    /// Its writer's word; `None` before they gave one.
    pub leave: Option<Leave>,
}

impl ExampleRow {
    pub(super) fn of(example: Example) -> Self {
        Self {
            words: example.words,
            leave: example.leave,
        }
    }
}

/// An answer as the group sees it, with its writer's leave.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ShownAnswer {
    /// The answer.
    pub reply: ReplyId,
    /// Its writer's name; `None` where they left that out.
    pub name: Option<String>,
    /// What they wrote.
    pub text: String,
    /// The coach's words beside it; may be empty.
    pub words: String,
}

impl ShownAnswer {
    pub(super) fn of(shown: ExampleShown) -> Self {
        Self {
            reply: shown.reply_id,
            name: shown.name,
            text: shown.text,
            words: shown.words,
        }
    }
}

/// A coach would show somebody's answer, who is asked for their leave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeaveAsked {
    /// The chat's id of the writer.
    pub user: String,
    /// The answer.
    pub reply: ReplyId,
    /// Number of the post.
    pub number: i64,
    /// What they wrote.
    pub text: String,
    /// The coach's words beside it; may be empty.
    pub words: String,
}

/// An example as it is to stand in a chat from now on, behind its reveal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExampleSheet {
    /// The post.
    pub post: PostId,
    /// Its number.
    pub number: i64,
    /// The chat's id of the thread, where there is one.
    pub thread: Option<String>,
    /// The answer that it is of.
    pub reply: ReplyId,
    /// What is to be seen; `None` where it is taken back.
    pub shown: Option<ShownAnswer>,
    /// The chat's message in which it stands or stood.
    pub message: Option<String>,
    /// Which version of it this is.
    pub(super) version: i64,
}

/// The answers to a post that the group may see; none before its reveal.
pub(super) fn seen(db: &Db<'_>, post: &Post) -> Done<Vec<ShownAnswer>> {
    if !matches!(post.state, PostState::Closing | PostState::Closed) {
        return Ok(Vec::new());
    }
    let shown = db.examples_of(post.id)?.into_iter();
    Ok(shown.map(ShownAnswer::of).collect())
}

/// An answer to a question of the group, with its post.
///
/// # Errors
/// When there is none, or it is no answer to a question.
pub(super) fn answer_of(
    db: &Db<'_>,
    group: &Group,
    reply: ReplyId,
) -> Done<(sealed_move_store::Reply, Post)> {
    let reply = reply_of(db, group, reply)?;
    let post = post_of(db, group, reply.post_id)?;
    match &post.content {
        sealed_move_store::Content::Question { .. } => Ok((reply, post)),
        _ => bad_request(Refusal::OnlyAnswersAreExamples),
    }
}

/// As [`answer_of`], where a coach has asked for it.
pub(super) fn asked_for(
    db: &Db<'_>,
    group: &Group,
    reply: ReplyId,
) -> Done<(sealed_move_store::Reply, Example)> {
    let (reply, _) = answer_of(db, group, reply)?;
    match db.example(reply.id)? {
        Some(example) => Ok((reply, example)),
        None => not_found(Refusal::NobodyAsksToShow),
    }
}
