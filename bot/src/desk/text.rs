//! What people write is data: made harmless and bounded in size before anything reads it.

use super::error::{Done, bad_request};
use super::refusal::{Named, Refusal};

/// The most characters of a reply that are kept and read.
pub const LONGEST_REPLY: usize = 4_000;
/// The most characters of a person's name.
pub const LONGEST_NAME: usize = 80;

/// A person's name fit to be shown beside others: one line of at most [`LONGEST_NAME`] characters,
/// without characters that hide, reorder or break lines. "Member" when nothing is left.
pub(super) fn name(raw: &str) -> String {
    let name = one_line(raw, LONGEST_NAME);
    if name.is_empty() {
        "Member".into()
    } else {
        name
    }
}

/// The name of a topic or a group, as [`name`] cleans it.
///
/// # Errors
/// When nothing is left of it, or it is longer than `most` characters.
pub(super) fn title(raw: &str, what: Named, most: usize) -> Done<String> {
    let title = one_line(raw, most + 1);
    match title.chars().count() {
        0 => bad_request(Refusal::NameNeeded { what }),
        n if n > most => bad_request(Refusal::NameTooLong {
            what,
            most: most.into(),
        }),
        _ => Ok(title),
    }
}

/// A text of several lines without characters that hide or reorder, at most `most` characters long,
/// and whether it was cut.
pub(super) fn body(raw: &str, most: usize) -> (String, bool) {
    let mut chars = raw
        .chars()
        .map(|c| if c == '\r' { '\n' } else { c })
        .filter(|&c| matches!(c, '\n' | '\t') || !harmful(c));
    let text: String = chars.by_ref().take(most).collect();
    (text.trim().to_owned(), chars.next().is_some())
}

fn one_line(raw: &str, most: usize) -> String {
    // Far more than is kept is never looked at, however long the text.
    let words: String = raw
        .chars()
        .take(most * 8)
        .map(|c| if c.is_whitespace() { ' ' } else { c })
        .filter(|&c| !harmful(c))
        .collect();
    let mut line = String::new();
    for word in words.split(' ').filter(|word| !word.is_empty()) {
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    let cut: String = line.chars().take(most).collect();
    cut.trim_end().to_owned()
}

/// Control characters, and the marks that change the direction of what follows, join or hide: a name
/// made of them could dress up as somebody else's.
fn harmful(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// Points as people write them: `5`, `2.5`.
pub(super) fn points(points: f64) -> String {
    let text = format!("{points:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text.is_empty() || text == "-0" {
        "0".into()
    } else {
        text.into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn names_keep_their_letters_and_lose_their_tricks() {
        assert_eq!(name("  Ana\u{202e} \n\tBelén "), "Ana Belén");
        assert_eq!(name("\u{200b}\u{0}"), "Member");
        assert_eq!(name(""), "Member");
        assert_eq!(name(&"x".repeat(50_000)).chars().count(), LONGEST_NAME);
        assert_eq!(name("<script>@everyone"), "<script>@everyone");
    }

    #[test]
    fn long_texts_are_cut_and_say_so() {
        assert_eq!(
            body("Rd8+\r\nmate\u{7}", 100),
            ("Rd8+\n\nmate".into(), false)
        );
        let (text, cut) = body(&"e4 ".repeat(20_000), LONGEST_REPLY);
        assert!(cut);
        assert!(text.chars().count() <= LONGEST_REPLY);
    }

    #[test]
    fn titles_are_refused_when_empty_or_too_long() {
        assert!(title(" \u{200b} ", Named::Topic, 80).is_err());
        assert!(title(&"t".repeat(81), Named::Topic, 80).is_err());
        assert_eq!(
            title(" Smothered  mate ", Named::Topic, 80).ok().as_deref(),
            Some("Smothered mate")
        );
    }

    #[test]
    fn points_are_written_short() {
        for (value, text) in [
            (5.0, "5"),
            (2.5, "2.5"),
            (0.0, "0"),
            (1.25, "1.25"),
            (-0.0, "0"),
        ] {
            assert_eq!(points(value), text);
        }
    }

    proptest! {
        #[test]
        fn any_name_becomes_a_line_that_the_store_takes(raw in any::<String>()) {
            let name = name(&raw);
            prop_assert!((1..=LONGEST_NAME).contains(&name.chars().count()));
            prop_assert!(!name.chars().any(harmful));
            prop_assert_eq!(super::name(&name), name.clone());
        }
    }
}
