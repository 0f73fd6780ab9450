//! What is wrong with a FEN that cannot be read, and where: which rank, which field.
//!
//! The fields and their values are those of the PGN standard (Edwards, 1994), section 16.1.

use shakmaty::{File, Rank, Square};

use super::{
    fact::{At, Theirs, number},
    position_error::PositionError,
};

/// Finds what is wrong with a FEN that was not read, field by field.
pub(super) fn find(fen: &str) -> PositionError {
    let fields: Vec<&str> = fen.split_whitespace().collect();
    let board = fields.first().copied().unwrap_or_default();
    if !board.contains('/') {
        return PositionError::NotAFen {
            written: excerpt(fen),
        };
    }
    if let Some(fault) = in_board(board) {
        return fault;
    }
    type Check = (fn(&str) -> bool, fn(Theirs) -> PositionError);
    let checks: [Check; 5] = [
        (
            |text| matches!(text, "w" | "b"),
            |written| PositionError::FenTurn { written },
        ),
        (is_castling, |written| PositionError::FenCastling {
            written,
        }),
        (is_passed, |written| PositionError::FenEnPassant { written }),
        (is_count, |written| PositionError::FenHalfMoves { written }),
        (is_count, |written| PositionError::FenMoveNumber { written }),
    ];
    for (field, (good, fault)) in fields[1..].iter().zip(checks) {
        if !good(field) {
            return fault(excerpt(field));
        }
    }
    match fields.get(6) {
        Some(surplus) => PositionError::FenSurplus {
            written: excerpt(surplus),
        },
        None => PositionError::NotAFen {
            written: excerpt(fen),
        },
    }
}

fn in_board(board: &str) -> Option<PositionError> {
    let ranks: Vec<&str> = board.split('/').collect();
    // A strange letter says more than the count of ranks that it may have spoilt.
    for (written, rank) in ranks.iter().zip((1..=8_u32).rev()) {
        let mut squares = 0_u32;
        for c in written.chars() {
            match c {
                '1'..='8' => squares += c.to_digit(10).unwrap_or_default(),
                _ if "KQRBNPkqrbnp".contains(c) => squares += 1,
                _ => {
                    let found = Theirs::from(if c.is_control() { ' ' } else { c }.to_string());
                    return Some(match square(squares, rank) {
                        Some(square) => PositionError::FenStrange {
                            rank,
                            found,
                            square: At(square),
                        },
                        None => PositionError::FenStrangeAfter {
                            rank,
                            found,
                            squares,
                        },
                    });
                }
            }
        }
    }
    if ranks.len() != 8 {
        return Some(PositionError::FenRanks {
            ranks: number(ranks.len()),
        });
    }
    ranks
        .iter()
        .zip((1..=8_u32).rev())
        .find_map(|(written, rank)| {
            let squares = written.chars().map(|c| c.to_digit(10).unwrap_or(1)).sum();
            (squares != 8).then(|| PositionError::FenSquares {
                rank,
                written: excerpt(written),
                squares,
            })
        })
}

