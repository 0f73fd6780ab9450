//! Every fact there is, said in every language: taken from the source, so that none can be forgotten.

use std::collections::{BTreeMap, BTreeSet};

use sealed_move::{
    chess::{Language, check::Statement},
    words::{english, source, tags, words},
};
use serde_json::{Map, Value, json};
use syn::{Attribute, Fields, GenericArgument, Item, PathArguments, Type};

/// Where facts are defined. An enum that is tagged by `is` is one.
const SOURCES: &[&str] = &[
    include_str!("../../bot/chess/src/fact.rs"),
    include_str!("../../bot/chess/src/name/facts.rs"),
    include_str!("../../bot/chess/src/check/finding.rs"),
    include_str!("../../bot/chess/src/check/topic.rs"),
    include_str!("../../bot/chess/src/comments/mod.rs"),
    include_str!("../../bot/chess/src/position.rs"),
    include_str!("../../bot/chess/src/position_error.rs"),
    include_str!("../../bot/chess/src/read/fault.rs"),
    include_str!("../../bot/chess/src/stipulation.rs"),
    include_str!("../../bot/chess/src/walk.rs"),
    include_str!("../../bot/src/desk/noted.rs"),
    include_str!("../../bot/src/desk/telling.rs"),
    include_str!("../../bot/src/desk/refusal.rs"),
    include_str!("../../bot/src/desk/notice.rs"),
    include_str!("../../bot/src/desk/deeds.rs"),
    include_str!("../../bot/src/desk/figures/advice.rs"),
    include_str!("../../bot/src/desk/figures/period.rs"),
    include_str!("../../bot/src/chat/discord/text/coach.rs"),
    include_str!("../../bot/src/chat/discord/text/fault.rs"),
    include_str!("../../bot/src/chat/discord/text/group.rs"),
    include_str!("../../bot/src/chat/discord/text/post.rs"),
    include_str!("../../bot/src/chat/discord/text/study.rs"),
    include_str!("../../bot/src/chat/discord/text/talk.rs"),
    include_str!("../../bot/src/chat/room/text.rs"),
    include_str!("../../bot/src/chat/common/card.rs"),
    include_str!("../../bot/src/chat/common/text.rs"),
    include_str!("../../bot/src/chat/common/same.rs"),
    include_str!("../../bot/src/cli/figures.rs"),
    include_str!("../../bot/src/cli/settings_fault.rs"),
    include_str!("../../bot/src/cli/supervisor.rs"),
    include_str!("../../bot/src/cli/text.rs"),
    include_str!("../../bot/diagram/src/text.rs"),
];

/// Files that the pages of the club room speak from: `room_words.rs` holds them to what the pages ask for.
const PAGES: &[&str] = &["room.ftl", "room-coach.ftl", "room-editor.ftl"];

/// Facts that are put together where they are shown: a name, and its values.
fn shown() -> Vec<Value> {
    let mut shown = vec![
        json!({ "is": "button-i-mean", "reading": "1.Ne7+" }),
        json!({ "is": "priced", "what": "Hint", "price": "takes 1" }),
    ];
    shown
        .extend([1, 2].map(
            |number| json!({ "is": "hint-is", "number": number, "step": 1, "hint": "Look." }),
        ));
    shown
}

/// Messages that others use, or that the code asks for by name.
const HELPERS: &[&str] = &[
    "language",
    "decimal-sign",
    "thousands-sign",
    "thousands-from",
    "weekday-names",
    "month-names",
    "month-names-short",
    "moment",
    "dated",
    "date",
    "day",
    "quoted",
    "piece-letters",
    "number",
    "list-comma",
    "list-and",
    "list-or",
    "list-why",
    "act",
    "wrong-tries",
    "hints-taken",
    "wrong-takes",
    "every-wrong-takes",
    "takes-points",
    "chat-names",
];

