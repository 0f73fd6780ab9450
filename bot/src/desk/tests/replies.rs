//! Replies from being written down to the leaderboard, and what is kept of a person.

use super::*;
use sealed_move_store::{NewReply, Via};

const MONDAY: &str = "2026-11-23T09:00:00Z";

async fn standing(club: &Club, name: &str) -> Progress {
    club.desk
        .member()
        .progress(&club.place, &person(name))
        .await
        .expect("read")
}

async fn answer(club: &Club, name: &str, post: PostId, source: &str, text: &str) -> VerdictSheet {
    club.desk
        .member()
        .answer(&club.place, &person(name), post, source, text)
        .await
        .expect("judged")
}

#[tokio::test]
async fn the_same_message_counts_once() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let first = answer(&club, "Ana", post, "m1", "Rd7").await;
    assert_eq!(first.verdict(), Verdict::Wrong);
    assert!(
        in_words(&first.said).contains("Rxd7"),
        "{}",
        in_words(&first.said)
    );
    let again = answer(&club, "Ana", post, "m1", "Rd7").await;
    assert_eq!(
        (again.reply, again.verdict()),
        (first.reply, Verdict::Wrong)
    );
    assert_eq!(again.picture.is_some(), first.picture.is_some());
    assert_eq!(
        club.desk
            .coach()
            .replies(&club.place, &club.coach, post)
            .await
            .expect("read")
            .len(),
        1
    );
    let now = standing(&club, "Ana").await.open.expect("it is open");
    assert_eq!(
        now.at,
        OpenAt::Problem {
            state: Some(OwnState::Playing),
            wrong: 1
        }
    );
    assert_eq!(
        (now.number, now.closes_at.to_rfc3339().as_str()),
        (1, "2026-11-24T08:00:00+00:00")
    );
    // Another's message of the same name shows nothing of this one.
    let other = club
        .desk
        .member()
        .answer(&club.place, &person("Ben"), post, "m1", "Rd7")
        .await;
    assert!(
        other
            .expect_err("refused")
            .in_english()
            .contains("send it anew")
    );
}

#[tokio::test]
async fn wrong_then_solved_then_the_leaderboard() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    answer(&club, "Ana", post, "a1", "Rd7").await;
    let solved = answer(&club, "Ana", post, "a2", "1.Rxd8+ Rxd8 2.Rxd8#").await;
    assert_eq!(
        (solved.verdict(), solved.points),
        (Verdict::Solved, Points::of(4.0))
    );
    assert!(
        in_words(&solved.said).ends_with("4 of 5 points after one wrong try."),
        "{}",
        in_words(&solved.said)
    );
    assert_eq!(
        answer(&club, "Ben", post, "b1", "Rxd8+").await.verdict(),
        Verdict::Solved
    );
    let more = answer(&club, "Ben", post, "b2", "Rd7").await;
    assert!(
        in_words(&more.said).starts_with("You have solved this one already"),
        "{}",
        in_words(&more.said)
    );
    assert_eq!(more.points, Points::of(5.0));
    answer(&club, "Cleo", post, "c1", "Rd7").await;

    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closing");
    let errand = club.errand().await.expect("the reveal");
    let ErrandKind::Reveal { sheet, .. } = &errand.kind else {
        panic!("the reveal, not {errand:?}");
    };
    assert_eq!(sheet.solution().solved, ["Ben", "Ana"]);
    assert_eq!(sheet.took_part, 3);
    let wrong = sheet.solution().common_wrong.as_ref().expect("Rd7");
    assert_eq!((wrong.san.as_str(), wrong.count), ("Rd7", 2));
    assert!(
        wrong.refutation.starts_with("1...Rxd7"),
        "{}",
        wrong.refutation
    );
    let rows: Vec<_> = sheet
        .leaderboard
        .rows
        .iter()
        .map(|row| (row.name.as_str(), row.points))
        .collect();
    assert_eq!(rows, [("Ben", 5.0), ("Ana", 4.0), ("Cleo", 0.0)]);
}

