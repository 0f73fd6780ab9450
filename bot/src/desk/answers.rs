//! Settling a reply without a verdict: a coach's private answer to it, or the word that it needs none.
//! The answer is written down before it goes out, so that one that a crash has held up goes out at the
//! next start.

use chrono::{DateTime, Utc};
use sealed_move_store::{CoachWords, Db, Deed, Group, Reply, Tx};
use serde::Serialize;

use super::{
    Desk, ErrandKind, Kind, KindName, Person, Place, ReplyId,
    deeds::did,
    errand::Answered,
    error::{Done, bad_request, not_found},
    groups::place_of,
    handle::{coaching, group_at, member_of},
    ledger::Left,
    outbox::Earlier,
    refusal::Refusal,
    text,
};

/// The most characters of a private answer.
pub const LONGEST_WORDS: usize = 1_500;
/// Private answers on a member's page.
const SHOWN: usize = 30;

/// A coach's private answer, for the member it is for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WordsRow {
    /// The reply it answers.
    pub reply: ReplyId,
    /// Number of the post.
    pub number: i64,
    /// What the post holds.
    pub kind: KindName,
    /// What the member had written.
    pub text: String,
    /// The answer.
    pub words: String,
    /// The coach's name; `None` once they were erased.
    pub by: Option<String>,
    /// When.
    pub at: DateTime<Utc>,
}

impl Desk {
    /// Answers a reply in private, without a verdict: it waits for the coach no longer, and its member
    /// is told. Coaches only.
    ///
    /// # Errors
    /// When there is no such reply, or the answer is empty or too long.
    pub async fn answer_privately(
        &self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        words: &str,
    ) -> Done<()> {
        let (words, cut) = text::body(words, LONGEST_WORDS);
        if words.is_empty() {
            return bad_request(Refusal::AnswerWanted);
        }
        if cut {
            return bad_request(Refusal::AnswerTooLong {
                most: LONGEST_WORDS.into(),
            });
        }
        self.settle_with(place, coach, reply, words).await
    }

    /// Notes that a reply needs no answer: it waits for the coach no longer, and nobody is told.
    /// Coaches only.
    ///
    /// # Errors
    /// When there is no such reply.
    pub async fn no_answer_needed(
        &self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
    ) -> Done<()> {
        self.settle_with(place, coach, reply, String::new()).await
    }

    async fn settle_with(
        &self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        words: String,
    ) -> Done<()> {
        let now = self.now();
        let (at, by) = (place.clone(), coach.clone());
        let told = self
            .write(move |tx| {
                let (group, by) = coaching(tx, &at, &by)?;
                let reply = reply_of(tx, &group, reply)?;
                let member = member_of(tx, &group, reply.member_id)?;
                let deed = if words.is_empty() {
                    Deed::NoAnswer
                } else {
                    Deed::Answer
                };
                tx.settle_reply(reply.id, &words, by.id, now)?;
                did(tx, &group, &by, deed, Some(member.id), "", now)?;
                told(tx, reply.id)
            })
            .await?;
        if let Some(told) = told {
            let kind = ErrandKind::AnswerMember(Box::new(told));
            self.inner.errands.tell(Left::new(place.clone(), kind));
        }
        Ok(())
    }

    /// The private answers that a member was given, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn my_words(&self, place: &Place, person: &Person) -> Done<Vec<WordsRow>> {
        let (place, user) = (place.clone(), person.user.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let Some(member) = db.member_by_user(group.id, &user)? else {
                return Ok(Vec::new());
            };
            let mut rows = Vec::new();
            for words in db.words_to(member.id, SHOWN)? {
                if let Some((row, _)) = row(db, words)? {
                    rows.push(row);
                }
            }
            Ok(rows)
        })
        .await
    }

    /// Leaves the private answers to be sent that an earlier run wrote down and did not send.
    pub(super) async fn words_left(&self) -> Done<()> {
        let left = self
            .read(|db| {
                let mut left = Vec::new();
                for words in db.untold_words()? {
                    if let Some((row, group)) = row(db, words)?
                        && let Some(told) = told_of(db, row)?
                    {
                        left.push((place_of(&group), told));
                    }
                }
                Ok(left)
            })
            .await?;
        for (place, told) in left {
            let earlier = Earlier {
                since: told.row.at,
                sent_as: None,
            };
            let kind = ErrandKind::AnswerMember(Box::new(told));
            self.inner.errands.tell(Left {
                earlier: Some(earlier),
                ..Left::new(place, kind)
            });
        }
        Ok(())
    }

    /// A private answer was handed to its member's chat.
    pub(super) async fn words_told(&self, reply: ReplyId, now: DateTime<Utc>) -> Done<()> {
        self.write(move |tx| Ok(tx.mark_words_told(reply, now)?))
            .await
    }
}

/// A reply to a post of the group.
pub(super) fn reply_of(db: &Db<'_>, group: &Group, reply: ReplyId) -> Done<Reply> {
    if let Some(reply) = db.reply(reply)?
        && db
            .post(reply.post_id)?
            .is_some_and(|post| post.group_id == group.id)
    {
        return Ok(reply);
    }
    not_found(Refusal::NoReply)
}

/// The answer to a reply as its member is told it; `None` where there are no words.
fn told(tx: &Tx<'_>, reply: ReplyId) -> Done<Option<Answered>> {
    let Some(words) = tx
        .coach_words(reply)?
        .filter(|words| !words.words.is_empty())
    else {
        return Ok(None);
    };
    match row(tx, words)? {
        Some((row, _)) => told_of(tx, row),
        None => Ok(None),
    }
}

fn told_of(db: &Db<'_>, row: WordsRow) -> Done<Option<Answered>> {
    let Some(reply) = db.reply(row.reply)? else {
        return Ok(None);
    };
    Ok(db.member(reply.member_id)?.map(|member| Answered {
        user: member.chat_user,
        row,
    }))
}

fn row(db: &Db<'_>, words: CoachWords) -> Done<Option<(WordsRow, Group)>> {
    let Some(reply) = db.reply(words.reply_id)? else {
        return Ok(None);
    };
    let Some(post) = db.post(reply.post_id)? else {
        return Ok(None);
    };
    Ok(db.group(post.group_id)?.map(|group| {
        let row = WordsRow {
            reply: reply.id,
            number: post.number,
            kind: Kind::of(&post.content).name(),
            text: reply.text,
            words: words.words,
            by: words.by,
            at: words.given_at,
        };
        (row, group)
    }))
}
