//! Sums over attempts: what the leaderboard and the engagement summary are made of.
//!
//! A post belongs to a period by the moment it was opened, and counts once replies to it have ended: a
//! figure that moved while a post is open would tell others who has solved it. The coach may ask for more.

use rusqlite::Row;

use crate::{Db, Moment, StoreError, time, values::List};

/// Which posts a figure counts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Counting {
    /// Those whose replies have ended: what may be shown to the group.
    #[default]
    Ended,
    /// Open ones, too: for the coach's eyes.
    Sent,
}

/// Which posts a figure covers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Span {
    /// The group.
    pub group_id: i64,
    /// Opened at this moment or later.
    pub from: Option<Moment>,
    /// Opened before this moment.
    pub to: Option<Moment>,
    /// Of this topic only, whatever its case.
    pub topic: Option<String>,
    /// Whether open posts count.
    pub counting: Counting,
}

/// One member's points.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberPoints {
    /// The member.
    pub member_id: i64,
    /// Their name.
    pub name: String,
    /// Points in all.
    pub points: f64,
    /// Posts solved.
    pub solved: u32,
    /// Posts taken part in.
    pub tried: u32,
    /// Posts solved without a wrong move or a hint.
    pub first_try: u32,
}

/// One member's part.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberFigures {
    /// The member.
    pub member_id: i64,
    /// Their name.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when they belong to it.
    pub joined_at: Moment,
    /// Posts taken part in.
    pub tried: u32,
    /// Posts solved.
    pub solved: u32,
    /// Posts solved without a wrong move or a hint.
    pub first_try: u32,
    /// Points in all.
    pub points: f64,
    /// Hint steps taken.
    pub hints: u32,
}

/// How one post went.
#[derive(Clone, Debug, PartialEq)]
pub struct PostFigures {
    /// The post.
    pub post_id: i64,
    /// Its position.
    pub position_id: i64,
    /// Its number.
    pub number: i64,
    /// Its topic.
    pub topic: Option<String>,
    /// Its stipulation.
    pub stipulation: String,
    /// When it was opened.
    pub opened_at: Moment,
    /// Members who took part.
    pub tried: u32,
    /// Members who solved it.
    pub solved: u32,
    /// Members who solved it without a wrong move or a hint.
    pub first_try: u32,
    /// Hint steps taken.
    pub hints: u32,
}

/// How one topic went. Posts without a topic make no line.
#[derive(Clone, Debug, PartialEq)]
pub struct TopicFigures {
    /// The topic.
    pub topic: String,
    /// Posts of it.
    pub posts: u32,
    /// Attempts at them.
    pub tried: u32,
    /// Attempts that solved.
    pub solved: u32,
    /// Attempts that solved without a wrong move or a hint.
    pub first_try: u32,
}

/// A wrong first move and how many members chose it.
#[derive(Clone, Debug, PartialEq)]
pub struct WrongFirst {
    /// The move in SAN.
    pub san: String,
    /// How many members chose it.
    pub members: u32,
    /// The refuting line told to the first of them, in SAN.
    pub refutation: Vec<String>,
    /// The reason told to them.
    pub why: String,
}

/// The posts of a [`Span`], with what their positions say; `?1` to `?5` are the span.
const COVERED: &str = "WITH covered AS MATERIALIZED (
        SELECT o.id, o.position_id, o.number, o.opened_at, p.stipulation, t.name AS topic
        FROM posts o JOIN positions p ON p.id = o.position_id LEFT JOIN topics t ON t.id = p.topic_id
        WHERE o.group_id = ?1 AND (o.state IN ('closing', 'closed') OR (?5 AND o.state = 'open'))
          AND (?2 IS NULL OR o.opened_at >= ?2)
          AND (?3 IS NULL OR o.opened_at < ?3)
          AND (?4 IS NULL OR t.name = ?4)
    )";

/// Sums of one set of attempts. Points are rounded to a thousandth, so that equal sums are equal in
/// whichever order they were added.
const SUMS: &str = "count(*) AS tried,
        sum(a.state = 'solved') AS solved,
        sum(a.first_try) AS first_try,
        round(sum(a.points), 3) AS points";

impl Span {
    /// All posts of a group.
    pub fn all(group_id: i64) -> Self {
        Self {
            group_id,
            ..Self::default()
        }
    }

