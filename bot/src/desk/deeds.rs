//! What the coaches did: written down with who did it, in the same transaction as the deed itself.

use chrono::{DateTime, Utc};
pub use sealed_move_store::Deed;
use sealed_move_store::{Group, Member, NewDeed, Tx};
use serde::Serialize;

use super::{Desk, MemberId, Person, Place, error::Done, handle::coached};

/// The most deeds in a list.
const SHOWN: usize = 200;
/// The most characters of a deed's note.
const LONGEST_NOTE: usize = 400;

/// Something a coach did.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct DeedRow {
    /// The coach's name; `None` once they were erased.
    pub by: Option<String>,
    /// What.
    pub deed: Deed,
    /// The name of the member it is about.
    pub about: Option<String>,
    /// In more words; may be empty.
    pub note: String,
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
                    note: done.note,
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
