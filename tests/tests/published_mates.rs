//! The prover against the world: published mates with their keys and lengths, a brute-force solver
//! written on python-chess, and python-chess's own spelling of every move.

use std::sync::OnceLock;

use rand::{RngExt, SeedableRng, seq::IndexedRandom};
use rand_chacha::ChaCha8Rng;
use sealed_move::chess::{
    Budget, Stipulation,
    check::{CheckOptions, Report, Soundness, check},
    line::sans,
    parse_fen, prove,
    read::{Entry, read_file},
};
use sealed_move_tests::{data, python_script};
use serde_json::json;
use shakmaty::{CastlingMode, Chess, EnPassantMode, fen::Fen};

fn published() -> Vec<Entry> {
    let file = "published_mates.epd";
    read_file(file, data(file).as_bytes())
        .into_iter()
        .collect::<Result<_, _>>()
        .expect("every line is readable")
}

/// Composer, place and year of a composed problem, from a comment such as
/// "problem by Sam Loyd (Excelsior), London Era, 1861"; `None` where the entry is something else.
fn composed(entry: &Entry) -> Option<(&str, &str, u16)> {
    let source = entry.comments.first()?.text.strip_prefix("problem by ")?;
    let (composer, rest) = source.split_once([',', '('])?;
    let (place, year) = rest.rsplit_once(", ")?;
    let place = place.rsplit(')').next()?.trim_start_matches(", ");
    let year = year.parse().ok()?;
    (!composer.is_empty() && !place.is_empty()).then_some((composer.trim_end(), place, year))
}

fn report(entry: &Entry) -> Report {
    check(entry, &CheckOptions::default(), &Budget::unlimited())
}

/// Every published mate with its report, worked out once for all tests that read it.
fn reports() -> &'static [(Entry, Report)] {
    static REPORTS: OnceLock<Vec<(Entry, Report)>> = OnceLock::new();
    REPORTS.get_or_init(|| {
        let with_report = |entry| {
            let report = report(&entry);
            (entry, report)
        };
        published().into_iter().map(with_report).collect()
    })
}

/// Sources stand in the file, a line each.
#[test]
fn published_mates_have_the_published_key_and_length() {
    let entries = reports();
    assert!(entries.len() >= 60, "{}", entries.len());
    for (entry, report) in entries {
        assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
        assert_eq!(
            report.keys,
            sans(&entry.position, &entry.best),
            "{report:?}"
        );
        let moves = entry
            .stipulation
            .and_then(Stipulation::mate_in)
            .expect("a mate");
        assert_eq!(report.line.len(), 2 * usize::from(moves) - 1, "{report:?}");
        assert!(report.line.last().is_some_and(|san| san.ends_with('#')));
        assert!(report.proved && report.message.is_empty(), "{report:?}");
    }
}

/// Steinitz - von Bardeleben, Hastings, 1895 (from memory): the line that Steinitz gave when his
/// opponent had left the hall, after 27...Kxg7; mate by 35.Qd6, the eighth move. That no other move
/// mates as soon is the prover's word.
#[test]
fn the_mate_in_eight_that_steinitz_gave() {
    let fen = "r1r5/pp1q2k1/5pp1/3p2N1/7Q/8/PP3PPP/2R3K1 w - - 0 28";
    let position = parse_fen(fen).expect("a position").position;
    let budget = Budget::unlimited().threads(2).table_bytes(64 << 20);
    let mut prover = prove::Prover::new(&position, &budget);
    assert_eq!(prover.shortest(8), Ok(Some(8)));
    let keys = prover.keys(8).expect("no bound");
    let keys: Vec<_> = keys
        .into_iter()
        .map(|(mv, moves)| (sans(&position, &[mv]).join(" "), moves))
        .collect();
    assert_eq!(keys, [("Qh7+".to_owned(), 8)]);
}

/// Problems that somebody composed and published are the hardest outside measure: each length from
/// two to six is there, and each names its composer, place and year.
#[test]
fn composed_problems_of_every_length_are_among_them() {
    let entries = published();
    let mut by_length = [0; 7];
    for entry in &entries {
        let says_so = entry
            .comments
            .iter()
            .any(|c| c.text.starts_with("problem by "));
        let source = composed(entry);
        assert_eq!(says_so, source.is_some(), "{}", entry.id);
        let Some((composer, _, year)) = source else {
            continue;
        };
        assert!(composer.contains(' '), "{}: {composer}", entry.id);
        assert!((1475..=2026).contains(&year), "{}: {year}", entry.id);
        let moves = entry.stipulation.and_then(Stipulation::mate_in);
        by_length[usize::from(moves.expect("a mate"))] += 1;
    }
    assert_eq!(by_length, [0, 0, 4, 3, 1, 2, 2]);
}

/// Without a stipulation in the file, the shortest mate is the published one.
#[test]
fn the_shortest_mate_is_the_published_one() {
    for mut entry in published() {
        let stated = entry.stipulation.take();
        if stated > Some(Stipulation::Mate(CheckOptions::default().moves)) {
            continue;
        }
        assert_eq!(report(&entry).stipulation, stated, "{}", entry.id);
    }
}

