//! Members, messages and links in the club room, as several people see them in real browsers: what is
//! taken away is gone from open pages, whoever is shut out is told, and nobody passes for somebody else.

use reqwest::{Client, Response, StatusCode, header, redirect::Policy};
use sealed_move_tests::{
    browser::{Browser, Driver},
    room::RunningRoom,
};
use serde_json::{Value, json};

/// A position whose solution nobody proves: only the coach judges it.
const BY_HAND: &str = "8/8/8/4k3/8/4K3/4P3/8 w - - bm Kd3; id \"king\";";

/// Whether a text is to be seen anywhere on the page.
async fn sees(page: &Browser, text: &str) -> bool {
    page.text("body").await.contains(text)
}

/// Waits until a text has gone from the page.
async fn until_gone(page: &Browser, text: &str) {
    page.until(
        &format!("\"{text}\" to be gone"),
        "return !document.body.innerText.includes(arguments[0])",
        vec![json!(text)],
    )
    .await;
}

/// Keeps a picture of a page where SEALED_MOVE_TEST_SHOTS names a folder, for looking at.
async fn shot(page: &Browser, name: &str) {
    use sealed_move_tests::browser::Colours;
    let Some(folder) = std::env::var_os("SEALED_MOVE_TEST_SHOTS") else {
        return;
    };
    for (size, width, height) in [("phone", 390, 844), ("desk", 1280, 900)] {
        page.screen(width, height, Colours::Light).await;
        let picture = page.client().screenshot().await.expect("a picture");
        let path = std::path::Path::new(&folder).join(format!("{name}-{size}.png"));
        std::fs::write(path, picture).expect("written");
    }
}

async fn say(page: &Browser, text: &str) {
    page.type_into("#text", text).await;
    page.press("Send").await;
    page.until_says("#stream", text).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn what_is_taken_back_or_hidden_is_gone_from_open_pages_and_kept_for_the_coach() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, boris) = tokio::join!(driver.open(), driver.open(), driver.open());
    tokio::join!(
        room.member(&anna, "Anna"),
        room.member(&boris, "Boris"),
        room.coach_called(&coach, "Rosalind")
    );
    say(&anna, "I live in the yellow house").await;
    say(&boris, "your chess is rubbish").await;
    coach.press("Talk").await;
    coach.until_says("#stream", "yellow house").await;
    anna.until_says("#stream", "rubbish").await;
    boris.until_says("#stream", "yellow house").await;
    // Only one's own can be taken back.
    assert_eq!(anna.count("#stream .said button").await, 1);
    assert_eq!(boris.count("#stream .said button").await, 1);

    anna.press("Take back").await;
    anna.until_says("dialog", "Your coach can still see it")
        .await;
    shot(&anna, "take-back").await;
    anna.press("Take it back").await;
    for page in [&anna, &boris] {
        until_gone(page, "yellow house").await;
    }
    coach.press("Hide the message of Boris").await;
    coach.press("Hide it").await;
    for page in [&anna, &boris] {
        until_gone(page, "rubbish").await;
    }
    // For a page loaded anew as well.
    boris.refresh().await;
    boris.find("#text").await;
    assert!(!sees(&boris, "rubbish").await && !sees(&boris, "yellow house").await);

    coach.until_says("#stream", "Taken back by Anna").await;
    coach.until_says("#stream", "Hidden by Rosalind").await;
    coach
        .run(
            "for (const e of document.querySelectorAll('#stream details')) e.open = true",
            vec![],
        )
        .await;
    coach.until_says("#stream", "yellow house").await;
    shot(&coach, "hidden").await;
    coach.press("Show again").await;
    anna.until_says("#stream", "rubbish").await;

    // The coach's own words carry the mark, a member's never.
    coach.type_into("#text", "Good evening").await;
    coach.click("#say button").await;
    anna.until_says("#stream .rank", "Coach").await;
    assert_eq!(anna.count("#stream .rank").await, 1);
    tokio::join!(coach.close(), anna.close(), boris.close());
}

