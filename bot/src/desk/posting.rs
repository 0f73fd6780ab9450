//! Posts as members see them: the sheet with its diagram and task, whether it takes replies, when it closes.
//! Nothing on the sheet depends on the solution, so nothing on it can give it away.

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{self as store, Db, Group, NewPost, Post, PostState, Tx};

use super::{
    ChatKey, ContentId, Desk, GroupId, InLesson, ItemId, Kind, Place, PostId, PostRow, PostSheet,
    Settings, attempt,
    content::{self, Held},
    convert,
    error::{Done, not_found},
    groups::place_of,
    handle::{group_at, post_of},
    refusal::Refusal,
    schedule,
};

impl Desk {
    /// The post that takes replies now, if any; the latest when several do.
    async fn open_now(&self, place: &Place) -> Done<Option<Post>> {
        let (now, place) = (self.now(), place.clone());
        self.read(move |db| latest_open(db, &group_at(db, &place)?, now))
            .await
    }

    /// The post now open, if any; the latest when several are.
    pub async fn open_post(&self, place: &Place) -> Done<Option<PostSheet>> {
        match self.open_now(place).await? {
            Some(open) => self.post(place, open.id).await.map(Some),
            None => Ok(None),
        }
    }

    /// A post by id, open or closed.
    pub async fn post(&self, place: &Place, post: PostId) -> Done<PostSheet> {
        let place = place.clone();
        let (group, post, held, lesson) = self
            .read(move |db| {
                let group = group_at(db, &place)?;
                let post = post_of(db, &group, post)?;
                if post.state == PostState::Intended {
                    return not_found(Refusal::StillOnItsWay);
                }
                let held = content::held(db, &post)?;
                let lesson = content::in_lesson(db, post.content_id)?;
                Ok((group, post, held, lesson))
            })
            .await?;
        let settings = convert::kept_settings(&group.settings)?;
        self.post_sheet(&settings, post, &held, lesson).await
    }

    /// Posts that have been sent, the latest first, closed or open.
    pub async fn posts(&self, place: &Place, most: usize) -> Done<Vec<PostRow>> {
        let now = self.now();
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .latest_posts(group.id, most)?
                .into_iter()
                .filter_map(|post| row(post, now))
                .collect())
        })
        .await
    }

    /// The post of the group whose message or thread the chat calls `reference`.
    pub async fn find_post(&self, place: &Place, reference: &str) -> Done<Option<PostId>> {
        let (place, reference) = (place.clone(), reference.to_owned());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .post_by_reference(group.id, &reference)?
                .map(|post| post.id))
        })
        .await
    }

    /// Open posts of every group of the chat that this person belongs to, the latest of each group: what
    /// a private message to the bot may answer.
    pub async fn open_for(&self, chat: ChatKey, user: &str) -> Done<Vec<(Place, PostRow)>> {
        let now = self.now();
        let user = user.to_owned();
        self.read(move |db| {
            let mut open = Vec::new();
            for group in db.groups_of(chat)? {
                if db.member_by_user(group.id, &user)?.is_none() {
                    continue;
                }
                let post = db
                    .open_posts(group.id)?
                    .into_iter()
                    .rfind(|post| takes_replies(post, now));
                if let Some(row) = post.and_then(|post| row(post, now)) {
                    open.push((place_of(&group), row));
                }
            }
            Ok(open)
        })
        .await
    }

    /// The sheet of a post, with where it stands in a lesson.
    pub(super) async fn post_sheet(
        &self,
        settings: &Settings,
        post: Post,
        held: &Held,
        lesson: Option<InLesson>,
    ) -> Done<PostSheet> {
        Ok(PostSheet {
            lesson,
            post: post.id,
            number: post.number,
            nonce: post.nonce,
            topic: post.topic,
            content: self.content_sheet(held, settings).await?,
            closes_at: post.closes_at,
            message: post.message,
            thread: post.thread,
        })
    }
}

/// Whether replies to a post count at `now`. One that is `intended` may be before the group already:
/// sent, and its sending not yet recorded.
pub(super) fn takes_replies(post: &Post, now: DateTime<Utc>) -> bool {
    Kind::of(&post.content).takes_answers()
        && matches!(post.state, PostState::Intended | PostState::Open)
        && now < post.closes_at
}

/// When a reply that comes at `now` is said to have come: after the end, where replies have ended.
pub(super) fn received(post: &Post, now: DateTime<Utc>) -> DateTime<Utc> {
    match post.state {
        PostState::Intended | PostState::Open => now,
        PostState::Closing | PostState::Closed => now.max(post.closes_at),
    }
}

