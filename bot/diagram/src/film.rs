//! A solution as an animated picture.
//!
//! Every move is first slid, then held long enough to be taken in; the last position stays longest.
//! The film runs a few times and then rests on the final position, so that nothing moves on a page
//! for ever (WCAG 2.2, 2.2.2); the [strip](super::strip) is its still alternative. Only the part of
//! the picture that changed is stored with each frame.

use gif::{DisposalMethod, Encoder, Frame, Repeat};
use resvg::tiny_skia::Pixmap;
use shakmaty::{Bitboard, Chess, Color, Move, Position, Square};

use super::Style;
use super::board::{Diagram, pixels};
use super::canvas::{Canvas, Hand, Paint, Words};
use super::strip::{Still, Strip, stills};
use super::text::Tongue;
use super::{DiagramError, Picture, PictureKind, figurine, palette, raster};
use sealed_move_chess::scene::SceneMark;

/// Hundredths of a second.
const HOLD_START: u16 = 220;
const HOLD_MOVE: u16 = 150;
const HOLD_END: u16 = 500;
const SLIDE: u16 = 6;

/// Pictures between a piece's start and its goal.
const SLIDES: u16 = 5;

/// How often the film runs again after the first time.
const AGAIN: u16 = 2;

/// A line of moves to be shown as an animation.
#[derive(Clone, Debug)]
pub struct Film {
    /// Where the line starts.
    pub start: Chess,
    /// The line; what follows an illegal move, or the eighth, is left out.
    pub line: Vec<Move>,
    /// Who sits at the bottom.
    pub bottom: Color,
    /// Look.
    pub style: Style,
    /// Width in pixels, 120 to [`Film::WIDEST`].
    pub size: u32,
    /// What is pointed out in the last position.
    pub ending: Vec<SceneMark>,
}

impl Film {
    /// The widest it may be, in pixels.
    pub const WIDEST: u32 = 720;

    /// A film with the side to solve at the bottom, 480 pixels wide.
    pub fn of(start: Chess, line: Vec<Move>) -> Self {
        Self {
            bottom: start.turn(),
            start,
            line,
            style: Style::default(),
            size: 480,
            ending: Vec::new(),
        }
    }

    /// The same line as one still picture.
    pub fn still(&self) -> Strip {
        let mut strip = Strip::of(self.start.clone(), self.line.clone());
        strip.bottom = self.bottom;
        strip.style = self.style;
        strip
    }

    /// The film as GIF.
    ///
    /// # Errors
    /// When the renderer or the encoder refuses.
    pub fn gif(&self, tongue: &Tongue) -> Result<Picture, DiagramError> {
        let frames = self.frames(tongue)?;
        let refused = |e: gif::EncodingError| DiagramError::Render(e.to_string());
        let mut bytes = Vec::new();
        if let Some((first, _)) = frames.first() {
            let (w, h) = (first.width() as u16, first.height() as u16);
            let mut encoder = Encoder::new(&mut bytes, w, h, &[]).map_err(refused)?;
            encoder.set_repeat(Repeat::Finite(AGAIN)).map_err(refused)?;
            let mut before: Option<&Pixmap> = None;
            for (map, delay) in &frames {
                encoder
                    .write_frame(&frame(before, map, *delay)?)
                    .map_err(refused)?;
                before = Some(map);
            }
        }
        Ok(Picture {
            bytes,
            kind: PictureKind::Gif,
            alt: self.still().alt(),
        })
    }

    /// Every picture with its time in hundredths of a second.
    pub(super) fn frames(&self, tongue: &Tongue) -> Result<Vec<(Pixmap, u16)>, DiagramError> {
        let stills = stills(&self.start, &self.line);
        let last = stills.len() - 1;
        let mut out = Vec::new();
        for (i, still) in stills.iter().enumerate() {
            if i > 0 {
                self.slide(&mut out, &stills[i - 1], still, tongue)?;
            }
            let mut diagram = self.diagram(still);
            if i == last {
                diagram.marks = self.ending.clone();
            }
            // The legend has its place in the still; here the board keeps its size throughout.
            let board = pixels::draw_bare(&diagram, Bitboard::EMPTY)?;
            let hold = match i {
                _ if i == last => HOLD_END,
                0 => HOLD_START,
                _ => HOLD_MOVE,
            };
            out.push((self.captioned(board, still, tongue)?, hold));
        }
        Ok(out)
    }

