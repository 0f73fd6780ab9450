//! The editor: its board, lessons that are being written, and positions written anew.

use axum::{
    Json, Router,
    extract::{DefaultBodyLimit, Path, State, rejection::JsonRejection},
    http::header,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{
    checks::{alone, progress},
    lessons::Sheet,
};
use crate::{
    chat::room::{
        Shared,
        door::Coach,
        paper::{Checked, Post, Reveal},
        trouble::{Told, Trouble},
    },
    desk::{
        Draft, DraftFault, DraftId, DraftRow, DraftSaved, DraftSheet, DraftStep, EditedPosition,
        LessonId, OnBoard, PartPreview, Played, PositionId,
    },
    words::Words,
};

/// Largest draft as it is sent, in bytes.
const DRAFT: usize = 4 * 1024 * 1024;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/board", post(board))
        .route("/api/coach/drafts", get(list).post(begin))
        .route("/api/coach/drafts/preview", post(preview))
        .route("/api/coach/drafts/{draft}", get(one).post(save))
        .route("/api/coach/drafts/{draft}/remove", post(remove))
        .route("/api/coach/drafts/{draft}/take-in", post(take_in))
        .route("/api/coach/drafts/{draft}/draft.pgn", get(export))
        .route("/api/coach/lessons/{lesson}/write", post(open))
        .route(
            "/api/coach/positions/{position}/edit",
            get(position).post(edit),
        )
        .layer(DefaultBodyLimit::max(DRAFT))
}

#[derive(Deserialize)]
struct Moves {
    /// FEN; empty for the initial position.
    fen: String,
    #[serde(default)]
    line: Vec<String>,
    /// A further move, as it is typed.
    #[serde(default)]
    typed: Option<String>,
}

/// What stands on the board, with what is odd about it in the reader's words.
#[derive(Serialize)]
struct Stands {
    #[serde(flatten)]
    stands: Played,
    odd: Vec<String>,
}

async fn board(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Moves>, JsonRejection>,
) -> Told<Stands> {
    let Json(Moves { fen, line, typed }) = body?;
    let on = OnBoard { fen, line, typed };
    let stands = room.desk.coach().board(&room.place, &coach, on).await?;
    let words = room.words_for(&coach).await;
    Ok(Json(Stands {
        odd: stands.warnings.iter().map(|odd| words.say(odd)).collect(),
        stands,
    }))
}

/// What is wrong with a step, in its reader's words: a statement that stands behind a colon.
#[derive(Serialize)]
struct Wrong {
    step: usize,
    what: String,
}

fn wrongs(faults: &[DraftFault], words: &Words) -> Vec<Wrong> {
    let told = faults.iter().map(|fault| Wrong {
        step: fault.step,
        what: words.say(&fault.what),
    });
    told.collect()
}

/// A draft that lies open.
#[derive(Serialize)]
struct Opened {
    draft: DraftId,
    revision: i64,
    lesson: Option<LessonId>,
    content: Draft,
    faults: Vec<Wrong>,
    /// Tells it from a draft of this id in another store.
    begun_at: DateTime<Utc>,
}

impl Opened {
    fn of(sheet: DraftSheet, words: &Words) -> Self {
        Self {
            faults: wrongs(&sheet.faults, words),
            draft: sheet.draft,
            revision: sheet.revision,
            lesson: sheet.lesson,
            content: sheet.content,
            begun_at: sheet.begun_at,
        }
    }
}

async fn list(State(room): State<Shared>, Coach(coach): Coach) -> Told<Vec<DraftRow>> {
    Ok(Json(room.desk.coach().drafts(&room.place, &coach).await?))
}

#[derive(Deserialize)]
struct Begun {
    #[serde(default)]
    content: Draft,
}

async fn begin(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Begun>, JsonRejection>,
) -> Told<Opened> {
    let Json(Begun { content }) = body?;
    let begun = room.desk.coach().begin_draft(&room.place, &coach, content);
    let begun = begun.await?;
    room.feed.coaches("drafts", &());
    Ok(Json(Opened::of(begun, room.words_for(&coach).await)))
}

/// A lesson opened for writing.
async fn open(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(lesson): Path<LessonId>,
) -> Told<Opened> {
    let opened = room.desk.coach().open_lesson(&room.place, &coach, lesson);
    let opened = opened.await?;
    room.feed.coaches("drafts", &());
    Ok(Json(Opened::of(opened, room.words_for(&coach).await)))
}

async fn one(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(draft): Path<DraftId>,
) -> Told<Opened> {
    let sheet = room.desk.coach().draft_sheet(&room.place, &coach, draft);
    let sheet = sheet.await?;
    Ok(Json(Opened::of(sheet, room.words_for(&coach).await)))
}

