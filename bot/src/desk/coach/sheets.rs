//! What is laid out for coaches alone: a checked position, and what waits in the week.

use std::{
    fmt::{Debug, Formatter, Result},
    sync::Arc,
};

use chrono::{DateTime, Utc};
use serde::Serialize;

use super::week::{LessonStepOf, NoTime, WaitsFor};
use crate::desk::{
    CoachWords, Fresh, ItemId, Picture, PositionId, PostedBefore, Report, SameAgain, Soundness,
    TopicCheck, TopicOn,
    content::{Kind, beginning},
    topic_check,
};

/// What waits in the week.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Queued {
    /// A position with its task.
    Problem {
        /// Id of the position.
        position: PositionId,
        /// FEN.
        fen: String,
        /// The stipulation's sign.
        stipulation: String,
        /// Topics it has besides.
        further_topics: Vec<String>,
        /// How the position stands to its topic, where it has one.
        #[serde(skip_serializing_if = "Option::is_none")]
        topic_check: Option<TopicCheck>,
        /// Its latest post, where it was posted before.
        #[serde(skip_serializing_if = "Option::is_none")]
        posted: Option<PostedBefore>,
        /// What the check said.
        soundness: Soundness,
        /// Difficulty 1 to 10, where known.
        difficulty: Option<f64>,
    },
    /// What members answer in their own words.
    Question {
        /// What is asked.
        words: String,
        /// FEN of the position beside it.
        fen: Option<String>,
        /// The coach's words for the reveal; may be empty.
        at_reveal: String,
    },
    /// What members read.
    Words {
        /// The words.
        words: String,
        /// FEN of the position beside them.
        fen: Option<String>,
    },
}

impl Queued {
    /// The position, where it is a problem.
    pub fn position(&self) -> Option<PositionId> {
        match self {
            Self::Problem { position, .. } => Some(*position),
            Self::Question { .. } | Self::Words { .. } => None,
        }
    }

    /// Topics it has besides the one that counts.
    pub fn further_topics(&self) -> &[String] {
        match self {
            Self::Problem { further_topics, .. } => further_topics,
            Self::Question { .. } | Self::Words { .. } => &[],
        }
    }

    /// How a problem stands to its topic, where it has one.
    pub fn topic_check(&self) -> Option<&TopicCheck> {
        match self {
            Self::Problem { topic_check, .. } => topic_check.as_ref(),
            Self::Question { .. } | Self::Words { .. } => None,
        }
    }

    /// Whether its topic means a pattern that is not verified.
    pub fn topic_is_doubtful(&self) -> bool {
        self.topic_check().is_some_and(TopicCheck::is_doubtful)
    }

    /// Which kind it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Problem { stipulation, .. } => Kind::Problem {
                stipulation: stipulation.clone(),
            },
            Self::Question { .. } => Kind::Question,
            Self::Words { .. } => Kind::Words,
        }
    }

    /// What tells it apart from others of its kind: a problem's `source`, or the beginning of the words.
    pub fn label(&self, source: &str) -> String {
        match self {
            Self::Problem { .. } => source.to_owned(),
            Self::Question { words, .. } | Self::Words { words, .. } => beginning(words),
        }
    }
}

/// A checked position in the coach's hands.
#[derive(Clone)]
pub struct CheckedPosition {
    /// Its id in the store; `None` when it could not be kept (illegal, syntax error).
    pub position: Option<PositionId>,
    /// Topic as the file names it or the coach set it; the one that is counted.
    pub topic: Option<String>,
    /// Topics it has besides.
    pub further_topics: Vec<String>,
    /// The coach's words on it.
    pub words: CoachWords,
    /// What was kept of the same position before, where the file says something else.
    pub same: Option<SameAgain>,
    /// Its latest post, where it was posted before.
    pub posted: Option<PostedBefore>,
    /// The file's version, as long as the coach may choose it.
    pub fresh: Option<Arc<Fresh>>,
    /// The report.
    pub report: Report,
    /// Diagram, where there is a position to draw.
    pub picture: Option<Picture>,
}

impl CheckedPosition {
    /// How it stands to its topic, where it has one.
    pub fn topic_check(&self) -> Option<TopicCheck> {
        let topic = self.topic.as_deref()?;
        Some(topic_check(&self.report, topic, TopicOn::MainLine))
    }
}

/// A place in the week.
#[derive(Clone, Debug, Serialize)]
pub struct QueueItem {
    /// Id of the queue entry.
    pub id: ItemId,
    /// File and id, where a file gave it; else empty.
    pub source: String,
    /// Topic.
    pub topic: Option<String>,
    /// What waits.
    #[serde(flatten)]
    pub holds: Queued,
    /// Where it stands in a lesson, when it is part of one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lesson: Option<LessonStepOf>,
    /// When it will go out, as things stand; `None` where it has no moment.
    pub due_at: Option<DateTime<Utc>>,
    /// True when the coach fixed that time.
    pub fixed: bool,
    /// For whose reveals it waits.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub waits_for: Vec<WaitsFor>,
    /// Why it has no moment.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub no_time: Option<NoTime>,
    /// Where one step earlier is, from 0; `None` where it cannot go earlier by another place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub earlier: Option<usize>,
    /// Where one step later is, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub later: Option<usize>,
}

impl Debug for CheckedPosition {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.debug_struct("CheckedPosition")
            .field("position", &self.position)
            .field("id", &self.report.id)
            .field("verdict", &self.report.verdict)
            .finish_non_exhaustive()
    }
}
