//! A whole post in the club room, as two members and a coach see it in real browsers: from the dropped
//! file to reveal and summary.

use sealed_move_tests::{
    browser::{Browser, Driver},
    room::RunningRoom,
};
use serde_json::json;

/// What the coach drops: three sound positions of our own, one with two keys, one with no black king.
const FILE: &str = r#"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id "back-rank";
3r2k1/5Npp/8/8/2Q5/8/6PP/6K1 w - - dm 3; id "double-check";
6k1/5ppp/8/8/8/8/5PPP/R3R1K1 w - - dm 1; id "two-rooks";
6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 1; id "one-rook";
8/8/8/8/8/8/8/K7 w - - dm 2; id "lonely";
"#;

#[tokio::test(flavor = "multi_thread")]
async fn a_whole_post_from_the_dropped_file_to_reveal_and_summary() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, boris) = tokio::join!(driver.open(), driver.open(), driver.open());

    // Two members come in and wait.
    tokio::join!(room.member(&anna, "Anna"), room.member(&boris, "Boris"));
    anna.until_says("#open-post", "No position is open").await;
    let address = anna.address().await;
    assert!(
        !address.contains(RunningRoom::secret(&room.member_link)),
        "{address}"
    );

    // The coach drops a file and reads the reports.
    room.coach(&coach).await;
    let address = coach.address().await;
    assert!(
        !address.contains(RunningRoom::secret(&room.coach_link)),
        "{address}"
    );
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", FILE).await;
    coach
        .until_says("#checked-title", "5 positions checked, 3 sound")
        .await;
    reports(&coach).await;

    // The sound ones go into the week, with topics, in another order.
    coach.press("Put the 3 sound ones into the week").await;
    coach.press("Week").await;
    coach
        .until(
            "three places in the week",
            "return document.querySelectorAll('#week > li[data-item]').length === 3",
            vec![],
        )
        .await;
    arrange(&coach).await;

    // Posted now: both members see it without loading the page again.
    coach
        .press("Post now: #3 from week.epd: double-check")
        .await;
    coach.press("Post it now").await;
    for member in [&anna, &boris] {
        member.until_says("#open-post", "mate in three").await;
        member.until_says("#open-post", "Double check").await;
        let shown = member.text("#open-post").await;
        assert!(!shown.contains("verified"), "{shown}");
        member.until_says("#open-post .closes", "Closes").await;
        let alt = member
            .run(
                "return document.querySelector('#open-post img').alt",
                vec![],
            )
            .await;
        let alt = alt.as_str().unwrap_or_default();
        assert!(
            alt.contains("f7") && alt.contains("c4"),
            "sets up the position: {alt}"
        );
        member
            .until(
                "the diagram",
                "return document.querySelector('#open-post img').naturalWidth > 300",
                vec![],
            )
            .await;
    }
    replies(&anna, &boris).await;

    // The coach sees every reply, and overrules one with a word.
    coach.press("Posts").await;
    coach.press_first("details.past > summary").await;
    coach.until_says("#posts .replies", "Nxd8+").await;
    coach.until_says("#posts .replies", "queen g8 check").await;
    coach.until_says("#posts .replies", "Boris").await;
    overrule(&coach).await;
    boris
        .until_says("#stream", "Look at the double check")
        .await;

    // Closed early: the reveal comes to everyone, and the summary is up to date.
    coach.press("Week").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    for member in [&anna, &boris] {
        member.until_says("#stream .reveal", "Nh6+").await;
        member
            .until_says("#stream .reveal", "2 members took part")
            .await;
        member.until_says("#open-post", "No position is open").await;
    }
    anna.press("Leaderboard").await;
    anna.until_says("#leaders tr.me", "Anna").await;
    anna.press("Past").await;
    anna.until_says("#past", "No. 1").await;

    coach.press("Summary").await;
    coach.until_says("#summary", "2 members took part").await;
    coach.until_says("#summary", "Double check").await;
    let csv = "return fetch(document.querySelector('a[href*=\"summary-members.csv\"]').href).then((r) => r.text())";
    let csv = coach.run(csv, vec![]).await;
    let csv = csv.as_str().unwrap_or_default();
    assert!(csv.contains("Anna") && csv.contains("Boris"), "{csv}");

    tokio::join!(coach.close(), anna.close(), boris.close());
}

/// What is sound is shown with its key and variations; what is not, with what is wrong.
async fn reports(coach: &Browser) {
    let report = |id: &str| {
        let script = "const e = [...document.querySelectorAll('.report')].find((e) => e.innerText.includes(arguments[0])); return e?.innerText ?? ''";
        let id = json!(id);
        async move {
            coach
                .run(script, vec![id])
                .await
                .as_str()
                .unwrap_or_default()
                .to_owned()
        }
    };
    let sound = report("double-check").await;
    assert!(
        sound.contains("Nh6+") && sound.contains("3.Nf7#"),
        "{sound}"
    );
    assert!(sound.contains("Proved by exhaustive search"), "{sound}");
    let two = report("two-rooks").await;
    assert!(
        two.contains("Ra8#, Re8#") && two.contains("Post it anyway"),
        "{two}"
    );
    let lonely = report("lonely").await;
    assert!(
        lonely.contains("line 5") && lonely.contains("no black king"),
        "{lonely}"
    );
    assert!(!lonely.contains("Post it anyway"), "{lonely}");
}

