//! `/coach set-up`: makes a channel a group's.

use poise::serenity_prelude::{
    self as serenity, AutocompleteChoice, ChannelType, CreateAutocompleteResponse, Permissions,
};

use super::{Answer, Ctx, named, privately, said, settings};
use crate::{
    chat::discord::{MANNERS, house, letter::Letter, permissions, private::Asked, words},
    desk::{Mode, Settings},
};

/// How replies are kept, as a choice.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
pub enum Kept {
    /// Verdicts are private.
    #[name = "sealed: verdicts are private until the reveal"]
    Sealed,
    /// Verdicts are public behind spoiler marks.
    #[name = "open: verdicts in public, behind spoiler marks"]
    Open,
}

impl From<Kept> for Mode {
    fn from(kept: Kept) -> Self {
        match kept {
            Kept::Sealed => Self::Sealed,
            Kept::Open => Self::Open,
        }
    }
}

/// Zones whose names hold what was typed, those that begin with it first.
pub async fn choose_zone(_: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let typed = typed.trim().to_lowercase().replace(' ', "_");
    let mut found: Vec<&str> = chrono_tz::TZ_VARIANTS
        .iter()
        .map(|zone| zone.name())
        .filter(|name| name.to_lowercase().contains(&typed))
        .collect();
    found.sort_by_key(|name| {
        let name = name.to_lowercase();
        let city = name.rsplit('/').next().unwrap_or_default().to_owned();
        (
            !name.starts_with(&typed) && !city.starts_with(&typed),
            name.matches('/').count() != 1,
            name,
        )
    });
    let choices = found
        .into_iter()
        .take(25)
        .map(AutocompleteChoice::from)
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}

/// Make this channel a study group's
#[poise::command(slash_command, rename = "set-up")]
#[allow(clippy::too_many_arguments)]
pub async fn set_up(
    ctx: Ctx<'_>,
    #[description = "Time zone of the group, such as Europe/Lisbon"]
    #[autocomplete = "choose_zone"]
    zone: String,
    #[description = "When positions go out, such as 18:00 (the default)"] time: Option<String>,
    #[description = "Days on which they do, such as mon-fri or tue,thu; every day by default"]
    days: Option<String>,
    #[description = "How long answers are taken, such as 23h (the default), 90m or 2d"]
    #[rename = "open-for"]
    open_for: Option<String>,
    #[description = "How replies are kept until the reveal; sealed by default"] replies: Option<
        Kept,
    >,
    #[description = "Name of the group; the channel's by default"] name: Option<String>,
    #[description = "Who else may coach"]
    #[rename = "second-coach"]
    second_coach: Option<serenity::User>,
) -> Answer<()> {
    privately(ctx, async {
        let asked = ctx.interaction;
        let place = house::place(asked.channel_id);
        let may = asked.member.as_ref().and_then(|member| member.permissions).unwrap_or_default();
        let runs = Permissions::MANAGE_CHANNELS | Permissions::MANAGE_GUILD | Permissions::ADMINISTRATOR;
        if !may.intersects(runs) {
            return said("Setting up a group takes the permission Manage Channels. Ask whoever runs this server.");
        }
        let kind = asked.channel.as_ref().map(|channel| channel.kind);
        if !matches!(kind, Some(ChannelType::Text | ChannelType::News)) {
            return said("A group needs a text channel of the server; run this in one, not in a thread.");
        }
        let channel_name = asked.channel.as_ref().and_then(|channel| channel.name.clone());
        let mut wanted = Settings {
            name: name.or(channel_name).unwrap_or_else(|| "Study group".into()),
            zone: settings::zone(&zone)?,
            mode: replies.map(Mode::from).unwrap_or_default(),
            ..Settings::default()
        };
        settings::change(&mut wanted, time.as_deref(), days.as_deref(), open_for.as_deref())?;
        let house = ctx.data();
        let coach = Asked::Command(asked).person(house, &place).await;
        let server = asked.guild_id.map(|id| id.to_string());
        house
            .desk
            .found_group(&place, MANNERS, server.as_deref(), wanted.clone(), &coach)
            .await?;
        house.add_group(asked.channel_id);
        let mut parts = vec![format!(
            "**{}** is set up in <#{}>, and you are its coach.\n{}",
            words::plain(&wanted.name),
            asked.channel_id,
            settings::in_words(&wanted)
        )];
        if let Some(user) = second_coach {
            if user.bot {
                return said("A bot cannot coach; the group is set up, name a person with /coach add-coach.");
            }
            let second = named(ctx, &user).await;
            house.desk.add_coach(&place, &coach, &second).await?;
            parts.push(format!("{} coaches too.", words::plain(&second.name)));
        }
        let missing = permissions::in_words(asked.app_permissions.unwrap_or_default(), asked.channel_id);
        if !missing.is_empty() {
            parts.push(missing);
        }
        if !house.content {
            parts.push("I was started without the message-content intent: in this channel and its threads I hear only messages that call me by name and replies to my posts with the ping left on. Buttons, commands and direct messages work as ever.".into());
        }
        parts.push("Next: attach a file of positions (EPD or PGN) to /coach check.".into());
        Ok(Letter::text(parts.join("\n\n")))
    })
    .await
}
