//! Everything the command line says, as facts; what they say in each language stands in `console.ftl` of the
//! package `words`, under the variant's name in kebab case. (Help is in `console-help.ftl`, by command.)
//!
//! What only scripts read stays as it is in every language: JSON, the headings of CSV, exit statuses, and what
//! `engine` says by the protocol.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

use std::{error::Error as StdError, fmt, path::Path};

use serde::Serialize;

use super::tongue::readers;
pub(super) use crate::{
    chess::fact::{Decimal, Line, List, Or, Theirs, number},
    desk::{Date, LocalTime, Whole},
};
use crate::{
    chess::{check::Soundness, fact::Pattern, judge::Verdict, read::Fault},
    desk::{KindName, NoTime},
    words::english,
};

/// What a command tells of its work.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Text {
    // The report on a position.
    /// With what the bar writes itself in place of the numbers.
    CheckProgress {
        done: String,
        total: String,
        left: String,
    },
    CheckedAs {
        verdict: Soundness,
    },
    ReportKeys {
        number: u32,
        keys: List<Line>,
    },
    ReportTry {
        line: Line,
    },
    ReportPictures {
        patterns: List<Pattern>,
    },
    ReportDifficulty {
        grade: Decimal,
    },
    ReportNote {
        note: Theirs,
    },
    ReportProved {
        nodes: Whole,
        seconds: Decimal,
    },
    ReportJudged {
        depth: u32,
        nodes: Whole,
        seconds: Decimal,
    },
    ReportNotProved {
        nodes: Whole,
        seconds: Decimal,
    },
    WordsWithPost,
    WordsAtReveal,
    WordsBesideMoves,
    NoPositionsFound,
    CheckedAllSound {
        number: u32,
    },
    SomeToLookAt {
        number: u32,
        sound: u32,
        wanting: u32,
    },
    TopicsNotVerified {
        number: u32,
    },
    WrittenQuestion {
        id: Theirs,
        words: Theirs,
    },
    WrittenAtClose {
        words: Theirs,
    },
    WrittenWords {
        id: Theirs,
        words: Theirs,
    },

    // A lesson.
    LessonTitled {
        title: Theirs,
    },
    LessonTitledTopic {
        title: Theirs,
        topic: Theirs,
    },
    LessonStepHead {
        step: i64,
        contrast: bool,
    },
    LessonQuestion {
        words: Theirs,
    },
    LessonSays {
        words: Theirs,
    },
    LessonPartWaits {
        number: u32,
        steps: List<Theirs>,
    },
    LessonPartNotKept,
    LessonPartAsBefore {
        step: i64,
    },
    LessonPartInWeek {
        item: i64,
    },
    LessonPartOpen {
        number: i64,
    },
    LessonPartClosed {
        number: i64,
    },
    LessonKept {
        lesson: i64,
    },
    LessonNotKept,
    NoLessons,
    LessonRowIs {
        lesson: i64,
        title: Theirs,
        steps: u32,
        parts: u32,
        waiting: u32,
        posted: u32,
    },
    LessonLeftOut {
        number: u32,
    },

    // What is kept of it.
    WrittenNotKept,
    SameChoices,
    ReportAgain {
        what: String,
    },
    ReportPostedBefore {
        number: i64,
        date: Date,
    },
    PostedBeforeLeftOut,

    // One reply.
    Graded {
        verdict: Verdict,
        points: Decimal,
    },
    MayMean {
        reading: Theirs,
    },

    // Positions out of games.
    FoundPlayed {
        file: Theirs,
        line: u32,
    },
    FoundMissed {
        file: Theirs,
        line: u32,
    },

    // The week.
    PostingPausedUntil {
        moment: LocalTime,
    },
    PostingPaused,
    QueueIsEmpty {
        group: Theirs,
    },
    QueueDue {
        moment: LocalTime,
    },
    QueueDueFixed {
        moment: LocalTime,
    },
    QueueNoTime {
        why: NoTime,
    },
    QueueStepOf {
        title: Theirs,
        step: i64,
        steps: i64,
    },
    QueueWaitsForPost {
        number: i64,
    },
    QueueWaitsForItem {
        item: i64,
        called: Theirs,
    },
    TakenOut {
        taken: i64,
    },
    QueueKind {
        kind: KindName,
    },
    QueueTopicAlso {
        topic: Theirs,
        others: List<Theirs>,
    },
    QueueNoTopic,
    QueueTopicNotVerified {
        topic: String,
    },
    QueueItem {
        item: i64,
    },
    QueueItemWithPosition {
        item: i64,
    },
    QueuePosition {
        item: i64,
        position: i64,
    },
    QueuePositionAgain {
        item: i64,
        position: i64,
        number: i64,
        date: Date,
    },

    // Copies of the store.
    CopiedTo {
        store: Theirs,
        copy: Theirs,
    },
    RestoredFrom {
        store: Theirs,
        copy: Theirs,
    },

    // A serving program.
    StoreIsAt {
        file: Theirs,
    },
    StopWithCtrlC,
    Stopping,
    NotFinishedInTime,
    ChatIsBack {
        chat: Theirs,
    },
    ConnectsByItself {
        why: Theirs,
    },
    TriedAgain {
        why: Theirs,
        seconds: u32,
    },

    /// What went wrong, and what led to it.
    BecauseOf {
        what: String,
        cause: String,
    },
}

