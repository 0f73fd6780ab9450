//! Attempts: one member's work on one post.

use crate::{MemberId, PostId, ReplyId};
use rusqlite::{Row, params};

use crate::{
    AttemptState, Db, Moment, Points, StoreError, Tx, time,
    values::{List, list},
};

/// Where a member's work on a post stands and what it is worth so far.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct Attempt {
    /// The post.
    pub post_id: PostId,
    /// The member.
    pub member_id: MemberId,
    /// Where it stands.
    pub state: AttemptState,
    /// The line played so far by both sides, in SAN.
    pub line: Vec<String>,
    /// Points, after the group's rules on tries and hints.
    pub points: Points,
    /// Wrong moves so far.
    pub wrong: u32,
    /// Whether it was solved for full points without a wrong move or a hint.
    pub first_try: bool,
    /// When it began.
    pub started_at: Moment,
    /// When it was solved or given up.
    pub ended_at: Option<Moment>,
    /// When the member gave up, whatever the coach said since.
    pub gave_up_at: Option<Moment>,
    /// The member's last reply before giving up, 0 for none; `None` unless they gave up.
    pub gave_up_after: Option<ReplyId>,
}

/// An attempt with its member's name.
#[derive(Clone, Debug, PartialEq)]
pub struct AttemptOf {
    /// The attempt.
    pub attempt: Attempt,
    /// The member's name.
    pub name: String,
}

pub(crate) fn read(row: &Row<'_>) -> rusqlite::Result<Attempt> {
    Ok(Attempt {
        post_id: row.get("post_id")?,
        member_id: row.get("member_id")?,
        state: row.get("state")?,
        line: row.get::<_, List>("line")?.0,
        points: row.get("points")?,
        wrong: row.get("wrong")?,
        first_try: row.get("first_try")?,
        started_at: time::get(row, "started_at")?,
        ended_at: time::get_maybe(row, "ended_at")?,
        gave_up_at: time::get_maybe(row, "gave_up_at")?,
        gave_up_after: row.get("gave_up_after")?,
    })
}

impl Db<'_> {
    /// A member's attempt at a post, if they began one.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn attempt(&self, post: PostId, member: MemberId) -> Result<Option<Attempt>, StoreError> {
        self.maybe_one(
            "SELECT * FROM attempts WHERE post_id = ?1 AND member_id = ?2",
            (post, member),
            read,
        )
    }

    /// All attempts at a post with the members' names: most points first, then the earliest to end,
    /// those not ended last.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn attempts_at(&self, post: PostId) -> Result<Vec<AttemptOf>, StoreError> {
        self.all(
            "SELECT a.*, m.name FROM attempts a JOIN members m ON m.id = a.member_id
             WHERE a.post_id = ?1
             ORDER BY a.points DESC, a.ended_at IS NULL, a.ended_at, m.name, m.id",
            [post],
            |row| {
                Ok(AttemptOf {
                    attempt: read(row)?,
                    name: row.get("name")?,
                })
            },
        )
    }

    /// All attempts of a member, in the order of the posts.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn attempts_by_member(&self, member: MemberId) -> Result<Vec<Attempt>, StoreError> {
        self.all(
            "SELECT * FROM attempts WHERE member_id = ?1 ORDER BY post_id",
            [member],
            read,
        )
    }
}

impl Tx<'_> {
    /// Keeps where an attempt stands, in place of what was kept of it before; the moment it began stays
    /// the first one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn upsert_attempt(&self, attempt: &Attempt) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO attempts (post_id, member_id, state, line, points, wrong, first_try, started_at,
                                   ended_at, gave_up_at, gave_up_after)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)
             ON CONFLICT (post_id, member_id) DO UPDATE SET
                 state = excluded.state, line = excluded.line, points = excluded.points,
                 wrong = excluded.wrong, first_try = excluded.first_try, ended_at = excluded.ended_at,
                 gave_up_at = excluded.gave_up_at, gave_up_after = excluded.gave_up_after",
            params![
                attempt.post_id,
                attempt.member_id,
                attempt.state,
                list(&attempt.line),
                attempt.points,
                attempt.wrong,
                attempt.first_try,
                time::text(attempt.started_at),
                time::maybe(attempt.ended_at),
                time::maybe(attempt.gave_up_at),
                attempt.gave_up_after
            ],
        )?;
        Ok(())
    }

    /// Forgets an attempt; says whether there was one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn delete_attempt(&self, post: PostId, member: MemberId) -> Result<bool, StoreError> {
        Ok(self.run(
            "DELETE FROM attempts WHERE post_id = ?1 AND member_id = ?2",
            (post, member),
        )? > 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, attempt, open_post};

    #[test]
    fn an_attempt_moves_on_and_keeps_its_beginning() {
        let f = Fixture::new();
        let group = f.group;
        let (post, ana) = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 0)?;
            Ok((post, tx.upsert_member(group, "u1", "Ana", at(0))?))
        });
        let playing = attempt(post, ana, AttemptState::Playing, 0.0);
        let mut solved = attempt(post, ana, AttemptState::Solved, 5.0);
        solved.started_at = at(9);
        f.write(move |tx| tx.upsert_attempt(&playing));
        f.write({
            let solved = solved.clone();
            move |tx| tx.upsert_attempt(&solved)
        });
        solved.started_at = at(5);
        assert_eq!(f.read(move |db| db.attempt(post, ana)), Some(solved));
        assert_eq!(f.read(move |db| db.attempts_by_member(ana)).len(), 1);
        assert!(f.write(move |tx| tx.delete_attempt(post, ana)));
        assert!(!f.write(move |tx| tx.delete_attempt(post, ana)));
    }

    #[test]
    fn attempts_at_a_post_come_by_points_then_time() {
        let f = Fixture::new();
        let group = f.group;
        let post = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 0)?;
            for (name, state, points, ended) in [
                ("Late", AttemptState::Solved, 5.0, 30),
                ("Still at it", AttemptState::Playing, 2.0, 0),
                ("Early", AttemptState::Solved, 5.0, 20),
                ("Half", AttemptState::Solved, 2.0, 10),
            ] {
                let member = tx.upsert_member(group, name, name, at(0))?;
                let mut attempt = attempt(post, member, state, points);
                attempt.ended_at = attempt.ended_at.map(|_| at(ended));
                tx.upsert_attempt(&attempt)?;
            }
            Ok(post)
        });
        let names: Vec<_> = f
            .read(move |db| db.attempts_at(post))
            .into_iter()
            .map(|row| row.name)
            .collect();
        assert_eq!(names, ["Early", "Late", "Half", "Still at it"]);
    }
}
