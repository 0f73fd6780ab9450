//! One group on Discord from set-up to summary; each conversation is kept as a snapshot for reading.

use sealed_move_tests::{
    club::{BACK_RANK, Club, SMOTHERED},
    discord::{Discord, commands::Given, people::Attach, world::Message},
    in_every_language, keep_chronicle, pictures,
    tongue::Tongue,
};

/// Keeps the pictures of a message beside the snapshots, for looking at.
fn hold_pictures(discord: &Discord, name: &str, message: &Message) {
    let world = discord.world();
    let english = world.tongue == Tongue::English;
    let files = message
        .attachments
        .iter()
        .filter_map(|id| world.files.get(id));
    let files: Vec<_> = files.filter(|file| file.kind == "image/png").collect();
    assert!(!files.is_empty(), "{name} has a picture");
    let alone = files.len() == 1;
    for (i, file) in files.into_iter().enumerate() {
        let name = match alone {
            true => format!("discord-{name}"),
            false => format!("discord-{name}-{}", i + 1),
        };
        let dated = file
            .description
            .as_deref()
            .is_some_and(|alt| alt.starts_with("Who took part"));
        match dated {
            // The words in them are held by what stands in their place.
            _ if !english => {}
            true => pictures::hold_size(&name, &file.bytes),
            false => pictures::hold(&name, &file.bytes),
        }
        assert!(
            file.description
                .as_deref()
                .is_some_and(|alt| !alt.is_empty()),
            "{name} has alt text"
        );
    }
}

fn text(text: &str) -> Given {
    Given::Text(text.into())
}

in_every_language!(a_week_from_set_up_to_summary);

