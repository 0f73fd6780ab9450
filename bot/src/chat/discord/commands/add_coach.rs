//! `/coach add-coach` and `/coach remove-coach`: who may coach.

use poise::serenity_prelude as serenity;

use super::{Answer, Ctx, for_coach, named, said};
use crate::chat::discord::{letter::Letter, words};

/// Let somebody else coach this group too
#[poise::command(slash_command, rename = "add-coach")]
pub async fn add_coach(ctx: Ctx<'_>, #[description = "Who"] who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        if who.bot {
            return said("A bot cannot coach; name a person.");
        }
        let new = named(ctx, &who).await;
        house.desk.add_coach(&place, &coach, &new).await?;
        Ok(Letter::text(format!(
            "{} coaches this group now.",
            words::plain(&new.name)
        )))
    })
    .await
}

/// Let somebody be a coach no longer
#[poise::command(slash_command, rename = "remove-coach")]
pub async fn remove_coach(ctx: Ctx<'_>, #[description = "Who"] who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        house
            .desk
            .remove_coach(&place, &coach, &who.id.to_string())
            .await?;
        Ok(Letter::text(format!(
            "{} coaches this group no longer, and stays a member.",
            words::plain(&named(ctx, &who).await.name)
        )))
    })
    .await
}
