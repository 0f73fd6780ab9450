//! Words to a group's coaches that its chat keeps for them to read: those on a coach's page, and those that
//! could not be told when they were said.

use chrono::{DateTime, Utc};

use super::{Desk, Earlier, Notice, Place, error::Done, handle::group_at};

/// Words to the coaches that are kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoteRow {
    /// Its id; they rise.
    pub id: i64,
    /// What is said.
    pub notice: Notice,
    /// Since when it is kept.
    pub at: DateTime<Utc>,
}

impl Desk {
    /// Keeps words for the group's coaches; of all that are kept the latest `most` stay.
    /// Where an earlier attempt at it kept the same words, nothing is done.
    ///
    /// # Errors
    /// When there is no such group, or the store cannot be written.
    pub async fn note_for_coaches(
        &self,
        place: &Place,
        notice: &Notice,
        most: usize,
        earlier: Option<&Earlier>,
    ) -> Done<()> {
        let now = self.now();
        let (place, text) = (place.clone(), notice.to_keep());
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
    pub async fn notes_for_coaches(&self, place: &Place) -> Done<Vec<NoteRow>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let rows = db.coach_notes(group.id)?.into_iter();
            Ok(rows
                .map(|row| NoteRow {
                    id: row.id,
                    notice: Notice::kept(&row.text),
                    at: row.written_at,
                })
                .collect())
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
