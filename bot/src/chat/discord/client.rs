//! The client: logging in, registering the commands, and handing what the gateway brings to whoever it
//! is for.

use std::{sync::Arc, time::Duration};

use poise::serenity_prelude as serenity;
use serenity::{
    ClientBuilder, FullEvent, GatewayError, GatewayIntents, Http, HttpBuilder, Interaction,
    ShardManager,
};
use tokio::sync::{oneshot, watch};

use super::{
    DISCORD, DiscordOptions, DiscordStartError, commands,
    gate::Gate,
    held,
    house::House,
    letter::quiet,
    missed,
    oops::{Oops, brief, status},
    presses,
    talk::{self, Spoken},
};
use crate::{chat::Shutdown, desk::Desk};

/// How often reaching Discord is tried at the start, each time as patiently as the gate is.
const TRIES: u32 = 2;
/// How long Discord may take to greet us.
const GREETING: Duration = Duration::from_secs(60);
/// How often direct conversations are written down, when there are new ones.
const REMEMBER: Duration = Duration::from_secs(60);

type Framework<'a> = poise::FrameworkContext<'a, Arc<House>, Oops>;

/// Logs in and returns once Discord has greeted us.
pub async fn start(
    desk: Desk,
    options: DiscordOptions,
    shutdown: Shutdown,
) -> Result<Arc<House>, DiscordStartError> {
    let stand_in = options.api.as_deref().map(address).transpose()?;
    let target = stand_in.clone().unwrap_or_else(|| DISCORD.to_owned());
    let unreachable =
        |error: &dyn std::fmt::Display| DiscordStartError::Unreachable(error.to_string());
    let gate = Gate::open(&target, options.token.reveal(), shutdown.clone())
        .await
        .map_err(|error| unreachable(&error))?;
    // The gate keeps the limits; see there.
    let http = || {
        HttpBuilder::new(options.token.reveal())
            .proxy(format!("http://{}", gate.address))
            .ratelimiter_disabled(true)
            .default_allowed_mentions(quiet())
            .build()
    };
    let me = first_words(&http()).await?;
    let gateway = http()
        .get_bot_gateway()
        .await
        .map_err(|error| unreachable(&brief(&error)))?;
    if gateway.session_start_limit.remaining == 0 {
        return Err(DiscordStartError::Unreachable(format!(
            "the bot has logged in too often today; Discord lets it in again in {} minutes",
            gateway.session_start_limit.reset_after / 60_000
        )));
    }

    let outer = http();
    outer.set_application_id(me.get().into());
    let files = reqwest::Client::builder()
        .connect_timeout(Duration::from_secs(10))
        .redirect(reqwest::redirect::Policy::none())
        .build()
        .map_err(|error| unreachable(&error))?;
    let house = Arc::new(House::new(
        desk,
        Arc::new(outer),
        files,
        me,
        options.message_content,
        stand_in,
    ));
    house.learn_groups().await?;
    missed::recall_direct(&house).await;
    held::recall(&house).await;
    register(&house).await?;

    let (greeted, mut greeting) = watch::channel(false);
    let framework = framework(Arc::clone(&house), greeted);
    let mut client = ClientBuilder::new_with_http(http(), intents(options.message_content))
        .framework(framework)
        .await
        .map_err(|error| unreachable(&brief(&error)))?;
    *client.ws_url.lock().await = gateway.url.clone();
    house.moved_in(Arc::clone(&client.cache));
    let manager = Arc::clone(&client.shard_manager);
    let shards = gateway.shards.max(1);
    let (ended, mut end) = oneshot::channel();
    tokio::spawn(async move {
        let _ = ended.send(client.start_shards(shards).await);
    });

    let ended = tokio::select! {
        // Where the greeter is gone the client has ended, and says why itself.
        Ok(_) = greeting.wait_for(|greeted| *greeted) => None,
        ended = &mut end => Some(ended),
        () = tokio::time::sleep(GREETING) => {
            manager.shutdown_all().await;
            return Err(unreachable(&"the gateway does not greet the bot"));
        }
    };
    if let Some(ended) = ended {
        return Err(refused(ended.ok().and_then(Result::err).as_ref()));
    }
    tokio::spawn(watch_over(Arc::clone(&house), manager, end, shutdown));
    Ok(house)
}

