//! The group in its coaches' hands: its settings, and who coaches it.

use sealed_move_store::Deed;

use super::CoachDesk;
use crate::desk::{
    Person, Place, Settings, convert,
    deeds::did,
    error::{Done, bad_request, not_allowed},
    groups::sensible,
    handle::{coaching, group_at, member, member_of},
    names,
    refusal::Refusal,
};

impl CoachDesk<'_> {
    /// Changes them. Coaches only. When the calendar changes, slots of the new one that lie in the past
    /// are not made up for.
    pub async fn change_settings(
        self,
        place: &Place,
        coach: &Person,
        settings: Settings,
    ) -> Done<()> {
        let settings = sensible(settings)?;
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let new = convert::settings(&settings);
                let old = &group.settings;
                if (&old.zone, &old.post_times, old.days) != (&new.zone, &new.post_times, new.days)
                {
                    tx.set_slots_from(group.id, now)?;
                }
                if *old != new {
                    did(tx, &group, &by, Deed::Settings, None, "", now)?;
                }
                Ok(tx.update_group(group.id, &new)?)
            })
            .await
    }

    /// Names another coach. Coaches only.
    pub async fn add_coach(self, place: &Place, coach: &Person, new: &Person) -> Done<()> {
        let now = self.desk.now();
        let (place, coach, new) = (place.clone(), coach.clone(), new.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let id = member(tx, &group, &new, now)?;
                did(tx, &group, &by, Deed::AddCoach, Some(id), "", now)?;
                Ok(tx.set_coach(id, true)?)
            })
            .await
    }

    /// Lets somebody be a coach no longer; they stay a member. Coaches only; the last one stays.
    pub async fn remove_coach(self, place: &Place, coach: &Person, user: &str) -> Done<()> {
        let now = self.desk.now();
        let (place, coach, user) = (place.clone(), coach.clone(), user.to_owned());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let coaches = tx.coaches(group.id)?;
                let leaving = tx.member_by_user(group.id, &user)?;
                let Some(leaving) = leaving.filter(|member| member.coach) else {
                    return bad_request(Refusal::NoCoachOfThis);
                };
                if coaches.len() == 1 {
                    return bad_request(Refusal::LastCoach);
                }
                did(
                    tx,
                    &group,
                    &by,
                    Deed::RemoveCoach,
                    Some(leaving.id),
                    "",
                    now,
                )?;
                Ok(tx.set_coach(leaving.id, false)?)
            })
            .await
    }

    /// Makes a person a coach who has shown that they may be one, as by a link of the room, under the
    /// name they give. The first one takes over from the coach without a name that the group was founded
    /// with, so that what was said and done as that one stays theirs.
    ///
    /// # Errors
    /// When the name is another's or looks like it, or the person is shut out.
    pub async fn enter_as_coach(self, place: &Place, person: &Person) -> Done<()> {
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
                let nameless = tx
                    .coaches(group.id)?
                    .into_iter()
                    .find(|coach| coach.name == names::NAMELESS_COACH);
                let was_coach = known.as_ref().is_some_and(|known| known.coach);
                let name = names::claim(tx, group.id, known.as_ref(), &person.name)?;
                let id = match (known, nameless) {
                    (Some(known), Some(nameless)) if known.id != nameless.id => {
                        tx.merge_members(known.id, nameless.id, now)?;
                        known.id
                    }
                    (Some(known), _) => known.id,
                    (None, Some(nameless)) => {
                        tx.hand_member_over(nameless.id, &person.user)?;
                        nameless.id
                    }
                    (None, None) => tx.upsert_member(group.id, &person.user, &name, now)?,
                };
                tx.rename_member(id, &name)?;
                tx.set_mute(id, None)?;
                tx.set_coach(id, true)?;
                if !was_coach {
                    let coach = member_of(tx, &group, id)?;
                    did(tx, &group, &coach, Deed::CoachCame, None, "", now)?;
                }
                Ok(())
            })
            .await
    }

    /// Leaves the group one coach, who has made the others' way in useless; they stay members, and come
    /// in anew by the new way. Coaches only.
    ///
    /// # Errors
    /// When the person is no coach.
    pub async fn only_coach(self, place: &Place, coach: &Person) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                for other in tx.coaches(group.id)? {
                    if other.id != by.id {
                        tx.set_coach(other.id, false)?;
                    }
                }
                did(tx, &group, &by, Deed::CoachLink, None, "", now)
            })
            .await
    }
}
