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
}

#[derive(Serialize)]
struct Body<'a> {
    error: &'a str,
}

impl Trouble {
    pub(super) fn new(status: StatusCode, text: impl Into<String>) -> Self {
        Self {
            status,
            text: text.into(),
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
    }

    pub(super) fn not_coach() -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "Only the coach may do this: open the coach's link, which the bot printed when it started.",
        )
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

    pub(super) fn too_large(what: &str, most: &str) -> Self {
        Self::new(
            StatusCode::PAYLOAD_TOO_LARGE,
            format!("{what} is too large; {most} at most. Nothing was taken from it."),
        )
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        (self.status, Json(Body { error: &self.text })).into_response()
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
        };
        Self::new(status, error.to_string())
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
