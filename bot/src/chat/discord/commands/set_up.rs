//! `/coach set-up`: makes a channel a group's.

use poise::serenity_prelude::{
    self as serenity, AutocompleteChoice, ChannelType, CreateAutocompleteResponse, Permissions,
};

use super::{Answer, Ctx, named, privately, said, settings};
use crate::{
    chat::discord::{
        MANNERS, house,
        letter::Letter,
        permissions,
        private::Asked,
        text::{Group, Plain},
    },
    desk::{Mode, Settings},
};

/// How replies are kept, as a choice.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
pub enum RepliesAre {
    /// Verdicts are private.
    #[name = "sealed"]
    Sealed,
    /// Verdicts are public behind spoiler marks.
    #[name = "open"]
    Open,
}

impl From<RepliesAre> for Mode {
    fn from(kept: RepliesAre) -> Self {
        match kept {
            RepliesAre::Sealed => Self::Sealed,
            RepliesAre::Open => Self::Open,
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
    #[autocomplete = "choose_zone"] zone: String,
    time: Option<String>,
    days: Option<String>,
    #[rename = "open-for"] open_for: Option<String>,
    replies: Option<RepliesAre>,
    name: Option<String>,
    #[rename = "second-coach"] second_coach: Option<serenity::User>,
) -> Answer<()> {
    privately(ctx, async {
        let asked = ctx.interaction;
        let place = house::place(asked.channel_id);
        let house = ctx.data();
        let words = Asked::Command(asked).words(house).await;
        let may = asked
            .member
            .as_ref()
            .and_then(|member| member.permissions)
            .unwrap_or_default();
        let runs =
            Permissions::MANAGE_CHANNELS | Permissions::MANAGE_GUILD | Permissions::ADMINISTRATOR;
        if !may.intersects(runs) {
            return said(Group::SetUpMayNot);
        }
        let kind = asked.channel.as_ref().map(|channel| channel.kind);
        if !matches!(kind, Some(ChannelType::Text | ChannelType::News)) {
            return said(Group::SetUpNoChannel);
        }
        let channel_name = asked
            .channel
            .as_ref()
            .and_then(|channel| channel.name.clone());
        let mut wanted = Settings {
            name: name
                .or(channel_name)
                .unwrap_or_else(|| words.say(&Group::NoName)),
            zone: settings::zone(&zone)?,
            mode: replies.map(Mode::from).unwrap_or_default(),
            ..Settings::default()
        };
        settings::change(
            words,
            &mut wanted,
            time.as_deref(),
            days.as_deref(),
            open_for.as_deref(),
        )?;
        let coach = Asked::Command(asked).person(house, &place).await;
        let server = asked.guild_id.map(|id| id.to_string());
        house
            .desk
            .found_group(&place, MANNERS, server.as_deref(), wanted.clone(), &coach)
            .await?;
        house.add_group(asked.channel_id);
        let head = words.say(&Group::SetUp {
            name: Plain::of(&wanted.name),
            channel: format!("<#{}>", asked.channel_id),
        });
        let mut parts = vec![format!("{head}\n{}", settings::in_words(words, &wanted))];
        if let Some(user) = second_coach {
            if user.bot {
                return said(Group::SetUpBot);
            }
            let second = named(ctx, &user).await;
            house
                .desk
                .coach()
                .add_coach(&place, &coach, &second)
                .await?;
            parts.push(words.say(&Group::CoachesToo {
                name: Plain::of(&second.name),
            }));
        }
        let missing = permissions::in_words(
            words,
            asked.app_permissions.unwrap_or_default(),
            asked.channel_id,
        );
        if !missing.is_empty() {
            parts.push(missing);
        }
        if !house.content {
            parts.push(words.say(&Group::WithoutContent));
        }
        parts.push(words.say(&Group::SetUpNext));
        Ok(Letter::text(parts.join("\n\n")))
    })
    .await
}
