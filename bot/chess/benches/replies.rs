//! Reading a reply with its verdict, on the solution and off it, against a fixed piece of work of the
//! same run: a count of the moves four plies deep from the first position.
//!
//! Criterion prints each row as it is measured. The last table holds them all, each the median of its
//! samples, with its ratio to the median of the baseline; refuting is a row of its own for the mean,
//! the 99th percentile and the worst over many moves, each refuted once, cold.

use std::{
    cell::RefCell,
    time::{Duration, Instant},
};

use criterion::{Criterion, criterion_group, criterion_main};
use sealed_move_chess::{
    Budget, Language, Stipulation, check,
    check::Problem,
    judge::{Judgement, Terms, Verdict, judge},
    parse_fen, reply,
};
use shakmaty::{Chess, Position, perft, san::SanPlus};

const ROOKS: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";
const SMOTHERED: &str = "r6k/6pp/8/6N1/2Q5/8/8/6K1 w - - 0 1";
/// The queen takes the rook, and a knight's fork wins her back.
const FORK: &str = "5rk1/2q3pp/p7/1p6/3N4/8/PP3QPP/7K w - - 0 1";
/// The rook takes the queen, and so may the queen.
const TWO_WAYS: &str = "3q3k/7p/8/Q7/8/8/7P/K2R4 w - - 0 1";

fn problem(fen: &str, task: Stipulation) -> Problem {
    let position = parse_fen(fen).expect("a position").position;
    check::problem(&position, task, &Default::default(), &Budget::unlimited()).expect("sound")
}

fn say(problem: &Problem, text: &str) -> Judgement {
    let budget = Budget::unlimited();
    let terms = Terms::answer(Language::English);
    judge(problem, &[], text, &terms, &budget).expect("an answer")
}

/// Rows of the last table, the baseline first.
#[derive(Default)]
struct Rows(RefCell<Vec<(String, Duration)>>);

impl Rows {
    /// Measures with criterion, and keeps the median of the samples.
    fn measure(&self, c: &mut Criterion, name: &str, mut work: impl FnMut()) {
        let mut samples = Vec::new();
        c.bench_function(name, |b| {
            b.iter_custom(|times| {
                let begun = Instant::now();
                for _ in 0..times {
                    work();
                }
                let took = begun.elapsed();
                samples.push(took / u32::try_from(times.max(1)).unwrap_or(u32::MAX));
                took
            });
        });
        samples.sort_unstable();
        self.keep(name, samples[samples.len() / 2]);
    }

    fn keep(&self, name: &str, time: Duration) {
        self.0.borrow_mut().push((name.to_owned(), time));
    }

    fn print(&self) {
        let rows = self.0.borrow();
        let baseline = rows[0].1.as_secs_f64();
        println!("{:<52} {:>12} {:>14}", "median", "time", "of baseline");
        for (name, time) in rows.iter() {
            let ratio = time.as_secs_f64() / baseline;
            let time = format!("{time:.1?}");
            println!("{name:<52} {time:>12} {ratio:>14.6}");
        }
    }
}

fn replies(c: &mut Criterion) {
    let rows = Rows::default();
    let start = Chess::default();
    rows.measure(c, "baseline: perft 4 of the first position", || {
        std::hint::black_box(perft(std::hint::black_box(&start), 4));
    });
    let two = problem(ROOKS, Stipulation::Mate(2));
    let four = problem(SMOTHERED, Stipulation::Mate(4));
    let fork = problem(FORK, Stipulation::Win);
    let two_ways = problem(TWO_WAYS, Stipulation::Win);
    let told = |problem: &Problem, text: &str| {
        std::hint::black_box(say(problem, text));
    };
    rows.measure(c, "read and judge a key", || {
        told(&two, "rook takes d8 check");
    });
    let line = "1.Nf7+ Kg8 2.Nh6+ Kh8 (2...Kf8 3.Qf7#) 3.Qg8+ Rxg8 4.Nf7#";
    rows.measure(c, "read and judge a whole line", || told(&four, line));
    let line = "1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nxc7";
    assert_eq!(say(&fork, line).verdict, Verdict::Solved);
    rows.measure(c, "+: read and judge a whole line", || told(&fork, line));
    let long: String = "1.Nf3 ~ or knight takes e5; "
        .chars()
        .cycle()
        .take(4_000)
        .collect();
    rows.measure(c, "read 4,000 characters", || {
        std::hint::black_box(reply::read(&start, &[], &long, Language::English).is_ok());
    });
    // What the solution does not have is searched; a few samples are enough.
    let mut few = Criterion::default()
        .sample_size(10)
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(3));
    let listed = two_ways.solution.keys.iter().map(|key| key.mv.role());
    let unlisted = match listed.clone().any(|role| role == shakmaty::Role::Queen) {
        true => "Qd5",
        false => "Qxd8",
    };
    rows.measure(&mut few, "+: a move the solution has", || {
        told(&two_ways, "Rxd8");
    });
    rows.measure(&mut few, "+: a move the solution does not have", || {
        told(&two_ways, unlisted);
    });
    rows.measure(&mut few, "+: a wrong move refuted", || told(&fork, "h3"));
    spread(&rows);
    rows.print();
}

/// How long refuting takes over every wrong first move of a few four-movers: mean, 99th percentile and
/// worst.
fn spread(rows: &Rows) {
    let fens = [
        SMOTHERED,
        // Published finishes, from memory; see `tests/data/published_mates.epd`.
        "r1b2rk1/ppp3pp/3pN3/8/6K1/8/PB3bPP/RN1Q3R b - - 0 17",
        "1r2k1r1/pbppnp1p/1b3P2/8/Q7/B1PB1q2/P4PPP/3R2K1 w - - 0 1",
    ];
    let mut times: Vec<Duration> = Vec::new();
    for fen in fens {
        let problem = problem(fen, Stipulation::Mate(4));
        for mv in problem.position.legal_moves() {
            if problem.solution.keys.iter().any(|key| key.mv == mv) {
                continue;
            }
            let san = SanPlus::from_move(problem.position.clone(), mv).to_string();
            let begun = Instant::now();
            std::hint::black_box(say(&problem, &san));
            times.push(begun.elapsed());
        }
    }
    times.sort_unstable();
    let total: Duration = times.iter().sum();
    let count = u32::try_from(times.len()).unwrap_or(u32::MAX).max(1);
    let at = (times.len() * 99).div_ceil(100).saturating_sub(1);
    let of = |what: &str| format!("#4: a wrong move refuted, {what} of {count}");
    rows.keep(&of("mean"), total / count);
    rows.keep(&of("99th percentile"), times[at]);
    rows.keep(&of("worst"), times[times.len() - 1]);
}

criterion_group!(benches, replies);
criterion_main!(benches);
