//! The club room: an embedded web chat for one group, on loopback unless told otherwise.
//!
//! Serves its own pages (hand-written, no outside resources), a small JSON interface and a live feed,
//! all of them on the desk's calls. Holds nothing that a restart would miss: the feed only says that
//! there is something new, and a page that comes back catches up from the desk.
//!
//! | file | subject |
//! | --- | --- |
//! | `door` | who may come in: links, cookies, who a request is from |
//! | `devices` | codes by which a member's second device is theirs too |
//! | `guard` | headers, and requests that come from where they should not |
//! | `feed` | what is new, live |
//! | `language` | in which language a reader is spoken to |
//! | `text`, `trouble` | what the room says itself, and what could not be done |
//! | `paper` | the JSON shapes |
//! | `member` | what a member asks for |
//! | `cards` | topic cards |
//! | `lessons` | lessons to be stepped through |
//! | `coach` | what the coach asks for |
//! | `pages` | the pages and their parts |

mod cards;
mod coach;
mod devices;
mod door;
mod feed;
mod guard;
mod language;
mod lessons;
mod member;
mod pace;
mod pages;
mod paper;
mod registration;
mod text;
mod trouble;

use std::{
    io::ErrorKind,
    net::{IpAddr, Ipv4Addr, SocketAddr},
    sync::Arc,
};

use async_trait::async_trait;
use axum::Router;
use tokio::net::TcpListener;

pub use self::registration::{home, registration};
use self::{door::Door, feed::Feed, text::Text};
use super::{Chat, ChatError, Down, Report, Service, Shutdown, Statuses, Tasks};
use crate::desk::{
    ChatKey, Delivered, Desk, DeskError, Errand, ErrandKind, Person, Place, Sentence, Settings,
};

/// The room's key.
pub const KEY: ChatKey = ChatKey::of("room");

/// Where the room listens when nothing else is said.
pub const ADDRESS: SocketAddr = SocketAddr::new(IpAddr::V4(Ipv4Addr::LOCALHOST), 7316);

/// The room's one group.
pub fn place() -> Place {
    Place {
        chat: KEY,
        channel: "club".into(),
    }
}

/// The coach that the room's group is founded with. The first who comes by the coach's link and gives a
/// name takes over from this one.
pub fn coach() -> Person {
    Person {
        user: "coach".into(),
        name: "Coach".into(),
        language: None,
    }
}

/// How to open the room.
#[derive(Clone, Debug)]
pub struct RoomOptions {
    /// Where to listen. When the port is taken, a free one is used instead.
    pub address: SocketAddr,
    /// Settings of the group, when it is founded now; later changes are made on the coach's page.
    pub group: Settings,
    /// The address members use when it is not the one listened on (behind a proxy), such as
    /// `https://chess.example.org`.
    pub public_url: Option<String>,
}

impl Default for RoomOptions {
    fn default() -> Self {
        Self {
            address: ADDRESS,
            group: Settings::default(),
            public_url: None,
        }
    }
}

/// Why the room could not be opened.
#[derive(Debug, thiserror::Error)]
pub enum RoomError {
    /// No socket.
    #[error("no socket on {address}: {source}")]
    Listen {
        /// What was asked for.
        address: SocketAddr,
        /// What the system says.
        source: std::io::Error,
    },
    /// The public address is no web address.
    #[error("\"{0}\" is not a web address")]
    PublicUrl(String),
    /// The machine gives no random numbers.
    #[error("no random numbers: {0}")]
    Random(String),
    /// The desk could not.
    #[error(transparent)]
    Desk(#[from] DeskError),
}

impl RoomError {
    /// What is said of it to whoever runs the bot, and to the coaches in other chats.
    fn sentence(&self) -> Sentence {
        Sentence::of(match self {
            Self::Listen { address, source } => Text::CannotListen {
                address: address.to_string(),
                why: source.to_string().as_str().into(),
            },
            Self::PublicUrl(url) => Text::NotAWebAddress {
                address: url.as_str().into(),
            },
            Self::Random(why) => Text::NoSecretLinks {
                why: why.as_str().into(),
            },
            Self::Desk(error) => return Sentence::of(error),
        })
    }
}

/// The room: what all its handlers share.
pub struct Room {
    desk: Desk,
    place: Place,
    door: Door,
    feed: Feed,
    bench: coach::Bench,
    pace: pace::Pace,
    codes: devices::Codes,
    /// Work that goes on when the page that asked for it is closed.
    tasks: Arc<Tasks>,
    statuses: Statuses,
    shutdown: Shutdown,
}

type Shared = Arc<Room>;

/// The room as the supervisor runs it.
pub struct RoomService {
    /// What it is open to.
    pub desk: Desk,
    /// How to open it.
    pub options: RoomOptions,
    /// How all chats fare, for the coach's page.
    pub statuses: Statuses,
}

#[async_trait]
impl Service for RoomService {
    fn key(&self) -> ChatKey {
        KEY
    }

    async fn prepare(&self) -> Result<(), DeskError> {
        self.found().await
    }

