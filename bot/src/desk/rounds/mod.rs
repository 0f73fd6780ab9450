//! What the clock asks for: what the desk does and gives out unasked. Posts, reveals and words to people
//! as errands for a chat; what an earlier run left; solutions worked out ahead; what nobody waits for any
//! more.
//!
//! Members' calls come here for one thing: what an earlier run left of theirs is judged before anything
//! newer.

mod errands;
mod examples;
mod look;
mod outbox;
mod pending;
mod solutions;
mod sweep;

use super::Desk;

#[cfg(test)]
pub(super) use errands::Look;

/// The desk's rounds, made by the clock and by what has changed, not because somebody asked. The tasks that
/// carry things to people make them: each chat fetches its errands and reports back, the supervisor has
/// solutions kept ready.
#[derive(Clone, Copy, Debug)]
pub struct Rounds<'d> {
    desk: &'d Desk,
}

impl Desk {
    /// What the clock asks for.
    pub fn rounds(&self) -> Rounds<'_> {
        Rounds { desk: self }
    }
}
