//! Answers to a question: grouped by their first moves, marked, and shown with their writers' leave; on Discord in
//! every language, and in the club room by two members and a coach in real browsers.

use sealed_move_tests::{
    browser::{Browser, Driver},
    club::Club,
    discord::{
        commands::Given,
        people::Someone,
        world::{Message, World},
    },
    in_every_language, keep_chronicle,
    leaks::Problem,
    room::RunningRoom,
    tongue::Tongue,
};

/// A position of our own: the rook mates on a8.
const POSITION: &str = "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1";

/// The bot's latest message in a channel that fits.
fn sent(world: &World, channel: u64, fits: impl Fn(&str) -> bool) -> Option<Message> {
    let mut all = world.messages.values();
    all.rfind(|message| {
        message.channel == channel
            && message.author == world.bot
            && message.only.is_none()
            && fits(&message.content)
    })
    .cloned()
}

/// The question to a writer whether their answer may be shown.
async fn asked_for_leave(club: &Club, who: &Someone) -> Message {
    club.discord
        .until("the question of leave", |world| {
            let direct = world.direct_with(who.id)?;
            sent(world, direct, |text| {
                club.tongue.reads(text, "may-it-be-shown")
            })
        })
        .await
}

/// The question's picture, the only one that may be seen; it has no key.
const ASKED: Problem = Problem {
    key: "(no key)",
    moves: &[],
    picture: "discord-post-homework",
};

in_every_language!(answers_are_grouped_marked_and_shown_with_leave);

async fn answers_are_grouped_marked_and_shown_with_leave(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.seals(&[ASKED]);
    club.set_up(&[]).await;
    let (discord, channel) = (club.discord.clone(), club.channel);
    let form = club.coach.command(channel, "coach question", &[]).await;
    club.coach
        .submit(&form, &["How does White win?", POSITION, "", "The rank."])
        .await;
    club.coach.command(channel, "coach post-now", &[]).await;
    let post = discord
        .until("a question", |world| {
            let post = sent(world, channel, |text| tongue.reads(text, "question-taken"))?;
            world.channel(post.id).map(|_| post)
        })
        .await;
    club.until_open().await;
    club.holds_picture(&post, ASKED.picture);
    let people = ["Ana", "Bruno", "Carla", "Dora"].map(|name| club.member(name));
    let [ana, bruno, carla, dora] = &people;
    for (who, text) in [(ana, "Ra8#"), (bruno, "Ra8"), (carla, "Ra7"), (dora, "???")] {
        let form = who.press(post.id, "Answer").await;
        who.submit(&form, &[text]).await;
    }

    // Side by side: the largest group first, those without a move last, and all of them wait.
    let position = [("position", Given::Number(1))];
    let seen = club
        .coach
        .command(channel, "coach answers", &position)
        .await;
    let text = seen.text();
    assert!(
        seen.private() && club.reads(&text, "answers-by-move"),
        "{text}"
    );
    let lines: Vec<&str> = text.lines().skip(1).collect();
    assert_eq!(lines.len(), 3, "{text}");
    let mate = tongue.moves("Ra8#");
    assert!(lines[0].contains(&mate) && lines[0].contains('2'), "{text}");
    assert!(lines[1].contains(&tongue.moves("Ra7")), "{text}");
    assert!(club.reads(lines[2], "begins-no-move"), "{text}");
    let seen = club.coach.pick(seen.message(), &mate).await;
    assert!(club.shows(&seen.text(), "Ana"), "{}", seen.text());

    // The coach would show two of them, and marks one.
    let form = club
        .coach
        .press(seen.message(), "Show as an example …")
        .await;
    let seen = club.coach.submit(&form, &["Short and right."]).await;
    assert!(club.reads(&seen.text(), "example-is"), "{}", seen.text());
    // Who is asked is asked before anything else is done, so that the conversation is always the same.
    club.settle().await;
    let form = club.coach.press(seen.message(), "Mark …").await;
    club.coach.submit(&form, &["5", "Well seen."]).await;
    club.settle().await;
    let seen = club
        .coach
        .command(channel, "coach answers", &position)
        .await;
    let seen = club.coach.pick(seen.message(), &tongue.moves("Ra7")).await;
    let form = club
        .coach
        .press(seen.message(), "Show as an example …")
        .await;
    club.coach.submit(&form, &[""]).await;
    club.settle().await;
    let seen = club
        .coach
        .command(channel, "coach answers", &position)
        .await;
    let seen = club.coach.pick(seen.message(), &mate).await;
    let seen = club.coach.press(seen.message(), "Next").await;
    assert!(seen.text().contains("Bruno"), "{}", seen.text());
    let form = club
        .coach
        .press(seen.message(), "Show as an example …")
        .await;
    club.coach.submit(&form, &[""]).await;
    club.settle().await;

    // Ana allows it with her name, Bruno without, Carla has not said.
    let question = asked_for_leave(&club, ana).await;
    assert!(
        question.content.contains("Short and right."),
        "{}",
        question.content
    );
    assert!(
        club.reads(&question.content, "leave-caution"),
        "{}",
        question.content
    );
    let seen = ana.press(question.id, "Show it with my name").await;
    assert!(club.reads(&seen.text(), "leave-is"), "{}", seen.text());
    let question = asked_for_leave(&club, bruno).await;
    bruno.press(question.id, "Show it without my name").await;
    asked_for_leave(&club, carla).await;
    // Each finds their own answer with what the coach made of it.
    let seen = ana.command(channel, "study homework", &[]).await;
    assert!(
        seen.private() && seen.text().contains("Well seen."),
        "{}",
        seen.text()
    );
    let seen = dora.press(post.id, "My progress").await;
    assert!(
        club.reads(&seen.text(), "waits-for-coach"),
        "{}",
        seen.text()
    );

    // The close; behind it the two that are allowed, and no other.
    club.coach.command(channel, "coach close", &[]).await;
    let closed = discord
        .until("the close", |world| {
            sent(world, channel, |text| {
                tongue.reads(text, "question-is-closed")
            })
        })
        .await;
    assert!(
        club.reads(&closed.content, "answers-wait"),
        "{}",
        closed.content
    );
    let examples = discord
        .until("the examples", |world| {
            let all = world.messages.values();
            let shown = all.filter(|message| {
                message.channel == post.id && tongue.reads(&message.content, "example-heading")
            });
            let shown: Vec<Message> = shown.cloned().collect();
            (shown.len() == 2).then_some(shown)
        })
        .await;
    assert!(
        examples[0].content.contains("Ana") && examples[0].content.contains("Short and right."),
        "{}",
        examples[0].content
    );
    assert!(
        !examples[1].content.contains("Bruno"),
        "{}",
        examples[1].content
    );
    club.settle().await;
    let unsaid = tongue.moves("Ra7");
    for message in discord.world().messages.values() {
        let public = message.only.is_none() && [channel, post.id].contains(&message.channel);
        assert!(
            !(public && message.content.contains(&unsaid)),
            "{}",
            message.content
        );
    }
    // Others' answers stand with one's own, too.
    let seen = bruno.command(channel, "study homework", &[]).await;
    assert!(seen.text().contains("Short and right."), "{}", seen.text());

    // Ana takes it back: the message that stood there no longer has her words.
    let seen = ana.command(channel, "study homework", &[]).await;
    ana.press(seen.message(), "Do not show it").await;
    let gone = discord
        .until("the words gone", |world| {
            let message = world.messages.get(&examples[0].id)?.clone();
            tongue
                .reads(&message.content, "example-taken-back")
                .then_some(message)
        })
        .await;
    assert!(!gone.content.contains("Ana"), "{}", gone.content);
    keep_chronicle!(tongue.kept_as("homework"), club.finish());
}

