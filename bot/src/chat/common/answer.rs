//! An answer to a post that its writer chose.

use crate::desk::{Desk, DeskError, Person, Place, PostId, Taken};

/// Whether the writer was asked what a text is to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    /// They were, and said that it is their answer.
    AndSure,
    /// They were not.
    NotYet,
}

/// Gives the answer to the desk; what was asked about once is judged and not asked about again.
///
/// # Errors
/// As [`MemberDesk::answer_to`](crate::desk::MemberDesk::answer_to).
pub async fn give(
    desk: &Desk,
    place: &Place,
    person: &Person,
    post: PostId,
    source: &str,
    text: &str,
    asked: Asked,
) -> Result<Taken, DeskError> {
    match asked {
        Asked::AndSure => {
            desk.member()
                .answer_surely(place, person, post, source, text)
                .await
        }
        Asked::NotYet => {
            desk.member()
                .answer_to(place, person, post, source, text)
                .await
        }
    }
}