#[tokio::test]
async fn a_line_is_played_out_move_by_move() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("three").await;
    let first = answer(&club, "Ana", post, "a1", "Rxd8+").await;
    assert_eq!(
        (first.verdict(), first.your_move),
        (Verdict::OnTheWay, true)
    );
    assert_eq!(standing(&club, "Ana").await.line, "1.Rxd8+ Rxd8");
    let mut club = club;
    club.restart();
    let slip = answer(&club, "Ana", post, "a2", "Rd7").await;
    assert_eq!(slip.verdict(), Verdict::Wrong);
    assert_eq!(standing(&club, "Ana").await.line, "1.Rxd8+ Rxd8");
    let board = club
        .desk
        .member()
        .my_board(&club.place, &person("Ana"), post)
        .await
        .expect("drawn");
    let start = club
        .desk
        .member()
        .my_board(&club.place, &person("Ben"), post)
        .await
        .expect("drawn");
    assert_ne!(board.bytes, start.bytes);
    let mut last = answer(&club, "Ana", post, "a3", "Rxd8+").await;
    if last.verdict() == Verdict::OnTheWay {
        last = answer(&club, "Ana", post, "a4", "Qxd8#").await;
    }
    assert_eq!(
        (last.verdict(), last.points),
        (Verdict::Solved, Points::of(4.0)),
        "a point for the slip"
    );
}

#[tokio::test]
async fn talk_is_heard_and_left_alone() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let before = club
        .desk
        .member()
        .take(&club.place, &person("Ana"), None, "t0", "Rxd8+")
        .await
        .expect("heard");
    assert!(matches!(before, Came::Talk), "no post is open");
    let post = club.open("two").await;
    let talk = club
        .desk
        .member()
        .take(
            &club.place,
            &person("Ana"),
            None,
            "t1",
            "good morning everybody, lovely weather",
        )
        .await;
    assert!(matches!(talk, Ok(Came::Talk)));
    assert!(
        club.desk
            .coach()
            .replies(&club.place, &club.coach, post)
            .await
            .expect("read")
            .is_empty()
    );
    assert_eq!(
        club.desk.name_of(&club.place, "u-Ana").await.expect("read"),
        None
    );
    let heard = club
        .desk
        .member()
        .take(
            &club.place,
            &person("Ana"),
            None,
            "t2",
            "1.Rxd8+ Rxd8 2.Rxd8#",
        )
        .await
        .expect("heard");
    let Came::Answer(sheet) = heard else {
        panic!("an answer, not {heard:?}")
    };
    assert_eq!(sheet.verdict(), Verdict::Solved);
    assert_eq!(
        club.desk
            .name_of(&club.place, "u-Ana")
            .await
            .expect("read")
            .as_deref(),
        Some("Ana")
    );
    let again = club
        .desk
        .member()
        .take(
            &club.place,
            &person("Ana"),
            None,
            "t2",
            "1.Rxd8+ Rxd8 2.Rxd8#",
        )
        .await
        .expect("heard");
    assert!(matches!(again, Came::Again(_)));
}

#[tokio::test]
async fn a_late_reply_is_answered_kept_and_not_counted() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    club.set("2026-11-24T08:00:00Z");
    let late = answer(&club, "Ana", post, "m1", "Rxd8+").await;
    assert!(
        in_words(&late.said).starts_with("Thank you. Replies to this post have closed"),
        "{}",
        in_words(&late.said)
    );
    assert_eq!((late.points, late.your_move), (Points::ZERO, false));
    club.carry_all().await;
    let reveal = club.desk.reveal(&club.place, post).await.expect("closed");
    assert_eq!((reveal.took_part, reveal.solution().solved.len()), (0, 0));
    let kept = club
        .desk
        .coach()
        .replies(&club.place, &club.coach, post)
        .await
        .expect("read");
    assert_eq!(
        kept.iter()
            .map(|row| (row.text.as_str(), row.verdict))
            .collect::<Vec<_>>(),
        [("Rxd8+", None)]
    );
    let hint = club
        .desk
        .member()
        .hint(&club.place, &person("Ana"), post)
        .await
        .expect_err("closed")
        .in_english();
    assert!(hint.contains("closed"), "{hint}");
}

