//! What is wrong in a file, as facts: statements that stand behind the file and the line.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

use crate::{
    PositionError, StipulationError,
    fact::{Line, Theirs, terse},
};

/// What is wrong with an entry of a file and what to do, as a fact; written out by itself it shows name and
/// values.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Fault {
    // The file as a whole.
    /// It is too large to be read at once.
    FileOverLimit {
        /// Megabytes that it has.
        size: u32,
        /// The most it may have.
        most: u32,
    },
    /// UTF-16 without its mark.
    FileLacksMark,
    /// Zero bytes only.
    FileIsNoText,
    /// It begins as UTF-16 and goes on as something else.
    FileChangesEncoding,
    /// Nothing is in it.
    FileHoldsNothing,
    /// It begins as no kind of file does.
    FileBeginsStrangely {
        /// What it begins with.
        written: Theirs,
    },
    /// Positions where games are wanted.
    FileHoldsPositions,
    /// Games where positions are wanted.
    FileHoldsGames {
        /// How many.
        games: u32,
    },

    // A line.
    /// It is longer than any position.
    LineTooLong {
        /// The most characters it may have.
        most: u32,
    },
    /// Part of it is lost.
    LineLost {
        /// How.
        what: Oddity,
    },

    // A game's tags.
    /// It cannot be read.
    TagUnread {
        /// How it is written.
        written: Theirs,
    },
    /// A tag of words in a game that has moves.
    TagBesideMoves {
        /// Its name.
        tag: Theirs,
    },
    /// A tag of words without words.
    TagEmpty {
        /// Its name.
        tag: Theirs,
    },
    /// A question without words.
    QuestionLacksWords,
    /// A whole game where a position is wanted.
    GameFromTheStart,
    /// A task that is none.
    TagNoTask {
        /// The name of the tag.
        tag: Theirs,
        /// What is wrong with its value.
        why: StipulationError,
    },
    /// A position that is none.
    TagNoPosition {
        /// What is wrong with it.
        why: PositionError,
    },

    // A lesson, a game a step.
    /// It has more steps than a lesson may have.
    LessonTooLong {
        /// The most steps.
        most: u32,
    },
    /// The mark of a stop gives a task that is none.
    StopNoTask {
        /// What is wrong with it.
        why: StipulationError,
    },
    /// More moves and words before a stop, or in an example, than are shown in one piece.
    LeadTooLong {
        /// The most characters.
        most: u32,
    },
    /// Words that are too long to go out at once.
    PartTooLong {
        /// The most characters.
        most: u32,
    },
    /// A step with neither words nor moves.
    StepEmpty,
    /// A step of a draft is to ask for a move, and has neither a task nor a move.
    StepAsksNothing,

    // A game's moves.
    /// They cannot be read as a game.
    GameUnread,
    /// A null move in the main line.
    NullMove,
    /// A move that is not legal.
    MoveNotLegal {
        /// The move, with the number that its place gives it.
        line: Line,
    },
    /// A move that can be several.
    MoveNotClear {
        /// The move, with the number that its place gives it.
        line: Line,
    },
    /// Too many moves.
    GameTooLong {
        /// The most a game may have.
        most: u32,
    },
    /// A line of moves that is too long.
    MovesTooLong {
        /// The most half-moves a line may have.
        most: u32,
    },
    /// A variation that replaces no move.
    VariationTooSoon,
    /// A closing bracket too many.
    BracketNotOpened,
    /// A closing bracket too few.
    BracketNotClosed,
    /// A comment without an end.
    CommentNotClosed,
    /// A closing brace too many.
    BraceNotOpened,
    /// A glyph that there is not.
    GlyphUnknown {
        /// How it is written.
        written: Theirs,
    },
    /// Neither a move nor a comment.
    MoveUnread {
        /// How it is written.
        written: Theirs,
    },

    // An EPD record.
    /// What stands where an operation should begin.
    OperationWanted {
        /// How it is written.
        written: Theirs,
    },
    /// A quotation mark too few.
    QuotationNotClosed {
        /// The operation.
        code: Theirs,
    },
    /// An operation that wants moves and has none.
    OperationLacksMove {
        /// The operation.
        code: Theirs,
    },
    /// `dm` without the length of a mate.
    LengthWanted {
        /// The longest mate that can be asked for.
        most: u32,
    },
    /// `task` with none.
    OperationNoTask {
        /// What is wrong with it.
        why: StipulationError,
    },
    /// `question` without words.
    QuestionWantsWords,
    /// An operand that is no move.
    OperandUnread {
        /// The operation.
        code: Theirs,
        /// How the move is written.
        written: Theirs,
    },
    /// A move that is not legal.
    OperandNotLegal {
        /// The operation.
        code: Theirs,
        /// How the move is written.
        written: Theirs,
    },
    /// A move that can be several.
    OperandNotClear {
        /// The operation.
        code: Theirs,
        /// How the move is written.
        written: Theirs,
    },
    /// The position.
    NoPositionHere {
        /// What is wrong with it.
        why: PositionError,
    },
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        terse(self, f)
    }
}

/// How a line is not in its file's encoding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Oddity {
    /// It is not UTF-8 and was read as Windows-1252.
    ReadAsWindows,
    /// A zero byte, which is no text.
    NulByte {
        /// Bytes before it in the line.
        before: u32,
    },
    /// A byte that is text in no encoding tried.
    StrangeByte {
        /// The byte.
        byte: Byte,
        /// Bytes before it in the line.
        before: u32,
    },
    /// A unit of UTF-16 that is no character by itself, or half of one at the end.
    BrokenCharacter,
}

impl Oddity {
    /// Whether part of the line is lost.
    pub(super) fn loses(self) -> bool {
        !matches!(self, Self::ReadAsWindows)
    }
}

/// A byte, as hexadecimal digits show it: "0x81".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Byte(pub u8);

impl Serialize for Byte {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&format_args!("0x{:02X}", self.0))
    }
}

impl<'de> Deserialize<'de> for Byte {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let digits = text.strip_prefix("0x").unwrap_or(&text);
        let byte = u8::from_str_radix(digits, 16).map_err(de::Error::custom)?;
        Ok(Self(byte))
    }
}
