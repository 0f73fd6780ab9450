//! The editor on the coach's page, in a real browser: a lesson written by mouse and keyboard, kept as it is typed,
//! shown as members will see it and taken in; two tabs on one draft; and a position written anew.

use sealed_move_tests::{
    browser::{Browser, Colours, Driver},
    room::RunningRoom,
};
use serde_json::json;

const RIGHT: char = '\u{E014}';
const DOWN: char = '\u{E015}';
const ENTER: char = '\u{E007}';
const DELETE: char = '\u{E017}';

/// Brings what `selector` finds into the middle of the window at once: the head of the page covers what is above.
async fn bring(coach: &Browser, selector: &str) {
    coach.find(selector).await;
    let script = "document.querySelector(arguments[0]).scrollIntoView({ block: 'center', behavior: 'instant' })";
    coach.run(script, vec![json!(selector)]).await;
}

/// Clicks a square of the board.
async fn square(coach: &Browser, name: &str) {
    let selector = format!("[data-square={name}]");
    bring(coach, &selector).await;
    coach.click(&selector).await;
}

/// Chooses a tool of the palette with the mouse.
async fn tool(coach: &Browser, letter: &str) {
    let selector = format!("[data-tool='{letter}']");
    bring(coach, &selector).await;
    coach.click(&selector).await;
}

async fn focus(coach: &Browser, selector: &str) {
    let script = "const e = document.querySelector(arguments[0]); if (!e) return false; e.focus(); \
                  return document.activeElement === e";
    coach.until(selector, script, vec![json!(selector)]).await;
}

/// The accessible name and role of a square, as the page gives them.
async fn named(coach: &Browser, name: &str) -> String {
    let script = "const e = document.querySelector(`[data-square=${arguments[0]}]`); \
                  return `${e.getAttribute('role')}: ${e.getAttribute('aria-label')}`";
    let seen = coach.run(script, vec![json!(name)]).await;
    seen.as_str().unwrap_or_default().to_owned()
}

async fn value_is(coach: &Browser, selector: &str, value: &str) {
    let script = "return document.querySelector(arguments[0])?.value === arguments[1]";
    let what = format!("{value} in {selector}");
    coach
        .until(&what, script, vec![json!(selector), json!(value)])
        .await;
}

/// Writes a value over what a field has, as somebody who pastes it.
async fn paste(coach: &Browser, selector: &str, text: &str) {
    coach.find(selector).await;
    let script = "const e = document.querySelector(arguments[0]); e.value = arguments[1]; \
                  e.dispatchEvent(new Event('input', { bubbles: true }));";
    coach.run(script, vec![json!(selector), json!(text)]).await;
}

async fn all_kept(coach: &Browser) {
    coach.until_says("#draft-state", "All is kept.").await;
}

