//! Where the games of a PGN file begin and end, and on which line each move stands.
//!
//! The PGN reader proper works on a stream, passes over what it cannot read and knows no lines. This
//! walk over the text comes before it: it splits the file into games, finds what cannot be read, and
//! hands on each game in a plain form (one space between tokens) together with the line of each move.

use shakmaty::san::{San, SanPlus};

use super::{excerpt, fault::Fault, promotion};

/// One game of a file.
#[derive(Debug, Default)]
pub(super) struct RawGame {
    /// Line of its first tag or move.
    pub(super) line: usize,
    /// Line on which it ends.
    pub(super) last_line: usize,
    /// All of it, as it stands in the file.
    pub(super) text: String,
    /// Tags with their lines, in order.
    pub(super) tags: Vec<(String, String, usize)>,
    /// Moves, glyphs, comments and brackets with one space between; comments in braces.
    pub(super) movetext: String,
    /// The line of each move of `movetext`, in order.
    pub(super) lines: Vec<usize>,
    /// The first thing wrong, with its line.
    pub(super) problem: Option<(usize, Fault)>,
}

/// Signs that annotators write after a move, and the glyph of the PGN standard (section 10) that
/// says the same. The signs are those of Chess Informant.
const SIGNS: [(&str, u8); 14] = [
    ("+-", 18),
    ("-+", 19),
    ("=", 10),
    ("∞", 13),
    ("+=", 14),
    ("⩲", 14),
    ("=+", 15),
    ("⩱", 15),
    ("±", 16),
    ("+/-", 16),
    ("∓", 17),
    ("-/+", 17),
    ("□", 7),
    ("N", 146),
];

/// Splits a file into its games.
pub(super) fn split(text: &str) -> Vec<RawGame> {
    let mut walk = Walk {
        whole: text,
        rest: text,
        line: 1,
        at_line_start: true,
        games: Vec::new(),
        game: RawGame::default(),
        from: 0,
        open: Vec::new(),
        ended: false,
        ended_on: 0,
        tagged: false,
    };
    walk.run();
    walk.games
}

struct Walk<'a> {
    whole: &'a str,
    rest: &'a str,
    line: usize,
    at_line_start: bool,
    games: Vec<RawGame>,
    game: RawGame,
    /// Where the game begins, in bytes.
    from: usize,
    /// Lines of the brackets still open.
    open: Vec<usize>,
    /// The game's result was read; what follows, but for words on it, belongs to the next.
    ended: bool,
    /// The line of the result.
    ended_on: usize,
    /// A tag of the game was met, good or bad.
    tagged: bool,
}

impl<'a> Walk<'a> {
    fn run(&mut self) {
        while let Some(next) = self.rest.chars().next() {
            match next {
                '%' if self.at_line_start => self.skip_line(),
                c if c.is_whitespace() => {
                    self.take(c.len_utf8());
                }
                '[' if is_tag(self.rest)
                    || (self.at_line_start && self.game.movetext.is_empty()) =>
                {
                    self.tag()
                }
                '{' => self.comment(),
                ';' => self.line_comment(),
                '(' => {
                    self.begin();
                    self.open.push(self.line);
                    self.game.movetext.push_str("( ");
                    self.take(1);
                }
                ')' => {
                    self.begin();
                    if self.open.pop().is_none() {
                        self.complain(Fault::BracketNotOpened);
                    } else {
                        self.game.movetext.push_str(") ");
                    }
                    self.take(1);
                }
                '!' | '?' => {
                    let end = self.run_of(|c| matches!(c, '!' | '?'));
                    let signs = self.take(end);
                    self.glyphs(signs);
                }
                '$' => {
                    self.take(1);
                    let end = self.run_of(|c| c.is_ascii_digit());
                    let number = self.take(end);
                    match number.parse::<u8>() {
                        Ok(nag) => self.game.movetext.push_str(&format!("${nag} ")),
                        Err(_) => {
                            let written = format!("${}", excerpt(number)).into();
                            self.complain(Fault::GlyphUnknown { written });
                        }
                    }
                }
                _ => self.word(),
            }
        }
        self.finish();
    }

