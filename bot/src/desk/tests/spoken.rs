//! Moves that are talked about after a reveal, on a small board; never of a sealed post.

use super::*;

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

async fn shown(
    club: &Club,
    who: &str,
    text: &str,
    post: Option<PostId>,
) -> Result<SpokenBoard, DeskError> {
    let member = club.desk.member();
    member
        .board_of_words(&club.place, &person(who), text, post, "en")
        .await
}

async fn line(club: &Club, who: &str, text: &str) -> (String, String) {
    let board = shown(club, who, text, None).await.expect(text);
    (board.before, board.line)
}

async fn refused(club: &Club, text: &str, post: Option<PostId>) -> String {
    let error = shown(club, "Ana", text, post).await.map(drop);
    error.expect_err(text).in_english()
}

#[tokio::test]
async fn a_move_is_followed_from_a_revealed_position_and_on_from_there() {
    let club = club().await;
    let post = club.open("two").await;
    // Sealed, nothing of it is shown, whoever asks and however.
    let sealed = refused(&club, "Rxd8+", Some(post)).await;
    assert!(sealed.contains("reveal"), "{sealed}");
    let nothing = refused(&club, "Rxd8+", None).await;
    assert!(nothing.contains("after a reveal"), "{nothing}");
    let coach = club.desk.coach();
    coach
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closed");
    let errand = club.errand().await.expect("the reveal");
    // Until the reveal is out it is sealed still.
    assert!(shown(&club, "Ana", "Rxd8+", Some(post)).await.is_err());
    club.carried(&errand).await;

    let said = |text: &str| text.to_owned();
    assert_eq!(
        line(&club, "Ana", "What about Rd7?").await,
        (said(""), said("1.Rd7"))
    );
    // Hers goes on; his begins at the position.
    assert_eq!(
        line(&club, "Ana", "and then Rxd7").await,
        (said("1.Rd7"), said("1...Rxd7"))
    );
    assert_eq!(
        line(&club, "Bo", "after 2.h3 what about h6").await,
        (said("1.Rxd8+ Rxd8"), said("2.h3 h6"))
    );
    // In the letters of another language.
    assert_eq!(
        line(&club, "Cy", "Und Td7 Txd7?").await,
        (said(""), said("1.Rd7 Rxd7"))
    );
    let board = shown(&club, "Dee", "Rd7", Some(post)).await.expect("shown");
    assert_eq!((board.post, board.number), (post, 1));
    assert!(alt(&board.picture, english()).contains("d7"));

    // What stands nowhere is named.
    let wrong = refused(&club, "What about Qh5?", Some(post)).await;
    assert!(
        wrong.contains("Qh5") && wrong.contains("position 1"),
        "{wrong}"
    );
    let none = refused(&club, "Thank you all", None).await;
    assert!(none.contains("no move"), "{none}");

    // A further post that is open is never read from.
    club.open("three").await;
    let board = shown(&club, "Eve", "Rxd8+", None)
        .await
        .expect("of the first");
    assert_eq!(board.post, post);
}

#[tokio::test]
async fn a_line_of_talk_is_followed_where_it_is_in_sight() {
    let club = club().await;
    let post = club.open("a").await;
    let coach = club.desk.coach();
    coach
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closed");
    club.carry_all().await;
    let member = club.desk.member();
    let ana = person("Ana");
    member.enter(&club.place, &ana).await.expect("in");
    let said = member
        .say(&club.place, &ana, "And Ra7?")
        .await
        .expect("said");
    let board = member
        .board_of_talk(&club.place, &person("Bo"), said, None, "en")
        .await
        .expect("shown");
    assert_eq!(board.line, "1.Ra7");
    member
        .take_back(&club.place, &ana, said)
        .await
        .expect("gone");
    let gone = member
        .board_of_talk(&club.place, &person("Bo"), said, None, "en")
        .await
        .map(drop);
    assert!(matches!(gone, Err(DeskError::NotFound(_))));
}
