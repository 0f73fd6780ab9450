//! When posts go out: the group's calendar, and the plan that gives each position of the queue its
//! moment. Pure computing on times; touches neither store nor clock. The queue that a coach sees and
//! the errands that go out come from the same [`plan`].
//!
//! A group has a slot at each of its post times on each of its days, in its own zone. Where clocks change:
//! a time that a spring night leaves out moves to the first moment after the gap, where several meet in one
//! slot; a time that an autumn night has twice is taken the first time; and a day that a zone skipped has no
//! slot.
//!
//! A slot that was missed (the program was down) is made up for when no more than [`LATE`] has passed, as long
//! as it is nearer than the next one, and only the latest one: whatever happened, one post goes out late, never
//! a burst. A slot that fell
//! into a pause, or lies before a change of the calendar, was not missed.

use chrono::{
    DateTime, Datelike, Days, LocalResult, NaiveDate, NaiveDateTime, TimeDelta, TimeZone, Utc,
};
use chrono_tz::Tz;

use super::{
    ItemId, Settings, TimeOfDay, TimesOfDay, Weekdays,
    error::{Done, bad_request},
    refusal::Refusal,
};

/// How late a missed slot is still made up for. Common practice: after half a day, better the next one.
pub const LATE: TimeDelta = TimeDelta::hours(12);

/// The days and the hours at which a group meets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Calendar {
    zone: Tz,
    times: TimesOfDay,
    days: Weekdays,
    open_minutes: u32,
}

impl Calendar {
    /// The calendar of a group's settings.
    pub(super) fn of(settings: &Settings) -> Self {
        Self {
            zone: settings.zone,
            times: settings.post_times.clone(),
            days: settings.days,
            open_minutes: settings.open_minutes,
        }
    }

    /// When a post of this moment is revealed.
    fn revealed(&self, at: DateTime<Utc>) -> DateTime<Utc> {
        later(self.zone, at, self.open_minutes)
    }

    /// The first slot after `moment`; `None` when the group has no days.
    pub(super) fn next_after(&self, moment: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let mut day = self.day_of(moment).checked_sub_days(Days::new(1))?;
        // A week has every weekday; the second is for slots that a skipped day took with it.
        for _ in 0..16 {
            if let Some(slot) = self.slots_on(day).filter(|slot| *slot > moment).min() {
                return Some(slot);
            }
            day = day.succ_opt()?;
        }
        None
    }

    /// The latest slot that is not after `moment`.
    pub(super) fn latest_until(&self, moment: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let mut day = self.day_of(moment).succ_opt()?;
        for _ in 0..16 {
            if let Some(slot) = self.slots_on(day).filter(|slot| *slot <= moment).max() {
                return Some(slot);
            }
            day = day.pred_opt()?;
        }
        None
    }

    fn day_of(&self, moment: DateTime<Utc>) -> NaiveDate {
        moment.with_timezone(&self.zone).date_naive()
    }

    /// Whether what was due at `slot` is still made up for at `now`.
    fn makes_up(&self, slot: DateTime<Utc>, now: DateTime<Utc>) -> bool {
        let late = now - slot;
        let nearer = || {
            self.next_after(slot)
                .is_none_or(|next| late <= (next - slot) / 2)
        };
        slot <= now && late <= LATE && nearer()
    }

    fn slots_on(&self, day: NaiveDate) -> impl Iterator<Item = DateTime<Utc>> {
        let times = self.days.contains(day.weekday()).then(|| self.times.iter());
        let slot = move |time| self.slot_at(day, time);
        times.into_iter().flatten().filter_map(slot)
    }

    fn slot_at(&self, day: NaiveDate, time: TimeOfDay) -> Option<DateTime<Utc>> {
        let local = day.and_time(time.into());
        match self.zone.from_local_datetime(&local) {
            LocalResult::Single(slot) | LocalResult::Ambiguous(slot, _) => Some(slot.to_utc()),
            LocalResult::None => after_gap(self.zone, local)
                .filter(|slot| slot.date_naive() == day)
                .map(|slot| slot.to_utc()),
        }
    }
}