#[tokio::test]
async fn what_came_in_the_second_of_the_close_came_before_it() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let problem = club.open("two").await;
    let item = club
        .desk
        .coach()
        .enqueue_question(&club.place, &club.coach, "Why?", None, None, "")
        .await
        .expect("queued");
    club.desk
        .coach()
        .post_now(&club.place, &club.coach, Some(item))
        .await
        .expect("posted");
    club.carry_all().await;
    let question = PostId::of(problem.get() + 1);
    for (post, ana, bo) in [(problem, "m1", "m2"), (question, "m3", "m4")] {
        answer(&club, "Ana", post, ana, "Rxd8+").await;
        club.desk
            .coach()
            .close_now(&club.place, &club.coach, post)
            .await
            .expect("closed");
        let late = answer(&club, "Bo", post, bo, "Rxd8+").await;
        assert!(late.over, "{}", in_words(&late.said));
    }
    club.carry_all().await;
    let period = Period::default();
    let summary = club.desk.coach().summary(&club.place, &period).await;
    let counted: Vec<_> = summary
        .expect("summed up")
        .members
        .into_iter()
        .map(|member| (member.name, member.tried, member.answered))
        .collect();
    assert_eq!(counted, [("Ana".into(), 1, 1), ("Bo".into(), 0, 0)]);
    let waiting = club.desk.coach().homework(&club.place, &club.coach).await;
    let waiting: Vec<_> = waiting
        .expect("read")
        .into_iter()
        .map(|row| row.reply.name)
        .collect();
    assert_eq!(waiting, ["Ana"]);
}

#[tokio::test]
async fn a_reply_left_without_its_verdict_is_judged_at_the_next_start() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    // As a crash between writing down and judging leaves it.
    club.desk
        .inner
        .store
        .write(move |tx| {
            let group = tx.post(post)?.expect("there").group_id;
            let member = tx.upsert_member(group, "u-Ana", "Ana", at(MONDAY))?;
            tx.insert_reply(&NewReply {
                post_id: post,
                member_id: member,
                source: Some("room:m1".into()),
                via: Via::Answer,
                text: "Rxd8+".into(),
                received_at: at(MONDAY),
            })
        })
        .await
        .expect("written");
    club.restart();
    // The reveal is due at once, and must know of it.
    club.set("2026-11-24T20:00:00Z");
    let carried = club.carry_all().await;
    assert!(
        carried.iter().any(|said| said.starts_with("u-Ana: ")),
        "{carried:?}"
    );
    let reveal = club.desk.reveal(&club.place, post).await.expect("closed");
    assert_eq!(reveal.solution().solved, ["Ana"]);
    let again = answer(&club, "Ana", post, "m1", "Rxd8+").await;
    assert_eq!(
        again.verdict(),
        Verdict::Solved,
        "the replayed message finds its verdict"
    );
}

#[tokio::test]
async fn hints_come_in_steps_and_cost_what_the_group_says() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let ana = person("Ana");
    let mut steps = Vec::new();
    for _ in 0..4 {
        let hint = club
            .desk
            .member()
            .hint(&club.place, &ana, post)
            .await
            .expect("a hint");
        assert!(!hint.said.is_empty());
        steps.push((hint.step, hint.more));
    }
    assert_eq!(steps, [(1, true), (2, true), (3, false), (3, false)]);
    let solved = answer(&club, "Ana", post, "m1", "Rxd8+").await;
    assert_eq!(solved.points, Points::of(2.0));
    assert!(
        in_words(&solved.said).ends_with("2 of 5 points after 3 hints."),
        "{}",
        in_words(&solved.said)
    );
    assert!(
        club.desk
            .member()
            .hint(&club.place, &ana, post)
            .await
            .is_err()
    );
    assert!(
        club.desk
            .member()
            .give_up(&club.place, &ana, post)
            .await
            .is_err()
    );
}

#[tokio::test]
async fn hints_begin_anew_with_the_next_move_of_a_line() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("three").await;
    let ana = person("Ana");
    let mut seen = Vec::new();
    for _ in 0..3 {
        let hint = club
            .desk
            .member()
            .hint(&club.place, &ana, post)
            .await
            .expect("one");
        seen.push((hint.number, hint.step, hint.said));
    }
    let first = answer(&club, "Ana", post, "a1", "Rxd8+").await;
    assert!(first.your_move);
    let hint = club
        .desk
        .member()
        .hint(&club.place, &ana, post)
        .await
        .expect("one");
    assert_eq!((hint.number, hint.step, hint.more), (2, 1, true));
    seen.push((hint.number, hint.step, hint.said));
    // A page that is loaded again shows all of them in the same words.
    let again = club.desk.member().my_hints(&club.place, &ana, post).await;
    let again: Vec<_> = again
        .expect("read")
        .into_iter()
        .map(|hint| (hint.number, hint.step, hint.said))
        .collect();
    assert_eq!(again, seen);
    let last = answer(&club, "Ana", post, "a2", "2.Rxd8+ Rxd8 3.Qxd8#").await;
    assert_eq!(
        (last.verdict(), last.points),
        (Verdict::Solved, Points::of(1.0))
    );
}

