//! Every reason given for a wrong move, and every word of its sentence, held to the board by
//! python-chess, which reads the sentence and the board for itself.

use std::fmt::Write;

use sealed_move::chess::{
    Budget, Language, Stipulation,
    check::Problem,
    judge::{Terms, judge},
    line, parse_fen, prove,
    read::read_file,
    refute::{self, Back, LostGuard, Reason, Sealed},
    scene::SceneMark,
};
use sealed_move::words::{english, tags, words};
use sealed_move_tests::{data, english::InEnglish as _, python_script};
use serde_json::{Value, json};
use shakmaty::{Chess, EnPassantMode, Move, Position, Role, fen::Fen, uci::UciMove};

/// Refuting takes the longer the longer the mate: of the wrong moves every second one is looked at in
/// one move, every third in two, and so on up to so many; in longer ones every eighth.
const LONG: u8 = 3;

/// How often each kind of reason has to be given at least, so that none goes unlooked at.
const LEAST: &[(&str, u64)] = &[
    ("stalemate", 15),
    ("slower", 200),
    ("mates-first", 50),
    ("takes: by the king", 20),
    ("takes: nothing", 150),
    ("takes: pinned", 8),
    ("takes: guarded", 8),
    ("takes: possible", 200),
    ("takes: in-check", 5),
    ("for nothing", 40),
    ("flight: unguarded", 20),
    ("flight: moved", 20),
    ("flight: blocked", 8),
    ("castles", 5),
    ("check", 20),
    ("interposes: takeable", 20),
    ("interposes: safe", 5),
    ("no-threat", 1_000),
    ("guards", 5),
    ("luft: vacated", 8),
    ("luft: opened", 8),
    ("shuts", 5),
    ("pins", 8),
    ("meets-threat", 5),
    ("no-check", 500),
    ("back-rank: again", 5),
    ("back-rank: stays", 5),
];

/// A problem, and the only move to be looked at where the file names one.
struct Task {
    position: Chess,
    moves: u8,
    only: Option<UciMove>,
}

/// The published mates, positions out of random play, and positions of our own for what these seldom
/// show.
fn tasks() -> Vec<Task> {
    let file = "published_mates.epd";
    let mut found = Vec::new();
    for entry in read_file(file, data(file).as_bytes()) {
        let entry = entry.expect("readable");
        let moves = entry.stipulation.and_then(Stipulation::mate_in);
        found.push(Task {
            position: entry.position,
            moves: moves.expect("a mate"),
            only: None,
        });
    }
    let random = include_str!("../../../bot/chess/src/refute/positions.txt");
    let own = include_str!("reasons.txt");
    for row in random.lines().chain(own.lines()) {
        if row.starts_with('#') {
            continue;
        }
        let mut fields = row.split('\t');
        let position = parse_fen(fields.next().expect("a FEN")).expect("a position");
        let task = fields.next().and_then(|task| task.strip_prefix('#'));
        found.push(Task {
            position: position.position,
            moves: task.expect("a task").parse().expect("a number"),
            only: fields.next().map(|uci| uci.parse().expect("UCI")),
        });
    }
    found
}

/// The problem with its keys; positions of our own may have none.
fn solved(position: &Chess, moves: u8) -> Problem {
    let proof = prove::mate(position, moves, &Budget::unlimited()).expect("unbounded");
    Problem {
        position: position.clone(),
        stipulation: Stipulation::Mate(moves),
        solution: proof.solution.into(),
        endgames: None,
        coach: None,
    }
}

/// The problem with one move of each side fewer, along the main line.
fn rest(problem: &Problem) -> Option<Chess> {
    let mut position = problem.position.clone();
    let line = problem.solution.main_line();
    let [key, defence, _, ..] = line[..] else {
        return None;
    };
    position.play_unchecked(key);
    position.play_unchecked(defence);
    Some(position)
}

#[test]
fn every_reason_given_is_true_on_the_board() {
    let mut input = String::new();
    let mut wrong = 0;
    for task in tasks() {
        let mut next = Some(task);
        // What is left after the first moves of the main line is looked at too.
        while let Some(task) = next {
            let problem = solved(&task.position, task.moves);
            let told = wrong_moves(&problem, &task);
            wrong += told.len();
            let fen = Fen::from_position(&task.position, EnPassantMode::Legal).to_string();
            let keys: Vec<String> = problem
                .solution
                .keys
                .iter()
                .map(|key| uci(key.mv))
                .collect();
            let line = json!({ "fen": fen, "moves": task.moves, "keys": keys, "wrong": told });
            writeln!(input, "{line}").expect("memory");
            let rest = rest(&problem).filter(|_| task.only.is_none());
            next = rest.map(|position| Task {
                position,
                moves: task.moves - 1,
                only: None,
            });
        }
    }
    let said = python_script("reasons.py", &[], &input);
    println!("{}", said.trim());
    let said: Value = serde_json::from_str(&said).expect("JSON");
    assert_eq!(said["wrong"], wrong);
    assert!(wrong > 3_000, "only {wrong} wrong moves were looked at");
    assert!(
        said["refused"].as_u64() > Some(2_000),
        "{}",
        said["refused"]
    );
    let kinds = said["kinds"].as_object().expect("an object");
    for (kind, least) in LEAST {
        let count = kinds.get(*kind).and_then(Value::as_u64).unwrap_or(0);
        assert!(count >= *least, "{kind} was given {count} times only");
    }
    for kind in kinds.keys() {
        assert!(LEAST.iter().any(|(name, _)| name == kind), "{kind} is new");
    }
}

