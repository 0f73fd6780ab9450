//! A whole week of a lesson, step by step to its homework: one member is always on time, one comes after each
//! reveal, one answers only what is asked in words. Nothing shows more than its step before its time.

use std::fs;

use sealed_move_tests::{
    browser::{Browser, Driver},
    club::Club,
    discord::{
        commands::Given,
        people::{Attach, Someone},
        world::{ChannelKind, Message, World},
    },
    in_every_language, keep_chronicle,
    leaks::{self, Problem},
    room::RunningRoom,
    tongue::Tongue,
    workspace,
};
use serde_json::{Value, json};

/// The demo's lesson without the step that is judged by search: how deep that comes is the machine's.
fn lesson() -> String {
    let file = workspace().join("demo-data/lessons/crossing-lines.pgn");
    let lesson = fs::read_to_string(file).expect("the demo's lesson");
    let from = lesson.find("[Event \"Lamp Room lesson\"]").expect("a step");
    let (head, steps) = lesson.split_at(from);
    let steps = steps.split_inclusive("*\n\n");
    let proved = steps.filter(|step| !step.contains("[stop +]"));
    head.to_owned() + &proved.collect::<String>()
}

/// The stops of the lesson. The example before the second takes on the same square, so that the moves of this one
/// are looked for in [`SEALED`].
const STOPS: [Problem; 2] = [
    Problem {
        key: "Qxc3",
        moves: &[("c6", "c3"), ("d6", "a3")],
        picture: "discord-post-lesson-stop",
    },
    Problem {
        key: "Rxc6",
        moves: &[],
        picture: "discord-post-lesson-second-stop",
    },
];

/// Words of each step that nobody may read before it is posted: the lesson's own, in order.
const WORDS: [&str; 6] = [
    "Two bishops look at the castled king",
    "How it comes about",
    "Now you, with Black",
    "Two guards stand before a6",
    "Everything seems to be there again",
    "Set up a position of your own",
];

/// A post of the lesson that is no stop, whose picture may be seen; it has no key.
const fn shown(picture: &'static str) -> Problem {
    Problem {
        key: "(no key)",
        moves: &[],
        picture,
    }
}

/// What nobody but who answers may read of a stop, or of a question's answers, before its reveal: by its step.
const SEALED: [&[&str]; 6] = [
    &[],
    &[],
    &["The same request", "a move too soon"],
    &[
        "Rxc6",
        "Txc6",
        "Whoever takes",
        "wrong way round",
        "And the knight.",
    ],
    &["guards c6"],
    &["long ago"],
];

/// The bot's message for all that holds these words.
fn sent(world: &World, channel: u64, words: &str) -> Option<Message> {
    let mut all = world.messages.values();
    all.find(|m| {
        m.channel == channel
            && m.author == world.bot
            && m.only.is_none()
            && m.content.contains(words)
    })
    .cloned()
}

/// Posts the next part of the lesson, and holds that of the ones after it nothing has been shown to members.
async fn next(club: &Club, step: usize) -> Message {
    let channel = club.channel;
    club.coach.command(channel, "coach post-now", &[]).await;
    let post = club
        .discord
        .until("the next step", |world| sent(world, channel, WORDS[step]))
        .await;
    holds_back(club, step);
    post
}

/// Nothing that members can read, but for a member's own verdicts, holds words of later steps or tells what is
/// asked at this one.
fn holds_back(club: &Club, step: usize) {
    let world = club.discord.world();
    for message in world.messages.values().filter(|m| m.author == world.bot) {
        let later = WORDS[step + 1..].iter();
        let sealed = SEALED[step..].iter().flat_map(|words| words.iter());
        let all = message.only.is_none()
            && world
                .channel(message.channel)
                .is_none_or(|channel| channel.kind != ChannelKind::Direct);
        let secrets: Vec<&&str> = match all {
            true => later.chain(sealed).collect(),
            false if message.only == Some(club.coach.id) => Vec::new(),
            false => later.collect(),
        };
        for secret in secrets {
            assert!(!message.content.contains(*secret), "{}", message.content);
        }
    }
}

