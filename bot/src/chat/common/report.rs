//! The report of a check for pages and programs that read it as JSON.

use serde_json::{Value, json};

use crate::{desk::Report, words::Words};

/// A report with what it says in words, as `message` and `warnings`, and the facts of these beside them, as
/// `message_facts` and `warning_facts`.
pub fn said_of(report: &Report, words: &Words) -> Value {
    let mut shown = serde_json::to_value(report).unwrap_or_default();
    shown["message"] = words.tell(&report.message).into();
    let warnings = report.warnings.iter().map(|told| words.say(told));
    shown["warnings"] = warnings.collect();
    shown["message_facts"] = json!(report.message);
    shown["warning_facts"] = json!(report.warnings);
    shown
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::words;

    #[test]
    fn facts_are_said_in_the_readers_language_and_old_sentences_stay() {
        let report: Report = serde_json::from_value(json!({
            "id": "w1", "fen": "", "stipulation": "#2", "verdict": "sound", "keys": [], "line": [],
            "patterns": [], "proved": true, "nodes": 1, "seconds": 0.0,
            "message": "A sentence of its time.",
            "warnings": [{ "is": "fifty-moves", "number": 98 }, "a note of its time"],
        }))
        .expect("a report");
        let (english, german) = (said_of(&report, words("en")), said_of(&report, words("de")));
        for shown in [&english, &german] {
            assert_eq!(shown["message"], "A sentence of its time.");
            assert_eq!(shown["message_facts"], json!(["A sentence of its time."]));
            assert_eq!(shown["warnings"][1], "a note of its time");
            assert_eq!(shown["warning_facts"][0]["number"], 98);
        }
        assert_ne!(english["warnings"][0], german["warnings"][0]);
    }
}