/// Topic, order by button and by dragging, time, and the preview.
async fn arrange(coach: &Browser) {
    let order = || async {
        let script = "return [...document.querySelectorAll('#week > li')].map((e) => e.innerText.match(/week\\.epd: ([\\w-]+)/)?.[1] ?? '?').join(' ')";
        coach
            .run(script, vec![])
            .await
            .as_str()
            .unwrap_or_default()
            .to_owned()
    };
    let until_order = |wanted: &str| {
        let script = "return [...document.querySelectorAll('#week > li')].map((e) => e.innerText.match(/week\\.epd: ([\\w-]+)/)?.[1] ?? '?').join(' ') === arguments[0] && !document.querySelector('.carried')";
        let wanted = wanted.to_owned();
        async move {
            coach
                .until(&format!("the order {wanted}"), script, vec![json!(wanted)])
                .await;
        }
    };
    assert_eq!(order().await, "back-rank double-check one-rook");
    coach.press("Earlier: #3 from week.epd: double-check").await;
    until_order("double-check back-rank one-rook").await;
    coach.until_says("#week-told", "Moved to place 1").await;

    coach
        .drag("#week > li:nth-child(3) .handle", "#week > li:nth-child(1)")
        .await;
    until_order("one-rook double-check back-rank").await;
    coach.refresh().await;
    until_order("one-rook double-check back-rank").await;

    let topic = "#week > li:nth-child(2) input[list]";
    coach.type_into(topic, "Double check\n").await;
    coach.run("document.activeElement.blur()", vec![]).await;
    coach
        .until_says("#week-told", "Topic set: Double check")
        .await;
    // A motif is a label; a mating pattern is held against what was proved.
    let second = "#week > li:nth-child(2)";
    let label = coach.text(second).await;
    assert!(!label.contains("verified"), "{label}");
    coach.type_into(topic, " mate\n").await;
    coach.run("document.activeElement.blur()", vec![]).await;
    coach.until_says(second, "topic not verified").await;
    let said = "Topic not verified, Mate by double check: the main line 1.Nh6+";
    coach.until_says(second, said).await;
    coach.press("Check").await;
    coach
        .until_says("#checked .report:nth-child(2)", said)
        .await;
    coach.press("Week").await;

    coach.press("Preview: #3 from week.epd: double-check").await;
    coach
        .until_says("dialog", "White to move and mate in three")
        .await;
    coach.until_says("dialog", "Double check").await;
    let text = coach.text("dialog").await;
    assert!(
        !text.contains("Nh6") && !text.contains("verified"),
        "the preview gives nothing away: {text}"
    );
    coach.press("Close").await;

    coach
        .press_first("#week > li:nth-child(3) details > summary")
        .await;
    let set = "const e = document.querySelector('#week > li:nth-child(3) input[type=datetime-local]'); e.value = '2031-03-04T10:30'; return true";
    coach.run(set, vec![]).await;
    coach
        .press("Fix the time of #2 from week.epd: back-rank")
        .await;
    coach.until_says("#week > li", ", fixed").await;
}

