//! The group's settings, and the two links.

use axum::{
    Json, Router,
    extract::{State, rejection::JsonRejection},
    http::header,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use serde::Serialize;

use crate::{
    chat::room::{
        Shared,
        door::Coach,
        trouble::{Told, Trouble},
    },
    desk::{Deed, Settings},
};

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/settings", get(settings).post(change))
        .route("/api/coach/link", post(change_link))
        .route("/api/coach/coach-link", post(change_coach_link))
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
        .coach()
        .change_settings(&room.place, &coach, settings)
        .await?;
    room.feed.coaches("week", &());
    room.feed.everyone("renewed", &());
    Ok(Json(()))
}

/// Makes a new link for members and shuts out whoever came in by the old one; their pages are told.
async fn change_link(State(room): State<Shared>, Coach(coach): Coach) -> Told<String> {
    room.desk
        .coach()
        .note_deed(&room.place, &coach, Deed::MemberLink)
        .await?;
    room.door.change_member_link(&room.desk).await?;
    room.feed.everyone("standing", &());
    Ok(Json(room.door.member_link()))
}

/// Makes a new coach's link. Whoever came in by the old one is shut out and told, and is a coach no
/// longer until they come by the new one; the browser that makes it stays in.
async fn change_coach_link(
    State(room): State<Shared>,
    Coach(coach): Coach,
) -> Result<Response, Trouble> {
    let cookie = room.door.change_coach_link(&room.desk).await?;
    room.desk.coach().only_coach(&room.place, &coach).await?;
    room.feed.everyone("standing", &());
    room.feed.everyone("renewed", &());
    let mut response = Json(room.door.coach_link()).into_response();
    if let Some(cookie) = cookie {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    Ok(response)
}
