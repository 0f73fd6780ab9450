//! What the coach asks for. One file a subject; every call needs the coach's cookie.

mod cards;
mod chats;
mod checks;
mod drafts;
mod lessons;
mod members;
mod posts;
mod reports;
mod settings;
mod week;

use std::sync::{Mutex, MutexGuard, PoisonError};

use axum::Router;
use chrono::{DateTime, NaiveDate, TimeZone, Utc};
use chrono_tz::Tz;

use super::{Room, RoomError, Shared, paper::Note, place};
use crate::chat::common::notes;
use crate::desk::{CheckedPosition, Desk, DeskError, Earlier, Notice, PositionId, TopicName};
use crate::words::Words;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .merge(cards::routes())
        .merge(chats::routes())
        .merge(checks::routes())
        .merge(drafts::routes())
        .merge(lessons::routes())
        .merge(week::routes())
        .merge(posts::routes())
        .merge(members::routes())
        .merge(reports::routes())
        .merge(settings::routes())
}

/// What lies on the coach's bench: the words from the desk, and the file checked last.
#[derive(Default)]
pub(super) struct Bench {
    /// Words to the coaches, and since when they are there.
    notes: Mutex<Vec<(Notice, DateTime<Utc>)>>,
    checked: Mutex<Vec<CheckedPosition>>,
    /// Of these, the ones that are kept otherwise already, with their place in the list.
    twice: Mutex<Vec<(usize, CheckedPosition)>>,
    /// Held while a file is being checked: one at a time.
    checking: tokio::sync::Mutex<()>,
}

fn open<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Bench {
    /// The bench with the words of earlier runs.
    pub(super) async fn set_up(desk: &Desk) -> Result<Self, RoomError> {
        let kept = desk.notes_for_coaches(&place()).await?.into_iter();
        let notes = kept.map(|note| (note.notice, note.at));
        Ok(Self {
            notes: Mutex::new(notes.collect()),
            ..Self::default()
        })
    }

    /// Keeps a word to the coach, for pages that are opened later.
    pub(super) async fn keep(
        &self,
        room: &Room,
        notice: &Notice,
        earlier: Option<&Earlier>,
    ) -> Result<(), DeskError> {
        notes::keep(&room.desk, &room.place, notice, earlier).await
    }

    /// Shows a word to the coach.
    pub(super) fn show(&self, room: &Room, notice: &Notice) {
        let mut notes = open(&self.notes);
        notes.push((notice.clone(), room.desk.now()));
        let surplus = notes.len().saturating_sub(notes::MOST);
        notes.drain(..surplus);
        drop(notes);
        room.feed.coaches("notice", &());
    }

    /// Takes note that a position has another topic now, for the page that shows the file checked last.
    fn retopic(&self, position: PositionId, topic: Option<&TopicName>) {
        for one in open(&self.checked).iter_mut() {
            if one.position == Some(position) {
                one.topic = topic.map(|topic| topic.as_str().to_owned());
            }
        }
    }

    /// A position is another one now, for the page that shows the file checked last.
    fn renew(&self, position: PositionId, now: &CheckedPosition) {
        for one in open(&self.checked).iter_mut() {
            if one.position == Some(position) {
                *one = now.clone();
            }
        }
        open(&self.twice).retain(|(_, one)| one.position != Some(position));
    }

    fn notes(&self, words: &Words) -> Vec<Note> {
        let in_words = |(notice, at): &(Notice, DateTime<Utc>)| Note {
            text: words.say(notice),
            at: *at,
        };
        open(&self.notes).iter().map(in_words).collect()
    }
}

/// The beginning of a day in a zone. Where the clocks skip midnight, the first moment after.
fn beginning(day: NaiveDate, zone: Tz) -> DateTime<Utc> {
    (0..=3)
        .filter_map(|hour| day.and_hms_opt(hour, 0, 0))
        .find_map(|local| zone.from_local_datetime(&local).earliest())
        .map_or_else(
            || Utc.from_utc_datetime(&day.and_time(chrono::NaiveTime::MIN)),
            |local| local.with_timezone(&Utc),
        )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_begins_at_midnight_of_its_zone_even_when_there_is_none() {
        let day = |y, m, d| NaiveDate::from_ymd_opt(y, m, d).expect("a date");
        let begin = |day, zone: &str| beginning(day, zone.parse().expect("a zone")).to_rfc3339();
        assert_eq!(
            begin(day(2026, 1, 5), "Europe/Madrid"),
            "2026-01-04T23:00:00+00:00"
        );
        // IANA time zone database: Lebanon's clocks go from 00:00 to 01:00 (2024: on 31 March).
        assert_eq!(
            begin(day(2024, 3, 31), "Asia/Beirut"),
            "2024-03-30T22:00:00+00:00"
        );
    }
}
