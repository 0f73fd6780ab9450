//! Ways of answering on Discord, and what others get to see of it.

use sealed_move_tests::{
    club::{BACK_RANK, Club, SMOTHERED, reveals},
    discord::{
        commands::Given,
        permissions as may,
        world::{Message, World},
    },
    in_every_language, keep_chronicle, pictures,
    tongue::Tongue,
};

fn text(text: &str) -> Given {
    Given::Text(text.into())
}

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

async fn ready(tongue: Tongue, more: &[(&str, Given)], epd: &str) -> (Club, Message) {
    let club = Club::open_in(tongue).await;
    club.set_up(more).await;
    club.queue(epd).await;
    let post = club.post().await;
    (club, post)
}

in_every_language!(ten_ways_of_answering);

async fn ten_ways_of_answering(tongue: Tongue) {
    let (mut club, post) = ready(tongue, &[], BACK_RANK).await;
    let discord = club.discord.clone();
    let channel = club.channel;
    let bot = discord.world().bot;
    discord.overwrite_bot(channel, may::MANAGE_MESSAGES, 0);
    club.settle().await;
    let thread = post.id;
    pictures::hold(
        "discord-post-back-rank",
        &discord.world().files[&post.attachments[0]].bytes,
    );

    // 1: the button. 2: the command. 3: the command in the thread.
    let one = club.member("One");
    let form = one.press(post.id, "Answer").await;
    let seen = one.submit(&form, &["Rxd8+"]).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "5 of 5 points"),
        "{}",
        seen.text()
    );
    let two = club.member("Two");
    let seen = two
        .command(
            channel,
            "study answer",
            &[("moves", text("1.Rxd8+ Rxd8 2.Rxd8#"))],
        )
        .await;
    assert!(
        seen.private() && club.shows(&seen.text(), "5 of 5 points"),
        "{}",
        seen.text()
    );
    let three = club.member("Three");
    let seen = three
        .command(thread, "study answer", &[("moves", text("d2d8"))])
        .await;
    assert!(
        seen.private() && club.shows(&seen.text(), "5 of 5 points"),
        "{}",
        seen.text()
    );

    // 4: a direct message, by one the group has not seen before.
    let four = club.member("Four");
    four.direct("Rd2xd8+");
    let heard = told(&club, four.id, 0).await;
    assert!(
        club.shows(&heard.content, "5 of 5 points"),
        "{}",
        heard.content
    );
    // 5: the command in the direct conversation.
    let place = discord.world().open_direct(four.id);
    let seen = four.command(place, "study progress", &[]).await;
    assert!(club.shows(&seen.text(), "solved"), "{}", seen.text());

    // 6: a reply to the post. 7: a message in the thread. 8: a message in the channel. 9: by name.
    // 10: in figurines, in the thread. Each is taken out of sight, and its sender told directly.
    let said = [
        (channel, Some(post.id), "Rxd8+".to_owned()),
        (thread, None, "I'd play Rxd8+".to_owned()),
        (channel, None, "1. Rxd8+!".to_owned()),
        (channel, None, format!("<@{bot}> Rxd8+")),
        (thread, None, "♖xd8+".to_owned()),
    ];
    for (i, (place, answers, words)) in said.into_iter().enumerate() {
        let member = club.member(&format!("Member {}", i + 6));
        let id = match answers {
            Some(post) => member.reply(place, post, &words, true),
            None => member.say(place, &words),
        };
        let heard = told(&club, member.id, 0).await;
        assert!(
            club.shows(&heard.content, "5 of 5 points"),
            "{words}: {}",
            heard.content
        );
        discord
            .until("the message is out of sight", |world| {
                (!world.messages.contains_key(&id)).then_some(())
            })
            .await;
    }

    // A wrong move is answered with its refutation and a board, in private.
    let wrong = club.member("Wrong");
    wrong.say(thread, "Rd7");
    let heard = told(&club, wrong.id, 0).await;
    assert!(club.shows(&heard.content, "Rxd7"), "{}", heard.content);
    assert!(!heard.attachments.is_empty());

    // Talk is left alone.
    let talker = club.member("Talker");
    for words in [
        "what about ideas with knights later?",
        "lovely position, thanks coach",
        "is it mate in 2 or 3?",
        "my rook was lost yesterday haha",
    ] {
        let id = talker.say(thread, words);
        club.settle().await;
        let world = discord.world();
        assert!(
            world.messages.contains_key(&id),
            "\"{words}\" was taken away"
        );
        assert!(
            direct(&world, talker.id).is_empty(),
            "\"{words}\" was answered"
        );
    }
    let reveal = club.reveal().await;
    assert!(
        club.shows(&reveal.content, "Solved by 9 of 10"),
        "{}",
        reveal.content
    );

    // After the reveal everything may be said.
    let id = talker.say(thread, "So it was Rxd8+!");
    club.settle().await;
    assert!(discord.world().messages.contains_key(&id));
    keep_chronicle!(tongue.kept_as("ten-ways-of-answering"), club.finish());
}

