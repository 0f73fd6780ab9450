//! Moves that are found in a text for somebody to look at: nothing is judged by them, and nobody is charged.
//!
//! An answer to a question in its writer's own words is put beside others that begin with the same move
//! ([`first_move`]); what is talked about after the reveal is followed on a board ([`spoken_of`]).

use shakmaty::{Chess, Color, Move, Position};

use super::{Doubt, Reading, Tree, Trouble, TroubleKind, read};
use crate::{Language, line::sans};

/// The first move that an answer in its writer's own words gives, in SAN; none where it names none, names
/// several, only asks about one or rejects it, or can be taken in several ways.
///
/// ```
/// use sealed_move_chess::{Language, reply::first_move};
/// use shakmaty::Chess;
///
/// let start = Chess::default();
/// let found = |text| first_move(&start, text, Language::English);
/// assert_eq!(found("I would play Nf3, to castle soon.").as_deref(), Some("Nf3"));
/// assert_eq!(found("Control of the centre!"), None);
/// ```
pub fn first_move(start: &Chess, text: &str, language: Language) -> Option<String> {
    let reading = read(start, &[], text, language).ok()?;
    if matches!(reading.doubt, Some(Doubt::Asked | Doubt::Rejected)) {
        return None;
    }
    let first = only_first(&reading.tree)?;
    let ways = reading.ways.iter().map(|way| &way.tree);
    ways.map(only_first)
        .all(|other| other == Some(first))
        .then(|| sans(start, &[first]).pop())
        .flatten()
}

/// The one first move that a tree begins with, where it is written and not filled in.
fn only_first(tree: &Tree) -> Option<Move> {
    let [only] = tree.node(tree.cursor()).children[..] else {
        return None;
    };
    let node = tree.node(only);
    node.mv.filter(|_| !node.assumed)
}

/// What a text speaks of, found on the board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Spoken {
    /// A line that can be played.
    Line {
        /// The moves before it, from the start, in SAN.
        before: Vec<String>,
        /// The moves that the text gives, in SAN.
        moves: Vec<String>,
    },
    /// A move is written that cannot be played anywhere here.
    NotFound {
        /// The move as it is written.
        written: String,
    },
    /// No move is written.
    Nothing,
}

/// Follows what a text speaks of. `lines` are lines from `start` that were shown, the latest first: the moves may
/// go on from the end of the first one, begin at `start`, or stand anywhere along one of them. Where they fit in
/// several places, the number before the first move decides, then how many of them fit, then that order.
///
/// ```
/// use sealed_move_chess::{Language, line::moves, reply::{Spoken, spoken_of}};
/// use shakmaty::Chess;
///
/// let start = Chess::default();
/// let shown = moves(&start, &["e4", "e5", "Nf3"].map(str::to_owned));
/// let found = spoken_of(&start, &[shown], "and what about Nc6?", Language::English);
/// let Spoken::Line { before, moves } = found else { panic!("{found:?}") };
/// assert_eq!((before.len(), moves), (3, vec!["Nc6".to_owned()]));
/// ```
pub fn spoken_of(start: &Chess, lines: &[Vec<Move>], text: &str, language: Language) -> Spoken {
    let numbered = first_number(text, start.turn());
    let mut best: Option<Found> = None;
    let mut missing: Option<String> = None;
    for before in places(lines) {
        let Ok(reading) = read(start, before, text, language) else {
            return Spoken::Nothing;
        };
        let found = Found::of(before, &reading);
        if found.moves.is_empty() {
            missing = missing.or_else(|| not_found(&reading));
            continue;
        }
        let rank = |found: &Found| {
            let at_its_number = numbered.is_some_and(|ply| ply == found.before.len());
            (
                at_its_number,
                std::cmp::Reverse(found.troubles),
                found.moves.len(),
            )
        };
        if best.as_ref().is_none_or(|best| rank(&found) > rank(best)) {
            best = Some(found);
        }
    }
    match (best, missing) {
        // A move that stands nowhere is said to, and not passed over for those that do.
        (
            Some(Found {
                wrong: Some(written),
                ..
            }),
            _,
        )
        | (None, Some(written)) => Spoken::NotFound { written },
        (Some(found), _) => {
            let all: Vec<Move> = found.before.iter().chain(&found.moves).copied().collect();
            let mut before = sans(start, &all);
            let moves = before.split_off(found.before.len().min(before.len()));
            Spoken::Line { before, moves }
        }
        (None, None) => Spoken::Nothing,
    }
}

/// What a text gives in one place.
struct Found {
    before: Vec<Move>,
    moves: Vec<Move>,
    troubles: usize,
    /// A written move that is not possible.
    wrong: Option<String>,
}

impl Found {
    fn of(before: &[Move], reading: &Reading) -> Self {
        Self {
            before: before.to_vec(),
            moves: reading.tree.main_line(),
            troubles: reading.troubles.len() + reading.passed_over,
            wrong: not_found(reading),
        }
    }
}

/// The first written move that cannot be played.
fn not_found(reading: &Reading) -> Option<String> {
    let wrong = |trouble: &&Trouble| trouble.kind == TroubleKind::Illegal;
    let trouble = reading.troubles.iter().find(wrong);
    trouble.map(|trouble| trouble.written.trim().to_owned())
}

/// Where moves may go on: the end of the first line, the start, then along every line from its end back.
fn places(lines: &[Vec<Move>]) -> Vec<&[Move]> {
    let ends = lines.first().map(Vec::as_slice);
    let along = lines
        .iter()
        .flat_map(|line| (1..=line.len()).rev().map(|long| &line[..long]));
    let mut all: Vec<&[Move]> = Vec::new();
    for place in ends.into_iter().chain([&[][..]]).chain(along) {
        if all.len() < MOST_PLACES && !all.contains(&place) {
            all.push(place);
        }
    }
    all
}

