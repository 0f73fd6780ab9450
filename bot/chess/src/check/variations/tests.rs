//! Lessons on wins and draws, right and wrong. Positions composed for these tests.

use std::sync::Arc;

use shakmaty::{Chess, Position};

use crate::{
    Budget,
    check::{CheckOptions, Endgames, Known, Report, Soundness, check},
    read::read_file,
};

/// White takes the queen or is lost.
const FREE_QUEEN: &str = "3q3k/7p/8/8/8/8/7P/K2R4 w - - 0 1";
/// White is far behind, and draws by checks from d8 and g5.
const PERPETUAL: &str = "6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - - 0 1";

fn options() -> CheckOptions {
    CheckOptions {
        depth: 10,
        ..CheckOptions::default()
    }
}

fn lesson_within(
    task: &str,
    fen: &str,
    moves: &str,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let text = format!("[Task \"{task}\"]\n[FEN \"{fen}\"]\n\n{moves}\n");
    let entry = read_file("f", text.as_bytes()).remove(0);
    check(&entry.expect("readable"), options, budget)
}

fn lesson(task: &str, fen: &str, moves: &str) -> Report {
    lesson_within(task, fen, moves, &options(), &Budget::unlimited())
}

#[test]
fn lines_that_hold_are_passed() {
    for (task, fen, moves) in [
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+! (1.Rd7? Qxd7 (1...Qe8 -+) 2.Kb2 -+) (1.h4?) Kg7 2.Rd7+ Kg6 +-",
        ),
        (
            "=",
            PERPETUAL,
            "1.Qd8+! (1.h3? Rb1 -+) 1...Kg7 2.Qg5+ Kf8 3.Qd8+ =",
        ),
    ] {
        let report = lesson(task, fen, moves);
        assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
        assert_eq!(report.warnings, Vec::<String>::new());
        assert!(!report.message.contains("warnings"), "{}", report.message);
    }
}

/// What the first warning begins with, and what it must say besides.
#[test]
fn lines_that_fail_are_named_with_line_move_and_better_move() {
    for (task, fen, moves, begins, says) in [
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+ Kg7\n2.Rg8+ Kxg8",
            "line 5, move 2.Rg8+: it no longer wins: judged at depth 10 White stands at ",
            "; better is 2.",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+ Kg7 (1...Kg7 2.Rd7+ Kf6\n3.Rf7+ Kxf7 4.Kb2 Kf6 5.h4) 2.Rd7+",
            "line 5, move 3.Rf7+: it no longer wins: judged at depth 10 White ",
            "; better is 3.",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+? Kg7",
            "line 4, move 1.Rxd8+: it is marked as wrong, yet it wins: judged at depth 10 White ",
            "",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+ (1.Rd7?\nKg8)",
            "line 5, move 1...Kg8: it does not refute the move before it: judged at depth 10 White stands at +",
            "; 1...Qxd7 does",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+ Kg7\n\n2.Rd7+ $10",
            "line 6, move 2.Rd7+: the line ends with =, but judged at depth 10 White stands at +",
            "",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+ Kg7 2.Rd7+ $19",
            "line 4, move 2.Rd7+: the line ends with -+, but judged at depth 10 Black stands at -",
            "",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8+ (1.Rd7? Qxd7 2.Kb2 $18) Kg7 2.Rd7+ $18",
            "line 4, move 2.Kb2: the line ends with +-, but judged at depth 10 White stands at -",
            "",
        ),
        (
            "+",
            FREE_QUEEN,
            "1.Rxd8# Kg7",
            "line 4, move 1.Rxd8+: it is written with #, but it is not mate",
            "",
        ),
        (
            "=",
            PERPETUAL,
            "1.Qd8+ Kg7\n2.h3",
            "line 5, move 2.h3: it no longer draws: judged at depth 10 White ",
            "; better is 2.Qg5+",
        ),
        (
            "=",
            PERPETUAL,
            "1.Qd8+? Kg7",
            "line 4, move 1.Qd8+: it is marked as wrong, yet it draws: judged at depth 10 White stands at +0.0",
            "",
        ),
        ("=", PERPETUAL, "1.Qd8+ Kg7 2.Qg5+ Kf8 3.Qd8+ $14", "", ""),
        (
            "=",
            PERPETUAL,
            "1.Qd8+ Kg7 2.Qg5+ Kf8 3.Qd8+ $16",
            "line 4, move 3.Qd8+: the line ends with +/-, but judged at depth 10 White stands at +0.0",
            "",
        ),
    ] {
        let report = lesson(task, fen, moves);
        let first = report.warnings.first().map_or("", String::as_str);
        if begins.is_empty() {
            assert_eq!(first, "", "{moves}");
            continue;
        }
        assert!(first.starts_with(begins) && first.contains(says), "{first}");
        assert_eq!(report.warnings.len(), 1, "{:?}", report.warnings);
        assert!(report.message.contains("see the warnings"));
    }
}