in_every_language!(where_it_may_not_hide_or_tell_it_gives_nothing_away);

async fn where_it_may_not_hide_or_tell_it_gives_nothing_away(tongue: Tongue) {
    let (mut club, post) = ready(tongue, &[], BACK_RANK).await;
    let discord = club.discord.clone();
    let thread = post.id;

    // It may not take the message away, and the member takes no direct messages: a sign, the same
    // whatever the move.
    let closed = club.member("Closed");
    closed.take_direct(false);
    let right = closed.say(thread, "Rxd8+");
    let other = club.member("Other");
    other.take_direct(false);
    let wrong = other.say(thread, "Rd7");
    let signs = |id: u64| {
        let discord = discord.clone();
        async move {
            discord
                .until("a sign", |world| {
                    let reactions = &world.messages.get(&id)?.reactions;
                    (!reactions.is_empty()).then(|| reactions.clone())
                })
                .await
        }
    };
    assert_eq!(signs(right).await, signs(wrong).await);
    let seen = closed.press(post.id, "My progress").await;
    assert!(club.shows(&seen.text(), "is the key"), "{}", seen.text());

    // It may take the message away, and cannot tell directly: a neutral word in the thread.
    discord.overwrite_bot(club.channel, may::MANAGE_MESSAGES, 0);
    club.settle().await;
    let third = club.member("Third");
    third.take_direct(false);
    let id = third.say(thread, "Rxd8+");
    let word = discord
        .until("a neutral word", |world| {
            world
                .messages
                .values()
                .find(|m| m.channel == thread && m.content.contains("Third"))
                .cloned()
        })
        .await;
    assert!(
        !word.content.contains("key") && !word.content.contains("5 of 5"),
        "{}",
        word.content
    );
    assert!(!discord.world().messages.contains_key(&id));
    let seen = third.press(word.id, "My progress").await;
    assert!(
        seen.private() && club.shows(&seen.text(), "is the key"),
        "{}",
        seen.text()
    );

    // With direct messages open, the sender is asked to delete what may not be hidden.
    discord.overwrite_bot(club.channel, 0, 0);
    club.settle().await;
    let fourth = club.member("Fourth");
    fourth.say(thread, "Rxd8+");
    let heard = told(&club, fourth.id, 0).await;
    assert!(
        club.shows(&heard.content, "Please delete it"),
        "{}",
        heard.content
    );
    club.check_for_leaks();
    keep_chronicle!(tongue.kept_as("where-it-may-not-hide"), club.finish());
}

in_every_language!(edits_and_deletions_follow_the_rules);

