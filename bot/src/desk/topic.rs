//! What a topic is called.

use std::str::FromStr;

use sealed_move_store::{GroupId, TopicId, Tx};

use crate::chess::{check::Statement, read::Entry};

use super::{
    error::{DeskError, Done},
    noted::Noted,
    refusal::{Named, Refusal},
    text,
};

/// How much is shown of one that is too long.
const SHOWN: usize = 40;

/// The name of a topic: one line of 1 to [`TopicName::LONGEST`] characters, none of which hides or reorders.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TopicName(String);

impl TopicName {
    /// The most characters of it.
    pub const LONGEST: usize = 80;

    /// What was filled in where a topic may be named; `None` where the field was left empty.
    ///
    /// # Errors
    /// When it is longer than a name may be.
    pub fn filled_in(field: Option<&str>) -> Result<Option<Self>, DeskError> {
        match field.map(str::parse) {
            None | Some(Err(DeskError::BadRequest(Refusal::NameNeeded { .. }))) => Ok(None),
            Some(read) => read.map(Some),
        }
    }

    /// The topic that a file names for a position, and what is to be said of it where it cannot be used.
    pub fn of_entry(entry: &Entry) -> (Option<Self>, Option<Statement>) {
        match Self::filled_in(entry.topic.as_deref()) {
            Ok(topic) => (topic, None),
            Err(_) => (None, Some(left_out(entry).into())),
        }
    }

    /// The group's topic of that name, made when there is none.
    pub(super) fn in_group(&self, tx: &Tx<'_>, group: GroupId) -> Done<TopicId> {
        Ok(tx.ensure_topic(group, &self.0)?)
    }

    /// The name.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl FromStr for TopicName {
    type Err = DeskError;

    /// Makes it harmless; one of which nothing is left, or that is too long, is refused.
    fn from_str(raw: &str) -> Result<Self, DeskError> {
        text::title(raw, Named::Topic, Self::LONGEST).map(Self)
    }
}

impl From<TopicName> for String {
    fn from(topic: TopicName) -> Self {
        topic.0
    }
}

fn left_out(entry: &Entry) -> Noted {
    let given = entry.topic.as_deref().unwrap_or_default();
    let begins: String = given.chars().take(SHOWN).collect();
    Noted::TopicTooLong {
        begins: begins.trim().into(),
        most: TopicName::LONGEST.try_into().unwrap_or(u32::MAX),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_one_line_of_letters_that_are_seen() {
        let name: TopicName = " Smothered\n mate\u{202e} ".parse().expect("a name");
        assert_eq!(name.as_str(), "Smothered mate");
        assert!("t".repeat(80).parse::<TopicName>().is_ok());
        for (raw, wanted) in [
            (
                " \u{200b} ".to_owned(),
                Refusal::NameNeeded { what: Named::Topic },
            ),
            (
                "t".repeat(81),
                Refusal::NameTooLong {
                    what: Named::Topic,
                    most: TopicName::LONGEST.into(),
                },
            ),
        ] {
            match raw.parse::<TopicName>() {
                Err(DeskError::BadRequest(refusal)) => assert_eq!(refusal, wanted),
                other => panic!("{other:?}"),
            }
        }
    }

    #[test]
    fn a_topic_of_a_file_is_taken_or_said_to_be_left_out() {
        let of = |topic: &str| {
            TopicName::of_entry(&Entry {
                topic: Some(topic.into()),
                ..Entry::default()
            })
        };
        let (topic, said) = of("Plans");
        assert_eq!(topic.as_ref().map(TopicName::as_str), Some("Plans"));
        assert_eq!(said, None);
        assert_eq!(of("  "), (None, None));
        let left_out = Noted::TopicTooLong {
            begins: "t".repeat(40).into(),
            most: 80,
        };
        assert_eq!(of(&"t".repeat(81)), (None, Some(left_out.into())));
    }

    #[test]
    fn a_field_left_empty_names_none() {
        for empty in [None, Some(""), Some(" \u{200b} ")] {
            assert_eq!(TopicName::filled_in(empty).expect("fit"), None);
        }
        let filled = TopicName::filled_in(Some("Plans")).expect("fit");
        assert_eq!(filled.as_ref().map(TopicName::as_str), Some("Plans"));
        assert!(TopicName::filled_in(Some(&"t".repeat(81))).is_err());
    }
}
