//! The supervisor with chats that do as they are told, and a clock that stands until it is set.

use std::{collections::VecDeque, sync::Mutex};

use async_trait::async_trait;
use sealed_move_store::Store;
use tokio::sync::{Notify, watch};

use super::*;
use crate::{
    chat::{Chat, ChatError, status::Fares},
    desk::{
        ChatKey, ChatName, Delivered, Delivery, DeskOptions, Errand, ErrandKind, Manners, Names,
        Notice, Person, Place, Sentence, Settings, TestClock, Weekdays,
    },
};

const ROOM: ChatKey = chat::room::KEY;
const DISCORD: ChatKey = chat::discord::KEY;

/// What a chat does in one of its lives.
#[derive(Clone, Copy, Debug)]
enum Life {
    /// It cannot start.
    FailsAtOnce,
    /// It is refused for good.
    IsRefused,
    /// It breaks down.
    Panics,
    /// It never gets so far as to be up, and does not end.
    NeverComesUp,
    /// It is up until it is told to fail.
    UntilToldToFail,
    /// It is up until the stop.
    Serves,
}

fn a_word() -> Notice {
    Notice::ChatBack {
        chat: ChatName::of(DISCORD, "Discord"),
    }
}

/// A chat that does as it is told.
struct Fake {
    name: ChatKey,
    lives: Mutex<VecDeque<Life>>,
    begun: watch::Sender<usize>,
    fail: Notify,
    mend: Notify,
    diary: Arc<Mutex<Vec<String>>>,
    /// An errand waits for this before it is carried.
    carries: Arc<tokio::sync::Semaphore>,
}

impl Fake {
    fn new(name: ChatKey, lives: &[Life]) -> Arc<Self> {
        Arc::new(Self {
            name,
            lives: Mutex::new(lives.iter().copied().collect()),
            begun: watch::Sender::new(0),
            fail: Notify::new(),
            mend: Notify::new(),
            diary: Arc::default(),
            carries: Arc::new(tokio::sync::Semaphore::new(1_000)),
        })
    }

    fn note(&self, what: &str) {
        self.diary.lock().expect("whole").push(what.to_owned());
    }

    fn diary(&self) -> Vec<String> {
        self.diary.lock().expect("whole").clone()
    }

    /// Waits for the beginning of a life, the first being 1.
    async fn life(&self, number: usize) {
        let mut begun = self.begun.subscribe();
        begun
            .wait_for(|count| *count >= number)
            .await
            .expect("begun");
    }
}

/// The errands' side of it.
struct FakeChat {
    name: ChatKey,
    diary: Arc<Mutex<Vec<String>>>,
    carries: Arc<tokio::sync::Semaphore>,
}

#[async_trait]
impl Chat for FakeChat {
    fn key(&self) -> ChatKey {
        self.name
    }

    async fn carry(&self, errand: &Errand) -> Result<Delivered, ChatError> {
        let note = |text: String| self.diary.lock().expect("whole").push(text);
        let what = match &errand.kind {
            ErrandKind::TellCoach(notice) => crate::words::english().say(notice),
            other => format!("{other:?}"),
        };
        note(format!("takes: {what}"));
        let permit = self.carries.acquire().await.expect("open");
        permit.forget();
        note(format!("carried: {what}"));
        Ok(Delivered::default())
    }
}

#[async_trait]
impl Service for Fake {
    fn key(&self) -> ChatKey {
        self.name
    }

    async fn run(&self, report: Report, mut shutdown: Shutdown) -> Result<(), Down> {
        let life = self.lives.lock().expect("whole").pop_front();
        let life = life.unwrap_or(Life::Serves);
        self.begun.send_modify(|count| *count += 1);
        let up = || {
            report.up(
                Arc::new(FakeChat {
                    name: self.name,
                    diary: Arc::clone(&self.diary),
                    carries: Arc::clone(&self.carries),
                }),
                vec![Sentence::plain(format!("{:?} is open", self.name))],
            );
        };
        match life {
            Life::FailsAtOnce => return Err(Down::ForNow(Sentence::plain("The line is dead."))),
            Life::IsRefused => return Err(Down::ForGood(Sentence::plain("The token is refused."))),
            Life::Panics => panic!("on purpose"),
            Life::NeverComesUp => shutdown.wait().await,
            Life::UntilToldToFail => {
                up();
                self.fail.notified().await;
                return Err(Down::ForNow(Sentence::plain("The line broke.")));
            }
            Life::Serves => {
                up();
                shutdown.wait().await;
            }
        }
        self.note("leaves");
        Ok(())
    }

