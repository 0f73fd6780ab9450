//! Verdicts on replies. A reply has one that counts; those it replaced are kept.

use crate::ReplyId;
use rusqlite::{Row, params};
use serde_json::Value;

use crate::{
    Db, Moment, Points, StoreError, Tx, Verdict, time,
    values::{List, list},
};

/// A verdict to be kept.
#[derive(Clone, Debug, PartialEq)]
pub struct NewVerdict {
    /// The reply it is on.
    pub reply_id: ReplyId,
    /// In a word.
    pub verdict: Verdict,
    /// Points by the federation's scale, before the group's rules on tries and hints.
    pub points: Points,
    /// Moves read, in SAN.
    pub moves: Vec<String>,
    /// The refuting line, in SAN.
    pub refutation: Vec<String>,
    /// The line of both sides as it stands after the reply, in SAN.
    pub line: Vec<String>,
    /// What is said of the reply, as facts that name their version.
    pub facts: Value,
    /// A coach's own words to the member; may be empty.
    pub words: String,
    /// The wrong first move in SAN, where the reply fails at the first move of the solution; it is what
    /// the count of wrong first moves goes by.
    pub wrong_first: Option<String>,
    /// Whether the coach gave it.
    pub by_coach: bool,
    /// When.
    pub given_at: Moment,
}

/// A verdict.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct VerdictRow {
    /// Its id.
    pub id: i64,
    /// The reply it is on.
    pub reply_id: ReplyId,
    /// In a word.
    pub verdict: Verdict,
    /// Points.
    pub points: Points,
    /// Moves read, in SAN.
    pub moves: Vec<String>,
    /// The refuting line, in SAN.
    pub refutation: Vec<String>,
    /// The line of both sides as it stands after the reply, in SAN.
    pub line: Vec<String>,
    /// What is said of the reply, as facts that name their version; none in a verdict from before they
    /// were kept.
    pub facts: Option<Value>,
    /// A coach's own words to the member; in a verdict of the bot from before facts were kept, the reason
    /// in an English sentence.
    pub why: String,
    /// The whole text to the member, in a verdict from before facts were kept; empty in any other.
    pub message: String,
    /// The wrong first move, if the reply failed there.
    pub wrong_first: Option<String>,
    /// Whether the coach gave it.
    pub by_coach: bool,
    /// When.
    pub given_at: Moment,
}

/// Reads a verdict from a row that may hold a reply too, hence the ids apart.
pub(crate) fn read(row: &Row<'_>, id: i64, reply_id: ReplyId) -> rusqlite::Result<VerdictRow> {
    Ok(VerdictRow {
        id,
        reply_id,
        verdict: row.get("verdict")?,
        points: row.get("points")?,
        moves: row.get::<_, List>("moves")?.0,
        refutation: row.get::<_, List>("refutation")?.0,
        line: row.get::<_, List>("line")?.0,
        facts: row.get("facts")?,
        why: row.get("why")?,
        message: row.get("message")?,
        wrong_first: row.get("wrong_first")?,
        by_coach: row.get("by_coach")?,
        given_at: time::get(row, "given_at")?,
    })
}

fn read_alone(row: &Row<'_>) -> rusqlite::Result<VerdictRow> {
    read(row, row.get("id")?, row.get("reply_id")?)
}

impl Db<'_> {
    /// The verdict that counts on a reply.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn current_verdict(&self, reply: ReplyId) -> Result<Option<VerdictRow>, StoreError> {
        self.maybe_one(
            "SELECT * FROM verdicts WHERE reply_id = ?1 AND current = 1",
            [reply],
            read_alone,
        )
    }

    /// Every verdict ever given on a reply, the first one first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn verdicts_on(&self, reply: ReplyId) -> Result<Vec<VerdictRow>, StoreError> {
        self.all(
            "SELECT * FROM verdicts WHERE reply_id = ?1 ORDER BY id",
            [reply],
            read_alone,
        )
    }
}

impl Tx<'_> {
    /// Keeps a verdict as the one that counts; an earlier one on the reply is kept and counts no more.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_verdict(&self, new: &NewVerdict) -> Result<i64, StoreError> {
        self.run(
            "UPDATE verdicts SET current = 0 WHERE reply_id = ?1 AND current = 1",
            [new.reply_id],
        )?;
        self.insert(
            "INSERT INTO verdicts (reply_id, verdict, points, moves, refutation, line, facts, why, message,
                                   wrong_first, by_coach, given_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, '', ?9, ?10, ?11)",
            params![
                new.reply_id,
                new.verdict,
                new.points,
                list(&new.moves),
                list(&new.refutation),
                list(&new.line),
                new.facts,
                new.words,
                new.wrong_first,
                new.by_coach,
                time::text(new.given_at)
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use crate::{
        StoreError, Tx, Verdict,
        fixture::{Fixture, at, new_reply, new_verdict, open_post},
    };

    #[test]
    fn a_new_verdict_replaces_the_one_that_counts_and_keeps_the_old() {
        let f = Fixture::new();
        let group = f.group;
        let reply = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            Ok(tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?.id)
        });
        assert_eq!(f.read(move |db| db.current_verdict(reply)), None);
        f.write(move |tx| tx.insert_verdict(&new_verdict(reply, Verdict::Wrong, "Rd7")));
        let mut by_coach = new_verdict(reply, Verdict::Solved, "Rd7");
        by_coach.by_coach = true;
        f.write(move |tx| tx.insert_verdict(&by_coach));
        let current = f.read(move |db| db.current_verdict(reply)).unwrap();
        assert_eq!((current.verdict, current.by_coach), (Verdict::Solved, true));
        assert_eq!(
            (&current.moves[..], &current.refutation[..]),
            (&["Rd7".to_owned()][..], &["Rxd7".to_owned()][..])
        );
        let all = f.read(move |db| db.verdicts_on(reply));
        assert_eq!(all.len(), 2);
        assert_eq!(all[0].verdict, Verdict::Wrong);
    }

    #[test]
    fn the_store_itself_allows_one_that_counts() {
        let f = Fixture::new();
        let group = f.group;
        let second = f.store.write_blocking(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            let reply = tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?.id;
            tx.insert_verdict(&new_verdict(reply, Verdict::Wrong, "Rd7"))?;
            tx.insert_verdict(&new_verdict(reply, Verdict::Solved, "Rd7"))?;
            tx.run("UPDATE verdicts SET current = 1", [])
        });
        assert!(matches!(second, Err(StoreError::Rule(_))), "{second:?}");
    }

    #[test]
    fn points_stay_on_the_scale() {
        let f = Fixture::new();
        let group = f.group;
        let (post, ana) = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            let reply = tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?.id;
            tx.insert_verdict(&new_verdict(reply, Verdict::Solved, "Rd7"))?;
            Ok((post, ana))
        });
        let spoil = |tx: &Tx<'_>| tx.run("UPDATE verdicts SET points = 5.5", []);
        let many = f.store.write_blocking(spoil);
        assert!(matches!(many, Err(StoreError::Rule(_))), "{many:?}");
        // What got in all the same is named.
        f.write(move |tx| {
            tx.run("PRAGMA ignore_check_constraints = ON", [])?;
            spoil(tx)
        });
        let damaged = f.store.read_blocking(move |db| db.replies_of(post, ana));
        let Err(StoreError::Damaged(what)) = &damaged else {
            panic!("{damaged:?}");
        };
        assert!(what.contains("5.5 is out of the scale"), "{what}");
    }
}
