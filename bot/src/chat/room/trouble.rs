//! What a person reads when something could not be done: a status and one clear sentence or two, as
//! JSON. (Pages that cannot be shown are in `pages`.)

use axum::{
    Json,
    extract::rejection::{BytesRejection, JsonRejection},
    http::StatusCode,
    response::{IntoResponse, Response},
};
use serde::Serialize;

use super::RoomError;
use crate::desk::DeskError;

/// A refusal.
#[derive(Debug)]
pub(super) struct Trouble {
    status: StatusCode,
    text: String,
    shut_out: Option<ShutOut>,
    offer: Option<String>,
}

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
    pub(super) fn new(status: StatusCode, text: impl Into<String>) -> Self {
        Self {
            status,
            text: text.into(),
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

    pub(super) fn bad(text: impl Into<String>) -> Self {
        Self::new(StatusCode::BAD_REQUEST, text)
    }

    pub(super) fn not_invited() -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "You are not in the room: open the link that your coach gave you.",
        )
        .shutting_out(ShutOut::Link)
    }

    pub(super) fn removed() -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "Your coach has removed you from this group. What you wrote before is still kept: ask your coach if you want a copy of it, or want it erased.",
        )
        .shutting_out(ShutOut::Removed)
    }

    pub(super) fn nameless_coach() -> Self {
        Self::new(
            StatusCode::UNAUTHORIZED,
            "Say who you are first: open the coach's page and give your name there.",
        )
    }

    pub(super) fn not_coach() -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "Only the coach may do this: open the coach's link, which the bot printed when it started.",
        )
        .shutting_out(ShutOut::CoachLink)
    }

    pub(super) fn nameless() -> Self {
        Self::new(
            StatusCode::UNAUTHORIZED,
            "Choose a name first, so that the group knows who is speaking.",
        )
    }

    pub(super) fn inside() -> Self {
        Self::new(
            StatusCode::INTERNAL_SERVER_ERROR,
            "Something went wrong inside the bot. What was kept before is not lost; please tell whoever runs it.",
        )
    }

    pub(super) fn too_fast() -> Self {
        Self::new(
            StatusCode::TOO_MANY_REQUESTS,
            "That is faster than the bot can read. Wait a few seconds and send it again; it was not taken.",
        )
    }

    pub(super) fn too_many_codes() -> Self {
        Self::new(
            StatusCode::TOO_MANY_REQUESTS,
            "Too many wrong codes were tried in this room. Wait ten minutes, then have your other device show a new one.",
        )
    }

    pub(super) fn too_large(what: &str, most: &str) -> Self {
        Self::new(
            StatusCode::PAYLOAD_TOO_LARGE,
            format!("{what} is too large; {most} at most. Nothing was taken from it."),
        )
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let body = Body {
            error: &self.text,
            shut_out: self.shut_out,
            offer: self.offer.as_deref(),
        };
        (self.status, Json(body)).into_response()
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
        let text = error.to_string();
        let offer = match error {
            DeskError::NameTaken { offer, .. } => Some(offer),
            _ => None,
        };
        Self {
            offer,
            ..Self::new(status, text)
        }
    }
}

impl From<RoomError> for Trouble {
    fn from(error: RoomError) -> Self {
        match error {
            RoomError::Desk(error) => error.into(),
            other => {
                tracing::error!("{other}");
                Self::new(StatusCode::INTERNAL_SERVER_ERROR, other.to_string())
            }
        }
    }
}

impl From<JsonRejection> for Trouble {
    fn from(rejection: JsonRejection) -> Self {
        match rejection {
            JsonRejection::BytesRejection(rejection) => rejection.into(),
            other => Self::bad(format!(
                "The request could not be read: {}.",
                other.body_text()
            )),
        }
    }
}

impl From<BytesRejection> for Trouble {
    fn from(rejection: BytesRejection) -> Self {
        if rejection.status() == StatusCode::PAYLOAD_TOO_LARGE {
            Self::too_large(
                "What was sent",
                "a reply may have 50,000 characters, a file 16 MB",
            )
        } else {
            Self::bad("The request broke off before it was complete; try again.")
        }
    }
}

/// The answer where there is nothing.
pub(super) async fn nothing_here() -> Trouble {
    Trouble::new(StatusCode::NOT_FOUND, "There is nothing at this address.")
}
