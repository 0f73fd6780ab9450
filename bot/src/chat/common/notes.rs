//! Words to a group's coaches that wait to be read: on the coach's page, or until one asks for something.

use crate::desk::{Desk, DeskError, Earlier, Notice, Place};

/// How many are kept. The latest ones matter most; old ones give way.
pub const MOST: usize = 20;

/// Keeps words for the coaches, once: not where an earlier attempt at the same errand kept them.
///
/// # Errors
/// When the store cannot be written.
pub async fn keep(
    desk: &Desk,
    place: &Place,
    notice: &Notice,
    earlier: Option<&Earlier>,
) -> Result<(), DeskError> {
    desk.note_for_coaches(place, notice, MOST, earlier).await
}
