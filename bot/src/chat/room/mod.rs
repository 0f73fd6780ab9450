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
//! | `paper` | the JSON shapes |
//! | `member` | what a member asks for |
//! | `coach` | what the coach asks for |
//! | `pages` | the pages and their parts |

mod coach;
mod devices;
mod door;
mod feed;
mod guard;
mod member;
mod pace;
mod pages;
mod paper;
mod trouble;

use std::{
    net::{IpAddr, Ipv4Addr, SocketAddr},
    sync::Arc,
};

use async_trait::async_trait;
use axum::Router;
use tokio::{net::TcpListener, task::JoinHandle};

use self::{door::Door, feed::Feed};
use super::{Chat, ChatError, Shutdown};
use crate::desk::{
    ChatName, Delivered, Desk, DeskError, Errand, ErrandKind, Person, Place, Settings,
};

/// Where the room listens when nothing else is said.
pub const ADDRESS: SocketAddr = SocketAddr::new(IpAddr::V4(Ipv4Addr::LOCALHOST), 7316);

/// The room's one group.
pub fn place() -> Place {
    Place {
        chat: ChatName::Room,
        channel: "club".into(),
    }
}

/// The coach that the room's group is founded with. The first who comes by the coach's link and gives a
/// name takes over from this one.
pub fn coach() -> Person {
    Person {
        user: "coach".into(),
        name: "Coach".into(),
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
    #[error("the room cannot listen on {address}: {source}. Choose another address or port.")]
    Listen {
        /// What was asked for.
        address: SocketAddr,
        /// What the system says.
        source: std::io::Error,
    },
    /// The public address is no web address.
    #[error(
        "\"{0}\" is not a web address; write it like https://chess.example.org, without a path"
    )]
    PublicUrl(String),
    /// The machine gives no random numbers.
    #[error("the machine gives no random numbers, so no secret links can be made: {0}")]
    Random(String),
    /// The desk could not.
    #[error(transparent)]
    Desk(#[from] DeskError),
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
    shutdown: Shutdown,
}

type Shared = Arc<Room>;

/// An open room.
pub struct RoomHandle {
    room: Shared,
    address: SocketAddr,
    server: JoinHandle<()>,
}

impl Room {
    /// Opens the room: founds its group when there is none, and begins to serve.
    ///
    /// # Errors
    /// When no socket can be had, or the desk cannot read or write its store.
    pub async fn start(
        desk: Desk,
        options: RoomOptions,
        shutdown: Shutdown,
    ) -> Result<RoomHandle, RoomError> {
        let place = place();
        if !desk.places(ChatName::Room).await?.contains(&place) {
            desk.found_group(&place, None, options.group.clone(), &coach())
                .await?;
        }
        let listener = listen(options.address).await?;
        let address = listener.local_addr().map_err(|source| RoomError::Listen {
            address: options.address,
            source,
        })?;
        let door = Door::hang(&desk, address, options.public_url.as_deref()).await?;
        let bench = coach::Bench::set_up(&desk).await?;
        let room = Arc::new(Self {
            desk,
            place,
            door,
            feed: Feed::new(),
            bench,
            pace: pace::Pace::default(),
            codes: devices::Codes::default(),
            shutdown: shutdown.clone(),
        });
        let app = router(room.clone());
        let mut stop = shutdown;
        let server = tokio::spawn(async move {
            let served = axum::serve(listener, app)
                .with_graceful_shutdown(async move { stop.wait().await })
                .await;
            if let Err(error) = served {
                tracing::error!("the room's server ended: {error}");
            }
        });
        Ok(RoomHandle {
            room,
            address,
            server,
        })
    }
}

impl RoomHandle {
    /// Where the room listens.
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// The link for members. Whoever has it may come in.
    pub fn member_link(&self) -> String {
        self.room.door.member_link()
    }

    /// The coach's link. Whoever has it may do everything.
    pub fn coach_link(&self) -> String {
        self.room.door.coach_link()
    }

    /// The room as a chat, for [`super::run`].
    pub fn chat(&self) -> Arc<dyn Chat> {
        Arc::new(RoomChat(self.room.clone()))
    }

    /// Ends once the server has stopped.
    pub async fn closed(self) {
        // The only error is a panic in the server's task, which the runtime has printed already.
        let _ = self.server.await;
    }
}

/// The address asked for, or the same with a free port when its port is taken.
async fn listen(address: SocketAddr) -> Result<TcpListener, RoomError> {
    let fail = |source| RoomError::Listen { address, source };
    match TcpListener::bind(address).await {
        Err(error) if error.kind() == std::io::ErrorKind::AddrInUse && address.port() != 0 => {
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
        .merge(devices::routes())
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
    fn name(&self) -> ChatName {
        ChatName::Room
    }

    async fn carry(&self, errand: &Errand) -> Result<Delivered, ChatError> {
        let message = match &errand.kind {
            ErrandKind::Post { sheet, .. } => Some(format!("post-{}", sheet.post)),
            ErrandKind::Reveal { sheet, .. } => Some(format!("reveal-{}", sheet.post.post)),
            ErrandKind::TellCoach(_)
            | ErrandKind::TellMember { .. }
            | ErrandKind::AnswerMember(_) => None,
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
                self.0.bench.note(&self.0, &notice.text).await;
            }
            ErrandKind::AnswerMember(told) => {
                self.0.feed.member(&told.user, "words", &told.row);
            }
            ErrandKind::TellMember { user, text, sheet } => {
                self.0
                    .feed
                    .member(user, "verdict", &paper::Judged::of(sheet, text));
            }
        }
    }
}
