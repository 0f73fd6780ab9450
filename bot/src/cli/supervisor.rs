//! The supervisor: owns every task of a serving program, starts each chat, starts it again when it fails,
//! and stops all of them in order.
//!
//! A chat lives in a task of its own, so that none waits for another and none falls with another. In that
//! task, its round of errands begins when it is up. When it fails it is started again after a pause that
//! doubles (see [`super::backoff`]), for ever; when it is refused for good it waits until it is mended, and
//! when no chat is left, the program ends. Whoever started the program reads each change on the console;
//! the coaches hear of an outage through the chats that are up.
//!
//! A stop goes in order, for each chat: its round finishes the errand in hand, then the chat finishes what
//! came in and leaves, then whatever it sends by (Discord's gate) closes. [`WITHIN`] bounds the whole, and
//! a second request to stop ends it at once: what was not finished is taken up at the next start.

use std::{panic::AssertUnwindSafe, sync::Arc, time::Duration};

use chrono::{DateTime, TimeDelta, Utc};
use futures::{FutureExt as _, future::BoxFuture};
use serde::Serialize;
use tokio::{sync::mpsc, task::JoinSet};

use super::{
    backoff::{Backoff, LONGEST},
    text::{Text, number, theirs},
};
use crate::{
    chat::{self, Down, News, Report, Service, Shutdown, Status, Statuses, Stop},
    desk::{ChatName, Clock, Desk, Notice, Sentence},
    words::Words,
};

/// How long an orderly stop may take.
pub(super) const WITHIN: Duration = Duration::from_secs(8);
/// How long the errand in hand of a chat that has failed may take to come back.
const LAST_ERRAND: Duration = Duration::from_secs(30);
/// The coaches are told of a line that is lost for so long.
const PATIENCE: TimeDelta = TimeDelta::minutes(5);
/// The coaches are told of an outage at this failure in a row: one that the next start mends is not worth
/// a word.
const TELL_AT: u32 = 2;

/// How a run ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum RunEnd {
    /// Stopped on request, and everything in hand was finished.
    Stopped,
    /// Stopped on request, and something was broken off.
    BrokenOff,
    /// No chat is left that could be served; each has said why.
    NothingLeft,
}

/// Says a line to whoever started the program.
pub(super) type Console = Arc<dyn Fn(&str) + Send + Sync>;

/// The supervisor.
pub(super) struct Supervisor {
    desk: Desk,
    clock: Arc<dyn Clock>,
    console: Console,
    /// The words of whoever reads the console.
    words: &'static Words,
    statuses: Statuses,
    seed: u64,
    /// The chats with their names.
    services: Vec<(&'static str, Arc<dyn Service>)>,
}

impl Supervisor {
    /// A supervisor of no chats yet, which speaks to the console in `words`. `seed` is for the jitter of the
    /// pauses.
    pub(super) fn new(
        desk: Desk,
        clock: Arc<dyn Clock>,
        console: Console,
        words: &'static Words,
        seed: u64,
    ) -> Self {
        Self {
            desk,
            clock,
            console,
            words,
            statuses: Statuses::default(),
            seed,
            services: Vec::new(),
        }
    }

    /// How the chats fare, for those that show it.
    pub(super) fn statuses(&self) -> Statuses {
        self.statuses.clone()
    }

    /// Adds a chat.
    pub(super) fn add(&mut self, name: &'static str, service: Arc<dyn Service>) {
        self.statuses.add(service.key(), name);
        self.services.push((name, service));
    }

    /// Whether there is a chat to run.
    pub(super) fn has_chats(&self) -> bool {
        !self.services.is_empty()
    }