#[tokio::test(flavor = "multi_thread")]
async fn a_name_that_looks_like_anothers_is_refused_with_a_free_one_to_take() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.coach_called(&coach, "Rosalind").await;
    anna.goto(&room.member_link).await;
    for forged in ["ROSALIND", "R\u{43e}salind", "Coach Rosalind", "C0ach"] {
        anna.find("#name").await.clear().await.expect("cleared");
        anna.type_into("#name", forged).await;
        anna.click("#enter-name button").await;
        anna.until_says("#enter-trouble", "Choose another name")
            .await;
    }
    shot(&anna, "name-refused").await;
    anna.find("#name").await.clear().await.expect("cleared");
    anna.type_into("#name", "rosalind").await;
    anna.click("#enter-name button").await;
    anna.press("Take \u{201c}rosalind 2\u{201d}").await;
    anna.find("#text").await;
    say(&anna, "hello").await;
    assert_eq!(anna.text("#stream .who").await, "rosalind 2");
    assert_eq!(anna.count("#stream .rank").await, 0);

    // The coach renames, and open pages follow.
    coach.press("Members").await;
    coach.press_first("details[data-member] > summary").await;
    coach
        .run(
            "const item = [...document.querySelectorAll('details[data-member]')].find((e) => e.querySelector('.number').innerText === 'rosalind 2'); \
             item.open = true; const input = item.querySelector('input'); input.value = 'Anna'; input.form.requestSubmit();",
            vec![],
        )
        .await;
    anna.until_says("#stream .who", "Anna").await;
    shot(&coach, "members").await;
    tokio::join!(coach.close(), anna.close());
}

#[tokio::test(flavor = "multi_thread")]
async fn muted_and_removed_members_are_told_on_their_open_page_and_both_are_undone() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, boris) = tokio::join!(driver.open(), driver.open());
    room.coach(&coach).await;
    room.member(&boris, "Boris").await;
    coach.press("Members").await;
    let unfold = "const item = [...document.querySelectorAll('details[data-member]')].find((e) => e.querySelector('.number').innerText === 'Boris'); \
        if (!item) return false; item.open = true; return true;";
    coach.until("Boris", unfold, vec![]).await;
    coach.press("Mute").await;
    boris.until_says("#muted", "you can answer positions").await;
    boris.type_into("#text", "let me speak").await;
    boris.press("Send").await;
    boris.until_says("#say-trouble", "has muted you").await;
    let kept = "return document.querySelector('#text').value";
    assert_eq!(boris.run(kept, vec![]).await, "let me speak");
    shot(&boris, "muted").await;
    coach.until_says("#members .stands", "Muted").await;
    coach.press("Let talk again").await;
    boris
        .until(
            "the mute to be lifted",
            "return document.querySelector('#muted').innerText === ''",
            vec![],
        )
        .await;
    boris.press("Send").await;
    boris.until_says("#stream", "let me speak").await;

    boris.type_into("#text", "half a sentence").await;
    coach.press("Remove from the group").await;
    coach.press("Remove").await;
    boris
        .until_says("#shut-out", "You are no longer in this group")
        .await;
    assert_eq!(boris.run(kept, vec![]).await, "half a sentence");
    shot(&boris, "removed").await;
    // Not by the same link with the same identity, either.
    let entered = "return fetch('/api/me').then((r) => r.status)";
    assert_eq!(boris.run(entered, vec![]).await, 403);
    coach.until_says("#members .stands", "Removed").await;
    coach.press("Let back in").await;
    boris.find("#say").await;
    boris
        .until(
            "what was typed",
            "return document.querySelector('#shut-out') === null && document.querySelector('#text').value === 'half a sentence'",
            vec![],
        )
        .await;
    tokio::join!(coach.close(), boris.close());
}

