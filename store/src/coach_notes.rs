//! Words to a group's coaches that are kept to be read.

use rusqlite::params;

use crate::{Db, GroupId, Moment, StoreError, Tx, time};

/// Words to the coaches.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CoachNote {
    /// Its id; they rise.
    pub id: i64,
    /// The words.
    pub text: String,
    /// When they were written.
    pub written_at: Moment,
}

impl Db<'_> {
    /// The words kept for a group's coaches, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn coach_notes(&self, group: GroupId) -> Result<Vec<CoachNote>, StoreError> {
        self.all(
            "SELECT id, text, written_at FROM coach_notes WHERE group_id = ?1 ORDER BY id",
            [group],
            |row| {
                Ok(CoachNote {
                    id: row.get("id")?,
                    text: row.get("text")?,
                    written_at: time::get(row, "written_at")?,
                })
            },
        )
    }
}

impl Tx<'_> {
    /// Keeps words for a group's coaches; of all that are kept the latest `most` stay.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn keep_coach_note(
        &self,
        group: GroupId,
        text: &str,
        most: usize,
        now: Moment,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO coach_notes (group_id, text, written_at) VALUES (?1, ?2, ?3)",
            params![group, text, time::text(now)],
        )?;
        self.run(
            "DELETE FROM coach_notes WHERE group_id = ?1 AND id NOT IN
                 (SELECT id FROM coach_notes WHERE group_id = ?1 ORDER BY id DESC LIMIT ?2)",
            params![group, i64::try_from(most).unwrap_or(i64::MAX)],
        )?;
        Ok(())
    }

    /// Forgets the words for a group's coaches up to `last`, which they have read.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn forget_coach_notes(&self, group: GroupId, last: i64) -> Result<(), StoreError> {
        self.run(
            "DELETE FROM coach_notes WHERE group_id = ?1 AND id <= ?2",
            (group, last),
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use crate::fixture::{Fixture, at, new_group};

    #[test]
    fn the_latest_notes_stay_until_they_are_read() {
        let f = Fixture::new();
        let group = f.group;
        let other = f.write(|tx| tx.insert_group(&new_group("other")));
        f.write(move |tx| tx.keep_coach_note(other, "elsewhere", 3, at(0)));
        for n in 0..5 {
            f.write(move |tx| tx.keep_coach_note(group, &format!("note {n}"), 3, at(n)));
        }
        let texts = |group| -> Vec<String> {
            let notes = f.read(move |db| db.coach_notes(group));
            notes.into_iter().map(|note| note.text).collect()
        };
        assert_eq!(texts(group), ["note 2", "note 3", "note 4"]);
        let kept = f.read(move |db| db.coach_notes(group));
        assert_eq!(kept[0].written_at, at(2));
        let read = kept[1].id;
        f.write(move |tx| tx.forget_coach_notes(group, read));
        assert_eq!(texts(group), ["note 4"]);
        assert_eq!(texts(other), ["elsewhere"]);
    }
}
