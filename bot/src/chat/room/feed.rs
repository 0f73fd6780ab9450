//! The live feed: server-sent events that say what is new.
//!
//! Nothing is kept here. A page that connects (again) is first given the posts as they stand and the
//! talk after the last line it saw (`Last-Event-ID`), then what happens from there on. The names of
//! the events: `posts`, `talk`, `gone` (messages out of sight), `verdict`, `words` (a coach's private
//! answer), `renewed` (fetch the talk anew), `standing` (the member's own standing has changed),
//! `notice`, `checking`, `week`, `drafts`, `chats`, and `shut-out`, the last one a page gets: a new link or a coach
//! has shut it out. An event goes to everyone, to one member's pages, or to the coaches'.

use std::{collections::VecDeque, convert::Infallible, sync::Arc, time::Duration};

use axum::{
    Router,
    extract::{Query, State},
    http::HeaderMap,
    response::sse::{Event, KeepAlive, Sse},
    routing::get,
};
use futures::{Stream, stream};
use serde::{Deserialize, Serialize};
use tokio::sync::broadcast::{self, error::RecvError};

use super::{
    Room, Shared,
    door::Guest,
    trouble::{ShutOut, Trouble},
};
use crate::desk::{DeskError, ReplyId};

/// Events a slow page may lag behind before it has to connect anew.
const LAG: usize = 256;
/// Lines of talk given at once to a page that catches up.
const CATCH_UP: usize = 500;
/// Posts a page is told of.
pub(super) const POSTS: usize = 400;

/// The last event that a page gets.
const SHUT_OUT: &str = "shut-out";

#[derive(Serialize)]
struct Why {
    why: ShutOut,
}

/// Whom an event is for.
#[derive(Clone, Debug, PartialEq, Eq)]
enum To {
    Everyone,
    Member(String),
    Coaches,
}

/// Messages that went out of sight.
#[derive(Debug, Default, Serialize)]
pub(super) struct Gone {
    /// Lines of talk.
    pub(super) talk: Vec<i64>,
    /// Answers, in a group that keeps them open.
    pub(super) replies: Vec<ReplyId>,
}

/// Something new.
#[derive(Clone, Debug)]
struct News {
    to: To,
    event: &'static str,
    id: Option<i64>,
    data: Arc<str>,
}

/// The feed.
pub(super) struct Feed(broadcast::Sender<News>);

impl Feed {
    pub(super) fn new() -> Self {
        Self(broadcast::Sender::new(LAG))
    }

    fn send(&self, to: To, event: &'static str, id: Option<i64>, data: &impl Serialize) {
        match serde_json::to_string(data) {
            // An error means only that nobody is connected.
            Ok(json) => drop(self.0.send(News {
                to,
                event,
                id,
                data: json.into(),
            })),
            Err(error) => tracing::error!("the event {event} could not be written: {error}"),
        }
    }

    /// Tells everyone.
    pub(super) fn everyone(&self, event: &'static str, data: &impl Serialize) {
        self.send(To::Everyone, event, None, data);
    }

    /// Tells everyone of the line of talk with this id.
    pub(super) fn talk(&self, id: i64, line: &impl Serialize) {
        self.send(To::Everyone, "talk", Some(id), line);
    }

    /// Tells one member's pages.
    pub(super) fn member(&self, user: &str, event: &'static str, data: &impl Serialize) {
        self.send(To::Member(user.to_owned()), event, None, data);
    }

    /// Tells one member's pages that they are shut out, and why; their connections end with it.
    pub(super) fn shut_out(&self, user: &str, why: ShutOut) {
        self.member(user, SHUT_OUT, &Why { why });
    }

    /// Tells the coach's pages.
    pub(super) fn coaches(&self, event: &'static str, data: &impl Serialize) {
        self.send(To::Coaches, event, None, data);
    }
}

impl Room {
    /// Tells every page how the posts stand.
    pub(super) async fn tell_posts(&self) {
        match self.desk.posts(&self.place, POSTS).await {
            Ok(rows) => {
                self.feed.everyone("posts", &rows);
                self.feed.coaches("week", &());
            }
            Err(error) => tracing::error!("the pages could not be told of a post: {error}"),
        }
    }
}

impl Room {
    /// Tells the coach's pages how the chats fare, whenever that changes.
    pub(super) async fn tell_of_statuses(&self) -> Infallible {
        let mut changes = self.statuses.changes();
        while changes.changed().await.is_ok() {
            self.feed.coaches("chats", &());
        }
        std::future::pending().await
    }
}

pub(super) fn routes() -> Router<Shared> {
    Router::new().route("/api/feed", get(follow))
}

