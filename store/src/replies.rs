//! Replies: what members sent for a post, kept before anything else is done with it.

use rusqlite::{Row, params};

use crate::{
    CoachWords, Db, Example, Gone, GroupId, MemberId, Moment, PostId, ReplyId, StoreError, Tx,
    VerdictRow, Via, coach_words, examples, talk, time, verdicts,
};

/// A reply to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewReply {
    /// The post it answers.
    pub post_id: PostId,
    /// Who sent it.
    pub member_id: MemberId,
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
    pub id: ReplyId,
    /// False when the source had been kept before: a replay, and nothing was written.
    pub new: bool,
}

/// A reply.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Reply {
    /// Its id.
    pub id: ReplyId,
    /// The post it answers.
    pub post_id: PostId,
    /// Who sent it.
    pub member_id: MemberId,
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
    /// Whether its sender coaches the group.
    pub coach: bool,
    /// The verdict that counts; `None` while it is not judged.
    pub verdict: Option<VerdictRow>,
    /// What a coach settled it with instead of a verdict, if one did.
    pub words: Option<CoachWords>,
    /// Since when its words are out of the group's sight, where answers are open.
    pub gone: Option<Gone>,
    /// Whether a coach would show it as an example, and its writer's leave.
    pub example: Option<Example>,
}

/// A reply that was kept and never judged, as after a crash between the two.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unjudged {
    /// The reply.
    pub reply: Reply,
    /// The group it belongs to.
    pub group_id: GroupId,
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
    "SELECT r.*, m.name AS member_name, m.coach AS member_coach, v.id AS verdict_id, v.verdict, v.points,
        v.moves, v.refutation, v.line, v.facts, v.why, v.message, v.wrong_first, v.by_coach, v.given_at,
        w.words AS coach_words, w.by_id AS words_by_id, b.name AS words_by, w.given_at AS words_at,
        w.told_at AS words_told_at, g.name AS gone_name, x.words AS example_words,
        x.asked_at AS example_asked_at, x.leave AS example_leave, x.said_at AS example_said_at
    FROM replies r JOIN members m ON m.id = r.member_id
    LEFT JOIN verdicts v ON v.reply_id = r.id AND v.current = 1
    LEFT JOIN coach_words w ON w.reply_id = r.id
    LEFT JOIN members b ON b.id = w.by_id
    LEFT JOIN members g ON g.id = r.gone_by
    LEFT JOIN examples x ON x.reply_id = r.id";

fn read_with_verdict(row: &Row<'_>) -> rusqlite::Result<ReplyOf> {
    Ok(ReplyOf {
        reply: read(row)?,
        name: row.get("member_name")?,
        coach: row.get("member_coach")?,
        words: coach_words::read_maybe(row)?,
        gone: talk::read_gone(row)?,
        example: examples::read_maybe(row)?,
        verdict: match row.get::<_, Option<i64>>("verdict_id")? {
            Some(id) => Some(verdicts::read(row, id, row.get("id")?)?),
            None => None,
        },
    })
}

