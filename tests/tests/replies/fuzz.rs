//! The reader under a flood of made-up replies: nothing panics, every move read is legal, and a tree
//! stays within its bounds.
//!
//! Inputs come from a seed: replies of the table mutated, fragments of notation and words of every
//! language, parentheses, signs and odd characters, up to the most that is read. How many is set by
//! `SEALED_MOVE_FUZZ_INPUTS`, the first seed by `SEALED_MOVE_FUZZ_SEED`; the slowest input is
//! printed, and nothing is asserted about time.

use std::time::{Duration, Instant};

use rand::{RngExt, SeedableRng, seq::IndexedRandom};
use rand_chacha::ChaCha8Rng;
use sealed_move::chess::{
    Budget, Language, Stipulation,
    check::problem,
    judge::{Setting, Terms, judge},
    parse_fen,
    reply::{self, MOST_CHARACTERS, Tree},
};
use sealed_move_tests::english::InEnglish as _;
use shakmaty::{Chess, Move, Position, san::SanPlus};

/// The replies and positions of the reader's table, and the messages of its corpus of talk.
const TABLE: &str = include_str!("../../../bot/chess/src/reply/table.txt");
const TALK: &str = include_str!("../../../bot/chess/src/reply/talk.txt");

/// What replies are made of, and what they ought not to be made of.
const FRAGMENTS: &[&str] = &[
    "Nf3",
    "e4",
    "exd5",
    "bc5",
    "bxc5",
    "O-O",
    "0-0-0",
    "o-o",
    "O-O-O+",
    "e8=Q",
    "e8(Q)",
    "e8Q+",
    "exd8=N#",
    "Rxd8+",
    "Nf7+",
    "Qg8+!!",
    "Nh6",
    "N1f3",
    "Ngf3",
    "Nb1-d2",
    "e7e8q",
    "e2-e4",
    "a1",
    "h8",
    "QxR",
    "RxR",
    "PxP",
    "KtxP",
    "N",
    "Q",
    "x",
    ":",
    "+",
    "++",
    "#",
    "=",
    "ch",
    "mate",
    "e.p.",
    "1.",
    "1...",
    "1. ...",
    "2.",
    "12)",
    "31. ...",
    "999999999999.",
    "0.",
    "-1.",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "((",
    "))",
    ";",
    ",",
    "/",
    "\\",
    "\n",
    "\r\n",
    "\t",
    "~",
    "any",
    "anything",
    "or",
    "if",
    "then",
    "not",
    "and",
    "but",
    "no",
    "?",
    "!",
    "!?",
    "...",
    "…",
    "..",
    "$3",
    "$139",
    "<",
    ">",
    "<@123>",
    "||",
    "**",
    "`",
    "```",
    "\"",
    "“",
    "my answer is",
    "I play",
    "what about",
    "knight takes d5",
    "rook to d8 check",
    "queen",
    "pawn",
    "castles",
    "king side",
    "promotes to",
    "takes",
    "on",
    "Springer schlägt",
    "Dame nach",
    "Turm",
    "Läufer",
    "Bauer",
    "König",
    "rochade",
    "cavalier prend",
    "dame",
    "tour",
    "fou",
    "pion",
    "roi",
    "petit roque",
    "caballo",
    "alfil",
    "torre",
    "peón",
    "rey",
    "enroque",
    "cavallo",
    "alfiere",
    "donna",
    "arrocco",
    "cavalo",
    "bispo",
    "peão",
    "paard",
    "loper",
    "toren",
    "rokade",
    "конь",
    "слон",
    "ладья",
    "ферзь",
    "пешка",
    "король",
    "бьёт",
    "рокировка",
    "Кf3",
    "Фd1",
    "Лd8",
    "Сc4",
    "Крe1",
    "skoczek",
    "goniec",
    "wieża",
    "hetman",
    "jezdec",
    "střelec",
    "věž",
    "dáma",
    "huszár",
    "futó",
    "bástya",
    "vezér",
    "Hxd8",
    "Sf3",
    "Dxh7+",
    "Tad1",
    "Lb5",
    "♘f3",
    "♕",
    "♞",
    "♟e5",
    "♔\u{fe0f}",
    "×",
    "−",
    "–",
    "→",
    "½",
    "\u{200b}",
    "\u{200d}",
    "\u{feff}",
    "\u{202e}",
    "e\u{301}4",
    "\u{1d41e}4",
    "🙂",
    "👨‍👩‍👧",
    "日本",
    "ß",
    "İ",
    "ſ",
    "K",
    "ﬁ",
    "\u{0}",
];

fn rows() -> Vec<String> {
    let table = TABLE
        .lines()
        .filter(|line| !line.starts_with('#') && !line.starts_with("position"))
        .filter_map(|line| line.split('\t').nth(3));
    let talk = TALK
        .lines()
        .filter(|line| !line.starts_with('#'))
        .filter_map(|line| line.split('\t').nth(2));
    table
        .chain(talk)
        .map(|text| text.replace("\\n", "\n"))
        .collect()
}

fn positions() -> Vec<Chess> {
    TABLE
        .lines()
        .filter(|line| line.starts_with("position"))
        .filter_map(|line| line.split('\t').nth(2))
        .filter_map(|fen| parse_fen(fen).ok())
        .map(|read| read.position)
        .collect()
}

