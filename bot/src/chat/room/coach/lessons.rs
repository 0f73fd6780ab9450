//! Lessons: taken in from a file, looked at step by step, put into the week, and handed out again.

use std::sync::Arc;

use axum::{
    Json, Router,
    body::Bytes,
    extract::{
        DefaultBodyLimit, Path, Query, State,
        rejection::{BytesRejection, JsonRejection},
    },
    http::{StatusCode, header},
    response::{IntoResponse, Response},
    routing::{get, post},
};
use chrono::NaiveDateTime;
use serde::{Deserialize, Serialize};

use super::checks::Progress;
use crate::{
    chat::room::{
        Shared,
        door::Coach,
        paper::Checked,
        text::Text,
        trouble::{Told, Trouble},
    },
    desk::{
        CheckedPosition, LessonFile, LessonId, LessonPlan, LessonRow, LessonSheet, Note, PartHolds,
        PartStands, SameChoice,
    },
    words::Words,
};

/// Largest file, in bytes.
const FILE: usize = 16 * 1024 * 1024;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route(
            "/api/coach/lessons",
            get(list).post(import).layer(DefaultBodyLimit::max(FILE)),
        )
        .route("/api/coach/lessons/{lesson}", get(one))
        .route("/api/coach/lessons/{lesson}/plan", post(plan))
        .route("/api/coach/lessons/{lesson}/remove", post(remove))
        .route("/api/coach/lessons/{lesson}/lesson.pgn", get(export))
}

/// A lesson in its reader's words.
#[derive(Serialize)]
struct Sheet {
    lesson: Option<LessonId>,
    title: String,
    topic: Option<String>,
    steps: Vec<Step>,
}

#[derive(Serialize)]
struct Step {
    step: i64,
    line: i64,
    contrast: bool,
    /// What is wrong with it, where it could not be read.
    trouble: Option<String>,
    parts: Vec<Part>,
}

#[derive(Serialize)]
struct Part {
    part: i64,
    lead: Vec<Note>,
    #[serde(flatten)]
    holds: Holds,
    /// The steps for whose reveals it waits.
    waits_for: Vec<i64>,
    #[serde(flatten)]
    stands: PartStands,
}

#[derive(Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
enum Holds {
    Problem {
        checked: Box<Checked>,
    },
    Question {
        words: String,
        fen: Option<String>,
        at_reveal: String,
    },
    Words {
        words: String,
        fen: Option<String>,
    },
}

impl Sheet {
    fn of(sheet: LessonSheet, words: &Words) -> Self {
        let part = |part: crate::desk::PartSheet| Part {
            part: part.part,
            lead: part.lead,
            waits_for: part.waits_for.iter().map(|(step, _)| *step).collect(),
            stands: part.stands,
            holds: match part.holds {
                PartHolds::Stop(checked) => Holds::Problem {
                    checked: Box::new(Checked::of(&checked, words)),
                },
                PartHolds::Question {
                    words,
                    fen,
                    at_reveal,
                } => Holds::Question {
                    words,
                    fen,
                    at_reveal,
                },
                PartHolds::Words { words, fen } => Holds::Words { words, fen },
            },
        };
        Self {
            lesson: sheet.lesson,
            title: sheet.title,
            topic: sheet.topic,
            steps: sheet
                .steps
                .into_iter()
                .map(|step| Step {
                    step: step.step,
                    line: step.line,
                    contrast: step.contrast,
                    trouble: step.trouble.map(|report| words.tell(&report.message)),
                    parts: step.parts.into_iter().map(part).collect(),
                })
                .collect(),
        }
    }
}

async fn list(State(room): State<Shared>, Coach(coach): Coach) -> Told<Vec<LessonRow>> {
    Ok(Json(room.desk.coach().lessons(&room.place, &coach).await?))
}

async fn one(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(lesson): Path<LessonId>,
) -> Told<Sheet> {
    let sheet = room
        .desk
        .coach()
        .lesson(&room.place, &coach, lesson)
        .await?;
    Ok(Json(Sheet::of(sheet, room.words_for(&coach).await)))
}

#[derive(Deserialize)]
struct FileName {
    name: String,
    /// A title in place of the file's own.
    #[serde(default)]
    title: String,
}