    fn params(&self) -> (i64, Option<String>, Option<String>, Option<&str>, bool) {
        (
            self.group_id,
            time::maybe(self.from),
            time::maybe(self.to),
            self.topic.as_deref(),
            self.counting == Counting::Sent,
        )
    }
}

fn read_topic(row: &Row<'_>) -> rusqlite::Result<TopicFigures> {
    Ok(TopicFigures {
        topic: row.get("topic")?,
        posts: row.get("posts")?,
        tried: row.get("tried")?,
        solved: row.get("solved")?,
        first_try: row.get("first_try")?,
    })
}

impl Db<'_> {
    /// Points by member, most first, then by name. Members without an attempt are left out.
    pub fn leaderboard(&self, span: &Span) -> Result<Vec<MemberPoints>, StoreError> {
        // CROSS JOIN keeps the order written: from the posts to their attempts by the primary key.
        self.all(
            &format!(
                "{COVERED}, sums AS (
                    SELECT a.member_id, {SUMS} FROM covered c CROSS JOIN attempts a ON a.post_id = c.id
                    GROUP BY a.member_id
                )
                SELECT m.id, m.name, s.* FROM sums s JOIN members m ON m.id = s.member_id
                ORDER BY s.points DESC, m.name, m.id"
            ),
            span.params(),
            |row| {
                Ok(MemberPoints {
                    member_id: row.get("id")?,
                    name: row.get("name")?,
                    points: row.get("points")?,
                    solved: row.get("solved")?,
                    tried: row.get("tried")?,
                    first_try: row.get("first_try")?,
                })
            },
        )
    }

    /// Every member's part, by name, members without an attempt among them.
    pub fn member_figures(&self, span: &Span) -> Result<Vec<MemberFigures>, StoreError> {
        self.all(
            &format!(
                "{COVERED}, sums AS (
                    SELECT a.member_id, {SUMS} FROM covered c CROSS JOIN attempts a ON a.post_id = c.id
                    GROUP BY a.member_id
                ), steps AS (
                    SELECT h.member_id, count(*) AS hints
                    FROM covered c CROSS JOIN hints h ON h.post_id = c.id
                    GROUP BY h.member_id
                )
                SELECT m.id, m.name, m.coach, m.joined_at,
                       coalesce(s.tried, 0) AS tried, coalesce(s.solved, 0) AS solved,
                       coalesce(s.first_try, 0) AS first_try, coalesce(s.points, 0.0) AS points,
                       coalesce(x.hints, 0) AS hints
                FROM members m LEFT JOIN sums s ON s.member_id = m.id
                               LEFT JOIN steps x ON x.member_id = m.id
                WHERE m.group_id = ?1
                ORDER BY m.name, m.id"
            ),
            span.params(),
            |row| {
                Ok(MemberFigures {
                    member_id: row.get("id")?,
                    name: row.get("name")?,
                    coach: row.get("coach")?,
                    joined_at: time::get(row, "joined_at")?,
                    tried: row.get("tried")?,
                    solved: row.get("solved")?,
                    first_try: row.get("first_try")?,
                    points: row.get("points")?,
                    hints: row.get("hints")?,
                })
            },
        )
    }

    /// How each post went, in the order of their numbers.
    pub fn post_figures(&self, span: &Span) -> Result<Vec<PostFigures>, StoreError> {
        self.all(
            &format!(
                "{COVERED}
                SELECT c.*, count(a.member_id) AS tried,
                       coalesce(sum(a.state = 'solved'), 0) AS solved,
                       coalesce(sum(a.first_try), 0) AS first_try,
                       (SELECT count(*) FROM hints h WHERE h.post_id = c.id) AS hints
                FROM covered c LEFT JOIN attempts a ON a.post_id = c.id
                GROUP BY c.id ORDER BY c.number"
            ),
            span.params(),
            |row| {
                Ok(PostFigures {
                    post_id: row.get("id")?,
                    position_id: row.get("position_id")?,
                    number: row.get("number")?,
                    topic: row.get("topic")?,
                    stipulation: row.get("stipulation")?,
                    opened_at: time::get(row, "opened_at")?,
                    tried: row.get("tried")?,
                    solved: row.get("solved")?,
                    first_try: row.get("first_try")?,
                    hints: row.get("hints")?,
                })
            },
        )
    }

    /// How each topic went, by name.
    pub fn topic_figures(&self, span: &Span) -> Result<Vec<TopicFigures>, StoreError> {
        self.all(
            &format!(
                "{COVERED}
                SELECT c.topic, count(DISTINCT c.id) AS posts, count(a.member_id) AS tried,
                       coalesce(sum(a.state = 'solved'), 0) AS solved,
                       coalesce(sum(a.first_try), 0) AS first_try
                FROM covered c LEFT JOIN attempts a ON a.post_id = c.id
                WHERE c.topic IS NOT NULL GROUP BY c.topic ORDER BY c.topic"
            ),
            span.params(),
            read_topic,
        )
    }

    /// Ids and names of members with an attempt at a post of the span, by name.
    pub fn took_part(&self, span: &Span) -> Result<Vec<(i64, String)>, StoreError> {
        self.all(
            &format!(
                "{COVERED}
                SELECT m.id, m.name FROM members m
                WHERE m.id IN (SELECT a.member_id FROM covered c CROSS JOIN attempts a ON a.post_id = c.id)
                ORDER BY m.name, m.id"
            ),
            span.params(),
            |row| Ok((row.get(0)?, row.get(1)?)),
        )
    }

    /// One member's figures topic by topic, by name; `posts` counts those they took part in.
    pub fn topics_of_member(
        &self,
        span: &Span,
        member: i64,
    ) -> Result<Vec<TopicFigures>, StoreError> {
        let (group, from, to, topic, sent) = span.params();
        self.all(
            &format!(
                "{COVERED}
                SELECT c.topic, count(*) AS posts, count(*) AS tried,
                       sum(a.state = 'solved') AS solved, sum(a.first_try) AS first_try
                FROM covered c JOIN attempts a ON a.post_id = c.id AND a.member_id = ?6
                WHERE c.topic IS NOT NULL GROUP BY c.topic ORDER BY c.topic"
            ),
            (group, from, to, topic, sent, member),
            read_topic,
        )
    }

    /// The wrong first moves that came up for a post, the commonest first, then by move. A member who
    /// sent the same one twice counts once.
    pub fn wrong_first_moves(&self, post: i64) -> Result<Vec<WrongFirst>, StoreError> {
        // With one min() in a query, SQLite takes the plain columns from the row that has the minimum:
        // https://www.sqlite.org/lang_select.html#bareagg
        self.all(
            "SELECT v.wrong_first, count(DISTINCT r.member_id) AS members, min(r.id) AS first,
                    v.refutation, v.why
             FROM replies r JOIN verdicts v ON v.reply_id = r.id AND v.current = 1
             WHERE r.post_id = ?1 AND v.verdict = 'wrong' AND v.wrong_first IS NOT NULL
             GROUP BY v.wrong_first ORDER BY members DESC, v.wrong_first",
            [post],
            |row| {
                Ok(WrongFirst {
                    san: row.get("wrong_first")?,
                    members: row.get("members")?,
                    refutation: row.get::<_, List>("refutation")?.0,
                    why: row.get("why")?,
                })
            },
        )
    }
}

