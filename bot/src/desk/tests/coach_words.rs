//! The coach's words and names: where they go out, and that nothing replaces them in silence.

use serde_json::json;

use super::*;
use crate::{
    chess::{check::Statement, comments::Withheld},
    desk::PositionId,
};

const LESSON: &str = "[Event \"Lesson\"]\n[Id \"w1\"]\n[Topic \"Back rank\"]\n[Task \"#2\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n{Look at the last rank.} {[reveal] Rooks before pawns.} 1.Rxd8+ $1 {A rook for a rook.} (1.Rd7 $2 {Too slow.} Rxd7) Rxd8 2.Rxd8# *\n";

/// The same position with other counters, under another name, topic and with other words.
const OTHER: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 4 30 id \"w9\"; dm 2; c0 \"Exchanges\"; post \"Count the rooks.\"; c1 \"Two against two.\";";

async fn import_as(club: &Club, name: &str, file: &str, choice: SameChoice) -> CheckedPosition {
    let mut all = club
        .desk
        .coach()
        .import_choosing(
            &club.place,
            &club.coach,
            name,
            file.into(),
            choice,
            Arc::new(|_, _| {}),
        )
        .await
        .expect("read");
    assert_eq!(all.len(), 1);
    all.remove(0)
}

async fn kept(club: &Club, position: Option<PositionId>) -> CheckedPosition {
    club.desk
        .coach()
        .checked(&club.place, &club.coach, position.expect("kept"))
        .await
        .expect("there")
}

#[tokio::test]
async fn words_go_out_with_the_post_and_at_the_reveal() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let one = import_as(&club, "lesson.pgn", LESSON, SameChoice::Keep).await;
    let position = one.position.expect("kept");
    let preview = club
        .desk
        .coach()
        .preview(&club.place, &club.coach, position)
        .await
        .expect("drawn");
    assert_eq!(preview.problem().words, "Look at the last rank.");
    club.desk
        .coach()
        .enqueue(&club.place, &club.coach, position, false)
        .await
        .expect("queued");
    club.restart();
    club.set("2026-11-23T18:00:00Z");
    let errand = club.errand().await.expect("the post");
    let ErrandKind::Post { sheet, .. } = &errand.kind else {
        panic!("{errand:?}");
    };
    assert_eq!(sheet.problem().words, "Look at the last rank.");
    let post = sheet.post;
    club.carried(&errand).await;
    club.set("2026-11-24T17:00:00Z");
    club.carry_all().await;
    let reveal = club.desk.reveal(&club.place, post).await.expect("closed");
    assert_eq!(reveal.post.problem().words, "Look at the last rank.");
    assert_eq!(reveal.solution().comment, "Rooks before pawns.");
    assert_eq!(
        note_lines(&reveal.solution().notes, str::to_owned),
        [
            "1.Rxd8+! A rook for a rook.",
            "(1.Rd7? Too slow. 1...Rxd7)",
            "1...Rxd8 2.Rxd8#"
        ]
    );
}

#[tokio::test]
async fn words_that_tell_a_move_wait_for_the_coach() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let telling = LESSON.replace("Look at the last rank.", "Start with Rxd8!");
    let one = import_as(&club, "lesson.pgn", &telling, SameChoice::Keep).await;
    assert_eq!(one.words.with_post, "");
    assert!(one.words.at_reveal.contains("Start with Rxd8!"));
    let [Statement::Words(Withheld::WordsHeld { line, words })] = &one.report.warnings[..] else {
        panic!("{:?}", one.report.warnings);
    };
    assert_eq!(line, &"Rxd8+".into());
    assert_eq!(words, &"Start with Rxd8!".into());
    let position = one.position.expect("kept");
    let set = async |words: &str, telling| {
        club.desk
            .coach()
            .set_words(&club.place, &club.coach, position, words, "Later.", telling)
            .await
    };
    let refused = set("Start with Rxd8!", Telling::Refused).await;
    assert!(refused.expect_err("refused").in_english().contains("Rxd8+"));
    let long = set(&"long ".repeat(300), Telling::Meant).await;
    assert!(long.expect_err("long").in_english().contains("1,000"));
    set("Start with Rxd8!", Telling::Meant)
        .await
        .expect("meant");
    let now = kept(&club, one.position).await;
    assert_eq!(now.words.with_post, "Start with Rxd8!");
    assert_eq!(now.words.at_reveal, "Later.");
    assert_eq!(now.words.notes, one.words.notes, "those beside moves stay");

    // The same file again: what the coach wrote stays, and it is said that the file differs.
    let again = import_as(&club, "lesson.pgn", &telling, SameChoice::Keep).await;
    assert_eq!(again.words.with_post, "Start with Rxd8!");
    let same = again.same.expect("shown");
    assert_eq!(same.differs, [Differs::Words]);
}

