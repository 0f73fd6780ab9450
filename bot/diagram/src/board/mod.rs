//! The diagram of a position.
//!
//! Takes a position and marks, gives SVG, PNG and words. [`layout`] says where things lie, [`marks`]
//! draws what is pointed out, [`legend`] explains the signs used, [`pixels`] puts the picture
//! together from kept parts, [`alt`] puts it all into words.

mod alt;
mod layout;
pub(super) mod legend;
mod marks;
pub(super) mod pixels;

use shakmaty::{Chess, Color, Position, Square};

use super::canvas::{Canvas, Hand, Paint, Words};
use super::number::num;
use super::palette::{self, Palette};
use super::pieces::{self, Cut};
use super::text::{Alt, Tongue};
use super::{DiagramError, Picture, PictureKind, Style, raster};
use sealed_move_chess::scene::{Scene, SceneMark};

pub(super) use alt::placement;
pub(super) use layout::Layout;

/// The smallest board, in pixels.
pub const SMALLEST: u32 = 120;

/// The largest board, in pixels.
pub const LARGEST: u32 = 2_400;

/// A board to draw.
#[derive(Clone, Debug)]
pub struct Diagram {
    /// The position.
    pub position: Chess,
    /// Who sits at the bottom.
    pub bottom: Color,
    /// Look.
    pub style: Style,
    /// From and to of the last move.
    pub last_move: Option<(Square, Square)>,
    /// What is pointed out.
    pub marks: Vec<SceneMark>,
    /// Width of the board in pixels, 120 to 2,400; other values are brought to the nearest of these.
    pub size: u32,
}

impl Diagram {
    /// The position as posted: the side to move at the bottom, no marks, 720 pixels.
    pub fn of(position: Chess) -> Self {
        let bottom = position.turn();
        Self {
            position,
            bottom,
            style: Style::default(),
            last_move: None,
            marks: Vec::new(),
            size: 720,
        }
    }

    /// A scene as seen from `bottom`.
    pub fn scene(scene: &Scene, bottom: Color) -> Self {
        Self {
            position: scene.position.clone(),
            bottom,
            style: Style::default(),
            last_move: scene.last_move,
            marks: scene.marks.clone(),
            size: 720,
        }
    }

    /// The diagram as a standalone SVG, its legend in this language; words in it are outlines and need no font.
    pub fn svg(&self, tongue: &Tongue) -> String {
        let layout = self.layout();
        let legend = legend::Legend::of(self, layout.width, tongue);
        let palette = palette::of(self.style);
        let mut canvas = Canvas::new(
            layout.width,
            layout.height + legend.height(),
            Words::Outlined,
        );
        canvas.rect(
            0.0,
            0.0,
            canvas.width,
            canvas.height,
            Paint::fill(palette.page),
        );
        self.draw(&mut canvas, &layout, palette);
        legend.draw(&mut canvas, layout.height, palette);
        canvas.finish(&self.alt().in_words(tongue))
    }

    /// The diagram as PNG, its legend in this language, with its alt text.
    ///
    /// # Errors
    /// When the renderer refuses.
    pub fn png(&self, tongue: &Tongue) -> Result<Picture, DiagramError> {
        Ok(Picture {
            bytes: raster::pack(&pixels::draw(self, tongue)?)?,
            kind: PictureKind::Png,
            alt: self.alt(),
        })
    }

    /// Facts from which the position and its marks can be set up without the picture.
    pub fn alt(&self) -> Alt {
        Alt::Facts(alt::alt(self))
    }

    /// Where things lie.
    pub(super) fn layout(&self) -> Layout {
        Layout::new(self.size.clamp(SMALLEST, LARGEST), self.bottom)
    }

    /// Draws board, pieces and marks, without page and legend.
    pub(super) fn draw(&self, canvas: &mut Canvas, layout: &Layout, palette: &Palette) {
        ground(canvas, layout, self.style, self.position.turn(), palette);
        marks::below(canvas, layout, self, palette);
        let cut = Cut::for_square(layout.square);
        for (square, piece) in self.position.board() {
            pieces::draw(
                canvas,
                piece,
                layout.corner(square),
                layout.square,
                palette.coat(piece.color),
                cut,
            );
        }
        marks::above(canvas, layout, self, palette);
    }
}

