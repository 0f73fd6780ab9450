//! `/coach say`: a form for words alone, which go to the end of the week.

use super::{Answer, Ctx, group};
use crate::chat::discord::{presses, private};

/// Put words into the week that the group is to read
#[poise::command(slash_command)]
pub async fn say(ctx: Ctx<'_>) -> Answer<()> {
    let (place, _) = group(ctx).await?;
    let asked = private::Asked::Command(ctx.interaction);
    let words = asked.words(ctx.data()).await;
    private::form(ctx.data(), asked, presses::say_form(words, &place)).await;
    Ok(())
}
