//! `/coach close`: closes an open position with its reveal.

use super::{Answer, Ctx, choose_post, for_coach, one_post};
use crate::chat::discord::{letter::Letter, text::Coach};
use crate::desk::PostId;

/// Close an open position with its solution
#[poise::command(slash_command)]
pub async fn close(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_post"] position: Option<i64>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let post = match position {
            Some(post) => PostId::of(post),
            None => one_post(ctx, &place).await?,
        };
        house.desk.coach().close_now(&place, &coach, post).await?;
        let kind = house.desk.kind(&place, post).await?.name();
        Ok(Letter::text(words.say(&Coach::ClosedNow { kind })))
    })
    .await
}