    async fn mended(&self) {
        self.mend.notified().await;
    }
}

/// A supervisor at work.
struct Scene {
    _folder: tempfile::TempDir,
    clock: TestClock,
    desk: Desk,
    statuses: Statuses,
    lines: Arc<Mutex<Vec<String>>>,
    requests: mpsc::Sender<()>,
    running: tokio::task::JoinHandle<RunEnd>,
}

impl Scene {
    /// Runs these chats, each of which has a group with a coach.
    async fn begin(chats: &[Arc<Fake>]) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let store = Store::open(&folder.path().join("group.db")).expect("a store");
        let clock = TestClock::at(DateTime::UNIX_EPOCH + TimeDelta::days(20_000));
        let options = DeskOptions::speaking(chat::pictures::say);
        let desk = Desk::with_options(store, Arc::new(clock.clone()), options);
        for chat in chats {
            let place = Place {
                chat: chat.name,
                channel: "1".into(),
            };
            let coach = Person {
                user: "9".into(),
                name: "Coach".into(),
                language: None,
            };
            // Without a day to post on, the desk has nothing to say of its own.
            let settings = Settings {
                days: Weekdays::none(),
                ..Settings::default()
            };
            desk.found_group(
                &place,
                Manners {
                    names: Names::ByMember,
                    delivery: Delivery::Shown,
                },
                None,
                settings,
                &coach,
            )
            .await
            .expect("founded");
        }
        let lines = Arc::new(Mutex::new(Vec::new()));
        let console: Console = {
            let lines = Arc::clone(&lines);
            Arc::new(move |line| lines.lock().expect("whole").push(line.to_owned()))
        };
        let mut supervisor = Supervisor::new(
            desk.clone(),
            Arc::new(clock.clone()),
            console,
            crate::words::english(),
            7,
        );
        for chat in chats {
            let name = match chat.name {
                ROOM => "The club room",
                _ => "Discord",
            };
            supervisor.add(name, Arc::clone(chat) as Arc<dyn Service>);
        }
        let statuses = supervisor.statuses();
        let (requests, asked) = mpsc::channel(2);
        Self {
            _folder: folder,
            clock,
            desk,
            statuses,
            lines,
            requests,
            running: tokio::spawn(supervisor.run(asked)),
        }
    }

    /// Waits until the status of a chat fits; gives it.
    async fn until(&self, chat: ChatKey, fits: impl Fn(&Status) -> bool) -> Status {
        let of = |all: &Vec<Fares>| {
            let found = all.iter().find(|fares| fares.chat == chat);
            found.map(|fares| fares.status.clone()).filter(|s| fits(s))
        };
        let mut changes = self.statuses.changes();
        let all = changes.wait_for(|all| of(all).is_some());
        of(&all.await.expect("the supervisor runs")).expect("just found")
    }

    /// Sets the clock to the next start of a chat that is failing; gives how long that was off.
    async fn next_start(&self, chat: ChatKey) -> TimeDelta {
        let now = self.clock.now();
        let later =
            |status: &Status| matches!(status, Status::Failing { next_try, .. } if *next_try > now);
        let failing = self.until(chat, later).await;
        let Status::Failing { next_try, .. } = failing else {
            unreachable!()
        };
        let off = next_try - self.clock.now();
        self.clock.set(next_try);
        off
    }

    fn lines(&self) -> Vec<String> {
        self.lines.lock().expect("whole").clone()
    }

    async fn stop(self) -> (RunEnd, Vec<String>) {
        self.requests.send(()).await.expect("it runs");
        let end = self.running.await.expect("it ends");
        let lines = self.lines.lock().expect("whole").clone();
        (end, lines)
    }
}

fn up(status: &Status) -> bool {
    matches!(status, Status::Up { .. })
}

/// Waits until something holds that nothing tells of.
async fn until(what: &str, holds: impl Fn() -> bool) {
    for _ in 0..2_000 {
        if holds() {
            return;
        }
        tokio::time::sleep(Duration::from_millis(5)).await;
    }
    panic!("never: {what}");
}

