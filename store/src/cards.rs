//! Cards of topics that the coaches of a group wrote.

use rusqlite::{Row, params};
use serde_json::Value;

use crate::{Db, GroupId, Moment, StoreError, TopicId, Tx, time};

/// What a card is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CardOf {
    /// A mating pattern, by its name.
    Pattern(String),
    /// A topic of the group.
    Topic(TopicId),
}

impl CardOf {
    /// The pattern and the topic, one of which there is.
    fn columns(&self) -> (Option<&str>, Option<TopicId>) {
        match self {
            Self::Pattern(name) => (Some(name), None),
            Self::Topic(id) => (None, Some(*id)),
        }
    }
}

/// What a coach wrote on a card.
#[derive(Clone, Debug, PartialEq)]
pub struct CardWords {
    /// What it is about, 1 to 500 characters.
    pub definition: String,
    /// What to look for, at most 400 characters; may be empty.
    pub look: String,
    /// FEN of the example.
    pub fen: Option<String>,
    /// The example's moves in SAN, as a JSON list; empty where there is no example.
    pub line: Value,
}

/// A card.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// What it is about.
    pub about: CardOf,
    /// What is on it.
    pub words: CardWords,
    /// When it was written last.
    pub written_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Card> {
    let pattern: Option<String> = row.get("pattern")?;
    Ok(Card {
        about: match pattern {
            Some(name) => CardOf::Pattern(name),
            None => CardOf::Topic(row.get("topic_id")?),
        },
        words: CardWords {
            definition: row.get("definition")?,
            look: row.get("look")?,
            fen: row.get("fen")?,
            line: row.get("line")?,
        },
        written_at: time::get(row, "written_at")?,
    })
}

impl Db<'_> {
    /// The cards that a group's coaches wrote, in no order.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn cards(&self, group: GroupId) -> Result<Vec<Card>, StoreError> {
        self.all(
            "SELECT * FROM cards WHERE group_id = ?1 ORDER BY id",
            [group],
            read,
        )
    }
}

impl Tx<'_> {
    /// Keeps a card, in place of the one that the group's coaches wrote about the same before.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn keep_card(
        &self,
        group: GroupId,
        about: &CardOf,
        words: &CardWords,
        now: Moment,
    ) -> Result<(), StoreError> {
        self.forget_card(group, about)?;
        let (pattern, topic) = about.columns();
        self.run(
            "INSERT INTO cards (group_id, pattern, topic_id, definition, look, fen, line, written_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
            params![
                group,
                pattern,
                topic,
                words.definition,
                words.look,
                words.fen,
                words.line,
                time::text(now)
            ],
        )?;
        Ok(())
    }

    /// Takes a card that the group's coaches wrote away; whether there was one.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn forget_card(&self, group: GroupId, about: &CardOf) -> Result<bool, StoreError> {
        let (pattern, topic) = about.columns();
        let gone = self.run(
            "DELETE FROM cards WHERE group_id = ?1 AND pattern IS ?2 AND topic_id IS ?3",
            params![group, pattern, topic],
        )?;
        Ok(gone > 0)
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::fixture::{Fixture, at, new_group};

    fn words(definition: &str) -> CardWords {
        CardWords {
            definition: definition.into(),
            look: String::new(),
            fen: None,
            line: json!([]),
        }
    }

    #[test]
    fn a_card_is_written_over_and_taken_away() {
        let f = Fixture::new();
        let group = f.group;
        let other = f.write(|tx| tx.insert_group(&new_group("other")));
        let topic = f.write(move |tx| tx.ensure_topic(group, "Plans"));
        let abouts = [CardOf::Pattern("boden".into()), CardOf::Topic(topic)];
        for about in abouts.clone() {
            let (first, then) = (about.clone(), about.clone());
            f.write(move |tx| tx.keep_card(group, &first, &words("First."), at(0)));
            let second = CardWords {
                fen: Some("8/8 w".into()),
                line: json!(["Ke2"]),
                look: "There.".into(),
                ..words("Second.")
            };
            let written = second.clone();
            f.write(move |tx| tx.keep_card(group, &then, &written, at(1)));
            let kept = f.read(move |db| db.cards(group));
            let card = kept.iter().find(|card| card.about == about).unwrap();
            assert_eq!((&card.words, card.written_at), (&second, at(1)));
        }
        assert_eq!(f.read(move |db| db.cards(group)).len(), 2);
        assert!(f.read(move |db| db.cards(other)).is_empty());
        for about in abouts {
            let again = about.clone();
            assert!(f.write(move |tx| tx.forget_card(group, &about)));
            assert!(!f.write(move |tx| tx.forget_card(group, &again)));
        }
        assert!(f.read(move |db| db.cards(group)).is_empty());
    }

    #[test]
    fn what_is_no_card_is_refused() {
        let f = Fixture::new();
        let group = f.group;
        let other = f.write(|tx| tx.insert_group(&new_group("other")));
        let foreign = f.write(move |tx| tx.ensure_topic(other, "Plans"));
        let keep = |about: CardOf, words: CardWords| {
            f.store
                .write_blocking(move |tx| tx.keep_card(group, &about, &words, at(0)))
        };
        let boden = || CardOf::Pattern("boden".into());
        let refused = keep(CardOf::Topic(foreign), words("Elsewhere."));
        assert!(refused.unwrap_err().to_string().contains("another group"));
        assert!(keep(boden(), words("  ")).is_err());
        assert!(keep(boden(), words(&"x".repeat(501))).is_err());
        let moves_alone = CardWords {
            line: json!(["Ke2"]),
            ..words("No position.")
        };
        assert!(keep(boden(), moves_alone).is_err());
    }
}