/// An address that requests can be sent to.
fn address(text: &str) -> Result<String, DiscordStartError> {
    let text = text.trim().trim_end_matches('/');
    let wrong = || DiscordStartError::Address(text.to_owned());
    let url = reqwest::Url::parse(text).map_err(|_| wrong())?;
    let fits =
        matches!(url.scheme(), "http" | "https") && url.host_str().is_some() && url.path() == "/";
    if fits {
        Ok(text.to_owned())
    } else {
        Err(wrong())
    }
}

fn intents(content: bool) -> GatewayIntents {
    let ordinary =
        GatewayIntents::GUILDS | GatewayIntents::GUILD_MESSAGES | GatewayIntents::DIRECT_MESSAGES;
    match content {
        true => ordinary | GatewayIntents::MESSAGE_CONTENT,
        false => ordinary,
    }
}

/// Asks who we are, which tells at once whether the token is good.
async fn first_words(http: &Http) -> Result<serenity::UserId, DiscordStartError> {
    let mut tries = 0;
    loop {
        match http.get_current_user().await {
            Ok(me) => return Ok(me.id),
            Err(error) if status(&error) == Some(401) => return Err(DiscordStartError::Token),
            Err(error) => {
                tries += 1;
                if tries == TRIES {
                    return Err(DiscordStartError::Unreachable(brief(&error)));
                }
                tracing::warn!("Discord cannot be reached yet: {}", brief(&error));
                tokio::time::sleep(Duration::from_secs(2)).await;
            }
        }
    }
}

/// What a closed gateway means.
fn refused(error: Option<&serenity::Error>) -> DiscordStartError {
    match error {
        Some(serenity::Error::Gateway(GatewayError::InvalidAuthentication)) => {
            DiscordStartError::Token
        }
        Some(serenity::Error::Gateway(
            GatewayError::DisallowedGatewayIntents | GatewayError::InvalidGatewayIntents,
        )) => DiscordStartError::Intent,
        Some(error) => DiscordStartError::Unreachable(brief(error)),
        None => DiscordStartError::Unreachable("the gateway closed".into()),
    }
}

/// Registers the commands, in place of those of an earlier version.
async fn register(house: &House) -> Result<(), DiscordStartError> {
    let commands = poise::builtins::create_application_commands(&commands::all());
    let registered = house.http.create_global_commands(&commands).await;
    registered.map(drop).map_err(|error| {
        DiscordStartError::Unreachable(format!("the commands were refused: {}", brief(&error)))
    })
}

fn framework(
    house: Arc<House>,
    greeted: watch::Sender<bool>,
) -> poise::Framework<Arc<House>, Oops> {
    poise::Framework::builder()
        .options(poise::FrameworkOptions {
            commands: commands::all(),
            event_handler: |framework, event| Box::pin(hear(framework, event)),
            on_error: |error| Box::pin(trouble(error)),
            allowed_mentions: Some(quiet()),
            ..Default::default()
        })
        .initialize_owners(false)
        .setup(move |_, _, _| {
            Box::pin(async move {
                greeted.send_replace(true);
                Ok(house)
            })
        })
        .build()
}

