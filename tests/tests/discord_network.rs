//! Discord on a bad day: crowds, lost lines, lost sessions, repeated events, restarts, trouble at the
//! other end; and two groups at once.

use std::time::Duration;

use sealed_move_tests::{
    club::{BACK_RANK, Bot, Club, SMOTHERED, posts, reveals},
    discord::{
        Discord,
        commands::Given,
        faults::Trouble,
        gateway::Out,
        people::{Attach, Someone},
        world::World,
    },
    in_every_language, keep_chronicle, leaks,
    tongue::Tongue,
};

fn text(text: &str) -> Given {
    Given::Text(text.into())
}

/// The texts of the bot's direct messages to someone.
fn direct(world: &World, user: u64) -> Vec<String> {
    let Some(channel) = world.direct_with(user) else {
        return Vec::new();
    };
    world
        .messages
        .values()
        .filter(|message| message.channel == channel && message.author == world.bot)
        .map(|message| message.content.clone())
        .collect()
}

async fn ready(tongue: Tongue, epd: &str) -> (Club, u64) {
    let club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    club.queue(epd).await;
    let post = club.post().await;
    (club, post.id)
}

in_every_language!(a_hundred_members_answer_at_once);

async fn a_hundred_members_answer_at_once(tongue: Tongue) {
    let (mut club, post) = ready(tongue, BACK_RANK).await;
    let discord = club.discord.clone();
    let channel = club.channel;
    let refused_before = discord.world().rates.refused;
    discord
        .world()
        .chronicle
        .crowd(Some("a hundred members answer within a few seconds"));
    let mut tasks = Vec::new();
    for i in 0..100 {
        let member = club.member(&format!("Member {i:02}"));
        let right = i % 3 != 0;
        let words = if right { "Rxd8+" } else { "Rd7" };
        let discord = discord.clone();
        tasks.push(tokio::spawn(async move {
            // A third each by button, by command, and directly, spread over a few seconds.
            tokio::time::sleep(Duration::from_millis(30 * i)).await;
            let told = match i / 3 % 3 {
                0 => {
                    let form = member.press(post, "Answer").await;
                    let seen = member.submit(&form, &[words]).await;
                    assert!(seen.private());
                    seen.text()
                }
                1 => {
                    let seen = member
                        .command(channel, "study answer", &[("moves", text(words))])
                        .await;
                    assert!(seen.private());
                    seen.text()
                }
                _ => {
                    member.direct(words);
                    discord
                        .until_within(Duration::from_secs(60), "a direct verdict", |world| {
                            direct(world, member.id).first().cloned()
                        })
                        .await
                }
            };
            let refuted = told.contains(&tongue.moves("Rxd7"));
            assert_eq!(refuted, !right, "{words}: {told}");
            assert!(!right || tongue.shows(&told, "5 of 5 points"), "{told}");
        }));
    }
    for task in tasks {
        task.await.expect("each member got the right verdict");
    }
    discord.world().chronicle.crowd(None);
    let refused = discord.world().rates.refused - refused_before;
    assert!(refused <= 5, "{refused} requests ran into a rate limit");
    let reveal = club.reveal().await;
    assert!(
        club.shows(&reveal.content, "Solved by 66 of 100"),
        "{}",
        reveal.content
    );
    // The summary of so many is longer than a message: it is read part by part, and trouble at the
    // other end doubles nothing.
    discord
        .world()
        .faults
        .plan("PATCH", "/messages/@original", 1, Trouble::DoneBut(502));
    let mut seen = club.coach.command(channel, "coach summary", &[]).await;
    let mut all = String::new();
    for _ in 0..20 {
        discord.world().chronicle.strike_out(seen.interaction);
        assert_eq!(seen.messages.len(), 1, "one message");
        assert!(!seen.messages[0].attachments.is_empty(), "with its charts");
        all.push_str(&seen.text());
        let next = seen.messages[0]
            .components
            .iter()
            .flat_map(|row| row["components"].as_array().cloned().unwrap_or_default())
            .find(|part| {
                let label = part["label"].as_str().unwrap_or_default();
                label == "Next part" || tongue.labels("Next part").contains(label)
            })
            .expect("there are parts");
        if next["disabled"] == true {
            break;
        }
        seen = club.coach.press(seen.message(), "Next part").await;
    }
    for i in 0..100 {
        let row = format!("Member {i:02}: ");
        assert_eq!(all.matches(&row).count(), 1, "{row}");
    }
    assert!(discord.world().faults.spent());

    // Who of a hundred comes first is a matter of luck.
    let mut text = club.finish();
    for i in 0..100 {
        text = text.replace(&format!("Member {i:02}"), "Member ⟨n⟩");
    }
    keep_chronicle!(tongue.kept_as("a-hundred-at-once"), text);
}

