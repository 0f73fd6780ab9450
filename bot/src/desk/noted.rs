//! What the desk adds to the report of a check, as facts: statements that stand behind a colon.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use serde::Serialize;

use crate::chess::{
    check::Statement,
    fact::{Line, List, Theirs},
};

/// One thing that stands beside what the check found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Noted {
    /// The same position is kept with other tasks; as what, with the task behind each.
    KeptWithOtherTask { kept: List<Theirs> },

    /// The file's topic is longer than a name may be.
    TopicTooLong { begins: Theirs, most: u32 },

    // An engine's opinion.
    /// It prefers one of the keys.
    SecondOpinionAgrees {
        engine: Theirs,
        depth: u32,
        line: Line,
        score: String,
    },
    /// It prefers another move.
    SecondOpinionPrefers {
        engine: Theirs,
        depth: u32,
        line: Line,
        score: String,
    },
    /// It cannot be started.
    EngineNotStarted { engine: Theirs, error: Theirs },
    /// It does not speak UCI, or not in time.
    EngineNotUci { engine: Theirs, seconds: u32 },
    /// It ended by itself.
    EngineEnded { engine: Theirs },
    /// It did not come back.
    EngineHung { engine: Theirs },
    /// It gave a move that is none.
    EngineMoveWrong { engine: Theirs, written: Theirs },
}

impl From<Noted> for Statement {
    fn from(noted: Noted) -> Self {
        Self::added(noted)
    }
}
