//! What a check finds, as facts. The store keeps them with the report.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use serde::{Deserialize, Deserializer, Serialize};
use serde_json::Value;

use super::TableVerdict;
use crate::{
    Stipulation, Warning,
    comments::Withheld,
    fact::{And, Centipawns, Line, List, Side, Task, Theirs, number},
    read::{Fault, Oddity, ReadError},
};

/// One thing that a report says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Statement {
    /// What the check found.
    Found(Finding),
    /// What is odd about the position.
    Odd(Warning),
    /// What became of the coach's words.
    Words(Withheld),
    /// A sentence of a report from before facts were kept.
    Old(String),
    /// A fact that somebody else added.
    Added(Value),
}

impl Statement {
    /// A fact of one's own, to stand among those of the check: an object with its name under `is`.
    pub fn added(fact: impl Serialize) -> Self {
        Self::Added(serde_json::to_value(fact).unwrap_or_default())
    }
}

impl From<Finding> for Statement {
    fn from(finding: Finding) -> Self {
        Self::Found(finding)
    }
}

impl From<&ReadError> for Finding {
    fn from(error: &ReadError) -> Self {
        Self::Unreadable {
            file: error.file.as_str().into(),
            row: number(error.line),
            what: Fault::clone(&error.problem),
        }
    }
}

impl From<Withheld> for Statement {
    fn from(withheld: Withheld) -> Self {
        Self::Words(withheld)
    }
}

impl From<Warning> for Statement {
    fn from(warning: Warning) -> Self {
        Self::Odd(warning)
    }
}

/// Reads what a report says: facts, or the sentence of a report from before facts were kept.
pub(super) fn sentences<'de, D: Deserializer<'de>>(
    deserializer: D,
) -> Result<Vec<Statement>, D::Error> {
    #[derive(Deserialize)]
    #[serde(untagged)]
    enum Kept {
        Sentence(String),
        Facts(Vec<Statement>),
    }
    Ok(match Kept::deserialize(deserializer)? {
        Kept::Sentence(sentence) if sentence.is_empty() => Vec::new(),
        Kept::Sentence(sentence) => vec![Statement::Old(sentence)],
        Kept::Facts(facts) => facts,
    })
}

/// A fact of a check. Those of a report's message are sentences; those of its warnings are statements that stand
/// behind a colon.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Finding {
    // The file.
    /// An entry could not be read.
    Unreadable {
        file: Theirs,
        row: u32,
        what: Fault,
    },
    /// A line is not in the file's encoding.
    OddRow {
        row: u32,
        what: Oddity,
    },

    /// The position stood before in the same files, under this id.
    PositionAgain {
        id: Theirs,
    },

    // A position that is over.
    MatedAlready,
    StalematedAlready,
    /// There is no move, for a win or a draw.
    NoMoveLeft,

    // A mate.
    /// A mate in fewer moves than asked for.
    SoonerMate {
        moves: u32,
        asked: u32,
        line: Line,
    },
    /// More than one key.
    SeveralMates {
        number: u32,
        moves: u32,
        keys: And<Line>,
    },
    /// There is none.
    NoMateIn {
        moves: u32,
    },
    /// What holds against a first move; of so many defences the first.
    HoldsAgainst {
        whose: Whose,
        first: Line,
        reply: Line,
        number: u32,
    },
    /// A first move stalemates.
    LeavesStalemate {
        whose: Whose,
        first: Line,
    },
    /// A first move is no mate where it has to be.
    IsNoMate {
        whose: Whose,
        first: Line,
    },
    /// A mate one move longer than asked for.
    LongerMate {
        moves: u32,
        keys: And<Line>,
    },
    /// The budget ended before more could be told of what does not hold.
    MoreUntold,
    /// Moves that the file promises do not mate; those that do.
    PromiseNoMate {
        promised: And<Line>,
        number: u32,
        moves: u32,
        keys: And<Line>,
        others: u32,
    },
    /// Moves that the file avoids mate.
    AvoidedMates {
        avoided: And<Line>,
        number: u32,
        moves: u32,
    },
    /// Something is wrong in the file's variations.
    VariationsDoubtful,

    // A mate that is not settled: what was proved by then.
    MateUnsettled {
        task: Stipulation,
    },
    NothingProvedYet,
    /// This mates, and nothing sooner.
    MateProved {
        line: Line,
        moves: u32,
    },
    OnlyKeyWithoutLine,
    OtherKeysWithoutLine {
        keys: And<Line>,
        number: u32,
    },
    NotOnlyKey {
        keys: And<Line>,
        number: u32,
        moves: u32,
    },
    OnlyKeyOpen,
    /// Which first moves are open; so many more are not named.
    FirstMovesOpen {
        failed: u32,
        open: List<Line>,
        more: u32,
    },
    NoMateProved {
        moves: u32,
    },
    /// So many of all first moves do not mate in so many moves either.
    FirstMovesFail {
        failed: u32,
        all: u32,
        moves: u32,
    },
    /// What to do.
    AllowMore,
    /// What to do where the length of mates is a choice, too.
    AllowMoreOrShorter,
    /// The tries were not all looked for.
    TriesCut,
    /// The fifty moves would be full before the mate.
    FiftyMoves {
        number: u32,
    },

    // A win or a draw.
    NoMateSoWin {
        moves: u32,
    },
    NoMateSought,
    NoMateThenCut {
        moves: u32,
    },
    /// The search did not come deep enough.
    EndedEarly {
        depth: u32,
        task: Task,
    },
    /// There may be more keys than are listed.
    MayBeMore,
    /// The file promises other moves than the search prefers.
    SearchPrefers {
        promised: And<Line>,
        keys: And<Line>,
    },
    TablesBetter,
    TablesNone {
        task: Task,
    },
    TablesSeveral {
        task: Task,
        keys: And<Line>,
    },
    JudgedBetter {
        depth: u32,
        best: Stands,
    },
    JudgedNone {
        depth: u32,
        task: Task,
        best: Stands,
    },
    JudgedSeveral {
        depth: u32,
        task: Task,
        keys: And<Line>,
    },
    /// The key, and the next best move.
    JudgedBest {
        depth: u32,
        best: Stands,
        next: Stands,
    },
    /// The key, which is the only move there is.
    JudgedOnly {
        depth: u32,
        best: Stands,
    },

    // The file's variations.
    /// What is wrong with a move, by its line of the file.
    InVariation {
        row: u32,
        line: Line,
        what: Complaint,
    },
    /// More is wrong than is told.
    MoreInVariations {
        more: u32,
    },
    /// So many lines of a win or a draw hold, judged to that depth or exactly.
    VariationsHold {
        number: u32,
        depth: Option<u32>,
    },
    /// After these moves of them mate is proved; so many more are not named.
    VariationsMate {
        lines: And<Line>,
        more: u32,
    },
    /// Where the budget ended.
    VariationsCut {
        row: u32,
        line: Line,
    },
}

