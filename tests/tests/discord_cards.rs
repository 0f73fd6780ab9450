//! Topic cards on Discord: read by a command and from a reveal, written, queued and taken back by a coach, and
//! held back while they would tell.

use sealed_move_tests::{
    club::{BACK_RANK, Club},
    discord::{commands::Given, people::Seen},
    in_every_language, keep_chronicle,
    tongue::Tongue,
};

fn topic(name: &str) -> (&'static str, Given) {
    ("topic", Given::Text(name.into()))
}

/// How many files come with what was shown.
fn files(club: &Club, seen: &Seen) -> usize {
    let world = club.discord.world();
    world.messages[&seen.message()].attachments.len()
}

in_every_language!(cards_from_the_command_to_the_reveal);

async fn cards_from_the_command_to_the_reveal(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    let channel = club.channel;
    let ana = club.member("Ana");

    // The list, a card by its title, a relative by its button; who coaches gets a coach's buttons.
    let seen = ana.command(channel, "study card", &[]).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "There are cards of these: Arabian mate,"),
        "{}",
        seen.text()
    );
    let found = ana.choices(channel, "study card", "topic", "bod").await;
    assert_eq!(found, ["boden"]);
    let seen = ana
        .command(channel, "study card", &[topic("Boden's mate")])
        .await;
    assert!(
        seen.private()
            && club.shows(&seen.text(), "Two bishops mate on crossing diagonals")
            && club.shows(
                &seen.text(),
                "Black to move and mate in two.\n||1...Qxc3+ 2.bxc3 Ba3#||"
            ),
        "{}",
        seen.text()
    );
    assert_eq!(files(&club, &seen), 2);
    let seen = ana.press_nth(seen.message(), 2).await;
    assert!(
        seen.private() && club.shows(&seen.text(), "Two bishops mate side by side"),
        "{}",
        seen.text()
    );
    let seen = ana.command(channel, "study card", &[topic("Traps")]).await;
    assert!(club.reads(&seen.text(), "no-card-of"), "{}", seen.text());

    // The coach writes a copy, is told what is wrong, and puts it into the week.
    let seen = club
        .coach
        .command(channel, "study card", &[topic("ladder")])
        .await;
    let form = club.coach.press(seen.message(), "Edit for the group").await;
    let card = [
        "Two rooks climb.",
        "The next rung.",
        "8/5k2/R7/1R6/8/8/8/7K w - - 0 1",
    ];
    let wrong = [card[0], card[1], card[2], "1.Rb7+ Kb8"];
    let refused = club.coach.submit(&form, &wrong).await;
    assert!(
        club.reads(&refused.text(), "example-fails")
            && refused.text().contains("> Two rooks climb."),
        "{}",
        refused.text()
    );
    let form = club.coach.press(seen.message(), "Edit for the group").await;
    let right = [card[0], card[1], card[2], "1.Rb7+ Kg8 2.Ra8#"];
    let saved = club.coach.submit(&form, &right).await;
    assert!(club.reads(&saved.text(), "card-saved"), "{}", saved.text());
    let seen = ana.command(channel, "study card", &[topic("ladder")]).await;
    assert!(seen.text().contains("Two rooks climb."), "{}", seen.text());
    let week = club
        .coach
        .press(saved.message(), "Put it into the week")
        .await;
    assert!(week.text().contains("Two rooks climb."), "{}", week.text());
    let back = club.coach.press(saved.message(), "Take my card back").await;
    assert!(
        club.reads(&back.text(), "card-taken-back"),
        "{}",
        back.text()
    );

    // A topic of the coach's own, whose example is the post's position with the colours turned.
    let list = club.coach.command(channel, "study card", &[]).await;
    let form = club
        .coach
        .press(list.message(), "Write a card for a topic")
        .await;
    let turned = "3r2k1/3r1ppp/8/8/8/8/5PPP/R2R2K1 b - - 0 1";
    let fields = ["Doubled rooks", "Two rooks on one file.", "", turned, ""];
    let saved = club.coach.submit(&form, &fields).await;
    assert!(club.reads(&saved.text(), "card-saved"), "{}", saved.text());
    club.queue(&BACK_RANK.replace("back-rank mates", "Doubled rooks"))
        .await;
    let item = club
        .coach
        .choices(channel, "coach post-now", "position", "back-1")
        .await;
    let item = item[0].parse().expect("an item");
    club.coach
        .command(
            channel,
            "coach post-now",
            &[("position", Given::Number(item))],
        )
        .await;
    club.next_post(0).await;
    club.until_open().await;
    let seen = ana
        .command(channel, "study card", &[topic("Doubled rooks")])
        .await;
    assert!(
        club.reads(&seen.text(), "card-held-back") && files(&club, &seen) == 0,
        "{}",
        seen.text()
    );
    let seen = club
        .coach
        .command(channel, "study card", &[topic("Doubled rooks")])
        .await;
    assert!(
        club.shows(&seen.text(), "it would tell of position 1") && seen.text().contains("one file"),
        "{}",
        seen.text()
    );

    // One press from the reveal to the cards of its pattern and of its topic.
    let reveal = club.reveal().await;
    let seen = ana.press_nth(reveal.id, 0).await;
    assert!(
        seen.private()
            && club.shows(
                &seen.text(),
                "A rook or queen mates along the king's own first rank"
            ),
        "{}",
        seen.text()
    );
    let seen = ana.press_nth(reveal.id, 1).await;
    assert!(
        seen.private() && seen.text().contains("Two rooks on one file."),
        "{}",
        seen.text()
    );
    keep_chronicle!(tongue.kept_as("topic-cards"), club.finish());
}
