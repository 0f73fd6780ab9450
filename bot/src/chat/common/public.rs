//! What others in a group may see of somebody.

use crate::desk::{Desk, DeskError, Mode, Place};

/// Whether the group's answers are for everyone's eyes.
///
/// # Errors
/// When the store cannot be read.
pub async fn answers_are(desk: &Desk, place: &Place) -> Result<bool, DeskError> {
    Ok(desk.settings(place).await?.mode == Mode::Open)
}

/// Whether a name may stand where others read it: one that could tell a move of an open post may not, nor one
/// of which that is not known.
pub async fn name_is(desk: &Desk, place: &Place, name: &str) -> bool {
    matches!(
        desk.member().name_tells_a_move(place, name).await,
        Ok(false)
    )
}