async fn a_week_from_set_up_to_summary(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    let discord = club.discord.clone();
    let (channel, coach) = (club.channel, club.coach.clone());
    let ana = club.member("Ana");
    let ben = club.member("Ben *the* _bold_");

    // The zone is picked from what fits.
    let zones = coach.choices(channel, "coach set-up", "zone", "lisb").await;
    assert_eq!(zones, ["Europe/Lisbon"]);
    let second = discord.person("Tom");
    discord.join(club.guild, &second);
    club.set_up(&[
        ("time", text("18.00")),
        ("days", text("mon-fri")),
        ("open-for", text("2d")),
        ("name", text("Lantern Street study group")),
        ("second-coach", Given::User(second.id)),
    ])
    .await;
    coach
        .command(
            channel,
            "coach settings",
            &[("hint-cost", Given::Number(0))],
        )
        .await;

    // A file with a sound position, another, one that does not hold and one that cannot be read.
    let file = format!(
        "{BACK_RANK}\n{SMOTHERED}\n6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - dm 3; id \"idle-1\";\n8/8/8/8 w - -\n"
    );
    let seen = club.queue(&file).await;
    let report = seen.message();
    hold_pictures(&discord, "check-report", &seen.messages[0]);
    coach.press(report, "Next").await;
    coach.press(report, "Next").await;
    coach.press(report, "Next").await;

    // The week, reordered, looked at, a topic changed.
    let seen = coach.command(channel, "coach week", &[]).await;
    let week = seen.message();
    let seen = coach.pick(week, "smother-1").await;
    assert!(seen.text().contains('→'), "{}", seen.text());
    coach.press(week, "Earlier").await;
    // Taken out by mistake, and put back at its place.
    let seen = coach.press(week, "Take out").await;
    assert!(!seen.text().contains('→'), "{}", seen.text());
    let seen = coach.press(week, "Put it back").await;
    assert!(
        seen.text().contains("→ ` 1`") && seen.text().contains("smother-1"),
        "{}",
        seen.text()
    );
    let seen = coach.press(week, "Look at it").await;
    assert!(
        club.shows(&seen.text(), "**Position 1**"),
        "{}",
        seen.text()
    );
    coach
        .command(channel, "coach pause", &[("until", text("2099-01-01"))])
        .await;
    coach.command(channel, "coach resume", &[]).await;

    // The post.
    let post = club.post().await;
    hold_pictures(&discord, "post-smothered", &post);
    {
        let world = discord.world();
        let file = &world.files[&post.attachments[0]];
        assert_eq!(file.name, "position-1.png");
        assert!(file.bytes.starts_with(b"\x89PNG"), "a picture");
        assert!(
            file.description
                .as_deref()
                .is_some_and(|alt| alt.contains("Nf7") || alt.contains("f7"))
        );
    }

    // Ana plays it out in private, with a wrong move and a hint on the way.
    let form = ana.press(post.id, "Answer").await;
    let seen = ana.submit(&form, &["Qe6"]).await;
    assert!(seen.private());
    hold_pictures(&discord, "wrong-move", &seen.messages[0]);
    ana.press(post.id, "Hint").await;
    let form = ana.press(post.id, "Answer").await;
    let seen = ana.submit(&form, &["Nh6+"]).await;
    assert!(
        !seen.messages[0].attachments.is_empty(),
        "the board is redrawn"
    );
    hold_pictures(&discord, "bots-defence", &seen.messages[0]);
    let form = ana.press(seen.message(), "Next move").await;
    let seen = ana.submit(&form, &["Qg8+"]).await;
    let form = ana.press(seen.message(), "Next move").await;
    let seen = ana.submit(&form, &["Nf7#"]).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "Solved"),
        "{}",
        seen.text()
    );
    hold_pictures(&discord, "solved", &seen.messages[0]);
    ana.press(post.id, "My progress").await;

    // Ben gives up.
    let form = ben.press(post.id, "Answer").await;
    ben.submit(&form, &["Qe6"]).await;
    ben.command(channel, "study give-up", &[]).await;

    // The reveal, and the thread after it.
    let reveal = club.reveal().await;
    hold_pictures(&discord, "reveal", &reveal);
    assert!(club.shows(&reveal.content, "Nh6"), "{}", reveal.content);

    // Figures.
    ana.command(channel, "study leaderboard", &[]).await;
    let seen = coach.command(channel, "coach summary", &[]).await;
    assert!(
        seen.messages[0].attachments.len() + seen.messages.len() > 1,
        "charts come along"
    );
    hold_pictures(&discord, "summary", &seen.messages[0]);
    let seen = coach
        .command(channel, "coach export", &[("what", Given::Number(0))])
        .await;
    let csv = {
        let world = discord.world();
        String::from_utf8(world.files[&seen.messages[0].attachments[0]].bytes.clone())
            .expect("text")
    };
    assert!(
        csv.starts_with("rank,name,points,solved,tried,answered\r\n") && csv.contains("Ana"),
        "{csv}"
    );

    // What is kept, and its end.
    let seen = ana.command(channel, "study my-data", &[]).await;
    let kept = {
        let world = discord.world();
        String::from_utf8(world.files[&seen.messages[0].attachments[0]].bytes.clone())
            .expect("text")
    };
    assert!(
        kept.contains(&tongue.moves("Nf7#")) && kept.contains("Ana"),
        "{kept}"
    );
    let seen = ana.command(channel, "study erase-me", &[]).await;
    let seen = ana.press(seen.message(), "Yes, erase everything").await;
    assert!(club.shows(&seen.text(), "is erased"), "{}", seen.text());
    let seen = ana.command(channel, "study my-data", &[]).await;
    assert!(
        club.shows(&seen.text(), "Nothing is kept"),
        "{}",
        seen.text()
    );
    let seen = ben.command(channel, "study leaderboard", &[]).await;
    assert!(!seen.text().contains("Ana"), "{}", seen.text());

    ben.command(channel, "study help", &[]).await;
    keep_chronicle!(tongue.kept_as("week"), club.finish());
}

in_every_language!(strangers_and_hostile_files_get_a_plain_word);

