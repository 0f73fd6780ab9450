//! Reading what a coach hands over: EPD, PGN with SetUp/FEN, and bare FEN lines.
//!
//! Bytes come in, positions and errors go out, each with its line. Formats follow the PGN standard
//! (Edwards, 1994), of which EPD is a part; where files in the wild are laxer than it, so is this.
//! All input is bounded: a file by [`LARGEST_FILE`], a game by its moves and their depth.

mod comment;
mod decode;
mod epd;
mod fault;
mod movetext;
mod pgn;
mod promotion;

use shakmaty::{
    Chess, Move,
    san::{SanError, SanPlus},
    uci::UciMove,
};

use super::{Stipulation, Warning};
use decode::Decoded;

pub(crate) use comment::without_commands;
pub use comment::{Comment, Goes};
pub use decode::OddLine;
pub use fault::{Byte, Fault, Oddity};
pub use pgn::Game;

/// One position of a file, as the file states it.
#[derive(Clone, Debug, Default)]
pub struct Entry {
    /// The file's own id (EPD `id`, PGN tags) or `file:line`.
    pub id: String,
    /// Line in the file, from 1.
    pub line: usize,
    /// All of it, as it stands in the file; empty for one that comes from no file.
    pub text: String,
    /// The position.
    pub position: Chess,
    /// What is odd about the position.
    pub warnings: Vec<Warning>,
    /// The task, where the file states one.
    pub stipulation: Option<Stipulation>,
    /// Best moves that the file promises (EPD `bm`), and the first move of a PGN solution.
    pub best: Vec<Move>,
    /// Moves to avoid (EPD `am`).
    pub avoid: Vec<Move>,
    /// Topic, where the file names one (EPD `c0`, PGN `Topic` or `Event` tag).
    pub topic: Option<String>,
    /// The coach's words on the position as a whole (EPD `c1` to `c9` and `post`, PGN comments before
    /// the first move), each with where it goes out.
    pub comments: Vec<Comment>,
    /// Lines of its part of the file that were not in the file's encoding.
    pub odd_lines: Vec<OddLine>,
    /// The coach's own variations, for a PGN entry.
    pub variations: Option<GameTree>,
}

/// Words of a file that are no problem, with or without a position beside them.
#[derive(Clone, Debug, Default)]
pub struct Written {
    /// The file's own id (EPD `id`, PGN tags) or `file:line`.
    pub id: String,
    /// Line in the file, from 1.
    pub line: usize,
    /// The words.
    pub words: String,
    /// The position beside them; the initial array counts as none.
    pub position: Option<Chess>,
    /// Topic, where the file names one.
    pub topic: Option<String>,
    /// Of a question, the coach's own words on it; may be empty.
    pub at_reveal: String,
}

/// What stands in one place of a file.
#[derive(Clone, Debug)]
pub enum Item {
    /// A position with its task, or one whose task is to be found.
    Problem(Box<Entry>),
    /// What members answer in their own words (EPD `question`; PGN tag `Question`, or `Task "?"` with a
    /// comment).
    Question(Written),
    /// What members read (PGN tag `Words`).
    Words(Written),
}

/// A coach's own game tree from a PGN.
#[derive(Clone, Debug, Default)]
pub struct GameTree {
    /// Main move first, then its alternatives.
    pub nodes: Vec<GameNode>,
}

/// A move of a game tree.
#[derive(Clone, Debug)]
pub struct GameNode {
    /// The move.
    pub mv: Move,
    /// Numeric annotation glyphs.
    pub nags: Vec<u8>,
    /// Whether the move is written with the sign `#`.
    pub mate_sign: bool,
    /// Comment before the move: at the beginning of its variation.
    pub before: Option<String>,
    /// Comment after the move; several are one, with a space between.
    pub comment: Option<String>,
    /// Line in the file, from 1.
    pub line: usize,
    /// What follows: main move first, then its alternatives.
    pub next: GameTree,
}

/// What is wrong with an entry of a file, and where. Written out by itself it is for the log.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{file}, line {line}: {problem}")]
pub struct ReadError {
    /// Name of the file as the coach gave it.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// The entry's id, where it was readable.
    pub id: Option<String>,
    /// The position as the file gives it, where the trouble is in the position; else empty.
    pub text: String,
    /// What is wrong and what to do.
    pub problem: Box<Fault>,
}

/// The most a file may weigh, in bytes.
pub const LARGEST_FILE: usize = 16 << 20;

/// What a file holds, as seen from its content; names and endings do not matter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    /// EPD records or bare FENs, one a line.
    Lines,
    /// Portable Game Notation.
    Pgn,
}

