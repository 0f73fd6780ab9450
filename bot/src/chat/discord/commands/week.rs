//! `/coach week`: what waits, in order, with buttons to move it about.

use super::{Answer, Ctx, for_coach};
use crate::chat::discord::presses;

/// See and reorder the week
#[poise::command(slash_command)]
pub async fn week(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        presses::week(house, words, &place, &coach, None).await
    })
    .await
}
