//! `/coach queue`: puts a checked position into the week.

use super::{Answer, Ctx, choose_position, for_coach, week};
use crate::desk::PositionId;

/// Put a checked position into the week
#[poise::command(slash_command)]
pub async fn queue(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_position"] position: i64,
    anyway: Option<bool>,
    again: Option<bool>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let anyway = anyway.unwrap_or(false);
        let desk = &house.desk;
        let item = match again.unwrap_or(false) {
            true => {
                desk.coach()
                    .enqueue_again(&place, &coach, PositionId::of(position), anyway)
                    .await?
            }
            false => {
                desk.coach()
                    .enqueue(&place, &coach, PositionId::of(position), anyway)
                    .await?
            }
        };
        week::open(house, words, &place, &coach, Some(item)).await
    })
    .await
}
