//! Refusals in the form Discord gives them: an HTTP status, a code, a message, and for a form the
//! place of each fault. Codes are those of the published list of JSON error codes.

use serde_json::{Value, json};

/// A refused request.
#[derive(Clone, Debug)]
pub struct Refusal {
    /// HTTP status.
    pub status: u16,
    /// Discord's code.
    pub code: u32,
    /// Its message.
    pub message: String,
    /// Faults of a form by place.
    pub errors: Option<Value>,
}

impl Refusal {
    /// A refusal with a status, a code and a message.
    pub fn new(status: u16, code: u32, message: &str) -> Self {
        Self {
            status,
            code,
            message: message.into(),
            errors: None,
        }
    }

    /// 401.
    pub fn unauthorized() -> Self {
        Self::new(401, 0, "401: Unauthorized")
    }

    /// The channel is unknown.
    pub fn unknown_channel() -> Self {
        Self::new(404, 10003, "Unknown Channel")
    }

    /// The message is unknown.
    pub fn unknown_message() -> Self {
        Self::new(404, 10008, "Unknown Message")
    }

    /// The channel may not be seen.
    pub fn missing_access() -> Self {
        Self::new(403, 50001, "Missing Access")
    }

    /// A permission is missing.
    pub fn missing_permissions() -> Self {
        Self::new(403, 50013, "Missing Permissions")
    }

    /// A form with faults; each is a place such as `content` or `embeds.0.title`, a code and a message.
    pub fn form(faults: &[Fault]) -> Self {
        let mut root = json!({});
        for fault in faults {
            let mut at = &mut root;
            for part in fault.place.split('.') {
                at = &mut at[part];
            }
            at["_errors"] = json!([{"code": fault.code, "message": fault.message}]);
        }
        Self {
            status: 400,
            code: 50035,
            message: "Invalid Form Body".into(),
            errors: Some(root),
        }
    }

    /// The body as Discord writes it.
    pub fn body(&self) -> Value {
        let mut body = json!({"message": self.message, "code": self.code});
        if let Some(errors) = &self.errors {
            body["errors"] = errors.clone();
        }
        body
    }
}

/// One fault of a form.
#[derive(Clone, Debug)]
pub struct Fault {
    /// Where, with dots.
    pub place: String,
    /// Discord's code for the kind of fault.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
}

impl Fault {
    /// A text outside its bounds.
    pub fn length(place: impl Into<String>, least: usize, most: usize) -> Self {
        Self {
            place: place.into(),
            code: "BASE_TYPE_BAD_LENGTH",
            message: format!("Must be between {least} and {most} in length."),
        }
    }

    /// Something is missing.
    pub fn required(place: impl Into<String>) -> Self {
        Self {
            place: place.into(),
            code: "BASE_TYPE_REQUIRED",
            message: "This field is required".into(),
        }
    }

    /// Any other fault.
    pub fn other(place: impl Into<String>, code: &'static str, message: impl Into<String>) -> Self {
        Self {
            place: place.into(),
            code,
            message: message.into(),
        }
    }
}
