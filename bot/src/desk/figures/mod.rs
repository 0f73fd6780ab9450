//! Sums for the group and for the coach: the leaderboard and the engagement summary.
//!
//! The store adds up; here the sums are put in order ([`leaderboard`], [`summary`]), given words
//! ([`words`], [`advice`]), drawn ([`charts`]) and written as tables ([`table`]). Everything but the calls of this file is
//! pure: figures in, sheet or text out.

mod advice;
mod charts;
mod leaderboard;
mod period;
mod summary;
mod table;
mod words;

pub use table::SummaryTable;

use chrono_tz::Tz;
use sealed_move_store::{Counting, Span};

use super::{
    Desk, Leaderboard, Period, Picture, Place, Summary, convert, error::Done, handle::group_at,
    posting::report,
};
use crate::diagram::chart::Theme;
use summary::{Figures, PostFigures};

impl Desk {
    /// The leaderboard over posts whose replies have ended: one that moved earlier would tell the group
    /// who has solved an open post.
    pub async fn leaderboard(&self, place: &Place, period: &Period) -> Done<Leaderboard> {
        let (place, period) = (place.clone(), period.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let sums = db.leaderboard(&span(group.id, &period))?;
            Ok(leaderboard::ranked(period.topic, sums))
        })
        .await
    }

    /// The engagement summary, for the coach: who took part and how it went, in the posts of the period
    /// whose replies have ended, and who went quiet or came back, counting open posts too.
    pub async fn summary(&self, place: &Place, period: &Period) -> Done<Summary> {
        let (figures, _) = self.figures(place, period).await?;
        Ok(summary::assemble(figures))
    }

    /// Charts for the summary: who took part, how each post and each topic went, and the commonest wrong
    /// moves on their board. None when the period has no post whose replies have ended.
    pub async fn summary_charts(&self, place: &Place, period: &Period) -> Done<Vec<Picture>> {
        let (figures, zone) = self.figures(place, period).await?;
        let drawn = move |_: &_| {
            let summary = summary::assemble(figures.clone());
            charts::of(&figures, &summary, zone)
                .iter()
                .map(|chart| chart.png(Theme::Light))
                .collect::<Result<_, _>>()
        };
        Ok(self
            .inner
            .quick
            .run("drawing the charts", 30.0, drawn)
            .await??)
    }

    /// What both are made of, as the store has it at one moment, and the group's zone.
    async fn figures(&self, place: &Place, period: &Period) -> Done<(Figures, Tz)> {
        let now = self.now();
        let (place, period) = (place.clone(), period.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let zone = convert::kept_settings(&group.settings)?.zone;
            let ended = span(group.id, &period);

            let mut posts = Vec::new();
            for post in db.post_figures(&ended)? {
                let wrong = db.wrong_first_moves(post.post_id)?;
                let position = db.position(post.position_id)?;
                posts.push(PostFigures {
                    keys: match &position {
                        Some(position) => report(&position.check.report)?.keys,
                        None => Vec::new(),
                    },
                    fen: position.map(|position| position.fen).unwrap_or_default(),
                    post,
                    wrong,
                });
            }

            // Who takes part is asked of every post that was sent, of any topic: whoever answered another is
            // not quiet.
            let took_part = |from, to| {
                db.took_part(&Span {
                    from,
                    to,
                    topic: None,
                    counting: Counting::Sent,
                    ..ended.clone()
                })
            };
            let before = period.before(zone, now);
            let figures = Figures {
                members: db.member_figures(&ended)?,
                topics: db.topic_figures(&ended)?,
                posts,
                now: took_part(period.from, period.to)?,
                before: match &before {
                    Some(before) => Some(took_part(before.from, before.to)?),
                    None => None,
                },
                earlier: match &before {
                    Some(before) => took_part(None, before.from)?,
                    None => Vec::new(),
                },
                period,
            };
            Ok((figures, zone))
        })
        .await
    }
}

/// A period of a group, as the store takes it.
fn span(group: i64, period: &Period) -> Span {
    Span {
        from: period.from,
        to: period.to,
        topic: period.topic.clone(),
        ..Span::all(group)
    }
}
