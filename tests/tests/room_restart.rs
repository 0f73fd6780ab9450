//! The club room killed in the middle of a post (SIGKILL) and started again: nothing is lost, nothing
//! comes twice, and the pages find back by themselves.

use sealed_move_tests::{browser::Driver, room::RunningRoom};

const FILE: &str = "3r2k1/5Npp/8/8/2Q5/8/6PP/6K1 w - - dm 3; id \"double-check\";\n\
    r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"back-rank\";\n";

#[tokio::test(flavor = "multi_thread")]
async fn killed_in_the_middle_of_a_post_nothing_is_lost() {
    let mut room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    room.member(&anna, "Anna").await;
    room.coach(&coach).await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "lesson.epd", FILE).await;
    coach.press("Put the 2 sound ones into the week").await;
    coach.press("Week").await;
    coach
        .press("Post now: #3 from lesson.epd: double-check")
        .await;
    coach.press("Post it now").await;
    anna.until_says("#open-post", "mate in three").await;

    // Half of a line, a hint, and a word to the group.
    anna.type_into("#text", "Nh6+\n").await;
    anna.until_says("#stream .sealed", "Your move.").await;
    anna.press("Hint").await;
    anna.until_says("#stream .sealed", "Hint 1 of 3").await;
    anna.type_into("#text", "See you on Thursday\n").await;
    anna.until_says("#stream", "See you on Thursday").await;

    room.kill();
    anna.until_says("#link-state", "connection is broken").await;
    anna.type_into("#text", "Qg8+\n").await;
    anna.until_says("#say-trouble", "cannot be reached").await;
    let kept = "return document.querySelector('#text').value === 'Qg8+'";
    anna.until("what was typed is still there", kept, vec![])
        .await;

    room.start_again();
    let back = "return document.querySelector('#link-state').textContent === ''";
    anna.until("the line is back", back, vec![]).await;
    coach.until("the coach's line is back", back, vec![]).await;

    // The same text, sent again, counts once; and the line goes on where it stood.
    anna.press("Send").await;
    anna.until_says("#stream .sealed", "Rxg8").await;
    anna.refresh().await;
    anna.until_says("#stream .sealed", "Hint 1 of 3").await;
    anna.until_says("#stream", "See you on Thursday").await;
    assert_eq!(
        anna.count("#stream .sealed").await,
        3,
        "two replies and a hint"
    );
    anna.type_into("#text", "Nf7#\n").await;
    anna.until_says("#stream .sealed", "Solved").await;

    // The week is what it was, and one post is out, not two.
    coach.press("Posts").await;
    coach.until_says("#posts", "No. 1").await;
    assert_eq!(coach.count("#posts details[data-post]").await, 1);
    coach.press("Week").await;
    coach.until_says("#week", "lesson.epd: back-rank").await;

    // Killed once more while the reveal goes out: it comes once.
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    coach.until_says("#week-told", "closing").await;
    room.kill();
    room.start_again();
    anna.until_says("#stream .reveal", "Nh6+").await;
    anna.until_says("#stream .reveal", "Solved by Anna").await;
    anna.refresh().await;
    anna.until_says("#stream .reveal", "Solved by Anna").await;
    assert_eq!(anna.count("#stream .reveal").await, 1);

    tokio::join!(coach.close(), anna.close());
}
