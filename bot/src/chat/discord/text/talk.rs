//! What is said about messages among others, direct ones, and those that wait for their writer's word.

use serde::Serialize;

use super::{And, Label, Or, Plain};
use crate::desk::Verdict;

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
    CoachAnswersPosition {
        number: i64,
    },
    CoachAnswersQuote {
        quote: Plain,
        number: i64,
    },
    NamedCoachAnswersPosition {
        coach: Plain,
        number: i64,
    },
    NamedCoachAnswersQuote {
        coach: Plain,
        quote: Plain,
        number: i64,
    },

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
    PositionOn {
        number: i64,
        topic: Label,
    },
    PositionOfGroup {
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
    HasAnswered {
        name: Plain,
        word: String,
    },

    // Buttons.
    ButtonItIsMyAnswer,
    ButtonAnswerTo {
        number: i64,
    },
    ButtonSendTo {
        number: i64,
    },
    ButtonSayToAll,
    ButtonMayStay,
    ButtonDropIt,
    ButtonDecide,
}
