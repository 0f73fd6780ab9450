//! `diagram`: a position as PNG or SVG, a line as a strip or an animation.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use shakmaty::{Chess, Color, Move, Position, Square, san::SanPlus};

use super::{
    Outcome,
    misuse::between,
    text::{Failure, Misuse, OrFail, failure, path, theirs, unless},
    tongue::readers,
};
use crate::{
    chat::pictures,
    chess::{parse_fen, scene::SceneMark},
    diagram::{Alt, Diagram as Board, Picture, Style, Tongue, contact, film::Film, strip::Strip},
};

/// Draw a position as PNG or SVG, by the file's ending; a line of moves as a strip (PNG, SVG) or an
/// animation (GIF).
#[derive(Debug, Args)]
pub struct DiagramArgs {
    /// The position
    #[arg(value_name = "FEN", required_unless_present = "sheet")]
    position: Option<String>,
    /// Everything that can be drawn, on one sheet: all pieces, styles, marks and sizes
    #[arg(long, conflicts_with_all = ["position", "line", "bottom", "style", "size", "arrows", "marks", "last"])]
    sheet: bool,
    /// Moves to show from the position on, such as "1.Rxd8+ Rxd8 2.Rxd8#"
    #[arg(long, value_name = "MOVES", conflicts_with_all = ["arrows", "marks", "last"])]
    line: Option<String>,
    /// Where to write; the ending .png, .svg or .gif says what
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// Who sits at the bottom; by default the side to move
    #[arg(long, value_enum)]
    bottom: Option<Side>,
    /// Look of the board
    #[arg(long, value_enum, default_value_t = Look::Print)]
    style: Look,
    /// Width in pixels, 120 to 2400 (by default 720); with a line 120 to 480 of each board of a strip (320), 120
    /// to 720 of an animation (480)
    #[arg(long, value_parser = between::<u32>(120, 2400))]
    size: Option<u32>,
    /// An arrow, such as d1d8; may be given again
    #[arg(long = "arrow", value_name = "FROM-TO", value_parser = two_squares)]
    arrows: Vec<(Square, Square)>,
    /// A marked square, such as h7; may be given again
    #[arg(long = "mark", value_name = "SQUARE", value_parser = square)]
    marks: Vec<Square>,
    /// The last move, such as e2e4
    #[arg(long, value_name = "FROM-TO", value_parser = two_squares)]
    last: Option<(Square, Square)>,
    /// Also print the words that replace the picture
    #[arg(long)]
    words: bool,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum Side {
    White,
    Black,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum Look {
    Print,
    Light,
    Dark,
    Contrast,
}

impl DiagramArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let ending = self
            .out
            .extension()
            .and_then(|e| e.to_str())
            .map(str::to_lowercase)
            .unwrap_or_default();
        let tongue = pictures::tongue(readers());
        let drawn = match &self.position {
            None => match ending.as_str() {
                "png" => contact::png(&tongue)?.into(),
                "svg" => Drawn {
                    bytes: contact::svg(&tongue).into_bytes(),
                    alt: Alt::Said(String::new()),
                },
                _ => {
                    return Err(failure(Failure::EndingOfBoard {
                        file: path(&self.out),
                    }));
                }
            },
            Some(fen) => {
                let position = parse_fen(fen).or_fail(|| Failure::PositionGiven)?.position;
                match &self.line {
                    Some(line) => self.draw_line(&position, line, &ending, &tongue)?,
                    None => self.draw_board(position, &ending, &tongue)?,
                }
            }
        };
        std::fs::write(&self.out, drawn.bytes).or_fail(|| Failure::FileUnwritable {
            file: path(&self.out),
        })?;
        if self.words {
            println!("{}", drawn.alt.in_words(&tongue));
        }
        Ok(Outcome::Fine)
    }

