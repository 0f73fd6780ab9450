//! What is kept of one person: handing it over, and erasing it.

use serde::Serialize;

use crate::{Attempt, Db, Moment, Reply, StoreError, Tx, VerdictRow};

/// Everything kept of one member of one group.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KeptPerson {
    /// The chat's id of the person.
    pub chat_user: String,
    /// The name shown.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when.
    pub joined_at: Moment,
    /// The group's name.
    pub group: String,
    /// What they replied.
    pub replies: Vec<Reply>,
    /// Every verdict given on that, those that no longer count among them.
    pub verdicts: Vec<VerdictRow>,
    /// Where each attempt stands.
    pub attempts: Vec<Attempt>,
    /// Hint steps taken: post, step, when.
    pub hints: Vec<(i64, u8, Moment)>,
    /// What they said in the room: when, what.
    pub talk: Vec<(Moment, String)>,
}

impl Db<'_> {
    /// Everything kept of a member; `None` when there is no such member.
    pub fn kept_of(&self, member: i64) -> Result<Option<KeptPerson>, StoreError> {
        let _ = member;
        todo!()
    }
}

impl Tx<'_> {
    /// Erases a member with everything kept of them; says whether there was such a member. Run
    /// [`crate::Store::scrub`] afterwards, so that no trace is left in the files beside the store.
    pub fn erase_member(&self, member: i64) -> Result<bool, StoreError> {
        Ok(self.run("DELETE FROM members WHERE id = ?1", [member])? > 0)
    }
}