/// The square behind so many others of a rank (8 to 1); none where the rank is full.
fn square(before: u32, rank: u32) -> Option<Square> {
    let file = File::try_from(before).ok()?;
    Some(Square::from_coords(file, Rank::try_from(rank - 1).ok()?))
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

fn excerpt(text: &str) -> Theirs {
    const MOST: usize = 60;
    let mut out: String = text
        .chars()
        .take(MOST)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if text.chars().nth(MOST).is_some() {
        out.push('…');
    }
    out.into()
}

#[cfg(test)]
mod tests {
    use shakmaty::Color;

    use super::*;
    use crate::{fact::List, parse_fen};

    fn fault(fen: &str) -> PositionError {
        parse_fen(fen).expect_err(fen)
    }

    #[test]
    fn a_rank_is_named_with_its_squares() {
        for (fen, rank, written, squares) in [
            ("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K2 w - -", 1, "3R2K2", 9),
            ("r2r2k/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -", 8, "r2r2k", 7),
            ("r2r2k1/5ppp/8/7/8/8/3R1PPP/3R2K1 w - -", 5, "7", 7),
            ("r2r2k1/5ppp/8/8//8/3R1PPP/3R2K1 w - -", 4, "", 0),
            ("r2r2k1/5ppp/8/8/8/44p/3R1PPP/3R2K1 w - -", 3, "44p", 9),
        ] {
            let written = written.into();
            let expected = PositionError::FenSquares {
                rank,
                written,
                squares,
            };
            assert_eq!(fault(fen), expected, "{fen}");
        }
        for (fen, ranks) in [
            ("8/8/8/8/8/5k2/5p2 w - - 0 1", 7),
            ("8/8/8/8/8/8/8/5k2/5K2 w - - 0 1", 9),
        ] {
            assert_eq!(fault(fen), PositionError::FenRanks { ranks }, "{fen}");
        }
    }

    #[test]
    fn a_letter_that_is_no_piece_is_named_with_its_square() {
        for (fen, rank, found, square) in [
            (
                "r2r2k1/5ppp/8/2S5/8/8/3R1PPP/3R2K1 w - -",
                5,
                "S",
                Square::C5,
            ),
            ("r2r2k1/5ppp/8/8/8/9/3R1PPP/3R2K1 w - -", 3, "9", Square::A3),
            ("r2r2k1/5ppp/8/8/8/0/3R1PPP/3R2K1 w - -", 3, "0", Square::A3),
        ] {
            let expected = PositionError::FenStrange {
                rank,
                found: found.into(),
                square: At(square),
            };
            assert_eq!(fault(fen), expected, "{fen}");
        }
        let expected = PositionError::FenStrangeAfter {
            rank: 3,
            found: "x".into(),
            squares: 8,
        };
        assert_eq!(fault("r2r2k1/5ppp/8/8/8/8x/3R1PPP/3R2K1 w - -"), expected);
    }

    #[test]
    fn a_field_is_named_with_what_it_holds() {
        type Expected = fn(Theirs) -> PositionError;
        let of: [(&str, &str, Expected); 9] = [
            ("white - - 0 1", "white", |written| PositionError::FenTurn {
                written,
            }),
            ("W - - 0 1", "W", |written| PositionError::FenTurn {
                written,
            }),
            ("w none - 0 1", "none", |written| {
                PositionError::FenCastling { written }
            }),
            ("w - e9 0 1", "e9", |written| PositionError::FenEnPassant {
                written,
            }),
            ("w - - x 1", "x", |written| PositionError::FenHalfMoves {
                written,
            }),
            ("w - - -1 1", "-1", |written| PositionError::FenHalfMoves {
                written,
            }),
            ("w - - 0 one", "one", |written| {
                PositionError::FenMoveNumber { written }
            }),
            ("w - - 0 1 2", "2", |written| PositionError::FenSurplus {
                written,
            }),
            ("w - - 0 1 a b", "a", |written| PositionError::FenSurplus {
                written,
            }),
        ];
        for (fields, written, expected) in of {
            let fen = format!("6k1/8/8/8/8/8/8/6K1 {fields}");
            assert_eq!(fault(&fen), expected(written.into()), "{fen}");
        }
        let written = "nonsense".into();
        assert_eq!(fault("nonsense"), PositionError::NotAFen { written });
    }

    #[test]
    fn kings_and_pawns_are_where_they_may_be() {
        let (white, black) = (Color::White.into(), Color::Black.into());
        for (fen, expected) in [
            (
                "8/8/8/8/8/8/8/6K1 w - - 0 1",
                PositionError::NoKing { side: black },
            ),
            (
                "6k1/8/8/8/8/8/8/8 w - - 0 1",
                PositionError::NoKing { side: white },
            ),
            (
                "6kk/8/8/8/8/8/8/6K1 w - - 0 1",
                PositionError::ManyKings { side: black },
            ),
            (
                "6k1/8/8/8/8/8/8/P5K1 w - - 0 1",
                PositionError::PawnOnLastRank {
                    squares: List {
                        list: vec![At(Square::A1)],
                    },
                },
            ),
        ] {
            assert_eq!(fault(fen), expected, "{fen}");
        }
    }

    #[test]
    fn what_is_quoted_is_short() {
        let long = format!("{}/8 w - -", "x".repeat(5_000));
        for fen in [
            long,
            "8/".repeat(5_000),
            format!("8/8/8/8/8/8/8/{} w - -", "8".repeat(500)),
        ] {
            let kept = fault(&fen).to_string();
            assert!(kept.len() < 300, "{kept}");
        }
    }
}
