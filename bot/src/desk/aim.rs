//! Which of several open posts a reply is for that names none of them.
//!
//! Only read: nothing is written down here, and nothing is judged. A reply may be for the posts in whose
//! position its moves are legal and which its sender has not finished; where a line is under way in just
//! one of those, it goes on there.

use sealed_move_store::AttemptState;

use super::{
    Desk, Place, convert,
    error::Done,
    handle::{group_at, post_of},
    posting::takes_replies,
    problems,
    replies::line_before,
};
use crate::chess::{line, reply};

/// How well a reply fits a post.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    /// It takes no reply of this person any more, or the text holds no move of its position.
    No,
    /// The text holds a legal move.
    Legal,
    /// It does, and the person has a line under way there.
    GoesOn,
}

impl Desk {
    /// Of the open posts given, those that a reply of this person may be for, in the order given; empty
    /// where the text reads as a move in none of them.
    pub async fn aim(
        &self,
        open: &[(Place, i64)],
        user: &str,
        text: &str,
    ) -> Done<Vec<(Place, i64)>> {
        let mut fitting = Vec::new();
        for (place, post) in open {
            let fit = self.fit(place, user, *post, text).await?;
            if fit != Fit::No {
                fitting.push((fit, (place.clone(), *post)));
            }
        }
        let goes_on = fitting
            .iter()
            .filter(|(fit, _)| *fit == Fit::GoesOn)
            .count();
        Ok(fitting
            .into_iter()
            .filter(|(fit, _)| goes_on != 1 || *fit == Fit::GoesOn)
            .map(|(_, post)| post)
            .collect())
    }

    async fn fit(&self, place: &Place, user: &str, post: i64, text: &str) -> Done<Fit> {
        let now = self.now();
        let (at, user) = (place.clone(), user.to_owned());
        let found = self
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let Some(position) = db.position(post.position_id)? else {
                    return Ok(None);
                };
                let member = db.member_by_user(group.id, &user)?;
                let (attempt, replies) = match &member {
                    Some(member) => (
                        db.attempt(post.id, member.id)?,
                        db.replies_of(post.id, member.id)?,
                    ),
                    None => (None, Vec::new()),
                };
                let over = attempt.is_some_and(|attempt| attempt.state != AttemptState::Playing)
                    || !takes_replies(&post, now);
                let settings = convert::kept_settings(&group.settings)?;
                Ok((!over).then_some((position, replies, settings)))
            })
            .await?;
        let Some((position, replies, settings)) = found else {
            return Ok(Fit::No);
        };
        let (board, _) = problems::parse(&position.fen, &position.stipulation)?;
        let played = line::moves(&board, &line_before(&replies, None));
        let (text, begun) = (text.to_owned(), !played.is_empty());
        let seconds = self.inner.options.reply_seconds;
        let legal = self
            .inner
            .quick
            .run("reading a reply", seconds, move |_| {
                reply::read(&board, &played, &text, settings.language)
                    .is_ok_and(|reading| reading.placed > 0)
            })
            .await?;
        Ok(match (legal, !begun) {
            (false, _) => Fit::No,
            (true, true) => Fit::Legal,
            (true, false) => Fit::GoesOn,
        })
    }
}