#[cfg(test)]
mod tests {
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
    fn season() -> (Fixture, Vec<i64>) {
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
            tx.next_hint(posts[1], ana, 3, at(101))?;
            tx.next_hint(posts[3], ana, 3, at(301))?;
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
        assert_eq!(names(Span::all(f.group + 1)), Vec::<String>::new());
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

        let ana = members[0].member_id;
        let mine = f.read({
            let all = all.clone();
            move |db| db.topics_of_member(&all, ana)
        });
        assert_eq!(mine.len(), 1);
        assert_eq!(
            (mine[0].posts, mine[0].solved, mine[0].first_try),
            (2, 2, 1)
        );

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
                verdict.why = format!("why of {san} to {member}");
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
        assert!(moves[0].why.starts_with("why of Rd6"));
    }

    /// The sums must be reached by keys from the posts on, not by reading all attempts there are.
    #[test]
    fn sums_go_by_the_keys() {
        let (f, _) = season();
        let plan: Vec<String> = f.read(|db| {
            db.all(
                &format!(
                    "EXPLAIN QUERY PLAN {COVERED} SELECT a.member_id, {SUMS}
                     FROM covered c CROSS JOIN attempts a ON a.post_id = c.id GROUP BY a.member_id"
                ),
                Span::all(1).params(),
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
}
