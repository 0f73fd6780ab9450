//! The pages of a check's report, which is kept in memory for the coach who asked for it.

use std::sync::Arc;

use crate::{
    chat::discord::{
        house::{House, Opened},
        letter::Letter,
        oops::{Answer, said},
        private::Asked,
        sheets,
        text::Coach,
    },
    desk::SameChoice,
};

/// Page `at` of a report, from 0.
pub async fn page(house: &House, asked: Asked<'_>, number: u64, at: usize) -> Answer<Letter> {
    let Some(report) = own(house, asked, number) else {
        return said(Coach::ReportPutAway);
    };
    let queue = house.desk.coach().queue(&report.place).await?;
    let words = asked.words(house).await;
    Ok(sheets::report::page(words, number, &report, at, &queue))
}

/// The coach's choice about a position of a report that was kept otherwise before; gives its page again.
pub async fn settle_same(
    house: &House,
    asked: Asked<'_>,
    number: u64,
    at: usize,
    choice: SameChoice,
) -> Answer<Letter> {
    let report = own(house, asked, number);
    let Some((report, position)) =
        report.and_then(|report| Some((report.clone(), report.positions.get(at)?.clone())))
    else {
        return said(Coach::ReportUnchanged);
    };
    let coach = asked.person(house, &report.place).await;
    let settled = house
        .desk
        .coach()
        .settle_same(&report.place, &coach, &position, choice)
        .await?;
    house.settle_in_report(number, at, settled);
    page(house, asked, number, at).await
}

/// The report, where it is still kept and the coach's own.
fn own(house: &House, asked: Asked<'_>, number: u64) -> Option<Arc<Opened>> {
    house
        .report(number)
        .filter(|report| report.coach == asked.user().id.to_string())
}
