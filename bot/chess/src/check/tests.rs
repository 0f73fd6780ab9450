//! Reports on positions of every verdict.

use shakmaty::Chess;

use super::*;
use crate::{
    Warning,
    fact::{And, Centipawns, Line},
    parse_fen,
};

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
        ..Entry::default()
    }
}

/// An entry that holds a position and a task, and nothing else.
pub(super) fn entry_of(position: &Chess, task: Option<Stipulation>) -> Entry {
    Entry {
        id: "t1".to_owned(),
        line: 1,
        stipulation: task,
        position: position.clone(),
        ..Entry::default()
    }
}

/// Moves as a value.
fn moves(sans: &[&str]) -> And<Line> {
    And {
        and: sans.iter().copied().map(Line::from).collect(),
    }
}

/// Whether a report that is undecided knows a mate of this length.
fn proves(report: &Report, length: u32) -> bool {
    report.message.iter().any(
        |told| matches!(told, Statement::Found(Finding::MateProved { moves, .. }) if *moves == length),
    )
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
    assert_eq!(report.patterns, ["back-rank"]);
    assert_eq!(report.message, []);
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
    let told = Finding::SoonerMate {
        moves: 2,
        asked: 3,
        line: "1.Rxd8+ Rxd8 2.Rxd8#".into(),
    };
    assert_eq!(report.message, [told.into()]);
}

#[test]
fn several_keys() {
    let report = report("6k1/5ppp/8/8/8/8/8/K2QR3 w - - 0 1", Some("#1"));
    assert_eq!(report.verdict, Soundness::SeveralKeys);
    assert_eq!(report.keys, ["Qd8#", "Re8#"]);
    let told = Finding::SeveralMates {
        number: 2,
        moves: 1,
        keys: moves(&["Qd8#", "Re8#"]),
    };
    assert_eq!(report.message, [told.into()]);
}

/// Two rooks and a king mate a bare king in several ways.
#[test]
fn other_continuations_stand_in_brackets() {
    let report = report("7k/8/5K2/8/8/8/8/RR6 w - - 0 1", Some("#2"));
    let with_brackets = |line: &&String| line.contains('(');
    let line = report.variations.iter().find(with_brackets);
    let line = line.unwrap_or_else(|| panic!("{:?}", report.variations));
    let inside = &line[line.find('(').expect("one") + 1..line.find(')').expect("one")];
    for one in inside.split(", ") {
        let is_move = one.parse::<shakmaty::san::SanPlus>().is_ok();
        assert!(is_move || one == "…", "{line}");
    }
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
    let [
        Statement::Found(Finding::NoMateIn { moves: 2 }),
        Statement::Found(Finding::HoldsAgainst { first, reply, .. }),
        Statement::Found(Finding::LongerMate { moves: 3, keys }),
    ] = &report.message[..]
    else {
        panic!("{:?}", report.message);
    };
    let [move_, answer] = &report.line[..] else {
        panic!("{:?}", report.line);
    };
    assert_eq!(first, &format!("1.{move_}").into());
    assert_eq!(reply, &answer.as_str().into());
    assert!(!keys.and.is_empty());
}

#[test]
fn promises_that_do_not_hold_are_named() {
    let report = check(
        &entry(BACK_RANK, Some("#2"), &["Rd7"], &["Rxd8"]),
        &CheckOptions::default(),
        &Budget::unlimited(),
    );
    assert_eq!(report.verdict, Soundness::Sound);
    let told = [
        Finding::PromiseNoMate {
            promised: moves(&["Rd7"]),
            number: 1,
            moves: 2,
            keys: moves(&["Rxd8+"]),
            others: 1,
        },
        Finding::AvoidedMates {
            avoided: moves(&["Rxd8+"]),
            number: 1,
            moves: 2,
        },
    ];
    assert_eq!(report.message, told.map(Statement::from));
}

#[test]
fn a_position_that_is_over_is_said_to_be() {
    let mated = report("R5k1/5ppp/8/8/8/8/8/K7 b - - 0 1", Some("#2"));
    assert_eq!(mated.verdict, Soundness::Unsound);
    assert_eq!(mated.message, [Finding::MatedAlready.into()]);
    let stalemate = report("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", Some("#2"));
    assert_eq!(stalemate.message, [Finding::StalematedAlready.into()]);
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
    let [
        Statement::Found(Finding::MateUnsettled {
            task: Stipulation::Mate(5),
        }),
        Statement::Found(Finding::NoMateProved { moves: 1.. }),
        ..,
        Statement::Found(Finding::AllowMore),
    ] = &report.message[..]
    else {
        panic!("{:?}", report.message);
    };
}