    fn diagram(&self, still: &Still) -> Diagram {
        Diagram {
            position: still.position.clone(),
            bottom: self.bottom,
            style: self.style,
            last_move: still.last_move,
            marks: Vec::new(),
            size: self.size.clamp(super::board::SMALLEST, Self::WIDEST),
        }
    }

    /// The pictures of one move on its way.
    fn slide(
        &self,
        out: &mut Vec<(Pixmap, u16)>,
        before: &Still,
        after: &Still,
        tongue: &Tongue,
    ) -> Result<(), DiagramError> {
        let moved = moved(&before.position, after);
        let mut diagram = self.diagram(before);
        diagram.last_move = None;
        let layout = diagram.layout();
        let hidden: Bitboard = moved.iter().map(|&(from, _)| from).collect();
        let board = pixels::draw_bare(&diagram, hidden)?;
        for step in 1..=SLIDES {
            // Slow at both ends.
            let t = f32::from(step) / f32::from(SLIDES + 1);
            let t = t * t * (3.0 - 2.0 * t);
            let mut map = board.clone();
            for &(from, to) in &moved {
                let Some(piece) = before.position.board().piece_at(from) else {
                    continue;
                };
                let ((x, y), (to_x, to_y)) = (layout.corner(from), layout.corner(to));
                let drawn = pixels::piece_pixels(&diagram, &layout, piece)?;
                let at = |a: f32, b: f32| (a + (b - a) * t).round() as i32;
                pixels::lay(&mut map, &drawn, at(x, to_x), at(y, to_y));
            }
            out.push((self.captioned(map, after, tongue)?, SLIDE));
        }
        Ok(())
    }

    /// Adds the line with the move under the board.
    fn captioned(
        &self,
        board: Pixmap,
        still: &Still,
        tongue: &Tongue,
    ) -> Result<Pixmap, DiagramError> {
        let palette = palette::of(self.style);
        let (width, height) = (board.width() as f32, board.height() as f32);
        let size = (width * 0.055).clamp(11.0, 34.0);
        let band = (size * 1.7).round();
        let mut canvas = Canvas::new(width, height + band, Words::Outlined);
        canvas.rect(0.0, height, width, band, Paint::fill(palette.page));
        let hand = Hand::new(size, palette.ink).bold();
        let caption = still.caption(tongue);
        let wide = figurine::line_width(&caption, &hand);
        figurine::set(
            &mut canvas,
            &caption,
            ((width - wide) / 2.0, height + size * 1.05),
            hand,
            palette,
        );
        let mut map = raster::pixels(&canvas.finish(""), 1.0)?;
        let count = board.pixels().len();
        map.pixels_mut()[..count].copy_from_slice(board.pixels());
        Ok(map)
    }
}

/// The pieces that a move takes from square to square: one, or two when castling.
fn moved(before: &Chess, after: &Still) -> Vec<(Square, Square)> {
    let Some((from, to)) = after.last_move else {
        return Vec::new();
    };
    let mut out = vec![(from, to)];
    let turn = before.turn();
    let own = |p: &Chess| p.board().by_color(turn);
    // A second piece of the mover's that is elsewhere afterwards: the rook that castled.
    let gone: Bitboard = own(before) & !own(&after.position);
    let come: Bitboard = own(&after.position) & !own(before);
    if let (Some(rook_from), Some(rook_to)) = (gone.without(from).first(), come.without(to).first())
    {
        out.push((rook_from, rook_to));
    }
    out
}

/// What differs from the picture before, as a frame.
fn frame(
    before: Option<&Pixmap>,
    map: &Pixmap,
    delay: u16,
) -> Result<Frame<'static>, DiagramError> {
    let (left, top, width, height) = changed(before, map);
    let mut part = Pixmap::new(width, height)
        .ok_or_else(|| DiagramError::Render("no room for the picture".into()))?;
    let wide = map.width() as usize;
    for (row, line) in part
        .pixels_mut()
        .chunks_exact_mut(width as usize)
        .enumerate()
    {
        let start = (top as usize + row) * wide + left as usize;
        line.copy_from_slice(&map.pixels()[start..start + width as usize]);
    }
    let indexed = raster::index(&part);
    Ok(Frame {
        left: left as u16,
        top: top as u16,
        width: width as u16,
        height: height as u16,
        delay,
        dispose: DisposalMethod::Keep,
        palette: Some(indexed.palette.concat()),
        buffer: indexed.pixels.into(),
        ..Frame::default()
    })
}

