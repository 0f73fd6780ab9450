//! What stands in pictures in words, and the words that replace a picture, as facts. Which words these are in a
//! language is given from outside ([`Tongue`]); the messages stand in `pictures.ftl` of the package `words`, under
//! the variant's name in kebab case.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

pub(crate) use sealed_move_chess::fact::number;
pub use sealed_move_chess::fact::{And, Decimal, Line, List, Pattern, Theirs};
use sealed_move_chess::fact::{At, Piece, Side};
use serde::Serialize;

/// Squares: two of them together, of more or fewer a row.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Squares {
    Two(And<At>),
    Row(List<At>),
}

/// The short name of a month, 1 to 12.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Month {
    pub month: u32,
}

/// To which sides a king may castle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wings {
    Both,
    Short,
    Long,
}

/// A sentence, a part of one, or a label.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Text {
    // A position in words.
    AltSide {
        side: Side,
        pieces: List<Pieces>,
    },
    AltCastles {
        side: Side,
        wings: Wings,
    },
    AltEnPassant {
        on: At,
    },
    AltToMove {
        side: Side,
    },
    AltLastMove {
        from: At,
        to: At,
    },

    // What is pointed out on it.
    AltRefutation {
        from: At,
        to: At,
    },
    AltSteps {
        steps: List<Step>,
    },
    AltOpen {
        squares: Squares,
    },
    AltGuarded {
        flights: List<Flight>,
    },
    AltBlocked {
        squares: Squares,
    },
    AltGuards {
        piece: Piece,
        from: At,
        to: At,
    },
    AltMarked {
        squares: Squares,
    },

    // The legend under a board.
    LegendLastMove,
    LegendRefutation,
    LegendSteps,
    LegendOpen,
    LegendGuarded,
    LegendBlocked,
    LegendGuard,
    LegendSquare,

    // A reveal, and a line move by move.
    PictureHeading {
        number: i64,
    },
    PictureHeadingPattern {
        number: i64,
        patterns: List<Pattern>,
    },
    PictureExample {
        pattern: Pattern,
    },
    PictureExampleTopic {
        topic: Theirs,
    },
    RevealMore,
    AltHeading {
        heading: Box<Text>,
    },
    AltFinal,
    AltSolution {
        line: Line,
    },
    StripToMove {
        side: Side,
    },
    AltStrip,
    AltMoves {
        line: Line,
    },

    // Charts: titles, keys, and figures at the rows.
    ChartParticipation,
    ChartSolved,
    ChartMastery,
    ChartWrong {
        number: i64,
    },
    ChartNothing,
    ChartKeySolved,
    ChartKeyTookPart,
    ChartKeyMean,
    ChartKeyInterval,
    ChartKeyFirst,
    ChartKeyLater,
    ChartKeyUnsolved,
    ChartOf {
        part: u32,
        whole: u32,
    },
    ChartShare {
        percent: u32,
        whole: u32,
    },
    ChartPercent {
        percent: u32,
    },
    ChartMembers {
        number: u32,
    },
    /// Days from Monday to Sunday; the first month where it is another than the last one's.
    ChartWeek {
        from: u32,
        first: Option<Month>,
        to: u32,
        last: Month,
    },

    // Charts in words, a row each.
    AltChartNothing {
        title: String,
    },
    AltChartMore {
        more: u32,
    },
    AltWeek {
        week: String,
        mean: Decimal,
    },
    AltDay {
        day: u32,
        tried: u32,
        solved: u32,
    },
    AltRate {
        label: Theirs,
        solved: u32,
        tried: u32,
        percent: u32,
        low: u32,
        high: u32,
    },
    AltNobodyTried {
        label: Theirs,
    },
    AltMastery {
        topic: Theirs,
        solved: u32,
        tried: u32,
        percent: u32,
        first: u32,
    },
    AltWrong {
        line: Line,
        number: u32,
    },

    // Sheets to print.
    SheetName,
    SheetSolutions,
    SheetQuestion,
    SheetToBeRead,
    AltSheetItem {
        number: u32,
        task: String,
    },
}

/// Pieces of one kind and their squares.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Pieces {
    AltPieces {
        piece: Piece,
        number: u32,
        squares: Squares,
    },
}

/// A numbered arrow.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Step {
    AltStep { number: u32, from: At, to: At },
}

/// A flight, with the pieces that take it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Flight {
    AltFlight { on: At },
    AltFlightBy { on: At, guards: And<Guard> },
}

/// A piece on its square.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Guard {
    AltGuard { piece: Piece, on: At },
}

/// How a language says a text: the language's BCP 47 tag, and the text.
pub type Say = fn(&str, &Text) -> String;

/// A language for what pictures say.
#[derive(Clone, Debug)]
pub struct Tongue {
    tag: String,
    say: Say,
}

impl Tongue {
    /// The language with this BCP 47 tag, as `say` speaks it.
    pub fn new(tag: &str, say: Say) -> Self {
        Self {
            tag: tag.to_owned(),
            say,
        }
    }

    /// A text in this language.
    pub fn say(&self, text: &Text) -> String {
        (self.say)(&self.tag, text)
    }
}

/// The longest alt text that every chat takes, in characters.
const LONGEST: usize = 1_024;

/// The words that truly replace a picture.
#[derive(Clone, Debug, PartialEq)]
pub enum Alt {
    /// Facts, to be said in whichever language.
    Facts(Vec<Text>),
    /// Words already.
    Said(String),
}

impl Alt {
    /// In words, at most 1,024 characters; longer ones are cut at a word's end.
    pub fn in_words(&self, tongue: &Tongue) -> String {
        match self {
            Self::Facts(facts) => {
                let said: Vec<String> = facts.iter().map(|fact| tongue.say(fact)).collect();
                cut(said.join(" "))
            }
            Self::Said(said) => said.clone(),
        }
    }
}

/// Shortens `text` to what a chat takes, at a word's end.
pub(crate) fn cut(text: String) -> String {
    if fits(&text) {
        return text;
    }
    let head: String = text.chars().take(LONGEST - 1).collect();
    let end = head.rfind(' ').unwrap_or(head.len());
    format!("{}…", &head[..end])
}

/// Whether a text is short enough for every chat.
pub(crate) fn fits(text: &str) -> bool {
    text.chars().count() <= LONGEST
}