/// Rook and king mate in more moves than are sought here, and half of the work is not enough to
/// know it: the win is judged all the same.
#[test]
fn a_win_is_judged_with_what_the_search_for_a_mate_leaves() {
    let entry = entry("4k2r/8/8/8/4K3/8/8/8 b - - 0 1", None, &[], &[]);
    let options = CheckOptions {
        moves: 8,
        depth: 8,
        ..CheckOptions::default()
    };
    let halfway = || true;
    let report = check(&entry, &options, &Budget::unlimited().halfway(&halfway));
    assert_eq!(report.stipulation, Some(Stipulation::Win), "{report:?}");
    assert_eq!(report.verdict, Soundness::SeveralKeys);
    assert!(!report.proved);
    assert!(
        matches!(
            report.message[0],
            Statement::Found(Finding::NoMateThenCut { moves: 1.. })
        ),
        "{:?}",
        report.message
    );
}

/// The search for a mate was cut short and there is no win: a longer mate is not ruled out, so
/// nothing is decided.
#[test]
fn no_win_after_half_a_search_for_a_mate_is_undecided() {
    let entry = entry(
        "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
        None,
        &[],
        &[],
    );
    let options = CheckOptions {
        depth: 8,
        ..CheckOptions::default()
    };
    let halfway = || true;
    let report = check(&entry, &options, &Budget::unlimited().halfway(&halfway));
    assert_eq!(
        (report.verdict, report.stipulation),
        (Soundness::Undecided, None),
        "{report:?}"
    );
    let last = report.message.last();
    assert_eq!(last, Some(&Finding::AllowMoreOrShorter.into()));
}

/// Where the budget ends after the keys, the verdict, the keys and the line stand; only the tries
/// and side lines not reached are missing, and the report says so of the tries.
#[test]
fn a_budget_that_ends_after_the_keys_leaves_the_verdict() {
    // Sam Loyd (Excelsior), London Era, 1861.
    let fen = "n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1";
    let whole = report(fen, Some("#5"));
    assert!(whole.warnings.is_empty() && whole.difficulty.is_some());
    let entry = entry(fen, Some("#5"), &[], &[]);
    let (mut cut, mut found, mut tries_cut) = (0, 0, 0);
    for nodes in (0..whole.nodes).step_by(whole.nodes as usize / 24) {
        let budget = Budget::unlimited().nodes(nodes);
        let report = check(&entry, &CheckOptions::default(), &budget);
        if report.verdict == Soundness::Undecided {
            found += u32::from(proves(&report, 5));
            continue;
        }
        assert_eq!((&report.keys, &report.line), (&whole.keys, &whole.line));
        assert_eq!(report.verdict, whole.verdict);
        assert_eq!(report.message, []);
        assert!(report.tries.iter().all(|one| whole.tries.contains(one)));
        cut += u32::from(report.variations.len() < whole.variations.len());
        if report.difficulty.is_none() {
            assert_eq!(report.warnings, [Finding::TriesCut.into()]);
            tries_cut += 1;
        } else {
            assert_eq!(report.tries, whole.tries);
            assert!(report.warnings.is_empty());
        }
    }
    assert!(
        cut > 0 && found > 0 && tries_cut > 0,
        "{cut} {found} {tries_cut}"
    );
}

