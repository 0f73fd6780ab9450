//! A reveal: key and variations, the final picture, the commonest try with its refutation, who solved
//! it, and the leaderboard so far.

use super::{names, post, tables};
use crate::{
    chat::{
        common::text::NoSolutionProved,
        discord::{
            fit,
            letter::Letter,
            text::{self, List, Moves, Plain, Posting, number},
        },
    },
    desk::{ExampleSheet, RevealSheet, Shown, ShownAnswer, Solution, note_lines},
    words::{self as languages, Words},
};

/// How many variations are written out before the rest is counted.
const MOST_LINES: usize = 24;
/// How many rows of the leaderboard are shown.
const MOST_ROWS: usize = 10;

/// The first words of a reveal's message; by them it is found again in the channel.
fn heading(words: &Words, sheet: &RevealSheet) -> String {
    let number = sheet.post.number;
    words.say(&match &sheet.shows {
        Shown::Solution(_) => Posting::RevealHeading { number },
        Shown::Answered { .. } => Posting::QuestionIsClosed { number },
    })
}

/// The same in every language: the group's may have changed since.
pub fn headings(sheet: &RevealSheet) -> Vec<String> {
    let all = languages::tags().map(languages::words);
    all.map(|words| heading(words, sheet)).collect()
}

/// The reveal as everyone sees it; longer than one message where there is much to say.
pub fn letter(words: &Words, sheet: &RevealSheet) -> Letter {
    match &sheet.shows {
        Shown::Solution(solution) => solved(words, sheet, solution),
        Shown::Answered {
            at_reveal,
            answered,
            waiting,
            // Each is a message of its own, which its writer can have taken away.
            examples: _,
        } => asked(words, sheet, at_reveal, (answered, *waiting)),
    }
}

fn headed(words: &Words, sheet: &RevealSheet) -> String {
    let topic = sheet
        .post
        .topic
        .as_deref()
        .map(|topic| format!(" · {}", fit::plain(topic)));
    format!("{}{}", heading(words, sheet), topic.unwrap_or_default())
}

/// The close of a question: the coach's words on it, and who answered.
fn asked(
    words: &Words,
    sheet: &RevealSheet,
    at_reveal: &str,
    (answered, waiting): (&[String], usize),
) -> Letter {
    let mut parts = vec![headed(words, sheet)];
    if !at_reveal.is_empty() {
        parts.push(fit::plain(at_reveal));
    }
    parts.push(words.say(&match answered {
        [] => Posting::NobodyAnswered,
        names => Posting::AnsweredBy {
            names: names::in_a_row(words, names, 600),
        },
    }));
    if waiting > 0 {
        let waiting = number(waiting);
        parts.push(words.say(&Posting::AnswersWait { waiting }));
    }
    if !sheet.leaderboard.rows.is_empty() {
        parts.push(tables::leaderboard(words, &sheet.leaderboard, MOST_ROWS));
    }
    Letter::text(parts.join("\n\n"))
}

/// The most characters of an answer that is shown, and of the words beside it.
const MOST_SHOWN: usize = 1_000;
const MOST_BESIDE: usize = 600;

/// An answer that its writer allows to be shown, with the coach's words beside it.
pub fn example(words: &Words, shown: &ShownAnswer) -> String {
    let text = fit::plain(&fit::short(&shown.text, MOST_SHOWN));
    let quote = Plain::already(text.replace('\n', "\n> "));
    let said = words.say(&match &shown.name {
        Some(name) => Posting::ExampleOf {
            name: Plain::of(name),
            quote,
        },
        None => Posting::ExampleNameless { quote },
    });
    match shown.words.is_empty() {
        true => said,
        false => {
            let words_beside = Plain::of(&fit::short(&shown.words, MOST_BESIDE));
            let beside = Posting::ExampleWords {
                words: words_beside,
            };
            format!("{said}\n{}", words.say(&beside))
        }
    }
}

/// An example behind its reveal, or what stands in its place once it is taken back.
pub fn example_letter(words: &Words, sheet: &ExampleSheet) -> Letter {
    let number = sheet.number;
    Letter::text(match &sheet.shown {
        Some(shown) => format!(
            "{}\n{}",
            words.say(&Posting::ExampleHeading { number }),
            example(words, shown)
        ),
        None => words.say(&Posting::ExampleTakenBack { number }),
    })
}

fn solved(words: &Words, of: &RevealSheet, sheet: &Solution) -> Letter {
    let mut parts = Vec::new();
    parts.push(format!(
        "{} · {}",
        headed(words, of),
        fit::plain(of.post.content.kind().sign())
    ));
    let mut lines: Vec<String> = Vec::new();
    for (i, line) in sheet.solution.iter().take(MOST_LINES).enumerate() {
        let line = words.say(&Moves::of(line));
        lines.push(if i == 0 { format!("**{line}**") } else { line });
    }
    if sheet.solution.is_empty() {
        lines.push(words.say(&NoSolutionProved {}));
    }
    if sheet.solution.len() > MOST_LINES {
        let more = number(sheet.solution.len() - MOST_LINES);
        lines.push(words.say(&Posting::MoreVariations { more }));
    }
    parts.push(lines.join("\n"));
    parts.extend(patterns(words, &sheet.patterns));
    if !sheet.comment.is_empty() {
        parts.push(fit::plain(&sheet.comment));
    }
    if !sheet.notes.is_empty() {
        let mut lines = vec![words.say(&Posting::CoachNotes)];
        let notes = note_lines(&sheet.notes, |moves| words.moves(moves));
        lines.extend(notes.iter().map(|line| fit::plain(line)));
        parts.push(lines.join("\n"));
    }
    if let Some(wrong) = &sheet.common_wrong {
        let (played, line) = (Moves::of(&wrong.san), Moves::of(&wrong.refutation));
        let times = number(wrong.count);
        parts.push(words.say(&match wrong.why.is_empty() {
            true => Posting::CommonestWrong {
                played,
                times,
                line,
            },
            false => Posting::CommonestWrongBecause {
                played,
                times,
                line,
                why: Plain::of(&words.tell(&wrong.why.facts)),
            },
        }));
    }
    let (solved, tried) = (number(sheet.solved.len()), number(of.took_part));
    parts.push(words.say(&match (solved, tried) {
        (_, 0) => Posting::NobodyTookPart,
        (0, tried) => Posting::StayedUnsolved { tried },
        (solved, tried) => Posting::SolvedBy {
            solved,
            tried,
            names: names::in_a_row(words, &sheet.solved, 600),
        },
    }));
    if !of.leaderboard.rows.is_empty() {
        parts.push(tables::leaderboard(words, &of.leaderboard, MOST_ROWS));
    }
    Letter::text(parts.join("\n\n")).picture(
        &format!("{}-solution", post::file_name(of.post.number)),
        &sheet.picture,
        words,
    )
}

/// The patterns of a final position, by their names; nothing where there are none.
pub fn patterns(words: &Words, patterns: &[String]) -> Option<String> {
    let titles = patterns
        .iter()
        .map(|pattern| Plain::of(&text::pattern(words, pattern)));
    (!patterns.is_empty()).then(|| {
        words.say(&Posting::MatingPatterns {
            number: number(patterns.len()),
            patterns: List {
                list: titles.collect(),
            },
        })
    })
}
