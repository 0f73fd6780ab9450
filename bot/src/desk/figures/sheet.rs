//! The engagement summary as the coach gets it.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::Advice;
use crate::desk::{Kind, sheets::CommonWrong};

/// The coach's report on a period.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Summary {
    /// First moment covered.
    pub from: Option<DateTime<Utc>>,
    /// First moment not covered.
    pub to: Option<DateTime<Utc>>,
    /// Each member's part.
    pub members: Vec<SummaryMember>,
    /// Each post of the period.
    pub posts: Vec<SummaryPost>,
    /// Each topic, weakest first.
    pub topics: Vec<SummaryTopic>,
    /// Names of those who took part in the earlier of two periods compared, and not since.
    pub went_quiet: Vec<String>,
    /// Names of those who took part in the later one and not in the earlier, but before that.
    pub came_back: Vec<String>,
    /// Which two periods those are; `None` where there is nothing to compare.
    #[serde(default)]
    pub compared: Option<Compared>,
    /// What to teach next, in a sentence or two.
    pub advice: Vec<Advice>,
}

/// Two periods of one length, both over and with posts in them: who went quiet is told by these.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[allow(missing_docs)]
pub struct Compared {
    pub recent_from: Option<DateTime<Utc>>,
    pub recent_to: Option<DateTime<Utc>>,
    pub before_from: Option<DateTime<Utc>>,
    pub before_to: Option<DateTime<Utc>>,
}

/// One member's part in a period.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs)]
pub struct SummaryMember {
    pub name: String,
    pub tried: usize,
    pub solved: usize,
    pub first_try: usize,
    pub points: f64,
    pub hints: usize,
    /// Questions answered.
    #[serde(default)]
    pub answered: usize,
}

impl SummaryMember {
    /// Whether they took part in anything.
    pub fn took_part(&self) -> bool {
        self.tried > 0 || self.answered > 0
    }
}

/// One post in a period.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs)]
pub struct SummaryPost {
    pub number: i64,
    pub topic: Option<String>,
    #[serde(flatten)]
    pub kind: Kind,
    /// Members who took part: who tried a problem, or answered a question.
    pub tried: usize,
    pub solved: usize,
    pub first_try: usize,
    pub common_wrong: Vec<CommonWrong>,
}

/// One topic in a period.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs)]
pub struct SummaryTopic {
    /// Its name; `None` for posts without a topic, in a member's own list.
    pub topic: Option<String>,
    pub posts: usize,
    pub tried: usize,
    pub solved: usize,
    pub first_try: usize,
    /// Questions posted.
    #[serde(default)]
    pub questions: usize,
    /// Answers to them.
    #[serde(default)]
    pub answered: usize,
}

impl SummaryTopic {
    /// Its name; empty for posts without a topic.
    pub fn name(&self) -> &str {
        self.topic.as_deref().unwrap_or_default()
    }
}
