//! What a member asks for: a name, the talk, posts and reveals, an answer, hints, the leaderboard, and
//! what is kept of them.

use axum::{
    Json, Router,
    extract::{DefaultBodyLimit, Path, Query, State, rejection::JsonRejection},
    http::header,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{
    Room, Shared, door,
    door::{Guest, Member},
    feed,
    paper::{self, Judged, Said, media_type},
    trouble::Trouble,
};
use crate::desk::{
    Heard, Leaderboard, Mode, Person, Picture, PostRow, Progress, TalkRow, VerdictSheet,
};

/// Longest text of a reply, in characters.
pub(super) const LONGEST_REPLY: usize = 50_000;
/// Bytes of a request with text: every character of the longest one in four bytes, escaped or not.
const BODY: usize = LONGEST_REPLY * 12 + 4_096;
/// Replies of a member that are shown with their picture when a page is loaded again.
const PICTURED: usize = 3;
/// Lines of talk on a page.
const PAGE: usize = 200;

type Told<T> = Result<Json<T>, Trouble>;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/me", get(me))
        .route("/api/enter", post(enter))
        .route("/api/talk", get(talk))
        .route("/api/say", post(say))
        .route("/api/posts", get(posts))
        .route("/api/posts/{post}", get(one_post))
        .route("/api/posts/{post}/{file}", get(post_picture))
        .route("/api/posts/{post}/reveal", get(reveal))
        .route("/api/posts/{post}/answer", post(answer))
        .route("/api/posts/{post}/hint", post(hint))
        .route("/api/posts/{post}/give-up", post(give_up))
        .route("/api/posts/{post}/mine", get(mine))
        .route("/api/posts/{post}/answers", get(answers))
        .route("/api/posts/{post}/own", get(own))
        .route("/api/posts/{post}/board", get(board))
        .route("/api/progress", get(progress))
        .route("/api/scale", get(scale))
        .route("/api/topics", get(topics))
        .route("/api/leaderboard", get(leaderboard))
        .route("/api/kept", get(kept))
        .route("/api/erase", post(erase))
        .layer(DefaultBodyLimit::max(BODY))
}

/// Where a visitor stands.
#[derive(Serialize)]
struct Me {
    group: String,
    name: Option<String>,
    coach: bool,
    mode: Mode,
    zone: String,
    now: DateTime<Utc>,
}

async fn me(State(room): State<Shared>, Guest(visitor): Guest) -> Told<Me> {
    let settings = room.desk.settings(&room.place).await?;
    let name = match &visitor.user {
        Some(user) => room.desk.name_of(&room.place, user).await?,
        None => None,
    };
    Ok(Json(Me {
        group: settings.name,
        name,
        coach: visitor.coach,
        mode: settings.mode,
        zone: settings.zone.name().to_owned(),
        now: room.desk.now(),
    }))
}

#[derive(Deserialize)]
struct Name {
    name: String,
}

#[derive(Serialize)]
struct Named {
    name: String,
}

