//! The week: the queue in order, its times, pausing, and posting now.

use axum::{
    Json, Router,
    extract::{Path, State, rejection::JsonRejection},
    response::Response,
    routing::{get, post},
};
use chrono::{DateTime, NaiveDate, NaiveDateTime, Utc};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use super::beginning;
use crate::{
    chat::room::{
        Shared,
        door::Coach,
        feed,
        member::picture_response,
        paper::{Note, Post},
        text::Text,
        trouble::{Told, Trouble, nothing_here},
    },
    desk::{ItemId, PositionId, PostRow, QueueItem, TakenOut, TakenOutId, TopicName},
};

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/week", get(week))
        .route("/api/coach/queue", post(enqueue))
        .route("/api/coach/queue/question", post(question))
        .route("/api/coach/queue/words", post(words))
        .route("/api/coach/queue/{item}/topic", post(topic))
        .route("/api/coach/queue/{item}/preview", get(preview))
        .route("/api/coach/queue/{item}/position.png", get(position))
        .route("/api/coach/queue/{item}/move", post(reorder))
        .route("/api/coach/queue/{item}/time", post(time))
        .route("/api/coach/queue/{item}/remove", post(remove))
        .route("/api/coach/taken-out/{taken}/put-back", post(put_back))
        .route("/api/coach/post-now", post(post_now))
        .route("/api/coach/pause", post(pause))
        .route("/api/coach/resume", post(resume))
}

/// The week as it stands.
#[derive(Serialize)]
struct Week {
    items: Vec<Placed>,
    open: Vec<PostRow>,
    /// What can be put back, the latest first.
    taken_out: Vec<TakenOut>,
    topics: Vec<String>,
    paused: Option<Pause>,
    zone: String,
    notes: Vec<Note>,
}

/// A place in the week, with its time as the group's clocks show it.
#[derive(Serialize)]
struct Placed {
    #[serde(flatten)]
    item: QueueItem,
    /// `2026-12-01T18:00` in the group's zone.
    due_local: Option<String>,
    /// Why its topic is not verified, in the coach's words; empty where there is nothing to mark.
    topic_told: String,
}

#[derive(Serialize)]
struct Pause {
    until: Option<DateTime<Utc>>,
}

async fn week(State(room): State<Shared>, Coach(coach): Coach) -> Told<Week> {
    let zone = room.desk.settings(&room.place).await?.zone;
    let items = room.desk.coach().queue(&room.place).await?;
    let posts = room.desk.posts(&room.place, feed::POSTS).await?;
    let words = room.words_for(&coach).await;
    let place = |item: QueueItem| Placed {
        topic_told: item
            .holds
            .topic_check()
            .filter(|check| check.is_doubtful())
            .map_or_else(String::new, |check| words.tell(&check.facts)),
        due_local: item.due_at.map(|due| local(due, zone)),
        item,
    };
    Ok(Json(Week {
        items: items.into_iter().map(place).collect(),
        open: posts.into_iter().filter(|row| row.open).collect(),
        taken_out: room.desk.coach().taken_out(&room.place, &coach).await?,
        topics: room.desk.topics(&room.place).await?,
        paused: room
            .desk
            .coach()
            .paused(&room.place)
            .await?
            .map(|until| Pause { until }),
        zone: zone.name().to_owned(),
        notes: room.bench.notes(words),
    }))
}

/// A moment as a field for day and time has it.
fn local(at: DateTime<Utc>, zone: Tz) -> String {
    let shown = at.with_timezone(&zone);
    shown.format("%Y-%m-%dT%H:%M").to_string()
}

#[derive(Deserialize)]
struct Enqueue {
    positions: Vec<PositionId>,
    /// The coach has read what is wrong and wants them all the same.
    #[serde(default)]
    anyway: bool,
    /// The coach has read that they were posted before and wants them again.
    #[serde(default)]
    again: bool,
}

async fn enqueue(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Enqueue>, JsonRejection>,
) -> Told<usize> {
    let Json(wanted) = body?;
    for &position in &wanted.positions {
        let (desk, place, anyway) = (&room.desk, &room.place, wanted.anyway);
        match wanted.again {
            true => {
                desk.coach()
                    .enqueue_again(place, &coach, position, anyway)
                    .await?
            }
            false => {
                desk.coach()
                    .enqueue(place, &coach, position, anyway)
                    .await?
            }
        };
    }
    room.feed.coaches("week", &());
    Ok(Json(wanted.positions.len()))
}

/// A question or words, as the coach's form has them.
#[derive(Deserialize)]
struct Written {
    words: String,
    #[serde(default)]
    fen: String,
    #[serde(default)]
    topic: String,
    /// Of a question, words for its reveal.
    #[serde(default)]
    at_reveal: String,
}

async fn question(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Written>, JsonRejection>,
) -> Told<ItemId> {
    let Json(new) = body?;
    let item = room.desk.coach().enqueue_question(
        &room.place,
        &coach,
        &new.words,
        Some(&new.fen),
        TopicName::filled_in(Some(&new.topic))?,
        &new.at_reveal,
    );
    let item = item.await?;
    room.feed.coaches("week", &());
    Ok(Json(item))
}

