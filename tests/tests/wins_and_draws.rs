//! Replies to endings, with endgame tables and without, held against python-chess's own prober and
//! against what the books say of a few famous positions.
//!
//! Sources, from memory: the pawn ending with the king in front is in every primer; the Lucena position
//! is named after Luis Ramírez de Lucena (first printed in Alessandro Salvio's book of 1634); the third
//! rank defence is François-André Danican Philidor's (1777).

use std::{path::Path, sync::Arc};

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use sealed_move::{
    chess::{
        Branch, Budget, Defence, Language, Solution, Stipulation,
        check::{CheckOptions, Endgames, Problem, problem},
        judge::{Judgement, Terms, Verdict, hint, judge},
        line, parse_fen,
    },
    desk::endgames::Syzygy,
};
use sealed_move_tests::{english::InEnglish as _, python_script};
use shakmaty::{Chess, EnPassantMode, Position, fen::Fen, san::SanPlus};

fn folder() -> String {
    std::env::var("SEALED_MOVE_TEST_SYZYGY")
        .expect("SEALED_MOVE_TEST_SYZYGY names no folder of tables; start the tests by tests/run")
}

fn with_tables() -> CheckOptions {
    CheckOptions {
        endgames: Some(Syzygy::open(Path::new(&folder())).expect("tables") as Arc<dyn Endgames>),
        ..CheckOptions::default()
    }
}

fn position(fen: &str) -> Chess {
    parse_fen(fen).expect("a position").position
}

fn fen(position: &Chess) -> String {
    Fen::from_position(position, EnPassantMode::Legal).to_string()
}

fn say(problem: &Problem, line: &[String], text: &str) -> Judgement {
    let terms = Terms::answer(Language::English);
    judge(problem, line, text, &terms, &Budget::unlimited()).expect("an answer")
}

/// A problem whose solution is this one line, so that the judging does not hang on what a search
/// prefers.
fn given(fen: &str, task: Stipulation, sans: &[&str]) -> Problem {
    let position = position(fen);
    let sans: Vec<String> = sans.iter().map(|san| (*san).to_owned()).collect();
    let moves = line::moves(&position, &sans);
    assert_eq!(moves.len(), sans.len(), "{sans:?}");
    let mut next: Option<Branch> = None;
    let mut pairs: Vec<&[shakmaty::Move]> = moves.chunks(2).collect();
    while let Some(pair) = pairs.pop() {
        let defences = pair.get(1).map(|&mv| Defence {
            mv,
            continuations: next.take().into_iter().collect(),
        });
        next = Some(Branch {
            mv: pair[0],
            defences: defences.into_iter().collect(),
        });
    }
    Problem {
        position,
        stipulation: task,
        solution: Arc::new(Solution {
            keys: next.into_iter().collect(),
            tries: Vec::new(),
            complete: false,
        }),
        endgames: None,
        coach: None,
    }
}

/// Whether the side to move has a move that wins, by python-chess's prober, for each position.
fn winnable(positions: &[Chess]) -> Vec<bool> {
    let fens: Vec<String> = positions.iter().map(fen).collect();
    let said = python_script("endgame_keys.py", &[&folder()], &fens.join("\n"));
    let winnable: Vec<bool> = said.lines().map(|moves| !moves.trim().is_empty()).collect();
    assert_eq!(winnable.len(), positions.len());
    winnable
}

/// The positions after every legal move.
fn children(position: &Chess) -> Vec<Chess> {
    let after = |mv| {
        let mut next = position.clone();
        next.play_unchecked(mv);
        next
    };
    position.legal_moves().into_iter().map(after).collect()
}

/// Whether all of a position's children are winnable for whoever is to move there; asked of many at
/// once, for a Python takes its time to start.
fn all_children_winnable(positions: &[Chess]) -> Vec<bool> {
    let families: Vec<Vec<Chess>> = positions.iter().map(children).collect();
    let known = winnable(&families.concat());
    let mut known = known.into_iter();
    families
        .iter()
        .map(|family| known.by_ref().take(family.len()).filter(|won| *won).count() == family.len())
        .collect()
}

