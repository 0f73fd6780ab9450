//! Comments and glyphs of a game stay with their moves: seeded games with words in every place that the
//! PGN standard knows, read here and by python-chess, and read again as python-chess writes them.

use std::fmt::Write;

use rand::{RngExt, SeedableRng, seq::IndexedRandom};
use rand_chacha::ChaCha8Rng;
use sealed_move::chess::read::{Game, GameTree, read_games};
use sealed_move_tests::python_script;
use serde_json::{Value, json};
use shakmaty::{
    CastlingMode, Chess, Color, EnPassantMode, Position, fen::Fen, san::SanPlus, uci::UciMove,
};

const GAMES: u64 = 150;

const STARTS: [&str; 3] = [
    "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
    "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R b KQkq - 0 7",
    "8/4P2k/8/8/8/8/8/K7 w - - 3 41",
];

const WORDS: [&str; 14] = [
    "look",
    "Rd8+",
    "é",
    "♘",
    "(so",
    "[x]",
    "1.",
    "$3",
    "end)",
    "\"why\"",
    "–",
    "…",
    "2.Qh7#",
    "and\nthen",
];

/// A game being written with words and glyphs strewn over it.
struct Writer {
    dice: ChaCha8Rng,
    text: String,
}

impl Writer {
    fn space(&mut self) {
        let space = *[" ", " ", "\n", "  "].choose(&mut self.dice).expect("some");
        self.text.push_str(space);
    }

    fn words(&mut self) {
        let count = self.dice.random_range(1..5);
        let words: Vec<&str> = (0..count)
            .map(|_| *WORDS.choose(&mut self.dice).expect("some"))
            .collect();
        let words = words.join(" ");
        // Comments behind a semicolon are left to the unit tests: python-chess passes over them.
        let _ = write!(self.text, "{{{words}}}");
        self.space();
    }

    fn maybe_words(&mut self) {
        while self.dice.random_bool(0.3) {
            self.words();
        }
    }

    fn line(&mut self, start: &Chess, left: usize, nested: usize) {
        let mut position = start.clone();
        let mut numbered = true;
        for _ in 0..left {
            let moves = position.legal_moves();
            let Some(&main) = moves.choose(&mut self.dice) else {
                return;
            };
            self.one(&position, main, numbered);
            numbered = self.dice.random_bool(0.3);
            for _ in 0..2 {
                let Some(&other) = moves.choose(&mut self.dice) else {
                    continue;
                };
                if nested == 0 || other == main || self.dice.random_bool(0.7) {
                    continue;
                }
                self.text.push('(');
                self.maybe_words();
                let mut after = position.clone();
                self.one(&position, other, true);
                after.play_unchecked(other);
                let more = self.dice.random_range(0..3);
                self.line(&after, more, nested - 1);
                self.text.push(')');
                self.space();
                self.maybe_words();
                numbered = true;
                // The same move twice would be one line to one reader and two to the other.
                break;
            }
            position.play_unchecked(main);
        }
    }

    /// A move with its number, glyphs and words.
    fn one(&mut self, position: &Chess, mv: shakmaty::Move, numbered: bool) {
        if position.turn() == Color::White || numbered {
            let dots = if position.turn() == Color::White {
                "."
            } else {
                "..."
            };
            let _ = write!(self.text, "{}{dots} ", position.fullmoves());
        }
        let san = SanPlus::from_move(position.clone(), mv);
        let sign = *["", "", "", "!", "?!", "??"]
            .choose(&mut self.dice)
            .expect("some");
        let _ = write!(self.text, "{san}{sign}");
        self.space();
        if self.dice.random_bool(0.2) {
            let glyph = self.dice.random_range(7..140);
            let _ = write!(self.text, "${glyph} ");
        }
        self.maybe_words();
    }
}

fn game(seed: u64) -> String {
    let mut writer = Writer {
        dice: ChaCha8Rng::seed_from_u64(seed),
        text: String::new(),
    };
    let start = STARTS[usize::try_from(seed).expect("small") % STARTS.len()];
    let position: Chess = start
        .parse::<Fen>()
        .expect("a FEN")
        .into_position(CastlingMode::Standard)
        .expect("legal");
    let _ = write!(
        writer.text,
        "[Event \"e\"]\n[SetUp \"1\"]\n[FEN \"{start}\"]\n\n"
    );
    writer.maybe_words();
    let long = writer.dice.random_range(1..9);
    writer.line(&position, long, 2);
    writer.text.push_str("*\n");
    assert_eq!(
        Fen::from_position(&position, EnPassantMode::Legal).to_string(),
        start
    );
    writer.text
}

/// Every move with its words and glyphs, as the script writes them.
fn moves(game: &Game) -> Value {
    let squeezed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut out = vec![json!([[], "", squeezed(&game.comments.join(" ")), []])];
    fn walk(tree: &GameTree, path: &[String], out: &mut Vec<Value>) {
        for node in &tree.nodes {
            let uci = UciMove::from_move(node.mv, CastlingMode::Standard).to_string();
            let path = [path, &[uci]].concat();
            let mut glyphs = node.nags.clone();
            glyphs.sort_unstable();
            out.push(json!([
                path,
                node.before.clone().unwrap_or_default(),
                node.comment.clone().unwrap_or_default(),
                glyphs
            ]));
            walk(&node.next, &path, out);
        }
    }
    walk(&game.tree, &[], &mut out);
    Value::Array(out)
}

fn read(text: &str) -> Value {
    let mut games = read_games("g.pgn", text.as_bytes());
    assert_eq!(games.len(), 1, "{text}");
    moves(
        &games
            .remove(0)
            .unwrap_or_else(|error| panic!("{error}\n{text}")),
    )
}

#[test]
fn comments_and_glyphs_are_those_that_python_chess_reads() {
    let games: Vec<String> = (0..GAMES).map(game).collect();
    let lines: Vec<String> = games
        .iter()
        .map(|game| serde_json::to_string(game).expect("a text"))
        .collect();
    let answers = python_script("comments.py", &[], &(lines.join("\n") + "\n"));
    let (mut words, mut before) = (0, 0);
    for (seed, (game, answer)) in games.iter().zip(answers.lines()).enumerate() {
        let answer: Value = serde_json::from_str(answer).expect("an answer");
        let own = read(game);
        assert_eq!(own, answer["moves"], "seed {seed}\n{game}");
        let written = answer["pgn"].as_str().expect("a game");
        assert_eq!(read(written), own, "seed {seed}, written again\n{written}");
        for entry in own.as_array().expect("a list") {
            words += usize::from(entry[2] != "");
            before += usize::from(entry[1] != "");
        }
    }
    assert_eq!(answers.lines().count(), games.len());
    assert!(words > 300 && before > 20, "{words} {before}");
}
