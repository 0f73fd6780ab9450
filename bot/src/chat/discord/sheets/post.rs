//! A post: one message with the diagram, topic, task, and when it closes.

use crate::{
    chat::discord::{
        buttons, fit,
        letter::Letter,
        text::{Label, Moment, Plain, Posting, Tasked},
    },
    desk::{Content, Mode, Place, PostSheet, note_lines},
    words::{self as languages, Words},
};

/// The first words of a post's message; by them it is found again in the channel.
fn heading(words: &Words, sheet: &PostSheet) -> String {
    words.say(&Posting::PostHeading {
        kind: sheet.content.kind().name(),
        number: sheet.number,
    })
}

/// The same in every language: the group's may have changed since.
pub fn headings(sheet: &PostSheet) -> Vec<String> {
    let all = languages::tags().map(languages::words);
    all.map(|words| heading(words, sheet)).collect()
}

/// File name of a post's picture, without its ending: it says nothing of the position.
pub fn file_name(number: i64) -> String {
    format!("position-{number}")
}

/// The post as everyone sees it.
pub fn letter(words: &Words, place: &Place, sheet: &PostSheet, mode: Mode, thread: bool) -> Letter {
    let mut letter = preview(words, sheet, mode, thread);
    letter.rows.extend(buttons::under_post(words, place, sheet));
    letter
}

/// The post without its buttons, as a coach sees it beforehand; whether it will have a thread is told.
pub fn preview(words: &Words, sheet: &PostSheet, mode: Mode, thread: bool) -> Letter {
    let (closes, away) = (Moment::of(sheet.closes_at), Moment::away(sheet.closes_at));
    let text = match &sheet.content {
        Content::Problem { words: coach, .. } => {
            let kept = words.say(&match mode {
                Mode::Sealed => Posting::AnswersSealed { closes, away },
                Mode::Open => Posting::AnswersOpen { closes, away },
            });
            let how = words.say(&Posting::HowToAnswer { thread });
            let below = format!("{}{kept}\n{how}", lead(words, sheet));
            with_words(&above(words, sheet), coach, &below)
        }
        Content::Question(asked) => {
            let taken = words.say(&Posting::QuestionTaken { closes, away });
            let how = words.say(&Posting::HowToRespond { thread });
            let below = format!("{}{taken}\n{how}", lead(words, sheet));
            with_words(&above(words, sheet), &asked.words, &below)
        }
        Content::Words(said) => with_words(&above(words, sheet), &said.words, &lead(words, sheet)),
    };
    match sheet.content.picture() {
        Some(picture) => Letter::text(text).picture(&file_name(sheet.number), picture, words),
        None => Letter::text(text),
    }
}

/// What is left of the text when the post is closed.
pub fn closed(words: &Words, sheet: &PostSheet) -> String {
    let above = above(words, sheet);
    match &sheet.content {
        Content::Problem { words: coach, .. } => {
            let below = format!("{}{}", lead(words, sheet), words.say(&Posting::PostClosed));
            with_words(&above, coach, &below)
        }
        Content::Question(asked) => {
            let below = format!(
                "{}{}",
                lead(words, sheet),
                words.say(&Posting::QuestionClosed)
            );
            with_words(&above, &asked.words, &below)
        }
        Content::Words(said) => with_words(&above, &said.words, &lead(words, sheet)),
    }
}

/// The moves of a lesson that lead up to a post, or its example, with the words beside them.
fn lead(words: &Words, sheet: &PostSheet) -> String {
    let notes = sheet
        .lesson
        .iter()
        .flat_map(|lesson| note_lines(&lesson.lead, |moves| words.moves(moves)));
    notes
        .map(|line| format!("{}\n", fit::plain(&line)))
        .collect()
}

/// What stands above the coach's words: the title, the step of a lesson, and a problem's task.
fn above(words: &Words, sheet: &PostSheet) -> String {
    let mut title = title(words, sheet);
    if let Some(lesson) = &sheet.lesson {
        let step = words.say(&Posting::LessonStep {
            title: Plain::of(&lesson.title),
            step: lesson.step,
            steps: lesson.steps,
        });
        title.push_str(&format!("\n{step}"));
    }
    match &sheet.content {
        Content::Problem {
            stipulation, side, ..
        } => format!("{title}\n{}", words.say(&Tasked::of(*side, *stipulation))),
        Content::Question(_) | Content::Words(_) => title,
    }
}

/// A post's text with the coach's words in it, where there are some. A post is one message: words that
/// do not fit are cut, which the most that a coach may give a post come near only where every
/// character is one that Discord needs escaped.
fn with_words(above: &str, said: &str, below: &str) -> String {
    if said.is_empty() {
        return format!("{above}\n{below}");
    }
    let room = fit::MESSAGE.saturating_sub(above.chars().count() + below.chars().count() + 4);
    let said = fit::plain(said).replace('\n', "\n> ");
    format!("{above}\n> {}\n{below}", fit::short(&said, room))
        .trim_end()
        .to_owned()
}

/// Number, topic and task in one line.
fn title(words: &Words, sheet: &PostSheet) -> String {
    let topic = match &sheet.topic {
        Some(topic) => format!(" · {}", fit::plain(topic)),
        None => String::new(),
    };
    let sign = match &sheet.content {
        Content::Problem { stipulation, .. } => {
            format!(" · {}", fit::plain(&stipulation.to_string()))
        }
        Content::Question(_) | Content::Words(_) => String::new(),
    };
    format!("{}{topic}{sign}", heading(words, sheet))
}

/// Name of the thread for talk.
pub fn thread_name(words: &Words, sheet: &PostSheet) -> String {
    let (kind, number) = (sheet.content.kind().name(), sheet.number);
    let name = words.say(&match &sheet.topic {
        Some(topic) => Posting::ThreadNameTopic {
            kind,
            number,
            topic: Label::of(topic),
        },
        None => Posting::ThreadName { kind, number },
    });
    fit::short(&name, fit::THREAD)
}
