//! Members and what they said, in a coach's hands: see `desk`'s members and moderation.

use axum::{
    Json, Router,
    extract::{DefaultBodyLimit, Path, Query, State, rejection::JsonRejection},
    http::header,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::{
    chat::{
        room::{
            Room, Shared,
            door::{Coach, Guest},
            feed::Gone,
            member::{As, Name, named},
            text::Text,
            trouble::{ShutOut, Told, Trouble},
        },
        said::explained,
    },
    desk::{Deed, DeedRow, Listed, MemberId, ReplyId, WatchedRow},
};

/// Lines of talk on a page.
const PAGE: usize = 200;
/// Bytes of a request.
const BODY: usize = 16 * 1024;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/enter", post(enter))
        .route("/api/coach/members", get(list))
        .route("/api/coach/deeds", get(deeds))
        .route("/api/coach/members/{member}/rename", post(rename))
        .route("/api/coach/members/{member}/mute", post(mute))
        .route("/api/coach/members/{member}/unmute", post(unmute))
        .route("/api/coach/members/{member}/remove", post(remove))
        .route("/api/coach/members/{member}/let-back", post(let_back))
        .route("/api/coach/members/{member}/merge", post(merge))
        .route("/api/coach/members/{member}/kept", post(kept))
        .route("/api/coach/members/{member}/erase", post(erase))
        .route("/api/coach/talk", get(talk))
        .route("/api/coach/talk/{line}/hide", post(hide))
        .route("/api/coach/talk/{line}/put-back", post(put_back))
        .route("/api/coach/replies/{reply}/hide", post(hide_answer))
        .route("/api/coach/replies/{reply}/put-back", post(put_back_answer))
        .layer(DefaultBodyLimit::max(BODY))
}

/// One who came by the coach's link says who they are.
async fn enter(
    State(room): State<Shared>,
    guest: Guest,
    body: Result<Json<Name>, JsonRejection>,
) -> Result<Response, Trouble> {
    if !guest.visitor.coach {
        return Err(Trouble::not_coach());
    }
    let Json(name) = body?;
    named(&room, guest, name, As::Coach).await
}

async fn list(State(room): State<Shared>, Coach(coach): Coach) -> Told<Vec<Listed>> {
    Ok(Json(room.desk.coach().roll(&room.place, &coach).await?))
}

/// Something a coach did.
#[derive(Serialize)]
struct Done {
    by: Option<String>,
    deed: Deed,
    about: Option<String>,
    /// More of it, in words; may be empty.
    note: String,
    at: DateTime<Utc>,
}

/// What the coaches did last.
async fn deeds(State(room): State<Shared>, Coach(coach): Coach) -> Told<Vec<Done>> {
    let words = room.words_for(&coach).await;
    let deeds = room
        .desk
        .coach()
        .deeds(&room.place, &coach)
        .await?
        .into_iter();
    let told = |row: DeedRow| Done {
        by: row.by,
        deed: row.deed,
        about: row.about,
        note: row.note.map(|note| words.say(&note)).unwrap_or_default(),
        at: row.at,
    };
    Ok(Json(deeds.map(told).collect()))
}

#[derive(Deserialize)]
struct NewName {
    name: String,
}

async fn rename(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
    body: Result<Json<NewName>, JsonRejection>,
) -> Told<String> {
    let Json(NewName { name }) = body?;
    if name.trim().is_empty() {
        return Err(Trouble::bad(Text::NewNameEmpty));
    }
    let name = room
        .desk
        .coach()
        .rename(&room.place, &coach, member, &name)
        .await?;
    room.changed();
    Ok(Json(name))
}

#[derive(Deserialize)]
struct Mute {
    /// Absent: until a coach lifts it.
    minutes: Option<i64>,
    #[serde(default)]
    why: String,
}

