//! What is said about messages among others, direct ones, and those that wait for their writer's word.

use serde::Serialize;

use super::{And, Label, Or, Plain};
use crate::desk::{KindName, OpenPost, Verdict};

/// A sentence or a few, or a button.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Talk {
    // To the writer alone.
    QuotedAnswer {
        quote: Plain,
    },
    TakenOutOfSight {
        quote: Plain,
    },
    PleaseDelete {
        quote: Plain,
    },
    StillThere,
    EditStands,
    OnYourAnswer {
        quote: Plain,
    },
    CoachAnswersPost {
        kind: KindName,
        number: i64,
    },
    CoachAnswersQuote {
        quote: Plain,
        kind: KindName,
        number: i64,
    },
    NamedCoachAnswersPost {
        coach: Plain,
        kind: KindName,
        number: i64,
    },
    NamedCoachAnswersQuote {
        coach: Plain,
        quote: Plain,
        kind: KindName,
        number: i64,
    },
    ThereToBeRead,

    // Which post is meant.
    WhichPosition,
    WhichGroup,
    FitsAnother {
        number: i64,
    },
    FitsSeveral {
        numbers: And<i64>,
    },
    MayTellMove {
        numbers: Or<i64>,
        hidden: bool,
    },
    MayBeAnAnswer {
        number: i64,
        hidden: bool,
    },
    CouldAnswer {
        posts: Or<Answerable>,
    },
    PostNamed {
        kind: KindName,
        number: i64,
    },
    PostOn {
        kind: KindName,
        number: i64,
        topic: Label,
    },
    PostOfGroup {
        kind: KindName,
        group: Label,
        number: i64,
    },

    // What waits for its writer's word.
    HeldGone,
    HeldNone,
    HeldSaid,
    HeldStays,
    HeldDropped,

    // For all to see. A name that could tell a move is left out.
    SomeMember,
    AnswerSealed {
        name: Plain,
    },
    AnswerSealedOfSomebody,
    WaitsForWord {
        name: Plain,
    },
    WaitsForWordOfSomebody,
    VerdictWord {
        verdict: Verdict,
    },
    KeptWord,
    MarkedWord,
    HasAnswered {
        name: Plain,
        word: String,
    },

    // Buttons.
    ButtonItIsMyAnswer,
    ButtonAnswerTo {
        kind: KindName,
        number: i64,
    },
    ButtonSendTo {
        kind: KindName,
        number: i64,
    },
    ButtonSayToAll,
    ButtonMayStay,
    ButtonDropIt,
    ButtonDecide,
}

/// A post that a message may answer, part of a sentence.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Answerable {
    AnswerTo { kind: KindName, number: i64 },
}

impl From<&OpenPost> for Answerable {
    fn from(post: &OpenPost) -> Self {
        Self::AnswerTo {
            kind: post.holds.name(),
            number: post.number,
        }
    }
}
