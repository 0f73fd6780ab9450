//! A question and words alone in the club room, as two members and a coach see them in real browsers: from the
//! coach's form to the close and the summary.

use sealed_move_tests::{
    browser::{Browser, Driver},
    room::RunningRoom,
};
use serde_json::json;

async fn waits(coach: &Browser, how_many: usize) {
    coach
        .until(
            "what was written is in the week",
            "return document.querySelectorAll('#week > li[data-item]').length === arguments[0]",
            vec![json!(how_many)],
        )
        .await;
}

async fn answers(member: &Browser, text: &str) {
    member.type_into("#own-answer", text).await;
    member.press("Send the answer").await;
    member.until_says("#own .own-answer", text).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_question_from_the_form_to_its_close_and_the_summary() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, boris) = tokio::join!(driver.open(), driver.open(), driver.open());
    tokio::join!(room.member(&anna, "Anna"), room.member(&boris, "Boris"));
    room.coach(&coach).await;

    // The coach writes a question with a position, and words to be read.
    coach.press("Check").await;
    coach.press("Write a question, or words to be read").await;
    coach
        .type_into("#write-words", "What does White want? <b>Why?</b>")
        .await;
    coach
        .type_into("#write-fen", "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1")
        .await;
    coach.type_into("#write-topic", "Plans").await;
    coach
        .type_into("#write-reveal", "The back rank is weak.")
        .await;
    coach.press("Put it into the week as a question").await;
    coach.until_says("#write-told", "The question waits").await;
    coach
        .type_into("#write-words", "No lesson on Monday.")
        .await;
    coach.press("Put it into the week to be read").await;
    coach.until_says("#write-told", "The words wait").await;
    // A position that cannot be set up is refused, and what was typed stays.
    coach.type_into("#write-words", "Why?").await;
    coach
        .type_into("#write-fen", "8/8/8/8/8/8/8/8 w - - 0 1")
        .await;
    coach.press("Put it into the week as a question").await;
    coach.until_says("#write-trouble", "cannot be set up").await;

    coach.press("Week").await;
    waits(&coach, 2).await;
    coach.until_says("#week", "question").await;
    coach
        .press("Post now: question: What does White want? <b>Why?</b>")
        .await;
    coach.press("Post it now").await;
    for member in [&anna, &boris] {
        // Words are text, never markup.
        member
            .until_says("#open-post", "What does White want? <b>Why?</b>")
            .await;
        member
            .until(
                "the diagram",
                "return document.querySelector('#open-post img')?.naturalWidth > 300",
                vec![],
            )
            .await;
    }

    // Two answer, and one of them again: the last one counts.
    answers(&anna, "The open file.").await;
    answers(&anna, "The weak back rank.").await;
    answers(&boris, "Rd1, to swap.").await;
    anna.until_says("#own .own-answer", "Your coach reads it")
        .await;
    assert!(!boris.text("body").await.contains("back rank"));
    assert!(!anna.text("body").await.contains("to swap"));
    // The answer is still there on a page that is loaded again.
    anna.refresh().await;
    anna.until_says("#own .own-answer", "The weak back rank.")
        .await;

    // The question has its box; the message box is for talk, and it is asked what the words are to be.
    boris
        .until(
            "one way to answer",
            "return !document.querySelector('#answer').checkVisibility() \
               && !document.querySelector('#answering').checkVisibility()",
            vec![],
        )
        .await;
    boris.until_says("#say-help", "under the question").await;
    boris.type_into("#text", "Good evening").await;
    boris.press("Send").await;
    boris.until_says("#held", "answer to question 1").await;
    boris.press("Say it to all").await;
    anna.until_says("#stream", "Good evening").await;

    // The coach marks one with points and a word; the other waits.
    coach.press("Posts").await;
    coach
        .until_says("#homework", "Waiting for your word (2)")
        .await;
    coach.until_says("#homework", "The weak back rank.").await;
    coach
        .until_says("#homework", "No. 1 · What does White want? <b>Why?</b>")
        .await;
    coach.press_first("#homework li details > summary").await;
    let points = "[aria-label='Points for the answer of Anna']";
    coach
        .run(
            "document.querySelector(arguments[0]).value = '3.5'",
            vec![json!(points)],
        )
        .await;
    coach
        .type_into("[aria-label='A word to Anna']", "And how?")
        .await;
    coach.press_first("#homework li details .row button").await;
    anna.until_says("#own .own-answer", "3.5 of 5 points").await;
    anna.until_says("#own .own-answer", "And how?").await;
    coach
        .until_says("#homework", "Waiting for your word (1)")
        .await;
    coach.until_says("#homework", "Boris").await;

    // The close: the coach's own words and who answered; what they wrote is nobody's.
    coach.press("Week").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    for member in [&anna, &boris] {
        member
            .until_says("#stream .reveal", "The back rank is weak.")
            .await;
        member
            .until_says("#stream .reveal", "Answered by Anna, Boris.")
            .await;
    }
    assert!(!anna.text("body").await.contains("to swap"));
    assert!(!boris.text("body").await.contains("The weak back rank."));

    // Words alone go out, take nothing, and are in no figure.
    waits(&coach, 1).await;
    coach.press("Post now: words: No lesson on Monday.").await;
    coach.press("Post it now").await;
    anna.until_says("#stream", "No lesson on Monday.").await;
    anna.until_says("#open-post", "No position is open").await;

    coach.press("Summary").await;
    coach
        .until_says("#summary", "0 problems and 1 question")
        .await;
    coach
        .until_says("#summary", "2 members took part in 1 post")
        .await;
    anna.press("Leaderboard").await;
    anna.until_says("#leaders tr.me", "3.5").await;
    boris.press("Past").await;
    boris
        .press_first("#past details:last-of-type > summary")
        .await;
    boris.until_says("#past .own-answer", "Rd1, to swap.").await;
}
