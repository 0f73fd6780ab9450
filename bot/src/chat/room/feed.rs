//! The live feed: server-sent events that say what is new.
//!
//! Nothing is kept here. A page that connects (again) is first given the posts as they stand and the
//! talk after the last line it saw (`Last-Event-ID`), then what happens from there on. The names of
//! the events: `posts`, `talk`, `verdict`, `renewed` (fetch the talk anew), `notice`, `checking`,
//! `week`. An event goes to everyone, to one member's pages, or to the coach's.

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

use super::{Room, Shared, door::Guest, trouble::Trouble};
use crate::desk::DeskError;

/// Events a slow page may lag behind before it has to connect anew.
const LAG: usize = 256;
/// Lines of talk given at once to a page that catches up.
const CATCH_UP: usize = 500;
/// Posts a page is told of.
pub(super) const POSTS: usize = 400;

/// Whom an event is for.
#[derive(Clone, Debug, PartialEq, Eq)]
enum To {
    Everyone,
    Member(String),
    Coaches,
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

pub(super) fn routes() -> Router<Shared> {
    Router::new().route("/api/feed", get(follow))
}

#[derive(Deserialize)]
struct Since {
    /// The last line of talk seen, where the browser sends no `Last-Event-ID` (on its first connection).
    after: Option<i64>,
}

async fn follow(
    State(room): State<Shared>,
    Guest(_): Guest,
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
}

impl Follower {
    /// The next event for this page; `None` ends the connection, and the page connects anew.
    async fn next(&mut self) -> Option<Event> {
        if let Some(event) = self.waiting.pop_front() {
            return Some(event);
        }
        let mut shutdown = self.room.shutdown.clone();
        loop {
            let news = tokio::select! {
                () = shutdown.wait() => return None,
                news = self.live.recv() => news,
            };
            match news {
                Ok(news) if self.concerned(&news.to) => {
                    return Some(event(news.event, news.id, &news.data));
                }
                Ok(_) => {}
                // Too far behind: connecting anew catches up from the desk.
                Err(RecvError::Lagged(_) | RecvError::Closed) => return None,
            }
        }
    }

    /// Looked up anew each time, so that a changed link shuts out pages that are open, too.
    fn concerned(&self, to: &To) -> bool {
        let visitor = self.room.door.visitor(&self.headers);
        visitor.invited
            && match to {
                To::Everyone => true,
                To::Member(user) => visitor.user.as_ref() == Some(user),
                To::Coaches => visitor.coach,
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
