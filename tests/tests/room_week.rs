//! The week in the coach's browser, worked by keyboard: moving about keeps the focus and is announced, and what is
//! taken out goes back.

use sealed_move_tests::{
    browser::{Browser, Driver},
    room::RunningRoom,
};
use serde_json::json;

/// Three sound positions of our own.
const FILE: &str = r#"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id "back-rank";
3r2k1/5Npp/8/8/2Q5/8/6PP/6K1 w - - dm 3; id "double-check";
6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 1; id "one-rook";
"#;

/// Enter.
const ENTER: char = '\u{e007}';

async fn until_order(coach: &Browser, wanted: &str) {
    let script = "return [...document.querySelectorAll('#week > li')].map((e) => e.innerText.match(/week\\.epd: ([\\w-]+)/)?.[1] ?? '?').join(' ') === arguments[0]";
    coach
        .until(&format!("the order {wanted}"), script, vec![json!(wanted)])
        .await;
}

/// Until the focus is on the button or field that is called so.
async fn until_focus(coach: &Browser, called: &str) {
    let script = "const e = document.activeElement; return (e?.getAttribute('aria-label') ?? e?.innerText) === arguments[0]";
    coach
        .until(
            &format!("the focus on {called}"),
            script,
            vec![json!(called)],
        )
        .await;
}

async fn focus(coach: &Browser, called: &str) {
    let script = "[...document.querySelectorAll('button, input')].find((e) => e.getAttribute('aria-label') === arguments[0]).focus()";
    coach.run(script, vec![json!(called)]).await;
    until_focus(coach, called).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_week_is_put_in_order_by_keyboard_and_taking_out_can_be_undone() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let coach = driver.open().await;
    room.coach(&coach).await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", FILE).await;
    coach.until_says("#checked-title", "3 positions").await;
    coach.press("Put the 3 sound ones into the week").await;
    coach.press("Week").await;
    until_order(&coach, "back-rank double-check one-rook").await;

    // The same button of the same item keeps the focus, down to the end and no further.
    let later = "Later: #2 from week.epd: back-rank";
    focus(&coach, later).await;
    coach.key(ENTER).await;
    until_order(&coach, "double-check back-rank one-rook").await;
    until_focus(&coach, later).await;
    let told = "Moved to place 2 of 3 in the week.";
    coach.until_says("#week-told[role=status]", told).await;
    coach.key(ENTER).await;
    until_order(&coach, "double-check one-rook back-rank").await;
    until_focus(&coach, later).await;
    coach
        .until_says("#week-told", "Moved to place 3 of 3")
        .await;
    let off = coach
        .run(
            "return document.activeElement.getAttribute('aria-disabled')",
            vec![],
        )
        .await;
    assert_eq!(off, json!("true"), "it is the last");
    coach.key(ENTER).await;
    until_focus(&coach, later).await;
    until_order(&coach, "double-check one-rook back-rank").await;

    // A place that is typed.
    coach
        .press_first("#week > li:nth-child(3) details > summary")
        .await;
    let place = "Place of #2 from week.epd: back-rank in the week";
    focus(&coach, place).await;
    coach
        .run("document.activeElement.value = '9'", vec![])
        .await;
    let there = "Move to this place: #2 from week.epd: back-rank";
    focus(&coach, there).await;
    coach.key(ENTER).await;
    coach.until_says("#week-told", "a number from 1 to 3").await;
    until_focus(&coach, place).await;
    coach
        .run("document.activeElement.value = '1'", vec![])
        .await;
    focus(&coach, there).await;
    coach.key(ENTER).await;
    until_order(&coach, "back-rank double-check one-rook").await;
    until_focus(&coach, there).await;
    coach
        .until_says("#week-told", "Moved to place 1 of 3")
        .await;

    // Taken out, and back; the keyboard is led along.
    let out = "Take out of the week: #3 from week.epd: double-check";
    focus(&coach, out).await;
    coach.key(ENTER).await;
    until_order(&coach, "back-rank one-rook").await;
    until_focus(&coach, "Undo: #3 from week.epd: double-check").await;
    coach.until_says("#week-out", "Taken out lately (1)").await;
    coach.key(ENTER).await;
    until_order(&coach, "back-rank double-check one-rook").await;
    until_focus(&coach, out).await;
    coach
        .until_says("#week-told", "It is back at its place.")
        .await;

    // Still offered when the page is loaded again.
    coach.key(ENTER).await;
    until_order(&coach, "back-rank one-rook").await;
    coach.refresh().await;
    coach.press_first("#week-out summary").await;
    coach
        .press("Put back: #3 from week.epd: double-check")
        .await;
    until_order(&coach, "back-rank double-check one-rook").await;
}
