//! What is wrong in the settings file, in the reader's words, with its line beside it. The library that reads
//! the file tells in English only; what people get wrong is told in our words here, and of a text that is no
//! TOML the library's reason stands behind ours.

// What a fault says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

use std::fmt;

use serde::{Serialize, de::DeserializeOwned};
use toml::de::{Error, ValueDeserializer};

use super::text::{Or, Theirs, theirs};
use crate::{
    chat::said,
    desk::{
        DeskError, NoPoints, NoTimeOfDay, NoTimesOfDay, NoWeekdays, NoZone, Points, TimeOfDay,
        TimesOfDay, Weekdays,
    },
    words::Words,
};

/// What is wrong at one place of the file, beside what the desk refuses of a group's settings.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum SettingsFault {
    /// A key or table that is no setting.
    SettingUnknown {
        key: Theirs,
        known: Option<Or<Theirs>>,
    },
    /// A table without a key that it must have.
    SettingMissing { key: Theirs },
    /// A word that is none of those to choose from.
    SettingNoChoice { value: Theirs, choices: Or<Theirs> },
    /// A value of another kind than the setting has.
    SettingOfOtherKind { value: Theirs, kind: SettingTakes },
    /// A time zone that is none.
    SettingNoZone { value: Theirs },
    /// The same key a second time.
    SettingTwice { key: Theirs },
    /// What cannot be read at all.
    SettingsNoToml { why: Theirs },
    /// A fault with its place: the line as it stands, and a mark under it.
    SettingAt {
        row: u32,
        why: String,
        shown: String,
    },
}

/// What a setting takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum SettingTakes {
    Text,
    Whole,
    Number,
    YesOrNo,
    Table,
    Address,
    Times,
    Other,
}

/// The file's text with what is wrong in it. Written out by itself it is English, for the log.
#[derive(Debug)]
pub(super) struct SettingsError {
    text: String,
    error: Error,
}

impl SettingsError {
    /// What the library says of this text.
    pub(super) fn of(text: &str, mut error: Error) -> Self {
        error.set_input(Some(text));
        Self {
            text: text.to_owned(),
            error,
        }
    }

    /// In the reader's words.
    pub(super) fn told(&self, words: &Words) -> String {
        let why = self.why(words);
        match self.place() {
            None => why,
            Some((row, shown)) => words.say(&SettingsFault::SettingAt { row, why, shown }),
        }
    }

    /// The line, counted from 1, and how it is shown: as the library shows it, between its heading and its words.
    fn place(&self) -> Option<(u32, String)> {
        let start = self.error.span()?.start.min(self.text.len());
        let row = self.text[..start].matches('\n').count() + 1;
        let told = self.error.to_string();
        let shown: Vec<&str> = told.lines().skip(2).take(2).collect();
        Some((u32::try_from(row).ok()?, shown.join("\n")))
    }

    fn why(&self, words: &Words) -> String {
        let refused = self
            .refused::<String, NoTimeOfDay>(|text| text.parse::<TimeOfDay>().err())
            .or_else(|| self.refused::<Vec<String>, NoTimesOfDay>(no_times))
            .or_else(|| self.refused::<u8, NoWeekdays>(|bits| Weekdays::try_from(bits).err()))
            .or_else(|| self.refused::<f64, NoPoints>(|number| Points::try_from(number).err()));
        match refused {
            Some(refused) => said::refused(&refused, words),
            None => words.say(&self.fault()),
        }
    }

    /// What the desk says of the value, where the library has been told the same.
    fn refused<T: DeserializeOwned, E: fmt::Display + Into<DeskError>>(
        &self,
        wrong: impl FnOnce(T) -> Option<E>,
    ) -> Option<DeskError> {
        let wrong = wrong(self.value()?)?;
        (wrong.to_string() == self.error.message()).then(|| wrong.into())
    }

    /// The value at the place, where it is of this type.
    fn value<T: DeserializeOwned>(&self) -> Option<T> {
        T::deserialize(ValueDeserializer::parse(self.written()?).ok()?).ok()
    }

    /// What stands at the place.
    fn written(&self) -> Option<&str> {
        self.text
            .get(self.error.span()?)
            .filter(|text| !text.is_empty())
    }

    fn fault(&self) -> SettingsFault {
        let message = self.error.message();
        let written = || theirs(short(self.written().unwrap_or_default()));
        if let Some((key, known)) = named(message, "unknown field ") {
            let known = Some(known).filter(|known| !known.or.is_empty());
            return SettingsFault::SettingUnknown { key, known };
        }
        if let Some((value, choices)) = named(message, "unknown variant ") {
            return SettingsFault::SettingNoChoice { value, choices };
        }
        if let Some((key, _)) = named(message, "missing field ") {
            return SettingsFault::SettingMissing { key };
        }
        if message == "duplicate key" {
            return SettingsFault::SettingTwice { key: written() };
        }
        let zone = |name: &String| NoZone(name.clone()).to_string() == message;
        if self.value().as_ref().is_some_and(zone) {
            return SettingsFault::SettingNoZone { value: written() };
        }
        let wrong = ["invalid type: ", "invalid value: ", "invalid length: "];
        match message.rsplit_once(", expected ") {
            Some((_, wanted)) if wrong.iter().any(|begin| message.starts_with(begin)) => {
                SettingsFault::SettingOfOtherKind {
                    value: written(),
                    kind: SettingTakes::of(wanted),
                }
            }
            _ => SettingsFault::SettingsNoToml {
                why: theirs(message),
            },
        }
    }
}

