//! A study group on the loopback Discord, with the built bot running beside it.

use std::{
    fs::File,
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    time::Duration,
};

use crate::discord::{
    Discord,
    commands::Given,
    log::{Audience, LogEntry},
    people::{Attach, Seen, Someone},
    text,
    world::{Message, World},
};

/// A mate in two whose key needs no more than a look at the back rank.
pub const BACK_RANK: &str =
    "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"back-1\"; c0 \"back-rank mates\";";
/// A mate in three that is played out move by move: a double check, a queen given up, a knight.
pub const SMOTHERED: &str =
    "5rk1/5Npp/8/8/2Q5/8/8/6K1 w - - dm 3; id \"smother-1\"; c0 \"smothered mates\";";

/// The built bot, serving.
#[derive(Debug)]
pub struct Bot {
    child: Option<Child>,
    log: PathBuf,
}

impl Bot {
    /// Starts `sealed-move serve` on a store in `folder`, against a loopback Discord.
    ///
    /// # Panics
    /// When it cannot be started.
    pub fn start(discord: &Discord, folder: &Path, message_content: bool) -> Self {
        let config = folder.join("sealed-move.toml");
        let settings =
            format!("[room]\nopen = false\n\n[discord]\nmessage_content = {message_content}\n");
        std::fs::write(&config, settings).expect("the settings can be written");
        let log = folder.join("bot.log");
        let out = File::options()
            .create(true)
            .append(true)
            .open(&log)
            .expect("a log");
        let child = Command::new(crate::binary())
            .arg("serve")
            .arg("--config")
            .arg(&config)
            .arg("--store")
            .arg(folder.join("store.sqlite"))
            .env("DISCORD_TOKEN", &discord.token)
            .env_remove("DISCORD_TOKEN_FILE")
            .env("SEALED_MOVE_DISCORD_API", &discord.url)
            .stdin(Stdio::null())
            .stdout(out.try_clone().expect("a log"))
            .stderr(out)
            .spawn()
            .expect("the bot starts");
        Self {
            child: Some(child),
            log,
        }
    }

