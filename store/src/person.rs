//! What is kept of one person: handing it over, and erasing it.

use rusqlite::Row;
use serde::Serialize;

use crate::{
    Attempt, Db, Deed, Example, Gone, MemberId, Moment, Mute, Reply, Store, StoreError, Tx,
    VerdictRow, attempts, replies, talk, time,
};

/// Everything kept of one member of one group.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KeptPerson {
    /// The chat's id of the person.
    pub chat_user: String,
    /// The name shown.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when they belong to it.
    pub joined_at: Moment,
    /// The group's name.
    pub group: String,
    /// What they replied, in the order it came.
    pub replies: Vec<KeptReply>,
    /// Where each attempt stands, in the order of the posts.
    pub attempts: Vec<KeptAttempt>,
    /// Hint steps taken, in the order they were given.
    pub hints: Vec<KeptHint>,
    /// What they said in the room, in order; what was taken back or hidden among it.
    pub talk: Vec<KeptTalk>,
    /// Since when further devices or accounts count as theirs.
    pub devices: Vec<Moment>,
    /// Whether they are kept from talking.
    pub muted: Option<Mute>,
    /// Since when they are shut out, if they are.
    pub removed_at: Option<Moment>,
    /// The language they chose, as a BCP 47 tag.
    pub chosen_language: Option<String>,
    /// The one their client asked for when it was last heard of.
    pub client_language: Option<String>,
    /// What the coaches did that was about them, in order.
    pub deeds: Vec<KeptDeed>,
}

/// Something a coach did that was about the member.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct KeptDeed {
    /// What.
    pub deed: Deed,
    /// In more words; may be empty.
    pub note: String,
    /// When.
    pub done_at: Moment,
}

/// A reply, with every verdict given on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KeptReply {
    /// Number of the post.
    pub number: i64,
    /// The reply.
    #[serde(flatten)]
    pub reply: Reply,
    /// The verdicts, the first one first; the last one counts.
    pub verdicts: Vec<VerdictRow>,
    /// A coach's private answer to it; empty where a coach noted that it needs none.
    pub coach_words: Option<String>,
    /// Whether a coach would show it as an example, and the leave that was given.
    pub example: Option<Example>,
}

/// An attempt.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KeptAttempt {
    /// Number of the post.
    pub number: i64,
    /// The attempt.
    #[serde(flatten)]
    pub attempt: Attempt,
}

/// A hint step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct KeptHint {
    /// Number of the post.
    pub number: i64,
    /// On which half-move of the line it was asked for, from 0.
    pub ply: u16,
    /// 1 to 3.
    pub step: u8,
    /// When.
    pub given_at: Moment,
}

/// A line of talk.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct KeptTalk {
    /// What was said.
    pub text: String,
    /// When.
    pub said_at: Moment,
    /// When and by whom it was taken out of sight, if it was.
    pub gone: Option<Gone>,
}

impl Db<'_> {
    /// Everything kept of a member; `None` when there is no such member.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn kept_of(&self, member: MemberId) -> Result<Option<KeptPerson>, StoreError> {
        let Some(person) = self.member(member)? else {
            return Ok(None);
        };
        let with_number = |row: &Row<'_>| row.get::<_, i64>("number");
        let replies = self.all(
            "SELECT r.*, o.number FROM replies r JOIN posts o ON o.id = r.post_id
             WHERE r.member_id = ?1 ORDER BY r.id",
            [member],
            |row| Ok((with_number(row)?, replies::read(row)?)),
        )?;
        Ok(Some(KeptPerson {
            group: self
                .group(person.group_id)?
                .map(|group| group.settings.name)
                .unwrap_or_default(),
            replies: replies
                .into_iter()
                .map(|(number, reply)| {
                    Ok(KeptReply {
                        number,
                        verdicts: self.verdicts_on(reply.id)?,
                        coach_words: self.coach_words(reply.id)?.map(|words| words.words),
                        example: self.example(reply.id)?,
                        reply,
                    })
                })
                .collect::<Result<_, StoreError>>()?,
            attempts: self.all(
                "SELECT a.*, o.number FROM attempts a JOIN posts o ON o.id = a.post_id
                 WHERE a.member_id = ?1 ORDER BY o.number",
                [member],
                |row| {
                    Ok(KeptAttempt {
                        number: with_number(row)?,
                        attempt: attempts::read(row)?,
                    })
                },
            )?,
            hints: self.all(
                "SELECT h.ply, h.step, h.given_at, o.number FROM hints h JOIN posts o ON o.id = h.post_id
                 WHERE h.member_id = ?1 ORDER BY o.number, h.ply, h.step",
                [member],
                |row| {
                    Ok(KeptHint {
                        number: with_number(row)?,
                        ply: row.get("ply")?,
                        step: row.get("step")?,
                        given_at: time::get(row, "given_at")?,
                    })
                },
            )?,
            talk: self.all(
                "SELECT t.text, t.said_at, t.gone_at, t.gone_by, g.name AS gone_name
                 FROM talk t LEFT JOIN members g ON g.id = t.gone_by
                 WHERE t.member_id = ?1 ORDER BY t.id",
                [member],
                |row| {
                    Ok(KeptTalk {
                        text: row.get("text")?,
                        said_at: time::get(row, "said_at")?,
                        gone: talk::read_gone(row)?,
                    })
                },
            )?,
            devices: self.devices(member)?,
            deeds: self
                .deeds_about(member)?
                .into_iter()
                .map(|done| KeptDeed {
                    deed: done.deed,
                    note: done.note,
                    done_at: done.done_at,
                })
                .collect(),
            muted: person.mute,
            removed_at: person.removed_at,
            chosen_language: person.language,
            client_language: person.client_language,
            chat_user: person.chat_user,
            name: person.name,
            coach: person.coach,
            joined_at: person.joined_at,
        }))
    }
}

