//! What is laid out for one member: what came of a message, a hint, where they stand.

use std::fmt::{Debug, Formatter, Result};

use chrono::{DateTime, Utc};
use serde::Serialize;

use crate::desk::{
    OwnExample, Picture, Points, ReplyId, Said, ShownAnswer, SummaryTopic,
    sheets::{OpenPost, VerdictSheet, Why},
};

/// How a member stands at a post.
#[derive(Clone)]
pub enum Own {
    /// At a problem.
    Problem(Box<OwnPost>),
    /// At a question.
    Question(Box<OwnAnswer>),
    /// At words alone there is nothing to do.
    Words,
}

/// A member's own answer to a question.
#[derive(Clone)]
pub struct OwnAnswer {
    /// The answer that counts, as it was written; empty before there is one.
    pub answer: String,
    /// How it stands with the coach, and the coach's mark with its words once there is one.
    pub said: Said,
    /// The coach's private words on it; may be empty.
    pub words: String,
    /// The answer that counts; `None` before there is one.
    pub reply: Option<ReplyId>,
    /// Whether it waits for the coach.
    pub waiting: bool,
    /// The coach's mark, once there is one.
    pub marked: Option<Points>,
    /// Their answers before that one, as they were written.
    pub earlier: Vec<String>,
    /// Which of their answers a coach would show to the group.
    pub examples: Vec<OwnExample>,
    /// After the reveal, others' answers that are shown with their writers' leave.
    pub others: Vec<ShownAnswer>,
    /// Whether answers are still taken.
    pub live: bool,
}

/// A message of which nothing was kept or shown: its writer says what it is to be.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AskedBack {
    /// Why it is asked back. Only [`Why::MayTell`] leaves the choice to say it to all.
    pub why: Why,
    /// The posts it may be an answer to, the likeliest first.
    pub posts: Vec<OpenPost>,
}

/// What came of an explicit answer.
#[derive(Clone, Debug)]
pub enum Taken {
    /// It was judged.
    Answer(Box<VerdictSheet>),
    /// Nothing was kept; its sender is asked.
    AskedBack(AskedBack),
}

/// What came of a message among others, with what else it could have been weighed.
#[derive(Clone, Debug)]
pub enum Came {
    /// It was an answer, and this is the verdict.
    Answer(Box<VerdictSheet>),
    /// The same message was judged before (a replay); nothing new was counted.
    Again(Box<VerdictSheet>),
    /// It is talk that gives nothing away.
    Talk,
    /// Nothing was kept or shown; its writer is asked.
    AskedBack(AskedBack),
}

/// A hint step.
#[derive(Clone)]
pub struct HintSheet {
    /// Which of the member's moves it is for, from 1.
    pub number: u16,
    /// 1 the piece, 2 the idea, 3 the move.
    pub step: u8,
    /// The hint.
    pub said: Said,
    /// Whether another step can be asked for.
    pub more: bool,
    /// What the next step would take.
    pub price: Said,
    /// The same for a button.
    pub price_label: Said,
}

/// Where a member stands at one post.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs)]
pub enum OwnState {
    Playing,
    Solved,
    GivenUp,
}

/// A member's own sheet of a post.
#[derive(Clone)]
pub struct OwnPost {
    /// Where they stand; `None` before they took part.
    pub state: Option<OwnState>,
    /// Points for the post as they stand.
    pub points: Points,
    /// When replies close.
    pub closes_at: DateTime<Utc>,
    /// How it ended; empty while it has not.
    pub ended: Said,
    /// What the next hint takes; empty where there is none to be had.
    pub hint_price: Said,
    /// The same for a button.
    pub hint_label: Said,
    /// Whether the next hint takes points off.
    pub hint_costs: bool,
    /// Whether another hint step is to be had for the move that is asked.
    pub more_hints: bool,
    /// Whether answers, hints and giving up are still to be had.
    pub live: bool,
    /// The board as the member's line stands, once there is a line.
    pub board: Option<Picture>,
}

/// A member's own standing.
#[derive(Clone, Debug, Serialize)]
pub struct Progress {
    /// How the member stands at the open post, where one is open.
    pub open: Option<OpenNow>,
    /// Line on the board so far, numbered SAN.
    pub line: String,
    /// Posts tried, solved, and points, by topic.
    pub topics: Vec<SummaryTopic>,
    /// Points in all.
    pub points: f64,
}

/// Where a member stands at the open post.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct OpenNow {
    /// Number of the post within the group.
    pub number: i64,
    /// How far they are.
    pub at: OpenAt,
    /// When replies close.
    pub closes_at: DateTime<Utc>,
}

/// How far a member is with the open post.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum OpenAt {
    /// At a problem.
    Problem {
        /// Where they stand; `None` before they took part.
        state: Option<OwnState>,
        /// Wrong tries so far.
        wrong: u32,
    },
    /// At a question.
    Question {
        /// Whether they have answered it.
        answered: bool,
    },
}

impl Debug for HintSheet {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.debug_struct("HintSheet")
            .field("number", &self.number)
            .field("step", &self.step)
            .finish_non_exhaustive()
    }
}
