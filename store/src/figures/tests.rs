use super::*;
use crate::{
    AttemptState, Verdict,
    fixture::{Fixture, at, attempt, close_post, new_reply, new_verdict, open_post},
};

/// Three closed posts in two topics and one open, four members.
///
/// | post | topic | opened | Ana | Bruno | Carla |
/// | 1 | Back rank | 0 | 5 first try | 0 playing | – |
/// | 2 | Back rank | 100 | 2.5 solved, one hint | 5 first try | – |
/// | 3 | Clearance | 200 | – | 0.1 playing | 5 first try |
/// | 4 (open) | Clearance | 300 | 5 first try | – | – |
fn season() -> (Fixture, Vec<PostId>) {
    use AttemptState::{Playing, Solved};
    let f = Fixture::new();
    let group = f.group;
    let posts = f.write(move |tx| {
        let [ana, bruno, carla, _dora] = ["Ana", "Bruno", "Carla", "Dora"]
            .map(|name| tx.upsert_member(group, name, name, at(0)).unwrap());
        let mut posts = Vec::new();
        for (n, topic) in ["Back rank", "Back rank", "Clearance", "Clearance"]
            .iter()
            .enumerate()
        {
            posts.push(open_post(tx, group, n, Some(topic), 100 * n as i64)?);
        }
        for (post, member, state, points) in [
            (0, ana, Solved, 5.0),
            (0, bruno, Playing, 0.0),
            (1, ana, Solved, 2.5),
            (1, bruno, Solved, 5.0),
            (2, bruno, Playing, 0.1),
            (2, carla, Solved, 5.0),
            (3, ana, Solved, 5.0),
        ] {
            tx.upsert_attempt(&attempt(posts[post], member, state, points))?;
        }
        tx.next_hint(posts[1], ana, 0, 3, at(101))?;
        tx.next_hint(posts[3], ana, 0, 3, at(301))?;
        for post in &posts[..3] {
            close_post(tx, *post, 999)?;
        }
        Ok(posts)
    });
    (f, posts)
}

fn points(f: &Fixture, span: Span) -> Vec<(String, f64, u32, u32, u32)> {
    f.read(move |db| db.leaderboard(&span))
        .into_iter()
        .map(|r| (r.name, r.points, r.solved, r.tried, r.first_try))
        .collect()
}

#[test]
fn the_leaderboard_counts_closed_posts_only() {
    let (f, posts) = season();
    let all = Span::all(f.group);
    assert_eq!(
        points(&f, all.clone()),
        [
            ("Ana".into(), 7.5, 2, 2, 1),
            ("Bruno".into(), 5.1, 1, 3, 1),
            ("Carla".into(), 5.0, 1, 1, 1),
        ]
    );
    let sent = Span {
        counting: Counting::Sent,
        ..all.clone()
    };
    assert_eq!(points(&f, sent)[0], ("Ana".into(), 12.5, 3, 3, 2));
    // Replies to it have ended, its reveal is on its way: now it counts.
    f.write({
        let last = posts[3];
        move |tx| tx.mark_post_closing(last)
    });
    assert_eq!(points(&f, all)[0], ("Ana".into(), 12.5, 3, 3, 2));
}

#[test]
fn a_span_takes_its_first_moment_and_leaves_its_last() {
    let (f, _) = season();
    let span = |from, to| Span {
        from: Some(at(from)),
        to: Some(at(to)),
        ..Span::all(f.group)
    };
    let names = |span| {
        points(&f, span)
            .into_iter()
            .map(|r| r.0)
            .collect::<Vec<_>>()
    };
    assert_eq!(names(span(100, 200)), ["Bruno", "Ana"]);
    assert_eq!(names(span(101, 201)), ["Carla", "Bruno"]);
    assert_eq!(names(span(500, 600)), Vec::<String>::new());
    let topic = Span {
        topic: Some("CLEARANCE".into()),
        ..Span::all(f.group)
    };
    assert_eq!(names(topic), ["Carla", "Bruno"]);
    assert_eq!(
        names(Span::all(GroupId::of(f.group.get() + 1))),
        Vec::<String>::new()
    );
}

#[test]
fn sums_that_are_equal_are_equal_in_any_order() {
    let f = Fixture::new();
    let group = f.group;
    f.write(move |tx| {
        let ana = tx.upsert_member(group, "a", "Ana", at(0))?;
        let bruno = tx.upsert_member(group, "b", "Bruno", at(0))?;
        for (n, (a, b)) in [(0.1, 0.3), (0.2, 0.2), (0.3, 0.1)].into_iter().enumerate() {
            let post = open_post(tx, group, n, None, n as i64)?;
            tx.upsert_attempt(&attempt(post, ana, AttemptState::Playing, a))?;
            tx.upsert_attempt(&attempt(post, bruno, AttemptState::Playing, b))?;
            close_post(tx, post, 99)?;
        }
        Ok(())
    });
    // As doubles, 0.1 + 0.2 + 0.3 is not 0.3 + 0.2 + 0.1.
    let rows = points(&f, Span::all(group));
    assert_eq!(rows[0].1, rows[1].1);
    assert_eq!(rows[0].1, 0.6);
}

