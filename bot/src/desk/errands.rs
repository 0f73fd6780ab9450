//! What goes out unasked, and when: the loop that a chat runs asks here for the next errand, carries it
//! out and reports back.
//!
//! The store holds where each post stands, and that alone decides what is still to do; so a restart at
//! any point loses nothing. Kept in memory only, since a restart may well begin afresh: what the chat is
//! carrying at the moment, how often an errand failed and when it may be tried again, and words to the
//! coach that no slot stands for.
//!
//! A post is written down as `intended` before the chat gets it, and as open when the chat has reported
//! where it went. Found `intended` and with nobody carrying it, it may have been sent before a crash or
//! a timeout: it comes `again`, and the chat looks for its nonce before it sends. Reveals likewise.
//! A word about an empty queue is written down once the chat has delivered it, so a crash in between
//! repeats it rather than losing it.

use std::collections::{HashMap, HashSet};
use std::sync::{Mutex, MutexGuard};

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{Db, Group, PostState, Queued, StoreError};

use super::{
    ChatName, Delivered, Desk, Errand, ErrandKind, Notice, Place, convert,
    error::Done,
    groups::place_of,
    posting::{closing_time, free_slot, intend, nonce},
    queue::{fit, plan_of, unsound},
    schedule::{Due, Plan},
};

/// An errand that the chat has neither reported nor refused by then is taken to be lost with its task.
const LOST_AFTER: TimeDelta = TimeDelta::minutes(15);

/// An errand is tried again after this long, then twice as long, up to [`LONGEST_PAUSE`].
const FIRST_PAUSE: TimeDelta = TimeDelta::seconds(15);
const LONGEST_PAUSE: TimeDelta = TimeDelta::minutes(30);

/// After so many failures the coaches are told, once.
const TELL_AFTER: u32 = 3;

/// A private word is given up after so many failures, some two hours.
const WORD_TRIES: u32 = 9;

/// What errands there are.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
enum Key {
    Post(i64),
    Reveal(i64),
    /// A queue entry that is due and not yet written down as a post.
    Due(i64),
    /// A private word, told apart by whom it is for and what it says.
    Word(Place, String),
}

/// How an errand fares that was handed out or failed.
#[derive(Clone, Debug)]
struct Fare {
    /// Since when the chat carries it; `None` when it has failed.
    carried_since: Option<DateTime<Utc>>,
    failures: u32,
    not_before: DateTime<Utc>,
}

/// What the desk knows of its errands beyond the store.
#[derive(Default)]
pub(super) struct Errands {
    kept: Mutex<Kept>,
    wake: tokio::sync::Notify,
    begun: tokio::sync::OnceCell<usize>,
    /// One look at a time for each chat, so that what one has written down no other takes for lost.
    looks: [tokio::sync::Mutex<()>; 2],
}

#[derive(Default)]
struct Kept {
    fares: HashMap<Key, Fare>,
    /// Nonces of posts written down in this run that no chat has been given yet.
    fresh: HashSet<String>,
    fresh_reveals: HashSet<i64>,
    words: Vec<(Place, ErrandKind)>,
}