async fn mute(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
    body: Result<Json<Mute>, JsonRejection>,
) -> Told<()> {
    let Json(Mute { minutes, why }) = body?;
    room.desk
        .coach()
        .mute(&room.place, &coach, member, minutes, &why)
        .await?;
    room.feed.everyone("standing", &());
    Ok(Json(()))
}

async fn unmute(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
) -> Told<()> {
    room.desk
        .coach()
        .unmute(&room.place, &coach, member)
        .await?;
    room.feed.everyone("standing", &());
    Ok(Json(()))
}

async fn remove(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
) -> Told<()> {
    let users = room
        .desk
        .coach()
        .remove(&room.place, &coach, member)
        .await?;
    room.shut_out(&users, ShutOut::Removed);
    Ok(Json(()))
}

async fn let_back(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
) -> Told<()> {
    room.desk
        .coach()
        .let_back(&room.place, &coach, member)
        .await?;
    room.feed.coaches("week", &());
    Ok(Json(()))
}

#[derive(Deserialize)]
struct Merge {
    /// The member who is the same person; what is theirs becomes the first one's.
    other: MemberId,
}

async fn merge(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
    body: Result<Json<Merge>, JsonRejection>,
) -> Told<String> {
    let Json(Merge { other }) = body?;
    let merged = room
        .desk
        .coach()
        .merge(&room.place, &coach, member, other)
        .await?;
    for user in &merged.users {
        // Their pages come in anew, as the one member they are now.
        room.feed.member(user, "again", &());
    }
    room.changed();
    Ok(Json(merged.name))
}

/// Everything kept of a member, for the coach to hand over. A deed that is written down, hence no GET.
async fn kept(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
) -> Result<Response, Trouble> {
    let (_, kept) = room
        .desk
        .coach()
        .kept_of_member(&room.place, &coach, member)
        .await?;
    let name = "attachment; filename=\"kept-of-member.json\"";
    Ok(([(header::CONTENT_DISPOSITION, name)], Json(explained(kept))).into_response())
}

async fn erase(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(member): Path<MemberId>,
) -> Told<()> {
    let users = room
        .desk
        .coach()
        .erase_member(&room.place, &coach, member)
        .await?;
    room.shut_out(&users, ShutOut::Erased);
    room.changed();
    Ok(Json(()))
}

impl Room {
    /// Tells every page that names, ranks or messages have changed.
    fn changed(&self) {
        self.feed.everyone("renewed", &());
    }

    fn shut_out(&self, users: &[String], why: ShutOut) {
        for user in users {
            self.feed.shut_out(user, why);
        }
    }
}

#[derive(Deserialize)]
struct Before {
    before: Option<i64>,
}

/// The talk with what is out of sight.
async fn talk(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(query): Query<Before>,
) -> Told<Vec<WatchedRow>> {
    let lines = room
        .desk
        .coach()
        .watched_talk(&room.place, &coach, query.before, PAGE)
        .await?;
    Ok(Json(lines))
}

async fn hide(State(room): State<Shared>, Coach(coach): Coach, Path(line): Path<i64>) -> Told<()> {
    room.desk.coach().hide(&room.place, &coach, line).await?;
    room.tell_gone(Gone {
        talk: vec![line],
        replies: Vec::new(),
    });
    Ok(Json(()))
}

async fn put_back(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(line): Path<i64>,
) -> Told<()> {
    room.desk
        .coach()
        .put_back(&room.place, &coach, line)
        .await?;
    room.changed();
    Ok(Json(()))
}

async fn hide_answer(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
) -> Told<()> {
    room.desk.hide_answer(&room.place, &coach, reply).await?;
    room.tell_gone(Gone {
        talk: Vec::new(),
        replies: vec![reply],
    });
    Ok(Json(()))
}

async fn put_back_answer(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(reply): Path<ReplyId>,
) -> Told<()> {
    room.desk
        .coach()
        .put_back_answer(&room.place, &coach, reply)
        .await?;
    room.changed();
    Ok(Json(()))
}
