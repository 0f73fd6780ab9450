//! The leaderboard over 100,000 replies: 500 posts, 100 members, two replies each to every post.
//!
//! Baseline in the same run: the same sums in Rust over the rows fetched one by one. The figure to look at
//! is the ratio of the two.

// criterion_group! writes an undocumented function.
#![allow(missing_docs)]

use std::{collections::HashMap, hint::black_box};

use chrono::{DateTime, TimeDelta, Utc};
use criterion::{Criterion, criterion_group, criterion_main};
use sealed_move_store::{
    Attempt, AttemptState, ChatKey, Check, Defences, Delivery, Given, GroupId, GroupSettings,
    MemberId, Mode, Names, NewGroup, NewPosition, NewPost, NewReply, NewVerdict, Points, Soundness,
    Span, Store, StoreError, TimeOfDay, TopicId, Tx, Verdict, Via, Weekdays, Words,
};

const POSTS: usize = 500;
const MEMBERS: usize = 100;
const SEED: u64 = 0x5EA1_ED00;

/// A small generator with a fixed seed (SplitMix64, Steele, Lea and Flood, 2014).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) % sides
    }
}

fn fill(tx: &Tx<'_>) -> Result<GroupId, StoreError> {
    let start = DateTime::<Utc>::UNIX_EPOCH + TimeDelta::days(20_000);
    let group = tx.insert_group(&NewGroup {
        chat: ChatKey::of("room"),
        place: "club".into(),
        server: None,
        names: Names::ByMember,
        delivery: Delivery::Shown,
        settings: GroupSettings {
            name: "Club".into(),
            zone: chrono_tz::UTC,
            post_times: TimeOfDay::of(18, 0).into(),
            days: Weekdays::every_day(),
            open_minutes: 1380,
            mode: Mode::Sealed,
            language: "english".into(),
            style: "print".into(),
            scale: sealed_move_store::Scale::Club,
            wrong_cost: Points::of(1.0),
            hint_cost: Points::of(1.0),
            defences: Defences::Same,
        },
        created_at: start,
    })?;
    let members: Vec<MemberId> = (0..MEMBERS)
        .map(|n| tx.upsert_member(group, &n.to_string(), &format!("Member {n}"), start))
        .collect::<Result<_, _>>()?;
    let topics: Vec<TopicId> = (0..8)
        .map(|n| tx.ensure_topic(group, &format!("Topic {n}")))
        .collect::<Result<_, _>>()?;
    let mut dice = Dice(SEED);
    for n in 0..POSTS {
        let day = start + TimeDelta::days(n as i64);
        let position = tx.upsert_position(&NewPosition {
            group_id: group,
            topic_id: Some(topics[n % topics.len()]),
            source: format!("bench:{n}"),
            fen: format!("placement {n}"),
            stipulation: "#3".into(),
            words: Words::default(),
            given: Given {
                text: String::new(),
                line: 1,
            },
            check: Check {
                soundness: Soundness::Sound,
                report: serde_json::json!({}),
                checker_version: 1,
                checked_at: start,
            },
            created_at: start,
        })?;
        let item = tx.enqueue(position, start)?;
        let post = tx.intend_post(&NewPost {
            prices: sealed_move_store::Prices {
                wrong_cost: Points::of(1.0),
                hint_cost: Points::of(1.0),
                least: Points::of(1.0),
            },
            item,
            nonce: format!("n{n}"),
            slot: day,
            closes_at: day + TimeDelta::hours(23),
            intended_at: day,
        })?;
        tx.mark_post_open(post, day, Some("m"), None)?;
        for &member in &members {
            let points = Points::of(dice.roll(11) as f64 / 2.0);
            for (verdict, text) in [
                (Verdict::Wrong, "Kf1"),
                (
                    if !points.is_zero() {
                        Verdict::Solved
                    } else {
                        Verdict::Wrong
                    },
                    "Qh7",
                ),
            ] {
                let reply = tx.insert_reply(&NewReply {
                    post_id: post,
                    member_id: member,
                    source: None,
                    via: Via::Answer,
                    text: text.into(),
                    received_at: day,
                })?;
                tx.insert_verdict(&NewVerdict {
                    reply_id: reply.id,
                    verdict,
                    points,
                    moves: vec![text.into()],
                    refutation: vec!["Rxh7".into()],
                    line: vec![],
                    facts: serde_json::json!({ "version": 1, "said": [{ "is": "go-on" }] }),
                    words: String::new(),
                    wrong_first: None,
                    by_coach: false,
                    given_at: day,
                })?;
            }
            tx.upsert_attempt(&Attempt {
                post_id: post,
                member_id: member,
                state: if !points.is_zero() {
                    AttemptState::Solved
                } else {
                    AttemptState::Playing
                },
                line: ["Qh7+", "Kf8", "Rd1", "Ke8", "Qh8#"]
                    .map(String::from)
                    .to_vec(),
                points,
                wrong: 1,
                first_try: false,
                started_at: day,
                ended_at: None,
                gave_up_at: None,
                gave_up_after: None,
            })?;
        }
        tx.mark_post_closing(post)?;
        tx.mark_post_closed(post, day + TimeDelta::hours(23), None)?;
    }
    Ok(group)
}

/// The baseline: every row to Rust, summed there.
fn by_hand(sql: &rusqlite::Connection, group: GroupId) -> Vec<(MemberId, f64)> {
    let mut sums = HashMap::<MemberId, f64>::new();
    let mut statement = sql
        .prepare_cached(
            "SELECT a.member_id, a.points FROM posts o JOIN attempts a ON a.post_id = o.id
             WHERE o.group_id = ?1 AND o.state = 'closed'",
        )
        .expect("the bench's own query");
    let mut rows = statement.query([group]).expect("the bench's own store");
    while let Some(row) = rows.next().expect("the bench's own store") {
        let member: MemberId = row.get(0).expect("an id");
        let points: f64 = row.get(1).expect("points");
        *sums.entry(member).or_default() += points;
    }
    let mut sums: Vec<_> = sums.into_iter().collect();
    sums.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    sums
}

fn bench(c: &mut Criterion) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("bench.db");
    let store = Store::open(&path).expect("a fresh store");
    let group = store.write_blocking(fill).expect("the bench's own rows");
    let sql = rusqlite::Connection::open(&path).expect("the store's file");

    let ours = store
        .read_blocking(move |db| db.leaderboard(&Span::all(group)))
        .expect("sums");
    let theirs = by_hand(&sql, group);
    assert_eq!(
        ours.iter().map(|row| row.points).collect::<Vec<_>>(),
        theirs.iter().map(|row| row.1).collect::<Vec<_>>(),
        "both ways give the same sums"
    );

    let mut group_of = c.benchmark_group("leaderboard over 100,000 replies");
    group_of.bench_function("sums in SQL", |b| {
        b.iter(|| store.read_blocking(move |db| db.leaderboard(black_box(&Span::all(group)))));
    });
    group_of.bench_function("baseline: rows summed in Rust", |b| {
        b.iter(|| by_hand(black_box(&sql), group));
    });
    group_of.bench_function("one topic, one month", |b| {
        b.iter(|| {
            store.read_blocking(move |db| {
                let start = DateTime::<Utc>::UNIX_EPOCH + TimeDelta::days(20_200);
                db.leaderboard(black_box(&Span {
                    from: Some(start),
                    to: Some(start + TimeDelta::days(30)),
                    topic: Some("Topic 3".into()),
                    ..Span::all(group)
                }))
            })
        });
    });
    group_of.finish();
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(20);
    targets = bench
}
criterion_main!(benches);