impl Errands {
    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.kept
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner)
    }

    pub(super) fn note_fresh(&self, nonce: &str) {
        self.kept().fresh.insert(nonce.to_owned());
    }

    pub(super) fn forget_fresh(&self, nonce: &str) {
        self.kept().fresh.remove(nonce);
    }

    pub(super) fn note_fresh_reveal(&self, post: i64) {
        self.kept().fresh_reveals.insert(post);
    }

    pub(super) fn forget_fresh_reveal(&self, post: i64) {
        self.kept().fresh_reveals.remove(&post);
    }

    /// Leaves a private word to be sent, once however often it is said before that.
    pub(super) fn tell(&self, place: Place, word: ErrandKind) {
        let mut kept = self.kept();
        let key = key_at(&place, &word);
        if !kept.words.iter().any(|(at, said)| key_at(at, said) == key) {
            kept.words.push((place, word));
        }
        drop(kept);
        self.wake.notify_waiters();
    }

    /// When an errand may be handed out: `None` for now, else the moment to look again.
    fn held_until(&self, key: &Key, now: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let kept = self.kept();
        let fare = kept.fares.get(key)?;
        let free = fare
            .carried_since
            .map_or(fare.not_before, |since| since + LOST_AFTER);
        (free > now).then_some(free)
    }

    fn hand_out(&self, key: Key, now: DateTime<Utc>) {
        let mut kept = self.kept();
        let fare = kept.fares.entry(key).or_insert(Fare {
            carried_since: None,
            failures: 0,
            not_before: now,
        });
        fare.carried_since = Some(now);
    }

    /// Notes a failure; says how many there have been.
    fn failed(&self, key: &Key, now: DateTime<Utc>) -> u32 {
        let mut kept = self.kept();
        let fare = kept.fares.entry(key.clone()).or_insert(Fare {
            carried_since: None,
            failures: 0,
            not_before: now,
        });
        let pause =
            (0..fare.failures.min(16)).fold(FIRST_PAUSE, |pause, _| (pause * 2).min(LONGEST_PAUSE));
        fare.carried_since = None;
        fare.failures += 1;
        fare.not_before = now + pause;
        let failures = fare.failures;
        drop(kept);
        self.wake.notify_waiters();
        failures
    }

    fn done(&self, key: &Key) {
        let mut kept = self.kept();
        kept.fares.remove(key);
        if let Key::Word(..) = key {
            kept.words.retain(|(at, word)| key_at(at, word) != *key);
        }
    }
}

/// What a look at the store came to.
pub(super) enum Look {
    /// Something to carry.
    Go(Errand),
    /// Something was done; look again.
    Again,
    /// Nothing before this moment, or before something changes.
    Wait(Option<DateTime<Utc>>),
}

/// One group as a look finds it.
struct Found {
    group: Group,
    intended: Vec<sealed_move_store::Post>,
    closing: Vec<sealed_move_store::Post>,
    open: Vec<sealed_move_store::Post>,
    queue: Vec<Queued>,
    plan: Plan,
}

impl Desk {
    /// Waits for the next thing that must go out in `chat` and records the intent. Sleeps until the next
    /// due moment; wakes when the queue, the settings or a post change, and within half a minute when
    /// another process changed them. Unfinished errands of an earlier run come first, marked `again`.
    ///
    /// May be dropped while it waits: nothing is lost.
    ///
    /// # Errors
    /// When the store fails; ask again after a pause.
    pub async fn next_errand(&self, chat: ChatName) -> Done<Errand> {
        let mut changes = self.inner.store.changes();
        loop {
            changes.borrow_and_update();
            // Before the look as well: what another process writes during it must not be missed.
            let version = self.inner.store.data_version().await?;
            // Before the look, or a word left during it would be slept over.
            let woken = self.inner.errands.wake.notified();
            tokio::pin!(woken);
            woken.as_mut().enable();
            let until = match self.look(chat).await? {
                Look::Go(errand) => return Ok(errand),
                Look::Again => continue,
                Look::Wait(until) => until,
            };
            let due = async {
                match until {
                    Some(moment) => self.inner.clock.sleep_until(moment).await,
                    None => std::future::pending().await,
                }
            };
            tokio::select! {
                () = due => {}
                () = woken => {}
                changed = changes.changed() => {
                    if changed.is_err() {
                        return Err(StoreError::Stopped.into());
                    }
                }
                changed = self.other_process(version) => changed?,
            }
        }
    }

    /// Records where an errand went. Reporting one twice does no harm.
    pub async fn errand_done(&self, errand: &Errand, delivered: &Delivered) -> Done<()> {
        let key = key_of(errand);
        let settled = self.settle(errand, delivered.clone(), &key).await;
        match &settled {
            Ok(()) => self.inner.errands.done(&key),
            // It went out, and that could not be written down: it comes again before long, and the
            // chat finds it by its nonce.
            Err(_) => {
                self.inner.errands.failed(&key, self.now());
            }
        }
        settled
    }

