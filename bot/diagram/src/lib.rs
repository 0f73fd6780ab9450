//! Floor 1: boards and charts as SVG, then PNG, and the words that replace them.
//!
//! Takes shakmaty's types and [`sealed_move_chess::scene`], gives SVG text, PNG or GIF bytes, and alt
//! text. Touches no clock, store or network, and no font of the machine: pieces are our own drawing
//! ([`pieces`]), words are set as outlines of an embedded font ([`lettering`]). Which words, is given from outside:
//! what a picture says is a [`Text`], and a [`Tongue`] says it in a language.
//!
//! What to call:
//!
//! | picture | call |
//! | --- | --- |
//! | a position as posted | [`Diagram::of`], then [`Diagram::png`] |
//! | a position with marks (a refutation, a hint) | [`Diagram::scene`] |
//! | the reveal: final position with every flight explained, solution in figurines | [`reveal::Reveal::of`]`(&start, &main_line)`, set `style`, `heading` and `solution` (the numbered lines as text), then [`reveal::Reveal::png`] |
//! | only the marks for a final position | [`reveal::flights`] |
//! | the solution move by move, side by side | [`strip::Strip::of`]`(start, line)`, then `png` |
//! | the same as an animation | [`film::Film::of`]`(start, line)`, then `gif`; `still` for those who want none |
//! | the summary's charts | [`chart::solve_rates`], [`chart::participation`], [`chart::mastery`], [`chart::wrong_moves`], and [`chart::leaderboard`]; each takes a title and plain figures, then [`chart::Chart::png`] with a [`chart::Theme`] |
//! | a week's positions to print | [`sheet::Sheet`]: `pdf`, or a page each as `svg` |
//! | a piece by itself, as SVG | [`single::svg`] |
//! | everything we draw, to look at | [`contact::png`] |

// What comes from outside may be wrong; only tests may insist.
#![cfg_attr(not(test), warn(clippy::expect_used))]

pub mod board;
mod cache;
mod canvas;
pub mod chart;
pub mod contact;
mod figurine;
pub mod film;
#[cfg(test)]
mod golden;
#[cfg(test)]
mod legibility;
mod lettering;
mod number;
mod palette;
mod pieces;
mod raster;
pub mod reveal;
#[cfg(test)]
mod sample;
pub mod sheet;
pub mod single;
pub mod strip;
mod style;
pub mod text;

pub use board::Diagram;
pub use style::Style;
pub use text::{Alt, Text, Tongue};

/// A finished picture and the words that truly replace it.
#[derive(Clone, Debug)]
pub struct Picture {
    /// PNG (or GIF for animations), see `kind`.
    pub bytes: Vec<u8>,
    /// What `bytes` hold.
    pub kind: PictureKind,
    /// The words in its place.
    pub alt: Alt,
}

/// File format of a [`Picture`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum PictureKind {
    Png,
    Gif,
}

/// Why a picture could not be drawn.
#[derive(Debug, thiserror::Error)]
pub enum DiagramError {
    /// The renderer refused our SVG, or the size asked for.
    #[error("the picture could not be drawn: {0}")]
    Render(String),
}
