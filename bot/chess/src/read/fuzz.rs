//! Reading held to hostile input: bytes at random, and real files with bits flipped, pieces cut out,
//! moved, repeated and put in, and the whole in other encodings.
//!
//! Whatever comes, reading ends, panics nowhere, answers with no more than was in the file, and lets
//! nothing illegal through. `PROPTEST_CASES=20000 cargo test --release -p sealed-move-chess --lib fuzz` tries
//! longer.

use proptest::{prelude::*, sample::Index};
use shakmaty::{Chess, EnPassantMode, Position, fen::Fen};

use super::*;
use crate::{cases::cases, parse_fen};

/// Files as coaches have them.
const REAL: [&str; 4] = [
    include_str!("../../../../demo-data/positions/boden.pgn"),
    include_str!("../../../../demo-data/positions/smothered.epd"),
    include_str!("../../../../tests/data/kopec_bratko.epd"),
    // A lesson with everything a game may hold.
    "\u{feff}[Event \"Lesson \\\"1\\\"\"]\r\n[Id \"l1\"]\r\n[Task \"#2\"]\r\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\r\n\r\n{Before.} 1.Rxd8+! $1 (1.Rd7? Rxd7 (1...Rab8 2.Rxd8+ $18 ; rest\r\n) 2.-- g6) 1...Rxd8 2.Rxd8# {é ♘} 1-0\r\n\r\n% escaped\r\n1.e4 e5 2.0-0-0 *\r\n",
];

/// What breaks readers: long, deep, huge, and not text at all.
const NASTY: [&[u8]; 24] = [
    b"\0",
    b"\0\0\0\0\0\0\0\0",
    b"\xff\xfe",
    b"\xef\xbb\xbf",
    b"\xc3\x28",
    b"\xed\xa0\x80",
    b"\xf4\x90\x80\x80",
    b"\xe2\x80\xae",
    b"\x1b[2J",
    b"\r",
    b"\n\n",
    b"\"",
    b"\\",
    b"(",
    b")",
    b"{",
    b"}",
    b";",
    b"%",
    b"$255 $256 $99999999999999999999",
    b" 18446744073709551616.e4 ",
    b"[FEN \"",
    b" dm 99999999999999999999; ce -99999999999999999999; hmvc 4294967296; fmvn 0;",
    b"99999999/kkkkkkkkkkkkkkkk/8/8/8/8/8/8/8/8 w KQkq a9 -1 -1",
];

/// Units that are repeated thousands of times.
const ENDLESS: [&str; 12] = [
    "9",
    "(",
    ")",
    "(1.e4 ",
    "{x} ",
    "$1 ",
    "x",
    "[A \"b\"]\n",
    "Kg1 ",
    "é",
    "\n",
    "id \"x\"; ",
];

#[derive(Clone, Debug)]
enum Harm {
    Flip(Index, u8),
    Cut(Index, usize),
    Move(Index, Index, usize),
    Repeat(Index, usize, usize),
    Nasty(Index, usize),
    Endless(Index, usize, usize),
    Tag(Index, usize),
    Join(usize),
}

fn harm() -> impl Strategy<Value = Harm> {
    let at = any::<Index>;
    prop_oneof![
        (at(), 0..8u8).prop_map(|(at, bit)| Harm::Flip(at, bit)),
        (at(), 1..200usize).prop_map(|(at, long)| Harm::Cut(at, long)),
        (at(), at(), 1..200usize).prop_map(|(from, to, long)| Harm::Move(from, to, long)),
        (at(), 1..60usize, 2..40usize).prop_map(|(at, long, times)| Harm::Repeat(at, long, times)),
        (at(), 0..NASTY.len()).prop_map(|(at, which)| Harm::Nasty(at, which)),
        (at(), 0..ENDLESS.len(), 1..4_000usize)
            .prop_map(|(at, which, times)| Harm::Endless(at, which, times)),
        (at(), 1..100_000usize).prop_map(|(at, long)| Harm::Tag(at, long)),
        (0..REAL.len()).prop_map(Harm::Join),
    ]
}

