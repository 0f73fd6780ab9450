//! Sums over attempts: what the leaderboard and the engagement summary are made of.
//!
//! A post belongs to a period by the moment it was opened, and counts once replies to it have ended: a
//! figure that moved while a post is open would tell others who has solved it. The coach may ask for more.
//!
//! Problems are tried and solved, questions are answered, and both give points. Posts of words alone, in which
//! nobody can take part, are in no figure.

use std::sync::LazyLock;

use rusqlite::Row;

use crate::{
    Content, Db, GroupId, MemberId, Moment, PostId, StoreError, content, time, values::List,
};

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
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Span {
    /// The group.
    pub group_id: GroupId,
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
    pub member_id: MemberId,
    /// Their name.
    pub name: String,
    /// Points in all.
    pub points: f64,
    /// Problems solved.
    pub solved: u32,
    /// Problems tried.
    pub tried: u32,
    /// Problems solved without a wrong move or a hint.
    pub first_try: u32,
    /// Questions answered.
    pub answered: u32,
}

/// One member's part.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberFigures {
    /// The member.
    pub member_id: MemberId,
    /// Their name.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when they belong to it.
    pub joined_at: Moment,
    /// Problems tried.
    pub tried: u32,
    /// Problems solved.
    pub solved: u32,
    /// Problems solved without a wrong move or a hint.
    pub first_try: u32,
    /// Questions answered.
    pub answered: u32,
    /// Points in all.
    pub points: f64,
    /// Hint steps taken.
    pub hints: u32,
}

/// How one post went.
#[derive(Clone, Debug, PartialEq)]
pub struct PostFigures {
    /// The post.
    pub post_id: PostId,
    /// Its number.
    pub number: i64,
    /// Its topic.
    pub topic: Option<String>,
    /// What it holds: a problem or a question.
    pub content: Content,
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
    /// Problems of it that were posted.
    pub posts: u32,
    /// Attempts at them.
    pub tried: u32,
    /// Attempts that solved.
    pub solved: u32,
    /// Attempts that solved without a wrong move or a hint.
    pub first_try: u32,
    /// Questions of it that were posted.
    pub questions: u32,
    /// Members' answers to them, one a member and question.
    pub answered: u32,
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
    /// What was said to them, as facts; none in a verdict from before these were kept.
    pub facts: Option<serde_json::Value>,
    /// The reason told to them in such a verdict.
    pub why: String,
}

/// The posts of a [`Span`], with what they hold; `?1` to `?5` are the span.
static COVERED: LazyLock<String> = LazyLock::new(|| {
    format!(
        "WITH covered AS MATERIALIZED (
            SELECT o.id, o.number, o.opened_at, {}, t.name AS topic
            FROM posts o JOIN contents c ON c.id = o.content_id {}
            WHERE o.group_id = ?1 AND (o.state IN ('closing', 'closed') OR (?5 AND o.state = 'open'))
              AND c.kind <> 'words'
              AND (?2 IS NULL OR o.opened_at >= ?2)
              AND (?3 IS NULL OR o.opened_at < ?3)
              AND (?4 IS NULL OR t.name = ?4)
        )",
        content::COLUMNS,
        content::JOINS
    )
});

/// Sums of one set of attempts. Points are kept in hundredths; rounding makes equal sums equal in
/// whichever order they were added.
const SUMS: &str = "sum(c.kind = 'problem') AS tried,
        sum(a.state = 'solved') AS solved,
        sum(a.first_try) AS first_try,
        sum(c.kind = 'question') AS answered,
        round(sum(a.points), 2) AS points";

impl Span {
    /// All posts of a group.
    pub fn all(group_id: GroupId) -> Self {
        Self {
            group_id,
            from: None,
            to: None,
            topic: None,
            counting: Counting::default(),
        }
    }

    fn params(&self) -> (GroupId, Option<String>, Option<String>, Option<&str>, bool) {
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
        questions: row.get("questions")?,
        answered: row.get("answered")?,
    })
}

