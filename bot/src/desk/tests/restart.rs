//! The program stops at every point between two steps; nothing is sent twice or lost.

use super::*;
use crate::chess::check::{Finding, Statement};

#[tokio::test]
async fn stopped_before_the_post_was_sent_or_before_that_was_written_down() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 2).await;
    club.set("2026-11-23T18:00:00Z");
    let first = club.errand().await.expect("the post");
    assert_eq!(said(&first), "post 1");
    // While the chat carries it, nobody else gets it.
    assert!(club.errand().await.is_none());

    club.restart();
    let second = club.errand().await.expect("the same post");
    assert_eq!(said(&second), "post 1 again");
    let nonce = |errand: &Errand| match &errand.kind {
        ErrandKind::Post { sheet, .. } => sheet.nonce.clone(),
        other => panic!("a post, not {other:?}"),
    };
    assert_eq!(nonce(&first), nonce(&second));
    club.carried(&second).await;

    club.restart();
    assert!(club.errand().await.is_none(), "written down as sent");
    assert_eq!(
        club.desk.posts(&club.place, 10).await.expect("read").len(),
        1
    );
}

#[tokio::test]
async fn stopped_while_closing() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let post = club.open("a").await;
    club.set("2026-11-24T08:00:00Z");
    let reveal = club.errand().await.expect("the reveal");
    assert_eq!(said(&reveal), "reveal 1");
    club.restart();
    let reveal = club.errand().await.expect("the reveal");
    assert_eq!(said(&reveal), "reveal 1 again");
    club.carried(&reveal).await;
    club.restart();
    assert!(club.errand().await.is_none());
    let closed = club.desk.posts(&club.place, 1).await.expect("read");
    assert!(!closed[0].open);
    assert!(club.desk.reveal(&club.place, post).await.is_ok());
}

#[tokio::test]
async fn stopped_between_the_coachs_word_and_its_errand() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.desk
        .coach()
        .post_now(&club.place, &club.coach, None)
        .await
        .expect("noted");
    club.restart();
    let errand = club.errand().await.expect("the post");
    assert_eq!(said(&errand), "post 1 again");
    club.carried(&errand).await;
    let post = club.desk.posts(&club.place, 1).await.expect("read")[0].post;
    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("noted");
    club.restart();
    assert_eq!(club.carry_all().await, ["reveal 1 again"]);
}

#[tokio::test]
async fn stopped_before_the_coach_was_told_of_the_empty_queue() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.set("2026-11-23T18:00:00Z");
    assert!(club.errand().await.is_some());
    club.restart();
    assert_eq!(
        club.carry_all().await.len(),
        1,
        "told again rather than never"
    );
    club.restart();
    assert!(club.errand().await.is_none());
}

#[tokio::test]
async fn days_of_downtime_cost_one_late_post_and_no_burst() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 4).await;
    club.set("2026-11-23T18:00:00Z");
    assert_eq!(club.carry_all().await, ["post 1"]);
    club.restart();
    club.set("2026-11-26T21:30:00Z");
    assert_eq!(club.carry_all().await, ["reveal 1", "post 2"]);
    let open = club
        .desk
        .open_post(&club.place)
        .await
        .expect("read")
        .expect("open");
    assert_eq!(open.closes_at, at("2026-11-27T17:00:00Z"), "the usual hour");
    club.restart();
    assert!(club.carry_all().await.is_empty());
    club.set("2026-11-27T18:00:00Z");
    assert_eq!(club.carry_all().await, ["reveal 2", "post 3"]);
}

#[tokio::test]
async fn a_post_held_up_for_long_gets_its_time_all_the_same() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.set("2026-11-23T18:00:00Z");
    assert!(club.errand().await.is_some());
    club.restart();
    club.set("2026-11-25T12:00:00Z");
    let errand = club.errand().await.expect("the post");
    let ErrandKind::Post { sheet, again: true } = &errand.kind else {
        panic!("the post again, not {errand:?}");
    };
    assert_eq!(sheet.closes_at, at("2026-11-26T11:00:00Z"));
    club.carried(&errand).await;
    assert!(club.errand().await.is_none(), "not closed at once");
}

