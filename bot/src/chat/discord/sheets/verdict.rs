//! A verdict: in full for its member; for everyone else no more than the word, behind spoiler marks, since
//! a line or a picture could give the solution away.

use crate::{
    chat::{
        discord::{
            buttons, fit,
            letter::Letter,
            text::{Plain, Talk},
        },
        said::{in_words, words_of},
    },
    desk::{Outcome, Place, Verdict, VerdictSheet, WordsRow},
    words::Words,
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
        ..Letter::text(fit::plain(&in_words(&sheet.said)))
    };
    match &sheet.picture {
        Some(picture) => letter.picture(FILE, picture, words_of(&sheet.said.language)),
        None => letter,
    }
}

/// A coach's private answer, for the member it is for.
pub fn answered(words: &Words, row: &WordsRow) -> String {
    let (kind, number) = (row.kind, row.number);
    let quote = (!row.text.is_empty()).then(|| Plain::quote(&row.text));
    let head = match (row.by.as_deref().map(Plain::of), quote) {
        (None, None) => Talk::CoachAnswersPost { kind, number },
        (None, Some(quote)) => Talk::CoachAnswersQuote {
            quote,
            kind,
            number,
        },
        (Some(coach), None) => Talk::NamedCoachAnswersPost {
            coach,
            kind,
            number,
        },
        (Some(coach), Some(quote)) => Talk::NamedCoachAnswersQuote {
            coach,
            quote,
            kind,
            number,
        },
    };
    format!("{}\n{}", words.say(&head), fit::plain(&row.words))
}

/// The verdict in one word or two.
pub fn word(words: &Words, verdict: Verdict) -> String {
    words.say(&Talk::VerdictWord { verdict })
}

/// What came of a reply in a word or two.
pub fn outcome(words: &Words, outcome: Outcome) -> String {
    match outcome {
        Outcome::Judged(verdict) => word(words, verdict),
        Outcome::Kept => words.say(&Talk::KeptWord),
        Outcome::Marked => words.say(&Talk::MarkedWord),
    }
}

/// The length to which the words of verdicts are padded.
const PADDED: usize = 30;

/// The verdict for everyone in an open group. Padded to one length, so that the size of the black bar
/// tells nothing.
pub fn public(words: &Words, name: &str, sheet: &VerdictSheet) -> String {
    let mut word = outcome(words, sheet.outcome);
    let short = PADDED.saturating_sub(word.chars().count());
    word.push_str(&"\u{2007}".repeat(short));
    let name = Plain::of(name);
    words.say(&Talk::HasAnswered { name, word })
}