#[tokio::test]
async fn one_chat_fails_and_is_tried_for_ever_while_the_other_serves() {
    let room = Fake::new(ROOM, &[Life::Serves]);
    let discord = Fake::new(DISCORD, &[Life::FailsAtOnce; 40]);
    let scene = Scene::begin(&[room.clone(), discord.clone()]).await;
    scene.until(ROOM, up).await;
    let mut pauses = Vec::new();
    for life in 1..=40 {
        discord.life(life).await;
        pauses.push(scene.next_start(DISCORD).await);
        let room = scene.until(ROOM, |_| true).await;
        assert!(up(&room), "{room:?}");
        discord.life(life + 1).await;
    }
    // Doubling at first, then about five minutes for ever.
    for (n, pause) in pauses.iter().enumerate() {
        let usual = 2f64.powi(n.min(20) as i32).min(300.0);
        let share = pause.num_milliseconds() as f64 / 1000.0 / usual;
        assert!(
            (0.7..=1.3).contains(&share),
            "{n}: {pause}, not about {usual} s"
        );
    }
    scene.until(DISCORD, up).await;
    assert_eq!(*room.begun.borrow(), 1, "the room was left alone");
    let (end, lines) = scene.stop().await;
    assert_eq!(end, RunEnd::Stopped);
    let failures = lines
        .iter()
        .filter(|line| line.starts_with("Discord: The line is dead. It is tried again in "));
    assert_eq!(failures.count(), 40, "{lines:#?}");
    assert!(lines.contains(&"Discord is back.".to_owned()), "{lines:#?}");
}

#[tokio::test]
async fn the_coaches_hear_of_an_outage_and_of_its_end_through_the_other_chat() {
    for (down, other, called) in [(DISCORD, ROOM, "Discord"), (ROOM, DISCORD, "The club room")] {
        let falls = Fake::new(
            down,
            &[Life::FailsAtOnce, Life::FailsAtOnce, Life::FailsAtOnce],
        );
        let stays = Fake::new(other, &[]);
        let scene = Scene::begin(&[falls.clone(), stays.clone()]).await;
        scene.until(other, up).await;
        scene.next_start(down).await;
        falls.life(2).await;
        let told = format!(
            "carried: {called} is down: The line is dead. I go on trying, and say when it is back."
        );
        until("the coach is told", || stays.diary().contains(&told)).await;
        scene.next_start(down).await;
        falls.life(3).await;
        scene.next_start(down).await;
        scene.until(down, up).await;
        let back = format!("carried: {called} is back.");
        until("the coach is told", || stays.diary().contains(&back)).await;
        let told_of = stays
            .diary()
            .into_iter()
            .filter(|said| said.contains("is down"));
        assert_eq!(
            told_of.count(),
            2,
            "taken and carried once: {:#?}",
            stays.diary()
        );
        scene.stop().await;
    }
}

#[tokio::test]
async fn a_first_failure_that_the_next_start_mends_is_worth_no_word_to_the_coaches() {
    let room = Fake::new(ROOM, &[]);
    let discord = Fake::new(DISCORD, &[Life::FailsAtOnce]);
    let scene = Scene::begin(&[room.clone(), discord.clone()]).await;
    scene.next_start(DISCORD).await;
    scene.until(DISCORD, up).await;
    scene.until(ROOM, up).await;
    scene.stop().await;
    assert_eq!(room.diary(), ["leaves"]);
}

#[tokio::test]
async fn what_is_refused_for_good_is_said_once_and_not_tried_until_it_is_mended() {
    let room = Fake::new(ROOM, &[]);
    let discord = Fake::new(DISCORD, &[Life::IsRefused]);
    let scene = Scene::begin(&[room.clone(), discord.clone()]).await;
    scene.until(ROOM, up).await;
    let refused = scene
        .until(DISCORD, |s| matches!(s, Status::Refused { .. }))
        .await;
    let Status::Refused { why, .. } = refused else {
        unreachable!()
    };
    assert_eq!(why, Sentence::plain("The token is refused."));
    let told = "carried: Discord is down until somebody helps: The token is refused.".to_owned();
    until("the coach is told", || room.diary().contains(&told)).await;
    scene.clock.set(scene.clock.now() + TimeDelta::days(30));
    for _ in 0..50 {
        tokio::task::yield_now().await;
    }
    assert_eq!(*discord.begun.borrow(), 1);
    assert!(
        scene
            .lines()
            .contains(&"Discord: The token is refused.".to_owned())
    );

    discord.mend.notify_one();
    scene.until(DISCORD, up).await;
    let back = "carried: Discord is back.".to_owned();
    until("the coach is told", || room.diary().contains(&back)).await;
    let (end, _) = scene.stop().await;
    assert_eq!(end, RunEnd::Stopped);
}

