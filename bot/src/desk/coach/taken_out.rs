//! Taking something out of the week, and putting it back where it stood.

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{self as store, Db, Group};
use serde::Serialize;

use super::{
    CoachDesk,
    week::{LessonStepOf, holds, lesson_of},
};
use crate::desk::{
    ItemId, Person, Place, Queued, TakenOutId,
    error::{Done, not_found},
    handle::coached,
    queue::item_of,
    refusal::Refusal,
    secrets::{Beside, Piece},
};

/// For how long it is offered to put back what was taken out.
const OFFERED: TimeDelta = TimeDelta::days(7);

/// What was taken out of the week and can be put back.
#[derive(Clone, Debug, Serialize)]
pub struct TakenOut {
    /// By which it is put back.
    pub taken: TakenOutId,
    /// When it was taken out.
    pub taken_at: DateTime<Utc>,
    /// File and id, where a file gave it; else empty.
    pub source: String,
    /// Topic.
    pub topic: Option<String>,
    /// Where it stands in a lesson, when it is part of one.
    pub lesson: Option<LessonStepOf>,
    /// What it is.
    #[serde(flatten)]
    pub holds: Queued,
}

impl CoachDesk<'_> {
    /// Takes an item out of the week, and returns by what [`CoachDesk::put_back_in_week`] puts it back. A position lies
    /// on the shelf then; questions and words are kept until twenty others were taken out. Coaches only.
    pub async fn dequeue(self, place: &Place, coach: &Person, item: ItemId) -> Done<TakenOutId> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let item = item_of(tx, &group, item)?;
                Ok(tx.take_out(item.id, now)?)
            })
            .await
    }

    /// What was taken out of the week in the last seven days and can be put back, the latest first. Coaches only.
    ///
    /// # Errors
    /// When the person does not coach the group.
    pub async fn taken_out(self, place: &Place, coach: &Person) -> Done<Vec<TakenOut>> {
        let since = self.desk.now() - OFFERED;
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let lately = db.taken_out(group.id)?.into_iter();
                let rows = lately.filter(|row| row.taken_at > since).map(|row| {
                    Ok(TakenOut {
                        taken: row.id,
                        taken_at: row.taken_at,
                        holds: holds(db, &group, &row.was)?,
                        lesson: lesson_of(db, &row.was)?,
                        source: row.was.source,
                        topic: row.was.topic,
                    })
                });
                rows.collect()
            })
            .await
    }

    /// Puts what was taken out back at its place in the order, with its words, its topic and what it waits for,
    /// and returns the new queue entry's id. The moment that was fixed for it holds again, unless that is past or
    /// another item's by now. Coaches only.
    ///
    /// # Errors
    /// When it is in the week again, or gone.
    pub async fn put_back_in_week(
        self,
        place: &Place,
        coach: &Person,
        taken: TakenOutId,
    ) -> Done<ItemId> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        let (at, by) = (place.clone(), coach.clone());
        let (pieces, beside) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let content = row_of(db, &group, taken)?.was.content_id;
                let held = db.content(content)?;
                let piece = match &held {
                    Some((_, holds)) => Piece::of(db, content, holds)?,
                    None => None,
                };
                let mut beside = Beside::of(db, &group)?;
                if let Some(lesson) = db.in_lesson(content)? {
                    beside = beside.without(db, lesson.lesson_id)?;
                }
                Ok((piece.into_iter().collect(), beside))
            })
            .await?;
        // The week may have changed meanwhile.
        let holds = self.desk.holds(pieces, beside).await?;
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let row = row_of(tx, &group, taken)?;
                for holds in &holds {
                    holds.keep(tx, row.was.content_id)?;
                }
                let queue = tx.queue(group.id)?;
                let is_free = |at: &DateTime<Utc>| {
                    *at > now && queue.iter().all(|other| other.due_at != Some(*at))
                };
                Ok(tx.put_back(&row, row.was.due_at.filter(is_free))?)
            })
            .await
    }
}

/// What was taken out, as the store remembers it.
///
/// # Errors
/// When it is in the week again, or gone.
fn row_of(db: &Db<'_>, group: &Group, taken: TakenOutId) -> Done<store::TakenOut> {
    let mut rows = db.taken_out(group.id)?.into_iter();
    match rows.find(|row| row.id == taken) {
        Some(row) => Ok(row),
        None => not_found(Refusal::NotTakenOut),
    }
}
