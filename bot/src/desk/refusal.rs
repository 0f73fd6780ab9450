//! Why something could not be done, as facts: for the person who asked, in no language.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use chrono::{DateTime, NaiveDate, NaiveDateTime, Utc};
use chrono_tz::Tz;
use serde::Serialize;

use super::KindName;
use crate::chess::{
    PositionError, StipulationError,
    check::Soundness,
    fact::{Line, List, Theirs},
    read::Fault,
};

/// Why something could not be done, and what to do instead.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Refusal {
    // There is no such thing.
    NotAGroup,
    NoMember,
    NoPost,
    NoPosition,
    NoReply,
    NoMessage,
    NoReplyOfYours,
    NoAnswerOfYours,
    NoMessageOfYours,
    NotInQueue,
    NotTakenOut,
    NoLesson,
    NoStep {
        step: i64,
        steps: i64,
    },
    NoDraft,
    NotHereAnyMore,
    RemovedMeanwhile {
        what: Removed,
    },
    NothingKeptOfYou,
    NothingKeptOfThem,
    NothingAsked,
    NothingAskedAnyMore,
    CodeOwnerGone,
    StillOnItsWay,
    NothingToPost,

    // The person may not.
    NotCoach,
    ShutOut,
    Muted {
        until: Option<LocalTime>,
        reason: Option<Theirs>,
    },
    MutedKeepsName,
    CoachIsNot {
        name: Theirs,
        what: Fate,
    },

    // Of replies, hints and talk.
    NothingToJudge,
    TakenAlready,
    NoMoveRead,
    PositionClosed {
        number: i64,
    },
    QuestionOpenStill {
        number: i64,
    },
    QuestionLacks {
        number: i64,
        what: Lacking,
    },
    NothingAnswered,
    WordsTakeNoAnswers {
        number: i64,
    },
    // Of moves that are talked about.
    NoBoardThere {
        number: i64,
    },
    NothingRevealedYet,
    NoMoveWritten,
    MoveNotThere {
        written: Theirs,
        number: i64,
    },
    OnlyQuestionsAreGrouped {
        number: i64,
        kind: KindName,
    },
    OnlyAnswersAreExamples,
    NobodyAsksToShow,
    WriterSaidNo,
    WordsAreGone,
    WordsBesideTooLong {
        most: Whole,
    },
    NothingToReveal {
        number: i64,
    },
    NoHints,
    NoHint,
    SolvedNoHint,
    GivenUpNoHint,
    HasSolved,
    LineFails {
        at: Theirs,
    },
    NothingToSay,
    TalkTooLong {
        most: Whole,
    },
    NameYourself,

    // Of a name.
    NameBlank {
        offer: Theirs,
    },
    NameReserved {
        name: Theirs,
        offer: Theirs,
    },
    NameInUse {
        name: Theirs,
        offer: Theirs,
    },

    // Of posts and the queue.
    SealedStill {
        number: i64,
    },
    NotOutYet,
    ClosingAlready,
    ClosedAlready,
    WasPosted {
        position: Theirs,
        number: i64,
        on: Date,
    },
    IllegalPosition,
    NoMoveHere {
        written: Theirs,
    },
    LineBreaks {
        at: Theirs,
        after: u32,
    },
    BoardLineTooLong {
        most: Whole,
    },
    DraftTooLarge {
        most: Whole,
    },
    DraftEmpty,
    DraftChanged,
    DraftStepWrong {
        step: u32,
        what: Box<Fault>,
    },
    EditUnreadable {
        what: Box<Fault>,
    },
    EditNotOne,
    EditNoTask,
    EditBadTask {
        why: StipulationError,
    },
    PositionThere {
        position: Theirs,
    },
    PositionWentOut {
        number: i64,
    },
    PositionInLesson {
        title: Theirs,
        step: i64,
    },
    CannotBeSetUp {
        why: PositionError,
    },
    NotSound {
        position: Theirs,
        soundness: Soundness,
    },
    CannotBeDrawn,
    TimePast {
        at: Dated,
        now: Dated,
        zone: String,
    },
    TimeTaken {
        at: Dated,
    },
    SlotTaken,
    PausePast,
    NotATime {
        words: Theirs,
    },
    NoTimes,
    TimeTwice {
        at: String,
    },
    TooManyTimes {
        most: Whole,
    },
    ClocksLeaveOut {
        zone: String,
        at: Dated,
        next: Option<Dated>,
    },

    // Of what a coach hands over or writes.
    FileTooHeavy {
        file: Theirs,
        size: Whole,
        most: Whole,
    },
    NoPositions {
        file: Theirs,
    },
    NameNeeded {
        what: Named,
    },
    NameTooLong {
        what: Named,
        most: Whole,
    },
    WordsTooLong {
        when: When,
        most: Whole,
    },
    WordsTellMove {
        line: Line,
    },
    WordsWanted,
    NothingToChoose,
    LessonThere {
        title: Theirs,
    },
    LessonWentOut {
        title: Theirs,
    },
    LessonAllOut {
        title: Theirs,
    },
    WouldTell {
        number: i64,
    },
    WouldTellOther,

    // Of topic cards.
    NoCard,
    NoCardOf {
        topic: Theirs,
    },
    CardHeldBack,
    CardIsOurs,
    CardWithoutWords,
    CardTooLong {
        part: CardPart,
        most: Whole,
    },
    MovesWithoutPosition,
    ExampleFails {
        at: Theirs,
        after: u32,
    },
    ExampleTooLong {
        most: Whole,
    },

    // Of a coach's verdicts, answers and members.
    AnswerWanted,
    AnswerTooLong {
        most: Whole,
    },
    NothingToOverrule,
    PointsRange,
    MarkedNotJudged,
    JudgedNotMarked,
    WordsToMemberTooLong {
        most: Whole,
    },
    MessageTakenBack,
    AnswerTakenBack,
    MuteLength,
    ReasonTooLong {
        most: Whole,
    },
    SameMember,
    RemovedNotMerged,
    BrowserTaken {
        name: Theirs,
    },
    NoCoachOfThis,
    LastCoach,

    // Of settings and figures.
    GroupAlready {
        name: Theirs,
    },
    DaysOfWeek,
    OpenBetween,
    PriceRange {
        what: Paid,
    },
    PeriodBackwards {
        first: Date,
        last: Date,
    },
    NoPeriod {
        words: Theirs,
        examples: String,
    },
    NoTopicsYet {
        topic: Theirs,
    },
    NoSuchTopic {
        topic: Theirs,
        alike: bool,
        near: List<Quoted>,
    },
    SeveralTopics {
        topic: Theirs,
        several: List<Quoted>,
    },
    TableFails,

    // Of the program.
    StoreFails {
        why: StoreFault,
    },
    PictureFails,
    Broke,
}

