//! Everything Sealed Move remembers, on SQLite.
//!
//! This package knows rows, ids, times in UTC and SQL. It knows no rule of chess and no chat: positions
//! are text, verdicts are values. Every invariant that SQL can hold is held by `schema.sql`.
//!
//! * [`Store`] is the handle: one writer thread, a few reader threads, calls that never block an async
//!   thread ([`Store::read`], [`Store::write`]) and their blocking twins for the command line.
//! * [`Db`] is what a reading closure gets: every read is a named method on it, one file a subject.
//! * [`Tx`] is what a writing closure gets: one short transaction, every write a named method; it reads
//!   through [`Db`] as well.
//!
//! ```
//! # fn main() -> Result<(), sealed_move_store::StoreError> {
//! # let folder = tempfile::tempdir().map_err(|_| sealed_move_store::StoreError::Stopped)?;
//! let store = sealed_move_store::Store::open(&folder.path().join("group.db"))?;
//! let chat = sealed_move_store::ChatKey::of("room");
//! store.write_blocking(move |tx| tx.set_direct_channel(chat, "ana", "12"))?;
//! let kept = store.read_blocking(move |db| db.direct_channels(chat))?;
//! assert_eq!(kept, [("ana".to_owned(), "12".to_owned())]);
//! # Ok(())
//! # }
//! ```

// A test that meets an error has failed.
// What comes from outside may be wrong; only tests may insist.
#![cfg_attr(not(test), warn(clippy::expect_used))]
#![warn(clippy::missing_errors_doc)]
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod attempts;
mod backup;
mod calendar;
mod cards;
mod chat;
mod coach_notes;
mod coach_words;
mod content;
mod db;
mod deeds;
mod drafts;
mod error;
mod examples;
mod figures;
#[cfg(test)]
mod fixture;
mod groups;
mod held;
mod hints;
mod identities;
mod ids;
mod inbox;
mod lessons;
mod links;
mod members;
mod merge;
mod migrate;
mod outbox;
mod person;
mod points;
mod positions;
mod posts;
mod queue;
mod replies;
mod steps;
mod store;
mod taken_out;
mod talk;
mod time;
mod times_of_day;
mod topics;
pub mod values;
mod verdicts;

pub use attempts::{Attempt, AttemptOf};
pub use backup::{Overwrite, restore};
pub use calendar::{NoTimeOfDay, NoWeekdays, TimeOfDay, Weekdays};
pub use cards::{Card, CardOf, CardWords};
pub use chat::{ChatKey, NoChatKey};
pub use coach_notes::CoachNote;
pub use coach_words::CoachWords;
pub use content::{CardShown, Content, NewContent, NewHolds, Written};
pub use db::{Db, Tx};
pub use deeds::{DeedRow, NewDeed};
pub use drafts::Draft;
pub use error::StoreError;
pub use examples::{Example, ExampleDue, ExampleShown};
pub use figures::{
    Counting, MemberFigures, MemberPoints, PostFigures, Span, TopicFigures, WrongFirst,
};
pub use groups::{Group, GroupSettings, NewGroup};
pub use held::Held;
pub use hints::Hint;
pub use ids::{
    ContentId, DraftId, GroupId, ItemId, LessonId, MemberId, PositionId, PostId, ReplyId,
    TakenOutId, TopicId,
};
pub use inbox::{Entry, NewEntry};
pub use lessons::{Awaited, InLesson, Lesson, LessonPart, LessonStep, NewLesson, PartPost};
pub use members::{Member, Mute};
pub use merge::Shared;
pub use migrate::VERSION;
pub use outbox::OutboxRow;
pub use person::{KeptAttempt, KeptDeed, KeptHint, KeptPerson, KeptReply, KeptTalk};
pub use points::{NoPoints, Points};
pub use positions::{Check, Given, NewPosition, Position, Posted, Words};
pub use posts::{NewPost, Post, Prices};
pub use queue::{Queued, QueuedProblem, Waits};
pub use replies::{Inserted, NewReply, Reply, ReplyOf, Unjudged};
pub use steps::StepRow;
pub use store::Store;
pub use taken_out::TakenOut;
pub use talk::{Gone, Lines, TalkLine};
pub use time::to_seconds;
pub use times_of_day::{NoTimesOfDay, TimesOfDay};
pub use topics::Topic;
pub use values::*;
pub use verdicts::{NewVerdict, VerdictRow};

/// Moments are in UTC, whole seconds.
pub type Moment = chrono::DateTime<chrono::Utc>;
