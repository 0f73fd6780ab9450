//! What members ask for: coming in, answering and what comes of it, hints, where they stand, talk, and
//! what is kept of them.
//!
//! What a chat hears may be an answer or talk: [`MemberDesk::take`] tells the two apart, and
//! [`MemberDesk::answer_to`] takes what was sent as an answer.

mod aim;
mod cards;
mod doubt;
mod edits;
mod entrance;
mod glance;
mod hints;
mod homework;
mod lessons;
mod own_post;
mod privacy;
mod progress;
mod replies;
mod sheets;
mod spoken;
mod talk;
mod words;

use super::Desk;

pub use edits::Withdrawn;
pub use homework::{OwnExample, OwnHomework};
pub use sheets::{
    AskedBack, Came, HintSheet, OpenAt, OpenNow, Own, OwnAnswer, OwnPost, OwnState, Progress, Taken,
};
pub use spoken::SpokenBoard;
pub use talk::LONGEST_LINE;

/// The desk as members use it. A call names the person it is for, as the chat knows them; where it says so,
/// somebody new becomes a member by it.
#[derive(Clone, Copy, Debug)]
pub struct MemberDesk<'d> {
    desk: &'d Desk,
}

impl Desk {
    /// What members ask for.
    pub fn member(&self) -> MemberDesk<'_> {
        MemberDesk { desk: self }
    }
}
