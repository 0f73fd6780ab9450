//! What a coach does with a post by hand: seeing it before it goes out, sending it now, closing it.

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{Awaited, Db, Deed, Group, Post, PostState};

use super::{CoachDesk, queue::not_sound};
use crate::desk::{
    ContentId, InLesson, ItemId, Kind, Person, Place, PositionId, PostId, PostSheet,
    content::{self, Held},
    convert,
    deeds::{DeedNote, did},
    error::{Done, bad_request, not_found},
    handle::{coached, coaching, position_of, post_of},
    posting::{close_words, closing_time, free_slot, intend, nonce},
    problems::Posed,
    queue::{called, fit, item_of, plan_of, waits_as},
    refusal::Refusal,
};

impl CoachDesk<'_> {
    /// The post that a position would be, exactly as members would see it, numbered and timed as if it were
    /// the next. Coaches only.
    pub async fn preview(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
    ) -> Done<PostSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let found = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let position = position_of(db, &group, position)?;
                let queue = db.queue(group.id)?;
                let item = queue
                    .iter()
                    .find(|item| waits_as(item) == Some(position.id));
                let (item, topic) = (item.map(|item| item.id), position.topic.clone());
                let held = Held::Problem(Box::new(Posed::of(position)?));
                Ok((group, held, topic, item, None))
            })
            .await?;
        self.previewed(found).await
    }

    /// The post that an item of the week will be, as [`CoachDesk::preview`]. Coaches only.
    ///
    /// # Errors
    /// When it waits no longer.
    pub async fn preview_item(
        self,
        place: &Place,
        coach: &Person,
        item: ItemId,
    ) -> Done<PostSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let found = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let item = item_of(db, &group, item)?;
                let held = content::waiting(db, &group, item.holds)?;
                let lesson = content::in_lesson(db, item.content_id)?;
                Ok((group, held, item.topic, Some(item.id), lesson))
            })
            .await?;
        self.previewed(found).await
    }

    /// The post of what is not posted yet, as if it were the next, or as the plan has it for the item.
    pub(super) async fn previewed(
        self,
        (group, held, topic, item, lesson): (
            Group,
            Held,
            Option<String>,
            Option<ItemId>,
            Option<InLesson>,
        ),
    ) -> Done<PostSheet> {
        let now = self.desk.now();
        let settings = convert::kept_settings(&group.settings)?;
        let id = group.id;
        let (number, due) = self
            .desk
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
            lesson,
            content: self.desk.content_sheet(&held, &settings).await?,
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
    pub async fn post_now(self, place: &Place, coach: &Person, item: Option<ItemId>) -> Done<()> {
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let (item, position) = self
            .desk
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
            Some(position) => Some(self.desk.check_again(position).await?),
            None => None,
        };
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let (group, errands) = (item.group_id, &self.desk.inner.errands);
        let nonce = nonce(group, item.content_id, now);
        // Before the intent can be seen: nobody has tried to send this one yet.
        errands.note_fresh(&nonce);
        let intended = self
            .desk
            .write({
                let nonce = nonce.clone();
                move |tx| {
                    let (group, by) = coaching(tx, &at, &by)?;
                    let item = item_of(tx, &group, item.id)?;
                    tells_nothing(tx, &group, item.id)?;
                    if let Some(position) = position.filter(|_| !fit(&item)) {
                        return bad_request(not_sound(&position));
                    }
                    did(tx, &group, &by, Deed::PostNow, None, &called(&item), now)?;
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
    pub async fn close_now(self, place: &Place, coach: &Person, post: PostId) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk.inner.errands.note_fresh_reveal(post);
        let closing = self
            .desk
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
            self.desk.inner.errands.forget_fresh_reveal(post);
        }
        closing
    }
}

/// When replies to a post end that is closed at `now`: moments are kept to the second, and what came in the
/// same second came before.
fn after_what_came(db: &Db<'_>, post: &Post, now: DateTime<Utc>) -> Done<DateTime<Utc>> {
    Ok(match db.last_received(post.id)? {
        Some(last) => now.max(last + TimeDelta::seconds(1)),
        None => now,
    })
}

/// Refuses an item that would give away what is not revealed yet.
fn tells_nothing(db: &Db<'_>, group: &Group, item: ItemId) -> Done<()> {
    let awaited = db.awaited(group.id)?;
    match awaited.iter().find(|(waits, _)| *waits == item) {
        None => Ok(()),
        Some((_, Awaited::Post(post, _))) => bad_request(Refusal::WouldTell {
            number: post_of(db, group, *post)?.number,
        }),
        Some((_, Awaited::Queued(_))) => bad_request(Refusal::WouldTellOther),
    }
}

/// The next item to go out: by the plan, or the first fit one while posting is paused.
fn next_item(db: &Db<'_>, group: &Group, now: DateTime<Utc>) -> Done<sealed_move_store::Queued> {
    let queue = db.queue(group.id)?;
    let plan = plan_of(db, group, &queue, now)?;
    let first = plan.due.first().map(|due| due.item);
    let awaited = db.awaited(group.id)?;
    let waits = |item| awaited.iter().any(|(waits, _)| *waits == item);
    let next = |item: &sealed_move_store::Queued| match first {
        Some(first) => first == item.id,
        None => fit(item) && !waits(item.id),
    };
    match queue.into_iter().find(next) {
        Some(item) => Ok(item),
        None => not_found(Refusal::NothingToPost),
    }
}
