//! Members of a group, coaches among them.

use rusqlite::{Row, params};

use crate::{Db, GroupId, MemberId, Moment, StoreError, Tx, time};

/// A member of a group.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Member {
    /// Its id.
    pub id: MemberId,
    /// The group.
    pub group_id: GroupId,
    /// The chat's id of the person.
    pub chat_user: String,
    /// The name shown, 1 to 80 characters.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when.
    pub joined_at: Moment,
    /// Whether they are kept from talking; an end that has come is for the caller to see.
    pub mute: Option<Mute>,
    /// When a coach shut them out, if one did.
    pub removed_at: Option<Moment>,
    /// The language they chose to be spoken to in, as a BCP 47 tag.
    pub language: Option<String>,
    /// The one their client asked for when it was last heard of.
    pub client_language: Option<String>,
}

/// A member is kept from talking.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Mute {
    /// Since when.
    pub at: Moment,
    /// Until when; `None` until a coach lifts it.
    pub until: Option<Moment>,
    /// Why, in the coach's words; may be empty.
    pub why: String,
}

pub(crate) fn read(row: &Row<'_>) -> rusqlite::Result<Member> {
    Ok(Member {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        chat_user: row.get("chat_user")?,
        name: row.get("name")?,
        coach: row.get("coach")?,
        joined_at: time::get(row, "joined_at")?,
        mute: match time::get_maybe(row, "muted_at")? {
            Some(at) => Some(Mute {
                at,
                until: time::get_maybe(row, "muted_until")?,
                why: row.get("muted_why")?,
            }),
            None => None,
        },
        removed_at: time::get_maybe(row, "removed_at")?,
        language: row.get("language")?,
        client_language: row.get("client_language")?,
    })
}

impl Db<'_> {
    /// A member by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn member(&self, id: MemberId) -> Result<Option<Member>, StoreError> {
        self.maybe_one("SELECT * FROM members WHERE id = ?1", [id], read)
    }

    /// The member a chat knows as `chat_user`, by that id or by a further one of theirs.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn member_by_user(
        &self,
        group: GroupId,
        chat_user: &str,
    ) -> Result<Option<Member>, StoreError> {
        self.maybe_one(
            "SELECT * FROM members WHERE group_id = ?1 AND chat_user = ?2
             UNION ALL
             SELECT m.* FROM identities i JOIN members m ON m.id = i.member_id
             WHERE i.group_id = ?1 AND i.chat_user = ?2",
            params![group, chat_user],
            read,
        )
    }

    /// The id that the next new member will have.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn next_member(&self) -> Result<MemberId, StoreError> {
        let found = self.maybe_one(
            "SELECT seq + 1 FROM sqlite_sequence WHERE name = 'members'",
            [],
            |row| row.get(0),
        )?;
        Ok(found.unwrap_or(MemberId::of(1)))
    }

    /// All members of a group by name.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn members(&self, group: GroupId) -> Result<Vec<Member>, StoreError> {
        self.all(
            "SELECT * FROM members WHERE group_id = ?1 ORDER BY name, id",
            [group],
            read,
        )
    }

    /// The coaches of a group, the first one first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn coaches(&self, group: GroupId) -> Result<Vec<Member>, StoreError> {
        self.all(
            "SELECT * FROM members WHERE group_id = ?1 AND coach = 1 ORDER BY joined_at, id",
            [group],
            read,
        )
    }
}

