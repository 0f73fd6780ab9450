//! Floor 2: the desk, where a coach and a member ask for things by plain calls.
//!
//! Holds the store and a clock that tests can set; knows no chat. Every call is async and never blocks
//! the async threads: the store has its own, and chess is computed on a bounded pool of blocking ones.
//! What goes out to a chat unasked (a post, a reveal, a word to the coach) is an [`Errand`] that the
//! chat fetches with [`Desk::next_errand`] and reports back.

pub mod clock;
pub mod errand;
pub mod sheets;

mod calls;
mod lookups;

pub use calls::{Desk, DeskError};
pub use clock::{Clock, SystemClock, TestClock};
pub use errand::{Delivered, Errand, ErrandKind};
pub use sheets::*;
