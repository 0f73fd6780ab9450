//! Answers to questions that a coach would show to the group as examples: asked for, allowed by their writers,
//! and what of them is out in a chat.

use rusqlite::{Row, params};
use serde::Serialize;

use crate::{ChatKey, Db, GroupId, Leave, Moment, PostId, ReplyId, StoreError, Tx, time};

/// That a coach would show an answer, and what its writer says to it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Example {
    /// The coach's words beside it; may be empty.
    pub words: String,
    /// When the coach asked for it.
    pub asked_at: Moment,
    /// Its writer's word; `None` before they gave one.
    pub leave: Option<Leave>,
    /// When they gave it.
    pub said_at: Option<Moment>,
}

/// An answer as the group may see it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExampleShown {
    /// The answer.
    pub reply_id: ReplyId,
    /// Its writer's name; `None` where they left that out.
    pub name: Option<String>,
    /// What they wrote.
    pub text: String,
    /// The coach's words beside it; may be empty.
    pub words: String,
}

/// An example that stands in a chat otherwise than it is to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ExampleDue {
    /// The group.
    pub group_id: GroupId,
    /// The post.
    pub post_id: PostId,
    /// The answer, whose writer may be erased since.
    pub reply_id: ReplyId,
    /// Which version of it is to stand there; 0 for none.
    pub version: i64,
}

/// The examples that may be seen, as `seen`: those whose writers allow it, and did not take their words back.
const SEEN: &str = "WITH seen AS (
    SELECT e.reply_id, e.version, e.leave, e.words, r.post_id, r.member_id, r.text
    FROM examples e JOIN replies r ON r.id = e.reply_id
    WHERE e.leave IN ('named', 'nameless') AND r.gone_at IS NULL AND r.text <> '')";

/// Reads the example that comes along in a reply's row.
pub(crate) fn read_maybe(row: &Row<'_>) -> rusqlite::Result<Option<Example>> {
    Ok(match row.get::<_, Option<String>>("example_words")? {
        Some(words) => Some(Example {
            words,
            asked_at: time::get(row, "example_asked_at")?,
            leave: row.get("example_leave")?,
            said_at: time::get_maybe(row, "example_said_at")?,
        }),
        None => None,
    })
}

impl Db<'_> {
    /// Whether a coach would show a reply, and its writer's leave.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn example(&self, reply: ReplyId) -> Result<Option<Example>, StoreError> {
        self.maybe_one(
            "SELECT words, asked_at, leave, said_at FROM examples WHERE reply_id = ?1",
            [reply],
            |row| {
                Ok(Example {
                    words: row.get("words")?,
                    asked_at: time::get(row, "asked_at")?,
                    leave: row.get("leave")?,
                    said_at: time::get_maybe(row, "said_at")?,
                })
            },
        )
    }

    /// The answers to a post that the group may see, in the order they came.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn examples_of(&self, post: PostId) -> Result<Vec<ExampleShown>, StoreError> {
        self.all(
            &format!(
                "{SEEN} SELECT s.reply_id, s.text, s.words,
                     CASE s.leave WHEN 'named' THEN m.name END AS name
                 FROM seen s JOIN members m ON m.id = s.member_id
                 WHERE s.post_id = ?1 ORDER BY s.reply_id"
            ),
            [post],
            |row| {
                Ok(ExampleShown {
                    reply_id: row.get("reply_id")?,
                    name: row.get("name")?,
                    text: row.get("text")?,
                    words: row.get("words")?,
                })
            },
        )
    }

    /// Answers whose writers, in groups of a chat, are still to be asked for their leave, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn leave_to_ask(&self, chat: ChatKey) -> Result<Vec<(ReplyId, Moment)>, StoreError> {
        self.all(
            "SELECT e.reply_id, e.asked_at FROM examples e JOIN replies r ON r.id = e.reply_id
             JOIN posts o ON o.id = r.post_id JOIN groups g ON g.id = o.group_id
             WHERE g.chat = ?1 AND e.told_at IS NULL AND e.leave IS NULL ORDER BY e.asked_at, e.reply_id",
            [chat],
            |row| Ok((row.get("reply_id")?, time::get(row, "asked_at")?)),
        )
    }

    /// Examples at closed posts of a chat that stand there otherwise than they are to.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn examples_due(&self, chat: ChatKey) -> Result<Vec<ExampleDue>, StoreError> {
        self.all(
            &format!(
                "{SEEN}, due AS (
                     SELECT post_id, reply_id, version FROM seen
                     UNION ALL
                     SELECT post_id, reply_id, 0 FROM examples_out WHERE reply_id NOT IN (SELECT reply_id FROM seen))
                 SELECT o.group_id, d.post_id, d.reply_id, d.version FROM due d
                 JOIN posts o ON o.id = d.post_id JOIN groups g ON g.id = o.group_id
                 LEFT JOIN examples_out x ON x.reply_id = d.reply_id
                 WHERE g.chat = ?1 AND o.state = 'closed' AND coalesce(x.version, 0) <> d.version
                 ORDER BY d.reply_id"
            ),
            [chat],
            |row| {
                Ok(ExampleDue {
                    group_id: row.get("group_id")?,
                    post_id: row.get("post_id")?,
                    reply_id: row.get("reply_id")?,
                    version: row.get("version")?,
                })
            },
        )
    }

    /// The chat's message in which an example stands or stood.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn example_message(&self, reply: ReplyId) -> Result<Option<String>, StoreError> {
        Ok(self
            .maybe_one(
                "SELECT message FROM examples_out WHERE reply_id = ?1",
                [reply],
                |row| row.get(0),
            )?
            .flatten())
    }
}

