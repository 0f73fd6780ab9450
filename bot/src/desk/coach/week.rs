//! The week as coaches see it: what waits, in the order in which it will go out, with what each waits for and,
//! where it has no moment, why.

use chrono::{DateTime, Utc};
use sealed_move_store::{self as store, Awaited, Db, Group, Waits};
use serde::Serialize;

use super::{CoachDesk, same::posted_before};
use crate::desk::{
    ItemId, Place, QueueItem, Queued, TopicOn,
    checking::report,
    convert,
    error::Done,
    handle::{group_at, position_of},
    queue::{called, fit, plan_of},
    schedule::Plan,
    topic_check,
};

/// Where something stands in a lesson.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LessonStepOf {
    /// The lesson's title.
    pub title: String,
    /// The step, from 1.
    pub step: i64,
    /// How many steps there are.
    pub steps: i64,
}

/// For whose reveal something waits, so as not to tell.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "waits", rename_all = "kebab-case")]
pub enum WaitsFor {
    /// A post that is open.
    Post {
        /// Its number.
        number: i64,
    },
    /// Something else in the week.
    Item {
        /// The queue entry.
        item: ItemId,
        /// What it is called.
        called: String,
    },
}

/// Why something in the week has no moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoTime {
    /// It was not found sound, and no coach said: post it anyway.
    NotSound,
    /// Posting is paused without an end.
    Paused,
    /// The group's calendar has no days.
    NoDays,
    /// What it waits for has no moment either.
    Waits,
}

/// The week in the order in which it goes out.
pub(super) struct Ordered {
    items: Vec<store::Queued>,
    plan: Plan,
}

impl Ordered {
    /// The queue of a group as it is planned at `now`.
    pub(super) fn of(db: &Db<'_>, group: &Group, now: DateTime<Utc>) -> Done<Self> {
        let mut items = db.queue(group.id)?;
        let plan = plan_of(db, group, &items, now)?;
        items.sort_by_key(|item| {
            let due = plan.due.iter().find(|due| due.item == item.id);
            // `None` comes before everything, and what has no moment comes last.
            (due.is_none(), due.map(|due| due.at), item.rank)
        });
        Ok(Self { items, plan })
    }

    /// Where an entry stands, from 0.
    pub(super) fn place_of(&self, item: ItemId) -> Option<usize> {
        self.items.iter().position(|queued| queued.id == item)
    }

    /// Whether the order decides when an entry goes out, and not a moment that the coach fixed.
    fn is_free(&self, item: &store::Queued) -> bool {
        match self.plan.due.iter().find(|due| due.item == item.id) {
            Some(due) => !due.fixed,
            None => item.due_at.is_none(),
        }
    }

    fn has_time(&self, item: &store::Queued) -> bool {
        self.plan.due.iter().any(|due| due.item == item.id)
    }

    /// Where an entry at `at` may move by one: what has a fixed moment is stepped over and does not move.
    fn neighbours(&self, at: usize) -> (Option<usize>, Option<usize>) {
        let own = &self.items[at];
        if !self.is_free(own) {
            return (None, None);
        }
        let timed = self.has_time(own);
        let meets = |other: &usize| {
            let other = &self.items[*other];
            self.is_free(other) && self.has_time(other) == timed
        };
        (
            (0..at).rev().find(meets),
            (at + 1..self.items.len()).find(meets),
        )
    }

    /// The place in the queue's own order that brings an entry to place `to` of this one.
    pub(super) fn rank_for(&self, item: ItemId, to: usize) -> usize {
        let own = self.items.iter().find(|queued| queued.id == item);
        let timed = own.is_some_and(|own| self.has_time(own));
        let others: Vec<&store::Queued> = self.items.iter().filter(|q| q.id != item).collect();
        let alike =
            |queued: &&&store::Queued| self.is_free(queued) && self.has_time(queued) == timed;
        let mut ranks: Vec<i64> = others.iter().map(|queued| queued.rank).collect();
        ranks.sort_unstable();
        let before_rank = |of: i64| ranks.partition_point(|rank| *rank < of);
        let behind = others.iter().skip(to).find(alike);
        let before = others.iter().take(to).rfind(alike);
        match (behind, before) {
            (Some(behind), _) => before_rank(behind.rank),
            (None, Some(before)) => before_rank(before.rank) + 1,
            (None, None) => own.map_or(to, |own| before_rank(own.rank)),
        }
    }
}

impl CoachDesk<'_> {
    /// The week: what waits, in the order in which it will go out; what has no moment comes last.
    pub async fn queue(self, place: &Place) -> Done<Vec<QueueItem>> {
        let now = self.desk.now();
        let place = place.clone();
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let week = Ordered::of(db, &group, now)?;
                let awaited = db.awaited(group.id)?;
                let items = week.items.iter().enumerate();
                items
                    .map(|(at, item)| laid_out(db, &group, &week, at, item, &awaited))
                    .collect()
            })
            .await
    }
}