/// A wrong move, talk, a hint, and a line played to its end; each sees only what they should.
async fn replies(anna: &Browser, boris: &Browser) {
    // A wrong move, typed as in any chat.
    anna.type_into("#text", "Nxd8+\n").await;
    anna.until_says("#stream .sealed", "Wrong move").await;
    anna.until_says("#stream .sealed", "1...").await;
    anna.until("the picture after the refutation", "return document.querySelector('.sealed img')?.naturalWidth > 300 && document.querySelector('.sealed img').alt.length > 40", vec![]).await;

    // Talk is talk, and everyone sees it.
    boris
        .type_into("#text", "Good evening from the back row\n")
        .await;
    anna.until_says("#stream", "Good evening from the back row")
        .await;

    // A hint, for the one who asked, its price said before.
    anna.until_says("#hint-price", "takes 1 point; you would have 3 left")
        .await;
    anna.press("Hint").await;
    anna.until_says("#stream .sealed", "Hint 1 of 3").await;

    // The line, move by move, with the bot's defence in between.
    boris.type_into("#text", "Nh6+").await;
    boris.click("#answer").await;
    boris.until_says("#stream .sealed", "Right so far").await;
    boris.until_says("#stream .sealed", "Your move.").await;
    boris.until_says("#stream .sealed", "Kh8").await;
    boris.type_into("#text", "queen g8 check").await;
    boris.click("#answer").await;
    boris.until_says("#stream .sealed", "Rxg8").await;
    boris.type_into("#text", "Nf7#\n").await;
    boris.until_says("#stream .sealed", "Solved").await;

    // Nothing is left to press, and the sheet shows the board at the end.
    boris
        .until_says("#own", "You have solved this one: 5 of 5 points.")
        .await;
    boris
        .until("the board at the end", "return document.querySelector('#own .final-board img')?.naturalWidth > 300 && document.querySelector('#own .final-board img').alt.length > 40", vec![])
        .await;
    assert_eq!(boris.count("#hint, #give-up").await, 0);

    // Nobody sees the other's work: not on the page, not in what the page was sent.
    let (of_anna, of_boris) = (anna.text("body").await, boris.text("body").await);
    assert!(
        !of_anna.contains("Nh6") && !of_anna.contains("Rxg8"),
        "{of_anna}"
    );
    assert!(
        !of_boris.contains("Wrong move") && !of_boris.contains("Hint 1"),
        "{of_boris}"
    );
    assert_eq!(
        anna.count("#stream .sealed").await,
        2,
        "the reply and the hint"
    );

    // A page that is loaded again has everything.
    anna.refresh().await;
    anna.until_says("#stream .sealed", "1...").await;
    anna.until_says("#stream .sealed", "Hint 1 of 3").await;
    anna.until_says("#stream", "Good evening from the back row")
        .await;
    boris.press("My work").await;
    boris.until_says("#mine", "solved").await;
    boris
        .until(
            "the board",
            "return document.querySelector('#mine img')?.naturalWidth > 300",
            vec![],
        )
        .await;
    boris.click("#mine .scale summary").await;
    boris
        .until_says("#mine .scale", "A full solution is worth 5 points")
        .await;
    boris.press("Room").await;
}

async fn overrule(coach: &Browser) {
    let open = "const e = [...document.querySelectorAll('.replies li')].find((e) => e.innerText.includes('Nf7#')); \
        e.scrollIntoView(); [...e.querySelectorAll('summary')].at(-1).click(); e.id = 'last-reply'; return true";
    coach.run(open, vec![]).await;
    let set = "const e = document.querySelector('#last-reply'); e.querySelector('input[type=number]').value = '4.5'; \
        e.querySelector('input[maxlength]').value = 'Look at the double check again.'; return true";
    coach.run(set, vec![]).await;
    coach.click("#last-reply button").await;
    coach
        .until_says("#posts .replies", "4.5 of 5, by the coach")
        .await;
}

/// A sacrifice of our own, given as a lesson: accepted, White mates on g7; declined, White has a knight more.
const DEFLECTION: &str = "[Id \"d1\"]\n[Task \"+\"]\n[FEN \"r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1\"]\n\n\
    1.Rxc4! {The rook asks <b>her</b> to choose.} (1.Qg7+? {The ending is level.} Qxg7 2.hxg7+ Kxg7) 1...Qxc4 \
    (1...Qa1+ 2.Kh2 {A piece for nothing.} +-) 2.Qg7# {In front of the king.} *\n";

#[tokio::test(flavor = "multi_thread")]
async fn members_meet_both_lines_of_a_sacrifice_and_the_coachs_words_on_them() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, boris) = tokio::join!(driver.open(), driver.open(), driver.open());
    tokio::join!(room.member(&anna, "Anna"), room.member(&boris, "Boris"));
    room.coach(&coach).await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "lesson.pgn", DEFLECTION).await;
    coach
        .until_says("#checked", "The 2 lines of the file hold")
        .await;
    coach.press("Put the sound one into the week").await;
    coach.press("Week").await;
    coach.press("Post now: + from lesson.pgn: d1").await;
    coach.press("Post it now").await;
    anna.until_says("#open-post", "Closes").await;

    anna.type_into("#text", "Qg7+\n").await;
    anna.until_says(
        "#stream .sealed",
        "Your coach on 1.Qg7+: “The ending is level.” Your coach shows 1...Qxg7 2.hxg7+ Kxg7.",
    )
    .await;
    let mut met = Vec::new();
    for member in [&anna, &boris] {
        member.type_into("#text", "Rxc4").await;
        member.click("#answer").await;
        member.until_says("#stream .sealed", "Your move.").await;
        let takes = member.text("#stream").await.contains("1...Qxc4");
        member
            .type_into("#text", if takes { "Qg7#" } else { "Kh2" })
            .await;
        member.click("#answer").await;
        let words = match takes {
            true => "Your coach on 2.Qg7#: “In front of the king.”",
            false => "Your coach on 2.Kh2: “A piece for nothing.”",
        };
        member.until_says("#stream .sealed", words).await;
        // Words are text, never markup.
        member
            .until_says("#stream .sealed", "The rook asks <b>her</b> to choose.")
            .await;
        met.push(takes);
    }
    assert_ne!(met[0], met[1]);

    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    anna.until_says(
        "#stream .reveal",
        "(1...Qa1+ 2.Kh2 +- A piece for nothing.)",
    )
    .await;
    tokio::join!(coach.close(), anna.close(), boris.close());
}