/// A king and a pawn, or a rook, against a king, with either side to move.
fn ending(rng: &mut ChaCha8Rng) -> Option<Chess> {
    let mut square = || rng.random_range(0..64u32);
    let (white, black, man) = (square(), square(), square());
    let role = if square() % 4 == 0 { "R" } else { "P" };
    let turn = if square() % 2 == 0 { "w" } else { "b" };
    let mut rows = vec![vec!['1'; 8]; 8];
    for (at, letter) in [(white, 'K'), (black, 'k'), (man, role.chars().next()?)] {
        let place = &mut rows[at as usize / 8][at as usize % 8];
        if *place != '1' {
            return None;
        }
        *place = letter;
    }
    let rows: Vec<String> = rows.iter().map(|row| row.iter().collect()).collect();
    let parsed = parse_fen(&format!("{} {turn} - - 0 1", rows.join("/"))).ok()?;
    let position = parsed.position;
    (!position.legal_moves().is_empty()).then_some(position)
}

/// Every first move of sixteen small endings, to win and to draw: with tables the verdict is the
/// prober's; without them it is the prober's or left open. A refutation given holds.
#[test]
fn verdicts_on_small_endings_are_those_of_an_independent_prober() {
    const EACH: usize = 8;
    let options = with_tables();
    let mut rng = ChaCha8Rng::seed_from_u64(20_261_125);
    let mut problems: Vec<Problem> = Vec::new();
    let (mut wins, mut draws) = (0, 0);
    while wins < EACH || draws < EACH {
        let Some(position) = ending(&mut rng) else {
            continue;
        };
        let white = position.turn().is_white();
        let task = if white {
            Stipulation::Win
        } else {
            Stipulation::Draw
        };
        let count = if white { &mut wins } else { &mut draws };
        if *count == EACH {
            continue;
        }
        let Some(found) = problem(&position, task, &options, &Budget::unlimited()) else {
            continue;
        };
        // Where every move does, little is shown.
        if found.solution.keys.len() == position.legal_moves().len() {
            continue;
        }
        *count += 1;
        problems.push(found);
    }
    struct Said {
        what: String,
        task: Stipulation,
        after: Chess,
        tables: Judgement,
        search: Judgement,
    }
    let mut said: Vec<Said> = Vec::new();
    for problem in &problems {
        // Nothing is listed, so that every move is judged.
        let mut tables = problem.clone();
        tables.solution = Arc::new(Solution::default());
        let mut search = tables.clone();
        search.endgames = None;
        for mv in problem.position.legal_moves() {
            let san = SanPlus::from_move(problem.position.clone(), mv).to_string();
            let mut after = problem.position.clone();
            after.play_unchecked(mv);
            said.push(Said {
                what: format!("{san} in {}", fen(&problem.position)),
                task: problem.stipulation,
                after,
                tables: say(&tables, &[], &san),
                search: say(&search, &[], &san),
            });
        }
    }
    // A move wins when every answer of the other side loses, and holds when none of them wins.
    let after: Vec<Chess> = said.iter().map(|said| said.after.clone()).collect();
    let (theirs, lost) = (winnable(&after), all_children_winnable(&after));
    let (mut wrong, mut open) = (0, 0);
    let (mut drawn, mut beaten) = (Vec::new(), Vec::new());
    for (said, (theirs, lost)) in said.iter().zip(theirs.into_iter().zip(lost)) {
        let Said {
            what,
            tables,
            search,
            after,
            task,
        } = said;
        let right = match task {
            Stipulation::Draw => !theirs,
            _ => after.is_checkmate() || lost && !after.is_stalemate(),
        };
        let good = |said: &Judgement| matches!(said.verdict, Verdict::Solved | Verdict::OnTheWay);
        assert_eq!(good(tables), right, "{what}: {}", tables.message());
        match search.verdict {
            Verdict::Unclear => open += 1,
            _ => assert_eq!(
                good(search),
                right,
                "{what}, by search: {}",
                search.message()
            ),
        }
        if right {
            continue;
        }
        assert_eq!(
            tables.verdict,
            Verdict::Wrong,
            "{what}: {}",
            tables.message()
        );
        wrong += 1;
        let Some(first) = tables.refutation.first() else {
            // Stalemate, or too little left: nothing needs to be played.
            assert!(!tables.why.is_empty(), "{what}: {}", tables.message());
            continue;
        };
        assert!(
            tables.message().ends_with("by the endgame tables.)"),
            "{}",
            tables.message()
        );
        let mut next = after.clone();
        let moves = line::moves(after, std::slice::from_ref(first));
        assert_eq!(moves.len(), 1, "{what}: {first}");
        moves.iter().for_each(|mv| next.play_unchecked(*mv));
        match task {
            Stipulation::Draw => beaten.push(next),
            _ => drawn.push(next),
        }
    }
    // After the answer to a failed win nothing wins any more; after that to a failed draw, whatever is
    // played loses.
    assert!(!winnable(&drawn).contains(&true));
    assert!(!all_children_winnable(&beaten).contains(&false));
    println!(
        "{} moves, {wrong} wrong; {open} left open without tables",
        said.len()
    );
    assert!(wrong > 20, "only {wrong} wrong moves: they prove little");
}

