//! Which topic a request means: by its name, whatever its case and accents. One that is not there is refused
//! with the names that come nearest, so that a slip of the pen is not taken for a topic without points.

use strsim::normalized_damerau_levenshtein;
use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};

use crate::chess::fact::List;
use crate::desk::error::{DeskError, Done, bad_request};
use crate::desk::refusal::{Quoted, Refusal};

/// Names that are offered in place of one that is not there.
const OFFERED: usize = 5;
/// Names less like it than this are not offered while others are.
const ALIKE: f64 = 0.5;

/// The topic of `names` that `wanted` means.
///
/// # Errors
/// When there is none of that name, or several differ in accents alone and none is written so.
pub(super) fn meant(wanted: &str, names: &[String]) -> Done<String> {
    if let Some(name) = names.iter().find(|name| *name == wanted) {
        return Ok(name.clone());
    }
    let key = folded(wanted);
    let same: Vec<&String> = names.iter().filter(|name| folded(name) == key).collect();
    match same.as_slice() {
        [one] => Ok((*one).clone()),
        [] => Err(unknown(wanted, &key, names)),
        several => bad_request(Refusal::SeveralTopics {
            topic: shown(wanted).into(),
            several: quoted(several.iter().map(|name| name.as_str())),
        }),
    }
}

fn unknown(wanted: &str, key: &str, names: &[String]) -> DeskError {
    if names.is_empty() {
        return DeskError::BadRequest(Refusal::NoTopicsYet {
            topic: shown(wanted).into(),
        });
    }
    let mut near: Vec<(f64, &str)> = names
        .iter()
        .map(|name| (likeness(key, &folded(name)), name.as_str()))
        .collect();
    near.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(b.1)));
    let alike = near.iter().filter(|(like, _)| *like >= ALIKE).count();
    let most = match alike {
        0 => OFFERED,
        some => some.min(OFFERED),
    };
    DeskError::BadRequest(Refusal::NoSuchTopic {
        topic: shown(wanted).into(),
        alike: alike > 0,
        near: quoted(near.iter().take(most).map(|(_, name)| *name)),
    })
}

/// How alike two folded names are, 0.0 to 1.0: as wholes, or as one and some words in a row of the other.
fn likeness(wanted: &str, name: &str) -> f64 {
    let words: Vec<&str> = name.split(' ').collect();
    let count = wanted.split(' ').count().min(words.len());
    words
        .windows(count)
        .map(|run| normalized_damerau_levenshtein(wanted, &run.join(" ")))
        .fold(normalized_damerau_levenshtein(wanted, name), f64::max)
}

/// Letters without case and accents, words parted by one space.
fn folded(name: &str) -> String {
    let plain: String = name
        .chars()
        .take(200)
        .nfkd()
        .filter(|c| !is_combining_mark(*c))
        .collect();
    plain
        .to_lowercase()
        .split(|c: char| c.is_whitespace() || matches!(c, '-' | '_' | '‐' | '–'))
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

fn shown(wanted: &str) -> String {
    wanted
        .chars()
        .filter(|c| !c.is_control())
        .take(80)
        .collect()
}

fn quoted<'a>(names: impl Iterator<Item = &'a str>) -> List<Quoted> {
    let quoted = |name: &str| Quoted {
        words: name.to_owned().into(),
    };
    List {
        list: names.map(quoted).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(list: &[&str]) -> Vec<String> {
        list.iter().map(|name| (*name).to_owned()).collect()
    }

    #[test]
    fn case_accents_and_hyphens_do_not_tell_topics_apart() {
        let topics = names(&["Smothered mate", "Réti", "Back rank"]);
        for (wanted, meant_by_it) in [
            ("reti", "Réti"),
            ("RÉTI", "Réti"),
            ("Re\u{301}ti", "Réti"),
            ("smothered  MATE", "Smothered mate"),
            ("back-rank", "Back rank"),
        ] {
            assert_eq!(meant(wanted, &topics).expect(wanted), meant_by_it);
        }
        let both = names(&["Réti", "Reti"]);
        assert_eq!(meant("Reti", &both).expect("written so"), "Reti");
        let said = meant("RETI", &both).expect_err("either").in_english();
        assert!(said.contains("\"Réti\", \"Reti\""), "{said}");
    }

    #[test]
    fn a_topic_that_is_not_there_is_refused_with_the_nearest() {
        let topics = names(&["Smothered mate", "Réti", "Back rank", "Fork"]);
        for (wanted, nearest) in [
            ("smotherd", "Nearest: \"Smothered mate\"."),
            ("smotherd mate", "Nearest: \"Smothered mate\"."),
            ("rety", "Nearest: \"Réti\"."),
            ("rank", "Nearest: \"Back rank\""),
        ] {
            let said = meant(wanted, &topics).expect_err(wanted).in_english();
            assert!(said.contains(nearest), "{wanted}: {said}");
        }
        let said = meant("xyzzy", &topics)
            .expect_err("unlike any")
            .in_english();
        assert!(said.contains("There are: "), "{said}");
        let none = meant("pin", &[]).expect_err("no topics").in_english();
        assert!(none.contains("no topics yet"), "{none}");
    }
}
