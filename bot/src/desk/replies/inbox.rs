//! What came in and may be an answer or may be talk: written into the inbox before it is judged, and out
//! of it in the write that keeps what was made of it. So a message costs one write before it is judged
//! and one after, a crash in between loses nothing, and of talk nothing is kept.

use sealed_move_store::{AttemptState, Entry, NewEntry, NewReply, Post, ReplyOf, Tx, Via};

use super::{
    Case,
    judging::{Answerer, Ruling},
    kept::{Asks, asks, kept_at},
    kept_reply, key, line_before,
};
use crate::chess::judge::Setting;
use crate::desk::{
    Desk, Kind, MemberId, Person, Place, PostId, Settings, VerdictSheet, convert,
    error::{Done, bad_request, not_found},
    handle::{group_at, hear_language, member, post_of},
    posting::takes_replies,
    refusal::{Refusal, Removed},
    text,
};

/// What a message that came in is, before it is judged.
pub(in crate::desk) enum Arrived {
    /// It was taken as an answer before.
    Known(Box<Case>),
    /// No answer could be made of it: nothing is kept.
    Talk,
    /// It is in the inbox.
    New(Box<Arrival>),
}

/// An entry of the inbox, with all that judging it takes.
pub(in crate::desk) struct Arrival {
    entry: Entry,
    /// Its sender, with the id that somebody new will have.
    sender: MemberId,
    settings: Settings,
    post: Post,
    asks: Asks,
    /// Every reply of its sender to the post before this.
    replies: Vec<ReplyOf>,
    /// How their attempt had ended, if it had.
    ended: Option<AttemptState>,
}

impl Desk {
    /// Writes a message down, unless it is known already or nothing that could be judged.
    pub(in crate::desk) async fn arrive(
        &self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        text: String,
    ) -> Done<Arrived> {
        let now = self.now();
        let key = key(place, source);
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let post = post_of(tx, &group, post)?;
            let known = tx.reply_by_source(&key)?;
            let sender = tx.member_by_user(group.id, &person.user)?.map(|m| m.id);
            if let Some(reply) = known.filter(|reply| Some(reply.member_id) == sender) {
                return Ok(Arrived::Known(Box::new(kept_reply(tx, reply)?)));
            }
            // Among other messages only moves are plainly an answer.
            let problem = matches!(Kind::of(&post.content), Kind::Problem { .. });
            if text.is_empty() || !problem || !takes_replies(&post, now) {
                return Ok(Arrived::Talk);
            }
            // What waits to be judged keeps no language; the verdict comes in the member's.
            if let Some(known) = tx.member_by_user(group.id, &person.user)? {
                hear_language(tx, known.id, known.client_language.as_deref(), &person)?;
            }
            let id = tx.put_in_inbox(&NewEntry {
                post_id: post.id,
                source: key,
                chat_user: person.user,
                name: text::name(&person.name),
                text,
                received_at: now,
            })?;
            match tx.inbox_entry(id)? {
                Some(entry) => Ok(Arrived::New(Box::new(arrival(tx, entry)?))),
                None => Ok(Arrived::Talk),
            }
        })
        .await
    }

    /// Judges what is in the inbox. It becomes a reply with its verdict, or, where it is talk, goes.
    pub(in crate::desk) async fn judge_arrival(
        &self,
        arrival: Arrival,
    ) -> Done<Option<VerdictSheet>> {
        // What nobody can judge is left to the coach, and talk among others.
        let problem = self.judged_by(&arrival.asks).await?;
        let line = line_before(&arrival.replies, None);
        let judged = match &problem {
            Some(problem) => {
                let text = arrival.entry.text.clone();
                let by = arrival.answerer();
                self.judge(problem, line.clone(), text, by, Setting::Talk)
                    .await?
            }
            None => None,
        };
        let (Some(problem), Some(judgement)) = (problem, judged) else {
            let id = arrival.entry.id;
            self.write(move |tx| Ok(tx.take_from_inbox(id)?)).await?;
            return Ok(None);
        };
        let now = self.now();
        let ruling = Ruling::new(&problem, &judgement, line, arrival.ended, now);
        let own = self.inner.errands.own.clone();
        let kept = self
            .write(move |tx| {
                let Some(kept) = arrival.becomes_reply(tx)? else {
                    return Ok(None);
                };
                own.owe(tx, &kept.group, kept.reply.id, now)?;
                let worth = ruling.keep(tx, &kept.post, &kept.reply)?;
                Ok(Some((kept, worth)))
            })
            .await?;
        // Its writer took it back, or was erased, while it was judged.
        let Some((kept, worth)) = kept else {
            return Ok(None);
        };
        self.told(kept, &problem, judgement, worth).await.map(Some)
    }
}

/// An entry of the inbox with all that judging it takes.
pub(in crate::desk) fn arrival(tx: &Tx<'_>, entry: Entry) -> Done<Arrival> {
    let Some(post) = tx.post(entry.post_id)? else {
        return not_found(Refusal::RemovedMeanwhile {
            what: Removed::PostOfMessage,
        });
    };
    let Some(group) = tx.group(post.group_id)? else {
        return not_found(Refusal::RemovedMeanwhile {
            what: Removed::GroupOfMessage,
        });
    };
    let sender = tx.member_by_user(group.id, &entry.chat_user)?;
    let (replies, attempt) = match &sender {
        Some(sender) => (
            tx.replies_of(post.id, sender.id)?,
            tx.attempt(post.id, sender.id)?,
        ),
        None => (Vec::new(), None),
    };
    Ok(Arrival {
        settings: convert::kept_settings(&group.settings)?,
        asks: asks(tx, &post)?,
        ended: attempt
            .map(|attempt| attempt.state)
            .filter(|state| *state != AttemptState::Playing),
        sender: match sender {
            Some(sender) => sender.id,
            None => tx.next_member()?,
        },
        replies,
        entry,
        post,
    })
}

impl Arrival {
    fn answerer(&self) -> Answerer<'_> {
        Answerer {
            settings: &self.settings,
            user: &self.entry.chat_user,
            member: self.sender,
            post: self.post.id,
        }
    }

    /// Moves the entry from the inbox to the replies; somebody new becomes a member. `None` when it is in
    /// the inbox no more.
    fn becomes_reply(self, tx: &Tx<'_>) -> Done<Option<Case>> {
        let Some(entry) = tx.take_from_inbox(self.entry.id)? else {
            return Ok(None);
        };
        let Some(group) = tx.group(self.post.group_id)? else {
            return not_found(Refusal::RemovedMeanwhile {
                what: Removed::GroupOfMessage,
            });
        };
        // It may have closed while this was judged.
        let Some(post) = tx.post(self.post.id)? else {
            return not_found(Refusal::RemovedMeanwhile {
                what: Removed::PostOfMessage,
            });
        };
        let sender = Person {
            user: entry.chat_user,
            name: entry.name,
            language: None,
        };
        let inserted = tx.insert_reply(&NewReply {
            post_id: self.post.id,
            member_id: member(tx, &group, &sender, entry.received_at)?,
            source: Some(entry.source),
            via: Via::Talk,
            text: entry.text,
            received_at: entry.received_at,
        })?;
        match tx.reply(inserted.id)? {
            Some(reply) if inserted.new => kept_at(tx, post, self.asks, reply).map(Some),
            Some(_) => bad_request(Refusal::TakenAlready),
            None => not_found(Refusal::RemovedMeanwhile {
                what: Removed::Reply,
            }),
        }
    }
}
