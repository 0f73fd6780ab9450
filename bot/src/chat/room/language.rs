//! In which language a reader is spoken to, on the pages and in what they are answered.

use axum::{
    Json, Router,
    extract::{State, rejection::JsonRejection},
    http::{HeaderMap, header},
    routing::post,
};
use serde::{Deserialize, Serialize};

use super::{Room, Shared, door::Member, text::Text, trouble::Trouble};
use crate::{
    chat::said::words_of,
    desk::{LanguageTag, Person},
    words::{Words, accepted, english, known, tags, words},
};

pub(super) fn routes() -> Router<Shared> {
    Router::new().route("/api/language", post(choose))
}

impl Room {
    /// The words for whoever sent a request with these headers: in the language they chose, else in the one
    /// their browser asks for, else in the group's.
    pub(super) async fn words(&self, headers: &HeaderMap) -> &'static Words {
        let language = asked_for(headers);
        let person = Person {
            user: self.door.visitor(headers).user.unwrap_or_default(),
            name: String::new(),
            language,
        };
        self.words_for(&person).await
    }

    /// The words for a person, known or not.
    pub(super) async fn words_for(&self, person: &Person) -> &'static Words {
        match self.desk.language_of(&self.place, person).await {
            Ok(language) => words_of(&language),
            Err(error) => {
                tracing::error!("a reader's language could not be looked up: {error}");
                words_of(&person.language.clone().unwrap_or_default())
            }
        }
    }

    /// The words for what all see: the group's.
    pub(super) async fn words_of_group(&self) -> &'static Words {
        match self.desk.settings(&self.place).await {
            Ok(settings) => words(settings.language.tag()),
            Err(_) => english(),
        }
    }
}

/// The language that is spoken here and that a browser likes best.
pub(super) fn asked_for(headers: &HeaderMap) -> Option<LanguageTag> {
    let asked = headers.get(header::ACCEPT_LANGUAGE)?.to_str().ok()?;
    LanguageTag::new(accepted(asked)?)
}

/// A language to choose.
#[derive(Serialize)]
pub(super) struct Spoken {
    tag: &'static str,
    /// As it calls itself.
    name: String,
}

/// All there are to choose from.
pub(super) fn spoken() -> Vec<Spoken> {
    let named = |tag| Spoken {
        tag,
        name: words(tag).text("language"),
    };
    tags().map(named).collect()
}

#[derive(Deserialize)]
struct Choice {
    /// A tag; absent for what the browser asks for.
    language: Option<String>,
}

/// Chooses the reader's language. Their other pages are loaded again in it.
async fn choose(
    State(room): State<Shared>,
    Member(person): Member,
    body: Result<Json<Choice>, JsonRejection>,
) -> Result<Json<()>, Trouble> {
    let Json(Choice { language }) = body?;
    let language = match language {
        Some(asked) => {
            let tag = known(&asked).and_then(LanguageTag::new);
            Some(tag.ok_or_else(|| {
                Trouble::bad(Text::LanguageUnknown {
                    asked: asked.as_str().into(),
                })
            })?)
        }
        None => None,
    };
    room.desk
        .choose_language(&room.place, &person, language)
        .await?;
    room.feed.member(&person.user, "renewed", &());
    Ok(Json(()))
}