/// Sets a mate on the back rank up: White's pieces by mouse, Black's by keyboard.
async fn set_up_by_hand(coach: &Browser) {
    coach.press("Clear the board").await;
    coach.until_says("#draft-step", "cannot be set up").await;
    tool(coach, "K").await;
    square(coach, "g1").await;
    tool(coach, "R").await;
    square(coach, "a2").await;
    // Carried by the hand from a2 to a1, when the page has come to rest.
    tool(coach, "").await;
    bring(coach, "[data-square=a2]").await;
    coach.drag("[data-square=a2]", "[data-square=a1]").await;
    coach
        .until(
            "the rook on a1",
            "return document.querySelector('[data-square=a1]').dataset.piece === 'R' \
               && document.querySelector('[data-square=a2]').dataset.piece === ''",
            vec![],
        )
        .await;
    let dark = "return ['a1', 'h8', 'd1', 'h1', 'a8'].filter((name) => \
                document.querySelector(`[data-square=${name}]`).classList.contains('dark')).join()";
    assert_eq!(coach.run(dark, vec![]).await, json!("a1,h8"));
    assert_eq!(named(coach, "a1").await, "gridcell: white rook on a1");
    assert_eq!(named(coach, "e4").await, "gridcell: e4, empty");

    // By keyboard: the tools are one stop of the Tab key, and arrows choose among them.
    focus(coach, "[data-tool='P']").await;
    coach.key(RIGHT).await;
    coach
        .until(
            "the black king in hand",
            "return document.activeElement.dataset.tool === 'k' \
               && document.activeElement.getAttribute('aria-checked') === 'true'",
            vec![],
        )
        .await;
    focus(coach, "[data-square=g8]").await;
    coach.key(ENTER).await;
    tool(coach, "p").await;
    focus(coach, "[data-square=g8]").await;
    // One square too far, and taken away again.
    for key in [RIGHT, ENTER, DELETE, DOWN, ENTER] {
        coach.key(key).await;
    }
    coach
        .until(
            "the pawn on h7, and the focus with it",
            "return document.activeElement.dataset.square === 'h7' \
               && document.activeElement.getAttribute('aria-label') === 'black pawn on h7' \
               && document.querySelector('[data-square=h8]').dataset.piece === ''",
            vec![],
        )
        .await;
    square(coach, "g7").await;
    square(coach, "f7").await;
    value_is(coach, "input.fen", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1").await;
    coach
        .until(
            "nothing wrong with it",
            "return !document.querySelector('#draft-step').innerText.includes('cannot be set up')",
            vec![],
        )
        .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_lesson_from_an_empty_board_to_the_week() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let coach = driver.open().await;
    room.coach(&coach).await;
    coach.press("Write").await;
    coach.press("Begin a lesson").await;
    coach.type_into("#draft-title", "The back rank").await;
    coach.type_into("#draft-topic", "back-rank mates").await;
    coach
        .type_into("#step-words", "A king behind his own pawns.")
        .await;
    coach.press("Add a position to solve").await;
    set_up_by_hand(&coach).await;
    // A paste that is none names its fault, and loses nothing.
    paste(&coach, "input.fen", "6k1/5ppp/8/8/8/8/8/R5K w - - 0 1").await;
    coach.until_says("#draft-step", "cannot be set up").await;
    coach.until_says("#draft-steps", "Not finished:").await;
    value_is(&coach, "input.fen", "6k1/5ppp/8/8/8/8/8/R5K w - - 0 1").await;
    coach.press("Undo").await;
    value_is(&coach, "input.fen", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1").await;

    // The key on the board, asked for; a wrong move, typed, as a side line with a sign and words.
    coach.press_first("#mode-moves").await;
    coach
        .until(
            "the moves of the rook",
            "document.querySelector('[data-square=a1]').click(); \
             return document.querySelector('[data-square=a8]').classList.contains('target') || \
               (document.querySelector('[data-square=a1].picked')?.click(), false)",
            vec![],
        )
        .await;
    assert_eq!(
        named(&coach, "a8").await,
        "gridcell: a8, empty; the piece in hand can go here"
    );
    square(&coach, "a8").await;
    coach.until_says(".notation", "1.Ra8#").await;
    coach
        .press_first(".about-move [id^='stop-'][type=checkbox]")
        .await;
    coach
        .type_into(".about-move [id^='after-']", "Nobody can come between.")
        .await;
    coach.press("Start").await;
    coach.type_into("input.typed-move", "Ra7\n").await;
    coach.until_says(".side-line", "1.Ra7").await;
    coach
        .run(
            "const e = document.querySelector('[id^=\"sign-move-\"]'); e.value = '2'; \
             e.dispatchEvent(new Event('change'))",
            vec![],
        )
        .await;
    coach.until_says(".side-line", "1.Ra7?").await;
    coach
        .type_into(".about-move [id^='after-']", "Black makes air with h6.")
        .await;
    all_kept(&coach).await;

    // The page is loaded again, and all is there.
    coach.refresh().await;
    coach.until_says("#draft-steps", "Step 2: to solve").await;
    value_is(&coach, "#draft-title", "The back rank").await;
    value_is(&coach, "#step-words", "A king behind his own pawns.").await;
    coach.press("Step 2: to solve").await;
    coach
        .until_says(".notation", "Nobody can come between.")
        .await;
    coach
        .until_says(".side-line", "Black makes air with h6.")
        .await;
    coach.until_says(".stop-mark", "asked").await;

    // As members will see it, before the reveal and at it.
    coach.press("See the step as members will").await;
    coach.until_says("#previews", "sound").await;
    coach
        .until(
            "the diagram",
            "return document.querySelector('#previews .problem img')?.naturalWidth > 300",
            vec![],
        )
        .await;
    let before = coach.text("#previews figure.problem").await;
    assert!(before.contains("The back rank"), "{before}");
    assert!(!before.contains("Ra8"), "{before}");
    coach.press_first("#previews details.more > summary").await;
    coach.until_says("#previews .reveal", "Ra8#").await;
    coach
        .until_says("#previews .reveal", "Nobody can come between.")
        .await;

    coach.press("Take the lesson in").await;
    coach
        .until_says("#lesson-told", "“The back rank” is kept")
        .await;
    coach.until_says("#lesson", "sound").await;
    coach.until_says("#lessons", "The back rank").await;

    // From there it is opened again, as the same draft.
    coach.press("Open in the editor: The back rank").await;
    coach.until_says("#draft-steps", "Step 2: to solve").await;
    coach
        .until_says("#draft", "it takes the place of its lesson")
        .await;
    // A telephone has room for it.
    coach.press("Step 2: to solve").await;
    coach.screen(320, 700, Colours::Light).await;
    let wide = coach
        .run("return document.documentElement.scrollWidth", vec![])
        .await;
    assert_eq!(wide, json!(320));
    coach.close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn two_tabs_on_one_draft_lose_nothing() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (first, second) = tokio::join!(driver.open(), driver.open());
    room.coach(&first).await;
    first.press("Write").await;
    first.press("Begin a lesson").await;
    first.type_into("#draft-title", "Plans").await;
    all_kept(&first).await;
    room.coach_called(&second, "Vera").await;
    second.press("Write").await;
    second.press("Go on writing: Plans").await;
    value_is(&second, "#draft-title", "Plans").await;

    first.type_into("#step-words", "From the first tab.").await;
    all_kept(&first).await;
    second
        .type_into("#step-words", "From the second tab.")
        .await;
    second
        .until_says("#draft-conflict", "Nothing is lost")
        .await;
    second.press("Keep mine as a draft of its own").await;
    value_is(&second, "#draft-title", "Plans (my version)").await;
    value_is(&second, "#step-words", "From the second tab.").await;
    second.press("All drafts").await;
    second.until_says("#drafts", "Plans (my version)").await;
    assert_eq!(second.count("#drafts li").await, 2);
    second.press("Go on writing: Plans").await;
    value_is(&second, "#step-words", "From the first tab.").await;
    // Removed after a question.
    second.press("Remove the draft").await;
    second.press("Remove it").await;
    second
        .until_says("#drafts-told", "“Plans” is removed")
        .await;
    first.close().await;
    second.close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_position_is_edited_and_its_new_verdict_shows_at_once() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let coach = driver.open().await;
    room.coach(&coach).await;
    coach.press("Check").await;
    coach
        .type_into(
            "#paste",
            "6k1/5ppp/8/8/8/8/8/R5K1 w - - dm 1; id \"one\"; c0 \"back-rank mates\";",
        )
        .await;
    coach.press("Check what is pasted").await;
    coach.until_says("#checked", "sound").await;
    coach.press("Edit: one").await;
    value_is(&coach, "#step-task", "#1").await;
    value_is(&coach, "#step-topic", "back-rank mates").await;
    // Without the rook there is no mate.
    coach.press_first("#mode-set-up").await;
    focus(&coach, "[data-square=a1]").await;
    coach.key(DELETE).await;
    value_is(&coach, "input.fen", "6k1/5ppp/8/8/8/8/8/6K1 w - - 0 1").await;
    // What is typed and not saved is there again on a page that is loaded anew.
    coach.refresh().await;
    coach.until_says("#edited", "did not save").await;
    coach.press("Save and check").await;
    coach.until_says("#edit-told", "not sound").await;
    // And with it again, and two of them, there are two ways.
    paste(&coach, "input.fen", "6k1/5ppp/8/8/8/8/8/RR4K1 w - - 0 1").await;
    coach.press("Save and check").await;
    coach.until_says("#edit-told", "more than one key").await;
    coach.press("Back to the checked positions").await;
    coach.until_says("#check-title", "").await;
    coach
        .until_says("[data-view=check]", "more than one key")
        .await;
    coach.close().await;
}
