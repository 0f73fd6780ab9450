//! The week in the order of time, and moving about in it.

use super::*;

async fn ids(club: &Club) -> Vec<ItemId> {
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    queue.iter().map(|item| item.id).collect()
}

async fn moved(club: &Club, item: ItemId, to: usize) -> usize {
    let desk = club.desk.coach();
    desk.reorder(&club.place, &club.coach, item, to)
        .await
        .expect("moved")
}

async fn fixed(club: &Club, item: ItemId, local: &str) {
    let local = Some(local.parse().expect("a time"));
    club.desk
        .coach()
        .fix_time(&club.place, &club.coach, item, local)
        .await
        .expect("fixed");
}

#[tokio::test]
async fn the_week_is_in_the_order_of_time_and_moves_step_over_fixed_moments() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let items = club.fill(&club.place, 4).await;
    let [a, b, c, d] = items[..] else {
        panic!("four")
    };
    fixed(&club, d, "2026-11-23T12:00:00").await;
    fixed(&club, b, "2026-11-24T12:00:00").await;
    assert_eq!(ids(&club).await, [d, a, b, c]);
    let week = club.desk.coach().queue(&club.place).await.expect("read");
    let due: Vec<String> = week
        .iter()
        .filter_map(|item| item.due_at)
        .map(|at| at.format("%dT%H").to_string())
        .collect();
    assert_eq!(due, ["23T12", "23T18", "24T12", "24T18"]);
    let steps: Vec<_> = week.iter().map(|item| (item.earlier, item.later)).collect();
    assert_eq!(
        steps,
        [(None, None), (None, Some(3)), (None, None), (Some(1), None)]
    );
    // One step earlier goes before the one that is free, and what is fixed stays.
    assert_eq!(moved(&club, c, 1).await, 1);
    assert_eq!(ids(&club).await, [d, c, b, a]);
    assert_eq!(moved(&club, c, 3).await, 3);
    assert_eq!(ids(&club).await, [d, a, b, c]);
    // Before everything is the first free place; past the end is the last.
    assert_eq!(moved(&club, c, 0).await, 1);
    assert_eq!(ids(&club).await, [d, c, b, a]);
    assert_eq!(moved(&club, c, 99).await, 3);
    // What is fixed is told its place, and keeps it.
    assert_eq!(moved(&club, b, 0).await, 2);
    assert_eq!(ids(&club).await, [d, a, b, c]);
}

#[tokio::test]
async fn what_has_no_moment_comes_last_and_says_why() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let items = club.fill(&club.place, 2).await;
    let why = async || {
        let week = club.desk.coach().queue(&club.place).await.expect("read");
        let why = |item: QueueItem| (item.id, item.no_time);
        week.into_iter().map(why).collect::<Vec<_>>()
    };
    assert_eq!(why().await, [(items[0], None), (items[1], None)]);
    let settings = club.desk.settings(&club.place).await.expect("read");
    let never = Settings {
        days: Weekdays::none(),
        ..settings
    };
    let desk = club.desk.coach();
    desk.change_settings(&club.place, &club.coach, never)
        .await
        .expect("changed");
    fixed(&club, items[1], "2026-11-25T12:00:00").await;
    assert_eq!(
        why().await,
        [(items[1], None), (items[0], Some(NoTime::NoDays))]
    );
    desk.pause(&club.place, &club.coach, None)
        .await
        .expect("paused");
    let paused = Some(NoTime::Paused);
    assert_eq!(why().await, [(items[0], paused), (items[1], paused)]);
}
