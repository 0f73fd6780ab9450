//! A conversation in another language than English: what people press and write there, and which of the
//! program's messages they read. Known from the messages themselves, by their names.

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::OnceLock,
};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use sealed_move_words::source;

/// The files of a language that Discord speaks from. Names and descriptions of commands are Discord's own to
/// show.
const SPOKEN: &[&str] = &[
    "cards.ftl",
    "check.ftl",
    "common.ftl",
    "discord-coach.ftl",
    "discord-fault.ftl",
    "discord-group.ftl",
    "discord-post.ftl",
    "discord-study.ftl",
    "discord-talk.ftl",
    "figures.ftl",
    "hints.ftl",
    "members.ftl",
    "notices.ftl",
    "read.ftl",
    "reasons.ftl",
    "refusals.ftl",
    "replies.ftl",
];

/// Letters that a message must have of its own to be told from others.
const OWN_LETTERS: usize = 6;

/// Bytes of a value within a message, at the most; it is of one line.
const LONGEST_VALUE: usize = 400;

/// A way in which a message can read: the texts before, between and behind its values.
type Way = Vec<String>;

/// The language of a conversation.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tongue {
    /// English, as it is everywhere else.
    #[default]
    English,
    /// German.
    German,
    /// Spanish.
    Spanish,
}

impl Tongue {
    /// All of them, in the order in which [`Tongue::messages`] keeps them.
    pub const ALL: [Self; 3] = [Self::English, Self::German, Self::Spanish];

    /// The language's tag.
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
            Self::Spanish => "es",
        }
    }

    /// What the client of somebody who reads it calls it.
    pub fn locale(self) -> &'static str {
        match self {
            Self::English => "en-GB",
            Self::German => "de",
            Self::Spanish => "es-ES",
        }
    }

    /// Its number among the choices of `/coach settings`.
    pub fn choice(self) -> i64 {
        match self {
            Self::English => 0,
            Self::German => 1,
            Self::Spanish => 3,
        }
    }

    /// The name under which a conversation in it is kept.
    pub fn kept_as(self, name: &str) -> String {
        match self {
            Self::English => name.to_owned(),
            Self::German => format!("{name}-in-german"),
            Self::Spanish => format!("{name}-in-spanish"),
        }
    }

    /// What the messages can read that in English read `label`, which has no values.
    pub fn labels(self, label: &str) -> BTreeSet<&'static str> {
        let plain = |ways: &'static Vec<Way>| match ways.as_slice() {
            [way] => match way.as_slice() {
                [text] => Some(text.as_str()),
                _ => None,
            },
            _ => None,
        };
        let named = Self::English.messages().iter();
        let named = named.filter(|(_, ways)| plain(ways) == Some(label));
        named
            .filter_map(|(id, _)| plain(self.messages().get(id)?))
            .collect()
    }

    /// Whether a text has the message of this name in it.
    ///
    /// # Panics
    /// When there is no such message.
    pub fn reads(self, text: &str, id: &str) -> bool {
        let ways = self.messages().get(id);
        let ways = ways.unwrap_or_else(|| panic!("there is no message \"{id}\""));
        ways.iter().any(|way| holds(text, way))
    }

    /// Whether a text shows what in English has `part` in it. Held in English; in another language the kept
    /// conversation shows what it says, and all that is held here is that it says something.
    pub fn shows(self, text: &str, part: &str) -> bool {
        match self {
            Self::English => text.contains(part),
            Self::German | Self::Spanish => !text.is_empty(),
        }
    }

    /// The names of the messages that a text shows, of those that can be told from others in every language.
    pub fn shown(self, text: &str) -> BTreeSet<&'static str> {
        let ids = self.messages().keys().copied();
        let told_apart = ids.filter(|id| Self::ALL.iter().all(|tongue| tongue.tells_apart(id)));
        told_apart.filter(|id| self.reads(text, id)).collect()
    }

    /// Whether every way of a message has letters enough of its own.
    fn tells_apart(self, id: &str) -> bool {
        let own = |way: &Way| way.concat().chars().filter(|c| c.is_alphabetic()).count();
        let ways = self.messages().get(id);
        ways.is_some_and(|ways| ways.iter().all(|way| own(way) >= OWN_LETTERS))
    }

    /// Moves with the pieces' letters of this language in place of the English ones. What else a text holds
    /// stays as it is.
    pub fn moves(self, text: &str) -> String {
        let letters: &[u8; 5] = match self {
            Self::English => return text.to_owned(),
            Self::German => b"KDTLS",
            Self::Spanish => b"RDTAC",
        };
        let bytes = text.as_bytes();
        let mut out = String::with_capacity(text.len());
        let mut before = ' ';
        for (at, c) in text.char_indices() {
            let piece = "KQRBN".find(c);
            let moved = piece.filter(|_| !before.is_alphanumeric() && is_goal(&bytes[at + 1..]));
            out.push(moved.map_or(c, |piece| char::from(letters[piece])));
            before = c;
        }
        out
    }

    /// Every message by its name.
    fn messages(self) -> &'static BTreeMap<&'static str, Vec<Way>> {
        static READ: OnceLock<Vec<BTreeMap<&'static str, Vec<Way>>>> = OnceLock::new();
        &READ.get_or_init(|| Self::ALL.map(read).into())[self as usize]
    }
}

