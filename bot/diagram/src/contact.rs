//! The contact sheet: every piece in every style on both shades and at several sizes, every sign, and
//! whole boards, for looking at the drawing as a whole.

use shakmaty::{Chess, Color, Role, Square};

use super::Style;
use super::board::legend::Sign;
use super::board::{Diagram, shade};
use super::canvas::{Canvas, Hand, Paint, Words};
use super::palette::{self, Palette};
use super::pieces::{self, Cut};
use super::text::{Alt, Tongue};
use super::{DiagramError, Picture, PictureKind, raster};
use sealed_move_chess::scene::SceneMark;

const WIDTH: f32 = 1_248.0;
const MARGIN: f32 = 24.0;
const ROLES: [Role; 6] = [
    Role::King,
    Role::Queen,
    Role::Rook,
    Role::Bishop,
    Role::Knight,
    Role::Pawn,
];

/// Words for the sheet.
const ALT: &str = "Contact sheet: the twelve pieces on light and dark squares at 200, 100, 48 and 24 \
    pixels, every sign, and a board with marks, in the styles print, light, dark and contrast.";

/// The sheet as SVG.
pub fn svg(tongue: &Tongue) -> String {
    let height = 1_700.0 + Style::ALL.len() as f32 * 396.0;
    let mut canvas = Canvas::new(WIDTH, height, Words::Outlined);
    canvas.rect(0.0, 0.0, WIDTH, height, Paint::fill("#ffffff"));
    let mut y = MARGIN;
    for style in Style::ALL {
        y = all_pieces(&mut canvas, y, style, tongue);
    }
    y = large(&mut canvas, y);
    boards(&mut canvas, y);
    canvas.finish(ALT)
}

/// The sheet as PNG.
///
/// # Errors
/// When the renderer refuses.
pub fn png(tongue: &Tongue) -> Result<Picture, DiagramError> {
    Ok(Picture {
        bytes: raster::png(&svg(tongue))?,
        kind: PictureKind::Png,
        alt: Alt::Said(ALT.into()),
    })
}

fn name(style: Style) -> &'static str {
    match style {
        Style::Print => "Print",
        Style::Light => "Light",
        Style::Dark => "Dark",
        Style::Contrast => "Contrast",
    }
}

/// A square with a piece on it.
fn cell(
    canvas: &mut Canvas,
    (x, y): (f32, f32),
    s: f32,
    dark: bool,
    piece: shakmaty::Piece,
    style: Style,
) {
    let palette = palette::of(style);
    canvas.rect(x, y, s, s, Paint::fill(palette.light));
    if dark {
        shade(canvas, (x, y), s, s, style, palette);
    }
    let coat = palette.coat(piece.color);
    pieces::draw(canvas, piece, (x, y), s, coat, Cut::for_square(s));
}

/// All pieces of one style at 100, 48 and 24 pixels, and the signs; gives the next free height.
fn all_pieces(canvas: &mut Canvas, top: f32, style: Style, tongue: &Tongue) -> f32 {
    let palette = palette::of(style);
    canvas.rect(0.0, top - 12.0, WIDTH, 396.0, Paint::fill(palette.page));
    let hand = Hand::new(20.0, palette.ink).bold();
    canvas.text(name(style), MARGIN, top + 16.0, hand);
    let mut y = top + 30.0;
    for (row, color) in [Color::White, Color::Black].into_iter().enumerate() {
        for (i, role) in ROLES.into_iter().enumerate() {
            for shade in 0..2 {
                let x = MARGIN + (i * 2 + shade) as f32 * 100.0;
                let at = (x, y + row as f32 * 100.0);
                cell(
                    canvas,
                    at,
                    100.0,
                    (shade + row) % 2 == 1,
                    role.of(color),
                    style,
                );
            }
        }
    }
    y += 212.0;
    for s in [48.0, 24.0] {
        for (n, color) in [Color::White, Color::Black].into_iter().enumerate() {
            for (i, role) in ROLES.into_iter().enumerate() {
                for shade in 0..2 {
                    let x = MARGIN + (n * 12 + i * 2 + shade) as f32 * s;
                    cell(canvas, (x, y), s, shade == 1, role.of(color), style);
                }
            }
        }
        y += s + 10.0;
    }
    signs(canvas, y, palette, tongue);
    top + 396.0
}

fn signs(canvas: &mut Canvas, y: f32, palette: &Palette, tongue: &Tongue) {
    let mut x = MARGIN;
    let hand = Hand::new(17.0, palette.ink);
    for sign in Sign::ALL {
        sign.draw(canvas, (x, y), 22.0, palette);
        let words = sign.words(tongue);
        canvas.text(&words, x + 28.0, y + 17.0, hand);
        x += 28.0 + hand.width(&words) + 22.0;
    }
}

/// The pieces at 200 pixels.
fn large(canvas: &mut Canvas, top: f32) -> f32 {
    for (row, color) in [Color::White, Color::Black].into_iter().enumerate() {
        for (i, role) in ROLES.into_iter().enumerate() {
            let at = (MARGIN + i as f32 * 200.0, top + row as f32 * 200.0);
            cell(
                canvas,
                at,
                200.0,
                (i + row) % 2 == 1,
                role.of(color),
                Style::Print,
            );
        }
    }
    top + 400.0 + MARGIN
}

/// A board with every mark in each style, and bare boards of several sizes.
fn boards(canvas: &mut Canvas, top: f32) {
    let mut marked = Diagram::of(Chess::default());
    marked.last_move = Some((Square::E2, Square::E4));
    marked.marks = vec![
        SceneMark::OpenFlight(Square::C5),
        SceneMark::GuardedFlight(Square::D5),
        SceneMark::Guard(Square::B1, Square::D5),
        SceneMark::BlockedFlight(Square::D7),
        SceneMark::GuardedFlight(Square::F7),
        SceneMark::Refutation(Square::D8, Square::H4),
        SceneMark::Step(Square::G1, Square::F3, 1),
        SceneMark::Step(Square::F1, Square::A6, 2),
        SceneMark::Square(Square::H6),
    ];
    for (i, style) in Style::ALL.into_iter().enumerate() {
        marked.style = style;
        marked.size = 580;
        let (x, y) = (
            MARGIN + (i % 2) as f32 * 620.0,
            top + (i / 2) as f32 * 600.0,
        );
        whole(canvas, (x, y), &marked);
    }
}

fn whole(canvas: &mut Canvas, (x, y): (f32, f32), diagram: &Diagram) {
    let layout = diagram.layout();
    let palette = palette::of(diagram.style);
    canvas.placed(x, y, 1.0, |canvas| {
        canvas.rect(
            0.0,
            0.0,
            layout.width,
            layout.height,
            Paint::fill(palette.page),
        );
        diagram.draw(canvas, &layout, palette);
    });
}