async fn words(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Written>, JsonRejection>,
) -> Told<ItemId> {
    let Json(new) = body?;
    let item = room.desk.coach().enqueue_words(
        &room.place,
        &coach,
        &new.words,
        Some(&new.fen),
        TopicName::filled_in(Some(&new.topic))?,
    );
    let item = item.await?;
    room.feed.coaches("week", &());
    Ok(Json(item))
}

#[derive(Deserialize)]
struct Topic {
    topic: Option<String>,
}

async fn topic(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(item): Path<ItemId>,
    body: Result<Json<Topic>, JsonRejection>,
) -> Told<()> {
    let Json(Topic { topic }) = body?;
    let topic = TopicName::filled_in(topic.as_deref())?;
    room.desk
        .coach()
        .set_item_topic(&room.place, &coach, item, topic.clone())
        .await?;
    let week = room.desk.coach().queue(&room.place).await?;
    let changed = week.iter().find(|one| one.id == item);
    if let Some(position) = changed.and_then(|one| one.holds.position()) {
        room.bench.retopic(position, topic.as_ref());
    }
    room.feed.coaches("week", &());
    Ok(Json(()))
}

/// What waits, exactly as members will see it.
async fn preview(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(item): Path<ItemId>,
) -> Told<Post> {
    let sheet = room
        .desk
        .coach()
        .preview_item(&room.place, &coach, item)
        .await?;
    Ok(Json(Post::preview(&sheet, room.words_of_group().await)))
}

/// The picture of what waits, where it has one.
async fn position(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(item): Path<ItemId>,
) -> Result<Response, Trouble> {
    let sheet = room
        .desk
        .coach()
        .preview_item(&room.place, &coach, item)
        .await?;
    match sheet.content.picture() {
        Some(picture) => Ok(picture_response(picture.clone())),
        None => Err(nothing_here().await),
    }
}

#[derive(Deserialize)]
struct Reorder {
    to: usize,
}

async fn reorder(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(item): Path<ItemId>,
    body: Result<Json<Reorder>, JsonRejection>,
) -> Told<usize> {
    let Json(Reorder { to }) = body?;
    let place = room
        .desk
        .coach()
        .reorder(&room.place, &coach, item, to)
        .await?;
    room.feed.coaches("week", &());
    Ok(Json(place))
}

#[derive(Deserialize)]
struct Time {
    /// In the group's zone; absent to let the calendar decide.
    local: Option<String>,
}

async fn time(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(item): Path<ItemId>,
    body: Result<Json<Time>, JsonRejection>,
) -> Told<()> {
    let Json(Time { local }) = body?;
    let local = local
        .as_deref()
        .map(|text| {
            ["%Y-%m-%dT%H:%M", "%Y-%m-%dT%H:%M:%S"]
                .iter()
                .find_map(|form| NaiveDateTime::parse_from_str(text, form).ok())
                .ok_or_else(|| {
                    Trouble::bad(Text::TimeUnreadable {
                        written: text.into(),
                    })
                })
        })
        .transpose()?;
    room.desk
        .coach()
        .fix_time(&room.place, &coach, item, local)
        .await?;
    room.feed.coaches("week", &());
    Ok(Json(()))
}

async fn remove(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(item): Path<ItemId>,
) -> Told<TakenOutId> {
    let taken = room.desk.coach().dequeue(&room.place, &coach, item).await?;
    room.feed.coaches("week", &());
    Ok(Json(taken))
}

async fn put_back(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(taken): Path<TakenOutId>,
) -> Told<ItemId> {
    let desk = room.desk.coach();
    let item = desk.put_back_in_week(&room.place, &coach, taken).await?;
    room.feed.coaches("week", &());
    Ok(Json(item))
}

#[derive(Deserialize)]
struct PostNow {
    item: Option<ItemId>,
}

async fn post_now(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<PostNow>, JsonRejection>,
) -> Told<()> {
    let Json(PostNow { item }) = body?;
    room.desk
        .coach()
        .post_now(&room.place, &coach, item)
        .await?;
    Ok(Json(()))
}

#[derive(Deserialize)]
struct PauseUntil {
    /// The first day on which posts go out again, in the group's zone.
    until: Option<NaiveDate>,
}

async fn pause(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<PauseUntil>, JsonRejection>,
) -> Told<()> {
    let Json(PauseUntil { until }) = body?;
    let zone = room.desk.settings(&room.place).await?.zone;
    let until = until.map(|day| beginning(day, zone));
    room.desk.coach().pause(&room.place, &coach, until).await?;
    room.feed.coaches("week", &());
    Ok(Json(()))
}

async fn resume(State(room): State<Shared>, Coach(coach): Coach) -> Told<()> {
    room.desk.coach().resume(&room.place, &coach).await?;
    room.feed.coaches("week", &());
    Ok(Json(()))
}
