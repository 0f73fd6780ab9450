//! Topic cards in the club room, as a member and a coach see them in real browsers: the list, a card with its
//! pictures, its relatives, a coach's own words, what is held back, and the way from a reveal.

use sealed_move::chess::card::cards;
use sealed_move_tests::{
    browser::{Browser, Colours, Driver},
    room::RunningRoom,
};
use serde_json::json;

/// A mate on the back rank of our own, and the same with the colours turned.
const FILE: &str =
    "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"two\"; c0 \"Doubled rooks\";\n";
const TURNED: &str = "3r2k1/3r1ppp/8/8/8/8/5PPP/R2R2K1 b - - 0 1";

/// Whether both pictures of the card are drawn, and have words in their place.
const PICTURES: &str = "\
    const all = [...document.querySelectorAll('#cards .card img')]; \
    return all.length === 2 && all.every((one) => one.naturalWidth > 300 && one.alt.length > 60)";

async fn shows_card(page: &Browser, card: &str) {
    page.until(
        "the card",
        "return document.querySelector('#cards .card')?.dataset.card === arguments[0]",
        vec![json!(card)],
    )
    .await;
}

/// Writes into a field in the place of what is there.
async fn rewrite(page: &Browser, field: &str, text: &str) {
    page.run(
        "document.querySelector(arguments[0]).value = ''",
        vec![json!(field)],
    )
    .await;
    page.type_into(field, text).await;
}

