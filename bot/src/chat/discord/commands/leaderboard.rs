//! `/study leaderboard` and `/coach leaderboard`: points by topic and span of time.

use super::{Answer, Ctx, choose_topic, member, privately};
use crate::{
    chat::discord::{house::House, letter::Letter, sheets},
    desk::{Period, Place},
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
    let words = days.map(|days| format!("last {days} days"));
    Ok(house.desk.period(place, words.as_deref(), topic).await?)
}

/// See who has how many points
#[poise::command(slash_command)]
pub async fn leaderboard(
    ctx: Ctx<'_>,
    #[description = "Of this topic only"]
    #[autocomplete = "choose_topic"]
    topic: Option<String>,
    #[description = "Of the last so many days; 28 by default"]
    #[min = 1]
    #[max = 3660]
    days: Option<u32>,
) -> Answer<()> {
    privately(ctx, async {
        let (place, _) = member(ctx).await?;
        let house = ctx.data();
        let period = period(house, &place, days, topic).await?;
        let board = house.desk.leaderboard(&place, &period).await?;
        let zone = house.desk.settings(&place).await?.zone;
        let board = sheets::tables::leaderboard(&board, MOST_ROWS);
        Ok(Letter::text(format!(
            "{board}\n-# {}",
            period.in_words(zone)
        )))
    })
    .await
}
