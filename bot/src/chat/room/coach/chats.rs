//! How the chats fare: this room, and Discord where it is connected.

use axum::{Json, Router, extract::State, routing::get};
use serde::Serialize;

use crate::chat::{
    Status,
    room::{KEY, Shared, door::Coach},
    status::Fares,
};

pub(super) fn routes() -> Router<Shared> {
    Router::new().route("/api/coach/chats", get(chats))
}

/// A chat and how it fares.
#[derive(Serialize)]
struct Row {
    /// As people read it.
    name: &'static str,
    /// Whether it is this room: that it is up, whoever reads this knows.
    here: bool,
    #[serde(flatten)]
    status: Status,
}

async fn chats(State(room): State<Shared>, Coach(_): Coach) -> Json<Vec<Row>> {
    let row = |fares: Fares| Row {
        name: fares.name,
        here: fares.chat == KEY,
        status: fares.status,
    };
    Json(room.statuses.all().into_iter().map(row).collect())
}
