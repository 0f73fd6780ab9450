//! The coach's words on Discord: with the post and at the reveal, never before; and a position that comes
//! again.

use sealed_move_tests::{
    club::{Club, posts},
    discord::{commands::Given, people::Attach},
    in_every_language, keep_chronicle,
    leaks::Problem,
    tongue::Tongue,
};

/// The back-rank problem as a lesson: words for the post (two of which tell a move and are held), for the
/// reveal, and beside the moves.
const LESSON: &str = "[Id \"w1\"]\n[Topic \"Back rank\"]\n[Task \"#2\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n\
    {Look at the *last* rank, @everyone.} {It begins with Rxd8+.} {[reveal] Rooks before pawns.} \
    1.Rxd8+ $1 {A rook for a rook.} (1.Rd7 $2 {Too slow.} Rxd7) Rxd8 2.Rxd8# {And that is that.} *\n";

const AGAIN: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 4 30 id \"w9\"; dm 2; c0 \"Exchanges\"; c1 \"Two against two.\";\n";

in_every_language!(words_go_out_where_they_belong_and_never_twice_unasked);

async fn words_go_out_where_they_belong_and_never_twice_unasked(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.set_up(&[]).await;
    let seen = club.queue(LESSON).await;
    let report = seen.text();
    for part in [
        "tell a move",
        "With the post:\nLook at the",
        "At the reveal:\nIt begins with Rxd8+.\nRooks before pawns.",
        "1.Rxd8+! A rook for a rook.",
    ] {
        assert!(club.shows(&report, part), "{part}: {report}");
    }
    assert!(seen.private(), "for the coach alone");

    let post = club.post().await;
    assert!(
        club.shows(
            &post.content,
            "\n> Look at the \\*last\\* rank, @\u{200b}everyone.\n"
        ),
        "{}",
        post.content
    );
    for secret in ["begins", "Rooks before", "A rook for", "Too slow"] {
        assert!(!post.content.contains(secret), "{secret}: {}", post.content);
    }
    // This holds that nothing before it gave the solution away.
    let reveal = club.reveal().await;
    for part in [
        "It begins with Rxd8+.",
        "Rooks before pawns.",
        "The coach's notes:\n1.Rxd8+! A rook for a rook.\n(1.Rd7? Too slow. 1...Rxd7)\n1...Rxd8 2.Rxd8# And that is that.",
    ] {
        assert!(
            club.shows(&reveal.content, part),
            "{part}: {}",
            reveal.content
        );
    }
    let closed = posts(&club.discord.world(), club.channel);
    assert!(
        closed[0].content.contains("Look at the"),
        "{}",
        closed[0].content
    );

    // The same position again: shown as such, posted before, and nothing happens by itself.
    let file = club.coach.upload(Attach::text("autumn.epd", AGAIN));
    let again = club
        .coach
        .command(
            club.channel,
            "coach check",
            &[("file", file), ("put-into-week", Given::Flag(true))],
        )
        .await;
    for part in [
        "0 put into the week",
        "The same position is kept already",
        "Exchanges",
        "stays as it is",
        "Posted before, as No. 1",
    ] {
        assert!(club.shows(&again.text(), part), "{part}: {}", again.text());
    }
    let both = club.coach.press(again.message(), "Keep both topics").await;
    assert!(
        club.shows(&both.text(), "Topic: Back rank, also Exchanges"),
        "{}",
        both.text()
    );
    let week = club
        .coach
        .press(again.message(), "Put into the week again")
        .await;
    assert!(
        club.shows(&week.text(), "again, posted before as No. 1"),
        "{}",
        week.text()
    );
    keep_chronicle!(tongue.kept_as("words-that-go-out"), club.finish());
}

/// A sacrifice of our own, given as a lesson: accepted, White mates on g7; declined, White has a knight more.
const DEFLECTION: &str = "[Id \"d1\"]\n[Topic \"Deflection\"]\n[Task \"+\"]\n[FEN \"r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1\"]\n\n\
    1.Rxc4! {The rook asks *her* to choose.} (1.Qg7+? {The ending is level, @everyone.} Qxg7 2.hxg7+ Kxg7) \
    1...Qxc4 {She lets go of the diagonal.} (1...Qa1+ {She stays.} 2.Kh2 {White has a knight more.} +-) \
    2.Qg7# {In front of the king.} *\n";

in_every_language!(members_meet_both_lines_of_a_sacrifice_and_the_coachs_words_on_them);

async fn members_meet_both_lines_of_a_sacrifice_and_the_coachs_words_on_them(tongue: Tongue) {
    let mut club = Club::open_in(tongue).await;
    club.seals(&[Problem {
        key: "Rxc4",
        moves: &[("c1", "c4"), ("g3", "g7")],
        picture: "discord-post-deflection",
    }]);
    club.set_up(&[]).await;
    let seen = club.queue(DEFLECTION).await;
    assert!(
        club.shows(&seen.text(), "The 2 lines of the file hold"),
        "{}",
        seen.text()
    );
    let post = club.post().await;
    club.holds_picture(&post, "discord-post-deflection");
    let post = post.id;
    club.until_open().await;

    // A wrong move that the coach's lines have is met with the coach's variation.
    let (ana, ben) = (club.member("Ana"), club.member("Ben"));
    let form = ana.press(post, "Answer").await;
    let seen = ana.submit(&form, &["Qg7+"]).await;
    assert!(seen.private());
    for part in [
        "1.Qg7+ does not win. Your coach on 1.Qg7+: “The ending is level, @\u{200b}everyone.” \
         Your coach shows 1...Qxg7 2.hxg7+ Kxg7.",
        "half-moves deep",
    ] {
        assert!(club.shows(&seen.text(), part), "{part}: {}", seen.text());
    }
    assert!(club.reads(&seen.text(), "coach-on-move"), "{}", seen.text());

    // One is asked about the queen that takes, the other about the one that stays.
    let (mut accepted, mut declined) = (0, 0);
    for member in [&ana, &ben] {
        let form = member.press(post, "Answer").await;
        let seen = member.submit(&form, &["Rxc4"]).await;
        let takes = seen.text().contains("xc4. ");
        let (next, words) = match takes {
            true => ("Qg7#", "In front of the king."),
            false => ("Kh2", "White has a knight more."),
        };
        let form = member.press(seen.message(), "Next move").await;
        let seen = member.submit(&form, &[next]).await;
        assert!(
            seen.private() && seen.text().contains(words),
            "{}",
            seen.text()
        );
        assert!(
            seen.text().contains("The rook asks \\*her\\* to choose."),
            "{}",
            seen.text()
        );
        *if takes { &mut accepted } else { &mut declined } += 1;
    }
    assert_eq!((accepted, declined), (1, 1));

    let reveal = club.reveal().await;
    for part in [
        "**1.Rxc4 Qxc4 2.Qg7#**\n1.Rxc4 Qa1+ 2.Kh2\n",
        "1...Qxc4 She lets go of the diagonal.\n(1...Qa1+ She stays. 2.Kh2 +- White has a knight more.)",
        "2.Qg7# In front of the king.",
    ] {
        assert!(
            club.shows(&reveal.content, part),
            "{part}: {}",
            reveal.content
        );
    }
    keep_chronicle!(tongue.kept_as("both-lines-of-a-sacrifice"), club.finish());
}