/// Whether what stands behind a piece's letter makes a move of it: perhaps a file, a rank or both, perhaps a
/// sign for taking, and a square.
fn is_goal(rest: &[u8]) -> bool {
    let word: Vec<u8> = rest
        .iter()
        .copied()
        .take_while(u8::is_ascii_alphanumeric)
        .filter(|byte| *byte != b'x')
        .collect();
    match word.as_slice() {
        [.., file, rank] => {
            let of_the_board = |byte: &u8| matches!(byte, b'a'..=b'h' | b'1'..=b'8');
            word.len() <= 4
                && word.iter().all(of_the_board)
                && (b'a'..=b'h').contains(file)
                && (b'1'..=b'8').contains(rank)
        }
        _ => false,
    }
}

fn read(tongue: Tongue) -> BTreeMap<&'static str, Vec<Way>> {
    // Read once for the whole run.
    let ftl: &'static str = source(tongue.tag(), SPOKEN).leak();
    let resource = fluent_syntax::parser::parse(ftl).expect("the messages are well-formed");
    let messages = resource.body.iter().filter_map(|entry| match entry {
        Entry::Message(message) => Some((message.id.name, ways(message.value.as_ref()?))),
        _ => None,
    });
    messages.collect()
}

fn ways(pattern: &Pattern<&'static str>) -> Vec<Way> {
    let mut all = vec![vec![String::new()]];
    for element in &pattern.elements {
        let next = match element {
            PatternElement::TextElement { value }
            | PatternElement::Placeable {
                expression: Expression::Inline(InlineExpression::StringLiteral { value }),
            } => vec![vec![(*value).to_owned()]],
            PatternElement::Placeable {
                expression: Expression::Inline(_),
            } => vec![vec![String::new(); 2]],
            PatternElement::Placeable {
                expression: Expression::Select { variants, .. },
            } => variants.iter().flat_map(|one| ways(&one.value)).collect(),
        };
        all = all
            .iter()
            .flat_map(|way| next.iter().map(move |more| joined(way, more)))
            .collect();
    }
    all
}

fn joined(before: &Way, after: &Way) -> Way {
    let mut way = before.clone();
    if let (Some(last), Some((first, rest))) = (way.last_mut(), after.split_first()) {
        last.push_str(first);
        way.extend_from_slice(rest);
    }
    way
}

/// Whether a text reads one way of a message somewhere.
fn holds(text: &str, way: &Way) -> bool {
    let parts = way.iter().map(|part| part.trim());
    let parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
    let Some((first, rest)) = parts.split_first() else {
        return false;
    };
    text.match_indices(first).any(|(at, _)| {
        let mut left = &text[at + first.len()..];
        rest.iter().all(|part| match left.find(part) {
            Some(next) if next <= LONGEST_VALUE && !left[..next].contains('\n') => {
                left = &left[next + part.len()..];
                true
            }
            _ => false,
        })
    })
}

/// Holds a whole conversation in every language, each as a test of its own.
#[macro_export]
macro_rules! in_every_language {
    ($name:ident) => {
        mod $name {
            use $crate::tongue::Tongue;

            #[tokio::test(flavor = "multi_thread", worker_threads = 2)]
            async fn in_english() {
                super::$name(Tongue::English).await;
            }

            #[tokio::test(flavor = "multi_thread", worker_threads = 2)]
            async fn in_german() {
                super::$name(Tongue::German).await;
            }

            #[tokio::test(flavor = "multi_thread", worker_threads = 2)]
            async fn in_spanish() {
                super::$name(Tongue::Spanish).await;
            }
        }
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn moves_wear_the_letters_of_the_language() {
        for (tongue, wanted) in [
            (Tongue::English, "1. Rxd8+! Kh8 Nbd7 d2d8"),
            (Tongue::German, "1. Txd8+! Kh8 Sbd7 d2d8"),
            (Tongue::Spanish, "1. Txd8+! Rh8 Cbd7 d2d8"),
        ] {
            assert_eq!(tongue.moves("1. Rxd8+! Kh8 Nbd7 d2d8"), wanted);
        }
        let words = "Rook Road, No. 8; BRd7";
        assert_eq!(Tongue::German.moves(words), words);
    }

    #[test]
    fn a_message_is_known_by_its_name_whatever_its_values() {
        let text = "Antworten sind da.\nGelöst von 2 von 3: Ana, Ben.";
        assert!(Tongue::German.reads(text, "solved-by"));
        assert!(!Tongue::German.reads(text, "nobody-took-part"));
        assert!(Tongue::German.shown(text).contains("solved-by"));
        assert!(Tongue::German.labels("Next").contains("Weiter"));
    }
}
