//! The folders against each other, and each kind of value.

use std::collections::{BTreeMap, BTreeSet};

use fluent_syntax::{
    ast::{Entry, Expression, InlineExpression, Pattern, PatternElement},
    parser::parse,
};
use serde_json::json;

use super::*;

/// What a message uses: values, and other messages.
#[derive(Clone, Debug, Default)]
struct Uses {
    values: BTreeSet<String>,
    messages: BTreeSet<String>,
}

impl Uses {
    fn pattern(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            if let PatternElement::Placeable { expression } = element {
                self.expression(expression);
            }
        }
    }

    fn expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.inline(inline),
            Expression::Select { selector, variants } => {
                self.inline(selector);
                variants
                    .iter()
                    .for_each(|variant| self.pattern(&variant.value));
            }
        }
    }

    fn inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::VariableReference { id } => {
                self.values.insert(id.name.to_owned());
            }
            InlineExpression::MessageReference { id, .. } => {
                self.messages.insert(id.name.to_owned());
            }
            InlineExpression::Placeable { expression } => self.expression(expression),
            other => panic!("{other:?} is not used here"),
        }
    }
}

/// Every message of a language with what it uses.
fn messages(tag: &str) -> BTreeMap<String, Uses> {
    let folder = FOLDERS.get_dir(tag).expect("a folder");
    let mut all = BTreeMap::new();
    for file in folder.files() {
        let source = file.contents_utf8().expect("UTF-8");
        let resource = parse(source)
            .unwrap_or_else(|(_, errors)| panic!("{}: {errors:?}", file.path().display()));
        for entry in &resource.body {
            let Entry::Message(message) = entry else {
                assert!(
                    !matches!(entry, Entry::Term(_) | Entry::Junk { .. }),
                    "{tag}: {entry:?}"
                );
                continue;
            };
            let mut uses = Uses::default();
            uses.pattern(message.value.as_ref().expect("a value"));
            let former = all.insert(message.id.name.to_owned(), uses);
            assert!(former.is_none(), "{tag}: {} twice", message.id.name);
        }
    }
    all
}

#[test]
fn every_language_has_the_same_messages() {
    let english: BTreeSet<String> = messages(FIRST).into_keys().collect();
    assert!(english.len() > 100, "{}", english.len());
    assert!(tags().count() >= 3);
    for tag in tags() {
        let here: BTreeSet<String> = messages(tag).into_keys().collect();
        let lacking: Vec<_> = english.difference(&here).collect();
        let unknown: Vec<_> = here.difference(&english).collect();
        assert!(lacking.is_empty(), "{tag} lacks {lacking:?}");
        assert!(unknown.is_empty(), "{tag} alone has {unknown:?}");
    }
}

#[test]
fn every_language_has_its_numbers_and_letters() {
    for tag in tags() {
        let words = words(tag);
        assert_eq!(words.text("piece-letters").chars().count(), 5, "{tag}");
        assert_eq!(words.text("decimal-sign").chars().count(), 1, "{tag}");
        let letters: BTreeSet<char> = words.text("piece-letters").chars().collect();
        assert_eq!(letters.len(), 5, "{tag}");
    }
}

#[test]
fn a_message_that_is_not_there_is_said_in_english_and_noticed() {
    let fact = json!({ "is": "no-such-fact" });
    assert_eq!(words("de").say(&fact), "no-such-fact");
    assert_eq!(
        words("de").try_to_say(&fact),
        Err("no message no-such-fact".to_owned())
    );
    // A value that is not there.
    let fact = json!({ "is": "answers", "side": { "side": "black" } });
    let lacking = english().try_to_say(&fact).expect_err("no line");
    assert!(lacking.contains("line"), "{lacking}");
    // A language that is not there.
    assert_eq!(words("tlh").tag(), "en");
}

#[test]
fn lists_are_joined_as_each_language_joins_them() {
    let fact = |items: &[&str]| json!({ "is": "send-one-of", "readings": { "or": items } });
    for (tag, items, said) in [
        ("en", &["1.a3", "1.a4"][..], ": 1.a3 or 1.a4."),
        ("en", &["1.a3", "1.a4", "1.b3"], ": 1.a3, 1.a4 or 1.b3."),
        ("de", &["1.a3", "1.a4", "1.b3"], ": 1.a3, 1.a4 oder 1.b3."),
        ("es", &["1.a3", "1.a4"], ": 1.a3 o 1.a4."),
    ] {
        let text = words(tag).say(&fact(items));
        assert!(text.ends_with(said), "{text}");
    }
}

#[test]
fn pieces_are_counted_and_inflected() {
    let lost = |tag: &str, rooks: u8, pawns: u8| {
        words(tag).say(&json!({
            "is": "costs",
            "side": { "side": "white" },
            "lost": { "and": [
                { "is": "material", "piece": { "piece": "rook" }, "number": { "count": rooks } },
                { "is": "material", "piece": { "piece": "pawn" }, "number": { "count": pawns } },
            ] },
        }))
    };
    assert_eq!(lost("en", 1, 2), "that costs White a rook and two pawns");
    assert_eq!(
        lost("de", 2, 1),
        "das kostet Weiß zwei Türme und einen Bauern"
    );
    assert_eq!(
        lost("es", 1, 3),
        "eso les cuesta una torre y tres peones a las blancas"
    );
}

#[test]
fn moves_have_the_readers_letters() {
    let fact =
        json!({ "is": "line-mates", "line": { "line": "1.Qg8+ Rxg8 2.b8=N O-O-O 3.Bxc6 Kd7" } });
    assert_eq!(
        words("es").say(&fact),
        "Resuelto. 1.Dg8+ Txg8 2.b8=C O-O-O 3.Axc6 Rd7 es mate."
    );
    assert_eq!(
        words("de").say(&fact),
        "Gelöst. 1.Dg8+ Txg8 2.b8=S O-O-O 3.Lxc6 Kd7 ist matt."
    );
}

#[test]
fn numbers_have_the_languages_sign() {
    let fact = json!({
        "is": "search-stands", "depth": 12, "side": { "side": "white" }, "value": { "centipawns": -130 },
    });
    assert!(english().say(&fact).ends_with("White stands at -1.3"));
    assert!(words("de").say(&fact).ends_with("Weiß bei -1,3"));
    for (number, text) in [
        (2.0, "2"),
        (2.5, "2.5"),
        (1.666, "1.67"),
        (-0.001, "0"),
        (10.0, "10"),
    ] {
        assert_eq!(hundredths(number), text);
    }
}

#[test]
fn peoples_words_stay_as_they_are_and_turn_nothing_around() {
    let said =
        |words: &str| english().say(&json!({ "is": "garbled", "written": { "theirs": words } }));
    assert_eq!(
        said("Qq9 { $x } <b>"),
        "I could not read “Qq9 { $x } <b>” as a move. Please write it again."
    );
    assert!(said("מהלך").contains("“\u{2068}מהלך\u{2069}”"));
}

#[test]
fn the_source_of_some_files_is_given_in_their_order() {
    let both = source("de", &["hints.ftl", "base.ftl", "no-such-file.ftl"]);
    let (hint, base) = (both.find("\nlook-at ="), both.find("\nlanguage = Deutsch"));
    assert!(hint.is_some() && hint < base, "{both}");
    assert!(parse(both.as_str()).is_ok());
    assert_eq!(source("tlh", &["base.ftl"]), "");
}