/// `undecided` tells all that is proved by then: the length ruled out and how far the next one is;
/// and once a mate is found, its key and which first moves are open.
#[test]
fn undecided_names_what_is_proved_and_which_first_moves_are_open() {
    let fen = "n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1";
    let entry = entry(fen, Some("#5"), &[], &[]);
    let total = report(fen, Some("#5")).nodes;
    let mut messages = Vec::new();
    for nodes in (0..total).step_by(total as usize / 60) {
        let report = check(
            &entry,
            &CheckOptions::default(),
            &Budget::unlimited().nodes(nodes),
        );
        if report.verdict == Soundness::Undecided {
            if proves(&report, 5) {
                assert_eq!(report.line, ["b4"]);
            }
            messages.push(report.message);
        }
    }
    let key = Finding::MateProved {
        line: "1.b4".into(),
        moves: 5,
    };
    type Is<'a> = &'a dyn Fn(&Finding) -> bool;
    let expected: [(&str, Is<'_>); 5] = [
        ("a length", &|told| {
            *told == Finding::NoMateProved { moves: 4 }
        }),
        (
            "how far the next length is",
            &|told| matches!(told, Finding::FirstMovesFail { failed, all, moves: 5 } if failed < all),
        ),
        ("the key", &|told| *told == key),
        ("that it may not be the only one", &|told| {
            *told == Finding::OnlyKeyOpen
        }),
        (
            "what is open",
            &|told| matches!(told, Finding::FirstMovesOpen { failed: 1.., open, .. } if !open.list.is_empty()),
        ),
    ];
    for (what, is) in expected {
        let told = messages.iter().flatten().any(|told| match told {
            Statement::Found(finding) => is(finding),
            _ => false,
        });
        assert!(told, "{what}: {messages:#?}");
    }
}

#[test]
fn a_full_fifty_move_clock_is_warned_of() {
    let fen = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 98 80";
    let report = report(fen, Some("#2"));
    assert_eq!(report.verdict, Soundness::Sound);
    assert_eq!(report.warnings, [Finding::FiftyMoves { number: 98 }.into()]);
}

/// Rights to castle without king and rook at home, and nine pawns.
#[test]
fn positions_that_cannot_arise_are_checked_and_warned_of() {
    let report = report("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w KQ - 0 1", Some("#2"));
    assert_eq!((report.verdict, report.proved), (Soundness::Sound, true));
    assert_eq!(report.warnings, [Warning::CastlingRightsDropped.into()]);

    let report = self::report("6k1/5ppp/ppp1p3/pp6/8/8/5PPP/3R2K1 w - - 0 1", Some("#1"));
    assert_eq!((report.verdict, report.proved), (Soundness::Sound, true));
    assert_eq!(report.warnings, [Warning::TooManyPieces.into()]);
}

/// By the table in `difficulty`: Paul Morphy, New York Clipper, 1856 (from memory), with a quiet key
/// that gives a rook, seven defences; and a rook exchange with check and one defence.
#[test]
fn the_difficulty_follows_its_formula() {
    for (fen, key, rest) in [
        (
            "kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1",
            "Ra6",
            1.0 + 0.7 + 6.0 * 0.05,
        ),
        (BACK_RANK, "Rxd8+", -0.5 + 0.7),
    ] {
        let report = report(fen, Some("#2"));
        assert_eq!(report.keys, [key]);
        let tries = (0.25 * report.tries.len() as f64).min(1.5);
        let expected: f64 = 2.5 + rest + tries;
        let told = report.difficulty.expect("a key");
        assert!((told - expected).abs() < 0.051, "{key}: {told}, {expected}");
    }
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

fn lesson(task: &str, fen: &str, moves: &str) -> Report {
    let text = format!("[Task \"{task}\"]\n[FEN \"{fen}\"]\n\n{moves}\n");
    let entry = crate::read::read_file("f", text.as_bytes()).remove(0);
    check(
        &entry.expect("readable"),
        &CheckOptions::default(),
        &Budget::unlimited(),
    )
}

#[test]
fn variations_of_a_lesson_that_hold_are_passed() {
    let report = lesson(
        "#2",
        BACK_RANK,
        "1.Rxd8+ $1 (1.Rd7? Rxd7 $19) (1.g3? Rxd2) 1...Rxd8 2.Rxd8# +-",
    );
    assert_eq!(report.verdict, Soundness::Sound);
    assert_eq!(report.warnings, []);
    assert_eq!(report.message, []);
}

#[test]
fn variations_that_fail_are_named_with_line_move_and_better_move() {
    let two_rooks = "7k/8/8/5K2/8/8/8/6R1 w - - 0 1";
    let some = |line: &str| Some(Line::from(line));
    for (task, fen, moves, row, line, what) in [
        (
            "#2",
            BACK_RANK,
            "1.Rxd8+ Rxd8\n2.Rd7",
            5,
            "2.Rd7",
            Complaint::HadToMate {
                better: some("2.Rxd8#"),
            },
        ),
        (
            "#2",
            BACK_RANK,
            "1.Rxd8+ (1.g3 Rxd2) Rxd8 2.Rxd8#",
            4,
            "1.g3",
            Complaint::LetsMateGo {
                moves: 2,
                holds: some("1...Rxd2"),
                better: some("1.Rxd8+"),
            },
        ),
        (
            "#2",
            BACK_RANK,
            "1.Rxd8+? Rxd8 2.Rxd8#",
            4,
            "1.Rxd8+",
            Complaint::WrongYetMates { moves: 2 },
        ),
        (
            "#2",
            BACK_RANK,
            "1.Rxd8# Rxd8 2.Rxd8#",
            4,
            "1.Rxd8+",
            Complaint::MateSignWrong,
        ),
        (
            "#2",
            BACK_RANK,
            "1.Rxd8+ Rxd8 2.Rxd8# $10",
            4,
            "2.Rxd8#",
            Complaint::SignYetMates,
        ),
        (
            "#3",
            two_rooks,
            "1.Kg6 Kg8 2.Ra1 Kh8 3.Ra8#",
            4,
            "2.Ra1",
            Complaint::LetsMateGo {
                moves: 2,
                holds: some("2...Kf8"),
                better: some("2.Rf1"),
            },
        ),
    ] {
        let report = lesson(task, fen, moves);
        let line = line.into();
        let told = Statement::from(Finding::InVariation { row, line, what });
        assert_eq!(report.warnings.first(), Some(&told));
        let last = report.message.last();
        assert_eq!(last, Some(&Finding::VariationsDoubtful.into()));
    }
}

/// What earlier versions kept, and what this one keeps.
#[test]
fn reports_of_every_version_are_read() {
    let old = serde_json::json!({
        "id": "w1", "fen": BACK_RANK, "stipulation": "#3", "verdict": "short", "keys": ["Rxd8+"],
        "line": ["Rxd8+", "Rxd8", "Rxd8#"], "patterns": ["back-rank"], "proved": true, "nodes": 71,
        "seconds": 0.01, "message": "There is a mate in 2.", "variations": [], "tries": [],
        "warnings": ["line 5, move 2.Rd7: it is not mate"], "depth": null, "difficulty": 2.7, "version": 4,
    });
    let read: Report = serde_json::from_value(old.clone()).expect("read");
    assert_eq!(
        read.message,
        [Statement::Old("There is a mate in 2.".into())]
    );
    let warning = "line 5, move 2.Rd7: it is not mate";
    assert_eq!(read.warnings, [Statement::Old(warning.into())]);
    let mut silent = old;
    silent["message"] = "".into();
    silent["warnings"] = serde_json::json!([]);
    let read: Report = serde_json::from_value(silent).expect("read");
    assert_eq!((read.message, read.warnings), (Vec::new(), Vec::new()));

    let mut new = lesson("#2", BACK_RANK, "1.Rxd8+ Rxd8\n2.Rd7");
    new.warnings.push(Warning::TooManyPieces.into());
    let fact = serde_json::json!({ "is": "something-else", "text": "x" });
    new.warnings.push(Statement::added(&fact));
    new.message.extend([
        Finding::MateUnsettled {
            task: Stipulation::Mate(2),
        }
        .into(),
        Finding::JudgedOnly {
            depth: 10,
            best: Stands::MoveStandsAt {
                line: "Rd8".into(),
                value: Centipawns { centipawns: -30 },
            },
        }
        .into(),
    ]);
    let kept = serde_json::to_value(&new).expect("plain data");
    assert_eq!(kept["message"][0]["is"], "variations-doubtful");
    assert_eq!(kept["warnings"][0]["what"]["is"], "had-to-mate");
    assert_eq!(kept["warnings"][2], fact);
    let read: Report = serde_json::from_value(kept).expect("read");
    assert_eq!((read.message, read.warnings), (new.message, new.warnings));
    // Every fact of its own is one again, not a stranger's.
    let entry = crate::read::read_file("f", b"hello there").remove(0);
    let unreadable = Report::unreadable(&entry.expect_err("no file"));
    let kept = serde_json::to_value(&unreadable).expect("plain data");
    let read: Report = serde_json::from_value(kept).expect("read");
    assert!(matches!(read.message[0], Statement::Found(_)), "{read:?}");
    assert_eq!(read.message, unreadable.message);
}

#[test]
fn a_reply_that_does_not_refute_is_named() {
    let report = lesson(
        "#2",
        "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
        "1.Rxd8+ (1.Rd7? h6 2.Rxd8+) Rxd8 2.Rxd8#",
    );
    assert_eq!(
        report.warnings.len(),
        0,
        "luft holds as well: {:?}",
        report.warnings
    );
    let report = lesson(
        "#2",
        "3r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
        "1.Rxd8# (1.g3? Rxd2)",
    );
    assert_eq!(report.verdict, Soundness::Short);
    let report = lesson(
        "#1",
        "3r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
        "1.Rxd8# (1.g3? h5)",
    );
    assert_eq!(report.verdict, Soundness::Sound);
    assert_eq!(report.warnings.len(), 0);
}
