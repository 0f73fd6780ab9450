//! Questions and words alone, through their whole lives.

use super::*;

pub(super) async fn question(club: &Club) -> PostId {
    let item = club
        .desk
        .coach()
        .enqueue_question(
            &club.place,
            &club.coach,
            "What does White want?",
            Some("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
            Some("Plans".parse().expect("a topic")),
            "The back rank is weak.",
        )
        .await
        .expect("queued");
    club.post_of(item).await
}

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

pub(super) async fn answered(
    club: &Club,
    who: &str,
    post: PostId,
    source: &str,
    text: &str,
) -> VerdictSheet {
    match club
        .desk
        .member()
        .answer_to(&club.place, &person(who), post, source, text)
        .await
        .expect("taken")
    {
        Taken::Answer(sheet) => *sheet,
        Taken::AskedBack(asked) => panic!("an answer, not {asked:?}"),
    }
}

fn told(sheet: &VerdictSheet) -> String {
    in_words(&sheet.said)
}

#[tokio::test]
async fn a_question_lives_from_the_queue_to_its_close() {
    let mut club = club().await;
    let place = club.place.clone();
    let post = question(&club).await;
    let sheet = club.desk.post(&place, post).await.expect("there");
    match &sheet.content {
        Content::Question(asked) => {
            assert_eq!(asked.words, "What does White want?");
            assert!(asked.picture.is_some());
        }
        _ => panic!("a question"),
    }

    // Two answer; one again. A move in the words is judged by nobody.
    let first = answered(&club, "Ana", post, "1", "Rd8, perhaps; or Ra8#").await;
    assert_eq!((first.outcome, first.points), (Outcome::Kept, Points::ZERO));
    assert!(
        told(&first).contains("Your coach reads it"),
        "{}",
        told(&first)
    );
    club.restart();
    answered(&club, "Ana", post, "2", "The back rank.").await;
    let bo = answered(&club, "Bo", post, "3", "Nothing at all").await;

    // The last answer of each waits; the earlier one does not.
    let waiting = club
        .desk
        .coach()
        .homework(&place, &club.coach)
        .await
        .expect("read");
    let texts: Vec<&str> = waiting.iter().map(|row| row.reply.text.as_str()).collect();
    assert_eq!(texts, ["The back rank.", "Nothing at all"]);
    assert!(
        waiting
            .iter()
            .all(|row| row.reply.to == RepliesTo::Question)
    );

    // There is no verdict, no hint, and no giving up.
    let ana = waiting[0].reply.reply;
    let refused = [
        club.desk
            .coach()
            .judge_by_hand(
                &place,
                &club.coach,
                ana,
                Verdict::Solved,
                Points::of(5.0),
                "",
            )
            .await
            .expect_err("no verdict"),
        club.desk
            .member()
            .hint(&place, &person("Ana"), post)
            .await
            .map(|_| ())
            .expect_err("no hint"),
        club.desk
            .member()
            .give_up(&place, &person("Ana"), post)
            .await
            .expect_err("not given up"),
    ];
    for error in refused {
        assert!(error.in_english().contains("question"), "{error}");
    }

    // The coach marks one with a word; its member is told, the other waits.
    club.desk
        .coach()
        .mark_answer(
            &place,
            &club.coach,
            ana,
            Points::of(3.5),
            "Which rook, though?",
        )
        .await
        .expect("marked");
    club.restart();
    let waiting = club
        .desk
        .coach()
        .homework(&place, &club.coach)
        .await
        .expect("read");
    assert_eq!(waiting.len(), 1);
    match club
        .desk
        .member()
        .own(&place, &person("Ana"), post)
        .await
        .expect("read")
    {
        Own::Question(own) => {
            assert_eq!(own.answer, "The back rank.");
            let said = in_words(&own.said);
            assert!(said.contains("3.5 of 5 points"), "{said}");
            assert!(said.contains("Which rook, though?"), "{said}");
        }
        _ => panic!("a question"),
    }

    // The close names who answered and says nothing of what.
    club.desk
        .coach()
        .close_now(&place, &club.coach, post)
        .await
        .expect("closed");
    club.restart();
    assert_eq!(club.carry_all().await, ["reveal 1 again"]);
    let reveal = club.desk.reveal(&place, post).await.expect("closed");
    assert_eq!(reveal.took_part, 2);
    match reveal.shows {
        Shown::Answered {
            at_reveal,
            answered,
            waiting,
            examples,
        } => {
            assert_eq!(at_reveal, "The back rank is weak.");
            assert_eq!(answered, ["Ana", "Bo"]);
            // Bo's has no mark, and nobody was asked for leave.
            assert_eq!((waiting, examples), (1, Vec::new()));
        }
        Shown::Solution(_) => panic!("no solution"),
    }

    // What comes late is kept and does not count.
    let late = answered(&club, "Cy", post, "4", "Too late?").await;
    assert!(late.over);
    let period = Period::default();
    let summary = club
        .desk
        .coach()
        .summary(&place, &period)
        .await
        .expect("summed up");
    let members: Vec<_> = summary
        .members
        .iter()
        .map(|m| (m.name.as_str(), m.tried, m.answered, m.points))
        .collect();
    assert_eq!(
        members,
        [("Ana", 0, 1, 3.5), ("Bo", 0, 1, 0.0), ("Cy", 0, 0, 0.0)]
    );
    assert_eq!(
        (summary.problems().count(), summary.questions().count()),
        (0, 1)
    );
    assert_eq!(
        (summary.topics[0].posts, summary.topics[0].questions),
        (0, 1)
    );
    let board = club
        .desk
        .leaderboard(&place, &period)
        .await
        .expect("summed up");
    assert_eq!(board.rows[0].points, 3.5);

    // A mark after the close counts, and a later one takes its place.
    for points in [1.0, 2.0].map(Points::of) {
        club.desk
            .coach()
            .mark_answer(&place, &club.coach, bo.reply, points, "")
            .await
            .expect("marked");
    }
    let board = club
        .desk
        .leaderboard(&place, &period)
        .await
        .expect("summed up");
    assert_eq!(board.rows[1].points, 2.0);
}

#[tokio::test]
async fn nobody_sees_another_answer() {
    let club = club().await;
    let place = club.place.clone();
    let settings = Settings {
        mode: Mode::Open,
        ..club.desk.settings(&place).await.expect("read")
    };
    club.desk
        .coach()
        .change_settings(&place, &club.coach, settings)
        .await
        .expect("open");
    let post = question(&club).await;
    answered(&club, "Ana", post, "1", "A zwischenzug").await;
    let bo = person("Bo");
    for closed in [false, true] {
        if closed {
            club.desk
                .coach()
                .close_now(&place, &club.coach, post)
                .await
                .expect("closed");
            club.carry_all().await;
        }
        assert!(
            club.desk
                .open_answers(&place, post)
                .await
                .expect("read")
                .is_empty()
        );
        assert!(
            club.desk
                .member()
                .my_replies(&place, &bo, post)
                .await
                .expect("read")
                .is_empty()
        );
        assert!(club.desk.coach().replies(&place, &bo, post).await.is_err());
    }
}

#[tokio::test]
async fn an_answer_goes_to_the_question_that_was_chosen_and_no_other() {
    let club = club().await;
    let place = club.place.clone();
    let asked = question(&club).await;
    let problem = club.open("a").await;
    let ana = person("Ana");

    // Moves that solve the problem are no answer to it where the question was chosen.
    let sheet = answered(&club, "Ana", asked, "1", "Ra8#").await;
    assert_eq!((sheet.post, sheet.outcome), (asked, Outcome::Kept));
    assert!(
        club.desk
            .member()
            .my_replies(&place, &ana, problem)
            .await
            .expect("read")
            .is_empty()
    );

    // Said to no post, it is asked; said to the question and not sent as an answer, too.
    let asks = |came: Came| match came {
        Came::AskedBack(asked) => asked,
        other => panic!("asked back, not {other:?}"),
    };
    let came = club
        .desk
        .member()
        .take(&place, &ana, None, "2", "Ra8#")
        .await
        .expect("heard");
    let back = asks(came);
    let posts: Vec<PostId> = back.posts.iter().map(|open| open.post).collect();
    assert_eq!((back.why, posts), (Why::Several, vec![problem, asked]));
    let came = club
        .desk
        .member()
        .take(&place, &ana, Some(asked), "3", "I like tea")
        .await
        .expect("heard");
    let back = asks(came);
    assert_eq!((back.why, back.posts.len()), (Why::MayTell, 1));
    // Talk that was said to no post stays talk.
    let came = club
        .desk
        .member()
        .take(&place, &ana, None, "4", "I like tea")
        .await
        .expect("heard");
    assert!(matches!(came, Came::Talk), "{came:?}");
    // In a private message to the bot, which of the two is asked as well.
    let open = [(place.clone(), asked), (place.clone(), problem)];
    assert_eq!(
        club.desk
            .member()
            .aim(&open, &ana.user, "Ra8#")
            .await
            .expect("read")
            .len(),
        2
    );
}

#[tokio::test]
async fn an_answer_may_be_written_anew_until_the_coach_has_read_it() {
    let club = club().await;
    let place = club.place.clone();
    let post = question(&club).await;
    let ana = person("Ana");
    let sheet = answered(&club, "Ana", post, "m1", "First").await;
    let edited = club
        .desk
        .member()
        .edit_reply(&place, &ana, "m1", "Second")
        .await
        .expect("taken");
    assert!(matches!(edited, Edited::Judged(_)), "{edited:?}");
    club.desk
        .coach()
        .answer_privately(&place, &club.coach, sheet.reply, "Good.")
        .await
        .expect("answered");
    assert!(
        club.desk
            .coach()
            .homework(&place, &club.coach)
            .await
            .expect("read")
            .is_empty()
    );
    let edited = club
        .desk
        .member()
        .edit_reply(&place, &ana, "m1", "Third")
        .await
        .expect("taken");
    assert!(matches!(edited, Edited::Stands(_)), "{edited:?}");
    match club
        .desk
        .member()
        .own(&place, &ana, post)
        .await
        .expect("read")
    {
        Own::Question(own) => assert_eq!(
            (own.answer.as_str(), own.words.as_str()),
            ("Second", "Good.")
        ),
        _ => panic!("a question"),
    }
    // What is kept of her holds both, and goes with her.
    let kept = club
        .desk
        .member()
        .kept_of_me(&place, &ana)
        .await
        .expect("read")
        .to_string();
    assert!(kept.contains("Second") && kept.contains("Good."), "{kept}");
    club.desk
        .member()
        .erase_me(&place, &ana)
        .await
        .expect("erased");
    assert!(
        club.desk
            .coach()
            .replies(&place, &club.coach, post)
            .await
            .expect("read")
            .is_empty()
    );
}

#[tokio::test]
async fn the_writer_of_too_long_an_answer_is_told_what_is_kept() {
    let club = club().await;
    let place = club.place.clone();
    let post = question(&club).await;
    let longest = "w".repeat(4_000);
    let fits = answered(&club, "Ana", post, "m1", &longest).await;
    assert!(!told(&fits).contains("4,000"), "{}", told(&fits));
    let long = format!("{longest}, and so on");
    let cut = answered(&club, "Bo", post, "m2", &long).await;
    assert!(
        told(&cut).contains("first 4,000 characters") && told(&cut).contains("answer again"),
        "{}",
        told(&cut)
    );
    // So is one who makes it longer later.
    let edited = club
        .desk
        .member()
        .edit_reply(&place, &person("Ana"), "m1", &long)
        .await
        .expect("taken");
    let Edited::Judged(edited) = edited else {
        panic!("{edited:?}");
    };
    assert!(told(&edited).contains("first 4,000"), "{}", told(&edited));
    let kept = club.desk.coach().replies(&place, &club.coach, post).await;
    for row in kept.expect("read") {
        assert_eq!(row.text, longest, "{}", row.name);
    }
    // Too late for another one.
    club.set("2026-03-09T18:00:00Z");
    let late = answered(&club, "Cid", post, "m3", &long).await;
    assert!(
        told(&late).contains("first 4,000") && !told(&late).contains("answer again"),
        "{}",
        told(&late)
    );
}

#[tokio::test]
async fn words_alone_are_over_as_soon_as_they_are_out() {
    let mut club = club().await;
    let place = club.place.clone();
    club.desk
        .coach()
        .enqueue_words(&place, &club.coach, "No lesson on Monday.", None, None)
        .await
        .expect("queued");
    club.set("2026-03-02T18:00:00Z");
    // Written down, and the program stops before it is reported.
    let errand = club.errand().await.expect("due");
    assert_eq!(said(&errand), "post 1");
    club.restart();
    assert_eq!(club.carry_all().await, ["post 1 again"]);
    let rows = club.desk.posts(&place, 9).await.expect("read");
    assert_eq!((rows[0].kind.clone(), rows[0].open), (Kind::Words, false));
    let post = rows[0].post;
    let refused = club
        .desk
        .member()
        .answer(&place, &person("Ana"), post, "1", "Thanks")
        .await
        .expect_err("no answer");
    assert!(
        refused.in_english().contains("takes no answers"),
        "{refused}"
    );
    assert!(club.desk.reveal(&place, post).await.is_err());
    // Nothing more goes out for it, and it is in no figure.
    club.set("2026-03-03T17:30:00Z");
    assert!(club.carry_all().await.is_empty());
    let summary = club
        .desk
        .coach()
        .summary(&place, &Period::default())
        .await
        .expect("summed up");
    assert!(summary.posts.is_empty());
}

#[tokio::test]
async fn the_week_holds_all_three_in_order() {
    let club = club().await;
    let (place, coach) = (club.place.clone(), club.coach.clone());
    club.fill(&place, 1).await;
    let asked = club
        .desk
        .coach()
        .enqueue_question(&place, &coach, "Why?", None, None, "")
        .await
        .expect("queued");
    let words = club
        .desk
        .coach()
        .enqueue_words(&place, &coach, "Read this.", None, None)
        .await
        .expect("queued");
    club.desk
        .coach()
        .reorder(&place, &coach, words, 0)
        .await
        .expect("moved");
    club.desk
        .coach()
        .set_item_topic(
            &place,
            &coach,
            asked,
            Some("Plans".parse().expect("a topic")),
        )
        .await
        .expect("set");
    let week = club.desk.coach().queue(&place).await.expect("read");
    let signs: Vec<_> = week
        .iter()
        .map(|item| {
            (
                item.holds.kind().sign().to_owned(),
                item.topic.clone(),
                item.due_at,
            )
        })
        .collect();
    let due = |day| Some(at(&format!("2026-03-0{day}T18:00:00Z")));
    assert_eq!(
        signs,
        [
            ("words".to_owned(), None, due(2)),
            ("#1".to_owned(), Some("Back rank".to_owned()), due(3)),
            ("question".to_owned(), Some("Plans".to_owned()), due(4)),
        ]
    );
    let preview = club
        .desk
        .coach()
        .preview_item(&place, &coach, asked)
        .await
        .expect("drawn");
    assert!(matches!(preview.content, Content::Question(asked) if asked.picture.is_none()));
    club.desk
        .coach()
        .dequeue(&place, &coach, asked)
        .await
        .expect("taken out");
    assert_eq!(
        club.desk.coach().queue(&place).await.expect("read").len(),
        2
    );
    for (words, fen) in [("", None), ("Why?", Some("8/8/8/8/8/8/8/8 w - - 0 1"))] {
        let refused = club
            .desk
            .coach()
            .enqueue_question(&place, &coach, words, fen, None, "")
            .await;
        assert!(refused.is_err());
    }
    let stranger = club
        .desk
        .coach()
        .enqueue_words(&place, &person("Ana"), "Hi", None, None)
        .await;
    assert!(stranger.is_err());
}