/// Whether the focus is where a reader goes on.
async fn at_heading(page: &Browser, heading: &str) {
    page.until(
        "the focus on the heading",
        "return document.activeElement?.matches('#cards h3') \
           && document.activeElement.textContent === arguments[0]",
        vec![json!(heading)],
    )
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_member_reads_cards_by_keyboard_and_on_a_phone() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let anna = driver.open().await;
    anna.screen(360, 780, Colours::Light).await;
    room.member(&anna, "Anna").await;
    anna.press("Cards").await;
    anna.until(
        "all cards",
        "return document.querySelectorAll('#cards .card-list a').length === arguments[0]",
        vec![json!(cards().count())],
    )
    .await;

    // With the keyboard: to a card, to a relative, and back to where the list was left.
    let focus = "document.querySelector(`#cards a[href='#cards/${arguments[0]}']`).focus()";
    anna.run(focus, vec![json!("boden")]).await;
    anna.key('\u{e007}').await;
    shows_card(&anna, "boden").await;
    at_heading(&anna, "Boden's mate").await;
    let card = anna.text("#cards").await;
    for part in [
        "Two bishops mate on crossing diagonals",
        "What to look for",
        "A king castled long",
        "Black to move and mate in two.",
        "In Boden's mate the two bishops' diagonals cross",
        "Renaud and Kahn",
    ] {
        assert!(card.contains(part), "{part}: {card}");
    }
    assert!(
        !card.contains("Ba3#"),
        "the solution is folded away: {card}"
    );
    anna.press("Where it leads").await;
    anna.until("the pictures", PICTURES, vec![]).await;
    anna.until_says("#cards .line", "1...Qxc3+ 2.bxc3 Ba3#")
        .await;
    let words = anna.run(
        "return [...document.querySelectorAll('#cards .card img')].map((one) => one.alt).join(' / ')",
        vec![],
    );
    let words = words.await.as_str().unwrap_or_default().to_owned();
    assert!(
        words.contains("Black to move.") && words.contains("Guarded flights:"),
        "{words}"
    );
    let wide =
        "return document.documentElement.scrollWidth <= document.documentElement.clientWidth";
    assert_eq!(
        anna.run(wide, vec![]).await,
        json!(true),
        "nothing sticks out"
    );

    anna.run(focus, vec![json!("double-bishop")]).await;
    anna.key('\u{e007}').await;
    shows_card(&anna, "double-bishop").await;
    at_heading(&anna, "Mate by two bishops").await;
    anna.press("All cards").await;
    anna.until(
        "the focus on the card that was left",
        "return document.activeElement?.getAttribute('href') === '#cards/double-bishop'",
        vec![],
    )
    .await;

    // An address that names no card says so, and leads back.
    anna.run("location.hash = 'cards/no-such-thing'", vec![])
        .await;
    anna.until_says("#cards .trouble", "no such card").await;
    anna.press("All cards").await;
    anna.find("#cards .card-list").await;
    anna.close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_coach_writes_cards_and_none_tells_of_an_open_post() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.coach(&coach).await;
    room.member(&anna, "Anna").await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", FILE).await;
    coach.press("Put the sound one into the week").await;

    // A copy of a card, with what is wrong said and kept.
    coach.press("Cards").await;
    coach.find("#cards .card-list").await;
    coach.run("location.hash = 'cards/ladder'", vec![]).await;
    shows_card(&coach, "ladder").await;
    coach.press("Edit for the group").await;
    let copied = coach
        .run(
            "return document.querySelector('#card-definition').value",
            vec![],
        )
        .await;
    assert!(
        copied
            .as_str()
            .unwrap_or_default()
            .starts_with("Two heavy pieces"),
        "{copied}"
    );
    rewrite(
        &coach,
        "#card-definition",
        "Two rooks climb. <b>Simple!</b>",
    )
    .await;
    rewrite(&coach, "#card-look", "The next rung.").await;
    rewrite(&coach, "#card-fen", "8/5k2/R7/1R6/8/8/8/7K w - - 0 1").await;
    rewrite(&coach, "#card-moves", "1.Rb7+ Kb8").await;
    coach.press("Save the card").await;
    coach
        .until_says("#card .trouble", "after 1 move, Kb8 is no legal one")
        .await;
    rewrite(&coach, "#card-moves", "1.Rb7+ Kg8 2.Ra8#").await;
    coach.press("Save the card").await;
    coach.until_says("#cards-told", "The card is saved.").await;
    coach
        .until_says("#cards .card", "Two rooks climb. <b>Simple!</b>")
        .await;
    anna.press("Cards").await;
    anna.until_says("#cards .card-list", "Ladder mate Your coach's own")
        .await;
    anna.run("location.hash = 'cards/ladder'", vec![]).await;
    anna.until_says("#cards .card", "Two rooks climb. <b>Simple!</b>")
        .await;
    anna.until_says("#cards .card", "Written by your coach.")
        .await;

    // It goes out before its week, and is taken back.
    coach.press("Put it into the week").await;
    coach
        .until_says("#cards-told", "It waits at the end of the week")
        .await;
    coach.press("Take my card back").await;
    coach.click("dialog button.first").await;
    coach
        .until_says("#cards-told", "Your card is taken back.")
        .await;
    coach
        .until_says("#cards .card", "Two heavy pieces on neighbouring lines")
        .await;

    // A topic of the coach's own, whose example is the week's position with the colours turned.
    coach.press("All cards").await;
    coach.press("Write a card for a topic of yours").await;
    coach.type_into("#new-card-topic", "Doubled rooks").await;
    coach
        .type_into(
            "#new-card-definition",
            "Two rooks on one file are worth three.",
        )
        .await;
    coach.type_into("#new-card-fen", TURNED).await;
    coach.press("Save the card").await;
    coach.until_says("#cards-told", "The card is saved.").await;
    coach.until_says("#cards .card", "worth three").await;
    let topic = coach
        .run(
            "return document.querySelector('#cards .card').dataset.card",
            vec![],
        )
        .await;
    let topic = topic.as_str().expect("a card").to_owned();
    assert!(topic.starts_with("topic-"), "{topic}");
    let there = format!("cards/{topic}");
    let go = async |page: &Browser| {
        page.run("location.hash = 'cards'", vec![]).await;
        page.find("#cards .card-list").await;
        page.run("location.hash = arguments[0]", vec![json!(there)])
            .await;
    };
    go(&anna).await;
    anna.until_says("#cards .card", "worth three").await;

    // While the position is open, members do not see it; the coach does, and is told.
    coach.press("Week").await;
    coach.until_says("#week", "Two rooks climb.").await;
    coach.press("Post now: #2 from week.epd: two").await;
    coach.press("Post it now").await;
    anna.run("location.hash = 'talk'", vec![]).await;
    anna.until_says("#open-post", "mate in two").await;
    go(&anna).await;
    anna.until_says("#cards .trouble", "held back for now")
        .await;
    anna.press("All cards").await;
    anna.until_says(
        "#cards .card-list",
        "Doubled rooks Your coach's own Held back until an open position is revealed",
    )
    .await;
    assert_eq!(anna.count(&format!("#cards a[href='#{there}']")).await, 0);
    let body = anna.text("body").await;
    assert!(!body.contains("worth three"), "{body}");
    coach.press("Cards").await;
    coach
        .until_says(
            "#cards .card-list",
            "it would tell of position 1, which is open",
        )
        .await;
    go(&coach).await;
    coach.until_says("#cards .card", "worth three").await;

    // The reveal leads to the cards of the pattern and of the topic with one press each.
    coach.press("Week").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    anna.run("location.hash = 'talk'", vec![]).await;
    anna.until_says("#stream .reveal .cards-of", "Back-rank mate, Doubled rooks")
        .await;
    anna.press("Doubled rooks").await;
    anna.until_says("#cards .card", "worth three").await;
    anna.run("location.hash = 'talk'", vec![]).await;
    anna.press("Back-rank mate").await;
    shows_card(&anna, "back-rank").await;
    tokio::join!(coach.close(), anna.close());
}
