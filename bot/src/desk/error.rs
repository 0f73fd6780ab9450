//! Why the desk could not do what was asked, in words for the person who asked.

use sealed_move_store::StoreError;

/// Why the desk could not do what was asked; the text is for the person who asked.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// The store failed.
    #[error(
        "The store could not be used: {0}. Nothing that was already kept is lost; try again in a while, and tell whoever runs the bot if it stays so."
    )]
    Store(String),
    /// There is no such thing.
    #[error("{0}")]
    NotFound(String),
    /// The person may not.
    #[error("{0}")]
    NotAllowed(String),
    /// The request makes no sense as it stands.
    #[error("{0}")]
    BadRequest(String),
    /// A name that somebody asked for is another's, or looks like it.
    #[error("{text}")]
    NameTaken {
        /// Why, and what to do.
        text: String,
        /// A name close to it that is free.
        offer: String,
    },
    /// A picture could not be drawn.
    #[error("{0}")]
    Picture(#[from] crate::diagram::DiagramError),
    /// A computation broke down, which is a fault of the program and not of what was sent.
    #[error(
        "Something went wrong inside the bot while {0}. What was kept before is not lost; please tell whoever runs the bot."
    )]
    Fault(&'static str),
}

/// What a call of the desk gives back.
pub(super) type Done<T> = Result<T, DeskError>;

impl From<StoreError> for DeskError {
    /// Says in a chat what a member may know; paths and SQL are for the log.
    fn from(error: StoreError) -> Self {
        match &error {
            StoreError::NoSuch { what, id } => {
                return Self::NotFound(format!("There is no {what} {id} (any more)."));
            }
            StoreError::SlotTaken { .. } => {
                return Self::BadRequest(
                    "Another post goes out at that very moment; choose another time.".into(),
                );
            }
            _ => {}
        }
        tracing::error!(%error, "the store could not be used");
        Self::Store(
            match error {
                StoreError::Full { .. } => "its disk is full",
                StoreError::Busy { .. } => "another program holds it",
                StoreError::ReadOnly { .. } => "its disk cannot be written",
                StoreError::Damaged(_) => "a value in it cannot be read",
                StoreError::Stopped => "it has stopped",
                _ => "the log says why",
            }
            .into(),
        )
    }
}

pub(super) fn not_found<T>(what: impl Into<String>) -> Done<T> {
    Err(DeskError::NotFound(what.into()))
}

pub(super) fn bad_request<T>(what: impl Into<String>) -> Done<T> {
    Err(DeskError::BadRequest(what.into()))
}

pub(super) fn not_allowed<T>(what: impl Into<String>) -> Done<T> {
    Err(DeskError::NotAllowed(what.into()))
}
