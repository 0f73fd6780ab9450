//! Reading a FEN into a position that the rules can work with, and saying what is wrong when it cannot.

use std::fmt;

use shakmaty::{CastlingMode, Chess, FromSetup, PositionErrorKinds, fen::Fen};

use super::fen_fault::{self, FenFault};

/// A position read from a FEN, with what is odd about it.
#[derive(Clone, Debug)]
pub struct ReadPosition {
    /// The position.
    pub position: Chess,
    /// Oddities that do not stop the rules from applying.
    pub warnings: Vec<Warning>,
}

/// Something that cannot arise in play, or is stated wrongly, but leaves the rules applicable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Warning {
    /// Castling rights without king or rook at home; the rights are dropped.
    CastlingRights,
    /// An en passant square that no double step can have left; it is dropped.
    EnPassant,
    /// More men than promotions allow.
    Material,
    /// Checks that no last move can have given.
    ImpossibleCheck,
}

impl fmt::Display for Warning {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::CastlingRights => "castling rights without king and rook at home were dropped",
            Self::EnPassant => {
                "the en passant square fits no double step of a pawn and was dropped"
            }
            Self::Material => {
                "more men than promotions can make; the position cannot arise in play"
            }
            Self::ImpossibleCheck => {
                "no last move can have given this check; the position cannot arise in play"
            }
        })
    }
}

/// Why a FEN is not a position one can play on.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PositionError {
    /// The text is not a FEN.
    #[error("{0}")]
    Syntax(FenFault),
    /// The board is empty.
    #[error("the board is empty; put the men in the first field of the FEN")]
    Empty,
    /// A side has no king, or more than one.
    #[error("{0}; each side needs exactly one king")]
    Kings(&'static str),
    /// Pawns on the first or last rank.
    #[error("a pawn stands on the first or last rank ({0}); move it or promote it")]
    PawnOnBackRank(String),
    /// The side that is not to move is in check.
    #[error("the side not to move is in check{0}; check who is to move")]
    OppositeCheck(&'static str),
    /// Castling in the position is not that of standard chess.
    #[error("{0}")]
    Other(String),
}

/// Reads a FEN of four to six fields (as in EPD, clocks may be missing).
///
/// # Errors
/// Says what is wrong and how to mend it. Positions that cannot arise in play but to which the rules
/// still apply are read, with a [`Warning`].
pub fn parse_fen(text: &str) -> Result<ReadPosition, PositionError> {
    let text = text.trim();
    let fen: Fen = text
        .parse()
        .map_err(|_: shakmaty::fen::ParseFenError| PositionError::Syntax(fen_fault::find(text)))?;
    let setup = fen.into_setup();
    let mut warnings = Vec::new();
    let error = match Chess::from_setup(setup.clone(), CastlingMode::Standard) {
        Ok(position) => return Ok(ReadPosition { position, warnings }),
        Err(error) => error,
    };
    let kinds = error.kinds();
    for (kind, warning) in [
        (
            PositionErrorKinds::INVALID_CASTLING_RIGHTS,
            Warning::CastlingRights,
        ),
        (PositionErrorKinds::INVALID_EP_SQUARE, Warning::EnPassant),
        (PositionErrorKinds::TOO_MUCH_MATERIAL, Warning::Material),
        (
            PositionErrorKinds::IMPOSSIBLE_CHECK,
            Warning::ImpossibleCheck,
        ),
    ] {
        if kinds.contains(kind) {
            warnings.push(warning);
        }
    }
    // Each step passes over one oddity; what is left is beyond the rules.
    let mut attempt = error.ignore_invalid_castling_rights();
    for ignore in [
        shakmaty::PositionError::ignore_invalid_ep_square,
        shakmaty::PositionError::ignore_too_much_material,
        shakmaty::PositionError::ignore_impossible_check,
    ] {
        attempt = match attempt {
            Ok(position) => Ok(position),
            Err(error) => ignore(error),
        };
    }
    let position = attempt;
    match position {
        Ok(position) => Ok(ReadPosition { position, warnings }),
        Err(error) => Err(refuse(&setup, error.kinds())),
    }
}

fn refuse(setup: &shakmaty::Setup, kinds: PositionErrorKinds) -> PositionError {
    let board = &setup.board;
    if kinds.contains(PositionErrorKinds::EMPTY_BOARD) {
        return PositionError::Empty;
    }
    let kings = |color| (board.kings() & board.by_color(color)).count();
    let (white, black) = (kings(shakmaty::Color::White), kings(shakmaty::Color::Black));
    let complaint = match (white, black) {
        (0, 0) => Some("there are no kings"),
        (0, _) => Some("there is no white king"),
        (_, 0) => Some("there is no black king"),
        (2.., _) => Some("there is more than one white king"),
        (_, 2..) => Some("there is more than one black king"),
        _ => None,
    };
    if let Some(complaint) = complaint {
        return PositionError::Kings(complaint);
    }
    if kinds.contains(PositionErrorKinds::PAWNS_ON_BACKRANK) {
        let squares: Vec<String> = (board.pawns() & shakmaty::Bitboard::BACKRANKS)
            .into_iter()
            .map(|s| s.to_string())
            .collect();
        return PositionError::PawnOnBackRank(squares.join(", "));
    }
    if kinds.contains(PositionErrorKinds::OPPOSITE_CHECK) {
        let both = board
            .king_of(setup.turn)
            .is_some_and(|king| board.attacks_to(king, !setup.turn, board.occupied()).any());
        return PositionError::OppositeCheck(if both {
            ", and so is the side to move"
        } else {
            ""
        });
    }
    PositionError::Other(format!(
        "the rules cannot be applied to this position ({kinds:?})"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn error(fen: &str) -> PositionError {
        parse_fen(fen).expect_err("should be refused")
    }

    #[test]
    fn says_what_is_wrong() {
        assert!(matches!(error("nonsense"), PositionError::Syntax(_)));
        assert!(matches!(
            error("8/8/8/8/8/8/8/8 w - -"),
            PositionError::Empty
        ));
        assert_eq!(
            error("8/8/8/8/8/8/8/K7 w - -"),
            PositionError::Kings("there is no black king")
        );
        assert_eq!(
            error("P3k3/8/8/8/8/8/8/K7 w - -"),
            PositionError::PawnOnBackRank("a8".into())
        );
        assert_eq!(
            error("4k3/8/8/8/8/8/8/K3R3 w - -"),
            PositionError::OppositeCheck("")
        );
        assert_eq!(
            error("4k3/8/8/8/8/8/8/r2KR3 w - -"),
            PositionError::OppositeCheck(", and so is the side to move")
        );
    }

    #[test]
    fn warns_of_what_cannot_arise_but_reads_it() {
        let read = parse_fen("4k3/8/8/8/8/8/8/4K3 w KQ e6").expect("readable");
        assert_eq!(read.warnings, [Warning::CastlingRights, Warning::EnPassant]);
        let read = parse_fen("QQQQk3/QQQQQQ2/8/8/8/8/8/4K3 b - -").expect("readable");
        assert!(
            read.warnings.contains(&Warning::Material),
            "{:?}",
            read.warnings
        );
    }
}
