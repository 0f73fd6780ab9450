//! Answers to questions side by side, and those that are shown with their writers' leave.

use super::{
    content::{answered, question},
    *,
};

async fn club() -> Club {
    Club::new("2026-03-02T12:00:00Z", chrono_tz::UTC).await
}

async fn groups(club: &Club, post: PostId) -> AnswerGroups {
    let coach = club.desk.coach();
    coach
        .answers_by_move(&club.place, &club.coach, post)
        .await
        .expect("grouped")
}

/// The reply that `who` sent last.
async fn last(club: &Club, who: &str, post: PostId) -> ReplyId {
    let member = club.desk.member();
    let replies = member
        .my_replies(&club.place, &person(who), post)
        .await
        .expect("read");
    replies.last().expect("a reply").reply
}

async fn ask(club: &Club, reply: ReplyId, words: &str) {
    club.desk
        .coach()
        .ask_to_show(&club.place, &club.coach, reply, words)
        .await
        .expect("asked");
}

async fn says(club: &Club, who: &str, reply: ReplyId, leave: Leave) {
    club.desk
        .member()
        .give_leave(&club.place, &person(who), reply, leave)
        .await
        .expect("said");
}

/// The answers that everyone may see.
async fn examples(club: &Club, post: PostId) -> Vec<(Option<String>, String, String)> {
    let reveal = club.desk.reveal(&club.place, post).await.expect("closed");
    let Shown::Answered { examples, .. } = reveal.shows else {
        panic!("a question")
    };
    let shown = examples.into_iter();
    shown
        .map(|shown| (shown.name, shown.text, shown.words))
        .collect()
}

async fn own(club: &Club, who: &str, post: PostId) -> OwnAnswer {
    let member = club.desk.member();
    member
        .own_answer(&club.place, &person(who), post)
        .await
        .expect("read")
}

async fn close(club: &Club, post: PostId) {
    let coach = club.desk.coach();
    coach
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closed");
}

#[tokio::test]
async fn answers_stand_under_their_first_move_and_unmarked_ones_wait() {
    let club = club().await;
    let post = question(&club).await;
    for (n, (who, text)) in [
        ("Ana", "Rd1, to keep the rook"),
        ("Bo", "Ra8 is mate"),
        ("Cy", "Turm a8 matt!"),
        ("Dee", "No idea, sorry"),
        ("Ana", "I would play Ra8#"),
        ("Eve", "Is Ra7 any good?"),
    ]
    .into_iter()
    .enumerate()
    {
        answered(&club, who, post, &format!("{n}"), text).await;
    }
    let all = groups(&club, post).await;
    let listed: Vec<(Begins, usize, Vec<&str>)> = all
        .groups
        .iter()
        .map(|group| {
            let names = group.answers.iter().map(|row| row.name.as_str());
            (group.begins.clone(), group.waiting, names.collect())
        })
        .collect();
    let mate = Begins::Move { san: "Ra8#".into() };
    assert_eq!(
        listed,
        [
            (mate, 3, vec!["Bo", "Cy", "Ana"]),
            (Begins::NoMove, 2, vec!["Dee", "Eve"]),
            (Begins::Replaced, 0, vec!["Ana"]),
        ]
    );
    assert_eq!((all.answered, all.waiting), (5, 5));

    // What is marked waits no longer; what is not is never wrong.
    let bo = last(&club, "Bo", post).await;
    club.desk
        .coach()
        .mark_answer(&club.place, &club.coach, bo, Points::of(4.0), "Good.")
        .await
        .expect("marked");
    let all = groups(&club, post).await;
    assert_eq!((all.groups[0].waiting, all.waiting), (2, 4));
    let dee = own(&club, "Dee", post).await;
    assert!(dee.waiting && dee.marked.is_none() && dee.reply.is_some());
    let bo = own(&club, "Bo", post).await;
    assert!(!bo.waiting);
    assert_eq!(bo.marked, Some(Points::of(4.0)));
    let ana = own(&club, "Ana", post).await;
    assert_eq!(ana.earlier, ["Rd1, to keep the rook"]);

    // Nobody but a coach reads them so, and a position's replies are judged one by one.
    let refused = club
        .desk
        .coach()
        .answers_by_move(&club.place, &person("Ana"), post)
        .await;
    assert!(matches!(refused, Err(DeskError::NotAllowed(_))));
    club.carry_all().await;
    let problem = club.open("a").await;
    let refused = club
        .desk
        .coach()
        .answers_by_move(&club.place, &club.coach, problem)
        .await;
    assert!(matches!(refused, Err(DeskError::BadRequest(_))));
}