async fn edits_and_deletions_follow_the_rules(tongue: Tongue) {
    let (club, post) = ready(tongue, &[], BACK_RANK).await;
    let discord = club.discord.clone();
    let thread = post.id;

    // A wrong answer stays one, whatever becomes of the message.
    let ana = club.member("Ana");
    let id = ana.say(thread, "Rd7");
    told(&club, ana.id, 0).await;
    ana.edit(id, "Rxd8+");
    let heard = told(&club, ana.id, 1).await;
    assert!(
        club.shows(&heard.content, "counts as you first sent it"),
        "{}",
        heard.content
    );
    ana.delete(id);
    club.settle().await;
    let seen = ana.press(post.id, "My progress").await;
    assert!(!seen.text().contains("is the key"), "{}", seen.text());
    let seen = ana.command(club.channel, "study my-data", &[]).await;
    let kept = {
        let world = discord.world();
        String::from_utf8(world.files[&seen.messages[0].attachments[0]].bytes.clone())
            .expect("text")
    };
    assert!(
        !kept.contains("\"Rd7\"") || kept.contains("wrong"),
        "the words are forgotten: {kept}"
    );

    // Talk that becomes an answer is heard.
    let ben = club.member("Ben");
    let id = ben.say(thread, "hm, let me think");
    club.settle().await;
    ben.edit(id, "Rxd8+");
    let heard = told(&club, ben.id, 0).await;
    assert!(
        club.shows(&heard.content, "5 of 5 points"),
        "{}",
        heard.content
    );

    // A direct message that could not be read may be edited, and is judged again.
    let eve = club.member("Eve");
    let id = eve.direct("qqq zzz");
    told(&club, eve.id, 0).await;
    eve.edit(id, "Rxd8+");
    let heard = told(&club, eve.id, 1).await;
    assert!(
        club.shows(&heard.content, "5 of 5 points"),
        "{}",
        heard.content
    );
    keep_chronicle!(tongue.kept_as("edits-and-deletions"), club.finish());
}

in_every_language!(open_groups_see_the_verdict_behind_spoiler_marks_and_no_more);

async fn open_groups_see_the_verdict_behind_spoiler_marks_and_no_more(tongue: Tongue) {
    let (mut club, post) = ready(tongue, &[("replies", Given::Number(1))], SMOTHERED).await;
    let discord = club.discord.clone();
    let thread = post.id;
    assert!(club.shows(&post.content, "spoiler"), "{}", post.content);
    let ana = club.member("Ana");
    let id = ana.say(thread, "Nh6+");
    let public = discord
        .until("a verdict", |world| {
            world
                .messages
                .values()
                .find(|m| m.channel == thread && m.content.contains("Ana"))
                .cloned()
        })
        .await;
    assert!(
        club.shows(&public.content, "||right so far"),
        "{}",
        public.content
    );
    assert_eq!(public.reference, Some(id));
    // The whole of it, with the board, is Ana's alone.
    let heard = told(&club, ana.id, 0).await;
    assert!(!heard.attachments.is_empty(), "{}", heard.content);
    // Two in a breath are judged in their order.
    ana.direct("Qg8+");
    ana.direct("Nf7#");
    let heard = told(&club, ana.id, 2).await;
    assert!(
        club.shows(&heard.content, "5 of 5 points"),
        "{}",
        heard.content
    );
    let reveal = club.reveal().await;
    assert!(reveal.content.contains("Ana"), "{}", reveal.content);
    keep_chronicle!(tongue.kept_as("open-group"), club.finish());
}

in_every_language!(without_the_message_content_intent_everything_else_works);

async fn without_the_message_content_intent_everything_else_works(tongue: Tongue) {
    let mut club = Club::open_speaking(tongue, false).await;
    let seen = club.set_up(&[]).await;
    assert!(
        club.shows(&seen.text(), "without the message-content intent"),
        "{}",
        seen.text()
    );
    club.queue(BACK_RANK).await;
    let post = club.post().await;
    let discord = club.discord.clone();
    let bot = discord.world().bot;

    let quiet = club.member("Quiet");
    quiet.say(post.id, "Rxd8+");
    let loud = club.member("Loud");
    loud.reply(club.channel, post.id, "Rxd8+", true);
    let named = club.member("Named");
    named.say(post.id, &format!("<@{bot}> Rxd8+"));
    let direct_one = club.member("Direct");
    direct_one.direct("Rxd8+");
    for member in [&loud, &named, &direct_one] {
        let heard = told(&club, member.id, 0).await;
        assert!(
            club.shows(&heard.content, "5 of 5 points"),
            "{}",
            heard.content
        );
    }
    club.settle().await;
    assert!(direct(&discord.world(), quiet.id).is_empty());
    let form = quiet.press(post.id, "Answer").await;
    let seen = quiet.submit(&form, &["Rxd8+"]).await;
    assert!(club.shows(&seen.text(), "5 of 5 points"), "{}", seen.text());
    club.reveal().await;
    keep_chronicle!(tongue.kept_as("without-message-content"), club.finish());
}