/// One input: what it is depends on the generator alone.
fn input(rng: &mut ChaCha8Rng, rows: &[String], start: &Chess) -> String {
    let most = if rng.random_bool(0.2) {
        MOST_CHARACTERS
    } else {
        200
    };
    let length = rng.random_range(1..=most);
    let mut text = String::new();
    let mut count = 0;
    let mut put = |text: &mut String, piece: &str| {
        count += piece.chars().count();
        text.push_str(piece);
        count < length
    };
    match rng.random_range(0..8u8) {
        // A game with side lines that begins where the problem does, with pieces strewn in.
        4.. => {
            let mut stack = vec![start.clone()];
            let strewn = rng.random_range(0.0..0.3);
            loop {
                let depth = stack.len();
                let legal = stack[depth - 1].legal_moves();
                let piece = match rng.random_range(0..20u8) {
                    0 if depth < 8 => {
                        stack.push(stack[rng.random_range(0..depth)].clone());
                        "(".to_owned()
                    }
                    1 if depth > 1 => {
                        stack.pop();
                        ")".to_owned()
                    }
                    _ if rng.random_bool(strewn) || legal.is_empty() => match FRAGMENTS.choose(rng)
                    {
                        Some(piece) => (*piece).to_owned(),
                        None => break,
                    },
                    _ => {
                        let Some(&mv) = legal.choose(rng) else { break };
                        SanPlus::from_move_and_play_unchecked(&mut stack[depth - 1], mv).to_string()
                    }
                };
                if !(put(&mut text, &piece) && put(&mut text, " ")) {
                    break;
                }
            }
        }
        // Pieces at random.
        0 => {
            let gap = ["", " ", "\n"][rng.random_range(0..3usize)];
            while let Some(piece) = FRAGMENTS.choose(rng) {
                if !(put(&mut text, piece) && put(&mut text, gap)) {
                    break;
                }
            }
        }
        // A few pieces over and over.
        1 => {
            let few: Vec<&&str> = (0..rng.random_range(1..6usize))
                .filter_map(|_| FRAGMENTS.choose(rng))
                .collect();
            'all: loop {
                for piece in &few {
                    if !(put(&mut text, piece) && put(&mut text, " ")) {
                        break 'all;
                    }
                }
            }
        }
        // Real replies one after the other.
        2 => {
            while let Some(row) = rows.choose(rng) {
                if !(put(&mut text, row) && put(&mut text, " ")) {
                    break;
                }
            }
        }
        // Any characters.
        _ => {
            let range = [0x80, 0x500, 0x3000, 0x11_0000][rng.random_range(0..4usize)];
            for _ in 0..length {
                text.extend(char::from_u32(rng.random_range(0..range)));
            }
        }
    }
    let mut chars: Vec<char> = text.chars().collect();
    for _ in 0..rng.random_range(0..6u8) {
        if chars.is_empty() {
            break;
        }
        let at = rng.random_range(0..chars.len());
        match rng.random_range(0..4u8) {
            0 => {
                chars.remove(at);
            }
            1 => chars.insert(at, char::from(rng.random_range(33..127u8))),
            2 => chars.swap(0, at),
            _ => {
                let twice: Vec<char> = chars[at..(at + 40).min(chars.len())].to_vec();
                chars.extend(twice);
            }
        }
    }
    chars.truncate(MOST_CHARACTERS);
    chars.into_iter().collect()
}

/// A few random moves from a position, as if they had been played.
fn played(rng: &mut ChaCha8Rng, start: &Chess) -> Vec<Move> {
    let mut position = start.clone();
    let mut moves = Vec::new();
    for _ in 0..2 * rng.random_range(0..3u8) {
        let legal = position.legal_moves();
        let Some(&mv) = legal.choose(rng) else { break };
        position.play_unchecked(mv);
        moves.push(mv);
    }
    moves
}

#[test]
fn no_reply_upsets_the_reader() {
    let set = |name: &str| {
        std::env::var(name)
            .ok()
            .and_then(|value| value.parse::<u64>().ok())
    };
    let inputs = set("SEALED_MOVE_FUZZ_INPUTS").unwrap_or(3_000);
    let first = set("SEALED_MOVE_FUZZ_SEED").unwrap_or(1);
    let (rows, positions) = (rows(), positions());
    assert!(rows.len() > 500 && positions.len() > 10);
    let rooks = parse_fen("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1").expect("a position");
    let budget = Budget::unlimited();
    let task = Stipulation::Mate(2);
    let problem = problem(&rooks.position, task, &Default::default(), &budget).expect("a mate");
    let mut worst = (Duration::ZERO, 0);
    let (mut most_nodes, mut placed) = (0, 0u64);
    for seed in first..first + inputs {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let start = &positions[rng.random_range(0..positions.len())];
        let text = input(&mut rng, &rows, start);
        let language = Language::ALL[rng.random_range(0..Language::ALL.len())];
        let before = played(&mut rng, start);
        let begun = Instant::now();
        let reading = reply::read(start, &before, &text, language).expect("short enough");
        let took = begun.elapsed();
        if took > worst.0 {
            worst = (took, seed);
        }
        let tree = &reading.tree;
        assert!(tree.nodes().len() <= Tree::MOST, "seed {seed}");
        most_nodes = most_nodes.max(tree.nodes().len());
        placed += u64::from(reading.placed > 0);
        for node in tree.nodes() {
            if let (Some(parent), Some(mv)) = (node.parent, node.mv) {
                assert!(tree.node(parent).position.is_legal(mv), "seed {seed}");
            }
        }
        if seed % 64 == 0 {
            let terms = Terms {
                setting: Setting::Talk,
                ..Terms::answer(language)
            };
            let small = Budget::unlimited().nodes(200_000).table_bytes(1 << 20);
            if let Some(said) = judge(&problem, &[], &text, &terms, &small) {
                assert!(!said.message().is_empty(), "seed {seed}");
            }
        }
    }
    println!(
        "{inputs} inputs from seed {first}, {placed} with a move read; most nodes {most_nodes}; slowest {:?}, seed {}",
        worst.0, worst.1
    );
    assert!(placed * 3 > inputs, "too few inputs hold a move: {placed}");
}
