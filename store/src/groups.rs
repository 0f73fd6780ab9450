//! Groups: a study group is one channel of a chat, with its own zone, calendar and rules.

use chrono_tz::Tz;
use rusqlite::{Row, params};

use crate::{
    ChatKey, Db, Defences, Delivery, GroupId, Mode, Moment, Names, Points, Scale, StoreError,
    TimesOfDay, Tx, Weekdays, calendar, time,
};

/// What a coach sets for a group.
#[derive(Clone, Debug, PartialEq)]
pub struct GroupSettings {
    /// The group's name, 1 to 100 characters.
    pub name: String,
    /// IANA time zone.
    pub zone: Tz,
    /// Local times of posts.
    pub post_times: TimesOfDay,
    /// Days of posts.
    pub days: Weekdays,
    /// Minutes from a post to its reveal, 1 to 44640.
    pub open_minutes: u32,
    /// Sealed or open.
    pub mode: Mode,
    /// Language of the piece letters.
    pub language: String,
    /// Look of the diagrams.
    pub style: String,
    /// Which scale points are counted by.
    pub scale: Scale,
    /// Points off for each wrong first move; by the tournaments' scale it is always 5.
    pub wrong_cost: Points,
    /// Points off for each hint step.
    pub hint_cost: Points,
    /// Whether members meet the same defences.
    pub defences: Defences,
}

/// A group to be made.
#[derive(Clone, Debug, PartialEq)]
pub struct NewGroup {
    /// The chat.
    pub chat: ChatKey,
    /// The channel's id, or the room's name.
    pub place: String,
    /// The server the channel is on, where the chat has servers.
    pub server: Option<String>,
    /// Who says what a member is called, as its chat declares.
    pub names: Names,
    /// How a verdict reaches its member, as its chat declares.
    pub delivery: Delivery,
    /// What the coach sets.
    pub settings: GroupSettings,
    /// Now.
    pub created_at: Moment,
}

/// A group.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Its id.
    pub id: GroupId,
    /// The chat.
    pub chat: ChatKey,
    /// The channel's id, or the room's name.
    pub place: String,
    /// The server the channel is on.
    pub server: Option<String>,
    /// Who says what a member is called.
    pub names: Names,
    /// How a verdict reaches its member.
    pub delivery: Delivery,
    /// What the coach set.
    pub settings: GroupSettings,
    /// Whether posting is paused.
    pub paused: bool,
    /// Until when, where the pause has an end.
    pub paused_until: Option<Moment>,
    /// Slots up to this moment are past and never made up for.
    pub slots_from: Option<Moment>,
    /// When the coach was last told that the queue is empty; `None` since it was last filled.
    pub empty_told_at: Option<Moment>,
    /// When it was made.
    pub created_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Group> {
    Ok(Group {
        id: row.get("id")?,
        chat: row.get("chat")?,
        place: row.get("place")?,
        server: row.get("server")?,
        names: row.get("names")?,
        delivery: row.get("delivery")?,
        settings: GroupSettings {
            name: row.get("name")?,
            zone: calendar::zone(row, "zone")?,
            post_times: row.get("post_times")?,
            days: row.get("days")?,
            open_minutes: row.get("open_minutes")?,
            mode: row.get("mode")?,
            language: row.get("language")?,
            style: row.get("style")?,
            scale: row.get("scale")?,
            wrong_cost: row.get("wrong_cost")?,
            hint_cost: row.get("hint_cost")?,
            defences: row.get("defences")?,
        },
        paused: row.get("paused")?,
        paused_until: time::get_maybe(row, "paused_until")?,
        slots_from: time::get_maybe(row, "slots_from")?,
        empty_told_at: time::get_maybe(row, "empty_told_at")?,
        created_at: time::get(row, "created_at")?,
    })
}

