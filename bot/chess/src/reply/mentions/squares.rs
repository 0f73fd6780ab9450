//! Squares in a text: by themselves, behind a piece's letters, spelled out, in descriptive notation, or
//! scattered over several words.

use shakmaty::{File, Rank, Role, Square};

use super::{
    fold::{Token, Word},
    seen_from_both,
    vocabulary::{Sense, senses},
};
use crate::{Language, reply::letters};

/// Two-letter words of people's languages that end in a file's letter: "be 4 of you", "le 5 mai".
const WORDS: [&str; 48] = [
    "be", "he", "we", "me", "of", "if", "id", "ad", "ah", "oh", "uh", "eh", "ab", "mb", "gb", "kb",
    "kg", "cd", "ed", "pc", "ac", "hd", "le", "de", "ce", "je", "ne", "se", "te", "re", "la", "ma",
    "sa", "ta", "na", "za", "da", "ja", "va", "fa", "ha", "ga", "ag", "ob", "eg", "mg", "re", "ve",
];

/// The squares that begin at the first of these tokens. `led` says that the word before them is a piece
/// or what one does, so that "a 5" is more likely a square.
pub(super) fn told(rest: &[Token], led: bool) -> Vec<Square> {
    let Some(Token::Word(first)) = rest.first() else {
        return Vec::new();
    };
    let mut squares = within(&first.text);
    squares.extend(spelled(rest, led));
    squares.extend(scattered(rest, led));
    squares
}

/// Squares inside a word: "h7", "qh7", "nxf6", "d2d8", "e8q", "queenh7", "7hq".
fn within(text: &str) -> Vec<Square> {
    let chars: Vec<char> = text.chars().collect();
    let mut squares = Vec::new();
    for at in 0..chars.len().saturating_sub(1) {
        let before: String = chars[..at].iter().collect();
        let after: String = chars[at + 2..].iter().collect();
        if !may_stand_before(&before) || !may_stand_after(&after) {
            continue;
        }
        squares.extend(squares_of(chars[at], chars[at + 1]));
    }
    // Backwards.
    if let [rank, file, letter] = chars.as_slice()
        && matches!(letter, 'q' | 'r' | 'n' | 'b' | 'k')
    {
        squares.extend(squares_of(*file, *rank));
    }
    squares
}

fn squares_of(file: char, rank: char) -> Vec<Square> {
    let Ok(rank) = Rank::from_char(rank).ok_or(()) else {
        return Vec::new();
    };
    files(file)
        .iter()
        .map(|file| Square::from_coords(*file, rank))
        .collect()
}

/// The files a letter can mean, also where Russian has another letter for it.
fn files(c: char) -> Vec<File> {
    if let Some(file) = File::from_char(c) {
        return vec![file];
    }
    match c {
        'а' => vec![File::A],
        'б' => vec![File::B],
        'в' => vec![File::B],
        'с' | 'ц' => vec![File::C],
        'д' => vec![File::D],
        'е' | 'э' => vec![File::E],
        'ф' => vec![File::F],
        'г' => vec![File::G],
        'х' | 'н' | 'һ' => vec![File::H],
        _ => Vec::new(),
    }
}

/// What may stand before a square in the same word.
fn may_stand_before(before: &str) -> bool {
    let before = before.trim_start_matches(|c: char| c.is_ascii_digit());
    let bare = before.trim_end_matches('x');
    let from: String = {
        let mut chars: Vec<char> = bare.chars().collect();
        if chars.last().is_some_and(|c| ('1'..='8').contains(c)) {
            chars.pop();
        }
        if chars.len() > 1 && chars.last().is_some_and(|c| !files(*c).is_empty()) {
            chars.pop();
        }
        chars.into_iter().collect()
    };
    let short = |text: &str| text.chars().count() <= 2;
    let named = |text: &str| {
        senses(text).any(|sense| matches!(sense, Sense::Man(_) | Sense::Act))
            || ["to", "on", "takes", "nach", "auf"].iter().any(|end| {
                text.strip_suffix(end).is_some_and(|man| {
                    short(man) || senses(man).any(|sense| matches!(sense, Sense::Man(_)))
                })
            })
    };
    short(bare)
        && !bare.ends_with(|c: char| c.is_ascii_digit() && short(before) && before.len() > 2)
        || short(&from)
        || named(bare)
}

/// What may stand behind a square in the same word.
fn may_stand_after(after: &str) -> bool {
    let mut chars = after.chars();
    match (chars.next(), chars.next()) {
        (None, _) => true,
        (Some(c), None) => !c.is_ascii_digit(),
        // Another square, or a capture.
        (Some(file), Some(rank)) if !files(file).is_empty() && ('1'..='8').contains(&rank) => true,
        (Some('x'), Some(_)) => true,
        (Some('q' | 'r' | 'b' | 'n' | 'd' | 't'), Some(_)) | (Some(_), Some(_)) => {
            matches!(after, "ch" | "ep" | "dis" | "dbl")
                || senses(after).any(|sense| matches!(sense, Sense::Act))
        }
    }
}