#[tokio::test(flavor = "multi_thread")]
async fn new_links_shut_out_at_once_and_say_so() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, second, anna) = tokio::join!(driver.open(), driver.open(), driver.open());
    tokio::join!(
        room.coach_called(&coach, "Rosalind"),
        room.coach_called(&second, "Viola"),
        room.member(&anna, "Anna")
    );
    // Two coaches are told apart, and a third may not be called like either.
    second.press("Talk").await;
    second.type_into("#text", "I am Viola").await;
    second.click("#say button").await;
    anna.until_says("#stream .who", "Viola").await;

    anna.type_into("#text", "I was just about to").await;
    coach.press("Settings").await;
    coach.press("Make a new link").await;
    coach.find("dialog").await;
    coach
        .run(
            "document.querySelector('dialog button.first').click()",
            vec![],
        )
        .await;
    coach
        .until_says("#settings .told", "The old link is dead")
        .await;
    anna.until_says("#shut-out", "The link to this room has changed")
        .await;
    assert_eq!(
        anna.run("return document.querySelector('#text').value", vec![])
            .await,
        "I was just about to"
    );
    shot(&anna, "link-changed").await;
    // The new link, opened in this browser, brings her back with what she typed.
    let link = coach
        .run(
            "return document.querySelector('#member-link').value",
            vec![],
        )
        .await;
    anna.goto(link.as_str().expect("a link")).await;
    anna.find("#text").await;
    anna.until(
        "what was typed",
        "return document.querySelector('#text').value === 'I was just about to'",
        vec![],
    )
    .await;

    // A new coach's link: the second coach is told at once, the first stays in.
    coach.press("Make a new coach's link").await;
    coach.find("dialog").await;
    coach
        .run(
            "document.querySelector('dialog button.first').click()",
            vec![],
        )
        .await;
    second
        .until_says("#shut-out", "The coach's link has changed")
        .await;
    coach
        .until_says("#settings .told", "The old link is dead")
        .await;
    shot(&coach, "coach-link").await;
    let status = "return fetch('/api/coach/members').then((r) => r.status)";
    assert_eq!(second.run(status, vec![]).await, 403);
    assert_eq!(coach.run(status, vec![]).await, 200);
    // By the new one she is a coach again, under the name she has; the first was never out.
    let link = coach
        .run("return document.querySelector('#coach-link').value", vec![])
        .await;
    second.goto(link.as_str().expect("a link")).await;
    second.find("#enter-name").await;
    let named = "return document.querySelector('#name').value";
    second
        .until("her name", &format!("{named} === 'Viola'"), vec![])
        .await;
    second.click("#enter-name button").await;
    second.find("#week-title").await;
    assert_eq!(second.run(status, vec![]).await, 200);
    coach.refresh().await;
    coach.find("#settings-title").await;
    tokio::join!(coach.close(), second.close(), anna.close());
}

#[tokio::test(flavor = "multi_thread")]
async fn a_code_carries_a_member_to_a_second_device() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (phone, tablet) = tokio::join!(driver.open(), driver.open());
    room.member(&phone, "Anna").await;
    say(&phone, "from the phone").await;
    phone.press("My work").await;
    phone.click("#new-code").await;
    phone.find("#device-code").await;
    let code = phone.text("#device-code").await;
    shot(&phone, "code").await;
    tablet.goto(&room.member_link).await;
    tablet
        .press("I am in this room already, on another device")
        .await;
    shot(&tablet, "code-entry").await;
    tablet.type_into("#code", "ACDE 3467").await;
    tablet.click("#enter-code button").await;
    tablet.until_says("#code-trouble", "not right").await;
    tablet.find("#code").await.clear().await.expect("cleared");
    tablet.type_into("#code", &code.to_lowercase()).await;
    tablet.click("#enter-code button").await;
    tablet.find("#text").await;
    // The same person: her own message can be taken back here, and is gone there.
    tablet.press("Take back").await;
    tablet.press("Take it back").await;
    phone.press("Room").await;
    until_gone(&phone, "from the phone").await;
    // The code was in no address.
    for page in [&phone, &tablet] {
        assert!(!page.address().await.contains(&code));
    }
    tokio::join!(phone.close(), tablet.close());
}

#[tokio::test(flavor = "multi_thread")]
async fn what_waits_for_the_coach_is_settled_without_a_verdict() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.coach_called(&coach, "Rosalind").await;
    room.member(&anna, "Anna").await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", BY_HAND).await;
    coach.press("Post it anyway: king").await;
    coach.press("Week").await;
    coach.press_first("#week button[id^=now]").await;
    coach.press("Post it now").await;
    anna.until_says("#open-post", "No. 1").await;
    for text in ["may the king go anywhere?", "hm, I do not know"] {
        anna.type_into("#text", text).await;
        anna.click("#answer").await;
        anna.until_says("#stream .sealed", text).await;
    }
    coach.press("Posts").await;
    coach
        .until_says("#homework", "Waiting for your word (2)")
        .await;
    // Nothing was judged, so nothing is offered to be overruled.
    assert!(!sees(&coach, "Overrule").await);
    shot(&coach, "waiting").await;
    let first = "const item = document.querySelector('#homework li'); item.querySelectorAll('details').forEach((d) => (d.open = true)); \
        item.querySelector('textarea').value = 'Yes, look for the quiet move.'; \
        [...item.querySelectorAll('button')].find((b) => b.innerText === 'Send the answer').click();";
    coach.run(first, vec![]).await;
    anna.until_says("#stream .sealed", "Yes, look for the quiet move.")
        .await;
    anna.until_says("#stream .sealed .rank", "Coach").await;
    coach
        .until_says("#homework", "Waiting for your word (1)")
        .await;
    coach.press("No answer needed").await;
    coach
        .until(
            "nothing to wait",
            "return document.querySelector('#homework') === null",
            vec![],
        )
        .await;
    anna.refresh().await;
    anna.until_says("#stream .sealed", "Yes, look for the quiet move.")
        .await;
    shot(&anna, "answered").await;
    tokio::join!(coach.close(), anna.close());
}

