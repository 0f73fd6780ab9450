//! What a member asks for: a name, the talk, posts and reveals, an answer, hints, the leaderboard, and
//! what is kept of them.

use axum::{
    Json, Router,
    extract::{DefaultBodyLimit, Path, Query, State, rejection::JsonRejection},
    http::{HeaderMap, header},
    response::{IntoResponse, Response},
    routing::{get, post},
};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{
    Room, Shared, door,
    door::{Guest, Member},
    feed::{self, Gone},
    language::{Spoken, spoken},
    paper::{self, Judged, Said, To, media_type},
    text::Text,
    trouble::{Told, Trouble},
};
use crate::chat::{
    common::{
        answer::{self, Asked},
        public,
        text::points_rules,
    },
    said::explained,
};
use crate::desk::{
    AskedBack, Came, LONGEST_LINE, LanguageTag, Leaderboard, Leave, MemberId, MemberIs, Mode,
    OwnExample, Person, Picture, PostId, PostRow, Progress, Rank, ReplyId, Shown, Taken, TalkRow,
    VerdictSheet, WordsRow,
};

/// Longest text of a reply, in characters.
pub(super) const LONGEST_REPLY: usize = 50_000;
/// Bytes of a request with text: every character of the longest one in four bytes, escaped or not.
const BODY: usize = LONGEST_REPLY * 12 + 4_096;
/// Replies of a member that are shown with their picture when a page is loaded again.
const PICTURED: usize = 3;
/// Lines of talk on a page.
const PAGE: usize = 200;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/me", get(me))
        .route("/api/enter", post(enter))
        .route("/api/talk", get(talk))
        .route("/api/talk/{line}/take-back", post(take_back))
        .route("/api/talk/{line}/board", post(talked_of))
        .route("/api/answers/{reply}/take-back", post(take_back_answer))
        .route("/api/words", get(words))
        .route("/api/say", post(say))
        .route("/api/posts", get(posts))
        .route("/api/posts/{post}", get(one_post))
        .route("/api/posts/{post}/{file}", get(post_picture))
        .route("/api/posts/{post}/reveal", get(reveal))
        .route("/api/posts/{post}/answer", post(answer_to))
        .route("/api/readings/{reply}", post(mean))
        .route("/api/posts/{post}/hint", post(hint))
        .route("/api/posts/{post}/give-up", post(give_up))
        .route("/api/posts/{post}/mine", get(mine))
        .route("/api/posts/{post}/answers", get(answers))
        .route("/api/posts/{post}/own", get(own))
        .route("/api/posts/{post}/board", get(board))
        .route("/api/homework", get(homework))
        .route("/api/answers/{reply}/leave", post(leave))
        .route("/api/progress", get(progress))
        .route("/api/scale", get(points))
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
    /// The member's id in the group.
    id: Option<MemberId>,
    /// Whether they came by the coach's link.
    coach: bool,
    rank: Rank,
    /// Why they may not talk at the moment, in words for them.
    muted: Option<String>,
    mode: Mode,
    zone: String,
    now: DateTime<Utc>,
    /// The tag of the language that they are spoken to in.
    speaks: &'static str,
    /// The one they chose, if they chose one.
    language: Option<LanguageTag>,
    /// What there is to choose from.
    languages: Vec<Spoken>,
}

async fn me(
    State(room): State<Shared>,
    Guest {
        visitor, member, ..
    }: Guest,
    headers: HeaderMap,
) -> Told<Me> {
    let settings = room.desk.settings(&room.place).await?;
    let language = match &member {
        Some(MemberIs { person, .. }) => room.desk.chosen_language(&room.place, person).await?,
        None => None,
    };
    let words = room.words(&headers).await;
    Ok(Json(Me {
        group: settings.name,
        id: member.as_ref().map(|member| member.id),
        rank: member
            .as_ref()
            .map(|member| member.rank)
            .unwrap_or_default(),
        muted: member
            .as_ref()
            .and_then(|member| Some(words.say(member.muted.as_ref()?))),
        name: member.map(|member| member.person.name),
        coach: visitor.coach,
        mode: settings.mode,
        zone: settings.zone.name().to_owned(),
        now: room.desk.now(),
        speaks: words.tag(),
        language,
        languages: spoken(),
    }))
}

/// The name that somebody asks for.
#[derive(Deserialize)]
pub(super) struct Name {
    name: String,
}

/// The name that they have.
#[derive(Serialize)]
pub(super) struct Named {
    name: String,
}

/// Which door a name is given at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum As {
    /// The members'.
    Member,
    /// The coach's.
    Coach,
}

async fn enter(
    State(room): State<Shared>,
    guest: Guest,
    body: Result<Json<Name>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Json(name) = body?;
    named(&room, guest, name, As::Member).await
}

