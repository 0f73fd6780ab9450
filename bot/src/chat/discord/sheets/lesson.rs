//! A lesson as its coach reads it, step by step.

use super::report;
use crate::{
    chat::discord::{
        fit,
        letter::Letter,
        text::{Coach, List, Plain, number},
    },
    desk::{
        KindName, LessonRow, LessonSheet, NewPostContent, PartHolds, PartSheet, PartStands,
        note_lines,
    },
    words::Words,
};

/// The group's lessons, a line each.
pub fn rows(words: &Words, lessons: &[LessonRow]) -> Letter {
    if lessons.is_empty() {
        return Letter::text(words.say(&Coach::NoLessonsYet));
    }
    let line = |row: &LessonRow| {
        words.say(&Coach::LessonRow {
            title: Plain::of(&row.title),
            steps: row.steps,
            parts: number(row.parts),
            waiting: number(row.waiting),
            posted: number(row.posted),
        })
    };
    let lines: Vec<String> = lessons.iter().map(line).collect();
    Letter::text(lines.join("\n"))
}

/// A lesson under `above`, which may be empty.
pub fn page(words: &Words, sheet: &LessonSheet, above: &str) -> Letter {
    let title = Plain::of(&sheet.title);
    let head = words.say(&match &sheet.topic {
        None => Coach::LessonHead { title },
        Some(topic) => Coach::LessonHeadTopic {
            title,
            topic: Plain::of(topic),
        },
    });
    let mut blocks = vec![head];
    for step in &sheet.steps {
        if let Some(report) = &step.trouble {
            blocks.push(fit::plain(&words.tell(&report.message)));
            continue;
        }
        let mut lines = vec![words.say(&Coach::LessonStepIs {
            step: step.step,
            contrast: step.contrast,
        })];
        for part in &step.parts {
            lines.extend(told(words, part, step.contrast));
        }
        blocks.push(lines.join("\n"));
    }
    if !above.is_empty() {
        blocks.insert(0, above.to_owned());
    }
    Letter::text(blocks.join("\n\n"))
}

fn told(words: &Words, part: &PartSheet, contrast: bool) -> Vec<String> {
    let mut lines: Vec<String> = note_lines(&part.lead, |moves| words.moves(moves))
        .iter()
        .map(|line| fit::plain(line))
        .collect();
    lines.push(match &part.holds {
        PartHolds::Stop(checked) => {
            let task = checked.report.stipulation;
            words.say(&Coach::LessonStop {
                task: Plain::of(&task.map_or_else(String::new, |task| task.to_string())),
                soundness: checked.report.verdict,
            })
        }
        PartHolds::Written(written) => {
            let (kind, said) = match written {
                NewPostContent::Question { words, .. } => (KindName::Question, words),
                NewPostContent::Words { words, .. } => (KindName::Words, words),
            };
            words.say(&Coach::LessonWritten {
                kind,
                words: Plain::quote(said),
            })
        }
    });
    if let PartHolds::Stop(checked) = &part.holds {
        if !checked.report.message.is_empty() {
            lines.push(fit::plain(&words.tell(&checked.report.message)));
        }
        // Where the topic is meant to fail, nothing is said of it.
        let held = checked.topic_check().filter(|_| !contrast);
        lines.extend(held.and_then(|held| report::topic_check(words, &held)));
        let warnings = checked.report.warnings.iter();
        lines.extend(warnings.map(|warning| fit::plain(&words.say(warning))));
    }
    if !part.waits_for.is_empty() {
        let steps = part.waits_for.iter();
        lines.push(
            words.say(&Coach::LessonWaits {
                number: number(part.waits_for.len()),
                steps: List {
                    list: steps
                        .map(|(step, _)| Plain::of(&step.to_string()))
                        .collect(),
                },
            }),
        );
    }
    lines.extend(match part.stands {
        PartStands::Kept => None,
        PartStands::AsBefore { step } => Some(words.say(&Coach::LessonAsBefore { step })),
        PartStands::NotKept => Some(words.say(&Coach::LessonNotKeptPart)),
        PartStands::Waits { .. } => Some(words.say(&Coach::LessonWaitsInWeek)),
        PartStands::Open { number } => Some(words.say(&Coach::LessonOpenPart { number })),
        PartStands::Closed { number } => Some(words.say(&Coach::LessonClosedPart { number })),
    });
    lines
}