in_every_language!(lost_lines_repeated_events_and_lost_sessions);

async fn lost_lines_repeated_events_and_lost_sessions(tongue: Tongue) {
    let (mut club, post) = ready(tongue, SMOTHERED).await;
    let discord = club.discord.clone();
    let ana = club.member("Ana");
    let told = |n: usize| {
        let (discord, user) = (discord.clone(), ana.id);
        async move {
            discord
                .until_within(Duration::from_secs(40), "a direct verdict", |world| {
                    direct(world, user).get(n).cloned()
                })
                .await
        }
    };

    // The line drops in the middle; what is said meanwhile comes with the resume, and comes twice.
    ana.direct("Nh6+");
    told(0).await;
    discord.world().sessions.repeat_on_resume = 3;
    discord.event("the line to Discord drops");
    discord.gateway(Out::Drop);
    ana.direct("Qg8+");
    told(1).await;
    discord
        .until("a resume", |world| {
            (world.sessions.resumed == 1).then_some(())
        })
        .await;

    // Discord asks for a reconnect, and repeats again.
    discord.world().sessions.repeat_on_resume = 5;
    discord.event("Discord asks the bot to connect anew");
    discord.gateway(Out::Send(
        serde_json::json!({"op": 7, "s": null, "t": null, "d": null}),
    ));
    discord
        .until("another resume", |world| {
            (world.sessions.resumed == 2).then_some(())
        })
        .await;
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(
        direct(&discord.world(), ana.id).len(),
        2,
        "each message was answered once"
    );

    // The session is lost: what is said until the next one is told by nobody, and is read back.
    let before = discord.world().sessions.identified;
    discord.event("the session is lost, with all that is said until the next");
    discord.world().sessions.lose();
    let ben = club.member("Ben");
    ana.direct("Nf7#");
    ben.say(post, "Nh6+");
    let last = told(2).await;
    assert!(tongue.shows(&last, "5 of 5 points"), "{last}");
    discord
        .until_within(Duration::from_secs(40), "Ben's verdict", |world| {
            direct(world, ben.id).first().cloned()
        })
        .await;
    assert!(discord.world().sessions.identified > before);
    club.check_for_leaks();
    let reveal = club.reveal().await;
    assert!(
        tongue.shows(&reveal.content, "Solved by 1 of 2: Ana"),
        "{}",
        reveal.content
    );
    keep_chronicle!(tongue.kept_as("lost-lines"), club.finish());
}

in_every_language!(killed_and_started_again_nothing_is_sent_twice_or_lost);

async fn killed_and_started_again_nothing_is_sent_twice_or_lost(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    club.queue(&format!("{BACK_RANK}\n{SMOTHERED}\n")).await;
    let discord = club.discord.clone();
    let channel = club.channel;

    // The post goes out, its answer is lost, and the bot dies before it hears of it.
    discord.world().faults.plan(
        "POST",
        &format!("/channels/{channel}/messages"),
        1,
        Trouble::LostAnswer,
    );
    let seen = club.coach.command(channel, "coach post-now", &[]).await;
    assert!(club.reads(&seen.text(), "goes-out-now"), "{}", seen.text());
    discord
        .until("the post", |world| posts(world, channel).first().map(drop))
        .await;
    club.power_cut();
    let ana = club.member("Ana");
    ana.say(channel, "Rd7");
    // Long after the nonce is forgotten.
    discord.world().nonces.clear();
    club.restart().await;
    let post = discord
        .until("a thread", |world| {
            let post = posts(world, channel).first()?.id;
            world.channel(post).map(|thread| thread.id)
        })
        .await;
    // What was said while it was down is answered.
    discord
        .until("Ana's verdict", |world| {
            direct(world, ana.id).first().cloned()
        })
        .await;
    let seen = ana.press(post, "My progress").await;
    assert!(seen.private());
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(
        posts(&discord.world(), channel).len(),
        1,
        "the post went out once"
    );

    // The same in the middle of a reveal.
    discord.world().faults.plan(
        "POST",
        &format!("/channels/{channel}/messages"),
        1,
        Trouble::LostAnswer,
    );
    club.coach.command(channel, "coach close", &[]).await;
    discord
        .until("the reveal", |world| {
            reveals(world, channel).first().map(drop)
        })
        .await;
    club.power_cut();
    discord.world().nonces.clear();
    club.restart().await;
    discord
        .until("the post is closed", |world| {
            world
                .messages
                .get(&post)
                .filter(|m| tongue.reads(&m.content, "post-closed"))
                .map(drop)
        })
        .await;
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(
        reveals(&discord.world(), channel).len(),
        1,
        "the reveal went out once"
    );
    let reveal = reveals(&discord.world(), channel)[0].clone();
    club.let_out(&reveal);
    assert_eq!(club.bot.stop().await, 0, "{}", club.bot.log());
    keep_chronicle!(tongue.kept_as("killed-and-started-again"), club.finish());
}

