//! Words fit for Discord: people's text made plain, moments in each reader's own time, and long texts
//! cut where a reader would cut them, never inside a move.

use chrono::{DateTime, Utc};

/// The most characters of a message's text.
pub const MESSAGE: usize = 2_000;
/// The most characters of a button's label.
pub const LABEL: usize = 80;
/// The most characters of a choice or a menu's option.
pub const OPTION: usize = 100;
/// The most characters of a form's title, or of a field's label.
#[cfg(test)]
pub const FORM: usize = 45;
/// The most characters of a thread's name.
pub const THREAD: usize = 100;

/// Text from people, or from a file, to stand among our own: markup shows as it was typed, nothing
/// opens a link's preview, hides behind spoiler marks or names anyone.
///
/// Chess keeps its looks: `#`, `+`, `=` and `-` are touched only where Discord would take them for a
/// heading or a list.
pub fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let mut line_start = true;
    for (i, c) in text.char_indices() {
        match c {
            '\\' | '*' | '_' | '~' | '`' | '|' | '[' | ']' => {
                out.push('\\');
                out.push(c);
            }
            '<' => out.push_str("\\<"),
            '>' if line_start => out.push_str("\\>"),
            // A letter that joins nothing keeps a name from being looked up.
            '@' => out.push_str("@\u{200b}"),
            ':' if text[i..].starts_with("://") => out.push_str(":\u{200b}"),
            '#' | '-' | '+' if line_start && marks(&text[i..]) => {
                out.push('\\');
                out.push(c);
            }
            '.' if ends_a_number(&out) && text[i + 1..].starts_with(' ') => out.push_str("\\."),
            _ => out.push(c),
        }
        line_start = c == '\n' || (line_start && c == ' ');
    }
    out
}

/// Whether a line that begins so is a heading, small print or a list to Discord.
fn marks(line: &str) -> bool {
    let rest = line.trim_start_matches('#');
    let rest = if rest.len() == line.len() {
        line[1..].trim_start_matches('#')
    } else {
        rest
    };
    rest.starts_with(' ')
}

/// Whether the last line so far is a number only, which with a dot would begin a list.
fn ends_a_number(out: &str) -> bool {
    let line = out.rsplit('\n').next().unwrap_or_default();
    !line.is_empty() && line.bytes().all(|b| b.is_ascii_digit())
}

/// A moment, in words, in each reader's own time and language.
pub fn moment(at: DateTime<Utc>) -> String {
    format!("<t:{}:F>", at.timestamp())
}

/// Cuts a text to at most `most` characters, at a sensible place, with `…` to show it.
pub fn short(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let head: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", head[..break_in(&head)].trim_end())
}

/// Splits a text into pieces of at most `most` characters: between paragraphs, else between lines,
/// else between sentences, else between words.
pub fn pages(text: &str, most: usize) -> Vec<String> {
    let mut pages = Vec::new();
    let mut rest = text.trim();
    while rest.chars().count() > most {
        let end = rest.char_indices().nth(most).map_or(rest.len(), |(i, _)| i);
        let at = break_in(&rest[..end]);
        pages.push(rest[..at].trim_end().to_owned());
        rest = rest[at..].trim_start();
    }
    if !rest.is_empty() {
        pages.push(rest.to_owned());
    }
    pages
}

/// Where to break a text that must be broken: a place in its second half where a reader would, else
/// its last space that is not inside a move (`1. Rd8+`, `e8 = Q`), else its end.
fn break_in(text: &str) -> usize {
    let half = text
        .char_indices()
        .nth(text.chars().count() / 2)
        .map_or(0, |(i, _)| i);
    for mark in ["\n\n", "\n", ". ", "; "] {
        if let Some(at) = text.rfind(mark).filter(|at| *at >= half)
            && (mark != ". " || !ends_in_digit(&text[..at]))
        {
            return at + if mark.starts_with('\n') { 0 } else { 1 };
        }
    }
    text.rmatch_indices([' ', '\n'])
        .map(|(at, _)| at)
        .find(|at| *at > 0 && !inside_move(text, *at))
        .unwrap_or(text.len())
}

fn ends_in_digit(text: &str) -> bool {
    text.ends_with(|c: char| c.is_ascii_digit())
}

/// Whether the space at `at` stands between a move's number and the move, or around its `=`.
fn inside_move(text: &str, at: usize) -> bool {
    let before = &text[..at];
    let after = text[at..].trim_start();
    let numbered = before.trim_end_matches('.').len() < before.len()
        && ends_in_digit(before.trim_end_matches('.'));
    numbered || before.ends_with('=') || after.starts_with('=')
}

/// Points as people write them.
pub fn points(points: f64) -> String {
    let text = format!("{points:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn markup_shows_as_typed_and_chess_keeps_its_looks() {
        assert_eq!(
            plain("**Ana** _B_ ||x||"),
            "\\*\\*Ana\\*\\* \\_B\\_ \\|\\|x\\|\\|"
        );
        assert_eq!(plain("1.Rd8+ Rxd8 2.Rxd8#"), "1.Rd8+ Rxd8 2.Rxd8#");
        assert_eq!(plain("# big"), "\\# big");
        assert_eq!(plain("-# small"), "\\-# small");
        assert_eq!(plain("- item\n+ item"), "\\- item\n\\+ item");
        assert_eq!(plain("#3"), "#3");
        assert_eq!(plain("1. e4"), "1\\. e4");
        assert_eq!(plain("> quote, a > b"), "\\> quote, a > b");
        assert!(!plain("@everyone <@123> <#5>").contains("@everyone"));
        assert!(!plain("<@123>").contains("<@1"));
        assert!(!plain("https://example.org").contains("https://"));
        assert_eq!(plain("[text](x)"), "\\[text\\](x)");
    }

    #[test]
    fn a_cut_never_parts_a_number_from_its_move() {
        let line = "1.Rd8+ Rxd8 2. Rxd8# is mate";
        for most in 8..line.len() {
            let cut = short(line, most);
            assert!(!cut.trim_end_matches('…').ends_with('.'), "{cut}");
            for piece in pages(line, most) {
                assert!(!piece.ends_with("2."), "{piece}");
            }
        }
    }

    #[test]
    fn paragraphs_are_kept_together_where_they_fit() {
        let text = format!(
            "{}\n\n{}\n{}",
            "a".repeat(60),
            "b".repeat(30),
            "c".repeat(30)
        );
        let pages = pages(&text, 100);
        assert_eq!(
            pages,
            [
                "a".repeat(60),
                format!("{}\n{}", "b".repeat(30), "c".repeat(30))
            ]
        );
    }

    proptest! {
        #[test]
        fn pages_fit_and_lose_nothing(text in "[a-zA-Z0-9.+#= \n…é♞]{0,400}", most in 10usize..80) {
            let pages = pages(&text, most);
            for page in &pages {
                prop_assert!(page.chars().count() <= most);
                prop_assert!(!page.is_empty());
            }
            let squeeze = |s: &str| s.split_whitespace().collect::<String>();
            prop_assert_eq!(squeeze(&pages.concat()), squeeze(&text));
            prop_assert!(short(&text, most).chars().count() <= most);
        }

        #[test]
        fn plain_text_names_nobody(text in ".{0,100}") {
            let plain = plain(&text);
            prop_assert!(!plain.contains("@everyone") && !plain.contains("@here"));
            prop_assert!(!plain.contains("<@1"));
        }
    }
}
