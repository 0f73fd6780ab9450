//! The task set with a position: mate in N, win, or draw.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use super::fact::{Task, Theirs};

/// What the side to move is asked to achieve.
///
/// Written with the usual problemists' signs: `#3` for mate in three, `+` for a win, `=` for a draw.
///
/// ```
/// use sealed_move_chess::Stipulation;
///
/// let task: Stipulation = "#3".parse().unwrap();
/// assert_eq!(task, Stipulation::Mate(3));
/// assert_eq!(task.to_string(), "#3");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub enum Stipulation {
    /// Mate in at most this many moves of the side to move; 1 to [`Stipulation::LONGEST`].
    Mate(u8),
    /// The side to move wins.
    Win,
    /// The side to move draws.
    Draw,
}

/// Why a text is not a stipulation, as a fact.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename = "stipulation-error")]
pub struct StipulationError {
    /// The text, or its beginning.
    written: Theirs,
    /// The longest mate that can be asked for.
    most: u32,
}

// The command line shows it where it reads its own options, before it knows a language.
impl fmt::Display for StipulationError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { written, most } = self;
        write!(
            f,
            "\"{written}\" is not a task; write #1 to #{most} for a mate, + for a win or = for a draw"
        )
    }
}

impl std::error::Error for StipulationError {}

impl Stipulation {
    /// The longest mate that can be asked for.
    pub const LONGEST: u8 = 20;

    /// The number of moves to mate in, when the task is a mate.
    pub fn mate_in(self) -> Option<u8> {
        match self {
            Self::Mate(moves) => Some(moves),
            Self::Win | Self::Draw => None,
        }
    }
}

impl fmt::Display for Stipulation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Mate(moves) => write!(f, "#{moves}"),
            Self::Win => f.write_str("+"),
            Self::Draw => f.write_str("="),
        }
    }
}

impl FromStr for Stipulation {
    type Err = StipulationError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let text = text.trim();
        let refuse = || StipulationError {
            written: text.chars().take(40).collect::<String>().into(),
            most: Self::LONGEST.into(),
        };
        match text {
            "+" => Ok(Self::Win),
            "=" => Ok(Self::Draw),
            _ => text
                .strip_prefix('#')
                .and_then(|n| n.parse().ok())
                .filter(|n| (1..=Self::LONGEST).contains(n))
                .map(Self::Mate)
                .ok_or_else(refuse),
        }
    }
}

impl TryFrom<String> for Stipulation {
    type Error = StipulationError;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        text.parse()
    }
}

impl From<Stipulation> for Task {
    fn from(stipulation: Stipulation) -> Self {
        match stipulation {
            Stipulation::Mate(_) => Self::Mate,
            Stipulation::Win => Self::Win,
            Stipulation::Draw => Self::Draw,
        }
    }
}

impl From<Stipulation> for String {
    fn from(task: Stipulation) -> Self {
        task.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_round_trip() {
        for sign in ["#1", "#3", "#20", "+", "="] {
            assert_eq!(
                sign.parse::<Stipulation>().map(|s| s.to_string()),
                Ok(sign.to_owned())
            );
        }
    }

    #[test]
    fn refuses_what_is_no_task() {
        for text in ["", "#", "#0", "#21", "3", "#-1", "mate", "##2"] {
            assert!(text.parse::<Stipulation>().is_err(), "{text}");
        }
    }
}