/// The values that a type can take, as many as a message can tell apart.
fn samples(ty: &Type) -> Vec<Value> {
    let Type::Path(path) = ty else {
        panic!("a type of another kind")
    };
    let last = path.path.segments.last().expect("a name");
    let inner = || match &last.arguments {
        PathArguments::AngleBracketed(arguments) => match arguments.args.first() {
            Some(GenericArgument::Type(inner)) => samples(inner),
            _ => panic!("no type inside"),
        },
        _ => panic!("nothing inside"),
    };
    let of =
        |kind: &str, values: &[&str]| values.iter().map(|value| json!({ kind: value })).collect();
    let named = |names: &[&str]| names.iter().map(|name| json!(name)).collect();
    let pieces = ["pawn", "knight", "bishop", "rook", "queen", "king", "any"];
    match last.ident.to_string().as_str() {
        "Piece" => of("piece", &pieces),
        "Side" => of("side", &["white", "black"]),
        "At" => vec![json!("e4")],
        "OnFile" => vec![json!("e")],
        "Count" => [0, 1, 2, 3, 10, 12].map(|count| json!({ "count": count })).to_vec(),
        "Decimal" => [0.0, 1.0, 2.5].map(|points| json!({ "points": points })).to_vec(),
        "Centipawns" => vec![json!({ "centipawns": -130 })],
        "Line" => vec![json!({ "line": "1.Ne7+ Kh8" })],
        "Month" => vec![json!({ "month": 3 })],
        "Wings" => named(&["both", "short", "long"]),
        "Squares" => vec![json!({ "and": ["e4", "e5"] }), json!({ "list": ["e4"] })],
        "Box" => vec![json!({ "is": "picture-heading", "number": 3 })],
        "Pieces" => pieces
            .map(|piece| {
                json!({ "is": "alt-pieces", "piece": { "piece": piece }, "number": 1, "squares": "d1" })
            })
            .to_vec(),
        "Step" => vec![json!({ "is": "alt-step", "number": 1, "from": "d1", "to": "d8" })],
        "Flight" => vec![
            json!({ "is": "alt-flight", "on": "f8" }),
            json!({ "is": "alt-flight-by", "on": "h8", "guards": { "and": ["d8"] } }),
        ],
        "Guard" => vec![json!({ "is": "alt-guard", "piece": { "piece": "rook" }, "on": "d8" })],
        "Byte" => vec![json!("0x81")],
        "Stipulation" => vec![json!("#3")],
        "StipulationError" => vec![
            json!({ "is": "stipulation-error", "written": { "theirs": "#0" }, "most": 20 }),
        ],
        "PositionError" => vec![json!({ "is": "board-empty" })],
        "Fault" => vec![json!({ "is": "null-move" })],
        "Oddity" => vec![json!({ "is": "read-as-windows" })],
        "Complaint" => vec![json!({ "is": "mate-sign-wrong" })],
        "Assessment" => vec![json!({ "is": "is-stalemate-now" })],
        "Stands" => vec![json!({
            "is": "move-stands-at", "line": { "line": "Rxd8+" }, "value": { "centipawns": 310 },
        })],
        "TableVerdict" => named(&["win", "draw", "loss"]),
        "SettingTakes" => named(&[
            "text", "whole", "number", "yes-or-no", "table", "address", "times", "other",
        ]),
        "Whose" => named(&["promised", "try", "any"]),
        "WhoseLine" => named(&["main", "full", "own"]),
        "Extent" => named(&["only", "all", "some", "main"]),
        "Theirs" | "Plain" | "Label" => vec![json!({ "theirs": "Qq9" })],
        "Moves" => vec![json!({ "line": "1.Ne7+ Kh8" })],
        "Moment" => vec![json!("<t:1:F>")],
        "String" => vec![json!("1.Ne7+")],
        "LocalTime" => vec![json!({ "moment": "6 2026-11-28 18:00" })],
        "Dated" => vec![json!({ "dated": "2026-11-28 18:00" })],
        "Date" => vec![json!({ "date": "2026-11-28" })],
        "Covered" => vec![json!({ "is": "covers-day", "day": { "date": "2026-11-28" } })],
        "NearTopic" => vec![
            json!({ "is": "near-topic", "topic": { "theirs": "Pins" }, "solved": 1, "of": 2 }),
        ],
        "Missed" => vec![
            json!({ "is": "missed-move", "played": { "line": "Rd7" }, "count": 2 }),
        ],
        "Sentence" => vec![json!({ "is": "channel-gone" })],
        "ChatName" => ["room", "discord", "lines"]
            .map(|key| json!({ "is": "chat-name", "key": key, "name": "Lines" }))
            .to_vec(),
        "Whole" => vec![json!({ "whole": 1500 })],
        "Quoted" => vec![json!({ "is": "quoted", "words": { "theirs": "Pins" } })],
        "Removed" => named(&[
            "post-of-reply",
            "group-of-reply",
            "writer-of-reply",
            "reply",
            "position-of-post",
            "position",
            "post-of-message",
            "group-of-message",
        ]),
        "Leave" => named(&["named", "nameless", "refused"]),
        "Fate" => named(&["muted", "removed", "erased"]),
        "Lacking" => named(&["hints", "giving-up", "board"]),
        "KindName" => named(&["problem", "question", "words"]),
        "NoTime" => named(&["not-sound", "paused", "no-days", "waits"]),
        "Answerable" => vec![
            json!({ "is": "answer-to", "kind": "problem", "number": 1 }),
            json!({ "is": "answer-to", "kind": "question", "number": 2 }),
        ],
        "Named" => named(&["group", "topic", "file"]),
        "When" => named(&["post", "reveal"]),
        "Paid" => named(&["wrong", "hint"]),
        "CardPart" => named(&["definition", "look"]),
        "Source" => named(&["renaud-kahn", "vukovic", "trade"]),
        "StoreFault" => named(&["full", "busy", "read-only", "damaged", "stopped", "other"]),
        "Pattern" => of("pattern", &["boden"]),
        "Task" => vec![json!("win"), json!("draw")],
        "Wing" => vec![json!("short"), json!("long")],
        "Verdict" => ["solved", "on-the-way", "wrong", "illegal", "unclear", "unreadable"]
            .map(|verdict| json!(verdict))
            .to_vec(),
        "OwnState" => words_of_enum(&["playing", "solved", "given-up"]),
        "Soundness" => words_of_enum(&[
            "sound",
            "several-keys",
            "short",
            "unsound",
            "illegal",
            "undecided",
        ]),
        "Mode" => words_of_enum(&["sealed", "open"]),
        "Defences" => words_of_enum(&["same", "differ"]),
        "Style" => words_of_enum(&["print", "light", "dark", "contrast"]),
        "Language" => Language::ALL.map(|language| json!(language)).to_vec(),
        "LanguageName" => Language::ALL
            .map(|language| json!({ "is": "language-name", "language": language }))
            .to_vec(),
        "Deed" => sealed_move::desk::Deed::ALL
            .iter()
            .map(|deed| json!(deed))
            .collect(),
        "Versioned" => vec![json!({ "is": "version-without-topic", "name": { "theirs": "w1" } })],
        "Differing" => vec![json!({ "is": "another-name" }), json!({ "is": "other-words" })],
        "Offered" => vec![json!({ "is": "option-value", "name": "new", "meaning": "the new one" })],
        "Days" => vec![json!({ "is": "days-every" }), json!({ "is": "days-none" })],
        "Day" => vec![json!({ "is": "monday" }), json!({ "is": "friday" })],
        "DayOfYear" => vec![json!({ "day": "2026-11-28" })],
        "OpenFor" => vec![json!({ "is": "open-hours", "number": 23 })],
        "bool" => vec![json!(true), json!(false)],
        "u32" | "i64" | "u64" | "usize" => vec![json!(0), json!(1), json!(2)],
        "Option" => {
            let mut all = inner();
            all.push(Value::Null);
            all
        }
        "Why" => vec![json!({ "why": [{ "is": "meets-threat" }, { "is": "no-en-passant" }] })],
        "And" => vec![json!({ "and": inner() })],
        "Or" => vec![json!({ "or": inner() })],
        "List" => vec![json!({ "list": inner() })],
        "Material" => [("rook", 1), ("pawn", 2)]
            .map(|(piece, number)| {
                json!({ "is": "material", "piece": { "piece": piece }, "number": { "count": number } })
            })
            .to_vec(),
        "Target" => vec![json!({ "is": "target", "piece": { "piece": "queen" }, "on": "d1" })],
        other => panic!("no sample of {other}"),
    }
}

