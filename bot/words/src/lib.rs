//! Floor 3: facts to sentences.
//!
//! A fact is anything that serialises to an object with its name under `is` and its values beside it. Its
//! name is the id of a message in Project Fluent's FTL, in one folder a language under `ftl/`; adding a
//! language is adding a folder. What a value may be, and what a message can use of it:
//!
//! | value | in the message |
//! | --- | --- |
//! | text, a number | `$name` |
//! | `true`, `false` | `$name` is `yes` or `no` |
//! | `{"piece": "rook"}` | `$name` is `rook`; every attribute of the message `piece-rook` as `$name-ATTRIBUTE` |
//! | `{"side": "white"}` | the same with `side-white` |
//! | `{"count": 3}` | `$name` is 3, for plurals; `$name-word` is what `number` makes of it |
//! | `{"points": 2.5}` | `$name` is 2.5, for plurals; `$name-text` with the language's decimal sign |
//! | `{"centipawns": 150}` | `$name` in pawns, with its sign, one decimal, and the language's decimal sign |
//! | `{"pattern": "boden"}` | what `pattern-boden` says |
//! | `{"line": "1.Ne7+ Kh8"}` | the moves with the language's piece letters |
//! | `{"whole": 1500}` | `$name` with its thousands parted as the language does |
//! | `{"moment": "6 2026-11-28 18:00"}` (ISO 8601 number of the weekday first) | what `moment` says: a day of these weeks and its time, by the group's clock |
//! | `{"dated": "2026-11-28 18:00"}`, `{"date": "2026-11-28"}` | what `dated` and `date` say, with the year |
//! | `{"day": "2026-11-28"}` | what `day` says, without the year |
//! | `{"month": 3}` | the short name of the month |
//! | `{"theirs": "…"}` | a person's own words, untouched, isolated where they run from right to left |
//! | `{"and": […]}`, `{"or": […]}`, `{"list": […]}`, `{"why": […]}` | joined as the language joins them |
//! | another fact | what it says |
//!
//! Nothing here fails: what a language lacks is said in English, and what English lacks shows its name.
//! Tests see to it that neither happens.

mod pseudo;

use std::{borrow::Cow, collections::BTreeMap, sync::LazyLock};

use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};
use fluent_syntax::ast::Entry;
use include_dir::{Dir, File, include_dir};
use serde::Serialize;
use serde_json::{Map, Value};
use unic_langid::LanguageIdentifier;

/// One folder a language, named by its BCP 47 tag.
static FOLDERS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/ftl");

/// King, queen, rook, bishop, knight, as SAN has them.
const ENGLISH_LETTERS: &str = "KQRBN";

/// The language that has everything.
const FIRST: &str = "en";

static ALL: LazyLock<BTreeMap<&'static str, Words>> = LazyLock::new(|| {
    let tag = |folder: &Dir<'static>| folder.path().file_name()?.to_str();
    let folders = FOLDERS.dirs();
    folders
        .filter_map(|folder| Some((tag(folder)?, Words::of(tag(folder)?, folder))))
        .collect()
});

/// A language's words.
pub struct Words {
    tag: &'static str,
    ids: Vec<String>,
    bundle: FluentBundle<FluentResource>,
}

impl std::fmt::Debug for Words {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_tuple("Words").field(&self.tag).finish()
    }
}

/// The words of the language with this BCP 47 tag; English where there are none.
///
/// ```
/// let fact = serde_json::json!({ "is": "fails", "line": { "line": "1.Nd5" } });
/// assert_eq!(sealed_move_words::words("en").say(&fact), "1.Nd5 does not work.");
/// assert_eq!(sealed_move_words::words("de").say(&fact), "1.Sd5 geht nicht.");
/// ```
pub fn words(tag: &str) -> &'static Words {
    known(tag)
        .and_then(|tag| ALL.get(tag))
        .unwrap_or_else(|| english())
}

/// The language that answers to a BCP 47 tag, found by leaving off its last part until there is one (RFC 4647,
/// lookup); case does not matter.
///
/// ```
/// use sealed_move_words::known;
///
/// assert_eq!(known("de-AT"), Some("de"));
/// assert_eq!(known("ES-419"), Some("es"));
/// assert_eq!(known("tlh"), None);
/// ```
pub fn known(tag: &str) -> Option<&'static str> {
    let mut rest = tag.trim();
    loop {
        if let Some(found) = tags().find(|have| have.eq_ignore_ascii_case(rest)) {
            return Some(found);
        }
        rest = rest.rsplit_once('-')?.0;
    }
}

