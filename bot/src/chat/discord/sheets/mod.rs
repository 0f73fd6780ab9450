//! The desk's sheets laid out in Discord's manners. The words are the desk's; here they get their
//! places, their pictures and their buttons.

pub mod card;
pub mod lesson;
mod names;
pub mod post;
pub mod report;
pub mod reveal;
pub mod summary;
pub mod tables;
pub mod verdict;
pub mod walk;
pub mod week;
