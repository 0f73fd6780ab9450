//! The pages and their parts, built into the binary. Hand-written; nothing is fetched from elsewhere.

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode, header},
    response::{Html, IntoResponse, Redirect, Response},
    routing::get,
};

use super::{Shared, trouble};

const MEMBER: &str = include_str!("assets/member.html");
const COACH: &str = include_str!("assets/coach.html");
const ENTRANCE: &str = include_str!("assets/entrance.html");
const REFUSED: &str = include_str!("assets/refused.html");

const CSS: &str = "text/css; charset=utf-8";
const JS: &str = "text/javascript; charset=utf-8";
const SVG: &str = "image/svg+xml";

/// Every part of the pages: name, media type, content.
const PARTS: &[(&str, &str, &str)] = &[
    ("ink.css", CSS, include_str!("assets/ink.css")),
    ("parts.css", CSS, include_str!("assets/parts.css")),
    ("coach.css", CSS, include_str!("assets/coach.css")),
    ("seal.svg", SVG, include_str!("assets/seal.svg")),
    ("entrance.js", JS, include_str!("assets/entrance.js")),
    ("build.js", JS, include_str!("assets/build.js")),
    ("ask.js", JS, include_str!("assets/ask.js")),
    ("when.js", JS, include_str!("assets/when.js")),
    ("shut-out.js", JS, include_str!("assets/shut-out.js")),
    ("naming.js", JS, include_str!("assets/naming.js")),
    ("live.js", JS, include_str!("assets/live.js")),
    ("views.js", JS, include_str!("assets/views.js")),
    ("post.js", JS, include_str!("assets/post.js")),
    ("talk.js", JS, include_str!("assets/talk.js")),
    ("tables.js", JS, include_str!("assets/tables.js")),
    ("member.js", JS, include_str!("assets/member.js")),
    ("composer.js", JS, include_str!("assets/composer.js")),
    ("mine.js", JS, include_str!("assets/mine.js")),
    ("coach.js", JS, include_str!("assets/coach.js")),
    ("coach-chats.js", JS, include_str!("assets/coach-chats.js")),
    ("coach-week.js", JS, include_str!("assets/coach-week.js")),
    ("coach-check.js", JS, include_str!("assets/coach-check.js")),
    (
        "coach-members.js",
        JS,
        include_str!("assets/coach-members.js"),
    ),
    ("coach-posts.js", JS, include_str!("assets/coach-posts.js")),
    (
        "coach-summary.js",
        JS,
        include_str!("assets/coach-summary.js"),
    ),
    (
        "coach-settings.js",
        JS,
        include_str!("assets/coach-settings.js"),
    ),
    ("carry.js", JS, include_str!("assets/carry.js")),
];

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/", get(member))
        .route("/coach", get(coach))
        .route("/entrance", get(|| async { Html(ENTRANCE) }))
        .route(
            "/entrance/coach",
            get(|| async { Html(ENTRANCE.replace("href=\"/\"", "href=\"/coach\"")) }),
        )
        .route(
            "/favicon.ico",
            get(|| async { Redirect::to("/parts/seal.svg") }),
        )
        .route("/parts/{name}", get(part))
}

/// The page for those who have no (right) link.
pub(super) fn refused() -> Html<&'static str> {
    Html(REFUSED)
}

async fn member(State(room): State<Shared>, headers: HeaderMap) -> Response {
    if room.door.visitor(&headers).invited {
        Html(MEMBER).into_response()
    } else {
        (StatusCode::FORBIDDEN, refused()).into_response()
    }
}

async fn coach(State(room): State<Shared>, headers: HeaderMap) -> Response {
    if room.door.visitor(&headers).coach {
        Html(COACH).into_response()
    } else {
        (StatusCode::FORBIDDEN, refused()).into_response()
    }
}

async fn part(Path(name): Path<String>) -> Response {
    match PARTS.iter().find(|(known, ..)| *known == name) {
        Some((_, media_type, content)) => (
            [
                (header::CONTENT_TYPE, *media_type),
                (header::CACHE_CONTROL, "no-cache"),
            ],
            *content,
        )
            .into_response(),
        None => trouble::nothing_here().await.into_response(),
    }
}
