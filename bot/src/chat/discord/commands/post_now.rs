//! `/coach post-now`: posts at once, paused or not.

use super::{Answer, Ctx, choose_item, for_coach};
use crate::chat::discord::{letter::Letter, text::Coach};
use crate::desk::ItemId;

/// Post a position at once
#[poise::command(slash_command, rename = "post-now")]
pub async fn post_now(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_item"] position: Option<i64>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        house
            .desk
            .coach()
            .post_now(&place, &coach, position.map(ItemId::of))
            .await?;
        Ok(Letter::text(words.say(&Coach::GoesOutNow)))
    })
    .await
}