fn words_of_enum(words: &[&str]) -> Vec<Value> {
    words.iter().map(|word| json!(word)).collect()
}

/// Facts of one kind: each value of each field at least once, the other fields as they come.
fn facts(name: &str, fields: &Fields) -> Vec<Value> {
    let fields: Vec<(String, Vec<Value>)> = fields
        .iter()
        .map(|field| {
            let name = field.ident.as_ref().expect("a name").to_string();
            assert!(!name.contains('_'), "{name}: one word a value");
            (name, samples(&field.ty))
        })
        .collect();
    // All combinations: messages choose by several values at once.
    let mut all = vec![Map::from_iter([("is".to_owned(), json!(name))])];
    for (field, values) in &fields {
        all = all
            .into_iter()
            .flat_map(|fact| {
                values.iter().map(move |value| {
                    let mut fact = fact.clone();
                    fact.insert(field.clone(), value.clone());
                    fact
                })
            })
            .collect();
    }
    all.into_iter().map(Value::Object).collect()
}

fn is_fact(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        attribute.path().is_ident("serde")
            && attribute
                .meta
                .require_list()
                .is_ok_and(|list| list.tokens.to_string().contains("tag = \"is\""))
    })
}

fn kebab(name: &str) -> String {
    let mut out = String::new();
    for (at, letter) in name.chars().enumerate() {
        if letter.is_uppercase() && at > 0 {
            out.push('-');
        }
        out.extend(letter.to_lowercase());
    }
    out
}

