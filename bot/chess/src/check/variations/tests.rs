//! Lessons on wins and draws, right and wrong. Positions composed for these tests.

use std::sync::Arc;

use shakmaty::{Chess, Color, Position};

use crate::{
    Budget,
    check::{
        Assessment, CheckOptions, Complaint, Endgames, Finding, Report, Soundness, Statement,
        TableVerdict, check,
    },
    fact::{And, Line, Task},
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
        assert_eq!(report.warnings, []);
        let doubtful = Finding::VariationsDoubtful.into();
        assert!(!report.message.contains(&doubtful), "{:?}", report.message);
    }
}

/// The rook takes the knight: taken in turn, White mates on g7; declined, White has a knight more.
const DEFLECTION: &str = "r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1";

#[test]
fn a_sacrifice_taken_and_declined_is_held_to_both_lines() {
    let report = lesson(
        "+",
        DEFLECTION,
        "1.Rxc4! (1.Qg7+? Qxg7 2.hxg7+ Kxg7) Qxc4 (1...Qa1+ 2.Kh2 +-) 2.Qg7#",
    );
    assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
    assert_eq!(report.warnings, []);
    // The first judgement of a move is four half-moves less deep than the position's.
    let holds = Finding::VariationsHold {
        number: 2,
        depth: Some(8),
    };
    let mate = Finding::VariationsMate {
        lines: And {
            and: vec!["2.Qg7#".into()],
        },
        more: 0,
    };
    assert_eq!(report.message[1..], [holds, mate].map(Statement::from));
    let holds: Vec<(&str, bool)> = report
        .coach_lines
        .moves
        .iter()
        .map(|one| (one.san.as_str(), one.holds))
        .collect();
    assert_eq!(
        holds,
        [
            ("Rxc4", true),
            ("Qxc4", false),
            ("Qg7#", true),
            ("Qa1+", false),
            ("Kh2", true),
            ("Qg7+", false),
            ("Qxg7", false),
            ("hxg7+", false),
            ("Kxg7", false),
        ]
    );
    // A claim that the declined line does not bear out, and a move in it that lets the win go.
    for (declined, at) in [("1...Qa1+ 2.Kh2 =", "2.Kh2"), ("1...Qa1+ 2.Qe1", "2.Qe1")] {
        let report = lesson("+", DEFLECTION, &format!("1.Rxc4 Qxc4 ({declined}) 2.Qg7#"));
        assert_eq!(first(&report).1, &at.into(), "{declined}");
        let told =
            |said: &Statement| matches!(said, Statement::Found(Finding::VariationsHold { .. }));
        assert!(!report.message.iter().any(told));
        let holds = report.coach_lines.moves.iter();
        let held = holds.filter(|one| one.holds).count();
        assert_eq!(
            held,
            if declined.contains('=') { 3 } else { 2 },
            "{declined}"
        );
    }
}

#[test]
fn a_mate_at_the_end_is_proved_from_the_first_move_that_forces_it() {
    let report = lesson(
        "+",
        "6k1/5ppp/8/8/8/8/q4PPP/3RR1K1 w - - 0 1",
        "1.Re8# (1.Rd8#)",
    );
    let mates: Vec<&Statement> = report
        .message
        .iter()
        .filter(|said| matches!(said, Statement::Found(Finding::VariationsMate { .. })))
        .collect();
    let both = Finding::VariationsMate {
        lines: And {
            and: vec!["1.Re8#".into(), "1.Rd8#".into()],
        },
        more: 0,
    };
    assert_eq!(mates, [&Statement::from(both)]);
    // A queen is given, and two moves later it is mate.
    let report = lesson(
        "+",
        "3r2k1/5ppp/8/8/8/8/5PPP/1Q1RR1K1 w - - 0 1",
        "1.Rxd8# (1.Qb8 Rxb8 2.Rd8+ Rxd8 3.h3)",
    );
    assert!(report.message.iter().all(|said| {
        !matches!(said, Statement::Found(Finding::VariationsMate { lines, .. })
            if lines.and.contains(&"1.Qb8".into()))
    }));
}

