//! The week as the store has it: which items may go out, and when each will.

use chrono::{DateTime, Utc};
use sealed_move_store::{self as store, Db, Group, Soundness, Waits};

use super::{
    ItemId, PositionId,
    content::beginning,
    convert,
    error::{Done, not_found},
    refusal::Refusal,
    schedule::{self, After, Calendar, Pause, Plan, Waiting},
};

/// The position that an item is, if it is one.
pub(super) fn waits_as(item: &store::Queued) -> Option<PositionId> {
    match &item.holds {
        Waits::Problem(problem) => Some(problem.position_id),
        Waits::Question { .. } | Waits::Words(_) => None,
    }
}

/// What an item is called in the list of what coaches did.
pub(super) fn called(item: &store::Queued) -> String {
    match &item.holds {
        Waits::Problem(_) => item.source.clone(),
        Waits::Question { asked: written, .. } | Waits::Words(written) => beginning(&written.words),
    }
}

/// A queue entry of the group by id.
pub(super) fn item_of(db: &Db<'_>, group: &Group, item: ItemId) -> Done<store::Queued> {
    match db.queued(item)? {
        Some(item) if item.group_id == group.id => Ok(item),
        _ => not_found(Refusal::NotInQueue),
    }
}

/// Whether an item of the queue may be posted.
pub(super) fn fit(item: &store::Queued) -> bool {
    match &item.holds {
        Waits::Problem(problem) => match problem.soundness {
            Soundness::Illegal => false,
            Soundness::Sound => true,
            _ => problem.anyway,
        },
        // Words need no proof.
        Waits::Question { .. } | Waits::Words(_) => true,
    }
}

/// The plan of a group's queue as it stands.
pub(super) fn plan_of(
    db: &Db<'_>,
    group: &Group,
    queue: &[store::Queued],
    now: DateTime<Utc>,
) -> Done<Plan> {
    let settings = convert::kept_settings(&group.settings)?;
    let settled = [
        group.slots_from,
        group.empty_told_at,
        db.latest_intended_at(group.id)?,
    ]
    .into_iter()
    .flatten()
    .fold(group.created_at, DateTime::max);
    let pause = match (group.paused, group.paused_until) {
        (false, _) => Pause::No,
        (true, Some(until)) => Pause::Until(until),
        (true, None) => Pause::Open,
    };
    let awaited = db.awaited(group.id)?;
    let after = |item| {
        let of_it = awaited.iter().filter(move |(id, _)| *id == item);
        of_it.map(|(_, what)| match what {
            store::Awaited::Queued(other) => After::Item(*other),
            store::Awaited::Post(_, closes) => After::Post(*closes),
        })
    };
    let waiting: Vec<Waiting> = queue
        .iter()
        .map(|item| Waiting {
            item: item.id,
            fit: fit(item),
            fixed: item.due_at,
            after: after(item.id).collect(),
        })
        .collect();
    Ok(schedule::plan(
        &Calendar::of(&settings),
        now,
        settled,
        pause,
        &waiting,
    ))
}
