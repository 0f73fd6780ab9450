//! What is to be said to a person: facts, and the language to say them in.

use sealed_move_store::VerdictRow;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

use super::LanguageTag;
use crate::chess::fact::{VERSION, Why};

/// Facts, in the order in which they are told, and the language of whom they are told to.
///
/// Each is an object with its name under `is` and its values beside it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Said {
    /// In which language.
    pub language: LanguageTag,
    /// What.
    pub facts: Vec<Value>,
}

impl Said {
    /// Nothing yet.
    pub(super) fn new(language: impl Into<LanguageTag>) -> Self {
        Self {
            language: language.into(),
            facts: Vec::new(),
        }
    }

    /// Facts of one kind.
    pub(super) fn of<F: Serialize>(language: impl Into<LanguageTag>, facts: &[F]) -> Self {
        let mut said = Self::new(language);
        facts.iter().for_each(|fact| said.push(fact));
        said
    }

    /// Adds a fact.
    pub(super) fn push(&mut self, fact: impl Serialize) {
        self.facts.extend(serde_json::to_value(fact).ok());
    }

    /// The same with a fact more.
    pub(super) fn and(mut self, fact: impl Serialize) -> Self {
        self.push(fact);
        self
    }

    /// The same with what else was said.
    pub(super) fn then(mut self, more: Self) -> Self {
        self.facts.extend(more.facts);
        self
    }

    /// Whether there is nothing to say.
    pub fn is_empty(&self) -> bool {
        self.facts.is_empty()
    }
}

/// What the store keeps of a verdict.
pub(super) fn kept<F: Serialize>(said: &[F], why: &Why) -> Value {
    json!({ "version": VERSION, "said": said, "why": why })
}

/// What was said with a verdict, where it was kept as facts.
pub(super) fn facts_of(verdict: &VerdictRow) -> Option<Vec<Value>> {
    let said = verdict.facts.as_ref()?.get("said")?;
    said.as_array().cloned()
}
