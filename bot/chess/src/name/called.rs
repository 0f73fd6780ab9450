//! Which pattern a topic means: people call one by many names, in the languages they teach in.
//!
//! The names stand in `called.txt`. Takes what a person wrote, gives a pattern's name or none.

use std::{collections::HashMap, sync::LazyLock};

use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};

use super::names;

/// Words for mate, which say nothing of which one it is.
const MATE: &[&str] = &[
    "mate",
    "mates",
    "mating",
    "checkmate",
    "checkmates",
    "matt",
    "schachmatt",
    "mattbild",
    "jaquemate",
];

/// Words that stand around a name: articles, prepositions, and what a name is a name of.
const AROUND: &[&str] = &[
    "a", "an", "the", "by", "with", "of", "pattern", "patterns", "picture", // English
    "der", "die", "das", "des", "dem", "den", "ein", "eine", "einem", "einen", "durch",
    "mit", // German
    "el", "la", "los", "las", "un", "una", "de", "del", "por", "con", "patron", // Spanish
];

/// Words for mate that grow together with a name, the longer ones first.
const ENDINGS: &[&str] = &["schachmatt", "checkmate", "matt", "mate"];

/// A pattern, and whether its name wants a word for mate beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Called {
    pattern: &'static str,
    with_mate: bool,
}

static CALLED: LazyLock<HashMap<String, Called>> = LazyLock::new(|| rows().collect());

/// Every name, in the form that [`read`] gives it.
fn rows() -> impl Iterator<Item = (String, Called)> {
    let own = names().map(|pattern| (pattern, pattern));
    let listed = include_str!("called.txt")
        .lines()
        .filter(|line| !line.starts_with('#'))
        .filter_map(|line| line.split_once('\t'))
        .flat_map(|(pattern, all)| all.split(';').map(move |name| (pattern, name.trim())));
    own.chain(listed).filter_map(|(pattern, name)| {
        let pattern = names().find(|known| *known == pattern)?;
        let bare = name.trim_start_matches('(').trim_end_matches(')');
        let with_mate = bare != name;
        let called = Called { pattern, with_mate };
        Some((read(bare).name, called))
    })
}

/// The pattern that a topic's name means: `None` for a topic that is none.
///
/// ```
/// use sealed_move_chess::name::meant;
///
/// assert_eq!(meant("Cozio's mate"), Some("dovetail"));
/// assert_eq!(meant("Matt der Anastasia"), Some("anastasia"));
/// assert_eq!(meant("Deflection"), None);
/// ```
pub fn meant(topic: &str) -> Option<&'static str> {
    let own = topic.trim().to_lowercase();
    if let Some(pattern) = names().find(|pattern| *pattern == own) {
        return Some(pattern);
    }
    let read = read(topic);
    let called = CALLED.get(&read.name)?;
    (read.mate || !called.with_mate).then_some(called.pattern)
}

/// A name as it is looked up.
struct Read {
    /// What is left of it, without spaces.
    name: String,
    /// Whether a word for mate stood beside it.
    mate: bool,
}

fn read(text: &str) -> Read {
    let text = plain(text);
    let mut words: Vec<&str> = text.split_whitespace().collect();
    let mut mate = false;
    loop {
        let before = words.len();
        if let [first, rest @ ..] = &words[..]
            && beside(first, rest.first().copied(), &mut mate)
        {
            words = rest.to_vec();
        }
        if let [rest @ .., last] = &words[..]
            && beside(last, None, &mut mate)
        {
            words = rest.to_vec();
        }
        if words.len() == before {
            break;
        }
    }
    let mut name = words.concat();
    let ending = ENDINGS.iter().find_map(|ending| name.strip_suffix(ending));
    if let Some(rest) = ending.filter(|rest| !rest.is_empty()) {
        (name, mate) = (rest.to_owned(), true);
    }
    Read { name, mate }
}

/// Whether a word at an end says nothing of which pattern it is; notes a word for mate.
fn beside(word: &str, next: Option<&str>, mate: &mut bool) -> bool {
    // "Jaque mate": the word for check belongs to the one for mate.
    let is_mate = MATE.contains(&word) || (word == "jaque" && next == Some("mate"));
    *mate |= is_mate;
    is_mate || AROUND.contains(&word)
}