in_every_language!(trouble_at_the_other_end_is_lived_through);

async fn trouble_at_the_other_end_is_lived_through(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    club.queue(BACK_RANK).await;
    let discord = club.discord.clone();
    let channel = club.channel;
    let sends = format!("/channels/{channel}/messages");
    {
        let mut world = discord.world();
        world.faults.plan("POST", &sends, 1, Trouble::Status(503));
        world.faults.plan("POST", &sends, 1, Trouble::DoneBut(502));
        world
            .faults
            .plan("POST", "/threads", 1, Trouble::DoneBut(500));
        world
            .faults
            .plan("POST", "/callback", 1, Trouble::DoneBut(502));
        world
            .faults
            .plan("PATCH", "/messages/@original", 1, Trouble::TooMany(0.3));
    }
    let post = club.post().await;
    assert_eq!(posts(&discord.world(), channel).len(), 1);
    let ana = club.member("Ana");
    let form = ana.press(post.id, "Answer").await;
    discord
        .world()
        .faults
        .plan("POST", "/callback", 1, Trouble::Status(500));
    let seen = ana.submit(&form, &["Rxd8+"]).await;
    assert!(club.shows(&seen.text(), "5 of 5 points"), "{}", seen.text());
    assert!(discord.world().faults.spent(), "all of it came to pass");

    // A token that dies of old age is no reason to lose an answer.
    let ben = club.member("Ben");
    discord
        .world()
        .faults
        .plan("POST", "/callback", 3, Trouble::Status(500));
    let id = ben.send_command(channel, "study answer", &[("moves", text("Rxd8+"))]);
    tokio::time::sleep(Duration::from_secs(3)).await;
    discord.world().interactions.remove(&id);
    club.reveal().await;
    let seen = ben.command(channel, "study progress", &[]).await;
    assert!(club.shows(&seen.text(), "1 of 1 solved"), "{}", seen.text());
    keep_chronicle!(tongue.kept_as("trouble-at-the-other-end"), club.finish());
}

in_every_language!(two_groups_with_their_own_zones_and_ways);

