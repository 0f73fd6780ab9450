//! The check report of a coach's file, a position a page.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use super::reveal;
use crate::{
    chat::{
        common::same::same_again,
        discord::{
            buttons::{self, Press, Pressed, Way},
            fit,
            house::Opened,
            letter::Letter,
            text::{Coach, List, Moment, Moves, Plain, Study, number},
        },
    },
    desk::{
        CheckedPosition, CoachWords, Place, QueueItem, SameChoice, Soundness, TopicCheck,
        note_lines,
    },
    words::Words,
};

/// How many variations and tries a page shows.
const MOST_LINES: usize = 12;

/// The verdict of a check in words.
pub fn soundness(words: &Words, soundness: Soundness) -> String {
    words.say(&Coach::SoundnessWord { soundness })
}

/// What a whole file comes to, in a sentence.
fn overview(words: &Words, positions: &[CheckedPosition]) -> String {
    let sound = positions
        .iter()
        .filter(|p| p.report.verdict == Soundness::Sound)
        .count();
    let (all, sound) = (number(positions.len()), number(sound));
    words.say(&match positions {
        [_] if sound == 1 => Coach::OneSound,
        [only] if only.report.verdict == Soundness::Illegal => Coach::OneUseless,
        [_] => Coach::OneDoubtful,
        _ if sound == all => Coach::AllSound { all },
        _ => Coach::SomeSound { all, sound },
    })
}

/// Page `at` of a report.
pub fn page(words: &Words, opened: u64, report: &Opened, at: usize, queue: &[QueueItem]) -> Letter {
    let last = report.positions.len().saturating_sub(1);
    let at = at.min(last);
    let Some(position) = report.positions.get(at) else {
        return Letter::text(words.say(&Coach::NoPositionInFile));
    };
    let head = words.say(&Coach::ReportHead {
        at: number(at + 1),
        of: number(report.positions.len()),
        name: Plain::of(&position.report.id),
    });
    let mut parts = vec![format!("{head}\n{}", overview(words, &report.positions))];
    parts.extend(known_before(words, position));
    parts.extend(said(words, position));
    let waits = queue
        .iter()
        .filter_map(|item| item.holds.position())
        .any(|waits| Some(waits) == position.position);
    if waits {
        parts.push(words.say(&Coach::InTheWeek));
    }
    let mut letter = Letter::text(fit::short(&parts.join("\n\n"), fit::MESSAGE));
    if let Some(picture) = &position.picture {
        letter = letter.picture("position", picture, words);
    }
    if last > 0 {
        let report = opened;
        let turn = |way, label: Study, to: Option<usize>| {
            let label = words.say(&label);
            buttons::turn(|at| Pressed::Page { report, at }.id(), way, &label, at, to)
        };
        letter = letter.row(CreateActionRow::Buttons(vec![
            turn(Way::Back, Study::ButtonPrevious, at.checked_sub(1)),
            turn(
                Way::On,
                Study::ButtonNext,
                Some(at + 1).filter(|to| *to <= last),
            ),
        ]));
    }
    if position.fresh.is_some() {
        let choose = |label: Coach, choice| {
            let report = opened;
            let id = Pressed::Same { report, at, choice }.id();
            buttons::button(id, &words.say(&label), ButtonStyle::Secondary)
        };
        letter = letter.row(CreateActionRow::Buttons(vec![
            choose(Coach::ButtonKeepOld, SameChoice::Keep),
            choose(Coach::ButtonTakeNew, SameChoice::New),
            choose(Coach::ButtonKeepBoth, SameChoice::Both),
        ]));
    }
    if let Some(row) = queueing(words, &report.place, position).filter(|_| !waits) {
        letter = letter.row(row);
    }
    letter
}

/// What was known of a position before: another version of it, and when it was posted.
fn known_before(words: &Words, position: &CheckedPosition) -> Vec<String> {
    let mut parts = Vec::new();
    let same = position.same.as_ref();
    parts.extend(same.map(|same| format!("⚠ {}", same_again(words, same, fit::plain))));
    parts.extend(position.posted.map(|posted| {
        words.say(&Coach::PostedBefore {
            number: posted.number,
            at: Moment::of(posted.at),
        })
    }));
    parts
}

/// The coach's words, by when they go out.
pub fn coach_words(words: &Words, said: &CoachWords) -> Vec<String> {
    let notes = note_lines(&said.notes, |moves| words.moves(moves)).join("\n");
    [
        (Coach::WithThePost, &said.with_post),
        (Coach::AtTheReveal, &said.at_reveal),
        (Coach::BesideTheMoves, &notes),
    ]
    .into_iter()
    .filter(|(_, text)| !text.is_empty())
    .map(|(when, text)| {
        let text = fit::plain(&fit::short(text, 500));
        format!("{}\n{text}", words.say(&when))
    })
    .collect()
}

