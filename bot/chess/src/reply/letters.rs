//! Piece letters by language, and figurines.
//!
//! The letters are those of printed chess in each language, as the PGN standard (Edwards, 1994) lists
//! them in its chapter on SAN; the Russian and Turkish ones are common practice.

use shakmaty::Role::{self, Bishop, King, Knight, Pawn, Queen, Rook};

use crate::Language;

/// The piece letters of a language in lower case, longer ones first.
pub(super) fn letters(language: Language) -> &'static [(&'static str, Role)] {
    match language {
        Language::English => &[
            ("kt", Knight),
            ("k", King),
            ("q", Queen),
            ("r", Rook),
            ("b", Bishop),
            ("n", Knight),
            ("p", Pawn),
        ],
        Language::German => &[
            ("k", King),
            ("d", Queen),
            ("t", Rook),
            ("l", Bishop),
            ("s", Knight),
        ],
        Language::French => &[
            ("r", King),
            ("d", Queen),
            ("t", Rook),
            ("f", Bishop),
            ("c", Knight),
            ("p", Pawn),
        ],
        Language::Spanish | Language::Italian => &[
            ("r", King),
            ("d", Queen),
            ("t", Rook),
            ("a", Bishop),
            ("c", Knight),
            ("p", Pawn),
        ],
        Language::Portuguese => &[
            ("r", King),
            ("d", Queen),
            ("t", Rook),
            ("b", Bishop),
            ("c", Knight),
            ("p", Pawn),
        ],
        Language::Dutch => &[
            ("k", King),
            ("d", Queen),
            ("t", Rook),
            ("l", Bishop),
            ("p", Knight),
        ],
        Language::Russian => &[
            ("кр", King),
            ("ф", Queen),
            ("л", Rook),
            ("с", Bishop),
            ("к", Knight),
            ("п", Pawn),
        ],
        Language::Polish => &[
            ("k", King),
            ("h", Queen),
            ("w", Rook),
            ("g", Bishop),
            ("s", Knight),
        ],
        Language::Czech => &[
            ("k", King),
            ("d", Queen),
            ("v", Rook),
            ("s", Bishop),
            ("j", Knight),
        ],
        Language::Hungarian => &[
            ("k", King),
            ("v", Queen),
            ("b", Rook),
            ("f", Bishop),
            ("h", Knight),
        ],
        // A phone without the letter writes a plain S.
        Language::Turkish => &[
            ("ş", King),
            ("s", King),
            ("v", Queen),
            ("k", Rook),
            ("f", Bishop),
            ("a", Knight),
        ],
    }
}

/// A move whose piece is written with the letter of a language, with the English one in its place; `None` where
/// it begins with no such letter.
pub(super) fn in_english(written: &str, language: Language) -> Option<String> {
    letters(language).iter().find_map(|(letter, role)| {
        let rest = written.strip_prefix(letter.to_uppercase().as_str())?;
        Some(format!("{}{rest}", role.upper_char()))
    })
}

/// Whether a small letter begins the letters of a piece in any language; none has more than two.
pub(super) fn begins(c: char) -> bool {
    matches!(c, 'a'..='z' | 'к' | 'л' | 'п' | 'с' | 'ф' | 'ş')
}

/// The role a figurine shows, whatever its colour.
pub(super) fn figurine(c: char) -> Option<Role> {
    Some(match c {
        '♔' | '♚' => King,
        '♕' | '♛' => Queen,
        '♖' | '♜' => Rook,
        '♗' | '♝' => Bishop,
        '♘' | '♞' => Knight,
        '♙' | '♟' => Pawn,
        _ => return None,
    })
}

/// The file a letter names, also when it was typed on a Cyrillic keyboard where it looks the same.
pub(super) fn file(c: char) -> Option<shakmaty::File> {
    let c = match c {
        'а' | 'А' => 'a',
        'с' | 'С' => 'c',
        'е' | 'Е' => 'e',
        'в' | 'В' => 'b',
        c => c.to_ascii_lowercase(),
    };
    shakmaty::File::from_char(c)
}

/// Which language a text is written in, from the capital letters that begin its moves: the group's
/// own when that has them all, then English, then the first other one that has; the group's own when
/// none has.
pub(super) fn guess(own: Language, initials: &[char]) -> Language {
    let covers = |language: &Language| {
        initials.iter().all(|c| {
            letters(*language)
                .iter()
                .any(|(l, _)| l.chars().count() == 1 && l.starts_with(*c))
        })
    };
    std::iter::once(own)
        .chain(Language::ALL)
        .find(covers)
        .unwrap_or(own)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_names_five_pieces() {
        for language in Language::ALL {
            for role in [King, Queen, Rook, Bishop, Knight] {
                assert!(
                    letters(language).iter().any(|&(_, r)| r == role),
                    "{language:?} {role:?}"
                );
            }
        }
    }

    #[test]
    fn letters_begin_as_they_may_and_are_two_at_most() {
        for language in Language::ALL {
            for &(name, _) in letters(language) {
                assert!(name.starts_with(begins), "{name}");
                assert!(name.chars().count() <= 2, "{name}");
            }
        }
    }

    #[test]
    fn guesses_by_letters_the_own_language_first() {
        assert_eq!(guess(Language::English, &['q', 'r']), Language::English);
        assert_eq!(guess(Language::French, &['r', 'd']), Language::French);
        assert_eq!(guess(Language::English, &['d', 's']), Language::German);
        assert_eq!(guess(Language::Polish, &['n', 'q']), Language::English);
        assert_eq!(guess(Language::English, &['w', 'g']), Language::Polish);
        assert_eq!(guess(Language::English, &['w', 'z']), Language::English);
    }
}
