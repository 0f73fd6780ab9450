//! A piece by itself, for a board that somebody else lays out.

use shakmaty::{Color, Piece, Role};

use crate::{
    Style,
    canvas::{Canvas, Words},
    palette,
    pieces::{self, Cut},
};

/// Side of the drawing, and the square it is cut for, in pixels.
const SIDE: f32 = 64.0;

/// A piece as SVG without a ground, in the colours of a style.
///
/// ```
/// use sealed_move_diagram::{Style, single};
/// use shakmaty::Color;
///
/// let svg = single::svg(Color::White.king(), Style::Light);
/// assert!(svg.starts_with("<svg") && svg.contains("<path"));
/// ```
pub fn svg(piece: Piece, style: Style) -> String {
    let mut canvas = Canvas::new(SIDE, SIDE, Words::Outlined);
    let coat = palette::of(style).coat(piece.color);
    let cut = Cut::for_square(SIDE);
    pieces::draw(&mut canvas, piece, (0.0, 0.0), SIDE, coat, cut);
    canvas.finish("")
}

/// Every piece by its letters, such as `wn`: colour, then kind.
pub fn all() -> impl Iterator<Item = (String, Piece)> {
    Color::ALL.into_iter().flat_map(|color| {
        Role::ALL.into_iter().map(move |role| {
            let name = format!("{}{}", color.char(), role.char());
            (name, Piece { color, role })
        })
    })
}
