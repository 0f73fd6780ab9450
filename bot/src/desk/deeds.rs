//! What the coaches did: written down with who did it, in the same transaction as the deed itself.

use chrono::{DateTime, Utc};
pub use sealed_move_store::Deed;
use sealed_move_store::{Group, Member, NewDeed, Tx};
use serde::{Deserialize, Serialize};
use serde_json::json;

use super::{
    Desk, KindName, MemberId, Person, Place, Verdict, error::Done, handle::coached, telling::Points,
};
use crate::chess::fact::Theirs;

/// The most deeds in a list.
const SHOWN: usize = 200;
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
    NoteMark { number: i64, points: Points },
    NoteAnswer,
    NoteMerged { name: Theirs, other: Theirs },
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

/// Something a coach did.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DeedRow {
    /// The coach's name; `None` once they were erased.
    pub by: Option<String>,
    /// What.
    pub deed: Deed,
    /// The name of the member it is about.
    pub about: Option<String>,
    /// More of it, where there is more.
    pub note: Option<DeedNote>,
    /// When.
    pub at: DateTime<Utc>,
}

impl Desk {
    /// What the coaches did last, the latest first. Coaches only.
    ///
    /// # Errors
    /// When the person is no coach.
    pub async fn deeds(&self, place: &Place, coach: &Person) -> Done<Vec<DeedRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.read(move |db| {
            let group = coached(db, &place, &coach)?;
            let deeds = db.deeds(group.id, SHOWN)?;
            Ok(deeds
                .into_iter()
                .map(|done| DeedRow {
                    by: done.by,
                    deed: done.deed,
                    about: done.about,
                    note: DeedNote::kept(&done.note),
                    at: done.done_at,
                })
                .collect())
        })
        .await
    }

    /// Writes down a deed of a coach's that changed nothing in the store itself, such as a new link.
    ///
    /// # Errors
    /// When the person is no coach.
    pub async fn note_deed(&self, place: &Place, coach: &Person, deed: Deed) -> Done<()> {
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
            let (group, by) = super::handle::coaching(tx, &place, &coach)?;
            did(tx, &group, &by, deed, None, "", now)
        })
        .await
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
