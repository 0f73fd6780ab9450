//! Further ids by which a chat knows a member: another device, or somebody merged into them.

use rusqlite::params;

use crate::{Db, GroupId, MemberId, Moment, StoreError, Tx, time};

impl Db<'_> {
    /// Since when each further id of a member is theirs, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn devices(&self, member: MemberId) -> Result<Vec<Moment>, StoreError> {
        self.all(
            "SELECT since FROM identities WHERE member_id = ?1 ORDER BY since",
            [member],
            |row| time::get(row, "since"),
        )
    }

    /// Every id by which the chat knows a member, their first one first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn ids_of(&self, member: MemberId) -> Result<Vec<String>, StoreError> {
        self.all(
            "SELECT chat_user FROM (
                 SELECT chat_user, '' AS since FROM members WHERE id = ?1
                 UNION ALL SELECT chat_user, since FROM identities WHERE member_id = ?1
             ) ORDER BY since",
            [member],
            |row| row.get(0),
        )
    }
}

impl Tx<'_> {
    /// Makes `chat_user` a further id of a member.
    ///
    /// # Errors
    /// [`StoreError::Rule`] when the id is somebody's already.
    pub fn add_identity(
        &self,
        group: GroupId,
        member: MemberId,
        chat_user: &str,
        now: Moment,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO identities (group_id, chat_user, member_id, since) VALUES (?1, ?2, ?3, ?4)",
            params![group, chat_user, member, time::text(now)],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at};

    #[test]
    fn a_second_device_is_the_same_member() {
        let f = Fixture::new();
        let group = f.group;
        let ana = f.write(move |tx| {
            let ana = tx.upsert_member(group, "phone", "Ana", at(0))?;
            tx.add_identity(group, ana, "tablet", at(1))?;
            Ok(ana)
        });
        let found = f
            .read(move |db| db.member_by_user(group, "tablet"))
            .unwrap();
        assert_eq!((found.id, found.chat_user.as_str()), (ana, "phone"));
        let again = f.write(move |tx| tx.upsert_member(group, "tablet", "Tablet", at(2)));
        assert_eq!(again, ana);
        assert_eq!(f.read(move |db| db.member(ana)).unwrap().name, "Ana");
        assert_eq!(f.read(move |db| db.devices(ana)), [at(1)]);
        assert_eq!(f.read(move |db| db.ids_of(ana)), ["phone", "tablet"]);
        // One id is one member's.
        for taken in ["phone", "tablet"] {
            let twice = f
                .store
                .write_blocking(move |tx| tx.add_identity(group, ana, taken, at(3)));
            assert!(matches!(twice, Err(StoreError::Rule(_))), "{twice:?}");
        }
        f.write(move |tx| tx.delete_member(ana));
        assert!(
            f.read(move |db| db.member_by_user(group, "tablet"))
                .is_none()
        );
    }
}
