//! Coming in: under a name, and from a further device.

use super::MemberDesk;
use crate::desk::{
    Person, Place,
    error::{Done, bad_request, not_allowed, not_found},
    handle::group_at,
    members::mute_now,
    names,
    refusal::Refusal,
};

impl MemberDesk<'_> {
    /// Greets a person under the name they ask for: makes them a member, or renames them.
    ///
    /// # Errors
    /// [`crate::desk::DeskError::NameTaken`] when the name is another's or looks like it; also when they are
    /// shut out, or muted and want another name.
    pub async fn enter(self, place: &Place, person: &Person) -> Done<()> {
        let now = self.desk.now();
        let (place, person) = (place.clone(), person.clone());
        self.desk
            .write(move |tx| {
                let group = group_at(tx, &place)?;
                let known = tx.member_by_user(group.id, &person.user)?;
                if known
                    .as_ref()
                    .is_some_and(|known| known.removed_at.is_some())
                {
                    return not_allowed(Refusal::ShutOut);
                }
                let name = names::claim(tx, group.id, known.as_ref(), &person.name)?;
                match known {
                    Some(known) if known.name == name => Ok(()),
                    // A name is read by everyone, too.
                    Some(known) if mute_now(&known, now).is_some() => {
                        not_allowed(Refusal::MutedKeepsName)
                    }
                    Some(known) => Ok(tx.rename_member(known.id, &name)?),
                    None => Ok(tx
                        .upsert_member(group.id, &person.user, &name, now)
                        .map(|_| ())?),
                }
            })
            .await
    }

    /// Makes `device` a further id of the member that `user` is.
    ///
    /// # Errors
    /// When the member is gone or shut out, or the device is somebody's already.
    pub async fn add_device(self, place: &Place, user: &str, device: &str) -> Done<Person> {
        let now = self.desk.now();
        let (place, user, device) = (place.clone(), user.to_owned(), device.to_owned());
        self.desk
            .write(move |tx| {
                let group = group_at(tx, &place)?;
                let Some(member) = tx.member_by_user(group.id, &user)? else {
                    return not_found(Refusal::CodeOwnerGone);
                };
                if member.removed_at.is_some() {
                    return not_allowed(Refusal::ShutOut);
                }
                match tx.member_by_user(group.id, &device)? {
                    Some(known) if known.id == member.id => {}
                    Some(known) => {
                        return bad_request(Refusal::BrowserTaken {
                            name: known.name.into(),
                        });
                    }
                    None => tx.add_identity(group.id, member.id, &device, now)?,
                }
                Ok(Person {
                    user: member.chat_user,
                    name: member.name,
                    language: None,
                })
            })
            .await
    }
}