/// What is said of the wrong first moves.
fn wrong_moves(problem: &Problem, task: &Task) -> Vec<Value> {
    let sealed = Sealed::of(&problem.solution);
    let budget = Budget::unlimited();
    let stride = match (&task.only, task.moves) {
        (Some(_), _) => 1,
        (None, moves @ ..=LONG) => usize::from(moves) + 1,
        _ => 8,
    };
    let only = task
        .only
        .as_ref()
        .map(|uci| uci.to_move(&task.position).expect("legal"));
    let legal = task.position.legal_moves();
    let looked_at = legal
        .into_iter()
        .filter(|&mv| only.is_none_or(|only| only == mv));
    let mut told = Vec::new();
    for (place, mv) in looked_at.step_by(stride).enumerate() {
        if problem.solution.keys.iter().any(|key| key.mv == mv) {
            continue;
        }
        let found = refute::mate_move(&task.position, mv, task.moves, &sealed, &budget);
        let Some(refutation) = found.expect("unbounded") else {
            panic!("{mv} mates in time and is no key");
        };
        let mut shown = json!({
            "move": uci(mv),
            "line": refutation.line.iter().map(|&mv| uci(mv)).collect::<Vec<_>>(),
            "reasons": refutation.reasons.iter().map(reason).collect::<Vec<_>>(),
            "why": english().say(&refutation.why),
            "point": english().say(&refutation.point),
            "board": refutation.scene.position.board().to_string(),
            "marks": refutation.scene.marks.iter().map(mark).collect::<Vec<_>>(),
        });
        // The judge refutes anew, so it is asked now and then.
        if place % 4 == 0 && task.moves <= LONG {
            let san = line::sans(&task.position, &[mv]).remove(0);
            let terms = Terms::answer(Language::English);
            let said = judge(problem, &[], &san, &terms, &budget).expect("an answer");
            assert_eq!(said.why, refutation.why);
            shown["message"] = said.message().into();
            for tag in tags() {
                for fact in &said.said {
                    let spoken = words(tag).try_to_say(fact);
                    assert!(spoken.is_ok(), "{tag}: {fact:?}: {spoken:?}");
                }
            }
        }
        told.push(shown);
    }
    told
}

fn uci(mv: Move) -> String {
    UciMove::from_standard(mv).to_string()
}

fn man(role: Role) -> &'static str {
    match role {
        Role::Pawn => "pawn",
        Role::Knight => "knight",
        Role::Bishop => "bishop",
        Role::Rook => "rook",
        Role::Queen => "queen",
        Role::King => "king",
    }
}

/// A reason as the checker takes it: no wildcard, so that a new kind cannot be forgotten.
fn reason(reason: &Reason) -> Value {
    match *reason {
        Reason::Stalemate => json!({ "kind": "stalemate" }),
        Reason::Slower { moves } => json!({ "kind": "slower", "moves": moves }),
        Reason::MatesFirst => json!({ "kind": "mates-first" }),
        Reason::Takes {
            by,
            what,
            on,
            the_mover,
            back,
        } => {
            let (back, pinned) = match back {
                Back::Possible => ("possible", None),
                Back::Nothing => ("nothing", None),
                Back::Pinned(role, square) => {
                    ("pinned", Some([man(role).into(), square.to_string()]))
                }
                Back::Guarded => ("guarded", None),
                Back::InCheck => ("in-check", None),
            };
            json!({
                "kind": "takes", "by": man(by), "what": man(what), "on": on.to_string(),
                "the_mover": the_mover, "back": back, "pinned": pinned,
            })
        }
        Reason::Flight { to, lost_guard } => {
            let lost = lost_guard.map(|lost| match lost {
                LostGuard::Moved(role) => vec!["moved".to_owned(), man(role).into()],
                LostGuard::Blocked(role, square) => {
                    vec!["blocked".to_owned(), man(role).into(), square.to_string()]
                }
            });
            json!({ "kind": "flight", "to": to.to_string(), "lost": lost })
        }
        Reason::Castles => json!({ "kind": "castles" }),
        Reason::Check => json!({ "kind": "check" }),
        Reason::Interposes { by, on, takeable } => {
            json!({ "kind": "interposes", "by": man(by), "on": on.to_string(), "takeable": takeable })
        }
        Reason::NoThreat => json!({ "kind": "no-threat" }),
        Reason::Guards { by, square } => {
            json!({ "kind": "guards", "by": man(by), "square": square.to_string() })
        }
        Reason::Luft { square, vacated } => {
            json!({ "kind": "luft", "square": square.to_string(), "vacated": vacated })
        }
        Reason::Shuts { by, on } => {
            json!({ "kind": "shuts", "by": man(by), "on": on.to_string() })
        }
        Reason::Pins { what, on } => {
            json!({ "kind": "pins", "what": man(what), "on": on.to_string() })
        }
        Reason::MeetsThreat => json!({ "kind": "meets-threat" }),
        Reason::NoCheck => json!({ "kind": "no-check" }),
        Reason::BackRankHolds { again } => json!({ "kind": "back-rank", "again": again }),
    }
}

fn mark(mark: &SceneMark) -> Vec<String> {
    match *mark {
        SceneMark::Refutation(from, to) => {
            vec!["refutation".into(), from.to_string(), to.to_string()]
        }
        SceneMark::OpenFlight(square) => vec!["flight".into(), square.to_string()],
        SceneMark::Square(square) => vec!["square".into(), square.to_string()],
        other => panic!("a refutation marks no {other:?}"),
    }
}