/// What the check says of one position, part by part.
fn said(words: &Words, position: &CheckedPosition) -> Vec<String> {
    let report = &position.report;
    let mut parts = Vec::new();
    let verdict = soundness(words, report.verdict);
    let verdict = match (report.proved, report.depth) {
        (true, _) => words.say(&Coach::Proved { verdict }),
        (false, Some(depth)) => words.say(&Coach::JudgedBySearch { verdict, depth }),
        (false, None) => verdict,
    };
    let mut head = match report.stipulation {
        Some(task) => format!("{}, {verdict}", fit::plain(&task.to_string())),
        None => verdict,
    };
    if let Some(topics) = topics(words, position.topic.as_deref(), &position.further_topics) {
        head.push('\n');
        head.push_str(&topics);
    }
    parts.push(head);
    if !report.message.is_empty() {
        parts.push(fit::plain(&words.tell(&report.message)));
    }
    if !report.warnings.is_empty() {
        let lines: Vec<String> = report
            .warnings
            .iter()
            .map(|told| {
                let note = Plain::of(&words.say(told));
                words.say(&Coach::WarnedOf { note })
            })
            .collect();
        parts.push(lines.join("\n"));
    }
    match report.keys.as_slice() {
        [] => {}
        [key] => parts.push(words.say(&Coach::KeyIs {
            key: Moves::of(key),
        })),
        keys => parts.push(words.say(&Coach::KeysAre {
            keys: List {
                list: keys.iter().map(|key| Moves::of(key)).collect(),
            },
        })),
    }
    for (head, lines) in [
        (Coach::VariationsAre, &report.variations),
        (Coach::TriesAre, &report.tries),
    ] {
        if !lines.is_empty() {
            let mut shown = vec![words.say(&head)];
            let first = lines.iter().take(MOST_LINES);
            shown.extend(first.map(|line| words.say(&Moves::of(line))));
            if lines.len() > MOST_LINES {
                let more = number(lines.len() - MOST_LINES);
                shown.push(words.say(&Study::AndMore { more }));
            }
            parts.push(shown.join("\n"));
        }
    }
    parts.extend(reveal::patterns(words, &report.patterns));
    let check = position.topic_check();
    parts.extend(check.and_then(|check| topic_check(words, &check)));
    parts.extend(coach_words(words, &position.words));
    parts
}

/// How a position stands to its topic, where that means a pattern.
pub fn topic_check(words: &Words, check: &TopicCheck) -> Option<String> {
    let said = fit::plain(&words.tell(&check.facts));
    match (said.is_empty(), check.is_doubtful()) {
        (true, _) => None,
        (false, true) => Some(format!("⚠ {said}")),
        (false, false) => Some(said),
    }
}

/// The topics of a position, where it has any.
fn topics(words: &Words, first: Option<&str>, further: &[String]) -> Option<String> {
    let mut all = first.into_iter().chain(further.iter().map(String::as_str));
    let topic = Plain::of(all.next()?);
    let further: Vec<Plain> = all.map(Plain::of).collect();
    Some(words.say(&match further.is_empty() {
        true => Coach::TopicIs { topic },
        false => Coach::TopicsAre {
            topic,
            further: List { list: further },
        },
    }))
}

/// What can be done with a position that is kept and waits in no week: it is put there, where that can be,
/// and its words are changed.
fn queueing(words: &Words, place: &Place, position: &CheckedPosition) -> Option<CreateActionRow> {
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
    let posted = position.posted.is_some();
    let sound = position.report.verdict == Soundness::Sound;
    let (label, style) = match (position.report.verdict, posted) {
        // What cannot be used has no words to go out.
        (Soundness::Illegal, _) => return None,
        (Soundness::Sound, true) => (Coach::ButtonQueueAgain, ButtonStyle::Secondary),
        (Soundness::Sound, false) => (Coach::ButtonQueue, ButtonStyle::Primary),
        (_, true) => (Coach::ButtonQueueAnywayAgain, ButtonStyle::Danger),
        (_, false) => (Coach::ButtonQueueAnyway, ButtonStyle::Danger),
    };
    let button = buttons::button(put(!sound, posted), &words.say(&label), style);
    let said = buttons::words_on(words, place, id);
    let edit = buttons::edit_of(words, place, id);
    Some(CreateActionRow::Buttons(vec![button, said, edit]))
}
