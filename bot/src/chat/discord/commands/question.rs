//! `/coach question`: a form for a question, which goes to the end of the week.

use super::{Answer, Ctx, form_for_coach};
use crate::chat::discord::forms;

/// Ask the group something that is answered in words
#[poise::command(slash_command)]
pub async fn question(ctx: Ctx<'_>) -> Answer<()> {
    form_for_coach(ctx, forms::question_form).await
}