#[tokio::test]
async fn defences_differ_between_members_where_the_coach_wants_so() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club
        .open_anyway("8/4k3/8/R7/7R/8/8/K7 w - - id \"ladder\"; dm 4;")
        .await;
    let names: Vec<String> = (0..20).map(|n| format!("Member {n}")).collect();
    let mut met = std::collections::BTreeSet::new();
    for (n, name) in names.iter().take(10).enumerate() {
        answer(&club, name, post, &format!("a{n}"), "Ra6").await;
        met.insert(standing(&club, name).await.line);
    }
    assert_eq!(met.len(), 1, "{met:?}");

    let settings = Settings {
        defences: Defences::Differ,
        ..club.desk.settings(&club.place).await.expect("read")
    };
    club.desk
        .coach()
        .change_settings(&club.place, &club.coach, settings)
        .await
        .expect("changed");
    let mut met = std::collections::BTreeSet::new();
    for (n, name) in names.iter().skip(10).enumerate() {
        let sheet = answer(&club, name, post, &format!("b{n}"), "Ra6").await;
        assert_eq!(
            (sheet.verdict(), sheet.points),
            (Verdict::OnTheWay, Points::of(1.0))
        );
        met.insert(standing(&club, name).await.line);
    }
    assert!(met.len() > 1, "{met:?}");

    // Asked again after a restart, a member meets the same one.
    let line = standing(&club, "Member 15").await.line;
    club.restart();
    let again = answer(&club, "Member 15", post, "b5", "Ra6").await;
    let reply = line.rsplit(' ').next().expect("a move");
    assert!(
        in_words(&again.said).contains(reply),
        "{} {line}",
        in_words(&again.said)
    );
    assert_eq!(standing(&club, "Member 15").await.line, line);
}

#[tokio::test]
async fn whoever_gives_up_waits_for_the_reveal() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let told = club
        .desk
        .member()
        .give_up(&club.place, &person("Ana"), post)
        .await
        .expect("given up");
    assert!(
        in_words(&told).contains("sealed until the reveal at 08:00 on Tuesday, 24 November"),
        "{told:?}"
    );
    club.set("2026-11-23T10:00:00Z");
    let after = answer(&club, "Ana", post, "m1", "Rxd8+").await;
    assert!(
        in_words(&after.said).starts_with("You have given this one up"),
        "{}",
        in_words(&after.said)
    );
    assert_eq!(after.points, Points::of(0.0));
    let now = standing(&club, "Ana").await.open.expect("it is open");
    assert!(matches!(
        now.at,
        OpenAt::Problem {
            state: Some(OwnState::GivenUp),
            ..
        }
    ));
}

#[tokio::test]
async fn the_coach_overrules_and_everything_follows() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let wrong = answer(&club, "Ana", post, "m1", "Rd7").await;
    club.desk
        .coach()
        .judge_by_hand(
            &club.place,
            &club.coach,
            wrong.reply,
            Verdict::Solved,
            Points::of(3.5),
            "Meant the right one.",
        )
        .await
        .expect("overruled");
    let told = club.carry_all().await;
    assert_eq!(
        told,
        [
            "u-Ana: Position 1: your coach has looked at your answer: solved. 3.5 of 5 points. \"Meant the right one.\""
        ]
    );
    assert_eq!(standing(&club, "Ana").await.points, 3.5);
    let rows = club
        .desk
        .coach()
        .replies(&club.place, &club.coach, post)
        .await
        .expect("read");
    assert!(rows[0].by_coach && rows[0].verdict == Some(Outcome::Judged(Verdict::Solved)));
    club.desk
        .coach()
        .overrule(
            &club.place,
            &club.coach,
            wrong.reply,
            Verdict::Wrong,
            Points::of(0.0),
            "",
        )
        .await
        .expect("taken back");
    let progress = standing(&club, "Ana").await;
    assert_eq!((progress.points, progress.topics[0].solved), (0.0, 0));
}

