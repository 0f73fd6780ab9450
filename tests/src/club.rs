//! A study group on the loopback Discord, with the built bot running beside it.

use std::{
    fs::File,
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    time::Duration,
};

use crate::{
    discord::{
        Discord,
        commands::Given,
        people::{Attach, Seen, Someone},
        world::{Message, World},
    },
    leaks::{self, PROBLEMS, Problem},
    pictures,
    tongue::Tongue,
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
        let settings =
            format!("[room]\nopen = false\n\n[discord]\nmessage_content = {message_content}\n");
        Self::start_with(discord, folder, &settings)
    }

    /// The same with settings of its own.
    ///
    /// # Panics
    /// When it cannot be started.
    pub fn start_with(discord: &Discord, folder: &Path, settings: &str) -> Self {
        let config = folder.join("sealed-move.toml");
        std::fs::write(&config, settings).expect("the settings can be written");
        let log = folder.join("bot.log");
        let out = File::options()
            .create(true)
            .append(true)
            .open(&log)
            .expect("a log");
        let child = crate::command()
            .arg("serve")
            .arg("--config")
            .arg(&config)
            .arg("--store")
            .arg(folder.join("store.sqlite"))
            .env("DISCORD_TOKEN", &discord.token)
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

    /// Asks it to stop, as a system does that shuts down.
    ///
    /// # Panics
    /// When it does not run.
    pub fn ask_to_stop(&self) {
        let child = self.child.as_ref().expect("it runs");
        let asked = Command::new("kill")
            .arg("-TERM")
            .arg(child.id().to_string())
            .status();
        assert!(
            asked.is_ok_and(|status| status.success()),
            "kill can be run"
        );
    }

    /// Asks it to stop and waits; gives the exit status.
    ///
    /// # Panics
    /// When it does not stop within ten seconds.
    pub async fn stop(&mut self) -> i32 {
        self.ask_to_stop();
        self.stopped().await
    }

    /// Waits until it has stopped; gives the exit status.
    ///
    /// # Panics
    /// When it does not stop within ten seconds.
    pub async fn stopped(&mut self) -> i32 {
        let mut child = self.child.take().expect("it runs");
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
    /// What all of it is held in.
    pub tongue: Tongue,
    /// Problems whose solution nobody but its solver may see yet.
    sealed: Vec<Problem>,
    /// How much of the log has been looked through.
    checked: usize,
}

impl Club {
    /// A club with the bot up, before any set-up.
    pub async fn open() -> Self {
        Self::open_with(true).await
    }

    /// The same among people who speak a language, as the group does once it is set up.
    ///
    /// # Panics
    /// When there is no room for a store.
    pub async fn open_in(tongue: Tongue) -> Self {
        Self::open_speaking(tongue, true).await
    }

    /// The same, with or without the message-content intent.
    ///
    /// # Panics
    /// When there is no room for a store.
    pub async fn open_speaking(tongue: Tongue, message_content: bool) -> Self {
        let discord = Discord::start().await;
        discord.world().tongue = tongue;
        let names = ["Rosalind", "Lantern Street", "study"];
        Self::open_on(discord, message_content, names).await
    }

    /// In English, with or without the message-content intent.
    ///
    /// # Panics
    /// When there is no room for a store.
    pub async fn open_with(message_content: bool) -> Self {
        Self::open_among(message_content, ["Rosalind", "Lantern Street", "study"]).await
    }

    /// The same with a coach, a server and a channel of these names.
    ///
    /// # Panics
    /// When there is no room for a store.
    pub async fn open_among(message_content: bool, [coach, server, channel]: [&str; 3]) -> Self {
        Self::open_on(
            Discord::start().await,
            message_content,
            [coach, server, channel],
        )
        .await
    }

    async fn open_on(
        discord: Discord,
        message_content: bool,
        [coach, server, channel]: [&str; 3],
    ) -> Self {
        if !message_content {
            discord.world().granted_intents = 0;
        }
        let tongue = discord.world().tongue;
        let coach = discord.person(coach);
        let guild = discord.server(server, &coach);
        let channel = discord.channel(guild, channel);
        let folder = tempfile::tempdir().expect("a folder");
        let bot = Bot::up(&discord, folder.path(), message_content).await;
        Self {
            discord,
            bot,
            folder,
            guild,
            channel,
            coach,
            tongue,
            sealed: PROBLEMS.to_vec(),
            checked: 0,
        }
    }

    /// A member of the server.
    pub fn member(&self, name: &str) -> Someone {
        let member = self.discord.person(name);
        self.discord.join(self.guild, &member);
        member
    }

    /// Whether a text shows what in English is or has `part` in it; see [`Tongue::shows`].
    pub fn shows(&self, text: &str, part: &str) -> bool {
        self.tongue.shows(text, part)
    }

    /// Whether a text has the message of this name in it; see [`Tongue::reads`].
    pub fn reads(&self, text: &str, id: &str) -> bool {
        self.tongue.reads(text, id)
    }

    /// The coach makes the channel a group's, which writes in the language of its people.
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
            seen.private() && self.reads(&seen.text(), "set-up"),
            "{}",
            seen.text()
        );
        if self.tongue != Tongue::English {
            let language = [("language", Given::Number(self.tongue.choice()))];
            self.coach
                .command(self.channel, "coach settings", &language)
                .await;
        }
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
        assert!(self.reads(&seen.text(), "goes-out-now"), "{}", seen.text());
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

    /// Waits until the bot has written down that a position is open, a moment after it is seen. Of how
    /// often it is asked nothing is said.
    pub async fn until_open(&self) {
        loop {
            let seen = self
                .coach
                .command(self.channel, "study progress", &[])
                .await;
            self.discord.world().chronicle.strike_out(seen.interaction);
            if !self.reads(&seen.text(), "nothing-open") {
                return;
            }
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
    }

    /// The coach closes the open post; waits for the reveal and gives it.
    ///
    /// # Panics
    /// When it does not come.
    pub async fn reveal(&mut self) -> Message {
        let before = reveals(&self.discord.world(), self.channel).len();
        // A post is seen a moment before it is written down as open.
        let told = loop {
            let seen = self.coach.command(self.channel, "coach close", &[]).await;
            let told = seen.text();
            let early = ["nothing-open", "still-on-its-way", "not-out-yet"];
            if !early.iter().any(|id| self.reads(&told, id)) {
                break told;
            }
            // Whoever closes waits for the post to arrive; of how often they ask nothing is said.
            self.discord.world().chronicle.strike_out(seen.interaction);
            tokio::time::sleep(Duration::from_millis(100)).await;
        };
        assert!(self.reads(&told, "closed-now"), "{told}");
        let (channel, tongue) = (self.channel, self.tongue);
        let message = self
            .discord
            .until("the reveal", |world| {
                let reveal = reveals(world, channel).get(before).cloned()?;
                // It is over when the post says so, and its thread is told.
                let post = posts(world, channel).into_iter().find(|post| {
                    let heading = post.content.split("**").nth(1).unwrap_or("?");
                    reveal.content.starts_with(&format!("**{heading}:"))
                })?;
                let told = world.channel(post.id).is_none()
                    || world.messages.values().any(|m| {
                        m.channel == post.id && tongue.reads(&m.content, "solution-is-out")
                    });
                (tongue.reads(&post.content, "post-closed") && told).then_some(reveal)
            })
            .await;
        self.let_out(&message);
        message
    }

    /// What the scenario is to hold for sealed in place of the usual problems, said before anything is posted.
    pub fn seals(&mut self, problems: &[Problem]) {
        self.sealed = problems.to_vec();
    }

    /// Holds the picture of a post against the kept one.
    ///
    /// # Panics
    /// When it has none, or another.
    pub fn holds_picture(&self, post: &Message, name: &str) {
        let picture = post.attachments.first().expect("a picture");
        pictures::hold(name, &self.discord.world().files[picture].bytes);
    }

    /// A reveal has gone out: nothing gave its problem away before, and from here on it may be seen.
    ///
    /// # Panics
    /// When something did.
    pub fn let_out(&mut self, reveal: &Message) {
        let at = {
            let world = self.discord.world();
            let found = world.log.iter().position(|entry| {
                entry.method == "POST"
                    && entry.body["content"].as_str() == Some(reveal.content.as_str())
            });
            found.expect("a reveal is in the log")
        };
        self.check_until(at);
        self.sealed
            .retain(|problem| !reveal.content.contains(&self.tongue.moves(problem.key)));
        self.checked = at + 1;
    }

    /// Fails when anything that others can see gives a secret away, or holds a picture other than a post's.
    ///
    /// # Panics
    /// When something does.
    pub fn check_for_leaks(&mut self) {
        let until = self.discord.world().log.len();
        self.check_until(until);
    }

    fn check_until(&mut self, until: usize) {
        let world = self.discord.world();
        for entry in world.log.iter().take(until).skip(self.checked) {
            if let Some(leak) = leaks::leak(entry, &self.sealed) {
                panic!(
                    "{} {} gives away \"{leak}\": {}",
                    entry.method, entry.path, entry.body
                );
            }
        }
        self.checked = self.checked.max(until);
    }

    /// What must hold at the end of every scenario: nothing given away, no rule of the interface broken,
    /// nobody notified, no token in the log. Gives the conversation, for keeping.
    ///
    /// # Panics
    /// When something does not hold.
    #[must_use]
    pub fn finish(mut self) -> String {
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
        for problem in &self.sealed {
            assert!(
                !log.contains(problem.key) && !log.contains(&self.tongue.moves(problem.key)),
                "{} is in the log:\n{log}",
                problem.key
            );
        }
        world.chronicle.written(&world)
    }

    /// Lets what was sent before be dealt with: one who is no part of the scene asks for something,
    /// which comes after it.
    pub async fn settle(&self) {
        let probe = self.member("Probe");
        self.discord.world().chronicle.leave_out(probe.id);
        probe.command(self.channel, "study help", &[]).await;
        tokio::time::sleep(Duration::from_millis(300)).await;
    }

    /// Kills the bot as a power cut would, for [`Club::restart`].
    pub fn power_cut(&mut self) {
        self.discord.event("the bot's machine loses its power");
        self.bot.kill();
    }

    /// Starts the bot again on what it has kept.
    pub async fn restart(&mut self) {
        self.discord.event("the bot is started again");
        self.bot = Bot::up(&self.discord, self.folder.path(), true).await;
    }
}

/// Keeps a scenario's conversation as a snapshot, for reading.
#[macro_export]
macro_rules! keep_chronicle {
    ($name:expr, $text:expr) => {{
        let mut settings = insta::Settings::clone_current();
        settings.set_prepend_module_to_snapshot(false);
        settings.set_omit_expression(true);
        let name = format!("discord-{}", $name);
        settings.bind(|| insta::assert_snapshot!(name, $text));
    }};
}

/// The bot's posts in a channel, in order.
pub fn posts(world: &World, channel: u64) -> Vec<Message> {
    own(world, channel, |text| {
        numbered(text).is_some_and(|rest| {
            rest.trim_start_matches(|c: char| c.is_ascii_digit())
                .starts_with("**")
        })
    })
}

/// The bot's reveals in a channel, in order.
pub fn reveals(world: &World, channel: u64) -> Vec<Message> {
    own(world, channel, |text| {
        let told = text.lines().next().is_some_and(|line| {
            line.contains(": the solution**")
                || line.contains(": die Lösung**")
                || line.contains(": la solución**")
        });
        numbered(text).is_some() && told
    })
}

/// What stands behind "Position" in the heading of a post or reveal, in any of the languages.
fn numbered(text: &str) -> Option<&str> {
    ["**Position ", "**Stellung ", "**Posición "]
        .iter()
        .find_map(|head| text.strip_prefix(head))
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