#[tokio::test]
async fn the_same_position_otherwise_is_shown_and_replaces_nothing() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let first = import_as(&club, "lesson.pgn", LESSON, SameChoice::Keep).await;
    assert!(first.same.is_none());
    let again = import_as(&club, "lesson.pgn", LESSON, SameChoice::Keep).await;
    assert!(again.same.is_none(), "nothing differs");

    let other = import_as(&club, "autumn.epd", OTHER, SameChoice::Keep).await;
    assert_eq!(
        other.position, first.position,
        "counters make no other position"
    );
    let same = other.same.clone().expect("shown");
    assert_eq!(
        same.differs,
        [Differs::Name, Differs::Topic, Differs::Words]
    );
    assert_eq!(same.kept.name, "lesson.pgn: w1");
    assert_eq!(same.given.name, "autumn.epd: w9");
    assert_eq!(same.kept.topics, ["Back rank"]);
    assert_eq!(same.given.topics, ["Exchanges"]);
    assert_eq!(same.done, SameChoice::Keep);
    let now = kept(&club, first.position).await;
    assert_eq!(
        (now.topic.as_deref(), &now.words),
        (Some("Back rank"), &first.words)
    );
    assert_eq!(now.report.id, "w1");

    // The choice afterwards: both topics, the first of which is counted.
    let both = club
        .desk
        .coach()
        .settle_same(&club.place, &club.coach, &other, SameChoice::Both)
        .await
        .expect("chosen");
    assert!(both.fresh.is_none());
    assert_eq!(both.topic.as_deref(), Some("Back rank"));
    assert_eq!(both.further_topics, ["Exchanges"]);
    assert_eq!(
        both.words.with_post,
        "Look at the last rank.\nCount the rooks."
    );
    assert_eq!(
        both.words.at_reveal,
        "Rooks before pawns.\nTwo against two."
    );
    assert_eq!(both.words.notes, first.words.notes);
    let known = import_as(&club, "lesson.pgn", LESSON, SameChoice::Keep).await;
    assert!(known.same.is_none(), "{:?}", known.same);

    let new = import_as(&club, "autumn.epd", OTHER, SameChoice::New).await;
    assert_eq!(new.topic.as_deref(), Some("Exchanges"));
    assert_eq!(new.words.with_post, "Count the rooks.");
    assert!(new.words.notes.is_empty());
    // A bare line says nothing of topic and words, so it takes none away.
    let bare = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2;";
    let bare = import_as(&club, "bare.epd", bare, SameChoice::New).await;
    assert_eq!(bare.topic.as_deref(), Some("Exchanges"));
    assert_eq!(bare.words.with_post, "Count the rooks.");
}

#[tokio::test]
async fn another_task_on_the_same_board_is_another_position_and_is_said() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let first = import_as(&club, "lesson.pgn", LESSON, SameChoice::Keep).await;
    let other = OTHER.replace("dm 2;", "dm 3;");
    let other = import_as(&club, "autumn.epd", &other, SameChoice::Keep).await;
    assert_ne!(other.position, first.position);
    let noted = json!({
        "is": "kept-with-other-task",
        "kept": { "list": [{ "theirs": "lesson.pgn: w1 (#2)" }] },
    });
    let warnings = &other.report.warnings;
    assert!(warnings.contains(&Statement::added(noted)), "{warnings:?}");
}

#[tokio::test]
async fn what_was_posted_before_needs_the_coachs_word() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let post = club.open("two").await;
    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closing");
    club.carry_all().await;
    let again = import_as(&club, "lesson.pgn", LESSON, SameChoice::Both).await;
    let posted = again.posted.expect("it was");
    assert_eq!(posted.words(chrono_tz::UTC), "No. 1 on 23 November 2026");
    let position = again.position.expect("kept");
    let refused = club
        .desk
        .coach()
        .enqueue(&club.place, &club.coach, position, true)
        .await
        .expect_err("posted before")
        .in_english();
    assert!(refused.contains("No. 1 on 23 November 2026"), "{refused}");
    club.desk
        .coach()
        .enqueue_again(&club.place, &club.coach, position, false)
        .await
        .expect("again");
    // Where it waits, it waits.
    club.desk
        .coach()
        .enqueue(&club.place, &club.coach, position, false)
        .await
        .expect("there already");
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    assert_eq!(queue[0].problem().posted, Some(posted));
    assert_eq!(queue[0].problem().further_topics, Vec::<String>::new());
}

/// Checkers before the fourth lost what stands beside the moves, and said what stands before them at the
/// reveal only. A store of theirs finds the one again, and the other stays where it was.
#[tokio::test]
async fn words_that_an_older_checker_lost_are_found_again() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let one = import_as(&club, "lesson.pgn", LESSON, SameChoice::Keep).await;
    let position = one.position.expect("kept");
    {
        let store = &club.desk.inner.store;
        store
            .write(move |tx| {
                let mut check = tx.position(position)?.expect("there").check;
                check.checker_version = 3;
                tx.replace_check(position, &check)?;
                let words = sealed_move_store::Words {
                    at_reveal: "Look at the last rank.".into(),
                    ..Default::default()
                };
                tx.set_position_words(position, &words)?;
                tx.enqueue(position, at("2026-11-23T09:00:00Z"))
            })
            .await
            .expect("written");
    }
    club.restart();
    club.set("2026-11-23T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
    let now = kept(&club, Some(position)).await;
    assert_eq!(now.words.with_post, "");
    assert_eq!(now.words.at_reveal, "Look at the last rank.");
    assert_eq!(now.words.notes, one.words.notes);
}
