//! Wins and draws whose truth is known, by search and by tables.

use shakmaty::{Chess, Position};

use super::super::{
    CheckOptions, Endgames, Finding, Report, Soundness, Stands, Statement, TableVerdict, written,
};
use crate::{
    Budget, Stipulation, check,
    fact::{Line, Task},
    read, search,
};

fn report(epd: &str, task: Stipulation) -> Report {
    let mut entry = read::read_file("t", epd.as_bytes())
        .remove(0)
        .expect("readable");
    entry.stipulation = Some(task);
    check::check(
        &entry,
        &CheckOptions {
            depth: 10,
            ..CheckOptions::default()
        },
        &Budget::unlimited(),
    )
}

#[test]
fn a_free_queen_is_the_only_win() {
    // Composed for this test: everything else leaves White a queen behind.
    let report = report("3q3k/7p/8/8/8/8/7P/K2R4 w - -", Stipulation::Win);
    assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
    assert_eq!(report.keys, ["Rxd8+"]);
    assert!(!report.proved);
    let [
        Statement::Found(Finding::JudgedBest {
            depth: 10,
            best,
            next,
        }),
    ] = &report.message[..]
    else {
        panic!("{:?}", report.message);
    };
    let key = Line::from("Rxd8+");
    assert!(
        matches!(best, Stands::MoveStandsAt { line, value } if *line == key && value.centipawns >= 200)
    );
    assert!(
        matches!(next, Stands::MoveStandsAt { line, value } if *line != key && value.centipawns <= 100)
    );
}

#[test]
fn several_wins_are_all_listed() {
    let report = report("7k/8/8/8/8/8/4Q3/K2R4 w - -", Stipulation::Win);
    assert_eq!(report.verdict, Soundness::SeveralKeys);
    assert!(report.keys.len() > 10, "{:?}", report.keys);
}

/// The two best are judged, and then the budget ends: the list says that it may lack some.
#[test]
fn a_list_of_wins_that_was_cut_short_says_so() {
    let fen = b"7k/8/8/8/8/8/4Q3/K2R4 w - -";
    let mut entry = read::read_file("t", fen).remove(0).expect("readable");
    entry.stipulation = Some(Stipulation::Win);
    let options = CheckOptions {
        depth: 10,
        ..CheckOptions::default()
    };
    let judged = search::search(&entry.position, 10, 2, &Budget::unlimited());
    let budget = Budget::unlimited().nodes(judged.nodes);
    let report = check::check(&entry, &options, &budget);
    assert_eq!(report.verdict, Soundness::SeveralKeys, "{report:?}");
    assert_eq!(report.keys.len(), 2);
    let keys = written::list(&report.keys);
    let task = Task::Win;
    let depth = report.depth.expect("judged");
    let told = [
        Finding::JudgedSeveral { depth, task, keys },
        Finding::MayBeMore,
    ];
    assert_eq!(report.message, told.map(Statement::from));
}

#[test]
fn no_win_is_unsound_and_a_win_is_no_draw() {
    assert_eq!(
        report("4k3/4p3/8/8/8/8/4P3/4K3 w - -", Stipulation::Win).verdict,
        Soundness::Unsound
    );
    let report = report("3q3k/7p/8/8/8/8/7P/K2R4 w - -", Stipulation::Draw);
    assert_eq!(report.verdict, Soundness::Unsound);
    let [Statement::Found(Finding::JudgedBetter { depth: 10, best })] = &report.message[..] else {
        panic!("{:?}", report.message);
    };
    assert!(matches!(best, Stands::MoveStandsAt { line, .. } if *line == "Rxd8+".into()));
}

#[test]
fn a_perpetual_is_the_only_draw() {
    // Composed for this test: White is far behind, and draws by checks from d8 and g5.
    let report = report("6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - -", Stipulation::Draw);
    assert_eq!(
        (report.verdict, &report.keys[..]),
        (Soundness::Sound, &["Qd8+".to_owned()][..]),
        "{report:?}"
    );
}

/// Knows that a rook wins against a bare king, as every table does.
#[derive(Debug)]
struct RookWins;

impl Endgames for RookWins {
    fn most_men(&self) -> usize {
        3
    }

    fn known(&self, position: &Chess) -> Option<TableVerdict> {
        let board = position.board();
        let rook_at_risk = position.legal_moves().iter().any(|mv| mv.is_capture());
        Some(match (board.rooks() & position.us()).any() {
            true => TableVerdict::Win,
            false if rook_at_risk => TableVerdict::Draw,
            false => TableVerdict::Loss,
        })
    }
}

#[test]
fn tables_are_exact() {
    let mut entry = read::read_file("t", b"8/8/8/8/8/2k5/1R6/K7 w - -")
        .remove(0)
        .expect("readable");
    entry.stipulation = Some(Stipulation::Win);
    let options = CheckOptions {
        endgames: Some(std::sync::Arc::new(RookWins)),
        ..CheckOptions::default()
    };
    let report = check::check(&entry, &options, &Budget::unlimited());
    assert!(report.proved && report.depth.is_none());
    assert_eq!(report.verdict, Soundness::SeveralKeys, "{report:?}");
    assert!(
        !report.keys.contains(&"Rb3+".to_owned()),
        "the king takes it: {:?}",
        report.keys
    );
    let task = Task::Win;
    let keys = written::list(&report.keys);
    let told = Statement::from(Finding::TablesSeveral { task, keys });
    assert_eq!(report.message, [told]);
    entry.stipulation = Some(Stipulation::Draw);
    let report = check::check(&entry, &options, &Budget::unlimited());
    assert_eq!(report.verdict, Soundness::Unsound);
    assert_eq!(report.message, [Statement::from(Finding::TablesBetter)]);
}

#[test]
fn too_little_work_is_undecided() {
    let entry = read::read_file("t", b"3q3k/7p/8/8/8/8/7P/K2R4 w - - bm Rxd8+;")
        .remove(0)
        .expect("readable");
    let report = check::check(
        &entry,
        &CheckOptions::default(),
        &Budget::unlimited().nodes(1),
    );
    assert_eq!(report.verdict, Soundness::Undecided);
}
