//! The bot killed at every moment of every request by which it tells somebody something in private, and
//! started again: the verdict, or the notice, is there once.

use std::time::Duration;

use sealed_move_tests::{
    club::{Bot, Club},
    discord::{
        faults::{Fate, Moment},
        people::Someone,
        world::World,
    },
};

/// A mate in one by Ra8; every other move of the rook is wrong.
const MATE: &str = "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 1; id \"one\"; c0 \"Back rank\";";

/// Wrong moves, one for each time.
const WRONG: [&str; 13] = [
    "Ra7", "Ra6", "Ra5", "Ra4", "Ra3", "Ra2", "Rb1", "Rc1", "Rd1", "Re1", "h3", "h4", "g3",
];

const MOMENTS: [Moment; 3] = [Moment::Before, Moment::Unanswered, Moment::Answered];

/// Where a member writes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum At {
    Channel,
    Directly,
}

/// A club with a post open, and a member.
async fn scene() -> (Club, Someone) {
    let club = Club::open().await;
    club.set_up(&[]).await;
    club.queue(MATE).await;
    club.post().await;
    club.until_open().await;
    let ana = club.member("Ana");
    (club, ana)
}

/// What the bot has told somebody directly, of which `part` is a part.
fn told(world: &World, user: u64, part: &str) -> Vec<String> {
    let Some(channel) = world.direct_with(user) else {
        return Vec::new();
    };
    world
        .messages
        .values()
        .filter(|message| message.channel == channel && message.author == world.bot)
        .map(|message| message.content.clone())
        .filter(|text| text.contains(part))
        .collect()
}

/// Kills the bot at a moment of the request of that number since it was last watched, once that has come.
async fn kill_at(club: &mut Club, which: &str) {
    let discord = club.discord.clone();
    discord
        .until(&format!("the moment of {which}"), |world| {
            world.faults.reached().then_some(())
        })
        .await;
    club.bot.kill();
    discord.decide(Fate::Dropped);
    // Long after a nonce is forgotten, and the last time the bot came in.
    let mut world = discord.world();
    world.nonces.clear();
    world.sessions.let_in();
    world.faults.watch(None);
}

/// Waits until somebody was told something once, and long enough for a second time to show.
async fn once(club: &Club, user: u64, part: &str, which: &str) {
    for _ in 0..400 {
        if !told(&club.discord.world(), user, part).is_empty() {
            break;
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
    tokio::time::sleep(Duration::from_millis(400)).await;
    let all = told(&club.discord.world(), user, part);
    assert_eq!(all.len(), 1, "{which}: {all:?}\n{}", club.bot.log());
}

fn write(club: &Club, ana: &Someone, at: At, text: &str) {
    match at {
        At::Channel => ana.say(club.channel, text),
        At::Directly => ana.direct(text),
    };
}

/// The verdicts on wrong moves, with the bot killed at every moment of every request that tells one.
async fn verdicts(at: At) {
    let (mut club, ana) = scene().await;
    let mut moves = WRONG.into_iter();
    let mut next = || moves.next().expect("another wrong move");
    // One that nobody disturbs says how many requests there are; it also opens the direct conversation.
    let first = next();
    club.discord.world().faults.watch(None);
    write(&club, &ana, at, first);
    once(&club, ana.id, first, "undisturbed").await;
    let requests = club.discord.world().faults.watched();
    let told_by = requests
        .iter()
        .filter(|request| !request.ends_with("/channels"))
        .count();
    assert!((1..=2).contains(&told_by), "{requests:?}");
    for number in 0..told_by {
        for moment in MOMENTS {
            let text = next();
            let which = format!("{at:?} {text}, request {number}, {moment:?}");
            club.discord.world().faults.watch(Some((number, moment)));
            write(&club, &ana, at, text);
            kill_at(&mut club, &which).await;
            club.restart().await;
            once(&club, ana.id, text, &which).await;
            // Nothing of it is left for the start after.
            club.bot.kill();
            club.discord.world().nonces.clear();
            club.discord.world().sessions.let_in();
            club.restart().await;
            once(&club, ana.id, text, &format!("{which}, started once more")).await;
        }
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_verdict_on_a_message_among_others_is_told_once() {
    verdicts(At::Channel).await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_verdict_on_a_direct_message_is_told_once() {
    verdicts(At::Directly).await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_notice_to_the_coaches_is_told_once() {
    for moment in MOMENTS {
        let mut club = Club::open().await;
        club.set_up(&[]).await;
        // So that the one request is the notice.
        club.coach.direct("Hello");
        let coach = club.coach.id;
        once(&club, coach, "No position is open", "the hello").await;
        club.bot.kill();
        club.discord.world().sessions.let_in();
        club.discord.world().faults.watch(Some((0, moment)));
        // A room that cannot listen: an address for documentation (RFC 5737) is no machine's own.
        let settings = "[room]\naddress = \"192.0.2.1:7316\"\n";
        club.bot = Bot::start_with(&club.discord, club.folder.path(), settings);
        let which = format!("the notice, {moment:?}");
        kill_at(&mut club, &which).await;
        club.restart().await;
        once(&club, coach, "The club room is down", &which).await;
    }
}