#[tokio::test]
async fn the_program_ends_when_nothing_is_left_to_serve() {
    let discord = Fake::new(DISCORD, &[Life::IsRefused]);
    let scene = Scene::begin(&[discord]).await;
    assert_eq!(scene.running.await.expect("it ends"), RunEnd::NothingLeft);
}

#[tokio::test]
async fn a_chat_that_breaks_down_takes_nothing_along_and_is_started_again() {
    let room = Fake::new(ROOM, &[]);
    let discord = Fake::new(DISCORD, &[Life::Panics, Life::UntilToldToFail]);
    let scene = Scene::begin(&[room.clone(), discord.clone()]).await;
    scene.next_start(DISCORD).await;
    scene.until(DISCORD, up).await;
    // One that was up and lost its line is started again likewise.
    discord.fail.notify_one();
    scene.next_start(DISCORD).await;
    discord.life(3).await;
    scene.until(DISCORD, up).await;
    assert_eq!(*room.begun.borrow(), 1);
    let (end, lines) = scene.stop().await;
    assert_eq!(end, RunEnd::Stopped);
    assert!(
        lines
            .iter()
            .any(|line| line.contains("a fault of the program")),
        "{lines:#?}"
    );
}

#[tokio::test]
async fn a_chat_that_never_comes_up_keeps_nobody_waiting_and_can_be_stopped() {
    let room = Fake::new(ROOM, &[]);
    let discord = Fake::new(DISCORD, &[Life::NeverComesUp]);
    let scene = Scene::begin(&[discord.clone(), room.clone()]).await;
    scene.until(ROOM, up).await;
    let discord_is = scene.until(DISCORD, |_| true).await;
    assert_eq!(discord_is, Status::Starting);
    let (end, _) = scene.stop().await;
    assert_eq!(end, RunEnd::Stopped);
}

#[tokio::test]
async fn a_stop_finishes_the_errand_in_hand_before_the_chat_leaves() {
    let room = Fake::new(ROOM, &[]);
    room.carries.forget_permits(usize::MAX);
    let scene = Scene::begin(std::slice::from_ref(&room)).await;
    scene.until(ROOM, up).await;
    scene
        .desk
        .rounds()
        .tell_coaches_elsewhere(DISCORD, &a_word())
        .await
        .expect("left");
    until("it is taken", || {
        room.diary() == ["takes: Discord is back."]
    })
    .await;
    scene.requests.send(()).await.expect("it runs");
    until("it is asked", || {
        scene.lines().contains(&"Stopping.".to_owned())
    })
    .await;
    for _ in 0..50 {
        tokio::task::yield_now().await;
    }
    assert_eq!(
        room.diary(),
        ["takes: Discord is back."],
        "the chat waits for it"
    );
    room.carries.add_permits(1);
    assert_eq!(scene.running.await.expect("it ends"), RunEnd::Stopped);
    assert_eq!(
        room.diary(),
        [
            "takes: Discord is back.",
            "carried: Discord is back.",
            "leaves"
        ]
    );
}

#[tokio::test]
async fn a_second_request_ends_a_stop_that_takes_too_long() {
    let room = Fake::new(ROOM, &[]);
    room.carries.forget_permits(usize::MAX);
    let scene = Scene::begin(std::slice::from_ref(&room)).await;
    scene.until(ROOM, up).await;
    scene
        .desk
        .rounds()
        .tell_coaches_elsewhere(DISCORD, &a_word())
        .await
        .expect("left");
    until("it is taken", || {
        room.diary() == ["takes: Discord is back."]
    })
    .await;
    scene.requests.send(()).await.expect("it runs");
    until("it is asked", || {
        scene.lines().contains(&"Stopping.".to_owned())
    })
    .await;
    scene.requests.send(()).await.expect("it runs");
    assert_eq!(scene.running.await.expect("it ends"), RunEnd::BrokenOff);
    assert_eq!(
        room.diary(),
        ["takes: Discord is back."],
        "it was broken off"
    );
}
