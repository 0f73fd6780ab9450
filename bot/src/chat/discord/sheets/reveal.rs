//! A reveal: key and variations, the final picture, the commonest try with its refutation, who solved
//! it, and the leaderboard so far.

use super::{post, tables};
use crate::{
    chat::{
        discord::{letter::Letter, words},
        said::in_words,
    },
    desk::{RevealSheet, note_lines},
};

/// How many variations are written out before the rest is counted.
const MOST_LINES: usize = 24;
/// How many rows of the leaderboard are shown.
const MOST_ROWS: usize = 10;

/// The first words of a reveal's message; by them it is found again in the channel.
pub fn heading(number: i64) -> String {
    format!("**Position {number}: the solution**")
}

/// The reveal as everyone sees it; longer than one message where there is much to say.
pub fn letter(sheet: &RevealSheet) -> Letter {
    let number = sheet.post.number;
    let mut parts = Vec::new();
    let topic = sheet
        .post
        .topic
        .as_deref()
        .map(|topic| format!(" · {}", words::plain(topic)));
    parts.push(format!(
        "{}{} · {}",
        heading(number),
        topic.unwrap_or_default(),
        words::plain(&sheet.post.stipulation)
    ));
    let mut lines: Vec<String> = Vec::new();
    for (i, line) in sheet.solution.iter().take(MOST_LINES).enumerate() {
        let line = words::plain(line);
        lines.push(if i == 0 { format!("**{line}**") } else { line });
    }
    if sheet.solution.len() > MOST_LINES {
        lines.push(format!(
            "… and {} more variations",
            sheet.solution.len() - MOST_LINES
        ));
    }
    parts.push(lines.join("\n"));
    if !sheet.patterns.is_empty() {
        let patterns: Vec<String> = sheet.patterns.iter().map(|p| words::plain(p)).collect();
        let word = if patterns.len() == 1 {
            "Pattern"
        } else {
            "Patterns"
        };
        parts.push(format!("{word}: {}.", patterns.join(", ")));
    }
    if !sheet.comment.is_empty() {
        parts.push(words::plain(&sheet.comment));
    }
    if !sheet.notes.is_empty() {
        let lines: Vec<String> = note_lines(&sheet.notes)
            .iter()
            .map(|line| words::plain(line))
            .collect();
        parts.push(format!("The coach's notes:\n{}", lines.join("\n")));
    }
    if let Some(wrong) = &sheet.common_wrong {
        let why = match wrong.why.is_empty() {
            true => String::new(),
            false => format!(", because {}", words::plain(&in_words(&wrong.why))),
        };
        parts.push(format!(
            "The commonest wrong move was {}, chosen {} times. It fails to {}{why}.",
            words::plain(&wrong.san),
            wrong.count,
            words::plain(&wrong.refutation),
        ));
    }
    parts.push(match (sheet.solved.len(), sheet.took_part) {
        (_, 0) => "Nobody took part.".to_owned(),
        (0, 1) => "One member tried, and it stayed unsolved.".to_owned(),
        (0, all) => format!("{all} members tried, and it stayed unsolved."),
        (solved, all) => format!(
            "Solved by {solved} of {all}: {}.",
            words::names(&sheet.solved, 600)
        ),
    });
    if !sheet.leaderboard.rows.is_empty() {
        parts.push(tables::leaderboard(&sheet.leaderboard, MOST_ROWS));
    }
    Letter::text(parts.join("\n\n")).picture(
        &format!("{}-solution", post::file_name(number)),
        &sheet.picture,
    )
}

/// What is said in the thread when everything may be said.
pub const THREAD_WORD: &str =
    "The solution is out. Talk as you like: nothing here is sealed any more.";
