//! Floor 2: the desk, where a coach and a member ask for things by plain calls.
//!
//! The calls are parted by who asks: a coach ([`CoachDesk`], in `coach/`), a member ([`MemberDesk`], in
//! `member/`), or the clock ([`Rounds`], in `rounds/`). What everybody may ask, and what a chat asks for
//! itself, is asked of the [`Desk`]. The files in this folder are what all of them use.
//!
//! Holds the store and a clock that tests can set; knows no chat. Every call is async and never blocks
//! the async threads: the store has its own, and chess is computed on a bounded pool of blocking ones.
//! What goes out to a chat unasked (a post, a reveal, a word to the coach) is an [`Errand`] that the
//! chat fetches with [`Rounds::next_errand`] and reports back.

mod answers;
mod attempt;
mod card_drawing;
mod card_held;
mod card_id;
mod cards;
mod checking;
pub mod clock;
mod coach;
mod coach_words;
mod content;
mod convert;
mod deeds;
mod drawing;
pub mod endgames;
pub mod errand;
mod error;
mod examples;
mod figures;
mod gone;
mod groups;
mod handle;
mod last_shown;
mod ledger;
mod lesson_walk;
mod links;
mod member;
mod members;
mod moves;
mod names;
mod noted;
mod notes;
mod notice;
pub mod opinion;
mod options;
mod outbox;
mod pool;
mod posting;
mod privacy;
mod problems;
mod queue;
pub mod refusal;
mod replies;
mod reveal;
mod rounds;
pub mod said;
mod scale;
mod schedule;
mod secrets;
pub mod sheets;
mod shown;
mod talk;
mod telling;
#[cfg(test)]
mod tests;
mod text;
mod tongue;
mod topic;
mod turns;
pub mod values;
mod waiting;

pub use crate::chess::{
    lesson::{Draft, DraftStep},
    play::Played,
};
pub use answers::WordsRow;
pub use card_id::{CardId, NoCardId};
pub use cards::{
    CardLink, CardName, CardRow, CardSheet, CardWords, LONGEST_DEFINITION, LONGEST_LOOK,
    ShownExample,
};
pub use clock::{Clock, SystemClock, TestClock};
pub use coach::{
    AnswerGroup, AnswerGroups, Begins, CheckedPosition, CoachDesk, DIAGRAMS_AT_ONCE, DeedRow,
    Differs, DraftFault, DraftRow, DraftSaved, DraftSheet, EditedPosition, FoundWritten, Fresh,
    HomeworkRow, InFile, LONGEST_CONTENT, LONGEST_EDITED, LONGEST_WORDS, LessonFile, LessonPlan,
    LessonRow, LessonSheet, LessonStepOf, Listed, Merged, MutedUntil, NewCard, NewPostContent,
    NoTime, OnBoard, PartHolds, PartPreview, PartSheet, PartStands, Planned, PositionToEdit,
    PostedBefore, QueueItem, Queued, SameAgain, SameChoice, StepSheet, TakenOut, Telling, Version,
    WaitsFor, WatchedRow, in_file_order,
};
pub use coach_words::CoachWords;
pub use content::{Content, Kind, KindName, WrittenSheet};
pub use deeds::{Deed, DeedNote};
pub use errand::{Answered, Delivered, Errand, ErrandKind, Step, StepDone};
pub use error::DeskError;
pub use examples::{ExampleRow, ExampleSheet, LONGEST_BESIDE, Leave, LeaveAsked, ShownAnswer};
pub use figures::{
    Advice, Compared, Covered, NearTopic, Summary, SummaryMember, SummaryPost, SummaryTable,
    SummaryTopic, USUAL,
};
pub use gone::{GoneRow, How};
pub use handle::Desk;
pub use lesson_walk::{LessonListed, LessonWalk, PartAt, ToCome, WalkPart, WalkPlace};
pub use links::Link;
pub use member::{
    AskedBack, Came, HintSheet, LONGEST_LINE, MemberDesk, OpenAt, OpenNow, Own, OwnAnswer,
    OwnExample, OwnHomework, OwnPost, OwnState, Progress, SpokenBoard, Taken, Withdrawn,
};
pub use members::{MemberIs, Rank, Standing};
pub use notes::NoteRow;
pub use notice::{ChatName, Notice, Sentence};
pub use options::DeskOptions;
pub use outbox::Earlier;
pub use refusal::{Date, LocalTime, Paid, Refusal, Whole};
pub use replies::Edited;
pub use rounds::Rounds;
pub use said::Said;
pub use scale::{Costs, price};
pub use schedule::LATE;
pub use sealed_move_store::{
    ContentId, DraftId, GroupId, ItemId, LessonId, MemberId, PositionId, PostId, ReplyId,
    TakenOutId, TopicId,
};
pub use sheets::*;
pub use text::{LONGEST_NAME, LONGEST_REPLY};
pub use tongue::LanguageTag;
pub use topic::TopicName;
pub use waiting::Waiting;