impl Db<'_> {
    /// A reply by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn reply(&self, id: ReplyId) -> Result<Option<Reply>, StoreError> {
        self.maybe_one("SELECT * FROM replies WHERE id = ?1", [id], read)
    }

    /// The reply kept from the chat's message `source`.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn reply_by_source(&self, source: &str) -> Result<Option<Reply>, StoreError> {
        self.maybe_one("SELECT * FROM replies WHERE source = ?1", [source], read)
    }

    /// The replies to a post with their current verdicts, in the order they came.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn replies_to(&self, post: PostId) -> Result<Vec<ReplyOf>, StoreError> {
        self.all(
            &format!("{WITH_VERDICT} WHERE r.post_id = ?1 ORDER BY r.id"),
            [post],
            read_with_verdict,
        )
    }

    /// One member's replies to a post with their current verdicts, in the order they came.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn replies_of(&self, post: PostId, member: MemberId) -> Result<Vec<ReplyOf>, StoreError> {
        self.all(
            &format!("{WITH_VERDICT} WHERE r.post_id = ?1 AND r.member_id = ?2 ORDER BY r.id"),
            (post, member),
            read_with_verdict,
        )
    }

    /// When the latest reply to a post came, or the latest message that may be one.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn last_received(&self, post: PostId) -> Result<Option<Moment>, StoreError> {
        self.maybe_one(
            "SELECT received_at FROM replies WHERE post_id = ?1
             UNION ALL SELECT received_at FROM inbox WHERE post_id = ?1
             ORDER BY received_at DESC LIMIT 1",
            [post],
            |row| time::get(row, "received_at"),
        )
    }

    /// How many replies a member has sent.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn reply_count(&self, member: MemberId) -> Result<u32, StoreError> {
        Ok(self
            .maybe_one(
                "SELECT count(*) FROM replies WHERE member_id = ?1",
                [member],
                |row| row.get(0),
            )?
            .unwrap_or(0))
    }

    /// Replies that were kept and never judged, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn unjudged_replies(&self) -> Result<Vec<Unjudged>, StoreError> {
        self.all(
            "SELECT r.*, o.group_id FROM replies r JOIN posts o ON o.id = r.post_id
             WHERE NOT EXISTS (SELECT 1 FROM verdicts v WHERE v.reply_id = r.id AND v.current = 1)
             ORDER BY r.id",
            [],
            |row| {
                Ok(Unjudged {
                    reply: read(row)?,
                    group_id: row.get("group_id")?,
                })
            },
        )
    }
}

