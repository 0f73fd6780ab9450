//! Reading and judging replies, held against python-chess.

#[path = "replies/explained.rs"]
mod explained;
#[path = "replies/fuzz.rs"]
mod fuzz;
#[path = "replies/weighed.rs"]
mod weighed;
#[path = "replies/written.rs"]
mod written;

use std::fmt::Write;

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use sealed_move::chess::{
    Budget, Language, Stipulation,
    check::{CheckOptions, Problem, problem},
    judge::{Judgement, Terms, Verdict, judge},
    line, prove, reply,
};
use sealed_move_tests::python_script;
use shakmaty::{
    Board, CastlingMode, Chess, Color, EnPassantMode, FromSetup, Move, Piece, Position, Rank, Role,
    Setup, Square, fen::Fen, san::SanPlus, uci::UciMove,
};

/// Moves of random games, 100,000 of them: SAN as python-chess writes it, and read back by our reader.
#[test]
fn san_agrees_with_python_chess() {
    const MOVES: usize = 100_000;
    let mut rng = ChaCha8Rng::seed_from_u64(26);
    let (mut written, mut games) = (0, String::new());
    while written < MOVES {
        let mut position = Chess::default();
        for _ in 0..160 {
            let legal = position.legal_moves();
            if legal.is_empty() || written == MOVES {
                break;
            }
            let mv = legal[rng.random_range(0..legal.len())];
            let san = line::sans(&position, &[mv]).remove(0);
            let read = reply::read(&position, &[], &san, Language::English).expect("short");
            assert_eq!(read.tree.main_line(), [mv], "{san}");
            write!(games, "{}:{san} ", UciMove::from_standard(mv)).expect("memory");
            position.play_unchecked(mv);
            written += 1;
        }
        games.push('\n');
    }
    assert_eq!(
        python_script("san.py", &[], &games).trim(),
        MOVES.to_string()
    );
}

/// A few pieces on random squares; the bare kings and what the attacker needs to mate soon.
fn random_position(rng: &mut ChaCha8Rng) -> Option<Chess> {
    let mut board = Board::empty();
    let mut put = |rng: &mut ChaCha8Rng, color, role: Role| {
        let square = Square::new(rng.random_range(0..64u32));
        let pawn_at_home =
            role == Role::Pawn && matches!(square.rank(), Rank::First | Rank::Eighth);
        if board.piece_at(square).is_none() && !pawn_at_home {
            board.set_piece_at(square, Piece { color, role });
        }
    };
    for color in Color::ALL {
        put(rng, color, Role::King);
    }
    for _ in 0..rng.random_range(2..4) {
        let role =
            [Role::Queen, Role::Rook, Role::Knight, Role::Bishop][rng.random_range(0..4usize)];
        put(rng, Color::White, role);
    }
    for _ in 0..rng.random_range(1..5) {
        let role = [Role::Pawn, Role::Pawn, Role::Rook, Role::Knight][rng.random_range(0..4usize)];
        put(rng, Color::Black, role);
    }
    let setup = Setup {
        board,
        ..Setup::empty()
    };
    Chess::from_setup(setup, CastlingMode::Standard).ok()
}

fn first_moves(problem: &Problem) -> Vec<(Move, Judgement)> {
    problem
        .position
        .legal_moves()
        .into_iter()
        .map(|mv| {
            let san = SanPlus::from_move(problem.position.clone(), mv).to_string();
            let budget = Budget::unlimited();
            let terms = Terms::answer(Language::English);
            let said = judge(problem, &[], &san, &terms, &budget);
            (mv, said.expect("an explicit answer is always judged"))
        })
        .collect()
}

/// At least 200 positions and every legal first move in them: right or wrong as brute force says, and
/// every refutation holds.
#[test]
fn verdicts_agree_with_brute_force() {
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    let mut wanted = [(1u8, 60usize), (2, 140), (3, 24)];
    let mut input = String::new();
    let mut count = 0;
    while wanted.iter().any(|&(_, left)| left > 0) {
        let Some(position) = random_position(&mut rng) else {
            continue;
        };
        let budget = Budget::unlimited().table_bytes(1 << 20);
        let shortest = prove::shortest_mate(&position, 3, &budget).expect("unbounded");
        let Some(slot) = wanted
            .iter_mut()
            .find(|(moves, left)| Some(*moves) == shortest && *left > 0)
        else {
            continue;
        };
        let moves = slot.0;
        // Longer ones only where brute force is quick.
        if moves == 3 && position.board().occupied().count() > 6 {
            continue;
        }
        slot.1 -= 1;
        let task = Stipulation::Mate(moves);
        let problem = problem(&position, task, &CheckOptions::default(), &budget).expect("a mate");
        let judged: serde_json::Map<String, serde_json::Value> = first_moves(&problem)
            .into_iter()
            .map(|(mv, said)| {
                let uci = UciMove::from_standard(mv).to_string();
                let answer = match said.verdict {
                    Verdict::Solved | Verdict::OnTheWay => serde_json::Value::Null,
                    Verdict::Wrong => refutation(&position, mv, &said).into(),
                    other => panic!("{other:?} for {uci}"),
                };
                (uci, answer)
            })
            .collect();
        let fen = Fen::from_position(&position, EnPassantMode::Legal).to_string();
        let line = serde_json::json!({"fen": fen, "moves": moves, "judged": judged});
        writeln!(input, "{line}").expect("memory");
        count += 1;
    }
    assert!(count >= 200);
    let said = python_script("refutations.py", &[], &input);
    println!("positions and moves: {said}");
    assert_eq!(
        said.split_whitespace().next(),
        Some(count.to_string().as_str())
    );
}

/// The first move of the refutation in UCI.
fn refutation(position: &Chess, mv: Move, said: &Judgement) -> String {
    let mut after = position.clone();
    after.play_unchecked(mv);
    let Some(san) = said.refutation.first() else {
        return String::new();
    };
    let san: SanPlus = san.parse().expect("SAN");
    let reply = san.san.to_move(&after).expect("a legal refutation");
    UciMove::from_standard(reply).to_string()
}
