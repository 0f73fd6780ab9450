//! Sums for the group and for the coach: the leaderboard and the engagement summary.
//!
//! The store adds up; here the sums are put in order ([`leaderboard`], [`summary`]), weighed for what to teach
//! next ([`advice`]), drawn ([`charts`]) and written as tables ([`table`]). Everything but the calls of this file
//! is pure: figures in, sheet out.

mod advice;
mod charts;
mod leaderboard;
mod period;
mod sheet;
mod summary;
mod table;
mod topic;

use chrono_tz::Tz;
use sealed_move_store::{Counting, Db, Span};

use self::summary::{Figures, PostFigures};
use crate::desk::{
    Desk, GroupId, Leaderboard, Period, Picture, Place, checking::report, convert, error::Done,
    handle::group_at,
};
use crate::diagram::chart::Theme;

pub use advice::{Advice, NearTopic};
pub use period::{Covered, USUAL};
pub use sheet::{Compared, Summary, SummaryMember, SummaryPost, SummaryTopic};
pub use table::SummaryTable;

/// How many stretches without posts are passed over for one to compare with: a year's break of days.
const LOOK_BACK: usize = 366;

impl Desk {
    /// What a report covers: the period in words, in the group's calendar, or the usual one; and a topic.
    ///
    /// # Errors
    /// When the words are no period; the error lists what can be written.
    pub async fn period(
        &self,
        place: &Place,
        words: Option<&str>,
        topic: Option<String>,
    ) -> Done<Period> {
        let zone = self.settings(place).await?.zone;
        let period = Period::parse(words.unwrap_or(USUAL), zone, self.now())?;
        Ok(Period { topic, ..period })
    }

    /// The leaderboard over posts whose replies have ended: one that moved earlier would tell the group
    /// who has solved an open post.
    pub async fn leaderboard(&self, place: &Place, period: &Period) -> Done<Leaderboard> {
        let (place, period) = (place.clone(), period.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let period = about(db, group.id, period)?;
            let sums = db.leaderboard(&span(group.id, &period))?;
            Ok(leaderboard::ranked(period.topic, sums))
        })
        .await
    }

    /// The engagement summary of a period.
    pub(super) async fn summed_up(&self, place: &Place, period: &Period) -> Done<Summary> {
        let (figures, _) = self.figures(place, period).await?;
        Ok(summary::assemble(figures))
    }

    /// The summary's charts, in the language with this BCP 47 tag.
    pub(super) async fn charted(
        &self,
        place: &Place,
        period: &Period,
        language: &str,
    ) -> Done<Vec<Picture>> {
        let (figures, zone) = self.figures(place, period).await?;
        let tongue = self.tongue(language);
        let drawn = move |_: &_| {
            let summary = summary::assemble(figures.clone());
            charts::of(&figures, &summary, zone)
                .iter()
                .map(|chart| chart.png(Theme::Light, &tongue))
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
            let period = about(db, group.id, period)?;
            let ended = span(group.id, &period);

            let mut posts = Vec::new();
            for post in db.post_figures(&ended)? {
                let wrong = db.wrong_first_moves(post.post_id)?;
                let position = match post.content.position() {
                    Some(position) => db.position(position)?,
                    None => None,
                };
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
            let has_posts = |of: &Period| {
                db.has_posts(&Span {
                    from: of.from,
                    to: of.to,
                    topic: None,
                    counting: Counting::Sent,
                    ..ended.clone()
                })
            };
            let under_way = period.to.is_none_or(|to| to > now);
            let recent = match period.whole(zone, now) {
                Some(recent) if has_posts(&recent)? => Some(recent),
                _ => None,
            };
            let mut before = None;
            if let Some(recent) = &recent {
                let mut stretch = recent.before(zone, now);
                for _ in 0..LOOK_BACK {
                    let Some(found) = stretch else { break };
                    if has_posts(&found)? {
                        before = Some(found);
                        break;
                    }
                    stretch = found.before(zone, now);
                }
            }
            let figures = Figures {
                members: db.member_figures(&ended)?,
                topics: db.topic_figures(&ended)?,
                posts,
                now: match &recent {
                    // Whoever has answered since is not quiet.
                    Some(recent) => took_part(recent.from, recent.to.filter(|_| !under_way))?,
                    None => Vec::new(),
                },
                before: match &before {
                    Some(before) => Some(took_part(before.from, before.to)?),
                    None => None,
                },
                earlier: match &before {
                    Some(before) => took_part(None, before.from)?,
                    None => Vec::new(),
                },
                compared: recent.zip(before),
                period,
            };
            Ok((figures, zone))
        })
        .await
    }
}

/// The period with its topic as the group's list of topics has it.
fn about(db: &Db<'_>, group: GroupId, period: Period) -> Done<Period> {
    let Some(wanted) = &period.topic else {
        return Ok(period);
    };
    let names: Vec<String> = db.topics(group)?.into_iter().map(|t| t.name).collect();
    Ok(Period {
        topic: Some(topic::meant(wanted, &names)?),
        ..period
    })
}

/// A period of a group, as the store takes it.
fn span(group: GroupId, period: &Period) -> Span {
    Span {
        from: period.from,
        to: period.to,
        topic: period.topic.clone(),
        ..Span::all(group)
    }
}
