//! Posts as members see them: the sheet with its diagram and task, and what a coach does with a post
//! by hand. Nothing on the sheet depends on the solution, so nothing on it can give it away.

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{
    self as store, Db, Deed, Group, NewPost, Post, PostState, Tx, Waits, Written,
};

use super::{
    ChatKey, ContentId, Desk, GroupId, ItemId, Kind, Person, Place, PositionId, PostId, PostRow,
    PostSheet, Settings, attempt,
    content::{self, Held},
    convert,
    deeds::{DeedNote, did},
    error::{Done, bad_request, not_found},
    groups::place_of,
    handle::{coached, coaching, group_at, position_of, post_of},
    queue::{fit, item_of, not_sound, plan_of, waits_as},
    refusal::Refusal,
    schedule,
};

impl Desk {
    /// The post that a position would be, exactly as members would see it, numbered and timed as if it were
    /// the next. Coaches only.
    pub async fn preview(
        &self,
        place: &Place,
        coach: &Person,
        position: PositionId,
    ) -> Done<PostSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let found = self
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let position = position_of(db, &group, position)?;
                let queue = db.queue(group.id)?;
                let item = queue
                    .iter()
                    .find(|item| waits_as(item) == Some(position.id));
                let (item, topic) = (item.map(|item| item.id), position.topic.clone());
                Ok((group, Held::Problem(Box::new(position)), topic, item))
            })
            .await?;
        self.previewed(found).await
    }

    /// The post that an item of the week will be, as [`Desk::preview`]. Coaches only.
    ///
    /// # Errors
    /// When it waits no longer.
    pub async fn preview_item(
        &self,
        place: &Place,
        coach: &Person,
        item: ItemId,
    ) -> Done<PostSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let found = self
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let item = item_of(db, &group, item)?;
                let held = match item.holds {
                    Waits::Problem(problem) => {
                        Held::Problem(Box::new(position_of(db, &group, problem.position_id)?))
                    }
                    Waits::Question { asked, at_reveal } => Held::Question(asked, at_reveal),
                    Waits::Words(written) => Held::Words(written),
                };
                Ok((group, held, item.topic, Some(item.id)))
            })
            .await?;
        self.previewed(found).await
    }

    async fn previewed(
        &self,
        (group, held, topic, item): (Group, Held, Option<String>, Option<ItemId>),
    ) -> Done<PostSheet> {
        let now = self.now();
        let settings = convert::kept_settings(&group.settings)?;
        let id = group.id;
        let (number, due) = self
            .read(move |db| {
                let latest = db.latest_posts(group.id, 1)?;
                let number = latest.first().map_or(0, |post| post.number) + 1;
                let plan = plan_of(db, &group, &db.queue(group.id)?, now)?;
                let due = plan.due.iter().find(|due| Some(due.item) == item);
                Ok((number, due.map(|due| due.at).or(plan.next).unwrap_or(now)))
            })
            .await?;
        Ok(PostSheet {
            post: PostId::of(0),
            number,
            nonce: nonce(id, ContentId::of(0), now),
            topic,
            content: self.content_sheet(&held, &settings).await?,
            closes_at: closing_time(due.max(now), now, &settings),
            message: None,
            thread: None,
        })
    }

    /// Posts the item (or the next one) as soon as the chat can, paused or not; the week goes on as
    /// planned. Coaches only.
    ///
    /// # Errors
    /// When nothing fit is queued, or the position does not pass the check of this program's version.
    pub async fn post_now(&self, place: &Place, coach: &Person, item: Option<ItemId>) -> Done<()> {
        let now = self.now();
        let (at, by) = (place.clone(), coach.clone());
        let (item, position) = self
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let item = match item {
                    Some(item) => item_of(db, &group, item)?,
                    None => next_item(db, &group, now)?,
                };
                let position = match waits_as(&item) {
                    Some(position) => Some(position_of(db, &group, position)?),
                    None => None,
                };
                Ok((item, position))
            })
            .await?;
        // Only a problem is proved, and so proved again.
        let position = match position {
            Some(position) => Some(self.check_again(position).await?),
            None => None,
        };
        let now = self.now();
        let (at, by) = (place.clone(), coach.clone());
        let (group, errands) = (item.group_id, &self.inner.errands);
        let nonce = nonce(group, item.content_id, now);
        // Before the intent can be seen: nobody has tried to send this one yet.
        errands.note_fresh(&nonce);
        let intended = self
            .write({
                let nonce = nonce.clone();
                move |tx| {
                    let (group, by) = coaching(tx, &at, &by)?;
                    let item = item_of(tx, &group, item.id)?;
                    if let Some(position) = position.filter(|_| !fit(&item)) {
                        return bad_request(not_sound(&position));
                    }
                    did(tx, &group, &by, Deed::PostNow, None, &told(&item), now)?;
                    let settings = convert::kept_settings(&group.settings)?;
                    intend(
                        tx,
                        &group,
                        item.id,
                        free_slot(tx, group.id, now)?,
                        now,
                        &settings,
                        nonce,
                    )
                }
            })
            .await;
        if intended.is_err() {
            errands.forget_fresh(&nonce);
        }
        intended.map(|_| ())
    }

    /// Closes an open post with its reveal as soon as the chat can; replies end at once. Coaches only.
    pub async fn close_now(&self, place: &Place, coach: &Person, post: PostId) -> Done<()> {
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.inner.errands.note_fresh_reveal(post);
        let closing = self
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let post = post_of(tx, &group, post)?;
                let note = DeedNote::NotePost {
                    kind: Kind::of(&post.content).name(),
                    number: post.number,
                };
                match post.state {
                    PostState::Intended => bad_request(Refusal::NotOutYet),
                    PostState::Closing => bad_request(Refusal::ClosingAlready),
                    PostState::Closed => bad_request(Refusal::ClosedAlready),
                    // It takes no replies, and nothing is revealed.
                    PostState::Open if Kind::of(&post.content) == Kind::Words => {
                        Ok(close_words(tx, &post, now)?)
                    }
                    PostState::Open => {
                        let ends = after_what_came(tx, &post, now)?;
                        tx.set_closes_at(post.id, post.closes_at.min(ends))?;
                        did(tx, &group, &by, Deed::CloseNow, None, &note.to_keep(), now)?;
                        Ok(tx.mark_post_closing(post.id)?)
                    }
                }
            })
            .await;
        if closing.is_err() {
            self.inner.errands.forget_fresh_reveal(post);
        }
        closing
    }

    /// The post that takes replies now, if any; the latest when several do.
    pub(super) async fn open_now(&self, place: &Place) -> Done<Option<Post>> {
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
        let (group, post, held) = self
            .read(move |db| {
                let group = group_at(db, &place)?;
                let post = post_of(db, &group, post)?;
                if post.state == PostState::Intended {
                    return not_found(Refusal::StillOnItsWay);
                }
                let held = content::held(db, &post)?;
                Ok((group, post, held))
            })
            .await?;
        self.post_sheet(&convert::kept_settings(&group.settings)?, post, &held)
            .await
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

    /// The sheet of a post.
    pub(super) async fn post_sheet(
        &self,
        settings: &Settings,
        post: Post,
        held: &Held,
    ) -> Done<PostSheet> {
        Ok(PostSheet {
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
    let asks = match &post.content {
        store::Content::Problem { .. } | store::Content::Question { .. } => true,
        store::Content::Words(_) => false,
    };
    asks && matches!(post.state, PostState::Intended | PostState::Open) && now < post.closes_at
}

/// When replies to a post end that is closed at `now`: moments are kept to the second, and what came in the
/// same second came before.
fn after_what_came(db: &Db<'_>, post: &Post, now: DateTime<Utc>) -> Done<DateTime<Utc>> {
    Ok(match db.last_received(post.id)? {
        Some(last) => now.max(last + TimeDelta::seconds(1)),
        None => now,
    })
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

/// What a queue entry is called in the list of what coaches did.
fn told(item: &store::Queued) -> String {
    match &item.holds {
        Waits::Problem(_) => item.source.clone(),
        Waits::Question {
            asked: Written { words, .. },
            ..
        }
        | Waits::Words(Written { words, .. }) => content::beginning(words),
    }
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

/// The next item to go out: by the plan, or the first fit one while posting is paused.
fn next_item(db: &Db<'_>, group: &Group, now: DateTime<Utc>) -> Done<sealed_move_store::Queued> {
    let queue = db.queue(group.id)?;
    let plan = plan_of(db, group, &queue, now)?;
    let first = plan.due.first().map(|due| due.item);
    match queue
        .into_iter()
        .find(|item| fit(item) && first.is_none_or(|first| first == item.id))
    {
        Some(item) => Ok(item),
        None => not_found(Refusal::NothingToPost),
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
