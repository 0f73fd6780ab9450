//! Members in a coach's hands on Discord: a private answer instead of a verdict, who takes part no
//! longer, two accounts of one person, and what is kept of whom.

use sealed_move_tests::{
    club::{BACK_RANK, Club},
    discord::{commands::Given, people::Someone, world::Message},
    in_every_language, keep_chronicle,
    tongue::Tongue,
};

/// What the bot has told a person directly, waited for.
async fn told(club: &Club, user: u64, nth: usize) -> Message {
    club.discord
        .until("a direct word", |world| {
            let channel = world.direct_with(user)?;
            let mut all = world
                .messages
                .values()
                .filter(|message| message.channel == channel && message.author == world.bot);
            all.nth(nth).cloned()
        })
        .await
}

async fn answer(who: &Someone, post: u64, text: &str) -> String {
    let form = who.press(post, "Answer").await;
    let seen = who.submit(&form, &[text]).await;
    assert!(seen.private(), "{}", seen.text());
    seen.text()
}

in_every_language!(a_coach_settles_without_a_verdict_and_says_who_takes_part);

async fn a_coach_settles_without_a_verdict_and_says_who_takes_part(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    club.queue(BACK_RANK).await;
    let post = club.post().await.id;
    club.until_open().await;
    let (ana, ben, twin) = (
        club.member("Ana"),
        club.member("Ben"),
        club.member("Ana II"),
    );

    // A question is answered in private; what needs no answer is put aside.
    answer(&ana, post, "why is this so hard, please?").await;
    answer(&ben, post, "well, I never").await;
    let seen = club.coach.command(club.channel, "coach answers", &[]).await;
    assert!(
        club.shows(&seen.text(), "1 of 2 waiting"),
        "{}",
        seen.text()
    );
    let form = club
        .coach
        .press(seen.message(), "Answer in private …")
        .await;
    let seen = club
        .coach
        .submit(&form, &["Look at the last rank first."])
        .await;
    assert!(
        club.shows(&seen.text(), "1 of 1 waiting"),
        "{}",
        seen.text()
    );
    let heard = told(&club, ana.id, 0).await;
    assert!(
        club.shows(&heard.content, "Rosalind answers you")
            && club.shows(&heard.content, "Look at the last rank first."),
        "{}",
        heard.content
    );
    let seen = club.coach.press(seen.message(), "No answer needed").await;
    assert!(
        club.shows(&seen.text(), "No answer waits"),
        "{}",
        seen.text()
    );
    let seen = ana.press(post, "My progress").await;
    assert!(
        club.shows(&seen.text(), "Look at the last rank first."),
        "{}",
        seen.text()
    );

    // Only coaches.
    let who = [("who", Given::User(ana.id))];
    for line in ["remove", "let-back", "data", "erase"] {
        let seen = ben
            .command(club.channel, &format!("coach member {line}"), &who)
            .await;
        assert!(
            club.shows(&seen.text(), "for the group's coaches"),
            "{line}: {}",
            seen.text()
        );
    }

    // Removed: no answer is taken, by any way; let back, they are.
    let seen = club
        .coach
        .command(club.channel, "coach member remove", &who)
        .await;
    assert!(
        club.shows(&seen.text(), "takes part no longer"),
        "{}",
        seen.text()
    );
    let refused = answer(&ana, post, "Rxd8+").await;
    assert!(club.shows(&refused, "ask your coach"), "{refused}");
    let seen = club
        .coach
        .command(club.channel, "coach member let-back", &who)
        .await;
    assert!(
        club.shows(&seen.text(), "takes part again"),
        "{}",
        seen.text()
    );
    answer(&ana, post, "Rd7").await;

    // Two accounts of one person become one: the wrong move of the one is the other's, too.
    answer(&twin, post, "Rxd8+").await;
    let both = [
        ("keep", Given::User(ana.id)),
        ("other", Given::User(twin.id)),
    ];
    let seen = club
        .coach
        .command(club.channel, "coach member merge", &both)
        .await;
    assert!(
        club.shows(&seen.text(), "one member now, Ana"),
        "{}",
        seen.text()
    );
    let reveal = club.reveal().await;
    assert!(!reveal.content.contains("Ana II"), "{}", reveal.content);

    // What is kept is handed over, or erased, by the coach.
    let seen = club
        .coach
        .command(club.channel, "coach member data", &who)
        .await;
    assert!(club.shows(&seen.text(), "is theirs"), "{}", seen.text());
    let seen = club
        .coach
        .command(club.channel, "coach member erase", &who)
        .await;
    let seen = club
        .coach
        .press(seen.message(), "Yes, erase everything")
        .await;
    assert!(club.shows(&seen.text(), "is erased"), "{}", seen.text());
    let seen = club
        .coach
        .command(club.channel, "coach member list", &[])
        .await;
    assert!(
        seen.text().contains("Ben") && !seen.text().contains("Ana"),
        "{}",
        seen.text()
    );
    keep_chronicle!(tongue.kept_as("members-in-hand"), club.finish());
}
