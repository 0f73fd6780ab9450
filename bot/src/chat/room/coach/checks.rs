//! Files: dropped or pasted, checked, and what became of them; the shelf of checked positions that are
//! in no week yet.

use std::sync::Arc;

use axum::{
    Json, Router,
    body::Bytes,
    extract::{
        DefaultBodyLimit, Path, Query, State,
        rejection::{BytesRejection, JsonRejection},
    },
    http::StatusCode,
    response::Response,
    routing::{get, post},
};
use serde::{Deserialize, Serialize};

use super::{super::paper::Post, open};
use crate::{
    chat::room::{
        Shared,
        door::Coach,
        member::picture_response,
        paper::Checked,
        text::Text,
        trouble::{Told, Trouble},
    },
    desk::{CheckedPosition, FoundWritten, PositionId, SameChoice, Telling, TopicName},
};

/// Largest file, in bytes.
const FILE: usize = 16 * 1024 * 1024;
/// Positions shown of the shelf.
const SHELF: usize = 500;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route(
            "/api/coach/import",
            post(import).layer(DefaultBodyLimit::max(FILE)),
        )
        .route(
            "/api/coach/written",
            post(written).layer(DefaultBodyLimit::max(FILE)),
        )
        .route("/api/coach/checked", get(checked))
        .route("/api/coach/shelf", get(shelf))
        .route("/api/coach/checked/{at}/same", post(same))
        .route("/api/coach/positions/{position}/topic", post(topic))
        .route("/api/coach/positions/{position}/words", post(words))
        .route("/api/coach/positions/{position}/preview", get(preview))
        .route("/api/coach/positions/{position}/diagram.png", get(diagram))
}

#[derive(Deserialize)]
struct FileName {
    name: String,
}

/// How far a check has come.
#[derive(Serialize)]
struct Progress {
    done: usize,
    of: usize,
}

async fn import(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(FileName { name }): Query<FileName>,
    body: Result<Bytes, BytesRejection>,
) -> Told<Vec<Checked>> {
    let bytes = content(&name, body)?;
    let told = room.clone();
    alone(&room, async move {
        let room = told;
        let found = room
            .desk
            .coach()
            .import(&room.place, &coach, &name, bytes, progress(&room))
            .await?;
        let twice = found
            .iter()
            .enumerate()
            .filter(|(_, one)| one.fresh.is_some())
            .map(|(at, one)| {
                let one = CheckedPosition {
                    picture: None,
                    ..one.clone()
                };
                (at, one)
            })
            .collect();
        let words = room.words_for(&coach).await;
        let shown: Vec<Checked> = found.iter().map(|one| Checked::of(one, words)).collect();
        *open(&room.bench.checked) = found;
        *open(&room.bench.twice) = twice;
        Ok(shown)
    })
    .await
    .map(Json)
}

/// What is in a file that was handed over.
pub(super) fn content(name: &str, body: Result<Bytes, BytesRejection>) -> Result<Vec<u8>, Trouble> {
    let bytes = body?.to_vec();
    match bytes.is_empty() {
        true => Err(Trouble::bad(Text::FileEmpty { name: name.into() })),
        false => Ok(bytes),
    }
}

/// Tells the coaches' pages how far a check has come.
pub(super) fn progress(room: &Shared) -> Arc<dyn Fn(usize, usize) + Send + Sync> {
    let room = room.clone();
    Arc::new(move |done, of| room.feed.coaches("checking", &Progress { done, of }))
}

/// Checks what a coach handed over, one thing at a time, and lets the pages know. It is a task of its own: a
/// page that is closed meanwhile does not break it off.
pub(super) async fn alone<T: Send + 'static>(
    room: &Shared,
    work: impl Future<Output = Result<T, Trouble>> + Send + 'static,
) -> Result<T, Trouble> {
    let held = room.clone();
    let task = room.tasks.begin(async move {
        let Ok(_one_at_a_time) = held.bench.checking.try_lock() else {
            return Err(Trouble::new(StatusCode::CONFLICT, Text::CheckGoingOn));
        };
        let done = work.await?;
        held.feed.coaches("week", &());
        Ok(done)
    });
    task.await.unwrap_or_else(|_| {
        tracing::error!("a check broke off");
        Err(Trouble::new(
            StatusCode::INTERNAL_SERVER_ERROR,
            Text::CheckBrokeOff,
        ))
    })
}

