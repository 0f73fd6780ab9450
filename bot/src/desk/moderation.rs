//! Messages that are taken out of sight: taken back by their writer, or hidden by a coach. They are gone
//! for everyone at once, and kept for the coaches with who did it and when.

use super::{
    Desk, Person, Place,
    error::{Done, not_found},
    handle::group_at,
    refusal::Refusal,
};

impl Desk {
    /// Takes back a line of talk: its writer's own only.
    ///
    /// # Errors
    /// When it is not theirs, or there is no such line.
    pub async fn take_back(&self, place: &Place, person: &Person, line: i64) -> Done<()> {
        let now = self.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let member = tx.member_by_user(group.id, &user)?;
            // Of others' messages nothing is said, not even whether there is one.
            let own = match (member, tx.talk_line(line)?) {
                (Some(member), Some(line)) if line.member_id == member.id => Some((member, line)),
                _ => None,
            };
            let Some((member, line)) = own else {
                return not_found(Refusal::NoMessageOfYours);
            };
            if line.gone.is_none() {
                tx.set_talk_gone(line.id, Some((member.id, now)))?;
            }
            Ok(())
        })
        .await
    }
}
