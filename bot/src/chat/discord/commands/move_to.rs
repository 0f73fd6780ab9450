//! `/coach move`: gives a waiting position another place in the week.

use super::{Answer, Ctx, choose_item, for_coach, week};
use crate::desk::ItemId;

/// Give a waiting position another place in the week
#[poise::command(slash_command, rename = "move")]
pub async fn move_to(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_item"] position: i64,
    #[min = 1] to: usize,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        house
            .desk
            .coach()
            .reorder(&place, &coach, ItemId::of(position), to.saturating_sub(1))
            .await?;
        week::open(house, words, &place, &coach, Some(ItemId::of(position))).await
    })
    .await
}