/// Left, top, width and height of the part that changed; a single pixel when nothing did.
fn changed(before: Option<&Pixmap>, map: &Pixmap) -> (u32, u32, u32, u32) {
    let (w, h) = (map.width(), map.height());
    let Some(before) = before else {
        return (0, 0, w, h);
    };
    let (mut left, mut top, mut right, mut bottom) = (w, h, 0, 0);
    for (i, (a, b)) in before.pixels().iter().zip(map.pixels()).enumerate() {
        if a != b {
            let (x, y) = (i as u32 % w, i as u32 / w);
            left = left.min(x);
            right = right.max(x);
            top = top.min(y);
            bottom = bottom.max(y);
        }
    }
    if left > right {
        (0, 0, 1, 1)
    } else {
        (left, top, right - left + 1, bottom - top + 1)
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::english;
    use super::*;
    use shakmaty::{CastlingMode, fen::Fen, san::San};

    fn film(fen: &str, sans: &[&str]) -> Film {
        let start: Chess = fen
            .parse::<Fen>()
            .expect("a FEN")
            .into_position(CastlingMode::Standard)
            .expect("a position");
        let mut at = start.clone();
        let line = sans
            .iter()
            .map(|san| {
                let mv = san
                    .parse::<San>()
                    .expect("SAN")
                    .to_move(&at)
                    .expect("legal");
                at.play_unchecked(mv);
                mv
            })
            .collect();
        let mut film = Film::of(start, line);
        film.size = 240;
        film
    }

    /// Plays the GIF as a viewer does; gives the last picture and the time in hundredths.
    fn played(bytes: &[u8]) -> (Vec<u8>, u32, usize, Repeat) {
        let mut options = gif::DecodeOptions::new();
        options.set_color_output(gif::ColorOutput::RGBA);
        let mut decoder = options.read_info(bytes).expect("a GIF");
        let (w, h) = (decoder.width() as usize, decoder.height() as usize);
        let mut screen = vec![0u8; w * h * 4];
        let (mut time, mut count) = (0, 0);
        while let Some(frame) = decoder.read_next_frame().expect("a frame") {
            let (left, top) = (frame.left as usize, frame.top as usize);
            let wide = frame.width as usize * 4;
            for (row, line) in frame.buffer.chunks_exact(wide).enumerate() {
                let start = ((top + row) * w + left) * 4;
                screen[start..start + wide].copy_from_slice(line);
            }
            time += u32::from(frame.delay);
            count += 1;
        }
        (screen, time, count, decoder.repeat())
    }

    #[test]
    fn the_film_ends_on_the_last_position_and_stops() {
        let film = film(
            "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
            &["Rxd8+", "Rxd8", "Rxd8#"],
        );
        let picture = film.gif(&english()).expect("encodes");
        assert!(picture.bytes.len() < 300_000, "{}", picture.bytes.len());
        let (screen, time, count, repeat) = played(&picture.bytes);
        let frames = film.frames(&english()).expect("draws");
        let wanted = &frames.last().expect("frames").0;
        let far = screen
            .iter()
            .zip(wanted.data())
            .map(|(a, b)| a.abs_diff(*b))
            .max();
        assert!(far <= Some(12), "{far:?}");
        assert_eq!(count, frames.len());
        assert!(matches!(repeat, Repeat::Finite(2)));
        // Each move is held at least a second and a half; nothing flashes.
        assert!((700..2_000).contains(&time), "{time}");
    }

    #[test]
    fn castling_moves_both_pieces() {
        let film = film("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1", &["O-O"]);
        let stills = stills(&film.start, &film.line);
        assert_eq!(
            moved(&film.start, &stills[1]),
            [(Square::E1, Square::G1), (Square::H1, Square::F1)]
        );
    }

    #[test]
    fn a_capture_and_a_promotion_move_one_piece() {
        let film = film("1n2k3/P7/8/8/8/8/8/4K3 w - - 0 1", &["axb8=Q+"]);
        let stills = stills(&film.start, &film.line);
        assert_eq!(moved(&film.start, &stills[1]), [(Square::A7, Square::B8)]);
    }
}
