//! `serve`: runs the bot until told to stop.

use std::{io::Write, sync::Arc};

use anyhow::Context;
use clap::Args;
use tracing_subscriber::EnvFilter;

use super::{
    Outcome, Where,
    config::Config,
    groups::{desk, runtime},
};
use crate::{
    chat::{self, Chat, Stop, discord, room},
    desk::Desk,
};

/// Run the bot: scheduler, club room, and Discord where DISCORD_TOKEN (or DISCORD_TOKEN_FILE) is set.
///
/// Starts with no settings file; `README.md` lists every setting. Ends in good order on Ctrl-C.
#[derive(Debug, Default, Args)]
pub struct Serve {
    /// Port of the club room, instead of the settings' one; a taken port gives way to a free one
    #[arg(long, value_name = "PORT")]
    port: Option<u16>,
}

impl Serve {
    pub(super) fn run(self, place: &Where) -> anyhow::Result<Outcome> {
        start_log();
        let (mut config, path) = Config::load(place)?;
        if let Some(port) = self.port {
            config.room.address.set_port(port);
        }
        runtime()?.block_on(async {
            let desk = desk(&config, &path)?;
            say(format_args!("Store: {}", path.display()));
            serve(desk, &config).await
        })?;
        Ok(Outcome::Fine)
    }
}

/// Runs every chat on `desk` until Ctrl-C or SIGTERM, then lets each finish what it has in hand.
pub(super) async fn serve(desk: Desk, config: &Config) -> anyhow::Result<()> {
    let (stop, shutdown) = Stop::new();
    desk.judge_pending().await?;
    let mut chats: Vec<Arc<dyn Chat>> = Vec::new();
    let mut open_room = None;
    if config.room.open {
        let options = room::RoomOptions {
            address: config.room.address,
            group: config.group.clone(),
            public_url: config.room.public_url.clone(),
        };
        let room = room::Room::start(desk.clone(), options, shutdown.clone()).await?;
        say(format_args!("For members:   {}", room.member_link()));
        say(format_args!("For the coach: {}", room.coach_link()));
        chats.push(room.chat());
        open_room = Some(room);
    }
    if let Some(token) = discord::Token::from_environment()? {
        let options = discord::DiscordOptions {
            token,
            api: std::env::var("SEALED_MOVE_DISCORD_API")
                .ok()
                .filter(|api| !api.is_empty()),
            message_content: config.discord.message_content,
        };
        chats.push(discord::start(desk.clone(), options, shutdown.clone()).await?);
        say(format_args!("On Discord."));
    }
    anyhow::ensure!(
        !chats.is_empty(),
        "nothing to run: the club room is closed in the settings and no DISCORD_TOKEN is set"
    );
    say(format_args!("Stop with Ctrl-C."));
    let running = tokio::spawn(chat::run(desk, chats, shutdown));
    told_to_stop().await?;
    say(format_args!("Stopping."));
    stop.now();
    running.await.context("the bot ended badly")?;
    if let Some(room) = open_room {
        room.closed().await;
    }
    Ok(())
}

/// Says something to whoever started the bot. That nobody listens any more is no reason to stop.
fn say(words: std::fmt::Arguments<'_>) {
    let _ = writeln!(std::io::stdout(), "{words}");
}

/// Ends on Ctrl-C or when the system asks the process to end.
async fn told_to_stop() -> anyhow::Result<()> {
    use tokio::signal;
    #[cfg(unix)]
    {
        let mut terminated = signal::unix::signal(signal::unix::SignalKind::terminate())
            .context("the signal to stop could not be listened for")?;
        tokio::select! {
            done = signal::ctrl_c() => done.context("Ctrl-C could not be listened for")?,
            _ = terminated.recv() => {}
        }
    }
    #[cfg(not(unix))]
    signal::ctrl_c()
        .await
        .context("Ctrl-C could not be listened for")?;
    Ok(())
}

/// What is logged by default: warnings. Of the gateway's comings and goings the library makes a noise of
/// its own; what matters of them is said in our words.
const LOG: &str = "warn,serenity::gateway=off";

/// Logs to stderr, at the level SEALED_MOVE_LOG asks for; warnings by default.
pub(super) fn start_log() {
    let filter = EnvFilter::try_from_env("SEALED_MOVE_LOG").unwrap_or_else(|_| EnvFilter::new(LOG));
    // A second start in one process keeps the first log.
    let _ = tracing_subscriber::fmt()
        .with_env_filter(filter)
        .with_writer(std::io::stderr)
        .try_init();
}
