//! The reveal: the final position with every flight of the king explained, and under it the solution
//! in figurine notation.
//!
//! [`flights`] finds out what becomes of each square around a king that is mated or stalemated;
//! [`Reveal`] sets board, legend and solution on one sheet.

use shakmaty::{Chess, Color, Move, Position, Square, attacks};

use super::Style;
use super::board::{Diagram, legend::Legend, pixels};
use super::canvas::{Canvas, Hand, Paint, Words};
use super::palette::{self, Palette};
use super::text::{Alt, Text as Fact, Tongue};
use super::{DiagramError, Picture, PictureKind, figurine, raster};
use sealed_move_chess::scene::{Scene, SceneMark};

/// With more guards than this, one a flight is shown.
const GUARDS: usize = 10;

/// Lines of solution that a picture has room for.
const LINES: usize = 16;

/// What becomes of each square around the king to move, when that king is mated or stalemated:
/// blocked by a piece of its own, or guarded, and by whom. Empty for any other position.
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
    /// Above the solution, such as "No. 14 · Back rank".
    pub heading: Option<Fact>,
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
            heading: None,
            solution: Vec::new(),
        }
    }

    fn diagram(&self) -> Diagram {
        let mut diagram = Diagram::scene(&self.scene, self.bottom);
        diagram.style = self.style;
        diagram.size = self.size;
        diagram
    }

    /// The picture as standalone SVG, its words in this language.
    pub fn svg(&self, tongue: &Tongue) -> String {
        let diagram = self.diagram();
        let palette = palette::of(self.style);
        let layout = diagram.layout();
        let legend = Legend::of(&diagram, layout.width, tongue);
        let below = layout.height + legend.height();
        let text = self.text(tongue);
        let mut canvas = Canvas::new(layout.width, below + text.height(), Words::Outlined);
        canvas.rect(
            0.0,
            0.0,
            canvas.width,
            canvas.height,
            Paint::fill(palette.page),
        );
        diagram.draw(&mut canvas, &layout, palette);
        legend.draw(&mut canvas, layout.height, palette);
        text.draw(&mut canvas, below, palette);
        canvas.finish(&self.alt().in_words(tongue))
    }

    /// The picture as PNG; the board comes from kept parts, only marks and text are drawn anew.
    ///
    /// # Errors
    /// When the renderer refuses.
    pub fn png(&self, tongue: &Tongue) -> Result<Picture, DiagramError> {
        let mut map = pixels::draw(&self.diagram(), tongue)?;
        let text = self.text(tongue);
        if text.height() > 0.0 {
            let palette = palette::of(self.style);
            let mut canvas = Canvas::new(text.width, text.height(), Words::Outlined);
            let page = Paint::fill(palette.page);
            canvas.rect(0.0, 0.0, canvas.width, canvas.height, page);
            text.draw(&mut canvas, 0.0, palette);
            map = raster::stacked(&map, &raster::pixels(&canvas.finish(""), 1.0)?)?;
        }
        Ok(Picture {
            bytes: raster::pack(&map)?,
            kind: PictureKind::Png,
            alt: self.alt(),
        })
    }

    /// Heading and solution broken into lines.
    fn text(&self, tongue: &Tongue) -> Text {
        let layout = self.diagram().layout();
        let size = (layout.width * 0.036).max(10.0);
        let room = layout.width - 2.0 * layout.left;
        let mut lines = Vec::new();
        let mut add = |words: &str, kind: Kind, indent: f32| {
            let hand = kind.hand(size, "");
            let wrapped = figurine::wrapped(words, &hand, room, indent);
            lines.extend(wrapped.into_iter().enumerate().map(|(i, words)| Line {
                words,
                kind,
                indent: if i == 0 { 0.0 } else { indent },
            }));
        };
        if let Some(heading) = &self.heading {
            add(&tongue.say(heading), Kind::Heading, 0.0);
        }
        for (i, words) in self.solution.iter().enumerate() {
            let kind = if i == 0 { Kind::Main } else { Kind::Variation };
            add(words, kind, size * 1.1);
        }
        if lines.len() > LINES {
            lines.truncate(LINES - 1);
            lines.push(Line {
                words: tongue.say(&Fact::RevealMore),
                kind: Kind::Variation,
                indent: 0.0,
            });
        }
        Text {
            lines,
            size,
            width: layout.width,
            margin: layout.left,
        }
    }

    /// The final position, what becomes of each flight, and the solution.
    pub fn alt(&self) -> Alt {
        let heading = self.heading.clone().into_iter();
        let mut facts: Vec<Fact> = heading
            .map(|heading| Fact::AltHeading {
                heading: Box::new(heading),
            })
            .collect();
        facts.push(Fact::AltFinal);
        match self.diagram().alt() {
            Alt::Facts(board) => facts.extend(board),
            Alt::Said(_) => {}
        }
        if !self.solution.is_empty() {
            facts.push(Fact::AltSolution {
                line: self.solution.join(" ").trim_end_matches('.').into(),
            });
        }
        Alt::Facts(facts)
    }
}

/// What a line of the text is.
#[derive(Clone, Copy)]
enum Kind {
    Heading,
    Main,
    Variation,
}

impl Kind {
    fn hand(self, size: f32, ink: &str) -> Hand<'_> {
        match self {
            Self::Heading => Hand::new(size * 1.12, ink).bold(),
            Self::Main => Hand::new(size, ink).bold(),
            Self::Variation => Hand::new(size, ink),
        }
    }
}

struct Line {
    words: String,
    kind: Kind,
    indent: f32,
}

/// The text under the board.
struct Text {
    lines: Vec<Line>,
    size: f32,
    width: f32,
    margin: f32,
}

impl Text {
    /// Distance of lines.
    fn step(&self) -> f32 {
        self.size * 1.42
    }

    fn height(&self) -> f32 {
        if self.lines.is_empty() {
            0.0
        } else {
            (self.lines.len() as f32 * self.step() + self.size).round()
        }
    }

    fn draw(&self, canvas: &mut Canvas, top: f32, palette: &Palette) {
        if self.lines.is_empty() {
            return;
        }
        let rule = top + self.size * 0.25;
        canvas.line(
            (self.margin, rule),
            (self.width - self.margin, rule),
            Paint::stroke(palette.frame, (self.size * 0.05).max(1.0)),
        );
        for (i, line) in self.lines.iter().enumerate() {
            let y = top + self.size * 0.45 + (i as f32 + 0.78) * self.step();
            let hand = line.kind.hand(self.size, palette.ink);
            let at = (self.margin + line.indent, y);
            figurine::set(canvas, &line.words, at, hand, palette);
        }
    }
}

/// Where the moved piece is seen to stand afterwards; for castling, where the king goes.
pub fn landing(mv: Move) -> Square {
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
    use super::super::sample::{english, line, position};
    use super::*;

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
        reveal.heading = Some(Fact::PictureHeading { number: 3 });
        reveal.solution = vec!["1.Rxd8+ Rxd8 2.Rxd8#".into()];
        let alt = reveal.alt().in_words(&english());
        assert!(
            alt.starts_with("No. 3. Final position. White: king g1, rook d8"),
            "{alt}"
        );
        assert!(alt.contains("Last move d1 to d8."), "{alt}");
        assert!(
            alt.contains("Guarded flights: f8 by rook d8, h8 by rook d8."),
            "{alt}"
        );
        assert!(alt.ends_with("Solution: 1.Rxd8+ Rxd8 2.Rxd8#."), "{alt}");
    }
}
