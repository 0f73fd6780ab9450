//! Verdicts along a coach's own lines. Positions composed for these tests.

use std::sync::Arc;

use super::*;
use crate::check::{CheckOptions, Problem, check, problem};
use crate::fact::{Hint, Task};
use crate::judge::{Judgement, Terms, Verdict, hint, judge};
use crate::read::read_file;
use crate::{Budget, Language};

/// A mate in two on the back rank: 1.Rxd8+ Rxd8 2.Rxd8#.
const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";
/// A smothered mate in two: 1.Qg8+ Rxg8 2.Nf7#.
const SMOTHERED: &str = "r6k/6pp/7N/8/2Q5/8/8/6K1 w - - 0 1";
/// The rook takes the knight: taken in turn, White mates on g7; declined, White has a knight more.
const DEFLECTION: &str = "r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1";
const BOTH: &str = "1.Rxc4! {The rook asks her to choose.} (1.Qg7+? {The ending is level.} Qxg7 \
    2.hxg7+ Kxg7 {Pawns are all that is left.}) 1...Qxc4 {She lets go of the diagonal.} (1...Qa1+ \
    {She stays.} 2.Kh2 {A piece for nothing.} +-) 2.Qg7# {In front of the king.}";

/// The problem of a file with one game, checked, with the coach's lines and without them.
fn lesson(fen: &str, task: &str, game: &str) -> (Problem, Problem) {
    let file = format!("[FEN \"{fen}\"]\n[Task \"{task}\"]\n\n{game} *\n");
    let entry = read_file("f", file.as_bytes()).remove(0).expect("readable");
    let options = CheckOptions {
        depth: 10,
        ..CheckOptions::default()
    };
    let budget = Budget::unlimited();
    let report = check(&entry, &options, &budget);
    let task = entry.stipulation.expect("stated");
    let bare = problem(&entry.position, task, &options, &budget).expect("it holds");
    let tree = CoachTree::of(&entry.position, &report.coach_lines);
    let taught = Problem {
        coach: tree.map(Arc::new),
        ..bare.clone()
    };
    (taught, bare)
}

fn say_as(problem: &Problem, line_choice: u64, line: &[&str], text: &str) -> Judgement {
    let line: Vec<String> = line.iter().map(|san| (*san).to_owned()).collect();
    let terms = Terms {
        line_choice,
        ..Terms::answer(Language::English)
    };
    judge(problem, &line, text, &terms, &Budget::unlimited()).expect("an answer")
}

fn say(problem: &Problem, text: &str) -> Judgement {
    say_as(problem, 0, &[], text)
}

fn on(line: &str, words: &str) -> Remark {
    Remark::CoachOnMove {
        line: line.into(),
        words: words.into(),
    }
}

#[test]
fn a_wrong_move_is_answered_with_the_coachs_variation_and_words() {
    let (taught, _) = lesson(
        BACK_RANK,
        "#2",
        "1.Rxd8+! (1.Rd7? {Too slow: the file is shut.} Rxd7 2.Rxd7 g6 {The king has air.}) Rxd8 2.Rxd8#",
    );
    let said = say(&taught, "Rd7");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert_eq!(said.refutation, ["Rxd7", "Rxd7", "g6"]);
    assert_eq!(
        said.said,
        [
            Remark::Fails {
                line: "1.Rd7".into()
            },
            on("1.Rd7", "Too slow: the file is shut."),
            Remark::CoachShows {
                line: "1...Rxd7 2.Rxd7 g6".into()
            },
            on("2...g6", "The king has air."),
        ]
    );
}

#[test]
fn without_words_of_the_coach_the_programs_reason_stands_with_the_variation() {
    let (taught, bare) = lesson(
        BACK_RANK,
        "#2",
        "1.Rxd8+! (1.Rd7? Rxd7 2.Rxd7 g6) Rxd8 2.Rxd8#",
    );
    let (said, own) = (say(&taught, "Rd7"), say(&bare, "Rd7"));
    assert!(!own.why.is_empty());
    assert_eq!(
        said.said[1],
        Remark::CoachShowsBecause {
            line: "1...Rxd7 2.Rxd7 g6".into(),
            why: own.why,
        }
    );
}