/// Small letters without accents and apostrophes, and spaces for whatever else parts words.
fn plain(text: &str) -> String {
    let joined = text
        .chars()
        .filter(|letter| !matches!(letter, '\'' | '’' | '‘' | '`' | '´' | 'ʼ'));
    let letters = joined.nfkd().filter(|letter| !is_combining_mark(*letter));
    let mut plain = String::new();
    for letter in letters {
        match letter {
            'ß' | 'ẞ' => plain.push_str("ss"),
            _ if letter.is_alphanumeric() => plain.extend(letter.to_lowercase()),
            _ => plain.push(' '),
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use sealed_move_words::{tags, words};

    use super::*;

    /// Forms of a name that mean what the name does.
    fn forms(name: &str) -> Vec<String> {
        let bare = plain(name);
        vec![
            name.to_owned(),
            name.to_uppercase(),
            name.replace('-', " "),
            name.replace('-', ""),
            name.replace(' ', "-"),
            bare.split_whitespace().collect::<Vec<_>>().join(" "),
            format!("  {name} "),
        ]
    }

    #[test]
    fn every_title_of_every_language_finds_its_own_pattern() {
        assert!(tags().count() >= 3);
        for pattern in names() {
            let titles = tags().map(|tag| words(tag).text(&format!("pattern-{pattern}")));
            for name in titles.chain([format!("{pattern} mate"), format!("Mate: {pattern}")]) {
                for form in forms(&name) {
                    assert_eq!(meant(&form), Some(pattern), "{form}");
                }
            }
            for own in [
                pattern.to_owned(),
                pattern.to_uppercase(),
                format!(" {pattern} "),
            ] {
                assert_eq!(meant(&own), Some(pattern), "{own}");
            }
        }
    }

    #[test]
    fn no_two_patterns_claim_one_name() {
        let mut claimed: HashMap<String, &str> = HashMap::new();
        for (name, called) in rows() {
            assert!(!name.is_empty(), "{}", called.pattern);
            let before = claimed.insert(name.clone(), called.pattern);
            assert!(
                before.is_none_or(|before| before == called.pattern),
                "{name}"
            );
        }
    }

    #[test]
    fn every_line_of_the_table_is_of_a_pattern() {
        let lines = include_str!("called.txt").lines();
        let lines: Vec<&str> = lines
            .filter(|line| !line.is_empty() && !line.starts_with('#'))
            .collect();
        let patterns: Vec<&str> = lines
            .iter()
            .map(|line| line.split_once('\t').expect("a tab").0)
            .collect();
        assert_eq!(patterns, names().collect::<Vec<_>>());
    }

    #[test]
    fn other_names_of_the_trade() {
        for (name, pattern) in [
            ("Anastasia", "anastasia"),
            ("anastasias mate", "anastasia"),
            ("Anastasia’s mate", "anastasia"),
            ("Matt der Anastasia", "anastasia"),
            ("el mate de Anastasia", "anastasia"),
            ("Mating pattern: Anastasia", "anastasia"),
            ("Cozio", "dovetail"),
            ("Cozio's Mate", "dovetail"),
            ("guéridon", "swallow-tail"),
            ("Gueridon-Matt", "swallow-tail"),
            ("grundreihenmatt", "back-rank"),
            ("Back rank", "back-rank"),
            ("Backrank", "back-rank"),
            ("Double-check", "double-check"),
            ("Double check mate", "double-check"),
            ("Pawn mate", "pawn"),
            ("back rank checkmate", "back-rank"),
            ("ersticktes Matt", "smothered"),
            ("Stickmatt", "smothered"),
            ("Mate ahogado", "smothered"),
            ("mate del pasillo", "back-rank"),
            ("jaque mate del pasillo", "back-rank"),
            ("Mate de Legal", "legal"),
            ("Two-bishop mate", "double-bishop"),
            ("Matt mit zwei Läufern", "double-bishop"),
            ("criss-cross mate", "boden"),
            ("Kiss of death", "kiss"),
            ("lawnmower mate", "ladder"),
            ("Matt durch Doppelschach", "double-check"),
            ("mate por jaque doble", "double-check"),
        ] {
            assert_eq!(meant(name), Some(pattern), "{name}");
        }
    }

    #[test]
    fn a_topic_that_names_no_pattern_is_a_label() {
        for topic in [
            "Deflection",
            "Knight fork",
            "Stalemate",
            "Ahogado",
            "Double check",
            "Pawns",
            "Doppelschach",
            "Jaque doble",
            "Bauern",
            "Peón",
            "Dos alfiles",
            "Mate",
            "Matt",
            "Schachmatt",
            "Mate in two",
            "the",
            "",
            " - ",
            "Anastasia and Arabian",
            "Morphy's games",
            "Damiano's defence",
            "Мат",
        ] {
            assert_eq!(meant(topic), None, "{topic}");
        }
    }
}
