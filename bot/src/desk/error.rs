//! Why the desk could not do what was asked.

use std::fmt;

use sealed_move_store::{NoPoints, NoTimeOfDay, NoTimesOfDay, NoWeekdays, StoreError, TimesOfDay};
use serde::Serialize;

use super::{
    card_id::NoCardId,
    refusal::{Refusal, StoreFault},
};

/// Why the desk could not do what was asked. What is said of it is a [`Refusal`], for the person who asked.
#[derive(Debug)]
pub enum DeskError {
    /// The store failed.
    Store(StoreFault),
    /// There is no such thing.
    NotFound(Refusal),
    /// The person may not.
    NotAllowed(Refusal),
    /// The request makes no sense as it stands.
    BadRequest(Refusal),
    /// A name that somebody asked for is another's, or looks like it.
    NameTaken {
        /// Why, and what to do.
        why: Refusal,
        /// A name close to it that is free.
        offer: String,
    },
    /// A picture could not be drawn.
    Picture(crate::diagram::DiagramError),
    /// A computation broke down while this was done, which is a fault of the program and not of what was sent.
    Fault(&'static str),
}

/// What a call of the desk gives back.
pub(super) type Done<T> = Result<T, DeskError>;

impl DeskError {
    /// Something in the store makes no sense; `what` goes into the log.
    pub(super) fn damaged(what: impl fmt::Display) -> Self {
        tracing::error!("the store could not be used: {what}");
        Self::Store(StoreFault::Damaged)
    }

    /// What is said of it.
    pub fn why(&self) -> Refusal {
        match self {
            Self::Store(why) => Refusal::StoreFails { why: *why },
            Self::NotFound(why)
            | Self::NotAllowed(why)
            | Self::BadRequest(why)
            | Self::NameTaken { why, .. } => why.clone(),
            Self::Picture(_) => Refusal::PictureFails,
            Self::Fault(_) => Refusal::Broke,
        }
    }
}

impl fmt::Display for DeskError {
    /// The fact, for the log.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Picture(error) => write!(f, "a picture could not be drawn: {error}"),
            Self::Fault(doing) => write!(f, "broke down while {doing}"),
            _ => write!(f, "{}", serde_json::to_value(self).unwrap_or_default()),
        }
    }
}

impl Serialize for DeskError {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.why().serialize(serializer)
    }
}

impl std::error::Error for DeskError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Picture(error) => Some(error),
            _ => None,
        }
    }
}

impl From<crate::diagram::DiagramError> for DeskError {
    fn from(error: crate::diagram::DiagramError) -> Self {
        Self::Picture(error)
    }
}

impl From<NoTimeOfDay> for DeskError {
    fn from(error: NoTimeOfDay) -> Self {
        Self::BadRequest(Refusal::NotATime {
            words: error.written().to_owned().into(),
        })
    }
}

impl From<NoTimesOfDay> for DeskError {
    fn from(error: NoTimesOfDay) -> Self {
        Self::BadRequest(match error {
            NoTimesOfDay::NoTime(error) => return error.into(),
            NoTimesOfDay::None => Refusal::NoTimes,
            NoTimesOfDay::Twice(at) => Refusal::TimeTwice { at: at.to_string() },
            NoTimesOfDay::TooMany(_) => Refusal::TooManyTimes {
                most: TimesOfDay::MOST.into(),
            },
        })
    }
}

impl From<NoWeekdays> for DeskError {
    fn from(_: NoWeekdays) -> Self {
        Self::BadRequest(Refusal::DaysOfWeek)
    }
}

impl From<NoCardId> for DeskError {
    fn from(_: NoCardId) -> Self {
        Self::NotFound(Refusal::NoCard)
    }
}

impl From<NoPoints> for DeskError {
    fn from(_: NoPoints) -> Self {
        Self::BadRequest(Refusal::PointsRange)
    }
}

impl From<StoreError> for DeskError {
    /// Says in a chat what a member may know; paths and SQL are for the log.
    fn from(error: StoreError) -> Self {
        match &error {
            StoreError::NoSuch { .. } => {
                tracing::warn!(%error, "something is gone from the store");
                return Self::NotFound(Refusal::NotHereAnyMore);
            }
            StoreError::SlotTaken { .. } => return Self::BadRequest(Refusal::SlotTaken),
            _ => {}
        }
        tracing::error!(%error, "the store could not be used");
        Self::Store(match error {
            StoreError::Full { .. } => StoreFault::Full,
            StoreError::Busy { .. } => StoreFault::Busy,
            StoreError::ReadOnly { .. } => StoreFault::ReadOnly,
            StoreError::Damaged(_) => StoreFault::Damaged,
            StoreError::Stopped => StoreFault::Stopped,
            _ => StoreFault::Other,
        })
    }
}

pub(super) fn not_found<T>(why: Refusal) -> Done<T> {
    Err(DeskError::NotFound(why))
}

pub(super) fn bad_request<T>(why: Refusal) -> Done<T> {
    Err(DeskError::BadRequest(why))
}

pub(super) fn not_allowed<T>(why: Refusal) -> Done<T> {
    Err(DeskError::NotAllowed(why))
}