    /// Starts it and waits until Discord has greeted it and its commands are there.
    ///
    /// # Panics
    /// When that does not come to pass, with what the bot wrote.
    pub async fn up(discord: &Discord, folder: &Path, message_content: bool) -> Self {
        let before = discord.world().sessions.identified;
        let mut bot = Self::start(discord, folder, message_content);
        for _ in 0..600 {
            {
                let world = discord.world();
                if world.sessions.identified > before && !world.commands.is_empty() {
                    return bot;
                }
            }
            if let Some(status) = bot.ended() {
                panic!("the bot ended with {status}:\n{}", bot.log());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        panic!("the bot does not come up:\n{}", bot.log());
    }

    /// The exit status, once it has ended by itself.
    pub fn ended(&mut self) -> Option<i32> {
        let status = self.child.as_mut()?.try_wait().ok()??;
        Some(status.code().unwrap_or(-1))
    }

    /// What it has written so far.
    pub fn log(&self) -> String {
        std::fs::read_to_string(&self.log).unwrap_or_default()
    }

    /// Ends it at once, as a power cut would.
    pub fn kill(&mut self) {
        if let Some(mut child) = self.child.take() {
            let _ = child.kill();
            let _ = child.wait();
        }
    }

    /// Asks it to stop and waits; gives the exit status.
    ///
    /// # Panics
    /// When it does not stop within ten seconds.
    pub async fn stop(&mut self) -> i32 {
        let mut child = self.child.take().expect("it runs");
        let asked = Command::new("kill")
            .arg("-TERM")
            .arg(child.id().to_string())
            .status();
        assert!(
            asked.is_ok_and(|status| status.success()),
            "kill can be run"
        );
        for _ in 0..200 {
            if let Ok(Some(status)) = child.try_wait() {
                return status.code().unwrap_or(-1);
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        let _ = child.kill();
        panic!("the bot does not stop:\n{}", self.log());
    }
}

impl Drop for Bot {
    fn drop(&mut self) {
        self.kill();
    }
}

/// A server with a channel, a coach, members, and the bot.
#[derive(Debug)]
pub struct Club {
    /// The loopback Discord.
    pub discord: Discord,
    /// The bot.
    pub bot: Bot,
    /// Where its store is.
    pub folder: tempfile::TempDir,
    /// The server.
    pub guild: u64,
    /// The channel.
    pub channel: u64,
    /// Who coaches.
    pub coach: Someone,
    /// Moves and lines that nobody but their solver may see before the reveal.
    secrets: Vec<String>,
    checked: usize,
}

impl Club {
    /// A club with the bot up, before any set-up.
    pub async fn open() -> Self {
        Self::open_with(true).await
    }

    /// The same, with or without the message-content intent.
    ///
    /// # Panics
    /// When there is no room for a store.
    pub async fn open_with(message_content: bool) -> Self {
        let discord = Discord::start().await;
        if !message_content {
            discord.world().granted_intents = 0;
        }
        let coach = discord.person("Rosalind");
        let guild = discord.server("Lantern Street", &coach);
        let channel = discord.channel(guild, "study");
        let folder = tempfile::tempdir().expect("a folder");
        let bot = Bot::up(&discord, folder.path(), message_content).await;
        Self {
            discord,
            bot,
            folder,
            guild,
            channel,
            coach,
            secrets: Vec::new(),
            checked: 0,
        }
    }

    /// A member of the server.
    pub fn member(&self, name: &str) -> Someone {
        let member = self.discord.person(name);
        self.discord.join(self.guild, &member);
        member
    }

    /// The coach makes the channel a group's.
    ///
    /// # Panics
    /// When that is refused.
    pub async fn set_up(&self, more: &[(&str, Given)]) -> Seen {
        let mut given = vec![("zone", Given::Text("Europe/Lisbon".into()))];
        given.extend_from_slice(more);
        let seen = self
            .coach
            .command(self.channel, "coach set-up", &given)
            .await;
        assert!(
            seen.private() && seen.text().contains("is set up"),
            "{}",
            seen.text()
        );
        seen
    }

    /// The coach has a file checked and its sound positions put into the week.
    pub async fn queue(&self, epd: &str) -> Seen {
        let file = self.coach.upload(Attach::text("week.epd", epd));
        self.coach
            .command(
                self.channel,
                "coach check",
                &[("file", file), ("put-into-week", Given::Flag(true))],
            )
            .await
    }

    /// The coach posts the next one; waits for the message and gives it.
    ///
    /// # Panics
    /// When no post comes.
    pub async fn post(&self) -> Message {
        let before = posts(&self.discord.world(), self.channel).len();
        let seen = self
            .coach
            .command(self.channel, "coach post-now", &[])
            .await;
        assert!(seen.text().contains("goes out"), "{}", seen.text());
        self.next_post(before).await
    }

    /// Waits for the post after the first `before` ones, with its thread where it has one.
    pub async fn next_post(&self, before: usize) -> Message {
        let channel = self.channel;
        self.discord
            .until("a post", |world| {
                let message = posts(world, channel).get(before).cloned()?;
                let threads = world.bot_may(
                    world.channel(channel)?,
                    crate::discord::permissions::CREATE_PUBLIC_THREADS,
                );
                (!threads || world.channel(message.id).is_some()).then_some(message)
            })
            .await
    }

    /// The coach closes the open post; waits for the reveal and gives it.
    ///
    /// # Panics
    /// When it does not come.
    pub async fn reveal(&mut self) -> Message {
        // From here on the solution may be seen.
        self.check_for_leaks();
        let before = reveals(&self.discord.world(), self.channel).len();
        // A post is seen a moment before it is written down as open.
        let told = loop {
            let seen = self.coach.command(self.channel, "coach close", &[]).await;
            let told = seen.text();
            if !told.contains("on its way") && !told.contains("No position is open") {
                break told;
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        };
        assert!(told.contains("closed"), "{told}");
        let channel = self.channel;
        let message = self
            .discord
            .until("the reveal", |world| {
                reveals(world, channel).get(before).cloned()
            })
            .await;
        self.secrets.clear();
        message
    }

    /// From here to the reveal nobody but its solver may see these moves.
    pub fn keep_secret(&mut self, moves: &[&str]) {
        self.checked = self.discord.world().log.len();
        self.secrets = moves.iter().flat_map(|san| notations(san)).collect();
    }

    /// Fails when anything that others can see gives a secret away, or holds a picture other than a post's.
    ///
    /// # Panics
    /// When something does.
    pub fn check_for_leaks(&mut self) {
        let world = self.discord.world();
        for entry in &world.log[self.checked..] {
            if let Some(leak) = leak(entry, &self.secrets) {
                panic!(
                    "{} {} gives away {leak}: {}",
                    entry.method, entry.path, entry.body
                );
            }
        }
        self.checked = world.log.len();
    }

    /// What must hold at the end of every scenario: nothing given away, no rule of the interface broken,
    /// nobody notified, no token in the log.
    ///
    /// # Panics
    /// When something does not hold.
    pub fn finish(mut self) {
        self.check_for_leaks();
        assert_eq!(
            self.discord.violations(),
            Vec::<String>::new(),
            "{}",
            self.bot.log()
        );
        let world = self.discord.world();
        for message in world
            .messages
            .values()
            .filter(|message| message.author == world.bot)
        {
            assert!(
                message.pings.is_empty() && !message.pings_many,
                "{message:?} notified somebody"
            );
        }
        let log = self.bot.log();
        assert!(
            !log.contains(&self.discord.token),
            "the token is in the log:\n{log}"
        );
        assert!(
            !log.contains("interaction-token"),
            "an interaction's token is in the log:\n{log}"
        );
        for secret in &self.secrets {
            assert!(!log.contains(secret), "{secret} is in the log:\n{log}");
        }
    }
}

/// The bot's posts in a channel, in order.
pub fn posts(world: &World, channel: u64) -> Vec<Message> {
    own(world, channel, |text| {
        text.strip_prefix("**Position ").is_some_and(|rest| {
            rest.trim_start_matches(|c: char| c.is_ascii_digit())
                .starts_with("**")
        })
    })
}

/// The bot's reveals in a channel, in order.
pub fn reveals(world: &World, channel: u64) -> Vec<Message> {
    own(world, channel, |text| {
        text.starts_with("**Position ") && text.contains(": the solution**")
    })
}

fn own(world: &World, channel: u64, fits: impl Fn(&str) -> bool) -> Vec<Message> {
    world
        .messages
        .values()
        .filter(|message| message.channel == channel && message.author == world.bot)
        .filter(|message| message.only.is_none() && fits(&message.content))
        .cloned()
        .collect()
}

/// A move in the notations a reader would know it by: without its signs, with figurines, and as
/// coordinates where its squares are given too, as in `Rxd8+/d2d8`.
fn notations(san: &str) -> Vec<String> {
    let (san, squares) = san.split_once('/').unwrap_or((san, ""));
    let bare = san.trim_end_matches(['+', '#', '!', '?']);
    let mut all = vec![bare.to_owned()];
    let figures = [('K', '♔'), ('Q', '♕'), ('R', '♖'), ('B', '♗'), ('N', '♘')];
    let filled = [('K', '♚'), ('Q', '♛'), ('R', '♜'), ('B', '♝'), ('N', '♞')];
    for set in [figures, filled] {
        if let Some((letter, figure)) = set.iter().find(|(letter, _)| bare.starts_with(*letter)) {
            all.push(bare.replacen(*letter, &figure.to_string(), 1));
        }
    }
    if squares.len() >= 4 {
        all.push(squares.to_owned());
        all.push(format!("{}-{}", &squares[..2], &squares[2..]));
        all.push(format!("{}x{}", &squares[..2], &squares[2..]));
    }
    all.retain(|text| text.len() > 1);
    all.sort();
    all.dedup();
    all
}

/// What a request shows to others that it should not.
fn leak(entry: &LogEntry, secrets: &[String]) -> Option<String> {
    if !matches!(entry.audience, Audience::Channel(_) | Audience::Anyone) {
        return None;
    }
    if !secrets.is_empty() {
        for file in &entry.files {
            let posts = file.name.strip_prefix("position-").is_some_and(|rest| {
                rest.strip_suffix(".png")
                    .is_some_and(|n| n.bytes().all(|b| b.is_ascii_digit()))
            });
            if !posts {
                return Some(format!("the file {}", file.name));
            }
        }
    }
    let texts = entry.texts();
    secrets
        .iter()
        .find(|secret| texts.iter().any(|text| text.contains(secret.as_str())))
        .cloned()
}

/// A message written down for a snapshot.
pub fn written(discord: &Discord, message: &Message) -> String {
    let world = discord.world();
    let message = world.messages.get(&message.id).unwrap_or(message);
    text::whole(&world, message)
}

/// An answer written down for a snapshot, form or messages.
pub fn seen_as_text(discord: &Discord, seen: &Seen) -> String {
    match &seen.modal {
        Some(modal) => text::modal(modal),
        None => seen
            .messages
            .iter()
            .map(|message| written(discord, message))
            .collect::<Vec<_>>()
            .join("\n"),
    }
}
