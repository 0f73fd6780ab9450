//! A solution as a strip: its positions side by side, each under the move that led to it.

use shakmaty::{Chess, Color, Move, Position, Square};

use super::Style;
use super::board::{Diagram, placement};
use super::canvas::{Canvas, Hand, Paint, Words};
use super::reveal::landing;
use super::text::{Alt, Text, Tongue};
use super::{DiagramError, Picture, PictureKind, figurine, palette, raster};
use sealed_move_chess::line::{numbered, sans};

/// The most moves of a line that are shown: a mate in four has seven.
pub(super) const MOST: usize = 8;

/// One position of a line.
#[derive(Clone, Debug)]
pub(super) struct Still {
    /// The position.
    pub position: Chess,
    /// From and to of the move that led here; none for the start.
    pub last_move: Option<(Square, Square)>,
    /// That move, as `2...Rxd8`; none for the start.
    pub moved: Option<String>,
}

/// The start and every position of `line` after it, up to the first illegal move or [`MOST`] moves.
pub(super) fn stills(start: &Chess, line: &[Move]) -> Vec<Still> {
    let sans = sans(start, &line[..line.len().min(MOST)]);
    let mut out = vec![Still {
        position: start.clone(),
        last_move: None,
        moved: None,
    }];
    let mut position = start.clone();
    for (i, (san, &mv)) in sans.iter().zip(line).enumerate() {
        let number = (i as u32 + u32::from(start.turn() == Color::Black)) / 2 + 1;
        let moved = Some(numbered(position.turn(), number, &[san]));
        position.play_unchecked(mv);
        out.push(Still {
            position: position.clone(),
            last_move: mv.from().map(|from| (from, landing(mv))),
            moved,
        });
    }
    out
}

impl Still {
    /// What stands above it: the move, or who is to move.
    pub(super) fn caption(&self, tongue: &Tongue) -> String {
        match &self.moved {
            Some(moved) => moved.clone(),
            None => tongue.say(&Text::StripToMove {
                side: self.position.turn().into(),
            }),
        }
    }
}

/// A line of moves to be shown as a strip.
#[derive(Clone, Debug)]
pub struct Strip {
    /// Where the line starts.
    pub start: Chess,
    /// The line; what follows an illegal move, or the eighth, is left out.
    pub line: Vec<Move>,
    /// Who sits at the bottom.
    pub bottom: Color,
    /// Look.
    pub style: Style,
    /// Width of each board in pixels, 120 to [`Strip::WIDEST`].
    pub board: u32,
}

impl Strip {
    /// The widest a board may be, in pixels.
    pub const WIDEST: u32 = 480;

    /// A strip with the side to solve at the bottom and boards of 320 pixels.
    pub fn of(start: Chess, line: Vec<Move>) -> Self {
        Self {
            bottom: start.turn(),
            start,
            line,
            style: Style::default(),
            board: 320,
        }
    }

    /// The strip as standalone SVG.
    pub fn svg(&self, tongue: &Tongue) -> String {
        let palette = palette::of(self.style);
        let stills = stills(&self.start, &self.line);
        let columns = columns(stills.len());
        let rows = stills.len().div_ceil(columns);
        let mut diagram = Diagram::of(self.start.clone());
        diagram.bottom = self.bottom;
        diagram.style = self.style;
        diagram.size = self.board.clamp(super::board::SMALLEST, Self::WIDEST);
        let layout = diagram.layout();
        let size = (layout.width * 0.068).clamp(11.0, 30.0);
        let gap = (layout.width * 0.06).round();
        let (pitch_x, pitch_y) = (layout.width + gap, (layout.height + size * 1.9).round());
        let mut canvas = Canvas::new(
            columns as f32 * pitch_x + gap,
            rows as f32 * pitch_y + gap,
            Words::Outlined,
        );
        canvas.rect(
            0.0,
            0.0,
            canvas.width,
            canvas.height,
            Paint::fill(palette.page),
        );
        for (i, still) in stills.iter().enumerate() {
            let x = gap + (i % columns) as f32 * pitch_x;
            let y = gap + (i / columns) as f32 * pitch_y;
            diagram.position = still.position.clone();
            diagram.last_move = still.last_move;
            let hand = Hand::new(size, palette.ink).bold();
            let caption = still.caption(tongue);
            let wide = figurine::line_width(&caption, &hand);
            let middle = x + layout.left + layout.side() / 2.0;
            figurine::set(
                &mut canvas,
                &caption,
                (middle - wide / 2.0, y + size * 0.95),
                hand,
                palette,
            );
            canvas.placed(x, (y + size * 1.4).round(), 1.0, |canvas| {
                diagram.draw(canvas, &layout, palette);
            });
        }
        canvas.finish(&self.alt().in_words(tongue))
    }

    /// The strip as PNG.
    ///
    /// # Errors
    /// When the renderer refuses.
    pub fn png(&self, tongue: &Tongue) -> Result<Picture, DiagramError> {
        Ok(Picture {
            bytes: raster::png(&self.svg(tongue))?,
            kind: PictureKind::Png,
            alt: self.alt(),
        })
    }

    /// The starting position and the moves.
    pub fn alt(&self) -> Alt {
        let mut facts = vec![Text::AltStrip];
        facts.extend(placement(&self.start));
        let sans = sans(&self.start, &self.line[..self.line.len().min(MOST)]);
        if !sans.is_empty() {
            facts.push(Text::AltMoves {
                line: numbered(self.start.turn(), 1, &sans).into(),
            });
        }
        Alt::Facts(facts)
    }
}

/// How many boards stand side by side.
fn columns(boards: usize) -> usize {
    match boards {
        0..=3 => boards.max(1),
        4 => 2,
        _ => 3,
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{english, line, position};
    use super::*;

    #[test]
    fn captions_number_the_moves_for_either_side() {
        let start = position("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1");
        let moves = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
        let captions = |s: &Chess, l: &[Move]| -> Vec<String> {
            stills(s, l)
                .into_iter()
                .map(|s| s.caption(&english()))
                .collect()
        };
        assert_eq!(
            captions(&start, &moves),
            ["White to move", "1.Rxd8+", "1...Rxd8", "2.Rxd8#"]
        );
        let start = position("3r2k1/3r1ppp/8/8/8/8/5PPP/R2R2K1 b - - 0 1");
        let moves = line(&start, &["Rxd1+", "Rxd1", "Rxd1#"]);
        assert_eq!(
            captions(&start, &moves),
            ["Black to move", "1...Rxd1+", "2.Rxd1", "2...Rxd1#"]
        );
    }

    #[test]
    fn castling_shows_where_the_king_goes() {
        let start = position("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1");
        let stills = stills(&start, &line(&start, &["O-O-O"]));
        assert_eq!(stills[1].last_move, Some((Square::E1, Square::C1)));
    }

    #[test]
    fn an_illegal_move_ends_the_strip() {
        let start = position("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1");
        let mut moves = line(&start, &["O-O-O"]);
        moves.push(moves[0]);
        assert_eq!(stills(&start, &moves).len(), 2);
    }

    #[test]
    fn the_words_hold_the_start_and_the_moves() {
        let start = position("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1");
        let moves = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
        let strip = Strip::of(start, moves);
        assert!(
            strip
                .alt()
                .in_words(&english())
                .ends_with("White to move. Moves: 1.Rxd8+ Rxd8 2.Rxd8#.")
        );
        assert!(strip.png(&english()).expect("draws").bytes.len() < 120_000);
    }
}
