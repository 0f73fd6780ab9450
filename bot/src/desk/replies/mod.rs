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

use sealed_move_store::{Db, Post, Prices, ReplyOf};

use crate::desk::{
    Desk, ExampleRow, GoneRow, Kind, LanguageTag, MemberId, Mode, Place, PostId, Rank, RepliesTo,
    ReplyRow,
    answers::settled,
    attempt::{self, After, Work},
    convert,
    error::Done,
    handle::{group_at, post_of},
    telling, tongue,
};

use kept::replies_to;

pub use edits::Edited;
pub(super) use {
    inbox::{Arrival, Arrived, arrival},
    judging::{Ruling, line_before, over},
    kept::{Asks, Case, asks, kept_at, kept_reply},
};

impl Desk {
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
}

/// The source of a message as the store keeps it: two chats may use the same ids.
pub(super) fn key(place: &Place, source: &str) -> String {
    format!("{}:{source}", place.chat)
}

/// Replies to a post for a list, each with the points as they stood after it.
pub(super) fn rows(
    db: &Db<'_>,
    language: &LanguageTag,
    post: &Post,
    replies: Vec<ReplyOf>,
) -> Done<Vec<ReplyRow>> {
    let to = replies_to(post)?;
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
        example: reply.example.map(ExampleRow::of),
        text: reply.reply.text,
        received_at: reply.reply.received_at,
        verdict: verdict
            .as_ref()
            .map(|verdict| convert::kept_verdict(verdict.verdict)),
        points: after.map(|after| after.points).unwrap_or_default(),
        by_coach: verdict.as_ref().is_some_and(|verdict| verdict.by_coach),
        said: verdict
            .map(|verdict| telling::of_kept(language, &verdict, after, prices))
            .unwrap_or_default(),
    }
}
