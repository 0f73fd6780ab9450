//! What is kept of a person: handed over to them, and erased on their word.

use serde_json::Value;

use super::MemberDesk;
use crate::desk::{
    Person, Place,
    error::{Done, not_allowed, not_found},
    handle::group_at,
    names::NAMELESS_COACH,
    privacy::exported,
    refusal::Refusal,
};

impl MemberDesk<'_> {
    /// Everything kept of a person in this group, as JSON.
    ///
    /// # Errors
    /// When nothing is.
    pub async fn kept_of_me(self, place: &Place, person: &Person) -> Done<Value> {
        let (place, user) = (place.clone(), person.user.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let kept = match db.member_by_user(group.id, &user)? {
                    Some(member) => db.kept_of(member.id)?,
                    None => None,
                };
                match kept {
                    Some(kept) => exported(db, &group, kept),
                    None => not_found(Refusal::NothingKeptOfYou),
                }
            })
            .await
    }

    /// Erases everything kept of a person in this group: replies, verdicts, points, hints, talk, name.
    /// Of a coach, that they coach the group stays, under the name "Coach": somebody has to run it. One
    /// who wants that erased as well is first made a coach no longer.
    ///
    /// # Errors
    /// When nothing is kept, or the person is shut out and has to ask a coach.
    pub async fn erase_me(self, place: &Place, person: &Person) -> Done<()> {
        let now = self.desk.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.desk
            .write(move |tx| {
                let group = group_at(tx, &place)?;
                let Some(member) = tx.member_by_user(group.id, &user)? else {
                    return not_found(Refusal::NothingKeptOfYou);
                };
                if member.removed_at.is_some() {
                    // Erasing would forget that they are shut out: that is for the coach to do.
                    return not_allowed(Refusal::ShutOut);
                }
                tx.delete_member(member.id)?;
                if member.coach {
                    let coach = tx.upsert_member(group.id, &user, NAMELESS_COACH, now)?;
                    tx.set_coach(coach, true)?;
                }
                Ok(())
            })
            .await?;
        // So that no trace is left in the unused parts of the files.
        Ok(self.desk.inner.store.scrub().await?)
    }
}
