//! Which post the message box answers, and what waits for its writer's word before others see it, in real
//! browsers.

use sealed_move_tests::{
    browser::{Browser, Driver},
    room::RunningRoom,
};
use serde_json::json;

/// A back rank and a smothered mate: 1.Rxd8+ and 1.Nh6+.
const FILE: &str = r#"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id "back-rank";
5rk1/5Npp/8/8/2Q5/8/8/6K1 w - - dm 3; id "smothered";
"#;

/// Puts both positions before the group, the back rank first.
async fn two_posts(room: &RunningRoom, coach: &Browser) {
    room.coach(coach).await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", FILE).await;
    coach
        .until_says("#checked-title", "2 positions checked, 2 sound")
        .await;
    coach.press("Put the 2 sound ones into the week").await;
    coach.press("Week").await;
    for (name, left) in [
        ("Post now: #2 from week.epd: back-rank", 1),
        ("Post now: #3 from week.epd: smothered", 0),
    ] {
        coach.press(name).await;
        coach.press("Post it now").await;
        let script =
            "return document.querySelectorAll('#week > li[data-item]').length === arguments[0]";
        coach
            .until("the post is out", script, vec![json!(left)])
            .await;
    }
}

async fn value(browser: &Browser, script: &str) -> String {
    let value = browser.run(script, vec![]).await;
    value.as_str().map_or(value.to_string(), str::to_owned)
}

const BOX: &str = "return document.querySelector('#text').value";

#[tokio::test(flavor = "multi_thread")]
async fn the_box_answers_the_chosen_post_and_moves_for_another_are_asked_back() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    two_posts(&room, &coach).await;
    anna.until_says("#answering", "No. 2").await;

    // By pointer and keyboard: the choice is a menu, and what is sent goes to the chosen one.
    let choose = "const s = document.querySelector('#answers-post'); const o = [...s.options].find((o) => o.text.startsWith(arguments[0])); s.value = o.value; s.dispatchEvent(new Event('change', { bubbles: true })); return true";
    anna.run(choose, vec![json!("No. 1")]).await;
    anna.until_says("#open-post", "mate in two").await;
    anna.type_into("#text", "Rd7\n").await;
    anna.until_says("#stream .sealed", "Wrong move").await;

    // The choice is there again when the page is loaded again.
    anna.refresh().await;
    anna.until_says("#open-post", "mate in two").await;

    // Moves that fit the other post only are asked back, by Enter and by the button, and cost nothing.
    for by in ["enter", "button"] {
        anna.type_into("#text", "Nh6+").await;
        match by {
            "enter" => anna.type_into("#text", "\n").await,
            _ => anna.click("#answer").await,
        }
        anna.until_says("#held", "These moves fit position 2, not 1: send it there?")
            .await;
        let focused = value(&anna, "return document.activeElement.id").await;
        assert_eq!(focused, "held", "the choice has the focus");
        assert_eq!(anna.count("#stream .sealed").await, 1, "nothing is booked");
        if by == "enter" {
            anna.press("Drop it").await;
            anna.until(
                "an empty box",
                "return document.querySelector('#text').value === ''",
                vec![],
            )
            .await;
        }
    }
    anna.press("Send it to No. 2").await;
    anna.until_says("#stream .sealed", "Right so far").await;
    anna.until_says("#open-post", "mate in three").await;

    // A post that closes while its answer is typed takes no other post's place in silence.
    anna.run(choose, vec![json!("No. 1")]).await;
    anna.type_into("#text", "Kf1").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    anna.until_says("#answering", "Answers No.").await;
    let closed = value(
        &anna,
        "return document.querySelector('#answering').innerText",
    )
    .await;
    let told = value(
        &anna,
        "return document.querySelector('#answering-told').innerText",
    )
    .await;
    assert_eq!(value(&anna, BOX).await, "Kf1", "what was typed stays");
    if closed.contains("No. 2") {
        assert!(told.contains("No. 1 has closed"), "{told}");
        anna.type_into("#text", "\n").await;
        anna.until_says("#held", "No. 1 closed while you wrote")
            .await;
    }
    tokio::join!(coach.close(), anna.close());
}