/// Gives a visitor a name in the group, and their browser its token where it has none.
pub(super) async fn named(
    room: &Shared,
    guest: Guest,
    Name { name }: Name,
    which: As,
) -> Result<Response, Trouble> {
    if name.chars().all(|c| c.is_whitespace() || c.is_control()) {
        return Err(Trouble::bad(Text::NameEmpty));
    }
    let user = match (&guest.member, &guest.visitor.user) {
        (Some(member), _) => Some(&member.person.user),
        (None, user) => user.as_ref(),
    };
    let known = match user {
        Some(user) => room.desk.name_of(&room.place, user).await?,
        None => None,
    };
    if known.as_deref() != Some(name.as_str())
        && room
            .desk
            .member()
            .name_tells_a_move(&room.place, &name)
            .await?
    {
        return Err(Trouble::bad(Text::NameTellsMove));
    }
    let (user, cookie) = match (guest.member, guest.visitor.user) {
        (Some(member), _) => (member.person.user, None),
        (None, Some(user)) => (user, None),
        (None, None) => {
            let token = door::token()?;
            (door::user_of(&token), room.door.cookie("me", &token))
        }
    };
    let person = Person {
        user,
        name,
        language: guest.language,
    };
    let before = room.desk.name_of(&room.place, &person.user).await?;
    match which {
        As::Member => room.desk.member().enter(&room.place, &person).await?,
        As::Coach => {
            room.desk
                .coach()
                .enter_as_coach(&room.place, &person)
                .await?
        }
    }
    let name = room
        .desk
        .name_of(&room.place, &person.user)
        .await?
        .unwrap_or(person.name);
    if before.is_some_and(|before| before != name) || which == As::Coach {
        // What was said before stands under the name of today, with the rank of today.
        room.feed.everyone("renewed", &());
    }
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
    Guest { .. }: Guest,
    Query(query): Query<Before>,
) -> Told<Vec<TalkRow>> {
    Ok(Json(
        room.desk
            .talk_before(&room.place, query.before, PAGE)
            .await?,
    ))
}

/// What came of a message.
#[derive(Serialize)]
#[serde(tag = "was", rename_all = "lowercase")]
enum Outcome {
    /// A verdict.
    Answer(Box<Judged>),
    /// A line of talk that everyone sees.
    Talk { id: i64 },
    /// Nothing yet: it stays with its writer, who says what it is to be.
    Held(AskedBack),
}

/// Takes back one's own line of talk.
async fn take_back(
    State(room): State<Shared>,
    Member(person): Member,
    Path(line): Path<i64>,
) -> Told<()> {
    room.desk
        .member()
        .take_back(&room.place, &person, line)
        .await?;
    room.tell_gone(Gone {
        talk: vec![line],
        replies: Vec::new(),
    });
    Ok(Json(()))
}

/// Which post a line of talk is about, where its reader says.
#[derive(Deserialize)]
struct About {
    post: Option<PostId>,
}

/// The moves of a line of talk on a small board.
#[derive(Serialize)]
struct OnBoard {
    post: PostId,
    number: i64,
    before: String,
    line: String,
    picture: paper::Shown,
}

async fn talked_of(
    State(room): State<Shared>,
    Member(person): Member,
    Path(line): Path<i64>,
    body: Result<Json<About>, JsonRejection>,
) -> Told<OnBoard> {
    let Json(About { post }) = body?;
    let words = room.words_for(&person).await;
    let board = room
        .desk
        .member()
        .board_of_talk(&room.place, &person, line, post, words.tag())
        .await?;
    Ok(Json(OnBoard {
        post: board.post,
        number: board.number,
        before: board.before,
        line: board.line,
        picture: paper::Shown::inside(&board.picture, words),
    }))
}

/// Takes the words of one's own answer out of the group's sight, where answers are open.
async fn take_back_answer(
    State(room): State<Shared>,
    Member(person): Member,
    Path(reply): Path<ReplyId>,
) -> Told<()> {
    room.desk.hide_answer(&room.place, &person, reply).await?;
    room.tell_gone(Gone {
        talk: Vec::new(),
        replies: vec![reply],
    });
    Ok(Json(()))
}

/// The coaches' private answers to the reader.
async fn words(State(room): State<Shared>, Member(person): Member) -> Told<Vec<WordsRow>> {
    Ok(Json(
        room.desk.member().my_words(&room.place, &person).await?,
    ))
}

impl Room {
    /// Tells every page that messages went out of sight.
    pub(super) fn tell_gone(&self, gone: Gone) {
        self.feed.everyone("gone", &gone);
    }
}