async fn strangers_and_hostile_files_get_a_plain_word(tongue: Tongue) {
    let club = Club::open_in(tongue).await;
    let (channel, coach) = (club.channel, club.coach.clone());
    let stranger = club.member("Mallory");

    // Set-up takes the right to manage channels, and a text channel.
    let zone = ("zone", text("Europe/Lisbon"));
    let seen = stranger
        .command(channel, "coach set-up", std::slice::from_ref(&zone))
        .await;
    assert!(
        club.shows(&seen.text(), "Manage Channels"),
        "{}",
        seen.text()
    );
    let seen = coach
        .command(channel, "coach set-up", &[("zone", text("Atlantis"))])
        .await;
    assert!(club.shows(&seen.text(), "no time zone"), "{}", seen.text());
    club.set_up(&[]).await;
    let seen = coach.command(channel, "coach set-up", &[zone]).await;
    assert!(club.shows(&seen.text(), "already"), "{}", seen.text());

    // Coach commands are for coaches.
    let file = stranger.upload(Attach::text("week.epd", BACK_RANK));
    for (line, given) in [
        ("coach week", vec![]),
        ("coach check", vec![("file", file)]),
        ("coach post-now", vec![]),
        ("coach close", vec![]),
        ("coach summary", vec![]),
        ("coach export", vec![("what", Given::Number(2))]),
        ("coach settings", vec![("name", text("Mallory's"))]),
        ("coach add-coach", vec![("who", Given::User(stranger.id))]),
    ] {
        let seen = stranger.command(channel, line, &given).await;
        assert!(
            seen.private() && club.shows(&seen.text(), "for the group's coaches"),
            "{line}: {}",
            seen.text()
        );
    }
    assert_eq!(
        stranger
            .choices(channel, "coach queue", "position", "")
            .await,
        Vec::<String>::new()
    );

    // Files that are too large, lie about it, are no text, are empty, or are nothing of the kind.
    let check = |attach: Attach| {
        let file = coach.upload(attach);
        let coach = coach.clone();
        async move {
            coach
                .command(channel, "coach check", &[("file", file)])
                .await
                .text()
        }
    };
    let large = Attach::text("large.pgn", &"x".repeat(11 << 20));
    let told = check(large.clone()).await;
    assert!(club.shows(&told, "larger than 10 MB"), "{told}");
    let told = check(Attach {
        told_size: Some(10),
        ..large
    })
    .await;
    assert!(club.shows(&told, "larger than 10 MB"), "{told}");
    let zeros = Attach {
        bytes: vec![0; 5000],
        ..Attach::text("zeros.epd", "")
    };
    let told = check(zeros).await;
    assert!(club.shows(&told, "the file is not text"), "{told}");
    let told = check(Attach::text("empty.epd", "")).await;
    assert!(!told.is_empty() && !told.contains("sound"), "{told}");
    let told = check(Attach::text(
        "@everyone ||x||.epd",
        "<@1> @everyone **bold** [x](https://example.org)\n",
    ))
    .await;
    assert!(
        !told.contains("@everyone") && !told.contains("https://"),
        "{told}"
    );

    // Commands in a channel without a group.
    let elsewhere = club.discord.channel(club.guild, "elsewhere");
    let seen = stranger
        .command(elsewhere, "study answer", &[("moves", text("Rd8"))])
        .await;
    assert!(
        club.shows(&seen.text(), "no study group"),
        "{}",
        seen.text()
    );
    keep_chronicle!(tongue.kept_as("strangers-and-hostile-files"), club.finish());
}

in_every_language!(missing_permissions_are_named_and_lived_with);

async fn missing_permissions_are_named_and_lived_with(tongue: Tongue) {
    use sealed_move_tests::discord::permissions as may;
    let mut club = Club::open_in(tongue).await;
    let discord = club.discord.clone();
    let (channel, coach) = (club.channel, club.coach.clone());
    discord.overwrite_bot(
        channel,
        0,
        may::ATTACH_FILES | may::CREATE_PUBLIC_THREADS | may::ADD_REACTIONS,
    );
    let seen = club.set_up(&[]).await;
    let told = seen.text();
    for name in [
        "Attach Files",
        "Create Public Threads",
        "Add Reactions",
        "Manage Messages",
    ] {
        assert!(club.shows(&told, name), "{name}: {told}");
    }
    assert!(
        !told.contains("**Send Messages**") && club.shows(&told, "Edit Channel"),
        "{told}"
    );
    club.queue(BACK_RANK).await;
    let post = club.post().await;
    assert!(post.attachments.is_empty(), "no picture is allowed");
    let everything = {
        let world = discord.world();
        let all: Vec<String> = world
            .messages
            .values()
            .filter(|m| m.channel == channel && m.author == world.bot && m.only.is_none())
            .map(|m| m.content.clone())
            .collect();
        all.join("\n")
    };
    assert!(
        everything.contains("g8") && everything.contains("d2"),
        "the position in words: {everything}"
    );
    assert!(
        discord.world().channel(post.id).is_none(),
        "no thread is allowed"
    );
    let seen = club.member("Ana").press(post.id, "Answer").await;
    assert!(seen.modal.is_some());

    // The rest goes on as ever.
    club.reveal().await;
    let seen = coach.command(channel, "coach permissions", &[]).await;
    assert!(club.shows(&seen.text(), "Attach Files"), "{}", seen.text());
    keep_chronicle!(tongue.kept_as("missing-permissions"), club.finish());
}

