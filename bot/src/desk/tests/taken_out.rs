//! Taking something out of the week, and putting it back.

use super::*;

#[tokio::test]
async fn words_taken_out_go_back_with_topic_place_and_moment() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (place, coach, desk) = (&club.place, &club.coach, club.desk.coach());
    let first = club.fill(place, 1).await[0];
    let topic = Some("Plans".parse().expect("a topic"));
    let words = desk
        .enqueue_question(place, coach, "What now?", None, topic, "This.")
        .await
        .expect("queued");
    desk.reorder(place, coach, words, 0).await.expect("moved");
    let taken = desk.dequeue(place, coach, words).await.expect("taken out");
    let lately = desk.taken_out(place, coach).await.expect("read");
    assert_eq!(lately.len(), 1);
    assert_eq!(
        (lately[0].taken, lately[0].taken_at),
        (taken, club.desk.now())
    );
    assert!(matches!(&lately[0].holds, Queued::Question { words, .. } if words == "What now?"));
    let back = desk.put_back_in_week(place, coach, taken).await;
    let back = back.expect("put back");
    let week = desk.queue(place).await.expect("read");
    let ids: Vec<ItemId> = week.iter().map(|item| item.id).collect();
    assert_eq!(ids, [back, first]);
    assert_eq!(week[0].topic.as_deref(), Some("Plans"));
    assert!(matches!(&week[0].holds, Queued::Question { at_reveal, .. } if at_reveal == "This."));
    assert!(desk.taken_out(place, coach).await.expect("read").is_empty());
}

#[tokio::test]
async fn a_moment_that_is_past_or_taken_is_not_put_back() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (place, coach, desk) = (&club.place, &club.coach, club.desk.coach());
    let items = club.fill(place, 3).await;
    let fix = async |item: ItemId, local: &str| {
        let local = Some(local.parse().expect("a time"));
        desk.fix_time(place, coach, item, local)
            .await
            .expect("fixed");
    };
    let due = async |item: ItemId| {
        let week = desk.queue(place).await.expect("read");
        let found = week.iter().find(|one| one.id == item).expect("waits");
        let at = found.due_at.expect("due");
        (at.format("%dT%H").to_string(), found.fixed)
    };
    fix(items[0], "2026-11-25T12:00:00").await;
    let taken = desk.dequeue(place, coach, items[0]).await.expect("out");
    let back = desk.put_back_in_week(place, coach, taken).await;
    let back = back.expect("put back");
    assert_eq!(due(back).await, ("25T12".to_owned(), true));

    let taken = desk.dequeue(place, coach, back).await.expect("out");
    fix(items[1], "2026-11-25T12:00:00").await;
    let back = desk.put_back_in_week(place, coach, taken).await;
    let back = back.expect("put back");
    assert_eq!(due(back).await, ("23T18".to_owned(), false));

    fix(back, "2026-11-23T12:00:00").await;
    let taken = desk.dequeue(place, coach, back).await.expect("out");
    club.set("2026-11-23T12:30:00Z");
    let back = desk.put_back_in_week(place, coach, taken).await;
    assert_eq!(
        due(back.expect("put back")).await,
        ("23T18".to_owned(), false)
    );
}

#[tokio::test]
async fn putting_back_is_offered_until_something_else_makes_it_impossible() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (place, coach, desk) = (&club.place, &club.coach, club.desk.coach());
    let items = club.fill(place, 2).await;
    let week = desk.queue(place).await.expect("read");
    let position = week[0].problem().position;
    let taken = desk.dequeue(place, coach, items[0]).await.expect("out");
    // As before, it lies on the shelf meanwhile.
    let shelf = desk.shelf(place, coach, 10).await.expect("read");
    assert!(shelf.iter().any(|row| row.position == Some(position)));
    let ana = person("Ana");
    assert!(desk.taken_out(place, &ana).await.is_err());
    assert!(desk.put_back_in_week(place, &ana, taken).await.is_err());
    let refused = async |taken: TakenOutId| {
        let error = desk.put_back_in_week(place, coach, taken).await;
        error.expect_err("impossible").to_string()
    };
    assert!(refused(TakenOutId::of(99)).await.contains("not-taken-out"));
    // Put into the week from the shelf, it is there, and there is nothing to undo.
    desk.enqueue(place, coach, position, false)
        .await
        .expect("queued");
    assert!(desk.taken_out(place, coach).await.expect("read").is_empty());
    assert!(refused(taken).await.contains("not-taken-out"));
    // It is offered for a week, and can be done by its number after that as well.
    let taken = desk.dequeue(place, coach, items[1]).await.expect("out");
    club.set("2026-11-30T08:59:59Z");
    assert_eq!(desk.taken_out(place, coach).await.expect("read").len(), 1);
    club.set("2026-11-30T09:00:00Z");
    assert!(desk.taken_out(place, coach).await.expect("read").is_empty());
    assert!(desk.put_back_in_week(place, coach, taken).await.is_ok());
}
