//! A lesson into the week: a step a day, all at once, or by dates.

use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use sealed_move_store::{ContentId, Db, Group, Lesson, LessonPart, Soundness, Tx, to_seconds};

use super::{CoachDesk, lessons::lesson_of, queue::not_sound};
use crate::desk::{
    ItemId, LessonId, Person, Place, convert,
    error::{Done, bad_request},
    handle::{coached, position_of},
    refusal::Refusal,
    schedule,
    secrets::{Beside, Piece},
};

/// When the parts of a lesson go out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LessonPlan {
    /// In the group's free slots, behind what waits already.
    InOrder,
    /// All from this moment on, in the group's zone, a minute apart. What would give away another part waits
    /// for its reveal.
    AtOnce(NaiveDateTime),
    /// Steps by their place at moments of their own, in the group's zone; the others in free slots.
    Dates(Vec<(i64, NaiveDateTime)>),
}

/// What came of planning a lesson.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Planned {
    /// The entries of the queue, in the lesson's order; those that waited in it before are among them.
    pub items: Vec<ItemId>,
    /// How many parts were left out because they were posted before.
    pub left_out: usize,
}

impl CoachDesk<'_> {
    /// Puts a lesson into the week. Its parts that wait there already keep their places; those that were
    /// posted before are left out unless they are to go out `again`. A stop that is not sound needs `anyway`, as
    /// in [`CoachDesk::enqueue`]. Coaches only.
    ///
    /// # Errors
    /// When there is no such lesson or step, a stop is not sound, nothing is left to go out, or a moment is past,
    /// taken, or left out by the clocks; then nothing is changed.
    pub async fn plan_lesson(
        self,
        place: &Place,
        coach: &Person,
        lesson: LessonId,
        plan: LessonPlan,
        anyway: bool,
        again: bool,
    ) -> Done<Planned> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        let (at, by) = (place.clone(), coach.clone());
        let (contents, pieces, beside) = self
            .desk
            .read(move |db| pieces(db, &coached(db, &at, &by)?, lesson))
            .await?;
        let holds = self.desk.holds(pieces, beside).await?;
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let lesson = lesson_of(tx, &group, lesson)?;
                let all = tx.lesson_parts(lesson.id)?;
                let parts: Vec<&LessonPart> = all
                    .iter()
                    .filter(|part| again || part.item.is_some() || part.post.is_none())
                    .collect();
                if parts.is_empty() {
                    return bad_request(Refusal::LessonAllOut {
                        title: lesson.title.into(),
                    });
                }
                let items = parts
                    .iter()
                    .map(|part| enqueue(tx, &group, part, anyway, now))
                    .collect::<Done<Vec<_>>>()?;
                for (content, holds) in contents.iter().zip(&holds) {
                    if tx.content(*content)?.is_some() {
                        holds.keep(tx, *content)?;
                    }
                }
                fix(tx, &group, &lesson, &plan, &parts, &items, now)?;
                Ok(Planned {
                    items,
                    left_out: all.len() - parts.len(),
                })
            })
            .await
    }
}

/// The parts of a lesson, and what they will stand beside in the week.
fn pieces(
    db: &Db<'_>,
    group: &Group,
    lesson: LessonId,
) -> Done<(Vec<ContentId>, Vec<Piece>, Beside)> {
    let lesson = lesson_of(db, group, lesson)?;
    let (mut contents, mut pieces) = (Vec::new(), Vec::new());
    for part in db.lesson_parts(lesson.id)? {
        if let Some(piece) = Piece::of(db, part.content_id, &part.content)? {
            contents.push(part.content_id);
            pieces.push(piece);
        }
    }
    let beside = Beside::of(db, group)?.without(db, lesson.id)?;
    Ok((contents, pieces, beside))
}

fn enqueue(
    tx: &Tx<'_>,
    group: &Group,
    part: &LessonPart,
    anyway: bool,
    now: DateTime<Utc>,
) -> Done<ItemId> {
    if let Some(position) = part.content.position() {
        let position = position_of(tx, group, position)?;
        match position.check.soundness {
            Soundness::Sound => {}
            Soundness::Illegal => return bad_request(Refusal::IllegalPosition),
            _ if position.anyway || anyway => tx.set_position_anyway(position.id, true)?,
            _ => return bad_request(not_sound(&position)),
        }
    }
    Ok(tx.enqueue_content(part.content_id, now)?)
}

/// Gives the parts their moments.
fn fix(
    tx: &Tx<'_>,
    group: &Group,
    lesson: &Lesson,
    plan: &LessonPlan,
    parts: &[&LessonPart],
    items: &[ItemId],
    now: DateTime<Utc>,
) -> Done<()> {
    let zone = convert::kept_settings(&group.settings)?.zone;
    let moment = |local: NaiveDateTime| {
        let at = to_seconds(schedule::moment_of(zone, local)?);
        match at > now {
            true => Ok(at),
            false => bad_request(Refusal::TimePast {
                at: local.into(),
                now: now.with_timezone(&zone).naive_local().into(),
                zone: zone.to_string(),
            }),
        }
    };
    let taken: Vec<DateTime<Utc>> = tx
        .queue(group.id)?
        .into_iter()
        .filter(|other| !items.contains(&other.id))
        .filter_map(|other| other.due_at)
        .collect();
    match plan {
        LessonPlan::InOrder => Ok(()),
        LessonPlan::AtOnce(local) => {
            let waits = tx.lesson_waits(lesson.id)?;
            let mut at = moment(*local)?;
            for (part, item) in parts.iter().zip(items) {
                // Such a part goes out in a slot behind the reveal it waits for.
                if waits.iter().any(|(waiting, _)| *waiting == part.content_id) {
                    tx.set_due_at(*item, None)?;
                    continue;
                }
                while taken.contains(&at) {
                    at += TimeDelta::minutes(1);
                }
                tx.set_due_at(*item, Some(at))?;
                at += TimeDelta::minutes(1);
            }
            Ok(())
        }
        LessonPlan::Dates(dates) => {
            let mut fixed: Vec<DateTime<Utc>> = taken;
            for (step, local) in dates {
                let Some(first) = parts.iter().position(|part| part.step == *step) else {
                    return bad_request(Refusal::NoStep {
                        step: *step,
                        steps: lesson.steps,
                    });
                };
                let at = moment(*local)?;
                if fixed.contains(&at) {
                    return bad_request(Refusal::TimeTaken {
                        at: (*local).into(),
                    });
                }
                fixed.push(at);
                tx.set_due_at(items[first], Some(at))?;
            }
            Ok(())
        }
    }
}
