//! The week: what waits, in order, with buttons to move it about.

use chrono::{DateTime, Utc};
use poise::serenity_prelude as serenity;
use serenity::{
    ButtonStyle, CreateActionRow, CreateSelectMenu, CreateSelectMenuKind, CreateSelectMenuOption,
};

use super::report::soundness;
use crate::{
    chat::discord::{
        buttons::{self, Press, WeekPress},
        fit,
        letter::Letter,
        text::{self, Coach, List, Moment, Plain, number},
    },
    desk::{ItemId, NoTime, Place, QueueItem, Queued, Soundness, TakenOut, WaitsFor},
    words::Words,
};

/// The most a menu offers.
const MENU: usize = 25;

/// The week with one item picked out.
pub fn letter(
    words: &Words,
    place: &Place,
    queue: &[QueueItem],
    paused: Option<Option<DateTime<Utc>>>,
    picked: Option<ItemId>,
) -> Letter {
    let mut parts = Vec::new();
    match paused {
        Some(Some(until)) => parts.push(words.say(&Coach::PausedUntil {
            until: Moment::of(until),
        })),
        Some(None) => parts.push(words.say(&Coach::PausedForNow)),
        None => {}
    }
    if queue.is_empty() {
        parts.push(words.say(&Coach::NothingWaits));
        return Letter::text(parts.join("\n\n"));
    }
    let picked = picked.filter(|picked| queue.iter().any(|item| item.id == *picked));
    let lines: Vec<String> = queue
        .iter()
        .take(MENU)
        .enumerate()
        .map(|(i, item)| line(words, i, item, picked == Some(item.id)))
        .collect();
    let head = words.say(&Coach::TheWeek);
    parts.push(format!("{head}\n{}", lines.join("\n")));
    if queue.len() > MENU {
        let more = number(queue.len() - MENU);
        parts.push(words.say(&Coach::MoreBehind { more }));
    }
    let options = queue
        .iter()
        .take(MENU)
        .enumerate()
        .map(|(i, item)| {
            CreateSelectMenuOption::new(label(words, i, item), item.id.to_string())
                .default_selection(picked == Some(item.id))
        })
        .collect();
    let menu = CreateSelectMenu::new(
        Press::Week(WeekPress::Pick, ItemId::of(0)).id(place),
        CreateSelectMenuKind::String { options },
    )
    .placeholder(words.say(&Coach::WeekPick));
    let mut letter = Letter::text(parts.join("\n\n")).row(CreateActionRow::SelectMenu(menu));
    if let Some(picked) = picked {
        let at = queue.iter().position(|item| item.id == picked).unwrap_or(0);
        let act = |press, label: Coach, style| {
            let id = Press::Week(press, picked).id(place);
            buttons::button(id, &words.say(&label), style)
        };
        letter = letter.row(CreateActionRow::Buttons(vec![
            act(
                WeekPress::Earlier,
                Coach::ButtonEarlier,
                ButtonStyle::Secondary,
            )
            .disabled(queue[at].earlier.is_none()),
            act(WeekPress::Later, Coach::ButtonLater, ButtonStyle::Secondary)
                .disabled(queue[at].later.is_none()),
            act(WeekPress::Look, Coach::ButtonLookAt, ButtonStyle::Secondary),
            act(WeekPress::Post, Coach::ButtonPostNow, ButtonStyle::Primary),
            act(WeekPress::Out, Coach::ButtonTakeOut, ButtonStyle::Danger),
        ]));
        // Questions and words are written anew as a whole.
        if let Some(position) = queue[at].holds.position() {
            let said = buttons::words_on(words, place, position);
            let edit = buttons::edit_of(words, place, position);
            letter = letter.row(CreateActionRow::Buttons(vec![said, edit]));
        }
    }
    letter
}

/// The week with what was taken out last, and a button that puts it back.
pub fn with_undo(words: &Words, place: &Place, mut letter: Letter, latest: &TakenOut) -> Letter {
    let told = words.say(&Coach::TakenOutLately {
        item: Plain::of(&latest.holds.label(&latest.source)),
    });
    letter.text = format!("{}\n\n{told}", letter.text);
    let id = Press::PutBack(latest.taken).id(place);
    let label = words.say(&Coach::ButtonPutBack);
    let button = buttons::button(id, &label, ButtonStyle::Secondary);
    letter.row(CreateActionRow::Buttons(vec![button]))
}

fn line(words: &Words, i: usize, item: &QueueItem, picked: bool) -> String {
    let when = match (item.due_at, item.fixed) {
        (Some(at), true) => words.say(&Coach::FixedAt { at: Moment::of(at) }),
        (Some(at), false) => fit::moment(at),
        (None, _) => words.say(&Coach::NoTimeYet {
            why: item.no_time.unwrap_or(NoTime::Waits),
        }),
    };
    let topics = text::topic(words, item.topic.as_deref());
    let topics = match item.holds.further_topics() {
        [] => fit::plain(&topics),
        further => words.say(&Coach::TopicAlso {
            topic: Plain::of(&topics),
            further: List {
                list: further.iter().map(|topic| Plain::of(topic)).collect(),
            },
        }),
    };
    let (sign, label) = (sign(words, item), item.holds.label(&item.source));
    let what = fit::plain(&format!("{sign} ({label})"));
    let mut parts = vec![format!("`{:>2}` {when}", i + 1), topics, what];
    if let Queued::Problem {
        soundness: found,
        posted,
        ..
    } = &item.holds
    {
        if *found != Soundness::Sound {
            parts.push(format!("**{}**", soundness(words, *found)));
        }
        if item.holds.topic_is_doubtful() {
            parts.push(format!("**{}**", words.say(&Coach::TopicNotVerified)));
        }
        if let Some(posted) = posted {
            parts.push(words.say(&Coach::PostedAgain {
                number: posted.number,
            }));
        }
    }
    if let Some(lesson) = &item.lesson {
        parts.push(words.say(&Coach::StepOf {
            title: Plain::of(&lesson.title),
            step: lesson.step,
            steps: lesson.steps,
        }));
    }
    parts.extend(item.waits_for.iter().map(|what| {
        words.say(&match what {
            WaitsFor::Post { number } => Coach::WaitsForPost { number: *number },
            WaitsFor::Item { called, .. } => Coach::WaitsForItem {
                item: Plain::of(called),
            },
        })
    }));
    let text = parts.join(" · ");
    if picked { format!("→ {text}") } else { text }
}

/// A problem's sign, or the name of another kind.
fn sign(words: &Words, item: &QueueItem) -> String {
    let kind = item.holds.kind();
    match kind.task() {
        Some(task) => task.to_owned(),
        None => words.say(&Coach::KindWord { kind: kind.name() }),
    }
}

/// What waits, in a menu or among choices.
pub fn label(words: &Words, i: usize, item: &QueueItem) -> String {
    let topic = text::topic(words, item.topic.as_deref());
    fit::short(
        &format!(
            "{}. {} · {topic} · {}",
            i + 1,
            sign(words, item),
            item.holds.label(&item.source)
        ),
        fit::OPTION,
    )
}
