//! The group's settings, and the link for members.

use axum::{
    Json, Router,
    extract::{State, rejection::JsonRejection},
    routing::{get, post},
};
use serde::Serialize;

use crate::{
    chat::room::{Shared, door::Coach, trouble::Trouble},
    desk::Settings,
};

type Told<T> = Result<Json<T>, Trouble>;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/settings", get(settings).post(change))
        .route("/api/coach/link", post(change_link))
}

#[derive(Serialize)]
struct Desk {
    settings: Settings,
    /// Every zone of the IANA database, by name.
    zones: Vec<&'static str>,
    member_link: String,
}

async fn settings(State(room): State<Shared>, Coach(_): Coach) -> Told<Desk> {
    Ok(Json(Desk {
        settings: room.desk.settings(&room.place).await?,
        zones: chrono_tz::TZ_VARIANTS
            .iter()
            .map(|zone| zone.name())
            .collect(),
        member_link: room.door.member_link(),
    }))
}

async fn change(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Settings>, JsonRejection>,
) -> Told<()> {
    let Json(settings) = body?;
    room.desk
        .change_settings(&room.place, &coach, settings)
        .await?;
    room.feed.coaches("week", &());
    room.feed.everyone("renewed", &());
    Ok(Json(()))
}

/// Makes a new link for members and shuts out whoever came in by the old one.
async fn change_link(State(room): State<Shared>, Coach(_): Coach) -> Told<String> {
    room.door.change_member_link(&room.desk).await?;
    room.feed.everyone("renewed", &());
    Ok(Json(room.door.member_link()))
}
