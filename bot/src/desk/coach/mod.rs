//! What coaches ask for: checking what a file holds, the week, the group and its members, answers that
//! wait for a coach's hand, and reports.
//!
//! A file holds the calls of one subject, with what they alone need. What members or the clock need as
//! well lies in the desk's own folder.

mod answers;
mod board;
mod by_hand;
mod cards;
mod deeds;
mod drafts;
mod edit;
mod group;
mod homework;
mod import;
mod lesson_import;
mod lesson_plan;
mod lessons;
mod members;
mod moderation;
mod posts;
mod queue;
mod same;
mod sheets;
mod shelf;
mod summary;
mod taken_out;
mod week;
mod words;
mod written;

use super::Desk;

pub use answers::LONGEST_WORDS;
pub use board::OnBoard;
pub use by_hand::HomeworkRow;
pub use cards::NewCard;
pub use deeds::DeedRow;
pub use drafts::{DraftFault, DraftRow, DraftSaved, DraftSheet, PartPreview};
pub use edit::{EditedPosition, LONGEST_EDITED, PositionToEdit};
pub use homework::{AnswerGroup, AnswerGroups, Begins};
pub use import::DIAGRAMS_AT_ONCE;
pub use lesson_import::LessonFile;
pub use lesson_plan::{LessonPlan, Planned};
pub use lessons::{LessonRow, LessonSheet, PartHolds, PartSheet, PartStands, StepSheet};
pub use members::{Listed, Merged, MutedUntil};
pub use moderation::WatchedRow;
pub use same::{Differs, Fresh, PostedBefore, SameAgain, SameChoice, Version};
pub use sheets::{CheckedPosition, QueueItem, Queued};
pub use taken_out::TakenOut;
pub use week::{LessonStepOf, NoTime, WaitsFor};
pub use words::Telling;
pub use written::{FoundWritten, InFile, LONGEST_CONTENT, NewPostContent, in_file_order};

/// The desk as coaches use it. A call that names its coach is refused to anybody who does not coach the
/// group; [`CoachDesk::enter_as_coach`] makes a coach of somebody who has shown that they may be one. The
/// week and the reports ([`CoachDesk::queue`], [`CoachDesk::paused`], [`CoachDesk::summary`],
/// [`CoachDesk::summary_charts`]) name nobody, and a chat shows them to coaches alone.
#[derive(Clone, Copy, Debug)]
pub struct CoachDesk<'d> {
    desk: &'d Desk,
}

impl Desk {
    /// What coaches ask for.
    pub fn coach(&self) -> CoachDesk<'_> {
        CoachDesk { desk: self }
    }
}