#[test]
fn a_line_of_black_is_judged_from_black() {
    let report = lesson(
        "+",
        "k2r4/7p/8/8/8/8/7P/3Q3K b - - 0 1",
        "1...Rxd1+ 2.Kg2 Rg1+ 3.Kxg1",
    );
    let first = report.warnings.first().map_or("", String::as_str);
    assert!(
        first.starts_with("line 4, move 2...Rg1+: it no longer wins: judged at depth 10 Black "),
        "{first}"
    );
}

#[test]
fn a_draw_by_the_rules_is_no_win() {
    let report = lesson(
        "+",
        "7k/8/5K2/8/8/8/8/5Q2 w - - 0 1",
        "1.Qg1 (1.Qf2 Kg8 2.Qg1+ Kh8 3.Qg6) Kh7 2.Qg7#",
    );
    assert_eq!(report.verdict, Soundness::SeveralKeys, "{report:?}");
    let first = report.warnings.first().map_or("", String::as_str);
    assert!(
        first.starts_with("line 4, move 3.Qg6: it no longer wins: it is stalemate; better is 3."),
        "{first}"
    );
}

/// Knows king and rook against king, as every table does.
#[derive(Debug)]
struct RookWins;

impl Endgames for RookWins {
    fn most_men(&self) -> usize {
        3
    }

    fn known(&self, position: &Chess) -> Option<Known> {
        let board = position.board();
        let rook_at_risk = position.legal_moves().iter().any(|mv| mv.is_capture());
        Some(match (board.rooks() & position.us()).any() {
            true => Known::Win,
            false if rook_at_risk => Known::Draw,
            false => Known::Loss,
        })
    }
}

#[test]
fn endgame_tables_judge_where_they_are() {
    let options = CheckOptions {
        endgames: Some(Arc::new(RookWins)),
        ..options()
    };
    let report = lesson_within(
        "+",
        "8/8/8/8/8/2k5/1R6/K7 w - - 0 1",
        "1.Rb8 (1.Rb1 Kd2\n2.Rb2+ Kc3 3.Rb3+) Kd3 $10",
        &options,
        &Budget::unlimited(),
    );
    assert_eq!(report.verdict, Soundness::SeveralKeys, "{report:?}");
    assert_eq!(report.warnings.len(), 2, "{:?}", report.warnings);
    let begins = "line 5, move 1...Kd3: the line ends with =, but by the endgame tables White wins";
    assert_eq!(report.warnings[0], begins);
    let begins =
        "line 5, move 3.Rb3+: it no longer wins: by the endgame tables White draws; better is 3.";
    assert!(
        report.warnings[1].starts_with(begins),
        "{:?}",
        report.warnings
    );
}

#[test]
fn a_budget_that_ends_is_said_with_the_place() {
    let moves = "1.Rxd8+ Kg7\n2.Rd7+ Kg6\n3.Rd6+ Kg5 4.Kb2 Kg4 5.Kc3 h5 6.Kd4 +-";
    let alone = lesson("+", FREE_QUEEN, "*").nodes;
    let whole = lesson("+", FREE_QUEEN, moves).nodes;
    let half = Budget::unlimited().nodes(alone + (whole - alone) / 2);
    let report = lesson_within("+", FREE_QUEEN, moves, &options(), &half);
    assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
    let [only] = &report.warnings[..] else {
        panic!("{:?}", report.warnings);
    };
    assert!(
        only.starts_with("the time or work allowed ran out at line ")
            && only.ends_with(", before all variations of the file were checked"),
        "{only}"
    );
}