async fn say(
    State(room): State<Shared>,
    Member(person): Member,
    body: Result<Json<Said>, JsonRejection>,
) -> Told<Outcome> {
    let Json(said) = body?;
    let text = bounded(&said.text)?;
    if said.to == Some(To::All) {
        // Its writer's own word, after the question.
        let id = room.speak(&person, text).await?;
        return Ok(Json(Outcome::Talk { id }));
    }
    let source = source(&person, &said.source)?;
    let came = room
        .desk
        .member()
        .take(&room.place, &person, said.post, &source, text)
        .await?;
    Ok(Json(match came {
        Came::Answer(sheet) | Came::Again(sheet) => room.judged(&person, &sheet, text).await,
        // No line of talk is that long, which is said at once rather than after the question.
        Came::AskedBack(asked) if text.chars().nth(LONGEST_LINE).is_none() => Outcome::Held(asked),
        Came::AskedBack(_) | Came::Talk => Outcome::Talk {
            id: room.speak(&person, text).await?,
        },
    }))
}

impl Room {
    /// Keeps a line of talk and shows it to everyone.
    pub(super) async fn speak(&self, person: &Person, text: &str) -> Result<i64, Trouble> {
        let id = self.desk.member().say(&self.place, person, text).await?;
        // Read back, so that everyone sees the line as it is kept.
        for line in self.desk.talk(&self.place, id - 1, 1).await? {
            self.feed.talk(line.id, &line);
        }
        Ok(id)
    }
}

async fn posts(State(room): State<Shared>, Guest { .. }: Guest) -> Told<Vec<PostRow>> {
    Ok(Json(room.desk.posts(&room.place, feed::POSTS).await?))
}

async fn one_post(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    Path(post): Path<PostId>,
    headers: HeaderMap,
) -> Told<paper::Post> {
    let sheet = room.desk.post(&room.place, post).await?;
    Ok(Json(paper::Post::of(&sheet, room.words(&headers).await)))
}

/// The picture of a post or of its reveal. File names are neutral, and the desk gives out the reveal
/// of a closed post only.
async fn post_picture(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    Path((post, file)): Path<(PostId, String)>,
) -> Result<Response, Trouble> {
    let picture = if file.starts_with("position-") {
        let sheet = room.desk.post(&room.place, post).await?;
        sheet.content.picture().cloned()
    } else if file.starts_with("solution-") {
        match room.desk.reveal(&room.place, post).await?.shows {
            Shown::Solution(solution) => Some(solution.picture),
            Shown::Answered { .. } => None,
        }
    } else {
        None
    };
    match picture {
        Some(picture) => Ok(picture_response(picture)),
        None => Err(super::trouble::nothing_here().await),
    }
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
    Guest { .. }: Guest,
    Path(post): Path<PostId>,
    headers: HeaderMap,
) -> Told<paper::Reveal> {
    let sheet = room.desk.reveal(&room.place, post).await?;
    Ok(Json(paper::Reveal::of(sheet, room.words(&headers).await)))
}

async fn answer_to(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<PostId>,
    body: Result<Json<Said>, JsonRejection>,
) -> Told<Outcome> {
    let Json(said) = body?;
    let text = bounded(&said.text)?;
    let source = source(&person, &said.source)?;
    let (desk, place) = (&room.desk, &room.place);
    let asked = match said.sure {
        true => Asked::AndSure,
        false => Asked::NotYet,
    };
    let taken = answer::give(desk, place, &person, post, &source, text, asked);
    Ok(Json(match taken.await? {
        Taken::Answer(sheet) => room.judged(&person, &sheet, text).await,
        Taken::AskedBack(asked) => Outcome::Held(asked),
    }))
}

/// Which of the readings of a doubtful reply was meant.
#[derive(Deserialize)]
struct Meant {
    reading: usize,
}

async fn mean(
    State(room): State<Shared>,
    Member(person): Member,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Meant>, JsonRejection>,
) -> Told<Judged> {
    let Json(Meant { reading }) = body?;
    let (sheet, text) = room
        .desk
        .member()
        .mean(&room.place, &person, reply, reading)
        .await?;
    Ok(Json(room.show_verdict(&person, &sheet, &text).await))
}

async fn hint(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<PostId>,
) -> Told<paper::Hint> {
    let sheet = room.desk.member().hint(&room.place, &person, post).await?;
    Ok(Json(paper::Hint::of(post, sheet)))
}

#[derive(Serialize)]
struct Message {
    message: String,
}