/// "h seven", "hotel 7", "аш семь".
fn spelled(rest: &[Token], led: bool) -> Vec<Square> {
    let [Token::Word(file), Token::Word(rank), ..] = rest else {
        return Vec::new();
    };
    let mut chars = file.text.chars();
    let named: Vec<File> = match (chars.next(), chars.next()) {
        // Words in some language, unless a piece leads up to them.
        (Some('a' | 'e' | 'а' | 'с' | 'в' | 'с'), None) if !led => Vec::new(),
        (Some(c), None) => files(c),
        _ => senses(&file.text)
            .filter_map(|sense| match sense {
                Sense::File(file) => Some(file),
                _ => None,
            })
            .collect(),
    };
    let one_letter = file.text.chars().count() == 1;
    let Some(number) = number(&rank.text).filter(|_| !one_letter || rank.text.len() > 1) else {
        return Vec::new();
    };
    named
        .into_iter()
        .map(|file| Square::from_coords(file, Rank::new(u32::from(number) - 1)))
        .collect()
}

/// A number from one to eight, in digits or in words.
pub(super) fn number(text: &str) -> Option<u8> {
    if let [digit @ b'1'..=b'8'] = text.as_bytes() {
        return Some(digit - b'0');
    }
    senses(text).find_map(|sense| match sense {
        Sense::Number(number) => Some(number),
        _ => None,
    })
}

/// "Q h 7", "qh 7", "n f 6", "h 7".
fn scattered(rest: &[Token], led: bool) -> Vec<Square> {
    let mut joined = String::new();
    let mut parts: Vec<&Word> = Vec::new();
    for token in rest.iter().take(5) {
        let Token::Word(word) = token else { break };
        if word.text.chars().count() > 2 {
            break;
        }
        joined.push_str(&word.text);
        parts.push(word);
        let digit = matches!(word.text.as_bytes(), [b'1'..=b'8']);
        if parts.len() < 2 || !digit {
            continue;
        }
        let foreign = parts.iter().any(|word| word.foreign);
        let plausible = match parts.as_slice() {
            [file, _] if file.text.chars().count() == 1 => {
                led || !foreign && !matches!(file.text.as_str(), "a" | "e")
            }
            [word, _] => {
                let name = word.text.as_str();
                let piece = word.capital && matches!(name, "ne" | "re");
                (piece || !WORDS.contains(&name)) && (led || !foreign)
            }
            parts => {
                // Letters one by one, the first of them a piece's.
                let letters = parts.iter().all(|word| word.text.chars().count() == 1);
                let first = parts[0].text.as_str();
                letters && (led || !foreign || !roles(first).is_empty())
                    || !roles(first).is_empty()
                        && !WORDS.contains(&parts[parts.len() - 2].text.as_str())
            }
        };
        if plausible {
            return within(&joined);
        }
    }
    Vec::new()
}

/// The pieces that a letter, or two, can stand for in any language.
pub(super) fn roles(text: &str) -> Vec<Role> {
    let mut roles: Vec<Role> = Vec::new();
    for language in Language::ALL {
        for &(letters, role) in letters::letters(language) {
            if letters == text && !roles.contains(&role) {
                roles.push(role);
            }
        }
    }
    roles
}

/// Without a sign of check at the end.
pub(super) fn without_sign(text: &str) -> &str {
    ["dblch", "disch", "ch", "mate", "ep"]
        .iter()
        .find_map(|sign| text.strip_suffix(sign))
        .unwrap_or(text)
}

/// The squares that a move in descriptive notation can go to: "qr7", "ktkb3", "pk4ch".
pub(super) fn descriptive(text: &str) -> Vec<Square> {
    let text = without_sign(text);
    let man = ["kt", "k", "q", "r", "b", "n", "p"]
        .iter()
        .filter_map(|man| text.strip_prefix(man));
    man.flat_map(|rest| {
        // Over a second one that tells pieces apart: "kr", "qkt", "rp".
        let wings = ["", "k", "q"]
            .into_iter()
            .filter_map(move |wing| Some((wing, rest.strip_prefix(wing)?)));
        wings.flat_map(|(wing, rest)| {
            let (name, rank) = match rest.char_indices().last() {
                Some((at, rank)) => (&rest[..at], rank),
                None => return Vec::new(),
            };
            let Some(rank) = rank.to_digit(10).filter(|rank| (1..=8).contains(rank)) else {
                return Vec::new();
            };
            let files: &[File] = match (name, wing) {
                ("r", "q") => &[File::A],
                ("r", "k") => &[File::H],
                ("r", _) => &[File::A, File::H],
                ("kt" | "n", "q") => &[File::B],
                ("kt" | "n", "k") => &[File::G],
                ("kt" | "n", _) => &[File::B, File::G],
                ("b", "q") => &[File::C],
                ("b", "k") => &[File::F],
                ("b", _) => &[File::C, File::F],
                ("q", "") => &[File::D],
                ("k", "") => &[File::E],
                _ => &[],
            };
            files
                .iter()
                .flat_map(|file| seen_from_both(*file, rank as u8))
                .collect()
        })
    })
    .collect()
}
