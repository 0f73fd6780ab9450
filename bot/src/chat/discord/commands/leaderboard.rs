//! `/study leaderboard` and `/coach leaderboard`: points by topic and span of time.

use chrono::TimeDelta;

use super::{Answer, Ctx, choose_topic, member, privately};
use crate::{
    chat::discord::{house::House, letter::Letter, sheets},
    desk::Period,
};

/// How many rows are shown.
const MOST_ROWS: usize = 30;

/// The span of the last days, and a topic.
pub fn period(house: &House, days: Option<u32>, topic: Option<String>) -> Period {
    let from = days.map(|days| house.desk.now() - TimeDelta::days(i64::from(days)));
    Period {
        from,
        to: None,
        topic,
    }
}

/// See who has how many points
#[poise::command(slash_command)]
pub async fn leaderboard(
    ctx: Ctx<'_>,
    #[description = "Of this topic only"]
    #[autocomplete = "choose_topic"]
    topic: Option<String>,
    #[description = "Of the last so many days only"]
    #[min = 1]
    #[max = 3660]
    days: Option<u32>,
) -> Answer<()> {
    privately(ctx, async {
        let (place, _) = member(ctx).await?;
        let house = ctx.data();
        let board = house
            .desk
            .leaderboard(&place, &period(house, days, topic))
            .await?;
        Ok(Letter::text(sheets::tables::leaderboard(&board, MOST_ROWS)))
    })
    .await
}
