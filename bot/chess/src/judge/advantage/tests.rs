//! Verdicts on wins and draws. What is asserted are facts of the board (who is up what, what mates, what
//! repeats), so that any sound search passes. Positions are composed for these tests unless a source is
//! named.

use super::plain::{ASKED_UNSEEN, Aim, End, MOST_ASKED};
use super::*;
use crate::check::{self, CheckOptions, Problem};
use crate::{Budget, Stipulation, line, parse_fen};
use crate::{
    Language,
    judge::{Terms, Verdict, points},
};

/// The queen takes the rook and is taken, and the knight's fork wins her back with a knight to spare.
const FORK: &str = "5rk1/2q3pp/p7/1p6/3N4/8/PP3QPP/7K w - - 0 1";
/// White is a queen behind unless the rook takes.
const FREE_QUEEN: &str = "3q3k/7p/8/8/8/8/7P/K2R4 w - - 0 1";
/// White is far behind, and draws by checks from d8 and g5.
const PERPETUAL: &str = "6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - - 0 1";
/// White draws by giving the queen away: the king on h1 has no move, and mate is threatened.
const STALEMATE: &str = "8/7k/6pp/8/1p6/1Q5p/5q1P/7K w - - 0 1";

fn position(fen: &str) -> Chess {
    parse_fen(fen).expect("a position").position
}

fn problem(fen: &str, task: &str) -> Problem {
    let task = task.parse().expect("a task");
    let options = CheckOptions {
        depth: 10,
        ..CheckOptions::default()
    };
    check::problem(&position(fen), task, &options, &Budget::unlimited()).expect("sound")
}

fn say_in(problem: &Problem, line: &[&str], text: &str) -> Judgement {
    let line: Vec<String> = line.iter().map(|san| (*san).to_owned()).collect();
    let terms = Terms::answer(Language::English);
    crate::judge::judge(problem, &line, text, &terms, &Budget::unlimited())
        .expect("an explicit answer is always judged")
}

fn say(problem: &Problem, text: &str) -> Judgement {
    say_in(problem, &[], text)
}

/// The solution is given, not searched, so that what is tested is the judging alone.
fn given(fen: &str, task: Stipulation, solution: &[&str]) -> Problem {
    let position = position(fen);
    let sans: Vec<String> = solution.iter().map(|san| (*san).to_owned()).collect();
    let moves = line::moves(&position, &sans);
    assert_eq!(moves.len(), solution.len(), "{solution:?}");
    Problem {
        position,
        stipulation: task,
        solution: std::sync::Arc::new(crate::Solution {
            keys: tree(&moves).into_iter().collect(),
            tries: Vec::new(),
            complete: false,
        }),
        endgames: None,
        coach: None,
    }
}

fn tree(moves: &[Move]) -> Option<Branch> {
    let (&mv, rest) = moves.split_first()?;
    let defences = rest.split_first().map(|(&mv, rest)| crate::Defence {
        mv,
        continuations: tree(rest).into_iter().collect(),
    });
    Some(Branch {
        mv,
        defences: defences.into_iter().collect(),
    })
}

fn fork() -> Problem {
    given(
        FORK,
        Stipulation::Win,
        &[
            "Qxf8+", "Kxf8", "Ne6+", "Ke7", "Nxc7", "Kd6", "Nxa6", "Kc6", "Nb4+", "Kc5",
        ],
    )
}

#[test]
fn a_line_is_asked_until_the_gain_is_on_the_board_and_no_further() {
    let problem = fork();
    for (text, verdict, points) in [
        ("Qxf8+", Verdict::OnTheWay, 1.0),
        ("1.Qxf8+ Kxf8", Verdict::OnTheWay, 1.0),
        ("1.Qxf8+ Kxf8 2.Ne6+", Verdict::OnTheWay, 3.0),
        // The queen is won: no one recites the rest.
        ("1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nxc7", Verdict::Solved, 5.0),
        (
            "1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nxc7 Kd6 4.Nxa6 Kc6",
            Verdict::Solved,
            5.0,
        ),
        (
            "queen takes f8, king takes, knight e6 check, king e7, knight takes queen",
            Verdict::Solved,
            5.0,
        ),
    ] {
        let said = say(&problem, text);
        assert_eq!(
            (said.verdict, said.points),
            (verdict, points),
            "{text}: {}",
            said.message()
        );
    }
    let said = say(&problem, "1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nxc7");
    assert_eq!(said.line.len(), 5);
    assert_eq!(
        said.message(),
        "Solved. 1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nxc7 wins."
    );
    let half = say(&problem, "1.Qxf8+ Kxf8 2.Ne6+");
    assert_eq!(
        half.message(),
        "1.Qxf8+ Kxf8 2.Ne6+ is right. Black answers 2...Ke7. Your move."
    );
}