#[test]
fn words_alone_stand_before_the_programs_refutation() {
    let (taught, bare) = lesson(BACK_RANK, "#2", "1.Rxd8+! (1.h3? {Too slow.}) Rxd8 2.Rxd8#");
    let (said, own) = (say(&taught, "h3"), say(&bare, "h3"));
    assert_eq!(said.refutation, own.refutation);
    let mut wanted = own.said.clone();
    wanted.insert(1, on("1.h3", "Too slow."));
    assert_eq!(said.said, wanted);
}

/// The program's refutation alone is shown where the coach's words or moves tell a move still to be found,
/// where the coach's line refutes nothing, and where the coach does not say that the move is wrong.
#[test]
fn what_may_not_be_shown_gives_way_to_the_programs_refutation() {
    for (fen, task, game, wrong) in [
        // The words tell the key.
        (
            BACK_RANK,
            "#2",
            "1.Rxd8+! (1.Rd7? {The rook has to take on d8.} Rxd7) Rxd8 2.Rxd8#",
            "Rd7",
        ),
        (
            BACK_RANK,
            "#2",
            "1.Rxd8+! (1.Rd7? Rxd7 {Rxd8 was better.}) Rxd8 2.Rxd8#",
            "Rd7",
        ),
        // They are for the reveal.
        (
            BACK_RANK,
            "#2",
            "1.Rxd8+! (1.h3? {[reveal] Too slow.}) Rxd8 2.Rxd8#",
            "h3",
        ),
        // The line comes to the key a move later.
        (
            BACK_RANK,
            "#2",
            "1.Rxd8+! (1.h3? {Too slow.} h6 2.Rxd8+ Rxd8 3.Rxd8+ Kh7) Rxd8 2.Rxd8#",
            "h3",
        ),
        // It comes to the mating move.
        (
            SMOTHERED,
            "#2",
            "1.Qg8+! (1.Qd4? Rf8 2.Nf7+ Kg8) Rxg8 2.Nf7#",
            "Qd4",
        ),
        // After it White mates all the same.
        (
            SMOTHERED,
            "#2",
            "1.Qg8+! (1.Qf7? {It looks strong.} Rg8) Rxg8 2.Nf7#",
            "Qf7",
        ),
        // Nothing says that it is wrong.
        (
            BACK_RANK,
            "#2",
            "1.Rxd8+! (1.Rd7 {It keeps the pressure.} Rxd7 2.Rxd7) Rxd8 2.Rxd8#",
            "Rd7",
        ),
        // The words tell the key of a win.
        (
            DEFLECTION,
            "+",
            "1.Rxc4! (1.Re1? {Take the knight on c4 with the rook.} Qf6) Qxc4 2.Qg7#",
            "Re1",
        ),
        // The line comes to it.
        (
            DEFLECTION,
            "+",
            "1.Rxc4! (1.Qg7+? {Too early.} Qxg7 2.hxg7+ Kxg7 3.Rxc4) Qxc4 2.Qg7#",
            "Qg7+",
        ),
        // It refutes nothing: the queen goes, and White mates.
        (
            DEFLECTION,
            "+",
            "1.Rxc4! (1.Re1? {It looks strong.} Qb6) Qxc4 2.Qg7#",
            "Re1",
        ),
        // At first it does, and then no more.
        (
            DEFLECTION,
            "+",
            "1.Rxc4! (1.Re1? {It looks strong.} Qf6 2.Kh2 Qxh6+ 3.Kg1 Qc1 4.Rxc1) Qxc4 2.Qg7#",
            "Re1",
        ),
    ] {
        let (taught, bare) = lesson(fen, task, game);
        assert!(taught.coach.is_some());
        let (said, own) = (say(&taught, wrong), say(&bare, wrong));
        assert_eq!(own.verdict, Verdict::Wrong, "{game}");
        assert_eq!((said.verdict, said.points), (own.verdict, own.points));
        let coachs = |remark: &Remark| {
            matches!(
                remark,
                Remark::CoachShows { .. }
                    | Remark::CoachShowsBecause { .. }
                    | Remark::CoachOnMove { .. }
            )
        };
        assert!(!said.said.iter().any(coachs), "{game}: {:?}", said.said);
        assert!(
            said.refutation.len() <= own.refutation.len().max(1),
            "{game}"
        );
    }
}