fn do_harm(bytes: &mut Vec<u8>, harm: &Harm) {
    let put = |bytes: &mut Vec<u8>, at: &Index, new: Vec<u8>| {
        let at = at.index(bytes.len() + 1);
        bytes.splice(at..at, new);
    };
    let piece = |bytes: &[u8], at: &Index, long: usize| {
        let from = at.index(bytes.len() + 1);
        from..(from + long).min(bytes.len())
    };
    match harm {
        Harm::Flip(at, bit) if !bytes.is_empty() => {
            let at = at.index(bytes.len());
            bytes[at] ^= 1 << bit;
        }
        Harm::Flip(..) => {}
        Harm::Cut(at, long) => {
            let range = piece(bytes, at, *long);
            bytes.drain(range);
        }
        Harm::Move(from, to, long) => {
            let range = piece(bytes, from, *long);
            let moved = bytes.drain(range).collect();
            put(bytes, to, moved);
        }
        Harm::Repeat(at, long, times) => {
            let range = piece(bytes, at, *long);
            let more = bytes[range].repeat(*times);
            put(bytes, at, more);
        }
        Harm::Nasty(at, which) => put(bytes, at, NASTY[*which].to_vec()),
        Harm::Endless(at, which, times) => {
            put(bytes, at, ENDLESS[*which].repeat(*times).into_bytes());
        }
        Harm::Tag(at, long) => {
            let value = "x".repeat(*long);
            put(bytes, at, format!("\n[{value} \"{value}\"]\n").into_bytes());
        }
        Harm::Join(which) => bytes.extend_from_slice(REAL[*which].as_bytes()),
    }
}

#[derive(Clone, Copy, Debug)]
enum Coding {
    AsIs,
    Utf16Le,
    Utf16Be,
    Unmarked16,
    Latin,
}

fn coding() -> impl Strategy<Value = Coding> {
    prop_oneof![
        6 => Just(Coding::AsIs),
        1 => Just(Coding::Utf16Le),
        1 => Just(Coding::Utf16Be),
        1 => Just(Coding::Unmarked16),
        1 => Just(Coding::Latin),
    ]
}

fn encode(text: &str, coding: Coding) -> Vec<u8> {
    let little = || text.encode_utf16().flat_map(u16::to_le_bytes);
    match coding {
        Coding::AsIs => text.as_bytes().to_vec(),
        Coding::Utf16Le => [0xff, 0xfe].into_iter().chain(little()).collect(),
        Coding::Utf16Be => [0xfe, 0xff]
            .into_iter()
            .chain(text.encode_utf16().flat_map(u16::to_be_bytes))
            .collect(),
        Coding::Unmarked16 => little().collect(),
        Coding::Latin => text
            .chars()
            .map(|c| u8::try_from(u32::from(c)).unwrap_or(b'?'))
            .collect(),
    }
}

/// Reads the bytes both ways, and holds what comes out to what went in.
fn read_both_ways(bytes: &[u8]) -> Result<(), TestCaseError> {
    // Each entry stands on a line or in a game of its own, and quotes at most what it is made of; a
    // byte is at most three in UTF-8.
    let most = bytes.len() + 1;
    let room = 3 * most;
    let entries = read_file("f", bytes);
    prop_assert!(!entries.is_empty() && entries.len() <= most);
    let mut quoted = 0;
    for entry in &entries {
        match entry {
            Ok(entry) => {
                prop_assert!((1..=most).contains(&entry.line));
                quoted += entry.comments.iter().map(|c| c.text.len()).sum::<usize>();
                quoted += entry.topic.as_ref().map_or(0, String::len);
                for mv in entry.best.iter().chain(&entry.avoid) {
                    prop_assert!(entry.position.is_legal(*mv));
                }
                if let Some(tree) = &entry.variations {
                    quoted += walk(&entry.position, tree, most)?;
                }
            }
            Err(error) => {
                prop_assert!((1..=most).contains(&error.line), "{error}");
                let kept = error.problem.to_string();
                prop_assert!(kept.len() <= 1_000, "{}", kept.len());
                quoted += error.text.len();
            }
        }
    }
    prop_assert!(quoted <= room, "{quoted} of {}", bytes.len());
    let games = read_games("f", bytes);
    prop_assert!(!games.is_empty() && games.len() <= most);
    for game in games.iter().flatten() {
        walk(&game.start, &game.tree, most)?;
    }
    Ok(())
}