#[tokio::test]
async fn a_position_that_only_the_coach_can_judge() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    // No mate in one there: posted on the coach's word, as a question with an open answer.
    let open = "6k1/5ppp/8/8/8/8/8/6KR w - - id \"plan\"; dm 1;";
    let position = club.import(&club.place, open).await[0]
        .position
        .expect("kept");
    let item = club
        .desk
        .coach()
        .enqueue(&club.place, &club.coach, position, true)
        .await
        .expect("the coach's word");
    club.desk
        .coach()
        .post_now(&club.place, &club.coach, Some(item))
        .await
        .expect("posted");
    let errand = club.errand().await.expect("the post");
    club.carried(&errand).await;
    let post = club
        .desk
        .open_post(&club.place)
        .await
        .expect("read")
        .expect("open")
        .post;
    let kept = answer(&club, "Ana", post, "m1", "bring the king over").await;
    assert!(
        in_words(&kept.said).contains("judges this one by hand"),
        "{}",
        in_words(&kept.said)
    );
    assert!(
        club.desk
            .member()
            .hint(&club.place, &person("Ana"), post)
            .await
            .is_err()
    );
    let homework = club
        .desk
        .coach()
        .homework(&club.place, &club.coach)
        .await
        .expect("read");
    assert_eq!(
        homework
            .iter()
            .map(|row| (row.reply.reply, row.reply.text.as_str()))
            .collect::<Vec<_>>(),
        [(kept.reply, "bring the king over")]
    );
    club.desk
        .coach()
        .judge_by_hand(
            &club.place,
            &club.coach,
            kept.reply,
            Verdict::Solved,
            Points::of(5.0),
            "",
        )
        .await
        .expect("judged");
    assert!(
        club.desk
            .coach()
            .homework(&club.place, &club.coach)
            .await
            .expect("read")
            .is_empty()
    );
    assert_eq!(standing(&club, "Ana").await.points, 5.0);
    assert_eq!(
        answer(&club, "Ana", post, "m1", "bring the king over")
            .await
            .verdict(),
        Verdict::Solved
    );
}

#[tokio::test]
async fn edits_and_deletions_follow_their_rules() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let ana = person("Ana");
    let edit = async |source: &str, text: &str| {
        club.desk
            .member()
            .edit_reply(&club.place, &ana, source, text)
            .await
            .expect("edited")
    };
    assert!(matches!(edit("m0", "Rxd8+").await, Edited::Unknown));

    // Nothing was decided: the edited text is judged.
    let noise = answer(&club, "Ana", post, "m1", "Qxd8").await;
    assert!(
        matches!(noise.verdict(), Verdict::Illegal | Verdict::Unreadable),
        "{:?}",
        noise.verdict()
    );
    let Edited::Judged(sheet) = edit("m1", "Rd7").await else {
        panic!("judged anew")
    };
    assert_eq!(
        (sheet.verdict(), sheet.reply),
        (Verdict::Wrong, noise.reply)
    );
    // A wrong move stays one.
    let Edited::Stands(sheet) = edit("m1", "Rxd8+").await else {
        panic!("stands")
    };
    assert_eq!(sheet.verdict(), Verdict::Wrong);
    let rows = club
        .desk
        .member()
        .my_replies(&club.place, &ana, post)
        .await
        .expect("read");
    assert_eq!(
        rows.iter().map(|row| row.text.as_str()).collect::<Vec<_>>(),
        ["Rd7"]
    );

    // Deleted: the words go, the verdict stays.
    assert_eq!(
        club.desk
            .member()
            .withdraw_reply(&club.place, "m1")
            .await
            .expect("taken"),
        Withdrawn::Stands
    );
    let rows = club
        .desk
        .member()
        .my_replies(&club.place, &ana, post)
        .await
        .expect("read");
    assert_eq!(
        (rows[0].text.as_str(), rows[0].verdict),
        ("", Some(Outcome::Judged(Verdict::Wrong)))
    );
    // What decided nothing goes altogether.
    answer(&club, "Ben", post, "m2", "Qxd8").await;
    assert_eq!(
        club.desk
            .member()
            .withdraw_reply(&club.place, "m2")
            .await
            .expect("taken"),
        Withdrawn::Gone
    );
    assert_eq!(
        club.desk
            .member()
            .withdraw_reply(&club.place, "m2")
            .await
            .expect("taken"),
        Withdrawn::Unknown
    );
    assert!(standing(&club, "Ben").await.topics.is_empty());
    // Somebody else's message is nobody's to edit.
    answer(&club, "Ben", post, "m3", "Qxd8").await;
    assert!(matches!(edit("m3", "Rxd8+").await, Edited::Unknown));
}