/// The most places that are tried.
const MOST_PLACES: usize = 120;

/// The half-moves from the start at which the number before the first move says that it stands.
fn first_number(text: &str, turn: Color) -> Option<usize> {
    let bytes = text.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    for at in 0..bytes.len() {
        let alone = at == 0 || !bytes[at - 1].is_ascii_alphanumeric();
        if !alone || !digit(at) {
            continue;
        }
        let long = (at..bytes.len()).take_while(|at| digit(*at)).count();
        let dots = text[at + long..]
            .bytes()
            .take_while(|byte| *byte == b'.')
            .count();
        let black = dots > 1 || text[at + long..].starts_with('…');
        if long > 3 || (dots == 0 && !black) {
            continue;
        }
        let number: usize = text[at..at + long].parse().ok()?;
        let half = 2 * number.checked_sub(1)? + usize::from(black);
        return half.checked_sub(usize::from(turn == Color::Black));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{line::moves, parse_fen};

    /// A back-rank position of our own: 1.Rxd8+ Rxd8 2.Rxd8#.
    const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

    fn board(fen: &str) -> Chess {
        parse_fen(fen).expect("a position").position
    }

    fn line(start: &Chess, sans: &[&str]) -> Vec<Move> {
        let sans: Vec<String> = sans.iter().map(|san| (*san).to_owned()).collect();
        moves(start, &sans)
    }

    #[test]
    fn an_answer_stands_under_the_move_it_begins_with() {
        let start = board(BACK_RANK);
        for (text, wanted) in [
            ("Rxd8+ Rxd8 Rxd8 mate", Some("Rxd8+")),
            (
                "I would take on d8: Rxd8+, the back rank is weak",
                Some("Rxd8+"),
            ),
            (
                "Turm schlägt d8, weil die Grundreihe schwach ist",
                Some("Rxd8+"),
            ),
            ("Perhaps Rd7, to double", Some("Rd7")),
            ("The back rank.", None),
            ("No idea at all", None),
            ("Is Rd7 any good?", None),
            ("Rd7 or Rd6", None),
            ("Qh5 wins", None),
            ("", None),
        ] {
            let found = first_move(&start, text, Language::English);
            assert_eq!(found.as_deref(), wanted, "{text}");
        }
        let long = "x ".repeat(3_000);
        assert_eq!(first_move(&start, &long, Language::English), None);
    }

    fn spoken(lines: &[Vec<Move>], text: &str) -> Spoken {
        spoken_of(&board(BACK_RANK), lines, text, Language::English)
    }

    fn found(before: &[&str], moves: &[&str]) -> Spoken {
        let own = |line: &[&str]| line.iter().map(|san| (*san).to_owned()).collect();
        Spoken::Line {
            before: own(before),
            moves: own(moves),
        }
    }

    #[test]
    fn a_line_is_read_from_the_start_and_from_where_the_last_one_ended() {
        let start = board(BACK_RANK);
        let solution = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
        let lines = std::slice::from_ref(&solution);
        assert_eq!(spoken(lines, "What about Rd7?"), found(&[], &["Rd7"]));
        assert_eq!(
            spoken(lines, "And Rd7 Rxd7 Rxd7?"),
            found(&[], &["Rd7", "Rxd7", "Rxd7"])
        );
        // On from the line shown last.
        let shown = line(&start, &["Rd7", "Rxd7", "Rxd7"]);
        let lines = [shown, solution.clone()];
        assert_eq!(
            spoken(&lines, "then Kf8?"),
            found(&["Rd7", "Rxd7", "Rxd7"], &["Kf8"])
        );
        // Into the middle of the solution, by the number.
        assert_eq!(
            spoken(std::slice::from_ref(&solution), "what if 2.h3 instead"),
            found(&["Rxd8+", "Rxd8"], &["h3"])
        );
        assert_eq!(
            spoken(std::slice::from_ref(&solution), "after 2.h3 what about h6?"),
            found(&["Rxd8+", "Rxd8"], &["h3", "h6"])
        );
        // In another language's letters.
        assert_eq!(spoken(&[], "Und Td7?"), found(&[], &["Rd7"]));
    }

    #[test]
    fn a_move_that_stands_nowhere_is_named() {
        let start = board(BACK_RANK);
        let solution = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
        let missing = |text: &str| match spoken(std::slice::from_ref(&solution), text) {
            Spoken::NotFound { written } => written,
            other => panic!("{text}: {other:?}"),
        };
        assert!(missing("What about Qh5?").contains("Qh5"));
        assert!(missing("And Rd7 Rxd7 Qe8?").contains("Qe8"));
        assert_eq!(spoken(&[], "Thank you all!"), Spoken::Nothing);
    }

    #[test]
    fn numbers_say_where_a_move_stands() {
        let white = |text| first_number(text, Color::White);
        assert_eq!(white("after 3.Rxd5 what about Nf6"), Some(4));
        assert_eq!(white("3...Nf6"), Some(5));
        assert_eq!(white("3… Nf6"), Some(5));
        assert_eq!(white("in 2026 we said 1. e4"), Some(0));
        assert_eq!(white("Rd5 and 5 pawns"), None);
        assert_eq!(first_number("1...Qb2", Color::Black), Some(0));
        assert_eq!(first_number("2.Kxb2", Color::Black), Some(1));
        assert_eq!(first_number("1.Kxb2", Color::Black), None);
    }
}
