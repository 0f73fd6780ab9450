//! The new text of a message that was an answer: judged anew where the answer had decided nothing.

use sealed_move_store::{Db, NewEntry, Reply, Via};

use super::{Case, Ruling, kept_reply, line_before};
use crate::chess::judge::Setting;
use crate::desk::{
    Desk, Place, VerdictSheet,
    attempt::{self, decided},
    error::Done,
    handle::group_at,
    posting::takes_replies,
    text::{self, LONGEST_REPLY},
};

/// What came of an edited message.
#[derive(Clone, Debug)]
pub enum Edited {
    /// It was no answer before: take it as a new message.
    Unknown,
    /// It was judged anew.
    Judged(Box<VerdictSheet>),
    /// The verdict given before stands.
    Stands(Box<VerdictSheet>),
    /// It was an unreadable answer and is talk now; nothing is kept of it.
    Talk,
}

impl Desk {
    /// Takes the new text of the reply that is kept under `key`, in its sender's turn. Like a new
    /// message, it is in the inbox until it is judged.
    pub(in crate::desk) async fn take_edit(
        &self,
        place: &Place,
        key: &str,
        user: &str,
        text: &str,
    ) -> Done<Edited> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        let Some(mut kept) = self.known(place, key, Some(user)).await? else {
            return Ok(Edited::Unknown);
        };
        let settled = kept
            .verdict()
            .is_none_or(|verdict| verdict.by_coach || decided(verdict.verdict));
        let last = kept
            .replies
            .last()
            .is_some_and(|last| last.reply.id == kept.reply.id);
        let open = takes_replies(&kept.post, self.now());
        if !kept.asks.judged_by_the_bot() {
            // The new words take the place of the old until the coach has settled them.
            return self.rewrite(kept, text, cut, open).await;
        }
        let problem = self.judged_by(&kept.asks).await?;
        let (Some(problem), false, true, true, false, false) =
            (problem, settled, last, open, cut, text.is_empty())
        else {
            let key = key.to_owned();
            self.write(move |tx| Ok(tx.forget_in_inbox(&key)?)).await?;
            return Ok(Edited::Stands(Box::new(self.verdict_on(kept).await?)));
        };
        let entry = NewEntry {
            post_id: kept.post.id,
            source: key.to_owned(),
            chat_user: kept.user.clone(),
            name: kept.name.clone(),
            text: text.clone(),
            received_at: self.now(),
        };
        let entry = self.write(move |tx| Ok(tx.put_in_inbox(&entry)?)).await?;
        let setting = match kept.reply.via {
            Via::Talk => Setting::Talk,
            Via::Answer | Via::Direct | Via::Hand => Setting::Answer,
        };
        let line = line_before(&kept.replies, Some(kept.reply.id));
        let judged = self
            .judge(
                &problem,
                line.clone(),
                text.clone(),
                kept.answerer(),
                setting,
            )
            .await?;
        let (reply, post) = (kept.reply.clone(), kept.post.clone());
        let Some(judgement) = judged else {
            self.write(move |tx| {
                tx.take_from_inbox(entry)?;
                tx.delete_reply(reply.id)?;
                attempt::settle(tx, &post, reply.member_id)?;
                Ok(())
            })
            .await?;
            return Ok(Edited::Talk);
        };
        kept.reply.text.clone_from(&text);
        let now = self.now();
        let ruling = Ruling::new(&problem, &judgement, line, kept.ended(), now);
        let (own, group) = (self.inner.errands.own.clone(), kept.group.clone());
        let worth = self
            .write(move |tx| {
                tx.take_from_inbox(entry)?;
                tx.renew_reply(reply.id, &text)?;
                own.owe(tx, &group, reply.id, now)?;
                ruling.keep(tx, &post, &reply)
            })
            .await?;
        Ok(Edited::Judged(Box::new(
            self.told(kept, &problem, judgement, worth).await?,
        )))
    }

    /// The new text of an answer to a question; it stands as it was once the coach has read it, or the
    /// question is closed. `cut` where more was written than is kept.
    async fn rewrite(&self, mut kept: Case, text: String, cut: bool, may: bool) -> Done<Edited> {
        let reply = kept.reply.id;
        let read = kept
            .replies
            .iter()
            .find(|of| of.reply.id == reply)
            .is_none_or(|of| of.verdict.is_some() || of.words.is_some() || of.example.is_some());
        if read || !may || text.is_empty() {
            return Ok(Edited::Stands(Box::new(self.verdict_on(kept).await?)));
        }
        kept.reply.text.clone_from(&text);
        kept.cut = cut;
        self.write(move |tx| Ok(tx.set_reply_text(reply, &text)?))
            .await?;
        Ok(Edited::Judged(Box::new(self.verdict_on(kept).await?)))
    }

    /// The reply that a message of this place was, if it was one (of this person).
    pub(in crate::desk) async fn known(
        &self,
        place: &Place,
        key: &str,
        user: Option<&str>,
    ) -> Done<Option<Case>> {
        let (at, key, user) = (place.clone(), key.to_owned(), user.map(str::to_owned));
        self.read(move |db| {
            let group = group_at(db, &at)?;
            let Some(reply) = db.reply_by_source(&key)? else {
                return Ok(None);
            };
            if !sent_by(db, &reply, user.as_deref())? {
                return Ok(None);
            }
            Ok(Some(kept_reply(db, reply)?).filter(|kept| kept.group.id == group.id))
        })
        .await
    }
}

fn sent_by(db: &Db<'_>, reply: &Reply, user: Option<&str>) -> Done<bool> {
    let Some(user) = user else { return Ok(true) };
    Ok(db
        .member(reply.member_id)?
        .is_some_and(|member| member.chat_user == user))
}
