//! Into the week, and about in it: places, moments, and pauses.

use chrono::{DateTime, NaiveDateTime, Utc};
use sealed_move_store::{Deed, Position, Soundness};

use super::{CoachDesk, same::posted_before, week::Ordered};
use crate::desk::{
    ItemId, Person, Place, PositionId, convert,
    deeds::did,
    error::{Done, bad_request},
    handle::{coached, coaching, position_of},
    queue::{item_of, waits_as},
    refusal::Refusal,
    schedule,
    secrets::{Beside, Piece},
};

/// What becomes of a position that was posted before.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Repeat {
    Refused,
    Meant,
}

impl CoachDesk<'_> {
    /// Puts a position at the end of the queue and returns the queue entry's id. One that is not sound
    /// needs `anyway`, the coach's explicit word that it is to be posted all the same; one that was
    /// posted before needs [`CoachDesk::enqueue_again`]. One that is queued already keeps its place. Coaches
    /// only.
    pub async fn enqueue(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        anyway: bool,
    ) -> Done<ItemId> {
        self.put_in_queue(place, coach, position, anyway, Repeat::Refused)
            .await
    }

    /// As [`CoachDesk::enqueue`], with the coach's explicit word that a position posted before is to go out
    /// again.
    pub async fn enqueue_again(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        anyway: bool,
    ) -> Done<ItemId> {
        self.put_in_queue(place, coach, position, anyway, Repeat::Meant)
            .await
    }

    async fn put_in_queue(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        anyway: bool,
        repeat: Repeat,
    ) -> Done<ItemId> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        let (at, by) = (place.clone(), coach.clone());
        let (new, beside) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let position = position_of(db, &group, position)?;
                let new = match position.check.soundness {
                    Soundness::Illegal => Vec::new(),
                    _ => vec![Piece::problem(position)?],
                };
                Ok((new, Beside::of(db, &group)?))
            })
            .await?;
        let holds = self.desk.holds(new, beside).await?;
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let position = position_of(tx, &group, position)?;
                let waits = tx
                    .queue(group.id)?
                    .iter()
                    .any(|item| waits_as(item) == Some(position.id));
                if repeat == Repeat::Refused
                    && !waits
                    && let Some(posted) = posted_before(tx, group.id, &position.fen)?
                {
                    let zone = convert::kept_settings(&group.settings)?.zone;
                    return bad_request(Refusal::WasPosted {
                        position: position.source.into(),
                        number: posted.number,
                        on: posted.at.with_timezone(&zone).date_naive().into(),
                    });
                }
                if position.check.soundness == Soundness::Illegal {
                    return bad_request(Refusal::IllegalPosition);
                }
                if position.check.soundness != Soundness::Sound {
                    if !anyway {
                        return bad_request(not_sound(&position));
                    }
                    tx.set_position_anyway(position.id, true)?;
                }
                let content = tx.problem_of(position.id, now)?;
                for holds in &holds {
                    holds.keep(tx, content)?;
                }
                Ok(tx.enqueue_content(content, now)?)
            })
            .await
    }

    /// Moves an item to place `to` of the week as [`CoachDesk::queue`] shows it (0 is first; past the end means
    /// the end), and returns the place that it has then. What goes out at a moment that the coach fixed keeps its
    /// place, and so may what waits for something else. Coaches only.
    pub async fn reorder(
        self,
        place: &Place,
        coach: &Person,
        item: ItemId,
        to: usize,
    ) -> Done<usize> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let item = item_of(tx, &group, item)?;
                let before = Ordered::of(tx, &group, now)?;
                tx.move_queued(item.id, before.rank_for(item.id, to))?;
                let after = Ordered::of(tx, &group, now)?;
                Ok(after.place_of(item.id).unwrap_or(to))
            })
            .await
    }

    /// Fixes an item's time in the group's zone (`2026-12-01T18:00`), or frees it. Coaches only.
    ///
    /// # Errors
    /// When the time is past, is left out by a clock change, or is another item's.
    pub async fn fix_time(
        self,
        place: &Place,
        coach: &Person,
        item: ItemId,
        local: Option<NaiveDateTime>,
    ) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let item = item_of(tx, &group, item)?;
                let Some(local) = local else {
                    return Ok(tx.set_due_at(item.id, None)?);
                };
                let zone = convert::kept_settings(&group.settings)?.zone;
                let at = sealed_move_store::to_seconds(schedule::moment_of(zone, local)?);
                if at <= now {
                    return bad_request(Refusal::TimePast {
                        at: local.into(),
                        now: now.with_timezone(&zone).naive_local().into(),
                        zone: zone.to_string(),
                    });
                }
                let taken = tx
                    .queue(group.id)?
                    .into_iter()
                    .any(|other| other.id != item.id && other.due_at == Some(at));
                if taken {
                    return bad_request(Refusal::TimeTaken { at: local.into() });
                }
                Ok(tx.set_due_at(item.id, Some(at))?)
            })
            .await
    }

    /// Pauses posting, until a moment or until resumed. Open posts still close with their reveal, and
    /// slots inside the pause are skipped for good. Coaches only.
    ///
    /// # Errors
    /// When the moment is past.
    pub async fn pause(
        self,
        place: &Place,
        coach: &Person,
        until: Option<DateTime<Utc>>,
    ) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                if until.is_some_and(|until| until <= now) {
                    return bad_request(Refusal::PausePast);
                }
                did(tx, &group, &by, Deed::Pause, None, "", now)?;
                Ok(tx.set_paused(group.id, true, until)?)
            })
            .await
    }

    /// Ends a pause. Coaches only.
    pub async fn resume(self, place: &Place, coach: &Person) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                if group.paused {
                    did(tx, &group, &by, Deed::Resume, None, "", now)?;
                    // A pause that ended by itself has settled the slots up to its end, and none after.
                    let end = group.paused_until.map_or(now, |until| until.min(now));
                    tx.set_slots_from(
                        group.id,
                        group.slots_from.map_or(end, |from| from.max(end)),
                    )?;
                    tx.set_paused(group.id, false, None)?;
                }
                Ok(())
            })
            .await
    }

    /// Whether posting is paused, and until when.
    pub async fn paused(self, place: &Place) -> Done<Option<Option<DateTime<Utc>>>> {
        let now = self.desk.now();
        let group = self.desk.group(place).await?;
        Ok(match group.paused_until {
            Some(until) if until <= now => None,
            until => group.paused.then_some(until),
        })
    }
}

/// Why a position is not queued.
pub(super) fn not_sound(position: &Position) -> Refusal {
    Refusal::NotSound {
        position: position.source.clone().into(),
        soundness: convert::kept_soundness(position.check.soundness),
    }
}
