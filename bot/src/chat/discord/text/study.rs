//! What a member is told who answers, asks for a hint, or looks at their own standing.

use serde::Serialize;

use super::{And, Decimal, Label, List, Moment, Moves, Plain};
use crate::desk::{Leave, OwnState};

/// A sentence or a few, a button, or a part of a form.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Study {
    // Which post is meant.
    NoGroupHere,
    NothingOpen,
    NothingOpenForYou,
    NothingOpenToYou,
    SeveralGroupsOpen,

    // A member's own board and standing.
    YourBoard,
    YourBoardSolved {
        points: Decimal,
    },
    YourBoardGivenUp,
    GiveUpAsked,
    YourLastAnswer {
        quote: Plain,
    },
    YourLastAnswerDeleted,
    StandingNow {
        number: i64,
        state: Option<OwnState>,
        wrong: u32,
        closes: Moment,
    },
    StandingAsked {
        number: i64,
        answered: bool,
        closes: Moment,
    },
    OnYourBoard {
        line: Moves,
    },
    NoPartYet,
    YourPoints {
        points: Decimal,
    },
    TopicTally {
        topic: Plain,
        solved: u32,
        tried: u32,
        first: u32,
    },
    /// Where there was no problem to solve.
    TopicAsked {
        topic: Plain,
        answered: u32,
    },
    QuestionsAnswered {
        answered: u32,
    },

    // A member's own answers to questions, and their leave to show one.
    NoHomework,
    HomeworkHead {
        at: u32,
        of: u32,
        number: i64,
    },
    YourAnswerDeleted,
    WaitsForCoach,
    CoachSaidPrivately {
        said: Plain,
    },
    EarlierAnswers,
    OthersAnswers,
    MayItBeShown {
        number: i64,
    },
    CoachBeside {
        said: Plain,
    },
    LeaveCaution,
    LeaveOpen {
        quote: Plain,
    },
    LeaveIs {
        quote: Plain,
        leave: Leave,
    },
    ButtonLeaveNamed,
    ButtonLeaveNameless,
    ButtonLeaveRefused,

    // The leaderboard.
    Leaderboard,
    LeaderboardOf {
        topic: Plain,
    },
    LeaderboardEmpty,
    LeaderboardRow {
        name: Plain,
        points: Decimal,
        solved: u32,
        tried: u32,
    },
    /// Of a member who only answered questions.
    LeaderboardAsked {
        name: Plain,
        points: Decimal,
        answered: u32,
    },
    AndMore {
        more: u32,
    },
    SpanBetween {
        from: Moment,
        to: Moment,
    },
    SpanSince {
        from: Moment,
    },
    SpanUntil {
        to: Moment,
    },
    SpanAll,

    // What is kept.
    KeptOfYou,
    ErasureAsked,
    ErasedYou,

    // Topic cards.
    CardsThere {
        titles: List<Plain>,
    },
    /// `copy`: members see the program's own instead.
    CardTells {
        numbers: And<Plain>,
        copy: bool,
    },
    CardSaved,
    CardTakenBack,
    FormCard,
    FormCardDefinition,
    FormCardLook,
    FormCardFen,
    FormCardMoves,
    ButtonCard {
        title: Label,
    },
    ButtonEditCard,
    ButtonNewCard,
    ButtonQueueCard,
    ButtonTakeBackCard,

    // Lessons stepped through.
    NoLessonRevealed,
    LessonsThere,
    LessonListed {
        title: Plain,
        revealed: u32,
    },
    /// In a menu; at most 100 characters.
    LessonPickOne {
        title: Label,
    },
    LessonPick,
    LessonOpen {
        count: u32,
        numbers: And<Plain>,
    },
    LessonComes {
        count: u32,
        at: Moment,
    },
    LessonLater {
        count: u32,
    },
    WalkHead {
        title: Plain,
        step: i64,
        steps: i64,
        number: i64,
    },
    ButtonStepThrough,
    ButtonFirst,
    ButtonBack,
    ButtonForward,
    ButtonLast,
    ButtonSideLine {
        line: Label,
    },
    ButtonLeaveSideLine,
    ButtonPreviousStep,
    ButtonNextStep,

    // Moves that are talked about.
    OnBoard {
        number: i64,
        line: Moves,
    },
    OnBoardAfter {
        number: i64,
        before: Moves,
        line: Moves,
    },

    // How it all works, a paragraph each. `content`: whether messages are told to the bot.
    HelpAnswering {
        content: bool,
    },
    HelpOutcome,
    HelpLines,
    HelpPoints,
    HelpCards,
    HelpEditing,
    HelpData,
    HelpLanguage,

    // The language.
    LanguageIs {
        language: Plain,
    },
    LanguageAsClient {
        language: Plain,
    },
    LanguageChoiceClient,
    NoLanguage {
        written: Plain,
    },

    // The form for an answer.
    FormAnswer,
    FormAnswerMoves,
    FormAnswerWords,
    FormAnswerExample,
    FormOld,
    YouWrote,

    // Buttons.
    ButtonMyProgress,
    ButtonYesGiveUp,
    ButtonYesErase,
    ButtonPrevious,
    ButtonNext,
    ButtonPreviousPart,
    ButtonNextPart,

    // What goes wrong.
    DiscordRefused,
    RestPutAway,
    AnswerForgotten,
}