in_every_language!(the_rest_that_a_coach_and_a_member_can_ask_for);

/// What no other conversation asks for: the shelf, a preview, topics, times and places in the week, who
/// may coach, and what a member can look up.
async fn the_rest_that_a_coach_and_a_member_can_ask_for(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    let (channel, coach) = (club.channel, club.coach.clone());
    let ana = club.member("Ana");
    let tom = club.member("Tom");
    club.set_up(&[]).await;

    let seen = coach.command(channel, "coach shelf", &[]).await;
    assert!(club.shows(&seen.text(), "empty"), "{}", seen.text());
    let file = coach.upload(Attach::text(
        "week.epd",
        &format!("{BACK_RANK}\n{SMOTHERED}\n"),
    ));
    coach
        .command(channel, "coach check", &[("file", file)])
        .await;
    let seen = coach.command(channel, "coach shelf", &[]).await;
    assert!(!seen.messages[0].attachments.is_empty(), "with a board");

    // Words that tell a move come back, and go out only on a second word.
    let telling = ["Start with Nh6+.", "The queen gives herself up."];
    let form = coach.press(seen.message(), "Words …").await;
    let seen = coach.submit(&form, &telling).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "tell a move"),
        "{}",
        seen.text()
    );
    for typed in telling {
        let typed = tongue.moves(typed);
        assert!(seen.text().contains(&typed), "{}", seen.text());
    }
    for way in ["Change the words …", "Send them all the same …"] {
        let form = coach.press(seen.message(), way).await;
        let form = form.modal.expect("a form").to_string();
        for typed in telling {
            let typed = tongue.moves(typed);
            assert!(form.contains(&typed), "{way}: {form}");
        }
    }
    let form = coach
        .press(seen.message(), "Send them all the same …")
        .await;
    let seen = coach.submit(&form, &telling).await;
    assert!(
        club.shows(&seen.text(), "These words are kept"),
        "{}",
        seen.text()
    );

    // Positions and entries of the week are numbered from 1 in a new store.
    let first = ("position", Given::Number(1));
    let second = ("position", Given::Number(2));
    for (line, given) in [
        (
            "coach topic",
            vec![first.clone(), ("topic", text("First steps"))],
        ),
        ("coach topic", vec![second.clone()]),
        ("coach preview", vec![first.clone()]),
        ("coach queue", vec![first.clone()]),
        ("coach queue", vec![second.clone()]),
        // A pattern that the position does not show: said at once, and marked in the week.
        (
            "coach topic",
            vec![second.clone(), ("topic", text("Boden's mate"))],
        ),
        ("coach move", vec![second.clone(), ("to", Given::Number(1))]),
        ("coach topic", vec![second.clone()]),
        (
            "coach time",
            vec![first.clone(), ("when", text("2099-12-01 18:00"))],
        ),
        (
            "coach time",
            vec![first.clone(), ("when", text("tomorrow"))],
        ),
        ("coach time", vec![first]),
        ("coach add-coach", vec![("who", Given::User(tom.id))]),
        ("coach settings", vec![("defences", Given::Number(1))]),
        ("coach remove-coach", vec![("who", Given::User(tom.id))]),
    ] {
        let seen = coach.command(channel, line, &given).await;
        assert!(seen.private(), "{line}: {}", seen.text());
    }
    let seen = tom.command(channel, "coach week", &[]).await;
    assert!(
        club.shows(&seen.text(), "for the group's coaches"),
        "{}",
        seen.text()
    );

    // What waits in the week has its words changed there.
    let seen = coach.command(channel, "coach week", &[]).await;
    let seen = coach.pick(seen.message(), "smother-1").await;
    let week = seen.message();
    let form = coach.press(week, "Words …").await;
    let seen = coach.submit(&form, &["Take your time.", ""]).await;
    assert!(
        club.shows(&seen.text(), "These words are kept"),
        "{}",
        seen.text()
    );
    // So is the position itself, and checked at once; what cannot be read comes back.
    let fen = "5rk1/5Npp/8/8/2Q5/8/8/6K1 w - - 0 1";
    let text = format!("[FEN \"{fen}\"]\n\n{{Take your time.}} *");
    for (position, task, shown) in [
        ("5rk1/5Npp/8", "#3", "cannot be read"),
        (text.as_str(), "#2", "does not hold"),
        (text.as_str(), "#3", "Saved and checked anew"),
    ] {
        let form = coach.press(week, "Edit …").await;
        let seen = coach.submit(&form, &[position, task, ""]).await;
        let told = seen.text();
        assert!(seen.private() && club.shows(&told, shown), "{told}");
        assert!(
            shown != "cannot be read" || told.contains(position),
            "{told}"
        );
    }

    let post = club.post().await;
    assert!(post.content.contains("Take your time."), "{}", post.content);
    club.until_open().await;
    for line in [
        "study points",
        "study help",
        "study board",
        "study progress",
        "study leaderboard",
    ] {
        let seen = ana.command(channel, line, &[]).await;
        assert!(seen.private(), "{line}: {}", seen.text());
    }
    // The price of a hint is told before it is paid, and no more than a point is left for the last.
    let seen = ana.press(post.id, "Hint").await;
    assert!(club.shows(&seen.text(), "takes 1 point"), "{}", seen.text());
    let seen = ana.press_nth(seen.message(), 0).await;
    assert!(club.shows(&seen.text(), "Hint 1"), "{}", seen.text());
    // Once it is solved nothing is left to press.
    let form = ana.press(post.id, "Answer").await;
    ana.submit(&form, &["Nh6+ Kh8 Qg8+ Rxg8 Nf7#"]).await;
    let hint = ana.press(post.id, "Hint").await;
    let given_up = ana.command(channel, "study give-up", &[]).await;
    for seen in [hint, given_up] {
        assert!(seen.private(), "{}", seen.text());
        assert!(
            club.shows(&seen.text(), "solved this one"),
            "{}",
            seen.text()
        );
    }

    // A coach comes to what is judged too, and overrules it; what cannot be taken is given back.
    let post_id = ("position", Given::Number(1));
    let seen = coach.command(channel, "coach answers", &[post_id]).await;
    let judged = seen.message();
    assert!(
        club.shows(&seen.text(), "My verdict: solved"),
        "{}",
        seen.text()
    );
    let form = coach.press(judged, "Overrule: not right …").await;
    let seen = coach.submit(&form, &["seven", "Who told you?"]).await;
    assert!(
        club.shows(&seen.text(), "is no number of points") && seen.text().contains("Who told you?"),
        "{}",
        seen.text()
    );
    let form = coach.press(judged, "Overrule: not right …").await;
    let seen = coach.submit(&form, &["1.5", "Who told you?"]).await;
    assert!(
        club.shows(&seen.text(), "A coach's verdict: not the solution"),
        "{}",
        seen.text()
    );
    let heard = club.discord.until("word of the coach's verdict", |world| {
        let direct = world.direct_with(ana.id)?;
        let mut all = world.messages.values();
        all.find(|one| one.channel == direct && one.content.contains("Who told you?"))
            .cloned()
    });
    let heard = heard.await.content;
    assert!(club.shows(&heard, "not the solution"), "{heard}");
    club.reveal().await;
    keep_chronicle!(tongue.kept_as("the-rest"), club.finish());
}