#[tokio::test]
async fn an_edited_reply_comes_after_what_was_taken_or_given_up_before_the_edit() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    for name in ["Ana", "Ben"] {
        answer(&club, name, post, &format!("{name}-1"), "Qxd8").await;
    }
    let (ana, ben) = (person("Ana"), person("Ben"));
    for _ in 0..2 {
        let hint = club.desk.member().hint(&club.place, &ana, post).await;
        hint.expect("a hint");
    }
    let given_up = club.desk.member().give_up(&club.place, &ben, post).await;
    given_up.expect("given up");
    let edit = async |person: &Person| {
        let source = format!("{}-1", person.name);
        let edited = club
            .desk
            .member()
            .edit_reply(&club.place, person, &source, "Rxd8+")
            .await;
        match edited.expect("edited") {
            Edited::Judged(sheet) => *sheet,
            other => panic!("{other:?} instead of a verdict"),
        }
    };
    let sheet = edit(&ana).await;
    assert_eq!(
        (sheet.verdict(), sheet.points),
        (Verdict::Solved, Points::of(3.0))
    );
    assert_eq!(standing(&club, "Ana").await.points, 3.0);
    let sheet = edit(&ben).await;
    assert_eq!(
        (sheet.verdict(), sheet.points),
        (Verdict::Solved, Points::of(0.0))
    );
    assert!(
        in_words(&sheet.said).contains("does not count"),
        "{}",
        in_words(&sheet.said)
    );
    assert_eq!(standing(&club, "Ben").await.points, 0.0);
}

#[tokio::test]
async fn a_flood_of_text_is_kept_in_part_and_refused_in_words() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let sheet = answer(&club, "Ana", post, "m1", &"Rxd8 ".repeat(10_000)).await;
    assert_eq!(sheet.verdict(), Verdict::Unreadable);
    assert!(
        in_words(&sheet.said).contains("first 4000 characters are kept"),
        "{}",
        in_words(&sheet.said)
    );
    let rows = club
        .desk
        .member()
        .my_replies(&club.place, &person("Ana"), post)
        .await
        .expect("read");
    assert!(rows[0].text.len() <= 4_000);
    assert!(
        club.desk
            .member()
            .answer(&club.place, &person("Ana"), post, "m2", " \n ")
            .await
            .is_err()
    );
}

#[tokio::test]
async fn two_messages_at_once_are_judged_one_after_the_other() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("three").await;
    let sheets = futures::future::join_all(["a", "b", "c", "d"].map(|source| {
        let desk = club.desk.clone();
        let place = club.place.clone();
        async move {
            desk.member()
                .answer(&place, &person("Ana"), post, source, "Rxd8+")
                .await
                .expect("judged")
        }
    }))
    .await;
    // The first two each went on where the one before had left; the others could only say again what
    // is on the board.
    assert!(
        sheets
            .iter()
            .all(|sheet| sheet.verdict() == Verdict::OnTheWay)
    );
    assert_eq!(
        standing(&club, "Ana").await.line,
        "1.Rxd8+ Rxd8 2.Rxd8+ Rxd8"
    );
}

#[tokio::test]
async fn a_hundred_members_at_once_each_get_their_own_verdict() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let sheets = futures::future::join_all((0..100).map(|n| {
        let (desk, place) = (club.desk.clone(), club.place.clone());
        async move {
            let text = if n % 4 == 0 { "Rd7" } else { "Rxd8+" };
            let who = person(&format!("M{n}"));
            desk.member()
                .answer(&place, &who, post, &format!("m{n}"), text)
                .await
                .expect("judged")
        }
    }))
    .await;
    for (n, sheet) in sheets.iter().enumerate() {
        let expected = if n % 4 == 0 {
            Verdict::Wrong
        } else {
            Verdict::Solved
        };
        assert_eq!(sheet.verdict(), expected, "member {n}");
    }
    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closing");
    let reveal = club.desk.reveal(&club.place, post).await.expect("closing");
    assert_eq!(
        (reveal.took_part, reveal.solution().solved.len()),
        (100, 75)
    );
}

