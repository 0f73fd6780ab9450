//! What the coaches did, as they see it.

use chrono::{DateTime, Utc};
use serde::Serialize;

use super::CoachDesk;
use crate::desk::{
    Deed, Person, Place,
    deeds::{DeedNote, did},
    error::Done,
    handle::coached,
};

/// The most deeds in a list.
const SHOWN: usize = 200;

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

impl CoachDesk<'_> {
    /// What the coaches did last, the latest first. Coaches only.
    ///
    /// # Errors
    /// When the person is no coach.
    pub async fn deeds(self, place: &Place, coach: &Person) -> Done<Vec<DeedRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
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
    pub async fn note_deed(self, place: &Place, coach: &Person, deed: Deed) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = crate::desk::handle::coaching(tx, &place, &coach)?;
                did(tx, &group, &by, deed, None, "", now)
            })
            .await
    }
}