#[derive(Deserialize)]
struct Typed {
    /// The state that the page had before it.
    revision: i64,
    content: Draft,
}

/// What became of what was typed.
#[derive(Serialize)]
#[serde(tag = "saved", rename_all = "kebab-case")]
enum Saved {
    Kept { revision: i64, faults: Vec<Wrong> },
    Overtaken { theirs: Box<Opened> },
}

async fn save(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(draft): Path<DraftId>,
    body: Result<Json<Typed>, JsonRejection>,
) -> Told<Saved> {
    let Json(Typed { revision, content }) = body?;
    let saved = room
        .desk
        .coach()
        .save_draft(&room.place, &coach, draft, revision, content)
        .await?;
    let words = room.words_for(&coach).await;
    Ok(Json(match saved {
        DraftSaved::Kept { revision, faults } => Saved::Kept {
            revision,
            faults: wrongs(&faults, words),
        },
        DraftSaved::Overtaken(theirs) => Saved::Overtaken {
            theirs: Box::new(Opened::of(*theirs, words)),
        },
    }))
}

async fn remove(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(draft): Path<DraftId>,
) -> Told<()> {
    let removed = room.desk.coach().remove_draft(&room.place, &coach, draft);
    removed.await?;
    room.feed.coaches("drafts", &());
    Ok(Json(()))
}

async fn export(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(draft): Path<DraftId>,
) -> Result<Response, Trouble> {
    let text = room.desk.coach().export_draft(&room.place, &coach, draft);
    let text = text.await?;
    let name = "attachment; filename=\"draft.pgn\"";
    let kind = "application/vnd.chess-pgn; charset=utf-8";
    Ok((
        [
            (header::CONTENT_TYPE, kind),
            (header::CONTENT_DISPOSITION, name),
        ],
        text,
    )
        .into_response())
}

#[derive(Deserialize)]
struct At {
    revision: i64,
}

async fn take_in(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(draft): Path<DraftId>,
    body: Result<Json<At>, JsonRejection>,
) -> Told<Sheet> {
    let Json(At { revision }) = body?;
    let told = room.clone();
    alone(&room, async move {
        let room = told;
        let taken = room.desk.coach().take_in_draft(
            &room.place,
            &coach,
            (draft, revision),
            progress(&room),
        );
        let taken = taken.await?;
        room.feed.coaches("drafts", &());
        Ok(Sheet::of(taken, room.words_for(&coach).await))
    })
    .await
    .map(Json)
}

#[derive(Deserialize)]
struct Looked {
    content: Draft,
    /// The step, from 1.
    step: usize,
}

/// A part as members will see it; the coach alone sees what the check found.
#[derive(Serialize)]
struct Part {
    post: Option<Post>,
    reveal: Option<Reveal>,
    checked: Option<Checked>,
}

async fn preview(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Looked>, JsonRejection>,
) -> Told<Vec<Part>> {
    let Json(Looked { content, step }) = body?;
    let parts = room
        .desk
        .coach()
        .preview_draft(&room.place, &coach, content, step)
        .await?;
    let (all, own) = (room.words_of_group().await, room.words_for(&coach).await);
    let part = |part: PartPreview| Part {
        post: part.post.map(|post| Post::preview(&post, all)),
        reveal: part.reveal.map(|reveal| Reveal::preview(reveal, all)),
        checked: part.checked.map(|checked| Checked::of(&checked, own)),
    };
    Ok(Json(parts.into_iter().map(part).collect()))
}

/// A position opened for writing.
#[derive(Serialize)]
struct ToEdit {
    source: String,
    step: DraftStep,
    /// Why it cannot be changed, where it cannot.
    barred: Option<String>,
}

async fn position(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(position): Path<PositionId>,
) -> Told<ToEdit> {
    let opened = room
        .desk
        .coach()
        .position_to_edit(&room.place, &coach, position)
        .await?;
    let words = room.words_for(&coach).await;
    Ok(Json(ToEdit {
        barred: opened.barred.map(|why| words.say(&why)),
        source: opened.source,
        step: opened.step,
    }))
}

#[derive(Deserialize)]
struct Edited {
    step: DraftStep,
}

async fn edit(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(position): Path<PositionId>,
    body: Result<Json<Edited>, JsonRejection>,
) -> Told<Checked> {
    let Json(Edited { step }) = body?;
    let told = room.clone();
    alone(&room, async move {
        let room = told;
        let edited = EditedPosition::Step(Box::new(step));
        let now = room
            .desk
            .coach()
            .edit_position(&room.place, &coach, position, edited)
            .await?;
        room.bench.renew(position, &now);
        Ok(Checked::of(&now, room.words_for(&coach).await))
    })
    .await
    .map(Json)
}
