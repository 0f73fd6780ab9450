//! Messages that wait for their writer's word on Discord, and answers that fit another post.

use sealed_move_tests::{
    club::{BACK_RANK, Club, SMOTHERED},
    discord::{
        commands::Given,
        people::Someone,
        permissions as may,
        world::{Message, World},
    },
    in_every_language, keep_chronicle,
    tongue::Tongue,
};

/// The bot's direct messages to someone, in order.
fn direct(world: &World, user: u64) -> Vec<Message> {
    let Some(channel) = world.direct_with(user) else {
        return Vec::new();
    };
    world
        .messages
        .values()
        .filter(|message| message.channel == channel && message.author == world.bot)
        .cloned()
        .collect()
}

/// Waits for the `n`th direct message to someone.
async fn told(club: &Club, user: u64, n: usize) -> Message {
    club.discord
        .until("a direct message", |world| {
            direct(world, user).get(n).cloned()
        })
        .await
}

async fn gone(club: &Club, message: u64) {
    club.discord
        .until("the message is out of sight", |world| {
            (!world.messages.contains_key(&message)).then_some(())
        })
        .await;
}

in_every_language!(what_may_tell_a_move_waits_for_its_writers_word);

async fn what_may_tell_a_move_waits_for_its_writers_word(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    club.queue(BACK_RANK).await;
    let post = club.post().await;
    let discord = club.discord.clone();
    let thread = post.id;
    discord.overwrite_bot(club.channel, may::MANAGE_MESSAGES, 0);
    club.settle().await;

    // Said to all, by its writer's word, in the writer's name.
    let ana = club.member("Ana");
    let id = ana.say(thread, "maybe the rook on d8 is the point");
    gone(&club, id).await;
    let asked = told(&club, ana.id, 0).await;
    assert!(
        club.shows(&asked.content, "What is it to be?"),
        "{}",
        asked.content
    );
    let seen = ana.press(asked.id, "Drop it").await;
    assert!(club.shows(&seen.text(), "Dropped"), "{}", seen.text());

    // As an answer it is judged, for its writer alone.
    let ben = club.member("Ben");
    let id = ben.say(club.channel, "spoiler: maybe rook takes d8");
    gone(&club, id).await;
    let asked = told(&club, ben.id, 0).await;
    let seen = ben.press(asked.id, "It is my answer").await;
    assert!(club.shows(&seen.text(), "5 of 5 points"), "{}", seen.text());
    // Whoever takes no direct messages decides by a button that says nothing.
    let eve = club.member("Eve");
    eve.take_direct(false);
    let id = eve.say(thread, "king up");
    gone(&club, id).await;
    let word = discord
        .until("a neutral word", |world| {
            world
                .messages
                .values()
                .find(|m| m.channel == thread && m.content.contains("Eve"))
                .cloned()
        })
        .await;
    assert!(!word.content.contains("king"), "{}", word.content);
    let seen = eve.press(word.id, "Decide").await;
    assert!(
        seen.private() && club.shows(&seen.text(), "king up"),
        "{}",
        seen.text()
    );
    club.check_for_leaks();
    let seen = eve.press(seen.message(), "Say it to all").await;
    assert!(club.shows(&seen.text(), "Said to all"), "{}", seen.text());
    discord
        .until("her words", |world| {
            world
                .messages
                .values()
                .find(|m| m.channel == thread && m.content == "**Eve**: king up")
                .map(|_| ())
        })
        .await;

    // What waits is kept, so its writer may see it and have it erased, and so may the coach on their word.
    let kept = async |who: &Someone, line: &str, given: &[(&str, Given)]| {
        let seen = who.command(club.channel, line, given).await;
        let world = discord.world();
        let file = seen.messages[0]
            .attachments
            .first()
            .map(|id| &world.files[id]);
        file.map(|file| String::from_utf8(file.bytes.clone()).expect("text"))
    };
    let una = club.member("Una");
    let id = una.say(thread, "is it Rd6?");
    gone(&club, id).await;
    told(&club, una.id, 0).await;
    let mine = kept(&una, "study my-data", &[]).await.expect("a file");
    assert!(mine.contains(&tongue.moves("is it Rd6?")), "{mine}");
    let seen = una.command(club.channel, "study erase-me", &[]).await;
    let seen = una.press(seen.message(), "Yes, erase everything").await;
    assert!(club.shows(&seen.text(), "is erased"), "{}", seen.text());
    assert_eq!(kept(&una, "study my-data", &[]).await, None);
    let form = una.press(post.id, "Answer").await;
    una.submit(&form, &["Rd7"]).await;
    let id = una.say(thread, "is it Rd5?");
    gone(&club, id).await;
    let who = [("who", Given::User(una.id))];
    let theirs = kept(&club.coach, "coach member data", &who).await;
    assert!(
        theirs
            .expect("a file")
            .contains(&tongue.moves("is it Rd5?"))
    );
    let seen = club
        .coach
        .command(club.channel, "coach member erase", &who)
        .await;
    club.coach
        .press(seen.message(), "Yes, erase everything")
        .await;
    assert_eq!(kept(&una, "study my-data", &[]).await, None);

    // The question survives a restart.
    let zoe = club.member("Zoe");
    let id = zoe.say(thread, "is it Rd7?");
    gone(&club, id).await;
    let asked = told(&club, zoe.id, 0).await;
    club.power_cut();
    club.restart().await;
    let seen = zoe.press(asked.id, "It is my answer").await;
    assert!(club.shows(&seen.text(), "Rd7"), "{}", seen.text());
    let log = club.bot.log();
    assert!(!log.contains(&tongue.moves("Rd7")), "{log}");

    // Where it may not hide, the writer is asked to delete it.
    discord.overwrite_bot(club.channel, 0, 0);
    club.settle().await;
    let kim = club.member("Kim");
    let id = kim.say(thread, "sac on d8?");
    let asked = told(&club, kim.id, 0).await;
    assert!(
        club.shows(&asked.content, "Please delete it"),
        "{}",
        asked.content
    );
    assert!(discord.world().messages[&id].reactions.is_empty());
    let seen = kim.press(asked.id, "It may stay").await;
    assert!(club.shows(&seen.text(), "It stays"), "{}", seen.text());
    club.reveal().await;
    keep_chronicle!(tongue.kept_as("waiting-for-a-word"), club.finish());
}

