//! `/coach preview`: a post exactly as members would see it.

use super::{Answer, Ctx, choose_position, for_coach};
use crate::chat::discord::sheets;

/// See a position as members will
#[poise::command(slash_command)]
pub async fn preview(
    ctx: Ctx<'_>,
    #[description = "Which"]
    #[autocomplete = "choose_position"]
    position: i64,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let mode = house.desk.settings(&place).await?.mode;
        let sheet = house.desk.preview(&place, &coach, position).await?;
        Ok(sheets::post::preview(
            &sheet,
            mode,
            house.opens_threads(&place),
        ))
    })
    .await
}
