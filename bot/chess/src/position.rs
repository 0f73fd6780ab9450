//! Reading a FEN into a position that the rules can work with, and saying what is wrong when it cannot.

use std::fmt;

use serde::{Deserialize, Serialize};
use shakmaty::{CastlingMode, Chess, Color, FromSetup, PositionErrorKinds, fen::Fen};

use super::{
    fact::{At, List, terse},
    fen_fault,
    position_error::PositionError,
};

/// A position read from a FEN, with what is odd about it.
#[derive(Clone, Debug)]
pub struct ReadPosition {
    /// The position.
    pub position: Chess,
    /// Oddities that do not stop the rules from applying.
    pub warnings: Vec<Warning>,
}

/// Something that cannot arise in play, or is stated wrongly, but leaves the rules applicable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Warning {
    /// Castling rights without king or rook at home; the rights are dropped.
    CastlingRightsDropped,
    /// An en passant square that no double step can have left; it is dropped.
    EnPassantDropped,
    /// More pieces and pawns than promotions allow.
    TooManyPieces,
    /// Checks that no last move can have given.
    ImpossibleCheck,
}

impl fmt::Display for Warning {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        terse(self, f)
    }
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
        .map_err(|_: shakmaty::fen::ParseFenError| fen_fault::find(text))?;
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
            Warning::CastlingRightsDropped,
        ),
        (
            PositionErrorKinds::INVALID_EP_SQUARE,
            Warning::EnPassantDropped,
        ),
        (
            PositionErrorKinds::TOO_MUCH_MATERIAL,
            Warning::TooManyPieces,
        ),
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
        return PositionError::BoardEmpty;
    }
    let kings = |color| (board.kings() & board.by_color(color)).count();
    let (white, black) = (Color::White, Color::Black);
    match (kings(white), kings(black)) {
        (0, 0) => return PositionError::NoKings,
        (0, _) => return PositionError::NoKing { side: white.into() },
        (_, 0) => return PositionError::NoKing { side: black.into() },
        (2.., _) => return PositionError::ManyKings { side: white.into() },
        (_, 2..) => return PositionError::ManyKings { side: black.into() },
        _ => {}
    }
    if kinds.contains(PositionErrorKinds::PAWNS_ON_BACKRANK) {
        let squares = (board.pawns() & shakmaty::Bitboard::BACKRANKS).into_iter();
        return PositionError::PawnOnLastRank {
            squares: List {
                list: squares.map(At).collect(),
            },
        };
    }
    if kinds.contains(PositionErrorKinds::OPPOSITE_CHECK) {
        let both = board
            .king_of(setup.turn)
            .is_some_and(|king| board.attacks_to(king, !setup.turn, board.occupied()).any());
        return match both {
            true => PositionError::BothInCheck,
            false => PositionError::OtherSideInCheck,
        };
    }
    PositionError::RulesDoNotApply
}

#[cfg(test)]
mod tests {
    use super::*;

    fn error(fen: &str) -> PositionError {
        parse_fen(fen).expect_err("should be refused")
    }

    #[test]
    fn says_what_is_wrong() {
        let written = "nonsense".into();
        assert_eq!(error("nonsense"), PositionError::NotAFen { written });
        assert_eq!(error("8/8/8/8/8/8/8/8 w - -"), PositionError::BoardEmpty);
        let side = Color::Black.into();
        assert_eq!(
            error("8/8/8/8/8/8/8/K7 w - -"),
            PositionError::NoKing { side }
        );
        let list = vec![At(shakmaty::Square::A8)];
        assert_eq!(
            error("P3k3/8/8/8/8/8/8/K7 w - -"),
            PositionError::PawnOnLastRank {
                squares: List { list }
            }
        );
        assert_eq!(
            error("4k3/8/8/8/8/8/8/K3R3 w - -"),
            PositionError::OtherSideInCheck
        );
        assert_eq!(
            error("4k3/8/8/8/8/8/8/r2KR3 w - -"),
            PositionError::BothInCheck
        );
    }

    #[test]
    fn an_error_comes_back_as_it_was_kept() {
        for fen in ["8/8/8/8/8/8/8/K7 w - -", "P3k3/8/8/8/8/8/8/K7 w - -", "8/8"] {
            let error = error(fen);
            let kept = serde_json::to_value(&error).expect("plain data");
            assert_eq!(
                serde_json::from_value::<PositionError>(kept).ok(),
                Some(error)
            );
        }
    }

    #[test]
    fn warns_of_what_cannot_arise_but_reads_it() {
        let read = parse_fen("4k3/8/8/8/8/8/8/4K3 w KQ e6").expect("readable");
        assert_eq!(
            read.warnings,
            [Warning::CastlingRightsDropped, Warning::EnPassantDropped]
        );
        let read = parse_fen("QQQQk3/QQQQQQ2/8/8/8/8/8/4K3 b - -").expect("readable");
        assert!(
            read.warnings.contains(&Warning::TooManyPieces),
            "{:?}",
            read.warnings
        );
    }
}
