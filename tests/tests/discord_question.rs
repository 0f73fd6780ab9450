//! A question and words alone on Discord: from the coach's form to the close and the summary.

use sealed_move_tests::{
    club::Club,
    discord::world::{Message, World},
    keep_chronicle,
};

/// The bot's messages in a channel that begin so.
fn begins(world: &World, channel: u64, words: &str) -> Option<Message> {
    let mut all = world.messages.values();
    all.find(|message| {
        message.channel == channel
            && message.author == world.bot
            && message.content.starts_with(words)
    })
    .cloned()
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_question_from_the_form_to_its_close_and_the_summary() {
    let club = Club::open().await;
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
        seen.private() && seen.text().contains("question"),
        "{}",
        seen.text()
    );
    let form = club.coach.command(channel, "coach say", &[]).await;
    let seen = club.coach.submit(&form, &["No lesson on Monday."]).await;
    assert!(
        seen.text().contains("words (No lesson on Monday.)"),
        "{}",
        seen.text()
    );
    // Of others nothing is taken.
    let ana = club.member("Ana");
    let seen = ana.command(channel, "coach say", &[]).await;
    assert!(
        seen.private() && seen.text().contains("coaches"),
        "{}",
        seen.text()
    );
    // What cannot be taken is given back as it was typed.
    let form = club.coach.command(channel, "coach question", &[]).await;
    let typed = ["Who *wins*?\nAnd why?", "8/8/8/8/8/8/8/8 w - - 0 1", "", ""];
    let seen = club.coach.submit(&form, &typed).await;
    let back = "> Who \\*wins\\*?\n> And why?\n> 8/8/8/8/8/8/8/8 w - - 0 1";
    assert!(
        seen.text().contains("nothing is lost") && seen.text().ends_with(back),
        "{}",
        seen.text()
    );

    club.coach.command(channel, "coach post-now", &[]).await;
    let post = discord
        .until("a question", |world| {
            let post = begins(world, channel, "**Question 1**")?;
            world.channel(post.id).map(|_| post)
        })
        .await;
    assert!(
        post.content.contains("What does White want"),
        "{}",
        post.content
    );
    club.until_open().await;

    // Two answer with the button, one again; talk in the thread is left alone.
    let bruno = club.member("Bruno");
    let form = ana.press(post.id, "Answer").await;
    let seen = ana.submit(&form, &["Perhaps Rd8, to swap"]).await;
    assert!(
        seen.private() && seen.text().contains("Your coach reads it"),
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
        seen.text().contains("1 of 2 waiting") && seen.text().contains("The open file"),
        "{}",
        seen.text()
    );
    let form = club.coach.press(seen.message(), "Mark …").await;
    let seen = club.coach.submit(&form, &["3.5", "Which one?"]).await;
    assert!(
        seen.text().contains("1 of 1 waiting") && seen.text().contains("No idea"),
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
                        && m.content.contains("3.5 of 5 points")
                        && m.content.contains("Which one?")
                })
                .cloned()
        })
        .await;

    // The close names who answered; nothing of what was answered is where others read.
    club.coach.command(channel, "coach close", &[]).await;
    let closed = discord
        .until("the close", |world| {
            begins(world, channel, "**Question 1 is closed**")
        })
        .await;
    assert!(
        closed.content.contains("The file.") && closed.content.contains("Answered by Ana, Bruno."),
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
        .until("the words", |world| begins(world, channel, "**Post 2**"))
        .await;
    club.settle().await;
    assert!(discord.world().channel(words.id).is_none());
    let reply = bruno.reply(channel, words.id, "Thanks", false);
    discord
        .until("a kind word", |world| {
            let direct = world.direct_with(bruno.id)?;
            begins(world, direct, "That post is there to be read")
        })
        .await;
    assert!(discord.world().messages.contains_key(&reply));
    let seen = club.coach.command(channel, "coach summary", &[]).await;
    assert!(
        seen.text().contains("Question 1 (Plans): 2 answered"),
        "{}",
        seen.text()
    );
    keep_chronicle!("a-question", club.finish());
}
