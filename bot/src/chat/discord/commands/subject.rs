//! What `/coach topic` and `/coach preview` are about, as the number that Discord carries in their option.

use crate::desk::{ItemId, PositionId};

/// A position, or what waits in the week and is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A position of the week or the shelf.
    Position(PositionId),
    /// A question or words, which go by their entry in the week.
    Written(ItemId),
}

impl Subject {
    /// Read back from the option. Entries are the numbers below zero, so that a position keeps its own.
    pub fn of(number: i64) -> Self {
        match number {
            ..0 => Self::Written(ItemId::of(number.saturating_neg())),
            _ => Self::Position(PositionId::of(number)),
        }
    }
}

impl From<Subject> for i64 {
    fn from(subject: Subject) -> Self {
        match subject {
            Subject::Position(position) => position.into(),
            Subject::Written(item) => i64::from(item).saturating_neg(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_subject_is_read_back_from_its_number() {
        for subject in [
            Subject::Position(PositionId::of(1)),
            Subject::Written(ItemId::of(1)),
            Subject::Written(ItemId::of(i64::MAX)),
        ] {
            assert_eq!(Subject::of(subject.into()), subject);
        }
    }
}
