//! Writing games as PGN, in the form of the standard's export (Edwards, 1994, section 3.2) as far as a tree
//! with comments has one: what is written here is read back the same.

use shakmaty::{Chess, Color, EnPassantMode, Position, fen::Fen, san::SanPlus};

use crate::read::{GameNode, GameTree};

/// The widest line of moves, in characters (PGN standard, section 4.3).
const WIDEST: usize = 79;

/// A game in PGN: tags in their order, comments before the first move, the tree, and `*` for a result that is
/// not of interest. `FEN` and `SetUp` are written from `start`, whatever `tags` says; a game from the initial
/// position has neither.
pub fn game(
    tags: &[(String, String)],
    start: &Chess,
    comments: &[String],
    tree: &GameTree,
) -> String {
    let mut out = String::new();
    let place = |name: &str| name.eq_ignore_ascii_case("FEN") || name.eq_ignore_ascii_case("SetUp");
    for (name, value) in tags.iter().filter(|(name, _)| !place(name)) {
        tag(&mut out, name, value);
    }
    if *start != Chess::default() {
        let fen = Fen::from_position(start, EnPassantMode::Legal).to_string();
        tag(&mut out, "SetUp", "1");
        tag(&mut out, "FEN", &fen);
    }
    if !out.is_empty() {
        out.push('\n');
    }
    let mut words = Words::behind(out);
    for text in comments {
        words.comment(text);
    }
    line(&mut words, start, tree);
    words.end()
}

pub(crate) fn tag(out: &mut String, name: &str, value: &str) {
    let value = value.replace('\\', r"\\").replace('"', r#"\""#);
    out.push_str(&format!("[{name} \"{}\"]\n", value.replace('\n', " ")));
}

/// The main line of a tree with what branches off behind each move.
fn line(words: &mut Words, start: &Chess, tree: &GameTree) {
    let (mut position, mut tree) = (start.clone(), tree);
    let mut numbered = false;
    while let Some((main, others)) = tree.nodes.split_first() {
        numbered = one_move(words, &position, main, numbered) && others.is_empty();
        for other in others {
            words.open();
            one_move(words, &position, other, false);
            let mut after = position.clone();
            after.play_unchecked(other.mv);
            line(words, &after, &other.next);
            words.close();
        }
        position.play_unchecked(main.mv);
        tree = &main.next;
    }
}

/// A move with its signs and words; whether the next one may go without its number. `numbered` says so of
/// this one, which needs it only where White moves.
fn one_move(words: &mut Words, before: &Chess, node: &GameNode, numbered: bool) -> bool {
    if let Some(text) = &node.before {
        words.comment(text);
    }
    let san = SanPlus::from_move(before.clone(), node.mv);
    let number = before.fullmoves();
    match before.turn() {
        Color::White => words.put(&format!("{number}.")),
        Color::Black if !numbered || node.before.is_some() => words.put(&format!("{number}...")),
        Color::Black => {}
    }
    words.put(&san.to_string());
    for nag in &node.nags {
        words.put(&format!("${nag}"));
    }
    match &node.comment {
        Some(text) => {
            words.comment(text);
            false
        }
        None => true,
    }
}

/// Words one after the other, in lines that are not too wide.
pub(crate) struct Words {
    out: String,
    /// Characters in the line so far.
    line: usize,
    /// The next word stands right behind the last one.
    joined: bool,
}

impl Words {
    /// Begins behind what is written already.
    pub(crate) fn behind(out: String) -> Self {
        Self {
            line: 0,
            out,
            joined: true,
        }
    }

    /// The game, with `*` for its result.
    pub(crate) fn end(mut self) -> String {
        self.put("*");
        self.out.push('\n');
        self.out
    }

    pub(crate) fn put(&mut self, word: &str) {
        let long = word.chars().count();
        if !self.joined {
            let wide = self.line + 1 + long > WIDEST;
            self.out.push(if wide { '\n' } else { ' ' });
            self.line = if wide { 0 } else { self.line + 1 };
        }
        self.joined = false;
        self.out.push_str(word);
        self.line += long;
    }

    /// A comment, word by word. A brace would end it, and is written as a bracket; a percent sign at the
    /// beginning of a line would hide the line, and never stands there.
    pub(crate) fn comment(&mut self, text: &str) {
        let text = text.replace('{', "(").replace('}', ")");
        self.put("{");
        self.joined = true;
        for word in text.split_whitespace() {
            if word.starts_with(['%', '[']) && !self.joined {
                self.out.push(' ');
                self.line += 1;
                self.joined = true;
            }
            self.put(word);
        }
        self.joined = true;
        self.put("}");
    }

    pub(crate) fn open(&mut self) {
        self.put("(");
        self.joined = true;
    }

    pub(crate) fn close(&mut self) {
        self.joined = true;
        self.put(")");
    }
}
