//! A verdict: in full for its member; for everyone else no more than the word, behind spoiler marks, since
//! a line or a picture could give the solution away.

use crate::{
    chat::{
        discord::{buttons, letter::Letter, words},
        said::in_words,
    },
    desk::{Place, Verdict, VerdictSheet, WordsRow},
};

/// File name of a picture for one member.
const FILE: &str = "board";

/// The verdict for its member, with what can be done next.
pub fn letter(place: &Place, sheet: &VerdictSheet) -> Letter {
    let mut letter = told(sheet);
    letter.rows.extend(buttons::readings(place, sheet));
    letter.rows.extend(buttons::under_verdict(place, sheet));
    letter
}

/// The verdict for its member, as a piece of news.
pub fn told(sheet: &VerdictSheet) -> Letter {
    let letter = Letter {
        tells: Some(sheet.reply),
        ..Letter::text(words::plain(&in_words(&sheet.said)))
    };
    match &sheet.picture {
        Some(picture) => letter.picture(FILE, picture),
        None => letter,
    }
}

/// A coach's private answer, for the member it is for.
pub fn answered(row: &WordsRow) -> String {
    let coach = match &row.by {
        Some(name) => format!("Your coach {}", words::plain(name)),
        None => "Your coach".to_owned(),
    };
    let quote = words::plain(&words::short(&row.text.replace('\n', " "), 200));
    let about = match quote.as_str() {
        "" => format!("position {}", row.number),
        quote => format!("\"{quote}\" (position {})", row.number),
    };
    format!(
        "{coach} answers you on {about}:\n{}",
        words::plain(&row.words)
    )
}

/// The verdict in one word or two.
pub fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Solved => "solved",
        Verdict::OnTheWay => "right so far",
        Verdict::Wrong => "not the solution",
        Verdict::Illegal => "not a legal move",
        Verdict::Unclear => "not settled yet",
        Verdict::Unreadable => "not readable",
    }
}

/// The verdict for everyone in an open group. Padded to one length, so that the size of the black bar
/// tells nothing.
pub fn public(name: &str, sheet: &VerdictSheet) -> String {
    let word = word(sheet.verdict);
    let pad = "\u{2007}".repeat(30_usize.saturating_sub(word.chars().count()));
    format!("{} has answered: ||{word}{pad}||", words::plain(name))
}