impl Tx<'_> {
    /// Deletes a member with everything kept of them; says whether there was such a member. Traces may be
    /// left in the unused parts of the files until [`Store::scrub`]; [`Store::erase_member`] does both.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn delete_member(&self, member: MemberId) -> Result<bool, StoreError> {
        // Not tied to a member: what came in may be from somebody who is none.
        self.run(
            "DELETE FROM inbox WHERE EXISTS (SELECT 1 FROM members m JOIN posts o ON o.group_id = m.group_id
                 WHERE m.id = ?1 AND m.chat_user = inbox.chat_user AND o.id = inbox.post_id)",
            [member],
        )?;
        self.run(
            "DELETE FROM held WHERE EXISTS (SELECT 1 FROM members m
                 WHERE m.id = ?1 AND m.group_id = held.group_id AND (m.chat_user = held.chat_user OR EXISTS
                     (SELECT 1 FROM identities i WHERE i.member_id = m.id AND i.chat_user = held.chat_user)))",
            [member],
        )?;
        Ok(self.run("DELETE FROM members WHERE id = ?1", [member])? > 0)
    }
}

impl Store {
    /// Erases a member with everything kept of them, from the store and from the unused parts of its
    /// files; says whether there was such a member. Copies made by [`Store::backup`] before are untouched.
    ///
    /// # Errors
    /// When the store cannot be written. The member is gone all the same if only the scrubbing failed.
    pub async fn erase_member(&self, member: MemberId) -> Result<bool, StoreError> {
        let found = self.write(move |tx| tx.delete_member(member)).await?;
        self.scrub().await?;
        Ok(found)
    }
}

#[cfg(test)]
mod tests {
    use crate::{
        AttemptState, MemberId, Verdict,
        fixture::{Fixture, at, attempt, new_reply, new_verdict, open_post},
    };

    /// Words that stand nowhere else, long enough to spill over pages.
    fn words(n: usize) -> String {
        format!("zugzwanghaft{n} ").repeat(40 + n % 90)
    }

    fn lively(f: &Fixture) -> (MemberId, MemberId) {
        let group = f.group;
        f.write(move |tx| {
            let post = open_post(tx, group, 1, Some("Back rank"), 10)?;
            let ana = tx.upsert_member(group, "user-of-ana", "Ana Zwischenzug", at(0))?;
            let bruno = tx.upsert_member(group, "user-of-bruno", "Bruno", at(0))?;
            for n in 0..120 {
                let id = tx.insert_reply(&new_reply(post, ana, None, &words(n)))?.id;
                tx.insert_verdict(&new_verdict(id, Verdict::Unclear, &words(n)))?;
                tx.insert_verdict(&new_verdict(id, Verdict::Wrong, &words(n)))?;
                tx.insert_talk(group, ana, &words(n)[..500], at(n as i64))?;
                let id = tx.insert_reply(&new_reply(post, bruno, None, "Rd6"))?.id;
                tx.insert_verdict(&new_verdict(id, Verdict::Wrong, "Rd6"))?;
            }
            tx.upsert_attempt(&attempt(post, ana, AttemptState::Playing, 0.0))?;
            tx.next_hint(post, ana, 0, 3, at(8))?;
            Ok((ana, bruno))
        })
    }

    #[test]
    fn everything_kept_is_handed_over() {
        let f = Fixture::new();
        let (ana, bruno) = lively(&f);
        let kept = f.read(move |db| db.kept_of(ana)).unwrap();
        assert_eq!(
            (kept.chat_user.as_str(), kept.group.as_str()),
            ("user-of-ana", "Evening circle")
        );
        assert_eq!(
            (kept.replies.len(), kept.replies[3].verdicts.len()),
            (120, 2)
        );
        assert_eq!(
            (kept.attempts.len(), kept.hints.len(), kept.talk.len()),
            (1, 1, 120)
        );
        let json = serde_json::to_value(&kept).unwrap();
        assert_eq!(json["replies"][0]["text"], words(0));
        assert_eq!(json["replies"][0]["number"], 1);
        assert_eq!(json["replies"][0]["verdicts"][1]["verdict"], "wrong");
        assert_eq!(json["attempts"][0]["state"], "playing");
        let other = f.read(move |db| db.kept_of(bruno)).unwrap();
        assert!(
            !serde_json::to_string(&other)
                .unwrap()
                .contains("zugzwanghaft")
        );
        assert!(f.read(|db| db.kept_of(MemberId::of(999))).is_none());
    }

    #[tokio::test]
    async fn someone_erased_leaves_no_trace_in_any_file() {
        let f = Fixture::new();
        let (ana, bruno) = lively(&f);
        let found = |needle: &str| -> Vec<String> {
            std::fs::read_dir(f.folder.path())
                .unwrap()
                .map(|entry| entry.unwrap().path())
                .filter(|path| {
                    let bytes = std::fs::read(path).unwrap();
                    bytes.windows(needle.len()).any(|w| w == needle.as_bytes())
                })
                .map(|path| path.display().to_string())
                .collect()
        };
        for needle in ["zugzwanghaft", "Zwischenzug", "user-of-ana"] {
            assert!(!found(needle).is_empty(), "{needle} was there");
        }
        assert!(f.store.erase_member(ana).await.unwrap());
        for needle in ["zugzwanghaft", "Zwischenzug", "user-of-ana"] {
            assert_eq!(found(needle), Vec::<String>::new(), "{needle}");
        }
        assert!(!found("user-of-bruno").is_empty());
        assert_eq!(f.read(move |db| db.reply_count(bruno)), 120);
        assert!(!f.store.erase_member(ana).await.unwrap());
    }
}
