//! What a person reads when something could not be done: a status and one clear sentence or two, as
//! JSON. The guard puts it into the reader's language. (Pages that cannot be shown are in `pages`.)

use std::sync::Arc;

use axum::{
    Json,
    extract::rejection::{BytesRejection, JsonRejection},
    http::StatusCode,
    response::{IntoResponse, Response},
};
use serde::Serialize;

use super::{RoomError, text::Text};
use crate::{
    desk::{DeskError, Refusal},
    words::Words,
};

/// A refusal.
#[derive(Clone, Debug)]
pub(super) struct Trouble {
    status: StatusCode,
    why: Why,
    shut_out: Option<ShutOut>,
    offer: Option<String>,
}

/// What a page is answered.
pub(super) type Told<T> = Result<Json<T>, Trouble>;

/// What is said of it.
#[derive(Clone, Debug)]
enum Why {
    /// The room's own words.
    Room(Text),
    /// The desk's.
    Desk(Box<Refusal>),
}

/// A refusal that is on its way to the guard, which knows the reader's language.
#[derive(Clone)]
struct Untold(Arc<Trouble>);

/// Why a page that was in the room is in it no longer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum ShutOut {
    /// It came by a link that holds no longer, or by none.
    Link,
    /// The same, for a coach's page.
    CoachLink,
    /// A coach has removed the member.
    Removed,
    /// Everything of the member is erased.
    Erased,
}

#[derive(Serialize)]
struct Body<'a> {
    error: &'a str,
    /// Present where the page should say so and keep what was typed.
    #[serde(skip_serializing_if = "Option::is_none")]
    shut_out: Option<ShutOut>,
    /// A free name, where the one that was asked for is not.
    #[serde(skip_serializing_if = "Option::is_none")]
    offer: Option<&'a str>,
}

impl Trouble {
    pub(super) fn new(status: StatusCode, text: Text) -> Self {
        Self::of(status, Why::Room(text))
    }

    fn of(status: StatusCode, why: Why) -> Self {
        Self {
            status,
            why,
            shut_out: None,
            offer: None,
        }
    }

    fn shutting_out(self, why: ShutOut) -> Self {
        Self {
            shut_out: Some(why),
            ..self
        }
    }

    pub(super) fn bad(text: Text) -> Self {
        Self::new(StatusCode::BAD_REQUEST, text)
    }

    pub(super) fn not_invited() -> Self {
        Self::new(StatusCode::FORBIDDEN, Text::NoInvitation).shutting_out(ShutOut::Link)
    }

    pub(super) fn removed() -> Self {
        Self::new(StatusCode::FORBIDDEN, Text::RemovedFromGroup).shutting_out(ShutOut::Removed)
    }

    pub(super) fn nameless_coach() -> Self {
        Self::new(StatusCode::UNAUTHORIZED, Text::NamelessCoach)
    }

    pub(super) fn not_coach() -> Self {
        Self::new(StatusCode::FORBIDDEN, Text::NotByCoachLink).shutting_out(ShutOut::CoachLink)
    }

    pub(super) fn nameless() -> Self {
        Self::new(StatusCode::UNAUTHORIZED, Text::NamelessMember)
    }

    pub(super) fn inside() -> Self {
        Self::new(StatusCode::INTERNAL_SERVER_ERROR, Text::FaultInside)
    }

    pub(super) fn too_fast() -> Self {
        Self::new(StatusCode::TOO_MANY_REQUESTS, Text::TooFast)
    }

    pub(super) fn too_many_codes() -> Self {
        Self::new(StatusCode::TOO_MANY_REQUESTS, Text::TooManyCodes)
    }

    pub(super) fn too_large(text: Text) -> Self {
        Self::new(StatusCode::PAYLOAD_TOO_LARGE, text)
    }

    /// Takes the refusal out of an answer that is one.
    pub(super) fn of_answer(answer: &mut Response) -> Option<Arc<Self>> {
        let Untold(trouble) = answer.extensions_mut().remove()?;
        Some(trouble)
    }

    /// The refusal as its reader gets it.
    pub(super) fn told(&self, words: &Words) -> Response {
        let said = match &self.why {
            Why::Room(text) => words.say(text),
            Why::Desk(why) => words.say(why),
        };
        let body = Body {
            error: &said,
            shut_out: self.shut_out,
            offer: self.offer.as_deref(),
        };
        (self.status, Json(body)).into_response()
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let mut response = self.status.into_response();
        response.extensions_mut().insert(Untold(Arc::new(self)));
        response
    }
}

impl From<DeskError> for Trouble {
    fn from(error: DeskError) -> Self {
        let status = match &error {
            DeskError::Store(_) | DeskError::Picture(_) | DeskError::Fault(_) => {
                tracing::error!("{error}");
                StatusCode::INTERNAL_SERVER_ERROR
            }
            DeskError::NotFound(_) => StatusCode::NOT_FOUND,
            DeskError::NotAllowed(_) => StatusCode::FORBIDDEN,
            DeskError::BadRequest(_) => StatusCode::BAD_REQUEST,
            DeskError::NameTaken { .. } => StatusCode::CONFLICT,
        };
        let why = Why::Desk(Box::new(error.why()));
        let offer = match error {
            DeskError::NameTaken { offer, .. } => Some(offer),
            _ => None,
        };
        Self {
            offer,
            ..Self::of(status, why)
        }
    }
}

impl From<RoomError> for Trouble {
    fn from(error: RoomError) -> Self {
        match error {
            RoomError::Desk(error) => error.into(),
            other => {
                tracing::error!("{other}");
                let text = match other {
                    RoomError::Random(_) => Text::NoRandomNumbers,
                    _ => Text::FaultInside,
                };
                Self::new(StatusCode::INTERNAL_SERVER_ERROR, text)
            }
        }
    }
}

impl From<JsonRejection> for Trouble {
    fn from(rejection: JsonRejection) -> Self {
        match rejection {
            JsonRejection::BytesRejection(rejection) => rejection.into(),
            other => Self::bad(Text::RequestUnreadable {
                detail: other.body_text(),
            }),
        }
    }
}

impl From<BytesRejection> for Trouble {
    fn from(rejection: BytesRejection) -> Self {
        if rejection.status() == StatusCode::PAYLOAD_TOO_LARGE {
            Self::too_large(Text::RequestTooLarge)
        } else {
            Self::bad(Text::RequestBrokeOff)
        }
    }
}

/// The answer where there is nothing.
pub(super) async fn nothing_here() -> Trouble {
    Trouble::new(StatusCode::NOT_FOUND, Text::NothingHere)
}
