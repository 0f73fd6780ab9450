//! The coach's words on Discord: with the post and at the reveal, never before; and a position that comes
//! again.

use sealed_move_tests::{
    club::{Club, posts},
    discord::{commands::Given, people::Attach},
    in_every_language, keep_chronicle,
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
