//! The client: logging in, registering the commands, and handing what the gateway brings to whoever it
//! is for.

use std::{net::SocketAddr, sync::Arc, time::Duration};

use poise::serenity_prelude as serenity;
use serenity::{
    ClientBuilder, ConnectionStage, FullEvent, GatewayError, GatewayIntents, Http, HttpBuilder,
    Interaction, ShardManager,
};
use tokio::sync::watch;

use super::{
    DISCORD, DiscordOptions, StartError, Token,
    carry::Discord,
    commands, edits,
    gate::Gate,
    hands::{Counted, Hands},
    held,
    house::House,
    letter::quiet,
    missed,
    oops::{Oops, brief, status},
    presses,
    talk::{self, Spoken},
    text::{Fault, Plain},
};
use crate::{
    chat::{Report, Shutdown, Stop},
    desk::{Desk, Sentence},
};

/// How often reaching Discord is tried at the start, each time as patiently as the gate is.
const TRIES: u32 = 2;
/// How long Discord may take to greet us.
const GREETING: Duration = Duration::from_secs(60);
/// How often the line is looked at, and after how many looks in a row one that is lost is told of: the
/// library mends most of them within seconds.
const LOOK: Duration = Duration::from_secs(5);
const MISSING: u32 = 3;

type Framework<'a> = poise::FrameworkContext<'a, Arc<House>, Oops>;

/// Logs in and serves until `shutdown`; then lets what came in be dealt with, and closes the gate last.
pub async fn run(
    desk: &Desk,
    options: &DiscordOptions,
    token: &Token,
    report: Report,
    shutdown: Shutdown,
) -> Result<(), StartError> {
    let stand_in = options.api.as_deref().map(address).transpose()?;
    let target = stand_in.clone().unwrap_or_else(|| DISCORD.to_owned());
    let gate = Gate::open(&target, token.reveal())
        .await
        .map_err(|error| unreachable(&error))?;
    let (stop_gate, gate_stops) = Stop::new();
    let front = Front {
        desk: desk.clone(),
        content: options.message_content,
        stand_in,
        token: token.clone(),
        gate: gate.address,
    };
    let life = async {
        let ended = front.live(report, shutdown).await;
        stop_gate.now();
        ended
    };
    let (ended, gate) = futures::future::join(life, gate.serve(gate_stops)).await;
    ended.and(gate.map_err(|error| unreachable(&error)))
}

fn unreachable(error: &dyn std::fmt::Display) -> StartError {
    let why = error.to_string();
    StartError::ForNow(Fault::DiscordUnreachable { why })
}

/// What a client is made of.
struct Front {
    desk: Desk,
    content: bool,
    stand_in: Option<String>,
    token: Token,
    gate: SocketAddr,
}

impl Front {
    /// The REST side, through the gate, which keeps the limits; see there.
    fn http(&self) -> Http {
        HttpBuilder::new(self.token.reveal())
            .proxy(format!("http://{}", self.gate))
            .ratelimiter_disabled(true)
            .default_allowed_mentions(quiet())
            .build()
    }

    async fn live(&self, report: Report, mut shutdown: Shutdown) -> Result<(), StartError> {
        let settled = tokio::select! {
            settled = self.settle_in() => settled?,
            () = shutdown.wait() => return Ok(()),
        };
        let (house, gateway) = settled;
        let hands = Arc::new(Hands::default());
        let (greeted, mut greeting) = watch::channel(false);
        let framework = Counted {
            inner: framework(Arc::clone(&house), greeted),
            hands: Arc::clone(&hands),
        };
        let mut client = ClientBuilder::new_with_http(self.http(), intents(self.content))
            .framework(framework)
            .await
            .map_err(|error| unreachable(&brief(&error)))?;
        *client.ws_url.lock().await = gateway.url.clone();
        house.moved_in(Arc::clone(&client.cache));
        let manager = Arc::clone(&client.shard_manager);
        let shards = gateway.shards.max(1);
        let mut end = Box::pin(client.start_shards(shards));

        let mut impatience = Box::pin(tokio::time::sleep(GREETING));
        let ended = loop {
            tokio::select! {
                // Where the greeter is gone the client has ended, and says why itself.
                Ok(_) = greeting.wait_for(|greeted| *greeted) => break None,
                ended = &mut end => break Some(ended),
                () = shutdown.wait() => break Some(Ok(())),
                // The library goes on trying by itself, and a second client would only be in its way.
                () = &mut impatience => {
                    report.wavering(Sentence::of(Fault::NoGreeting));
                    impatience = Box::pin(tokio::time::sleep(Duration::from_secs(86_400)));
                }
            }
        };
        let ended = match ended {
            Some(ended) => ended,
            None => {
                let chat = Discord {
                    house: Arc::clone(&house),
                };
                report.up(Arc::new(chat), vec![Sentence::of(Fault::OnDiscord)]);
                let line = Line {
                    manager: &manager,
                    shards: shards as usize,
                    report: &report,
                };
                self.stay(line, &mut end, &mut shutdown).await
            }
        };
        // No new event after this; those that have begun are dealt with while the gate is still open.
        manager.shutdown_all().await;
        hands.empty().await;
        match ended {
            Err(error) => Err(refused(Some(&error))),
            Ok(()) if shutdown.asked() => Ok(()),
            Ok(()) => Err(refused(None)),
        }
    }

