//! Everything people read comes out of the languages' files: the binary speaks a language that nobody does, in
//! which every letter wears a mark and texts are longer, and the people here write in Cyrillic. A word in plain
//! Latin letters was written elsewhere; what has no room shows as cut.

use std::collections::BTreeSet;

use sealed_move::{chess::name::names, words::pseudo};
use sealed_move_tests::{
    browser::{Browser, Colours, Driver},
    club::Club,
    discord::{commands::Given, people::Attach, world::World},
    every_command,
    room::RunningRoom,
    sealed_move, speak_pseudo_language,
};
use serde_json::{Value, json};

/// Positions of every verdict, a question, and lines that cannot be read.
const FILE: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"з1\"; c0 \"Мат\"; c1 \"Смотри.\";\n\
    6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 1; id \"з2\"; c0 \"Мат\";\n\
    6k1/5ppp/8/8/8/8/5PPP/R3R1K1 w - - dm 1; id \"з3\";\n\
    6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 2; id \"з4\";\n\
    6k1/5ppp/8/8/8/8/5PPP/6K1 w - - dm 1; id \"з5\";\n\
    8/8/8/8/8/8/8/8 w - - dm 1; id \"з6\";\n\
    6k1/5ppp/8/8/8/8/5PP/6K1 w - - dm 1; id \"з7\";\n\
    6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm ?; id \"з8\";\n";

/// Words in plain letters that are not ours to translate: those of days, months and spans of time, which the
/// browser knows, and names of the program and its commands.
const ELSEWHERE: &[&str] = &[
    "January",
    "February",
    "March",
    "April",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
    "Monday",
    "Tuesday",
    "Wednesday",
    "Thursday",
    "Friday",
    "Saturday",
    "Sunday",
    "hours",
    // A code for another device.
    "ACDE",
    "serve",
    "demo",
    "card",
    "check",
    "import",
    "queue",
    "question",
    "grade",
    "name",
    "find",
    "engine",
    "diagram",
    "leaderboard",
    "lesson",
    "list",
    "plan",
    "show",
    "export",
    "summary",
    "backup",
    "restore",
    "move",
    "pause",
    "print",
    "remove",
    "resume",
    "topic",
    "words",
    // The name that standard input has, in JSON too.
    "input",
    // What is written for a period.
    "today",
    "yesterday",
    "this",
    "week",
    "days",
    "month",
    "months",
    "since",
    // Values of options.
    "black",
    "white",
    "light",
    "dark",
    "contrast",
    "english",
    "keep",
    "both",
    "last",
    "weeks",
    "members",
    "posts",
    "topics",
    "main-line",
    "every-line",
];

/// The words of a text that were written elsewhere.
fn written_elsewhere(text: &str) -> Vec<String> {
    let text = text.replace("sealed-move", "");
    let plain = |word: &&str| {
        // Addresses, zones, files, ids, options, variables, times of a machine, and markup have such signs.
        let of_machines = word.contains(['/', '_', '@', '<', '>', '=', '#', '+'])
            || word
                .trim_matches(|c: char| !c.is_alphanumeric())
                .contains(['.', ':'])
            || word.contains("--")
            || word.chars().any(|c| c.is_ascii_digit())
            || ELSEWHERE.contains(&word.trim_matches(|c: char| !c.is_alphanumeric()));
        let run = word
            .split(|c: char| !c.is_ascii_alphabetic())
            // Vowels stay what they are, and are doubled.
            .find(|run| {
                run.len() >= 4
                    && run.contains(|c| !"aeiouAEIOU".contains(c))
                    && !ELSEWHERE.contains(run)
                    // Patterns by the names that a program gives for them.
                    && !names().any(|name| name.split('-').any(|part| part == *run))
            });
        !of_machines && run.is_some()
    };
    text.split_whitespace()
        .filter(plain)
        .map(str::to_owned)
        .collect()
}

/// What can be read on a page, and what its controls are called.
const READ: &str = r#"
document.querySelectorAll("details").forEach((d) => (d.open = true));
const named = ["aria-label", "placeholder", "title", "alt"];
const texts = [document.title];
for (const e of document.querySelectorAll("body *")) {
  if (e.matches("script, style, noscript, datalist *, #set-zone *")) continue;
  if (!e.checkVisibility() && !e.matches("option")) continue;
  for (const name of named) if (e.hasAttribute(name)) texts.push(e.getAttribute(name));
  for (const node of e.childNodes) if (node.nodeType === Node.TEXT_NODE) texts.push(node.textContent);
}
return texts.map((text) => text.trim()).filter(Boolean);
"#;

