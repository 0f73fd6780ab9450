//! Lessons in the coach's hands: what a group has, one of them with where its parts stand, and out again as a
//! file.

use sealed_move_store::{Content, Db, Group, Lesson, LessonPart, PostState};
use serde::Serialize;

use super::{CoachDesk, NewPostContent, shelf};
use crate::chess::{comments::Note, lesson};
use crate::desk::{
    CheckedPosition, ItemId, LessonId, Person, Place, Report,
    error::{DeskError, Done, not_found},
    handle::{coached, position_of},
    refusal::Refusal,
};

/// A lesson of the group.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LessonRow {
    /// Its id.
    pub lesson: LessonId,
    /// Its title.
    pub title: String,
    /// Its topic.
    pub topic: Option<String>,
    /// How many steps it has.
    pub steps: i64,
    /// How many parts it has: what goes out at once.
    pub parts: usize,
    /// How many of them wait in the week.
    pub waiting: usize,
    /// How many of them were posted.
    pub posted: usize,
}

/// A lesson, step by step.
#[derive(Clone, Debug)]
pub struct LessonSheet {
    /// Its id; `None` when no step could be kept.
    pub lesson: Option<LessonId>,
    /// Its title.
    pub title: String,
    /// Its topic.
    pub topic: Option<String>,
    /// The steps, in order.
    pub steps: Vec<StepSheet>,
}

/// A step of a lesson.
#[derive(Clone, Debug)]
pub struct StepSheet {
    /// Its place in the lesson, from 1; 0 for one that could not be read, which has none.
    pub step: i64,
    /// Its line in the coach's file, from 1.
    pub line: i64,
    /// Whether the topic is meant to fail in it.
    pub contrast: bool,
    /// What is wrong with it, where it could not be read.
    pub trouble: Option<Box<Report>>,
    /// What goes out of it, in order.
    pub parts: Vec<PartSheet>,
}

/// What goes out at once.
#[derive(Clone, Debug)]
pub struct PartSheet {
    /// Its place in the step, from 1.
    pub part: i64,
    /// What leads up to it, or the example that is shown.
    pub lead: Vec<Note>,
    /// What it is.
    pub holds: PartHolds,
    /// The stops whose answers it would give away, and for whose reveals it waits: step and part.
    pub waits_for: Vec<(i64, i64)>,
    /// Where it stands.
    pub stands: PartStands,
}

/// What a part is.
#[derive(Clone, Debug)]
pub enum PartHolds {
    /// A stop.
    Stop(Box<CheckedPosition>),
    /// A question, or words alone.
    Written(NewPostContent),
}

/// Where a part stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "stands", rename_all = "kebab-case")]
pub enum PartStands {
    /// It could not be kept: no task was stated or found.
    NotKept,
    /// It is the same position and task as an earlier part, and goes out once.
    AsBefore {
        /// The step of that.
        step: i64,
    },
    /// It is kept, and not in the week.
    Kept,
    /// It waits in the week.
    Waits {
        /// The queue entry.
        item: ItemId,
    },
    /// It was posted, and takes replies still or is on its way.
    Open {
        /// Number of the post.
        number: i64,
    },
    /// It was posted and revealed.
    Closed {
        /// Number of the post.
        number: i64,
    },
}