    fn draw_board(&self, position: Chess, ending: &str, tongue: &Tongue) -> anyhow::Result<Drawn> {
        let mut board = Board::of(position);
        board.bottom = self.bottom.map_or(board.bottom, Side::color);
        board.style = self.style.style();
        board.size = self.size.unwrap_or(board.size);
        board.last_move = self.last;
        let steps = self
            .arrows
            .iter()
            .zip(1..)
            .map(|(&(from, to), n)| SceneMark::Step(from, to, n));
        board.marks = steps
            .chain(self.marks.iter().map(|&s| SceneMark::Square(s)))
            .collect();
        match ending {
            "png" => Ok(board.png(tongue)?.into()),
            "svg" => Ok(Drawn {
                bytes: board.svg(tongue).into_bytes(),
                alt: board.alt(),
            }),
            _ => Err(failure(Failure::EndingOfBoard {
                file: path(&self.out),
            })),
        }
    }

    fn draw_line(
        &self,
        position: &Chess,
        line: &str,
        ending: &str,
        tongue: &Tongue,
    ) -> anyhow::Result<Drawn> {
        let moves = moves(position, line)?;
        if ending == "gif" {
            let mut film = Film::of(position.clone(), moves);
            film.bottom = self.bottom.map_or(film.bottom, Side::color);
            film.style = self.style.style();
            film.size = self.size_in_line(film.size, Film::WIDEST)?;
            return Ok(film.gif(tongue)?.into());
        }
        let mut strip = Strip::of(position.clone(), moves);
        strip.bottom = self.bottom.map_or(strip.bottom, Side::color);
        strip.style = self.style.style();
        strip.board = self.size_in_line(strip.board, Strip::WIDEST)?;
        match ending {
            "png" => Ok(strip.png(tongue)?.into()),
            "svg" => Ok(Drawn {
                bytes: strip.svg(tongue).into_bytes(),
                alt: strip.alt(),
            }),
            _ => Err(failure(Failure::EndingOfLine {
                file: path(&self.out),
            })),
        }
    }
}

impl DiagramArgs {
    /// The width that is asked for with a line, at most `most`; `usual` where none is.
    fn size_in_line(&self, usual: u32, most: u32) -> anyhow::Result<u32> {
        let size = self.size.unwrap_or(usual);
        unless(size <= most, || Failure::TooWideForLine {
            file: path(&self.out),
            size,
            most,
        })?;
        Ok(size)
    }
}

impl Side {
    fn color(self) -> Color {
        match self {
            Self::White => Color::White,
            Self::Black => Color::Black,
        }
    }
}

impl Look {
    fn style(self) -> Style {
        match self {
            Self::Print => Style::Print,
            Self::Light => Style::Light,
            Self::Dark => Style::Dark,
            Self::Contrast => Style::Contrast,
        }
    }
}

/// A file's bytes, and the words in its place.
struct Drawn {
    bytes: Vec<u8>,
    alt: Alt,
}

impl From<Picture> for Drawn {
    fn from(picture: Picture) -> Self {
        Self {
            bytes: picture.bytes,
            alt: picture.alt,
        }
    }
}

/// The moves of a line written in SAN, with or without numbers.
fn moves(position: &Chess, line: &str) -> anyhow::Result<Vec<Move>> {
    let mut at = position.clone();
    let mut moves = Vec::new();
    for word in line.split_whitespace() {
        let san = word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        if san.is_empty() {
            continue;
        }
        let mv = san
            .parse::<SanPlus>()
            .ok()
            .and_then(|san| san.san.to_move(&at).ok());
        let mv = mv.or_fail(|| Failure::NotALegalMove {
            written: theirs(word),
        })?;
        moves.push(mv);
        at.play_unchecked(mv);
    }
    unless(!moves.is_empty(), || Failure::LineHoldsNoMoves)?;
    Ok(moves)
}

fn two_squares(text: &str) -> Result<(Square, Square), String> {
    let letters: String = text.chars().filter(char::is_ascii_alphanumeric).collect();
    let refuse = || readers().say(&Misuse::NotTwoSquares);
    match letters.len() {
        4 => Ok((
            letters[..2].parse().map_err(|_| refuse())?,
            letters[2..].parse().map_err(|_| refuse())?,
        )),
        _ => Err(refuse()),
    }
}

fn square(text: &str) -> Result<Square, String> {
    let refuse = |_| readers().say(&Misuse::NotASquare);
    text.trim().to_lowercase().parse().map_err(refuse)
}
