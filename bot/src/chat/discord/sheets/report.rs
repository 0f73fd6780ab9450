//! The check report of a coach's file, a position a page.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use crate::{
    chat::discord::{
        buttons::{self, Press, Pressed},
        house::Opened,
        letter::Letter,
        words,
    },
    desk::{CheckedPosition, Place, QueueItem, SameChoice, Soundness, note_lines},
};

/// How many variations and tries a page shows.
const MOST_LINES: usize = 12;

/// The verdict of a check in words.
pub fn soundness(verdict: Soundness) -> &'static str {
    match verdict {
        Soundness::Sound => "sound",
        Soundness::SeveralKeys => "more than one key",
        Soundness::Short => "shorter mate",
        Soundness::Unsound => "does not hold",
        Soundness::Illegal => "cannot be used",
        Soundness::Undecided => "not decided in the time allowed",
    }
}

/// What a whole file comes to, in a sentence.
pub fn overview(positions: &[CheckedPosition]) -> String {
    let sound = positions
        .iter()
        .filter(|p| p.report.verdict == Soundness::Sound)
        .count();
    match positions.len() {
        1 if sound == 1 => "One position, and it is sound.".into(),
        1 if positions[0].report.verdict == Soundness::Illegal => {
            "Nothing here can be used as it is.".into()
        }
        1 => "One position, and it needs a look.".into(),
        all if sound == all => format!("{all} positions, all sound."),
        all => format!("{all} positions, {sound} of them sound."),
    }
}

/// Page `at` of a report.
pub fn page(number: u64, report: &Opened, at: usize, queue: &[QueueItem]) -> Letter {
    let last = report.positions.len().saturating_sub(1);
    let at = at.min(last);
    let Some(position) = report.positions.get(at) else {
        return Letter::text("There was no position in the file.");
    };
    let mut parts = vec![format!(
        "**{} of {}** · {}\n{}",
        at + 1,
        report.positions.len(),
        words::plain(&position.report.id),
        overview(&report.positions)
    )];
    parts.extend(known_before(position));
    parts.extend(said(position));
    let waits = queue
        .iter()
        .any(|item| Some(item.position) == position.position);
    if waits {
        parts.push("It is in the week.".into());
    }
    let mut letter = Letter::text(words::short(&parts.join("\n\n"), words::MESSAGE));
    if let Some(picture) = &position.picture {
        letter = letter.picture("position", picture);
    }
    if last > 0 {
        let report = number;
        let turn = |label: &str, to: Option<usize>| {
            buttons::turn(|at| Pressed::Page { report, at }.id(), label, at, to)
        };
        letter = letter.row(CreateActionRow::Buttons(vec![
            turn("Previous", at.checked_sub(1)),
            turn("Next", Some(at + 1).filter(|to| *to <= last)),
        ]));
    }
    if position.fresh.is_some() {
        let choose = |label: &str, choice| {
            let report = number;
            let id = Pressed::Same { report, at, choice }.id();
            buttons::button(id, label, ButtonStyle::Secondary)
        };
        letter = letter.row(CreateActionRow::Buttons(vec![
            choose("Keep the old one", SameChoice::Keep),
            choose("Take the new one", SameChoice::New),
            choose("Keep both topics", SameChoice::Both),
        ]));
    }
    if let Some(row) = queueing(&report.place, position).filter(|_| !waits) {
        letter = letter.row(row);
    }
    letter
}

/// What was known of a position before: another version of it, and when it was posted.
fn known_before(position: &CheckedPosition) -> Vec<String> {
    let mut parts = Vec::new();
    if let Some(same) = &position.same {
        parts.push(format!("⚠ {}", words::plain(&same.words())));
    }
    if let Some(posted) = position.posted {
        parts.push(format!(
            "⚠ Posted before, as No. {} on {}.",
            posted.number,
            words::moment(posted.at)
        ));
    }
    parts
}