    async fn settle(&self, errand: &Errand, delivered: Delivered, key: &Key) -> Done<()> {
        let now = self.now();
        match &errand.kind {
            ErrandKind::Post { sheet, .. } => {
                let post = sheet.post;
                self.write(move |tx| match tx.post(post)? {
                    Some(kept) if kept.state == PostState::Intended => Ok(tx.mark_post_open(
                        post,
                        now,
                        delivered.message.as_deref(),
                        delivered.thread.as_deref(),
                    )?),
                    _ => Ok(()),
                })
                .await?;
                self.warm_up(post);
            }
            ErrandKind::Reveal { sheet, .. } => {
                let post = sheet.post.post;
                self.write(move |tx| match tx.post(post)? {
                    Some(kept) if kept.state == PostState::Closing => {
                        Ok(tx.mark_post_closed(post, now, delivered.message.as_deref())?)
                    }
                    _ => Ok(()),
                })
                .await?;
            }
            ErrandKind::TellCoach(_) => {
                if *key == empty_queue_key(&errand.place) {
                    self.settle_empty_slot(&errand.place, now).await?;
                }
            }
            ErrandKind::TellMember { .. } => {}
        }
        Ok(())
    }

    /// Records that an errand could not be carried out now; it comes again after a pause that doubles
    /// each time. After three failures the coaches are told.
    pub async fn errand_failed(&self, errand: &Errand, why: &str) -> Done<()> {
        self.fail(key_of(errand), &errand.place, what(errand), why)
            .await
    }

    async fn fail(&self, key: Key, place: &Place, what: String, why: &str) -> Done<()> {
        let now = self.now();
        let failures = self.inner.errands.failed(&key, now);
        tracing::debug!(failures, chat = ?place.chat, channel = %place.channel, "could not send {what}: {why}");
        match &key {
            Key::Word(..) if failures >= WORD_TRIES => {
                if key == empty_queue_key(place) {
                    self.settle_empty_slot(place, now).await?;
                }
                self.inner.errands.done(&key);
            }
            Key::Word(..) => {}
            Key::Post(_) | Key::Reveal(_) | Key::Due(_) => {
                if failures == TELL_AFTER {
                    let text = format!("{what} could not be sent: {why} I go on trying.");
                    self.inner
                        .errands
                        .tell(place.clone(), ErrandKind::TellCoach(Notice { text }));
                }
            }
        }
        Ok(())
    }

    /// The slot that found the queue empty is past.
    async fn settle_empty_slot(&self, place: &Place, now: DateTime<Utc>) -> Done<()> {
        let group = self.group(place).await?;
        self.write(move |tx| Ok(tx.set_empty_told_at(group.id, Some(now))?))
            .await
    }

    /// Ends when another process has written to the store.
    async fn other_process(&self, seen: i64) -> Done<()> {
        loop {
            tokio::time::sleep(self.inner.options.look_for_others).await;
            if self.inner.store.data_version().await? != seen {
                return Ok(());
            }
        }
    }

    /// Takes up where an earlier run has left off: replies it wrote down and did not judge, and the
    /// solutions of posts that are open.
    async fn take_up(&self) -> Done<usize> {
        let open = self
            .read(|db| {
                let mut open = Vec::new();
                for group in db.groups()? {
                    open.extend(db.open_posts(group.id)?.iter().map(|post| post.id));
                }
                Ok(open)
            })
            .await?;
        for post in open {
            self.warm_up(post);
        }
        self.judge_pending().await
    }

    /// Proves the solution of a post that has just gone out, so that the first reply need not wait.
    fn warm_up(&self, post: i64) {
        let desk = self.clone();
        tokio::spawn(async move {
            let position = desk
                .read(move |db| {
                    let post = db.post(post)?;
                    Ok(match post {
                        Some(post) => db.position(post.position_id)?,
                        None => None,
                    })
                })
                .await;
            if let Ok(Some(position)) = position {
                let _ = desk.problem(&position.fen, &position.stipulation).await;
            }
        });
    }

