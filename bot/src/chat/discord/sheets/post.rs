//! A post: one message with the diagram, topic, task, and when it closes.

use crate::{
    chat::discord::{
        buttons,
        letter::Letter,
        text::{Count, Label, Moment, Posting},
        words,
    },
    desk::{Mode, Place, PostSheet},
    words::{self as languages, Words},
};

/// The first words of a post's message; by them it is found again in the channel.
fn heading(words: &Words, number: i64) -> String {
    words.say(&Posting::PostHeading { number })
}

/// The same in every language: the group's may have changed since.
pub fn headings(number: i64) -> Vec<String> {
    let all = languages::tags().map(languages::words);
    all.map(|words| heading(words, number)).collect()
}

/// File name of a post's picture, without its ending: it says nothing of the position.
pub fn file_name(number: i64) -> String {
    format!("position-{number}")
}

/// The post as everyone sees it.
pub fn letter(words: &Words, place: &Place, sheet: &PostSheet, mode: Mode, thread: bool) -> Letter {
    let mut letter = preview(words, sheet, mode, thread);
    let row = buttons::under_post(words, place, sheet.post);
    letter.rows.push(row);
    letter
}

/// The post without its buttons, as a coach sees it beforehand; whether it will have a thread is told.
pub fn preview(words: &Words, sheet: &PostSheet, mode: Mode, thread: bool) -> Letter {
    let (closes, away) = (Moment::of(sheet.closes_at), Moment::away(sheet.closes_at));
    let kept = words.say(&match mode {
        Mode::Sealed => Posting::AnswersSealed { closes, away },
        Mode::Open => Posting::AnswersOpen { closes, away },
    });
    let how = words.say(&Posting::HowToAnswer { thread });
    let above = format!("{}\n{}", title(words, sheet), task(words, sheet));
    let text = with_words(&above, sheet, &format!("{kept}\n{how}"));
    Letter::text(text).picture(&file_name(sheet.number), &sheet.picture)
}

/// What is left of the text when the post is closed.
pub fn closed(words: &Words, sheet: &PostSheet) -> String {
    let above = format!("{}\n{}", title(words, sheet), task(words, sheet));
    with_words(&above, sheet, &words.say(&Posting::PostClosed))
}

/// The task in a sentence.
fn task(words: &Words, sheet: &PostSheet) -> String {
    let side = sheet.side;
    let mate = sheet.stipulation.strip_prefix('#');
    words.say(&match (sheet.stipulation.as_str(), mate.map(str::parse)) {
        (_, Some(Ok(moves))) => Posting::TaskMate {
            side,
            moves: Count::of(moves),
        },
        ("+", _) => Posting::TaskWin { side },
        ("=", _) => Posting::TaskDraw { side },
        _ => return words::plain(&sheet.task),
    })
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
fn title(words: &Words, sheet: &PostSheet) -> String {
    let topic = sheet
        .topic
        .as_deref()
        .map(|topic| format!(" · {}", words::plain(topic)));
    format!(
        "{}{} · {}",
        heading(words, sheet.number),
        topic.unwrap_or_default(),
        words::plain(&sheet.stipulation)
    )
}

/// Name of the thread for talk.
pub fn thread_name(words: &Words, sheet: &PostSheet) -> String {
    let number = sheet.number;
    let name = words.say(&match &sheet.topic {
        Some(topic) => Posting::ThreadNameTopic {
            number,
            topic: Label::of(topic),
        },
        None => Posting::ThreadName { number },
    });
    words::short(&name, words::THREAD)
}
