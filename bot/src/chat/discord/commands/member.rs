//! `/coach member …`: members in a coach's hands, as far as Discord has no ways of its own for it. Names,
//! timeouts and messages are Discord's; who takes part, and what is kept of whom, is ours.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use super::{Answer, Ctx, for_coach, named};
use crate::{
    chat::discord::{
        buttons::{self, Press},
        fit, held,
        house::House,
        letter::Letter,
        oops::Oops,
        text::{Group, Moment, Plain, Study},
    },
    desk::{MemberId, Person, Place, Rank},
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
    for_coach(ctx, |house, place, coach, words| async move {
        let mut text = words.say(&Group::MembersHead);
        for member in house.desk.coach().roll(&place, &coach).await? {
            let (name, answers) = (Plain::of(&member.name), member.answers);
            text.push('\n');
            text.push_str(&words.say(&match (member.removed_at, member.rank) {
                (Some(since), _) => Group::MemberRowRemoved {
                    name,
                    answers,
                    since: Moment::of(since),
                },
                (None, Rank::Coach) => Group::MemberRowCoach { name, answers },
                (None, Rank::Member) => Group::MemberRow { name, answers },
            }));
        }
        let deeds = house.desk.coach().deeds(&place, &coach).await?;
        if !deeds.is_empty() {
            text.push_str("\n\n");
            text.push_str(&words.say(&Group::DeedsHead));
        }
        for done in deeds.iter().take(20) {
            let by = match &done.by {
                Some(name) => fit::plain(name),
                None => words.say(&Group::ErasedCoach),
            };
            let what = words.say(&Group::DeedWord { deed: done.deed });
            let mut parts = vec![format!("{} {by}: {what}", fit::moment(done.at))];
            parts.extend(done.about.as_deref().map(fit::plain));
            parts.extend(done.note.as_ref().map(|note| fit::plain(&words.say(note))));
            text.push_str(&format!("\n- {}", parts.join(" · ")));
        }
        Ok(Letter::text(text))
    })
    .await
}

/// Take no more answers from somebody; what they wrote before is kept
#[poise::command(slash_command)]
async fn remove(ctx: Ctx<'_>, who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let member = known(house, &place, &coach, &who).await?;
        house.desk.coach().remove(&place, &coach, member).await?;
        Ok(Letter::text(words.say(&Group::MemberRemoved {
            name: Plain::of(&named(ctx, &who).await.name),
        })))
    })
    .await
}

/// Let somebody take part again
#[poise::command(slash_command, rename = "let-back")]
async fn let_back(ctx: Ctx<'_>, who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let member = known(house, &place, &coach, &who).await?;
        house.desk.coach().let_back(&place, &coach, member).await?;
        Ok(Letter::text(words.say(&Group::MemberBack {
            name: Plain::of(&named(ctx, &who).await.name),
        })))
    })
    .await
}

/// Make two accounts of one person one member
#[poise::command(slash_command)]
async fn merge(ctx: Ctx<'_>, keep: serenity::User, other: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let (first, second) = (
            known(house, &place, &coach, &keep).await?,
            known(house, &place, &coach, &other).await?,
        );
        let merged = house
            .desk
            .coach()
            .merge(&place, &coach, first, second)
            .await?;
        Ok(Letter::text(words.say(&Group::MembersMerged {
            name: Plain::of(&merged.name),
        })))
    })
    .await
}

/// Take away everything that is kept of somebody, to hand over to them
#[poise::command(slash_command)]
async fn data(ctx: Ctx<'_>, who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let member = known(house, &place, &coach, &who).await?;
        let (name, kept) = house
            .desk
            .coach()
            .kept_of_member(&place, &coach, member)
            .await?;
        let kept = held::with_waiting(house, &place, &who.id.to_string(), kept).await?;
        let text = serde_json::to_vec_pretty(&kept).map_err(Oops::unwritten)?;
        Ok(Letter::text(words.say(&Group::KeptOfMember {
            name: Plain::of(&name),
        }))
        .file("kept-of-member.json", text))
    })
    .await
}

/// Have everything erased that is kept of somebody, on their word
#[poise::command(slash_command)]
async fn erase(ctx: Ctx<'_>, who: serenity::User) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let member = known(house, &place, &coach, &who).await?;
        let yes = buttons::button(
            Press::EraseMember(member).id(&place),
            &words.say(&Study::ButtonYesErase),
            ButtonStyle::Danger,
        );
        Ok(Letter::text(words.say(&Group::EraseMemberAsked {
            name: Plain::of(&named(ctx, &who).await.name),
        }))
        .row(CreateActionRow::Buttons(vec![yes])))
    })
    .await
}

async fn known(
    house: &House,
    place: &Place,
    coach: &Person,
    who: &serenity::User,
) -> Answer<MemberId> {
    Ok(house
        .desk
        .coach()
        .member_known_as(place, coach, &who.id.to_string())
        .await?)
}