/// Someone with a script instead of a browser.
struct Script {
    client: Client,
    origin: String,
    cookies: Vec<String>,
}

impl Script {
    async fn by(room: &RunningRoom, link: &str) -> Self {
        let client = Client::builder()
            .redirect(Policy::none())
            .build()
            .expect("a client");
        let mut script = Self {
            client,
            origin: room.origin(),
            cookies: Vec::new(),
        };
        let response = script.client.get(link).send().await.expect("answered");
        script.keep(&response);
        script
    }

    fn keep(&mut self, response: &Response) {
        for cookie in response.headers().get_all(header::SET_COOKIE) {
            let cookie = cookie.to_str().expect("text");
            let pair = cookie.split(';').next().unwrap_or_default().to_owned();
            let name = pair.split('=').next().unwrap_or_default().to_owned();
            self.cookies
                .retain(|kept| !kept.starts_with(&format!("{name}=")));
            self.cookies.push(pair);
        }
    }

    async fn get(&self, path: &str) -> (StatusCode, Value) {
        let answer = self
            .client
            .get(format!("{}{path}", self.origin))
            .header(header::COOKIE, self.cookies.join("; "))
            .send()
            .await
            .expect("answered");
        (answer.status(), answer.json().await.unwrap_or_default())
    }

    async fn post(&mut self, path: &str, body: Value) -> (StatusCode, Value) {
        let answer = self
            .client
            .post(format!("{}{path}", self.origin))
            .header(header::COOKIE, self.cookies.join("; "))
            .header(header::ORIGIN, &self.origin)
            .header(header::CONTENT_TYPE, "application/json")
            .body(body.to_string())
            .send()
            .await
            .expect("answered");
        self.keep(&answer);
        (answer.status(), answer.json().await.unwrap_or_default())
    }
}