in_every_language!(an_answer_that_fits_another_post_is_asked_back_in_every_way);

async fn an_answer_that_fits_another_post_is_asked_back_in_every_way(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    club.queue(&format!("{BACK_RANK}\n{SMOTHERED}\n")).await;
    let first = club.post().await;
    let second = club.post().await;
    let discord = club.discord.clone();
    discord.overwrite_bot(club.channel, may::MANAGE_MESSAGES, 0);
    club.settle().await;
    const QUESTION: &str =
        "These moves fit position 2, not the one you sent them to. Send them there?";

    // By the form under the post, and by the command in its thread.
    let ana = club.member("Ana");
    let form = ana.press(first.id, "Answer").await;
    let seen = ana.submit(&form, &["Nh6+"]).await;
    assert!(club.shows(&seen.text(), QUESTION), "{}", seen.text());
    let seen = ana.press_nth(seen.message(), 0).await;
    assert!(club.shows(&seen.text(), "Kh8"), "{}", seen.text());
    let ben = club.member("Ben");
    let given = [("moves", Given::Text("Nh6+".into()))];
    let seen = ben.command(first.id, "study answer", &given).await;
    assert!(club.shows(&seen.text(), QUESTION), "{}", seen.text());

    // In the thread, and in reply to the post: out of sight, and asked in private.
    for (i, way) in ["thread", "reply"].into_iter().enumerate() {
        let member = club.member(&format!("Member {i}"));
        let id = match way {
            "thread" => member.say(first.id, "Nh6+"),
            _ => member.reply(club.channel, first.id, "Nh6+", true),
        };
        gone(&club, id).await;
        let asked = told(&club, member.id, 0).await;
        assert!(
            club.shows(&asked.content, QUESTION),
            "{way}: {}",
            asked.content
        );
        let seen = member.press_nth(asked.id, 0).await;
        assert!(club.shows(&seen.text(), "Kh8"), "{way}: {}", seen.text());
    }

    // In the channel, a move that is legal in both is asked about.
    let eve = club.member("Eve");
    let id = eve.say(club.channel, "Kf1");
    gone(&club, id).await;
    let asked = told(&club, eve.id, 0).await;
    assert!(
        club.shows(&asked.content, "positions 1 and 2"),
        "{}",
        asked.content
    );
    assert!(club.shows(&second.content, "Position 2"));
    club.check_for_leaks();
    keep_chronicle!(tongue.kept_as("fits-another-post"), club.finish());
}
