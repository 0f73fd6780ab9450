//! Reading a reply with its verdict on the solution tree, and refuting moves off it, against a fixed
//! piece of work of the same run: a count of the moves four plies deep from the first position.

use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use sealed_move::chess::{
    Budget, Stipulation, check,
    check::Problem,
    judge::{Language, Terms, judge},
    parse_fen, reply,
};
use shakmaty::{Chess, Position, perft, san::SanPlus};

const ROOKS: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";
const SMOTHERED: &str = "r6k/6pp/8/6N1/2Q5/8/8/6K1 w - - 0 1";

fn problem(fen: &str, moves: u8) -> Problem {
    let position = parse_fen(fen).expect("a position").position;
    let task = Stipulation::Mate(moves);
    check::problem(&position, task, &Default::default(), &Budget::unlimited()).expect("a mate")
}

fn say(problem: &Problem, text: &str) {
    let budget = Budget::unlimited();
    let said = judge(
        problem,
        &[],
        text,
        &Terms::answer(Language::English),
        &budget,
    );
    std::hint::black_box(said);
}

fn replies(c: &mut Criterion) {
    let start = Chess::default();
    c.bench_function("baseline: perft 4", |b| b.iter(|| perft(&start, 4)));
    let two = problem(ROOKS, 2);
    let four = problem(SMOTHERED, 4);
    c.bench_function("read and judge a key", |b| {
        b.iter(|| say(&two, "rook takes d8 check"))
    });
    let line = "1.Nf7+ Kg8 2.Nh6+ Kh8 (2...Kf8 3.Qf7#) 3.Qg8+ Rxg8 4.Nf7#";
    c.bench_function("read and judge a whole line", |b| {
        b.iter(|| say(&four, line))
    });
    let wrong: Vec<String> = four
        .position
        .legal_moves()
        .into_iter()
        .filter(|mv| four.solution.keys.iter().all(|key| key.mv != *mv))
        .map(|mv| SanPlus::from_move(four.position.clone(), mv).to_string())
        .collect();
    let mut at = 0;
    c.bench_function("refute a wrong move of a four-mover", |b| {
        b.iter(|| {
            at = (at + 1) % wrong.len();
            say(&four, &wrong[at]);
        });
    });
    let long: String = "1.Nf3 ~ or knight takes e5; "
        .chars()
        .cycle()
        .take(4_000)
        .collect();
    c.bench_function("read 4,000 characters", |b| {
        b.iter(|| std::hint::black_box(reply::read(&start, &[], &long, Language::English).is_ok()));
    });
}

/// How long refuting takes over every wrong first move of a few four-movers: mean, 99th percentile and
/// worst, beside the same count of moves as the baseline. Each move is refuted once, cold.
fn spread(_: &mut Criterion) {
    let fens = [
        SMOTHERED,
        // Published finishes, from memory; see `tests/data/published_mates.epd`.
        "r1b2rk1/ppp3pp/3pN3/8/6K1/8/PB3bPP/RN1Q3R b - - 0 17",
        "1r2k1r1/pbppnp1p/1b3P2/8/Q7/B1PB1q2/P4PPP/3R2K1 w - - 0 1",
    ];
    let begun = Instant::now();
    std::hint::black_box(perft(&Chess::default(), 4));
    let baseline = begun.elapsed();
    let mut times: Vec<Duration> = Vec::new();
    for fen in fens {
        let problem = problem(fen, 4);
        for mv in problem.position.legal_moves() {
            if problem.solution.keys.iter().any(|key| key.mv == mv) {
                continue;
            }
            let san = SanPlus::from_move(problem.position.clone(), mv).to_string();
            let begun = Instant::now();
            say(&problem, &san);
            times.push(begun.elapsed());
        }
    }
    times.sort_unstable();
    let total: Duration = times.iter().sum();
    let count = u32::try_from(times.len()).unwrap_or(u32::MAX).max(1);
    let at = (times.len() * 99).div_ceil(100).saturating_sub(1);
    let (mean, high, worst) = (total / count, times[at], times[times.len() - 1]);
    let ratio = |time: Duration| time.as_secs_f64() / baseline.as_secs_f64();
    println!("refuting {count} wrong moves of four-movers   time   of perft 4 ({baseline:?})");
    for (name, time) in [("mean", mean), ("99th percentile", high), ("worst", worst)] {
        println!("{name:>36} {time:>12.1?} {:>8.2}", ratio(time));
    }
}

criterion_group!(benches, replies, spread);
criterion_main!(benches);
