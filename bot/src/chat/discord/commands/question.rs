//! `/coach question`: a form for a question, which goes to the end of the week.

use super::{Answer, Ctx, form_for_coach};
use crate::chat::discord::presses;

/// Ask the group something that is answered in words
#[poise::command(slash_command)]
pub async fn question(ctx: Ctx<'_>) -> Answer<()> {
    form_for_coach(ctx, presses::question_form).await
}
