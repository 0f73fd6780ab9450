//! Lessons as everyone in the room steps through them, after their reveals.

use axum::{
    Json, Router,
    extract::{Path, State},
    http::HeaderMap,
    response::Response,
    routing::get,
};
use chrono::{DateTime, Utc};
use serde::Serialize;

use super::{
    Shared,
    door::Guest,
    member::picture_response,
    trouble::{Told, Trouble, nothing_here},
};
use crate::{
    chat::{common::text::Tasked, pictures},
    desk::{KindName, LessonId, LessonWalk, PartAt, PostId, ToCome, WalkPart, WalkPlace},
    words::Words,
};

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/lessons", get(list))
        .route("/api/lessons/{lesson}", get(one))
        .route("/api/lessons/{lesson}/{step}/{part}/{file}", get(board))
}

/// A lesson in the list.
#[derive(Serialize)]
struct Row {
    lesson: LessonId,
    title: String,
    topic: Option<String>,
    revealed: usize,
    to_come: Coming,
}

/// What of a lesson is not revealed.
#[derive(Serialize)]
struct Coming {
    open: Vec<i64>,
    parts: usize,
    next: Option<DateTime<Utc>>,
}

impl From<ToCome> for Coming {
    fn from(to_come: ToCome) -> Self {
        Self {
            open: to_come.open,
            parts: to_come.parts,
            next: to_come.next,
        }
    }
}

/// A lesson to be stepped through.
#[derive(Serialize)]
struct Walk {
    lesson: LessonId,
    title: String,
    topic: Option<String>,
    steps: i64,
    parts: Vec<Part>,
    to_come: Coming,
}

#[derive(Serialize)]
struct Part {
    step: i64,
    part: i64,
    post: PostId,
    number: i64,
    kind: KindName,
    /// The sign of what was asked, and the same in words.
    sign: Option<String>,
    task: Option<String>,
    words: String,
    at_reveal: String,
    asked_at: Option<usize>,
    places: Vec<Place>,
}

#[derive(Serialize)]
struct Place {
    before: Option<usize>,
    next: Vec<usize>,
    written: String,
    /// The move in words.
    moved: String,
    words_before: String,
    words_after: String,
    src: String,
    alt: String,
}

impl Walk {
    fn of(walk: LessonWalk, words: &Words) -> Self {
        let lesson = walk.lesson;
        let part = |part: WalkPart| Part {
            step: part.at.step,
            part: part.at.part,
            post: part.post,
            number: part.number,
            kind: part.kind,
            sign: part.task.map(|(_, task)| task.to_string()),
            task: part
                .task
                .map(|(side, task)| words.say(&Tasked::of(side, task))),
            words: part.words,
            at_reveal: part.at_reveal,
            asked_at: part.asked_at,
            places: part
                .places
                .iter()
                .enumerate()
                .map(|(at, place)| Place::of(place, lesson, (part.at, at), words))
                .collect(),
        };
        Self {
            parts: walk.parts.into_iter().map(part).collect(),
            lesson,
            title: walk.title,
            topic: walk.topic,
            steps: walk.steps,
            to_come: walk.to_come.into(),
        }
    }
}

impl Place {
    fn of(
        place: &WalkPlace,
        lesson: LessonId,
        (PartAt { step, part }, at): (PartAt, usize),
        words: &Words,
    ) -> Self {
        let moved: Vec<String> = place.moved.iter().map(|fact| words.say(fact)).collect();
        Self {
            before: place.before,
            next: place.next.clone(),
            written: place.written.clone(),
            moved: moved.join(" "),
            words_before: place.words_before.clone(),
            words_after: place.words_after.clone(),
            src: format!("/api/lessons/{lesson}/{step}/{part}/board-{at}.png"),
            alt: place.alt.in_words(&pictures::tongue(words)),
        }
    }
}

async fn list(State(room): State<Shared>, Guest { .. }: Guest) -> Told<Vec<Row>> {
    let rows = room.desk.member().lessons(&room.place).await?;
    let rows = rows.into_iter().map(|row| Row {
        lesson: row.lesson,
        title: row.title,
        topic: row.topic,
        revealed: row.revealed,
        to_come: row.to_come.into(),
    });
    Ok(Json(rows.collect()))
}

async fn one(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    Path(lesson): Path<LessonId>,
    headers: HeaderMap,
) -> Told<Walk> {
    let walk = room.desk.member().lesson_walk(&room.place, lesson).await?;
    Ok(Json(Walk::of(walk, room.words(&headers).await)))
}

/// The board at a place. The desk gives out those of revealed parts only.
async fn board(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    Path((lesson, step, part, file)): Path<(LessonId, i64, i64, String)>,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let at = file
        .strip_prefix("board-")
        .and_then(|name| name.strip_suffix(".png"))
        .and_then(|at| at.parse::<usize>().ok());
    let Some(at) = at else {
        return Err(nothing_here().await);
    };
    let words = room.words(&headers).await;
    let part = PartAt { step, part };
    let picture = room
        .desk
        .member()
        .lesson_board(&room.place, lesson, (part, at), words.tag())
        .await?;
    Ok(picture_response(picture))
}
