//! An example that a coach gives: a position, and moves from it as people write them.

use shakmaty::{Chess, EnPassantMode, Move, Position, fen::Fen, san::SanPlus};

use super::Example;
use crate::{Language, PositionError, parse_fen, reply};

/// The most half-moves of an example.
pub const LONGEST_LINE: usize = 24;

/// Why a position with moves is no example.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoExample {
    /// The position cannot be set up.
    Position(PositionError),
    /// This is no move, or no legal one, after so many that are.
    Move {
        /// As it was written.
        written: String,
        /// How many moves before it could be played.
        after: usize,
    },
    /// There are more than [`LONGEST_LINE`].
    TooLong,
}

impl Example {
    /// Reads a FEN, and moves from it in the notation of a language or in English letters, numbered or not.
    ///
    /// ```
    /// use sealed_move_chess::{Language, card::Example};
    ///
    /// let fen = "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1";
    /// let example = Example::given(fen, "1. Ta8#", Language::German).unwrap();
    /// assert_eq!(example.line, ["Ra8#"]);
    /// assert!(Example::given(fen, "1. Ra9", Language::English).is_err());
    /// ```
    ///
    /// # Errors
    /// When the position cannot be set up, or a move cannot be played.
    pub fn given(fen: &str, written: &str, language: Language) -> Result<Self, NoExample> {
        let position = parse_fen(fen).map_err(NoExample::Position)?.position;
        let mut at = position.clone();
        let mut line = Vec::new();
        for word in words(written) {
            if line.len() == LONGEST_LINE {
                return Err(NoExample::TooLong);
            }
            let Some(mv) = one_move(&at, word, language) else {
                return Err(NoExample::Move {
                    written: word.to_owned(),
                    after: line.len(),
                });
            };
            line.push(SanPlus::from_move_and_play_unchecked(&mut at, mv).to_string());
        }
        Ok(Self {
            fen: Fen::from_position(&position, EnPassantMode::Legal).to_string(),
            position,
            line,
        })
    }
}

/// The moves as they were written, without their numbers.
fn words(written: &str) -> impl Iterator<Item = &str> {
    written
        .split_whitespace()
        .map(|word| {
            let rest = word.trim_start_matches(|c: char| c.is_ascii_digit());
            match rest.starts_with('.') {
                true => rest.trim_start_matches(['.', '…']),
                false => word,
            }
        })
        .filter(|word| !word.is_empty() && !word.chars().all(|c| matches!(c, '.' | '…')))
}

/// The move that a word is: SAN with the language's own letters, then with English ones, then whatever a reply may
/// be written in.
pub(crate) fn one_move(at: &Chess, word: &str, language: Language) -> Option<Move> {
    let bare = word.trim_end_matches(['!', '?']);
    let own = reply::in_english(bare, language);
    let as_san = |written: &str| {
        let san = written.parse::<SanPlus>().ok()?;
        san.san.to_move(at).ok()
    };
    if let Some(mv) = own.as_deref().and_then(as_san).or_else(|| as_san(bare)) {
        return Some(mv);
    }
    let reading = reply::read(at, &[], bare, language).ok()?;
    let start = reading.tree.node(reading.tree.cursor());
    let [first] = start.children[..] else {
        return None;
    };
    let node = reading.tree.node(first);
    node.mv.filter(|&mv| !node.assumed && at.is_legal(mv))
}

#[cfg(test)]
mod tests {
    use super::*;

    const FEN: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

    #[test]
    fn moves_are_read_as_people_write_them() {
        let line = ["Rxd8+", "Rxd8", "Rxd8#"];
        for (written, language) in [
            ("1.Rxd8+ Rxd8 2.Rxd8#", Language::English),
            ("Rxd8 Rxd8 Rxd8", Language::English),
            ("1. Rxd8+! 1... Rxd8 2. Rxd8#", Language::English),
            ("1.Txd8+ Txd8 2.Txd8#", Language::German),
            ("1.Rxd8+ Rxd8 2.Rxd8#", Language::German),
        ] {
            let read = Example::given(FEN, written, language);
            assert_eq!(
                read.map(|example| example.line).as_deref(),
                Ok(&line.map(String::from)[..]),
                "{written}"
            );
        }
        // A letter that both languages have means what it means in the coach's own.
        let kings = Example::given(
            "3r2k1/8/8/8/8/8/4K3/R7 w - - 0 1",
            "1.Re1",
            Language::Spanish,
        );
        assert_eq!(
            kings.map(|example| example.line),
            Ok(vec!["Ke1".to_owned()])
        );
        let alone = Example::given(FEN, " ", Language::English).expect("a position");
        assert!(alone.line.is_empty());
    }

    #[test]
    fn what_cannot_be_played_is_named() {
        let refused = |fen: &str, written: &str| {
            Example::given(fen, written, Language::English).expect_err("refused")
        };
        assert_eq!(
            refused(FEN, "1.Rxd8+ Kh9"),
            NoExample::Move {
                written: "Kh9".into(),
                after: 1
            }
        );
        assert_eq!(
            refused(FEN, "1.Rd9"),
            NoExample::Move {
                written: "Rd9".into(),
                after: 0
            }
        );
        let there_and_back = "Kf1 Kf8 Kg1 Kg8 ".repeat(7);
        assert_eq!(refused(FEN, &there_and_back), NoExample::TooLong);
        assert!(matches!(refused("8/8", "Kf1"), NoExample::Position(_)));
    }
}
