//! From characters to tokens: moves, numbers, brackets, signs and words.
//!
//! Linear in the text: each token looks a bounded number of characters ahead.

use shakmaty::File;

use super::letters;
use super::notation::WrittenMove;
use super::words::{self, Word};
use crate::Language;

/// What a token is.
#[derive(Clone, Debug)]
pub(super) enum Kind {
    /// A written move.
    Move(WrittenMove),
    /// A move number, with one dot or none, or with dots for Black's move.
    Number {
        number: u32,
        black: bool,
        dotted: bool,
    },
    /// Dots standing alone: it is Black's move.
    Dots,
    /// `(` or `[`.
    Open,
    /// `)` or `]`.
    Close,
    /// End of a line.
    Line,
    /// `;`
    Semi,
    /// `/`
    Slash,
    /// `,`
    Comma,
    /// `?` standing alone or ending a word.
    Question,
    /// `+` standing alone.
    Check,
    /// `#` standing alone.
    Mate,
    /// A word and its meaning.
    Word(Word),
    /// A letter standing alone, with its meaning as a word.
    Letter(char, Word),
    /// Two neighbouring files, a pawn's capture or a word: `ed`.
    Files(File, File, Word),
    /// Letters and digits that look like a move and are none.
    Garbled,
}

/// A token and where it stands, in characters.
#[derive(Clone, Debug)]
pub(super) struct Token {
    pub kind: Kind,
    pub start: usize,
    pub end: usize,
    /// Whether a full stop comes right after it.
    pub stop: bool,
}

/// The text with look-alikes made one: dashes, crosses, quotes, spaces, chat marks.
pub(super) fn plain(text: &str) -> Vec<char> {
    text.chars()
        .filter(|c| {
            !matches!(
                c,
                '\u{200b}'..='\u{200f}' | '\u{fe0e}' | '\u{fe0f}' | '\u{feff}'
            )
        })
        .map(|c| match c {
            '–' | '—' | '−' | '‐' | '‑' | '‒' => '-',
            '×' | '✕' | '✖' | '⨯' | '╳' => 'x',
            '’' | '‘' | '´' => '\'',
            '*' | '_' | '`' | '|' | '"' | '“' | '”' | '„' | '«' | '»' => ' ',
            '\r' => '\n',
            '0'..='9' => c,
            c if c != '\n' && (c.is_whitespace() || c.is_control()) => ' ',
            c => c,
        })
        .collect()
}

/// Cuts the text into tokens.
pub(super) fn scan(text: &[char], own: Language) -> Vec<Token> {
    let last_brace = text.iter().rposition(|&c| c == '}');
    let scanner = |first| Scanner {
        text,
        first,
        own,
        last_brace,
    };
    let tokens = scanner(own).run();
    let initials: Vec<char> = tokens
        .iter()
        .filter_map(|token| match &token.kind {
            Kind::Move(written) => written.initial,
            _ => None,
        })
        .collect();
    let first = letters::guess(own, &initials);
    if first == own {
        return tokens;
    }
    scanner(first).run()
}

pub(super) struct Scanner<'a> {
    pub text: &'a [char],
    /// The language the text seems to be written in.
    pub first: Language,
    /// The group's.
    pub own: Language,
    /// Where the last `}` stands; looked up once so that reading stays linear.
    last_brace: Option<usize>,
}