/// Plays an ending out against the bot, with a slip before every right move, and says how it went.
fn played_out(problem: &Problem) -> (usize, Judgement) {
    let solver = problem.position.turn();
    let tables = problem.endgames.clone().expect("tables");
    let holds = |position: &Chess| {
        use sealed_move::chess::check::TableVerdict;
        match (tables.known(position), problem.stipulation) {
            (Some(known), Stipulation::Draw) => known != TableVerdict::Win,
            (Some(known), _) => known == TableVerdict::Loss,
            // Nothing but kings.
            (None, task) => position.is_checkmate() || task == Stipulation::Draw,
        }
    };
    let mut line: Vec<String> = Vec::new();
    let mut slips = 0;
    for _ in 0..4 {
        let mut position = problem.position.clone();
        for mv in line::moves(&problem.position, &line) {
            position.play_unchecked(mv);
        }
        assert_eq!(position.turn(), solver, "it is the member's move: {line:?}");
        let (mut right, mut slip) = (None, None);
        for mv in position.legal_moves() {
            let mut after = position.clone();
            after.play_unchecked(mv);
            let place = if holds(&after) { &mut right } else { &mut slip };
            place.get_or_insert_with(|| SanPlus::from_move(position.clone(), mv).to_string());
        }
        if let Some(slip) = slip {
            let said = say(problem, &line, &slip);
            assert_eq!(
                said.verdict,
                Verdict::Wrong,
                "{slip} after {line:?}: {}",
                said.message()
            );
            assert_eq!(said.line, line, "a slip leaves the line as it was");
            slips += 1;
        }
        let said = say(problem, &line, &right.expect("a right move"));
        if said.verdict == Verdict::Solved {
            return (slips, said);
        }
        assert_eq!(said.verdict, Verdict::OnTheWay, "{}", said.message());
        line = said.line;
    }
    panic!("more than four moves were asked: {line:?}");
}

#[test]
fn endings_in_the_tables_are_played_out_in_a_few_moves() {
    for (fen, task) in [
        // The king in front of its pawn, with the move: it wins the opposition.
        ("4k3/8/3K4/4P3/8/8/8/8 w - - 0 1", "+"),
        // The bare king holds by going straight back.
        ("8/4k3/8/4PK2/8/8/8/8 b - - 0 1", "="),
        // Rook against king, and the rook is attacked.
        ("8/8/8/8/8/2k5/1R6/K7 w - - 0 1", "+"),
    ] {
        let task = task.parse().expect("a task");
        let found = problem(&position(fen), task, &with_tables(), &Budget::unlimited());
        let (slips, end) = played_out(&found.expect("sound"));
        println!("{fen}: {slips} slips, then: {}", end.message());
        assert!(slips > 0, "{fen}: nothing could go wrong");
        assert_eq!(end.points, 5.0);
    }
}