/// Every fact, by its name.
fn every() -> BTreeMap<String, Vec<Value>> {
    let mut all: BTreeMap<String, Vec<Value>> = BTreeMap::new();
    for source in SOURCES {
        for item in syn::parse_file(source).expect("Rust").items {
            match item {
                Item::Enum(item) if is_fact(&item.attrs) => {
                    for variant in &item.variants {
                        let name = kebab(&variant.ident.to_string());
                        let facts = facts(&name, &variant.fields);
                        assert!(all.insert(name.clone(), facts).is_none(), "{name} twice");
                    }
                }
                Item::Struct(item) if is_fact(&item.attrs) => {
                    let name = kebab(&item.ident.to_string());
                    all.insert(name.clone(), facts(&name, &item.fields));
                }
                _ => {}
            }
        }
    }
    for fact in shown() {
        let name = fact["is"].as_str().expect("a name").to_owned();
        all.entry(name).or_default().push(fact);
    }
    all
}

#[test]
fn every_fact_can_be_said_in_every_language() {
    let every = every();
    assert!(every.len() > 150, "{} facts", every.len());
    for tag in tags() {
        let words = words(tag);
        for fact in every.values().flatten() {
            match words.try_to_say(fact) {
                Ok(said) => {
                    assert!(!said.is_empty(), "{tag}: {fact}");
                    // A file's ending begins with a stop.
                    let said = [" .png", " .svg", " .gif"]
                        .iter()
                        .fold(said, |said, ending| said.replace(ending, ""));
                    for stray in ["{", "}", "  ", " .", " ,", "??"] {
                        assert!(!said.contains(stray), "{tag}: {said:?} of {fact}");
                    }
                }
                Err(lacking) => panic!("{tag}: {fact}: {lacking}"),
            }
        }
    }
}

