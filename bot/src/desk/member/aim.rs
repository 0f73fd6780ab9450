//! Which of several open posts a reply is for.
//!
//! Only read: nothing is written down here, and nothing is judged. A reply may be for the posts in whose
//! position its moves are legal and which its sender has not finished. One whose moves are legal
//! throughout comes before one where only some are; where a line is under way in just one of those, the
//! reply goes on there.

use std::sync::Arc;

use super::{
    MemberDesk,
    glance::{Glance, Seen, member_id},
};
use crate::chess::{line, reply};
use crate::desk::{
    OpenPost, Place, PostId,
    content::Held,
    convert,
    error::Done,
    handle::{group_at, post_of},
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
pub(super) type Fitting<P> = (P, Fit);

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
        let now = self.desk.now();
        let (open, user, text) = (open.to_vec(), user.to_owned(), text.to_owned());
        let seen = self
            .desk
            .read(move |db| {
                let see = |(place, post): (Place, PostId)| {
                    let group = group_at(db, &place)?;
                    let of = post_of(db, &group, post)?;
                    let language = convert::language(&group.settings)?;
                    let sender = member_id(db, &group, &user)?;
                    Ok(((place, post), Seen::of(db, of, language, sender, now)?))
                };
                open.into_iter().map(see).collect::<Done<Vec<_>>>()
            })
            .await?;
        self.reading(move || aimed(seen, &text)).await
    }

    /// The posts of the group that a text fits, where it does not fit the one that was chosen for it as
    /// well: an answer that fits another post is never booked in this one. Empty where the choice stands.
    pub(super) async fn elsewhere(
        self,
        glance: &Arc<Glance>,
        chosen: PostId,
        text: &str,
    ) -> Done<Vec<Fitting<OpenPost>>> {
        if glance.open.iter().all(|seen| seen.post.id == chosen) {
            return Ok(Vec::new());
        }
        let (glance, text) = (glance.clone(), text.to_owned());
        self.reading(move || glance.elsewhere(chosen, &text)).await
    }

    /// The posts of the group that a text fits best.
    pub(super) async fn fitting(
        self,
        glance: &Arc<Glance>,
        text: &str,
    ) -> Done<Vec<Fitting<OpenPost>>> {
        if glance.open.is_empty() {
            return Ok(Vec::new());
        }
        let (glance, text) = (glance.clone(), text.to_owned());
        self.reading(move || glance.fitting(&text)).await
    }

    /// Reads a text on the pool.
    async fn reading<T: Send + 'static>(
        self,
        read: impl FnOnce() -> T + Send + 'static,
    ) -> Done<T> {
        let seconds = self.desk.inner.options.reply_seconds;
        self.desk
            .inner
            .quick
            .run("reading a reply", seconds, move |_| read())
            .await
    }
}

impl Glance {
    fn elsewhere(&self, chosen: PostId, text: &str) -> Vec<Fitting<OpenPost>> {
        let here = match self.post(chosen) {
            Some(seen) => Fit::of(seen, text).moves,
            None => Legal::Nothing,
        };
        if here == Legal::Everything {
            return Vec::new();
        }
        let others = self.open.iter().filter(|seen| seen.post.id != chosen);
        let mut fits: Vec<_> = others.map(|seen| seen.fitting(text)).collect();
        fits.retain(|(_, fit)| fit.moves > here);
        best(fits)
    }

    fn fitting(&self, text: &str) -> Vec<Fitting<OpenPost>> {
        best(self.open.iter().map(|seen| seen.fitting(text)).collect())
    }
}

impl Seen {
    fn fitting(&self, text: &str) -> Fitting<OpenPost> {
        (self.open_post(), Fit::of(self, text))
    }
}

impl Fit {
    fn of(seen: &Seen, text: &str) -> Self {
        let Held::Problem(posed) = &seen.holds else {
            return Self {
                moves: Legal::Nothing,
                under_way: false,
                over: true,
                answer: false,
            };
        };
        let played = line::moves(&posed.board, &seen.line);
        let reading = reply::read(&posed.board, &played, text, seen.language).ok();
        Self {
            moves: match &reading {
                Some(reading) if reading.placed > 0 && reading.troubles.is_empty() => {
                    Legal::Everything
                }
                Some(reading) if reading.placed > 0 => Legal::Something,
                _ => Legal::Nothing,
            },
            under_way: !played.is_empty(),
            over: seen.over,
            answer: reading.is_some_and(|reading| reading.answer),
        }
    }
}

fn aimed(seen: Vec<((Place, PostId), Seen)>, text: &str) -> Vec<(Place, PostId)> {
    let mut fits = Vec::new();
    let mut questions = Vec::new();
    for (post, seen) in seen {
        match &seen.holds {
            Held::Problem(_) => fits.push((post, Fit::of(&seen, text))),
            Held::Question(..) => questions.push(post),
            Held::Words(_) => {}
        }
    }
    let mut aimed: Vec<_> = best(fits).into_iter().map(|(post, _)| post).collect();
    if !aimed.is_empty() {
        aimed.extend(questions);
    }
    aimed
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
