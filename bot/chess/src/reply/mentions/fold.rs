//! A text cut into words that no longer depend on how its characters were written: full-width, bold,
//! circled, accented and capital letters become plain ones, invisible characters go.
//!
//! A letter of another script that looks like a Latin one has two readings, as itself and as what it
//! looks like, and one in capitals within a word may begin another; [`views`] gives the text in each.

use shakmaty::Role;
use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};
use unicode_security::confusable_detection::skeleton;

use crate::reply::letters;

/// What a text is made of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Token {
    /// Letters and digits.
    Word(Word),
    /// The figure of a piece.
    Figure(Role),
    /// A sign of check or mate.
    Check,
    /// An arrow.
    Arrow,
}

/// Letters and digits in a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Word {
    /// In lower case, without accents.
    pub text: String,
    /// Whether it begins with a capital letter.
    pub capital: bool,
    /// Whether a letter of it is of another script than Latin.
    pub foreign: bool,
}

/// The readings of a text, each once: as it is written, as it looks, and both parted at capitals.
pub(super) fn views(text: &str) -> Vec<Vec<Token>> {
    let parted = parted_at_capitals(text);
    let mut views = Vec::new();
    for text in [text, &parted] {
        for view in [tokens(text, &as_written), tokens(text, &as_it_looks)] {
            if !views.contains(&view) {
                views.push(view);
            }
        }
    }
    views
}

/// A capital letter behind a small one begins a word: "annaQh7".
fn parted_at_capitals(text: &str) -> String {
    let mut parted = String::with_capacity(text.len());
    let mut small = false;
    for c in text.chars() {
        if small && c.is_uppercase() {
            parted.push(' ');
        }
        small = c.is_lowercase();
        parted.push(c);
    }
    parted
}

/// A word of the vocabulary in the form that the words of a text have.
pub(super) fn word(text: &str) -> String {
    tokens(text, &as_written)
        .into_iter()
        .filter_map(|token| match token {
            Token::Word(word) => Some(word.text),
            _ => None,
        })
        .collect()
}

fn tokens(text: &str, read: &dyn Fn(char) -> String) -> Vec<Token> {
    let mut tokens = Vec::new();
    let mut word: Option<Word> = None;
    for c in text.nfkc() {
        if invisible(c) {
            continue;
        }
        let letters = read(c);
        if letters.is_empty() {
            // A mark over the letter before it.
            if is_combining_mark(c) {
                continue;
            }
            tokens.extend(word.take().map(Token::Word));
            if let Some(role) = letters::figurine(c) {
                tokens.push(Token::Figure(role));
            } else if matches!(c, '+' | '#' | '†' | '‡') {
                tokens.push(Token::Check);
            } else if matches!(c, '←'..='⇿' | '⬀'..='⬑' | '➔'..='➾' | '🔼' | '🔽' | '👆' | '👇' | '👈' | '👉')
            {
                tokens.push(Token::Arrow);
            }
            continue;
        }
        let word = word.get_or_insert_with(|| Word {
            text: String::new(),
            capital: c.is_uppercase(),
            foreign: false,
        });
        word.foreign |= !c.is_ascii() && !latin(c);
        word.text.push_str(&letters);
    }
    tokens.extend(word.map(Token::Word));
    tokens
}

/// A letter or digit in lower case without accents; empty for every other character.
fn as_written(c: char) -> String {
    if let Some(letter) = emblem(c) {
        return letter.to_string();
    }
    if let Some(digit) = digit(c) {
        return digit.to_string();
    }
    match c {
        'ł' | 'Ł' => return "l".into(),
        'ø' | 'Ø' => return "o".into(),
        'đ' | 'Đ' => return "d".into(),
        'ß' | 'ẞ' => return "ss".into(),
        'ı' => return "i".into(),
        'æ' | 'Æ' => return "ae".into(),
        '×' | '✕' | '✖' | '✗' | '⨯' => return "x".into(),
        _ => {}
    }
    if !c.is_alphanumeric() {
        return String::new();
    }
    c.to_lowercase()
        .nfd()
        .filter(|c| !is_combining_mark(*c))
        .collect()
}

/// As [`as_written`], with a letter of another script read as the Latin one it looks like.
fn as_it_looks(c: char) -> String {
    let written = as_written(c);
    if c.is_ascii() || written.is_ascii() {
        return written;
    }
    // Capitals look like other letters than small ones do: В like B, and Н like H.
    let looks: String = skeleton(&c.to_string())
        .chain(skeleton(&written))
        .flat_map(char::to_lowercase)
        .filter(char::is_ascii_alphanumeric)
        .take(1)
        .collect();
    match (looks.is_empty(), c) {
        (false, _) => looks,
        (true, 'в') => "b".into(),
        (true, 'н') => "h".into(),
        (true, _) => written,
    }
}

/// Letters on tiles and flags, which have no plain form of their own.
fn emblem(c: char) -> Option<char> {
    let first = match c {
        '🇦'..='🇿' => '🇦',
        '🅐'..='🅩' => '🅐',
        '🅰'..='🆉' => '🅰',
        _ => return None,
    };
    char::from_u32(u32::from('a') + (u32::from(c) - u32::from(first)))
}

/// The value of a digit of another script. Their zeros are those of Unicode's general category Nd.
fn digit(c: char) -> Option<u32> {
    const ZEROS: [u32; 16] = [
        0x660, 0x6F0, 0x7C0, 0x966, 0x9E6, 0xA66, 0xAE6, 0xB66, 0xBE6, 0xC66, 0xCE6, 0xD66, 0xE50,
        0xED0, 0xF20, 0x1040,
    ];
    let code = u32::from(c);
    ZEROS
        .iter()
        .find(|zero| (**zero..**zero + 10).contains(&code))
        .map(|zero| code - zero)
}

fn latin(c: char) -> bool {
    as_written(c).is_ascii()
}

/// Characters that are not seen and part nothing.
fn invisible(c: char) -> bool {
    matches!(
        c,
        '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}'
            | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{3164}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}'
            | '\u{ffa0}' | '\u{20e3}' | '\u{e0000}'..='\u{e0fff}'
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Vec<Vec<String>> {
        let of = |view: Vec<Token>| {
            view.into_iter()
                .filter_map(|token| match token {
                    Token::Word(word) => Some(word.text),
                    _ => None,
                })
                .collect()
        };
        views(text).into_iter().map(of).collect()
    }

    #[test]
    fn however_it_is_written_it_comes_out_plain() {
        for text in [
            "Qh7",
            "Ｑｈ７",
            "𝐐𝐡𝟕",
            "Q\u{200b}h\u{200d}7",
            "qh7",
            "Ⓠⓗ⑦",
            "🅠🅗7",
            "Qh٧",
            "Qh7️⃣",
        ] {
            assert_eq!(words(text), [["qh7"]], "{text}");
        }
        assert_eq!(words("König"), [["konig"]]);
        assert_eq!(words("wieżą ładnie"), [["wieza", "ladnie"]]);
    }

    #[test]
    fn lookalikes_are_read_both_ways() {
        // Cyrillic shha, and a Cyrillic es.
        assert_eq!(words("Qһ7")[1], ["qh7"]);
        assert_eq!(words("Rс8")[1], ["rc8"]);
        assert_eq!(words("Сс4")[1], ["cc4"]);
        assert_eq!(words("Nf6").len(), 1);
        assert_eq!(words("annaQh7"), [vec!["annaqh7"], vec!["anna", "qh7"]]);
    }
}
