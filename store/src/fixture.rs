//! What the tests of this package share: a store on a real file with a group in it.

use chrono::{
    TimeDelta, TimeZone, Utc,
    Weekday::{Fri, Mon, Thu, Tue, Wed},
};
use serde_json::json;
use tempfile::TempDir;

use crate::{
    Attempt, AttemptState, ChatKey, Check, Defences, Delivery, Given, GroupId, GroupSettings,
    ItemId, MemberId, Mode, Moment, Names, NewGroup, NewPosition, NewPost, NewReply, NewVerdict,
    Points, PostId, Prices, ReplyId, Scale, Soundness, Store, StoreError, TimeOfDay, Tx, Verdict,
    Via, Weekdays, Words,
};

/// What a post costs here.
pub const PRICES: Prices = Prices {
    wrong_cost: Points::of(1.0),
    hint_cost: Points::of(1.0),
    least: Points::of(1.0),
};

/// Minute `minutes` after a Monday noon.
pub fn at(minutes: i64) -> Moment {
    Utc.with_ymd_and_hms(2026, 3, 2, 12, 0, 0).unwrap() + TimeDelta::minutes(minutes)
}

/// A store on a file of its own, with one group.
pub struct Fixture {
    pub folder: TempDir,
    pub store: Store,
    pub group: GroupId,
}

impl Fixture {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = Store::open(&folder.path().join("group.db")).unwrap();
        let group = store
            .write_blocking(|tx| tx.insert_group(&new_group("club")))
            .unwrap();
        Self {
            folder,
            store,
            group,
        }
    }

    ///
    /// # Errors
    /// When the store cannot be used.
    pub fn write<T: Send + 'static>(
        &self,
        f: impl FnOnce(&Tx<'_>) -> Result<T, StoreError> + Send + 'static,
    ) -> T {
        self.store.write_blocking(f).unwrap()
    }

    ///
    /// # Errors
    /// When the store cannot be used.
    pub fn read<T: Send + 'static>(
        &self,
        f: impl FnOnce(&crate::Db<'_>) -> Result<T, StoreError> + Send + 'static,
    ) -> T {
        self.store.read_blocking(f).unwrap()
    }
}

/// The simplest thing to keep and to find again: a text under a key.
impl Tx<'_> {
    ///
    /// # Errors
    /// When the store cannot be used.
    pub fn jot(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.set_direct_channel(JOTTED, key, text)
    }
}

impl crate::Db<'_> {
    ///
    /// # Errors
    /// When the store cannot be used.
    pub fn jotted(&self, key: &str) -> Result<Option<String>, StoreError> {
        let all = self.direct_channels(JOTTED)?;
        Ok(all
            .into_iter()
            .find_map(|(at, text)| (at == key).then_some(text)))
    }
}

const JOTTED: ChatKey = ChatKey::of("jotted");

pub fn settings() -> GroupSettings {
    GroupSettings {
        name: "Evening circle".into(),
        zone: chrono_tz::Europe::Lisbon,
        post_times: TimeOfDay::of(18, 0).into(),
        days: Weekdays::from([Mon, Tue, Wed, Thu, Fri]),
        open_minutes: 1380,
        mode: Mode::Sealed,
        language: "english".into(),
        style: "print".into(),
        scale: Scale::Club,
        wrong_cost: Points::of(1.0),
        hint_cost: Points::of(1.0),
        defences: Defences::Same,
    }
}

pub fn new_group(place: &str) -> NewGroup {
    NewGroup {
        chat: ChatKey::of("room"),
        place: place.into(),
        server: None,
        names: Names::ByMember,
        delivery: Delivery::Shown,
        settings: settings(),
        created_at: at(0),
    }
}

/// A position; `n` makes its text differ. The store does not know what the text means.
pub fn new_position(group: GroupId, n: usize) -> NewPosition {
    NewPosition {
        group_id: group,
        topic_id: None,
        source: format!("week.epd:{n}"),
        fen: format!("placement {n}"),
        stipulation: "#2".into(),
        words: Words::default(),
        given: Given {
            text: format!("placement {n} bm Rd8"),
            line: 1 + n as i64,
        },
        check: Check {
            soundness: Soundness::Sound,
            report: json!({ "nodes": n }),
            checker_version: 1,
            checked_at: at(0),
        },
        created_at: at(0),
    }
}

/// Queues `n` positions and returns the entries' ids.
///
/// # Errors
/// When the store cannot be used.
pub fn queue(tx: &Tx<'_>, group: GroupId, n: usize) -> Result<Vec<ItemId>, StoreError> {
    (0..n)
        .map(|n| {
            let position = tx.upsert_position(&new_position(group, n))?;
            tx.enqueue(position, at(0))
        })
        .collect()
}

/// An open post of topic `topic`, opened at minute `minutes`; `n` must differ from post to post.
///
/// # Errors
/// When the store cannot be used.
pub fn open_post(
    tx: &Tx<'_>,
    group: GroupId,
    n: usize,
    topic: Option<&str>,
    minutes: i64,
) -> Result<PostId, StoreError> {
    let mut position = new_position(group, 1000 + n);
    position.topic_id = topic.map(|name| tx.ensure_topic(group, name)).transpose()?;
    let position = tx.upsert_position(&position)?;
    let item = tx.enqueue(position, at(0))?;
    let post = tx.intend_post(&NewPost {
        item,
        nonce: format!("{group}-{n}"),
        prices: PRICES,
        slot: at(minutes),
        closes_at: at(minutes + 60),
        intended_at: at(minutes),
    })?;
    tx.mark_post_open(
        post,
        at(minutes),
        Some(&format!("m{n}")),
        Some(&format!("t{n}")),
    )?;
    Ok(post)
}

/// Closes an open post.
///
/// # Errors
/// When the store cannot be used.
pub fn close_post(tx: &Tx<'_>, post: PostId, minutes: i64) -> Result<(), StoreError> {
    tx.mark_post_closing(post)?;
    tx.mark_post_closed(post, at(minutes), Some("r"))
}

pub fn new_reply(post: PostId, member: MemberId, source: Option<&str>, text: &str) -> NewReply {
    NewReply {
        post_id: post,
        member_id: member,
        source: source.map(Into::into),
        via: Via::Answer,
        text: text.into(),
        received_at: at(5),
    }
}

pub fn new_verdict(reply: ReplyId, verdict: Verdict, first: &str) -> NewVerdict {
    NewVerdict {
        reply_id: reply,
        verdict,
        points: if verdict == Verdict::Solved {
            Points::FULL
        } else {
            Points::ZERO
        },
        moves: vec![first.into()],
        refutation: vec!["Rxd7".into()],
        line: vec![],
        facts: serde_json::json!({ "version": 1, "said": [{ "is": "fails", "line": { "line": first } }] }),
        words: String::new(),
        wrong_first: (verdict == Verdict::Wrong).then(|| first.into()),
        by_coach: false,
        given_at: at(6),
    }
}

pub fn attempt(post: PostId, member: MemberId, state: AttemptState, points: f64) -> Attempt {
    Attempt {
        post_id: post,
        member_id: member,
        state,
        line: vec!["Rxd8+".into()],
        points: Points::of(points),
        wrong: 0,
        first_try: state == AttemptState::Solved && points >= 5.0,
        started_at: at(5),
        ended_at: (state != AttemptState::Playing).then(|| at(7)),
        gave_up_at: (state == AttemptState::GivenUp).then(|| at(7)),
        gave_up_after: (state == AttemptState::GivenUp).then_some(ReplyId::of(0)),
    }
}