    /// Asks who we are and moves in: groups, commands, memories.
    async fn settle_in(&self) -> Result<(Arc<House>, serenity::BotGateway), StartError> {
        let me = first_words(&self.http()).await?;
        let gateway = self
            .http()
            .get_bot_gateway()
            .await
            .map_err(|error| unreachable(&brief(&error)))?;
        if gateway.session_start_limit.remaining == 0 {
            let minutes = gateway.session_start_limit.reset_after / 60_000;
            return Err(StartError::ForNow(Fault::TooManyLogins { minutes }));
        }
        let outer = self.http();
        outer.set_application_id(me.get().into());
        let files = reqwest::Client::builder()
            .connect_timeout(Duration::from_secs(10))
            .redirect(reqwest::redirect::Policy::none())
            .build()
            .map_err(|error| unreachable(&error))?;
        let house = Arc::new(House::new(
            self.desk.clone(),
            Arc::new(outer),
            files,
            me,
            self.content,
            self.stand_in.clone(),
        ));
        house.learn_groups().await?;
        missed::recall_direct(&house).await;
        held::sweep(&house).await;
        register(&house).await?;
        Ok((house, gateway))
    }

    /// Stays until asked to leave, or thrown out. A line that is lost is the library's to mend; that it is
    /// lost is told.
    async fn stay(
        &self,
        line: Line<'_>,
        end: &mut (impl Future<Output = serenity::Result<()>> + Unpin),
        shutdown: &mut Shutdown,
    ) -> serenity::Result<()> {
        let mut look = tokio::time::interval(LOOK);
        let mut missing = 0;
        loop {
            tokio::select! {
                () = shutdown.wait() => return Ok(()),
                ended = &mut *end => return ended,
                _ = look.tick() => match (line.holds().await, missing) {
                    (true, 0..MISSING) => missing = 0,
                    (true, _) => {
                        line.report.steady();
                        missing = 0;
                    }
                    (false, _) => {
                        missing += 1;
                        if missing == MISSING {
                            line.report.wavering(Sentence::of(Fault::ConnectionLost));
                        }
                    }
                },
            }
        }
    }
}

/// The line to the gateway.
struct Line<'a> {
    manager: &'a ShardManager,
    shards: usize,
    report: &'a Report,
}

impl Line<'_> {
    /// Whether every shard is connected.
    async fn holds(&self) -> bool {
        let runners = self.manager.runners.lock().await;
        let connected = runners
            .values()
            .filter(|runner| runner.stage == ConnectionStage::Connected);
        connected.count() >= self.shards
    }
}

/// An address that requests can be sent to.
fn address(text: &str) -> Result<String, StartError> {
    let text = text.trim().trim_end_matches('/');
    let wrong = || {
        let address = Plain::already(text.to_owned());
        StartError::ForGood(Fault::NotAnApi { address })
    };
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
async fn first_words(http: &Http) -> Result<serenity::UserId, StartError> {
    let mut tries = 0;
    loop {
        match http.get_current_user().await {
            Ok(me) => return Ok(me.id),
            Err(error) if status(&error) == Some(401) => {
                return Err(StartError::ForGood(Fault::TokenRefused));
            }
            Err(error) => {
                tries += 1;
                if tries == TRIES {
                    return Err(unreachable(&brief(&error)));
                }
                tracing::warn!("Discord cannot be reached yet: {}", brief(&error));
                tokio::time::sleep(Duration::from_secs(2)).await;
            }
        }
    }
}

/// What a closed gateway means.
fn refused(error: Option<&serenity::Error>) -> StartError {
    match error {
        Some(serenity::Error::Gateway(GatewayError::InvalidAuthentication)) => {
            StartError::ForGood(Fault::TokenRefused)
        }
        Some(serenity::Error::Gateway(
            GatewayError::DisallowedGatewayIntents | GatewayError::InvalidGatewayIntents,
        )) => StartError::ForGood(Fault::IntentRefused),
        Some(error) => unreachable(&brief(error)),
        None => StartError::ForNow(Fault::GatewayClosed),
    }
}

/// Registers the commands, in place of those of an earlier version.
async fn register(house: &House) -> Result<(), StartError> {
    let commands = commands::to_register();
    let registered = house.http.create_global_commands(&commands).await;
    registered.map(drop).map_err(|error| {
        let why = brief(&error);
        StartError::ForNow(Fault::CommandsRefused { why })
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
                edits::edited(house, spoken).await;
            }
        }
        FullEvent::MessageDelete {
            channel_id,
            deleted_message_id,
            guild_id,
        } => {
            house.turns.past(deleted_message_id.get()).await;
            edits::deleted(house, *channel_id, *deleted_message_id, guild_id.is_none()).await;
        }
        FullEvent::MessageDeleteBulk {
            channel_id,
            multiple_deleted_messages_ids,
            guild_id,
        } => {
            for id in multiple_deleted_messages_ids {
                edits::deleted(house, *channel_id, *id, guild_id.is_none()).await;
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
        assert_eq!(commands.len(), 4);
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
