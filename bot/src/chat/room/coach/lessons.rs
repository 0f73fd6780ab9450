//! Lessons: taken in from a file, looked at step by step, put into the week, and handed out again.

use axum::{
    Json, Router,
    body::Bytes,
    extract::{
        DefaultBodyLimit, Path, Query, State,
        rejection::{BytesRejection, JsonRejection},
    },
    http::header,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use chrono::NaiveDateTime;
use serde::{Deserialize, Serialize};

use super::checks::{alone, content, progress};
use crate::{
    chat::room::{
        Shared,
        door::Coach,
        paper::Checked,
        text::Text,
        trouble::{Told, Trouble},
    },
    desk::{
        LessonFile, LessonId, LessonPlan, LessonRow, LessonSheet, NewPostContent, Note, PartHolds,
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
pub(super) struct Sheet {
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

/// What a part is, told apart by its `kind`.
#[derive(Serialize)]
#[serde(untagged)]
enum Holds {
    Stop {
        kind: &'static str,
        checked: Box<Checked>,
    },
    Written(NewPostContent),
}

impl Sheet {
    pub(super) fn of(sheet: LessonSheet, words: &Words) -> Self {
        let part = |part: crate::desk::PartSheet| Part {
            part: part.part,
            lead: part.lead,
            waits_for: part.waits_for.iter().map(|(step, _)| *step).collect(),
            stands: part.stands,
            holds: match part.holds {
                PartHolds::Stop(checked) => Holds::Stop {
                    kind: "problem",
                    checked: Box::new(Checked::of(&checked, words)),
                },
                PartHolds::Written(written) => Holds::Written(written),
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
    let bytes = content(&name, body)?;
    let title = Some(title.trim().to_owned()).filter(|title| !title.is_empty());
    let file = LessonFile {
        name,
        bytes,
        title,
        replaces: None,
    };
    let told = room.clone();
    alone(&room, async move {
        let room = told;
        let (place, choice) = (&room.place, SameChoice::Keep);
        let sheet = room
            .desk
            .coach()
            .import_lesson(place, &coach, file, choice, progress(&room))
            .await?;
        Ok(Sheet::of(sheet, room.words_for(&coach).await))
    })
    .await
    .map(Json)
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