#[test]
fn a_slip_is_named_with_its_move_and_what_refutes_it() {
    let problem = fork();
    // At the second move: the knight can be taken nowhere, but White stays a queen behind.
    let said = say(&problem, "1.Qxf8+ Kxf8 2.Nb3");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(
        said.message()
            .starts_with("1.Qxf8+ Kxf8 is right so far. 2.Nb3 does not win."),
        "{}",
        said.message()
    );
    assert!(!said.message().contains("Ne6"), "{}", said.message());
    assert_eq!(said.line, ["Qxf8+", "Kxf8"], "the right part stands");
    assert_eq!(said.points, 1.0);
    // At the third: the fork is let go.
    let said = say(&problem, "1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nd4");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(
        said.message().contains("3.Nd4 does not win"),
        "{}",
        said.message()
    );
    assert_eq!((said.line.len(), said.points), (4, 3.0));
    refuted(&problem, &["Qxf8+", "Kxf8", "Ne6+", "Ke7", "Nd4"], &said);
}

/// The refutation can be played, and after it the solver is not ahead.
fn refuted(problem: &Problem, to: &[&str], said: &Judgement) {
    let mut sans: Vec<String> = to.iter().map(|san| (*san).to_owned()).collect();
    sans.extend(said.refutation.iter().cloned());
    let moves = line::moves(&problem.position, &sans);
    assert_eq!(moves.len(), sans.len(), "{sans:?}");
    assert!(
        moves.len() > to.len(),
        "a refutation is shown: {}",
        said.message()
    );
    let mut end = problem.position.clone();
    moves.iter().for_each(|mv| end.play_unchecked(*mv));
    let left = crate::refute::settled(&end, problem.position.turn());
    assert!(left <= 1 || end.is_checkmate(), "{}", said.message());
}

/// The bishop's check uncovers the rook's or queen's file: taking it costs the queen for a bishop,
/// stepping aside costs her for nothing.
fn uncovered() -> Problem {
    given(
        "r3r1k1/pp3ppp/n7/3q4/8/3B4/PP3PPP/R2Q1RK1 w - - 0 1",
        Stipulation::Win,
        &["Bxh7+", "Kxh7", "Qxd5", "Rad8"],
    )
}

#[test]
fn the_stronger_defence_left_out_is_named() {
    let problem = uncovered();
    let said = say(&problem, "1.Bxh7+ Kf8 2.Qxd5");
    assert_eq!((said.verdict, said.points), (Verdict::OnTheWay, 1.0));
    assert_eq!(
        said.message(),
        "Your line is right after 1...Kf8. What about 1...Kxh7? Your move."
    );
    assert_eq!(said.line, ["Bxh7+", "Kxh7"], "play goes on from there");
    let line: Vec<&str> = said.line.iter().map(String::as_str).collect();
    assert_eq!(say_in(&problem, &line, "Qxd5").verdict, Verdict::Solved);
    for text in [
        "1.Bxh7+ Kxh7 2.Qxd5",
        // Both defences, in either order and manner.
        "1.Bxh7+ Kxh7 (1...Kf8 2.Qxd5) 2.Qxd5",
        "1.Bxh7+ Kf8 2.Qxd5\n1...Kxh7 2.Qxd5",
        // Defences left out: the move answers the best of them.
        "1.Bxh7+ 2.Qxd5",
    ] {
        let said = say(&problem, text);
        assert_eq!(said.verdict, Verdict::Solved, "{text}: {}", said.message());
    }
    // A slip in a side line is a slip.
    let said = say(&problem, "1.Bxh7+ Kxh7 2.Qxd5 (1...Kf8 2.Qd2)");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(
        said.message().contains("2.Qd2 does not win"),
        "{}",
        said.message()
    );
    assert_eq!(said.refutation[0], "Qxd2");
    // Defences left out, and the move fits the weaker ones only.
    let said = say(&problem, "1.Bxh7+ any 2.Bd3");
    assert_ne!(said.verdict, Verdict::Solved, "{}", said.message());
}

