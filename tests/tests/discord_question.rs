//! A question and words alone on Discord: from the coach's form to the close and the summary.

use sealed_move_tests::{
    club::Club,
    discord::{
        commands::Given,
        world::{Message, World},
    },
    in_every_language, keep_chronicle,
    tongue::Tongue,
};

/// The bot's message in a channel, for all who are there, that fits.
fn sent(world: &World, channel: u64, fits: impl Fn(&str) -> bool) -> Option<Message> {
    let mut all = world.messages.values();
    all.find(|message| {
        message.channel == channel
            && message.author == world.bot
            && message.only.is_none()
            && fits(&message.content)
    })
    .cloned()
}

in_every_language!(a_question_from_the_form_to_its_close_and_the_summary);

async fn a_question_from_the_form_to_its_close_and_the_summary(tongue: Tongue) {
    let club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    let (discord, channel) = (club.discord.clone(), club.channel);

    // The coach writes a question, and words to be read.
    let form = club.coach.command(channel, "coach question", &[]).await;
    let seen = club
        .coach
        .submit(
            &form,
            &["What does White want, @everyone?", "", "Plans", "The file."],
        )
        .await;
    assert!(
        seen.private() && club.shows(&seen.text(), "question"),
        "{}",
        seen.text()
    );
    let form = club.coach.command(channel, "coach say", &[]).await;
    let seen = club.coach.submit(&form, &["No lesson on Monday."]).await;
    assert!(
        club.shows(&seen.text(), "words (No lesson on Monday.)"),
        "{}",
        seen.text()
    );
    // What waits without a position is offered, gets a topic and is looked at as one is.
    let offered = |line| club.coach.choices(channel, line, "position", "");
    assert_eq!(offered("coach topic").await, ["-1", "-2"]);
    assert_eq!(offered("coach preview").await, ["-1", "-2"]);
    assert_eq!(offered("coach queue").await, [""; 0], "positions only");
    let given = [
        ("position", Given::Number(-2)),
        ("topic", Given::Text("Dates".into())),
    ];
    let seen = club.coach.command(channel, "coach topic", &given).await;
    assert!(
        seen.private() && seen.text().contains("Dates"),
        "{}",
        seen.text()
    );
    let given = [("position", Given::Number(-1))];
    let seen = club.coach.command(channel, "coach preview", &given).await;
    assert!(
        seen.private() && seen.text().contains("What does White want"),
        "{}",
        seen.text()
    );
    // Of others nothing is taken.
    let ana = club.member("Ana");
    let seen = ana.command(channel, "coach say", &[]).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "coaches"),
        "{}",
        seen.text()
    );
    // What cannot be taken is given back as it was typed.
    let form = club.coach.command(channel, "coach question", &[]).await;
    let typed = ["Who *wins*?\nAnd why?", "8/8/8/8/8/8/8/8 w - - 0 1", "", ""];
    let seen = club.coach.submit(&form, &typed).await;
    let back = "> Who \\*wins\\*?\n> And why?\n> 8/8/8/8/8/8/8/8 w - - 0 1";
    assert!(
        club.shows(&seen.text(), "nothing is lost") && seen.text().ends_with(back),
        "{}",
        seen.text()
    );

    club.coach.command(channel, "coach post-now", &[]).await;
    let post = discord
        .until("a question", |world| {
            let post = sent(world, channel, |text| tongue.reads(text, "question-taken"))?;
            world.channel(post.id).map(|_| post)
        })
        .await;
    assert!(
        club.shows(&post.content, "What does White want"),
        "{}",
        post.content
    );
    club.until_open().await;

    // Two answer with the button, one again; talk in the thread is left alone.
    let bruno = club.member("Bruno");
    let form = ana.press(post.id, "Answer").await;
    let seen = ana.submit(&form, &["Perhaps Rd8, to swap"]).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "Your coach reads it"),
        "{}",
        seen.text()
    );
    let form = ana.press(post.id, "Answer").await;
    ana.submit(&form, &["The open file"]).await;
    let form = bruno.press(post.id, "Answer").await;
    bruno.submit(&form, &["No idea"]).await;
    let talk = bruno.say(post.id, "Hard one!");
    club.settle().await;
    assert!(discord.world().messages.contains_key(&talk));

    // The coach marks the first that waits with points and a word; the other waits.
    let seen = club.coach.command(channel, "coach answers", &[]).await;
    assert!(
        club.shows(&seen.text(), "1 of 2 waiting") && club.shows(&seen.text(), "The open file"),
        "{}",
        seen.text()
    );
    let form = club.coach.press(seen.message(), "Mark …").await;
    let seen = club.coach.submit(&form, &["3.5", "Which one?"]).await;
    assert!(
        club.shows(&seen.text(), "1 of 1 waiting") && club.shows(&seen.text(), "No idea"),
        "{}",
        seen.text()
    );
    discord
        .until("the mark", |world| {
            let direct = world.direct_with(ana.id)?;
            world
                .messages
                .values()
                .find(|m| {
                    m.channel == direct
                        && tongue.shows(&m.content, "3.5 of 5 points")
                        && m.content.contains("Which one?")
                })
                .cloned()
        })
        .await;

    // The close names who answered; nothing of what was answered is where others read.
    club.coach.command(channel, "coach close", &[]).await;
    let closed = discord
        .until("the close", |world| {
            sent(world, channel, |text| {
                tongue.reads(text, "question-is-closed")
            })
        })
        .await;
    assert!(
        club.shows(&closed.content, "The file.")
            && club.shows(&closed.content, "Answered by Ana, Bruno."),
        "{}",
        closed.content
    );
    club.settle().await;
    for message in discord.world().messages.values() {
        let public = message.only.is_none() && [channel, post.id].contains(&message.channel);
        assert!(
            !(public
                && (message.content.contains("open file") || message.content.contains("No idea"))),
            "{}",
            message.content
        );
    }

    // Words alone have no buttons and no thread; a reply to them is talk.
    club.coach.command(channel, "coach post-now", &[]).await;
    let words = discord
        .until("the words", |world| {
            sent(world, channel, |text| text.contains("No lesson on Monday."))
        })
        .await;
    club.settle().await;
    assert!(discord.world().channel(words.id).is_none());
    let reply = bruno.reply(channel, words.id, "Thanks", false);
    discord
        .until("a kind word", |world| {
            let direct = world.direct_with(bruno.id)?;
            sent(world, direct, |text| tongue.reads(text, "there-to-be-read"))
        })
        .await;
    assert!(discord.world().messages.contains_key(&reply));
    let seen = club.coach.command(channel, "coach summary", &[]).await;
    assert!(
        club.shows(&seen.text(), "Question 1 (Plans): 2 answered"),
        "{}",
        seen.text()
    );
    keep_chronicle!(tongue.kept_as("a-question"), club.finish());
}