async fn answer(club: &Club, member: &Someone, moves: &str) -> String {
    let given = [("moves", Given::Text(club.tongue.moves(moves)))];
    let seen = member.command(club.channel, "study answer", &given).await;
    assert!(seen.private(), "{}", seen.text());
    seen.text()
}

async fn has_thread(club: &Club, post: &Message) {
    club.discord
        .until("its thread", |world| world.channel(post.id).map(drop))
        .await;
}

/// Puts an answer into the form of a question.
async fn say_in_words(member: &Someone, post: &Message, words: &str) {
    let form = member.press(post.id, "Answer").await;
    let seen = member.submit(&form, &[words]).await;
    assert!(seen.private(), "{}", seen.text());
}

in_every_language!(a_week_of_a_lesson_from_its_first_words_to_the_homework);

async fn a_week_of_a_lesson_from_its_first_words_to_the_homework(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    let [first, second] = STOPS;
    club.seals(&[
        first,
        second,
        shown("discord-post-lesson-words"),
        shown("discord-post-lesson-example"),
        shown("discord-post-lesson-contrast"),
    ]);
    club.set_up(&[]).await;
    let channel = club.channel;
    let ana = club.member("Ana");
    let ben = club.member("Ben");
    let cleo = club.member("Cleo");
    let file = Attach::text("crossing.pgn", &lesson());
    let file = [("file", club.coach.upload(file))];
    club.coach.command(channel, "lesson take-in", &file).await;
    let given = [("lesson", Given::Number(1))];
    let seen = club.coach.command(channel, "lesson plan", &given).await;
    assert!(
        club.reads(&seen.text(), "lesson-in-week"),
        "{}",
        seen.text()
    );

    // Words, an example.
    for (step, picture) in ["words", "example"].into_iter().enumerate() {
        let post = next(&club, step).await;
        club.holds_picture(&post, &format!("discord-post-lesson-{picture}"));
    }

    // Two stops. Ana is on time, by the coach's wrong move to the right one; Ben comes when it is revealed.
    for (step, wrong, coachs_word, right, picture) in [
        (2, "Ba3", "a move too soon", "Qxc3+", "stop"),
        (3, "Qxc6+", "the wrong way round", "Rxc6+", "second-stop"),
    ] {
        let post = next(&club, step).await;
        club.holds_picture(&post, &format!("discord-post-lesson-{picture}"));
        has_thread(&club, &post).await;
        club.until_open().await;
        let told = answer(&club, &ana, wrong).await;
        assert!(told.contains(coachs_word), "{told}");
        answer(&club, &ana, right).await;
        // The card of the topic is no help with a stop that is open, nor does it say anything of it.
        let topic = [("topic", Given::Text("boden".into()))];
        let seen = ben.command(channel, "study card", &topic).await;
        assert!(seen.private(), "{}", seen.text());
        holds_back(&club, step);
        club.check_for_leaks();
        let reveal = club.reveal().await;
        assert!(
            club.shows(&reveal.content, "Ana") && !reveal.content.contains("Ben"),
            "{}",
            reveal.content
        );
    }

    // Where the topic fails, and the homework: words. Cleo answers these and nothing else.
    for (step, of_cleo) in [(4, "The queen guards c6."), (5, "A king on g1, long ago.")] {
        let post = next(&club, step).await;
        has_thread(&club, &post).await;
        club.until_open().await;
        if !post.attachments.is_empty() {
            club.holds_picture(&post, "discord-post-lesson-contrast");
        }
        say_in_words(&ana, &post, "I have seen it somewhere.").await;
        say_in_words(&cleo, &post, of_cleo).await;
        holds_back(&club, step);
        club.check_for_leaks();
        let before = club.discord.world().messages.len();
        club.coach.command(channel, "coach close", &[]).await;
        let closed = club
            .discord
            .until("the close", |world| {
                let mut new = world.messages.values().skip(before);
                new.find(|m| m.channel == channel && tongue.reads(&m.content, "question-is-closed"))
                    .cloned()
            })
            .await;
        assert!(
            !closed.content.contains(of_cleo) && club.shows(&closed.content, "Ana, Cleo"),
            "{}",
            closed.content
        );
    }
    club.settle().await;
    keep_chronicle!(tongue.kept_as("a-week-of-a-lesson"), club.finish());
}

