//! A look at the store: the next thing to carry in a chat, written down before it is handed out.

use chrono::{DateTime, Utc};
use sealed_move_store::{Db, Group, PostState, Queued, Waits};

use super::{
    Rounds,
    errands::{Look, Unsent},
};
use crate::desk::{
    ChatKey, Errand, ErrandKind, Kind, Notice, Place, PositionId, PostId, Sentence, Step, StepDone,
    content, convert,
    error::{self, Done},
    groups::place_of,
    ledger::{Key, Left, empty_queue, key_at},
    posting::{close_words, closing_time, free_slot, intend, nonce},
    queue::{fit, plan_of, waits_as},
    refusal::{Refusal, Removed},
    schedule::{Due, Plan},
};

/// One group as a look finds it.
struct Found {
    group: Group,
    /// Posts that are written down and not known to be whole in the chat.
    intended: Vec<sealed_move_store::Post>,
    closing: Vec<sealed_move_store::Post>,
    open: Vec<sealed_move_store::Post>,
    queue: Vec<Queued>,
    plan: Plan,
}

/// The earliest of several moments.
pub(super) struct Soonest(Option<DateTime<Utc>>);

impl Soonest {
    pub(super) fn at(&mut self, moment: DateTime<Utc>) {
        self.0 = Some(self.0.map_or(moment, |soonest| soonest.min(moment)));
    }

    /// Whether an errand is held, with the moment until then noted.
    pub(super) fn held(&mut self, until: Option<DateTime<Utc>>) -> bool {
        if let Some(moment) = until {
            self.at(moment);
        }
        until.is_some()
    }
}

