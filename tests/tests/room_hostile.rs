//! What comes to the club room with bad intent, or by mistake and far too large: answered clearly, and
//! nothing lost.

use std::fmt::Write;

use futures::stream;
use reqwest::{Body, Client, Response, StatusCode, header, redirect::Policy};
use sealed_move_tests::{browser::Driver, room::RunningRoom};
use serde_json::{Value, json};

const MARKUP: &str = "<img src=x onerror=\"window.taken=1\"><b>Ann</b>";
const SCRIPT: &str = "</p><script>window.taken=1</script><svg onload=window.taken=1>";

/// Someone with a script instead of a browser.
struct Visitor {
    client: Client,
    origin: String,
    cookies: Vec<String>,
}

impl Visitor {
    fn new(room: &RunningRoom) -> Self {
        Self {
            client: Client::builder()
                .redirect(Policy::none())
                .build()
                .expect("a client"),
            origin: room.origin(),
            cookies: Vec::new(),
        }
    }

    fn keep(&mut self, response: &Response) {
        for cookie in response.headers().get_all(header::SET_COOKIE) {
            let cookie = cookie.to_str().expect("text");
            assert!(
                cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"),
                "{cookie}"
            );
            self.cookies
                .push(cookie.split(';').next().unwrap_or_default().to_owned());
        }
    }

    async fn follow(&mut self, link: &str) -> Response {
        let response = self.client.get(link).send().await.expect("answered");
        self.keep(&response);
        response
    }

    async fn get(&self, path: &str) -> Response {
        self.client
            .get(format!("{}{path}", self.origin))
            .header(header::COOKIE, self.cookies.join("; "))
            .send()
            .await
            .expect("answered")
    }

    async fn post(&mut self, path: &str, body: &Value) -> Response {
        let response = self
            .send(path, body.to_string().into_bytes(), "application/json")
            .await;
        self.keep(&response);
        response
    }

    async fn send(&self, path: &str, body: Vec<u8>, kind: &str) -> Response {
        self.client
            .post(format!("{}{path}", self.origin))
            .header(header::COOKIE, self.cookies.join("; "))
            .header(header::ORIGIN, &self.origin)
            .header(header::CONTENT_TYPE, kind)
            .body(body)
            .send()
            .await
            .expect("answered")
    }
}

async fn said(response: Response) -> String {
    response.text().await.expect("text")
}

