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
        letter::Letter,
        words,
    },
    desk::{Place, QueueItem, Soundness},
};

/// The most a menu offers.
const MENU: usize = 25;

/// The week with one item picked out.
pub fn letter(
    place: &Place,
    queue: &[QueueItem],
    paused: Option<Option<DateTime<Utc>>>,
    picked: Option<i64>,
) -> Letter {
    let mut parts = Vec::new();
    match paused {
        Some(Some(until)) => parts.push(format!("**Paused** until {}.", words::moment(until))),
        Some(None) => parts.push("**Paused** until you resume.".to_owned()),
        None => {}
    }
    if queue.is_empty() {
        parts.push("Nothing waits. Attach a file to /coach check, and put the sound positions into the week.".into());
        return Letter::text(parts.join("\n\n"));
    }
    let picked = picked.filter(|picked| queue.iter().any(|item| item.id == *picked));
    let lines: Vec<String> = queue
        .iter()
        .take(MENU)
        .enumerate()
        .map(|(i, item)| line(i, item, picked == Some(item.id)))
        .collect();
    parts.push(format!("**The week**\n{}", lines.join("\n")));
    if queue.len() > MENU {
        parts.push(format!("… and {} more behind them", queue.len() - MENU));
    }
    let options = queue
        .iter()
        .take(MENU)
        .enumerate()
        .map(|(i, item)| {
            CreateSelectMenuOption::new(label(i, item), item.id.to_string())
                .default_selection(picked == Some(item.id))
        })
        .collect();
    let menu = CreateSelectMenu::new(
        Press::Week(WeekPress::Pick, 0).id(place),
        CreateSelectMenuKind::String { options },
    )
    .placeholder("Pick one to move, look at, post or take out");
    let mut letter = Letter::text(parts.join("\n\n")).row(CreateActionRow::SelectMenu(menu));
    if let Some(picked) = picked {
        let at = queue.iter().position(|item| item.id == picked).unwrap_or(0);
        let act = |press, label: &str, style| {
            buttons::button(Press::Week(press, picked).id(place), label, style)
        };
        letter = letter.row(CreateActionRow::Buttons(vec![
            act(WeekPress::Earlier, "Earlier", ButtonStyle::Secondary).disabled(at == 0),
            act(WeekPress::Later, "Later", ButtonStyle::Secondary).disabled(at + 1 == queue.len()),
            act(WeekPress::Look, "Look at it", ButtonStyle::Secondary),
            act(WeekPress::Post, "Post now", ButtonStyle::Primary),
            act(WeekPress::Out, "Take out", ButtonStyle::Danger),
        ]));
    }
    letter
}

fn line(i: usize, item: &QueueItem, picked: bool) -> String {
    let when = match item.due_at {
        Some(at) => words::moment(at),
        None => "no time yet".into(),
    };
    let fixed = if item.fixed { " (fixed)" } else { "" };
    let unsound = match item.soundness {
        Soundness::Sound => String::new(),
        other => format!(" · **{}**", soundness(other)),
    };
    let again = match item.posted {
        None => String::new(),
        Some(posted) => format!(" · again, posted before as No. {}", posted.number),
    };
    let mut topic = item.topic.as_deref().unwrap_or("no topic").to_owned();
    for further in &item.further_topics {
        topic.push_str(&format!(", also {further}"));
    }
    let text = format!(
        "`{:>2}` {when}{fixed} · {} · {}{unsound}{again}",
        i + 1,
        words::plain(&topic),
        words::plain(&format!("{} ({})", item.stipulation, item.source)),
    );
    if picked { format!("→ {text}") } else { text }
}

/// A queued position in a menu or among choices.
pub fn label(i: usize, item: &QueueItem) -> String {
    let topic = item.topic.as_deref().unwrap_or("no topic");
    words::short(
        &format!(
            "{}. {} · {topic} · {}",
            i + 1,
            item.stipulation,
            item.source
        ),
        words::OPTION,
    )
}