/// Hands an event on.
async fn hear(framework: Framework<'_>, event: &FullEvent) -> Result<(), Oops> {
    let house = framework.user_data;
    match event {
        FullEvent::Message { new_message } => {
            house.note_seen(new_message.author.id, new_message.guild_id);
            if let Some(spoken) = Spoken::new(new_message) {
                let _turn = house.turns.take(spoken.user.get(), spoken.id.get()).await;
                talk::said(house, spoken).await;
            }
        }
        FullEvent::MessageUpdate { event, .. } => {
            if let Some(spoken) = Spoken::edited(event) {
                // Written when it was edited.
                let written = event
                    .edited_timestamp
                    .map_or(0, |at| missed::first_id_at(at.timestamp_millis()).get());
                let _turn = house
                    .turns
                    .take(spoken.user.get(), written.max(spoken.id.get()))
                    .await;
                talk::edited(house, spoken).await;
            }
        }
        FullEvent::MessageDelete {
            channel_id,
            deleted_message_id,
            guild_id,
        } => {
            house.turns.past(deleted_message_id.get()).await;
            talk::deleted(house, *channel_id, *deleted_message_id, guild_id.is_none()).await;
        }
        FullEvent::MessageDeleteBulk {
            channel_id,
            multiple_deleted_messages_ids,
            guild_id,
        } => {
            for id in multiple_deleted_messages_ids {
                talk::deleted(house, *channel_id, *id, guild_id.is_none()).await;
            }
        }
        FullEvent::InteractionCreate { interaction } => match interaction {
            Interaction::Command(command) => house.note_seen(command.user.id, command.guild_id),
            Interaction::Component(press) => {
                house.note_seen(press.user.id, press.guild_id);
                presses::pressed(house, press).await;
            }
            Interaction::Modal(form) => presses::sent(house, form).await,
            _ => {}
        },
        // A new session: whatever was said since the last one was not told to us.
        FullEvent::Ready { data_about_bot } => {
            tracing::info!(
                servers = data_about_bot.guilds.len(),
                "Discord has let the bot in"
            );
            missed::read_back(house).await;
        }
        _ => {}
    }
    Ok(())
}

/// What went wrong around a command; what goes wrong inside one is told to the person by itself.
async fn trouble(error: poise::FrameworkError<'_, Arc<House>, Oops>) {
    match error {
        poise::FrameworkError::CommandPanic { ctx, .. } => {
            tracing::error!(command = %ctx.command().qualified_name, "a command broke down");
        }
        poise::FrameworkError::Command { error, ctx, .. } => {
            tracing::error!(command = %ctx.command().qualified_name, "a command failed: {error}");
        }
        poise::FrameworkError::UnknownInteraction { .. }
        | poise::FrameworkError::CommandStructureMismatch { .. } => {
            tracing::warn!(
                "a command of another version was used; Discord shows the new ones within the hour"
            );
        }
        poise::FrameworkError::ArgumentParse { error, ctx, .. } => {
            tracing::warn!(command = %ctx.command().qualified_name, "an option could not be read: {error}");
        }
        _ => tracing::warn!("Discord sent something that could not be dealt with"),
    }
}

/// Stops the client when asked, and says so when Discord throws it out.
async fn watch_over(
    house: Arc<House>,
    manager: Arc<ShardManager>,
    mut end: oneshot::Receiver<serenity::Result<()>>,
    mut shutdown: Shutdown,
) {
    let mut remembered = house.direct().len();
    loop {
        tokio::select! {
            () = shutdown.wait() => {
                missed::remember_direct(&house).await;
                manager.shutdown_all().await;
                return;
            }
            ended = &mut end => {
                let error = ended.ok().and_then(Result::err);
                tracing::error!("Discord has ended the connection for good: {}", refused(error.as_ref()));
                return;
            }
            () = tokio::time::sleep(REMEMBER) => {
                let known = house.direct().len();
                if known != remembered {
                    missed::remember_direct(&house).await;
                    remembered = known;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_of_a_stand_in_are_looked_at() {
        assert_eq!(
            address("http://127.0.0.1:4000/").expect("fits"),
            "http://127.0.0.1:4000"
        );
        for wrong in ["127.0.0.1:4000", "ftp://x", "http://x/path", ""] {
            assert!(address(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn the_commands_keep_to_discords_limits() {
        let commands = commands::all();
        assert_eq!(commands.len(), 2);
        for command in &commands {
            assert!(command.subcommands.len() <= 25);
            for sub in &command.subcommands {
                let described = sub.description.as_deref().unwrap_or_default();
                assert!(
                    (1..=100).contains(&described.chars().count()),
                    "{}",
                    sub.name
                );
                assert!(sub.parameters.len() <= 25, "{}", sub.name);
                for option in &sub.parameters {
                    let described = option.description.as_deref().unwrap_or_default();
                    assert!(
                        (1..=100).contains(&described.chars().count()),
                        "{} {}",
                        sub.name,
                        option.name
                    );
                }
            }
        }
    }
}