/// Reads every position of a file; the kind (EPD, PGN, FEN lines) is seen from the content.
/// A bad entry is an error in its place and does not stop the others; questions and words are passed over, see
/// [`read_items`].
///
/// ```
/// use sealed_move_chess::{Stipulation, read::read_file};
///
/// let text = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - bm Rxd8+; dm 2; id \"w1\";\n";
/// let entries = read_file("week.epd", text.as_bytes());
/// let entry = entries[0].as_ref().expect("a position");
/// assert_eq!(entry.id, "w1");
/// assert_eq!(entry.stipulation, Some(Stipulation::Mate(2)));
/// ```
pub fn read_file(name: &str, bytes: &[u8]) -> Vec<Result<Entry, ReadError>> {
    read_items(name, bytes)
        .into_iter()
        .filter_map(|item| match item {
            Ok(Item::Problem(entry)) => Some(Ok(*entry)),
            Ok(Item::Question(_) | Item::Words(_)) => None,
            Err(error) => Some(Err(error)),
        })
        .collect()
}

/// Reads all that stands in a file: positions as [`read_file`] does, questions, and words alone. A bad item is
/// an error in its place and does not stop the others.
pub fn read_items(name: &str, bytes: &[u8]) -> Vec<Result<Item, ReadError>> {
    let (kind, decoded) = match open(name, bytes) {
        Ok(opened) => opened,
        Err(error) => return vec![Err(error)],
    };
    match kind {
        Kind::Lines => epd::read_lines(name, &decoded),
        Kind::Pgn => pgn::read_entries(name, &decoded),
    }
}

/// Reads every game of a PGN file, with or without a position of its own. A bad game is an error in
/// its place and does not stop the others.
pub fn read_games(name: &str, bytes: &[u8]) -> Vec<Result<Game, ReadError>> {
    match open(name, bytes) {
        Ok((Kind::Pgn, decoded)) => pgn::read_games(name, &decoded),
        Ok((Kind::Lines, _)) => vec![Err(ReadError {
            file: name.to_owned(),
            line: 1,
            id: None,
            text: String::new(),
            problem: Fault::FileHoldsPositions.into(),
        })],
        Err(error) => vec![Err(error)],
    }
}

fn open(name: &str, bytes: &[u8]) -> Result<(Kind, Decoded), ReadError> {
    let refuse = |line, problem: Fault| ReadError {
        file: name.to_owned(),
        line,
        id: None,
        text: String::new(),
        problem: problem.into(),
    };
    let decoded = decode::decode(bytes).map_err(|problem| refuse(1, problem))?;
    match kind(&decoded.text) {
        Ok(kind) => Ok((kind, decoded)),
        Err((line, problem)) => Err(refuse(line, problem)),
    }
}

/// Sees the kind of a file from its first line that can begin an entry; what stands before it is for
/// the reader of that kind to complain of. Empty lines and remarks say nothing.
fn kind(text: &str) -> Result<Kind, (usize, Fault)> {
    let mut strange = None;
    for (at, line) in text.lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with(['#', '%']) {
            continue;
        }
        if let Some(kind) = kind_of_line(line) {
            return Ok(kind);
        }
        strange.get_or_insert((at + 1, line));
    }
    let Some((at, line)) = strange else {
        return Err((1, Fault::FileHoldsNothing));
    };
    let first = line.split_whitespace().next().unwrap_or_default();
    let written = excerpt(first).into();
    Err((at, Fault::FileBeginsStrangely { written }))
}

/// The kind of file in which this line can begin an entry.
fn kind_of_line(line: &str) -> Option<Kind> {
    if line.starts_with(['[', '{', ';']) {
        return Some(Kind::Pgn);
    }
    let first = line.split_whitespace().next().unwrap_or_default();
    if first.contains('/') && first.starts_with(|c: char| c.is_ascii_alphanumeric()) {
        return Some(Kind::Lines);
    }
    let after_number = first.trim_start_matches(|c: char| c.is_ascii_digit());
    (after_number.len() < first.len() && after_number.starts_with('.')).then_some(Kind::Pgn)
}

/// The beginning of a text from a file, short enough to quote in a message.
fn excerpt(text: &str) -> String {
    const MOST: usize = 60;
    let mut out: String = text
        .chars()
        .take(MOST)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if text.chars().nth(MOST).is_some() {
        out.push('…');
    }
    out
}

/// The move that an operand of `code` means in a position: SAN, or from and to square.
///
/// # Errors
/// Says what is wrong with it.
fn read_move(position: &Chess, code: &str, text: &str) -> Result<Move, Fault> {
    // "d2d8" would also pass for a pawn's move in SAN; from and to square say more.
    if let Ok(uci) = text.parse::<UciMove>()
        && let Ok(mv) = uci.to_move(position)
    {
        return Ok(mv);
    }
    let (code, written) = (code.into(), excerpt(text).into());
    let bare = text.trim_end_matches(['!', '?']);
    let respelt = match bare.starts_with("0-0") {
        true => Some(bare.replace('0', "O")),
        false => promotion::with_sign(bare),
    };
    let Ok(san) = SanPlus::from_ascii(respelt.as_deref().unwrap_or(bare).as_bytes()) else {
        return Err(Fault::OperandUnread { code, written });
    };
    san.san.to_move(position).map_err(|error| match error {
        SanError::IllegalSan => Fault::OperandNotLegal { code, written },
        SanError::AmbiguousSan => Fault::OperandNotClear { code, written },
    })
}

#[cfg(test)]
mod fuzz;
#[cfg(test)]
mod tests;