impl Tx<'_> {
    /// Notes that a coach would show an answer, with `words` beside it; a leave that was given stays.
    ///
    /// # Errors
    /// When it is no answer to a question, or the store cannot be written.
    pub fn ask_example(&self, reply: ReplyId, words: &str, now: Moment) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO examples (reply_id, words, asked_at, version)
             VALUES (?1, ?2, ?3, coalesce((SELECT version FROM examples_out WHERE reply_id = ?1), 0) + 1)
             ON CONFLICT (reply_id) DO UPDATE SET words = excluded.words, version = version + 1",
            params![reply, words, time::text(now)],
        )?;
        Ok(())
    }

    /// Forgets that a coach would show an answer, and its writer's leave with it.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn forget_example(&self, reply: ReplyId) -> Result<(), StoreError> {
        self.run("DELETE FROM examples WHERE reply_id = ?1", [reply])?;
        Ok(())
    }

    /// Keeps what an answer's writer says to its being shown.
    ///
    /// # Errors
    /// When nobody asked for it, or the store cannot be written.
    pub fn set_leave(&self, reply: ReplyId, leave: Leave, now: Moment) -> Result<(), StoreError> {
        self.run_one(
            "example",
            reply,
            "UPDATE examples SET leave = ?2, said_at = ?3, version = version + 1 WHERE reply_id = ?1",
            params![reply, leave, time::text(now)],
        )
    }

    /// Notes that an answer's writer was asked for their leave.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn mark_leave_asked(&self, reply: ReplyId, now: Moment) -> Result<(), StoreError> {
        self.run(
            "UPDATE examples SET told_at = ?2 WHERE reply_id = ?1",
            params![reply, time::text(now)],
        )?;
        Ok(())
    }

    /// Notes how an example stands in its chat now: which version, 0 for none, and in which message.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn note_example(&self, due: &ExampleDue, message: Option<&str>) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO examples_out (reply_id, post_id, version, message) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (reply_id) DO UPDATE SET version = excluded.version,
                 message = coalesce(excluded.message, message)",
            params![due.reply_id, due.post_id, due.version, message],
        )?;
        // Of somebody erased nothing is left once it is out of sight.
        self.run(
            "DELETE FROM examples_out WHERE reply_id = ?1 AND version = 0
                 AND NOT EXISTS (SELECT 1 FROM replies WHERE id = ?1)",
            [due.reply_id],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        Content, MemberId, NewContent, NewHolds, NewPost, Written,
        fixture::{Fixture, PRICES, at, new_reply, open_post},
    };

    const ROOM: ChatKey = ChatKey::of("room");

    /// A closed question with an answer of each.
    fn asked(f: &Fixture) -> (PostId, [ReplyId; 2], [MemberId; 2]) {
        let group = f.group;
        f.write(move |tx| {
            let content = tx.insert_content(&NewContent {
                group_id: group,
                topic_id: None,
                source: String::new(),
                holds: NewHolds::Question {
                    asked: Written {
                        words: "Why?".into(),
                        fen: None,
                    },
                    at_reveal: String::new(),
                },
                created_at: at(0),
            })?;
            let item = tx.enqueue_content(content, at(0))?;
            let post = tx.intend_post(&NewPost {
                item,
                nonce: "n1".into(),
                prices: PRICES,
                slot: at(1),
                closes_at: at(60),
                intended_at: at(1),
            })?;
            tx.mark_post_open(post, at(1), None, None)?;
            let ana = tx.upsert_member(group, "ana", "Ana", at(0))?;
            let bo = tx.upsert_member(group, "bo", "Bo", at(0))?;
            let one = tx.insert_reply(&new_reply(post, ana, None, "The file"))?.id;
            let two = tx.insert_reply(&new_reply(post, bo, None, "The king"))?.id;
            Ok((post, [one, two], [ana, bo]))
        })
    }

    fn close(f: &Fixture, post: PostId) {
        f.write(move |tx| {
            tx.mark_post_closing(post)?;
            tx.mark_post_closed(post, at(70), None)
        });
    }

    fn due(f: &Fixture) -> Vec<(ReplyId, i64)> {
        let due = f.read(|db| db.examples_due(ROOM));
        due.iter().map(|due| (due.reply_id, due.version)).collect()
    }

    /// Notes that all that is due stands as it is to.
    fn carry(f: &Fixture, message: &'static str) {
        for one in f.read(|db| db.examples_due(ROOM)) {
            f.write(move |tx| tx.note_example(&one, Some(message)));
        }
    }

    #[test]
    fn only_what_was_allowed_is_seen_and_only_of_a_closed_post_due() {
        let f = Fixture::new();
        let (post, [one, two], _) = asked(&f);
        let seen = || f.read(move |db| db.examples_of(post));
        f.write(move |tx| {
            tx.ask_example(one, "Well seen.", at(5))?;
            tx.ask_example(two, "", at(6))
        });
        assert_eq!(
            f.read(|db| db.leave_to_ask(ROOM)),
            [(one, at(5)), (two, at(6))]
        );
        f.write(move |tx| tx.mark_leave_asked(one, at(7)));
        assert_eq!(f.read(|db| db.leave_to_ask(ROOM)), [(two, at(6))]);
        assert!(seen().is_empty(), "nobody has said yes");
        f.write(move |tx| {
            tx.set_leave(one, Leave::Nameless, at(8))?;
            tx.set_leave(two, Leave::Refused, at(8))
        });
        let shown = seen();
        assert_eq!(shown.len(), 1);
        assert_eq!(
            (&shown[0].name, shown[0].text.as_str()),
            (&None, "The file")
        );
        assert_eq!(shown[0].words, "Well seen.");
        assert!(due(&f).is_empty(), "the post is open");
        close(&f, post);
        assert_eq!(due(&f).len(), 1);
        f.write(move |tx| tx.set_leave(one, Leave::Named, at(9)));
        assert_eq!(seen()[0].name.as_deref(), Some("Ana"));
        let reply = f.read(move |db| db.replies_to(post))[0].clone();
        assert_eq!(reply.example.expect("asked for").leave, Some(Leave::Named));
    }

    #[test]
    fn what_stands_in_the_chat_follows_the_leave() {
        let f = Fixture::new();
        let (post, [one, _], [ana, _]) = asked(&f);
        close(&f, post);
        f.write(move |tx| {
            tx.ask_example(one, "", at(5))?;
            tx.set_leave(one, Leave::Named, at(6))
        });
        assert_eq!(due(&f), [(one, 2)]);
        carry(&f, "m1");
        assert!(due(&f).is_empty());
        // Taken back, and given again: the same message.
        f.write(move |tx| tx.set_leave(one, Leave::Refused, at(7)));
        assert_eq!(due(&f), [(one, 0)]);
        carry(&f, "m1");
        assert!(due(&f).is_empty());
        f.write(move |tx| tx.forget_example(one));
        f.write(move |tx| {
            tx.ask_example(one, "", at(8))?;
            tx.set_leave(one, Leave::Nameless, at(9))
        });
        assert_eq!(due(&f).len(), 1);
        carry(&f, "m1");
        assert_eq!(
            f.read(move |db| db.example_message(one)).as_deref(),
            Some("m1")
        );
        // Forgotten and asked for anew before that was seen: another version.
        f.write(move |tx| {
            tx.forget_example(one)?;
            tx.ask_example(one, "New words", at(10))?;
            tx.set_leave(one, Leave::Nameless, at(11))
        });
        assert_eq!(due(&f).len(), 1);
        carry(&f, "m1");
        // Its writer is erased: the message is to be cleared, and then nothing is kept of it.
        f.write(move |tx| tx.delete_member(ana).map(drop));
        assert_eq!(due(&f), [(one, 0)]);
        carry(&f, "m1");
        assert!(due(&f).is_empty());
        assert_eq!(f.read(move |db| db.example_message(one)), None);
    }

    #[test]
    fn words_that_were_taken_back_and_other_replies_are_no_examples() {
        let f = Fixture::new();
        let (post, [one, _], [ana, _]) = asked(&f);
        f.write(move |tx| {
            tx.ask_example(one, "", at(5))?;
            tx.set_leave(one, Leave::Named, at(6))?;
            tx.set_reply_gone(one, Some((ana, at(7))))
        });
        assert!(f.read(move |db| db.examples_of(post)).is_empty());
        let group = f.group;
        let refused = f.store.write_blocking(move |tx| {
            let problem = open_post(tx, group, 3, None, 200)?;
            let reply = tx.insert_reply(&new_reply(problem, ana, None, "Rd7"))?.id;
            tx.ask_example(reply, "", at(9))
        });
        assert!(
            refused
                .unwrap_err()
                .to_string()
                .contains("only answers to questions")
        );
        let kept = f.read(move |db| db.kept_of(ana)).unwrap();
        assert_eq!(
            kept.replies[0].example.as_ref().unwrap().leave,
            Some(Leave::Named)
        );
        assert!(matches!(
            f.read(move |db| db.post(post)).unwrap().content,
            Content::Question { .. }
        ));
    }
}