#[test]
fn any_winning_move_is_right_listed_or_not() {
    // The rook takes the queen, and so may the queen.
    let problem = given(
        "3q3k/7p/8/Q7/8/8/7P/K2R4 w - - 0 1",
        Stipulation::Win,
        &["Rxd8+", "Kg7"],
    );
    assert_eq!(say(&problem, "Rxd8").message(), "Solved. 1.Rxd8+ wins.");
    let other = say(&problem, "Qxd8+");
    assert_eq!(
        (other.verdict, other.points),
        (Verdict::Solved, points::FULL)
    );
    assert!(
        other.message().starts_with("Yes, 1.Qxd8+ wins too"),
        "{}",
        other.message()
    );
    assert!(!other.message().contains("Rxd8"), "{}", other.message());
    // Several first moves, both right; and one of them wrong.
    assert_eq!(say(&problem, "Qxd8+ or Rxd8+").verdict, Verdict::Solved);
    let one_wrong = say(&problem, "Rxd8+ or Qa8");
    assert_eq!(
        one_wrong.verdict,
        Verdict::Unclear,
        "{}",
        one_wrong.message()
    );
    assert_eq!(one_wrong.readings, ["1.Rxd8+", "1.Qa8"]);
    assert_eq!(one_wrong.points, 0.0);
}

#[test]
fn another_winning_move_later_in_the_line_is_right_and_a_slower_win_too() {
    let problem = given(
        "7k/8/8/8/8/8/1R6/R3K3 w - - 0 1",
        Stipulation::Win,
        &["Rb7", "Kg8", "Ra8#"],
    );
    for text in ["1.Rb7 Kg8 2.Kd2", "Kd2", "Kf2"] {
        let said = say(&problem, text);
        assert!(
            matches!(said.verdict, Verdict::Solved | Verdict::OnTheWay),
            "{text}: {}",
            said.message()
        );
    }
    // Slow as it is, it comes to an end: a few right moves are enough.
    let mut line = Vec::new();
    for (done, text) in ["Kd2", "Kd3", "Kd4", "Kd5"].into_iter().enumerate() {
        let held: Vec<&str> = line.iter().map(String::as_str).collect();
        let said = say_in(&problem, &held, text);
        line = said.line.clone();
        if said.verdict == Verdict::Solved {
            assert!(
                done + 1 >= ASKED_UNSEEN && said.message().contains("wins too"),
                "{said:?}"
            );
            break;
        }
        assert_eq!(said.verdict, Verdict::OnTheWay, "{}", said.message());
        assert!(done + 1 < MOST_ASKED, "no more than four moves are asked");
    }
    let mate = say(&problem, "1.Rb7 Kg8 2.Ra8#");
    assert_eq!(mate.message(), "Solved. 1.Rb7 Kg8 2.Ra8# is mate.");
}

#[test]
fn stalemate_is_said_to_be_stalemate() {
    let fen = "7k/5K2/8/8/8/8/6Q1/8 w - - 0 1";
    let said = say(&given(fen, Stipulation::Win, &["Qg7#"]), "Qg6");
    assert_eq!((said.verdict, said.points), (Verdict::Wrong, 0.0));
    assert_eq!(
        said.message(),
        "1.Qg6 does not win: it is stalemate, for Black is not in check and has no move."
    );
    assert!(said.refutation.is_empty());
    let scene = said.scene.expect("a picture");
    assert!(scene.position.is_stalemate());
    // Where a draw is asked, the same move is right.
    let said = say(&given(fen, Stipulation::Draw, &["Qg1"]), "Qg6");
    assert_eq!((said.verdict, said.points), (Verdict::Solved, points::FULL));
    assert_eq!(
        said.message(),
        "Solved. 1.Qg6 is stalemate, and that is a draw."
    );
}

#[test]
fn the_last_pawn_lost_is_no_win() {
    let problem = given(
        "8/4k3/4P3/8/3K4/8/8/6N1 w - - 0 1",
        Stipulation::Win,
        &["Ke5"],
    );
    let said = say(&problem, "Nf3");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert_eq!(said.refutation, ["Kxe6"]);
    assert_eq!(said.reason(), "what White has left cannot mate");
}

