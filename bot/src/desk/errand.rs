//! What must go out to a chat: posts, reveals, words to the coach. Recorded before it is sent, so that
//! each goes out once whatever crashes when.

use super::answers::WordsRow;
use super::sheets::{Notice, Place, PostSheet, RevealSheet, VerdictSheet};

/// One thing to carry out in a chat.
#[derive(Clone, Debug)]
pub struct Errand {
    /// Where.
    pub place: Place,
    /// What.
    pub kind: ErrandKind,
}

/// The kinds of errand.
#[derive(Clone)]
pub enum ErrandKind {
    /// Put a position before the group. `again` is true when an earlier attempt may have got through
    /// before a crash: the chat must look for the nonce before it sends.
    Post {
        /// What to show.
        sheet: Box<PostSheet>,
        /// An earlier attempt may have got through.
        again: bool,
    },
    /// Close a post with the reveal.
    Reveal {
        /// What to show.
        sheet: Box<RevealSheet>,
        /// An earlier attempt may have got through.
        again: bool,
    },
    /// A private word to the group's coaches.
    TellCoach(Notice),
    /// A private word to one member: a verdict that came later than the reply, from the coach or after
    /// a restart.
    TellMember {
        /// The chat's id of the member.
        user: String,
        /// What they had written.
        text: String,
        /// What to tell them.
        sheet: Box<VerdictSheet>,
    },
    /// A coach's private answer to one member, without a verdict.
    AnswerMember(Box<Answered>),
}

/// A coach's private answer with whom it is for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answered {
    /// The chat's id of the member.
    pub user: String,
    /// The answer.
    pub row: WordsRow,
}

/// Where an errand went, in the chat's own words (message id, thread id).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Delivered {
    /// The message.
    pub message: Option<String>,
    /// The thread for talk, where the chat has threads.
    pub thread: Option<String>,
}