/// The complaint that is the first warning, with its place.
fn first(report: &Report) -> (u32, &Line, &Complaint) {
    match report.warnings.first() {
        Some(Statement::Found(Finding::InVariation { row, line, what })) => (*row, line, what),
        other => panic!("{other:?}"),
    }
}

/// Whether a standing is by search at full depth, and for this side as `good` says of a pawn's hundredths; a
/// mate is good.
fn judged(standing: &Assessment, of: Color, good: impl Fn(i32) -> bool) -> bool {
    match standing {
        Assessment::SearchSays {
            depth: 10,
            side,
            value,
        } => *side == of.into() && good(value.centipawns),
        Assessment::SearchSaysMate {
            depth: 10, side, ..
        } => *side == of.into() && good(10_000),
        Assessment::SearchSaysMated {
            depth: 10, side, ..
        } => *side == of.into() && good(-10_000),
        _ => false,
    }
}

/// Whether a better move is given, and begins so.
fn better_is(better: &Option<Line>, begins: &str) -> bool {
    let text = serde_json::to_value(better).expect("plain data");
    text["line"]
        .as_str()
        .is_some_and(|line| line.starts_with(begins))
}

#[test]
fn lines_that_fail_are_named_with_line_move_and_better_move() {
    use Color::{Black, White};
    type Right = fn(&Complaint) -> bool;
    let lets_go: Right = |what| {
        matches!(what, Complaint::LetsItGo { task: Task::Win, standing, better }
            if judged(standing, White, |value| value <= 100) && better_is(better, "2."))
    };
    let lets_go_later: Right = |what| {
        matches!(what, Complaint::LetsItGo { task: Task::Win, standing, better }
            if judged(standing, White, |value| value <= 100) && better_is(better, "3."))
    };
    let cases: [(&str, &str, u32, &str, Right); 11] = [
        (FREE_QUEEN, "1.Rxd8+ Kg7\n2.Rg8+ Kxg8", 5, "2.Rg8+", lets_go),
        (
            FREE_QUEEN,
            "1.Rxd8+ Kg7 (1...Kg7 2.Rd7+ Kf6\n3.Rf7+ Kxf7 4.Kb2 Kf6 5.h4) 2.Rd7+",
            5,
            "3.Rf7+",
            lets_go_later,
        ),
        (FREE_QUEEN, "1.Rxd8+? Kg7", 4, "1.Rxd8+", |what| {
            matches!(what, Complaint::WrongYetDoes { task: Task::Win, standing }
                if judged(standing, White, |value| value >= 200))
        }),
        (FREE_QUEEN, "1.Rxd8+ (1.Rd7?\nKg8)", 5, "1...Kg8", |what| {
            matches!(what, Complaint::RefutesNot { standing, better }
                    if judged(standing, White, |value| value >= 200) && *better == Some("1...Qxd7".into()))
        }),
        (
            FREE_QUEEN,
            "1.Rxd8+ Kg7\n\n2.Rd7+ $10",
            6,
            "2.Rd7+",
            |what| {
                matches!(what, Complaint::EndsWith { sign, standing }
                if sign == "=" && judged(standing, White, |value| value >= 200))
            },
        ),
        (FREE_QUEEN, "1.Rxd8+ Kg7 2.Rd7+ $19", 4, "2.Rd7+", |what| {
            matches!(what, Complaint::EndsWith { sign, standing }
                if sign == "-+" && judged(standing, Black, |value| value < 0))
        }),
        (
            FREE_QUEEN,
            "1.Rxd8+ (1.Rd7? Qxd7 2.Kb2 $18) Kg7 2.Rd7+ $18",
            4,
            "2.Kb2",
            |what| {
                matches!(what, Complaint::EndsWith { sign, standing }
                    if sign == "+-" && judged(standing, White, |value| value < 0))
            },
        ),
        (FREE_QUEEN, "1.Rxd8# Kg7", 4, "1.Rxd8+", |what| {
            *what == Complaint::MateSignWrong
        }),
        (PERPETUAL, "1.Qd8+ Kg7\n2.h3", 5, "2.h3", |what| {
            matches!(what, Complaint::LetsItGo { task: Task::Draw, standing, better }
                if judged(standing, White, |value| value <= -200) && *better == Some("2.Qg5+".into()))
        }),
        (PERPETUAL, "1.Qd8+? Kg7", 4, "1.Qd8+", |what| {
            matches!(what, Complaint::WrongYetDoes { task: Task::Draw, standing }
                if judged(standing, White, |value| value == 0))
        }),
        (
            PERPETUAL,
            "1.Qd8+ Kg7 2.Qg5+ Kf8 3.Qd8+ $16",
            4,
            "3.Qd8+",
            |what| {
                matches!(what, Complaint::EndsWith { sign, standing }
                    if sign == "+/-" && judged(standing, White, |value| value == 0))
            },
        ),
    ];
    for (fen, moves, row, line, right) in cases {
        let task = if fen == PERPETUAL { "=" } else { "+" };
        let report = lesson(task, fen, moves);
        let (at, of, what) = first(&report);
        assert_eq!((at, of), (row, &line.into()), "{moves}");
        assert!(right(what), "{moves}: {what:?}");
        assert_eq!(report.warnings.len(), 1, "{:?}", report.warnings);
        let last = report.message.last();
        assert_eq!(last, Some(&Finding::VariationsDoubtful.into()));
    }
    // In between nothing is said.
    let report = lesson("=", PERPETUAL, "1.Qd8+ Kg7 2.Qg5+ Kf8 3.Qd8+ $14");
    assert_eq!(report.warnings, []);
}

