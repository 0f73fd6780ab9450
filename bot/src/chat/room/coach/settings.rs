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
    chat::{
        common::text::LanguageName,
        room::{
            Shared,
            door::Coach,
            trouble::{Told, Trouble},
        },
    },
    desk::{Deed, Language, Settings},
    words::Words,
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
    /// Every language of replies: its code, and its name in the reader's words.
    languages: Vec<(Language, String)>,
    member_link: String,
}

async fn settings(State(room): State<Shared>, Coach(coach): Coach) -> Told<Desk> {
    let words = room.words_for(&coach).await;
    Ok(Json(Desk {
        settings: room.desk.settings(&room.place).await?,
        zones: chrono_tz::TZ_VARIANTS
            .iter()
            .map(|zone| zone.name())
            .collect(),
        languages: languages(words),
        member_link: room.door.member_link(),
    }))
}

fn languages(words: &Words) -> Vec<(Language, String)> {
    let named = |language| (language, LanguageName::listed(language, words));
    Language::ALL.map(named).into()
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

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::words::words;

    #[test]
    fn the_page_is_offered_every_language_of_replies() {
        let offered = serde_json::to_value(languages(words("es"))).expect("JSON");
        for language in Language::ALL {
            let name = LanguageName::listed(language, words("es"));
            let row = json!([language.code(), name]);
            let rows = offered.as_array().expect("rows");
            assert!(rows.contains(&row), "{row}");
        }
    }
}