/// The moment of a local time that the coach names; the earlier one when the clock shows it twice.
///
/// # Errors
/// When the clocks leave that time out.
pub(super) fn moment_of(zone: Tz, local: NaiveDateTime) -> Done<DateTime<Utc>> {
    match zone.from_local_datetime(&local) {
        LocalResult::Single(moment) | LocalResult::Ambiguous(moment, _) => Ok(moment.to_utc()),
        LocalResult::None => {
            let next = after_gap(zone, local).map(|moment| moment.naive_local().into());
            bad_request(Refusal::ClocksLeaveOut {
                zone: zone.to_string(),
                at: local.into(),
                next,
            })
        }
    }
}

/// The moment `minutes` after another. From half a day on it is counted by the clocks of the zone, so
/// that a reveal an hour before the next post is that on the night of a clock change as well.
pub(super) fn later(zone: Tz, moment: DateTime<Utc>, minutes: u32) -> DateTime<Utc> {
    let span = TimeDelta::minutes(i64::from(minutes));
    let by_the_clocks = || {
        let local = moment
            .with_timezone(&zone)
            .naive_local()
            .checked_add_signed(span)?;
        let there = zone.from_local_datetime(&local).earliest();
        there
            .or_else(|| after_gap(zone, local))
            .map(|there| there.to_utc())
    };
    if span < TimeDelta::hours(12) {
        return moment + span;
    }
    by_the_clocks().unwrap_or(moment + span)
}

/// The first local time after a gap in which `local` lies. No zone has ever skipped more than a day.
fn after_gap(zone: Tz, local: NaiveDateTime) -> Option<DateTime<Tz>> {
    (1..=25 * 60).find_map(|minutes| {
        let later = local.checked_add_signed(TimeDelta::minutes(minutes))?;
        zone.from_local_datetime(&later).earliest()
    })
}

/// A pause of posting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Pause {
    /// None.
    No,
    /// Slots up to and with this moment are skipped.
    Until(DateTime<Utc>),
    /// Until the coach resumes.
    Open,
}

/// What must be revealed before something else goes out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum After {
    /// Another item of the queue.
    Item(ItemId),
    /// A post that is before the group, with when it closes.
    Post(DateTime<Utc>),
}

/// A position of the queue, as the plan sees it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Waiting {
    /// Id of the queue entry.
    pub item: ItemId,
    /// Whether it may be posted: found sound, or the coach said anyway.
    pub fit: bool,
    /// The moment the coach fixed.
    pub fixed: Option<DateTime<Utc>>,
    /// What it would give away, and so waits for.
    pub after: Vec<After>,
}

impl Waiting {
    /// Whether nothing that is still to be revealed keeps it.
    fn ready(&self) -> bool {
        self.after.is_empty()
    }

    /// From when on it may go out, as what is planned so far will be revealed; `None` when something that it
    /// waits for is not planned.
    fn from(&self, calendar: &Calendar, planned: &[Due]) -> Option<DateTime<Utc>> {
        self.after
            .iter()
            .try_fold(DateTime::<Utc>::MIN_UTC, |from, after| {
                let moment = match after {
                    After::Post(closes) => *closes,
                    After::Item(item) => {
                        let due = planned.iter().find(|due| due.item == *item)?;
                        calendar.revealed(due.at)
                    }
                };
                Some(from.max(moment))
            })
    }
}

/// When a position goes out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Due {
    /// Id of the queue entry.
    pub item: ItemId,
    /// The moment; past when it is due now.
    pub at: DateTime<Utc>,
    /// Whether it is the moment the coach fixed.
    pub fixed: bool,
}

/// What the queue comes to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Plan {
    /// The positions that will go out, the earliest first; at most one is due now.
    pub due: Vec<Due>,
    /// The slot that has come while nothing fit was waiting.
    pub empty: Option<DateTime<Utc>>,
    /// When to look again if nothing changes before.
    pub next: Option<DateTime<Utc>>,
}

