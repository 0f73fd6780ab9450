//! Why a text is no position, as facts: statements that stand behind a colon.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::fact::{At, List, Side, Theirs, terse};

/// Why a FEN is not a position one can play on, as a fact; written out by itself it shows name and values.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum PositionError {
    // The text is not a FEN.
    /// It is not the shape of a FEN at all; what stands there instead.
    NotAFen {
        /// The text, or its beginning.
        written: Theirs,
    },
    /// The board has too few or too many ranks.
    FenRanks {
        /// How many it has.
        ranks: u32,
    },
    /// A rank has too few or too many squares.
    FenSquares {
        /// The rank, 8 to 1.
        rank: u32,
        /// How it is written.
        written: Theirs,
        /// Squares it makes.
        squares: u32,
    },
    /// A character in a rank that is neither a piece nor a pawn nor a number of empty squares.
    FenStrange {
        /// The rank, 8 to 1.
        rank: u32,
        /// The character.
        found: Theirs,
        /// The square it stands for.
        square: At,
    },
    /// The same, where the rank is full already.
    FenStrangeAfter {
        /// The rank, 8 to 1.
        rank: u32,
        /// The character.
        found: Theirs,
        /// How many squares stand before it.
        squares: u32,
    },
    /// Who is to move.
    FenTurn {
        /// What the field holds.
        written: Theirs,
    },
    /// Castling.
    FenCastling {
        /// What the field holds.
        written: Theirs,
    },
    /// The en passant square.
    FenEnPassant {
        /// What the field holds.
        written: Theirs,
    },
    /// Half-moves since a capture or a pawn's move.
    FenHalfMoves {
        /// What the field holds.
        written: Theirs,
    },
    /// The number of the move.
    FenMoveNumber {
        /// What the field holds.
        written: Theirs,
    },
    /// Something stands behind the sixth field.
    FenSurplus {
        /// What stands there.
        written: Theirs,
    },

    // The rules cannot be applied.
    /// The board is empty.
    BoardEmpty,
    /// There are no kings.
    NoKings,
    /// A side has no king.
    NoKing {
        /// The side.
        side: Side,
    },
    /// A side has more than one king.
    ManyKings {
        /// The side.
        side: Side,
    },
    /// Pawns on the first or last rank.
    PawnOnLastRank {
        /// Where.
        squares: List<At>,
    },
    /// The side that is not to move is in check.
    OtherSideInCheck,
    /// Both sides are in check.
    BothInCheck,
    /// Something else, such as castling that is not that of standard chess.
    RulesDoNotApply,
}

impl fmt::Display for PositionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        terse(self, f)
    }
}

impl std::error::Error for PositionError {}