/// Why a first move is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Whose {
    /// The file promises it.
    Promised,
    /// It nearly works.
    Try,
    /// There is no better.
    Any,
}

/// How a move stands by search, for the side that makes it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Stands {
    MoveStandsAt { line: Line, value: Centipawns },
    MoveMatesIn { line: Line, moves: u32 },
    MoveIsMatedIn { line: Line, moves: u32 },
}

/// How a position stands, and by what right that is said.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Assessment {
    IsMateNow,
    IsStalemateNow,
    NeitherCanMate,
    TablesSay {
        side: Side,
        known: TableVerdict,
    },
    SearchSays {
        depth: u32,
        side: Side,
        value: Centipawns,
    },
    SearchSaysMate {
        depth: u32,
        side: Side,
        moves: u32,
    },
    SearchSaysMated {
        depth: u32,
        side: Side,
        moves: u32,
    },
}

/// What is wrong with a move of the file's variations: a statement behind the place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Complaint {
    // In a mate.
    /// The line goes on after the last move of the task.
    GoesOnTooLong,
    /// It had to be mate; what is. Without a better move the mate is gone before it.
    HadToMate {
        better: Option<Line>,
    },
    /// It lets the mate go; what holds, and what is better.
    LetsMateGo {
        moves: u32,
        holds: Option<Line>,
        better: Option<Line>,
    },
    /// It is marked as wrong and mates.
    WrongYetMates {
        moves: u32,
    },
    /// It does not hold; what does, three at most, of so many.
    HoldsNot {
        holds: And<Line>,
        number: u32,
    },
    /// A sign says that it does not win, and it mates.
    SignYetMates,

    // In any task.
    /// It is written with a mate sign and is no mate.
    MateSignWrong,

    // In a win or a draw.
    WrongYetDoes {
        task: Task,
        standing: Assessment,
    },
    /// It lets the win or the draw go; without a better move it was gone before.
    LetsItGo {
        task: Task,
        standing: Assessment,
        better: Option<Line>,
    },
    /// It refutes nothing; what does.
    RefutesNot {
        standing: Assessment,
        better: Option<Line>,
    },
    /// The sign at the line's end is wrong.
    EndsWith {
        sign: String,
        standing: Assessment,
    },
}