#[test]
fn python_chess_spells_every_move_of_the_solutions_alike() {
    let mut input = String::new();
    let mut moves = 0;
    for (entry, proof) in reports() {
        let fen = fen(&entry.position);
        for line in proof.variations.iter().chain(&proof.tries) {
            let line = plain_moves(line);
            moves += line.len();
            input.push_str(&json!({ "fen": fen, "line": line }).to_string());
            input.push('\n');
        }
    }
    assert!(moves > 1_500, "{moves}");
    let agreed = python_script("sans.py", &[], &input);
    assert_eq!(agreed.trim(), moves.to_string());
}

/// The moves of a numbered line, without numbers and the duals in brackets.
fn plain_moves(line: &str) -> Vec<String> {
    let mut plain = String::new();
    let mut depth = 0;
    for c in line.chars() {
        match c {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ if depth == 0 => plain.push(c),
            _ => {}
        }
    }
    plain
        .split_whitespace()
        .map(|word| {
            word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.')
                .to_owned()
        })
        .filter(|word| !word.is_empty())
        .collect()
}

#[test]
fn five_hundred_random_positions_to_two_moves_agree_with_brute_force() {
    agree_with_brute_force(500, 2, 20_261_125);
}

#[test]
fn a_hundred_random_positions_to_three_moves_agree_with_brute_force() {
    agree_with_brute_force(100, 3, 45);
}

fn agree_with_brute_force(count: usize, most: u8, seed: u64) {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    // Mates are rare among random positions: of those that the prover finds none in, one in eight is
    // kept. Brute force decides on all that are kept.
    let mut positions = Vec::with_capacity(count);
    while positions.len() < count {
        let Some(position) = random_position(&mut rng, most) else {
            continue;
        };
        let found = prove::shortest_mate(&position, most, &Budget::unlimited()).expect("no bound");
        if found.is_some() || rng.random_bool(0.125) {
            positions.push(position);
        }
    }
    let input: String = positions
        .iter()
        .map(|position| format!("{}|{most}\n", fen(position)))
        .collect();
    let answers = python_script("mates.py", &[], &input);
    let mut mates = 0;
    let mut lines = answers.lines();
    for position in &positions {
        let answer: serde_json::Value =
            serde_json::from_str(lines.next().expect("an answer for each")).expect("JSON");
        let shortest =
            prove::shortest_mate(position, most, &Budget::unlimited()).expect("no bound");
        assert_eq!(json!(shortest), answer["shortest"], "{}", fen(position));
        let Some(moves) = shortest else { continue };
        mates += 1;
        let proof = prove::mate(position, moves, &Budget::unlimited()).expect("no bound");
        let mut keys: Vec<String> = proof
            .solution
            .keys
            .iter()
            .map(|key| key.mv.to_uci(CastlingMode::Standard).to_string())
            .collect();
        keys.sort();
        assert_eq!(json!(keys), answer["keys"], "{}", fen(position));
    }
    // Otherwise little would have been compared.
    assert!(mates * 4 >= count, "{mates} of {count} are mates");
}

fn fen(position: &Chess) -> String {
    Fen::from_position(position, EnPassantMode::Legal).to_string()
}

/// Few pieces, the mated king mostly on an edge, so that brute force is quick and mates are common.
fn random_position(rng: &mut ChaCha8Rng, most: u8) -> Option<Chess> {
    let attackers: &[&str] = if most > 2 {
        &["Q", "R", "RR", "QP", "RP", "RN", "RB", "PP"]
    } else {
        &[
            "Q", "R", "RR", "QN", "QB", "RN", "RB", "QP", "RP", "BB", "RNP", "QPP", "NNP", "PPP",
        ]
    };
    let defenders: &[&str] = if most > 2 {
        &["", "p", "n"]
    } else {
        &["", "p", "pp", "n", "b", "r", "pn", "q", "ppp"]
    };
    let mut board = [' '; 64];
    let edge: bool = rng.random_bool(0.8);
    let king = loop {
        let square = rng.random_range(0..64);
        let (file, rank) = (square % 8, square / 8);
        if !edge || file % 7 == 0 || rank % 7 == 0 {
            break square;
        }
    };
    board[king] = 'k';
    let men = format!(
        "K{}{}",
        attackers.choose(rng).copied().unwrap_or_default(),
        defenders.choose(rng).copied().unwrap_or_default()
    );
    for man in men.chars() {
        let square = loop {
            let square: usize = rng.random_range(0..64);
            let far = square.abs_diff(king) > 20;
            let own_ground = man.is_ascii_uppercase() && man != 'K' || !far;
            let pawn_ok = !man.eq_ignore_ascii_case(&'p') || (8..56).contains(&square);
            if board[square] == ' ' && pawn_ok && (own_ground || rng.random_bool(0.2)) {
                break square;
            }
        };
        board[square] = man;
    }
    let ranks: Vec<String> = (0..8)
        .rev()
        .map(|rank| {
            board[rank * 8..rank * 8 + 8]
                .iter()
                .map(|man| if *man == ' ' { '1' } else { *man })
                .collect()
        })
        .collect();
    let placement = ranks.join("/");
    let fen = if rng.random_bool(0.5) {
        format!("{placement} w - - 0 1")
    } else {
        // The same position with the colours exchanged.
        let swapped: Vec<String> = placement
            .split('/')
            .rev()
            .map(|rank| {
                rank.chars()
                    .map(|c| {
                        if c.is_ascii_uppercase() {
                            c.to_ascii_lowercase()
                        } else {
                            c.to_ascii_uppercase()
                        }
                    })
                    .collect()
            })
            .collect();
        format!("{} b - - 0 1", swapped.join("/"))
    };
    parse_fen(&fen).ok().map(|read| read.position)
}
