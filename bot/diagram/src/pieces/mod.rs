//! The piece set: our own drawing, in the Staunton tradition, built from geometry.
//!
//! Each file of this folder is the construction of one piece, to be edited there: heights, widths
//! and control points in a field of 100 units, with a word on what each stretch is. A piece is a
//! list of [`Part`]s, painted in order. White and black pieces share every outline, so they weigh the
//! same; what differs is only how a part is painted: a white piece is paper with inked lines, a black
//! piece is ink with the same lines left open.
//!
//! Like type, the drawing has optical sizes: the smaller the square, the heavier the line
//! ([`Cut::for_square`]), and the finest lines are left out where they would only make grey.

mod bishop;
mod king;
mod knight;
mod lathe;
mod pawn;
mod queen;
mod rook;

use std::sync::OnceLock;

use shakmaty::{Piece, Role};

pub(super) use lathe::FOOT;

use super::canvas::{Canvas, Paint};

/// One shape of a piece.
#[derive(Clone, Debug)]
pub(super) struct Part {
    /// Path data in the field of 100 units.
    pub d: String,
    /// How it is painted.
    pub kind: Kind,
}

/// How a part is painted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Outline and filling.
    Body,
    /// An inner line that shapes the piece at every size.
    Line,
    /// An inner line for large drawings only.
    Fine,
    /// A small solid spot, such as an eye.
    Spot,
}

impl Part {
    fn body(d: impl Into<String>) -> Self {
        Self {
            d: d.into(),
            kind: Kind::Body,
        }
    }

    fn line(d: impl Into<String>) -> Self {
        Self {
            d: d.into(),
            kind: Kind::Line,
        }
    }

    fn fine(d: impl Into<String>) -> Self {
        Self {
            d: d.into(),
            kind: Kind::Fine,
        }
    }

    fn spot(d: impl Into<String>) -> Self {
        Self {
            d: d.into(),
            kind: Kind::Spot,
        }
    }
}

/// The parts of a piece, bottom first.
pub(super) fn parts(role: Role) -> &'static [Part] {
    static PARTS: OnceLock<[Vec<Part>; 6]> = OnceLock::new();
    let all = PARTS.get_or_init(|| {
        [
            pawn::parts(),
            knight::parts(),
            bishop::parts(),
            rook::parts(),
            queen::parts(),
            king::parts(),
        ]
    });
    &all[role as usize - 1]
}

/// The colours of one piece.
#[derive(Clone, Copy, Debug)]
pub(super) struct Coat {
    /// Filling.
    pub body: &'static str,
    /// Outline.
    pub edge: &'static str,
    /// Inner lines.
    pub line: &'static str,
    /// A thin clear edge between the piece and the square, or nothing.
    pub halo: &'static str,
}

/// Line widths for one size of square, in units of the field.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cut {
    edge: f32,
    line: f32,
    fine: bool,
}

impl Cut {
    /// The cut for squares of `square` pixels.
    pub(super) fn for_square(square: f32) -> Self {
        // Never below a pixel or so at the edge, never heavier than the forms can bear.
        let edge = (120.0 / square).clamp(3.0, 4.8);
        Self {
            edge,
            line: edge * 0.8,
            fine: square >= 44.0,
        }
    }
}

/// Draws `piece` into the square of `side` at `x`, `y`.
pub(super) fn draw(
    canvas: &mut Canvas,
    piece: Piece,
    (x, y): (f32, f32),
    side: f32,
    coat: Coat,
    cut: Cut,
) {
    // The foot of every piece stands on a whole pixel, so that ranks line up and plinths are sharp.
    let scale = side / 100.0;
    let foot = y + (FOOT + cut.edge / 2.0) * scale;
    canvas.placed(x, y + foot.round() - foot, scale, |canvas| {
        let parts = parts(piece.role);
        if !coat.halo.is_empty() {
            let width = cut.edge + 5.0;
            for part in parts.iter().filter(|p| p.kind == Kind::Body) {
                canvas.path(&part.d, Paint::stroke(coat.halo, width));
            }
        }
        for part in parts {
            match part.kind {
                Kind::Body => canvas.path(
                    &part.d,
                    Paint {
                        fill: coat.body,
                        stroke: coat.edge,
                        width: cut.edge,
                        dash: None,
                    },
                ),
                Kind::Line => canvas.path(&part.d, Paint::stroke(coat.line, cut.line)),
                Kind::Fine if cut.fine => {
                    canvas.path(&part.d, Paint::stroke(coat.line, cut.line * 0.8));
                }
                Kind::Fine => {}
                Kind::Spot => canvas.path(&part.d, Paint::fill(coat.line)),
            }
        }
    });
}