#[test]
fn members_posts_and_topics_are_summed_up() {
    let (f, _) = season();
    let all = Span::all(f.group);
    let members = f.read({
        let all = all.clone();
        move |db| db.member_figures(&all)
    });
    let row = |n: usize| {
        let m = &members[n];
        (
            m.name.as_str(),
            m.tried,
            m.solved,
            m.first_try,
            m.points,
            m.hints,
        )
    };
    assert_eq!(row(0), ("Ana", 2, 2, 1, 7.5, 1));
    assert_eq!(row(1), ("Bruno", 3, 1, 1, 5.1, 0));
    assert_eq!(row(3), ("Dora", 0, 0, 0, 0.0, 0));

    let posts = f.read({
        let all = all.clone();
        move |db| db.post_figures(&all)
    });
    let row = |n: usize| {
        let p = &posts[n];
        (
            p.number,
            p.topic.as_deref(),
            p.tried,
            p.solved,
            p.first_try,
            p.hints,
        )
    };
    assert_eq!(posts.len(), 3);
    assert_eq!(row(0), (1, Some("Back rank"), 2, 1, 1, 0));
    assert_eq!(row(1), (2, Some("Back rank"), 2, 2, 1, 1));
    assert_eq!(row(2), (3, Some("Clearance"), 2, 1, 1, 0));

    let topics = f.read({
        let all = all.clone();
        move |db| db.topic_figures(&all)
    });
    let rows: Vec<_> = topics
        .iter()
        .map(|t| (t.topic.as_str(), t.posts, t.tried, t.solved, t.first_try))
        .collect();
    assert_eq!(rows, [("Back rank", 2, 4, 3, 2), ("Clearance", 1, 2, 1, 1)]);

    let names: Vec<_> = f
        .read(move |db| db.took_part(&all))
        .into_iter()
        .map(|(_, name)| name)
        .collect();
    assert_eq!(names, ["Ana", "Bruno", "Carla"]);
}

#[test]
fn a_post_nobody_tried_still_has_a_line() {
    let f = Fixture::new();
    let group = f.group;
    f.write(move |tx| {
        let post = open_post(tx, group, 1, Some("Back rank"), 0)?;
        close_post(tx, post, 60)
    });
    let posts = f.read(move |db| db.post_figures(&Span::all(group)));
    assert_eq!((posts.len(), posts[0].tried, posts[0].solved), (1, 0, 0));
    let topics = f.read(move |db| db.topic_figures(&Span::all(group)));
    assert_eq!((topics.len(), topics[0].posts, topics[0].tried), (1, 1, 0));
}

#[test]
fn wrong_first_moves_are_counted_by_member() {
    let (f, posts) = season();
    let (group, post) = (f.group, posts[0]);
    f.write(move |tx| {
        let id = |name: &str| tx.member_by_user(group, name).map(|m| m.unwrap().id);
        let (ana, bruno, carla) = (id("Ana")?, id("Bruno")?, id("Carla")?);
        for (member, san, verdict) in [
            (ana, "Rd7", Verdict::Wrong),
            (ana, "Rd7", Verdict::Wrong),
            (bruno, "Rd6", Verdict::Wrong),
            (carla, "Rd6", Verdict::Wrong),
            (carla, "Rd5", Verdict::Illegal),
            (bruno, "Rxd8+", Verdict::Solved),
        ] {
            let reply = tx.insert_reply(&new_reply(post, member, None, san))?.id;
            let mut verdict = new_verdict(reply, verdict, san);
            verdict.facts = serde_json::json!(format!("why of {san} to {member}"));
            tx.insert_verdict(&verdict)?;
        }
        // Overruled: counts no more.
        let reply = tx.insert_reply(&new_reply(post, carla, None, "Rd7"))?.id;
        tx.insert_verdict(&new_verdict(reply, Verdict::Wrong, "Rd7"))?;
        tx.insert_verdict(&new_verdict(reply, Verdict::Solved, "Rd7"))?;
        Ok(())
    });
    let moves = f.read(move |db| db.wrong_first_moves(post));
    let rows: Vec<_> = moves.iter().map(|m| (m.san.as_str(), m.members)).collect();
    assert_eq!(rows, [("Rd6", 2), ("Rd7", 1)]);
    assert_eq!(moves[0].refutation, ["Rxd7"]);
    let said = moves[0].facts.as_ref().and_then(|facts| facts.as_str());
    assert!(said.is_some_and(|said| said.starts_with("why of Rd6")));
}

/// The sums must be reached by keys from the posts on, not by reading all attempts there are.
#[test]
fn sums_go_by_the_keys() {
    let (f, _) = season();
    let plan: Vec<String> = f.read(|db| {
        db.all(
            &format!(
                "EXPLAIN QUERY PLAN {} SELECT a.member_id, {SUMS}
                 FROM covered c CROSS JOIN attempts a ON a.post_id = c.id GROUP BY a.member_id",
                *COVERED
            ),
            Span::all(GroupId::of(1)).params(),
            |row| row.get("detail"),
        )
    });
    assert!(
        plan.iter()
            .any(|line| line.contains("SEARCH a USING") && line.contains("post_id=?")),
        "{plan:#?}"
    );
    assert!(
        !plan.iter().any(|line| line.contains("SCAN a")),
        "{plan:#?}"
    );
}