async fn answers(member: &Browser, text: &str) {
    member.type_into("#own-answer", text).await;
    member.press("Send the answer").await;
    member.until_says("#own .own-answer", text).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn homework_in_the_room_from_the_question_to_the_example_and_back() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, boris) = tokio::join!(driver.open(), driver.open(), driver.open());
    tokio::join!(room.member(&anna, "Anna"), room.member(&boris, "Boris"));
    room.coach(&coach).await;
    coach.press("Check").await;
    coach.press("Write a question, or words to be read").await;
    coach.type_into("#write-words", "How does White win?").await;
    coach.type_into("#write-fen", POSITION).await;
    coach.press("Put it into the week as a question").await;
    coach.until_says("#write-told", "The question waits").await;
    coach.press("Week").await;
    coach.press("Post now: question: How does White win?").await;
    coach.press("Post it now").await;
    for member in [&anna, &boris] {
        member.until_says("#open-post", "How does White win?").await;
    }
    answers(&anna, "Ra8 is mate at once.").await;
    answers(&boris, "By patience.").await;
    boris.until_says("#own .own-answer", "Not marked yet").await;

    // The coach reads them by their first moves and asks Anna.
    coach.press("Posts").await;
    coach
        .press_first("#posts details[data-post] > summary")
        .await;
    coach
        .until_says(
            "#posts .answer-group[data-move='Ra8#']",
            "Ra8# (1, waiting: 1)",
        )
        .await;
    coach
        .until_says("#posts details[data-post]", "No move (1")
        .await;
    coach
        .press_first(".answer-group[data-move='Ra8#'] .showing > summary")
        .await;
    coach
        .type_into(
            ".answer-group[data-move='Ra8#'] .showing textarea",
            "Nothing more to say.",
        )
        .await;
    coach
        .press_first(".answer-group[data-move='Ra8#'] .showing button")
        .await;
    coach
        .until_says(
            ".answer-group[data-move='Ra8#'] .showing",
            "has not said yet",
        )
        .await;

    // She is told at once, allows it, and nobody sees it before the close.
    anna.until_says("#leave-asked", "My work").await;
    anna.until_says("#own .leave", "May it be shown?").await;
    anna.until_says("#own .leave", "Nothing more to say.").await;
    anna.press("My work").await;
    anna.until_says("#my-homework", "How does White win?").await;
    anna.press_first("#my-homework .leave button").await;
    anna.until_says("#my-homework .leave", "with your name")
        .await;
    assert!(!boris.text("body").await.contains("mate at once"));
    coach.press("Week").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    boris
        .until_says("#stream .reveal .examples", "Ra8 is mate at once.")
        .await;
    boris.until_says("#stream .reveal .examples", "Anna").await;
    boris
        .until_says("#stream .reveal", "2 answers still wait")
        .await;
    assert!(!anna.text("body").await.contains("By patience"));

    // Taken back, it is gone from every page.
    anna.press("Take it back").await;
    anna.until_says("#my-homework .leave", "is not shown").await;
    boris
        .until(
            "the example is gone",
            "return document.querySelector('#stream .examples') === null \
               && document.querySelector('#stream .reveal') !== null",
            vec![],
        )
        .await;
    assert!(!boris.text("body").await.contains("mate at once"));
    let kept = anna
        .run(
            "return fetch('/api/kept').then((answer) => answer.text())",
            vec![],
        )
        .await;
    assert!(kept.to_string().contains("refused"), "{kept}");
}