impl Tx<'_> {
    /// Makes a person a member, or renames them; returns the member's id. One who is known by a further
    /// id keeps the name they have.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn upsert_member(
        &self,
        group: GroupId,
        chat_user: &str,
        name: &str,
        now: Moment,
    ) -> Result<MemberId, StoreError> {
        // A rewrite under the same name would wake every listener for nothing.
        if let Some(member) = self.member_by_user(group, chat_user)? {
            if member.chat_user == chat_user && member.name != name {
                self.rename_member(member.id, name)?;
            }
            return Ok(member.id);
        }
        self.insert(
            "INSERT INTO members (group_id, chat_user, name, joined_at) VALUES (?1, ?2, ?3, ?4)",
            params![group, chat_user, name, time::text(now)],
        )
    }

    /// Makes `chat_user` the id by which the chat knows a member, in place of the one before.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn hand_member_over(&self, member: MemberId, chat_user: &str) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET chat_user = ?2 WHERE id = ?1",
            params![member, chat_user],
        )
    }

    /// Gives a member another name.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn rename_member(&self, member: MemberId, name: &str) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET name = ?2 WHERE id = ?1",
            params![member, name],
        )
    }

    /// Keeps the language that a member chose, or that they chose none.
    ///
    /// # Errors
    /// When there is no such row, the tag is none, or the store cannot be written.
    pub fn set_language(&self, member: MemberId, tag: Option<&str>) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET language = ?2 WHERE id = ?1",
            params![member, tag],
        )
    }

    /// Keeps the language that a member's client asks for.
    ///
    /// # Errors
    /// When there is no such row, the tag is none, or the store cannot be written.
    pub fn set_client_language(&self, member: MemberId, tag: &str) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET client_language = ?2 WHERE id = ?1",
            params![member, tag],
        )
    }

    /// Keeps a member from talking, or lets them talk again.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_mute(&self, member: MemberId, mute: Option<&Mute>) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET muted_at = ?2, muted_until = ?3, muted_why = ?4 WHERE id = ?1",
            params![
                member,
                mute.map(|mute| time::text(mute.at)),
                time::maybe(mute.and_then(|mute| mute.until)),
                mute.map_or("", |mute| mute.why.as_str())
            ],
        )
    }

    /// Shuts a member out since a moment, or lets them back.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_removed(&self, member: MemberId, since: Option<Moment>) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET removed_at = ?2 WHERE id = ?1",
            params![member, time::maybe(since)],
        )
    }

    /// Makes a member a coach, or no longer one.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_coach(&self, member: MemberId, coach: bool) -> Result<(), StoreError> {
        self.run_one(
            "member",
            member,
            "UPDATE members SET coach = ?2 WHERE id = ?1",
            params![member, coach],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, new_group};

    #[test]
    fn a_person_is_one_member_under_any_name() {
        let f = Fixture::new();
        let group = f.group;
        let first = f.write(move |tx| tx.upsert_member(group, "u1", "Ana", at(0)));
        let again = f.write(move |tx| tx.upsert_member(group, "u1", "Ana Rita", at(9)));
        assert_eq!(first, again);
        let kept = f.read(move |db| db.member(first)).unwrap();
        assert_eq!((kept.name.as_str(), kept.joined_at), ("Ana Rita", at(0)));
        let elsewhere = f.write(|tx| {
            let other = tx.insert_group(&new_group("other"))?;
            tx.upsert_member(other, "u1", "Ana", at(0))
        });
        assert_ne!(first, elsewhere);
        assert_eq!(f.read(move |db| db.members(group)).len(), 1);
    }

    #[test]
    fn coaches_are_named_and_unnamed() {
        let f = Fixture::new();
        let group = f.group;
        let (b, a) = f.write(move |tx| {
            let b = tx.upsert_member(group, "b", "Bruno", at(0))?;
            let a = tx.upsert_member(group, "a", "Ana", at(1))?;
            tx.set_coach(a, true)?;
            tx.set_coach(b, true)?;
            Ok((b, a))
        });
        let ids = |members: Vec<Member>| members.into_iter().map(|m| m.id).collect::<Vec<_>>();
        assert_eq!(ids(f.read(move |db| db.coaches(group))), [b, a]);
        assert_eq!(ids(f.read(move |db| db.members(group))), [a, b]);
        f.write(move |tx| tx.set_coach(b, false));
        assert_eq!(ids(f.read(move |db| db.coaches(group))), [a]);
    }

    #[test]
    fn a_mute_and_a_removal_are_kept_and_undone() {
        let f = Fixture::new();
        let group = f.group;
        let ana = f.write(move |tx| tx.upsert_member(group, "u1", "Ana", at(0)));
        let mute = Mute {
            at: at(1),
            until: Some(at(61)),
            why: "cool down".into(),
        };
        let kept = mute.clone();
        f.write(move |tx| {
            tx.set_mute(ana, Some(&kept))?;
            tx.set_removed(ana, Some(at(2)))
        });
        let member = f.read(move |db| db.member(ana)).unwrap();
        assert_eq!((member.mute, member.removed_at), (Some(mute), Some(at(2))));
        f.write(move |tx| {
            tx.set_mute(ana, None)?;
            tx.set_removed(ana, None)
        });
        let member = f.read(move |db| db.member(ana)).unwrap();
        assert_eq!((member.mute, member.removed_at), (None, None));
        let nobody = f
            .store
            .write_blocking(|tx| tx.set_removed(MemberId::of(99), Some(at(2))));
        assert!(
            matches!(nobody, Err(StoreError::NoSuch { .. })),
            "{nobody:?}"
        );
    }

    #[test]
    fn the_id_of_someone_erased_is_never_given_again() {
        let f = Fixture::new();
        let group = f.group;
        let gone = f.write(move |tx| tx.upsert_member(group, "u1", "Ana", at(0)));
        f.write(move |tx| tx.delete_member(gone));
        let next = f.write(move |tx| tx.upsert_member(group, "u2", "Bruno", at(0)));
        assert!(next > gone);
    }
}