#[test]
fn a_draw_by_stalemate_needs_the_key_and_no_more() {
    let problem = given(STALEMATE, Stipulation::Draw, &["Qg8+", "Kxg8"]);
    let said = say(&problem, "Qg8+");
    assert_eq!((said.verdict, said.points), (Verdict::Solved, points::FULL));
    assert_eq!(say(&problem, "1.Qg8+ Kxg8").verdict, Verdict::Solved);
    // The queen's other check is taken, and the king may move again: mate is near.
    let said = say(&problem, "Qf7+");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(
        said.message()
            .starts_with("1.Qf7+ does not hold. Black answers 1...Qxf7"),
        "{}",
        said.message()
    );
    // Without the checks the mate on g2 comes at once.
    let said = say(&problem, "Qb1");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(said.reason().contains("mate"), "{}", said.message());
}

#[test]
fn a_perpetual_is_shown_until_the_position_comes_again() {
    let checks = ["Qd8+", "Kg7", "Qg5+", "Kh8", "Qd8+", "Kg7", "Qg5+", "Kh8"];
    let problem = given(PERPETUAL, Stipulation::Draw, &checks);
    let half = say(&problem, "1.Qd8+ Kg7 2.Qg5+");
    assert_eq!((half.verdict, half.points), (Verdict::OnTheWay, 2.0));
    let whole = say(&problem, "1.Qd8+ Kg7 2.Qg5+ Kh8 3.Qd8+ Kg7 4.Qg5+");
    assert_eq!(whole.verdict, Verdict::Solved);
    assert_eq!(
        whole.message(),
        "Solved. After 4.Qg5+ the position has come again: it holds."
    );
    // Played move by move, with a slip on the way that leaves the line as it was.
    let mut line: Vec<String> = Vec::new();
    for (slip, mv) in [
        ("h3", "Qd8+"),
        ("Qxg7", "Qg5"),
        ("h3", "Qd8"),
        ("Qd1", "Qg5"),
    ] {
        let held: Vec<&str> = line.iter().map(String::as_str).collect();
        let wrong = say_in(&problem, &held, slip);
        assert!(
            matches!(wrong.verdict, Verdict::Wrong | Verdict::Illegal),
            "{slip}: {}",
            wrong.message()
        );
        assert_eq!(wrong.line, line);
        line = say_in(&problem, &held, mv).line;
    }
    assert_eq!(line.len(), 7, "{line:?}");
}

#[test]
fn what_could_not_be_judged_is_never_called_wrong() {
    let problem = fork();
    let over = || true;
    let budget = Budget::unlimited().until(&over);
    let terms = Terms::answer(Language::English);
    let ask =
        |text: &str| crate::judge::judge(&problem, &[], text, &terms, &budget).expect("an answer");
    for text in ["h3", "b3", "1.Qxf8+ Kxf8 2.Nb3"] {
        let said = ask(text);
        assert_eq!(
            (said.verdict, said.points),
            (Verdict::Unclear, 0.0),
            "{text}"
        );
        assert!(
            said.message().contains("neither right nor wrong"),
            "{}",
            said.message()
        );
        assert!(
            said.message().contains("Your coach will look at it"),
            "{}",
            said.message()
        );
        assert!(
            said.reason().contains("half-moves deep"),
            "for the coach: {}",
            said.reason()
        );
        assert!(!said.message().contains("Ne6"), "{}", said.message());
    }
    // What the solution knows needs no time.
    assert_eq!(
        ask("1.Qxf8+ Kxf8 2.Ne6+ Ke7 3.Nxc7").verdict,
        Verdict::Solved
    );
}

#[test]
fn illegal_and_ambiguous_moves_are_told_apart_from_wrong_ones() {
    let problem = problem(FREE_QUEEN, "+");
    assert_eq!(say(&problem, "Rxd8+").verdict, Verdict::Solved);
    assert_eq!(say(&problem, "Rd8xh8").verdict, Verdict::Illegal);
    let two = given(
        "3q3k/7p/8/8/8/8/7P/KR3R2 w - - 0 1",
        Stipulation::Win,
        &["Rbd1"],
    );
    let said = say(&two, "Rd1");
    assert_eq!(said.verdict, Verdict::Unclear);
    assert!(
        said.message().contains("Rbd1") && said.message().contains("Rfd1"),
        "{}",
        said.message()
    );
    assert_eq!(
        say(&two, "what a nice position").verdict,
        Verdict::Unreadable
    );
}

