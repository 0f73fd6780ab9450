use super::*;
use crate::{check, parse_fen};
use shakmaty::Position as _;

const ROOKS: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";
const SMOTHERED: &str = "r6k/6pp/8/6N1/2Q5/8/8/6K1 w - - 0 1";

fn problem(fen: &str, task: &str) -> Problem {
    let position = parse_fen(fen).expect("fen").position;
    let task = task.parse().expect("task");
    check::problem(
        &position,
        task,
        &check::CheckOptions::default(),
        &Budget::unlimited(),
    )
    .expect("sound")
}

/// Verdicts are read in English here.
impl Judgement {
    pub(super) fn message(&self) -> String {
        sealed_move_words::english().tell(&self.said)
    }

    pub(super) fn reason(&self) -> String {
        sealed_move_words::english().say(&self.why)
    }
}

fn say_in(problem: &Problem, line: &[&str], text: &str) -> Judgement {
    let line: Vec<String> = line.iter().map(|s| (*s).to_owned()).collect();
    judge(
        problem,
        &line,
        text,
        &Terms::answer(Language::English),
        &Budget::unlimited(),
    )
    .expect("an explicit answer is always judged")
}

fn say(problem: &Problem, text: &str) -> Judgement {
    say_in(problem, &[], text)
}

#[test]
fn the_key_of_a_two_mover_is_enough() {
    let said = say(&problem(ROOKS, "#2"), "Rxd8");
    assert_eq!(said.verdict, Verdict::Solved);
    assert_eq!(said.moves, ["Rxd8+"]);
    assert_eq!(said.points, 5.0);
}

#[test]
fn a_wrong_move_is_refuted_with_the_reason() {
    let said = say(&problem(ROOKS, "#2"), "Rd7");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert_eq!(said.moves, ["Rd7"]);
    assert_eq!(said.points, 0.0);
    assert_eq!(said.refutation, ["Rxd7"]);
    assert_eq!(
        said.reason(),
        "the rook takes it, and the back rank is defended again"
    );
    assert!(!said.message().contains("Rxd8"), "{}", said.message());
}

#[test]
fn a_longer_mate_is_played_move_by_move() {
    let problem = problem(SMOTHERED, "#4");
    let mut line: Vec<String> = Vec::new();
    for (text, verdict) in [
        ("Nf7+", Verdict::OnTheWay),
        ("Nh6", Verdict::OnTheWay),
        ("queen g8 check", Verdict::OnTheWay),
        ("Nf7", Verdict::Solved),
    ] {
        let held: Vec<&str> = line.iter().map(String::as_str).collect();
        let said = say_in(&problem, &held, text);
        assert_eq!(said.verdict, verdict, "{text}: {}", said.message());
        line = said.line;
    }
}

#[test]
fn whole_lines_are_judged_against_what_they_leave_out() {
    use Verdict::{Illegal, OnTheWay, Solved, Unclear, Wrong};
    let problem = problem(SMOTHERED, "#4");
    for (text, verdict, points, part) in [
        (
            "1.Nf7+ Kg8 2.Nh6+ Kh8 3.Qg8+ Rxg8 4.Nf7#",
            Solved,
            5.0,
            "is mate",
        ),
        (
            "1.Nf7+ Kg8 2.Nh6+ Kf8 3.Qf7#",
            OnTheWay,
            1.0,
            "right after 2...Kf8. What about 2...Kh8?",
        ),
        // The mate that follows by force need not be written.
        (
            "1.Nf7+ Kg8 2.Nh6+ Kh8 3.Qg8+",
            Solved,
            5.0,
            "holds against every defence",
        ),
        (
            "1.Nf7+ 2.Nh6+ 3.Qg8+",
            Solved,
            5.0,
            "holds against every defence",
        ),
        (
            "1.Nf7+ Kg8 2.Nh6+",
            OnTheWay,
            1.0,
            "Black answers 2...Kh8. Your move.",
        ),
        (
            "1.Nf7+ Kg8 2.Nd8+ Kh8 3.Qg8+",
            Wrong,
            1.0,
            "2.Nd8+ mates, but not in three: it takes five. Black answers 2...Kh8: the king gets out \
             to h8, which your knight guarded until it moved.",
        ),
        // A weaker defence of the writer's own changes nothing.
        ("1.Nf7+ Kg8 2.Nd8+ Kf8", Wrong, 1.0, "Black answers 2...Kh8"),
        (
            "1.Nf7+ Kf8",
            Illegal,
            0.0,
            "I followed you up to 1.Nf7+. \u{201c}Kf8\u{201d} is not possible: the king on h8 does \
             not reach f8. Possible there: Kg8.",
        ),
        (
            "Qg8+",
            Wrong,
            0.0,
            "1...Kxg8: the king takes the queen, for none of your pieces guards g8.",
        ),
        ("Nf7+ or Qf7", Unclear, 0.0, "Do you mean 1.Nf7+ or 1.Qf7?"),
        (
            "1.Nf7+ Kg8 2.Nh6+ Kh8 3.Qf7",
            Wrong,
            1.0,
            "3.Qf7 does not work: it threatens no mate",
        ),
    ] {
        let said = say(&problem, text);
        assert_eq!(
            (said.verdict, said.points),
            (verdict, points),
            "{text}: {}",
            said.message()
        );
        assert!(said.message().contains(part), "{text}: {}", said.message());
        // Nobody is told more of the solution than they wrote.
        let told = said.message().contains("Qg8") && !text.contains("Qg8");
        assert!(!told, "{text}: {}", said.message());
    }
}

