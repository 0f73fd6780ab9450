//! `/coach summary`: who took part, how it went, and what to teach next, with charts.

use super::{Answer, Ctx, choose_topic, for_coach, leaderboard};
use crate::chat::discord::{letter::Letter, sheets};

/// Discord takes ten files with a message.
const MOST_CHARTS: usize = 10;

/// See who took part, how it went, and what to teach next
#[poise::command(slash_command)]
pub async fn summary(
    ctx: Ctx<'_>,
    #[min = 1]
    #[max = 3660]
    days: Option<u32>,
    #[autocomplete = "choose_topic"] topic: Option<String>,
) -> Answer<()> {
    for_coach(ctx, |house, place, _, words| async move {
        let period = leaderboard::period(house, &place, days, topic).await?;
        let summary = house.desk.coach().summary(&place, &period).await?;
        let charts = house
            .desk
            .coach()
            .summary_charts(&place, &period, words.tag())
            .await?;
        let mut letter = Letter::text(sheets::summary::text(words, &summary));
        for (i, chart) in charts.iter().take(MOST_CHARTS).enumerate() {
            letter = letter.picture(&format!("chart-{}", i + 1), chart, words);
        }
        Ok(letter)
    })
    .await
}
