//! A whole week of a lesson, step by step to its homework: one member is always on time, one comes after each
//! reveal, one answers only what is asked in words. Nothing shows more than its step before its time.

use std::fs;

use sealed_move_tests::{
    club::Club,
    discord::{
        commands::Given,
        people::{Attach, Someone},
        world::{Message, World},
    },
    in_every_language, keep_chronicle,
    leaks::Problem,
    tongue::Tongue,
    workspace,
};

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

/// The stops of the lesson. The example before the second takes on the same square, so that of this one only the
/// other moves are looked for.
const STOPS: [Problem; 2] = [
    Problem {
        key: "Qxc3",
        moves: &[("c6", "c3"), ("d6", "a3")],
        picture: "discord-post-lesson-stop",
    },
    Problem {
        key: "Rxc6",
        moves: &[("c4", "c6")],
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
    let world = club.discord.world();
    let coach = club.coach.id;
    let seen_by_members = world
        .messages
        .values()
        .filter(|m| m.author == world.bot && m.only != Some(coach));
    for message in seen_by_members {
        for later in &WORDS[step + 1..] {
            assert!(!message.content.contains(later), "{}", message.content);
        }
    }
    post
}

async fn answer(club: &Club, member: &Someone, moves: &str) -> String {
    let given = [("moves", Given::Text(club.tongue.moves(moves)))];
    let seen = member.command(club.channel, "study answer", &given).await;
    assert!(seen.private(), "{}", seen.text());
    seen.text()
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
    club.seals(&STOPS);
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
        club.until_open().await;
        let told = answer(&club, &ana, wrong).await;
        assert!(told.contains(coachs_word), "{told}");
        answer(&club, &ana, right).await;
        // The card of the topic is no help with a stop that is open, nor does it say anything of it.
        let topic = [("topic", Given::Text("boden".into()))];
        let seen = ben.command(channel, "study card", &topic).await;
        assert!(seen.private(), "{}", seen.text());
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
        club.discord
            .until("its thread", |world| world.channel(post.id).map(drop))
            .await;
        club.until_open().await;
        say_in_words(&ana, &post, "I have seen it somewhere.").await;
        say_in_words(&cleo, &post, of_cleo).await;
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