in_every_language!(what_the_bot_cannot_read_the_coach_answers_by_hand);

async fn what_the_bot_cannot_read_the_coach_answers_by_hand(tongue: Tongue) {
    let (mut club, post) = ready(tongue, &[], BACK_RANK).await;
    let ana = club.member("Ana");
    let form = ana.press(post.id, "Answer").await;
    ana.submit(&form, &["the big rook thing on the last line, you know"])
        .await;
    let seen = club.coach.command(club.channel, "coach answers", &[]).await;
    assert!(
        seen.private() && seen.text().contains("the big rook thing"),
        "{}",
        seen.text()
    );
    let form = club.coach.press(seen.message(), "Right …").await;
    let seen = club.coach.submit(&form, &["4,5", "Good eyes!"]).await;
    assert!(
        club.shows(&seen.text(), "No answer waits"),
        "{}",
        seen.text()
    );
    let heard = told(&club, ana.id, 0).await;
    assert!(
        heard.content.contains("Good eyes!") && club.shows(&heard.content, "4.5"),
        "{}",
        heard.content
    );
    club.reveal().await;
    let seen = club
        .coach
        .command(club.channel, "coach leaderboard", &[])
        .await;
    assert!(club.shows(&seen.text(), "4.5 points"), "{}", seen.text());
    keep_chronicle!(tongue.kept_as("answered-by-hand"), club.finish());
}

in_every_language!(with_several_open_posts_the_moves_say_which_is_meant_or_the_member_is_asked);

async fn with_several_open_posts_the_moves_say_which_is_meant_or_the_member_is_asked(
    tongue: Tongue,
) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    // A direct message that could be no answer yet.
    let zoe = club.member("Zoe");
    let early = zoe.direct("anything on today?");
    told(&club, zoe.id, 0).await;
    club.queue(&format!("{BACK_RANK}\n{SMOTHERED}\n")).await;
    let first = club.post().await;
    let second = club.post().await;
    let discord = club.discord.clone();
    let channel = club.channel;
    club.settle().await;

    // Edited into an answer it is heard; into other talk it is not.
    zoe.edit(early, "anything on this week?");
    club.settle().await;
    assert_eq!(direct(&discord.world(), zoe.id).len(), 1);
    zoe.edit(early, "Rxd8+");
    let heard = told(&club, zoe.id, 1).await;
    assert!(
        club.shows(&heard.content, "**Position 1 ·") && club.shows(&heard.content, "5 of 5 points"),
        "{}",
        heard.content
    );

    // The moves fit one position only.
    let ana = club.member("Ana");
    ana.direct("Nh6+");
    let heard = told(&club, ana.id, 0).await;
    assert!(
        club.shows(&heard.content, "**Position 2 ·") && club.shows(&heard.content, "Kh8"),
        "{}",
        heard.content
    );
    // A line under way goes on.
    ana.direct("Kh1");
    let heard = told(&club, ana.id, 1).await;
    assert!(
        club.shows(&heard.content, "**Position 2 ·"),
        "{}",
        heard.content
    );
    // By command, too.
    let seen = ana
        .command(channel, "study answer", &[("moves", text("Rxd8+"))])
        .await;
    assert!(club.shows(&seen.text(), "5 of 5 points"), "{}", seen.text());

    // A move that is legal in both, and a command that says nothing of either: the member chooses.
    let ben = club.member("Ben");
    ben.direct("Kf1");
    let asked = told(&club, ben.id, 0).await;
    assert!(club.shows(&asked.content, "Which one"), "{}", asked.content);
    let seen = ben.press_nth(asked.id, 0).await;
    assert!(club.shows(&seen.text(), "Kf1"), "{}", seen.text());
    for (line, wanted) in [
        ("study hint", "A hint takes 1 point"),
        ("study board", "Your board"),
    ] {
        let seen = ben.command(channel, line, &[]).await;
        assert!(
            club.shows(&seen.text(), "Which one"),
            "{line}: {}",
            seen.text()
        );
        let seen = ben.press_nth(seen.message(), 1).await;
        assert!(club.shows(&seen.text(), wanted), "{line}: {}", seen.text());
    }
    let seen = ben.command(channel, "study give-up", &[]).await;
    let seen = ben.press_nth(seen.message(), 1).await;
    let seen = ben.press(seen.message(), "Yes, give it up").await;
    assert!(
        club.shows(&seen.text(), "given this one up"),
        "{}",
        seen.text()
    );
    // In its thread a command needs no choice.
    let seen = ben.command(first.id, "study hint", &[]).await;
    assert!(club.shows(&seen.text(), "3 left"), "{}", seen.text());
    let seen = ben.press_nth(seen.message(), 0).await;
    assert!(club.shows(&seen.text(), "Hint 1"), "{}", seen.text());

    // A coach names the one to close.
    let seen = club.coach.command(channel, "coach close", &[]).await;
    assert!(club.shows(&seen.text(), "pick one"), "{}", seen.text());
    assert!(club.shows(&second.content, "Position 2"));
    club.check_for_leaks();
    keep_chronicle!(tongue.kept_as("several-open-posts"), club.finish());
}