/// Where the point lies, by the board alone.
#[test]
fn the_point_is_plain_where_the_gain_is_and_nothing_takes_it_back() {
    let plain = |start: &str, task, sans: &[&str]| {
        let start = position(start);
        let sans: Vec<String> = sans.iter().map(|san| (*san).to_owned()).collect();
        let (mut before, mut at) = (Vec::new(), start.clone());
        let moves = line::moves(&start, &sans);
        assert_eq!(moves.len(), sans.len());
        for mv in moves {
            before.push(at.clone());
            at.play_unchecked(mv);
        }
        Aim::of(&start, task).plain(&before, &at)
    };
    let win = Stipulation::Win;
    assert_eq!(
        plain(FORK, win, &["Qxf8+"]),
        None,
        "the king takes the queen"
    );
    assert_eq!(
        plain(FORK, win, &["Qxf8+", "Kxf8", "Ne6+"]),
        None,
        "nothing is won yet"
    );
    assert_eq!(
        plain(FORK, win, &["Qxf8+", "Kxf8", "Ne6+", "Ke7", "Nxc7"]),
        Some(End::Gained)
    );
    assert_eq!(plain(FREE_QUEEN, win, &["Rxd8+"]), Some(End::Gained));
    // A pawn that promotes and is taken at once gains nothing.
    let promotes = "3r3k/2P5/8/8/8/8/8/6K1 w - - 0 1";
    assert_eq!(plain(promotes, win, &["c8=Q"]), None);
    assert_eq!(plain(promotes, win, &["cxd8=Q+"]), Some(End::Gained));
    let draw = Stipulation::Draw;
    assert_eq!(plain(PERPETUAL, draw, &["Qd8+"]), None);
    assert_eq!(
        plain(
            PERPETUAL,
            draw,
            &["Qd8+", "Kg7", "Qg5+", "Kh8", "Qd8+", "Kg7", "Qg5+"]
        ),
        Some(End::Repeats)
    );
    // A bare king cannot lose to a bishop.
    let bishop = "8/8/8/3pk3/8/2b2K2/8/8 w - - 0 1";
    assert_eq!(plain(bishop, draw, &["Ke2"]), None);
    let pawn = "8/8/8/3p4/4K1k1/2b5/8/8 w - - 0 1";
    assert_eq!(plain(pawn, draw, &["Kxd5"]), Some(End::NoMaterial));
}

#[test]
fn no_line_is_asked_for_long() {
    // Two knights against a bare king and pawn far from home: whatever the line, four moves do.
    let problem = fork();
    let start = &problem.position;
    let aim = Aim::of(start, Stipulation::Win);
    assert_eq!(aim.asked(start, &problem.solution.main_line()), 3);
    let quiet = position("7k/8/8/8/8/8/1R6/R3K3 w - - 0 1");
    let sans = [
        "Kd2", "Kg8", "Kd3", "Kh8", "Kd4", "Kg8", "Kd5", "Kh8", "Kd6",
    ]
    .map(str::to_owned);
    let shuffle = line::moves(&quiet, &sans);
    let aim = Aim::of(&quiet, Stipulation::Win);
    assert_eq!(aim.asked(&quiet, &shuffle), ASKED_UNSEEN);
    let sans = [
        "Kd2", "Kg8", "Kd3", "Kh8", "Kd4", "Kg8", "Kd5", "Kh8", "Rb7", "Kg8", "Ra8#",
    ]
    .map(str::to_owned);
    let mate_later = line::moves(&quiet, &sans);
    assert_eq!(mate_later.len(), 11);
    assert_eq!(aim.asked(&quiet, &mate_later), MOST_ASKED);
}

#[test]
fn off_the_solution_there_are_hints_as_long_as_something_wins() {
    let problem = fork();
    let hint = |line: &[&str]| {
        let line: Vec<String> = line.iter().map(|san| (*san).to_owned()).collect();
        crate::judge::hint(&problem, &line, 3).map(|said| sealed_move_words::english().tell(&said))
    };
    // The king goes where the solution does not have it; the queen is still there to be taken.
    let line = ["Qxf8+", "Kxf8", "Ne6+", "Kf7"];
    assert_eq!(hint(&line).as_deref(), Some("The next move is 3.Nxc7."));
    // White has let the queen go: nothing wins any more, and no move is recommended.
    assert_eq!(hint(&["b3", "Rxf2"]), None);
}