    /// Takes `bytes` off the text, counting lines.
    fn take(&mut self, bytes: usize) -> &'a str {
        let (taken, rest) = self.rest.split_at(bytes);
        self.rest = rest;
        self.line += taken.matches('\n').count();
        self.at_line_start = if taken.is_empty() {
            self.at_line_start
        } else {
            taken.ends_with('\n')
        };
        taken
    }

    fn run_of(&self, wanted: impl Fn(char) -> bool) -> usize {
        self.rest.find(|c| !wanted(c)).unwrap_or(self.rest.len())
    }

    fn skip_line(&mut self) {
        let end = self.rest.find('\n').unwrap_or(self.rest.len());
        self.take(end);
    }

    fn complain(&mut self, problem: Fault) {
        if self.game.problem.is_none() {
            self.game.problem = Some((self.line, problem));
        }
    }

    /// Something of a game comes: of the next one when the last has ended.
    fn begin(&mut self) {
        if self.ended {
            self.finish();
        }
        if self.game.line == 0 {
            self.game.line = self.line;
            self.from = self.whole.len() - self.rest.len();
        }
        self.game.last_line = self.line;
    }

    /// Whether nothing but words was met since the last game: they are the file's own, not a game's.
    fn only_words(&self) -> bool {
        self.game.tags.is_empty() && self.game.lines.is_empty() && self.game.problem.is_none()
    }

    fn finish(&mut self) {
        if let Some(line) = self.open.first().copied() {
            self.open.clear();
            if self.game.problem.is_none() {
                self.game.problem = Some((line, Fault::BracketNotClosed));
            }
        }
        self.ended = false;
        self.tagged = false;
        let mut game = std::mem::take(&mut self.game);
        if game.line != 0 {
            let end = self.whole.len() - self.rest.len();
            game.text = self.whole[self.from..end].trim_end().to_owned();
            self.games.push(game);
        }
    }

    fn tag(&mut self) {
        // Tags after moves belong to the next game, whether or not the last had a result; so do those
        // after words that are none, such as a heading of the file.
        let words = !self.tagged && self.game.problem.is_some();
        if self.only_words() && self.open.is_empty() && !self.ended {
            self.game = RawGame::default();
        } else if words || !self.game.movetext.is_empty() {
            self.ended = true;
        }
        self.begin();
        self.tagged = true;
        let end = self.rest.find('\n').unwrap_or(self.rest.len());
        let line = &self.rest[..end];
        match read_tag(line) {
            Ok((name, value, used)) => {
                self.game.tags.push((name, value, self.line));
                self.take(used);
            }
            Err(problem) => {
                self.complain(problem);
                self.take(end);
            }
        }
    }

    fn comment(&mut self) {
        // Words behind the result are on the game that it ends, unless moves or another result follow them.
        if !self.ended || (self.line > self.ended_on && self.opens_a_game()) {
            self.begin();
        }
        // A comment that runs into the tags of the next game was never closed.
        let close = self.rest.find('}');
        let tags = next_tags(&self.rest[..close.unwrap_or(self.rest.len())]);
        if let (Some(close), None) = (close, tags) {
            let text = self.take(close + 1);
            self.game.movetext.push_str(text);
            self.game.movetext.push(' ');
            self.game.last_line = self.line;
        } else {
            self.complain(Fault::CommentNotClosed);
            self.take(tags.unwrap_or(self.rest.len()));
        }
    }

    /// Whether the comments here stand before moves or a result, and not before tags or the end.
    fn opens_a_game(&self) -> bool {
        let mut rest = self.rest;
        while let Some(after) = rest.strip_prefix('{').and_then(|text| text.split_once('}')) {
            rest = after.1.trim_start();
        }
        !rest.is_empty() && !is_tag(rest)
    }

    fn line_comment(&mut self) {
        if self.ended && self.line != self.ended_on {
            // A line of its own between two games is a remark of the file.
            return self.skip_line();
        }
        if !self.ended {
            self.begin();
        }
        self.take(1);
        let end = self.rest.find('\n').unwrap_or(self.rest.len());
        let text = self.take(end);
        let text = text.trim().replace('}', ")");
        self.game.movetext.push_str(&format!("{{{text}}} "));
    }

    fn glyphs(&mut self, signs: &str) {
        match signs {
            "!" | "?" | "!!" | "??" | "!?" | "?!" => {
                self.game.movetext.push_str(signs);
                self.game.movetext.push(' ');
            }
            // "!!!" and the like are the annotator's emphasis.
            _ => {
                let most: String = signs.chars().take(2).collect();
                self.glyphs(&most);
            }
        }
    }

    /// A move number, a move, a sign or a result.
    fn word(&mut self) {
        let end = self.run_of(|c| {
            !c.is_whitespace() && !matches!(c, '{' | '}' | '(' | ')' | ';' | '$' | '!' | '?')
        });
        // A lone closing brace ends no comment.
        if end == 0 {
            self.begin();
            self.complain(Fault::BraceNotOpened);
            self.take(1);
            return;
        }
        let whole = &self.rest[..end];
        if is_result(whole) {
            self.begin();
            if self.open.is_empty() {
                self.ended = true;
                self.ended_on = self.line;
            }
            self.take(end);
            return;
        }
        self.begin();
        let word = without_number(whole).trim_end_matches(['.', ',']);
        if let Some(more) = promotion::in_brackets(word, &self.rest[end..]) {
            let man: String = self.rest[end..end + more].split_whitespace().collect();
            self.token(&format!("{word}{man}"));
            self.take(end + more);
            return;
        }
        if !word.is_empty() && !matches!(word, "e.p" | "ep") {
            self.token(word);
        }
        self.take(end);
    }

    fn token(&mut self, word: &str) {
        let plain = unfigured(word);
        if let Some((_, nag)) = SIGNS.iter().find(|(sign, _)| *sign == plain) {
            self.game.movetext.push_str(&format!("${nag} "));
            return;
        }
        if let Some(san) = san(&plain) {
            self.san(&san);
            return;
        }
        // A sign may hang on its move: "Qd5+-".
        for (sign, nag) in SIGNS {
            if let Some(san) = plain.strip_suffix(sign).and_then(san) {
                self.san(&san);
                self.game.movetext.push_str(&format!("${nag} "));
                return;
            }
        }
        let written = excerpt(word).into();
        self.complain(Fault::MoveUnread { written });
    }

    fn san(&mut self, san: &SanPlus) {
        self.game.movetext.push_str(&format!("{san} "));
        self.game.lines.push(self.line);
    }
}