/// The best of the languages that an `Accept-Language` header asks for (RFC 9110, section 12.5.4): the first there
/// is, by weight and then by order.
///
/// ```
/// use sealed_move_words::accepted;
///
/// assert_eq!(accepted("fr-CH, de;q=0.7, en;q=0.9"), Some("en"));
/// assert_eq!(accepted("sv, en;q=0"), None);
/// ```
pub fn accepted(header: &str) -> Option<&'static str> {
    let weighed = header.split(',').take(50).filter_map(|wanted| {
        let mut parts = wanted.split(';').map(str::trim);
        let tag = parts.next()?;
        let weight = match parts.find_map(|part| part.strip_prefix("q=")) {
            Some(weight) => weight.parse::<f64>().ok().filter(|weight| *weight > 0.0)?,
            None => 1.0,
        };
        Some((known(tag)?, weight))
    });
    // The first of those with the greatest weight.
    weighed
        .reduce(|best, next| if next.1 > best.1 { next } else { best })
        .map(|(tag, _)| tag)
}

/// Every language there is, by its BCP 47 tag.
pub fn tags() -> impl Iterator<Item = &'static str> {
    ALL.keys().copied()
}

/// The id of every message, as English has them.
pub fn ids() -> impl Iterator<Item = &'static str> {
    english().ids.iter().map(String::as_str)
}

pub use pseudo::pseudo;

/// The FTL of some files of a language, such as `["room.ftl"]`, one after the other: for those who put it
/// into words elsewhere, as a page does. Nothing of a file that is not there.
pub fn source(tag: &str, files: &[&str]) -> String {
    let of = |file: &&str| FOLDERS.get_file(format!("{tag}/{file}")).map(text_of);
    files.iter().filter_map(of).collect::<Vec<_>>().join("\n")
}

/// What a file says.
fn text_of<'f>(file: &'f File<'static>) -> Cow<'f, str> {
    let text = file.contents_utf8().unwrap_or_default();
    match pseudo::is_spoken() {
        true => pseudo::resource(text).into(),
        false => text.into(),
    }
}

/// The words of English.
///
/// # Panics
/// When the program was built without them.
pub fn english() -> &'static Words {
    &ALL[FIRST]
}

impl Words {
    fn of(tag: &'static str, folder: &Dir<'static>) -> Self {
        let language: LanguageIdentifier = tag.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Isolating marks would stand around every value; people's own words get them where they matter.
        bundle.set_use_isolating(false);
        let mut ids = Vec::new();
        for file in folder.files() {
            let source = text_of(file).into_owned();
            // What is wrong with a file is found by the tests; the rest of it still speaks.
            let resource = FluentResource::try_new(source).unwrap_or_else(|(read, _)| read);
            ids.extend(resource.entries().filter_map(|entry| match entry {
                Entry::Message(message) => Some(message.id.name.to_owned()),
                _ => None,
            }));
            let _ = bundle.add_resource(resource);
        }
        Self { tag, ids, bundle }
    }

    /// The language's BCP 47 tag.
    pub fn tag(&self) -> &'static str {
        self.tag
    }

    /// A fact in words.
    pub fn say<F: Serialize + ?Sized>(&self, fact: &F) -> String {
        self.speaking().value(&json(fact))
    }

    /// The same, with all that is lacking: a message, or a value that a message wants.
    ///
    /// # Errors
    /// What is lacking, a line each.
    pub fn try_to_say<F: Serialize + ?Sized>(&self, fact: &F) -> Result<String, String> {
        let mut speaking = self.speaking();
        let said = speaking.value(&json(fact));
        match speaking.lacking.is_empty() {
            true => Ok(said),
            false => Err(speaking.lacking.join("\n")),
        }
    }

    /// Sentences, one after the other.
    pub fn tell<'f, F: Serialize + 'f>(&self, facts: impl IntoIterator<Item = &'f F>) -> String {
        let sentences = facts.into_iter().map(|fact| self.say(fact));
        sentences.collect::<Vec<_>>().join(" ")
    }

    /// Moves in SAN with English letters, in the language's.
    ///
    /// ```
    /// let german = sealed_move_words::words("de");
    /// assert_eq!(german.moves("1.Rxd8+! Rxd8"), "1.Txd8+! Txd8");
    /// ```
    pub fn moves(&self, moves: &str) -> String {
        self.speaking().moves(moves)
    }

    /// A message without values.
    pub fn text(&self, id: &str) -> String {
        self.speaking().message(id, &FluentArgs::new())
    }

    /// An attribute of a message, without values; `None` where this language has none of that name.
    pub fn attribute(&self, id: &str, attribute: &str) -> Option<String> {
        let message = self.bundle.get_message(id)?;
        let found = message.get_attribute(attribute)?;
        let text = self
            .bundle
            .format_pattern(found.value(), None, &mut Vec::new());
        Some(text.into_owned())
    }

    fn speaking(&self) -> Speaking<'_> {
        Speaking {
            words: self,
            lacking: Vec::new(),
        }
    }
}