#[tokio::test(flavor = "multi_thread")]
async fn what_may_tell_a_move_waits_for_its_writers_word() {
    let mut room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, boris) = tokio::join!(driver.open(), driver.open(), driver.open());
    tokio::join!(room.member(&anna, "Anna"), room.member(&boris, "Boris"));
    two_posts(&room, &coach).await;
    anna.until_says("#answering", "No. 2").await;

    // Held, and gone when it is dropped; ordinary talk passes.
    for words in ["spoiler: Qc8", "maybe Qc8 then Nh6", "Ф g 8 мат"] {
        anna.type_into("#text", &format!("{words}\n")).await;
        anna.until_says("#held", "nobody else sees it yet").await;
        assert_eq!(value(&anna, BOX).await, words);
        // A second Enter on the choice chooses nothing; with Tab and Enter a button is pressed.
        anna.press("Drop it").await;
        anna.until(
            "an empty box",
            "return document.querySelector('#text').value === ''",
            vec![],
        )
        .await;
    }
    anna.type_into("#text", "see you at 6\n").await;
    boris.until_says("#stream", "see you at 6").await;

    // As an answer it is judged for its writer alone.
    anna.type_into("#text", "hm, perhaps Nh6+\n").await;
    anna.until_says("#held", "It is my answer").await;
    anna.press("It is my answer").await;
    anna.until_says("#stream .sealed", "hm, perhaps Nh6+").await;
    anna.until_says("#stream .sealed", "Right so far").await;

    // By its writer's own word it goes out.
    anna.type_into("#text", "my king on f1 is tired\n").await;
    anna.until_says("#held", "Say it to all").await;
    anna.press("Say it to all").await;
    boris.until_says("#stream", "my king on f1 is tired").await;

    let seen = boris.text("body").await;
    for words in ["Qc8", "g 8", "sac the queen", "perhaps"] {
        assert!(!seen.contains(words), "{words}: {seen}");
    }
    // A name is no way around it.
    boris.press("My work").await;
    boris
        .until(
            "a field for the name, emptied",
            "const field = document.querySelector('#new-name'); if (field) field.value = ''; return field !== null",
            vec![],
        )
        .await;
    boris.type_into("#new-name", "Qc8 mate").await;
    boris.press("Change name").await;
    boris.until_says("#mine", "could tell a move").await;
    tokio::join!(coach.close(), anna.close(), boris.close());

    // Nothing of what was held is kept: it is on the disk only while it is being read.
    room.stop();
    let store = std::fs::read(room.store()).expect("the store");
    let wal = std::fs::read(room.store().with_file_name("club.sqlite-wal")).unwrap_or_default();
    let holds = |bytes: &[u8], words: &str| {
        bytes
            .windows(words.len())
            .any(|part| part == words.as_bytes())
    };
    assert!(
        holds(&store, "my king on f1 is tired"),
        "what was said is kept"
    );
    for words in ["spoiler: Qc8", "maybe Qc8 then"] {
        assert!(
            !holds(&store, words) && !holds(&wal, words),
            "{words} is kept"
        );
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_doubtful_reply_is_asked_back_with_its_readings_as_buttons() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    two_posts(&room, &coach).await;
    anna.until_says("#answering", "No. 2").await;
    // What the judge finds doubtful is its own matter; here is what the page makes of it.
    let stand_in = r#"
        const real = window.fetch;
        const told = (more) => Promise.resolve(new Response(JSON.stringify({
          reply: 7, post: arguments[0], text: 'N h6 or so', message: 'Which one?', your_move: false, points: 0, readings: [], ...more,
        })));
        window.pressed = [];
        window.fetch = (path, options) => {
          if (path.endsWith('/answer')) return told({ was: 'answer', verdict: 'unclear', readings: ['1.Nh6+ Kh8', '1.Qc8'] });
          if (path.startsWith('/api/readings/')) {
            window.pressed.push(path + ' ' + options.body);
            return told({ reply: 8, verdict: 'on-the-way', message: 'On you go.' });
          }
          return real(path, options);
        };
        return true"#;
    let post = anna
        .run(
            "return Number(document.querySelector('#answers-post').value)",
            vec![],
        )
        .await;
    anna.run(stand_in, vec![post]).await;
    anna.type_into("#text", "N h6 or so").await;
    anna.click("#answer").await;
    anna.until_says("#stream .readings", "I mean 1.Nh6+ Kh8")
        .await;
    anna.press("I mean 1.Qc8").await;
    anna.until_says("#stream .sealed", "Right so far").await;
    assert_eq!(anna.count(".readings button").await, 0, "asked once");
    let pressed = value(&anna, "return window.pressed.join()").await;
    assert_eq!(pressed, r#"/api/readings/7 {"reading":1}"#);
    tokio::join!(coach.close(), anna.close());
}
