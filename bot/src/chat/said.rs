//! Facts in the words of whom they are told to.

use serde_json::{Value, json};

use crate::{
    desk::{DeedNote, DeskError, LanguageTag, Said, Summary},
    words::{Words, words},
};

/// The words of a language; English where there are none.
pub fn words_of(language: &LanguageTag) -> &'static Words {
    words(language.as_str())
}

/// What is to be said, in words.
pub fn in_words(said: &Said) -> String {
    words_of(&said.language).tell(&said.facts)
}

/// Why the desk could not do something, in words.
pub fn refused(error: &DeskError, words: &Words) -> String {
    words.say(&error.why())
}

/// The summary with its advice in words; the facts stand beside them as `advised`.
pub fn advised(summary: &Summary, words: &Words) -> Value {
    let mut said = json!(summary);
    if let Some(fields) = said.as_object_mut() {
        let facts = fields.insert("advice".into(), words.tell(&summary.advice).into());
        fields.insert("advised".into(), facts.unwrap_or_default());
    }
    said
}

/// What is kept of a person, with the sentences beside the facts.
pub fn explained(mut kept: Value) -> Value {
    let words = words(
        kept.get("language")
            .and_then(Value::as_str)
            .unwrap_or_default(),
    );
    let deeds = kept.get_mut("deeds").and_then(Value::as_array_mut);
    for note in deeds
        .into_iter()
        .flatten()
        .filter_map(|deed| deed.get_mut("note"))
    {
        let said = note
            .as_str()
            .and_then(DeedNote::kept)
            .map(|of| words.say(&of));
        *note = said.unwrap_or_default().into();
    }
    let replies = kept.get_mut("replies").and_then(Value::as_array_mut);
    let verdicts = replies
        .into_iter()
        .flatten()
        .filter_map(|reply| reply.get_mut("verdicts")?.as_array_mut())
        .flatten()
        .filter_map(Value::as_object_mut);
    for verdict in verdicts {
        let Some(facts) = verdict.get("facts").filter(|facts| !facts.is_null()) else {
            continue;
        };
        let said = facts.get("said").and_then(Value::as_array);
        let message = words.tell(said.into_iter().flatten());
        let why = facts.get("why").map(|why| words.say(why));
        verdict.insert("message".into(), message.into());
        // Of a coach's verdict these are the coach's own words.
        if verdict.get("by_coach") == Some(&Value::Bool(false)) {
            verdict.insert("why".into(), why.into());
        }
    }
    kept
}