impl Scanner<'_> {
    pub fn at(&self, i: usize) -> char {
        self.text.get(i).copied().unwrap_or('\0')
    }

    fn run(&self) -> Vec<Token> {
        let mut tokens = Vec::new();
        let mut depth = 0usize;
        let mut i = 0;
        while i < self.text.len() {
            let (kind, end) = self.token(i, depth);
            match kind {
                Some(Kind::Open) => depth += 1,
                Some(Kind::Close) => depth = depth.saturating_sub(1),
                _ => {}
            }
            if let Some(kind) = kind {
                tokens.push(Token {
                    kind,
                    start: i,
                    end,
                    stop: self.at(end) == '.' && matches!(self.at(end + 1), ' ' | '\n'),
                });
            }
            i = end.max(i + 1);
        }
        tokens
    }

    /// The token that begins at `i`, if one does, and where to go on.
    fn token(&self, i: usize, depth: usize) -> (Option<Kind>, usize) {
        let c = self.at(i);
        if let Some(end) = self.case_ending(i) {
            return (None, end);
        }
        match c {
            '\n' => return (Some(Kind::Line), i + 1),
            ' ' => return (None, i + 1),
            '{' => return (None, self.comment(i)),
            '<' => return (Some(Kind::Word(Word::Filler)), self.mention(i)),
            '(' | '[' => return (Some(Kind::Open), i + 1),
            ')' | ']' => return (Some(Kind::Close), i + 1),
            ';' => return (Some(Kind::Semi), i + 1),
            '/' => return (Some(Kind::Slash), i + 1),
            ',' => return (Some(Kind::Comma), i + 1),
            '~' => return (Some(Kind::Word(Word::Any)), i + 1),
            '?' => return (Some(Kind::Question), i + 1),
            '+' | '†' => {
                let end = self.run_of(i, |c| matches!(c, '+' | '-' | '=' | '†' | '/'));
                let kind = (end - i == 1 || self.at(i + 1) == '+').then_some(Kind::Check);
                return (kind, end);
            }
            '#' | '‡' | '≠' => return (Some(Kind::Mate), i + 1),
            '$' => return (None, self.run_of(i + 1, |c| c.is_ascii_digit())),
            '…' => return (Some(Kind::Dots), i + 1),
            '.' => {
                let end = self.run_of(i, |c| c == '.');
                return ((end - i > 1).then_some(Kind::Dots), end);
            }
            _ => {}
        }
        if let Some(found) = self.castling(i) {
            return found;
        }
        if c.is_ascii_digit() {
            return self.digits(i, depth);
        }
        if let Some((written, end)) = self.written(i) {
            return (Some(Kind::Move(written)), end);
        }
        if c.is_alphanumeric() {
            return self.word(i);
        }
        (None, i + 1)
    }

    /// The place after a comment in braces; one that is never closed is no comment.
    fn comment(&self, i: usize) -> usize {
        if self.last_brace.is_none_or(|last| i > last) {
            return i + 1;
        }
        self.run_of(i, |c| c != '}') + 1
    }

    /// The place after a chat's mark for a member, a channel or a picture: `<@1234>`.
    fn mention(&self, i: usize) -> usize {
        let upto = (i + 60).min(self.text.len());
        self.text[i..upto]
            .iter()
            .position(|&c| c == '>')
            .map_or(i + 1, |at| i + at + 1)
    }

    pub fn run_of(&self, i: usize, is: impl Fn(char) -> bool) -> usize {
        let mut end = i;
        while end < self.text.len() && is(self.at(end)) {
            end += 1;
        }
        end
    }

    /// A number: of a move, or of something else.
    fn digits(&self, i: usize, depth: usize) -> (Option<Kind>, usize) {
        let end = self.run_of(i, |c| c.is_ascii_digit());
        let after = self.at(end);
        let other = |end| (Some(Kind::Word(Word::Other)), end);
        let value: String = self.text[i..end].iter().collect();
        let Some(number) = value.parse::<u32>().ok().filter(|n| (1..=999).contains(n)) else {
            // A result such as 0-1 says nothing of a move; a bare 0 is some other number.
            let result = after == '-' && self.at(end + 1).is_ascii_digit();
            return if result { (None, end + 2) } else { other(end) };
        };
        match after {
            '-' if self.at(end + 1).is_ascii_digit() => {
                (None, self.run_of(end + 1, |c| c.is_ascii_digit()))
            }
            '/' | ':' if self.at(end + 1).is_ascii_digit() => {
                other(self.run_of(end, |c| c.is_ascii_digit() || matches!(c, '/' | ':' | '-')))
            }
            '.' if self.at(end + 1).is_ascii_digit() && self.castling(end + 1).is_none() => {
                other(self.run_of(end, |c| c.is_ascii_digit() || c == '.'))
            }
            '.' | '…' => {
                let mut dots = self.run_of(end, |c| matches!(c, '.' | '…'));
                let mut black = dots - end > 1 || after == '…';
                // "31. ... Rc2"
                let gap = self.run_of(dots, |c| c == ' ');
                if !black && matches!(self.at(gap), '.' | '…') {
                    let more = self.run_of(gap, |c| matches!(c, '.' | '…'));
                    if more - gap > 1 || self.at(gap) == '…' {
                        (black, dots) = (true, more);
                    }
                }
                (
                    Some(Kind::Number {
                        number,
                        black,
                        dotted: true,
                    }),
                    dots,
                )
            }
            ')' if depth == 0 => (
                Some(Kind::Number {
                    number,
                    black: false,
                    dotted: true,
                }),
                end + 1,
            ),
            c if c.is_alphabetic() && self.written(end).is_none() => self.word(i),
            _ => (
                Some(Kind::Number {
                    number,
                    black: false,
                    dotted: false,
                }),
                end,
            ),
        }
    }

    /// How many letters of the word from `i` to `end` name a piece, where a square or a capture follows.
    fn man_before_square(&self, i: usize, end: usize) -> Option<usize> {
        let length = end.checked_sub(i + 2)?;
        let takes = usize::from(length > 3 && self.at(i + length - 1).eq_ignore_ascii_case(&'x'));
        let length = length - takes;
        let word: String = self.text[i..i + length].iter().collect();
        let man = matches!(words::meaning(&word.to_lowercase()), Word::Man(_));
        let follows = self.square(i + length + takes).is_some();
        (man && word.is_ascii() && follows).then_some(length)
    }

    /// The end of an ending that a language hangs on a square: "d8'i", "h7'ye", "d8-at".
    fn case_ending(&self, i: usize) -> Option<usize> {
        let sign = match self.own {
            Language::Turkish => '\'',
            Language::Hungarian => '-',
            _ => return None,
        };
        let after = i.checked_sub(1).map(|before| self.at(before))?;
        if self.at(i) != sign || !(after.is_ascii_digit() || matches!(after, '+' | '#')) {
            return None;
        }
        let end = self.run_of(i + 1, char::is_alphabetic);
        let whole = !self.at(end).is_alphanumeric();
        (whole && (1..=4).contains(&(end - i - 1))).then_some(end)
    }

    /// The neighbouring files that a word of two small letters names.
    fn files(&self, i: usize, end: usize) -> Option<(File, File)> {
        if end != i + 2 || !self.at(i).is_ascii_lowercase() {
            return None;
        }
        let from = letters::file(self.at(i))?;
        let to = letters::file(self.at(i + 1))?;
        (from.distance(to) == 1).then_some((from, to))
    }

    fn word(&self, i: usize) -> (Option<Kind>, usize) {
        let end = self.run_of(i, |c| c.is_alphanumeric() || c == '\'');
        let text: String = self.text[i..end].iter().collect::<String>().to_lowercase();
        if text.starts_with("http") {
            let end = self.run_of(i, |c| c != ' ' && c != '\n');
            return (Some(Kind::Word(Word::Other)), end);
        }
        if text == "e" && self.at(end) == '.' && self.at(end + 1).eq_ignore_ascii_case(&'p') {
            let end = self.run_of(end + 2, |c| c == '.');
            return (Some(Kind::Word(Word::EnPassant)), end);
        }
        let digits = text.chars().filter(char::is_ascii_digit).count();
        if digits > 0 && digits < text.chars().count() && end - i <= 12 {
            let ordinal = ["st", "nd", "rd", "th", "am", "pm"]
                .iter()
                .any(|ending| text.ends_with(ending));
            // "rookxd8"
            if let Some(length) = self.man_before_square(i, end) {
                return (
                    Some(Kind::Word(words::meaning(&text[..length]))),
                    i + length,
                );
            }
            let kind = if ordinal {
                Kind::Word(Word::Other)
            } else {
                Kind::Garbled
            };
            return (Some(kind), end);
        }
        let meaning = words::meaning_in(self.own, &text).unwrap_or_else(|| words::meaning(&text));
        if let Some((from, to)) = self.files(i, end) {
            return (Some(Kind::Files(from, to, meaning)), end);
        }
        if end == i + 1 {
            return (Some(Kind::Letter(self.at(i), meaning)), end);
        }
        (Some(Kind::Word(meaning)), end)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kinds(text: &str) -> String {
        scan(&plain(text), Language::English)
            .iter()
            .map(|token| match &token.kind {
                Kind::Move(_) => "m",
                Kind::Number { black: true, .. } => "b",
                Kind::Number { dotted: true, .. } => "n",
                Kind::Number { .. } => "u",
                Kind::Dots => "d",
                Kind::Open => "(",
                Kind::Close => ")",
                Kind::Line => "/n",
                Kind::Semi => ";",
                Kind::Slash => "/",
                Kind::Comma => ",",
                Kind::Question => "?",
                Kind::Check => "+",
                Kind::Mate => "#",
                Kind::Word(_) | Kind::Letter(..) | Kind::Files(..) => "w",
                Kind::Garbled => "g",
            })
            .collect()
    }

    #[test]
    fn cuts_moves_numbers_and_words() {
        for (text, expected) in [
            ("1.Nxd5+ cxd5 2.Qb3#", "nmmnm"),
            ("1...Rxc2", "bm"),
            ("31. ... Rc2", "bm"),
            ("31... Rc2!?", "bm"),
            ("1 e4 e5", "umm"),
            ("1e4", "um"),
            ("1)Nd5", "nm"),
            ("(1) Nd5", "(u)m"),
            ("O-O-O", "m"),
            ("1.0-0", "nm"),
            ("ooo", "w"),
            ("0-1", ""),
            ("1/2-1/2", "w"),
            ("see you at 18:30", "wwww"),
            ("1st 2nd", "ww"),
            ("N x d5", "m"),
            ("e8 = Q", "m"),
            ("e8(Q)+", "m"),
            ("N(b1)-d2", "m"),
            ("Nd55", "g"),
            ("QxR", "m"),
            ("exd", "m"),
            ("Nd5ch", "m"),
            ("exd6 e.p.", "mw"),
            ("exd6e.p.", "m"),
            ("♘️d5", "m"),
            ("||**Nd5**||", "m"),
            ("Nd5?", "m?"),
            ("Nd5?!", "m"),
            ("Nd5 +", "m+"),
            ("Nd5;Qb3/Qc4,x", "m;m/m,w"),
            ("https://example.org/e4 e4", "wm"),
            ("<@1234> Nd5", "wm"),
            ("{a comment with Nd5} Qb3", "m"),
        ] {
            assert_eq!(kinds(text), expected, "{text}");
        }
    }
}
