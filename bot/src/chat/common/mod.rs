//! What every chat does alike, between the desk's calls and its own manners. Knows no chat.

pub mod answer;
pub mod card;
pub mod notes;
pub mod public;
pub mod report;
pub mod same;
pub mod text;