/// Every move of a tree is legal where it stands; returns how long its comments are.
fn walk(start: &Chess, tree: &GameTree, most: usize) -> Result<usize, TestCaseError> {
    let mut open = vec![(start.clone(), tree)];
    let (mut moves, mut quoted) = (0, 0);
    while let Some((position, tree)) = open.pop() {
        for node in &tree.nodes {
            prop_assert!(position.is_legal(node.mv));
            prop_assert!((1..=most).contains(&node.line));
            moves += 1;
            quoted += node.comment.as_ref().map_or(0, String::len);
            quoted += node.before.as_ref().map_or(0, String::len);
            let mut after = position.clone();
            after.play_unchecked(node.mv);
            open.push((after, &node.next));
        }
    }
    prop_assert!(moves <= most);
    Ok(quoted)
}

/// A FEN is read to a position that is written and read again as itself, or refused in few words.
fn read_fen(text: &str) -> Result<(), TestCaseError> {
    match parse_fen(text) {
        Ok(read) => {
            let again = Fen::from_position(&read.position, EnPassantMode::Legal).to_string();
            let back = parse_fen(&again).map_err(|error| TestCaseError::fail(error.to_string()))?;
            prop_assert_eq!(&back.position, &read.position);
            prop_assert!(back.position.legal_moves().len() <= 256);
        }
        Err(error) => prop_assert!(error.to_string().len() <= 1_000),
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn real_files_with_harm_done_to_them(
        which in 0..REAL.len(),
        coding in coding(),
        harms in proptest::collection::vec(harm(), 1..8),
    ) {
        let mut bytes = encode(REAL[which], coding);
        for harm in &harms {
            do_harm(&mut bytes, harm);
        }
        read_both_ways(&bytes)?;
    }

    #[test]
    fn bytes_at_random(bytes in proptest::collection::vec(any::<u8>(), 0..2_000)) {
        read_both_ways(&bytes)?;
    }

    #[test]
    fn text_at_random(text in "(\\PC|[\\[\\](){};%$\"/ \r\n]){0,400}", coding in coding()) {
        read_both_ways(&encode(&text, coding))?;
    }

    #[test]
    fn fens_with_harm_done_to_them(
        which in prop::sample::select(vec![
            "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
            "rnbqkbnr/ppp1p1pp/8/3pPp2/8/8/PPPP1PPP/RNBQKBNR w KQkq f6 0 3",
            "8/8/8/8/8/5k2/5p2/5K2 w - - 99 4294967295",
        ]),
        harms in proptest::collection::vec(harm(), 1..4),
    ) {
        let mut bytes = which.as_bytes().to_vec();
        for harm in &harms {
            do_harm(&mut bytes, harm);
        }
        read_fen(&String::from_utf8_lossy(&bytes))?;
    }

    #[test]
    fn fens_at_random(
        board in "[pnbrqkPNBRQK1-8/]{0,90}",
        rest in "( [wb-])?( [KQkqAH-]{0,5})?( ([a-i][0-9]|-))?( [0-9-]{1,12}){0,3}",
    ) {
        read_fen(&format!("{board}{rest}"))?;
    }
}
