//! A position that is kept already and comes again: what differs, and which version stands.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

use serde::Serialize;

use crate::{
    desk::values::{And, Theirs},
    desk::{Differs, SameAgain, SameChoice, Version},
    words::Words,
};

#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Text {
    SameAgain {
        kept: Versioned,
        differs: And<Differing>,
    },
    SameAgainAs {
        kept: Versioned,
        differs: And<Differing>,
        given: Versioned,
    },
    KeptStays,
    SameTaken,
    SameBoth,
}

/// A version of a position, part of a sentence.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Versioned {
    VersionOf { name: Theirs, topics: And<Theirs> },
    VersionWithoutTopic { name: Theirs },
}

/// In what two versions differ, part of a sentence.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Differing {
    AnotherName,
    AnotherTopic,
    OtherWords,
    OtherMoves,
}

/// How the file's version differs from the one kept, and which stands now. People's words go in as `theirs`
/// makes them, for a chat in which some signs have a meaning.
pub fn same_again(words: &Words, same: &SameAgain, theirs: impl Fn(&str) -> String) -> String {
    let theirs = |text: &String| Theirs::from(theirs(text));
    let version = |version: &Version| {
        let name = theirs(&version.name);
        match version.topics.as_slice() {
            [] => Versioned::VersionWithoutTopic { name },
            topics => Versioned::VersionOf {
                name,
                topics: And {
                    and: topics.iter().map(theirs).collect(),
                },
            },
        }
    };
    let differing = same.differs.iter().map(|differs| match differs {
        Differs::Name => Differing::AnotherName,
        Differs::Topic => Differing::AnotherTopic,
        Differs::Words => Differing::OtherWords,
        Differs::Moves => Differing::OtherMoves,
    });
    let differs = And {
        and: differing.collect(),
    };
    let kept = version(&same.kept);
    let named = same.differs.contains(&Differs::Name) || same.differs.contains(&Differs::Topic);
    let known = match named {
        true => Text::SameAgainAs {
            kept,
            differs,
            given: version(&same.given),
        },
        false => Text::SameAgain { kept, differs },
    };
    let done = match same.done {
        SameChoice::Keep => Text::KeptStays,
        SameChoice::New => Text::SameTaken,
        SameChoice::Both => Text::SameBoth,
    };
    words.tell(&[known, done])
}