async fn give_up(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<PostId>,
) -> Told<Message> {
    let message = crate::chat::said::in_words(
        &room
            .desk
            .member()
            .give_up(&room.place, &person, post)
            .await?,
    );
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
    Path(post): Path<PostId>,
) -> Told<MyWork> {
    let rows = room
        .desk
        .member()
        .my_replies(&room.place, &person, post)
        .await?;
    // Pictures are drawn for the last replies only; what was said of earlier ones stands in words.
    let plain = rows.len().saturating_sub(PICTURED);
    let mut replies = Vec::with_capacity(rows.len());
    for (at, row) in rows.into_iter().enumerate() {
        let sheet = if at >= plain && row.verdict.is_some() {
            Some(
                room.desk
                    .member()
                    .verdict(&room.place, &person, row.reply)
                    .await?,
            )
        } else {
            None
        };
        replies.push(paper::Mine::of(post, row, sheet));
    }
    let hints = room
        .desk
        .member()
        .my_hints(&room.place, &person, post)
        .await?;
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
    Guest { .. }: Guest,
    Path(post): Path<PostId>,
    headers: HeaderMap,
) -> Told<Vec<paper::Answered>> {
    let rows = room.desk.open_answers(&room.place, post).await?;
    let words = room.words(&headers).await;
    let answered = |row| paper::Answered::of(post, row, words);
    Ok(Json(rows.into_iter().map(answered).collect()))
}

impl Room {
    async fn judged(&self, person: &Person, sheet: &VerdictSheet, text: &str) -> Outcome {
        Outcome::Answer(Box::new(self.show_verdict(person, sheet, text).await))
    }

    /// Shows a verdict to its member's pages, and the answer to everyone's where answers are open.
    async fn show_verdict(&self, person: &Person, sheet: &VerdictSheet, text: &str) -> Judged {
        let judged = Judged::of(sheet, text);
        self.feed.member(&person.user, "verdict", &judged);
        match public::answers_are(&self.desk, &self.place).await {
            // Says only that there is something; the pages fetch it.
            Ok(true) => self.feed.everyone("answered", &sheet.post),
            Ok(false) => {}
            Err(error) => tracing::error!("the group could not be told of an answer: {error}"),
        }
        judged
    }
}

/// Where the member stands at a post.
async fn own(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<PostId>,
) -> Told<paper::Own> {
    let own = room.desk.member().own(&room.place, &person, post).await?;
    Ok(Json(paper::Own::of(own, room.words_for(&person).await)))
}

/// The questions that the member answered.
async fn homework(
    State(room): State<Shared>,
    Member(person): Member,
) -> Told<Vec<paper::OwnQuestion>> {
    let all = room.desk.member().my_homework(&room.place, &person).await?;
    let all = all.into_iter().map(paper::OwnQuestion::of);
    Ok(Json(all.collect()))
}

/// What the member says to their answer's being shown.
#[derive(Deserialize)]
struct Says {
    leave: Leave,
}

async fn leave(
    State(room): State<Shared>,
    Member(person): Member,
    Path(reply): Path<ReplyId>,
    body: Result<Json<Says>, JsonRejection>,
) -> Told<OwnExample> {
    let Json(Says { leave }) = body?;
    let kept = room
        .desk
        .member()
        .give_leave(&room.place, &person, reply, leave)
        .await?;
    Ok(Json(kept))
}

/// The board as the member's own line stands.
async fn board(
    State(room): State<Shared>,
    Member(person): Member,
    Path(post): Path<PostId>,
) -> Told<paper::Shown> {
    let picture = room
        .desk
        .member()
        .my_board(&room.place, &person, post)
        .await?;
    let words = room.words_for(&person).await;
    Ok(Json(paper::Shown::inside(&picture, words)))
}

async fn progress(State(room): State<Shared>, Member(person): Member) -> Told<Progress> {
    Ok(Json(
        room.desk.member().progress(&room.place, &person).await?,
    ))
}

async fn points(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    headers: HeaderMap,
) -> Told<[String; 3]> {
    let settings = room.desk.settings(&room.place).await?;
    Ok(Json(points_rules(room.words(&headers).await, &settings)))
}

async fn topics(State(room): State<Shared>, Guest { .. }: Guest) -> Told<Vec<String>> {
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
    Guest { .. }: Guest,
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
    let kept = explained(room.desk.member().kept_of_me(&room.place, &person).await?);
    let name = "attachment; filename=\"kept-of-me.json\"";
    Ok(([(header::CONTENT_DISPOSITION, name)], Json(kept)).into_response())
}

async fn erase(
    State(room): State<Shared>,
    Member(person): Member,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let words = room.words(&headers).await;
    room.desk.member().erase_me(&room.place, &person).await?;
    // Their lines of talk are gone: every page fetches the talk anew.
    room.feed.everyone("renewed", &());
    let mut response = Json(Message {
        message: words.say(&Text::AllErased),
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
        return Err(Trouble::bad(Text::MessageEmpty));
    }
    if text.chars().count() > LONGEST_REPLY {
        return Err(Trouble::too_large(Text::MessageTooLarge));
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