async fn enter(
    State(room): State<Shared>,
    Guest(visitor): Guest,
    body: Result<Json<Name>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Json(Name { name }) = body?;
    if name.chars().all(|c| c.is_whitespace() || c.is_control()) {
        return Err(Trouble::bad(
            "Write the name the group should see, such as your first name.",
        ));
    }
    let (user, cookie) = match visitor.user {
        Some(user) => (user, None),
        None => {
            let token = door::token()?;
            (door::user_of(&token), room.door.cookie("me", &token))
        }
    };
    let person = Person { user, name };
    room.desk.enter(&room.place, &person).await?;
    let name = room
        .desk
        .name_of(&room.place, &person.user)
        .await?
        .unwrap_or(person.name);
    let mut response = Json(Named { name }).into_response();
    if let Some(cookie) = cookie {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    Ok(response)
}

#[derive(Deserialize)]
struct Before {
    before: Option<i64>,
}

/// The last lines of talk, or those before a line.
async fn talk(
    State(room): State<Shared>,
    Guest(_): Guest,
    Query(query): Query<Before>,
) -> Told<Vec<TalkRow>> {
    Ok(Json(
        room.desk
            .talk_before(&room.place, query.before, PAGE)
            .await?,
    ))
}

/// What came of a message: a verdict, or a line of talk that everyone sees.
#[derive(Serialize)]
#[serde(tag = "was", rename_all = "lowercase")]
enum Outcome {
    Answer(Box<Judged>),
    Talk { id: i64 },
}

async fn say(
    State(room): State<Shared>,
    Member(person): Member,
    body: Result<Json<Said>, JsonRejection>,
) -> Told<Outcome> {
    let Json(said) = body?;
    let text = bounded(&said.text)?;
    let heard = room
        .desk
        .hear(&room.place, &person, &source(&person, &said.source)?, text)
        .await?;
    match heard {
        Heard::Answer(sheet) | Heard::Again(sheet) => {
            let judged = room.show_verdict(&person, &sheet, text).await;
            Ok(Json(Outcome::Answer(Box::new(judged))))
        }
        Heard::Talk => Ok(Json(Outcome::Talk {
            id: room.speak(&person, text).await?,
        })),
    }
}

impl Room {
    /// Keeps a line of talk and shows it to everyone.
    pub(super) async fn speak(&self, person: &Person, text: &str) -> Result<i64, Trouble> {
        let id = self.desk.say(&self.place, person, text).await?;
        // Read back, so that everyone sees the line as it is kept.
        for line in self.desk.talk(&self.place, id - 1, 1).await? {
            self.feed.talk(line.id, &line);
        }
        Ok(id)
    }
}

async fn posts(State(room): State<Shared>, Guest(_): Guest) -> Told<Vec<PostRow>> {
    Ok(Json(room.desk.posts(&room.place, feed::POSTS).await?))
}

async fn one_post(
    State(room): State<Shared>,
    Guest(_): Guest,
    Path(post): Path<i64>,
) -> Told<paper::Post> {
    Ok(Json(paper::Post::of(
        &room.desk.post(&room.place, post).await?,
    )))
}

/// The picture of a post or of its reveal. File names are neutral, and the desk gives out the reveal
/// of a closed post only.
async fn post_picture(
    State(room): State<Shared>,
    Guest(_): Guest,
    Path((post, file)): Path<(i64, String)>,
) -> Result<Response, Trouble> {
    let picture = if file.starts_with("position-") {
        room.desk.post(&room.place, post).await?.picture
    } else if file.starts_with("solution-") {
        room.desk.reveal(&room.place, post).await?.picture
    } else {
        return Err(super::trouble::nothing_here().await);
    };
    Ok(picture_response(picture))
}

/// A picture that a browser may keep for an hour.
pub(super) fn picture_response(picture: Picture) -> Response {
    (
        [
            (header::CONTENT_TYPE, media_type(picture.kind)),
            (header::CACHE_CONTROL, "private, max-age=3600"),
        ],
        picture.bytes,
    )
        .into_response()
}

async fn reveal(
    State(room): State<Shared>,
    Guest(_): Guest,
    Path(post): Path<i64>,
) -> Told<paper::Reveal> {
    Ok(Json(paper::Reveal::of(
        room.desk.reveal(&room.place, post).await?,
    )))
}

async fn answer(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<i64>,
    body: Result<Json<Said>, JsonRejection>,
) -> Told<Judged> {
    let Json(said) = body?;
    let text = bounded(&said.text)?;
    let source = source(&person, &said.source)?;
    let sheet = room
        .desk
        .answer(&room.place, &person, post, &source, text)
        .await?;
    Ok(Json(room.show_verdict(&person, &sheet, text).await))
}

async fn hint(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<i64>,
) -> Told<paper::Hint> {
    let sheet = room.desk.hint(&room.place, &person, post).await?;
    Ok(Json(paper::Hint::of(post, sheet)))
}

#[derive(Serialize)]
struct Message {
    message: String,
}

async fn give_up(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<i64>,
) -> Told<Message> {
    let message = room.desk.give_up(&room.place, &person, post).await?;
    Ok(Json(Message { message }))
}

/// What has passed between a member and the bot over a post, for a page that is loaded again.
#[derive(Serialize)]
struct MyWork {
    replies: Vec<paper::Mine>,
    hints: Vec<paper::Hint>,
}

async fn mine(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<i64>,
) -> Told<MyWork> {
    let rows = room.desk.my_replies(&room.place, &person, post).await?;
    // Pictures are drawn for the last replies only; what was said of earlier ones stands in words.
    let plain = rows.len().saturating_sub(PICTURED);
    let mut replies = Vec::with_capacity(rows.len());
    for (at, row) in rows.into_iter().enumerate() {
        let sheet = if at >= plain && row.verdict.is_some() {
            Some(room.desk.verdict(&room.place, &person, row.reply).await?)
        } else {
            None
        };
        replies.push(paper::Mine::of(post, row, sheet));
    }
    let hints = room.desk.my_hints(&room.place, &person, post).await?;
    Ok(Json(MyWork {
        replies,
        hints: hints
            .into_iter()
            .map(|hint| paper::Hint::of(post, hint))
            .collect(),
    }))
}

/// Everyone's answers to a post, in a group that keeps them open; none in a sealed one.
async fn answers(
    State(room): State<Shared>,
    Guest(_): Guest,
    Path(post): Path<i64>,
) -> Told<Vec<paper::Answered>> {
    Ok(Json(room.open_answers(post).await?))
}

impl Room {
    async fn open_answers(&self, post: i64) -> Result<Vec<paper::Answered>, Trouble> {
        if self.desk.settings(&self.place).await?.mode == Mode::Sealed {
            return Ok(Vec::new());
        }
        let rows = self
            .desk
            .replies(&self.place, &super::coach(), post)
            .await?;
        Ok(rows
            .into_iter()
            .map(|row| paper::Answered::of(post, row))
            .collect())
    }

    /// Shows a verdict to its member's pages, and the answer to everyone's where answers are open.
    async fn show_verdict(&self, person: &Person, sheet: &VerdictSheet, text: &str) -> Judged {
        let judged = Judged::of(sheet, text);
        self.feed.member(&person.user, "verdict", &judged);
        match self.desk.settings(&self.place).await {
            Ok(settings) if settings.mode == Mode::Open => {
                // Says only that there is something; the pages fetch it.
                self.feed.everyone("answered", &sheet.post);
            }
            Ok(_) => {}
            Err(error) => tracing::error!("the group could not be told of an answer: {error}"),
        }
        judged
    }
}

/// Where the member stands at a post.
async fn own(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<i64>,
) -> Told<paper::Own> {
    let own = room.desk.own_post(&room.place, &person, post).await?;
    Ok(Json(paper::Own::of(own)))
}

/// The board as the member's own line stands.
async fn board(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<i64>,
) -> Told<paper::Shown> {
    let picture = room.desk.my_board(&room.place, &person, post).await?;
    Ok(Json(paper::Shown::inside(&picture)))
}

async fn progress(State(room): State<Shared>, Member(person): Member) -> Told<Progress> {
    Ok(Json(room.desk.progress(&room.place, &person).await?))
}

async fn scale(State(room): State<Shared>, Guest(_): Guest) -> Told<Vec<String>> {
    Ok(Json(room.desk.scale(&room.place).await?))
}

async fn topics(State(room): State<Shared>, Guest(_): Guest) -> Told<Vec<String>> {
    Ok(Json(room.desk.topics(&room.place).await?))
}

#[derive(Deserialize)]
struct Span {
    topic: Option<String>,
    /// In words, such as "last 10 days"; the usual one where nothing is said.
    period: Option<String>,
}

async fn leaderboard(
    State(room): State<Shared>,
    Guest(_): Guest,
    Query(span): Query<Span>,
) -> Told<Leaderboard> {
    let topic = span.topic.filter(|topic| !topic.is_empty());
    let words = span.period.filter(|words| !words.is_empty());
    let period = room
        .desk
        .period(&room.place, words.as_deref(), topic)
        .await?;
    Ok(Json(room.desk.leaderboard(&room.place, &period).await?))
}

async fn kept(State(room): State<Shared>, Member(person): Member) -> Result<Response, Trouble> {
    let kept = room.desk.kept_of_me(&room.place, &person).await?;
    let name = "attachment; filename=\"kept-of-me.json\"";
    Ok(([(header::CONTENT_DISPOSITION, name)], Json(kept)).into_response())
}

async fn erase(State(room): State<Shared>, Member(person): Member) -> Result<Response, Trouble> {
    room.desk.erase_me(&room.place, &person).await?;
    // Their lines of talk are gone: every page fetches the talk anew.
    room.feed.everyone("renewed", &());
    let mut response = Json(Message {
        message: "Everything that was kept of you is erased.".into(),
    })
    .into_response();
    if let Some(cookie) = room.door.cookie("me", "") {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    Ok(response)
}

/// The text of a message, not empty and not too long.
pub(super) fn bounded(text: &str) -> Result<&str, Trouble> {
    if text.trim().is_empty() {
        return Err(Trouble::bad("There is nothing in the message yet."));
    }
    if text.chars().count() > LONGEST_REPLY {
        return Err(Trouble::too_large("The message", "50,000 characters"));
    }
    Ok(text)
}

/// The desk's id of what was sent: the page's own mark, told apart by member.
fn source(person: &Person, mark: &str) -> Result<String, Trouble> {
    let mark = if mark.is_empty() {
        door::token()?
    } else {
        mark.chars()
            .filter(char::is_ascii_alphanumeric)
            .take(64)
            .collect()
    };
    Ok(format!("room:{}:{mark}", person.user))
}