impl Rounds<'_> {
    pub(in crate::desk) async fn look(self, chat: ChatKey) -> Done<Look> {
        // Once, and before any reveal: replies that an earlier run wrote down and did not judge.
        self.taken_up().await?;
        let look = self.desk.inner.errands.look_of(chat);
        let _looking = look.lock().await;
        let now = self.desk.now();
        let found = self.desk.read(move |db| find(db, chat, now)).await?;
        let mut wait = Soonest(None);

        if let Some(left) = self.pending_word(chat, now, &mut wait) {
            let earlier = match left.word {
                Some(word) => self.word_tried(word).await?,
                None => left.earlier,
            };
            return Ok(Look::Go(Errand {
                place: left.place,
                kind: left.kind,
                done: Vec::new(),
                earlier,
                word: left.word,
            }));
        }
        for found in &found {
            for post in &found.intended {
                if let Some(look) = self.unfinished_post(found, post, now, &mut wait).await? {
                    return Ok(look);
                }
            }
        }
        for found in &found {
            for post in &found.closing {
                if let Some(look) = self.unfinished_reveal(found, post, now, &mut wait).await? {
                    return Ok(look);
                }
            }
        }
        if let Some(look) = self.examples(chat, now, &mut wait).await? {
            return Ok(look);
        }
        for found in &found {
            for post in &found.open {
                if post.closes_at <= now {
                    self.begin_closing(post.id).await?;
                    return Ok(Look::Again);
                }
                wait.at(post.closes_at);
            }
        }
        for found in found {
            if let Some(look) = self.due(&found, now, &mut wait).await? {
                return Ok(look);
            }
        }
        Ok(Look::Wait(wait.0))
    }

    fn pending_word(self, chat: ChatKey, now: DateTime<Utc>, wait: &mut Soonest) -> Option<Left> {
        let errands = &self.desk.inner.errands;
        let pending = errands.kept().words.clone();
        for left in pending.into_iter().filter(|left| left.place.chat == chat) {
            let key = key_at(&left.place, &left.kind);
            if !wait.held(errands.held_until(&key, now)) {
                errands.hand_out(key, now);
                return Some(left);
            }
        }
        None
    }

    /// A post that is written down and not known to be sent, or not wholly.
    async fn unfinished_post(
        self,
        found: &Found,
        post: &sealed_move_store::Post,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let errands = &self.desk.inner.errands;
        let key = Key::Post(post.id);
        if wait.held(errands.held_until(&key, now)) {
            return Ok(None);
        }
        let place = place_of(&found.group);
        let mut post = post.clone();
        let built = async {
            let settings = convert::kept_settings(&found.group.settings)?;
            // Held up for long, it would close too soon after it went out, or before.
            let closes_at = closing_time(post.slot, now, &settings);
            if closes_at > post.closes_at && post.state == PostState::Intended {
                let id = post.id;
                self.desk
                    .write(move |tx| Ok(tx.set_closes_at(id, closes_at)?))
                    .await?;
                post.closes_at = closes_at;
            }
            let of = post.clone();
            let (held, lesson) = self
                .desk
                .read(move |db| {
                    let lesson = content::in_lesson(db, of.content_id)?;
                    Ok((content::held(db, &of)?, lesson))
                })
                .await?;
            let post = post.clone();
            self.desk.post_sheet(&settings, post, &held, lesson).await
        }
        .await;
        let built = built.map(|sheet| ErrandKind::Post {
            again: !errands.kept().fresh.remove(&sheet.nonce),
            sheet: Box::new(sheet),
        });
        let what = Unsent::Post(Kind::of(&post.content).name(), post.number);
        self.handed_out(key, post.id, place, what, built, now).await
    }

    /// A post whose replies have ended and whose reveal is not known to be sent.
    async fn unfinished_reveal(
        self,
        found: &Found,
        post: &sealed_move_store::Post,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let errands = &self.desk.inner.errands;
        let key = Key::Reveal(post.id);
        if wait.held(errands.held_until(&key, now)) {
            return Ok(None);
        }
        let kind = Kind::of(&post.content);
        if kind == Kind::Words {
            let id = post.id;
            self.desk
                .write(move |tx| match tx.post(id)? {
                    Some(post) if post.state == PostState::Closing => {
                        Ok(close_words(tx, &post, now)?)
                    }
                    _ => Ok(()),
                })
                .await?;
            return Ok(Some(Look::Again));
        }
        let place = place_of(&found.group);
        let built = self.desk.reveal_sheet(&place, post.clone()).await;
        let built = built.map(|sheet| ErrandKind::Reveal {
            again: !errands.kept().fresh_reveals.remove(&post.id),
            sheet: Box::new(sheet),
        });
        let what = Unsent::Reveal(kind.name(), post.number);
        self.handed_out(key, post.id, place, what, built, now).await
    }

    /// Hands out what could be built; what could not is tried again later.
    async fn handed_out(
        self,
        key: Key,
        post: PostId,
        place: Place,
        what: Unsent,
        built: Done<ErrandKind>,
        now: DateTime<Utc>,
    ) -> Done<Option<Look>> {
        match built {
            Ok(kind) => {
                let rows = self.desk.read(move |db| Ok(db.steps(post)?)).await?;
                let steps = rows.into_iter().filter_map(|row| {
                    let step = Step::parse(&row.step)?;
                    let reference = row.reference;
                    Some(StepDone { step, reference })
                });
                let done = steps.collect();
                self.desk.inner.errands.hand_out(key, now);
                Ok(Some(Look::Go(Errand {
                    place,
                    kind,
                    done,
                    earlier: None,
                    word: None,
                })))
            }
            Err(error) => {
                self.fail(key, &place, what, Sentence::of(&error)).await?;
                Ok(Some(Look::Again))
            }
        }
    }

    async fn begin_closing(self, post: PostId) -> Done<()> {
        self.desk.inner.errands.note_fresh_reveal(post);
        let closing = self
            .desk
            .write(move |tx| match tx.post(post)? {
                Some(kept) if kept.state == PostState::Open => Ok(tx.mark_post_closing(post)?),
                _ => Ok(()),
            })
            .await;
        if closing.is_err() {
            self.desk.inner.errands.forget_fresh_reveal(post);
        }
        closing
    }

    /// The group's slot that has come, if one has: written down, or the coach to be told.
    async fn due(
        self,
        found: &Found,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let place = place_of(&found.group);
        if found.plan.empty.is_some() {
            // Left once; what becomes of it is seen above, with the other words.
            let kind = empty_queue();
            if self.desk.inner.errands.waits(&place, &kind) {
                return Ok(None);
            }
            self.tell_coaches(&place, Notice::SlotEmpty).await?;
            return Ok(Some(Look::Again));
        }
        if let Some(next) = found.plan.next.filter(|next| *next > now) {
            wait.at(next);
            return Ok(None);
        }
        let Some(due) = found.plan.due.first().filter(|due| due.at <= now).copied() else {
            return Ok(None);
        };
        let Some(item) = found.queue.iter().find(|item| item.id == due.item) else {
            return Ok(None);
        };
        let key = Key::Due(item.id);
        if wait.held(self.desk.inner.errands.held_until(&key, now)) {
            return Ok(None);
        }
        if let Err(error) = self.intend_due(found, item, due, now).await {
            let what = Unsent::Due((!item.source.is_empty()).then(|| item.source.clone()));
            self.fail(key, &place, what, Sentence::of(&error)).await?;
        }
        Ok(Some(Look::Again))
    }

    /// Checks a problem that is due once more where that is called for, and records the intent to post
    /// it, unless the queue has changed meanwhile.
    async fn intend_due(
        self,
        found: &Found,
        item: &Queued,
        due: Due,
        now: DateTime<Utc>,
    ) -> Done<()> {
        // Only a problem is proved, and so proved again.
        if let (Waits::Problem(before), Some(position)) = (&item.holds, waits_as(item)) {
            let position = self
                .desk
                .check_again(self.kept_position(position).await?)
                .await?;
            if position.check.checker_version != before.checker_version
                && position.check.soundness != sealed_move_store::Soundness::Sound
                && !position.anyway
            {
                let notice = Notice::NoLongerPasses {
                    position: position.source.clone().into(),
                    soundness: convert::kept_soundness(position.check.soundness),
                };
                return self.tell_coaches(&place_of(&found.group), notice).await;
            }
        }
        let nonce = nonce(found.group.id, item.content_id, now);
        self.desk.inner.errands.note_fresh(&nonce);
        let intended = self
            .desk
            .write({
                let (nonce, group) = (nonce.clone(), found.group.id);
                move |tx| {
                    // The queue may have changed during the check: only what is still due goes out.
                    let Some(group) = tx.group(group)? else {
                        return Ok(false);
                    };
                    let queue = tx.queue(group.id)?;
                    let plan = plan_of(tx, &group, &queue, now)?;
                    let still = queue.iter().any(|item| item.id == due.item && fit(item));
                    if plan.due.first() != Some(&due) || !still {
                        return Ok(false);
                    }
                    let settings = convert::kept_settings(&group.settings)?;
                    let slot = free_slot(tx, group.id, due.at)?;
                    intend(tx, &group, due.item, slot, now, &settings, nonce)?;
                    Ok(true)
                }
            })
            .await;
        if !matches!(intended, Ok(true)) {
            self.desk.inner.errands.forget_fresh(&nonce);
        }
        intended.map(|_| ())
    }

    async fn kept_position(self, position: PositionId) -> Done<sealed_move_store::Position> {
        self.desk
            .read(move |db| match db.position(position)? {
                Some(position) => Ok(position),
                None => error::not_found(Refusal::RemovedMeanwhile {
                    what: Removed::Position,
                }),
            })
            .await
    }
}

fn find(db: &Db<'_>, chat: ChatKey, now: DateTime<Utc>) -> Done<Vec<Found>> {
    let mut all = Vec::new();
    for group in db.groups_of(chat)? {
        let queue = db.queue(group.id)?;
        all.push(Found {
            intended: {
                let mut posts = db.half_sent_posts(group.id)?;
                posts.extend(db.posts_in(group.id, PostState::Intended)?);
                posts
            },
            closing: db.posts_in(group.id, PostState::Closing)?,
            open: db.open_posts(group.id)?,
            // A group whose calendar cannot be read must not keep the others waiting.
            plan: plan_of(db, &group, &queue, now).unwrap_or_else(|error| {
                tracing::error!(group = %group.id, %error, "this group's calendar cannot be read");
                Plan::default()
            }),
            queue,
            group,
        });
    }
    Ok(all)
}