#[derive(Deserialize)]
struct Since {
    /// The last line of talk seen, where the browser sends no `Last-Event-ID` (on its first connection).
    after: Option<i64>,
    /// Which page it is that follows.
    #[serde(default)]
    page: Page,
}

/// A page of the room.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Page {
    #[default]
    Member,
    Coach,
}

async fn follow(
    State(room): State<Shared>,
    Guest {
        visitor, member, ..
    }: Guest,
    Query(since): Query<Since>,
    headers: HeaderMap,
) -> Result<Sse<impl Stream<Item = Result<Event, Infallible>>>, Trouble> {
    let seen = headers
        .get("last-event-id")
        .and_then(|id| id.to_str().ok())
        .and_then(|id| id.parse().ok())
        .or(since.after);
    // Listening comes before catching up: what happens in between is told twice rather than not at all.
    let live = room.feed.0.subscribe();
    let waiting = catch_up(&room, seen).await?;
    let follower = Follower {
        waiting,
        live,
        headers,
        room,
        user: member.map(|member| member.person.user),
        came_as_coach: visitor.coach && since.page == Page::Coach,
        over: false,
    };
    let events = stream::unfold(follower, |mut follower| async move {
        follower.next().await.map(|event| (Ok(event), follower))
    });
    Ok(Sse::new(events).keep_alive(KeepAlive::new().interval(Duration::from_secs(20))))
}

async fn catch_up(room: &Room, seen: Option<i64>) -> Result<VecDeque<Event>, DeskError> {
    let posts = room.desk.posts(&room.place, POSTS).await?;
    let mut waiting = VecDeque::from([event("posts", None, &json(&posts))]);
    let Some(mut after) = seen else {
        return Ok(waiting);
    };
    // The page may show still what went out of sight while it was away.
    let gone = Gone {
        talk: room.desk.gone_lines(&room.place, after).await?,
        replies: Vec::new(),
    };
    waiting.push_back(event("gone", None, &json(&gone)));
    loop {
        let lines = room.desk.talk(&room.place, after, CATCH_UP).await?;
        for line in &lines {
            waiting.push_back(event("talk", Some(line.id), &json(line)));
            after = line.id;
        }
        if lines.len() < CATCH_UP {
            return Ok(waiting);
        }
    }
}

/// One connected page.
struct Follower {
    waiting: VecDeque<Event>,
    live: broadcast::Receiver<News>,
    headers: HeaderMap,
    room: Shared,
    /// The member whose page it is: the same for all their devices.
    user: Option<String>,
    /// Whether it is a coach's page.
    came_as_coach: bool,
    /// Whether it was told that it is shut out.
    over: bool,
}

impl Follower {
    /// The next event for this page; `None` ends the connection, and the page connects anew.
    async fn next(&mut self) -> Option<Event> {
        if let Some(event) = self.waiting.pop_front() {
            return Some(event);
        }
        if self.over {
            return None;
        }
        let mut shutdown = self.room.shutdown.clone();
        loop {
            let news = tokio::select! {
                () = shutdown.wait() => return None,
                news = self.live.recv() => news,
            };
            if let Some(why) = self.shut_out() {
                self.over = true;
                return Some(event(SHUT_OUT, None, &json(&Why { why })));
            }
            match news {
                Ok(news) if self.concerned(&news.to) => {
                    self.over = news.event == SHUT_OUT;
                    return Some(event(news.event, news.id, &news.data));
                }
                Ok(_) => {}
                // Too far behind: connecting anew catches up from the desk.
                Err(RecvError::Lagged(_) | RecvError::Closed) => return None,
            }
        }
    }

    /// Whether this page's link holds no longer. Looked up anew each time, so that a changed link shuts
    /// out pages that are open, too.
    fn shut_out(&self) -> Option<ShutOut> {
        let visitor = self.room.door.visitor(&self.headers);
        if self.came_as_coach && !visitor.coach {
            return Some(ShutOut::CoachLink);
        }
        (!visitor.invited).then_some(ShutOut::Link)
    }

    fn concerned(&self, to: &To) -> bool {
        match to {
            To::Everyone => true,
            To::Member(user) => self.user.as_ref() == Some(user),
            To::Coaches => self.room.door.visitor(&self.headers).coach,
        }
    }
}

fn json(data: &impl Serialize) -> String {
    serde_json::to_string(data).unwrap_or_else(|error| {
        tracing::error!("an event could not be written: {error}");
        "null".into()
    })
}

fn event(name: &str, id: Option<i64>, data: &str) -> Event {
    let event = Event::default().event(name).data(data);
    match id {
        Some(id) => event.id(id.to_string()),
        None => event,
    }
}
