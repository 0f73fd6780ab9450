//! What the coaches did: written down with who did it, in the same transaction as the deed itself.

use chrono::{DateTime, Utc};
use sealed_move_store::{Group, Member, NewDeed, Tx};
use serde::{Deserialize, Serialize};
use serde_json::json;

use super::{KindName, MemberId, Verdict, error::Done};
use crate::chess::fact::{Decimal, Pattern, Theirs};

pub use sealed_move_store::Deed;

/// The most characters of a deed's note.
const LONGEST_NOTE: usize = 400;

/// More of a deed, part of a line. Kept as a fact, under its name; words of people, and what earlier versions
/// wrote, as they are.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
#[allow(missing_docs)]
pub enum DeedNote {
    NotePost { kind: KindName, number: i64 },
    NoteVerdict { number: i64, verdict: Verdict },
    NoteMark { number: i64, points: Decimal },
    NoteAnswer,
    NoteMerged { name: Theirs, other: Theirs },
    NotePattern { pattern: Pattern },
    NoteWords { words: Theirs },
}

impl DeedNote {
    /// As the store keeps it.
    pub(super) fn to_keep(&self) -> String {
        json!(self).to_string()
    }

    /// What the store kept; `None` for nothing.
    pub fn kept(text: &str) -> Option<Self> {
        let words = || Self::NoteWords {
            words: text.to_owned().into(),
        };
        (!text.is_empty()).then(|| serde_json::from_str(text).unwrap_or_else(|_| words()))
    }
}

/// Writes a deed down.
pub(super) fn did(
    tx: &Tx<'_>,
    group: &Group,
    by: &Member,
    deed: Deed,
    about: Option<MemberId>,
    note: &str,
    now: DateTime<Utc>,
) -> Done<()> {
    tx.insert_deed(&NewDeed {
        group_id: group.id,
        by_id: by.id,
        deed,
        about_id: about,
        note: note.chars().take(LONGEST_NOTE).collect(),
        done_at: now,
    })?;
    Ok(())
}
