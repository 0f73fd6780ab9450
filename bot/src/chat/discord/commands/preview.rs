//! `/coach preview`: a post exactly as members would see it.

use super::{Answer, Ctx, choose_position, for_coach};
use crate::chat::discord::sheets;
use crate::desk::PositionId;

/// See a position as members will
#[poise::command(slash_command)]
pub async fn preview(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_position"] position: i64,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, _| async move {
        let mode = house.desk.settings(&place).await?.mode;
        let sheet = house
            .desk
            .coach()
            .preview(&place, &coach, PositionId::of(position))
            .await?;
        // As members will see it, so in the group's language.
        let words = house.words_of_group(&place).await;
        Ok(sheets::post::preview(
            words,
            &sheet,
            mode,
            house.opens_threads(&place),
        ))
    })
    .await
}
