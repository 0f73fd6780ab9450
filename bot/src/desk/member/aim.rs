//! Which of several open posts a reply is for.
//!
//! Only read: nothing is written down here, and nothing is judged. A reply may be for the posts in whose
//! position its moves are legal and which its sender has not finished. One whose moves are legal
//! throughout comes before one where only some are; where a line is under way in just one of those, the
//! reply goes on there.

use sealed_move_store::{AttemptState, Post};

use super::MemberDesk;
use crate::chess::{line, reply};
use crate::desk::{
    Kind, OpenPost, Place, PostId,
    content::{self, Held},
    convert,
    error::Done,
    handle::{group_at, post_of},
    posting::takes_replies,
    replies::line_before,
};

/// How a text fits the position of a post, as it stands for its sender.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fit {
    /// How much of it is legal.
    moves: Legal,
    /// Whether the person has a line under way there.
    under_way: bool,
    /// Whether the post takes no reply of this person any more.
    over: bool,
    /// Whether it is plainly an answer there, even among other messages.
    pub(super) answer: bool,
}

/// How much of a text is legal in a position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Legal {
    /// No move of it.
    Nothing,
    /// Some of its moves.
    Something,
    /// All that it says.
    Everything,
}

/// A post together with how a text fits it.
type Fitting<P> = (P, Fit);

impl MemberDesk<'_> {
    /// Of the open posts given, those that a reply of this person may be for, in the order given; empty
    /// where the text reads as a move in none of them. Any words may answer a question, so one of those is
    /// always among them.
    pub async fn aim(
        self,
        open: &[(Place, PostId)],
        user: &str,
        text: &str,
    ) -> Done<Vec<(Place, PostId)>> {
        let mut fits = Vec::new();
        let mut questions = Vec::new();
        for (place, post) in open {
            match self.desk.kind(place, *post).await? {
                Kind::Problem { .. } => {
                    let fit = self.fit(place, user, *post, text).await?;
                    fits.push(((place.clone(), *post), fit));
                }
                Kind::Question => questions.push((place.clone(), *post)),
                Kind::Words => {}
            }
        }
        let mut aimed: Vec<_> = best(fits).into_iter().map(|(post, _)| post).collect();
        if !aimed.is_empty() {
            aimed.extend(questions);
        }
        Ok(aimed)
    }

    /// The posts of the group that a text fits, where it does not fit the one that was chosen for it as
    /// well: an answer that fits another post is never booked in this one. Empty where the choice stands.
    pub(super) async fn elsewhere(
        self,
        place: &Place,
        user: &str,
        chosen: PostId,
        text: &str,
    ) -> Done<Vec<Fitting<OpenPost>>> {
        let open = self.open_posts(place).await?;
        if open.iter().all(|post| post.post == chosen) {
            return Ok(Vec::new());
        }
        let here = self.fit(place, user, chosen, text).await?.moves;
        if here == Legal::Everything {
            return Ok(Vec::new());
        }
        let mut fits = Vec::new();
        for post in open.into_iter().filter(|post| post.post != chosen) {
            let fit = self.fit(place, user, post.post, text).await?;
            if fit.moves > here {
                fits.push((post, fit));
            }
        }
        Ok(best(fits))
    }

    /// The posts of the group that a text fits best.
    pub(super) async fn fitting(
        self,
        place: &Place,
        user: &str,
        text: &str,
    ) -> Done<Vec<Fitting<OpenPost>>> {
        let mut fits = Vec::new();
        for post in self.open_posts(place).await? {
            let fit = self.fit(place, user, post.post, text).await?;
            fits.push((post, fit));
        }
        Ok(best(fits))
    }

    /// The group's posts that take replies, by number.
    pub(super) async fn open_posts(self, place: &Place) -> Done<Vec<OpenPost>> {
        let (now, place) = (self.desk.now(), place.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let mut open: Vec<OpenPost> = db
                    .open_posts(group.id)?
                    .iter()
                    .filter(|post| takes_replies(post, now))
                    .map(open_post)
                    .collect();
                open.sort_by_key(|post| post.number);
                Ok(open)
            })
            .await
    }

    async fn fit(self, place: &Place, user: &str, post: PostId, text: &str) -> Done<Fit> {
        let now = self.desk.now();
        let (at, user) = (place.clone(), user.to_owned());
        let found = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let Held::Problem(posed) = content::held(db, &post)? else {
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
                Ok(Some((posed, replies, settings, over)))
            })
            .await?;
        let Some((posed, replies, settings, over)) = found else {
            return Ok(Fit {
                moves: Legal::Nothing,
                under_way: false,
                over: true,
                answer: false,
            });
        };
        let board = posed.board;
        let played = line::moves(&board, &line_before(&replies, None));
        let (text, under_way) = (text.to_owned(), !played.is_empty());
        let seconds = self.desk.inner.options.reply_seconds;
        let (moves, answer) = self
            .desk
            .inner
            .quick
            .run("reading a reply", seconds, move |_| {
                let reading = reply::read(&board, &played, &text, settings.language).ok();
                let moves = match &reading {
                    Some(reading) if reading.placed > 0 && reading.troubles.is_empty() => {
                        Legal::Everything
                    }
                    Some(reading) if reading.placed > 0 => Legal::Something,
                    _ => Legal::Nothing,
                };
                (moves, reading.is_some_and(|reading| reading.answer))
            })
            .await?;
        Ok(Fit {
            moves,
            under_way,
            over,
            answer,
        })
    }
}

/// Those that fit best, in the order given.
fn best<P>(fits: Vec<Fitting<P>>) -> Vec<Fitting<P>> {
    let mut fits: Vec<Fitting<P>> = fits
        .into_iter()
        .filter(|(_, fit)| !fit.over && fit.moves > Legal::Nothing)
        .collect();
    let most = fits.iter().map(|(_, fit)| fit.moves).max();
    fits.retain(|(_, fit)| Some(fit.moves) == most);
    let under_way = fits.iter().filter(|(_, fit)| fit.under_way).count();
    fits.retain(|(_, fit)| under_way != 1 || fit.under_way);
    fits
}

pub(super) fn open_post(post: &Post) -> OpenPost {
    OpenPost {
        post: post.id,
        number: post.number,
        topic: post.topic.clone(),
        holds: Kind::of(&post.content),
    }
}
