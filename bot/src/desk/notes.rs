//! Words to a group's coaches that its chat keeps for them to read: those on a coach's page, and those that
//! could not be told when they were said.

pub use sealed_move_store::CoachNote;

use super::{Desk, Earlier, Place, error::Done, handle::group_at};

impl Desk {
    /// Keeps words for the group's coaches; of all that are kept the latest `most` stay.
    /// Where an earlier attempt at it kept the same words, nothing is done.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be written.
    pub async fn note_for_coaches(
        &self,
        place: &Place,
        text: &str,
        most: usize,
        earlier: Option<&Earlier>,
    ) -> Done<()> {
        let now = self.now();
        let (place, text) = (place.clone(), text.to_owned());
        let since = earlier.map(|earlier| earlier.since);
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            if let Some(since) = since
                && tx
                    .coach_notes(group.id)?
                    .iter()
                    .any(|note| note.text == text && note.written_at >= since)
            {
                return Ok(());
            }
            Ok(tx.keep_coach_note(group.id, &text, most, now)?)
        })
        .await
    }

    /// The words kept for the group's coaches, the oldest first.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be read.
    pub async fn notes_for_coaches(&self, place: &Place) -> Done<Vec<CoachNote>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db.coach_notes(group.id)?)
        })
        .await
    }

    /// A coach has read the words up to the one of id `last`: they are kept no longer.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be written.
    pub async fn notes_read(&self, place: &Place, last: i64) -> Done<()> {
        let place = place.clone();
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            Ok(tx.forget_coach_notes(group.id, last)?)
        })
        .await
    }
}