    /// Runs every chat until a request to stop comes out of `requests`, or no chat is left. A second
    /// request ends an orderly stop at once.
    pub(super) async fn run(self, mut requests: mpsc::Receiver<()>) -> RunEnd {
        let (stop, shutdown) = Stop::new();
        let mut tasks = JoinSet::new();
        for (n, (name, service)) in self.services.iter().enumerate() {
            let watch = Watch {
                desk: self.desk.clone(),
                clock: Arc::clone(&self.clock),
                console: Arc::clone(&self.console),
                words: self.words,
                statuses: self.statuses.clone(),
                name,
                service: Arc::clone(service),
                backoff: Backoff::new(self.seed.wrapping_add(n as u64)),
                outage: None,
            };
            tasks.spawn(watch.run(shutdown.clone()));
        }
        let (desk, mut stopped) = (self.desk.clone(), shutdown.clone());
        tasks.spawn(async move {
            tokio::select! {
                () = desk.rounds().keep_solutions_ready() => {}
                () = stopped.wait() => {}
            }
        });

        let mut statuses = self.statuses.changes();
        let refused = statuses.wait_for(|all| {
            all.iter()
                .all(|fares| matches!(fares.status, Status::Refused { .. }))
        });
        let end = tokio::select! {
            _ = requests.recv() => RunEnd::Stopped,
            _ = refused => RunEnd::NothingLeft,
        };
        if end == RunEnd::Stopped {
            self.say(&Text::Stopping);
        }
        stop.now();
        let joined = async { while tasks.join_next().await.is_some() {} };
        let in_order = tokio::select! {
            () = joined => true,
            _ = requests.recv() => false,
            () = tokio::time::sleep(WITHIN) => false,
        };
        if in_order {
            return end;
        }
        tasks.shutdown().await;
        self.say(&Text::NotFinishedInTime);
        match end {
            RunEnd::Stopped => RunEnd::BrokenOff,
            other => other,
        }
    }

    fn say(&self, line: &Text) {
        (self.console)(&self.words.say(line));
    }
}

/// One chat and its watch.
struct Watch {
    desk: Desk,
    clock: Arc<dyn Clock>,
    console: Console,
    words: &'static Words,
    statuses: Statuses,
    /// The chat's name as people read it.
    name: &'static str,
    service: Arc<dyn Service>,
    backoff: Backoff,
    /// Since when it is down, and whether the coaches were told.
    outage: Option<(DateTime<Utc>, Heard)>,
}

/// What the supervisor itself says of a chat that is down.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Fault {
    EndedForNoReason,
    NotConnected,
    BrokeDown,
}

/// Whether the coaches know of an outage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Heard {
    NotYet,
    Already,
}

impl Watch {
    /// Runs the chat until the stop.
    async fn run(mut self, mut shutdown: Shutdown) {
        while !shutdown.asked() {
            let (ended, was_up) = self.session(shutdown.clone()).await;
            if shutdown.asked() {
                break;
            }
            // One that was up for long has a first failure now.
            let lasted = was_up.map_or(TimeDelta::zero(), |since| self.clock.now() - since);
            if lasted.to_std().unwrap_or_default() > LONGEST {
                self.backoff.reset();
            }
            let next_try = match ended {
                Err(Down::ForGood(why)) => {
                    self.refused(why).await;
                    tokio::select! {
                        () = shutdown.wait() => break,
                        () = self.service.mended() => {}
                    }
                    self.backoff.reset();
                    continue;
                }
                Err(Down::ForNow(why)) => self.failed(why).await,
                Ok(()) => self.failed(Sentence::of(Fault::EndedForNoReason)).await,
            };
            tokio::select! {
                () = shutdown.wait() => break,
                () = self.clock.sleep_until(next_try) => {}
            }
        }
        self.set(Status::Stopped);
    }

    /// One life of the chat, with its round of errands while it is up. Gives how it ended, and since when
    /// it was up, if it came to that.
    async fn session(
        &mut self,
        mut shutdown: Shutdown,
    ) -> (Result<(), Down>, Option<DateTime<Utc>>) {
        let service = Arc::clone(&self.service);
        let (stop_chat, chat_stops) = Stop::new();
        let (stop_round, round_stops) = Stop::new();
        let (report, mut news) = Report::new();
        let mut life = Box::pin(caught(service.run(report, chat_stops)));
        let mut round: BoxFuture<'static, Result<(), Down>> = Box::pin(std::future::pending());
        let mut since = None;
        let ended = loop {
            let patience = self.patience();
            tokio::select! {
                ended = &mut life => break Some(ended),
                broken = &mut round => {
                    stop_chat.now();
                    let _ = life.await;
                    return (broken, since);
                }
                Some(heard) = news.recv() => match heard {
                    News::Up { chat, lines } => {
                        let (desk, stops) = (self.desk.clone(), round_stops.clone());
                        round = Box::pin(caught(async move {
                            chat::dispatch::run(desk, chat, stops).await;
                            Ok(())
                        }));
                        since = Some(self.clock.now());
                        self.up(&lines).await;
                    }
                    News::Wavering(why) => self.wavers(why),
                    News::Steady => self.up(&[]).await,
                },
                () = self.clock.sleep_until(patience) => self.tell_of_outage(Sentence::of(Fault::NotConnected)).await,
                () = shutdown.wait() => break None,
            }
        };
        // The errand in hand is finished while the chat still serves, so that what was sent is written down.
        stop_round.now();
        let last_errand = async {
            if since.is_some() {
                let _ = tokio::time::timeout(LAST_ERRAND, round).await;
            }
        };
        let ended = match ended {
            Some(ended) => {
                last_errand.await;
                ended
            }
            None => {
                let leave = async {
                    last_errand.await;
                    stop_chat.now();
                };
                futures::future::join(life, leave).await.0
            }
        };
        (ended, since)
    }

