//! `/study leaderboard` and `/coach leaderboard`: points by topic and span of time.

use chrono::TimeDelta;

use super::{Answer, Ctx, choose_topic, member, privately};
use crate::{
    chat::discord::{
        house::House,
        letter::Letter,
        sheets,
        text::{Moment, Study},
    },
    desk::{Period, Place},
    words::Words,
};

/// How many rows are shown.
const MOST_ROWS: usize = 30;

/// The last days of the group's calendar, or the usual period, and a topic.
pub async fn period(
    house: &House,
    place: &Place,
    days: Option<u32>,
    topic: Option<String>,
) -> Answer<Period> {
    let days = days.map(|days| format!("last {days} days"));
    Ok(house.desk.period(place, days.as_deref(), topic).await?)
}

/// The days of a period, as each reader's client writes them.
fn span(words: &Words, period: &Period) -> String {
    let from = period.from.map(Moment::day);
    // The last moment covered, not the first one that is not.
    let to = period.to.map(|to| Moment::day(to - TimeDelta::seconds(1)));
    words.say(&match (from, to) {
        (Some(from), Some(to)) => Study::SpanBetween { from, to },
        (Some(from), None) => Study::SpanSince { from },
        (None, Some(to)) => Study::SpanUntil { to },
        (None, None) => Study::SpanAll,
    })
}

/// See who has how many points
#[poise::command(slash_command)]
pub async fn leaderboard(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_topic"] topic: Option<String>,
    #[min = 1]
    #[max = 3660]
    days: Option<u32>,
) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let house = ctx.data();
        let words = house.words_for(&place, &person).await;
        let period = period(house, &place, days, topic).await?;
        let board = house.desk.leaderboard(&place, &period).await?;
        let board = sheets::tables::leaderboard(words, &board, MOST_ROWS);
        Ok(Letter::text(format!(
            "{board}\n-# {}",
            span(words, &period)
        )))
    })
    .await
}