async fn import(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(FileName { name, title }): Query<FileName>,
    body: Result<Bytes, BytesRejection>,
) -> Told<Sheet> {
    let bytes = body?.to_vec();
    if bytes.is_empty() {
        return Err(Trouble::bad(Text::FileEmpty {
            name: name.as_str().into(),
        }));
    }
    // A task of its own: a page that is closed meanwhile does not break the check off.
    let tasks = Arc::clone(&room.tasks);
    let task = tasks.begin(async move {
        let Ok(_one_at_a_time) = room.bench.checking.try_lock() else {
            return Err(Trouble::new(StatusCode::CONFLICT, Text::CheckGoingOn));
        };
        let told = room.clone();
        let progress = move |done, of| told.feed.coaches("checking", &Progress { done, of });
        let title = Some(title.trim().to_owned()).filter(|title| !title.is_empty());
        let mut sheet = room
            .desk
            .coach()
            .import_lesson(
                &room.place,
                &coach,
                LessonFile { name, bytes, title },
                SameChoice::Keep,
                Arc::new(progress),
            )
            .await?;
        without_pictures(&mut sheet);
        room.feed.coaches("week", &());
        Ok(Sheet::of(sheet, room.words_for(&coach).await))
    });
    match task.await {
        Ok(outcome) => outcome.map(Json),
        Err(_) => {
            tracing::error!("the check of a lesson broke off");
            Err(Trouble::new(
                StatusCode::INTERNAL_SERVER_ERROR,
                Text::CheckBrokeOff,
            ))
        }
    }
}

/// The page fetches a kept position's picture by its address, when it shows it.
fn without_pictures(sheet: &mut LessonSheet) {
    let parts = sheet.steps.iter_mut().flat_map(|step| &mut step.parts);
    for part in parts {
        if let PartHolds::Stop(checked) = &mut part.holds {
            let checked: &mut CheckedPosition = checked;
            checked.picture = None;
        }
    }
}

#[derive(Deserialize)]
struct Plan {
    /// All from this moment on, `2026-12-01T18:00` in the group's zone.
    #[serde(default)]
    at_once: Option<String>,
    /// Steps with moments of their own.
    #[serde(default)]
    dates: Vec<(i64, String)>,
    /// The coach has read what is wrong and wants it all the same.
    #[serde(default)]
    anyway: bool,
    /// The coach has read that some was posted before and wants it again.
    #[serde(default)]
    again: bool,
}

/// What came of a plan.
#[derive(Serialize)]
struct Planned {
    items: usize,
    left_out: usize,
}

async fn plan(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(lesson): Path<LessonId>,
    body: Result<Json<Plan>, JsonRejection>,
) -> Told<Planned> {
    let Json(wanted) = body?;
    let plan = match wanted.at_once.as_deref().filter(|at| !at.is_empty()) {
        Some(at) => LessonPlan::AtOnce(local(at)?),
        None if wanted.dates.is_empty() => LessonPlan::InOrder,
        None => LessonPlan::Dates(
            wanted
                .dates
                .iter()
                .map(|(step, at)| Ok((*step, local(at)?)))
                .collect::<Result<_, Trouble>>()?,
        ),
    };
    let planned = room
        .desk
        .coach()
        .plan_lesson(
            &room.place,
            &coach,
            lesson,
            plan,
            wanted.anyway,
            wanted.again,
        )
        .await?;
    room.feed.coaches("week", &());
    Ok(Json(Planned {
        items: planned.items.len(),
        left_out: planned.left_out,
    }))
}

fn local(at: &str) -> Result<NaiveDateTime, Trouble> {
    NaiveDateTime::parse_from_str(at, "%Y-%m-%dT%H:%M")
        .map_err(|_| Trouble::bad(Text::TimeUnreadable { written: at.into() }))
}

async fn remove(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(lesson): Path<LessonId>,
) -> Told<()> {
    room.desk
        .coach()
        .remove_lesson(&room.place, &coach, lesson)
        .await?;
    room.feed.coaches("week", &());
    Ok(Json(()))
}

async fn export(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(lesson): Path<LessonId>,
) -> Result<Response, Trouble> {
    let text = room
        .desk
        .coach()
        .export_lesson(&room.place, &coach, lesson)
        .await?;
    let name = "attachment; filename=\"lesson.pgn\"";
    let kind = "application/vnd.chess-pgn; charset=utf-8";
    Ok((
        [
            (header::CONTENT_TYPE, kind),
            (header::CONTENT_DISPOSITION, name),
        ],
        text,
    )
        .into_response())
}