#[tokio::test]
async fn a_person_sees_and_erases_what_is_kept_of_them() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let (desk, place, ana) = (&club.desk, &club.place, person("Ana"));
    answer(&club, "Ana", post, "m1", "Rd7").await;
    desk.member().hint(place, &ana, post).await.expect("a hint");
    desk.member()
        .say(place, &ana, "hello <b>all</b>")
        .await
        .expect("said");
    assert_eq!(
        desk.talk(place, 0, 10).await.expect("read")[0].text,
        "hello <b>all</b>"
    );
    let kept = desk
        .member()
        .kept_of_me(place, &ana)
        .await
        .expect("something")
        .to_string();
    for part in ["Rd7", "hello <b>all</b>", "u-Ana"] {
        assert!(kept.contains(part), "{part} in {kept}");
    }
    desk.member().erase_me(place, &ana).await.expect("erased");
    assert!(
        desk.member()
            .kept_of_me(place, &ana)
            .await
            .expect_err("nothing")
            .in_english()
            .contains("Nothing is kept")
    );
    assert!(
        desk.talk_before(place, None, 10)
            .await
            .expect("read")
            .is_empty()
    );
    assert!(
        desk.coach()
            .replies(place, &club.coach, post)
            .await
            .expect("read")
            .is_empty()
    );
    let file = std::fs::read(desk.inner.store.path()).expect("the file");
    assert!(
        !file.windows(5).any(|bytes| bytes == b"u-Ana"),
        "not even in unused parts"
    );

    // A coach's words go; that they coach the group stays.
    desk.member()
        .say(place, &club.coach, "welcome")
        .await
        .expect("said");
    desk.member()
        .erase_me(place, &club.coach)
        .await
        .expect("erased");
    assert!(desk.is_coach(place, &club.coach.user).await.expect("read"));
    assert!(desk.talk(place, 0, 10).await.expect("read").is_empty());
}

#[tokio::test]
async fn a_reply_that_names_no_post_is_for_those_it_is_legal_in() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let two = club.open("two").await;
    let three = club.open("three").await;
    let open = [(club.place.clone(), two), (club.place.clone(), three)];
    let aim = async |text: &str| -> Vec<PostId> {
        let found = club
            .desk
            .member()
            .aim(&open, "u-Ana", text)
            .await
            .expect("read");
        found.into_iter().map(|(_, post)| post).collect()
    };
    // Only the queen stands where the other has a rook.
    assert_eq!(aim("Ra1").await, [two]);
    assert_eq!(aim("Qa1").await, [three]);
    assert_eq!(aim("Kf1").await, [two, three]);
    assert_eq!(aim("good morning").await, Vec::<PostId>::new());
    // A line under way goes on, and what is solved takes no more.
    let sheet = answer(&club, "Ana", three, "m1", "Rxd8+").await;
    assert_eq!(
        sheet.verdict(),
        Verdict::OnTheWay,
        "{}",
        in_words(&sheet.said)
    );
    assert_eq!(aim("Kf1").await, [three]);
    answer(&club, "Ana", two, "m2", "Rxd8+").await;
    assert_eq!(aim("Ra1").await, Vec::<PostId>::new());
}

#[tokio::test]
async fn a_private_message_finds_the_open_posts_of_its_sender() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let none = club.desk.open_for(ROOM, "u-Ana").await.expect("read");
    assert!(none.is_empty(), "not a member");
    club.desk
        .member()
        .enter(&club.place, &person("Ana"))
        .await
        .expect("entered");
    let open = club.desk.open_for(ROOM, "u-Ana").await.expect("read");
    assert_eq!(
        open.iter()
            .map(|(place, row)| (place.clone(), row.post))
            .collect::<Vec<_>>(),
        [(club.place.clone(), post)]
    );
    assert_eq!(
        club.desk
            .find_post(&club.place, "message post 1")
            .await
            .expect("read"),
        Some(post)
    );
    assert_eq!(
        club.desk
            .find_post(&club.place, "message post 2")
            .await
            .expect("read"),
        None
    );
}
