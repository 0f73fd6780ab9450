//! The words by which a move can be told in prose; see `vocabulary.txt`.

use std::{collections::HashMap, sync::OnceLock};

use shakmaty::{File, Role};

use super::fold;

/// What a word can mean; one word can mean several things.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sense {
    /// A piece or a pawn.
    Man(Role),
    /// What a move does.
    Act,
    /// Where a move goes.
    Where,
    /// A line or a corner of the board.
    Line,
    /// A small word between others.
    Small,
    /// A number from one to eight.
    Number(u8),
    /// A file's letter.
    File(File),
    /// Castling.
    Castles,
    /// Promoting.
    Promotes,
    /// En passant.
    Passant,
}

#[derive(Default)]
struct Vocabulary {
    whole: HashMap<String, Vec<Sense>>,
    beginnings: Vec<(String, Sense)>,
}

/// Whether the word can mean this.
pub(super) fn means(word: &str, sense: Sense) -> bool {
    senses(word).any(|other| other == sense)
}

/// All that the word can mean.
pub(super) fn senses(word: &str) -> impl Iterator<Item = Sense> + '_ {
    let vocabulary = vocabulary();
    let whole = vocabulary.whole.get(word).into_iter().flatten().copied();
    let begun = vocabulary
        .beginnings
        .iter()
        .filter(move |(beginning, _)| word.starts_with(beginning.as_str()))
        .map(|(_, sense)| *sense);
    whole.chain(begun)
}

fn vocabulary() -> &'static Vocabulary {
    static WORDS: OnceLock<Vocabulary> = OnceLock::new();
    WORDS.get_or_init(|| {
        let mut vocabulary = Vocabulary::default();
        for line in include_str!("vocabulary.txt").lines() {
            let Some((kind, words)) = line.split_once('\t') else {
                continue;
            };
            let Some(sense) = sense(kind) else { continue };
            for written in words.split_whitespace() {
                let word = fold::word(written);
                if written.ends_with('*') {
                    vocabulary.beginnings.push((word, sense));
                } else {
                    vocabulary.whole.entry(word).or_default().push(sense);
                }
            }
        }
        vocabulary
    })
}

fn sense(kind: &str) -> Option<Sense> {
    Some(match kind {
        "king" => Sense::Man(Role::King),
        "queen" => Sense::Man(Role::Queen),
        "rook" => Sense::Man(Role::Rook),
        "bishop" => Sense::Man(Role::Bishop),
        "knight" => Sense::Man(Role::Knight),
        "pawn" => Sense::Man(Role::Pawn),
        "act" => Sense::Act,
        "where" => Sense::Where,
        "line" => Sense::Line,
        "small" => Sense::Small,
        "castles" => Sense::Castles,
        "promotes" => Sense::Promotes,
        "passant" => Sense::Passant,
        _ => {
            const NUMBERS: [&str; 8] = [
                "one", "two", "three", "four", "five", "six", "seven", "eight",
            ];
            if let Some(at) = NUMBERS.iter().position(|number| *number == kind) {
                Sense::Number(at as u8 + 1)
            } else {
                Sense::File(File::from_char(kind.chars().next()?)?)
            }
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_of_the_vocabulary_is_of_a_kind() {
        for line in include_str!("vocabulary.txt").lines() {
            if line.is_empty() || line.starts_with('#') {
                continue;
            }
            let (kind, words) = line.split_once('\t').expect("a tab");
            assert!(sense(kind).is_some() && !words.is_empty(), "{line}");
        }
    }

    #[test]
    fn words_mean_what_they_should_in_any_case_of_theirs() {
        assert!(means("queen", Sense::Man(Role::Queen)));
        assert!(means("springers", Sense::Man(Role::Knight)));
        assert!(means(&fold::word("ладьёй"), Sense::Man(Role::Rook)));
        assert!(means(&fold::word("wieżą"), Sense::Man(Role::Rook)));
        assert!(means("seven", Sense::Number(7)));
        assert!(means("hache", Sense::File(File::H)));
        assert_eq!(senses("window").count(), 0);
    }
}
