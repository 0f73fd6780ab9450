//! One group on Discord from set-up to summary, each message kept as a snapshot for reading.

use sealed_move_tests::{
    club::{BACK_RANK, Club, SMOTHERED, seen_as_text, written},
    discord::{Discord, commands::Given, people::Attach, world::Message},
    workspace,
};

fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(format!("week-{name}"), text));
}

/// Keeps the pictures of a message beside the snapshots, for looking at. How they are drawn is tested
/// where they are drawn; here only that each is there and as large as the one looked at last.
fn pictures(discord: &Discord, name: &str, message: &Message) {
    let world = discord.world();
    let files = message
        .attachments
        .iter()
        .filter_map(|id| world.files.get(id));
    let files: Vec<_> = files.filter(|file| file.kind == "image/png").collect();
    assert!(!files.is_empty(), "{name} has a picture");
    for (i, file) in files.into_iter().enumerate() {
        let path = workspace().join(format!("tests/tests/snapshots/week-{name}-{}.png", i + 1));
        if std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always") {
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            std::fs::write(&path, &file.bytes).expect("the picture can be written");
        }
        let kept =
            std::fs::read(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        // Width and height stand in bytes 16 to 24 of a PNG.
        assert_eq!(
            kept.get(16..24),
            file.bytes.get(16..24),
            "{}",
            path.display()
        );
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

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_week_from_set_up_to_summary() {
    let mut club = Club::open().await;
    let discord = club.discord.clone();
    let (channel, coach) = (club.channel, club.coach.clone());
    let ana = club.member("Ana");
    let ben = club.member("Ben *the* _bold_");

    // The zone is picked from what fits.
    let zones = coach.choices(channel, "coach set-up", "zone", "lisb").await;
    assert_eq!(zones, ["Europe/Lisbon"]);
    let second = discord.person("Tom");
    discord.join(club.guild, &second);
    let seen = club
        .set_up(&[
            ("time", text("18.00")),
            ("days", text("mon-fri")),
            ("open-for", text("2d")),
            ("name", text("Lantern Street study group")),
            ("second-coach", Given::User(second.id)),
        ])
        .await;
    snapshot("1-set-up", &seen_as_text(&discord, &seen));
    let seen = coach
        .command(
            channel,
            "coach settings",
            &[("hint-cost", Given::Number(0))],
        )
        .await;
    snapshot("2-settings", &seen_as_text(&discord, &seen));

    // A file with a sound position, another, one that does not hold and one that cannot be read.
    let file = format!(
        "{BACK_RANK}\n{SMOTHERED}\n6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - dm 3; id \"idle-1\";\n8/8/8/8 w - -\n"
    );
    let seen = club.queue(&file).await;
    snapshot("3-check-page-1", &seen_as_text(&discord, &seen));
    let report = seen.message();
    let seen = coach.press(report, "Next").await;
    snapshot("4-check-page-2", &seen_as_text(&discord, &seen));
    coach.press(report, "Next").await;
    let seen = coach.press(report, "Next").await;
    snapshot("5-check-page-4", &seen_as_text(&discord, &seen));

    // The week, reordered, looked at, a topic changed.
    let seen = coach.command(channel, "coach week", &[]).await;
    let week = seen.message();
    let seen = coach.pick(week, "smother-1").await;
    assert!(seen.text().contains('→'), "{}", seen.text());
    let seen = coach.press(week, "Earlier").await;
    snapshot("6-week", &seen_as_text(&discord, &seen));
    let seen = coach.press(week, "Look at it").await;
    assert!(seen.text().contains("**Position 1**"), "{}", seen.text());
    let seen = coach
        .command(channel, "coach pause", &[("until", text("2099-01-01"))])
        .await;
    snapshot("7-pause", &seen_as_text(&discord, &seen));
    coach.command(channel, "coach resume", &[]).await;

    // The post.
    club.keep_secret(&["Nh6+/f7h6", "Qg8+/c4g8"]);
    let post = club.post().await;
    snapshot("8-post", &written(&discord, &post));
    pictures(&discord, "8-post", &post);
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
    snapshot("9-answer-form", &seen_as_text(&discord, &form));
    let seen = ana.submit(&form, &["Qe6"]).await;
    assert!(seen.private());
    snapshot("10-wrong", &seen_as_text(&discord, &seen));
    pictures(&discord, "10-wrong", &seen.messages[0]);
    let seen = ana.press(post.id, "Hint").await;
    snapshot("11-hint", &seen_as_text(&discord, &seen));
    let form = ana.press(post.id, "Answer").await;
    let seen = ana.submit(&form, &["Nh6+"]).await;
    snapshot("12-on-the-way", &seen_as_text(&discord, &seen));
    assert!(
        !seen.messages[0].attachments.is_empty(),
        "the board is redrawn"
    );
    let form = ana.press(seen.message(), "Next move").await;
    let seen = ana.submit(&form, &["Qg8+"]).await;
    let form = ana.press(seen.message(), "Next move").await;
    let seen = ana.submit(&form, &["Nf7#"]).await;
    assert!(
        seen.private() && seen.text().contains("Solved"),
        "{}",
        seen.text()
    );
    snapshot("13-solved", &seen_as_text(&discord, &seen));
    let seen = ana.press(post.id, "My progress").await;
    snapshot("14-progress", &seen_as_text(&discord, &seen));

    // Ben gives up.
    let form = ben.press(post.id, "Answer").await;
    ben.submit(&form, &["Qe6"]).await;
    let seen = ben.command(channel, "study give-up", &[]).await;
    snapshot("15-given-up", &seen_as_text(&discord, &seen));

    // The reveal, and the thread after it.
    let reveal = club.reveal().await;
    snapshot("16-reveal", &written(&discord, &reveal));
    pictures(&discord, "16-reveal", &reveal);
    assert!(reveal.content.contains("Nh6"), "{}", reveal.content);
    let closed = discord
        .until("the post is closed", |world| {
            let message = world.messages.get(&post.id)?;
            message.content.contains("Closed").then(|| message.clone())
        })
        .await;
    snapshot("17-closed-post", &written(&discord, &closed));
    discord
        .until("the thread is opened for talk", |world| {
            world
                .messages
                .values()
                .find(|m| m.channel == post.id && m.content.contains("Talk as you like"))
                .map(drop)
        })
        .await;

    // Figures.
    let seen = ana.command(channel, "study leaderboard", &[]).await;
    snapshot("18-leaderboard", &seen_as_text(&discord, &seen));
    let seen = coach.command(channel, "coach summary", &[]).await;
    assert!(
        seen.messages[0].attachments.len() + seen.messages.len() > 1,
        "charts come along"
    );
    let seen = coach
        .command(channel, "coach export", &[("what", Given::Number(0))])
        .await;
    let csv = {
        let world = discord.world();
        String::from_utf8(world.files[&seen.messages[0].attachments[0]].bytes.clone())
            .expect("text")
    };
    assert!(
        csv.starts_with("rank,name,points,solved,tried\r\n") && csv.contains("Ana"),
        "{csv}"
    );

    // What is kept, and its end.
    let seen = ana.command(channel, "study my-data", &[]).await;
    let kept = {
        let world = discord.world();
        String::from_utf8(world.files[&seen.messages[0].attachments[0]].bytes.clone())
            .expect("text")
    };
    assert!(kept.contains("Nf7#") && kept.contains("Ana"), "{kept}");
    let seen = ana.command(channel, "study erase-me", &[]).await;
    let seen = ana.press(seen.message(), "Yes, erase everything").await;
    assert!(seen.text().contains("is erased"), "{}", seen.text());
    let seen = ana.command(channel, "study my-data", &[]).await;
    assert!(seen.text().contains("Nothing is kept"), "{}", seen.text());
    let seen = ben.command(channel, "study leaderboard", &[]).await;
    assert!(!seen.text().contains("Ana"), "{}", seen.text());

    let seen = ben.command(channel, "study help", &[]).await;
    snapshot("19-help", &seen_as_text(&discord, &seen));
    club.finish();
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn strangers_and_hostile_files_get_a_plain_word() {
    let club = Club::open().await;
    let (channel, coach) = (club.channel, club.coach.clone());
    let stranger = club.member("Mallory");

    // Set-up takes the right to manage channels, and a text channel.
    let zone = ("zone", text("Europe/Lisbon"));
    let seen = stranger
        .command(channel, "coach set-up", std::slice::from_ref(&zone))
        .await;
    assert!(seen.text().contains("Manage Channels"), "{}", seen.text());
    let seen = coach
        .command(channel, "coach set-up", &[("zone", text("Atlantis"))])
        .await;
    assert!(seen.text().contains("no time zone"), "{}", seen.text());
    club.set_up(&[]).await;
    let seen = coach.command(channel, "coach set-up", &[zone]).await;
    assert!(seen.text().contains("already"), "{}", seen.text());

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
            seen.private() && seen.text().contains("for the group's coaches"),
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
    assert!(told.contains("larger than 10 MB"), "{told}");
    let told = check(Attach {
        told_size: Some(10),
        ..large
    })
    .await;
    assert!(told.contains("larger than 10 MB"), "{told}");
    let zeros = Attach {
        bytes: vec![0; 5000],
        ..Attach::text("zeros.epd", "")
    };
    let told = check(zeros).await;
    assert!(told.contains("not a text file"), "{told}");
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
    assert!(seen.text().contains("no study group"), "{}", seen.text());
    club.finish();
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn missing_permissions_are_named_and_lived_with() {
    use sealed_move_tests::discord::permissions as may;
    let mut club = Club::open().await;
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
        assert!(told.contains(name), "{name}: {told}");
    }
    assert!(
        !told.contains("**Send Messages**") && told.contains("Edit Channel"),
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
    assert!(seen.text().contains("Attach Files"), "{}", seen.text());
    club.finish();
}
