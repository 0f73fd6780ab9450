//! What the coaches did, by whom, and about whom.

use rusqlite::{Row, params};

use crate::{Db, Deed, GroupId, MemberId, Moment, StoreError, Tx, time};

/// Something a coach did, to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewDeed {
    /// The group.
    pub group_id: GroupId,
    /// The coach.
    pub by_id: MemberId,
    /// What.
    pub deed: Deed,
    /// The member it is about, if it is about one.
    pub about_id: Option<MemberId>,
    /// In more words, at most 400 characters; may be empty.
    pub note: String,
    /// When.
    pub done_at: Moment,
}

/// Something a coach did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DeedRow {
    /// Its id.
    pub id: i64,
    /// The coach's name; `None` once they were erased.
    pub by: Option<String>,
    /// What.
    pub deed: Deed,
    /// The name of the member it is about.
    pub about: Option<String>,
    /// In more words; may be empty.
    pub note: String,
    /// When.
    pub done_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<DeedRow> {
    Ok(DeedRow {
        id: row.get("id")?,
        by: row.get("by_name")?,
        deed: row.get("deed")?,
        about: row.get("about_name")?,
        note: row.get("note")?,
        done_at: time::get(row, "done_at")?,
    })
}

const SELECT: &str =
    "SELECT d.id, d.deed, d.note, d.done_at, b.name AS by_name, a.name AS about_name
    FROM deeds d LEFT JOIN members b ON b.id = d.by_id LEFT JOIN members a ON a.id = d.about_id";

impl Db<'_> {
    /// The latest `most` deeds of a group's coaches, the latest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn deeds(&self, group: GroupId, most: usize) -> Result<Vec<DeedRow>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE d.group_id = ?1 ORDER BY d.id DESC LIMIT ?2"),
            params![group, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )
    }

    /// Every deed that is about a member, the first one first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn deeds_about(&self, member: MemberId) -> Result<Vec<DeedRow>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE d.about_id = ?1 ORDER BY d.id"),
            [member],
            read,
        )
    }
}

impl Tx<'_> {
    /// Keeps what a coach did.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_deed(&self, new: &NewDeed) -> Result<i64, StoreError> {
        self.insert(
            "INSERT INTO deeds (group_id, by_id, deed, about_id, note, done_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            params![
                new.group_id,
                new.by_id,
                new.deed,
                new.about_id,
                new.note,
                time::text(new.done_at)
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at};

    #[test]
    fn deeds_tell_the_coaches_apart_and_go_with_whom_they_are_about() {
        let f = Fixture::new();
        let group = f.group;
        let (kim, ana) = f.write(move |tx| {
            let kim = tx.upsert_member(group, "k", "Kim", at(0))?;
            let lee = tx.upsert_member(group, "l", "Lee", at(0))?;
            let ana = tx.upsert_member(group, "a", "Ana", at(0))?;
            for (by, deed, about) in [(kim, Deed::Mute, Some(ana)), (lee, Deed::MemberLink, None)] {
                tx.insert_deed(&NewDeed {
                    group_id: group,
                    by_id: by,
                    deed,
                    about_id: about,
                    note: String::new(),
                    done_at: at(1),
                })?;
            }
            Ok((kim, ana))
        });
        let all = f.read(move |db| db.deeds(group, 9));
        let said: Vec<_> = all
            .iter()
            .map(|d| (d.by.as_deref(), d.deed, d.about.as_deref()))
            .collect();
        assert_eq!(
            said,
            [
                (Some("Lee"), Deed::MemberLink, None),
                (Some("Kim"), Deed::Mute, Some("Ana"))
            ]
        );
        assert_eq!(f.read(move |db| db.deeds_about(ana)).len(), 1);
        f.write(move |tx| tx.delete_member(kim));
        assert_eq!(f.read(move |db| db.deeds(group, 9))[1].by, None);
        f.write(move |tx| tx.delete_member(ana));
        assert_eq!(f.read(move |db| db.deeds(group, 9)).len(), 1);
    }
}