/// What is cut, or sticks out on the right.
const CUT: &str = r#"
const wide = document.documentElement.clientWidth;
const name = (e) => `${e.tagName.toLowerCase()}#${e.id}.${e.className} "${(e.innerText ?? "").slice(0, 40)}"`;
const scrolls = (e) => { for (let at = e; at; at = at.parentElement) if (["auto", "scroll"].includes(getComputedStyle(at).overflowX)) return true; return false; };
const cut = [];
for (const e of document.querySelectorAll("body *")) {
  if (!e.checkVisibility() || e.matches("option, input, select, textarea, .unseen, .unseen *")) continue;
  const style = getComputedStyle(e);
  if (!scrolls(e) && e.getBoundingClientRect().right > wide + 0.5) cut.push(`out: ${name(e)}`);
  if (["hidden", "clip"].includes(style.overflowX) && e.scrollWidth > e.clientWidth + 1) cut.push(`cut: ${name(e)}`);
}
return cut.slice(0, 5);
"#;

/// What was found on a page: in which view, and what.
type Found = BTreeSet<(String, String)>;

async fn look(page: &Browser, view: &str, found: &mut Found) {
    let texts = page.run(READ, vec![]).await;
    for text in texts.as_array().expect("texts") {
        let text = text.as_str().unwrap_or_default();
        if !written_elsewhere(text).is_empty() {
            found.insert((view.to_owned(), text.to_owned()));
        }
    }
    let cut = page.run(CUT, vec![]).await;
    for cut in cut.as_array().expect("a list") {
        found.insert((view.to_owned(), cut.as_str().unwrap_or_default().to_owned()));
    }
}

/// Asks the room from a page, as its scripts do; gives the answer.
async fn ask(page: &Browser, path: &str, body: Option<Value>) -> Value {
    let script = "const [path, body] = arguments; \
        return fetch(path, body === null ? {} : { method: 'POST', headers: { 'content-type': 'application/json' }, \
        body: typeof body === 'string' ? body : JSON.stringify(body) }).then(async (r) => { const text = await r.text(); \
        try { return JSON.parse(text); } catch { return text; } })";
    page.run(script, vec![json!(path), body.unwrap_or(Value::Null)])
        .await
}

async fn view(page: &Browser, name: &str, filled: &str) {
    page.run("location.hash = arguments[0]", vec![json!(name)])
        .await;
    page.find(filled).await;
}