#[test]
fn a_line_of_black_is_judged_from_black() {
    let report = lesson(
        "+",
        "k2r4/7p/8/8/8/8/7P/3Q3K b - - 0 1",
        "1...Rxd1+ 2.Kg2 Rg1+ 3.Kxg1",
    );
    let (row, line, what) = first(&report);
    assert_eq!((row, line), (4, &"2...Rg1+".into()));
    assert!(
        matches!(what, Complaint::LetsItGo { task: Task::Win, standing, .. }
            if judged(standing, Color::Black, |value| value <= 100)),
        "{what:?}"
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
    let (row, line, what) = first(&report);
    assert_eq!((row, line), (4, &"3.Qg6".into()));
    assert!(
        matches!(what, Complaint::LetsItGo { task: Task::Win, standing: Assessment::IsStalemateNow, better }
            if better_is(better, "3.")),
        "{what:?}"
    );
}

/// Knows king and rook against king, as every table does.
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
    let by_tables = |known| Assessment::TablesSay {
        side: Color::White.into(),
        known,
    };
    let (row, line, what) = first(&report);
    assert_eq!((row, line), (5, &"1...Kd3".into()));
    let level = Complaint::EndsWith {
        sign: "=".to_owned(),
        standing: by_tables(TableVerdict::Win),
    };
    assert_eq!(what, &level);
    let Statement::Found(Finding::InVariation { row: 5, line, what }) = &report.warnings[1] else {
        panic!("{:?}", report.warnings);
    };
    assert_eq!(line, &"3.Rb3+".into());
    assert!(
        matches!(what, Complaint::LetsItGo { task: Task::Win, standing, better }
            if *standing == by_tables(TableVerdict::Draw) && better_is(better, "3.")),
        "{what:?}"
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
    let [Statement::Found(Finding::VariationsCut { row: 4..=6, line })] = &report.warnings[..]
    else {
        panic!("{:?}", report.warnings);
    };
    assert_ne!(line, &"1.Rxd8+".into());
}
