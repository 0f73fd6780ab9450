//! The board of the editor: what moves lead to, and what can be played there. Nothing is kept.

use super::CoachDesk;
use crate::chess::play::{self, LONGEST, NotPlayed, Played};
use crate::desk::{
    Person, Place,
    error::{Done, bad_request},
    handle::coached,
    refusal::Refusal,
    text,
    tongue::spoken,
};

/// A position and moves from it, as they stand on the editor's board.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OnBoard {
    /// FEN; empty for the initial position.
    pub fen: String,
    /// Moves in SAN with English letters.
    pub line: Vec<String>,
    /// A further move as the coach types it, in the letters of their language or English ones.
    pub typed: Option<String>,
}

impl CoachDesk<'_> {
    /// The position that moves lead to, with what can be played there. Coaches only.
    ///
    /// # Errors
    /// When the position cannot be set up, or a move cannot be played.
    pub async fn board(self, place: &Place, coach: &Person, on: OnBoard) -> Done<Played> {
        let (at, by) = (place.clone(), coach.clone());
        self.desk.read(move |db| coached(db, &at, &by)).await?;
        let language = spoken(&self.desk.language_of(place, coach).await?);
        let stands = self
            .desk
            .inner
            .quick
            .run("playing moves", 10.0, move |_| {
                let typed = on.typed.as_deref().filter(|typed| !typed.trim().is_empty());
                let typed = typed.map(|typed| (typed, language));
                let played = on.line.len();
                play::stand(&on.fen, &on.line, typed).map_err(|error| (error, played))
            })
            .await?;
        match stands {
            Ok(stands) => Ok(stands),
            Err((error, played)) => bad_request(refused(error, played)),
        }
    }
}

/// What is said of moves that lead nowhere, `played` of which were entered before.
fn refused(error: NotPlayed, played: usize) -> Refusal {
    let quoted = |written: &str| text::name(written).into();
    match error {
        NotPlayed::Position(why) => Refusal::CannotBeSetUp { why },
        NotPlayed::Move { written, after } if after == played => Refusal::NoMoveHere {
            written: quoted(&written),
        },
        NotPlayed::Move { written, after } => Refusal::LineBreaks {
            at: quoted(&written),
            after: u32::try_from(after).unwrap_or(u32::MAX),
        },
        NotPlayed::TooLong => Refusal::BoardLineTooLong {
            most: LONGEST.into(),
        },
    }
}