#[test]
fn a_pawn_ending_is_explained_by_the_kings_and_hinted_at_by_the_tables() {
    let fen = "4k3/8/3K4/4P3/8/8/8/8 w - - 0 1";
    let found = problem(
        &position(fen),
        Stipulation::Win,
        &with_tables(),
        &Budget::unlimited(),
    );
    let found = found.expect("sound");
    let said = say(&found, &[], "e6");
    assert_eq!(said.verdict, Verdict::Wrong);
    assert_eq!(
        said.message(),
        "1.e6 does not win. Black answers 1...Kd8: the kings face each other, and it is White who has to \
         give way. (No win, by the endgame tables.)"
    );
    // The tables have no lines; a hint on the second move is one of the moves that win there.
    let line = say(&found, &[], "Ke6").line;
    let told = hint(&found, &line, 3).expect("a hint");
    let told = sealed_move::words::english().tell(&told);
    let san = told
        .trim_start_matches("The next move is 2.")
        .trim_end_matches('.');
    assert_ne!(say(&found, &line, san).verdict, Verdict::Wrong, "{told}");
    assert!(told.starts_with("The next move is 2."), "{told}");
}

/// The bridge: rook to the fourth rank, king out, and the rook shields it from the checks.
#[test]
fn the_lucena_position_is_shown_by_four_moves_of_the_bridge() {
    let bridge = [
        "Rf4", "Rh1", "Re4+", "Kd7", "Kf7", "Rf1+", "Kg6", "Rg1+", "Kf6", "Rf1+", "Kg5", "Rg1+",
        "Rg4",
    ];
    let fen = "6K1/4k1P1/8/8/8/8/7r/5R2 w - - 0 1";
    let problem = given(fen, Stipulation::Win, &bridge);
    let text = "1.Rf4 Rh1 2.Re4+ Kd7 3.Kf7 Rf1+ 4.Kg6";
    let said = say(&problem, &[], text);
    assert_eq!(
        (said.verdict, said.points),
        (Verdict::Solved, 5.0),
        "{}",
        said.message()
    );
    let said = say(&problem, &[], "1.Rf4");
    assert_eq!(
        (said.verdict, said.points),
        (Verdict::OnTheWay, 1.0),
        "{}",
        said.message()
    );
    assert_eq!(said.line, ["Rf4", "Rh1"]);
    // The rook is put where the king takes it.
    let said = say(&problem, &[], "1.Rf4 Rh1 2.Re4+ Kd7 3.Re7+");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(
        said.message()
            .starts_with("1.Rf4 Rh1 2.Re4+ Kd7 is right so far. 3.Re7+ does not win."),
        "{}",
        said.message()
    );
    assert_eq!(said.refutation, ["Kxe7"]);
    assert_eq!(said.line.len(), 4);
    // And at once.
    let said = say(&problem, &[], "1.Rf2");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert_eq!(said.refutation, ["Rxf2"]);
}

/// The rook keeps to the third rank until the pawn steps there, and then checks from behind.
#[test]
fn the_philidor_position_is_held_on_the_third_rank() {
    let fen = "4k3/R7/8/3KP3/8/8/8/1r6 b - - 0 1";
    let problem = given(fen, Stipulation::Draw, &["Rb6", "e6", "Rb1", "Kd6", "Rd1+"]);
    let said = say(&problem, &[], "1...Rb6 2.e6 Rb1");
    assert_eq!(
        (said.verdict, said.points),
        (Verdict::Solved, 5.0),
        "{}",
        said.message()
    );
    assert_eq!(say(&problem, &[], "Rb6").verdict, Verdict::OnTheWay);
    let said = say(&problem, &[], "Rb7");
    assert_eq!(
        (said.verdict, said.points),
        (Verdict::Wrong, 0.0),
        "{}",
        said.message()
    );
    assert_eq!(said.refutation[0], "Rxb7");
    let said = say(&problem, &[], "1...Rb6 2.e6 Rxe6");
    assert_eq!(said.verdict, Verdict::Wrong, "{}", said.message());
    assert!(
        said.message()
            .contains("2...Rxe6 does not hold. White answers 3.Kxe6"),
        "{}",
        said.message()
    );
}
