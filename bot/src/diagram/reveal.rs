//! The reveal: the final position with every flight of the king explained, and under it the solution
//! in figurine notation.
//!
//! [`flights`] finds out what becomes of each square around a king that is mated or stalemated;
//! [`Reveal`] sets board, legend and solution on one sheet.

use std::fmt::Write;

use shakmaty::{Chess, Color, Move, Position, Square, attacks};

use super::board::{Diagram, Style, cut, legend::Legend};
use super::canvas::{Canvas, Hand, Paint, Words};
use super::palette;
use super::{DiagramError, Picture, PictureKind, figurine, raster};
use crate::chess::scene::{Scene, SceneMark};

/// With more guards than this, one a flight is shown.
const GUARDS: usize = 10;

/// Lines of solution that a picture has room for.
const LINES: usize = 16;

/// What becomes of each square around the king to move, when that king is mated or stalemated:
/// blocked by a man of its own, or guarded, and by whom. Empty for any other position.
pub fn flights(position: &Chess) -> Vec<SceneMark> {
    if !(position.is_checkmate() || position.is_stalemate()) {
        return Vec::new();
    }
    let board = position.board();
    let turn = position.turn();
    let Some(king) = board.king_of(turn) else {
        return Vec::new();
    };
    // A line piece looks through the king it checks.
    let occupied = board.occupied().without(king);
    let mut marks = Vec::new();
    let mut guards: Vec<Vec<(Square, Square)>> = Vec::new();
    for flight in attacks::king_attacks(king) {
        if board.color_at(flight) == Some(turn) {
            marks.push(SceneMark::BlockedFlight(flight));
            continue;
        }
        let by = board.attacks_to(flight, !turn, occupied);
        if by.is_empty() {
            marks.push(SceneMark::OpenFlight(flight));
        } else {
            marks.push(SceneMark::GuardedFlight(flight));
            guards.push(by.into_iter().map(|from| (from, flight)).collect());
        }
    }
    let all: usize = guards.iter().map(Vec::len).sum();
    for mut flight in guards {
        if all > GUARDS {
            // The nearest guard says it best.
            flight.sort_by_key(|(from, to)| from.distance(*to));
            flight.truncate(1);
        }
        marks.extend(
            flight
                .into_iter()
                .map(|(from, to)| SceneMark::Guard(from, to)),
        );
    }
    marks
}

/// Everything a reveal shows.
#[derive(Clone, Debug)]
pub struct Reveal {
    /// The final position with what is pointed out on it.
    pub scene: Scene,
    /// Who sits at the bottom.
    pub bottom: Color,
    /// Look.
    pub style: Style,
    /// Width in pixels.
    pub size: u32,
    /// Above the solution, such as "No. 14 · Back rank"; may be empty.
    pub heading: String,
    /// Key and variations, the main line first; moves in SAN with English letters.
    pub solution: Vec<String>,
}

impl Reveal {
    /// The reveal of a solution whose main line is `line`, from `start`: plays it out, explains the
    /// flights of the final position, and puts the side to solve at the bottom. Moves from the first
    /// illegal one on are left out.
    pub fn of(start: &Chess, line: &[Move]) -> Self {
        let mut position = start.clone();
        let mut last_move = None;
        for &mv in line {
            if !position.is_legal(mv) {
                break;
            }
            last_move = mv.from().map(|from| (from, landing(mv)));
            position.play_unchecked(mv);
        }
        let marks = flights(&position);
        Self {
            scene: Scene {
                position,
                last_move,
                marks,
            },
            bottom: start.turn(),
            style: Style::default(),
            size: 720,
            heading: String::new(),
            solution: Vec::new(),
        }
    }

    fn diagram(&self) -> Diagram {
        let mut diagram = Diagram::scene(&self.scene, self.bottom);
        diagram.style = self.style;
        diagram.size = self.size;
        diagram
    }

