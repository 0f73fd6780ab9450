//! The bot ended at every moment of every request of a post and of a reveal, by SIGTERM and by SIGKILL, and
//! started again: the post is there once, with one thread; the reveal once, with all its parts; every answer
//! counts once; and what is written down says so.
//!
//! Which requests there are is counted in a run that nobody ends, so that a new one is tried as well.

use std::time::Duration;

use sealed_move_store::{PostState, Store};
use sealed_move_tests::{
    club::{Club, posts, reveals},
    discord::{
        faults::{Fate, Moment},
        people::{Attach, Someone},
        permissions,
        world::{Message, World},
    },
};

/// How the bot is ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Signal {
    Term,
    Kill,
}

/// What goes out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum What {
    Post,
    Reveal,
}

/// Mates in one by Ra8, with the rook and the king on different squares, each with a comment that makes its
/// reveal longer than one message.
fn positions(most: usize) -> String {
    let mut lines = Vec::new();
    for rank in 2..=6usize {
        for king in 2..=7usize {
            let row = |n: usize| if n == rank { "R7" } else { "8" };
            let rows: Vec<&str> = (2..=6).rev().map(row).collect();
            let king_row = match 7 - king {
                0 => format!("{king}K"),
                right => format!("{king}K{right}"),
            };
            let comment = "It mates. ".repeat(230);
            lines.push(format!(
                "6k1/5ppp/{}/{king_row} w - - dm 1; id \"r{rank}{king}\"; c0 \"Back rank\"; c1 \"{comment}\";",
                rows.join("/")
            ));
        }
    }
    lines.truncate(most);
    lines.join("\n")
}

/// A club with a week of positions, and a member.
struct Scene {
    club: Club,
    ana: Someone,
    /// How many posts there were.
    so_far: usize,
}

impl Scene {
    async fn begin(most: usize) -> Self {
        let club = Club::open().await;
        club.set_up(&[]).await;
        let file = club
            .coach
            .upload(Attach::text("week.epd", &positions(most)));
        let given = [
            ("file", file),
            (
                "put-into-week",
                sealed_move_tests::discord::commands::Given::Flag(true),
            ),
        ];
        let told = club
            .coach
            .command(club.channel, "coach check", &given)
            .await;
        assert!(told.text().contains("put into the week"), "{}", told.text());
        let ana = club.member("Ana");
        Self {
            club,
            ana,
            so_far: 0,
        }
    }

    /// Starts the next post or the reveal of the last one, and holds its request of that number.
    fn start(&self, what: What, hold: Option<(usize, Moment)>) {
        self.club.discord.world().faults.watch(hold);
        let line = match what {
            What::Post => "coach post-now",
            What::Reveal => "coach close",
        };
        self.club.coach.send_command(self.club.channel, line, &[]);
    }

