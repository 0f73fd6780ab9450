//! A lesson stepped through after its reveals: in the club room by keyboard alone, on Discord by buttons in every
//! language; and a move that is talked about, on a small board. Nothing of a step that is not revealed is there.

use sealed_move_tests::{
    browser::{Browser, Driver},
    club::Club,
    discord::{people::Attach, world::Message},
    in_every_language, keep_chronicle,
    room::RunningRoom,
    tongue::Tongue,
};
use serde_json::json;

/// A lesson of our own: words, a stop with a side line, and a later stop of which nothing may be seen.
const LESSON: &str = r#"[Lesson "The last rank"]

{ A king behind three pawns has no air. } *

[FEN "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1"]

{ How many times is the square attacked? } 1. Rxd8+ $1 { [stop #2] Count to two. } ( 1. Rd7 $2 { Black just takes. } 1... Rxd7 ) 1... Rxd8 2. Rxd8# { No air. } *

[FEN "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1"]

{ A later one, alone. } 1. Ra8# { [stop #1] Up the file. } *
"#;

/// What only the last step holds.
const LATER: [&str; 3] = ["A later one", "Ra8", "Up the file"];

async fn post_next(coach: &Browser) {
    coach.press("Week").await;
    coach
        .until(
            "something to post",
            "return [...document.querySelectorAll('#week > li[data-item] button')].some((b) => (b.getAttribute('aria-label') ?? b.textContent).startsWith('Post now'))",
            vec![],
        )
        .await;
    coach
        .run(
            "[...document.querySelectorAll('#week > li[data-item] button')].find((b) => (b.getAttribute('aria-label') ?? b.textContent).startsWith('Post now')).click()",
            vec![],
        )
        .await;
    coach.press("Post it now").await;
}

/// Presses a key on the keyboard, by its name; how WebDriver calls it (W3C WebDriver, 17.4.2).
async fn key(member: &Browser, name: &str) {
    let code = match name {
        "End" => '\u{e010}',
        "Home" => '\u{e011}',
        "ArrowLeft" => '\u{e012}',
        "ArrowRight" => '\u{e014}',
        "Enter" => '\u{e007}',
        other => panic!("no key {other}"),
    };
    member.key(code).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_lesson_is_stepped_through_by_keyboard_and_tells_nothing_of_later_steps() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    room.coach(&coach).await;
    coach.press("Lessons").await;
    coach
        .run(
            "document.querySelector('#lesson-text').value = arguments[0]",
            vec![json!(LESSON)],
        )
        .await;
    coach.press("Take the lesson in").await;
    coach.until_says("#lesson-told", "is kept").await;
    coach.press("Into the week, in order").await;
    coach.until_says("#lesson-told", "is in the week").await;

    // Before anything is out there is no lesson to be seen.
    anna.press("Lessons").await;
    anna.until_says("#lessons", "No lesson is revealed yet")
        .await;
    anna.press("Room").await;
    post_next(&coach).await;
    anna.until_says("#stream", "A king behind three pawns")
        .await;
    post_next(&coach).await;
    anna.until_says("#open-post", "How many times").await;
    let asked = anna
        .run(
            "return Promise.all(['/api/lessons', '/api/lessons/1', '/api/lessons/1/2/1/board-1.png', '/api/lessons/1/3/1/board-0.png'].map((path) => fetch(path).then(async (a) => [a.status, a.headers.get('content-type') === 'image/png' ? 'a picture' : await a.text()])))",
            vec![],
        )
        .await;
    let told = asked.to_string();
    for secret in LATER
        .into_iter()
        .chain(["Rxd8", "Count to two", "a picture"])
    {
        assert!(!told.contains(secret), "{secret}: {told}");
    }
    assert_eq!(asked[1][0], 200, "{told}");
    assert_eq!(asked[2][0], 404, "{told}");

    coach.press("Week").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    anna.until_says("#stream .reveal", "Step through the lesson")
        .await;
    anna.press("Lessons").await;
    anna.until_says("#lessons", "1 more part comes on").await;
    anna.press("The last rank").await;
    anna.until_says("#lessons .walk", "A king behind three pawns")
        .await;

    // By keys: into the stop, through its moves, to the end and back.
    let says = |text: &'static str| anna.until_says("#lessons .walk", text);
    key(&anna, "ArrowRight").await;
    says("How many times is the square attacked?").await;
    says("White to move and mate in two.").await;
    anna.until(
        "the board",
        "return document.querySelector('.walk img')?.naturalWidth > 300",
        vec![],
    )
    .await;
    key(&anna, "ArrowRight").await;
    anna.until_says(
        ".walk-said",
        "White: rook from d2 takes the rook on d8. Check.",
    )
    .await;
    anna.until_says(".walk-said", "Count to two.").await;
    anna.until(
        "the board after the move, in words",
        "return document.querySelector('.walk img').alt.includes('d8')",
        vec![],
    )
    .await;
    key(&anna, "End").await;
    anna.until_says(".walk-said", "Mate.").await;
    anna.until_says(".walk-said", "No air.").await;
    key(&anna, "Home").await;
    anna.until_says(".walk .line", "Before the first move")
        .await;
    // Into the side line and out of it, with the keyboard's own means.
    anna.run(
        "document.querySelector('.side-lines button').focus()",
        vec![],
    )
    .await;
    key(&anna, "Enter").await;
    anna.until_says(".walk-said", "Black just takes.").await;
    anna.until_says(".walk .line", "1.Rd7?").await;
    key(&anna, "ArrowRight").await;
    anna.until_says(".walk-said", "Black: rook from d8 takes the rook on d7.")
        .await;
    anna.press("Back to the main line").await;
    anna.until_says(".walk .line", "Before the first move")
        .await;
    // The last part that is revealed is the end.
    key(&anna, "End").await;
    key(&anna, "ArrowLeft").await;
    anna.until_says(".walk-said", "Black: rook from a8").await;
    key(&anna, "End").await;
    key(&anna, "ArrowRight").await;
    anna.until(
        "no way on",
        "return document.querySelector('.walk [data-key=ArrowRight]').disabled",
        vec![],
    )
    .await;
    let body = anna.text("body").await;
    for secret in LATER {
        assert!(!body.contains(secret), "{secret}");
    }

    // A move that is talked about, on a small board under its message.
    anna.press("Room").await;
    anna.type_into("#text", "And what about Rd7 Rxd7 here?")
        .await;
    anna.press("Send").await;
    anna.until_says("#stream", "And what about Rd7").await;
    anna.press("Show on a board").await;
    anna.until_says("#stream .small-board", "1.Rd7 Rxd7").await;
    anna.until(
        "the small board",
        "return document.querySelector('.small-board img')?.naturalWidth > 200",
        vec![],
    )
    .await;
    anna.type_into("#text", "Or Qh5 perhaps").await;
    anna.press("Send").await;
    anna.until_says("#stream", "Or Qh5").await;
    anna.run(
        "[...document.querySelectorAll('#stream .on-board-ask button')].at(-1).click()",
        vec![],
    )
    .await;
    anna.until_says("#stream", "Qh5 cannot be played").await;
}

in_every_language!(a_lesson_is_stepped_through_on_discord);

async fn a_lesson_is_stepped_through_on_discord(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    let channel = club.channel;
    let file = club.coach.upload(Attach::text("rank.pgn", LESSON));
    club.coach
        .command(channel, "lesson take-in", &[("file", file)])
        .await;
    let lesson = [(
        "lesson",
        sealed_move_tests::discord::commands::Given::Number(1),
    )];
    club.coach.command(channel, "lesson plan", &lesson).await;
    let ana = club.member("Ana");
    let next = async |says: &'static str| -> Message {
        club.coach.command(channel, "coach post-now", &[]).await;
        club.discord
            .until("the next part", |world| {
                let mut all = world.messages.values();
                all.find(|m| m.channel == channel && m.only.is_none() && m.content.contains(says))
                    .cloned()
            })
            .await
    };
    next("A king behind three pawns").await;
    let stop = next("How many times").await;
    club.discord
        .until("its thread", |world| world.channel(stop.id).map(drop))
        .await;
    club.until_open().await;

    // The stop is open: it joins later, and nothing of it is shown, also not on a board.
    let seen = ana.command(channel, "study lesson", &[]).await;
    assert!(
        seen.private() && club.reads(&seen.text(), "lesson-open"),
        "{}",
        seen.text()
    );
    let seen = ana.pick(seen.message(), "The last rank").await;
    assert!(
        seen.text().contains("A king behind three pawns") && !seen.text().contains("How many"),
        "{}",
        seen.text()
    );
    let talk = ana.say(stop.id, "Good evening");
    let seen = ana.menu(talk, "Show on a board").await;
    assert!(
        seen.private() && club.reads(&seen.text(), "sealed-still"),
        "{}",
        seen.text()
    );

    let reveal = club.reveal().await;
    // That it is out is written down a moment after it is seen.
    loop {
        let seen = ana.command(channel, "study lesson", &[]).await;
        club.discord.world().chronicle.strike_out(seen.interaction);
        if !club.reads(&seen.text(), "lesson-open") {
            break;
        }
        tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    }
    let seen = ana.press(reveal.id, "Step through the lesson").await;
    assert!(
        seen.private() && seen.text().contains("How many times"),
        "{}",
        seen.text()
    );
    let board = seen.message();
    let seen = ana.press(board, "Forward").await;
    let key = tongue.moves("1.Rxd8+!");
    assert!(
        seen.text().contains(&key) && seen.text().contains("Count to two."),
        "{}",
        seen.text()
    );
    let seen = ana.press(board, "Last").await;
    assert!(seen.text().contains("No air."), "{}", seen.text());
    ana.press(board, "First").await;
    // The fifth button leads into the side line.
    let seen = ana.press_nth(board, 4).await;
    assert!(seen.text().contains("Black just takes."), "{}", seen.text());
    let seen = ana.press(board, "Back to the main line").await;
    assert!(seen.text().contains("How many times"), "{}", seen.text());
    let seen = ana.press(board, "Previous part of the lesson").await;
    assert!(
        seen.text().contains("A king behind three pawns"),
        "{}",
        seen.text()
    );

    // In its thread a move is talked about, and whoever wants to sees it on a board.
    let talk = ana.say(stop.id, &tongue.moves("And what about Rd7 Rxd7?"));
    club.settle().await;
    let seen = club.coach.menu(talk, "Show on a board").await;
    let line = tongue.moves("1.Rd7 Rxd7");
    assert!(
        seen.private() && seen.text().contains(&line),
        "{}",
        seen.text()
    );
    let talk = ana.say(stop.id, &tongue.moves("Or Qh5 perhaps"));
    let seen = club.coach.menu(talk, "Show on a board").await;
    assert!(
        club.reads(&seen.text(), "move-not-there"),
        "{}",
        seen.text()
    );
    club.settle().await;
    for message in club.discord.world().messages.values() {
        for secret in LATER {
            let secret = tongue.moves(secret);
            let members = message.only != Some(club.coach.id);
            assert!(
                !(members && message.content.contains(&secret)),
                "{}",
                message.content
            );
        }
    }
    keep_chronicle!(tongue.kept_as("a-lesson-stepped-through"), club.finish());
}
