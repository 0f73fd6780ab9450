//! The coach's words in the club room, seen in a browser at the width of a desk and of a phone.

use sealed_move_tests::{
    browser::{Colours, Driver},
    room::RunningRoom,
};

const LESSON: &str = "[Id \"w1\"]\n[Topic \"Back rank\"]\n[Task \"#2\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n\
    {Look at the <b>last</b> rank.} {It begins with Rxd8+.} {[reveal] Rooks before pawns.} \
    1.Rxd8+ $1 {A rook for a rook.} (1.Rd7 $2 {Too slow.} Rxd7 (1...Rab8 {is worse})) Rxd8 2.Rxd8# {And that is that.} *\n";

const AGAIN: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 4 30 id \"w9\"; dm 2; c0 \"Exchanges\"; c1 \"Two against two.\";\n";

#[tokio::test(flavor = "multi_thread")]
async fn words_go_out_where_they_belong_and_the_coach_chooses_among_versions() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    room.coach(&coach).await;
    coach.press("Check").await;
    coach.drop_file("#drop", "lesson.pgn", LESSON).await;
    coach
        .until_says("#checked-title", "1 position checked, 1 sound")
        .await;
    let report = coach.text("#checked .report").await;
    for part in [
        "tell a move (Rxd8+)",
        "Look at the <b>last</b> rank.",
        "Rooks before pawns.",
        "1.Rxd8+!",
        "A rook for a rook.",
    ] {
        assert!(report.contains(part), "{part}: {report}");
    }
    shot(&coach, "words-check").await;

    // Words are changed on the card; one that tells a move needs a word of its own.
    coach.press_first("#checked .said details summary").await;
    coach
        .type_into("#checked .words-form textarea", " Rxd8 is the key.")
        .await;
    coach.press("Keep these words: w1").await;
    coach
        .until_says("#checked .told", "tell a move (Rxd8+)")
        .await;
    coach
        .click("#checked .words-form input[type=checkbox]")
        .await;
    coach.press("Keep these words: w1").await;
    coach
        .until_says("#checked .told", "These words are kept.")
        .await;
    let changed = coach.text("#checked .said").await;
    assert!(changed.contains("Rxd8 is the key."), "{changed}");
    // Back to what may be shown.
    coach.drop_file("#drop", "lesson.pgn", LESSON).await;
    coach.until_says("#checked .again", "other words").await;
    coach.press("Take the new one: w1").await;
    coach
        .until_says("#checked .again", "The file's is taken now")
        .await;

    coach.press("Put the sound one into the week").await;
    coach.press("Week").await;
    coach.press("Post now: #2 from lesson.pgn: w1").await;
    coach.press("Post it now").await;
    anna.until_says("#open-post .coach-words", "Look at the <b>last</b> rank.")
        .await;
    let shown = anna
        .run(
            "return document.body.innerText + document.documentElement.innerHTML",
            vec![],
        )
        .await;
    for secret in ["Rooks before", "A rook for", "Too slow", "begins with"] {
        assert!(
            !shown.as_str().unwrap_or_default().contains(secret),
            "{secret}"
        );
    }
    shot(&anna, "words-post").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    anna.until_says("#stream .reveal .notes", "And that is that.")
        .await;
    let notes = anna.text("#stream .reveal .notes").await;
    for part in [
        "1.Rxd8+! A rook for a rook.",
        "(1.Rd7? Too slow.",
        "(1...Rab8 is worse))",
    ] {
        assert!(notes.contains(part), "{part}: {notes}");
    }
    anna.until_says("#stream .reveal", "Rooks before pawns.")
        .await;
    shot(&anna, "words-reveal").await;

    // The same position under another name: both are shown, and posting it again needs a word.
    coach.press("Check").await;
    coach.drop_file("#drop", "autumn.epd", AGAIN).await;
    coach
        .until_says("#checked .again", "The same position is kept already")
        .await;
    coach
        .until_says("#checked", "Posted before, as No. 1")
        .await;
    shot(&coach, "words-again").await;
    coach.press("Keep both topics: w9").await;
    coach
        .until_says("#checked .outcome", "(also Exchanges)")
        .await;
    coach.press("Put into the week again: w9").await;
    coach.press("Week").await;
    coach.until_says("#week", "posted before as No. 1").await;
}

/// Looks at the page at both widths; nothing on it is wider than the page.
async fn shot(browser: &sealed_move_tests::browser::Browser, name: &str) {
    for (width, height) in [(390, 844), (1280, 900)] {
        browser.screen(width, height, Colours::Light).await;
        let wide = browser
            .run(
                "return document.documentElement.scrollWidth - innerWidth",
                vec![],
            )
            .await;
        assert!(
            wide.as_i64().is_some_and(|wide| wide <= 0),
            "{name} at {width}: {wide}"
        );
        if let Some(folder) = std::env::var_os("SEALED_MOVE_SHOTS") {
            let png = browser.client().screenshot().await.expect("a picture");
            let path = std::path::Path::new(&folder).join(format!("{name}-{width}.png"));
            std::fs::write(path, png).expect("written");
        }
    }
}
