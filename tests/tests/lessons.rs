//! A lesson from its file to the group: on the command line, through python-chess (PyPI `chess`) and back, in
//! the club room, and on Discord.

use std::fs;

use sealed_move_tests::{
    browser::{Browser, Driver},
    club::Club,
    command,
    discord::{commands::Given, people::Attach},
    in_every_language, keep_chronicle,
    leaks::Problem,
    python_script, ran,
    room::RunningRoom,
    tongue::Tongue,
    workspace,
};
use serde_json::json;

/// The demo's lesson.
fn crossing_lines() -> String {
    let file = workspace().join("demo-data/lessons/crossing-lines.pgn");
    fs::read_to_string(file).expect("the demo's lesson")
}

/// What a coach's file may hold: nested variations, glyphs, commands of programs, odd comments.
const RICH: &str = r#"[Lesson "A rich one"]
[Topic "Back-rank mate"]

{ Words "in quotes", a {brace and 50 % of the rest. } *

[FEN "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1"]
[SetUp "1"]

{ Which rook? } 1. Rxd8+ $1 { [stop #2] [%clk 0:01:02] Either way. } ( 1. Rd7 $2 { gives it back } 1... Rxd7
( 1... Rab8 $6 2. Rxd8+ $18 ) 2. h3 ) ( { Or } 1. h3 $4 ) 1... Rxd8 2. Rxd8# *
"#;

struct Store {
    folder: tempfile::TempDir,
}

impl Store {
    fn new() -> Self {
        Self {
            folder: tempfile::tempdir().expect("a folder"),
        }
    }

    fn run(&self, args: &[&str], input: &str) -> sealed_move_tests::Ran {
        let mut command = command();
        command.current_dir(self.folder.path()).args(args);
        ran(&mut command, input.as_bytes())
    }

    fn write(&self, name: &str, text: &str) {
        fs::write(self.folder.path().join(name), text).expect("written");
    }

    /// Takes a lesson in, and hands it out again.
    fn through(&self, text: &str) -> String {
        self.write("lesson.pgn", text);
        let ran = self.run(&["lesson", "import", "lesson.pgn"], "");
        assert_eq!(ran.status, 0, "{ran:?}");
        let out = self.run(&["lesson", "export", "1"], "");
        assert_eq!(out.status, 0, "{out:?}");
        out.out
    }
}

#[test]
fn the_demos_lesson_is_checked_kept_and_planned_on_the_command_line() {
    let store = Store::new();
    store.write("crossing.pgn", &crossing_lines());
    let ran = store.run(&["lesson", "check", "crossing.pgn"], "");
    assert_eq!(ran.status, 0, "{ran:?}");
    assert!(ran.out.contains("Step 6, where the topic is meant to fail"));
    let ran = store.run(&["lesson", "import", "--json", "crossing.pgn"], "");
    assert_eq!(ran.status, 0, "{ran:?}");
    let parts = ran.json();
    let kinds: Vec<&str> = parts
        .iter()
        .filter_map(|part| part["kind"].as_str())
        .collect();
    assert_eq!(
        kinds,
        [
            "words", "words", "problem", "problem", "problem", "question", "question"
        ]
    );
    assert!(
        parts
            .iter()
            .filter(|part| part["kind"] == "problem")
            .all(|part| part["report"]["verdict"] == "sound"),
        "{ran:?}"
    );
    let rows = store.run(&["lesson", "list", "--json"], "").json();
    assert_eq!(rows[0]["title"], "Two bishops, crossing lines");
    assert_eq!(rows[0]["steps"], 7);
    let ran = store.run(&["lesson", "plan", "1"], "");
    assert_eq!(ran.status, 0, "{ran:?}");
    assert_eq!(store.run(&["queue", "--json"], "").json().len(), 7);
    let shown = store.run(&["lesson", "show", "1"], "");
    assert!(shown.out.contains("in the week as item"), "{shown:?}");
    // Said once more, everything keeps its place.
    let ran = store.run(&["lesson", "plan", "1", "--step", "3=2099-12-01T18:00"], "");
    assert_eq!(ran.status, 0, "{ran:?}");
    let fixed: Vec<bool> = store
        .run(&["queue", "--json"], "")
        .json()
        .iter()
        .map(|item| item["fixed"] == true)
        .collect();
    assert_eq!(fixed.iter().filter(|fixed| **fixed).count(), 1);
    let ran = store.run(&["lesson", "remove", "1"], "");
    assert_eq!(ran.status, 0, "{ran:?}");
    assert!(store.run(&["queue", "--json"], "").json().is_empty());
}

#[test]
fn what_is_wrong_with_a_lesson_is_told_by_line_and_the_good_steps_are_kept() {
    let store = Store::new();
    let broken = crossing_lines()
        .replace("1... Qxc3+", "1... Qxc9+")
        .replace("[stop #3]", "[stop #x]");
    store.write("broken.pgn", &broken);
    let ran = store.run(&["lesson", "check", "broken.pgn"], "");
    assert_eq!(ran.status, 1, "{ran:?}");
    assert!(ran.out.contains("broken.pgn, line 36:"), "{ran:?}");
    assert!(ran.out.contains("the mark of the stop"), "{ran:?}");
    let ran = store.run(&["lesson", "import", "broken.pgn"], "");
    assert_eq!(ran.status, 1, "{ran:?}");
    let rows = store.run(&["lesson", "list", "--json"], "").json();
    assert_eq!(rows[0]["steps"], 5);
    // The same title once more, no file, no lesson, no number, no moment.
    for (args, told) in [
        (
            &["lesson", "import", "broken.pgn"][..],
            "is a lesson called",
        ),
        (&["lesson", "import", "none.pgn"], "none.pgn"),
        (&["lesson", "check", "-"], "line 1"),
        (&["lesson", "show", "9"], "no such lesson"),
        (
            &["lesson", "plan", "1", "--step", "3"],
            "3=2026-12-01T18:00",
        ),
        (
            &["lesson", "plan", "1", "--at-once", "soon"],
            "2026-12-01T18:00",
        ),
        (
            &["lesson", "plan", "1", "--step", "9=2099-12-01T18:00"],
            "its steps are 1 to 5",
        ),
    ] {
        let ran = store.run(args, "");
        assert_ne!(ran.status, 0, "{args:?}: {ran:?}");
        let all = format!("{}{}", ran.out, ran.err);
        assert!(all.contains(told), "{args:?}: {all}");
    }
    assert_eq!(store.run(&["queue", "--json"], "").json().len(), 0);
}

/// The moves and words of a file, without its tags.
fn movetext(pgn: &str) -> String {
    let lines = pgn.lines().filter(|line| !line.starts_with('['));
    lines
        .flat_map(str::split_whitespace)
        .collect::<Vec<_>>()
        .join(" ")
}

#[test]
fn a_lesson_goes_through_another_librarys_writer_and_comes_back_the_same() {
    for text in [crossing_lines(), RICH.to_owned()] {
        let out = Store::new().through(&text);
        let elsewhere = python_script("relesson.py", &[], &out);
        assert!(elsewhere.starts_with('\u{feff}') && elsewhere.contains("\r\n"));
        let back = Store::new().through(&elsewhere);
        assert_eq!(movetext(&back), movetext(&out));
        // And by itself: what is handed out is taken in as the same.
        assert_eq!(Store::new().through(&out), out);
    }
}

async fn steps(coach: &Browser, how_many: usize) {
    coach
        .until(
            "the steps of the lesson",
            "return document.querySelectorAll('#lesson .steps > li').length === arguments[0]",
            vec![json!(how_many)],
        )
        .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_lesson_in_the_room_from_the_file_to_its_first_stop() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    room.coach(&coach).await;
    coach.press("Lessons").await;
    coach
        .until_says("#lessons", "There are no lessons yet")
        .await;
    // A lesson that cannot be read keeps what was typed.
    coach.type_into("#lesson-text", "1. Ke9 *").await;
    coach.press("Take the lesson in").await;
    coach
        .until_says("#lesson-told", "no step could be read")
        .await;
    let typed = coach
        .run(
            "return document.querySelector('#lesson-text').value",
            vec![],
        )
        .await;
    assert_eq!(typed, "1. Ke9 *");
    coach
        .run(
            "document.querySelector('#lesson-text').value = arguments[0]",
            vec![json!(crossing_lines())],
        )
        .await;
    coach.press("Take the lesson in").await;
    coach.until_says("#lesson-told", "is kept").await;
    steps(&coach, 7).await;
    coach
        .until_says("#lesson", "Step 6, where the topic is meant to fail")
        .await;
    coach.press("Into the week, in order").await;
    coach.until_says("#lesson-told", "is in the week").await;
    coach.until_says("#lesson", "In the week.").await;

    // Words first, then the example, then the first stop; of later steps nothing is to be seen.
    for (n, says) in [
        (1, "Two bishops look at the castled king"),
        (2, "How it comes about."),
        (3, "Now you, with Black."),
    ] {
        coach.press("Week").await;
        let first = "document.querySelector('#week > li[data-item] button[data-act=now], #week > li[data-item] button.now')";
        let found = coach.run(&format!("return {first} !== null"), vec![]).await;
        if found == true {
            coach.run(&format!("{first}.click()"), vec![]).await;
        } else {
            coach
                .run(
                    "[...document.querySelectorAll('#week > li[data-item] button')].find((b) => (b.getAttribute('aria-label') ?? b.textContent).startsWith('Post now')).click()",
                    vec![],
                )
                .await;
        }
        coach.press("Post it now").await;
        anna.until_says("body", says).await;
        anna.until_says("body", &format!("step {n} of 7")).await;
    }
    let body = anna.text("body").await;
    assert!(body.contains("1.Qxc6+"), "the example's moves");
    for later in [
        "Two guards stand before a6",
        "Taking back is what everybody",
        "Qxc3",
    ] {
        assert!(!body.contains(later), "{later}");
    }
    // The wrong move is answered, the right one solves it.
    anna.type_into("#text", "Qxc3").await;
    anna.press("Answer").await;
    anna.until_says("body", "Solved").await;

    coach.press("Lessons").await;
    coach.press("Remove: Two bishops, crossing lines").await;
    coach.press("Remove the lesson").await;
    coach.until_says("#lesson-told", "is removed").await;
    coach
        .until_says("#lessons", "There are no lessons yet")
        .await;
}

/// The stops of the demo's lesson that the scenario comes to or leaves in the week, and the pictures that may be
/// seen: no other.
const STOPS: [Problem; 3] = [
    Problem {
        key: "Qxc3",
        moves: &[("c6", "c3"), ("d6", "a3")],
        picture: "discord-post-lesson-stop",
    },
    Problem {
        key: "Rxc6",
        // The example before it takes on the same square.
        moves: &[],
        picture: "discord-post-lesson-words",
    },
    Problem {
        key: "Rxb4",
        moves: &[("b1", "b4")],
        picture: "discord-post-lesson-example",
    },
];

/// The demo's lesson without the step that is judged by search: how deep that comes is the machine's.
fn proved_steps() -> String {
    let lesson = crossing_lines();
    let from = lesson.find("[Event \"Lamp Room lesson\"]").expect("a step");
    let (head, steps) = lesson.split_at(from);
    let steps = steps.split_inclusive("*\n\n");
    let proved = steps.filter(|step| !step.contains("[stop +]"));
    head.to_owned() + &proved.collect::<String>()
}

in_every_language!(a_lesson_on_discord_from_the_file_to_its_first_stop);

async fn a_lesson_on_discord_from_the_file_to_its_first_stop(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.seals(&STOPS);
    club.set_up(&[]).await;
    let channel = club.channel;
    let file = Attach::text("crossing.pgn", &proved_steps());
    let file = club.coach.upload(file);
    let seen = club
        .coach
        .command(channel, "lesson take-in", &[("file", file)])
        .await;
    assert!(
        seen.private() && club.shows(&seen.text(), "Two bishops, crossing lines"),
        "{}",
        seen.text()
    );
    let lesson = [("lesson", Given::Number(1))];
    let seen = club.coach.command(channel, "lesson list", &[]).await;
    assert!(club.shows(&seen.text(), "steps 6"), "{}", seen.text());
    // Of others nothing is shown.
    let ana = club.member("Ana");
    let seen = ana.command(channel, "lesson show", &lesson).await;
    assert!(club.shows(&seen.text(), "coaches"), "{}", seen.text());
    let seen = club.coach.command(channel, "lesson plan", &lesson).await;
    assert!(
        club.reads(&seen.text(), "lesson-in-week"),
        "{}",
        seen.text()
    );
    let unclear = [("lesson", Given::Number(1)), ("step", Given::Number(3))];
    let seen = club.coach.command(channel, "lesson plan", &unclear).await;
    assert!(
        club.reads(&seen.text(), "lesson-plan-unclear"),
        "{}",
        seen.text()
    );

    let mut post = None;
    for (says, picture) in [
        (
            "Two bishops look at the castled king",
            "discord-post-lesson-words",
        ),
        ("How it comes about", "discord-post-lesson-example"),
        ("Now you, with Black", "discord-post-lesson-stop"),
    ] {
        club.coach.command(channel, "coach post-now", &[]).await;
        let found = club
            .discord
            .until("the next part", |world| {
                let mut all = world.messages.values();
                all.find(|m| m.channel == channel && m.only.is_none() && m.content.contains(says))
                    .cloned()
            })
            .await;
        club.holds_picture(&found, picture);
        post = Some(found);
    }
    let post = post.expect("posted");
    club.discord
        .until("its thread", |world| world.channel(post.id).map(drop))
        .await;
    club.until_open().await;
    assert!(club.reads(&post.content, "lesson-step"), "{}", post.content);
    let seen = club.coach.command(channel, "lesson show", &lesson).await;
    assert!(
        club.reads(&seen.text(), "lesson-open-part"),
        "{}",
        seen.text()
    );
    let seen = ana
        .command(
            channel,
            "study answer",
            &[("moves", Given::Text("Qxc3+".into()))],
        )
        .await;
    assert!(seen.private(), "{}", seen.text());
    let seen = club
        .coach
        .command(channel, "lesson hand-out", &lesson)
        .await;
    assert!(club.reads(&seen.text(), "lesson-here"), "{}", seen.text());
    let seen = club.coach.command(channel, "lesson remove", &lesson).await;
    assert!(club.reads(&seen.text(), "lesson-gone"), "{}", seen.text());
    club.settle().await;
    keep_chronicle!(tongue.kept_as("a-lesson"), club.finish());
}