/// A name in quotation marks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename = "quoted")]
pub struct Quoted {
    pub words: Theirs,
}

/// What was removed while something was done with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Removed {
    PostOfReply,
    GroupOfReply,
    WriterOfReply,
    Reply,
    PositionOfPost,
    Position,
    PostOfMessage,
    GroupOfMessage,
}

/// What is done to a member and not to a coach.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fate {
    Muted,
    Removed,
    Erased,
}

/// What has a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Named {
    Group,
    Topic,
    File,
    Lesson,
}

/// What a problem has and a question has not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lacking {
    Hints,
    GivingUp,
    Board,
}

/// When a coach's words go out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum When {
    Post,
    Reveal,
}

/// A part of a card that a coach writes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum CardPart {
    Definition,
    Look,
}

/// What points are paid for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paid {
    Wrong,
    Hint,
}

/// Why the store cannot be used; the log says more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum StoreFault {
    Full,
    Busy,
    ReadOnly,
    Damaged,
    Stopped,
    Other,
}

/// A moment of these days by the group's clock: the day of the week, the day, the time.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LocalTime {
    moment: String,
}

impl LocalTime {
    /// This moment, by the clock of a zone.
    pub fn at(moment: DateTime<Utc>, zone: Tz) -> Self {
        Self {
            moment: moment
                .with_timezone(&zone)
                .format("%u %Y-%m-%d %H:%M")
                .to_string(),
        }
    }
}

/// A moment of any year by the group's clock.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Dated {
    dated: String,
}

impl From<NaiveDateTime> for Dated {
    fn from(local: NaiveDateTime) -> Self {
        Self {
            dated: local.format("%Y-%m-%d %H:%M").to_string(),
        }
    }
}

/// A day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Date {
    date: String,
}

impl From<NaiveDate> for Date {
    fn from(day: NaiveDate) -> Self {
        Self {
            date: day.to_string(),
        }
    }
}

/// A day whose year need not be said.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct DayOfYear {
    day: String,
}

impl From<NaiveDate> for DayOfYear {
    fn from(day: NaiveDate) -> Self {
        Self {
            day: day.to_string(),
        }
    }
}

/// A number that may be large.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Whole {
    whole: u64,
}

impl From<u64> for Whole {
    fn from(whole: u64) -> Self {
        Self { whole }
    }
}

impl From<usize> for Whole {
    fn from(whole: usize) -> Self {
        u64::try_from(whole).unwrap_or(u64::MAX).into()
    }
}