/// Why a command could not do what it was asked for.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Failure {
    // Files.
    FileUnreadable {
        file: Theirs,
    },
    FileUnwritable {
        file: Theirs,
    },
    FileIsTooLarge {
        file: Theirs,
        most: u32,
    },
    FolderNotMade {
        folder: Theirs,
    },
    InputUnreadable,
    EndingOfBoard {
        file: Theirs,
    },
    EndingOfLine {
        file: Theirs,
    },
    TooWideForLine {
        file: Theirs,
        size: u32,
        most: u32,
    },

    // Settings.
    SettingsUnreadable {
        file: Theirs,
    },
    SettingsWrong {
        file: Theirs,
    },
    SettingNoTime {
        key: String,
        value: String,
    },
    SettingOutOfRange {
        key: String,
        value: String,
        least: String,
        most: String,
    },

    // What was asked for.
    NoTimeLimit {
        value: String,
    },
    PositionGiven,
    ShortestTooLong {
        shortest: u32,
        longest: u32,
    },
    NotAPattern {
        topic: Theirs,
        patterns: List<Theirs>,
    },
    TaskNotShown {
        task: String,
        seconds: Decimal,
    },
    ReplyHoldsNothing,
    NoProblemInFile {
        file: Theirs,
    },
    LessonUnreadable {
        file: Theirs,
        row: u32,
        what: Fault,
    },
    NotALegalMove {
        written: Theirs,
    },
    LineHoldsNoMoves,
    PlacesFromOne,
    NothingTakenOut,
    StepTimeNotRead {
        written: Theirs,
    },
    NoSteps {
        file: Theirs,
    },
    TimeNotRead {
        written: Theirs,
    },
    DayMissing {
        day: Date,
        zone: String,
    },
    NothingToPrint,

    // The store and its groups.
    NoStoreAt {
        file: Theirs,
    },
    NoStoreToCopy {
        file: Theirs,
    },
    NoGroupYet,
    SeveralGroups {
        groups: List<Theirs>,
    },
    NoSuchGroup {
        wanted: Theirs,
        groups: List<Theirs>,
    },
    SeveralOfThatName {
        wanted: Theirs,
        groups: List<Theirs>,
    },
    NoCoachYet,
    NoFolderForDemo,
    DemoStoreThere {
        file: Theirs,
    },

    StoreIsNewer {
        file: Theirs,
        found: i64,
        known: i64,
    },
    NotAStore {
        file: Theirs,
        why: Theirs,
    },
    StoreReadOnly {
        file: Theirs,
        why: Theirs,
    },
    StoreNotOpened {
        file: Theirs,
        why: Theirs,
    },
    StoreDiskFull {
        file: Theirs,
    },
    StoreBusy {
        file: Theirs,
    },
    FileExists {
        file: Theirs,
    },
    StoreDamaged {
        what: Theirs,
    },
    StoreStopped,
    TablesUnreadable {
        folder: Theirs,
        why: Theirs,
    },
    NoTables {
        folder: Theirs,
    },

    // A serving program.
    NothingToRun {
        why: String,
    },
    NoChatLeft,
    ThreadsNotStarted,
    StopSignalUnheard,
    CtrlCUnheard,
}