/// The questions and words of a file; nothing is kept of them here.
async fn written(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(FileName { name }): Query<FileName>,
    body: Result<Bytes, BytesRejection>,
) -> Told<Vec<FoundWritten>> {
    let bytes = body?.to_vec();
    let found = room
        .desk
        .coach()
        .written_in(&room.place, &coach, &name, bytes);
    Ok(Json(found.await?))
}

/// The reports on the file checked last, for a page that was closed meanwhile.
async fn checked(State(room): State<Shared>, Coach(coach): Coach) -> Json<Vec<Checked>> {
    let words = room.words_for(&coach).await;
    let checked = open(&room.bench.checked);
    Json(checked.iter().map(|one| Checked::of(one, words)).collect())
}

async fn shelf(State(room): State<Shared>, Coach(coach): Coach) -> Told<Vec<Checked>> {
    let shelf = room.desk.coach().shelf(&room.place, &coach, SHELF).await?;
    let words = room.words_for(&coach).await;
    Ok(Json(
        shelf.iter().map(|one| Checked::of(one, words)).collect(),
    ))
}

#[derive(Deserialize)]
struct Topic {
    topic: Option<String>,
}

async fn topic(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(position): Path<PositionId>,
    body: Result<Json<Topic>, JsonRejection>,
) -> Told<()> {
    let Json(Topic { topic }) = body?;
    let topic = TopicName::filled_in(topic.as_deref())?;
    room.desk
        .coach()
        .set_topic(&room.place, &coach, position, topic.clone())
        .await?;
    room.bench.retopic(position, topic.as_ref());
    room.feed.coaches("week", &());
    Ok(Json(()))
}

#[derive(Deserialize)]
struct Choice {
    choice: SameChoice,
    /// The position that the page shows there, so that a list which changed meanwhile is noticed.
    position: PositionId,
}

/// The coach's choice about a position of the file checked last that was kept otherwise before.
async fn same(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(at): Path<usize>,
    body: Result<Json<Choice>, JsonRejection>,
) -> Told<Checked> {
    let Json(Choice { choice, position }) = body?;
    let waiting = open(&room.bench.twice)
        .iter()
        .find(|(place, one)| *place == at && one.position == Some(position))
        .map(|(_, one)| one.clone());
    let Some(waiting) = waiting else {
        return Err(Trouble::bad(Text::OtherVersionGone));
    };
    let settled = room
        .desk
        .coach()
        .settle_same(&room.place, &coach, &waiting, choice)
        .await?;
    let shown = Checked::of(&settled, room.words_for(&coach).await);
    if let Some(place) = open(&room.bench.checked).get_mut(at) {
        *place = settled.clone();
    }
    for (place, one) in open(&room.bench.twice).iter_mut() {
        if *place == at {
            *one = settled.clone();
        }
    }
    room.feed.coaches("week", &());
    Ok(Json(shown))
}

#[derive(Deserialize)]
struct Words {
    with_post: String,
    at_reveal: String,
    /// The coach has read that the words tell a move, and sends them with the post all the same.
    #[serde(default)]
    anyway: bool,
}

async fn words(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(position): Path<PositionId>,
    body: Result<Json<Words>, JsonRejection>,
) -> Told<Checked> {
    let Json(said) = body?;
    let telling = match said.anyway {
        true => Telling::Meant,
        false => Telling::Refused,
    };
    room.desk
        .coach()
        .set_words(
            &room.place,
            &coach,
            position,
            &said.with_post,
            &said.at_reveal,
            telling,
        )
        .await?;
    let now = room
        .desk
        .coach()
        .checked(&room.place, &coach, position)
        .await?;
    // A page that is loaded again shows the words as they are now.
    let shown = Checked::of(&now, room.words_for(&coach).await);
    for one in open(&room.bench.checked).iter_mut() {
        if one.position == Some(position) {
            one.words = now.words.clone();
        }
    }
    room.feed.coaches("week", &());
    Ok(Json(shown))
}

async fn preview(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(position): Path<PositionId>,
) -> Told<Post> {
    let sheet = room
        .desk
        .coach()
        .preview(&room.place, &coach, position)
        .await?;
    Ok(Json(Post::preview(&sheet, room.words_of_group().await)))
}

async fn diagram(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(position): Path<PositionId>,
) -> Result<Response, Trouble> {
    Ok(picture_response(
        room.desk
            .coach()
            .diagram_of(&room.place, &coach, position)
            .await?,
    ))
}