async fn two_groups_with_their_own_zones_and_ways(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    let discord = club.discord.clone();
    club.set_up(&[("time", text("18:00"))]).await;
    // The second on another server, on the other side of the world, and open.
    let akiko = discord.person("Akiko");
    let other = discord.server("Harbour Club", &akiko);
    let harbour = discord.channel(other, "evening-study");
    let seen = akiko
        .command(
            harbour,
            "coach set-up",
            &[
                ("zone", text("Asia/Tokyo")),
                ("time", text("18:00")),
                ("replies", Given::Number(1)),
            ],
        )
        .await;
    assert!(
        seen.text().contains("Asia/Tokyo") && club.shows(&seen.text(), "open:"),
        "{}",
        seen.text()
    );

    speak(tongue, &akiko, harbour).await;
    let one = club.queue(BACK_RANK).await;
    assert!(
        club.shows(&one.text(), "1 put into the week"),
        "{}",
        one.text()
    );
    let file = akiko.upload(Attach::text("a.epd", SMOTHERED));
    akiko
        .command(
            harbour,
            "coach check",
            &[("file", file), ("put-into-week", Given::Flag(true))],
        )
        .await;
    // 18:00 in Lisbon and 18:00 in Tokyo are 8 or 9 hours apart.
    let due = |seen: String| -> i64 {
        let at = seen.find("<t:").expect("a moment");
        seen[at + 3..]
            .split(':')
            .next()
            .and_then(|n| n.parse().ok())
            .expect("a number")
    };
    let here = due(club
        .coach
        .command(club.channel, "coach week", &[])
        .await
        .text());
    let there = due(akiko.command(harbour, "coach week", &[]).await.text());
    let apart = (here - there).rem_euclid(86_400) / 3_600;
    assert!([8, 9].contains(&apart), "{apart} hours");

    let first = club.post().await;
    akiko.command(harbour, "coach post-now", &[]).await;
    let second = discord
        .until("the other post", |world| {
            let post = posts(world, harbour).first().cloned()?;
            world.channel(post.id).is_some().then_some(post)
        })
        .await;
    assert!(club.shows(&first.content, "sealed") && club.shows(&second.content, "spoiler"));
    // Each coach has a say in their own group only.
    let seen = akiko.command(club.channel, "coach week", &[]).await;
    assert!(
        club.shows(&seen.text(), "for the group's coaches"),
        "{}",
        seen.text()
    );

    // One who is in both groups and writes directly is asked which one is meant.
    let mika = club.member("Mika");
    discord.join(other, &mika);
    for post in [&first, &second] {
        let form = mika.press(post.id, "Answer").await;
        mika.submit(&form, &["a2a1"]).await;
    }
    mika.direct("Kf1");
    let asked = discord
        .until("a question", |world| {
            let channel = world.direct_with(mika.id)?;
            world
                .messages
                .values()
                .find(|m| m.channel == channel && tongue.reads(&m.content, "which-group"))
                .cloned()
        })
        .await;
    let seen = mika.press_nth(asked.id, 1).await;
    assert!(
        seen.text().contains(&tongue.moves("Kf1")),
        "{}",
        seen.text()
    );
    // Where the move is possible in one of them only, nobody is asked.
    mika.direct("Nh6+");
    discord
        .until("the bot's defence", |world| {
            let told = direct(world, mika.id);
            told.iter()
                .any(|text| text.contains(&tongue.moves("Kh8")))
                .then_some(())
        })
        .await;
    club.check_for_leaks();
    keep_chronicle!(tongue.kept_as("two-groups"), club.finish());
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_bad_token_and_a_refused_intent_end_with_one_sentence() {
    for (spoil, wanted) in [
        ("token", "Discord refuses the bot's token"),
        ("intent", "Discord refuses the message-content intent"),
    ] {
        let discord = Discord::start().await;
        let mut seen_by_bot = discord.clone();
        match spoil {
            "token" => seen_by_bot.token = "bm90LXRoZS1yaWdodC1vbmU.xyz.at-all-not-at-all".into(),
            _ => discord.world().granted_intents = 0,
        }
        let folder = tempfile::tempdir().expect("a folder");
        let mut bot = Bot::start(&seen_by_bot, folder.path(), true);
        let mut status = None;
        for _ in 0..400 {
            status = bot.ended();
            if status.is_some() {
                break;
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        let log = bot.log();
        assert_eq!(status, Some(2), "{log}");
        let lines: Vec<&str> = log.lines().filter(|line| line.contains(wanted)).collect();
        assert_eq!(lines.len(), 1, "{log}");
        assert!(!log.contains(&seen_by_bot.token), "{log}");
        assert!(
            discord.world().log.len() < 8,
            "it is not tried again and again"
        );
    }
}

/// The coach has a group write in a language.
async fn speak(tongue: Tongue, coach: &Someone, channel: u64) {
    if tongue != Tongue::English {
        let language = [("language", Given::Number(tongue.choice()))];
        coach.command(channel, "coach settings", &language).await;
    }
}

/// Makes a group of a new server and has its first position posted; gives server, channel and post.
async fn posted_elsewhere(discord: &Discord, coach: &Someone, guild: u64, epd: &str) -> (u64, u64) {
    let channel = discord.channel(guild, "study");
    let zone = ("zone", text("Europe/Lisbon"));
    let seen = coach.command(channel, "coach set-up", &[zone]).await;
    let tongue = discord.world().tongue;
    assert!(tongue.reads(&seen.text(), "set-up"), "{}", seen.text());
    speak(tongue, coach, channel).await;
    let file = coach.upload(Attach::text("a.epd", epd));
    let given = [("file", file), ("put-into-week", Given::Flag(true))];
    coach.command(channel, "coach check", &given).await;
    coach.command(channel, "coach post-now", &[]).await;
    let post = discord
        .until("a post", |world| {
            let post = posts(world, channel).first()?.id;
            world.channel(post).map(|_| post)
        })
        .await;
    (channel, post)
}

in_every_language!(somebody_new_is_found_among_many_groups);

async fn somebody_new_is_found_among_many_groups(tongue: Tongue) {
    let club = Club::open_in(tongue).await;
    let discord = club.discord.clone();
    let (newcomer, stranger) = (discord.person("Nuno"), discord.person("Sam"));
    for i in 0..24 {
        let coach = discord.person(&format!("Coach {i}"));
        discord.world().chronicle.leave_out(coach.id);
        let guild = discord.server(&format!("Server {i}"), &coach);
        if i == 22 {
            discord.join(guild, &newcomer);
        }
        posted_elsewhere(&discord, &coach, guild, BACK_RANK).await;
    }
    let lookups = || {
        let world = discord.world();
        let asked = world
            .log
            .iter()
            .filter(|entry| entry.method == "GET" && entry.path.contains("/members/"));
        asked.count()
    };
    newcomer.direct("Rxd8+");
    let heard = discord
        .until("a verdict", |world| {
            direct(world, newcomer.id).first().cloned()
        })
        .await;
    assert!(club.shows(&heard, "5 of 5 points"), "{heard}");
    assert_eq!(lookups(), 24, "each server is asked once");
    newcomer.direct("thank you");
    // One who is on none of them is told how to be known, and asked for no more often.
    for n in 1..=2 {
        stranger.direct("Rxd8+");
        discord
            .until("a word", |world| {
                direct(world, stranger.id).get(n - 1).cloned()
            })
            .await;
    }
    assert_eq!(lookups(), 48);
    discord
        .until("a second verdict", |world| {
            direct(world, newcomer.id).get(1).cloned()
        })
        .await;
    keep_chronicle!(tongue.kept_as("somebody-new"), club.finish());
}

in_every_language!(two_shards_serve_their_own_servers_and_one_resumes);

async fn two_shards_serve_their_own_servers_and_one_resumes(tongue: Tongue) {
    let discord = Discord::start().await;
    discord.world().tongue = tongue;
    discord.world().sessions.shards = 2;
    // A server's number says which shard serves it.
    let mut servers: [Option<(u64, Someone)>; 2] = [None, None];
    while servers.iter().any(Option::is_none) {
        let coach = discord.person("Coach");
        let guild = discord.server("Server", &coach);
        let shard = usize::from((guild >> 22) % 2 == 1);
        servers[shard].get_or_insert((guild, coach));
        tokio::time::sleep(Duration::from_millis(3)).await;
    }
    let folder = tempfile::tempdir().expect("a folder");
    let mut bot = Bot::up(&discord, folder.path(), true).await;
    discord
        .until("both shards", |world| {
            (world.sessions.shards_up() == [(0, 2), (1, 2)]).then_some(())
        })
        .await;
    let mut groups = Vec::new();
    for (guild, coach) in servers.iter().flatten() {
        groups.push(posted_elsewhere(&discord, coach, *guild, BACK_RANK).await);
    }
    // One shard loses its line and resumes; what was said meanwhile is answered, on both.
    discord.world().sessions.to_shard(1, &Out::Drop);
    let members: Vec<Someone> = servers
        .iter()
        .flatten()
        .zip(&groups)
        .map(|((guild, _), (_, post))| {
            let member = discord.person("Member");
            discord.join(*guild, &member);
            member.say(*post, "Rxd8+");
            member
        })
        .collect();
    for member in &members {
        let heard = discord
            .until_within(Duration::from_secs(40), "a verdict", |world| {
                direct(world, member.id).first().cloned()
            })
            .await;
        assert!(tongue.shows(&heard, "5 of 5 points"), "{heard}");
    }
    let (resumed, identified) = {
        let world = discord.world();
        (world.sessions.resumed, world.sessions.identified)
    };
    assert_eq!((resumed, identified), (1, 2));
    for entry in &discord.world().log {
        assert_eq!(leaks::leak(entry, &leaks::PROBLEMS), None, "{}", entry.body);
    }
    assert_eq!(discord.violations(), Vec::<String>::new());
    assert_eq!(bot.stop().await, 0, "{}", bot.log());
    keep_chronicle!(tongue.kept_as("two-shards"), discord.chronicle());
}