impl SettingTakes {
    /// By how the library calls what it expected.
    fn of(wanted: &str) -> Self {
        match wanted {
            "a string" | "string" | "path string" => Self::Text,
            "u8" | "u16" | "u32" | "u64" | "usize" | "i64" => Self::Whole,
            "f32" | "f64" => Self::Number,
            "a boolean" | "bool" => Self::YesOrNo,
            "socket address" => Self::Address,
            _ if wanted.starts_with("a time of day") => Self::Times,
            _ if wanted.starts_with("struct ") || wanted == "a map" => Self::Table,
            _ => Self::Other,
        }
    }
}

impl fmt::Display for SettingsError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.error)
    }
}

impl std::error::Error for SettingsError {}

/// Why texts are no times of one day.
fn no_times(texts: Vec<String>) -> Option<NoTimesOfDay> {
    let times: Result<Vec<TimeOfDay>, _> = texts.iter().map(|text| text.parse()).collect();
    match times {
        Ok(times) => TimesOfDay::of(times).err(),
        Err(wrong) => Some(wrong.into()),
    }
}

/// The name that the message begins with after `kind`, and the names that it lists.
fn named(message: &str, kind: &str) -> Option<(Theirs, Or<Theirs>)> {
    let names: Vec<&str> = message
        .strip_prefix(kind)?
        .split('`')
        .skip(1)
        .step_by(2)
        .collect();
    let (first, others) = names.split_first()?;
    let or = others.iter().map(theirs).collect();
    Some((theirs(first), Or { or }))
}

/// The beginning of what stands in the file.
fn short(written: &str) -> String {
    const MOST: usize = 60;
    written
        .lines()
        .next()
        .unwrap_or_default()
        .chars()
        .take(MOST)
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::{
        cli::{config::Config, told::told},
        words::words,
    };

    /// What is said of a file with this text, without the line that is shown.
    fn said_of(text: &str, tag: &str) -> String {
        let error = Config::read(text).expect_err(text);
        let told = told(&error, words(tag));
        told.lines().next().unwrap_or_default().to_owned()
    }

    #[test]
    fn what_people_get_wrong_is_said_with_its_line_and_what_to_write() {
        for (text, english) in [
            (
                "[group]\npost_time = \"6pm\"",
                "line 2: \"6pm\" is not a time of day; write hours and minutes such as 18:00.",
            ),
            (
                "[group]\npost_time = []",
                "line 2: No time of day is set; give at least one, such as 18:00.",
            ),
            (
                "[group]\npost_time = [\"09:00\", \"09:00\"]",
                "line 2: 09:00 is there twice; give each time of day once.",
            ),
            (
                "[group]\npost_time = [\"09:00\", \"noon\"]",
                "line 2: \"noon\" is not a time of day; write hours and minutes such as 18:00.",
            ),
            (
                "[group]\npost_time = 18",
                "line 2: 18 does not fit; write a time such as \"18:00\", or a list of them",
            ),
            (
                "[group]\nzone = \"Atlantis\"",
                "line 2: \"Atlantis\" is no time zone of the IANA list; write one such as \"Europe/Lisbon\"",
            ),
            (
                "[group]\nmode = \"secret\"",
                "line 2: secret is none of the choices; write sealed or open",
            ),
            (
                "\n[room]\nadress = \"1\"",
                "line 3: there is no setting adress here; write open, address or public_url",
            ),
            (
                "[room]\naddress = 5",
                "line 2: 5 does not fit; write an address with its port, such as \"127.0.0.1:7316\"",
            ),
            (
                "[group]\ndays = \"monday\"",
                "line 2: \"monday\" does not fit; write a whole number that is not too large",
            ),
            (
                "[check]\nmoves = -1",
                "line 2: -1 does not fit; write a whole number that is not too large",
            ),
            (
                "[check]\nseconds = \"5\"",
                "line 2: \"5\" does not fit; write a number, without quotation marks",
            ),
            (
                "[discord]\nmessage_content = 1",
                "line 2: 1 does not fit; write true or false",
            ),
            (
                "group = 3",
                "line 1: 3 does not fit; its settings stand below a heading in square brackets",
            ),
            ("[engine]\nseconds = 3", "line 1: the table lacks program"),
            (
                "[group]\nname = \"a\"\nname = \"b\"",
                "line 3: name is set a second time; leave one",
            ),
            (
                "[group",
                "line 1: this cannot be read as TOML (unclosed table, expected `]`)",
            ),
        ] {
            assert_eq!(said_of(text, "en"), english);
            for tag in ["de", "es"] {
                assert_ne!(said_of(text, tag), english);
            }
        }
    }

    #[test]
    fn the_line_is_shown_as_it_stands() {
        let error = Config::read("[group]\npost_time = \"6pm\"\n").expect_err("no time");
        let told = told(&error, words("de"));
        let shown: Vec<&str> = told.lines().skip(1).collect();
        assert_eq!(shown, ["2 | post_time = \"6pm\"", "  |             ^^^^^"]);
    }
}
