//! `/coach add-coach` and `/coach remove-coach`: who may coach.

use poise::serenity_prelude as serenity;

use super::{Answer, Ctx, for_coach, named, said};
use crate::chat::discord::{
    letter::Letter,
    text::{Group, Plain},
};

/// Let somebody else coach this group too
#[poise::command(slash_command, rename = "add-coach")]
pub async fn add_coach(ctx: Ctx<'_>, who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        if who.bot {
            return said(Group::BotCannotCoach);
        }
        let new = named(ctx, &who).await;
        house.desk.coach().add_coach(&place, &coach, &new).await?;
        Ok(Letter::text(words.say(&Group::CoachAdded {
            name: Plain::of(&new.name),
        })))
    })
    .await
}

/// Let somebody be a coach no longer
#[poise::command(slash_command, rename = "remove-coach")]
pub async fn remove_coach(ctx: Ctx<'_>, who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        house
            .desk
            .coach()
            .remove_coach(&place, &coach, &who.id.to_string())
            .await?;
        Ok(Letter::text(words.say(&Group::CoachRemoved {
            name: Plain::of(&named(ctx, &who).await.name),
        })))
    })
    .await
}