impl CoachDesk<'_> {
    /// The group's lessons, the latest first. Coaches only.
    ///
    /// # Errors
    /// When the person does not coach the group.
    pub async fn lessons(self, place: &Place, coach: &Person) -> Done<Vec<LessonRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let rows = db.lessons(group.id)?.into_iter().map(|kept| {
                    let parts = db.lesson_parts(kept.id)?;
                    let count = |which: fn(&LessonPart) -> bool| {
                        parts.iter().filter(|part| which(part)).count()
                    };
                    Ok(LessonRow {
                        lesson: kept.id,
                        title: kept.title,
                        topic: kept.topic,
                        steps: kept.steps,
                        parts: parts.len(),
                        waiting: count(|part| part.item.is_some()),
                        posted: count(|part| part.post.is_some()),
                    })
                });
                rows.collect()
            })
            .await
    }

    /// A lesson with its steps and where each part stands, without diagrams. Coaches only.
    ///
    /// # Errors
    /// When there is no such lesson.
    pub async fn lesson(
        self,
        place: &Place,
        coach: &Person,
        lesson: LessonId,
    ) -> Done<LessonSheet> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let kept = lesson_of(db, &group, lesson)?;
                laid_out(db, &group, kept)
            })
            .await
    }

    /// A lesson as one file of PGN, which can be taken in again. Coaches only.
    ///
    /// # Errors
    /// When there is no such lesson.
    pub async fn export_lesson(
        self,
        place: &Place,
        coach: &Person,
        lesson: LessonId,
    ) -> Done<String> {
        let (at, by) = (place.clone(), coach.clone());
        let (kept, games) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let kept = lesson_of(db, &group, lesson)?;
                let games = db.lesson_steps(lesson)?.into_iter().map(|step| step.game);
                Ok((kept, games.collect::<Vec<_>>()))
            })
            .await?;
        let limit = self.desk.inner.options.check_seconds;
        let written = self
            .desk
            .inner
            .checks
            .run("writing a lesson", limit, move |_| {
                lesson::written(&kept.title, kept.topic.as_deref(), &games)
            })
            .await?;
        written.map_err(|error| {
            DeskError::damaged(format!("a step of a lesson in it cannot be read ({error})"))
        })
    }

    /// Forgets a lesson. What of it waits in the week is taken out; its positions, and what was posted,
    /// stay. Coaches only.
    ///
    /// # Errors
    /// When there is no such lesson.
    pub async fn remove_lesson(self, place: &Place, coach: &Person, lesson: LessonId) -> Done<()> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let kept = lesson_of(tx, &group, lesson)?;
                Ok(tx.remove_lesson(kept.id)?)
            })
            .await
    }
}

/// A lesson of the group by id.
pub(super) fn lesson_of(db: &Db<'_>, group: &Group, lesson: LessonId) -> Done<Lesson> {
    match db.lesson(lesson)? {
        Some(kept) if kept.group_id == group.id => Ok(kept),
        _ => not_found(Refusal::NoLesson),
    }
}

fn laid_out(db: &Db<'_>, group: &Group, kept: Lesson) -> Done<LessonSheet> {
    let parts = db.lesson_parts(kept.id)?;
    let waits = db.lesson_waits(kept.id)?;
    let place_of = |content| {
        let part = parts.iter().find(|part| part.content_id == content)?;
        Some((part.step, part.part))
    };
    let sheet = |part: &LessonPart| {
        Ok(PartSheet {
            part: part.part,
            lead: serde_json::from_value(part.lead.clone()).map_err(|error| {
                DeskError::damaged(format!("a lesson in it cannot be read ({error})"))
            })?,
            waits_for: waits
                .iter()
                .filter(|(waiting, _)| *waiting == part.content_id)
                .filter_map(|(_, other)| place_of(*other))
                .collect(),
            stands: stands(part),
            holds: match &part.content {
                Content::Problem { position_id, .. } => {
                    let position = position_of(db, group, *position_id)?;
                    PartHolds::Stop(Box::new(shelf::laid_out(position, None)?))
                }
                Content::Question { asked, at_reveal } => {
                    PartHolds::Written(NewPostContent::Question {
                        words: asked.words.clone(),
                        fen: asked.fen.clone(),
                        at_reveal: at_reveal.clone(),
                    })
                }
                Content::Words(written) => PartHolds::Written(NewPostContent::Words {
                    words: written.words.clone(),
                    fen: written.fen.clone(),
                }),
            },
        })
    };
    let steps = db.lesson_steps(kept.id)?.into_iter().map(|step| {
        let own = parts.iter().filter(|part| part.step == step.step);
        Ok(StepSheet {
            step: step.step,
            line: step.line,
            contrast: step.contrast,
            trouble: None,
            parts: own.map(sheet).collect::<Done<_>>()?,
        })
    });
    Ok(LessonSheet {
        lesson: Some(kept.id),
        steps: steps.collect::<Done<_>>()?,
        title: kept.title,
        topic: kept.topic,
    })
}

fn stands(part: &LessonPart) -> PartStands {
    match (part.item, part.post) {
        (Some(item), _) => PartStands::Waits { item },
        (None, Some(post)) if post.state == PostState::Closed => PartStands::Closed {
            number: post.number,
        },
        (None, Some(post)) => PartStands::Open {
            number: post.number,
        },
        (None, None) => PartStands::Kept,
    }
}