impl Tx<'_> {
    /// Keeps a reply. The same source twice is kept once, and the first one's id comes back.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
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

    /// Gives a reply another text that is to be judged anew. It counts from now on: what was taken or
    /// given up between the two comes before it.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn renew_reply(&self, reply: ReplyId, text: &str) -> Result<(), StoreError> {
        self.set_reply_text(reply, text)?;
        self.run(
            "UPDATE hints SET after_reply = ?1 - 1 WHERE after_reply = ?1",
            [reply],
        )?;
        self.run(
            "UPDATE attempts SET gave_up_after = ?1 - 1 WHERE gave_up_after = ?1",
            [reply],
        )?;
        Ok(())
    }

    /// Replaces a reply's text, as when its sender edited or took back the message.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_reply_text(&self, reply: ReplyId, text: &str) -> Result<(), StoreError> {
        self.run_one(
            "reply",
            reply,
            "UPDATE replies SET text = ?2 WHERE id = ?1",
            params![reply, text],
        )
    }

    /// Takes a reply's words out of the group's sight, or (`None`) puts them back.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_reply_gone(
        &self,
        reply: ReplyId,
        gone: Option<(MemberId, Moment)>,
    ) -> Result<(), StoreError> {
        self.run_one(
            "reply",
            reply,
            "UPDATE replies SET gone_by = ?2, gone_at = ?3 WHERE id = ?1",
            params![
                reply,
                gone.map(|(by, _)| by),
                time::maybe(gone.map(|(_, at)| at))
            ],
        )
    }

    /// Forgets a reply with its verdicts; says whether there was one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn delete_reply(&self, reply: ReplyId) -> Result<bool, StoreError> {
        Ok(self.run("DELETE FROM replies WHERE id = ?1", [reply])? > 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        Verdict,
        fixture::{Fixture, at, new_group, new_reply, new_verdict, open_post},
    };

    fn with_post(f: &Fixture) -> (PostId, MemberId) {
        let group = f.group;
        f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 10)?;
            Ok((post, tx.upsert_member(group, "u1", "Ana", at(0))?))
        })
    }

    #[test]
    fn the_same_message_counts_once() {
        let f = Fixture::new();
        let (post, ana) = with_post(&f);
        let first = f.write(move |tx| tx.insert_reply(&new_reply(post, ana, Some("m1"), "Rd7")));
        let again = f.write(move |tx| tx.insert_reply(&new_reply(post, ana, Some("m1"), "Rd7")));
        assert!(first.new && !again.new);
        assert_eq!(first.id, again.id);
        // Replies entered by hand have no source, and each is its own.
        let by_hand = f.write(move |tx| {
            Ok([
                tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?,
                tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?,
            ])
        });
        assert!(by_hand[0].new && by_hand[1].new && by_hand[0].id != by_hand[1].id);
        assert_eq!(f.read(move |db| db.replies_to(post)).len(), 3);
    }

    #[test]
    fn text_is_kept_as_it_was_written() {
        let f = Fixture::new();
        let (post, ana) = with_post(&f);
        for text in [
            "",
            "<script>'; DROP TABLE replies; --",
            "♖d8\u{202e}\0 x",
            &"q".repeat(50_000),
        ] {
            let text = text.to_owned();
            let id = f
                .write({
                    let text = text.clone();
                    move |tx| tx.insert_reply(&new_reply(post, ana, None, &text))
                })
                .id;
            assert_eq!(f.read(move |db| db.reply(id)).unwrap().text, text);
        }
    }

    #[test]
    fn replies_come_with_the_verdict_that_counts() {
        let f = Fixture::new();
        let (post, ana) = with_post(&f);
        let group = f.group;
        let (judged, bare) = f.write(move |tx| {
            let bruno = tx.upsert_member(group, "u2", "Bruno", at(0))?;
            let judged = tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?.id;
            tx.insert_verdict(&new_verdict(judged, Verdict::Unclear, "Rd7"))?;
            tx.insert_verdict(&new_verdict(judged, Verdict::Wrong, "Rd7"))?;
            Ok((
                judged,
                tx.insert_reply(&new_reply(post, bruno, None, "Rd6"))?.id,
            ))
        });
        let all = f.read(move |db| db.replies_to(post));
        assert_eq!(all.len(), 2);
        assert_eq!((all[0].reply.id, all[0].name.as_str()), (judged, "Ana"));
        assert_eq!(all[0].verdict.as_ref().unwrap().verdict, Verdict::Wrong);
        assert_eq!(all[0].verdict.as_ref().unwrap().reply_id, judged);
        assert!(all[1].verdict.is_none());
        assert_eq!(f.read(move |db| db.replies_of(post, ana)).len(), 1);
        let unjudged = f.read(|db| db.unjudged_replies());
        assert_eq!(unjudged.len(), 1);
        assert_eq!((unjudged[0].reply.id, unjudged[0].group_id), (bare, group));
    }

    #[test]
    fn a_reply_is_by_a_member_of_the_posts_group() {
        let f = Fixture::new();
        let (post, _) = with_post(&f);
        let stranger = f.write(|tx| {
            let other = tx.insert_group(&new_group("other"))?;
            tx.upsert_member(other, "u9", "Carla", at(0))
        });
        let reply = f
            .store
            .write_blocking(move |tx| tx.insert_reply(&new_reply(post, stranger, None, "Rd7")));
        assert!(reply.unwrap_err().to_string().contains("another group"));
        let nobody = f.store.write_blocking(move |tx| {
            tx.insert_reply(&new_reply(post, MemberId::of(999), None, "Rd7"))
        });
        assert!(matches!(nobody, Err(StoreError::Rule(_))), "{nobody:?}");
    }

    #[test]
    fn a_reply_goes_with_its_verdicts() {
        let f = Fixture::new();
        let (post, ana) = with_post(&f);
        let id = f.write(move |tx| {
            let id = tx.insert_reply(&new_reply(post, ana, None, "Rd7"))?.id;
            tx.insert_verdict(&new_verdict(id, Verdict::Wrong, "Rd7"))?;
            Ok(id)
        });
        assert!(f.write(move |tx| tx.delete_reply(id)));
        assert!(!f.write(move |tx| tx.delete_reply(id)));
        assert!(f.read(move |db| db.verdicts_on(id)).is_empty());
    }
}
