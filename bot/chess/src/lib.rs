//! Floor 1: chess as pure computation.
//!
//! Reads FEN, EPD, PGN and written replies; proves mates; searches for advantage; judges a reply and
//! says why it is wrong; names the mate on the board. Touches no clock, store, network, file or async
//! code: whatever must be bounded in time asks the [`Budget`] it is given.

// What comes from outside may be wrong; only tests may insist.
#![cfg_attr(not(test), warn(clippy::expect_used))]

mod budget;
pub mod card;
#[cfg(test)]
mod cases;
pub mod check;
pub mod coach_lines;
pub mod comments;
pub mod fact;
mod fen_fault;
pub mod find;
pub mod judge;
mod language;
pub mod lesson;
pub mod line;
pub mod name;
mod pieces;
pub mod play;
mod position;
mod position_error;
pub mod prove;
pub mod read;
pub mod refute;
pub mod reply;
pub mod scene;
pub mod search;
mod solution;
mod stipulation;
pub mod walk;
pub mod write;

pub use budget::{Budget, Spent};
pub use language::{Language, UnknownLanguage};
pub use position::{ReadPosition, Warning, parse_fen};
pub use position_error::PositionError;
pub use solution::{Branch, Defence, Solution, Try};
pub use stipulation::{Stipulation, StipulationError};
