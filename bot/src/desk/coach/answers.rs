//! Settling a reply without a verdict: a coach's private answer to it, or the word that it needs none.
//! The answer is written down before it goes out, so that one that a crash has held up goes out at the
//! next start.

use sealed_move_store::{Deed, Tx};

use super::CoachDesk;
use crate::desk::{
    ErrandKind, Person, Place, ReplyId,
    answers::{reply_of, row, told_of},
    deeds::did,
    errand::Answered,
    error::{Done, bad_request},
    handle::{coaching, member_of},
    ledger::Left,
    refusal::Refusal,
    text,
};

/// The most characters of a private answer.
pub const LONGEST_WORDS: usize = 1_500;

impl CoachDesk<'_> {
    /// Answers a reply in private, without a verdict: it waits for the coach no longer, and its member
    /// is told. Coaches only.
    ///
    /// # Errors
    /// When there is no such reply, or the answer is empty or too long.
    pub async fn answer_privately(
        self,
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
    pub async fn no_answer_needed(self, place: &Place, coach: &Person, reply: ReplyId) -> Done<()> {
        self.settle_with(place, coach, reply, String::new()).await
    }

    async fn settle_with(
        self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        words: String,
    ) -> Done<()> {
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let told = self
            .desk
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
            self.desk.inner.errands.tell(Left::new(place.clone(), kind));
        }
        Ok(())
    }
}

/// The answer to a reply as its member is told it; `None` where there are no words.
pub(in crate::desk) fn told(tx: &Tx<'_>, reply: ReplyId) -> Done<Option<Answered>> {
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