/// All that the pages of a member can ask the room for, as text.
async fn all_of(member: &Browser) -> String {
    let script = "\
        const paths = ['me', 'posts', 'talk', 'topics', 'leaderboard', 'progress', 'homework', 'lessons', 'lessons/1']; \
        for (let n = 1; n <= 6; n += 1) paths.push(`posts/${n}`, `posts/${n}/reveal`, `posts/${n}/own`, `posts/${n}/mine`, `posts/${n}/answers`); \
        return Promise.all(paths.map((path) => fetch(`/api/${path}`).then((told) => told.text()))).then((all) => all.join('\\n'))";
    match member.run(script, vec![]).await {
        Value::String(all) => all,
        other => panic!("{other}"),
    }
}

async fn post_now(coach: &Browser) {
    coach.press("Week").await;
    let button = "[...document.querySelectorAll('#week > li[data-item] button')].find((b) => (b.getAttribute('aria-label') ?? b.textContent).startsWith('Post now'))";
    coach
        .until(
            "something to post",
            &format!("return {button} !== undefined"),
            vec![],
        )
        .await;
    coach.run(&format!("{button}.click()"), vec![]).await;
    coach.press("Post it now").await;
}

async fn close(coach: &Browser) {
    coach.press("Week").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_week_of_a_lesson_in_the_room() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, cleo) = tokio::join!(driver.open(), driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    room.member(&cleo, "Cleo").await;
    room.coach(&coach).await;
    coach.press("Lessons").await;
    let put = "document.querySelector('#lesson-text').value = arguments[0]";
    coach.run(put, vec![json!(lesson())]).await;
    coach.press("Take the lesson in").await;
    coach.until_says("#lesson-told", "is kept").await;
    coach.press("Into the week, in order").await;
    coach.until_says("#lesson-told", "is in the week").await;

    for (step, words) in WORDS.into_iter().enumerate() {
        post_now(&coach).await;
        anna.until_says("#stream, #open-post", words).await;
        cleo.until_says("#stream, #open-post", words).await;
        let right = match step {
            0 | 1 => continue,
            2 => Some("Qxc3+"),
            3 => Some("Rxc6+"),
            _ => None,
        };
        // Who is on time answers; who answers only what is asked in words finds nothing that tells.
        match right {
            Some(right) => {
                anna.type_into("#text", right).await;
                anna.press("Answer").await;
                anna.until_says("body", "Solved").await;
            }
            None => {
                cleo.type_into("#own-answer", "The queen guards c6, long ago.")
                    .await;
                cleo.press("Send the answer").await;
                cleo.until_says("#own .own-answer", "long ago").await;
            }
        }
        let reader = if right.is_some() { &cleo } else { &anna };
        let seen = all_of(reader).await;
        let later = WORDS[step + 1..].iter();
        for secret in later.chain(SEALED[step..].iter().flat_map(|words| words.iter())) {
            assert!(!seen.contains(secret), "{secret}: {seen}");
        }
        if step == 2 {
            for (from, to) in STOPS[0].moves {
                assert_eq!(leaks::told(&seen, from, to), None, "{seen}");
            }
        }
        assert!(seen.contains(words), "the step itself is there: {seen}");
        close(&coach).await;
        cleo.until(
            "the reveal",
            "return document.querySelectorAll('.reveal').length === arguments[0]",
            vec![json!(step - 1)],
        )
        .await;
        let solved = if right.is_some() {
            "Solved by Anna"
        } else {
            "Answered by Cleo"
        };
        cleo.until_says("#stream", solved).await;
    }
}
