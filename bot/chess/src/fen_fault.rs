//! What is wrong with a FEN that cannot be read, and where: which rank, which field.
//!
//! The fields and their values are those of the PGN standard (Edwards, 1994), section 16.1.

use std::fmt;

/// What is wrong with a FEN, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FenFault {
    /// It is not the shape of a FEN at all; what stands there instead.
    Shape(String),
    /// The board has too few or too many ranks.
    Ranks(usize),
    /// A rank has too few or too many squares.
    Squares {
        /// The rank, 8 to 1.
        rank: u8,
        /// How it is written.
        written: String,
        /// Squares it makes.
        squares: usize,
    },
    /// A character in a rank that is neither a man nor a number of empty squares.
    Man {
        /// The rank, 8 to 1.
        rank: u8,
        /// The square it stands for, such as "c5"; where the rank is full already, how many squares
        /// stand before it.
        square: Result<String, usize>,
        /// The character.
        found: char,
    },
    /// Who is to move.
    Turn(String),
    /// Castling.
    Castling(String),
    /// The en passant square.
    EnPassant(String),
    /// Half-moves since a capture or a pawn's move.
    HalfMoves(String),
    /// The number of the move.
    MoveNumber(String),
    /// Something stands behind the sixth field.
    Surplus(String),
}

impl fmt::Display for FenFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Shape(found) => write!(
                f,
                "this is not a FEN (\"{found}\"); a FEN has the eight ranks, then w or b, castling and en passant, such as \"8/8/8/8/8/5k2/5p2/5K2 w - -\""
            ),
            Self::Ranks(ranks) => write!(
                f,
                "the board of the FEN has {ranks} {}, and it needs eight, parted by /; look for one that is missing, doubled or not parted",
                if *ranks == 1 { "rank" } else { "ranks" }
            ),
            Self::Squares {
                rank,
                written,
                squares,
            } => write!(
                f,
                "rank {rank} of the FEN, \"{written}\", has {squares} {}, and it needs eight; count its men and the empty squares between them",
                if *squares == 1 { "square" } else { "squares" }
            ),
            Self::Man {
                rank,
                square,
                found,
            } => {
                match square {
                    Ok(square) => write!(f, "rank {rank} of the FEN has \"{found}\" on {square}")?,
                    Err(before) => write!(
                        f,
                        "rank {rank} of the FEN has \"{found}\" after {before} squares"
                    )?,
                }
                f.write_str("; a man is one of KQRBNP (White) or kqrbnp (Black), and 1 to 8 are empty squares")
            }
            Self::Turn(found) => write!(
                f,
                "field 2 of the FEN, who is to move, is \"{found}\"; write w or b"
            ),
            Self::Castling(found) => write!(
                f,
                "field 3 of the FEN, castling, is \"{found}\"; write those of KQkq that are possible, or -"
            ),
            Self::EnPassant(found) => write!(
                f,
                "field 4 of the FEN, en passant, is \"{found}\"; write the square that a pawn has just passed over, such as e3 or d6, or -"
            ),
            Self::HalfMoves(found) => write!(
                f,
                "field 5 of the FEN, half-moves since a capture or a pawn's move, is \"{found}\"; write a number such as 0"
            ),
            Self::MoveNumber(found) => write!(
                f,
                "field 6 of the FEN, the number of the move, is \"{found}\"; write a number such as 1"
            ),
            Self::Surplus(found) => write!(
                f,
                "\"{found}\" stands behind the six fields of the FEN; take it away"
            ),
        }
    }
}

/// Finds what is wrong with a FEN that was not read, field by field.
pub(super) fn find(fen: &str) -> FenFault {
    let fields: Vec<&str> = fen.split_whitespace().collect();
    let board = fields.first().copied().unwrap_or_default();
    if !board.contains('/') {
        return FenFault::Shape(excerpt(fen));
    }
    if let Some(fault) = in_board(board) {
        return fault;
    }
    type Check = (fn(&str) -> bool, fn(String) -> FenFault);
    let checks: [Check; 5] = [
        (|text| matches!(text, "w" | "b"), FenFault::Turn),
        (is_castling, FenFault::Castling),
        (is_passed, FenFault::EnPassant),
        (is_count, FenFault::HalfMoves),
        (is_count, FenFault::MoveNumber),
    ];
    for (field, (good, fault)) in fields[1..].iter().zip(checks) {
        if !good(field) {
            return fault(excerpt(field));
        }
    }
    match fields.get(6) {
        Some(surplus) => FenFault::Surplus(excerpt(surplus)),
        None => FenFault::Shape(excerpt(fen)),
    }
}

fn in_board(board: &str) -> Option<FenFault> {
    let ranks: Vec<&str> = board.split('/').collect();
    // A strange letter says more than the count of ranks that it may have spoilt.
    for (written, rank) in ranks.iter().zip((1..=8_u8).rev()) {
        let mut squares = 0_usize;
        for c in written.chars() {
            match c {
                '1'..='8' => squares += usize::from(c as u8 - b'0'),
                _ if "KQRBNPkqrbnp".contains(c) => squares += 1,
                _ => {
                    let file = u8::try_from(squares).ok().filter(|file| *file < 8);
                    return Some(FenFault::Man {
                        rank,
                        square: file
                            .map(|file| format!("{}{rank}", char::from(b'a' + file)))
                            .ok_or(squares),
                        found: if c.is_control() { ' ' } else { c },
                    });
                }
            }
        }
    }
    if ranks.len() != 8 {
        return Some(FenFault::Ranks(ranks.len()));
    }
    ranks
        .iter()
        .zip((1..=8_u8).rev())
        .find_map(|(written, rank)| {
            let squares = written
                .chars()
                .map(|c| c.to_digit(10).map_or(1, |empty| empty as usize))
                .sum();
            (squares != 8).then(|| FenFault::Squares {
                rank,
                written: excerpt(written),
                squares,
            })
        })
}