impl Db<'_> {
    /// A group by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn group(&self, id: GroupId) -> Result<Option<Group>, StoreError> {
        self.maybe_one("SELECT * FROM groups WHERE id = ?1", [id], read)
    }

    /// The group at a place.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn group_at(&self, chat: ChatKey, place: &str) -> Result<Option<Group>, StoreError> {
        self.maybe_one(
            "SELECT * FROM groups WHERE chat = ?1 AND place = ?2",
            params![chat, place],
            read,
        )
    }

    /// Every group of a chat, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn groups_of(&self, chat: ChatKey) -> Result<Vec<Group>, StoreError> {
        self.all(
            "SELECT * FROM groups WHERE chat = ?1 ORDER BY id",
            [chat],
            read,
        )
    }

    /// Every group, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn groups(&self) -> Result<Vec<Group>, StoreError> {
        self.all("SELECT * FROM groups ORDER BY id", [], read)
    }
}

impl Tx<'_> {
    /// Makes a group; errs with [`StoreError::Rule`] when its place has one already.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_group(&self, new: &NewGroup) -> Result<GroupId, StoreError> {
        let s = &new.settings;
        self.insert(
            "INSERT INTO groups (chat, place, server, name, zone, post_times, days, open_minutes, mode,
                                 language, style, wrong_cost, hint_cost, defences, created_at, scale, names, delivery)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)",
            params![
                new.chat,
                new.place,
                new.server,
                s.name,
                s.zone.name(),
                s.post_times,
                s.days,
                s.open_minutes,
                s.mode,
                s.language,
                s.style,
                s.wrong_cost,
                s.hint_cost,
                s.defences,
                time::text(new.created_at),
                s.scale,
                new.names,
                new.delivery
            ],
        )
    }

    /// Changes what the coach set.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn update_group(&self, group: GroupId, s: &GroupSettings) -> Result<(), StoreError> {
        self.run_one(
            "group",
            group,
            "UPDATE groups SET name = ?2, zone = ?3, post_times = ?4, days = ?5, open_minutes = ?6,
                 mode = ?7, language = ?8, style = ?9, wrong_cost = ?10, hint_cost = ?11,
                 defences = ?12, scale = ?13
             WHERE id = ?1",
            params![
                group,
                s.name,
                s.zone.name(),
                s.post_times,
                s.days,
                s.open_minutes,
                s.mode,
                s.language,
                s.style,
                s.wrong_cost,
                s.hint_cost,
                s.defences,
                s.scale
            ],
        )
    }

    /// Pauses posting, with or without an end, or ends the pause (`paused` false).
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_paused(
        &self,
        group: GroupId,
        paused: bool,
        until: Option<Moment>,
    ) -> Result<(), StoreError> {
        self.run_one(
            "group",
            group,
            "UPDATE groups SET paused = ?2, paused_until = ?3 WHERE id = ?1",
            params![group, paused, time::maybe(until.filter(|_| paused))],
        )
    }

    /// Lets the slots up to a moment be past: they will not be made up for.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_slots_from(&self, group: GroupId, from: Moment) -> Result<(), StoreError> {
        self.run_one(
            "group",
            group,
            "UPDATE groups SET slots_from = ?2 WHERE id = ?1",
            params![group, time::text(from)],
        )
    }

    /// Notes when the coach was told of the empty queue, or (`None`) that it is filled again.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_empty_told_at(&self, group: GroupId, at: Option<Moment>) -> Result<(), StoreError> {
        self.run_one(
            "group",
            group,
            "UPDATE groups SET empty_told_at = ?2 WHERE id = ?1",
            params![group, time::maybe(at)],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, new_group, settings};

    #[test]
    fn a_group_comes_back_as_it_was_written() {
        let f = Fixture::new();
        let mut new = new_group("other");
        new.server = Some("guild".into());
        new.names = Names::ByChat;
        new.delivery = Delivery::Sent;
        new.settings.post_times = "09:00 18:30".parse().unwrap();
        new.settings.defences = Defences::Differ;
        new.settings.scale = Scale::Tournament;
        let id = f.write({
            let new = new.clone();
            move |tx| tx.insert_group(&new)
        });
        let kept = f.read(move |db| db.group(id)).unwrap();
        assert_eq!(kept.settings, new.settings);
        assert_eq!(
            (
                kept.server.as_deref(),
                kept.names,
                kept.delivery,
                kept.created_at
            ),
            (Some("guild"), Names::ByChat, Delivery::Sent, at(0))
        );
        assert_eq!(
            f.read(|db| db.group_at(ChatKey::of("room"), "other")),
            Some(kept)
        );
        assert_eq!(
            f.read(|db| db.group_at(ChatKey::of("discord"), "other")),
            None
        );
        assert_eq!(f.read(|db| db.groups_of(ChatKey::of("room"))).len(), 2);
        assert_eq!(f.read(|db| db.groups_of(ChatKey::of("discord"))).len(), 0);
    }

    #[test]
    fn a_place_has_one_group() {
        let f = Fixture::new();
        let error = f
            .store
            .write_blocking(|tx| tx.insert_group(&new_group("club")))
            .unwrap_err();
        assert!(matches!(error, StoreError::Rule(_)), "{error}");
    }

    #[test]
    fn settings_out_of_range_are_refused_by_the_store_itself() {
        let f = Fixture::new();
        let group = f.group;
        let wrong: [fn(&mut GroupSettings); 2] =
            [|s| s.open_minutes = 0, |s| s.name = String::new()];
        for spoil in wrong {
            let mut bad = settings();
            spoil(&mut bad);
            let error = f
                .store
                .write_blocking(move |tx| tx.update_group(group, &bad));
            assert!(matches!(error, Err(StoreError::Rule(_))), "{error:?}");
        }
        assert_eq!(
            f.read(move |db| db.group(group)).unwrap().settings,
            settings()
        );
    }

    /// What the types cannot say the schema does not take either.
    #[test]
    fn no_column_takes_what_no_type_says() {
        let f = Fixture::new();
        for (column, wrong) in [
            ("post_times", "6 pm"),
            ("post_times", "18:00 "),
            ("post_times", "18:00,19:00"),
            ("days", "128"),
            ("days", "-1"),
            ("wrong_cost", "-1.0"),
            ("hint_cost", "5.5"),
        ] {
            let set = format!("UPDATE groups SET {column} = ?1");
            let error = f.store.write_blocking(move |tx| tx.run(&set, [wrong]));
            assert!(matches!(error, Err(StoreError::Rule(_))), "{error:?}");
        }
    }

    #[test]
    fn a_damaged_setting_is_named() {
        for (column, wrong, named) in [
            (
                "zone",
                "Atlantis/Harbour",
                "\"Atlantis/Harbour\" is no time zone",
            ),
            ("post_times", "29:00", "\"29:00\" is not a time of day"),
            ("post_times", "18:00 18:00", "18:00 is given twice"),
            ("days", "200", "200 is no set of weekdays"),
            ("days", "300", "300"),
            ("wrong_cost", "-1", "-1 is out of the scale"),
            ("hint_cost", "5.5", "5.5 is out of the scale"),
        ] {
            let f = Fixture::new();
            let group = f.group;
            f.write(move |tx| {
                tx.run("PRAGMA ignore_check_constraints = ON", [])?;
                tx.run(&format!("UPDATE groups SET {column} = ?1"), [wrong])
            });
            let error = f.store.read_blocking(move |db| db.group(group));
            let Err(StoreError::Damaged(what)) = &error else {
                panic!("{column}: {error:?}");
            };
            assert!(what.contains(named), "{what}");
        }
    }

    #[test]
    fn a_pause_ends_with_its_end_forgotten() {
        let f = Fixture::new();
        let group = f.group;
        f.write(move |tx| tx.set_paused(group, true, Some(at(90))));
        let paused = f.read(move |db| db.group(group)).unwrap();
        assert_eq!((paused.paused, paused.paused_until), (true, Some(at(90))));
        f.write(move |tx| tx.set_paused(group, false, Some(at(90))));
        let back = f.read(move |db| db.group(group)).unwrap();
        assert_eq!((back.paused, back.paused_until), (false, None));
    }

    #[test]
    fn what_does_not_exist_is_named() {
        let f = Fixture::new();
        let error = f
            .store
            .write_blocking(|tx| tx.set_empty_told_at(GroupId::of(77), Some(at(0))))
            .unwrap_err();
        assert_eq!(error.to_string(), "there is no group with id 77");
    }
}
