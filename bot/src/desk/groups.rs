//! Groups: founding one, where they are, their settings and their coaches.

use sealed_move_store::{Group, NewGroup};

use super::{
    ChatKey, Desk, Manners, Person, Place, Settings, convert,
    error::{Done, bad_request},
    handle::group_at,
    refusal::{Named, Refusal},
    text,
};

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
}

/// A group's place.
pub(super) fn place_of(group: &Group) -> Place {
    Place {
        chat: group.chat,
        channel: group.place.clone(),
    }
}

/// The settings with a clean name, if they make sense.
pub(super) fn sensible(mut settings: Settings) -> Done<Settings> {
    settings.name = text::title(&settings.name, Named::Group, 100)?;
    if !(1..=44_640).contains(&settings.open_minutes) {
        return bad_request(Refusal::OpenBetween);
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
