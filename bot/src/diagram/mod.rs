//! Floor 1: boards and charts as SVG, then PNG, and the words that replace them.
//!
//! Touches no clock, store or network, and no font of the machine.

pub mod board;
mod canvas;
pub mod chart;
mod lettering;
mod palette;
mod pieces;
mod raster;

pub use board::{Diagram, Style};

/// A finished picture and the words that truly replace it.
#[derive(Clone, Debug)]
pub struct Picture {
    /// PNG (or GIF for animations), see `kind`.
    pub bytes: Vec<u8>,
    /// What `bytes` hold.
    pub kind: PictureKind,
    /// Alt text of at most 1,024 characters.
    pub alt: String,
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