/// Everything that lies there before a piece is set: squares, coordinates, the side to move.
fn ground(canvas: &mut Canvas, layout: &Layout, style: Style, turn: Color, palette: &Palette) {
    squares(canvas, layout, style, palette);
    coordinates(canvas, layout, palette);
    sign(canvas, layout, turn, palette);
}

/// Squares, hatching and frame.
fn squares(canvas: &mut Canvas, layout: &Layout, style: Style, palette: &Palette) {
    let (x, y, side, s) = (layout.left, layout.top, layout.side(), layout.square);
    // The whole board is laid dark and hatched, then the light squares are laid over it.
    shade(canvas, (x, y), side, s, style, palette);
    let light: String = (0..64u8)
        .map(|i| (i % 8, i / 8))
        .filter(|(column, row)| (column + row) % 2 == 0)
        .map(|(column, row)| {
            format!(
                "M{} {}h{s}v{s}h-{s}Z",
                num(x + f32::from(column) * s),
                num(y + f32::from(row) * s),
                s = num(s)
            )
        })
        .collect();
    canvas.path(&light, Paint::fill(palette.light));
    let line = (s / 48.0).clamp(1.0, 4.0).round();
    canvas.rect(
        x - line / 2.0,
        y - line / 2.0,
        side + line,
        side + line,
        Paint::stroke(palette.frame, line),
    );
}

/// Fills and hatches a square field of `side` in the manner of dark squares of side `s`: lines
/// rising to the right, a whole number of pixels apart, so that rows of pixels repeat and pack well.
pub(super) fn shade(
    canvas: &mut Canvas,
    (x, y): (f32, f32),
    side: f32,
    s: f32,
    style: Style,
    palette: &Palette,
) {
    canvas.rect(x, y, side, side, Paint::fill(palette.dark));
    if palette.hatch == palette.dark {
        return;
    }
    let (gap, width) = match style {
        Style::Print => ((s / 17.0).round().max(3.0), (s / 90.0).clamp(0.6, 1.4)),
        _ => ((s / 10.0).round().max(4.0), (s / 50.0).clamp(0.8, 3.0)),
    };
    let mut d = String::new();
    let mut sum = gap / 2.0;
    while sum < 2.0 * side {
        let low = (sum - side).max(0.0);
        let high = sum.min(side);
        let (from, to) = (low + width / 2.0, high - width / 2.0);
        if from < to {
            d.push_str(&format!(
                "M{} {}L{} {}",
                num(x + from),
                num(y + sum - from),
                num(x + to),
                num(y + sum - to)
            ));
        }
        sum += gap;
    }
    canvas.path(&d, Paint::stroke(palette.hatch, width));
}

fn coordinates(canvas: &mut Canvas, layout: &Layout, palette: &Palette) {
    let Some(size) = layout.letters else {
        return;
    };
    let hand = Hand::new(size, palette.ink).middle();
    let s = layout.square;
    for (i, (file, rank)) in layout.files().into_iter().zip(layout.ranks()).enumerate() {
        let along = (i as f32 + 0.5) * s;
        canvas.text(
            &file.char().to_string(),
            layout.left + along,
            layout.top + layout.side() + layout.left * 0.76,
            hand,
        );
        canvas.text(
            &rank.char().to_string(),
            layout.left * 0.48,
            layout.top + along + size * 0.32,
            hand,
        );
    }
}

/// The sign for the side to move, beside the board at that side's edge: an open triangle for White,
/// a full one for Black, pointing the way its pawns go.
fn sign(canvas: &mut Canvas, layout: &Layout, turn: Color, palette: &Palette) {
    let room = layout.width - layout.left - layout.side();
    let half = (room * 0.34).max(1.5);
    let x = layout.left + layout.side() + room * 0.55;
    let bottom = layout.at_bottom(turn);
    let (base, tip) = if bottom {
        let base = layout.top + layout.side() - 1.0;
        (base, base - half * 2.0)
    } else {
        let base = layout.top + 1.0;
        (base, base + half * 2.0)
    };
    let d = format!(
        "M{} {b}L{} {b}L{} {}Z",
        num(x - half),
        num(x + half),
        num(x),
        num(tip),
        b = num(base)
    );
    let width = (half * 0.22).max(0.8);
    canvas.path(
        &d,
        Paint {
            fill: match turn {
                Color::White => palette.white.body,
                Color::Black => palette.black.body,
            },
            stroke: palette.ink,
            width,
            dash: None,
        },
    );
}