fn laid_out(
    db: &Db<'_>,
    group: &Group,
    week: &Ordered,
    at: usize,
    item: &store::Queued,
    awaited: &[(ItemId, Awaited)],
) -> Done<QueueItem> {
    let due = week.plan.due.iter().find(|due| due.item == item.id);
    let (earlier, later) = week.neighbours(at);
    let waits_for = awaited
        .iter()
        .filter(|(waiting, _)| *waiting == item.id)
        .map(|(_, what)| waits_for(db, week, what))
        .collect::<Done<Vec<_>>>()?;
    let no_time = match due {
        Some(_) => None,
        None => Some(no_time(group, item, &waits_for)?),
    };
    Ok(QueueItem {
        id: item.id,
        holds: holds(db, group, item)?,
        lesson: lesson_of(db, item)?,
        source: item.source.clone(),
        topic: item.topic.clone(),
        due_at: due.map(|due| due.at),
        fixed: due.map_or(item.due_at.is_some(), |due| due.fixed),
        waits_for,
        no_time,
        earlier,
        later,
    })
}

fn waits_for(db: &Db<'_>, week: &Ordered, what: &Awaited) -> Done<WaitsFor> {
    Ok(match what {
        Awaited::Post(post, _) => WaitsFor::Post {
            number: db.post(*post)?.map_or(0, |post| post.number),
        },
        Awaited::Queued(other) => WaitsFor::Item {
            item: *other,
            called: week
                .items
                .iter()
                .find(|item| item.id == *other)
                .map_or_else(String::new, called),
        },
    })
}

fn no_time(group: &Group, item: &store::Queued, waits_for: &[WaitsFor]) -> Done<NoTime> {
    let settings = convert::kept_settings(&group.settings)?;
    Ok(if !fit(item) {
        NoTime::NotSound
    } else if group.paused && group.paused_until.is_none() {
        NoTime::Paused
    } else if settings.days.is_empty() {
        NoTime::NoDays
    } else {
        debug_assert!(!waits_for.is_empty(), "item {} has no moment", item.id);
        NoTime::Waits
    })
}

/// Where an entry stands in a lesson, if it is part of one.
pub(super) fn lesson_of(db: &Db<'_>, item: &store::Queued) -> Done<Option<LessonStepOf>> {
    let found = db.in_lesson(item.content_id)?;
    Ok(found.map(|found| LessonStepOf {
        title: found.title,
        step: found.step,
        steps: found.steps,
    }))
}

/// What an entry holds, for coaches.
pub(super) fn holds(db: &Db<'_>, group: &Group, item: &store::Queued) -> Done<Queued> {
    Ok(match &item.holds {
        Waits::Problem(problem) => Queued::Problem {
            position: problem.position_id,
            further_topics: position_of(db, group, problem.position_id)?.further_topics,
            topic_check: match &item.topic {
                Some(topic) => {
                    let report = report(&problem.report)?;
                    Some(topic_check(&report, topic, TopicOn::MainLine))
                }
                None => None,
            },
            posted: posted_before(db, group.id, &problem.fen)?,
            soundness: convert::kept_soundness(problem.soundness),
            difficulty: problem
                .report
                .get("difficulty")
                .and_then(serde_json::Value::as_f64),
            fen: problem.fen.clone(),
            stipulation: problem.stipulation.clone(),
        },
        Waits::Question { asked, at_reveal } => Queued::Question {
            words: asked.words.clone(),
            fen: asked.fen.clone(),
            at_reveal: at_reveal.clone(),
        },
        Waits::Words(written) => Queued::Words {
            words: written.words.clone(),
            fen: written.fen.clone(),
        },
    })
}

#[cfg(test)]
mod tests {
    use sealed_move_store::{ContentId, GroupId, Written};

    use super::*;
    use crate::desk::schedule::Due;

    fn item(id: i64, rank: i64) -> store::Queued {
        store::Queued {
            id: ItemId::of(id),
            group_id: GroupId::of(1),
            content_id: ContentId::of(id),
            rank,
            due_at: None,
            added_at: DateTime::UNIX_EPOCH,
            source: String::new(),
            topic: None,
            holds: Waits::Words(Written {
                words: "Read.".into(),
                fen: None,
            }),
        }
    }

    /// What has no moment stands last in the week, and first in the queue: nothing moves around it.
    #[test]
    fn what_has_no_moment_is_no_place_for_what_has_one() {
        let due = |id| Due {
            item: ItemId::of(id),
            at: DateTime::UNIX_EPOCH,
            fixed: false,
        };
        let week = Ordered {
            items: vec![item(1, 1), item(2, 2), item(3, 3), item(9, 0)],
            plan: Plan {
                due: vec![due(1), due(2), due(3)],
                ..Plan::default()
            },
        };
        let rank = |id, to| week.rank_for(ItemId::of(id), to);
        assert_eq!(week.neighbours(2), (Some(1), None));
        assert_eq!(week.neighbours(3), (None, None));
        assert_eq!((rank(1, 2), rank(1, 3), rank(1, 99)), (3, 3, 3));
        assert_eq!((rank(3, 0), rank(3, 1)), (1, 2));
        assert_eq!((rank(9, 0), rank(9, 3)), (0, 0), "it stays where it is");
    }
}
