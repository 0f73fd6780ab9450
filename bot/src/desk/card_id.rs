//! Which card is meant.

use std::{fmt, str::FromStr};

use sealed_move_store::{CardOf, TopicId};
use serde::{Serialize, Serializer};

use crate::chess::name::names;

/// What stands before a topic's id.
const TOPIC: &str = "topic-";

/// Which card is meant: that of a mating pattern, written as its name, or that of a topic of the group, written
/// as `topic-` and its id. A motif's would be a further variant.
///
/// ```
/// use sealed_move::desk::CardId;
///
/// assert_eq!("boden".parse(), Ok(CardId::Pattern("boden")));
/// assert_eq!("topic-7".parse::<CardId>().map(|card| card.to_string()).as_deref(), Ok("topic-7"));
/// assert!("no such thing".parse::<CardId>().is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum CardId {
    /// Of a mating pattern.
    Pattern(&'static str),
    /// Of a topic of the group.
    Topic(TopicId),
}

/// A text that names no card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("no card is called that")]
pub struct NoCardId;

impl CardId {
    pub(super) fn kept(self) -> CardOf {
        match self {
            Self::Pattern(name) => CardOf::Pattern(name.to_owned()),
            Self::Topic(id) => CardOf::Topic(id),
        }
    }
}

impl fmt::Display for CardId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Pattern(name) => f.write_str(name),
            Self::Topic(id) => write!(f, "{TOPIC}{id}"),
        }
    }
}

impl FromStr for CardId {
    type Err = NoCardId;

    fn from_str(text: &str) -> Result<Self, NoCardId> {
        if let Some(id) = text.strip_prefix(TOPIC) {
            return id.parse().map(Self::Topic).map_err(|_| NoCardId);
        }
        let pattern = names().find(|name| *name == text);
        pattern.map(Self::Pattern).ok_or(NoCardId)
    }
}

impl Serialize for CardId {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
