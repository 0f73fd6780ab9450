//! The three past weeks once played: a group that is alive, and a first post that is due.

use chrono::{DateTime, TimeDelta, Utc};

use super::*;
use crate::desk::{Period, Summary};

/// A Wednesday in winter, and the Sunday on which the demo's zone put its clocks forward.
const MOMENTS: [&str; 2] = ["2026-02-11T10:42:17Z", "2026-03-29T01:20:30Z"];

fn options() -> DeskOptions {
    DeskOptions::speaking(crate::chat::pictures::say)
}

async fn filled(now: DateTime<Utc>) -> (tempfile::TempDir, Desk, TestClock) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("demo.sqlite");
    fill_until(options(), &path, now, &|_, _| {})
        .await
        .expect("filled");
    let clock = TestClock::at(now);
    let store = Store::open(&path).expect("opened");
    (
        folder,
        Desk::with_options(store, Arc::new(clock.clone()), options()),
        clock,
    )
}

/// The last seven days, with the whole minute in which the first of its posts went out.
fn last_week(now: DateTime<Utc>) -> Period {
    Period {
        from: Some(now - TimeDelta::days(7) - TimeDelta::minutes(1)),
        to: Some(now),
        topic: None,
    }
}

fn solved_share(summary: &Summary, topic: &str) -> f64 {
    let row = summary
        .topics
        .iter()
        .find(|row| row.name() == topic)
        .unwrap_or_else(|| panic!("{topic} is in the summary"));
    row.solved as f64 / row.tried as f64
}

#[tokio::test(flavor = "multi_thread")]
async fn the_weeks_leave_a_group_that_is_alive() {
    let now: DateTime<Utc> = MOMENTS[0].parse().expect("a moment");
    let (_folder, desk, _clock) = filled(now).await;
    let place = room::place();

    let posts = desk.posts(&place, 100).await.expect("posts");
    assert_eq!(posts.len(), 21);
    assert!(posts.iter().all(|post| !post.open));

    let queue = desk.coach().queue(&place).await.expect("queue");
    assert!(queue.len() > 7, "{}", queue.len());
    // The lesson holds words and a question as well.
    let sound: Vec<Soundness> = queue
        .iter()
        .filter(|item| item.holds.position().is_some())
        .map(|item| item.problem().soundness)
        .collect();
    assert_eq!(sound.len(), 14);
    assert!(sound.iter().all(|found| *found == Soundness::Sound));
    assert!(
        queue[0].due_at.is_some_and(|due| due <= now),
        "the first post is due: {:?}",
        queue[0].due_at
    );

    let board = desk
        .leaderboard(&place, &Period::default())
        .await
        .expect("leaderboard");
    assert!(board.rows.len() >= 10, "{} members", board.rows.len());
    let points: Vec<f64> = board.rows.iter().map(|row| row.points).collect();
    assert!(points[0] > 60.0 && points[0] < 105.0, "{board:?}");
    assert!(points[points.len() - 1] < points[0] / 2.0, "{board:?}");

    let last = desk
        .coach()
        .summary(&place, &last_week(now))
        .await
        .expect("summary");
    assert_eq!(last.posts.len(), 7, "{last:?}");
    assert_eq!(last.went_quiet, ["Anselm"], "{last:?}");
    assert_eq!(last.came_back, ["Bram"], "{last:?}");
    assert!(last.members.iter().any(|member| member.hints > 0));
    assert!(last.posts.iter().all(|post| post.tried >= 5), "{last:?}");
    assert!(last.posts.iter().any(|post| !post.common_wrong.is_empty()));
    assert!(!last.advice.is_empty());

    let all = desk
        .coach()
        .summary(&place, &Period::default())
        .await
        .expect("summary");
    let missed = solved_share(&all, "Boden's mate");
    assert!(missed < 0.5, "{missed}");
    for topic in [
        "Back-rank mate",
        "Smothered mate",
        "Anastasia's mate",
        "Arabian mate",
    ] {
        let share = solved_share(&all, topic);
        assert!(share > missed + 0.1, "{topic}: {share} against {missed}");
    }
    assert_eq!(
        all.topics[0].name(),
        "Boden's mate",
        "the weakest first: {all:?}"
    );

    let talk = desk.talk(&place, 0, 1_000).await.expect("talk");
    assert!(talk.len() >= 30, "{}", talk.len());
}

#[tokio::test(flavor = "multi_thread")]
async fn a_change_of_the_clocks_leaves_three_whole_weeks() {
    let now: DateTime<Utc> = MOMENTS[1].parse().expect("a moment");
    let (_folder, desk, _clock) = filled(now).await;
    let posts = desk.posts(&room::place(), 100).await.expect("posts");
    assert_eq!(posts.len(), 21);
    let queue = desk.coach().queue(&room::place()).await.expect("queue");
    assert!(queue[0].due_at.is_some_and(|due| due <= now));
}