    /// Waits until the post, or its reveal, is there with all its parts, and nothing more comes.
    async fn whole(&self, what: What, which: &str) {
        let (number, channel) = (self.so_far, self.club.channel);
        let fits = |world: &World| match what {
            What::Post => post_is_whole(world, channel, number),
            What::Reveal => reveal_is_whole(world, channel, number),
        };
        for _ in 0..600 {
            let state = fits(&self.club.discord.world());
            if state.is_ok() && self.written_down(what) {
                break;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        // Long enough for a second one to show.
        tokio::time::sleep(Duration::from_millis(150)).await;
        let state = fits(&self.club.discord.world());
        assert_eq!(state, Ok(()), "{which}\n{}", self.club.bot.log());
        assert!(self.written_down(what), "{which}: the store says otherwise");
    }

    /// Whether the store says that the post is out, or closed, and that nothing of it is missing.
    fn written_down(&self, what: What) -> bool {
        let store = Store::open(&self.club.folder.path().join("store.sqlite")).expect("opened");
        let (number, message) = (self.so_far as i64 + 1, self.post().map(|post| post.id));
        let found = store.read_blocking(move |db| {
            let group = db.groups()?.remove(0).id;
            let all = [
                PostState::Intended,
                PostState::Open,
                PostState::Closing,
                PostState::Closed,
            ];
            let mut posts = Vec::new();
            for state in all {
                posts.extend(db.posts_in(group, state)?);
            }
            Ok(posts.into_iter().find(|post| post.number == number))
        });
        let Some(post) = found.expect("read") else {
            return false;
        };
        let id = message.map(|id| id.to_string());
        post.message == id
            && !post.half_sent
            && post.thread == id
            && match what {
                What::Post => post.state == PostState::Open,
                What::Reveal => post.state == PostState::Closed && post.reveal.is_some(),
            }
    }

    fn post(&self) -> Option<Message> {
        posts(&self.club.discord.world(), self.club.channel)
            .get(self.so_far)
            .cloned()
    }

    /// Ends the bot at a moment of a request of `what`, and starts it again.
    async fn interrupted(&mut self, what: What, number: usize, moment: Moment, signal: Signal) {
        let which = format!("{what:?}, request {number}, {moment:?}, {signal:?}");
        let discord = self.club.discord.clone();
        self.start(what, Some((number, moment)));
        discord
            .until(&format!("the moment of {which}"), |world| {
                world.faults.reached().then_some(())
            })
            .await;
        match signal {
            Signal::Kill => {
                self.club.bot.kill();
                discord.decide(Fate::Dropped);
            }
            Signal::Term => {
                self.club.bot.ask_to_stop();
                // It has heard of it by then, and the request is still not answered.
                tokio::time::sleep(Duration::from_millis(200)).await;
                discord.decide(Fate::Goes);
                let status = self.club.bot.stopped().await;
                assert_eq!(status, 0, "{which}\n{}", self.club.bot.log());
            }
        }
        // Long after a nonce is forgotten, and the last time the bot came in.
        {
            let mut world = discord.world();
            world.nonces.clear();
            world.sessions.let_in();
            world.faults.watch(None);
        }
        self.club.restart().await;
        self.whole(what, &which).await;
    }

    /// The member solves the open post.
    async fn solve(&self) {
        let post = self.post().expect("a post");
        let form = self.ana.press(post.id, "Answer").await;
        let seen = self.ana.submit(&form, &["Ra8"]).await;
        assert!(seen.text().contains("5 of 5 points"), "{}", seen.text());
    }

    /// Lets a post or reveal go out undisturbed; gives its requests.
    async fn undisturbed(&self, what: What) -> Vec<String> {
        self.start(what, None);
        self.whole(what, "undisturbed").await;
        let mut world = self.club.discord.world();
        let requests = world.faults.watched();
        world.faults.watch(None);
        requests
    }
}

/// Whether there is one post of a number, and one thread of it.
fn post_is_whole(world: &World, channel: u64, before: usize) -> Result<(), String> {
    let all = posts(world, channel);
    let [post] = &all[before.min(all.len())..] else {
        return Err(format!("{} posts, not one more than {before}", all.len()));
    };
    let thread = world.channel(post.id);
    let threads = world
        .channels
        .values()
        .filter(|c| c.parent == Some(channel));
    if thread.is_none() || threads.count() != before + 1 {
        return Err("not one thread for each post".into());
    }
    if post.attachments.is_empty() {
        return Err("a post without its picture".into());
    }
    Ok(())
}

/// Whether there is one reveal of the last post, in full: every page, the post closed, its thread told.
fn reveal_is_whole(world: &World, channel: u64, before: usize) -> Result<(), String> {
    post_is_whole(world, channel, before)?;
    let shown = reveals(world, channel);
    let [reveal] = &shown[before.min(shown.len())..] else {
        return Err(format!(
            "{} reveals, not one more than {before}",
            shown.len()
        ));
    };
    let post = posts(world, channel)[before].clone();
    if !post.content.contains("\nClosed") {
        return Err("the post does not say that it is closed".into());
    }
    if reveal.attachments.is_empty() {
        return Err("a reveal without its picture".into());
    }
    let said: Vec<&str> = world
        .messages
        .values()
        .filter(|message| message.channel == post.id && message.author == world.bot)
        .map(|message| message.content.as_str())
        .collect();
    let words = said
        .iter()
        .filter(|text| text.starts_with("The solution is out."));
    if words.count() != 1 {
        return Err(format!("the thread is not told once: {said:?}"));
    }
    let pages: Vec<&&str> = said
        .iter()
        .filter(|text| !text.starts_with("The solution is out."))
        .collect();
    let mut all = vec![reveal.content.as_str()];
    all.extend(pages.iter().map(|page| **page));
    let distinct: std::collections::BTreeSet<&str> = all.iter().copied().collect();
    if all.len() < 2 || distinct.len() != all.len() {
        return Err(format!(
            "{} pages, {} different ones",
            all.len(),
            distinct.len()
        ));
    }
    let all = all.join(" ");
    if all.matches("It mates.").count() != 230 {
        return Err("the comment is not there once and whole".into());
    }
    if all.matches("Solved by 1 of 1: Ana").count() != 1 {
        return Err(format!("the answer is not counted once: {all}"));
    }
    Ok(())
}

const MOMENTS: [Moment; 3] = [Moment::Before, Moment::Unanswered, Moment::Answered];

/// Every moment of every request, with one signal.
async fn at_every_moment(signal: Signal) {
    let mut scene = Scene::begin(25).await;
    let mut post = scene.undisturbed(What::Post).await;
    scene.solve().await;
    let mut reveal = scene.undisturbed(What::Reveal).await;
    scene.so_far += 1;
    assert!(post.len() >= 2, "message and thread: {post:?}");
    assert!(reveal.len() >= 4, "two pages, an edit, a word: {reveal:?}");
    let moments = |requests: Vec<String>| -> Vec<(usize, Moment)> {
        (0..requests.len())
            .flat_map(|number| MOMENTS.map(|moment| (number, moment)))
            .collect()
    };
    let (post, reveal) = (
        moments(std::mem::take(&mut post)),
        moments(std::mem::take(&mut reveal)),
    );
    for n in 0..post.len().max(reveal.len()) {
        match post.get(n) {
            Some((number, moment)) => {
                scene
                    .interrupted(What::Post, *number, *moment, signal)
                    .await;
            }
            None => drop(scene.undisturbed(What::Post).await),
        }
        scene.solve().await;
        match reveal.get(n) {
            Some((number, moment)) => {
                scene
                    .interrupted(What::Reveal, *number, *moment, signal)
                    .await;
            }
            None => drop(scene.undisturbed(What::Reveal).await),
        }
        scene.so_far += 1;
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn killed_at_every_moment_of_a_post_and_a_reveal() {
    at_every_moment(Signal::Kill).await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn stopped_at_every_moment_of_a_post_and_a_reveal() {
    at_every_moment(Signal::Term).await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_stop_that_takes_too_long_ends_all_the_same_and_is_completed_later() {
    let mut scene = Scene::begin(1).await;
    let discord = scene.club.discord.clone();
    scene.start(What::Post, Some((1, Moment::Before)));
    discord
        .until("the thread to be asked for", |world| {
            world.faults.reached().then_some(())
        })
        .await;
    // Nobody ever answers, and the stop is bounded.
    scene.club.bot.ask_to_stop();
    assert_eq!(
        scene.club.bot.stopped().await,
        1,
        "something was broken off"
    );
    let log = scene.club.bot.log();
    assert!(log.contains("taken up at the next start"), "{log}");
    discord.decide(Fate::Dropped);
    {
        let mut world = discord.world();
        world.nonces.clear();
        world.sessions.let_in();
        world.faults.watch(None);
    }
    scene.club.restart().await;
    scene
        .whole(What::Post, "after a stop that took too long")
        .await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn killed_at_every_moment_of_a_post_in_words() {
    let mut scene = Scene::begin(12).await;
    let discord = scene.club.discord.clone();
    discord.overwrite_bot(scene.club.channel, 0, permissions::ATTACH_FILES);
    tokio::time::sleep(Duration::from_millis(200)).await;
    let words = |world: &World, channel: u64, before: usize| {
        let all = posts(world, channel);
        let thread = all.last().and_then(|post| world.channel(post.id));
        let in_words = all
            .last()
            .is_some_and(|post| post.attachments.is_empty() && post.content.contains("White"));
        let whole = all.len() == before + 1 && thread.is_some();
        (whole && in_words).then_some(())
    };
    let channel = scene.club.channel;
    scene.start(What::Post, None);
    discord
        .until("a post in words", |world| words(world, channel, 0))
        .await;
    tokio::time::sleep(Duration::from_millis(300)).await;
    let requests = discord.world().faults.watched();
    assert!(
        requests.len() >= 3,
        "a refusal, a message, a thread: {requests:?}"
    );
    for number in 0..requests.len() {
        for moment in MOMENTS {
            scene.so_far += 1;
            let before = scene.so_far;
            scene.start(What::Post, Some((number, moment)));
            discord
                .until("the moment", |world| world.faults.reached().then_some(()))
                .await;
            scene.club.bot.kill();
            discord.decide(Fate::Dropped);
            {
                let mut world = discord.world();
                world.nonces.clear();
                world.sessions.let_in();
                world.faults.watch(None);
            }
            scene.club.restart().await;
            discord
                .until(&format!("the post after {number}, {moment:?}"), |world| {
                    words(world, channel, before)
                })
                .await;
            tokio::time::sleep(Duration::from_millis(200)).await;
            let all = posts(&discord.world(), channel).len();
            assert_eq!(all, before + 1, "request {number}, {moment:?}: once");
        }
    }
}