impl Db<'_> {
    /// Points by member, most first, then by name. Members without an attempt are left out.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn leaderboard(&self, span: &Span) -> Result<Vec<MemberPoints>, StoreError> {
        // CROSS JOIN keeps the order written: from the posts to their attempts by the primary key.
        self.all(
            &format!("{}, sums AS (
                    SELECT a.member_id, {SUMS} FROM covered c CROSS JOIN attempts a ON a.post_id = c.id
                    GROUP BY a.member_id
                )
                SELECT m.id, m.name, s.* FROM sums s JOIN members m ON m.id = s.member_id
                ORDER BY s.points DESC, m.name, m.id", *COVERED),
            span.params(),
            |row| {
                Ok(MemberPoints {
                    member_id: row.get("id")?,
                    name: row.get("name")?,
                    points: row.get("points")?,
                    solved: row.get("solved")?,
                    tried: row.get("tried")?,
                    first_try: row.get("first_try")?,
                    answered: row.get("answered")?,
                })
            },
        )
    }

    /// Every member's part, by name, members without an attempt among them.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn member_figures(&self, span: &Span) -> Result<Vec<MemberFigures>, StoreError> {
        self.all(
            &format!("{}, sums AS (
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
                       coalesce(s.answered, 0) AS answered, coalesce(x.hints, 0) AS hints
                FROM members m LEFT JOIN sums s ON s.member_id = m.id
                               LEFT JOIN steps x ON x.member_id = m.id
                WHERE m.group_id = ?1
                ORDER BY m.name, m.id", *COVERED),
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
                    answered: row.get("answered")?,
                    points: row.get("points")?,
                    hints: row.get("hints")?,
                })
            },
        )
    }

    /// How each post went, in the order of their numbers.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn post_figures(&self, span: &Span) -> Result<Vec<PostFigures>, StoreError> {
        self.all(
            &format!(
                "{}
                SELECT c.*, count(a.member_id) AS tried,
                       coalesce(sum(a.state = 'solved'), 0) AS solved,
                       coalesce(sum(a.first_try), 0) AS first_try,
                       (SELECT count(*) FROM hints h WHERE h.post_id = c.id) AS hints
                FROM covered c LEFT JOIN attempts a ON a.post_id = c.id
                GROUP BY c.id ORDER BY c.number",
                *COVERED
            ),
            span.params(),
            |row| {
                Ok(PostFigures {
                    post_id: row.get("id")?,
                    number: row.get("number")?,
                    topic: row.get("topic")?,
                    content: content::read(row)?,
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
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn topic_figures(&self, span: &Span) -> Result<Vec<TopicFigures>, StoreError> {
        self.all(
            &format!(
                "{}
                SELECT c.topic, count(DISTINCT iif(c.kind = 'problem', c.id, NULL)) AS posts,
                       count(DISTINCT iif(c.kind = 'question', c.id, NULL)) AS questions,
                       count(iif(c.kind = 'problem', a.member_id, NULL)) AS tried,
                       count(iif(c.kind = 'question', a.member_id, NULL)) AS answered,
                       coalesce(sum(a.state = 'solved'), 0) AS solved,
                       coalesce(sum(a.first_try), 0) AS first_try
                FROM covered c LEFT JOIN attempts a ON a.post_id = c.id
                WHERE c.topic IS NOT NULL GROUP BY c.topic ORDER BY c.topic",
                *COVERED
            ),
            span.params(),
            read_topic,
        )
    }

    /// Whether any post falls into the span.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn has_posts(&self, span: &Span) -> Result<bool, StoreError> {
        Ok(self
            .maybe_one(
                &format!("{} SELECT EXISTS (SELECT 1 FROM covered)", *COVERED),
                span.params(),
                |row| row.get(0),
            )?
            .unwrap_or(false))
    }

    /// Ids and names of members with an attempt at a post of the span, by name.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn took_part(&self, span: &Span) -> Result<Vec<(MemberId, String)>, StoreError> {
        self.all(
            &format!("{}
                SELECT m.id, m.name FROM members m
                WHERE m.id IN (SELECT a.member_id FROM covered c CROSS JOIN attempts a ON a.post_id = c.id)
                ORDER BY m.name, m.id", *COVERED),
            span.params(),
            |row| Ok((row.get(0)?, row.get(1)?)),
        )
    }

    /// A member's points in all the posts they took part in, open ones included; added up as in the
    /// leaderboard.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn points_of_member(&self, group: GroupId, member: MemberId) -> Result<f64, StoreError> {
        let span = Span {
            counting: Counting::Sent,
            ..Span::all(group)
        };
        let (group, from, to, topic, sent) = span.params();
        Ok(self
            .maybe_one(
                &format!(
                    "{}
                    SELECT coalesce(s.points, 0.0) FROM (
                        SELECT {SUMS} FROM covered c JOIN attempts a ON a.post_id = c.id
                        WHERE a.member_id = ?6) s",
                    *COVERED
                ),
                (group, from, to, topic, sent, member),
                |row| row.get(0),
            )?
            .unwrap_or(0.0))
    }

    /// The wrong first moves that came up for a post, the commonest first, then by move. A member who
    /// sent the same one twice counts once.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn wrong_first_moves(&self, post: PostId) -> Result<Vec<WrongFirst>, StoreError> {
        // With one min() in a query, SQLite takes the plain columns from the row that has the minimum:
        // https://www.sqlite.org/lang_select.html#bareagg
        self.all(
            "SELECT v.wrong_first, count(DISTINCT r.member_id) AS members, min(r.id) AS first,
                    v.refutation, v.facts, v.why
             FROM replies r JOIN verdicts v ON v.reply_id = r.id AND v.current = 1
             WHERE r.post_id = ?1 AND v.verdict = 'wrong' AND v.wrong_first IS NOT NULL
             GROUP BY v.wrong_first ORDER BY members DESC, v.wrong_first",
            [post],
            |row| {
                Ok(WrongFirst {
                    san: row.get("wrong_first")?,
                    members: row.get("members")?,
                    refutation: row.get::<_, List>("refutation")?.0,
                    facts: row.get("facts")?,
                    why: row.get("why")?,
                })
            },
        )
    }
}

#[cfg(test)]
mod tests;
