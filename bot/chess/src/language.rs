//! The languages in which replies are read.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

/// A text that is no language's code.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{code:?} is no language that replies are read in")]
pub struct UnknownLanguage {
    /// The text.
    pub code: String,
}

/// A language a row: its variant, its code, and its BCP 47 tag.
macro_rules! languages {
    ($($variant:ident $code:literal $tag:literal),+ $(,)?) => {
        /// Piece letters and words a group writes in.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[allow(missing_docs)]
        pub enum Language { $(#[serde(rename = $code)] $variant),+ }

        impl Language {
            /// Every language, in the order in which an unknown writer's letters are tried and in which
            /// they are offered.
            pub const ALL: [Self; [$($tag),+].len()] = [$(Self::$variant),+];

            /// Its English name in small letters, which stands for it in the store, in JSON and on the
            /// command line.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),+ }
            }

            /// Its BCP 47 tag.
            pub const fn tag(self) -> &'static str {
                match self { $(Self::$variant => $tag),+ }
            }
        }
    };
}

languages! {
    English "english" "en",
    German "german" "de",
    French "french" "fr",
    Spanish "spanish" "es",
    Italian "italian" "it",
    Portuguese "portuguese" "pt",
    Dutch "dutch" "nl",
    Russian "russian" "ru",
    Polish "polish" "pl",
    Czech "czech" "cs",
    Hungarian "hungarian" "hu",
    Turkish "turkish" "tr",
}

/// English.
impl Default for Language {
    fn default() -> Self {
        Self::English
    }
}

/// The code.
impl fmt::Display for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl FromStr for Language {
    type Err = UnknownLanguage;

    /// Reads a code; the case of its letters does not matter.
    fn from_str(code: &str) -> Result<Self, UnknownLanguage> {
        Self::ALL
            .into_iter()
            .find(|language| language.code().eq_ignore_ascii_case(code))
            .ok_or_else(|| UnknownLanguage {
                code: code.to_owned(),
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_what_json_has_and_is_read_back() {
        for language in Language::ALL {
            let json = serde_json::to_value(language).expect("JSON");
            assert_eq!(json, language.code());
            assert_eq!(serde_json::from_value(json).ok(), Some(language));
            assert_eq!(language.to_string().parse(), Ok(language));
        }
        assert_eq!("German".parse(), Ok(Language::German));
        assert!("deutsch".parse::<Language>().is_err());
    }
}