#[test]
fn naming_the_move_that_was_played_gives_nothing_away() {
    let (taught, _) = lesson(
        BACK_RANK,
        "#2",
        "1.Rxd8+! (1.Rd7? {1.Rd7 shuts the file.} Rxd7) Rxd8 2.Rxd8#",
    );
    let said = say(&taught, "Rd7");
    assert_eq!(said.said[1], on("1.Rd7", "1.Rd7 shuts the file."));
}

#[test]
fn a_later_wrong_move_is_answered_too() {
    let (taught, _) = lesson(
        "1rrr2k1/5ppp/8/8/8/3R4/3R1PPP/3Q2K1 w - - 0 1",
        "#3",
        "1.Rxd8+ Rxd8 2.Rxd8+ (2.h3? {Black has time again.} Rxd2 3.Qxd2 h6) Rxd8 3.Qxd8#",
    );
    let said = say_as(&taught, 0, &["Rxd8+", "Rxd8"], "h3");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert_eq!(
        said.said[1..],
        [
            on("2.h3", "Black has time again."),
            Remark::CoachShows {
                line: "2...Rxd2 3.Qxd2 h6".into()
            },
        ]
    );
}

#[test]
fn the_coachs_words_on_right_moves_come_when_it_is_solved_and_not_before() {
    let (taught, _) = lesson(
        BACK_RANK,
        "#2",
        "1.Rxd8+! {A rook for a rook.} (1.Rd7? {Slow.} Rxd7) Rxd8 {Forced.} 2.Rxd8# {[reveal] Bare.}",
    );
    let said = say(&taught, "Rxd8+");
    assert_eq!(said.verdict, Verdict::Solved);
    assert_eq!(said.said[1..], [on("1.Rxd8+", "A rook for a rook.")]);
    let said = say(&taught, "1.Rxd8+ Rxd8 2.Rxd8#");
    assert_eq!(
        said.said[1..],
        [
            on("1.Rxd8+", "A rook for a rook."),
            on("1...Rxd8", "Forced.")
        ]
    );
    let (taught, _) = lesson(DEFLECTION, "+", BOTH);
    let on_the_way = say(&taught, "Rxc4");
    assert_eq!(on_the_way.verdict, Verdict::OnTheWay);
    assert_eq!(on_the_way.said.len(), 1);
}

#[test]
fn of_a_win_the_accepted_line_is_asked_to_the_mate_and_the_declined_one_to_the_coachs_last_move() {
    let (taught, _) = lesson(DEFLECTION, "+", BOTH);
    for (choice, answer, next, told, words) in [
        (
            0,
            "Qxc4",
            "Qg7#",
            Remark::LineMates {
                line: "1.Rxc4 Qxc4 2.Qg7#".into(),
            },
            [
                on("1.Rxc4", "The rook asks her to choose."),
                on("1...Qxc4", "She lets go of the diagonal."),
                on("2.Qg7#", "In front of the king."),
            ],
        ),
        (
            1,
            "Qa1+",
            "Kh2",
            Remark::LineDoes {
                line: "1.Rxc4 Qa1+ 2.Kh2".into(),
                task: Task::Win,
            },
            [
                on("1.Rxc4", "The rook asks her to choose."),
                on("1...Qa1+", "She stays."),
                on("2.Kh2", "A piece for nothing."),
            ],
        ),
    ] {
        for choice in [choice, choice + 2, choice + 40] {
            let said = say_as(&taught, choice, &[], "Rxc4");
            assert_eq!((said.verdict, said.points), (Verdict::OnTheWay, 1.0));
            assert_eq!(said.line, ["Rxc4", answer], "{choice}");
            // The same again.
            assert_eq!(say_as(&taught, choice, &[], "Rxc4").line, said.line);
            let said = say_as(&taught, choice, &["Rxc4", answer], next);
            assert_eq!((said.verdict, said.points), (Verdict::Solved, 5.0));
            assert_eq!(said.said[0], told);
            assert_eq!(said.said[1..], words);
        }
    }
}