#[tokio::test]
async fn nothing_is_shown_without_leave_and_what_is_taken_back_goes() {
    let mut club = club().await;
    let post = question(&club).await;
    for (n, who) in ["Ana", "Bo", "Cy", "Dee"].into_iter().enumerate() {
        answered(
            &club,
            who,
            post,
            &format!("{n}"),
            &format!("Words of {who}"),
        )
        .await;
    }
    let ana = last(&club, "Ana", post).await;
    let bo = last(&club, "Bo", post).await;
    let cy = last(&club, "Cy", post).await;
    let dee = last(&club, "Dee", post).await;
    ask(&club, ana, "Clear and short.").await;
    ask(&club, bo, "").await;
    ask(&club, cy, "").await;
    // Each is asked once, whatever stops in between.
    club.restart();
    let mut asked = club.carry_all().await;
    asked.sort();
    assert_eq!(
        asked,
        [
            "u-Ana may show? Words of Ana",
            "u-Bo may show? Words of Bo",
            "u-Cy may show? Words of Cy"
        ]
    );
    club.restart();
    assert_eq!(club.carry_all().await, [""; 0]);

    says(&club, "Ana", ana, Leave::Named).await;
    says(&club, "Bo", bo, Leave::Nameless).await;
    // Only the writer has a say, and only where somebody asked.
    for (who, reply) in [("Bo", ana), ("Dee", dee), ("Nobody", ana)] {
        let member = club.desk.member();
        let refused = member
            .give_leave(&club.place, &person(who), reply, Leave::Named)
            .await;
        assert!(matches!(refused, Err(DeskError::NotFound(_))), "{who}");
    }
    // An answer that is to be shown is not changed any more under its leave.
    let edited = club
        .desk
        .member()
        .edit_reply(&club.place, &person("Ana"), "0", "Something else")
        .await
        .expect("looked at");
    assert!(matches!(edited, Edited::Stands(_)), "{edited:?}");

    // Before the reveal nobody else sees any of it.
    assert_eq!(club.carry_all().await, [""; 0]);
    assert!(own(&club, "Bo", post).await.others.is_empty());
    assert!(club.desk.reveal(&club.place, post).await.is_err());
    close(&club, post).await;
    let carried = club.carry_all().await;
    assert_eq!(
        carried,
        [
            "reveal 1",
            "example 1 by Ana: Words of Ana",
            "example 1 by somebody: Words of Bo"
        ]
    );
    let word = |text: &str| text.to_owned();
    assert_eq!(
        examples(&club, post).await,
        [
            (
                Some(word("Ana")),
                word("Words of Ana"),
                word("Clear and short.")
            ),
            (None, word("Words of Bo"), word("")),
        ]
    );
    let seen = own(&club, "Bo", post).await.others;
    assert_eq!(seen.len(), 1, "their own is not among the others'");
    assert!(own(&club, "Stranger", post).await.others.is_empty());

    // Late leave is shown, too; what is taken back goes, and one who said no is not asked again.
    says(&club, "Cy", cy, Leave::Named).await;
    says(&club, "Ana", ana, Leave::Refused).await;
    let mut carried = club.carry_all().await;
    carried.sort();
    assert_eq!(
        carried,
        ["example 1 by Cy: Words of Cy", "example 1 taken back"]
    );
    let left = examples(&club, post).await;
    assert!(left.iter().all(|(_, text, _)| text != "Words of Ana"));
    let coach = club.desk.coach();
    let again = coach
        .ask_to_show(&club.place, &club.coach, ana, "Please")
        .await
        .expect_err("no");
    assert!(again.in_english().contains("does not want"), "{again}");
    coach
        .no_longer_show(&club.place, &club.coach, ana)
        .await
        .expect("nothing to do");
    let again = coach
        .ask_to_show(&club.place, &club.coach, ana, "Please")
        .await;
    assert!(again.is_err(), "the no is kept");
    coach
        .no_longer_show(&club.place, &club.coach, cy)
        .await
        .expect("taken back");
    assert_eq!(club.carry_all().await, ["example 1 taken back"]);

    // What is kept of a member has it, and erasing takes it out of sight.
    let kept = club
        .desk
        .member()
        .kept_of_me(&club.place, &person("Bo"))
        .await
        .expect("kept");
    assert_eq!(kept["replies"][0]["example"]["leave"], "nameless");
    club.desk
        .member()
        .erase_me(&club.place, &person("Bo"))
        .await
        .expect("erased");
    club.restart();
    assert_eq!(club.carry_all().await, ["example 1 taken back"]);
    assert!(examples(&club, post).await.is_empty());
    assert_eq!(club.carry_all().await, [""; 0]);
}

#[tokio::test]
async fn an_example_says_where_its_message_is_and_long_words_are_refused() {
    let club = club().await;
    let post = question(&club).await;
    answered(&club, "Ana", post, "1", "The back rank").await;
    let ana = last(&club, "Ana", post).await;
    let long = "x".repeat(LONGEST_BESIDE + 1);
    let coach = club.desk.coach();
    let refused = coach
        .ask_to_show(&club.place, &club.coach, ana, &long)
        .await
        .expect_err("too long");
    assert!(refused.in_english().contains("shorten"), "{refused}");
    ask(&club, ana, "Yes").await;
    says(&club, "Ana", ana, Leave::Named).await;
    close(&club, post).await;
    assert_eq!(
        club.carry_all().await,
        ["reveal 1", "example 1 by Ana: The back rank"]
    );
    // Another name or other words change the message that stands.
    ask(&club, ana, "Yes, and why?").await;
    says(&club, "Ana", ana, Leave::Nameless).await;
    let errand = club.errand().await.expect("a change");
    let ErrandKind::Example(sheet) = &errand.kind else {
        panic!("an example, not {errand:?}")
    };
    assert_eq!(
        sheet.message.as_deref(),
        Some("message example 1 by Ana: The back rank")
    );
    let shown = sheet.shown.as_ref().expect("shown");
    assert_eq!(
        (shown.name.as_deref(), shown.words.as_str()),
        (None, "Yes, and why?")
    );
    club.carried(&errand).await;

    // A member's own list has their questions, the latest first.
    let homework = club
        .desk
        .member()
        .my_homework(&club.place, &person("Ana"))
        .await
        .expect("read");
    assert_eq!(homework.len(), 1);
    assert_eq!(homework[0].asked, "What does White want?");
    assert_eq!(
        homework[0].own.examples[0].example.leave,
        Some(Leave::Nameless)
    );
    // Only answers to questions are examples.
    let problem = club.open("a").await;
    let member = club.desk.member();
    member
        .answer(&club.place, &person("Ana"), problem, "2", "Ra8#")
        .await
        .expect("judged");
    let reply = last(&club, "Ana", problem).await;
    let refused = coach.ask_to_show(&club.place, &club.coach, reply, "").await;
    assert!(matches!(refused, Err(DeskError::BadRequest(_))));
}
