//! `/coach say`: a form for words alone, which go to the end of the week.

use super::{Answer, Ctx, form_for_coach};
use crate::chat::discord::forms;

/// Put words into the week that the group is to read
#[poise::command(slash_command)]
pub async fn say(ctx: Ctx<'_>) -> Answer<()> {
    form_for_coach(ctx, forms::say_form).await
}
