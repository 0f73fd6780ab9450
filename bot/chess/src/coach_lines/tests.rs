//! What is kept of a coach's tree, and how it comes back.

use shakmaty::Color;

use super::*;
use crate::{Stipulation, line::moves, parse_fen, read::read_file};

/// A mate in two of our own: 1.Rxd8+ Rxd8 2.Rxd8#.
const FEN: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

fn start(fen: &str) -> Chess {
    parse_fen(fen).expect("a position").position
}

fn kept(fen: &str, game: &str) -> CoachLines {
    let file = format!("[FEN \"{fen}\"]\n[Task \"#2\"]\n\n{game} *\n");
    let entry = read_file("f", file.as_bytes()).remove(0).expect("readable");
    CoachLines::of(&entry.position, &entry.variations.expect("moves"))
}

fn sans(start: &Chess, line: &[&str]) -> Vec<Move> {
    let line: Vec<String> = line.iter().map(|san| (*san).to_owned()).collect();
    let played = moves(start, &line);
    assert_eq!(played.len(), line.len(), "{line:?}");
    played
}

#[test]
fn a_tree_is_kept_whole_and_comes_back_as_it_was() {
    let lines = kept(
        FEN,
        "1.Rxd8+ $1 {A rook.} (1.Rd7 $2 {Slow.} Rxd7 (1...Rab8 {Worse.}) 2.Rxd7 g6) ({Nor} 1.h3 $6) Rxd8 2.Rxd8# $18",
    );
    let told = lines.moves.iter().map(|one| {
        let CoachMove {
            san,
            after,
            nags,
            before,
            words,
            ..
        } = one;
        let place = (san.as_str(), *after, nags.as_slice());
        (place, before.as_str(), words.as_str())
    });
    let told: Vec<_> = told.collect();
    assert_eq!(
        told,
        [
            (("Rxd8+", None, &[1][..]), "", "A rook."),
            (("Rxd8", Some(0), &[]), "", ""),
            (("Rxd8#", Some(1), &[18]), "", ""),
            (("Rd7", None, &[2]), "", "Slow."),
            (("Rxd7", Some(3), &[]), "", ""),
            (("Rxd7", Some(4), &[]), "", ""),
            (("g6", Some(5), &[]), "", ""),
            (("Rab8", Some(3), &[]), "", "Worse."),
            (("h3", None, &[6]), "Nor", ""),
        ]
    );
    assert!(!lines.cut);
    let json = serde_json::to_string(&lines).expect("written");
    let read: CoachLines = serde_json::from_str(&json).expect("read");
    assert_eq!(read, lines);
    let start = start(FEN);
    let again = lines.tree(&start, 7);
    assert_eq!(again.nodes[0].line, 7);
    assert_eq!(CoachLines::of(&start, &again), lines);
    // What is kept by somebody else's program may be anything.
    let odd = CoachLines {
        moves: vec![
            CoachMove {
                after: Some(9),
                san: "Rxd8+".into(),
                ..CoachMove::default()
            },
            CoachMove {
                san: "nonsense".into(),
                ..CoachMove::default()
            },
            CoachMove {
                after: Some(1),
                san: "Rxd8".into(),
                ..CoachMove::default()
            },
        ],
        cut: false,
    };
    assert_eq!(CoachTree::of(&start, &odd), None);
    assert!(odd.tree(&start, 1).nodes.is_empty());
}

#[test]
fn what_is_kept_is_bounded_and_a_long_line_can_be_read() {
    // Knights go out and back again.
    let round = ["Nf3", "Nf6", "Ng1", "Ng8"];
    let game: Vec<&str> = round.iter().cycle().take(400).copied().collect();
    let board = "rnbqkbnr/1ppppppp/8/8/8/8/1PPPPPPP/RNBQKBNR w KQkq - 0 1";
    let lines = kept(board, &game.join(" "));
    assert_eq!((lines.moves.len(), lines.cut), (400, false));
    let json = serde_json::to_string(&lines).expect("written");
    let read: CoachLines = serde_json::from_str(&json).expect("read");
    let tree = CoachTree::of(&start(board), &read).expect("a tree");
    assert_eq!(tree.main_line(0).len(), 400);

    let game: Vec<&str> = round.iter().cycle().take(900).copied().collect();
    let lines = kept(board, &game.join(" "));
    assert_eq!((lines.moves.len(), lines.cut), (MOST_MOVES, true));

    let long = "word ".repeat(1_500);
    let lines = kept(
        FEN,
        &format!("1.Rxd8+ {{{long}}} Rxd8 {{{long}}} 2.Rxd8# {{end}}"),
    );
    let words: Vec<usize> = lines.moves.iter().map(|one| one.words.len()).collect();
    assert_eq!((words, lines.cut), (vec![7_499, 0, 3], true));
}

