//! Posts in the coach's hands: replies, judging and overruling, settling without a verdict, closing
//! early, and a word to the group.

use axum::{
    Json, Router,
    extract::{Path, State, rejection::JsonRejection},
    http::HeaderMap,
    routing::{get, post},
};
use serde::Deserialize;

use crate::{
    chat::room::{
        Shared,
        door::Coach,
        member::bounded,
        paper::{Grouped, Homework, Replied, Said},
        trouble::Told,
    },
    desk::{DeskError, Points, PostId, ReplyId, Verdict},
};

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/posts/{post}/replies", get(replies))
        .route("/api/coach/posts/{post}/answers", get(answers))
        .route("/api/coach/homework", get(homework))
        .route("/api/coach/posts/{post}/close", post(close))
        .route("/api/coach/replies/{reply}/overrule", post(overrule))
        .route("/api/coach/replies/{reply}/judge", post(judge))
        .route("/api/coach/replies/{reply}/mark", post(mark))
        .route("/api/coach/replies/{reply}/show", post(show))
        .route(
            "/api/coach/replies/{reply}/no-longer-show",
            post(no_longer_show),
        )
        .route("/api/coach/replies/{reply}/answer", post(answer))
        .route("/api/coach/replies/{reply}/no-answer", post(no_answer))
        .route("/api/coach/say", post(say))
}

/// Replies that wait for the coach.
async fn homework(
    State(room): State<Shared>,
    Coach(coach): Coach,
    headers: HeaderMap,
) -> Told<Vec<Homework>> {
    let rows = room.desk.coach().homework(&room.place, &coach).await?;
    let words = room.words(&headers).await;
    let waiting = rows.into_iter().map(|row| Homework::of(row, words));
    Ok(Json(waiting.collect()))
}

async fn replies(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(post): Path<PostId>,
    headers: HeaderMap,
) -> Told<Vec<Replied>> {
    let rows = room.desk.coach().replies(&room.place, &coach, post).await?;
    let words = room.words(&headers).await;
    let replies = rows.into_iter().map(|row| Replied::of(row, words));
    Ok(Json(replies.collect()))
}

/// The answers to a question, grouped by the first move found in each.
async fn answers(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(post): Path<PostId>,
    headers: HeaderMap,
) -> Told<Grouped> {
    let asked = room
        .desk
        .coach()
        .answers_by_move(&room.place, &coach, post)
        .await?;
    Ok(Json(Grouped::of(asked, room.words(&headers).await)))
}

async fn close(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(post): Path<PostId>,
) -> Told<()> {
    room.desk
        .coach()
        .close_now(&room.place, &coach, post)
        .await?;
    Ok(Json(()))
}

#[derive(Deserialize)]
struct Overrule {
    verdict: Verdict,
    points: f64,
    /// Words to the member; may be empty.
    #[serde(default)]
    words: String,
}

async fn overrule(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Overrule>, JsonRejection>,
) -> Told<()> {
    let Json(by_hand) = body?;
    room.desk
        .coach()
        .overrule(
            &room.place,
            &coach,
            reply,
            by_hand.verdict,
            by_hand.points.try_into().map_err(DeskError::from)?,
            &by_hand.words,
        )
        .await?;
    Ok(Json(()))
}

/// A verdict on a reply that nothing has decided.
async fn judge(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Overrule>, JsonRejection>,
) -> Told<()> {
    let Json(by_hand) = body?;
    room.desk
        .coach()
        .judge_by_hand(
            &room.place,
            &coach,
            reply,
            by_hand.verdict,
            by_hand.points.try_into().map_err(DeskError::from)?,
            &by_hand.words,
        )
        .await?;
    Ok(Json(()))
}

#[derive(Deserialize)]
struct Mark {
    points: f64,
    /// Words to the member; may be empty.
    #[serde(default)]
    words: String,
}

/// Points for an answer to a question.
async fn mark(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Mark>, JsonRejection>,
) -> Told<()> {
    let Json(Mark { points, words }) = body?;
    let points = Points::try_from(points).map_err(DeskError::from)?;
    room.desk
        .coach()
        .mark_answer(&room.place, &coach, reply, points, &words)
        .await?;
    Ok(Json(()))
}

#[derive(Deserialize)]
struct Words {
    words: String,
}

/// An answer is to be shown to the group, where its writer allows it.
async fn show(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Words>, JsonRejection>,
) -> Told<()> {
    let Json(Words { words }) = body?;
    room.desk
        .coach()
        .ask_to_show(&room.place, &coach, reply, &words)
        .await?;
    Ok(Json(()))
}

async fn no_longer_show(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
) -> Told<()> {
    room.desk
        .coach()
        .no_longer_show(&room.place, &coach, reply)
        .await?;
    Ok(Json(()))
}

/// A private answer without a verdict.
async fn answer(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Words>, JsonRejection>,
) -> Told<()> {
    let Json(Words { words }) = body?;
    room.desk
        .coach()
        .answer_privately(&room.place, &coach, reply, &words)
        .await?;
    Ok(Json(()))
}

async fn no_answer(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
) -> Told<()> {
    room.desk
        .coach()
        .no_answer_needed(&room.place, &coach, reply)
        .await?;
    Ok(Json(()))
}

/// A word to the group: always talk, never an answer.
async fn say(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Said>, JsonRejection>,
) -> Told<i64> {
    let Json(said) = body?;
    Ok(Json(room.speak(&coach, bounded(&said.text)?).await?))
}