/// The store keeps reports: what a check finds is read again as what it was, and not as a stranger's fact.
#[test]
fn what_a_check_finds_comes_back_as_it_was_kept() {
    let file = syn::parse_file(include_str!("../../bot/chess/src/check/finding.rs")).expect("Rust");
    let findings = file.items.iter().find_map(|item| match item {
        Item::Enum(item) if item.ident == "Finding" => Some(&item.variants),
        _ => None,
    });
    for variant in findings.expect("the enum") {
        for fact in facts(&kebab(&variant.ident.to_string()), &variant.fields) {
            let read: Statement = serde_json::from_value(fact.clone()).expect("a statement");
            assert!(matches!(read, Statement::Found(_)), "{fact}");
            assert_eq!(serde_json::to_value(&read).expect("plain data"), fact);
        }
    }
}

#[test]
fn the_same_is_not_said_in_another_language() {
    let same = |tag: &str| {
        let every = every();
        let facts = every.values().filter_map(|facts| facts.first());
        facts
            .filter(|fact| words(tag).say(fact) == english().say(fact))
            .map(|fact| fact["is"].as_str().unwrap_or_default().to_owned())
            .collect::<Vec<_>>()
    };
    for tag in tags().filter(|tag| *tag != "en") {
        // A person's own words, and a price beside a button.
        // A square, a number with its sign, an error with its cause, and a value with what it means.
        // A lesson's title with its number of steps. Finished words, and the name of a chat that is none of ours.
        let kept = [
            "as-reason",
            "priced",
            "alt-flight",
            "chart-percent",
            "as-written",
            "note-words",
            "chat-name",
            "because-of",
            "option-value",
            "lesson-choice",
            // A lesson's title in a menu, moves with how many answers begin with them, and who wrote one.
            "lesson-pick-one",
            "answer-group-choice",
            "example-of",
        ];
        let same = same(tag);
        let left: Vec<_> = same
            .iter()
            .filter(|id| !kept.contains(&id.as_str()))
            .collect();
        assert!(left.is_empty(), "{tag}: {left:?}");
    }
}

#[test]
fn no_message_is_unused() {
    let used: BTreeSet<String> = every().into_keys().collect();
    let pages = source("en", PAGES);
    let pages: BTreeSet<&str> = pages
        .lines()
        .filter_map(|line| Some(line.split_once(" = ")?.0))
        .collect();
    for id in sealed_move::words::ids().filter(|id| !pages.contains(id)) {
        let asked_by_name = [
            "piece-",
            "side-",
            "pattern-",
            "button-",
            "command-",
            "menu-",
            "definition-",
            "look-",
            "apart-",
            "help",
        ]
        .iter()
        .any(|start| id.starts_with(start));
        assert!(
            used.contains(id) || HELPERS.contains(&id) || asked_by_name,
            "{id} is never said"
        );
    }
    for pattern in sealed_move::chess::name::names() {
        for tag in tags() {
            let fact = json!({ "is": "picture-at-the-end", "pattern": { "pattern": pattern } });
            assert!(words(tag).try_to_say(&fact).is_ok(), "{tag}: {pattern}");
        }
        for tag in tags() {
            let defined = words(tag).text(&format!("definition-{pattern}"));
            assert!(defined.ends_with('.'), "{tag}: {pattern}: {defined}");
        }
    }
    // What stands under a pattern's name is asked for by it.
    let cards: Vec<_> = sealed_move::chess::card::cards().collect();
    let asked: BTreeSet<String> = cards
        .iter()
        .flat_map(|card| {
            let apart = card
                .relatives
                .iter()
                .map(|other| sealed_move::chess::card::apart(card.pattern, other));
            apart.chain([format!("look-{}", card.pattern)])
        })
        .collect();
    let there: BTreeSet<String> = sealed_move::words::ids()
        .filter(|id| id.starts_with("look-") || id.starts_with("apart-"))
        .filter(|id| !used.contains(*id))
        .map(str::to_owned)
        .collect();
    assert_eq!(there, asked);
    for tag in tags().filter(|tag| *tag != "en") {
        for id in &asked {
            assert_ne!(words(tag).text(id), english().text(id), "{tag}: {id}");
        }
    }
}
