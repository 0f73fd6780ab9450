//! The report of a check, and how a position stands to its topic, for pages and programs that read it as JSON.

use serde_json::{Value, json};

use crate::{
    desk::{Report, TopicCheck},
    words::Words,
};

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

/// How a position stands to its topic: the verdict in a word, the pattern that the topic means, what is to be
/// said in words as `message`, and the facts of it beside that.
pub fn topic_said(check: &TopicCheck, words: &Words) -> Value {
    let mut shown = serde_json::to_value(check).unwrap_or_default();
    shown["message"] = words.tell(&check.facts).into();
    shown
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        desk::{TopicOn, topic_check},
        words::words,
    };

    #[test]
    fn how_a_position_stands_to_its_topic_is_said_in_the_readers_language() {
        let report: Report = serde_json::from_value(json!({
            "id": "w1", "fen": "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1", "stipulation": "#2",
            "verdict": "sound", "keys": ["Rxd8+"], "line": ["Rxd8+", "Rxd8", "Rxd8#"],
            "patterns": ["back-rank"], "proved": true, "nodes": 1, "seconds": 0.0, "message": [],
        }))
        .expect("a report");
        let shown = |topic, tag| {
            let check = topic_check(&report, topic, TopicOn::MainLine);
            topic_said(&check, words(tag))
        };
        let german = shown("Smothered mate", "de");
        assert_eq!(german["verdict"], "not-verified");
        assert_eq!(german["pattern"], "smothered");
        assert_eq!(
            german["message"],
            "Thema nicht bestätigt, Ersticktes Matt: Die Hauptvariante 1.Txd8+ Txd8 2.Txd8# endet \
             mit 2.Txd8# in einem anderen Bild, Grundreihenmatt."
        );
        assert_eq!(german["facts"][0]["is"], "topic-not-shown");
        let label = shown("Plans", "en");
        assert_eq!(
            label,
            json!({ "verdict": "label", "facts": [], "message": "" })
        );
    }

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
