//! The languages in which replies are read.

use serde::{Deserialize, Serialize};

/// Piece letters and words a group writes in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[allow(missing_docs)]
pub enum Language {
    #[default]
    English,
    German,
    French,
    Spanish,
    Italian,
    Portuguese,
    Dutch,
    Russian,
    Polish,
    Czech,
    Hungarian,
    Turkish,
}

impl Language {
    /// Every language, in the order in which an unknown writer's letters are tried.
    pub const ALL: [Self; 12] = [
        Self::English,
        Self::German,
        Self::French,
        Self::Spanish,
        Self::Italian,
        Self::Portuguese,
        Self::Dutch,
        Self::Russian,
        Self::Polish,
        Self::Czech,
        Self::Hungarian,
        Self::Turkish,
    ];

    /// Its BCP 47 tag.
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
            Self::French => "fr",
            Self::Spanish => "es",
            Self::Italian => "it",
            Self::Portuguese => "pt",
            Self::Dutch => "nl",
            Self::Russian => "ru",
            Self::Polish => "pl",
            Self::Czech => "cs",
            Self::Hungarian => "hu",
            Self::Turkish => "tr",
        }
    }
}