fn is_castling(text: &str) -> bool {
    let distinct = |at: usize, c: char| !text[..at].contains(c);
    text == "-"
        || (!text.is_empty()
            && text
                .char_indices()
                .all(|(at, c)| "KQkq".contains(c) && distinct(at, c)))
}

fn is_passed(text: &str) -> bool {
    matches!(text.as_bytes(), [b'-'] | [b'a'..=b'h', b'3' | b'6'])
}

fn is_count(text: &str) -> bool {
    text.bytes().all(|byte| byte.is_ascii_digit()) && text.parse::<u32>().is_ok()
}

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

#[cfg(test)]
mod tests {
    use crate::parse_fen;

    /// What is said of a FEN that is refused.
    fn said(fen: &str) -> String {
        parse_fen(fen).expect_err(fen).to_string()
    }

    #[test]
    fn the_rank_or_field_is_named() {
        for (fen, part) in [
            // Ranks: too few, too many, too short, too long, each by its number on the board.
            (
                "8/8/8/8/8/5k2/5p2 w - - 0 1",
                "has 7 ranks, and it needs eight",
            ),
            ("8/8/8/8/8/8/8/5k2/5K2 w - - 0 1", "has 9 ranks"),
            (
                "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K2 w - -",
                "rank 1 of the FEN, \"3R2K2\", has 9 squares",
            ),
            (
                "r2r2k/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -",
                "rank 8 of the FEN, \"r2r2k\", has 7 squares",
            ),
            (
                "r2r2k1/5ppp/8/7/8/8/3R1PPP/3R2K1 w - -",
                "rank 5 of the FEN, \"7\", has 7 squares",
            ),
            (
                "r2r2k1/5ppp/8/8//8/3R1PPP/3R2K1 w - -",
                "rank 4 of the FEN, \"\", has 0 squares",
            ),
            (
                "r2r2k1/5ppp/8/8/8/44p/3R1PPP/3R2K1 w - -",
                "rank 3 of the FEN, \"44p\", has 9 squares",
            ),
            // A letter that is no man, with its square.
            (
                "r2r2k1/5ppp/8/2S5/8/8/3R1PPP/3R2K1 w - -",
                "rank 5 of the FEN has \"S\" on c5",
            ),
            (
                "r2r2k1/5ppp/8/8/8/9/3R1PPP/3R2K1 w - -",
                "rank 3 of the FEN has \"9\" on a3",
            ),
            (
                "r2r2k1/5ppp/8/8/8/0/3R1PPP/3R2K1 w - -",
                "rank 3 of the FEN has \"0\" on a3",
            ),
            (
                "r2r2k1/5ppp/8/8/8/8x/3R1PPP/3R2K1 w - -",
                "rank 3 of the FEN has \"x\" after 8 squares",
            ),
            // Fields two to six, and what stands behind them.
            (
                "6k1/8/8/8/8/8/8/6K1 white - - 0 1",
                "field 2 of the FEN, who is to move, is \"white\"; write w or b",
            ),
            ("6k1/8/8/8/8/8/8/6K1 W - - 0 1", "field 2"),
            (
                "6k1/8/8/8/8/8/8/6K1 w none - 0 1",
                "field 3 of the FEN, castling, is \"none\"",
            ),
            (
                "6k1/8/8/8/8/8/8/6K1 w - e9 0 1",
                "field 4 of the FEN, en passant, is \"e9\"",
            ),
            (
                "6k1/8/8/8/8/8/8/6K1 w - - x 1",
                "field 5 of the FEN, half-moves since a capture or a pawn's move, is \"x\"",
            ),
            ("6k1/8/8/8/8/8/8/6K1 w - - -1 1", "field 5"),
            (
                "6k1/8/8/8/8/8/8/6K1 w - - 0 one",
                "field 6 of the FEN, the number of the move, is \"one\"",
            ),
            (
                "6k1/8/8/8/8/8/8/6K1 w - - 0 1 2",
                "\"2\" stands behind the six fields",
            ),
            // Men that must be there, and one that may not.
            ("8/8/8/8/8/8/8/6K1 w - - 0 1", "there is no black king"),
            ("6k1/8/8/8/8/8/8/8 w - - 0 1", "there is no white king"),
            ("6kk/8/8/8/8/8/8/6K1 w - - 0 1", "more than one black king"),
            (
                "6k1/8/8/8/8/8/8/P5K1 w - - 0 1",
                "a pawn stands on the first or last rank (a1)",
            ),
            ("nonsense", "this is not a FEN (\"nonsense\")"),
        ] {
            let said = said(fen);
            assert!(said.contains(part), "{fen}: {said}");
        }
    }

    #[test]
    fn what_is_quoted_is_short() {
        let long = format!("{}/8 w - -", "x".repeat(5_000));
        assert!(said(&long).len() < 300);
        assert!(said(&"8/".repeat(5_000)).len() < 300);
        assert!(said(&format!("8/8/8/8/8/8/8/{} w - -", "8".repeat(500))).len() < 300);
    }
}