fn json<F: Serialize + ?Sized>(fact: &F) -> Value {
    serde_json::to_value(fact).unwrap_or_default()
}

/// One fact on its way into words.
struct Speaking<'w> {
    words: &'w Words,
    /// What was missed.
    lacking: Vec<String>,
}

impl Speaking<'_> {
    fn value(&mut self, value: &Value) -> String {
        match value {
            Value::Null => String::new(),
            Value::Bool(_) | Value::Number(_) => value.to_string(),
            Value::String(text) => text.clone(),
            Value::Array(items) => self.joined("list", items),
            Value::Object(object) => self.object(object),
        }
    }

    fn object(&mut self, object: &Map<String, Value>) -> String {
        if let Some(Value::String(id)) = object.get("is") {
            let mut args = FluentArgs::new();
            for (name, value) in object.iter().filter(|(name, _)| *name != "is") {
                self.fill(&mut args, name, value);
            }
            return self.message(id, &args);
        }
        match kind(object) {
            Some(("line", Value::String(moves))) => self.moves(moves),
            Some(("theirs", Value::String(words))) => isolated(words).into_owned(),
            Some(("pattern", Value::String(name))) => {
                self.message(&format!("pattern-{name}"), &FluentArgs::new())
            }
            Some(("centipawns", Value::Number(number))) => {
                let pawns = number.as_f64().unwrap_or_default() / 100.0;
                self.with_decimal_sign(&format!("{pawns:+.1}"))
            }
            Some(("month", Value::Number(month))) => {
                self.name_of("month-names-short", &month.to_string())
            }
            Some(("whole", Value::Number(number))) => self.whole(number.as_u64().unwrap_or(0)),
            Some((how @ ("moment" | "dated" | "date" | "day"), Value::String(at))) => {
                self.when(how, at)
            }
            Some((how, Value::Array(items))) => self.joined(how, items),
            _ => {
                self.lacking.push(format!("no value: {object:?}"));
                String::new()
            }
        }
    }

    /// Makes a value, and all that can be said of it, ready for a message.
    fn fill(&mut self, args: &mut FluentArgs<'static>, name: &str, value: &Value) {
        let simple: FluentValue<'static> = match value {
            Value::Bool(true) => "yes".into(),
            Value::Bool(false) => "no".into(),
            Value::Null => "none".into(),
            Value::Number(number) => number.as_f64().unwrap_or_default().into(),
            Value::Object(object) => match kind(object) {
                Some((kind @ ("piece" | "side"), Value::String(which))) => {
                    for (attribute, text) in self.attributes(&format!("{kind}-{which}")) {
                        args.set(format!("{name}-{attribute}"), text);
                    }
                    which.clone().into()
                }
                Some(("count", Value::Number(number))) => {
                    let number = number.as_f64().unwrap_or_default();
                    let mut of = FluentArgs::new();
                    of.set("n", number);
                    args.set(format!("{name}-word"), self.message("number", &of));
                    number.into()
                }
                Some(("points", Value::Number(number))) => {
                    let number = number.as_f64().unwrap_or_default();
                    let text = self.with_decimal_sign(&hundredths(number));
                    args.set(format!("{name}-text"), text);
                    number.into()
                }
                _ => self.object(object).into(),
            },
            Value::String(_) | Value::Array(_) => self.value(value).into(),
        };
        args.set(name.to_owned(), simple);
    }

    fn message(&mut self, id: &str, args: &FluentArgs<'_>) -> String {
        let bundle = &self.words.bundle;
        let Some(message) = bundle.get_message(id).and_then(|found| found.value()) else {
            self.lacking.push(format!("no message {id}"));
            return match self.words.tag {
                FIRST => id.to_owned(),
                _ => english().speaking().message(id, args),
            };
        };
        let mut errors = Vec::new();
        let text = bundle.format_pattern(message, Some(args), &mut errors);
        let errors = errors.iter().map(|error| format!("{id}: {error}"));
        self.lacking.extend(errors);
        text.into_owned()
    }

    fn attributes(&mut self, id: &str) -> Vec<(String, String)> {
        let bundle = &self.words.bundle;
        let Some(message) = bundle.get_message(id) else {
            self.lacking.push(format!("no message {id}"));
            return Vec::new();
        };
        let attributes = message.attributes().map(|attribute| {
            let text = bundle.format_pattern(attribute.value(), None, &mut Vec::new());
            (attribute.id().to_owned(), text.into_owned())
        });
        attributes.collect()
    }

    /// Items put together two by two: all but the last two by `list-comma`, these by `list-HOW`.
    fn joined(&mut self, how: &str, items: &[Value]) -> String {
        let mut all = String::new();
        for (at, item) in items.iter().enumerate() {
            let next = self.value(item);
            if at == 0 {
                all = next;
                continue;
            }
            let how = match how {
                "list" => "list-comma",
                _ if at + 1 < items.len() => "list-comma",
                "and" => "list-and",
                "or" => "list-or",
                _ => "list-why",
            };
            let mut pair = FluentArgs::new();
            pair.set("first", all);
            pair.set("next", next);
            all = self.message(how, &pair);
        }
        all
    }

    /// A number with its thousands parted.
    fn whole(&mut self, number: u64) -> String {
        let none = FluentArgs::new();
        let sign = self.message("thousands-sign", &none);
        let from = self.message("thousands-from", &none).parse().unwrap_or(1);
        let digits = number.to_string();
        if digits.len() < from {
            return digits;
        }
        let mut parted = String::new();
        for (at, digit) in digits.char_indices() {
            if at > 0 && (digits.len() - at).is_multiple_of(3) {
                parted.push_str(&sign);
            }
            parted.push(digit);
        }
        parted
    }

    /// A day, with or without its weekday before it and a time behind it.
    fn when(&mut self, how: &str, at: &str) -> String {
        let mut args = FluentArgs::new();
        for part in at.split(' ') {
            match part.split('-').collect::<Vec<_>>()[..] {
                [year, month, day] => {
                    args.set("year", year.to_owned());
                    args.set("month", self.name_of("month-names", month));
                    args.set("day", day.trim_start_matches('0').to_owned());
                }
                _ if part.contains(':') => args.set("time", part.to_owned()),
                _ => args.set("weekday", self.name_of("weekday-names", part)),
            }
        }
        self.message(how, &args)
    }

    /// The name in a list of names that has this number, from 1.
    fn name_of(&mut self, list: &str, number: &str) -> String {
        let names = self.message(list, &FluentArgs::new());
        let at = number.parse().ok().and_then(|n: usize| n.checked_sub(1));
        match at.and_then(|at| names.split(' ').nth(at)) {
            Some(name) => name.to_owned(),
            None => {
                self.lacking.push(format!("{list} has no number {number}"));
                number.to_owned()
            }
        }
    }

    /// SAN with the language's piece letters.
    fn moves(&mut self, moves: &str) -> String {
        let letters = self.message("piece-letters", &FluentArgs::new());
        let letters: Vec<char> = letters.chars().collect();
        // Files and castling are written with other letters.
        let letter = |letter| match ENGLISH_LETTERS.find(letter) {
            Some(at) => letters.get(at).copied().unwrap_or(letter),
            None => letter,
        };
        moves.chars().map(letter).collect()
    }

    fn with_decimal_sign(&mut self, number: &str) -> String {
        let sign = self.message("decimal-sign", &FluentArgs::new());
        number.replace('.', &sign)
    }
}

/// The name and the value of an object that has one field.
fn kind(object: &Map<String, Value>) -> Option<(&str, &Value)> {
    let mut fields = object.iter();
    match (fields.next(), fields.next()) {
        (Some((kind, value)), None) => Some((kind.as_str(), value)),
        _ => None,
    }
}

/// At most two decimals, and none that say nothing.
fn hundredths(number: f64) -> String {
    let text = format!("{number:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    match text {
        "-0" | "" => "0".to_owned(),
        text => text.to_owned(),
    }
}

/// Words with letters that run from right to left, in the marks that keep them from turning what stands
/// around them (Unicode Standard Annex 9, first strong isolate).
fn isolated(words: &str) -> Cow<'_, str> {
    let backwards = |letter: char| {
        matches!(letter, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{feff}'
            | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}' | '\u{202e}' | '\u{202b}' | '\u{2067}')
    };
    match words.contains(backwards) {
        true => Cow::Owned(format!("\u{2068}{words}\u{2069}")),
        false => Cow::Borrowed(words),
    }
}

#[cfg(test)]
mod tests;