#[tokio::test]
async fn forged_links_and_foreign_requests_open_nothing() {
    let room = RunningRoom::start();
    let mut stranger = Visitor::new(&room);

    // Forged, cut short, lengthened, and in capitals: refused with a page that says what to do.
    let real = RunningRoom::secret(&room.coach_link).to_owned();
    assert!(real.len() >= 32, "at least 128 bits in hexadecimal digits");
    for forged in [
        "0".repeat(64),
        real[..63].to_owned(),
        format!("{real}0"),
        real.to_uppercase(),
        "%00".into(),
        "a".repeat(5_000),
    ] {
        let refused = stranger
            .follow(&format!("{}/in/{forged}", room.origin()))
            .await;
        assert_eq!(refused.status(), StatusCode::FORBIDDEN, "{forged}");
        assert!(refused.headers().get(header::SET_COOKIE).is_none());
        let page = said(refused).await;
        assert!(
            page.contains("This link does not open the room")
                && page.contains("If you are the coach"),
            "{page}"
        );
    }
    assert!(stranger.cookies.is_empty());

    // Without a link there is nothing to see.
    for path in [
        "/",
        "/coach",
        "/api/me",
        "/api/talk",
        "/api/posts",
        "/api/feed",
        "/api/coach/week",
        "/api/kept",
    ] {
        assert_eq!(
            stranger.get(path).await.status(),
            StatusCode::FORBIDDEN,
            "{path}"
        );
    }

    // The secret is moved out of the address at once.
    let mut member = Visitor::new(&room);
    let entered = member.follow(&room.member_link).await;
    assert_eq!(entered.status(), StatusCode::SEE_OTHER);
    assert_eq!(entered.headers()[header::LOCATION], "/entrance");
    assert_eq!(entered.headers()["referrer-policy"], "no-referrer");
    let page = member.get("/").await;
    assert_eq!(page.status(), StatusCode::OK);
    let policy = page.headers()["content-security-policy"]
        .to_str()
        .expect("text")
        .to_owned();
    assert!(
        policy.contains("default-src 'none'") && !policy.contains("unsafe"),
        "{policy}"
    );

    // A member is no coach.
    for path in [
        "/coach",
        "/api/coach/week",
        "/api/coach/settings",
        "/api/coach/summary",
        "/api/coach/posts/1/replies",
    ] {
        assert_eq!(
            member.get(path).await.status(),
            StatusCode::FORBIDDEN,
            "{path}"
        );
    }
    member.post("/api/enter", &json!({ "name": "Anna" })).await;
    for path in [
        "/api/coach/pause",
        "/api/coach/post-now",
        "/api/coach/link",
        "/api/coach/replies/1/overrule",
    ] {
        let refused = member.post(path, &json!({})).await;
        assert_eq!(refused.status(), StatusCode::FORBIDDEN, "{path}");
        assert!(said(refused).await.contains("Only the coach"));
    }

    // Another site's form, and a name pointed at this machine.
    for (name, value) in [
        (header::ORIGIN, "https://elsewhere.example"),
        (header::ORIGIN, "null"),
        (header::HOST, "elsewhere.example"),
    ] {
        let foreign = member
            .client
            .post(format!("{}/api/say", room.origin()))
            .header(header::COOKIE, member.cookies.join("; "))
            .header(header::CONTENT_TYPE, "application/json")
            .header(name.clone(), value)
            .body(r#"{"text":"hello"}"#)
            .send()
            .await
            .expect("answered");
        assert_eq!(foreign.status(), StatusCode::FORBIDDEN, "{name}: {value}");
    }
    let talk = said(member.get("/api/talk").await).await;
    assert_eq!(talk, "[]", "nothing was said");
}

#[tokio::test(flavor = "multi_thread")]
async fn markup_and_script_are_only_ever_text() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.coach(&coach).await;
    room.member(&anna, MARKUP).await;
    anna.type_into("#text", SCRIPT).await;
    anna.press("Send").await;
    anna.until_says("#stream", SCRIPT).await;
    anna.until_says("#stream .who", "<b>Ann</b>").await;

    // The same in a file's ids, topics and comments, and before the coach's eyes.
    let file = format!(
        "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"{}\"; c0 \"{SCRIPT}\";\n",
        MARKUP.replace('"', "'")
    );
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "<i>week</i>.epd", &file).await;
    coach.until_says("#checked", "<b>Ann</b>").await;
    coach.press("Put the sound one into the week").await;
    coach.press("Week").await;
    coach.until_says("#week", "<i>week</i>.epd").await;
    coach
        .type_into("#week input[list]", "<script>window.taken=1</script>\n")
        .await;
    coach.run("document.activeElement.blur()", vec![]).await;
    coach.until_says("#week-told", "<script>").await;
    coach.press_first("#week button[id^=now]").await;
    coach.press("Post it now").await;
    anna.until_says("#open-post .topic", "<script>window.taken=1</script>")
        .await;
    anna.type_into("#text", SCRIPT).await;
    anna.click("#answer").await;
    anna.until_says("#stream .sealed", SCRIPT).await;
    coach.press("Posts").await;
    coach.press_first("details.past > summary").await;
    coach.until_says("#posts .replies", "<svg onload").await;

    for page in [&coach, &anna] {
        assert_eq!(
            page.run("return window.taken ?? null", vec![]).await,
            Value::Null
        );
        assert_eq!(
            page.count("#stream script, #stream b, #stream svg, #stream img[src=x]")
                .await,
            0
        );
    }
    tokio::join!(coach.close(), anna.close());
}