/// What is wrong with the arguments of a call.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Misuse {
    UnknownArgument {
        argument: Theirs,
    },
    ArgumentMissing {
        arguments: List<Theirs>,
    },
    UnknownCommand {
        command: Theirs,
    },
    NoCommandGiven {
        command: Theirs,
        commands: List<Theirs>,
    },
    ArgumentTwice {
        argument: Theirs,
    },
    ArgumentConflict {
        argument: Theirs,
        others: List<Theirs>,
    },
    ValueMissing {
        argument: Theirs,
    },
    ValueNotOffered {
        value: Theirs,
        argument: Theirs,
        values: List<Theirs>,
    },
    ValueUnfit {
        value: Theirs,
        argument: Theirs,
        detail: String,
    },
    NotANumber,
    NotADay,
    NotReadable,
    NotBetween {
        least: String,
        most: String,
    },
    NotTwoSquares,
    NotASquare,
    NotALanguage {
        languages: Or<String>,
    },
    PerhapsMeant {
        name: Theirs,
    },
    AfterTwoDashes {
        argument: Theirs,
    },
    UsageIs {
        usage: String,
    },
    HelpSaysMore,
}

/// What an option offers, behind what it is for.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Offered {
    UsualValue { value: String },
    EnvironmentName { name: String },
    OneOfValues { values: List<Offered> },
    OptionValue { name: String, meaning: String },
}

impl Text {
    /// In the words of whoever reads what this process prints.
    pub(super) fn said(&self) -> String {
        readers().say(self)
    }
}

/// These words, as they are: a person's, a file's name, what another part of the program says.
pub(super) fn theirs(text: impl fmt::Display) -> Theirs {
    text.to_string().into()
}

/// A file by its path.
pub(super) fn path(file: &Path) -> Theirs {
    theirs(file.display())
}

/// A failure with what led to it. Written out it is English, for the log; a person reads it in their own words
/// by [`super::told::told`].
#[derive(Debug)]
pub(super) struct Failed {
    pub what: Failure,
    cause: Option<anyhow::Error>,
}

impl fmt::Display for Failed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&english().say(&self.what))
    }
}

impl StdError for Failed {
    fn source(&self) -> Option<&(dyn StdError + 'static)> {
        self.cause.as_ref().map(|cause| &**cause as _)
    }
}

/// A failure that nothing else led to.
pub(super) fn failure(what: Failure) -> anyhow::Error {
    anyhow::Error::new(Failed { what, cause: None })
}

/// Says what could not be done because of an error, or because something is not there.
pub(super) trait OrFail<T> {
    /// The value, else the failure.
    ///
    /// # Errors
    /// Where there is no value; with the error as the cause.
    fn or_fail(self, what: impl FnOnce() -> Failure) -> anyhow::Result<T>;
}

impl<T, E: Into<anyhow::Error>> OrFail<T> for Result<T, E> {
    fn or_fail(self, what: impl FnOnce() -> Failure) -> anyhow::Result<T> {
        self.map_err(|cause| {
            anyhow::Error::new(Failed {
                what: what(),
                cause: Some(cause.into()),
            })
        })
    }
}

impl<T> OrFail<T> for Option<T> {
    fn or_fail(self, what: impl FnOnce() -> Failure) -> anyhow::Result<T> {
        self.ok_or_else(|| failure(what()))
    }
}

/// Fails unless something holds.
pub(super) fn unless(holds: bool, what: impl FnOnce() -> Failure) -> anyhow::Result<()> {
    match holds {
        true => Ok(()),
        false => Err(failure(what())),
    }
}
