//! The closed sets of values, mirroring the `CHECK`s of `schema.sql`, and lists kept as JSON.

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use serde::{Deserialize, Serialize};

/// A text that is none of the values of its set.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{text:?} is no {set}")]
pub struct UnknownValue {
    /// The set.
    pub set: &'static str,
    /// The text.
    pub text: String,
}

macro_rules! values {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $text:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum $name { $($(#[$vdoc])* #[serde(rename = $text)] $variant),+ }

        impl $name {
            /// Every value of the set.
            pub const ALL: &[Self] = &[$(Self::$variant),+];

            /// The text kept in the store.
            pub const fn as_str(self) -> &'static str {
                match self { $(Self::$variant => $text),+ }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.as_str())
            }
        }

        impl std::str::FromStr for $name {
            type Err = UnknownValue;
            fn from_str(text: &str) -> Result<Self, UnknownValue> {
                match text {
                    $($text => Ok(Self::$variant),)+
                    _ => Err(UnknownValue { set: stringify!($name), text: text.to_owned() }),
                }
            }
        }

        impl ToSql for $name {
            fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
                Ok(self.as_str().into())
            }
        }

        impl FromSql for $name {
            fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
                value.as_str()?.parse().map_err(FromSqlError::other)
            }
        }
    };
}

values! {
    /// Which chat a group lives in.
    Chat {
        /// The embedded web room.
        Room = "room",
        /// Discord.
        Discord = "discord",
    }
}
values! {
    /// How replies are kept until the reveal.
    Mode {
        /// Verdicts are private.
        Sealed = "sealed",
        /// Verdicts are public behind spoiler marks.
        Open = "open",
    }
}
values! {
    /// What the check said of a position.
    Soundness {
        /// The stipulation holds, one key.
        Sound = "sound",
        /// It holds, more than one key.
        SeveralKeys = "several-keys",
        /// Mate is possible in fewer moves.
        Short = "short",
        /// It does not hold.
        Unsound = "unsound",
        /// No legal position.
        Illegal = "illegal",
        /// Out of time.
        Undecided = "undecided",
    }
}
values! {
    /// Where a post stands.
    PostState {
        /// Written down, perhaps not sent.
        Intended = "intended",
        /// Before the group.
        Open = "open",
        /// No more replies; the reveal is on its way.
        Closing = "closing",
        /// Revealed.
        Closed = "closed",
    }
}
values! {
    /// What the judge says of a reply.
    Verdict {
        /// The stipulation is met.
        Solved = "solved",
        /// Right so far.
        OnTheWay = "on-the-way",
        /// A wrong move.
        Wrong = "wrong",
        /// A move the rules do not allow.
        Illegal = "illegal",
        /// Could be several moves.
        Unclear = "unclear",
        /// No move could be read.
        Unreadable = "unreadable",
    }
}
values! {
    /// Where a member's work on a post stands.
    AttemptState {
        /// Still at it.
        Playing = "playing",
        /// Done.
        Solved = "solved",
        /// Stopped.
        GivenUp = "given-up",
    }
}
values! {
    /// How a reply came.
    Via {
        /// Meant as an answer: button, command.
        Answer = "answer",
        /// A message among others.
        Talk = "talk",
        /// A private message to the bot.
        Direct = "direct",
        /// Entered by the coach for a member.
        Hand = "hand",
    }
}

/// A list of texts kept as a JSON array.
pub(crate) struct List(pub Vec<String>);

impl FromSql for List {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        serde_json::from_str(value.as_str()?)
            .map(Self)
            .map_err(FromSqlError::other)
    }
}

/// The JSON array of a list of texts.
pub(crate) fn list(texts: &[String]) -> String {
    serde_json::Value::from(texts.to_vec()).to_string()
}