#[tokio::test]
async fn what_is_far_too_large_is_answered_clearly() {
    let room = RunningRoom::start();
    let mut coach = Visitor::new(&room);
    coach.follow(&room.coach_link).await;
    coach
        .post("/api/coach/enter", &json!({ "name": "Rosalind" }))
        .await;
    let mut anna = Visitor::new(&room);
    anna.follow(&room.member_link).await;
    anna.post("/api/enter", &json!({ "name": "Anna" })).await;

    // Names: cut, never refused for their length; empty ones refused.
    let named = anna
        .post("/api/enter", &json!({ "name": "A".repeat(9_000) }))
        .await;
    assert_eq!(named.status(), StatusCode::OK);
    let named: Value = serde_json::from_str(&said(named).await).expect("JSON");
    assert_eq!(
        named["name"].as_str().map(|name| name.chars().count()),
        Some(80)
    );
    let nameless = anna
        .post("/api/enter", &json!({ "name": " \u{202e}\n " }))
        .await;
    assert!(nameless.status().is_client_error() || said(nameless).await.contains("Member"));

    // A position to answer.
    let epd = b"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"back-rank\";".to_vec();
    let checked = coach
        .send(
            "/api/coach/import?name=a.epd",
            epd,
            "application/octet-stream",
        )
        .await;
    let checked: Value = serde_json::from_str(&said(checked).await).expect("JSON");
    let position = checked[0]["position"].as_i64().expect("kept");
    coach
        .post("/api/coach/queue", &json!({ "positions": [position] }))
        .await;
    coach.post("/api/coach/post-now", &json!({})).await;
    let post = loop {
        let posts: Value =
            serde_json::from_str(&said(anna.get("/api/posts").await).await).expect("JSON");
        if let Some(id) = posts[0]["post"].as_i64() {
            break id;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    };

    // A script that hammers is held up, and nobody else is.
    let mut ben = Visitor::new(&room);
    ben.follow(&room.member_link).await;
    ben.post("/api/enter", &json!({ "name": "Ben" })).await;
    let mut held_up = None;
    for n in 0..200 {
        let said = json!({ "text": format!("hello {n}"), "source": format!("b{n}") });
        let response = ben.post("/api/say", &said).await;
        if response.status() == StatusCode::TOO_MANY_REQUESTS {
            held_up = Some(self::said(response).await);
            break;
        }
    }
    assert!(held_up.expect("held up").contains("send it again"));

    // Replies of 50,000 characters are taken and judged; longer ones are refused before they are read.
    for character in ["x", "\u{265b}", "\""] {
        let reply = anna
            .post(
                &format!("/api/posts/{post}/answer"),
                &json!({ "text": character.repeat(50_000), "source": "" }),
            )
            .await;
        assert_eq!(reply.status(), StatusCode::OK, "{character}");
        assert!(said(reply).await.contains("\"verdict\""), "{character}");
        let longer = anna
            .post(
                &format!("/api/posts/{post}/answer"),
                &json!({ "text": character.repeat(50_001) }),
            )
            .await;
        assert_eq!(
            longer.status(),
            StatusCode::PAYLOAD_TOO_LARGE,
            "{character}"
        );
        assert!(said(longer).await.contains("50,000 characters"));
    }
    let huge = anna
        .post("/api/say", &json!({ "text": "x".repeat(700_000) }))
        .await;
    assert_eq!(huge.status(), StatusCode::PAYLOAD_TOO_LARGE);
    let long_talk = anna
        .post("/api/say", &json!({ "text": "well ".repeat(10_000) }))
        .await;
    assert_eq!(long_talk.status(), StatusCode::BAD_REQUEST);
    assert!(said(long_talk).await.contains("4,000 characters"));

    // Broken requests.
    for (body, kind) in [
        ("{", "application/json"),
        ("{}", "application/json"),
        ("text=a", "application/x-www-form-urlencoded"),
    ] {
        let refused = anna.send("/api/say", body.into(), kind).await;
        assert!(refused.status().is_client_error(), "{body}");
        assert!(said(refused).await.contains("could not be read"));
    }

    // Files: over 16 MB, empty, zeros, and no text at all.
    let file = |bytes: Vec<u8>| {
        coach.send(
            "/api/coach/import?name=week.pgn",
            bytes,
            "application/octet-stream",
        )
    };
    // In pieces, as a stream without a length: refused once the bound is passed.
    let pieces = std::iter::repeat_n(vec![b'x'; 1024 * 1024], 16).chain([vec![b'x']]);
    let body = Body::wrap_stream(stream::iter(pieces.map(Ok::<_, std::io::Error>)));
    let refused = coach
        .client
        .post(format!("{}/api/coach/import?name=week.pgn", room.origin()))
        .header(header::COOKIE, coach.cookies.join("; "))
        .header(header::ORIGIN, room.origin())
        .body(body)
        .send()
        .await
        .expect("answered");
    assert_eq!(refused.status(), StatusCode::PAYLOAD_TOO_LARGE);
    assert!(said(refused).await.contains("16 MB"));
    assert!(said(file(Vec::new()).await).await.contains("empty"));
    for bytes in [vec![0; 100_000], [0xff, 0xfe, 0x80, 0x81].repeat(1_000)] {
        let answered = file(bytes).await;
        assert!(!answered.status().is_server_error());
        assert!(!said(answered).await.is_empty(), "says what is wrong");
    }

    // Ten megabytes of PGN: each game's position is checked, the broken one is named by its line.
    let mut pgn = String::new();
    for game in 1..=100 {
        let comment = "a long comment of many words ".repeat(3_600);
        let _ = write!(
            pgn,
            "[Event \"Game {game}\"]\n[SetUp \"1\"]\n[FEN \"6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 {game}\"]\n[Result \"1-0\"]\n\n{{{comment}}} 1. Ra8# 1-0\n\n"
        );
    }
    let broken_at = pgn.lines().count() + 2;
    pgn.push_str("[Event \"Broken\"]\n[FEN \"9/8/8/8/8/8/8/8 w - - 0 1\"]\n\n1. e4 *\n");
    assert!(pgn.len() > 10_000_000);
    let answered = file(pgn.into_bytes()).await;
    assert_eq!(answered.status(), StatusCode::OK);
    let reports: Value = serde_json::from_str(&said(answered).await).expect("JSON");
    let reports = reports.as_array().expect("a list");
    assert_eq!(reports.len(), 101);
    assert!(
        reports[..100]
            .iter()
            .all(|one| one["report"]["keys"] == json!(["Ra8#"]))
    );
    let broken = reports[100]["report"]["message"]
        .as_str()
        .unwrap_or_default();
    let named =
        (broken_at - 1..=broken_at + 2).any(|line| broken.contains(&format!("line {line}")));
    assert!(named, "around line {broken_at}: {broken}");

    // And the room goes on.
    let reply = anna
        .post(
            &format!("/api/posts/{post}/answer"),
            &json!({ "text": "Rxd8+" }),
        )
        .await;
    assert!(said(reply).await.contains("solved"));
}