/// The coach's words, by when they go out.
fn coach_words(position: &CheckedPosition) -> Vec<String> {
    let said = &position.words;
    let notes = note_lines(&said.notes).join("\n");
    [
        ("With the post", &said.with_post),
        ("At the reveal", &said.at_reveal),
        ("Beside the moves, at the reveal", &notes),
    ]
    .into_iter()
    .filter(|(_, text)| !text.is_empty())
    .map(|(when, text)| format!("{when}:\n{}", words::plain(&words::short(text, 500))))
    .collect()
}

/// What the check says of one position, part by part.
fn said(position: &CheckedPosition) -> Vec<String> {
    let report = &position.report;
    let mut parts = Vec::new();
    let task = report
        .stipulation
        .map(|task| format!("{task}, "))
        .unwrap_or_default();
    let proved = match (report.proved, report.depth) {
        (true, _) => " (proved)".to_owned(),
        (false, Some(depth)) => format!(" (judged by search, {depth} half-moves deep)"),
        (false, None) => String::new(),
    };
    let topics: Vec<String> = position
        .topic
        .iter()
        .chain(&position.further_topics)
        .map(|topic| words::plain(topic))
        .collect();
    let topic = (!topics.is_empty()).then(|| format!("\nTopic: {}", topics.join(", also ")));
    parts.push(format!(
        "{}{}{proved}{}",
        words::plain(&task),
        soundness(report.verdict),
        topic.unwrap_or_default()
    ));
    if !report.message.is_empty() {
        parts.push(words::plain(&report.message));
    }
    if !report.warnings.is_empty() {
        let lines: Vec<String> = report
            .warnings
            .iter()
            .map(|w| format!("⚠ {}", words::plain(w)))
            .collect();
        parts.push(lines.join("\n"));
    }
    match report.keys.as_slice() {
        [] => {}
        [key] => parts.push(format!("Key: **{}**", words::plain(key))),
        keys => {
            let keys: Vec<String> = keys.iter().map(|key| words::plain(key)).collect();
            parts.push(format!("Keys: **{}**", keys.join(", ")));
        }
    }
    for (name, lines) in [("Variations", &report.variations), ("Tries", &report.tries)] {
        if !lines.is_empty() {
            let mut shown: Vec<String> = lines
                .iter()
                .take(MOST_LINES)
                .map(|line| words::plain(line))
                .collect();
            if lines.len() > MOST_LINES {
                shown.push(format!("… and {} more", lines.len() - MOST_LINES));
            }
            parts.push(format!("{name}:\n{}", shown.join("\n")));
        }
    }
    if !report.patterns.is_empty() {
        let patterns: Vec<String> = report.patterns.iter().map(|p| words::plain(p)).collect();
        parts.push(format!("The mate: {}", patterns.join(", ")));
    }
    parts.extend(coach_words(position));
    parts
}

/// A button that puts the position into the week, where that can be.
fn queueing(place: &Place, position: &CheckedPosition) -> Option<CreateActionRow> {
    let id = position.position?;
    let put = |anyway, again| {
        let position = id;
        Press::Queue {
            position,
            anyway,
            again,
        }
        .id(place)
    };
    let button = match position.report.verdict {
        Soundness::Illegal => return None,
        Soundness::Sound if position.posted.is_some() => buttons::button(
            put(false, true),
            "Put into the week again",
            ButtonStyle::Secondary,
        ),
        Soundness::Sound => {
            buttons::button(put(false, false), "Put into the week", ButtonStyle::Primary)
        }
        _ if position.posted.is_some() => buttons::button(
            put(true, true),
            "Post it anyway, and again: put into the week",
            ButtonStyle::Danger,
        ),
        _ => buttons::button(
            put(true, false),
            "Post it anyway: put into the week",
            ButtonStyle::Danger,
        ),
    };
    Some(CreateActionRow::Buttons(vec![button]))
}