    /// The picture as standalone SVG.
    pub fn svg(&self) -> String {
        let diagram = self.diagram();
        let palette = palette::of(self.style);
        let layout = diagram.layout();
        let legend = Legend::of(&diagram, layout.width);
        let below = layout.height + legend.height();

        let size = (layout.width * 0.036).max(10.0);
        let margin = layout.left;
        let room = layout.width - 2.0 * margin;
        let heading = Hand::new(size * 1.12, palette.ink).bold();
        let main = Hand::new(size, palette.ink).bold();
        let other = Hand::new(size, palette.ink);
        // Each line with the hand it is set in and how far it is indented.
        let mut lines: Vec<(String, Hand<'_>, f32)> = Vec::new();
        for line in figurine::wrapped(&self.heading, &heading, room, 0.0) {
            lines.push((line, heading, 0.0));
        }
        for (i, text) in self.solution.iter().enumerate() {
            let hand = if i == 0 { main } else { other };
            let indent = size * 1.1;
            for (k, line) in figurine::wrapped(text, &hand, room, indent)
                .into_iter()
                .enumerate()
            {
                lines.push((line, hand, if k == 0 { 0.0 } else { indent }));
            }
        }
        if lines.len() > LINES {
            lines.truncate(LINES - 1);
            lines.push(("and more".into(), other, 0.0));
        }

        let step = size * 1.42;
        let text_height = if lines.is_empty() {
            0.0
        } else {
            (lines.len() as f32 * step + size * 1.0).round()
        };
        let mut canvas = Canvas::new(layout.width, below + text_height, Words::Outlined);
        canvas.rect(
            0.0,
            0.0,
            canvas.width,
            canvas.height,
            Paint::fill(palette.page),
        );
        diagram.draw(&mut canvas, &layout, palette);
        legend.draw(&mut canvas, layout.height, palette);
        if !lines.is_empty() {
            let rule = below + size * 0.25;
            canvas.line(
                (margin, rule),
                (layout.width - margin, rule),
                Paint::stroke(palette.frame, (size * 0.05).max(1.0)),
            );
        }
        for (i, (line, hand, indent)) in lines.iter().enumerate() {
            let y = below + size * 0.45 + (i as f32 + 0.78) * step;
            figurine::set(&mut canvas, line, (margin + indent, y), *hand, palette);
        }
        canvas.finish(&self.alt())
    }

    /// The picture as PNG.
    ///
    /// # Errors
    /// When the renderer refuses.
    pub fn png(&self) -> Result<Picture, DiagramError> {
        Ok(Picture {
            bytes: raster::png(&self.svg())?,
            kind: PictureKind::Png,
            alt: self.alt(),
        })
    }

    /// The final position in words, what becomes of each flight, and the solution.
    pub fn alt(&self) -> String {
        let mut out = String::new();
        if !self.heading.is_empty() {
            let _ = write!(out, "{}. ", self.heading.trim_end_matches('.'));
        }
        let _ = write!(out, "Final position. {}", self.diagram().alt());
        if !self.solution.is_empty() {
            let solution = self.solution.join(" ");
            let stop = if solution.ends_with(|c: char| ".!?".contains(c)) {
                ""
            } else {
                "."
            };
            let _ = write!(out, " Solution: {solution}{stop}");
        }
        cut(out)
    }
}

/// Where the moved man is seen to stand afterwards; for castling, where the king goes.
pub(super) fn landing(mv: Move) -> Square {
    match mv {
        Move::Castle { king, rook } => {
            let file = if rook > king {
                shakmaty::File::G
            } else {
                shakmaty::File::C
            };
            Square::from_coords(file, king.rank())
        }
        other => other.to(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use shakmaty::{CastlingMode, fen::Fen, san::San};

    fn position(fen: &str) -> Chess {
        fen.parse::<Fen>()
            .expect("a FEN")
            .into_position(CastlingMode::Standard)
            .expect("a position")
    }

    fn line(start: &Chess, sans: &[&str]) -> Vec<Move> {
        let mut at = start.clone();
        sans.iter()
            .map(|san| {
                let mv = san
                    .parse::<San>()
                    .expect("SAN")
                    .to_move(&at)
                    .expect("a legal move");
                at.play_unchecked(mv);
                mv
            })
            .collect()
    }

    #[test]
    fn every_neighbour_of_a_mated_king_is_explained_once() {
        // Back rank; smothered; a queen's kiss guarded by a king; a mate by two knights and pawns.
        for fen in [
            "3R2k1/5ppp/8/8/8/8/5PPP/6K1 b - - 0 1",
            "6rk/5Npp/8/8/8/8/8/6K1 b - - 0 1",
            "4k3/4Q3/4K3/8/8/8/8/8 b - - 0 1",
        ] {
            let at = position(fen);
            assert!(at.is_checkmate(), "{fen}");
            let marks = flights(&at);
            let king = at.board().king_of(at.turn()).expect("a king");
            for square in attacks::king_attacks(king) {
                let told = marks
                    .iter()
                    .filter(|m| {
                        matches!(**m, SceneMark::GuardedFlight(s) | SceneMark::BlockedFlight(s) | SceneMark::OpenFlight(s) if s == square)
                    })
                    .count();
                assert_eq!(told, 1, "{fen} {square}");
            }
            assert!(
                !marks.iter().any(|m| matches!(m, SceneMark::OpenFlight(_))),
                "a mated king has no open flight: {fen}"
            );
        }
    }

    #[test]
    fn a_guard_looks_through_the_king_it_checks() {
        let marks = flights(&position("3R2k1/5ppp/8/8/8/8/5PPP/6K1 b - - 0 1"));
        assert!(marks.contains(&SceneMark::Guard(Square::D8, Square::H8)));
        assert!(marks.contains(&SceneMark::BlockedFlight(Square::G7)));
    }

    #[test]
    fn a_game_that_goes_on_has_no_flights_to_explain() {
        assert!(flights(&Chess::default()).is_empty());
        assert!(flights(&position("4k3/8/8/8/8/8/4R3/4K3 b - - 0 1")).is_empty());
    }

    #[test]
    fn the_line_is_played_out_and_told() {
        let start = position("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1");
        let mut reveal = Reveal::of(&start, &line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]));
        reveal.heading = "No. 3".into();
        reveal.solution = vec!["1.Rxd8+ Rxd8 2.Rxd8#".into()];
        let alt = reveal.alt();
        assert!(
            alt.starts_with("No. 3. Final position. White: king g1, rook d8"),
            "{alt}"
        );
        assert!(alt.contains("Last move d1 to d8."), "{alt}");
        assert!(
            alt.contains("Guarded flights: f8 by rook d8; h8 by rook d8."),
            "{alt}"
        );
        assert!(alt.ends_with("Solution: 1.Rxd8+ Rxd8 2.Rxd8#."), "{alt}");
    }
}
