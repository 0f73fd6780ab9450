//! How long pictures take and how large they are.
//!
//! `cargo bench -p sealed-move-diagram --bench diagram` measures our own drawing. With the environment
//! variable `SEALED_MOVE_TEST_PYTHON` naming a Python that has `chess` and `cairosvg`, the same
//! position is also drawn by python-chess's SVG through cairosvg in the same run, and the ratio is
//! told; without it, that row says so.

use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

use criterion::{Criterion, criterion_group};
use sealed_move_diagram::{Diagram, Style, Tongue, film::Film, reveal::Reveal};
use shakmaty::{CastlingMode, Chess, Move, Position, fen::Fen, san::San};

const MIDDLE: &str = "r1bqk2r/pp1n1ppp/2pbpn2/3p4/2PP4/2NBPN2/PP3PPP/R1BQK2R w KQkq - 0 1";
const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

fn position(fen: &str) -> Chess {
    fen.parse::<Fen>()
        .expect("a FEN")
        .into_position(CastlingMode::Standard)
        .expect("a position")
}

fn line(start: &Chess, sans: &[&str]) -> Vec<Move> {
    let mut at = start.clone();
    sans.iter()
        .map(|san| {
            let mv = san
                .parse::<San>()
                .expect("SAN")
                .to_move(&at)
                .expect("legal");
            at.play_unchecked(mv);
            mv
        })
        .collect()
}

fn english() -> Tongue {
    Tongue::new("en", |tag, text| sealed_move_words::words(tag).say(text))
}

fn board(style: Style, size: u32) -> Diagram {
    let mut diagram = Diagram::of(position(MIDDLE));
    diagram.style = style;
    diagram.size = size;
    diagram
}

fn ours(c: &mut Criterion) {
    let mut group = c.benchmark_group("720-pixel board");
    group.sample_size(30);
    for style in Style::ALL {
        let diagram = board(style, 720);
        let bytes = diagram.png(&english()).expect("draws").bytes.len();
        println!("{style:?}: {:.1} kB", bytes as f64 / 1000.0);
        group.bench_function(format!("{style:?} as PNG"), |b| {
            b.iter(|| black_box(diagram.png(&english()).expect("draws")));
        });
    }
    let diagram = board(Style::Print, 720);
    group.bench_function("Print as SVG", |b| {
        b.iter(|| black_box(diagram.svg(&english())))
    });
    // More sizes than the cache holds, so that nothing is found there.
    let mut size = 700;
    group.bench_function("Print as PNG, nothing kept", |b| {
        b.iter(|| {
            size = if size == 739 { 700 } else { size + 1 };
            black_box(board(Style::Print, size).png(&english()).expect("draws"))
        });
    });
    group.finish();

    let start = position(BACK_RANK);
    let moves = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
    let mut reveal = Reveal::of(&start, &moves);
    reveal.solution = vec!["1.Rxd8+ Rxd8 2.Rxd8#".into()];
    let mut group = c.benchmark_group("other pictures");
    group.sample_size(10);
    group.bench_function("reveal", |b| {
        b.iter(|| black_box(reveal.png(&english()).expect("draws")));
    });
    let film = Film::of(start, moves);
    group.bench_function("film of three moves", |b| {
        b.iter(|| black_box(film.gif(&english()).expect("draws")));
    });
    group.finish();
}

criterion_group!(benches, ours);

/// Milliseconds a call, the least of several rounds, so that other work on the machine counts less.
fn least(rounds: u32, mut call: impl FnMut()) -> f64 {
    (0..rounds)
        .map(|_| {
            let start = Instant::now();
            call();
            start.elapsed().as_secs_f64() * 1000.0
        })
        .fold(f64::MAX, f64::min)
}

const THEIRS: &str = "
import sys, time, chess, chess.svg, cairosvg
board = chess.Board(sys.argv[1])
def draw():
    return cairosvg.svg2png(bytestring=chess.svg.board(board, size=720).encode())
size = len(draw())
best = 1e9
for _ in range(15):
    start = time.perf_counter()
    draw()
    best = min(best, time.perf_counter() - start)
print(best * 1000, size)
";

/// Our board and python-chess's through cairosvg, one after the other.
fn against_python() {
    let Some(python) = std::env::var_os("SEALED_MOVE_TEST_PYTHON") else {
        println!("python-chess and cairosvg: not measured, SEALED_MOVE_TEST_PYTHON is not set");
        return;
    };
    let diagram = board(Style::Print, 720);
    let bytes = diagram.png(&english()).expect("draws").bytes.len();
    let mine = least(40, || {
        black_box(diagram.png(&english()).expect("draws"));
    });
    let output = Command::new(python).args(["-c", THEIRS, MIDDLE]).output();
    let text = match output {
        Ok(output) if output.status.success() => {
            String::from_utf8_lossy(&output.stdout).into_owned()
        }
        Ok(output) => {
            let why = String::from_utf8_lossy(&output.stderr).into_owned();
            println!("python-chess and cairosvg: not measured: {why}");
            return;
        }
        Err(error) => {
            println!("python-chess and cairosvg: not measured: {error}");
            return;
        }
    };
    let numbers: Vec<f64> = text
        .split_whitespace()
        .filter_map(|n| n.parse().ok())
        .collect();
    if let [theirs, their_bytes] = numbers[..] {
        println!(
            "720-pixel board, least of several: ours {mine:.2} ms and {:.1} kB; \
             python-chess and cairosvg {theirs:.2} ms and {:.1} kB; {:.1} times as fast, {:.2} times the size",
            bytes as f64 / 1000.0,
            their_bytes / 1000.0,
            theirs / mine,
            bytes as f64 / their_bytes,
        );
    } else {
        println!("python-chess and cairosvg: not measured: {text}");
    }
}

fn main() {
    against_python();
    benches();
    Criterion::default().configure_from_args().final_summary();
}
