//! A message that was an answer and is edited or deleted afterwards.
//!
//! The rules, said to members in these words: what was decided stands. A solved, right or wrong move
//! stays one, whatever becomes of the message, since its sender has seen the verdict. A message that
//! said nothing yet (no move of this position, more than one possible, not readable) may be edited while
//! the post is open and no later answer has followed, and is judged again. Of a deleted message the
//! words are forgotten: the verdict stays where it decided something, else the whole reply goes.

use super::MemberDesk;
use crate::desk::{
    Person, Place,
    attempt::{self, decided},
    error::Done,
    replies::{Case, Edited, key},
};

/// What came of a deleted message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Withdrawn {
    /// It was no answer.
    Unknown,
    /// It had decided something: the words are forgotten and the verdict stands.
    Stands,
    /// Nothing is kept of it.
    Gone,
}

impl MemberDesk<'_> {
    /// The sender edited a message. [`Edited::Unknown`] when it was no answer: hear it as a new one.
    pub async fn edit_reply(
        self,
        place: &Place,
        person: &Person,
        source: &str,
        text: &str,
    ) -> Done<Edited> {
        let key = key(place, source);
        let Some(known) = self.desk.known(place, &key, Some(&person.user)).await? else {
            return Ok(Edited::Unknown);
        };
        self.desk
            .rounds()
            .earlier_first(known.post.id, &person.user)
            .await?;
        let _turn = self
            .desk
            .inner
            .turns
            .take(known.post.id, &person.user)
            .await;
        self.desk.take_edit(place, &key, &person.user, text).await
    }

    /// A message was deleted; whose it was need not be known.
    pub async fn withdraw_reply(self, place: &Place, source: &str) -> Done<Withdrawn> {
        let key = key(place, source);
        let Some(kept) = self.desk.known(place, &key, None).await? else {
            self.desk
                .write(move |tx| Ok(tx.forget_in_inbox(&key)?))
                .await?;
            return Ok(Withdrawn::Unknown);
        };
        let stands = kept
            .verdict()
            .is_some_and(|verdict| verdict.by_coach || decided(verdict.verdict));
        if stands {
            let reply = kept.reply.id;
            self.desk
                .write(move |tx| Ok(tx.set_reply_text(reply, "")?))
                .await?;
            return Ok(Withdrawn::Stands);
        }
        self.forget(&kept).await?;
        Ok(Withdrawn::Gone)
    }

    /// Forgets a reply that decided nothing, and the attempt with it if that was all of it.
    async fn forget(self, kept: &Case) -> Done<()> {
        let (reply, post, member) = (kept.reply.id, kept.post.clone(), kept.reply.member_id);
        self.desk
            .write(move |tx| {
                tx.delete_reply(reply)?;
                attempt::settle(tx, &post, member)?;
                Ok(())
            })
            .await
    }
}
