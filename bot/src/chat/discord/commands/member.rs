//! `/coach member …`: members in a coach's hands, as far as Discord has no ways of its own for it. Names,
//! timeouts and messages are Discord's; who takes part, and what is kept of whom, is ours.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use super::{Answer, Ctx, for_coach, named};
use crate::{
    chat::discord::{
        buttons::{self, Press},
        held,
        house::House,
        letter::Letter,
        oops::Oops,
        words,
    },
    desk::{Person, Place},
};

/// For coaches: who takes part, and what is kept of whom
#[poise::command(
    slash_command,
    guild_only,
    subcommand_required,
    subcommands("list", "remove", "let_back", "merge", "data", "erase")
)]
pub async fn member(_: Ctx<'_>) -> Answer<()> {
    // Discord offers only the sub-commands.
    Ok(())
}

/// See who belongs to the group, and what the coaches did last
#[poise::command(slash_command)]
async fn list(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let mut text = String::from("**Members**");
        for member in house.desk.roll(&place, &coach).await? {
            let state = match (member.removed_at, member.rank) {
                (Some(since), _) => format!(" · removed {}", words::moment(since)),
                (None, crate::desk::Rank::Coach) => " · coach".to_owned(),
                (None, crate::desk::Rank::Member) => String::new(),
            };
            text.push_str(&format!(
                "\n- {} · {} answers{state}",
                words::plain(&member.name),
                member.answers
            ));
        }
        let deeds = house.desk.deeds(&place, &coach).await?;
        if !deeds.is_empty() {
            text.push_str("\n\n**What the coaches did last**");
        }
        for done in deeds.iter().take(20) {
            let by = done.by.as_deref().unwrap_or("a coach who is erased");
            let about = done.about.as_deref().unwrap_or_default();
            let note = done.note.as_str();
            text.push_str(&format!(
                "\n- {} {}: {} {} {}",
                words::moment(done.at),
                words::plain(by),
                done.deed,
                words::plain(about),
                words::plain(note)
            ));
        }
        Ok(Letter::text(text))
    })
    .await
}

/// Take no more answers from somebody; what they wrote before is kept
#[poise::command(slash_command)]
async fn remove(ctx: Ctx<'_>, #[description = "Who"] who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let member = known(house, &place, &coach, &who).await?;
        house.desk.remove(&place, &coach, member).await?;
        Ok(Letter::text(format!(
            "{} takes part no longer: no answer of theirs is taken until /coach member let-back. \
             What they write on this server is for Discord's own moderation.",
            words::plain(&named(ctx, &who).await.name)
        )))
    })
    .await
}

/// Let somebody take part again
#[poise::command(slash_command, rename = "let-back")]
async fn let_back(ctx: Ctx<'_>, #[description = "Who"] who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let member = known(house, &place, &coach, &who).await?;
        house.desk.let_back(&place, &coach, member).await?;
        Ok(Letter::text(format!(
            "{} takes part again.",
            words::plain(&named(ctx, &who).await.name)
        )))
    })
    .await
}

/// Make two accounts of one person one member
#[poise::command(slash_command)]
async fn merge(
    ctx: Ctx<'_>,
    #[description = "The account whose name stays"] keep: serenity::User,
    #[description = "The other account of the same person"] other: serenity::User,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let (first, second) = (
            known(house, &place, &coach, &keep).await?,
            known(house, &place, &coach, &other).await?,
        );
        let merged = house.desk.merge(&place, &coach, first, second).await?;
        Ok(Letter::text(format!(
            "They are one member now, {}. Where both tried the same position, the answers count in the order they came.",
            words::plain(&merged.name)
        )))
    })
    .await
}

/// Take away everything that is kept of somebody, to hand over to them
#[poise::command(slash_command)]
async fn data(ctx: Ctx<'_>, #[description = "Who"] who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let member = known(house, &place, &coach, &who).await?;
        let (name, kept) = house.desk.kept_of_member(&place, &coach, member).await?;
        let kept = held::with_waiting(house, &place, &who.id.to_string(), kept).await?;
        let text = serde_json::to_vec_pretty(&kept).map_err(|e| Oops::Said(e.to_string()))?;
        Ok(Letter::text(format!(
            "Everything that is kept of {} in this group. It is theirs: hand it over to them, and keep no copy.",
            words::plain(&name)
        ))
        .file("kept-of-member.json", text))
    })
    .await
}

/// Have everything erased that is kept of somebody, on their word
#[poise::command(slash_command)]
async fn erase(ctx: Ctx<'_>, #[description = "Who"] who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let member = known(house, &place, &coach, &who).await?;
        let yes = buttons::button(
            Press::EraseMember(member).id(&place),
            "Yes, erase everything",
            ButtonStyle::Danger,
        );
        Ok(Letter::text(format!(
            "Erase everything of {} in this group: name, answers, hints and points? This cannot be undone. \
             Somebody who was removed is then known no longer, and removed no longer.",
            words::plain(&named(ctx, &who).await.name)
        ))
        .row(CreateActionRow::Buttons(vec![yes])))
    })
    .await
}

async fn known(house: &House, place: &Place, coach: &Person, who: &serenity::User) -> Answer<i64> {
    Ok(house
        .desk
        .member_known_as(place, coach, &who.id.to_string())
        .await?)
}
