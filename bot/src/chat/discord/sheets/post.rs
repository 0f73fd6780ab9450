//! A post: one message with the diagram, topic, task, and when it closes.

use crate::{
    chat::discord::{buttons, letter::Letter, words},
    desk::{Mode, Place, PostSheet},
};

/// The first words of a post's message; by them it is found again in the channel.
pub fn heading(number: i64) -> String {
    format!("**Position {number}**")
}

/// File name of a post's picture, without its ending: it says nothing of the position.
pub fn file_name(number: i64) -> String {
    format!("position-{number}")
}

/// The post as everyone sees it.
pub fn letter(place: &Place, sheet: &PostSheet, mode: Mode, thread: bool) -> Letter {
    let mut letter = preview(sheet, mode, thread);
    letter.rows.push(buttons::under_post(place, sheet.post));
    letter
}

/// The post without its buttons, as a coach sees it beforehand; whether it will have a thread is told.
pub fn preview(sheet: &PostSheet, mode: Mode, thread: bool) -> Letter {
    let talk = match thread {
        true => " Talk goes into the thread.",
        false => "",
    };
    let kept = match mode {
        Mode::Sealed => "Answers are sealed",
        Mode::Open => "Verdicts come behind spoiler marks, and answers are taken",
    };
    let above = format!("{}\n{}", title(sheet), words::plain(&sheet.task));
    let below = format!(
        "{kept} until {} ({}).\n-# Press Answer, write to me directly, reply to this message, or use /study answer.{talk}",
        words::moment(sheet.closes_at),
        words::away(sheet.closes_at),
    );
    let text = with_words(&above, sheet, &below);
    Letter::text(text).picture(&file_name(sheet.number), &sheet.picture)
}

/// What is left of the text when the post is closed.
pub fn closed(sheet: &PostSheet) -> String {
    let above = format!("{}\n{}", title(sheet), words::plain(&sheet.task));
    with_words(&above, sheet, "Closed; the solution is below.")
}

/// A post's text with the coach's words in it, where there are some. A post is one message: words that
/// do not fit are cut, which the most that a coach may give a post come near only where every
/// character is one that Discord needs escaped.
fn with_words(above: &str, sheet: &PostSheet, below: &str) -> String {
    if sheet.words.is_empty() {
        return format!("{above}\n{below}");
    }
    let room = words::MESSAGE.saturating_sub(above.chars().count() + below.chars().count() + 4);
    let said = words::plain(&sheet.words).replace('\n', "\n> ");
    format!("{above}\n> {}\n{below}", words::short(&said, room))
}

/// Number, topic and task in one line.
pub fn title(sheet: &PostSheet) -> String {
    let topic = sheet
        .topic
        .as_deref()
        .map(|topic| format!(" · {}", words::plain(topic)));
    format!(
        "{}{} · {}",
        heading(sheet.number),
        topic.unwrap_or_default(),
        words::plain(&sheet.stipulation)
    )
}

/// Name of the thread for talk.
pub fn thread_name(sheet: &PostSheet) -> String {
    let name = match &sheet.topic {
        Some(topic) => format!("Position {} · {topic}", sheet.number),
        None => format!("Position {}", sheet.number),
    };
    words::short(&name, words::THREAD)
}
