//! How long a full verdict takes (shortest mate, every key, the tree, the tries) on published mates,
//! beside a plain full-width AND/OR search with no table and no ordering, in one run; and how the
//! prover's nodes compare with what the rules library's own move generation allows.
//!
//! The positions are those of `tests/data/published_mates.epd`, which names the sources. The table
//! printed first holds the medians by length, one thread, and from `#4` on every position by name.
//! The plain search is run to `#3`; beyond that it takes minutes. For long mates, to `#8`, it is also
//! told how soon the mate is found, the verdict certain, and the tree grown, with one thread and two.
//!
//! A node of the prover is a move made or a checking move weighed. Its rate is set against two walks
//! over the same positions. The *bare* walk makes every move of every list and does nothing at the
//! last positions it comes to, so that it pays for one list to some thirty moves made; no search can
//! do so little. The *listing* walk does the least a search must do at each node to know whether it
//! is over: it makes the move and lists the replies.

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use sealed_move_chess::{Budget, Stipulation, parse_fen, prove, read};
use shakmaty::{Chess, Position};

/// Its id, the position, and the length of the mate.
type Problem = (String, Chess, u8);

fn problems() -> Vec<Problem> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../tests/data/published_mates.epd"
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
fn bare_walk(position: &Chess, depth: u32) -> u64 {
    if depth == 0 {
        return 1;
    }
    let mut nodes = 1;
    for &mv in &position.legal_moves() {
        let mut after = position.clone();
        after.play_unchecked(mv);
        nodes += bare_walk(&after, depth - 1);
    }
    nodes
}

/// Makes every move to a depth, and lists the moves of every position it comes to.
fn listing_walk(position: &Chess, depth: u32) -> u64 {
    let moves = position.legal_moves();
    if depth == 0 {
        return 1 + u64::from(black_box(moves.len()) == usize::MAX);
    }
    let mut nodes = 1;
    for &mv in &moves {
        let mut after = position.clone();
        after.play_unchecked(mv);
        nodes += listing_walk(&after, depth - 1);
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

/// The table of medians by length.
fn medians(problems: &[Problem]) {
    println!("\nfull verdict, median over the published mates, one thread");
    for length in 2..=8 {
        let mut times = Vec::new();
        let mut plain_times = Vec::new();
        let mut named = Vec::new();
        for (id, position, moves) in problems.iter().filter(|(.., moves)| *moves == length) {
            let (nodes, time) = timed(|| verdict(position, *moves, 1));
            times.push(1e3 * time);
            named.push(format!("    {id}: {:.1} ms, {nodes} nodes", 1e3 * time));
            if length <= 3 {
                plain_times.push(1e3 * timed(|| plain_verdict(position, *moves)).1);
            }
        }
        if times.is_empty() {
            println!("#{length}: none published here");
            continue;
        }
        let ours = median(&mut times);
        let longest = times.last().copied().unwrap_or_default();
        let count = times.len();
        print!("#{length}: {count:2} positions, median {ours:9.3} ms, longest {longest:9.1} ms");
        if plain_times.is_empty() {
            println!("\n{}", named.join("\n"));
        } else {
            let plain = median(&mut plain_times);
            let ratio = plain / ours;
            println!("; plain search {plain:9.3} ms, {ratio:.0} times as long");
        }
    }
}

/// Nodes a second on the four-movers, beside both walks.
fn rates(problems: &[Problem]) {
    let rate = |work: &dyn Fn(&Chess, u8) -> u64| {
        let (mut nodes, mut seconds) = (0, 0.0);
        for (_, position, moves) in problems.iter().filter(|(.., moves)| *moves == 4) {
            let (count, time) = timed(|| work(position, *moves));
            nodes += count;
            seconds += time;
        }
        nodes as f64 / seconds / 1e6
    };
    let ours = rate(&|position, moves| verdict(position, moves, 1));
    println!("million nodes a second on the #4: {ours:.2}");
    for (name, walk) in [
        ("listing", rate(&|position, _| listing_walk(position, 3))),
        ("bare", rate(&|position, _| bare_walk(position, 3))),
    ] {
        println!("    the {name} walk {walk:.2}; ratio {:.2}", ours / walk);
    }
}

/// Long mates of published games, from memory: Edward Lasker - George Thomas, London, 1912, before
/// 11.Qxh7+; Wilhelm Steinitz - Curt von Bardeleben, Hastings, 1895, before 28.Qh7+ and 29.Qh8+ of the
/// line that Steinitz gave.
const LONG: [(&str, u8, &str); 3] = [
    (
        "lasker-1912, 11.Qxh7+",
        7,
        "rn3rk1/pbppq1pp/1p2pb2/4N2Q/3PN3/3B4/PPP2PPP/R3K2R w KQ - 0 11",
    ),
    (
        "steinitz-1895, 29.Qh8+",
        7,
        "r1r2k2/pp1q3Q/5pp1/3p2N1/8/8/PP3PPP/2R3K1 w - - 2 29",
    ),
    (
        "steinitz-1895, 28.Qh7+",
        8,
        "r1r5/pp1q2k1/5pp1/3p2N1/7Q/8/PP3PPP/2R3K1 w - - 0 28",
    ),
];

/// The parts of the verdict on long mates, with one thread and with two: the mate is found and shorter
/// ones are ruled out; no other first move mates as soon, which decides the verdict; then the tree and
/// the tries, which are left out where they take minutes.
fn long_mates() {
    println!("long mates, seconds since the start and million nodes by then");
    for (name, moves, fen) in LONG {
        let position = parse_fen(fen).expect("a position").position;
        for threads in [1, 2] {
            let budget = Budget::unlimited().threads(threads).table_bytes(256 << 20);
            let mut prover = prove::Prover::new(&position, &budget);
            let start = Instant::now();
            let now = |what: &str| {
                let (seconds, nodes) = (start.elapsed().as_secs_f64(), budget.used());
                format!("{what} {seconds:.2} s, {:.1}", nodes as f64 / 1e6)
            };
            let found = prover.shortest(moves).expect("no bound");
            assert_eq!(found, Some(moves), "{name}");
            let mut told = vec![now("found")];
            let keys = prover.keys(moves).expect("no bound").len();
            told.push(now(&format!("keys ({keys})")));
            if name.starts_with("steinitz") {
                black_box(prover.solution(moves).expect("no bound"));
                told.push(now("tree and tries"));
            }
            println!("#{moves} {name}, threads {threads}: {}", told.join("; "));
        }
    }
    println!();
}

fn bench(c: &mut Criterion) {
    let problems = problems();
    medians(&problems);
    rates(&problems);
    long_mates();
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
