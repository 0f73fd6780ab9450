//! What a coach is told of positions: check reports, the shelf, the week, answers by hand, the summary.

use serde::Serialize;

use super::{Decimal, Label, List, Moment, Moves, Plain};
use crate::desk::{KindName, Leave, NoTime, Soundness, Verdict};

/// A sentence or a few, a button, or a part of a form.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Coach {
    // Checking a file.
    Checking {
        done: u32,
        of: u32,
    },
    PutIntoWeek {
        number: u32,
    },
    WrittenInFile {
        number: u32,
    },
    LeftOut {
        number: u32,
    },
    FileTooLarge {
        name: Plain,
        most: u32,
    },
    FileElsewhere {
        name: Plain,
    },
    FileUnreachable {
        name: Plain,
    },
    ReportGone,
    ReportPutAway,
    ReportUnchanged,

    // Lessons.
    NoLessonsYet,
    LessonChoice {
        title: Label,
        steps: i64,
    },
    LessonRow {
        title: Plain,
        steps: i64,
        parts: u32,
        waiting: u32,
        posted: u32,
    },
    LessonHead {
        title: Plain,
    },
    LessonHeadTopic {
        title: Plain,
        topic: Plain,
    },
    LessonStepIs {
        step: i64,
        contrast: bool,
    },
    LessonStop {
        task: Plain,
        soundness: Soundness,
    },
    LessonWritten {
        kind: KindName,
        words: Plain,
    },
    LessonWaits {
        number: u32,
        steps: List<Plain>,
    },
    LessonNotKeptPart,
    LessonAsBefore {
        step: i64,
    },
    LessonWaitsInWeek,
    LessonOpenPart {
        number: i64,
    },
    LessonClosedPart {
        number: i64,
    },
    LessonTakenIn {
        title: Plain,
    },
    LessonLost,
    LessonInWeek {
        number: u32,
        omitted: u32,
    },
    LessonPlanUnclear,
    LessonHere {
        title: Plain,
    },
    LessonGone {
        title: Plain,
    },

    // The report.
    NoPositionInFile,
    ReportHead {
        at: u32,
        of: u32,
        name: Plain,
    },
    OneSound,
    OneUseless,
    OneDoubtful,
    AllSound {
        all: u32,
    },
    SomeSound {
        all: u32,
        sound: u32,
    },
    SoundnessWord {
        soundness: Soundness,
    },
    Proved {
        verdict: String,
    },
    JudgedBySearch {
        verdict: String,
        depth: u32,
    },
    NoTopic,
    TopicIs {
        topic: Plain,
    },
    TopicAlso {
        topic: Plain,
        further: List<Plain>,
    },
    TopicsAre {
        topic: Plain,
        further: List<Plain>,
    },
    KeyIs {
        key: Moves,
    },
    KeysAre {
        keys: List<Moves>,
    },
    VariationsAre,
    TriesAre,
    InTheWeek,
    WarnedOf {
        note: Plain,
    },
    PostedBefore {
        number: i64,
        at: Moment,
    },
    WithThePost,
    AtTheReveal,
    BesideTheMoves,

    // The shelf and the week.
    ShelfEmpty,
    TopicSet {
        topic: Plain,
    },
    TopicTaken,
    PausedUntil {
        until: Moment,
    },
    PausedForNow,
    NothingWaits,
    TheWeek,
    MoreBehind {
        more: u32,
    },
    NoTimeYet {
        why: NoTime,
    },
    StepOf {
        title: Plain,
        step: i64,
        steps: i64,
    },
    WaitsForPost {
        number: i64,
    },
    WaitsForItem {
        item: Plain,
    },
    KindWord {
        kind: KindName,
    },
    FixedAt {
        at: Moment,
    },
    PostedAgain {
        number: i64,
    },
    TopicNotVerified,
    WaitsNoLonger,
    TakenOutLately {
        item: Plain,
    },
    StillOpen,
    GoesOutNow,
    ClosedNow {
        kind: KindName,
    },
    PickPosition,
    PausedNow {
        until: Moment,
    },
    PausedTillResumed,
    Resumed,
    MomentPast,
    MomentLeftOut,
    NoDate {
        written: Plain,
    },

    // Answers by hand.
    NoAnswerWaits,
    AnswerWaits {
        at: u32,
        of: u32,
        kind: KindName,
        number: i64,
        when: Moment,
    },
    /// Of the answers to a post, whatever became of them.
    AnswerToPost {
        at: u32,
        of: u32,
        kind: KindName,
        number: i64,
        when: Moment,
    },
    NoAnswerYet {
        kind: KindName,
        number: i64,
    },
    AnswerJudged {
        verdict: Verdict,
        points: Decimal,
    },
    /// By a coach.
    AnswerRuled {
        verdict: Verdict,
        points: Decimal,
    },
    AnswerMarked {
        points: Decimal,
    },
    AnswerUndecided,
    AnswerNeedsNone,
    AnsweredInPrivate {
        words: Plain,
    },
    IsAsked {
        asked: Plain,
    },
    // Answers to a question by their first moves.
    AnswersByMove {
        number: i64,
        answered: u32,
        waiting: u32,
    },
    AnswerGroup {
        begins: Plain,
        answers: u32,
        waiting: u32,
    },
    /// In a menu; at most 100 characters.
    AnswerGroupChoice {
        begins: Label,
        answers: u32,
    },
    AnswerGroupPick,
    AnswerInGroup {
        begins: Plain,
    },
    BeginsNoMove,
    BeginsReplaced,
    // Answers that are to be shown.
    ExampleIs {
        leave: Option<Leave>,
    },
    ExampleBeside {
        said: Plain,
    },
    FormShow,
    FormShowWords,
    IsSaid {
        said: Plain,
    },
    NoPoints {
        written: Plain,
    },
    FormPrivate,
    FormPrivateWords,
    FormVerdict,
    FormVerdictPoints,
    FormVerdictWords,
    FormMark,

    // The form for the words on a position.
    FormWords,
    FormWordsAnyway,
    FormWithPost,
    FormAtReveal,
    WordsKept,

    // The form in which a position is written anew.
    FormEdit,
    FormEditText,
    FormEditTask,
    EditTooLong {
        most: u32,
    },
    EditKept,

    // The forms for a question and for words alone.
    FormQuestion,
    FormQuestionWords,
    FormQuestionReveal,
    FormSay,
    FormSayWords,
    FormFen,
    FormTopic,

    // The summary.
    WhoTookPart,
    WhoTookPartSince {
        from: Moment,
    },
    WhoTookPartUntil {
        to: Moment,
    },
    WhoTookPartBetween {
        from: Moment,
        to: Moment,
    },
    NobodyDid,
    MemberTally {
        name: Plain,
        solved: u32,
        tried: u32,
        first: u32,
        points: Decimal,
        hints: u32,
    },
    /// Of a member who only answered questions.
    MemberAsked {
        name: Plain,
        points: Decimal,
        answered: u32,
    },
    WentQuiet {
        names: Plain,
    },
    CameBack {
        names: Plain,
    },
    SummaryPositions,
    PositionTally {
        number: i64,
        topic: Plain,
        task: Plain,
        solved: u32,
        tried: u32,
    },
    PositionTallyMissed {
        number: i64,
        topic: Plain,
        task: Plain,
        solved: u32,
        tried: u32,
        missed: List<Moves>,
    },
    PostTally {
        kind: KindName,
        number: i64,
        topic: Plain,
        answered: u32,
    },
    SummaryTopics,
    SummaryAdvice,
    ExportHere,

    // In choices and menus; at most 100 characters.
    WeekPick,
    PositionChoice {
        number: i64,
        task: Label,
    },
    PostChoice {
        kind: KindName,
        number: i64,
    },

    // Buttons.
    ButtonKeepOld,
    ButtonTakeNew,
    ButtonKeepBoth,
    ButtonQueue,
    ButtonQueueAgain,
    ButtonQueueAnyway,
    ButtonQueueAnywayAgain,
    ButtonEarlier,
    ButtonLater,
    ButtonLookAt,
    ButtonPostNow,
    ButtonTakeOut,
    ButtonPutBack,
    ButtonWords,
    ButtonEdit,
    ButtonWordsAgain,
    ButtonWordsAnyway,
    ButtonRight,
    ButtonNotRight,
    ButtonMark,
    ButtonMarkAgain,
    ButtonGroups,
    ButtonShow,
    ButtonNoLongerShow,
    ButtonOverruleRight,
    ButtonOverruleNotRight,
    ButtonAnswerPrivately,
    ButtonNoAnswer,
}
