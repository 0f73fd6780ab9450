//! The club room when things fail: killed between an answer and its verdict; Discord refused, unreachable or
//! thrown out beside it; a port that may not be had; and what the console, the exit status and the coach's
//! page then say.

use std::{
    fs::File,
    net::TcpListener,
    path::Path,
    process::{Child, Command, Stdio},
    time::Duration,
};

use reqwest::{Client, Response, StatusCode, header, redirect::Policy};
use sealed_move_store::Store;
use sealed_move_tests::discord::{Discord, faults::Trouble, gateway::Out};
use serde_json::{Value, json};

/// Sam Loyd, London Chess Bulletin (?), 1861 (from memory), `loyd-1861` of `tests/data/published_mates.epd`:
/// its solution takes a second or more to prove, and until then a first answer waits.
const SLOW: &str = "n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - dm 5; id \"slow\";";

/// `sealed-move serve` with a log of its own.
struct Program {
    child: Child,
    folder: tempfile::TempDir,
}

impl Program {
    /// Starts it on a new store, with these settings and, if one is given, a Discord.
    fn start(settings: &str, discord: Option<&Discord>) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("sealed-move.toml"), settings).expect("written");
        let child = launch(folder.path(), discord, None);
        Self { child, folder }
    }

    fn log(&self) -> String {
        std::fs::read_to_string(self.folder.path().join("out.log")).unwrap_or_default()
    }

    /// Waits until the console says something, and gives the whole of it.
    async fn until(&self, words: &str) -> String {
        for _ in 0..1_200 {
            let log = self.log();
            if log.contains(words) {
                return log;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        panic!("it never says \"{words}\":\n{}", self.log());
    }

    /// The last link that begins so on the console.
    async fn link(&self, whose: &str) -> String {
        let log = self.until(whose).await;
        let line = log.lines().rfind(|line| line.starts_with(whose));
        let line = line.expect("just found");
        line[whose.len()..].trim().to_owned()
    }

    async fn ended(&mut self) -> i32 {
        for _ in 0..1_200 {
            if let Ok(Some(status)) = self.child.try_wait() {
                return status.code().unwrap_or(-1);
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        panic!("it does not end:\n{}", self.log());
    }

    async fn stop(&mut self) -> i32 {
        let id = self.child.id().to_string();
        let asked = Command::new("kill").args(["-TERM", &id]).status();
        assert!(asked.is_ok_and(|status| status.success()));
        self.ended().await
    }

    fn kill_and_start_again(&mut self, discord: Option<&Discord>) {
        self.child.kill().expect("killed");
        self.child.wait().expect("gone");
        std::fs::remove_file(self.folder.path().join("out.log")).expect("there was one");
        self.child = launch(self.folder.path(), discord, None);
    }

    fn store(&self) -> Store {
        Store::open(&self.folder.path().join("club.sqlite")).expect("opened")
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn launch(folder: &Path, discord: Option<&Discord>, token_file: Option<&Path>) -> Child {
    let out = File::options()
        .create(true)
        .append(true)
        .open(folder.join("out.log"))
        .expect("a log");
    let mut command = sealed_move_tests::command();
    command
        .arg("serve")
        .arg("--store")
        .arg(folder.join("club.sqlite"))
        .arg("--config")
        .arg(folder.join("sealed-move.toml"))
        .stdin(Stdio::null())
        .stdout(out.try_clone().expect("a log"))
        .stderr(out);
    if let Some(discord) = discord {
        command.env("SEALED_MOVE_DISCORD_API", &discord.url);
        match token_file {
            Some(file) => command.env("DISCORD_TOKEN_FILE", file),
            None => command.env("DISCORD_TOKEN", &discord.token),
        };
    }
    command.spawn().expect("it starts")
}

/// A free port's room, whose posts go out half a day from now.
fn settings() -> String {
    let post_time = (chrono::Utc::now() + chrono::Duration::hours(12)).format("%H:%M");
    format!(
        "[room]\naddress = \"127.0.0.1:0\"\n\n[group]\nname = \"Lantern Lane\"\npost_time = \"{post_time}\"\n\n\
         [check]\nseconds = 120.0\nreply_seconds = 60.0\n"
    )
}

/// Someone with a script instead of a browser.
struct Visitor {
    client: Client,
    origin: String,
    cookies: Vec<String>,
}

impl Visitor {
    /// Comes in by a link.
    async fn by(link: &str) -> Self {
        let client = Client::builder().redirect(Policy::none()).build();
        let client = client.expect("a client");
        let response = client.get(link).send().await.expect("answered");
        let end = link
            .find("/in/")
            .or_else(|| link.find("/coach/"))
            .unwrap_or(link.len());
        let mut visitor = Self {
            client,
            origin: link[..end].to_owned(),
            cookies: Vec::new(),
        };
        visitor.keep(&response);
        visitor
    }

    /// Comes in by the coach's link, under a name.
    async fn coaching(link: &str) -> Self {
        let mut coach = Self::by(link).await;
        coach
            .post("/api/coach/enter", &json!({"name": "Rosalind"}))
            .await;
        coach
    }

    fn keep(&mut self, response: &Response) {
        for cookie in response.headers().get_all(header::SET_COOKIE) {
            let cookie = cookie.to_str().expect("text");
            self.cookies
                .push(cookie.split(';').next().unwrap_or_default().to_owned());
        }
    }

    async fn get(&self, path: &str) -> Value {
        let response = self
            .client
            .get(format!("{}{path}", self.origin))
            .header(header::COOKIE, self.cookies.join("; "))
            .send()
            .await
            .expect("answered");
        assert_eq!(response.status(), StatusCode::OK, "{path}");
        response.json().await.expect("JSON")
    }

    fn request(&self, path: &str, body: impl Into<reqwest::Body>) -> reqwest::RequestBuilder {
        self.client
            .post(format!("{}{path}", self.origin))
            .header(header::COOKIE, self.cookies.join("; "))
            .header(header::ORIGIN, &self.origin)
            .header(header::CONTENT_TYPE, "application/json")
            .body(body)
    }

    async fn post(&mut self, path: &str, body: &Value) -> Value {
        let response = self.request(path, body.to_string()).send().await;
        let response = response.expect("answered");
        self.keep(&response);
        let status = response.status();
        let text = response.text().await.expect("text");
        assert_eq!(status, StatusCode::OK, "{path}: {text}");
        serde_json::from_str(&text).unwrap_or(Value::Null)
    }

    /// As the coach: has a line of EPD checked, queued and posted; gives the post once it is open.
    async fn open(&mut self, epd: &str) -> i64 {
        let checked = self.request("/api/coach/import?name=a.epd", epd.to_owned());
        let checked: Value = checked
            .send()
            .await
            .expect("answered")
            .json()
            .await
            .expect("JSON");
        let position = checked[0]["position"].as_i64().expect("kept");
        self.post("/api/coach/queue", &json!({"positions": [position]}))
            .await;
        self.post("/api/coach/post-now", &json!({"item": null}))
            .await;
        for _ in 0..400 {
            let posts = self.get("/api/posts").await;
            if let Some(post) = posts[0]["post"].as_i64() {
                return post;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        panic!("no post opens");
    }

    /// As the coach: waits until a word to the coaches holds these words.
    async fn until_told(&self, words: &str) {
        for _ in 0..1_200 {
            let week = self.get("/api/coach/week").await;
            if week["notes"].to_string().contains(words) {
                return;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        panic!(
            "the coach is never told \"{words}\": {}",
            self.get("/api/coach/week").await["notes"]
        );
    }

    /// As the coach: how Discord fares.
    async fn discord_is(&self) -> Value {
        let chats = self.get("/api/coach/chats").await;
        let rows = chats.as_array().expect("rows").clone();
        let found = rows.into_iter().find(|row| row["name"] == "Discord");
        found.unwrap_or_default()
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn killed_between_an_answer_and_its_verdict_it_is_judged_once_at_the_next_start() {
    let mut room = Program::start(&settings(), None);
    let mut coach = Visitor::coaching(&room.link("For the coach:").await).await;
    let mut ana = Visitor::by(&room.link("For members:").await).await;
    ana.post("/api/enter", &json!({"name": "Ana"})).await;
    let post = coach.open(SLOW).await;
    let kept = sealed_move_store::PostId::of(post);
    // Among others, and as an explicit answer: on disk while the solution is still being proved.
    for (path, source) in [
        ("/api/say".to_owned(), "one"),
        (format!("/api/posts/{post}/answer"), "two"),
    ] {
        room.kill_and_start_again(None);
        let mut ana = Visitor {
            client: ana.client.clone(),
            origin: Visitor::by(&room.link("For members:").await).await.origin,
            cookies: ana.cookies.clone(),
        };
        let body = json!({"text": "1.b4", "source": source}).to_string();
        let sending = tokio::spawn(ana.request(&path, body.clone()).send());
        let store = room.store();
        let mut on_disk = false;
        for _ in 0..2_000 {
            on_disk = store
                .read_blocking(move |db| {
                    let unjudged = db.unjudged_replies()?;
                    Ok(!db.inbox()?.is_empty() || !unjudged.is_empty())
                })
                .expect("read");
            if on_disk || sending.is_finished() {
                break;
            }
            tokio::time::sleep(Duration::from_millis(2)).await;
        }
        assert!(on_disk, "{path}: judged before it was on disk");
        room.kill_and_start_again(None);
        assert!(
            !sending
                .await
                .expect("ended")
                .is_ok_and(|r| r.status().is_success())
        );
        // At the next start, without anybody doing anything.
        let mut verdicts = 0;
        for _ in 0..2_400 {
            verdicts = store
                .read_blocking(move |db| {
                    let replies = db.replies_to(kept)?;
                    Ok(replies.iter().filter(|of| of.verdict.is_some()).count())
                })
                .expect("read");
            let wanted = if source == "one" { 1 } else { 2 };
            if verdicts == wanted {
                break;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        assert_eq!(verdicts, if source == "one" { 1 } else { 2 }, "{path}");
        // The page sends again what it had no answer to, and that changes nothing.
        ana.origin = Visitor::by(&room.link("For members:").await).await.origin;
        let again = ana.request(&path, body).send().await.expect("answered");
        assert_eq!(again.status(), StatusCode::OK, "{path}");
        let replies = store
            .read_blocking(move |db| Ok((db.replies_to(kept)?, db.inbox()?)))
            .expect("read");
        assert_eq!(replies.0.len(), verdicts, "{path}: once");
        assert!(replies.0.iter().all(|of| of.name == "Ana") && replies.1.is_empty());
        let on_file = store
            .read_blocking(move |db| {
                let replies = db.replies_to(kept)?;
                let each = replies
                    .iter()
                    .map(|of| Ok(db.verdicts_on(of.reply.id)?.len()));
                each.collect::<Result<Vec<_>, _>>()
            })
            .expect("read");
        assert!(
            on_file.iter().all(|count| *count == 1),
            "{on_file:?}: judged once"
        );
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_refused_token_is_said_where_the_coach_is_and_a_new_one_is_noticed() {
    let discord = Discord::start().await;
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("token");
    std::fs::write(&file, "bm90LXRoZS1yaWdodC1vbmU.xyz.at-all-not-at-all").expect("written");
    std::fs::write(folder.path().join("sealed-move.toml"), settings()).expect("written");
    let child = launch(folder.path(), Some(&discord), Some(&file));
    let mut room = Program { child, folder };
    let coach = Visitor::coaching(&room.link("For the coach:").await).await;
    let words = "Discord refuses the bot's token; copy it anew";
    room.until(words).await;
    coach.until_told(words).await;
    let fares = coach.discord_is().await;
    assert_eq!(fares["state"], "refused", "{fares}");
    assert!(
        fares["why"]
            .as_str()
            .is_some_and(|why| why.starts_with(words)),
        "{fares}"
    );
    let asked = discord.world().log.len();

    std::fs::write(&file, &discord.token).expect("written");
    room.until("On Discord.").await;
    coach.until_told("Discord is back.").await;
    assert_eq!(coach.discord_is().await["state"], "up");
    assert_eq!(asked, 1, "it was not tried again and again");
    assert_eq!(room.stop().await, 0, "{}", room.log());
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_gateway_closed_for_good_is_told_and_the_room_goes_on() {
    for (code, words) in [
        (4004, "Discord refuses the bot's token"),
        (4013, "Discord refuses the message-content intent"),
        (4014, "Discord refuses the message-content intent"),
    ] {
        let discord = Discord::start().await;
        let mut room = Program::start(&settings(), Some(&discord));
        let coach = Visitor::coaching(&room.link("For the coach:").await).await;
        room.until("On Discord.").await;
        let identified = discord.world().sessions.identified;
        discord.gateway(Out::Close(code, "closed"));
        room.until(words).await;
        coach.until_told(words).await;
        assert_eq!(coach.discord_is().await["state"], "refused", "{code}");
        assert_eq!(
            discord.world().sessions.identified,
            identified,
            "{code}: tried again"
        );
        assert_eq!(
            coach.get("/api/me").await["name"],
            "Rosalind",
            "the room goes on"
        );
        assert_eq!(room.stop().await, 0, "{}", room.log());
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn the_room_does_not_wait_for_discord_nor_fall_with_it() {
    let discord = Discord::start().await;
    // Nothing that is asked is answered well, for long enough to fail some starts.
    discord
        .world()
        .faults
        .plan("GET", "/users/@me", 10, Trouble::Status(503));
    let mut room = Program::start(&settings(), Some(&discord));
    let coach = Visitor::coaching(&room.link("For the coach:").await).await;
    assert_eq!(coach.discord_is().await["state"], "starting");
    let log = room.until("It is tried again in").await;
    assert!(log.contains("\nDiscord cannot be reached"), "{log}");
    assert_eq!(coach.discord_is().await["state"], "failing");
    // It comes up by itself when it can.
    room.until("On Discord.").await;
    assert_eq!(coach.discord_is().await["state"], "up");
    assert_eq!(room.stop().await, 0, "{}", room.log());
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_room_that_cannot_listen_stops_nobody_else() {
    let discord = Discord::start().await;
    // An address that this machine does not have (RFC 5737, for documentation).
    let settings = settings().replace("127.0.0.1:0", "192.0.2.1:7316");
    let mut both = Program::start(&settings, Some(&discord));
    both.until("On Discord.").await;
    let log = both
        .until("The club room: The room cannot listen on 192.0.2.1:7316")
        .await;
    assert!(log.contains("It is tried again in"), "{log}");
    assert_eq!(both.stop().await, 0, "{}", both.log());

    // A port that is taken gives way to a free one, and Discord does not notice.
    let taken = TcpListener::bind("127.0.0.1:0").expect("a port");
    let port = taken.local_addr().expect("bound").port();
    let settings = settings.replace("192.0.2.1:7316", &format!("127.0.0.1:{port}"));
    discord.world().sessions.let_in();
    let mut both = Program::start(&settings, Some(&discord));
    both.until("On Discord.").await;
    let link = both.link("For members:").await;
    assert!(!link.contains(&format!(":{port}/")), "{link}");
    assert_eq!(both.stop().await, 0, "{}", both.log());
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn with_nothing_left_to_serve_the_program_ends_and_says_so() {
    let discord = Discord::start().await;
    let settings = "[room]\nopen = false\n";
    let mut alone = Program::start(settings, Some(&discord));
    alone.until("On Discord.").await;
    discord.gateway(Out::Close(4004, "Authentication failed."));
    assert_eq!(alone.ended().await, 2, "{}", alone.log());
    let log = alone.log();
    assert!(log.contains("\nDiscord refuses the bot's token"), "{log}");
    assert!(log.contains("no chat is left to serve"), "{log}");
}
