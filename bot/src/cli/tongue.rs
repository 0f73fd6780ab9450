//! In which language the command line speaks: in that of whoever reads it, by the environment (POSIX, Base
//! Definitions, section 8.2).
//!
//! The locale is the first of `LC_ALL`, `LC_MESSAGES` and `LANG` that is set and not empty; where none is, or
//! it is `C` or `POSIX`, English is spoken. Where there is a locale, `LANGUAGE` comes before it, as GNU gettext
//! has it: a list of languages parted by colons, of which the first that is spoken here counts. The settings
//! file has no say: its `language` is the group's, and whoever starts the program may read another.

use std::sync::LazyLock;

use crate::words::{Words, english, known, words};

static READERS: LazyLock<&'static Words> =
    LazyLock::new(|| chosen(|name| std::env::var(name).ok()));

/// The words of whoever reads what this process prints.
pub fn readers() -> &'static Words {
    &READERS
}

/// The words that an environment asks for.
fn chosen(variable: impl Fn(&str) -> Option<String>) -> &'static Words {
    let set = |name: &str| variable(name).filter(|value| !value.is_empty());
    let Some(locale) = ["LC_ALL", "LC_MESSAGES", "LANG"].into_iter().find_map(set) else {
        return english();
    };
    if is_plain(&locale) {
        return english();
    }
    let listed = set("LANGUAGE").unwrap_or_default();
    listed
        .split(':')
        .chain([locale.as_str()])
        .find_map(|locale| known(&tag(locale)))
        .map_or_else(english, words)
}

/// Whether a locale is the one of no language, with a codeset or without: `C`, `C.UTF-8`, `POSIX`.
fn is_plain(locale: &str) -> bool {
    matches!(locale.split(['.', '@']).next(), Some("C" | "POSIX"))
}

/// The BCP 47 tag of a locale such as `de_AT.UTF-8@euro`.
fn tag(locale: &str) -> String {
    let language = locale.split(['.', '@']).next().unwrap_or_default();
    language.replace('_', "-")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The language for an environment written as `NAME=value` pairs.
    fn spoken(environment: &[&str]) -> &'static str {
        let variable = |name: &str| {
            let of = |pair: &&str| Some(pair.strip_prefix(name)?.strip_prefix('=')?.to_owned());
            environment.iter().find_map(of)
        };
        chosen(variable).tag()
    }

    #[test]
    fn nothing_set_is_english() {
        assert_eq!(spoken(&[]), "en");
        assert_eq!(spoken(&["LANGUAGE=de"]), "en", "there is no locale");
    }

    #[test]
    fn territory_codeset_and_modifier_do_not_matter() {
        for (locale, tag) in [
            ("LANG=de_AT.UTF-8", "de"),
            ("LANG=de", "de"),
            ("LANG=es_MX.ISO-8859-1@euro", "es"),
            ("LANG=en_GB.UTF-8", "en"),
            ("LANG=fr_FR.UTF-8", "en"),
            ("LANG=nonsense", "en"),
        ] {
            assert_eq!(spoken(&[locale]), tag, "{locale}");
        }
    }

    #[test]
    fn the_variables_count_in_their_order() {
        assert_eq!(spoken(&["LANG=de_DE", "LC_MESSAGES=es_ES"]), "es");
        let all = ["LANG=de_DE", "LC_MESSAGES=es_ES", "LC_ALL=en_US"];
        assert_eq!(spoken(&all), "en");
        assert_eq!(spoken(&["LANG=de_DE", "LC_ALL="]), "de", "empty is unset");
    }

    #[test]
    fn no_language_is_asked_for_by_c_and_posix() {
        for locale in ["LC_ALL=C", "LC_ALL=POSIX", "LC_ALL=C.UTF-8"] {
            assert_eq!(spoken(&["LANG=de_DE", "LANGUAGE=es", locale]), "en");
        }
    }

    #[test]
    fn a_list_of_languages_comes_before_the_locale() {
        assert_eq!(spoken(&["LANG=en_US.UTF-8", "LANGUAGE=de:en"]), "de");
        assert_eq!(spoken(&["LANG=de_DE.UTF-8", "LANGUAGE=fr:es_ES"]), "es");
        assert_eq!(spoken(&["LANG=de_DE.UTF-8", "LANGUAGE=fr:pt"]), "de");
    }
}