/// Plans a group's queue, given in order. Slots up to and with `settled` are past: the latest post went
/// out then, or a pause or an old calendar ended.
pub(super) fn plan(
    calendar: &Calendar,
    now: DateTime<Utc>,
    settled: DateTime<Utc>,
    pause: Pause,
    waiting: &[Waiting],
) -> Plan {
    let settled = match pause {
        Pause::Open => return Plan::default(),
        Pause::Until(end) => settled.max(end),
        Pause::No => settled,
    };
    let alive = |moment: &DateTime<Utc>| *moment > settled;
    let late = |moment: &DateTime<Utc>| *moment <= now && now - *moment <= LATE;

    let fit = || waiting.iter().filter(|w| w.fit);
    let slot_now = calendar
        .latest_until(now)
        .filter(alive)
        .filter(|slot| calendar.makes_up(*slot, now));
    let fixed_now = fit()
        .filter(|w| w.ready())
        .filter_map(|w| w.fixed.filter(alive).filter(late).map(|at| (at, w.item)))
        .max_by_key(|(at, item)| (*at, std::cmp::Reverse(*item)));
    let fixed_later = fixed_later(
        calendar,
        now,
        fit().filter(|w| w.fixed.is_some_and(|at| alive(&at))),
    );

    let mut free: Vec<&Waiting> = fit()
        .filter(|w| fixed_later.iter().all(|due| due.item != w.item))
        .collect();

    let due_now = match (slot_now, fixed_now) {
        (slot, Some((at, item))) if slot.is_none_or(|slot| at >= slot) => Some(Due {
            item,
            at,
            fixed: true,
        }),
        (Some(at), _) => free.iter().find(|w| w.ready()).map(|w| Due {
            item: w.item,
            at,
            fixed: false,
        }),
        (None, _) => None,
    };
    if let Some(due) = due_now {
        free.retain(|w| w.item != due.item);
    }

    let mut due: Vec<Due> = due_now
        .into_iter()
        .chain(fixed_later.iter().copied())
        .collect();
    let mut slot = calendar.next_after(now.max(settled));
    while let Some(at) = slot {
        slot = calendar.next_after(at);
        if fixed_later.iter().any(|due| due.at == at) {
            continue;
        }
        // The first in order that tells nothing then; one that waits lets those behind it go before.
        let from = |w: &&Waiting| w.from(calendar, &due);
        let Some(next) = free
            .iter()
            .position(|w| from(w).is_some_and(|from| from <= at))
        else {
            if free.iter().all(|w| from(w).is_none()) {
                break;
            }
            continue;
        };
        let item = free.remove(next).item;
        due.push(Due {
            item,
            at,
            fixed: false,
        });
    }
    due.sort_by_key(|due| due.at);

    let empty = slot_now.filter(|_| fit().next().is_none());
    let next = due
        .first()
        .map(|due| due.at)
        .or_else(|| calendar.next_after(now.max(settled)));
    Plan { due, empty, next }
}

/// What goes out at the moments that the coach fixed, the earliest first. One that would tell something that
/// is not revealed by then is not among them.
fn fixed_later<'w>(
    calendar: &Calendar,
    now: DateTime<Utc>,
    waiting: impl Iterator<Item = &'w Waiting>,
) -> Vec<Due> {
    let mut fixed: Vec<(DateTime<Utc>, &Waiting)> = waiting
        .filter_map(|w| Some((w.fixed.filter(|at| *at > now)?, w)))
        .collect();
    fixed.sort_by_key(|(at, _)| *at);
    let mut due: Vec<Due> = Vec::new();
    for (at, w) in fixed {
        // Two fixed on one moment: the second takes the next free slot like any other.
        let taken = due.last().is_some_and(|last| last.at == at);
        if !taken && w.from(calendar, &due).is_some_and(|from| from <= at) {
            due.push(Due {
                item: w.item,
                at,
                fixed: true,
            });
        }
    }
    due
}

#[cfg(test)]
mod tests;
