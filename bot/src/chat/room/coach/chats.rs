//! How the chats fare: this room, and Discord where it is connected.

use axum::{Json, Router, extract::State, routing::get};
use serde::Serialize;
use serde_json::{Value, json};

use crate::{
    chat::{
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
    /// How it fares, with the reason in words.
    #[serde(flatten)]
    status: Value,
}

async fn chats(State(room): State<Shared>, Coach(coach): Coach) -> Json<Vec<Row>> {
    let words = room.words_for(&coach).await;
    let row = |fares: Fares| {
        let mut status = json!(fares.status);
        if let Some(why) = fares.status.why() {
            status["why"] = words.say(why).into();
        }
        Row {
            name: words.say(&ChatName::of(fares.chat, fares.name)),
            here: fares.chat == KEY,
            status,
        }
    };
    Json(room.statuses.all().into_iter().map(row).collect())
}
