//! A member's reply: written down before anything else, then judged, and the verdict kept before it is
//! shown. Each step can be done over: the same message counts once, and a reply that a crash left
//! without its verdict is judged at the next start. What may be an answer or may be talk is written into
//! the inbox first, and becomes a reply only with its verdict.
//!
//! Replies that come after the close are kept and answered, and do not count: they have no verdict in
//! the store. Neither have replies to a position whose solution could not be proved, until the coach
//! judges them by hand.

mod edits;
mod inbox;
mod judging;
mod kept;

use std::collections::{HashMap, hash_map::Entry};

use sealed_move_store::{Db, NewReply, Post, Prices, ReplyOf, Tx, Via};

use self::{inbox::Arrived, kept::asks};
use crate::desk::{
    Desk, GoneRow, Heard, Kind, LanguageTag, MemberId, Mode, Person, Place, PostId, Rank,
    RepliesTo, ReplyId, ReplyRow, Settled, VerdictSheet,
    attempt::{self, After, Work, decided},
    convert,
    error::{Done, bad_request, not_found},
    handle::{group_at, member, post_of},
    posting::received,
    refusal::{Refusal, Removed},
    telling,
    text::{self, LONGEST_REPLY},
    tongue,
};

pub use edits::Edited;
pub(super) use {
    inbox::{Arrival, arrival},
    judging::{Ruling, line_before, over},
    kept::{Asks, Case, kept_reply},
};

impl Desk {
    /// An explicit answer to a post. `source` is the chat's id of the message or interaction: the same
    /// source twice counts once. Somebody new becomes a member.
    ///
    /// # Errors
    /// When the post is not this group's, nothing is written, or the source is somebody else's.
    pub async fn answer(
        &self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        text: &str,
    ) -> Done<VerdictSheet> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        if text.is_empty() {
            return bad_request(match self.kind(place, post).await? {
                Kind::Problem { .. } | Kind::Words => Refusal::NothingToJudge,
                Kind::Question => Refusal::NothingAnswered,
            });
        }
        self.rounds().earlier_first(post, &person.user).await?;
        let _turn = self.inner.turns.take(post, &person.user).await;
        let kept = self
            .write_down(place, person, post, source, (text, cut))
            .await?;
        self.verdict_on(kept).await
    }

    /// A message among others: judged when it plainly answers the open post (the latest when several
    /// are). Talk is not kept.
    pub async fn hear(
        &self,
        place: &Place,
        person: &Person,
        source: &str,
        text: &str,
    ) -> Done<Heard> {
        match self.open_now(place).await? {
            Some(post) => self.hear_in(place, person, post.id, source, text).await,
            None => Ok(Heard::Talk),
        }
    }

    /// As [`Desk::hear`], for a message that belongs to a certain post, as one in its thread does.
    pub async fn hear_in(
        &self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        text: &str,
    ) -> Done<Heard> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        self.rounds().earlier_first(post, &person.user).await?;
        let _turn = self.inner.turns.take(post, &person.user).await;
        // What was cut is longer than any solution, and so no answer.
        let text = if cut { String::new() } else { text };
        match self.arrive(place, person, post, source, text).await? {
            Arrived::Known(kept) => Ok(Heard::Again(Box::new(self.verdict_on(*kept).await?))),
            Arrived::Talk => Ok(Heard::Talk),
            Arrived::New(arrival) => Ok(match self.judge_arrival(*arrival).await? {
                Some(sheet) => Heard::Answer(Box::new(sheet)),
                None => Heard::Talk,
            }),
        }
    }

    /// A member's verdict once more, as when a page is loaded again.
    pub async fn verdict(
        &self,
        place: &Place,
        person: &Person,
        reply: ReplyId,
    ) -> Done<VerdictSheet> {
        let (place, user) = (place.clone(), person.user.clone());
        let kept = self
            .read(move |db| {
                let group = group_at(db, &place)?;
                let member = db.member_by_user(group.id, &user)?;
                match (member, db.reply(reply)?) {
                    (Some(member), Some(reply)) if reply.member_id == member.id => {
                        kept_reply(db, reply)
                    }
                    _ => not_found(Refusal::NoReplyOfYours),
                }
            })
            .await?;
        self.verdict_on(kept).await
    }

    /// One member's own replies to a post with their verdicts, in the order they came.
    pub async fn my_replies(
        &self,
        place: &Place,
        person: &Person,
        post: PostId,
    ) -> Done<Vec<ReplyRow>> {
        let (place, by) = (place.clone(), person.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let post = post_of(db, &group, post)?;
            let Some(member) = db.member_by_user(group.id, &by.user)? else {
                return Ok(Vec::new());
            };
            rows(
                db,
                &tongue::of_person(db, &group, &by)?,
                &post,
                db.replies_of(post.id, member.id)?,
            )
        })
        .await
    }

    /// Everyone's replies to a post for everyone's eyes, in a group that keeps answers open: those whose
    /// words are in sight. None in a sealed group.
    ///
    /// # Errors
    /// When there is no such post.
    pub async fn open_answers(&self, place: &Place, post: PostId) -> Done<Vec<ReplyRow>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let post = post_of(db, &group, post)?;
            // What was answered to a question is for its writer and the coach, whatever the group does.
            let problem = matches!(Kind::of(&post.content), Kind::Problem { .. });
            if !problem || convert::kept_settings(&group.settings)?.mode == Mode::Sealed {
                return Ok(Vec::new());
            }
            let mut replies = db.replies_to(post.id)?;
            replies.retain(|reply| reply.gone.is_none());
            let language = tongue::of_member(&group, None)?;
            rows(db, &language, &post, replies)
        })
        .await
    }

    /// Writes a reply down, once for each source; `cut` where more of it was sent than is kept.
    async fn write_down(
        &self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        (text, cut): (String, bool),
    ) -> Done<Case> {
        let now = self.now();
        let key = key(place, source);
        let (place, person) = (place.clone(), person.clone());
        let own = self.inner.errands.own.clone();
        self.write(move |tx: &Tx<'_>| {
            let group = group_at(tx, &place)?;
            let post = post_of(tx, &group, post)?;
            let asks = asks(tx, &post)?;
            let member = member(tx, &group, &person, now)?;
            let inserted = tx.insert_reply(&NewReply {
                post_id: post.id,
                member_id: member,
                source: Some(key),
                via: Via::Answer,
                text,
                received_at: received(&post, now),
            })?;
            let Some(reply) = tx.reply(inserted.id)? else {
                return not_found(Refusal::RemovedMeanwhile {
                    what: Removed::Reply,
                });
            };
            if reply.member_id != member || reply.post_id != post.id {
                return bad_request(Refusal::TakenAlready);
            }
            if inserted.new {
                own.owe(tx, &group, reply.id, now)?;
                match asks {
                    // Whoever answers a question takes part, whenever the coach comes to read it.
                    Asks::Question => {
                        attempt::settle(tx, &post, member)?;
                    }
                    Asks::Problem(_) => {}
                }
            }
            Ok(Case {
                cut: cut && inserted.new,
                ..kept_reply(tx, reply)?
            })
        })
        .await
    }
}

