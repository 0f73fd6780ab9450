//! The group's settings, and the two links.

use axum::{
    Json, Router,
    extract::{State, rejection::JsonRejection},
    http::header,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use serde::{Deserialize, Serialize};

use crate::{
    chat::{
        common::text::LanguageName,
        room::{
            Shared,
            door::Coach,
            trouble::{Told, Trouble},
        },
    },
    desk::{
        Deed, Defences, DeskError, Language, Mode, Paid, Scale, Settings, Style, TimeOfDay,
        TimesOfDay, price,
    },
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

/// Settings as the page sends them: what a coach types comes as it was typed, so that what is wrong with it is
/// told in their language.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Typed {
    name: String,
    zone: chrono_tz::Tz,
    post_time: Times,
    days: u8,
    open_minutes: u32,
    mode: Mode,
    language: Language,
    style: Style,
    points: Scale,
    wrong_cost: f64,
    hint_cost: f64,
    defences: Defences,
}

/// Times of a day as they were typed: one, or several.
#[derive(Deserialize)]
#[serde(untagged)]
enum Times {
    One(String),
    Several(Vec<String>),
}

impl Times {
    fn read(&self) -> Result<TimesOfDay, DeskError> {
        let typed = match self {
            Self::One(one) => std::slice::from_ref(one),
            Self::Several(several) => several,
        };
        let times = typed.iter().map(|text| text.parse::<TimeOfDay>());
        Ok(TimesOfDay::of(times.collect::<Result<Vec<_>, _>>()?)?)
    }
}

impl Default for Typed {
    /// What is not sent is as a new group has it.
    fn default() -> Self {
        let usual = Settings::default();
        Self {
            name: usual.name,
            zone: usual.zone,
            post_time: Times::Several(
                usual
                    .post_times
                    .iter()
                    .map(|time| time.to_string())
                    .collect(),
            ),
            days: usual.days.bits(),
            open_minutes: usual.open_minutes,
            mode: usual.mode,
            language: usual.language,
            style: usual.style,
            points: usual.points,
            wrong_cost: usual.wrong_cost.into(),
            hint_cost: usual.hint_cost.into(),
            defences: usual.defences,
        }
    }
}

impl TryFrom<Typed> for Settings {
    type Error = DeskError;
    fn try_from(typed: Typed) -> Result<Self, DeskError> {
        Ok(Self {
            name: typed.name,
            zone: typed.zone,
            post_times: typed.post_time.read()?,
            days: typed.days.try_into()?,
            open_minutes: typed.open_minutes,
            mode: typed.mode,
            language: typed.language,
            style: typed.style,
            points: typed.points,
            wrong_cost: price(Paid::Wrong, typed.wrong_cost)?,
            hint_cost: price(Paid::Hint, typed.hint_cost)?,
            defences: typed.defences,
        })
    }
}

async fn change(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Typed>, JsonRejection>,
) -> Told<()> {
    let Json(typed) = body?;
    room.desk
        .coach()
        .change_settings(&room.place, &coach, typed.try_into()?)
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

    use crate::desk::{Points, Refusal};

    fn read(body: serde_json::Value) -> Result<Settings, Refusal> {
        let typed: Typed = serde_json::from_value(body).expect("readable");
        typed.try_into().map_err(|error: DeskError| error.why())
    }

    /// What the page is given it may send back.
    #[test]
    fn settings_come_back_as_they_were_sent() {
        let sent = Settings {
            post_times: "07:05".parse().expect("a time"),
            days: 0b001_0101.try_into().expect("days"),
            wrong_cost: Points::of(0.5),
            ..Settings::default()
        };
        let body = json!(sent);
        assert_eq!(
            (&body["post_time"], &body["days"]),
            (&json!("07:05"), &json!(21))
        );
        assert_eq!(read(body), Ok(sent.clone()));
        let several = Settings {
            post_times: "09:00 18:30".parse().expect("times"),
            ..sent
        };
        let body = json!(several);
        assert_eq!(body["post_time"], json!(["09:00", "18:30"]));
        assert_eq!(read(body), Ok(several));
        assert_eq!(read(json!({})), Ok(Settings::default()));
    }

    #[test]
    fn what_is_no_setting_is_refused_as_it_was_typed() {
        let words = "half past six in the".into();
        assert_eq!(
            read(json!({ "post_time": "half past six in the evening" })),
            Err(Refusal::NotATime { words })
        );
        let at = "09:00".into();
        assert_eq!(
            read(json!({ "post_time": ["09:00", "09:00"] })),
            Err(Refusal::TimeTwice { at })
        );
        assert_eq!(read(json!({ "post_time": [] })), Err(Refusal::NoTimes));
        assert_eq!(read(json!({ "days": 128 })), Err(Refusal::DaysOfWeek));
        let what = Paid::Hint;
        assert_eq!(
            read(json!({ "hint_cost": 5.5 })),
            Err(Refusal::PriceRange { what })
        );
    }
}