#[test]
fn hints_say_a_little_more_each_time() {
    let problem = problem(SMOTHERED, "#4");
    let hints: Vec<String> = (1..=3)
        .filter_map(|step| hint(&problem, &[], step))
        .map(|said| sealed_move_words::english().tell(&said))
        .collect();
    assert_eq!(
        hints,
        [
            "Look at your knight.",
            "It begins with a check. The picture at the end: Smothered mate.",
            "The first move is 1.Nf7+.",
        ]
    );
}

/// Two rooks drive the king to the edge; several defences last equally long.
const LADDER: &str = "8/8/8/4k3/R7/1R6/8/7K w - - 0 1";

#[test]
fn a_choice_picks_among_the_longest_defences_only() {
    let problem = problem(SMOTHERED, "#4");
    let ask = |choice: u64, line: &[&str], text: &str| {
        let line: Vec<String> = line.iter().map(|s| (*s).to_owned()).collect();
        let terms = Terms {
            defence_choice: choice,
            line_choice: 0,
            ..Terms::answer(Language::English)
        };
        judge(&problem, &line, text, &terms, &Budget::unlimited()).expect("an answer")
    };
    // One defence lasts longest, and is played whatever the number.
    for choice in 0..20 {
        assert_eq!(ask(choice, &[], "Nf7").line, ["Nf7+", "Kg8"]);
    }
}

#[test]
fn a_choice_reaches_every_longest_defence_and_changes_no_verdict() {
    let position = parse_fen(LADDER).expect("fen").position;
    let budget = Budget::unlimited();
    let length = crate::prove::shortest_mate(&position, 6, &budget)
        .expect("unbounded")
        .expect("a mate");
    let problem = problem(LADDER, &format!("#{length}"));
    let key = problem.solution.keys[0].clone();
    let text = crate::line::sans(&position, &[key.mv]).remove(0);
    let mut played = std::collections::BTreeSet::new();
    for choice in 0..40 {
        let terms = Terms {
            defence_choice: choice,
            line_choice: 0,
            ..Terms::answer(Language::English)
        };
        let said = judge(&problem, &[], &text, &terms, &budget).expect("an answer");
        let again = judge(&problem, &[], &text, &terms, &budget).expect("an answer");
        assert_eq!(said.line, again.line);
        assert_eq!((said.verdict, said.points), (Verdict::OnTheWay, 1.0));
        // It lasts as long as any defence does.
        let moves = crate::line::moves(&position, &said.line);
        let mut after = position.clone();
        for mv in moves {
            after.play_unchecked(mv);
        }
        let rest = crate::prove::shortest_mate(&after, length, &budget);
        assert_eq!(rest, Ok(Some(length - 1)), "{:?}", said.line);
        played.insert(said.line[1].clone());
    }
    assert!(played.len() > 1, "{played:?}");
}

#[test]
fn a_win_is_judged_by_search_and_says_so() {
    // Composed for this test: the rook takes the queen, or White is a queen behind.
    let problem = problem("3q3k/7p/8/8/8/8/7P/K2R4 w - - 0 1", "+");
    let right = say(&problem, "Rxd8+");
    assert!(
        matches!(right.verdict, Verdict::Solved | Verdict::OnTheWay),
        "{right:?}"
    );
    let wrong = say(&problem, "Re1");
    assert_eq!(
        (wrong.verdict, wrong.points),
        (Verdict::Wrong, 0.0),
        "{wrong:?}"
    );
    assert!(
        wrong.message().contains("does not win"),
        "{}",
        wrong.message()
    );
    assert!(
        wrong.message().contains("Judged by search"),
        "{}",
        wrong.message()
    );
    assert!(!wrong.message().contains("Rxd8"), "{}", wrong.message());
    assert_eq!(say(&problem, "Rd9").verdict, Verdict::Unreadable);
    assert_eq!(say(&problem, "Rd8xh8").verdict, Verdict::Illegal);
}

