//! How the chats fare: this room, and Discord where it is connected.

use axum::{Json, Router, extract::State, routing::get};
use serde::Serialize;

use crate::{
    chat::{
        Status,
        room::{KEY, Shared, door::Coach},
        status::Fares,
    },
    desk::ChatName,
};

pub(super) fn routes() -> Router<Shared> {
    Router::new().route("/api/coach/chats", get(chats))
}

/// A chat and how it fares.
#[derive(Serialize)]
struct Row {
    /// As people read it.
    name: String,
    /// Whether it is this room: that it is up, whoever reads this knows.
    here: bool,
    #[serde(flatten)]
    status: Status,
    /// Why it is not up, where that is known, in words.
    reason: Option<String>,
}

async fn chats(State(room): State<Shared>, Coach(coach): Coach) -> Json<Vec<Row>> {
    let words = room.words_for(&coach).await;
    let row = |fares: Fares| Row {
        name: words.say(&ChatName::of(fares.chat, fares.name)),
        here: fares.chat == KEY,
        reason: fares.status.why().map(|why| words.say(why)),
        status: fares.status,
    };
    Json(room.statuses.all().into_iter().map(row).collect())
}