/// A move as SAN; castling may be written with zeros.
fn san(word: &str) -> Option<SanPlus> {
    let word = if word.starts_with("0-0") {
        word.replace('0', "O")
    } else {
        word.to_owned()
    };
    SanPlus::from_ascii(word.as_bytes())
        .or_else(|error| match promotion::with_sign(&word) {
            Some(signed) => SanPlus::from_ascii(signed.as_bytes()),
            None => Err(error),
        })
        .ok()
        .filter(|san| !matches!(san.san, San::Put { .. }))
}

/// Letters for figurines.
fn unfigured(word: &str) -> String {
    word.chars()
        .filter_map(|c| match c {
            '♔' | '♚' => Some('K'),
            '♕' | '♛' => Some('Q'),
            '♖' | '♜' => Some('R'),
            '♗' | '♝' => Some('B'),
            '♘' | '♞' => Some('N'),
            '♙' | '♟' | '\u{fe0e}' | '\u{fe0f}' => None,
            _ => Some(c),
        })
        .collect()
}

/// What is left of a word when the move number before it is taken off: "12...Nf6" is "Nf6".
fn without_number(word: &str) -> &str {
    let digits = word.trim_start_matches(|c: char| c.is_ascii_digit());
    let number = word.len() - digits.len();
    let dots = digits.trim_start_matches(['.', '…']);
    if dots.len() < digits.len() || (number > 0 && digits.is_empty()) {
        dots
    } else {
        word
    }
}

fn is_result(word: &str) -> bool {
    matches!(
        word,
        "*" | "1-0" | "0-1" | "1/2-1/2" | "1/2" | "½-½" | "1–0" | "0–1" | "½–½"
    )
}

/// Whether a text begins with a tag pair, closely enough to take it for one.
fn is_tag(text: &str) -> bool {
    let Some(inner) = text.strip_prefix('[') else {
        return false;
    };
    let inner = inner.trim_start_matches([' ', '\t']);
    let name = inner.trim_start_matches(|c: char| c.is_ascii_alphanumeric() || c == '_');
    name.len() < inner.len() && name.trim_start_matches([' ', '\t']).starts_with('"')
}

/// Where, in a text, the first line begins that is a tag pair.
fn next_tags(text: &str) -> Option<usize> {
    let mut from = 0;
    while let Some(at) = text[from..].find("\n[") {
        let start = from + at + 1;
        if is_tag(&text[start..]) {
            return Some(start);
        }
        from = start;
    }
    None
}

/// Reads one tag pair at the beginning of a line: name, value, and how many bytes it took.
fn read_tag(line: &str) -> Result<(String, String, usize), Fault> {
    let wrong = || Fault::TagUnread {
        written: excerpt(line).into(),
    };
    if !is_tag(line) {
        return Err(wrong());
    }
    let quote = line.find('"').ok_or_else(wrong)?;
    let name = line[1..quote].trim().to_owned();
    let mut value = String::new();
    let mut escaped = false;
    for (at, c) in line[quote + 1..].char_indices() {
        match c {
            '\\' if !escaped => escaped = true,
            '"' if !escaped => {
                let after = &line[quote + 1 + at + 1..];
                let spaces = after.len() - after.trim_start_matches([' ', '\t']).len();
                if !after[spaces..].starts_with(']') {
                    return Err(wrong());
                }
                return Ok((name, value, quote + 1 + at + 1 + spaces + 1));
            }
            _ => {
                if escaped && c != '"' && c != '\\' {
                    value.push('\\');
                }
                value.push(c);
                escaped = false;
            }
        }
    }
    Err(wrong())
}