    async fn run(&self, report: Report, shutdown: Shutdown) -> Result<(), Down> {
        let (listener, room) = self.open(shutdown.clone()).await.map_err(down)?;
        let lines = vec![
            Sentence::of(Text::MembersEnter {
                link: room.door.member_link(),
            }),
            Sentence::of(Text::CoachEnters {
                link: room.door.coach_link(),
            }),
        ];
        let tasks = Arc::clone(&room.tasks);
        let app = router(room.clone());
        report.up(Arc::new(RoomChat(room.clone())), lines);
        let mut stop = shutdown.clone();
        let serve = axum::serve(listener, app)
            .with_graceful_shutdown(async move { stop.wait().await })
            .into_future();
        let served = tokio::select! {
            served = serve => served,
            never = room.tell_of_statuses() => match never {},
        };
        tasks.finished().await;
        served.map_err(|error| {
            Down::ForNow(Sentence::of(Text::ServerEnded {
                why: error.to_string().as_str().into(),
            }))
        })
    }
}

impl RoomService {
    /// Founds the room's group when there is none.
    async fn found(&self) -> Result<(), DeskError> {
        let home = home();
        if !self.desk.places(KEY).await?.contains(&home.place) {
            let group = self.options.group.clone();
            self.desk
                .found_group(&home.place, home.manners, None, group, &home.coach)
                .await?;
        }
        Ok(())
    }

    /// Opens the room and takes its port.
    async fn open(&self, shutdown: Shutdown) -> Result<(TcpListener, Shared), RoomError> {
        let (desk, options) = (self.desk.clone(), &self.options);
        let place = place();
        self.found().await?;
        let listener = listen(options.address).await?;
        let address = listener.local_addr().map_err(|source| RoomError::Listen {
            address: options.address,
            source,
        })?;
        let door = Door::hang(&desk, address, options.public_url.as_deref()).await?;
        let bench = coach::Bench::set_up(&desk).await?;
        let room = Arc::new(Room {
            desk,
            place,
            door,
            feed: Feed::new(),
            bench,
            pace: pace::Pace::default(),
            codes: devices::Codes::default(),
            tasks: Arc::default(),
            statuses: self.statuses.clone(),
            shutdown,
        });
        Ok((listener, room))
    }
}

/// Whether the room is worth opening again by itself.
fn down(error: RoomError) -> Down {
    let why = error.sentence();
    match error {
        RoomError::PublicUrl(_) => Down::ForGood(why),
        // A port below 1024, as a rule: that does not change by itself.
        RoomError::Listen { source, .. } if source.kind() == ErrorKind::PermissionDenied => {
            Down::ForGood(why)
        }
        RoomError::Listen { .. } | RoomError::Random(_) | RoomError::Desk(_) => Down::ForNow(why),
    }
}

/// The address asked for, or the same with a free port when its port is taken.
async fn listen(address: SocketAddr) -> Result<TcpListener, RoomError> {
    let fail = |source| RoomError::Listen { address, source };
    match TcpListener::bind(address).await {
        Err(error) if error.kind() == ErrorKind::AddrInUse && address.port() != 0 => {
            let free = TcpListener::bind(SocketAddr::new(address.ip(), 0))
                .await
                .map_err(fail)?;
            tracing::warn!(
                "port {} is taken; the room uses a free one instead",
                address.port()
            );
            Ok(free)
        }
        other => other.map_err(fail),
    }
}

fn router(room: Shared) -> Router {
    Router::new()
        .merge(pages::routes())
        .merge(door::routes())
        .merge(feed::routes())
        .merge(member::routes())
        .merge(cards::routes())
        .merge(lessons::routes())
        .merge(devices::routes())
        .merge(language::routes())
        .merge(coach::routes())
        .fallback(trouble::nothing_here)
        .layer(axum::middleware::from_fn_with_state(
            room.clone(),
            guard::watch,
        ))
        .with_state(room)
}

/// The room's side of the trait. Nothing has to be sent anywhere: a post is in the room as soon as the
/// desk has it open, so the pages are told once the desk has written it down.
struct RoomChat(Shared);

#[async_trait]
impl Chat for RoomChat {
    fn key(&self) -> ChatKey {
        KEY
    }

    async fn carry(&self, errand: &Errand) -> Result<Delivered, ChatError> {
        let message = match &errand.kind {
            ErrandKind::Post { sheet, .. } => Some(format!("post-{}", sheet.post)),
            ErrandKind::Reveal { sheet, .. } => Some(format!("reveal-{}", sheet.post.post)),
            // Kept before the desk takes it for told.
            ErrandKind::TellCoach(notice) => {
                let bench = &self.0.bench;
                let kept = bench.keep(&self.0, notice, errand.earlier.as_ref());
                kept.await.map_err(|error| ChatError::of_desk(&error))?;
                None
            }
            ErrandKind::TellMember { .. }
            | ErrandKind::AnswerMember(_)
            | ErrandKind::AskLeave(_)
            | ErrandKind::Example(_) => None,
        };
        Ok(Delivered {
            message,
            thread: None,
        })
    }

    async fn settled(&self, errand: &Errand) {
        match &errand.kind {
            ErrandKind::Post { .. } | ErrandKind::Reveal { .. } => self.0.tell_posts().await,
            ErrandKind::TellCoach(notice) => {
                self.0.bench.show(&self.0, notice);
            }
            ErrandKind::AnswerMember(told) => {
                self.0.feed.member(&told.user, "words", &told.row);
            }
            // Says only that there is something; the page fetches it.
            ErrandKind::AskLeave(asked) => self.0.feed.member(&asked.user, "leave", &()),
            ErrandKind::Example(_) => self.0.feed.everyone("renewed", &()),
            ErrandKind::TellMember { user, text, sheet } => {
                self.0
                    .feed
                    .member(user, "verdict", &paper::Judged::of(sheet, text));
            }
        }
    }
}
