//! How long a full verdict takes (shortest mate, every key, the tree, the tries) on published mates,
//! beside a plain full-width AND/OR search with no table and no ordering, in one run; and how the
//! prover's nodes compare with a walk that does nothing but make moves.
//!
//! The positions are those of `tests/data/published_mates.epd`, which names the sources. The table
//! printed first holds the medians by length, one thread. The plain search is run to `#3`; beyond
//! that it takes minutes.

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use sealed_move::chess::{Budget, Stipulation, prove, read};
use shakmaty::{Chess, Position};

fn problems() -> Vec<(String, Chess, u8)> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../tests/data/published_mates.epd"
    );
    let bytes = std::fs::read(path).expect("the published mates");
    read::read_file(path, &bytes)
        .into_iter()
        .filter_map(Result::ok)
        .filter_map(|entry| {
            let moves = entry.stipulation.and_then(Stipulation::mate_in)?;
            Some((entry.id, entry.position, moves))
        })
        .collect()
}

/// The full verdict; returns the nodes it took.
fn verdict(position: &Chess, moves: u8, threads: usize) -> u64 {
    let budget = Budget::unlimited().threads(threads).table_bytes(64 << 20);
    let proof = prove::mate(position, moves, &budget).expect("no bound");
    black_box(proof.solution.keys.len());
    budget.used()
}

fn plain_attack(position: &Chess, moves: u8) -> bool {
    position.legal_moves().iter().any(|mv| {
        let mut after = position.clone();
        after.play_unchecked(*mv);
        plain_defence(&after, moves - 1)
    })
}

fn plain_defence(position: &Chess, moves: u8) -> bool {
    let replies = position.legal_moves();
    if replies.is_empty() {
        return position.is_check();
    }
    moves > 0
        && replies.iter().all(|mv| {
            let mut after = position.clone();
            after.play_unchecked(*mv);
            plain_attack(&after, moves)
        })
}

/// What the plain search needs for the shortest mate and every key, without a tree.
fn plain_verdict(position: &Chess, moves: u8) -> usize {
    (1..=moves)
        .map(|length| {
            let is_key = |mv: &&shakmaty::Move| {
                let mut after = position.clone();
                after.play_unchecked(**mv);
                plain_defence(&after, length - 1)
            };
            position.legal_moves().iter().filter(is_key).count()
        })
        .find(|keys| *keys > 0)
        .unwrap_or_default()
}

/// Makes every move to a depth, and nothing else.
fn walk(position: &Chess, depth: u32) -> u64 {
    if depth == 0 {
        return 1;
    }
    let mut nodes = 1;
    for &mv in &position.legal_moves() {
        let mut after = position.clone();
        after.play_unchecked(mv);
        nodes += walk(&after, depth - 1);
    }
    nodes
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, f64) {
    let start = Instant::now();
    let value = black_box(work());
    (value, start.elapsed().as_secs_f64())
}

fn median(times: &mut [f64]) -> f64 {
    times.sort_by(f64::total_cmp);
    times.get(times.len() / 2).copied().unwrap_or_default()
}

/// The table of medians, and the rate of nodes.
fn table(problems: &[(String, Chess, u8)]) {
    println!("\nfull verdict, median over the published mates, one thread");
    for length in 2..=6 {
        let of: Vec<_> = problems
            .iter()
            .filter(|(.., moves)| *moves == length)
            .collect();
        let (mut times, mut plain_times) = (Vec::new(), Vec::new());
        for (_, position, moves) in &of {
            times.push(1e3 * timed(|| verdict(position, *moves, 1)).1);
            if length <= 3 {
                plain_times.push(1e3 * timed(|| plain_verdict(position, *moves)).1);
            }
        }
        let ours = median(&mut times);
        let longest = times.last().copied().unwrap_or_default();
        let count = of.len();
        print!("#{length}: {count:2} positions, median {ours:9.3} ms, longest {longest:9.1} ms");
        if plain_times.is_empty() {
            println!();
        } else {
            let plain = median(&mut plain_times);
            let ratio = plain / ours;
            println!("; plain search {plain:9.3} ms, {ratio:.0} times as long");
        }
    }
    let (mut nodes, mut seconds, mut walked, mut walk_seconds) = (0, 0.0, 0, 0.0);
    for (_, position, moves) in problems.iter().filter(|(.., moves)| *moves == 4) {
        let (count, time) = timed(|| verdict(position, *moves, 1));
        nodes += count;
        seconds += time;
        let (count, time) = timed(|| walk(position, 3));
        walked += count;
        walk_seconds += time;
    }
    let (ours, raw) = (nodes as f64 / seconds, walked as f64 / walk_seconds);
    println!(
        "nodes a second on the #4: {:.2} million; a walk that only makes moves {:.2} million; ratio {:.2}\n",
        ours / 1e6,
        raw / 1e6,
        ours / raw
    );
}

fn bench(c: &mut Criterion) {
    let problems = problems();
    table(&problems);
    let mut group = c.benchmark_group("full verdict");
    group.sample_size(10);
    for wanted in ["morphy-1856", "loveday-1845", "anderssen-1852", "loyd-1861"] {
        let (id, position, moves) = problems
            .iter()
            .find(|(id, ..)| id == wanted)
            .expect("a published mate");
        for threads in [1, 2] {
            group.bench_function(format!("#{moves} {id}, threads {threads}"), |b| {
                b.iter(|| verdict(position, *moves, threads));
            });
        }
        if *moves <= 3 {
            group.bench_function(format!("#{moves} {id}, plain search"), |b| {
                b.iter(|| plain_verdict(position, *moves));
            });
        }
    }
    group.finish();
}

criterion_group!(benches, bench);
criterion_main!(benches);