/// Closes a post of words alone, for which nothing is revealed: it is over as soon as it is out.
pub(super) fn close_words(
    tx: &Tx<'_>,
    post: &Post,
    now: DateTime<Utc>,
) -> Result<(), store::StoreError> {
    if post.state == PostState::Open {
        tx.set_closes_at(post.id, post.closes_at.min(now))?;
        tx.mark_post_closing(post.id)?;
    }
    tx.mark_post_closed(post.id, now, None)
}

/// The group's post that takes replies at `now`, if any; the latest when several do.
pub(super) fn latest_open(db: &Db<'_>, group: &Group, now: DateTime<Utc>) -> Done<Option<Post>> {
    let open = db.open_posts(group.id)?;
    Ok(open.into_iter().rfind(|post| takes_replies(post, now)))
}

/// Records the intent to post a queue entry; the chat is told where to find it by the nonce.
pub(super) fn intend(
    tx: &Tx<'_>,
    group: &Group,
    item: ItemId,
    slot: DateTime<Utc>,
    now: DateTime<Utc>,
    settings: &Settings,
    nonce: String,
) -> Done<PostId> {
    debug_assert!(nonce.len() <= 25, "{nonce} of group {}", group.id);
    Ok(tx.intend_post(&NewPost {
        prices: attempt::prices(settings),
        item,
        nonce,
        slot,
        closes_at: closing_time(slot, now, settings),
        intended_at: now,
    })?)
}

/// A post keeps its usual closing time, counted from its slot, while at least half of its time is left;
/// a later one gets its full time from now.
pub(super) fn closing_time(
    slot: DateTime<Utc>,
    now: DateTime<Utc>,
    settings: &Settings,
) -> DateTime<Utc> {
    let usual = schedule::later(settings.zone, slot, settings.open_minutes);
    if usual - now >= (usual - slot) / 2 {
        usual
    } else {
        schedule::later(settings.zone, now, settings.open_minutes)
    }
}

/// What marks the message of a post: the same for the same post, different for any other, and telling
/// nothing. At most 25 characters for any ids a group can reach.
pub(super) fn nonce(group: GroupId, content: ContentId, now: DateTime<Utc>) -> String {
    format!(
        "{}-{}-{}",
        base36(group.get()),
        base36(content.get()),
        base36(now.timestamp())
    )
}

fn base36(number: i64) -> String {
    let mut number = number.unsigned_abs();
    let mut digits = Vec::new();
    loop {
        digits.push(char::from_digit((number % 36) as u32, 36).unwrap_or('0'));
        number /= 36;
        if number == 0 {
            return digits.into_iter().rev().collect();
        }
    }
}

/// A slot of its own for a post: `wanted`, or the next second that no other post has.
pub(super) fn free_slot(db: &Db<'_>, group: GroupId, wanted: DateTime<Utc>) -> Done<DateTime<Utc>> {
    let mut slot = wanted;
    while db.slot_taken(group, slot)? {
        slot += TimeDelta::seconds(1);
    }
    Ok(slot)
}

fn row(post: Post, now: DateTime<Utc>) -> Option<PostRow> {
    Some(PostRow {
        post: post.id,
        number: post.number,
        open: takes_replies(&post, now),
        opened_at: post.opened_at?,
        closes_at: post.closes_at,
        topic: post.topic,
        kind: Kind::of(&post.content),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> DateTime<Utc> {
        DateTime::parse_from_rfc3339(text).expect("a time").to_utc()
    }

    #[test]
    fn nonces_fit_what_a_chat_allows() {
        let late = at("2099-12-31T23:59:59Z");
        let of = |group, content| nonce(GroupId::of(group), ContentId::of(content), late);
        assert_eq!(of(1, 2), of(1, 2));
        assert_ne!(of(1, 2), of(2, 1));
        assert!(of(99_999_999, 9_999_999_999).len() <= 25);
        assert_eq!(base36(0), "0");
        assert_eq!(base36(36 * 36 + 35), "10z");
    }

    #[test]
    fn a_late_post_keeps_its_closing_time_while_half_is_left() {
        let slot = at("2026-11-25T18:00:00Z");
        let usual = at("2026-11-26T17:00:00Z");
        let day = Settings::default();
        assert_eq!(closing_time(slot, slot, &day), usual);
        assert_eq!(closing_time(slot, at("2026-11-25T22:00:00Z"), &day), usual);
        let hour = Settings {
            open_minutes: 60,
            ..Settings::default()
        };
        assert_eq!(
            closing_time(slot, at("2026-11-25T20:00:00Z"), &hour),
            at("2026-11-25T21:00:00Z")
        );
    }
}