#[tokio::test]
async fn forged_requests_reach_neither_the_coachs_calls_nor_others_messages_nor_a_code() {
    let room = RunningRoom::start();
    let mut coach = Script::by(&room, &room.coach_link).await;
    // The link alone is no coach: it has to say who it is.
    assert_eq!(
        coach.get("/api/coach/members").await.0,
        StatusCode::UNAUTHORIZED
    );
    coach
        .post("/api/coach/enter", json!({ "name": "Rosalind" }))
        .await;
    let mut anna = Script::by(&room, &room.member_link).await;
    let mut mallory = Script::by(&room, &room.member_link).await;
    anna.post("/api/enter", json!({ "name": "Anna" })).await;
    mallory
        .post("/api/enter", json!({ "name": "Mallory" }))
        .await;
    let (_, members) = coach.get("/api/coach/members").await;
    let id = |name: &str| {
        let all = members.as_array().expect("a list");
        let one = all.iter().find(|member| member["name"] == name);
        one.and_then(|member| member["id"].as_i64()).expect(name)
    };
    let (anna_id, mallory_id) = (id("Anna"), id("Mallory"));
    let (_, said) = anna
        .post("/api/say", json!({ "text": "hello there" }))
        .await;
    let line = said["id"].as_i64().expect("an id");

    for path in [
        format!("/api/coach/members/{anna_id}/rename"),
        format!("/api/coach/members/{anna_id}/mute"),
        format!("/api/coach/members/{anna_id}/unmute"),
        format!("/api/coach/members/{anna_id}/remove"),
        format!("/api/coach/members/{anna_id}/let-back"),
        format!("/api/coach/members/{mallory_id}/merge"),
        format!("/api/coach/members/{anna_id}/kept"),
        format!("/api/coach/members/{anna_id}/erase"),
        format!("/api/coach/talk/{line}/hide"),
        format!("/api/coach/talk/{line}/put-back"),
        "/api/coach/replies/1/hide".into(),
        "/api/coach/replies/1/judge".into(),
        "/api/coach/replies/1/answer".into(),
        "/api/coach/replies/1/no-answer".into(),
        "/api/coach/coach-link".into(),
        "/api/coach/enter".into(),
    ] {
        let body = json!({ "name": "Zoe", "why": "", "words": "x", "other": anna_id });
        let (status, told) = mallory.post(&path, body).await;
        assert_eq!(status, StatusCode::FORBIDDEN, "{path}: {told}");
    }
    for path in ["/api/coach/members", "/api/coach/talk", "/api/coach/deeds"] {
        assert_eq!(mallory.get(path).await.0, StatusCode::FORBIDDEN, "{path}");
    }
    // Another's message, and one that is none, are refused alike.
    let (status, other) = mallory
        .post(&format!("/api/talk/{line}/take-back"), json!({}))
        .await;
    let (_, none) = mallory.post("/api/talk/99999/take-back", json!({})).await;
    assert_eq!((status, &other), (StatusCode::NOT_FOUND, &none));
    assert_eq!(
        anna.get("/api/talk").await.1.as_array().map(Vec::len),
        Some(1)
    );

    // A code holds once; a second device of somebody else gets nothing from it.
    let (_, shown) = anna.post("/api/device-code", json!({})).await;
    let code = shown["code"].as_str().expect("a code").to_owned();
    let mut tablet = Script::by(&room, &room.member_link).await;
    assert_eq!(
        mallory.post("/api/device", json!({ "code": code })).await.0,
        StatusCode::BAD_REQUEST,
        "one who has a name is somebody already"
    );
    assert_eq!(
        tablet.post("/api/device", json!({ "code": code })).await.0,
        StatusCode::OK
    );
    assert_eq!(tablet.get("/api/me").await.1["name"], "Anna");
    let mut thief = Script::by(&room, &room.member_link).await;
    let (status, told) = thief.post("/api/device", json!({ "code": code })).await;
    assert_eq!(status, StatusCode::BAD_REQUEST, "replayed");
    assert!(
        told["error"]
            .as_str()
            .is_some_and(|told| told.contains("too old"))
    );
    // Nor is it to be had without a link.
    let mut stranger = Script::by(&room, &format!("{}/in/none", room.origin())).await;
    assert_eq!(
        stranger
            .post("/api/device", json!({ "code": code }))
            .await
            .0,
        StatusCode::FORBIDDEN
    );
    // Guessing is stopped, whatever browser it comes from, and does not help the right code.
    let (_, shown) = anna.post("/api/device-code", json!({})).await;
    let right = shown["code"].as_str().expect("a code").to_owned();
    let mut stopped = false;
    for _ in 0..30 {
        let mut guesser = Script::by(&room, &room.member_link).await;
        let (status, _) = guesser
            .post("/api/device", json!({ "code": "ACDEFHJK" }))
            .await;
        stopped |= status == StatusCode::TOO_MANY_REQUESTS;
    }
    assert!(stopped);
    assert_eq!(
        thief.post("/api/device", json!({ "code": right })).await.0,
        StatusCode::TOO_MANY_REQUESTS
    );

    // Removed: nothing is open to any of her devices, and merging is no way in.
    coach
        .post(&format!("/api/coach/members/{anna_id}/remove"), json!({}))
        .await;
    for script in [&mut anna, &mut tablet] {
        assert_eq!(script.get("/api/talk").await.0, StatusCode::FORBIDDEN);
        let (status, told) = script
            .post("/api/enter", json!({ "name": "Annabel" }))
            .await;
        assert_eq!(
            (status, &told["shut_out"]),
            (StatusCode::FORBIDDEN, &json!("removed"))
        );
        let (status, _) = script.post("/api/say", json!({ "text": "hello" })).await;
        assert_eq!(status, StatusCode::FORBIDDEN);
    }
    let (status, _) = coach
        .post(
            &format!("/api/coach/members/{mallory_id}/merge"),
            json!({ "other": anna_id }),
        )
        .await;
    assert_eq!(status, StatusCode::BAD_REQUEST);
    let (status, kept) = coach
        .post(&format!("/api/coach/members/{anna_id}/kept"), json!({}))
        .await;
    assert_eq!(
        (status, &kept["talk"][0]["text"]),
        (StatusCode::OK, &json!("hello there"))
    );
}
