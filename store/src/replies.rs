//! Replies: what members sent for a post, kept before anything else is done with it.

use rusqlite::{Row, params};

use crate::{Db, Moment, StoreError, Tx, VerdictRow, Via, time, verdicts};

/// A reply to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewReply {
    /// The post it answers.
    pub post_id: i64,
    /// Who sent it.
    pub member_id: i64,
    /// The chat's id of the message; the same one counts once.
    pub source: Option<String>,
    /// How it came.
    pub via: Via,
    /// What was written, untouched.
    pub text: String,
    /// When.
    pub received_at: Moment,
}

/// Where a reply was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Inserted {
    /// The reply's id.
    pub id: i64,
    /// False when the source had been kept before: a replay, and nothing was written.
    pub new: bool,
}

/// A reply.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Reply {
    /// Its id.
    pub id: i64,
    /// The post it answers.
    pub post_id: i64,
    /// Who sent it.
    pub member_id: i64,
    /// The chat's id of the message.
    pub source: Option<String>,
    /// How it came.
    pub via: Via,
    /// What was written.
    pub text: String,
    /// When.
    pub received_at: Moment,
}

/// A reply with its sender's name and its current verdict.
#[derive(Clone, Debug, PartialEq)]
pub struct ReplyOf {
    /// The reply.
    pub reply: Reply,
    /// The sender's name.
    pub name: String,
    /// The verdict that counts; `None` while it is not judged.
    pub verdict: Option<VerdictRow>,
}

/// A reply that was kept and never judged, as after a crash between the two.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unjudged {
    /// The reply.
    pub reply: Reply,
    /// The group it belongs to.
    pub group_id: i64,
    /// The position of its post.
    pub position_id: i64,
}

pub(crate) fn read(row: &Row<'_>) -> rusqlite::Result<Reply> {
    Ok(Reply {
        id: row.get("id")?,
        post_id: row.get("post_id")?,
        member_id: row.get("member_id")?,
        source: row.get("source")?,
        via: row.get("via")?,
        text: row.get("text")?,
        received_at: time::get(row, "received_at")?,
    })
}

const WITH_VERDICT: &str =
    "SELECT r.*, m.name AS member_name, v.id AS verdict_id, v.verdict, v.points,
        v.moves, v.refutation, v.line, v.why, v.message, v.wrong_first, v.by_coach, v.given_at
    FROM replies r JOIN members m ON m.id = r.member_id
    LEFT JOIN verdicts v ON v.reply_id = r.id AND v.current = 1";

fn read_with_verdict(row: &Row<'_>) -> rusqlite::Result<ReplyOf> {
    Ok(ReplyOf {
        reply: read(row)?,
        name: row.get("member_name")?,
        verdict: match row.get::<_, Option<i64>>("verdict_id")? {
            Some(id) => Some(verdicts::read(row, id, row.get("id")?)?),
            None => None,
        },
    })
}

impl Db<'_> {
    /// A reply by id.
    pub fn reply(&self, id: i64) -> Result<Option<Reply>, StoreError> {
        self.maybe_one("SELECT * FROM replies WHERE id = ?1", [id], read)
    }

    /// The reply kept from the chat's message `source`.
    pub fn reply_by_source(&self, source: &str) -> Result<Option<Reply>, StoreError> {
        self.maybe_one("SELECT * FROM replies WHERE source = ?1", [source], read)
    }

    /// The replies to a post with their current verdicts, in the order they came.
    pub fn replies_to(&self, post: i64) -> Result<Vec<ReplyOf>, StoreError> {
        self.all(
            &format!("{WITH_VERDICT} WHERE r.post_id = ?1 ORDER BY r.id"),
            [post],
            read_with_verdict,
        )
    }

    /// One member's replies to a post with their current verdicts, in the order they came.
    pub fn replies_of(&self, post: i64, member: i64) -> Result<Vec<ReplyOf>, StoreError> {
        self.all(
            &format!("{WITH_VERDICT} WHERE r.post_id = ?1 AND r.member_id = ?2 ORDER BY r.id"),
            [post, member],
            read_with_verdict,
        )
    }

    /// All replies of a member with their current verdicts, in the order they came.
    pub fn replies_by_member(&self, member: i64) -> Result<Vec<ReplyOf>, StoreError> {
        self.all(
            &format!("{WITH_VERDICT} WHERE r.member_id = ?1 ORDER BY r.id"),
            [member],
            read_with_verdict,
        )
    }

    /// Replies that were kept and never judged, the oldest first.
    pub fn unjudged_replies(&self) -> Result<Vec<Unjudged>, StoreError> {
        self.all(
            "SELECT r.*, o.group_id, o.position_id FROM replies r JOIN posts o ON o.id = r.post_id
             WHERE NOT EXISTS (SELECT 1 FROM verdicts v WHERE v.reply_id = r.id AND v.current = 1)
             ORDER BY r.id",
            [],
            |row| {
                Ok(Unjudged {
                    reply: read(row)?,
                    group_id: row.get("group_id")?,
                    position_id: row.get("position_id")?,
                })
            },
        )
    }
}

impl Tx<'_> {
    /// Keeps a reply. The same source twice is kept once, and the first one's id comes back.
    pub fn insert_reply(&self, new: &NewReply) -> Result<Inserted, StoreError> {
        if let Some(source) = &new.source
            && let Some(kept) = self.reply_by_source(source)?
        {
            return Ok(Inserted {
                id: kept.id,
                new: false,
            });
        }
        let id = self.insert(
            "INSERT INTO replies (post_id, member_id, source, via, text, received_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            params![
                new.post_id,
                new.member_id,
                new.source,
                new.via,
                new.text,
                time::text(new.received_at)
            ],
        )?;
        Ok(Inserted { id, new: true })
    }

    /// Replaces a reply's text, as when its sender edited or took back the message.
    pub fn set_reply_text(&self, reply: i64, text: &str) -> Result<(), StoreError> {
        self.run_one(
            "reply",
            reply,
            "UPDATE replies SET text = ?2 WHERE id = ?1",
            params![reply, text],
        )
    }

    /// Forgets a reply with its verdicts; says whether there was one.
    pub fn delete_reply(&self, reply: i64) -> Result<bool, StoreError> {
        Ok(self.run("DELETE FROM replies WHERE id = ?1", [reply])? > 0)
    }
}
