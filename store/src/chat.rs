//! The key by which a chat is known: a word, and no list of them.

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// The most letters of a key.
const LONGEST: usize = 20;

/// Which chat: a word of 1 to 20 lower-case ASCII letters, such as `room`. The schema checks the same.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct ChatKey {
    /// The letters, and zeros behind them.
    letters: [u8; LONGEST],
}

/// A text that is no chat's key.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no chat's key; a key is 1 to 20 lower-case letters from a to z")]
pub struct NoChatKey(String);

impl ChatKey {
    /// The key of a chat that the program knows; a constant made by it is checked when it is compiled.
    ///
    /// # Panics
    /// When the word is no key.
    pub const fn of(word: &str) -> Self {
        match Self::read(word) {
            Some(key) => key,
            None => panic!("a chat's key is 1 to 20 lower-case letters from a to z"),
        }
    }

    const fn read(word: &str) -> Option<Self> {
        let bytes = word.as_bytes();
        if bytes.is_empty() || bytes.len() > LONGEST {
            return None;
        }
        let mut letters = [0; LONGEST];
        let mut at = 0;
        while at < bytes.len() {
            if !bytes[at].is_ascii_lowercase() {
                return None;
            }
            letters[at] = bytes[at];
            at += 1;
        }
        Some(Self { letters })
    }

    /// The word.
    pub fn as_str(&self) -> &str {
        let end = self.letters.iter().position(|letter| *letter == 0);
        // Letters of ASCII are text.
        std::str::from_utf8(&self.letters[..end.unwrap_or(LONGEST)]).unwrap_or_default()
    }
}

impl std::fmt::Display for ChatKey {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.as_str())
    }
}

impl std::fmt::Debug for ChatKey {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.as_str())
    }
}

impl std::str::FromStr for ChatKey {
    type Err = NoChatKey;
    fn from_str(word: &str) -> Result<Self, NoChatKey> {
        Self::read(word).ok_or_else(|| NoChatKey(word.chars().take(100).collect()))
    }
}

impl Serialize for ChatKey {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.as_str())
    }
}

impl<'de> Deserialize<'de> for ChatKey {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let word = String::deserialize(deserializer)?;
        word.parse().map_err(serde::de::Error::custom)
    }
}

impl ToSql for ChatKey {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(self.as_str().into())
    }
}

impl FromSql for ChatKey {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        value.as_str()?.parse().map_err(FromSqlError::other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        StoreError,
        fixture::{Fixture, new_group},
    };

    const WRONG: [&str; 9] = [
        "",
        "Room",
        "a room",
        "room1",
        "room-a",
        "abcdefghijklmnopqrstu",
        "räume",
        "room\0",
        "*",
    ];

    #[test]
    fn a_key_is_a_short_word_and_comes_back() {
        for word in ["a", "room", "abcdefghijklmnopqrst"] {
            let key: ChatKey = word.parse().unwrap();
            assert_eq!((key.as_str(), ChatKey::of(word)), (word, key));
            let json = serde_json::to_string(&key).unwrap();
            assert_eq!(json, format!("{word:?}"));
            assert_eq!(serde_json::from_str::<ChatKey>(&json).unwrap(), key);
        }
        for wrong in WRONG {
            assert!(wrong.parse::<ChatKey>().is_err(), "{wrong:?}");
        }
    }

    /// The store holds the group of any chat, and its schema takes what the type takes.
    #[test]
    fn the_schema_takes_the_same_words() {
        let f = Fixture::new();
        for word in ["a", "lines", "abcdefghijklmnopqrst"] {
            let chat = ChatKey::of(word);
            f.write(move |tx| {
                let mut new = new_group("club");
                new.chat = chat;
                tx.insert_group(&new)
            });
            assert_eq!(f.read(move |db| db.groups_of(chat)).len(), 1);
        }
        // A text is cut at a zero on its way into a comparison, so that one is left to the type.
        for wrong in WRONG.into_iter().filter(|wrong| !wrong.contains('\0')) {
            let error = f
                .store
                .write_blocking(move |tx| tx.run("UPDATE groups SET chat = ?1", [wrong]))
                .unwrap_err();
            assert!(matches!(error, StoreError::Rule(_)), "{wrong:?}: {error}");
        }
    }
}
