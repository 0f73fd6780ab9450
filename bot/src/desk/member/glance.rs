//! What it takes to place a text that came in, read at one moment: the group's mode, whether the message is
//! known already, and the posts that it may be for, each with what it holds and how its sender stands there.
//!
//! It may be out of date by the time something is written down: whoever writes checks what they rest on.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use sealed_move_store::{AttemptState, Db, Group, MemberId, Post};

use super::MemberDesk;
use crate::chess::Language;
use crate::desk::{
    Kind, Mode, OpenPost, Place, PostId,
    content::{self, Held},
    convert,
    error::Done,
    handle::{group_at, post_of},
    posting::takes_replies,
    replies::{key, line_before},
};

/// What it takes to place a text, as the store had it at one moment.
pub(super) struct Glance {
    /// Whether members of the group read one another's answers.
    pub(super) mode: Mode,
    /// Whether a reply is kept from the same source.
    pub(super) known: bool,
    /// The group's posts that take replies, by number.
    pub(super) open: Vec<Seen>,
    /// The post that was chosen, where it is none of those.
    aside: Option<Seen>,
}

/// A post, and how a person stands at it.
pub(super) struct Seen {
    /// The post.
    pub(super) post: Post,
    /// What it holds.
    pub(super) holds: Held,
    /// What its group writes in.
    pub(super) language: Language,
    /// The person's line as it stands on the board.
    pub(super) line: Vec<String>,
    /// Whether it takes no reply of theirs any more.
    pub(super) over: bool,
}

impl MemberDesk<'_> {
    /// A look at the group for a text of `user`, of the message `source` where it is one, and to the post
    /// that was `chosen` where one was.
    ///
    /// # Errors
    /// When there is no group here, or the chosen post is another's.
    pub(super) async fn glance(
        self,
        place: &Place,
        user: &str,
        source: Option<&str>,
        chosen: Option<PostId>,
    ) -> Done<Arc<Glance>> {
        let now = self.desk.now();
        let (key, user) = (source.map(|source| key(place, source)), user.to_owned());
        let place = place.clone();
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let settings = convert::kept_settings(&group.settings)?;
                let sender = member_id(db, &group, &user)?;
                let seen = |post| Seen::of(db, post, settings.language, sender, now);
                let mut open = db.open_posts(group.id)?;
                open.retain(|post| takes_replies(post, now));
                let aside = match chosen {
                    Some(chosen) if open.iter().all(|post| post.id != chosen) => {
                        Some(seen(post_of(db, &group, chosen)?)?)
                    }
                    _ => None,
                };
                Ok(Arc::new(Glance {
                    mode: settings.mode,
                    known: match key {
                        Some(key) => db.reply_by_source(&key)?.is_some(),
                        None => false,
                    },
                    open: open.into_iter().map(seen).collect::<Done<_>>()?,
                    aside,
                }))
            })
            .await
    }
}

impl Glance {
    /// One of the open posts, or the one that was chosen.
    pub(super) fn post(&self, post: PostId) -> Option<&Seen> {
        let mut all = self.open.iter().chain(&self.aside);
        all.find(|seen| seen.post.id == post)
    }

    /// The latest of the open posts.
    pub(super) fn latest(&self) -> Option<PostId> {
        self.open.last().map(|seen| seen.post.id)
    }

    /// The open posts, as somebody is asked about them.
    pub(super) fn all_open(&self) -> Vec<OpenPost> {
        self.open.iter().map(Seen::open_post).collect()
    }

    /// Those of them that are questions.
    pub(super) fn open_questions(&self) -> Vec<OpenPost> {
        let mut open = self.all_open();
        open.retain(|post| post.holds == Kind::Question);
        open
    }
}

impl Seen {
    /// A post, and how `person` stands at it; nobody where it is a stranger.
    pub(super) fn of(
        db: &Db<'_>,
        post: Post,
        language: Language,
        person: Option<MemberId>,
        now: DateTime<Utc>,
    ) -> Done<Self> {
        let (attempt, replies) = match person {
            Some(person) => (
                db.attempt(post.id, person)?,
                db.replies_of(post.id, person)?,
            ),
            None => (None, Vec::new()),
        };
        let ended = attempt.is_some_and(|attempt| attempt.state != AttemptState::Playing);
        Ok(Self {
            holds: content::held(db, &post)?,
            language,
            line: line_before(&replies, None),
            over: ended || !takes_replies(&post, now),
            post,
        })
    }

    /// The post, as somebody is asked about it.
    pub(super) fn open_post(&self) -> OpenPost {
        OpenPost {
            post: self.post.id,
            number: self.post.number,
            topic: self.post.topic.clone(),
            holds: Kind::of(&self.post.content),
        }
    }
}

/// Which member a person is, if they are one.
pub(super) fn member_id(db: &Db<'_>, group: &Group, user: &str) -> Done<Option<MemberId>> {
    let member = db.member_by_user(group.id, user)?;
    Ok(member.map(|member| member.id))
}