/// The source of a message as the store keeps it: two chats may use the same ids.
pub(super) fn key(place: &Place, source: &str) -> String {
    format!("{}:{source}", place.chat)
}

/// How a reply stands with the coach.
pub(super) fn settled(reply: &ReplyOf) -> Settled {
    let judged = reply
        .verdict
        .as_ref()
        .is_some_and(|verdict| verdict.by_coach || decided(verdict.verdict));
    match &reply.words {
        _ if judged => Settled::Judged,
        Some(words) if words.words.is_empty() => Settled::NeedsNone,
        Some(_) => Settled::Answered,
        None => Settled::Unjudged,
    }
}

/// Replies to a post for a list, each with the points as they stood after it.
pub(super) fn rows(
    db: &Db<'_>,
    language: &LanguageTag,
    post: &Post,
    replies: Vec<ReplyOf>,
) -> Done<Vec<ReplyRow>> {
    let to = asks(db, post)?.kind();
    let mut works: HashMap<MemberId, Work> = HashMap::new();
    let mut rows = Vec::with_capacity(replies.len());
    for reply in replies {
        let member = reply.reply.member_id;
        let work = match works.entry(member) {
            Entry::Occupied(kept) => kept.into_mut(),
            Entry::Vacant(free) => free.insert(attempt::work(db, post, member)?),
        };
        let after = work.after_reply(reply.reply.id);
        rows.push(row(language, to, reply, after, post.prices));
    }
    Ok(rows)
}

fn row(
    language: &LanguageTag,
    to: RepliesTo,
    reply: ReplyOf,
    after: Option<After>,
    prices: Prices,
) -> ReplyRow {
    let settled = settled(&reply);
    let verdict = reply.verdict;
    let writer = reply.reply.member_id;
    ReplyRow {
        reply: reply.reply.id,
        to,
        name: reply.name,
        rank: Rank::of(reply.coach),
        settled,
        coach_words: reply.words.map(|words| words.words),
        gone: reply.gone.map(|gone| GoneRow::of(gone, writer)),
        text: reply.reply.text,
        received_at: reply.reply.received_at,
        verdict: verdict
            .as_ref()
            .map(|verdict| convert::kept_verdict(verdict.verdict)),
        points: after.map_or(0.0, |after| after.points),
        by_coach: verdict.as_ref().is_some_and(|verdict| verdict.by_coach),
        said: verdict
            .map(|verdict| telling::of_kept(language, &verdict, after, prices))
            .unwrap_or_default(),
    }
}
