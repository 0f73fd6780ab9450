//! `/coach permissions`: what the bot may do here, and where to grant what is missing.

use super::{Answer, Ctx, for_coach};
use crate::chat::discord::{letter::Letter, permissions, text::Group};

/// See whether I have the permissions I need here
#[poise::command(slash_command)]
pub async fn permissions(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |_, _, _, words| async move {
        let have = ctx.interaction.app_permissions.unwrap_or_default();
        let text = permissions::in_words(words, have, ctx.interaction.channel_id);
        Ok(Letter::text(match text.as_str() {
            "" => words.say(&Group::PermissionsAll),
            _ => text,
        }))
    })
    .await
}
