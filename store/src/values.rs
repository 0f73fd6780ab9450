//! The closed sets of values, mirroring the `CHECK`s of the schema, and lists kept as JSON.

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
    /// Who says what a member of a group is called.
    Names {
        /// The chat, which has names for people.
        ByChat = "by-chat",
        /// The members themselves, and their coaches.
        ByMember = "by-member",
    }
}
values! {
    /// How a verdict reaches its member.
    Delivery {
        /// The chat sends it, once.
        Sent = "sent",
        /// The chat shows it wherever they look.
        Shown = "shown",
    }
}
values! {
    /// What a link of a chat is for.
    Link {
        /// It lets members in.
        Member = "member",
        /// It lets coaches in.
        Coach = "coach",
        /// No link: it ends the names of the cookies, and outlasts every link.
        Cookies = "cookies",
    }
}
values! {
    /// Why a message waits for its writer's word.
    Doubt {
        /// It fits another open post than the one it was sent to.
        Elsewhere = "elsewhere",
        /// It answers one of several open posts.
        Several = "several",
        /// It may tell others a move.
        MayTell = "may-tell",
    }
}
values! {
    /// What the writer of an answer says to its being shown to the group.
    Leave {
        /// With their name.
        Named = "named",
        /// Without it.
        Nameless = "nameless",
        /// Not at all, or not any more.
        Refused = "refused",
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
    /// Whether members whose lines are played out meet the same defence.
    Defences {
        /// All meet the same one.
        Same = "same",
        /// Of defences that resist equally long, members meet different ones.
        Differ = "differ",
    }
}
values! {
    /// The scale points are counted by. Five points are the most for a position.
    Scale {
        /// Each wrong first move and each hint takes a little off, and whoever solves without being shown
        /// the move keeps at least a point.
        Club = "club",
        /// The solving rules of the World Federation for Chess Composition: nothing after a wrong first
        /// move.
        Tournament = "tournament",
    }
}

/// Verdicts are private where a group has not said otherwise.
impl Default for Mode {
    fn default() -> Self {
        Self::Sealed
    }
}

/// All members meet the same defence where a group has not said otherwise.
impl Default for Defences {
    fn default() -> Self {
        Self::Same
    }
}

/// A group's own prices hold where it has not said otherwise.
impl Default for Scale {
    fn default() -> Self {
        Self::Club
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
    /// What a coach did.
    Deed {
        /// Took a message out of everyone's sight.
        Hide = "hide",
        /// Put one back.
        PutBack = "put-back",
        /// Kept a member from talking.
        Mute = "mute",
        /// Let them talk again.
        Unmute = "unmute",
        /// Shut a member out.
        Remove = "remove",
        /// Let them back.
        LetBack = "let-back",
        /// Gave a member another name.
        Rename = "rename",
        /// Made two members one.
        Merge = "merge",
        /// Took away what is kept of a member.
        Export = "export",
        /// Erased a member.
        Erase = "erase",
        /// Gave a reply a verdict.
        Judge = "judge",
        /// Answered a reply in private.
        Answer = "answer",
        /// Settled a reply that needed no answer.
        NoAnswer = "no-answer",
        /// Made a new link for members.
        MemberLink = "member-link",
        /// Made a new coach's link.
        CoachLink = "coach-link",
        /// Came in by the coach's link.
        CoachCame = "coach-came",
        /// Made somebody a coach.
        AddCoach = "add-coach",
        /// Let somebody be a coach no longer.
        RemoveCoach = "remove-coach",
        /// Changed the settings.
        Settings = "settings",
        /// Posted at once.
        PostNow = "post-now",
        /// Closed a post early.
        CloseNow = "close-now",
        /// Stopped the posts.
        Pause = "pause",
        /// Let them go out again.
        Resume = "resume",
        /// Wrote a topic's card.
        WriteCard = "write-card",
        /// Took a card of the coaches' back.
        TakeBackCard = "take-back-card",
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
        /// An answer to a question, to which a coach gave points.
        Marked = "marked",
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

#[cfg(test)]
mod tests {
    use super::*;

    fn round_trip<T>(all: &[T])
    where
        T: Copy
            + PartialEq
            + std::fmt::Debug
            + std::fmt::Display
            + std::str::FromStr<Err = UnknownValue>,
        T: Serialize,
    {
        for value in all {
            let text = value.to_string();
            assert_eq!(text.parse::<T>().as_ref(), Ok(value));
            assert_eq!(serde_json::json!(value), serde_json::json!(text));
        }
        assert!("nothing of the kind".parse::<T>().is_err());
    }

    #[test]
    fn every_value_is_read_back_from_its_text() {
        round_trip(Names::ALL);
        round_trip(Delivery::ALL);
        round_trip(Link::ALL);
        round_trip(Doubt::ALL);
        round_trip(Mode::ALL);
        round_trip(Defences::ALL);
        round_trip(Scale::ALL);
        round_trip(Soundness::ALL);
        round_trip(PostState::ALL);
        round_trip(Verdict::ALL);
        round_trip(AttemptState::ALL);
        round_trip(Via::ALL);
    }

    /// The schema and the types must not drift apart: each value passes its column's CHECK, and the CHECK
    /// lists no other.
    #[test]
    fn the_schema_knows_the_same_values() {
        let schema = concat!(
            // Lists that were made anew since come first.
            include_str!("step_10.sql"),
            include_str!("schema.sql"),
            include_str!("step_2.sql"),
            include_str!("step_3.sql"),
            include_str!("step_6.sql"),
            include_str!("step_7.sql")
        );
        let listed = |column: &str| -> Vec<String> {
            let check = format!("CHECK ({column} IN (");
            let from = schema.split(&check).nth(1).unwrap();
            from.split("))")
                .next()
                .unwrap()
                .split(", ")
                .map(|text| text.trim_matches('\'').to_owned())
                .collect()
        };
        let texts = |all: &[&'static str]| all.iter().map(|t| (*t).to_owned()).collect::<Vec<_>>();
        macro_rules! same {
            ($column:literal, $set:ident) => {
                let all: Vec<&'static str> = $set::ALL.iter().map(|v| v.as_str()).collect();
                assert_eq!(listed($column), texts(&all), $column);
            };
        }
        same!("names", Names);
        same!("delivery", Delivery);
        same!("link", Link);
        same!("why", Doubt);
        same!("mode", Mode);
        same!("defences", Defences);
        same!("scale", Scale);
        same!("soundness", Soundness);
        same!("verdict", Verdict);
        same!("via", Via);
        // Two columns are called `state`; the posts' comes first.
        assert_eq!(
            listed("state"),
            texts(&["intended", "open", "closing", "closed"])
        );
        assert_eq!(PostState::ALL.len(), 4);
        assert!(schema.contains("CHECK (state IN ('playing', 'solved', 'given-up'))"));
        assert_eq!(AttemptState::ALL.len(), 3);
    }
}