#[test]
fn what_is_written_whole_is_judged_as_it_is_written() {
    let (taught, _) = lesson(DEFLECTION, "+", BOTH);
    for (text, verdict) in [
        (
            "1.Rxc4 Qxc4 2.Qg7#; if 1...Qa1+ 2.Kh2 wins",
            Verdict::Solved,
        ),
        ("1.Rxc4 Qa1+ 2.Kh2 (1...Qxc4 2.Qg7#)", Verdict::Solved),
        ("1.Rxc4 Qxc4 2.Qg7#", Verdict::Solved),
        ("1.Rxc4 Qa1+ 2.Kh2", Verdict::Solved),
        ("1.Rxc4 2.Qg7#", Verdict::Solved),
        // One of the lines is wrong.
        ("1.Rxc4 Qxc4 2.Qg7# (1...Qa1+ 2.Qe1)", Verdict::Wrong),
        ("1.Rxc4 Qxc4 2.Kh2", Verdict::Wrong),
        // A piece is given for nothing, and neither of the coach's defences is dealt with.
        ("1.Rxc4 a6 2.Rxd4", Verdict::OnTheWay),
    ] {
        for choice in [0, 1] {
            let said = say_as(&taught, choice, &[], text);
            assert_eq!(said.verdict, verdict, "{text}: {:?}", said.said);
            let met = ["Qxc4", "Qa1+"][usize::try_from(choice).expect("small")];
            if verdict == Verdict::OnTheWay {
                assert_eq!(said.line, ["Rxc4", met]);
            }
        }
    }
}

#[test]
fn off_the_coachs_lines_nothing_changes() {
    let (taught, bare) = lesson(DEFLECTION, "+", BOTH);
    for (line, text) in [
        (&[][..], "Kh2"),
        (&[], "Re1"),
        (&["Rxc4", "Qxc4"], "Kh2"),
        (&["Rxc4", "Qd1+"], "Kh2"),
    ] {
        let (said, own) = (say_as(&taught, 1, line, text), say_as(&bare, 1, line, text));
        assert_eq!(
            (said.verdict, &said.said),
            (own.verdict, &own.said),
            "{text}"
        );
    }
    // Moves that no check found to hold are nobody's.
    let mut lines = {
        let file = format!("[FEN \"{DEFLECTION}\"]\n[Task \"+\"]\n\n{BOTH} *\n");
        let entry = read_file("f", file.as_bytes()).remove(0).expect("readable");
        crate::coach_lines::CoachLines::of(&entry.position, &entry.variations.expect("moves"))
    };
    lines.moves.iter_mut().for_each(|one| one.holds = false);
    let unchecked = Problem {
        coach: CoachTree::of(&bare.position, &lines).map(Arc::new),
        ..bare.clone()
    };
    let (said, own) = (say(&unchecked, "Rxc4"), say(&bare, "Rxc4"));
    assert_eq!((said.said, said.line), (own.said, own.line));
}

#[test]
fn a_wrong_move_in_a_win_is_answered_with_the_coachs_variation() {
    let (taught, _) = lesson(DEFLECTION, "+", BOTH);
    let said = say(&taught, "Qg7+");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert_eq!(said.refutation, ["Qxg7", "hxg7+", "Kxg7"]);
    assert_eq!(
        said.said[..4],
        [
            Remark::DoesNot {
                line: "1.Qg7+".into(),
                task: Task::Win,
            },
            on("1.Qg7+", "The ending is level."),
            Remark::CoachShows {
                line: "1...Qxg7 2.hxg7+ Kxg7".into()
            },
            on("2...Kxg7", "Pawns are all that is left."),
        ]
    );
    assert!(matches!(said.said[4..], [Remark::BySearch { .. }]));
}

#[test]
fn hints_go_along_the_coachs_lines() {
    let (taught, _) = lesson(DEFLECTION, "+", BOTH);
    for (line, shown) in [(["Rxc4", "Qxc4"], "2.Qg7#"), (["Rxc4", "Qa1+"], "2.Kh2")] {
        let said = hint(&taught, &line.map(str::to_owned), 3).expect("known");
        assert_eq!(said, [Hint::NextMoveIs { line: shown.into() }]);
    }
    // At the start the mate at the end of the coach's main line is in sight.
    let idea = hint(&taught, &[], 2).expect("known");
    assert!(
        idea.contains(&Hint::QuietGivesUp) || idea.contains(&Hint::CaptureNoCheck),
        "{idea:?}"
    );
}