/// A group that writes in another language than English: what all read is in the group's, what one person reads in
/// that person's.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn everybody_is_spoken_to_in_their_language() {
    struct Spoken {
        name: &'static str,
        locale: &'static str,
        choice: i64,
        heading: &'static str,
        task: &'static str,
        answer: &'static str,
        wrong: &'static str,
        hint: &'static str,
        look: &'static str,
        solved: &'static str,
        progress: &'static str,
        from_now_on: &'static str,
        report: &'static str,
        refused: &'static str,
        reveal: &'static str,
    }
    let spoken = [
        Spoken {
            name: "german",
            locale: "de",
            choice: 1,
            heading: "**Stellung 1** · back-rank mates · #2",
            task: "Weiß zieht und setzt in zwei Zügen matt.",
            answer: "Antworten",
            wrong: "1.Td7 geht nicht. Schwarz antwortet 1...Txd7: der Turm schlägt ihn, und die Grundreihe ist \
                    wieder gedeckt. Wer es jetzt löst, bekommt 4 Punkte.",
            hint: "Tipp (kostet 1, lässt 3)",
            look: "Tipp 1: Sieh dir deinen Turm auf d2 an.",
            solved: "Ja, 1.Txd8+ ist der Schlüsselzug. In einem Zweizüger ist nur der Schlüsselzug gefragt. 3 von 5 \
                     Punkten nach einem Fehlversuch und einem Tipp.",
            progress: "Stellung 1: gelöst.",
            from_now_on: "Ab jetzt spreche ich mit dir in dieser Sprache: Deutsch.",
            report: "Schlüsselzug: **Txd8+**",
            refused: "Das ist nur für die Trainer der Gruppe.",
            reveal: "Mattbild: Grundreihenmatt.",
        },
        Spoken {
            name: "spanish",
            locale: "es-419",
            choice: 3,
            heading: "**Posición 1** · back-rank mates · #2",
            task: "Las blancas juegan y dan mate en dos.",
            answer: "Responder",
            wrong: "1.Td7 no funciona. Las negras responden 1...Txd7: la torre la captura, y la última fila vuelve a \
                    estar defendida. Resolverlo ahora da 4 puntos.",
            hint: "Pista (quita 1, deja 3)",
            look: "Pista 1: Mira tu torre de d2.",
            solved: "Sí, 1.Txd8+ es la clave. En un mate en dos solo se pide la clave. 3 de 5 puntos tras un intento \
                     fallido y una pista.",
            progress: "Posición 1: resuelta.",
            from_now_on: "A partir de ahora te hablo en este idioma: Español.",
            report: "Clave: **Txd8+**",
            refused: "Esto es para los entrenadores del grupo.",
            reveal: "Patrón de mate: ",
        },
    ];
    for spoken in spoken {
        let club = Club::open().await;
        club.set_up(&[]).await;
        let language = [("language", Given::Number(spoken.choice))];
        club.coach
            .command(club.channel, "coach settings", &language)
            .await;
        club.queue(BACK_RANK).await;
        let post = club.post().await;
        assert!(post.content.starts_with(spoken.heading), "{}", post.content);
        assert!(post.content.contains(spoken.task), "{}", post.content);

        // A member whose client speaks the group's language.
        let ana = club.member("Ana");
        ana.reads(spoken.locale);
        let form = ana.press(post.id, spoken.answer).await;
        let wrong = ana.submit(&form, &["Td7"]).await;
        let said = wrong.text();
        assert!(said.contains(spoken.wrong), "{said}");
        let hint = ana.press(wrong.message(), spoken.hint).await;
        assert!(hint.text().contains(spoken.look), "{}", hint.text());
        let form = ana.press(post.id, spoken.answer).await;
        let solved = ana.submit(&form, &["Txd8+"]).await;
        assert!(solved.text().contains(spoken.solved), "{}", solved.text());
        let refused = ana.command(club.channel, "coach week", &[]).await;
        assert!(
            refused.text().contains(spoken.refused),
            "{}",
            refused.text()
        );
        for asked in ["progress", "leaderboard", "points", "help"] {
            let command = format!("study {asked}");
            let seen = ana.command(club.channel, &command, &[]).await;
            if asked == "progress" {
                assert!(seen.text().contains(spoken.progress), "{}", seen.text());
            }
        }

        // One whose client speaks English, until they choose.
        let ben = club.member("Ben");
        let seen = ben.command(club.channel, "study progress", &[]).await;
        assert!(
            club.shows(&seen.text(), "Position 1: not answered yet."),
            "{}",
            seen.text()
        );
        let tag = spoken.locale.split('-').next().unwrap_or_default();
        let seen = ben
            .command(club.channel, "study language", &[("language", text(tag))])
            .await;
        assert!(seen.text().contains(spoken.from_now_on), "{}", seen.text());
        ben.command(club.channel, "study progress", &[]).await;

        // The coach's sheets, in the coach's language.
        let report = club.queue(BACK_RANK).await;
        assert!(
            report.text().contains("Key: **Rxd8+**"),
            "{}",
            report.text()
        );
        club.coach.reads(spoken.locale);
        let report = club.queue(BACK_RANK).await;
        assert!(report.text().contains(spoken.report), "{}", report.text());
        for asked in [
            "settings",
            "week",
            "shelf",
            "answers",
            "permissions",
            "summary",
            "member list",
        ] {
            let command = format!("coach {asked}");
            club.coach.command(club.channel, &command, &[]).await;
        }
        club.coach.command(club.channel, "coach close", &[]).await;
        let reveal = club
            .discord
            .until("the reveal", |world| {
                let reveal = reveals(world, club.channel).first().cloned()?;
                // Its post says that it is closed, and the thread is told last.
                let told =
                    |m: &Message| m.channel == post.id && m.author == world.bot && m.id > reveal.id;
                let closed = world.messages.get(&post.id)?.edited.is_some();
                (closed && world.messages.values().any(told)).then_some(reveal)
            })
            .await;
        assert!(reveal.content.contains(spoken.reveal), "{}", reveal.content);
        assert!(club.shows(&reveal.content, "Txd8"), "{}", reveal.content);
        let mut club = club;
        club.let_out(&reveal);
        keep_chronicle!(&format!("spoken-in-{}", spoken.name), club.finish());
    }
}
