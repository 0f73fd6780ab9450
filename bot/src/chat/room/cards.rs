//! Topic cards as everyone in the room reads them.

use axum::{
    Json, Router,
    extract::{Path, State},
    http::HeaderMap,
    routing::get,
};
use serde::Serialize;

use super::{
    Shared,
    door::Guest,
    paper::Shown,
    trouble::{Told, Trouble},
};
use crate::{
    chat::common::card,
    desk::{CardId, CardLink, CardRow, CardSheet, DeskError, ShownExample},
    words::Words,
};

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/cards", get(list))
        .route("/api/cards/{card}", get(one))
}

/// A card to be led to.
#[derive(Debug, Serialize)]
pub(super) struct Led {
    card: CardId,
    title: String,
}

impl Led {
    pub(super) fn to(link: &CardLink, words: &Words) -> Self {
        Self {
            card: link.card,
            title: card::title(words, &link.named),
        }
    }
}

/// A card in the list.
#[derive(Serialize)]
struct Row {
    #[serde(flatten)]
    led: Led,
    by_coach: bool,
    /// Whether it waits for a reveal.
    held: bool,
}

/// A card.
#[derive(Serialize)]
pub(super) struct Card {
    card: CardId,
    by_coach: bool,
    #[serde(flatten)]
    told: card::Told,
    example: Option<Example>,
}

#[derive(Serialize)]
struct Example {
    task: String,
    fen: String,
    /// The moves, numbered; may be empty.
    solution: String,
    start: Shown,
    end: Option<Shown>,
}

impl Card {
    pub(super) fn of(sheet: &CardSheet, words: &Words) -> Self {
        Self {
            card: sheet.link.card,
            by_coach: sheet.words.by_coach(),
            told: card::Told::of(words, sheet),
            example: sheet
                .example
                .as_ref()
                .map(|example| Example::of(example, words)),
        }
    }
}

impl Example {
    fn of(example: &ShownExample, words: &Words) -> Self {
        let shown = |picture| Shown::inside(picture, words);
        Self {
            task: card::task(words, example),
            fen: example.fen.clone(),
            solution: example.solution.clone(),
            start: shown(&example.start),
            end: example.end.as_ref().map(shown),
        }
    }
}

/// Which card an address names.
pub(super) fn named(card: &str) -> Result<CardId, Trouble> {
    Ok(card.parse::<CardId>().map_err(DeskError::from)?)
}

async fn list(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    headers: HeaderMap,
) -> Told<Vec<Row>> {
    let words = room.words(&headers).await;
    let rows = room.desk.member().cards(&room.place).await?;
    let row = |row: CardRow| Row {
        led: Led::to(&row.link, words),
        by_coach: row.by_coach,
        held: !row.tells_of.is_empty(),
    };
    Ok(Json(rows.into_iter().map(row).collect()))
}

async fn one(
    State(room): State<Shared>,
    Guest { .. }: Guest,
    Path(card): Path<String>,
    headers: HeaderMap,
) -> Told<Card> {
    let words = room.words(&headers).await;
    let card = named(&card)?;
    let sheet = room
        .desk
        .member()
        .card(&room.place, card, words.tag())
        .await?;
    Ok(Json(Card::of(&sheet, words)))
}
