//! What must go out to a chat: posts, reveals, words to the coach. Recorded before it is sent, so that
//! each goes out once whatever crashes when.

use super::answers::WordsRow;
use super::examples::{ExampleSheet, LeaveAsked};
use super::notice::Notice;
use super::outbox::Earlier;
use super::sheets::{Place, PostSheet, RevealSheet, VerdictSheet};

/// One thing to carry out in a chat.
#[derive(Clone, Debug)]
pub struct Errand {
    /// Where.
    pub place: Place,
    /// What.
    pub kind: ErrandKind,
    /// Of a post or a reveal that takes a chat several requests: those that are done.
    pub done: Vec<StepDone>,
    /// Of a word to somebody: an attempt before this one, which may have got through. A chat that can find out
    /// looks for it before it sends.
    pub earlier: Option<Earlier>,
    /// Of a word to somebody: where it stands in the outbox.
    pub(super) word: Option<i64>,
}

impl Errand {
    /// How a step went, if it is done.
    pub fn done(&self, step: Step) -> Option<&StepDone> {
        self.done.iter().find(|done| done.step == step)
    }
}

/// A request of a post or a reveal that is made once. A chat with several of them reports each by
/// [`super::Rounds::step_done`], and goes on at the first one missing after a crash.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Pictures may not be sent there: what they show is put into words.
    InWords,
    /// A message of the post; the first one, 0, is the post.
    Post(u8),
    /// The thread for talk.
    Thread,
    /// A message of the reveal; the first one, 0, is the reveal.
    Reveal(u8),
    /// The post says that it is closed.
    Closing,
    /// The thread is told that everything may be said.
    ThreadWord,
}

impl Step {
    /// Its name in the store.
    pub(super) fn code(self) -> String {
        match self {
            Self::InWords => "in-words".into(),
            Self::Post(n) => format!("post-{n}"),
            Self::Thread => "thread".into(),
            Self::Reveal(n) => format!("reveal-{n}"),
            Self::Closing => "closing".into(),
            Self::ThreadWord => "thread-word".into(),
        }
    }

    /// The step of that name.
    pub(super) fn parse(code: &str) -> Option<Self> {
        Some(match code {
            "in-words" => Self::InWords,
            "thread" => Self::Thread,
            "closing" => Self::Closing,
            "thread-word" => Self::ThreadWord,
            _ => match code.split_once('-')? {
                ("post", n) => Self::Post(n.parse().ok()?),
                ("reveal", n) => Self::Reveal(n.parse().ok()?),
                _ => return None,
            },
        })
    }
}

/// A step that is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepDone {
    /// Which.
    pub step: Step,
    /// The chat's id of what came of it; `None` where nothing could.
    pub reference: Option<String>,
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
    TellCoach(Box<Notice>),
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
    /// A private question to one member: whether their answer may be shown.
    AskLeave(Box<LeaveAsked>),
    /// An answer that is shown behind its reveal, or is taken back. Where a message of it stands already, that one
    /// changes.
    Example(Box<ExampleSheet>),
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_steps_name_is_read_back() {
        let numbered = (0..=u8::MAX).flat_map(|n| [Step::Post(n), Step::Reveal(n)]);
        let others = [Step::InWords, Step::Thread, Step::Closing, Step::ThreadWord];
        for step in numbered.chain(others) {
            assert_eq!(Step::parse(&step.code()), Some(step));
        }
        for wrong in ["", "post", "post-", "post-256", "reveal-x", "other-1"] {
            assert_eq!(Step::parse(wrong), None, "{wrong}");
        }
    }
}