#[tokio::test]
async fn what_an_older_checker_passed_is_checked_again_before_it_goes_out() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let items = club.fill(&club.place, 2).await;
    // An older version of the checker took a position with two keys for sound.
    let twice = "6k1/5ppp/8/8/8/8/8/RR4K1 w - - id \"twice\"; dm 1;";
    let position = club.import(&club.place, twice).await[0]
        .position
        .expect("kept");
    let item = {
        let store = &club.desk.inner.store;
        let check = |soundness| {
            move |tx: &sealed_move_store::Tx<'_>, id: PositionId| {
                let mut check = tx.position(id)?.expect("there").check;
                check.soundness = soundness;
                check.checker_version = 0;
                tx.replace_check(id, &check)
            }
        };
        store
            .write(move |tx| {
                let now = at("2026-11-23T09:00:00Z");
                check(sealed_move_store::Soundness::Sound)(tx, position)?;
                let first = tx.queued(items[0])?.expect("there");
                let first = queue::waits_as(&first).expect("a problem");
                check(sealed_move_store::Soundness::Sound)(tx, first)?;
                let item = tx.enqueue(position, now)?;
                tx.move_queued(item, 0)?;
                Ok(item)
            })
            .await
            .expect("written")
    };
    club.restart();
    club.set("2026-11-23T18:00:00Z");
    let carried = club.carry_all().await;
    assert_eq!(carried.len(), 2, "{carried:?}");
    assert!(carried.contains(&"post 1".to_owned()), "{carried:?}");
    assert!(
        carried.iter().any(
            |said| said.starts_with("coach: {\"is\":\"no-longer-passes\"")
                && said.contains("several-keys")
        ),
        "{carried:?}"
    );
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    let left = queue
        .iter()
        .find(|left| left.id == item)
        .expect("still there");
    assert_eq!(
        (left.problem().soundness, left.due_at),
        (Soundness::SeveralKeys, None)
    );
    let refused = club
        .desk
        .coach()
        .post_now(&club.place, &club.coach, Some(item))
        .await;
    assert!(
        refused
            .expect_err("refused")
            .in_english()
            .contains("more than one key")
    );
}

#[tokio::test]
async fn the_coachs_own_variations_are_checked_again_too() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    // The second game of the file; its side line ends in no mate.
    let file = "[Event \"first\"]\n[FEN \"6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1\"]\n[Task \"#1\"]\n\n1. Ra8# *\n\n\
                [Event \"second\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n[Task \"#2\"]\n\n\
                1. Rxd8+ Rxd8\n2. Rxd8# (2. h3) *\n";
    let kept = club.import(&club.place, file).await;
    let told = &kept[1].report.warnings;
    let [Statement::Found(Finding::InVariation { row: 12, line, .. })] = &told[..] else {
        panic!("{told:?}");
    };
    assert_eq!(line, &"2.h3".into());
    let position = kept[1].position.expect("kept");
    {
        let store = &club.desk.inner.store;
        store
            .write(move |tx| {
                let mut check = tx.position(position)?.expect("there").check;
                check.checker_version = 0;
                check.report["warnings"] = serde_json::json!([]);
                tx.replace_check(position, &check)?;
                tx.enqueue(position, at("2026-11-23T09:00:00Z"))
            })
            .await
            .expect("written");
    }
    club.restart();
    club.set("2026-11-23T18:00:00Z");
    club.carry_all().await;
    let again = club
        .desk
        .coach()
        .checked(&club.place, &club.coach, position)
        .await
        .expect("kept")
        .report;
    assert_eq!(&again.warnings, told);
    let limits = again.limits.expect("kept with the report");
    assert_eq!((limits.seconds, limits.moves, limits.depth), (20.0, 5, 14));
}
