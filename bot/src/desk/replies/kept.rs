//! A reply as it is kept, with all that judging it takes.

use sealed_move_store::{
    Attempt, AttemptState, Content, Db, Group, Post, PostState, Reply, ReplyOf, VerdictRow,
};

use crate::chess::check::Problem;
use crate::desk::{
    Desk, LanguageTag, Outcome, RepliesTo, Settings, Verdict,
    attempt::{self, After, Work},
    content::{self, Held},
    convert,
    error::{Done, bad_request, not_found},
    problems::Posed,
    refusal::{Refusal, Removed},
    telling::Told,
    tongue,
};

/// What a reply answers.
#[derive(Clone)]
pub(in crate::desk) enum Asks {
    /// A position with its task.
    Problem(Box<Posed>),
    /// A question, which nobody but the coach judges.
    Question,
}

impl Asks {
    /// Whether replies to it are judged, or only kept for the coach.
    pub(in crate::desk) fn judged_by_the_bot(&self) -> bool {
        match self {
            Self::Problem(_) => true,
            Self::Question => false,
        }
    }

    /// What becomes of a reply that is left to the coach, and what its writer is told of it.
    pub(super) fn left_to_the_coach(&self) -> (Outcome, Told) {
        match self {
            Self::Problem(_) => (Outcome::Judged(Verdict::Unclear), Told::CoachWillJudge),
            Self::Question => (Outcome::Kept, Told::CoachWillRead),
        }
    }
}

impl Desk {
    /// The problem that is asked, where the bot can judge replies to it.
    pub(in crate::desk) async fn judged_by(&self, asks: &Asks) -> Done<Option<Problem>> {
        match asks {
            Asks::Problem(posed) => self.problem(posed).await,
            Asks::Question => Ok(None),
        }
    }
}

/// A reply that is written down, with all that judging it takes.
#[derive(Clone)]
pub(in crate::desk) struct Case {
    pub(in crate::desk) group: Group,
    pub(in crate::desk) settings: Settings,
    pub(in crate::desk) post: Post,
    pub(in crate::desk) asks: Asks,
    pub(in crate::desk) reply: Reply,
    /// The chat's id of whoever sent it.
    pub(in crate::desk) user: String,
    /// In which language they are spoken to.
    pub(in crate::desk) language: LanguageTag,
    /// Their name.
    pub(in crate::desk) name: String,
    /// Every reply of the member to the post, this one among them.
    pub(in crate::desk) replies: Vec<ReplyOf>,
    pub(in crate::desk) attempt: Option<Attempt>,
    /// What their work on the post has come to with the verdicts that are kept.
    pub(in crate::desk) work: Work,
    /// Whether the text was cut when it was written down.
    pub(in crate::desk) cut: bool,
}

impl Case {
    /// Whether the reply came before the close.
    pub(in crate::desk) fn counts(&self) -> bool {
        self.reply.received_at < self.post.closes_at || self.post.state == PostState::Intended
    }

    /// The verdict that the reply has.
    pub(in crate::desk) fn verdict(&self) -> Option<&VerdictRow> {
        self.replies
            .iter()
            .find(|other| other.reply.id == self.reply.id)?
            .verdict
            .as_ref()
    }

    /// What stood after the reply, with the verdicts that are kept.
    pub(in crate::desk) fn after(&self) -> Option<After> {
        self.work.after_reply(self.reply.id)
    }

    /// How the attempt had ended before this reply, if it had.
    pub(in crate::desk) fn ended(&self) -> Option<AttemptState> {
        self.attempt
            .as_ref()
            .map(|attempt| attempt.state)
            .filter(|state| *state != AttemptState::Playing)
    }
}

/// A reply as it is kept, with all that judging it takes.
pub(in crate::desk) fn kept_reply(db: &Db<'_>, reply: Reply) -> Done<Case> {
    let Some(post) = db.post(reply.post_id)? else {
        return not_found(Refusal::RemovedMeanwhile {
            what: Removed::PostOfReply,
        });
    };
    let asks = asks(db, &post)?;
    kept_at(db, post, asks, reply)
}

/// As [`kept_reply`], where the post and what it asks are at hand.
pub(in crate::desk) fn kept_at(db: &Db<'_>, post: Post, asks: Asks, reply: Reply) -> Done<Case> {
    let Some(group) = db.group(post.group_id)? else {
        return not_found(Refusal::RemovedMeanwhile {
            what: Removed::GroupOfReply,
        });
    };
    let Some(member) = db.member(reply.member_id)? else {
        return not_found(Refusal::RemovedMeanwhile {
            what: Removed::WriterOfReply,
        });
    };
    let replies = db.replies_of(post.id, reply.member_id)?;
    let attempt = db.attempt(post.id, reply.member_id)?;
    Ok(Case {
        work: attempt::work_of(db, &post, reply.member_id, &replies, attempt.as_ref())?,
        language: tongue::of_member(&group, Some(&member))?,
        user: member.chat_user,
        name: member.name,
        settings: convert::kept_settings(&group.settings)?,
        asks,
        replies,
        attempt,
        cut: false,
        group,
        post,
        reply,
    })
}

/// What a post asks.
///
/// # Errors
/// When it asks nothing.
pub(in crate::desk) fn asks(db: &Db<'_>, post: &Post) -> Done<Asks> {
    match content::held(db, post)? {
        Held::Problem(posed) => Ok(Asks::Problem(posed)),
        Held::Question(..) => Ok(Asks::Question),
        Held::Words(_) => bad_request(takes_none(post)),
    }
}

/// What replies to a post answer, without a look at its position.
///
/// # Errors
/// When it asks nothing.
pub(in crate::desk) fn replies_to(post: &Post) -> Done<RepliesTo> {
    match &post.content {
        Content::Problem { .. } => Ok(RepliesTo::Problem),
        Content::Question { .. } => Ok(RepliesTo::Question),
        Content::Words(_) => bad_request(takes_none(post)),
    }
}

fn takes_none(post: &Post) -> Refusal {
    Refusal::WordsTakeNoAnswers {
        number: post.number,
    }
}
