//! What the club room's pages say: every message that a page or a script asks for is there in every language,
//! with exactly the values that it is given, and none is there for nothing. Taken from the sources.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::PathBuf,
};

use fluent_syntax::{
    ast::{Entry, Expression, InlineExpression, Pattern, PatternElement},
    parser::parse,
};
use sealed_move::words::{source, tags};
use sealed_move_tests::workspace;

/// The files that only the pages speak from.
const FILES: &[&str] = &["room.ftl", "room-coach.ftl", "room-editor.ftl"];
/// What they ask for besides.
const SHARED: &[&str] = &["base.ftl"];
/// Words in quotes that nobody reads: keys of the keyboard, and the program's own errors.
const UNREAD: &[&str] = &[
    "Enter",
    "Escape",
    "Content-Type",
    "ArrowLeft",
    "ArrowRight",
    "ArrowUp",
    "ArrowDown",
    "Delete",
    "Backspace",
    "Home",
    "End",
    "ArrowLeft ArrowRight Home End",
];

/// The values that a message is given.
type Values = BTreeSet<String>;

/// What asks for messages.
struct Asked {
    /// Where.
    place: String,
    id: String,
    values: Values,
}

fn assets(ending: &str) -> Vec<(String, String)> {
    let folder = workspace().join("bot/src/chat/room/assets");
    let entries = fs::read_dir(folder).expect("the folder of the pages");
    let paths = entries.map(|entry| entry.expect("a readable folder").path());
    let named = |path: PathBuf| {
        let name = path.file_name()?.to_str()?.to_owned();
        name.ends_with(ending)
            .then(|| (name, fs::read_to_string(&path).expect("text")))
    };
    paths.filter_map(named).collect()
}

/// The script without its comments and regular expressions.
fn code(script: &str) -> String {
    let mut out = String::new();
    let mut rest = script;
    while let Some(at) = rest.find(['"', '/']) {
        out.push_str(&rest[..at]);
        rest = &rest[at..];
        let before = out.trim_end().chars().next_back().unwrap_or(';');
        let (kept, length) = if rest.starts_with("//") {
            (false, rest.find('\n').unwrap_or(rest.len()))
        } else if rest.starts_with("/*") {
            (false, rest.find("*/").expect("a comment ends") + 2)
        } else if let Some(text) = rest.strip_prefix('"') {
            (true, text.find('"').expect("a text ends") + 2)
        } else if "(=:,;!&|?".contains(before) {
            // An expression; none of these has a slash inside.
            (false, rest[1..].find('/').expect("an expression ends") + 2)
        } else {
            (true, 1)
        };
        if kept {
            out.push_str(&rest[..length]);
        }
        rest = &rest[length..];
    }
    out.push_str(rest);
    out
}

/// Up to the bracket that closes the one before `text`.
fn inside(text: &str) -> &str {
    let mut depth = 1;
    let mut quoted = false;
    for (at, letter) in text.char_indices() {
        match letter {
            '"' => quoted = !quoted,
            '(' | '{' | '[' if !quoted => depth += 1,
            ')' | '}' | ']' if !quoted => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return &text[..at];
        }
    }
    panic!("no end: {text}");
}

/// At each comma that is in no bracket and no text.
fn split(text: &str) -> Vec<String> {
    let mut parts = vec![String::new()];
    let (mut depth, mut quoted) = (0, false);
    for letter in text.chars() {
        match letter {
            '"' => quoted = !quoted,
            '(' | '{' | '[' if !quoted => depth += 1,
            ')' | '}' | ']' if !quoted => depth -= 1,
            ',' if depth == 0 && !quoted => {
                parts.push(String::new());
                continue;
            }
            _ => {}
        }
        parts.last_mut().expect("one at least").push(letter);
    }
    let parts = parts.into_iter().map(|part| part.trim().to_owned());
    parts.filter(|part| !part.is_empty()).collect()
}

/// The calls of `say` and `sayAround` in a script.
fn calls(name: &str, script: &str) -> Vec<Asked> {
    let code = code(script);
    let mut all = Vec::new();
    for call in ["say(", "sayAround("] {
        for (at, _) in code.match_indices(call) {
            let before = code[..at].chars().next_back().unwrap_or(' ');
            let defined = code[..at].ends_with("function ");
            if before.is_alphanumeric() || before == '.' || defined || name == "words.js" {
                continue;
            }
            let arguments = split(inside(&code[at + call.len()..]));
            let place = format!("{name}: {call}{}", arguments.join(", "));
            let id = arguments
                .first()
                .and_then(|id| id.strip_prefix('"')?.strip_suffix('"'));
            let id = id.unwrap_or_else(|| panic!("{place}: the id stands there as it is"));
            let values = match arguments.get(1).map(|values| values.strip_prefix('{')) {
                None => Values::new(),
                Some(Some(values)) => split(values.trim_end_matches('}'))
                    .iter()
                    .map(|value| {
                        let key = value.split(':').next().unwrap_or_default().trim();
                        assert!(key.chars().all(char::is_alphanumeric), "{place}: {key}");
                        key.to_owned()
                    })
                    .collect(),
                Some(None) => panic!("{place}: the values stand there one by one"),
            };
            assert!(arguments.len() <= 2, "{place}");
            let id = id.to_owned();
            all.push(Asked { place, id, values });
        }
    }
    all
}

