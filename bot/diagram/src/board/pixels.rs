//! The board as pixels, put together from kept parts: the empty board and the pieces are drawn once
//! and copied from then on; only marks are drawn anew. The result is that of the SVG.

use std::sync::Arc;

use resvg::tiny_skia::{Pixmap, PixmapPaint, PremultipliedColorU8, Transform};
use shakmaty::{Bitboard, Piece, Position};

use super::super::cache::{self, Key};
use super::super::canvas::{Canvas, Paint, Words};
use super::super::pieces::{self, Cut};
use super::super::{DiagramError, palette, raster, text::Tongue};
use super::{Diagram, Layout, ground, legend::Legend, marks};

/// Draws `diagram` with its legend.
pub(in super::super) fn draw(diagram: &Diagram, tongue: &Tongue) -> Result<Pixmap, DiagramError> {
    let legend = Legend::of(diagram, diagram.layout().width, tongue);
    put_together(diagram, &legend, Bitboard::EMPTY)
}

/// Draws `diagram` without a legend; the pieces on `hidden` are left out.
pub(in super::super) fn draw_bare(
    diagram: &Diagram,
    hidden: Bitboard,
) -> Result<Pixmap, DiagramError> {
    put_together(diagram, &Legend::none(), hidden)
}

fn put_together(
    diagram: &Diagram,
    legend: &Legend,
    hidden: Bitboard,
) -> Result<Pixmap, DiagramError> {
    let layout = diagram.layout();
    let palette = palette::of(diagram.style);
    let height = layout.height + legend.height();
    let mut map = Pixmap::new(layout.width as u32, height as u32)
        .ok_or_else(|| DiagramError::Render("no room for the picture".into()))?;
    let board = board(diagram, &layout)?;
    // Page colour below the board, for the legend.
    let page = board.pixels()[0];
    map.pixels_mut().fill(page);
    map.pixels_mut()[..board.pixels().len()].copy_from_slice(board.pixels());

    let sheet = || Canvas::new(layout.width, height, Words::Outlined);
    if diagram.last_move.is_some() || !diagram.marks.is_empty() {
        let mut canvas = sheet();
        marks::below(&mut canvas, &layout, diagram, palette);
        legend.draw(&mut canvas, layout.height, palette);
        raster::onto(&mut map, &canvas.finish(""))?;
    }
    for (square, piece) in diagram.position.board() {
        if !hidden.contains(square) {
            let (x, y) = layout.corner(square);
            let drawn = piece_pixels(diagram, &layout, piece)?;
            lay(&mut map, &drawn, x as i32, y as i32);
        }
    }
    if !diagram.marks.is_empty() {
        let mut canvas = sheet();
        marks::above(&mut canvas, &layout, diagram, palette);
        raster::onto(&mut map, &canvas.finish(""))?;
    }
    Ok(map)
}

/// The empty board with its page, coordinates and the sign of the side to move.
fn board(diagram: &Diagram, layout: &Layout) -> Result<Arc<Pixmap>, DiagramError> {
    let turn = diagram.position.turn();
    let key = Key::Board {
        style: diagram.style,
        size: layout.width as u32,
        bottom: diagram.bottom,
        turn,
    };
    cache::get(key, || {
        let palette = palette::of(diagram.style);
        let mut canvas = Canvas::new(layout.width, layout.height, Words::Outlined);
        canvas.rect(
            0.0,
            0.0,
            canvas.width,
            canvas.height,
            Paint::fill(palette.page),
        );
        ground(&mut canvas, layout, diagram.style, turn, palette);
        raster::pixels(&canvas.finish(""), 1.0)
    })
}

/// One piece on nothing.
pub(in super::super) fn piece_pixels(
    diagram: &Diagram,
    layout: &Layout,
    piece: Piece,
) -> Result<Arc<Pixmap>, DiagramError> {
    let side = layout.square;
    let key = Key::Piece {
        style: diagram.style,
        square: side as u32,
        piece,
    };
    cache::get(key, || {
        let mut canvas = Canvas::new(side, side, Words::Outlined);
        let coat = palette::of(diagram.style).coat(piece.color);
        let cut = Cut::for_square(side);
        pieces::draw(&mut canvas, piece, (0.0, 0.0), side, coat, cut);
        raster::pixels(&canvas.finish(""), 1.0)
    })
}

/// Lays `top` over `map` with its corner at `x`, `y`.
pub(in super::super) fn lay(map: &mut Pixmap, top: &Pixmap, x: i32, y: i32) {
    let inside = x >= 0
        && y >= 0
        && x as u32 + top.width() <= map.width()
        && y as u32 + top.height() <= map.height();
    if !inside {
        let paint = PixmapPaint::default();
        map.draw_pixmap(x, y, top.as_ref(), &paint, Transform::identity(), None);
        return;
    }
    let (wide, from) = (map.width() as usize, x as usize);
    let run = top.width() as usize;
    let below = map.pixels_mut();
    for (row, line) in top.pixels().chunks_exact(run).enumerate() {
        let start = (y as usize + row) * wide + from;
        for (under, over) in below[start..start + run].iter_mut().zip(line) {
            match over.alpha() {
                0 => {}
                255 => *under = *over,
                alpha => {
                    let rest = 255 - u16::from(alpha);
                    let mix = |over: u8, under: u8| {
                        // Rounded division by 255.
                        let product = u16::from(under) * rest + 128;
                        over.saturating_add(((product + (product >> 8)) >> 8) as u8)
                    };
                    let mixed = PremultipliedColorU8::from_rgba(
                        mix(over.red(), under.red()),
                        mix(over.green(), under.green()),
                        mix(over.blue(), under.blue()),
                        mix(alpha, under.alpha()),
                    );
                    if let Some(mixed) = mixed {
                        *under = mixed;
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::sample::english;
    use super::super::Style;
    use super::*;
    use sealed_move_chess::scene::SceneMark;
    use shakmaty::{Chess, Color, Square};

    /// The quick way and the SVG give the same picture, on the first and on later calls.
    #[test]
    fn pixels_agree_with_the_svg() {
        for style in Style::ALL {
            for (size, bottom) in [
                (120, Color::White),
                (333, Color::Black),
                (720, Color::White),
            ] {
                let mut diagram = Diagram::of(Chess::default());
                diagram.style = style;
                diagram.size = size;
                diagram.bottom = bottom;
                diagram.last_move = Some((Square::E2, Square::E4));
                diagram.marks = vec![
                    SceneMark::Refutation(Square::D8, Square::H4),
                    SceneMark::Guard(Square::B1, Square::D2),
                    SceneMark::GuardedFlight(Square::D2),
                ];
                let wanted = raster::pixels(&diagram.svg(&english()), 1.0).expect("the SVG draws");
                for _ in 0..2 {
                    let got = draw(&diagram, &english()).expect("the board draws");
                    assert_eq!(
                        (got.width(), got.height()),
                        (wanted.width(), wanted.height())
                    );
                    let worst = got
                        .data()
                        .iter()
                        .zip(wanted.data())
                        .map(|(a, b)| a.abs_diff(*b))
                        .max();
                    assert!(worst <= Some(16), "{style:?} {size}: {worst:?}");
                }
            }
        }
    }
}
