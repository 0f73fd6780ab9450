//! Topic cards in a coach's hands: all of them, a coach's own words on them, and into the week.

use axum::{
    Json, Router,
    extract::{DefaultBodyLimit, Path, State, rejection::JsonRejection},
    routing::{get, post},
};
use serde::{Deserialize, Serialize};

use crate::{
    chat::{
        common::card,
        room::{
            Shared,
            cards::{Card, Led, named},
            door::Coach,
            trouble::Told,
        },
    },
    desk::{CardId, CardRow, ItemId, NewCard},
};

/// Bytes of a request: every character of the longest card in four bytes, escaped or not.
const BODY: usize = 32 * 1024;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/cards", get(list).post(write_new))
        .route("/api/coach/cards/{card}", get(one).post(write))
        .route("/api/coach/cards/{card}/take-back", post(take_back))
        .route("/api/coach/cards/{card}/queue", post(enqueue))
        .layer(DefaultBodyLimit::max(BODY))
}

/// A card in the coach's list.
#[derive(Serialize)]
struct Row {
    #[serde(flatten)]
    led: Led,
    by_coach: bool,
    /// Numbers of the open posts of which it would tell.
    tells_of: Vec<i64>,
}

/// A card as a coach sees it.
#[derive(Serialize)]
struct Coachs {
    #[serde(flatten)]
    card: Card,
    tells_of: Vec<i64>,
}

async fn list(State(room): State<Shared>, Coach(coach): Coach) -> Told<Vec<Row>> {
    let words = room.words_for(&coach).await;
    let rows = room.desk.coach().cards(&room.place, &coach).await?;
    let row = |row: CardRow| Row {
        led: Led::to(&row.link, words),
        by_coach: row.by_coach,
        tells_of: row.tells_of,
    };
    Ok(Json(rows.into_iter().map(row).collect()))
}

async fn one(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(card): Path<String>,
) -> Told<Coachs> {
    let words = room.words_for(&coach).await;
    let card = named(&card)?;
    let sheet = room
        .desk
        .coach()
        .card(&room.place, &coach, card, words.tag())
        .await?;
    Ok(Json(Coachs {
        card: Card::of(&sheet, words),
        tells_of: sheet.tells_of,
    }))
}

/// What the form holds.
#[derive(Deserialize)]
struct Written {
    #[serde(default)]
    topic: String,
    definition: String,
    #[serde(default)]
    look: String,
    #[serde(default)]
    fen: String,
    #[serde(default)]
    moves: String,
}

impl Written {
    fn card(self) -> NewCard {
        NewCard {
            definition: self.definition,
            look: self.look,
            fen: self.fen,
            moves: self.moves,
        }
    }
}

/// Writes the card of a topic.
async fn write_new(
    State(room): State<Shared>,
    Coach(coach): Coach,
    body: Result<Json<Written>, JsonRejection>,
) -> Told<CardId> {
    let Json(written) = body?;
    let topic = written.topic.parse()?;
    let card = room
        .desk
        .coach()
        .write_topic_card(&room.place, &coach, topic, &written.card())
        .await?;
    room.feed.coaches("week", &());
    Ok(Json(card))
}

/// Writes a card in the place of the one that is there.
async fn write(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(card): Path<String>,
    body: Result<Json<Written>, JsonRejection>,
) -> Told<()> {
    let Json(written) = body?;
    room.desk
        .coach()
        .write_card(&room.place, &coach, named(&card)?, &written.card())
        .await?;
    Ok(Json(()))
}

async fn take_back(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(card): Path<String>,
) -> Told<()> {
    room.desk
        .coach()
        .take_back_card(&room.place, &coach, named(&card)?)
        .await?;
    Ok(Json(()))
}

/// Puts a card at the end of the week.
async fn enqueue(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Path(card): Path<String>,
) -> Told<ItemId> {
    let item = card::enqueue(&room.desk, &room.place, &coach, named(&card)?).await?;
    room.feed.coaches("week", &());
    Ok(Json(item))
}