    /// When the coaches are told of a line that is lost and does not come back.
    fn patience(&self) -> DateTime<Utc> {
        match self.outage {
            Some((since, Heard::NotYet)) => since + PATIENCE,
            _ => DateTime::<Utc>::MAX_UTC,
        }
    }

    async fn up(&mut self, lines: &[Sentence]) {
        let since = self.clock.now();
        self.set(Status::Up { since });
        for line in lines {
            (self.console)(&self.words.say(line));
        }
        if let Some((_, told)) = self.outage.take() {
            self.say(&Text::ChatIsBack {
                chat: theirs(self.called()),
            });
            if told == Heard::Already {
                self.tell_others(Notice::ChatBack { chat: self.chat() })
                    .await;
            }
        }
    }

    fn wavers(&mut self, why: Sentence) {
        let since = self.down_since();
        let told = theirs(self.named(&why));
        self.say(&Text::ConnectsByItself { why: told });
        self.set(Status::Wavering { since, why });
    }

    /// Notes a failure; gives when the chat is started again.
    async fn failed(&mut self, why: Sentence) -> DateTime<Utc> {
        let since = self.down_since();
        let pause = self.backoff.next();
        let next_try = self.clock.now() + pause;
        self.say(&Text::TriedAgain {
            why: theirs(self.named(&why)),
            seconds: seconds(pause),
        });
        self.set(Status::Failing {
            since,
            why: why.clone(),
            next_try,
        });
        if self.backoff.failures() >= TELL_AT {
            self.tell_of_outage(why).await;
        }
        next_try
    }

    async fn refused(&mut self, why: Sentence) {
        let since = self.down_since();
        (self.console)(&self.named(&why));
        self.set(Status::Refused {
            since,
            why: why.clone(),
        });
        self.outage = Some((since, Heard::Already));
        let chat = self.chat();
        self.tell_others(Notice::ChatRefused { chat, why }).await;
    }

    fn chat(&self) -> ChatName {
        ChatName::of(self.service.key(), self.name)
    }

    /// Since when the chat is down, which is now if it was not.
    fn down_since(&mut self) -> DateTime<Utc> {
        let now = self.clock.now();
        self.outage.get_or_insert((now, Heard::NotYet)).0
    }

    /// Tells the coaches, once an outage.
    async fn tell_of_outage(&mut self, why: Sentence) {
        let since = self.down_since();
        if self.outage.replace((since, Heard::Already)) != Some((since, Heard::Already)) {
            let chat = self.chat();
            self.tell_others(Notice::ChatDown { chat, why }).await;
        }
    }

    /// Tells the coaches in every other chat; each hears it when their chat is up.
    async fn tell_others(&self, notice: Notice) {
        let told = self
            .desk
            .rounds()
            .tell_coaches_elsewhere(self.service.key(), &notice);
        if let Err(error) = told.await {
            tracing::error!("the coaches could not be told: {error}");
        }
    }

    /// What the chat says of itself, behind its name where it does not begin with that.
    fn named(&self, why: &Sentence) -> String {
        let (name, why) = (self.called(), self.words.say(why));
        match why.starts_with(&name) {
            true => why,
            false => format!("{name}: {why}"),
        }
    }

    /// What the chat is called in the console's language.
    fn called(&self) -> String {
        self.words.say(&self.chat())
    }

    fn say(&self, line: &Text) {
        (self.console)(&self.words.say(line));
    }

    fn set(&self, status: Status) {
        self.statuses.set(self.service.key(), status);
    }
}

/// A chat that breaks down has failed, and takes nothing along.
async fn caught(life: impl Future<Output = Result<(), Down>>) -> Result<(), Down> {
    AssertUnwindSafe(life)
        .catch_unwind()
        .await
        .unwrap_or_else(|_| Err(Down::ForNow(Sentence::of(Fault::BrokeDown))))
}

/// A pause in whole seconds, at least one.
fn seconds(pause: Duration) -> u32 {
    number(pause.as_secs_f64().round().max(1.0) as usize)
}

#[cfg(test)]
mod tests;
