//! What is said of wrong moves where a win or a draw is asked, held to the board by python-chess.
//!
//! What a position is worth is the search's opinion; whatever else a sentence says has to be so.

use std::fmt::Write;

use sealed_move::chess::{
    Branch, Budget, Language, Solution, Stipulation,
    check::Problem,
    judge::{Terms, Verdict, judge},
    line, parse_fen,
};
use sealed_move::words::{tags, words};
use sealed_move_tests::{english::InEnglish as _, python_script};
use serde_json::json;
use shakmaty::{Move, Position, uci::UciMove};

/// Positions that a search may look at for one judgement: few, since here only the words count.
const NODES: u64 = 60_000;

/// Shapes of sentence that have to come up, each at least once.
const EXPECTED: &[&str] = &[
    "attacks_at_once",
    "behind",
    "capture",
    "capture for nothing",
    "check_and_falls",
    "costs",
    "even",
    "for_ever",
    "is_stalemated",
    "left_cannot_mate",
    "level",
    "mates_at_once",
    "mates_in",
    "no_check_left",
    "pawn_with_check",
    "promotes",
    "stalemate",
    "steps_out",
    "takes_and_steps_out",
    "then_falls",
];

/// The problem with some other move as its key, so that `wrong` is judged for itself.
fn problem(fen: &str, task: Stipulation, wrong: &UciMove) -> (Problem, Move) {
    let position = parse_fen(fen).expect("a position").position;
    let wrong = wrong.to_move(&position).expect("legal");
    let key = position.legal_moves().into_iter().find(|&mv| mv != wrong);
    let key = Branch {
        mv: key.expect("another move"),
        defences: Vec::new(),
    };
    let solution = Solution {
        keys: vec![key],
        ..Solution::default()
    };
    let problem = Problem {
        position,
        stipulation: task,
        solution: solution.into(),
        endgames: None,
        coach: None,
    };
    (problem, wrong)
}

#[test]
fn what_is_said_of_a_lost_win_or_draw_is_true_on_the_board() {
    let mut input = String::new();
    let (mut rows, mut wrong) = (0, 0);
    for row in include_str!("weighed.txt").lines() {
        if row.starts_with('#') {
            continue;
        }
        rows += 1;
        let fields: Vec<&str> = row.split('\t').collect();
        let [fen, task, uci] = fields[..] else {
            panic!("three fields: {row}")
        };
        let stipulation = task.parse().expect("a task");
        let (problem, mv) = problem(fen, stipulation, &uci.parse().expect("UCI"));
        let san = line::sans(&problem.position, &[mv]).remove(0);
        let terms = Terms::answer(Language::English);
        let budget = Budget::unlimited().nodes(NODES).table_bytes(1 << 20);
        let said = judge(&problem, &[], &san, &terms, &budget).expect("an answer");
        if said.verdict != Verdict::Wrong {
            continue;
        }
        wrong += 1;
        assert!(
            said.message().contains(&said.reason()),
            "{}",
            said.message()
        );
        for tag in tags() {
            let spoken = said.said.iter().map(|fact| words(tag).try_to_say(fact));
            assert!(
                spoken.clone().all(|said| said.is_ok()),
                "{tag}: {:?}",
                said.said
            );
        }
        let line = json!({
            "fen": fen, "task": task, "move": uci, "line": said.refutation, "why": said.reason(),
        });
        writeln!(input, "{line}").expect("memory");
    }
    assert!(
        wrong * 10 >= rows * 9,
        "{wrong} of {rows} were called wrong"
    );
    let held = python_script("weighed.py", &[], &input);
    println!("{wrong} wrong moves: {}", held.trim());
    let held: serde_json::Value = serde_json::from_str(&held).expect("JSON");
    assert!(held["refused"].as_u64() > Some(100), "{}", held["refused"]);
    for shape in EXPECTED {
        assert!(
            held["shapes"][shape].as_u64() > Some(0),
            "{shape} never came up"
        );
    }
}
