//! Reports on positions of every verdict.

use shakmaty::Chess;

use super::*;
use crate::chess::parse_fen;

fn entry(fen: &str, task: Option<&str>, best: &[&str], avoid: &[&str]) -> Entry {
    let read = parse_fen(fen).expect("a position");
    let moves = |sans: &[&str]| {
        sans.iter()
            .map(|san| {
                let san: shakmaty::san::San = san.parse().expect("san");
                san.to_move(&read.position).expect("legal")
            })
            .collect()
    };
    Entry {
        id: "t1".to_owned(),
        line: 1,
        stipulation: task.map(|task| task.parse().expect("a task")),
        best: moves(best),
        avoid: moves(avoid),
        position: read.position.clone(),
        warnings: read.warnings,
        topic: None,
        comments: Vec::new(),
        variations: None,
    }
}

fn report(fen: &str, task: Option<&str>) -> Report {
    check(
        &entry(fen, task, &[], &[]),
        &CheckOptions::default(),
        &Budget::unlimited(),
    )
}

const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

#[test]
fn a_sound_mate() {
    let report = report(BACK_RANK, Some("#2"));
    assert_eq!(report.verdict, Soundness::Sound);
    assert_eq!(report.keys, ["Rxd8+"]);
    assert_eq!(report.line, ["Rxd8+", "Rxd8", "Rxd8#"]);
    assert_eq!(report.variations, ["1.Rxd8+ Rxd8 2.Rxd8#"]);
    assert!(report.proved && report.nodes > 0);
    assert_eq!(report.message, "");
    assert_eq!(report.fen, BACK_RANK);
}

#[test]
fn the_shortest_mate_is_found_where_no_task_is_stated() {
    let report = report(BACK_RANK, None);
    assert_eq!(report.stipulation, Some(Stipulation::Mate(2)));
    assert_eq!(report.verdict, Soundness::Sound);
}

#[test]
fn a_shorter_mate() {
    let report = report(BACK_RANK, Some("#3"));
    assert_eq!(report.verdict, Soundness::Short);
    assert_eq!(report.keys, ["Rxd8+"]);
    assert!(report.message.contains("mate in 2"), "{}", report.message);
}

#[test]
fn several_keys() {
    let report = report("6k1/5ppp/8/8/8/8/8/K2QR3 w - - 0 1", Some("#1"));
    assert_eq!(report.verdict, Soundness::SeveralKeys);
    assert_eq!(report.keys, ["Qd8#", "Re8#"]);
    assert!(
        report.message.contains("Qd8# and Re8#"),
        "{}",
        report.message
    );
}

#[test]
fn no_mate_names_the_defence_and_the_longer_mate() {
    let report = report("7k/8/5K2/8/8/8/8/6R1 w - - 0 1", Some("#1"));
    assert_eq!(report.verdict, Soundness::Unsound);
    assert!(report.proved && report.keys.is_empty());
    assert_eq!(report.line.len(), 1);

    let report = self::report("7k/8/8/5K2/8/8/8/6R1 w - - 0 1", Some("#2"));
    assert_eq!(report.verdict, Soundness::Unsound);
    assert_eq!(report.line.len(), 2);
    assert!(
        report.message.contains("There is a mate in 3"),
        "{}",
        report.message
    );
}

#[test]
fn promises_that_do_not_hold_are_named() {
    let report = check(
        &entry(BACK_RANK, Some("#2"), &["Rd7"], &["Rxd8"]),
        &CheckOptions::default(),
        &Budget::unlimited(),
    );
    assert_eq!(report.verdict, Soundness::Sound);
    assert_eq!(
        report.message,
        "The file promises Rd7, which does not mate in 2; Rxd8+ does. The file says to avoid Rxd8+, which mates in 2."
    );
}

#[test]
fn a_position_that_is_over_is_said_to_be() {
    let mated = report("R5k1/5ppp/8/8/8/8/8/K7 b - - 0 1", Some("#2"));
    assert_eq!(mated.verdict, Soundness::Unsound);
    assert!(mated.message.contains("already mated"), "{}", mated.message);
    let stalemate = report("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", Some("#2"));
    assert!(
        stalemate.message.contains("stalemate"),
        "{}",
        stalemate.message
    );
}

#[test]
fn out_of_work_is_undecided_and_says_what_was_proved() {
    let entry = entry(
        "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
        Some("#5"),
        &[],
        &[],
    );
    let report = check(
        &entry,
        &CheckOptions::default(),
        &Budget::unlimited().nodes(20_000),
    );
    assert_eq!(report.verdict, Soundness::Undecided);
    assert!(!report.proved);
    assert!(
        report.message.contains("so far it is proved"),
        "{}",
        report.message
    );
}

#[test]
fn a_full_fifty_move_clock_is_warned_of() {
    let fen = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 98 80";
    let report = report(fen, Some("#2"));
    assert_eq!(report.verdict, Soundness::Sound);
    assert_eq!(report.warnings.len(), 1);
    assert!(
        report.warnings[0].contains("fifty"),
        "{:?}",
        report.warnings
    );
}

#[test]
fn a_problem_is_ready_to_judge_replies() {
    let position: Chess = parse_fen(BACK_RANK).expect("a position").position;
    let options = CheckOptions::default();
    let ready = problem(
        &position,
        Stipulation::Mate(2),
        &options,
        &Budget::unlimited(),
    );
    assert_eq!(ready.expect("sound").solution.keys.len(), 1);
    assert!(
        problem(
            &position,
            Stipulation::Mate(1),
            &options,
            &Budget::unlimited()
        )
        .is_none()
    );
}
