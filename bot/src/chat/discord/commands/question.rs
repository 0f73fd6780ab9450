//! `/coach question`: a form for a question, which goes to the end of the week.

use super::{Answer, Ctx, group};
use crate::chat::discord::{presses, private};

/// Ask the group something that is answered in words
#[poise::command(slash_command)]
pub async fn question(ctx: Ctx<'_>) -> Answer<()> {
    // A form is opened before anything else is done; whoever sends it has to coach the group.
    let (place, _) = group(ctx).await?;
    let asked = private::Asked::Command(ctx.interaction);
    let words = asked.words(ctx.data()).await;
    private::form(ctx.data(), asked, presses::question_form(words, &place)).await;
    Ok(())
}