#[test]
fn another_winning_move_counts_in_full() {
    // Either rook mates soon; both moves win, and whichever the solution names, so does the other.
    let problem = problem("7k/8/8/8/8/8/1R6/R3K3 w - - 0 1", "+");
    for text in ["Kd2", "Rb7", "Ra7"] {
        let said = say(&problem, text);
        assert!(
            matches!(said.verdict, Verdict::Solved | Verdict::OnTheWay),
            "{text}: {said:?}"
        );
    }
    let wrong = say(&problem, "Kd2 or Rb8+");
    assert_ne!(wrong.verdict, Verdict::Wrong, "both win: {wrong:?}");
}

#[test]
fn a_draw_is_held_by_the_perpetual_only() {
    // Composed for this test: White is far behind, and draws by checks from d8 and g5.
    let problem = problem("6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - - 0 1", "=");
    let right = say(&problem, "Qd8+");
    assert!(
        matches!(right.verdict, Verdict::Solved | Verdict::OnTheWay),
        "{right:?}"
    );
    let wrong = say(&problem, "h3");
    assert_eq!(wrong.verdict, Verdict::Wrong, "{wrong:?}");
    assert!(
        wrong.message().contains("does not hold"),
        "{}",
        wrong.message()
    );
    assert!(!wrong.message().contains("Qd8"), "{}", wrong.message());
}

/// Plays the right moves one by one against the bot's defences; what was said at each, and the points.
fn played_out(problem: &Problem, choice: u64) -> (Vec<Verdict>, f64, Vec<String>) {
    let terms = Terms {
        defence_choice: choice,
        line_choice: 0,
        ..Terms::answer(Language::English)
    };
    let (mut line, mut said) = (Vec::new(), Vec::new());
    for _ in 0..12 {
        let mut position = problem.position.clone();
        let mut known: Vec<&crate::Branch> = problem.solution.keys.iter().collect();
        for pair in crate::line::moves(&problem.position, &line).chunks(2) {
            let branch = known.iter().find(|branch| branch.mv == pair[0]);
            let defence = branch.and_then(|b| b.defences.iter().find(|d| d.mv == pair[1]));
            known = defence.map_or_else(Vec::new, |d| d.continuations.iter().collect());
            pair.iter().for_each(|mv| position.play_unchecked(*mv));
        }
        let next = match known.first() {
            Some(branch) => branch.mv,
            // A chosen defence has left the tree: whatever search finds best goes on.
            None => {
                let found = crate::search::search(&position, 8, 1, &Budget::unlimited());
                found.lines[0].line[0]
            }
        };
        let text = crate::line::sans(&position, &[next]).remove(0);
        let judged = judge(problem, &line, &text, &terms, &Budget::unlimited()).expect("judged");
        said.push(judged.verdict);
        line = judged.line;
        if judged.verdict != Verdict::OnTheWay {
            return (said, judged.points, line);
        }
        assert_eq!(line.len() % 2, 0, "the bot has answered: {line:?}");
    }
    panic!("never solved: {line:?}");
}

/// The positions are composed for the tests, but for one of Reinfeld's, from memory.
#[test]
fn wins_and_draws_are_played_out_move_by_move() {
    for (fen, task) in [
        ("3q3k/7p/8/8/8/8/7P/K2R4 w - - 0 1", "+"),
        ("6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - - 0 1", "="),
        // Fred Reinfeld, Win at Chess, 1945, no. 1.
        (
            "2rr3k/pp3pp1/1nnqbN1p/3pN3/2pP4/2P3Q1/PPB4P/R4RK1 w - - 0 1",
            "+",
        ),
    ] {
        let problem = problem(fen, task);
        let (said, points, line) = played_out(&problem, 7);
        assert_eq!(said.last(), Some(&Verdict::Solved), "{fen}: {line:?}");
        assert_eq!(points, points::FULL, "{fen}: {line:?}");
        let again = played_out(&problem, 7);
        assert_eq!(
            (said, line),
            (again.0, again.2),
            "the same choice plays the same"
        );
        // The first move alone is worth its part, unless it is all that is asked.
        let key = crate::line::sans(&problem.position, &[problem.solution.keys[0].mv]);
        let first = say(&problem, &key[0]);
        match first.verdict {
            Verdict::OnTheWay => assert_eq!(first.points, points::KEY, "{fen}"),
            other => assert_eq!(
                (other, first.points),
                (Verdict::Solved, points::FULL),
                "{fen}"
            ),
        }
    }
}

