//! `diagram`: a position as PNG or SVG.

use std::path::PathBuf;

use anyhow::{Context, bail};
use clap::{Args, ValueEnum};
use shakmaty::{Color, Square};

use super::Outcome;
use crate::{
    chess::{parse_fen, scene::SceneMark},
    diagram::{Diagram as Board, Style},
};

/// Draw a position as PNG or SVG, by the file's ending.
#[derive(Debug, Args)]
#[command(after_help = "Example:
  sealed-move diagram '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' --out board.png --arrow d1d8")]
pub struct Diagram {
    /// The position
    #[arg(value_name = "FEN")]
    position: String,
    /// Where to write; the ending .png or .svg says what
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// Who sits at the bottom; by default the side to move
    #[arg(long, value_enum)]
    bottom: Option<Side>,
    /// Look of the board
    #[arg(long, value_enum, default_value_t = Look::Print)]
    style: Look,
    /// Width in pixels
    #[arg(long, default_value_t = 720, value_parser = clap::value_parser!(u32).range(120..=2400))]
    size: u32,
    /// An arrow, such as d1d8; may be given again
    #[arg(long = "arrow", value_name = "FROM-TO", value_parser = two_squares)]
    arrows: Vec<(Square, Square)>,
    /// A marked square, such as h7; may be given again
    #[arg(long = "mark", value_name = "SQUARE")]
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

impl Diagram {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let position = parse_fen(&self.position).context("the position")?.position;
        let mut board = Board::of(position);
        if let Some(side) = self.bottom {
            board.bottom = match side {
                Side::White => Color::White,
                Side::Black => Color::Black,
            };
        }
        board.style = match self.style {
            Look::Print => Style::Print,
            Look::Light => Style::Light,
            Look::Dark => Style::Dark,
            Look::Contrast => Style::Contrast,
        };
        board.size = self.size;
        board.last_move = self.last;
        let steps = self
            .arrows
            .iter()
            .zip(1..)
            .map(|(&(from, to), n)| SceneMark::Step(from, to, n));
        board.marks = steps
            .chain(self.marks.iter().map(|&s| SceneMark::Square(s)))
            .collect();
        let bytes = match self
            .out
            .extension()
            .and_then(|e| e.to_str())
            .map(str::to_lowercase)
            .as_deref()
        {
            Some("png") => board.png()?.bytes,
            Some("svg") => board.svg().into_bytes(),
            _ => bail!("{}: the name must end in .png or .svg", self.out.display()),
        };
        std::fs::write(&self.out, bytes)
            .with_context(|| format!("{} could not be written", self.out.display()))?;
        if self.words {
            println!("{}", board.alt());
        }
        Ok(Outcome::Fine)
    }
}

fn two_squares(text: &str) -> Result<(Square, Square), String> {
    let letters: String = text.chars().filter(char::is_ascii_alphanumeric).collect();
    let refuse = || format!("\"{text}\" is not two squares; write them as d1d8");
    match letters.len() {
        4 => Ok((
            letters[..2].parse().map_err(|_| refuse())?,
            letters[2..].parse().map_err(|_| refuse())?,
        )),
        _ => Err(refuse()),
    }
}
