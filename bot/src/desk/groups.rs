//! Groups: founding one, its settings, its coaches and members.

use chrono::{DateTime, Utc};
use sealed_move_store::{Deed, Group, NewGroup};
use serde::Serialize;

use super::{
    ChatKey, Desk, Manners, Person, Place, Settings, convert,
    deeds::did,
    error::{Done, bad_request, not_allowed},
    handle::{coaching, group_at, member, member_of},
    members::mute_now,
    names,
    refusal::{Named, Paid, Refusal},
    schedule, text,
};

/// A member of a group, for lists.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MemberRow {
    /// The chat's id of the person.
    pub user: String,
    /// The name shown to others.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when they belong to it.
    pub joined_at: DateTime<Utc>,
}

impl Desk {
    /// Makes `place` a group's, with `coach` as its first coach. `manners` is what the chat declares.
    ///
    /// # Errors
    /// When it is one already, or a setting is out of its bounds.
    pub async fn found_group(
        &self,
        place: &Place,
        manners: Manners,
        server: Option<&str>,
        settings: Settings,
        coach: &Person,
    ) -> Done<()> {
        let settings = sensible(settings)?;
        let now = self.now();
        let (place, coach, server) = (place.clone(), coach.clone(), server.map(str::to_owned));
        self.write(move |tx| {
            if let Some(group) = tx.group_at(place.chat, &place.channel)? {
                return bad_request(Refusal::GroupAlready {
                    name: group.settings.name.into(),
                });
            }
            let id = tx.insert_group(&NewGroup {
                chat: place.chat,
                place: place.channel.clone(),
                server,
                names: manners.names,
                delivery: manners.delivery,
                settings: convert::settings(&settings),
                created_at: now,
            })?;
            tx.set_slots_from(id, now)?;
            let group = group_at(tx, &place)?;
            let first = tx.upsert_member(group.id, &coach.user, &text::name(&coach.name), now)?;
            Ok(tx.set_coach(first, true)?)
        })
        .await
    }

    /// Every group's place in a chat, the oldest first.
    pub async fn places(&self, chat: ChatKey) -> Done<Vec<Place>> {
        self.read(move |db| {
            Ok(db
                .groups_of(chat)?
                .into_iter()
                .map(|group| place_of(&group))
                .collect())
        })
        .await
    }

    /// Every group's place in any chat, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn all_places(&self) -> Done<Vec<Place>> {
        self.read(move |db| Ok(db.groups()?.iter().map(place_of).collect()))
            .await
    }

    /// The group's settings.
    pub async fn settings(&self, place: &Place) -> Done<Settings> {
        convert::kept_settings(&self.group(place).await?.settings)
    }

    /// Changes them. Coaches only. When the calendar changes, slots of the new one that lie in the past
    /// are not made up for.
    pub async fn change_settings(
        &self,
        place: &Place,
        coach: &Person,
        settings: Settings,
    ) -> Done<()> {
        let settings = sensible(settings)?;
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
            let (group, by) = coaching(tx, &place, &coach)?;
            let new = convert::settings(&settings);
            let old = &group.settings;
            if (&old.zone, &old.post_time, old.days) != (&new.zone, &new.post_time, new.days) {
                tx.set_slots_from(group.id, now)?;
            }
            if *old != new {
                did(tx, &group, &by, Deed::Settings, None, "", now)?;
            }
            Ok(tx.update_group(group.id, &new)?)
        })
        .await
    }

    /// Whether this person coaches the group.
    pub async fn is_coach(&self, place: &Place, user: &str) -> Done<bool> {
        let (place, user) = (place.clone(), user.to_owned());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .member_by_user(group.id, &user)?
                .is_some_and(|member| member.coach))
        })
        .await
    }

    /// The group's coaches, the first one first.
    pub async fn coaches(&self, place: &Place) -> Done<Vec<Person>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .coaches(group.id)?
                .into_iter()
                .map(|coach| Person {
                    user: coach.chat_user,
                    name: coach.name,
                    language: None,
                })
                .collect())
        })
        .await
    }

    /// Names another coach. Coaches only.
    pub async fn add_coach(&self, place: &Place, coach: &Person, new: &Person) -> Done<()> {
        let now = self.now();
        let (place, coach, new) = (place.clone(), coach.clone(), new.clone());
        self.write(move |tx| {
            let (group, by) = coaching(tx, &place, &coach)?;
            let id = member(tx, &group, &new, now)?;
            did(tx, &group, &by, Deed::AddCoach, Some(id), "", now)?;
            Ok(tx.set_coach(id, true)?)
        })
        .await
    }

    /// Lets somebody be a coach no longer; they stay a member. Coaches only; the last one stays.
    pub async fn remove_coach(&self, place: &Place, coach: &Person, user: &str) -> Done<()> {
        let now = self.now();
        let (place, coach, user) = (place.clone(), coach.clone(), user.to_owned());
        self.write(move |tx| {
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
    pub async fn enter_as_coach(&self, place: &Place, person: &Person) -> Done<()> {
        let now = self.now();
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx| {
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
    pub async fn only_coach(&self, place: &Place, coach: &Person) -> Done<()> {
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
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

    /// Greets a person under the name they ask for: makes them a member, or renames them.
    ///
    /// # Errors
    /// [`super::DeskError::NameTaken`] when the name is another's or looks like it; also when they are
    /// shut out, or muted and want another name.
    pub async fn enter(&self, place: &Place, person: &Person) -> Done<()> {
        let now = self.now();
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx| {
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

    /// The name under which a person is a member of the group, if they are one.
    pub async fn name_of(&self, place: &Place, user: &str) -> Done<Option<String>> {
        let (place, user) = (place.clone(), user.to_owned());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .member_by_user(group.id, &user)?
                .map(|member| member.name))
        })
        .await
    }

    /// The group's members by name, its coaches among them.
    pub async fn members(&self, place: &Place) -> Done<Vec<MemberRow>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .members(group.id)?
                .into_iter()
                .map(|member| MemberRow {
                    user: member.chat_user,
                    name: member.name,
                    coach: member.coach,
                    joined_at: member.joined_at,
                })
                .collect())
        })
        .await
    }
}

/// A group's place.
pub(super) fn place_of(group: &Group) -> Place {
    Place {
        chat: group.chat,
        channel: group.place.clone(),
    }
}

/// The settings with a clean name, if they make sense.
fn sensible(mut settings: Settings) -> Done<Settings> {
    settings.name = text::title(&settings.name, Named::Group, 100)?;
    schedule::time_of_day(&settings.post_time)?;
    if settings.days > 0x7f {
        return bad_request(Refusal::DaysOfWeek);
    }
    if !(1..=44_640).contains(&settings.open_minutes) {
        return bad_request(Refusal::OpenBetween);
    }
    for (cost, what) in [
        (settings.wrong_cost, Paid::Wrong),
        (settings.hint_cost, Paid::Hint),
    ] {
        if !(0.0..=5.0).contains(&cost) {
            return bad_request(Refusal::PriceRange { what });
        }
    }
    Ok(settings)
}

impl Desk {
    /// The group's topics by name.
    pub async fn topics(&self, place: &Place) -> Done<Vec<String>> {
        let group = self.group(place).await?;
        self.read(move |db| {
            Ok(db
                .topics(group.id)?
                .into_iter()
                .map(|topic| topic.name)
                .collect())
        })
        .await
    }
}
