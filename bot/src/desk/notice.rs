//! Words to a group's coaches, as facts: what the desk has to tell them, and what became of a chat.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use std::fmt;

use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

use super::{ChatKey, content::KindName};
use crate::chess::{check::Soundness, fact::Theirs};

/// A word to a group's coaches. Kept in the store under its name until they have it: names and values stay
/// what they are.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Notice {
    /// A slot found nothing to post.
    SlotEmpty,
    /// A position that is due was checked again.
    NoLongerPasses {
        position: Theirs,
        soundness: Soundness,
    },
    /// A post could not be sent so far.
    PostNotSent {
        kind: KindName,
        number: i64,
        why: Sentence,
    },
    /// The reveal of a post could not be sent so far.
    RevealNotSent {
        kind: KindName,
        number: i64,
        why: Sentence,
    },
    /// An answer that is shown, or taken back, could not be sent so far.
    ExampleNotSent { number: i64, why: Sentence },
    /// What is due could not be made a post so far.
    DueNotSent { name: Option<Theirs>, why: Sentence },
    /// A chat fails, and is started again.
    ChatDown { chat: ChatName, why: Sentence },
    /// A chat waits for somebody's help.
    ChatRefused { chat: ChatName, why: Sentence },
    /// A chat the coaches were told of is up again.
    ChatBack { chat: ChatName },
    /// Finished words, as earlier versions kept them.
    AsWritten { words: Theirs },
}

impl Notice {
    /// As the store keeps it.
    pub(super) fn to_keep(&self) -> String {
        json!(self).to_string()
    }

    /// What the store kept.
    pub(super) fn kept(text: &str) -> Self {
        serde_json::from_str(text).unwrap_or_else(|_| Self::AsWritten {
            words: text.to_owned().into(),
        })
    }
}

/// A chat's name, where people read it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename = "chat-name")]
pub struct ChatName {
    pub key: String,
    pub name: String,
}

impl ChatName {
    /// The chat of this key, with the name that it gives itself.
    pub fn of(key: ChatKey, name: &str) -> Self {
        Self {
            key: key.to_string(),
            name: name.to_owned(),
        }
    }
}

/// What a chat says of itself, such as why it could not do something: a fact of its own, of which the desk
/// knows no more than that there are words for it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Sentence(Value);

impl Sentence {
    /// This fact.
    pub fn of(fact: impl Serialize) -> Self {
        Self(json!(fact))
    }

    /// Finished words, such as a system's.
    pub fn plain(words: impl fmt::Display) -> Self {
        Self::of(Notice::AsWritten {
            words: words.to_string().into(),
        })
    }
}

impl fmt::Display for Sentence {
    /// The fact, for the log.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_notice_is_kept_and_read_back() {
        for notice in [
            Notice::SlotEmpty,
            Notice::PostNotSent {
                kind: KindName::Question,
                number: 3,
                why: Sentence::of(json!({ "is": "channel-gone" })),
            },
            Notice::DueNotSent {
                name: None,
                why: Sentence::plain("the line broke"),
            },
            Notice::ChatBack {
                chat: ChatName::of(ChatKey::of("room"), "The club room"),
            },
        ] {
            assert_eq!(Notice::kept(&notice.to_keep()), notice);
        }
    }

    #[test]
    fn finished_words_of_an_earlier_version_stay_as_they_are() {
        for words in ["Discord is back.", "{\"no\": \"notice\"}", "\"quoted\"", ""] {
            let kept = Notice::kept(words);
            assert_eq!(
                kept,
                Notice::AsWritten {
                    words: words.to_owned().into()
                }
            );
        }
    }
}