#[test]
fn a_wrong_move_later_in_a_won_line_leaves_the_line_as_it_was() {
    let problem = problem("6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - - 0 1", "=");
    let first = say(&problem, "Qd8+");
    if first.verdict == Verdict::OnTheWay {
        let line: Vec<&str> = first.line.iter().map(String::as_str).collect();
        let slip = say_in(&problem, &line, "h3");
        assert_eq!(slip.verdict, Verdict::Wrong, "{slip:?}");
        assert_eq!(slip.line, first.line);
        assert!(!slip.refutation.is_empty(), "{slip:?}");
        assert_eq!(say_in(&problem, &line, "Qd9").verdict, Verdict::Unreadable);
        assert_eq!(say_in(&problem, &line, "Qa1").verdict, Verdict::Illegal);
    } else {
        panic!("the perpetual is more than one move: {first:?}");
    }
}

/// 1.Ne7+ Kh8 2.Qxh7+ Kxh7 3.Rh3# mates; composed for the tests.
const CLEARED: &str = "5rk1/5ppp/8/3N3Q/8/4R3/5PPP/6K1 w - - 0 1";

#[test]
fn what_is_not_surely_claimed_is_asked_back_with_its_readings() {
    let problem = problem(CLEARED, "#3");
    for (text, readings) in [
        ("is Qxh7+ good?", &["1.Qxh7+"][..]),
        ("what happens after Qxh7+?", &["1.Qxh7+"]),
        ("maybe Ne7+", &["1.Ne7+"]),
        ("Ne7+ or Qxh7+", &["1.Ne7+", "1.Qxh7+"]),
        (
            "1.Ne7+ Kh8 2.Rh3 no wait Qxh7+",
            &["1.Ne7+ Kh8 2.Qxh7+", "1.Qxh7+"],
        ),
        ("Qxh7+ does not work", &[]),
        // Whether the last move mates was not said, and is not told.
        (
            "is it 1.Ne7+ Kh8 2.Qxh7+ Kxh7 3.Rh3?",
            &["1.Ne7+ Kh8 2.Qxh7+ Kxh7 3.Rh3+"],
        ),
    ] {
        let said = say(&problem, text);
        assert_eq!(
            (said.verdict, said.points),
            (Verdict::Unclear, 0.0),
            "{text}"
        );
        assert_eq!(said.readings, readings, "{text}");
        for reading in &said.readings {
            assert!(
                said.message().contains(reading),
                "{text}: {}",
                said.message()
            );
            // Each is read as exactly what it says, whatever the group writes in.
            for language in Language::ALL {
                let terms = Terms::answer(language);
                let again = judge(&problem, &[], reading, &terms, &Budget::unlimited());
                let again = again.expect("an answer");
                assert_ne!(again.verdict, Verdict::Unclear, "{reading} in {language:?}");
                let plain = |text: &str| text.replace(['+', '#'], "");
                let moves = plain(&again.moves.join(" "));
                let written: Vec<&str> = reading
                    .split(' ')
                    .map(|word| word.rsplit('.').next().unwrap_or(word))
                    .collect();
                assert_eq!(
                    moves,
                    plain(&written.join(" ")),
                    "{reading} in {language:?}"
                );
            }
        }
    }
}

#[test]
fn a_rejected_move_is_neither_charged_nor_credited() {
    let problem = problem(CLEARED, "#3");
    for (text, verdict, points) in [
        ("Ne7+ rather than Qxh7+", Verdict::OnTheWay, 1.0),
        (
            "Ne7+ (not Qxh7+ at once because of Kxh7 Rh3+ Kg8)",
            Verdict::OnTheWay,
            1.0,
        ),
        ("~~Qxh7+~~ Ne7+", Verdict::OnTheWay, 1.0),
        ("Rh3 *edit: Ne7+", Verdict::OnTheWay, 1.0),
        ("1.Ne7+! (1.Qxh7+?) 1...Kh8 2.Qxh7+", Verdict::Solved, 5.0),
        ("Ne7+\nQxh7+\nRh3#", Verdict::Solved, 5.0),
        (
            "1.Ne7+ Kh8 2.Qxh7+ Kxh7 3.Rh3#, come on!",
            Verdict::Solved,
            5.0,
        ),
        (
            "1.Ne7+ Kh8 2.Qxh7+ Kxh7 3.Rh3# take that!",
            Verdict::Solved,
            5.0,
        ),
        ("Qxh7+ rather than Ne7+", Verdict::Wrong, 0.0),
    ] {
        let said = say(&problem, text);
        assert_eq!(
            (said.verdict, said.points),
            (verdict, points),
            "{text}: {}",
            said.message()
        );
    }
}

#[test]
fn a_forced_defence_left_out_is_no_question() {
    let said = say(&problem(CLEARED, "#3"), "1.Ne7+ 2.Rh3");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert!(
        said.message()
            .starts_with("1.Ne7+ Kh8 is right so far. 2.Rh3 "),
        "{}",
        said.message()
    );
    assert!(!said.message().contains("What about"), "{}", said.message());
}
