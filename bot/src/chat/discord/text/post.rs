//! What a post and its reveal say, for all to see.

use serde::Serialize;

use super::{Label, List, Moment, Moves, Plain};
use crate::desk::KindName;

/// A line or a few.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Posting {
    PostHeading {
        kind: KindName,
        number: i64,
    },
    LessonStep {
        title: Plain,
        step: i64,
        steps: i64,
    },
    AnswersSealed {
        closes: Moment,
        away: Moment,
    },
    AnswersOpen {
        closes: Moment,
        away: Moment,
    },
    HowToAnswer {
        thread: bool,
    },
    PostClosed,
    QuestionTaken {
        closes: Moment,
        away: Moment,
    },
    HowToRespond {
        thread: bool,
    },
    QuestionClosed,
    ThreadName {
        kind: KindName,
        number: i64,
    },
    ThreadNameTopic {
        kind: KindName,
        number: i64,
        topic: Label,
    },

    RevealHeading {
        number: i64,
    },
    MoreVariations {
        more: u32,
    },
    MatingPatterns {
        number: u32,
        patterns: List<Plain>,
    },
    CoachNotes,
    CommonestWrong {
        played: Moves,
        times: u32,
        line: Moves,
    },
    CommonestWrongBecause {
        played: Moves,
        times: u32,
        line: Moves,
        why: Plain,
    },
    NobodyTookPart,
    StayedUnsolved {
        tried: u32,
    },
    SolvedBy {
        solved: u32,
        tried: u32,
        names: Plain,
    },
    NamesAndMore {
        names: Plain,
        more: u32,
    },
    SolutionIsOut,
    QuestionIsClosed {
        number: i64,
    },
    NobodyAnswered,
    AnsweredBy {
        names: Plain,
    },
    QuestionIsOver,
    /// How many answers have no mark yet.
    AnswersWait {
        waiting: u32,
    },
    ExampleHeading {
        number: i64,
    },
    ExampleOf {
        name: Plain,
        quote: Plain,
    },
    ExampleNameless {
        quote: Plain,
    },
    ExampleWords {
        words: Plain,
    },
    ExampleTakenBack {
        number: i64,
    },
}
