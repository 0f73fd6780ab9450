//! What the desk knows of its errands beyond the store, in memory: what the chat is carrying, how often an
//! errand failed and when it may be tried again, and words that no slot stands for.

use std::{
    collections::{HashMap, HashSet, VecDeque},
    sync::{Arc, Mutex, MutexGuard},
};

use chrono::{DateTime, TimeDelta, Utc};

use super::{
    ChatKey, Earlier, Errand, ErrandKind, ItemId, Notice, Place, PostId, ReplyId, outbox::Own,
};

/// An errand that the chat has neither reported nor refused by then is taken to be lost with its task.
const LOST_AFTER: TimeDelta = TimeDelta::minutes(15);

/// An errand is tried again after this long, then twice as long, up to [`LONGEST_PAUSE`].
const FIRST_PAUSE: TimeDelta = TimeDelta::seconds(15);

const LONGEST_PAUSE: TimeDelta = TimeDelta::minutes(30);

/// What errands there are.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(super) enum Key {
    Post(PostId),
    Reveal(PostId),
    /// A queue entry that is due and not yet written down as a post.
    Due(ItemId),
    /// A writer to be asked for their leave to show an answer.
    Leave(ReplyId),
    /// An answer to be shown, or to be taken out of sight.
    Example(ReplyId),
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
    kept: Mutex<Memory>,
    pub(super) wake: tokio::sync::Notify,
    pub(super) warm: tokio::sync::Notify,
    pub(super) begun: tokio::sync::OnceCell<usize>,
    /// Whose work on which post an earlier run left unjudged, by post and the chat's id of the person.
    pub(super) left_behind: tokio::sync::OnceCell<HashSet<(PostId, String)>>,
    /// Which words in the outbox are of this run.
    pub(super) own: Own,
    /// One look at a time for each chat, so that what one has written down no other takes for lost.
    looks: Mutex<HashMap<ChatKey, Arc<tokio::sync::Mutex<()>>>>,
}

/// A word that waits to be sent.
#[derive(Clone, Debug)]
pub(super) struct Left {
    pub(super) place: Place,
    pub(super) kind: ErrandKind,
    /// Where it stands in the outbox, if it does.
    pub(super) word: Option<i64>,
    /// An attempt that was made before, of one that does not stand there.
    pub(super) earlier: Option<Earlier>,
}

impl Left {
    /// A word that is not in the outbox and was never tried.
    pub(super) fn new(place: Place, kind: ErrandKind) -> Self {
        Self {
            place,
            kind,
            word: None,
            earlier: None,
        }
    }

    fn key(&self) -> Key {
        key_at(&self.place, &self.kind)
    }
}

#[derive(Default)]
pub(super) struct Memory {
    fares: HashMap<Key, Fare>,
    /// Nonces of posts written down in this run that no chat has been given yet.
    pub(super) fresh: HashSet<String>,
    pub(super) fresh_reveals: HashSet<PostId>,
    pub(super) words: Vec<Left>,
    /// Posts whose solution is still to be proved.
    pub(super) to_warm: VecDeque<PostId>,
}

impl Errands {
    /// What one look of a chat holds while it lasts.
    pub(super) fn look_of(&self, chat: ChatKey) -> Arc<tokio::sync::Mutex<()>> {
        let mut looks = self
            .looks
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner);
        Arc::clone(looks.entry(chat).or_default())
    }

    pub(super) fn kept(&self) -> MutexGuard<'_, Memory> {
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

    pub(super) fn note_fresh_reveal(&self, post: PostId) {
        self.kept().fresh_reveals.insert(post);
    }

    pub(super) fn forget_fresh_reveal(&self, post: PostId) {
        self.kept().fresh_reveals.remove(&post);
    }

    /// Leaves a private word to be sent, once however often it is said before that.
    /// Says whether it was not left already.
    pub(super) fn tell(&self, left: Left) -> bool {
        let mut kept = self.kept();
        let key = left.key();
        let new = !kept.words.iter().any(|waits| waits.key() == key);
        if new {
            kept.words.push(left);
        }
        drop(kept);
        self.wake.notify_waiters();
        new
    }

    /// Whether this word waits to be sent, or is being sent.
    pub(super) fn waits(&self, place: &Place, word: &ErrandKind) -> bool {
        let key = key_at(place, word);
        self.kept().words.iter().any(|waits| waits.key() == key)
    }

    /// Whether the word of that id in the outbox waits to be sent, or is being sent.
    pub(super) fn has_word(&self, id: i64) -> bool {
        self.kept().words.iter().any(|waits| waits.word == Some(id))
    }

    /// When an errand may be handed out: `None` for now, else the moment to look again.
    pub(super) fn held_until(&self, key: &Key, now: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let kept = self.kept();
        let fare = kept.fares.get(key)?;
        let free = fare
            .carried_since
            .map_or(fare.not_before, |since| since + LOST_AFTER);
        (free > now).then_some(free)
    }

    pub(super) fn hand_out(&self, key: Key, now: DateTime<Utc>) {
        let mut kept = self.kept();
        let fare = kept.fares.entry(key).or_insert(Fare {
            carried_since: None,
            failures: 0,
            not_before: now,
        });
        fare.carried_since = Some(now);
    }

    /// Notes a failure; says how many there have been.
    pub(super) fn failed(&self, key: &Key, now: DateTime<Utc>) -> u32 {
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

    /// An errand is done, or given up; gives the word that it was.
    pub(super) fn done(&self, key: &Key) -> Option<Left> {
        let mut kept = self.kept();
        kept.fares.remove(key);
        let at = kept.words.iter().position(|left| left.key() == *key)?;
        Some(kept.words.remove(at))
    }
}

pub(super) fn key_of(errand: &Errand) -> Key {
    key_at(&errand.place, &errand.kind)
}

pub(super) fn key_at(place: &Place, kind: &ErrandKind) -> Key {
    match kind {
        ErrandKind::Post { sheet, .. } => Key::Post(sheet.post),
        ErrandKind::Reveal { sheet, .. } => Key::Reveal(sheet.post.post),
        ErrandKind::AskLeave(asked) => Key::Leave(asked.reply),
        ErrandKind::Example(sheet) => Key::Example(sheet.reply),
        ErrandKind::TellCoach(notice) => Key::Word(place.clone(), notice.to_keep()),
        ErrandKind::AnswerMember(told) => Key::Word(
            place.clone(),
            format!("{} {} {}", told.user, told.row.reply, told.row.words),
        ),
        ErrandKind::TellMember { user, sheet, .. } => Key::Word(
            place.clone(),
            format!("{user} {} {:?}", sheet.reply, sheet.said.facts),
        ),
    }
}

pub(super) fn empty_queue() -> ErrandKind {
    ErrandKind::TellCoach(Box::new(Notice::SlotEmpty))
}

pub(super) fn empty_queue_key(place: &Place) -> Key {
    key_at(place, &empty_queue())
}