/// The messages that stand in a page.
fn placed(name: &str, page: &str) -> Vec<Asked> {
    let ids = page
        .split("{{")
        .skip(1)
        .map(|rest| rest.split("}}").next().unwrap_or_default());
    ids.filter(|id| *id != "lang")
        .map(|id| Asked {
            place: name.to_owned(),
            id: id.to_owned(),
            values: Values::new(),
        })
        .collect()
}

/// Everything the pages ask for.
fn asked() -> Vec<Asked> {
    // Used by its name, for the letters of moves.
    let letters = Asked {
        place: "words.js".into(),
        id: "piece-letters".into(),
        values: Values::new(),
    };
    let scripts = assets(".js");
    let pages = assets(".html");
    assert!(scripts.len() > 20 && pages.len() == 4);
    let scripts = scripts
        .iter()
        .flat_map(|(name, script)| calls(name, script));
    let pages = pages.iter().flat_map(|(name, page)| placed(name, page));
    let all: Vec<Asked> = scripts.chain(pages).chain([letters]).collect();
    assert!(all.len() > 400, "{}", all.len());
    all
}

/// What a message uses.
fn uses(pattern: &Pattern<&str>, values: &mut Values) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else {
            continue;
        };
        let (inline, variants) = match expression {
            Expression::Inline(inline) => (inline, &[][..]),
            Expression::Select { selector, variants } => (selector, variants.as_slice()),
        };
        match inline {
            InlineExpression::VariableReference { id } => {
                values.insert(id.name.to_owned());
            }
            other => panic!("{other:?}: the pages' messages use values only"),
        }
        variants
            .iter()
            .for_each(|variant| uses(&variant.value, values));
    }
}

/// The messages in some files of a language, with the values that each uses.
fn messages(tag: &str, files: &[&str]) -> BTreeMap<String, Values> {
    let text = source(tag, files);
    let resource = parse(text.as_str()).unwrap_or_else(|(_, wrong)| panic!("{tag}: {wrong:?}"));
    let entries = resource.body.iter().filter_map(|entry| match entry {
        Entry::Message(message) => Some(message),
        _ => None,
    });
    entries
        .map(|message| {
            let mut values = Values::new();
            uses(message.value.as_ref().expect("a value"), &mut values);
            (message.id.name.to_owned(), values)
        })
        .collect()
}

#[test]
fn every_message_is_there_with_exactly_the_values_it_is_given() {
    let asked = asked();
    let files = [FILES, SHARED].concat();
    for tag in tags() {
        let messages = messages(tag, &files);
        for Asked { place, id, values } in &asked {
            let wanted = messages
                .get(id)
                .unwrap_or_else(|| panic!("{tag} lacks {id}: {place}"));
            assert_eq!(wanted, values, "{tag}: {id} at {place}");
        }
    }
}

#[test]
fn no_message_is_there_for_nothing() {
    let asked: BTreeSet<String> = asked().into_iter().map(|asked| asked.id).collect();
    for tag in tags() {
        let unused: Vec<String> = messages(tag, FILES)
            .into_keys()
            .filter(|id| !asked.contains(id))
            .collect();
        assert!(unused.is_empty(), "{tag}: {unused:?}");
    }
}

/// A sentence in a script begins with a capital letter, as everything does that a person reads there.
#[test]
fn no_script_has_words_of_its_own() {
    for (name, script) in assets(".js") {
        let code = code(&script);
        let mut texts: Vec<&str> = code.split('"').skip(1).step_by(2).collect();
        texts.extend(code.split('`').skip(1).step_by(2));
        for text in texts {
            let mut letters = text.chars();
            let begins = letters.next().is_some_and(char::is_uppercase);
            let goes_on = letters.next().is_some_and(char::is_lowercase);
            assert!(
                !(begins && goes_on) || UNREAD.contains(&text),
                "{name} says {text:?}"
            );
        }
    }
}

#[test]
fn no_page_has_words_of_its_own() {
    for (name, page) in assets(".html") {
        let page = page.replace("<!doctype html>", "");
        // What stands between the tags, and in the attributes that are read.
        let mut texts: Vec<&str> = page
            .split('>')
            .filter_map(|part| part.split('<').next())
            .collect();
        for attribute in ["aria-label=\"", "placeholder=\"", "title=\"", "alt=\""] {
            let found = page.split(attribute).skip(1);
            texts.extend(found.filter_map(|rest| rest.split('"').next()));
        }
        for text in texts {
            let mut own = String::new();
            for (at, part) in text.split("{{").enumerate() {
                own.push_str(match at {
                    0 => part,
                    _ => part.split_once("}}").expect("an end").1,
                });
            }
            // A code as it may look is the same in every language.
            let own = own.replace("ACDE 3467", "");
            assert!(!own.chars().any(char::is_alphabetic), "{name}: {text:?}");
        }
    }
}

/// What the test above finds, and what it lets pass.
#[test]
fn calls_are_found_as_they_are_written() {
    let script = "// say(\"a-comment\")\nfill(say(\"one\"), sayAround(\"two\", { at: stamp(row, 1), name }));\n\
        const words = essay(\"none\"); x.say(\"none\"); say(\n  \"three\",\n  { n: f(\"a, b\"), },\n);";
    let found: Vec<(String, Vec<String>)> = calls("some.js", script)
        .into_iter()
        .map(|asked| (asked.id, asked.values.into_iter().collect()))
        .collect();
    let expected = [
        ("one", vec![]),
        ("three", vec!["n"]),
        ("two", vec!["at", "name"]),
    ]
    .map(|(id, values)| {
        (
            id.to_owned(),
            values.into_iter().map(str::to_owned).collect(),
        )
    });
    assert_eq!(found, expected);
}