/// Waits until there is an open post besides those of these ids, and gives its id.
async fn next_open(page: &Browser, known: &[i64]) -> i64 {
    for _ in 0..600 {
        let posts = ask(page, "/api/posts", None).await;
        let open = posts.as_array().into_iter().flatten().find_map(|post| {
            let id = post["post"].as_i64()?;
            (post["open"] == true && !known.contains(&id)).then_some(id)
        });
        if let Some(id) = open {
            return id;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
    panic!("no post opens");
}

#[tokio::test(flavor = "multi_thread")]
async fn nothing_in_the_room_is_written_elsewhere_or_cut() {
    speak_pseudo_language();
    let room = RunningRoom::start_for("Клуб");
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    for page in [&coach, &anna] {
        page.screen(320, 800, Colours::Light).await;
    }
    let mut found = Found::new();
    anna.goto(&format!("{}/in/forged", room.origin())).await;
    look(&anna, "a forged link", &mut found).await;
    anna.goto(&room.member_link).await;
    anna.find("#name").await;
    look(&anna, "at the door", &mut found).await;
    room.member(&anna, "Анна").await;
    room.coach_called(&coach, "Розалинда").await;

    // A week's work.
    let checked = ask(&coach, "/api/coach/import?name=п.epd", Some(json!(FILE))).await;
    assert_eq!(checked.as_array().map(Vec::len), Some(8), "{checked}");
    let sound: Vec<i64> = checked
        .as_array()
        .into_iter()
        .flatten()
        .filter(|one| one["report"]["verdict"] == "sound")
        .filter_map(|one| one["position"].as_i64())
        .collect();
    ask(
        &coach,
        "/api/coach/queue",
        Some(json!({ "positions": sound })),
    )
    .await;
    ask(
        &coach,
        "/api/coach/queue/question",
        Some(json!({ "words": "Что дальше?", "fen": "", "topic": "Мат", "at_reveal": "Так." })),
    )
    .await;
    let again = ask(
        &coach,
        "/api/coach/import?name=р.epd",
        Some(json!(FILE.replace("Мат", "Пат"))),
    )
    .await;
    assert!(again[0]["same"].is_object(), "{again}");
    view(&coach, "check", "#checked .report").await;
    look(&coach, "check", &mut found).await;
    view(&coach, "week", "#week > li[data-item]").await;
    look(&coach, "week", &mut found).await;

    let mut known = Vec::new();
    for (answers, close) in [(["Rb1", "Ra8"], true), (["Rd7", "Rxd8+"], false)] {
        ask(&coach, "/api/coach/post-now", Some(json!({}))).await;
        let post = next_open(&anna, &known).await;
        known.push(post);
        for text in answers {
            let path = format!("/api/posts/{post}/answer");
            let body = json!({ "text": text, "source": format!("{post}{text}") });
            ask(&anna, &path, Some(body)).await;
            ask(&anna, &format!("/api/posts/{post}/hint"), Some(json!({}))).await;
        }
        if close {
            ask(
                &coach,
                &format!("/api/coach/posts/{post}/close"),
                Some(json!({})),
            )
            .await;
            anna.find("#stream .reveal").await;
        }
    }
    ask(
        &anna,
        "/api/say",
        Some(json!({ "text": "Добрый вечер", "source": "т", "to": "all" })),
    )
    .await;
    ask(&coach, "/api/coach/post-now", Some(json!({}))).await;
    let question = next_open(&anna, &known).await;
    let body = json!({ "text": "Дальше мат", "source": "в" });
    ask(&anna, &format!("/api/posts/{question}/answer"), Some(body)).await;
    anna.find("#stream").await;

    for (name, filled) in [
        ("talk", "#stream .reveal"),
        ("mine", "#mine table"),
        ("leaders", "#leaders table"),
        ("past", "#past details"),
        ("cards", "#cards .card-list"),
        ("cards/boden", "#cards .card"),
        ("cards/corridor", "#cards [data-card=corridor]"),
        ("kept", "#erase"),
    ] {
        view(&anna, name, filled).await;
        look(&anna, &format!("member: {name}"), &mut found).await;
    }
    // A step for each kind of the editor's, the first with moves and nothing of it wrong.
    let moves = json!([{ "san": "e4", "nags": [1], "after": "Да" }, { "san": "e5" }]);
    let steps = json!([
        { "kind": "stop", "moves": moves, "words": "Ход" },
        { "kind": "words" },
        { "kind": "stop" },
        { "kind": "question" },
        { "kind": "example" },
    ]);
    let draft = json!({ "content": { "title": "Линии", "steps": steps } });
    ask(&coach, "/api/coach/drafts", Some(draft)).await;
    for (name, filled) in [
        ("week", "#week > li[data-item], #week"),
        ("check", "#checked .report"),
        ("editor/1", "#draft .chess-board"),
        ("editor", "#begin-draft"),
        ("edit/1", "#edited .wrong, #edited .chess-board"),
        ("posts", "#posts details"),
        ("summary", "#summary table"),
        ("cards", "#cards .card-list"),
        ("cards/greco", "#cards .card"),
        ("talk", "#stream li"),
        ("members", "#members details[data-member]"),
        ("settings", "#save-settings"),
    ] {
        view(&coach, name, filled).await;
        look(&coach, &format!("coach: {name}"), &mut found).await;
    }
    // What is refused, too.
    for (page, path, body) in [
        (&coach, "/api/coach/board", json!({ "fen": "8/8" })),
        (
            &coach,
            "/api/coach/board",
            json!({ "fen": "", "typed": "Кр" }),
        ),
        (
            &coach,
            "/api/coach/drafts/1/take-in",
            json!({ "revision": 1 }),
        ),
        (&anna, "/api/say", json!({ "text": " ", "source": "п" })),
        (&anna, "/api/rename", json!({ "name": "Розалинда" })),
        (&coach, "/api/coach/post-now", json!({ "item": 999 })),
        (
            &coach,
            "/api/coach/cards/boden",
            json!({ "definition": "" }),
        ),
        (
            &coach,
            "/api/coach/cards/boden",
            json!({ "definition": "Да.", "fen": "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1", "moves": "Ла9" }),
        ),
        (&coach, "/api/coach/queue/999/time", json!({ "at": "?" })),
    ] {
        let told = ask(page, path, Some(body)).await;
        let told = told["error"].as_str().unwrap_or_default().to_owned();
        if !written_elsewhere(&told).is_empty() {
            found.insert((path.to_owned(), told));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
    tokio::join!(coach.close(), anna.close());
}

/// What a person reads of a request to Discord, with the name of the field.
fn texts_of(body: &Value, read: &mut impl FnMut(&str, &str)) {
    const READ: &[&str] = &[
        "content",
        "title",
        "label",
        "description",
        "placeholder",
        "name",
        "value",
    ];
    match body {
        Value::Array(items) => items.iter().for_each(|item| texts_of(item, read)),
        Value::Object(fields) => {
            for (key, value) in fields {
                match value {
                    Value::String(text) if READ.contains(&key.as_str()) => read(key, text),
                    _ => texts_of(value, read),
                }
            }
        }
        _ => {}
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn nothing_on_discord_is_written_elsewhere_or_too_long() {
    speak_pseudo_language();
    let club = Club::open_among(true, ["Розалинда", "Клуб", "шахматы"]).await;
    let (coach, channel) = (&club.coach, club.channel);
    let anna = club.member("Анна");
    let mut found = Found::new();
    let zone = ("zone", Given::Text("Europe/Lisbon".into()));
    coach.command(channel, "coach set-up", &[zone]).await;
    let file = coach.upload(Attach::text("п.epd", FILE));
    let put = ("put-into-week", Given::Flag(true));
    let report = coach
        .command(channel, "coach check", &[("file", file), put])
        .await;
    for _ in 0..7 {
        coach.press(report.message(), &pseudo("Next")).await;
    }
    coach.command(channel, "coach week", &[]).await;
    coach.command(channel, "coach post-now", &[]).await;
    // With a picture: the only messages that have one are the post and the reveal.
    let with_picture = |after: u64| {
        move |world: &World| {
            let mut messages = world.messages.values();
            let found = messages.find(|message| {
                message.channel == channel
                    && message.id > after
                    && message.only.is_none()
                    && !message.attachments.is_empty()
            });
            found.map(|message| message.id)
        }
    };
    let post = club.discord.until("a post", with_picture(0)).await;
    for text in ["Rd7", "nonsense", "Rxd8+"] {
        let moves = [("moves", Given::Text(text.into()))];
        anna.command(channel, "study answer", &moves).await;
    }
    for line in [
        "study hint",
        "study board",
        "study progress",
        "study leaderboard",
        "study card",
        "study points",
        "study my-data",
        "study help",
    ] {
        anna.command(channel, line, &[]).await;
    }
    for person in [&anna, coach] {
        let topic = ("topic", Given::Text("boden".into()));
        person.command(channel, "study card", &[topic]).await;
    }
    for line in [
        "coach summary",
        "coach answers",
        "coach settings",
        "coach permissions",
        "coach shelf",
        "coach post-now",
    ] {
        coach.command(channel, line, &[]).await;
    }
    coach.command(channel, "coach close", &[]).await;
    club.discord.until("the reveal", with_picture(post)).await;
    for entry in &club.discord.world().log {
        // Names of commands and of their choices are one in every language, beside which Discord is told others.
        let commands = entry.path.ends_with("/commands");
        texts_of(&entry.body, &mut |key, text| {
            if !(commands && key == "name" || written_elsewhere(text).is_empty()) {
                found.insert((entry.path.clone(), text.to_owned()));
            }
        });
    }
    assert!(found.is_empty(), "{found:#?}");
    assert_eq!(club.discord.violations(), Vec::<String>::new());
}

#[test]
fn nothing_on_the_console_is_written_elsewhere() {
    speak_pseudo_language();
    let mut found = Found::new();
    let folder = tempfile::tempdir().expect("a folder");
    let store = folder.path().join("клуб.sqlite").display().to_string();
    let with_store = |args: &[&str]| -> Vec<String> {
        let args = args.iter().map(|arg| (*arg).to_owned());
        args.chain(["--store".to_owned(), store.clone()]).collect()
    };
    let mut runs: Vec<(Vec<String>, &str)> = vec![
        (vec!["check".into(), "-".into()], FILE),
        (with_store(&["import", "--queue", "-"]), FILE),
        (with_store(&["queue"]), ""),
        (with_store(&["queue", "question", "Что?"]), ""),
        (with_store(&["leaderboard"]), ""),
        (with_store(&["queue", "card", "boden"]), ""),
        (with_store(&["queue", "card", "вилка"]), ""),
        (vec!["card".into()], ""),
        (vec!["card".into(), "reti".into()], ""),
        (vec!["card".into(), "вилка".into()], ""),
        (with_store(&["summary"]), ""),
        (with_store(&["leaderboard", "--period", "вчера"]), ""),
        (
            vec!["name".into(), "3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1".into()],
            "",
        ),
        (vec!["name".into(), "8/8".into()], ""),
        (
            vec![
                "find".into(),
                "--topic".into(),
                "вилка".into(),
                "нет.pgn".into(),
            ],
            "",
        ),
        (
            vec![
                "backup".into(),
                "нет/к.sqlite".into(),
                "--store".into(),
                "нет.sqlite".into(),
            ],
            "",
        ),
    ];
    let commands = every_command();
    assert!(commands.len() > 20, "{commands:?}");
    for command in commands {
        runs.push((
            command.into_iter().chain(["--help".to_owned()]).collect(),
            "",
        ));
    }
    for text in ["Rd7", "Rxd8+", "nonsense", "Qh9"] {
        let args = [
            "grade",
            "--position",
            "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
            "--stipulation",
            "#2",
            text,
        ];
        runs.push((args.map(str::to_owned).to_vec(), ""));
    }
    for (args, input) in &runs {
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        let ran = sealed_move(&args, input.as_bytes());
        for text in ran.out.lines().chain(ran.err.lines()) {
            if !written_elsewhere(text).is_empty() {
                found.insert((args.join(" "), text.to_owned()));
            }
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}
