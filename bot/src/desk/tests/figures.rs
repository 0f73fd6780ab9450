//! Leaderboard and summary, from answers as members send them.

use super::*;

async fn send(club: &Club, post: PostId, name: &str, source: &str, text: &str) -> VerdictSheet {
    club.desk
        .member()
        .answer(&club.place, &person(name), post, source, text)
        .await
        .expect("judged")
}

async fn board(club: &Club, period: &Period) -> Vec<(usize, String, f64)> {
    let board = club
        .desk
        .leaderboard(&club.place, period)
        .await
        .expect("a leaderboard");
    board
        .rows
        .into_iter()
        .map(|row| (row.rank, row.name, row.points))
        .collect()
}

async fn close(club: &Club, post: PostId) {
    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closing");
    club.carry_all().await;
}

#[tokio::test]
async fn points_show_when_the_post_is_closed_and_follow_the_coach() {
    let club = Club::new("2026-03-03T10:00:00Z", chrono_tz::UTC).await;
    let post = club.open("two").await;
    assert_eq!(
        send(&club, post, "Ana", "1", "Rxd8+").await.verdict(),
        Verdict::Solved
    );
    assert_eq!(
        send(&club, post, "Bruno", "2", "Rd7").await.verdict(),
        Verdict::Wrong
    );
    assert_eq!(
        send(&club, post, "Bruno", "3", "Rxd8+").await.verdict(),
        Verdict::Solved
    );
    let all = Period::default();
    assert_eq!(board(&club, &all).await, [], "an open post tells nothing");
    let early = club
        .desk
        .coach()
        .summary(&club.place, &all)
        .await
        .expect("a summary");
    assert!(early.posts.is_empty() && early.advice == [Advice::AdviceNothingClosed]);

    close(&club, post).await;
    let rows = |list: &[(usize, &str, f64)]| {
        list.iter()
            .map(|(rank, name, points)| (*rank, (*name).to_owned(), *points))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        board(&club, &all).await,
        rows(&[(1, "Ana", 5.0), (2, "Bruno", 4.0)])
    );

    let replies = club
        .desk
        .coach()
        .replies(&club.place, &club.coach, post)
        .await
        .expect("replies");
    let first = replies
        .iter()
        .find(|row| row.text == "Rd7")
        .expect("Bruno's first")
        .reply;
    club.desk
        .coach()
        .overrule(
            &club.place,
            &club.coach,
            first,
            Verdict::Solved,
            Points::of(5.0),
            "",
        )
        .await
        .expect("overruled");
    assert_eq!(
        board(&club, &all).await,
        rows(&[(1, "Ana", 5.0), (1, "Bruno", 5.0)])
    );

    club.desk
        .member()
        .erase_me(&club.place, &person("Ana"))
        .await
        .expect("erased");
    assert_eq!(board(&club, &all).await, rows(&[(1, "Bruno", 5.0)]));
}

#[tokio::test]
async fn the_summary_tells_how_the_week_went_and_who_is_missing() {
    let club = Club::new("2026-03-03T10:00:00Z", chrono_tz::UTC).await;
    club.desk
        .member()
        .enter(&club.place, &person("Carla"))
        .await
        .expect("entered");
    let post = club.open("two").await;
    send(&club, post, "Ana", "1", "Rxd8+").await;
    send(&club, post, "Bruno", "2", "Rd7").await;
    send(&club, post, "Dora", "3", "Rd7").await;
    close(&club, post).await;

    let this_week = |club: &Club| {
        Period::parse("this week", chrono_tz::UTC, club.desk.now()).expect("a period")
    };
    let week = club
        .desk
        .coach()
        .summary(&club.place, &this_week(&club))
        .await
        .expect("a summary");
    let rows: Vec<_> = week
        .members
        .iter()
        .map(|m| (m.name.as_str(), m.tried, m.solved, m.points))
        .collect();
    assert_eq!(
        rows,
        [
            ("Ana", 1, 1, 5.0),
            ("Bruno", 1, 0, 0.0),
            ("Dora", 1, 0, 0.0),
            ("Carla", 0, 0, 0.0)
        ]
    );
    assert_eq!(week.posts.len(), 1);
    let of = &week.posts[0];
    assert_eq!((of.tried, of.solved, of.first_try), (3, 1, 1));
    assert_eq!(of.common_wrong.len(), 1);
    assert_eq!(
        (of.common_wrong[0].san.as_str(), of.common_wrong[0].count),
        ("Rd7", 2)
    );
    assert!(
        of.common_wrong[0].refutation.starts_with("1..."),
        "{:?}",
        of.common_wrong
    );
    assert_eq!(week.topics[0].name(), "Back rank");
    assert!(
        week.advice.iter().any(|advice| matches!(
            advice,
            Advice::AdviceBegin { number: 1, count: 2, of: 3, played }
            | Advice::AdviceBeginRefuted { number: 1, count: 2, of: 3, played, .. }
                if *played == "Rd7".to_owned().into()
        )),
        "{:?}",
        week.advice
    );
    let charts = club
        .desk
        .coach()
        .summary_charts(&club.place, &this_week(&club), "de")
        .await
        .expect("charts");
    assert_eq!(charts.len(), 4);
    for chart in &charts {
        assert!(chart.bytes.starts_with(b"\x89PNG"));
        let alt = alt(chart, words("de"));
        assert!((1..=1024).contains(&alt.chars().count()), "{alt}");
    }

    // A week later only Bruno has answered, and that post is still open: he is not quiet for it.
    club.set("2026-03-10T10:00:00Z");
    let post = club.open("a").await;
    send(&club, post, "Bruno", "4", "Ra8#").await;
    let week = club
        .desk
        .coach()
        .summary(&club.place, &this_week(&club))
        .await
        .expect("a summary");
    // The week under way is not held against a whole one; by whole days there is none with posts before.
    assert!(week.went_quiet.is_empty() && week.compared.is_none());
    assert!(week.posts.is_empty() && week.came_back.is_empty());
    assert!(
        club.desk
            .coach()
            .summary_charts(&club.place, &this_week(&club), "de")
            .await
            .expect("charts")
            .is_empty()
    );
    close(&club, post).await;

    club.set("2026-03-17T10:00:00Z");
    let post = club.open("b").await;
    send(&club, post, "Ana", "5", "Rb8#").await;
    close(&club, post).await;
    let week = club
        .desk
        .coach()
        .summary(&club.place, &this_week(&club))
        .await
        .expect("a summary");
    // Of the two whole weeks, Dora took part in the earlier one alone; Ana has answered again today.
    assert_eq!(week.went_quiet, ["Dora"]);
    assert!(week.came_back.is_empty(), "{:?}", week.came_back);
    let compared = week.compared.expect("two weeks");
    assert_eq!(
        (compared.recent_from, compared.recent_to),
        (
            Some(at("2026-03-10T00:00:00Z")),
            Some(at("2026-03-17T00:00:00Z"))
        )
    );
}
