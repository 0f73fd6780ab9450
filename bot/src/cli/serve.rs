//! `serve`: runs the bot until told to stop.

use std::{io::Write, sync::Arc};

use clap::Args;
use tokio::sync::mpsc;
use tracing_subscriber::EnvFilter;

use super::{
    Globals, Outcome,
    config::Config,
    groups::{desk, runtime},
    misuse::between,
    supervisor::{RunEnd, Supervisor},
    text::{Failure, OrFail, Text, failure, path as of, unless},
    tongue::readers,
};
use crate::{
    chat::registry::{Opening, Parts},
    desk::{Desk, SystemClock},
};

/// Run the bot: scheduler, club room, and Discord where DISCORD_TOKEN (or DISCORD_TOKEN_FILE) is set.
///
/// Starts with no settings file; `README.md` lists every setting. Ends in good order on Ctrl-C.
#[derive(Debug, Default, Args)]
pub struct ServeArgs {
    /// Port of the club room, instead of the settings' one; a taken port gives way to a free one
    #[arg(long, value_name = "PORT", value_parser = between::<u16>(0, u16::MAX.into()))]
    port: Option<u16>,
}

impl ServeArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        start_log();
        let (config, path) = Config::load(place)?;
        to_its_end(async {
            let desk = desk(&config, &path)?;
            let file = of(&path);
            say(&Text::StoreIsAt { file }.said());
            serve(desk, &config, self.port).await
        })
    }
}

/// Runs every chat that is configured on `desk`, one of them at `port`, until Ctrl-C or SIGTERM, then lets each finish what it has in hand.
pub(super) async fn serve(
    desk: Desk,
    config: &Config,
    port: Option<u16>,
) -> anyhow::Result<Outcome> {
    let console = Arc::new(say);
    let seed = getrandom::u64().unwrap_or_else(|_| u64::from(std::process::id()));
    let mut supervisor = Supervisor::new(
        desk.clone(),
        Arc::new(SystemClock),
        console,
        readers(),
        seed,
    );
    let parts = Parts {
        desk: desk.clone(),
        statuses: supervisor.statuses(),
        group: config.group.clone(),
        port,
    };
    let mut off = Vec::new();
    for chat in &config.chats {
        match chat.open(&parts) {
            Opening::On(service) => {
                service.prepare().await?;
                supervisor.add(chat.registration.name, service);
            }
            Opening::Off(why) => off.push(readers().say(&why)),
        }
    }
    unless(supervisor.has_chats(), || Failure::NothingToRun {
        why: off.join(" "),
    })?;
    say(&Text::StopWithCtrlC.said());
    let (request, requests) = mpsc::channel(2);
    let signals = async move {
        loop {
            told_to_stop().await?;
            let _ = request.try_send(());
        }
    };
    let end = tokio::select! {
        end = supervisor.run(requests) => end,
        failed = signals => return failed,
    };
    // A proof still being worked out holds the store open; its log is emptied all the same.
    if let Err(error) = desk.put_away().await {
        tracing::warn!("the store's log stays beside it: {error}");
    }
    match end {
        RunEnd::Stopped => Ok(Outcome::Fine),
        RunEnd::BrokenOff => Ok(Outcome::Wanting),
        RunEnd::NothingLeft => Err(failure(Failure::NoChatLeft)),
    }
}

/// Runs a serving program to its end. Work that nobody waits for any more is not waited for.
pub(super) fn to_its_end(
    run: impl Future<Output = anyhow::Result<Outcome>>,
) -> anyhow::Result<Outcome> {
    let runtime = runtime()?;
    let outcome = runtime.block_on(run);
    runtime.shutdown_background();
    outcome
}

/// Says something to whoever started the bot. That nobody listens any more is no reason to stop.
fn say(words: &str) {
    let mut out = std::io::stdout();
    let _ = writeln!(out, "{words}");
    let _ = out.flush();
}

/// Ends on Ctrl-C or when the system asks the process to end.
async fn told_to_stop() -> anyhow::Result<()> {
    use tokio::signal;
    #[cfg(unix)]
    {
        let mut terminated = signal::unix::signal(signal::unix::SignalKind::terminate())
            .or_fail(|| Failure::StopSignalUnheard)?;
        tokio::select! {
            done = signal::ctrl_c() => done.or_fail(|| Failure::CtrlCUnheard)?,
            _ = terminated.recv() => {}
        }
    }
    #[cfg(not(unix))]
    signal::ctrl_c().await.or_fail(|| Failure::CtrlCUnheard)?;
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
