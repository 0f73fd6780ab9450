//! The engagement summary: on the page, as charts, and to take away.

use axum::{
    Json, Router,
    extract::{Query, State},
    http::header,
    response::{IntoResponse, Response},
    routing::get,
};
use chrono::{Days, NaiveDate};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::beginning;
use crate::{
    chat::{
        room::{Room, Shared, door::Coach, paper::Shown, trouble::Trouble},
        said::advised,
    },
    desk::{Period, SummaryTable},
};

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/coach/summary", get(summary))
        .route("/api/coach/summary/charts", get(charts))
        .route("/api/coach/summary.json", get(as_json))
        .route("/api/coach/summary-members.csv", get(members))
        .route("/api/coach/summary-posts.csv", get(posts))
        .route("/api/coach/summary-topics.csv", get(topics))
}

/// Days of the group's calendar, both included.
#[derive(Deserialize)]
struct Span {
    from: Option<NaiveDate>,
    to: Option<NaiveDate>,
    topic: Option<String>,
}

impl Span {
    async fn period(self, room: &Room) -> Result<Period, Trouble> {
        let topic = self.topic.filter(|topic| !topic.is_empty());
        if self.from.is_none() && self.to.is_none() {
            return Ok(room.desk.period(&room.place, None, topic).await?);
        }
        let zone = room.desk.settings(&room.place).await?.zone;
        Ok(Period {
            from: self.from.map(|day| beginning(day, zone)),
            to: self
                .to
                .and_then(|day| day.checked_add_days(Days::new(1)))
                .map(|day| beginning(day, zone)),
            topic,
        })
    }
}

async fn summary(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(span): Query<Span>,
) -> Result<Json<Value>, Trouble> {
    let period = span.period(&room).await?;
    let summary = room.desk.coach().summary(&room.place, &period).await?;
    Ok(Json(advised(&summary, room.words_for(&coach).await)))
}

#[derive(Serialize)]
struct Charts {
    charts: Vec<Shown>,
}

async fn charts(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(span): Query<Span>,
) -> Result<Json<Charts>, Trouble> {
    let period = span.period(&room).await?;
    let words = room.words_for(&coach).await;
    let charts = room
        .desk
        .coach()
        .summary_charts(&room.place, &period, words.tag())
        .await?;
    let shown = |chart| Shown::inside(chart, words);
    Ok(Json(Charts {
        charts: charts.iter().map(shown).collect(),
    }))
}

async fn as_json(
    State(room): State<Shared>,
    Coach(coach): Coach,
    Query(span): Query<Span>,
) -> Result<Response, Trouble> {
    let period = span.period(&room).await?;
    let summary = room.desk.coach().summary(&room.place, &period).await?;
    let summary = advised(&summary, room.words_for(&coach).await);
    let name = "attachment; filename=\"engagement-summary.json\"";
    Ok(([(header::CONTENT_DISPOSITION, name)], Json(summary)).into_response())
}

async fn members(
    State(room): State<Shared>,
    Coach(_): Coach,
    Query(span): Query<Span>,
) -> Result<Response, Trouble> {
    table(&room, span, SummaryTable::Members).await
}

async fn posts(
    State(room): State<Shared>,
    Coach(_): Coach,
    Query(span): Query<Span>,
) -> Result<Response, Trouble> {
    table(&room, span, SummaryTable::Posts).await
}

async fn topics(
    State(room): State<Shared>,
    Coach(_): Coach,
    Query(span): Query<Span>,
) -> Result<Response, Trouble> {
    table(&room, span, SummaryTable::Topics).await
}

/// One table of the summary for a spreadsheet (RFC 4180).
async fn table(room: &Room, span: Span, which: SummaryTable) -> Result<Response, Trouble> {
    let period = span.period(room).await?;
    let summary = room.desk.coach().summary(&room.place, &period).await?;
    let kind = "text/csv; charset=utf-8";
    Ok(([(header::CONTENT_TYPE, kind)], summary.csv(which)?).into_response())
}