#[test]
fn on_the_board_a_move_given_twice_is_one_and_words_for_the_reveal_are_left_out() {
    let start = start(FEN);
    let lines = kept(
        FEN,
        "1.Rxd8+ {Now.[reveal] Later.} (1.Rd7 $2 {Slow.} Rxd7 $17) (1.Rd7 {[reveal] Hush.} Rab8) Rxd8 2.Rxd8#",
    );
    let tree = CoachTree::of(&start, &lines).expect("a tree");
    let at = |line: &[&str]| tree.at(&sans(&start, line)).expect("there");
    assert_eq!(tree.node(at(&["Rxd8+"])).words, ["Now."]);
    let wrong = tree.node(at(&["Rd7"]));
    assert_eq!(
        (wrong.words.as_slice(), wrong.next.len()),
        (&["Slow.".to_owned()][..], 2)
    );
    assert!(wrong.is_marked_wrong() && !wrong.holds());
    assert_eq!(tree.at(&sans(&start, &["h3"])), None);
    let answer = at(&["Rd7", "Rxd7"]);
    for (solver, task, failed) in [
        (Color::White, Stipulation::Win, true),
        (Color::Black, Stipulation::Win, false),
        (Color::White, Stipulation::Draw, true),
    ] {
        assert_eq!(tree.says_failed(answer, solver, task), failed);
    }
}

#[test]
fn only_what_was_found_to_hold_is_right() {
    let start = start(FEN);
    let mut lines = kept(FEN, "1.Rxd8+ (1.Rd7 Rxd7 2.Rxd7) Rxd8 2.Rxd8#");
    let tree = CoachTree::of(&start, &lines).expect("a tree");
    assert_eq!(tree.right(0), None);
    let holding = [&["Rxd8+"][..], &["Rxd8+", "Rxd8", "Rxd8#"]];
    let holding = holding.iter().map(|line| sans(&start, line)).collect();
    lines.note_holding(&start, &holding);
    let holds: Vec<bool> = lines.moves.iter().map(|one| one.holds).collect();
    assert_eq!(holds, [true, false, true, false, false, false]);
    let tree = CoachTree::of(&start, &lines).expect("a tree");
    let key = tree.right(0).expect("the key");
    assert_eq!(tree.met(key).len(), 1);
    assert_eq!(lines.holding(), [["Rxd8+", "Rxd8", "Rxd8#"]]);
    // A defence without an answer ends a line; a first move alone is none.
    lines.moves[2].holds = false;
    assert!(lines.holding().is_empty());
}

#[test]
fn the_lines_that_hold_are_written_out_the_main_one_first() {
    let fen = "r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1";
    let start = start(fen);
    let mut lines = kept(
        fen,
        "1.Rxc4 (1.Qg7+ $2 Qxg7) Qxc4 (1...a6) 2.Qg7# (2.Kh2 Qd4)",
    );
    let holding = [
        &["Rxc4"][..],
        &["Rxc4", "Qxc4", "Qg7#"],
        &["Rxc4", "Qxc4", "Kh2"],
    ];
    let holding = holding.iter().map(|line| sans(&start, line)).collect();
    lines.note_holding(&start, &holding);
    assert_eq!(
        lines.holding(),
        [
            &["Rxc4", "Qxc4", "Qg7#"][..],
            &["Rxc4", "Qxc4", "Kh2", "Qd4"],
            &["Rxc4", "a6"],
        ]
    );
}
