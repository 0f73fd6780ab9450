//! A coach's words on a position, written anew.

use sealed_move_store::Words;

use super::CoachDesk;
use crate::chess::comments::{self, MOST_AT_REVEAL, MOST_WITH_POST};
use crate::desk::{
    CoachWords, Person, Place, PositionId, checking,
    error::{Done, bad_request},
    handle::{coached, position_of},
    problems::Posed,
    refusal::{Refusal, When},
    text,
};

/// Whether words go out with a post although they tell a move of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telling {
    /// Words that tell a move are refused.
    Refused,
    /// The coach has said: send them all the same.
    Meant,
}

impl CoachDesk<'_> {
    /// A position's words as they are. Coaches only.
    ///
    /// # Errors
    /// When there is no such position.
    pub async fn words_on(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
    ) -> Done<CoachWords> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                CoachWords::kept(&position_of(db, &group, position)?)
            })
            .await
    }

    /// Writes a position's words anew; those beside moves stay. Coaches only.
    ///
    /// # Errors
    /// When they are too long, or those for the post tell a move and that is not [`Telling::Meant`].
    pub async fn set_words(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        with_post: &str,
        at_reveal: &str,
        telling: Telling,
    ) -> Done<()> {
        let bounded = |words: &str, when: When, most: usize| match text::body(words, most) {
            (words, false) => Ok(words),
            (_, true) => bad_request(Refusal::WordsTooLong {
                when,
                most: most.into(),
            }),
        };
        let with_post = bounded(with_post, When::Post, MOST_WITH_POST)?;
        let at_reveal = bounded(at_reveal, When::Reveal, MOST_AT_REVEAL)?;
        let (at, by) = (place.clone(), coach.clone());
        let kept = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                position_of(db, &group, position)
            })
            .await?;
        if telling == Telling::Refused && !with_post.is_empty() {
            let report = checking::report(&kept.check.report)?;
            let board = Posed::of(kept)?.board;
            let words = with_post.clone();
            let limit = self.desk.inner.options.check_seconds;
            let told = self
                .desk
                .inner
                .checks
                .run("reading the coach's words", limit, move |_| {
                    comments::gives_away(&board, &report.keys, &report.line, &words)
                })
                .await?;
            if let Some(mv) = told {
                return bad_request(Refusal::WordsTellMove { line: mv.into() });
            }
        }
        let (at, by) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &at, &by)?;
                let kept = position_of(tx, &group, position)?;
                let words = Words {
                    with_post,
                    at_reveal,
                    notes: kept.words.notes,
                };
                Ok(tx.set_position_words(kept.id, &words)?)
            })
            .await
    }
}