    pub(super) async fn look(&self, chat: ChatName) -> Done<Look> {
        // Once, and before any reveal: replies that an earlier run wrote down and did not judge.
        self.inner
            .errands
            .begun
            .get_or_try_init(|| self.take_up())
            .await?;
        let _looking = self.inner.errands.looks[match chat {
            ChatName::Room => 0,
            ChatName::Discord => 1,
        }]
        .lock()
        .await;
        let now = self.now();
        let found = self.read(move |db| find(db, chat, now)).await?;
        let mut wait = Soonest(None);

        if let Some(errand) = self.pending_word(chat, now, &mut wait) {
            return Ok(Look::Go(errand));
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

    fn pending_word(
        &self,
        chat: ChatName,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Option<Errand> {
        let errands = &self.inner.errands;
        let pending = errands.kept().words.clone();
        for (place, kind) in pending.into_iter().filter(|(place, _)| place.chat == chat) {
            let key = key_at(&place, &kind);
            match errands.held_until(&key, now) {
                Some(moment) => wait.at(moment),
                None => {
                    errands.hand_out(key, now);
                    return Some(Errand { place, kind });
                }
            }
        }
        None
    }

    /// A post that is written down and not known to be sent.
    async fn unfinished_post(
        &self,
        found: &Found,
        post: &sealed_move_store::Post,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let errands = &self.inner.errands;
        let key = Key::Post(post.id);
        if let Some(moment) = errands.held_until(&key, now) {
            wait.at(moment);
            return Ok(None);
        }
        let place = place_of(&found.group);
        let mut post = post.clone();
        let built = async {
            let settings = convert::kept_settings(&found.group.settings)?;
            // Held up for long, it would close too soon after it went out, or before.
            let closes_at = closing_time(post.slot, now, &settings);
            if closes_at > post.closes_at {
                let id = post.id;
                self.write(move |tx| Ok(tx.set_closes_at(id, closes_at)?))
                    .await?;
                post.closes_at = closes_at;
            }
            let position = self.position_of_post(post.position_id).await?;
            self.post_sheet(&settings, post.clone(), &position).await
        }
        .await;
        match built {
            Ok(sheet) => {
                let again = !errands.kept().fresh.remove(&sheet.nonce);
                errands.hand_out(key, now);
                let sheet = Box::new(sheet);
                Ok(Some(Look::Go(Errand {
                    place,
                    kind: ErrandKind::Post { sheet, again },
                })))
            }
            Err(error) => {
                self.fail(
                    key,
                    &place,
                    format!("Post {}", post.number),
                    &error.to_string(),
                )
                .await?;
                Ok(Some(Look::Again))
            }
        }
    }

    /// A post whose replies have ended and whose reveal is not known to be sent.
    async fn unfinished_reveal(
        &self,
        found: &Found,
        post: &sealed_move_store::Post,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let errands = &self.inner.errands;
        let key = Key::Reveal(post.id);
        if let Some(moment) = errands.held_until(&key, now) {
            wait.at(moment);
            return Ok(None);
        }
        let place = place_of(&found.group);
        match self.reveal_sheet(&place, post.clone()).await {
            Ok(sheet) => {
                let again = !errands.kept().fresh_reveals.remove(&post.id);
                errands.hand_out(key, now);
                let sheet = Box::new(sheet);
                Ok(Some(Look::Go(Errand {
                    place,
                    kind: ErrandKind::Reveal { sheet, again },
                })))
            }
            Err(error) => {
                self.fail(
                    key,
                    &place,
                    format!("The reveal of post {}", post.number),
                    &error.to_string(),
                )
                .await?;
                Ok(Some(Look::Again))
            }
        }
    }

    async fn begin_closing(&self, post: i64) -> Done<()> {
        self.inner.errands.note_fresh_reveal(post);
        let closing = self
            .write(move |tx| match tx.post(post)? {
                Some(kept) if kept.state == PostState::Open => Ok(tx.mark_post_closing(post)?),
                _ => Ok(()),
            })
            .await;
        if closing.is_err() {
            self.inner.errands.forget_fresh_reveal(post);
        }
        closing
    }

    /// The group's slot that has come, if one has: written down, or the coach to be told.
    async fn due(
        &self,
        found: &Found,
        now: DateTime<Utc>,
        wait: &mut Soonest,
    ) -> Done<Option<Look>> {
        let place = place_of(&found.group);
        if found.plan.empty.is_some() {
            let kind = empty_queue();
            let key = key_at(&place, &kind);
            if let Some(moment) = self.inner.errands.held_until(&key, now) {
                wait.at(moment);
                return Ok(None);
            }
            self.inner.errands.hand_out(key, now);
            return Ok(Some(Look::Go(Errand { place, kind })));
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
        if let Some(moment) = self.inner.errands.held_until(&key, now) {
            wait.at(moment);
            return Ok(None);
        }
        if let Err(error) = self.intend_due(found, item, due, now).await {
            let what = format!("The position {}", item.source);
            self.fail(key, &place, what, &error.to_string()).await?;
        }
        Ok(Some(Look::Again))
    }

    /// Checks a position that is due once more where that is called for, and records the intent to post
    /// it, unless the queue has changed meanwhile.
    async fn intend_due(
        &self,
        found: &Found,
        item: &Queued,
        due: Due,
        now: DateTime<Utc>,
    ) -> Done<()> {
        let checked_before = item.checker_version;
        let position = self
            .check_again(self.position_of_post(item.position_id).await?)
            .await?;
        if position.check.checker_version != checked_before
            && position.check.soundness != sealed_move_store::Soundness::Sound
            && !position.anyway
        {
            let text = format!(
                "Checked again before posting, it no longer passes. {}",
                unsound(&position)
            );
            let word = ErrandKind::TellCoach(Notice { text });
            self.inner.errands.tell(place_of(&found.group), word);
            return Ok(());
        }
        let nonce = nonce(found.group.id, position.id, now);
        self.inner.errands.note_fresh(&nonce);
        let intended = self
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
            self.inner.errands.forget_fresh(&nonce);
        }
        intended.map(|_| ())
    }

    async fn position_of_post(&self, position: i64) -> Done<sealed_move_store::Position> {
        self.read(move |db| match db.position(position)? {
            Some(position) => Ok(position),
            None => super::error::not_found("The position was removed."),
        })
        .await
    }
}

/// What the coaches are told when a slot finds nothing to post.
const EMPTY_QUEUE: &str = "It is time for a post, and nothing in the queue may be posted, so nothing was. \
Import positions and queue sound ones; then wait for the next slot, or post at once.";

/// The earliest of several moments.
struct Soonest(Option<DateTime<Utc>>);

impl Soonest {
    fn at(&mut self, moment: DateTime<Utc>) {
        self.0 = Some(self.0.map_or(moment, |soonest| soonest.min(moment)));
    }
}

fn find(db: &Db<'_>, chat: ChatName, now: DateTime<Utc>) -> Done<Vec<Found>> {
    let mut all = Vec::new();
    for group in db.groups_of(convert::chat(chat))? {
        let queue = db.queue(group.id)?;
        all.push(Found {
            intended: db.posts_in(group.id, PostState::Intended)?,
            closing: db.posts_in(group.id, PostState::Closing)?,
            open: db.open_posts(group.id)?,
            // A group whose calendar cannot be read must not keep the others waiting.
            plan: plan_of(db, &group, &queue, now).unwrap_or_else(|error| {
                tracing::error!(group = group.id, %error, "this group's calendar cannot be read");
                Plan::default()
            }),
            queue,
            group,
        });
    }
    Ok(all)
}

fn key_of(errand: &Errand) -> Key {
    key_at(&errand.place, &errand.kind)
}

fn key_at(place: &Place, kind: &ErrandKind) -> Key {
    match kind {
        ErrandKind::Post { sheet, .. } => Key::Post(sheet.post),
        ErrandKind::Reveal { sheet, .. } => Key::Reveal(sheet.post.post),
        ErrandKind::TellCoach(notice) => Key::Word(place.clone(), notice.text.clone()),
        ErrandKind::TellMember { user, sheet, .. } => Key::Word(
            place.clone(),
            format!("{user} {} {}", sheet.reply, sheet.message),
        ),
    }
}

fn empty_queue() -> ErrandKind {
    ErrandKind::TellCoach(Notice {
        text: EMPTY_QUEUE.to_owned(),
    })
}

fn empty_queue_key(place: &Place) -> Key {
    key_at(place, &empty_queue())
}

fn what(errand: &Errand) -> String {
    match &errand.kind {
        ErrandKind::Post { sheet, .. } => format!("Post {}", sheet.number),
        ErrandKind::Reveal { sheet, .. } => format!("The reveal of post {}", sheet.post.number),
        ErrandKind::TellCoach(_) => "A word to the coaches".into(),
        ErrandKind::TellMember { .. } => "A word to a member".into(),
    }
}
