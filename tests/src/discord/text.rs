//! Messages as text that a person can read and a snapshot can keep: ids give way to names, times to
//! words.

use std::collections::BTreeMap;

use serde_json::Value;

use super::{
    messages::list,
    world::{Message, World},
};

/// The words of a message: its content and the texts of its embeds.
pub fn words(message: &Message) -> String {
    let mut out = vec![message.content.clone()];
    for embed in &message.embeds {
        for part in [
            &embed["title"],
            &embed["description"],
            &embed["footer"]["text"],
        ] {
            out.extend(part.as_str().map(str::to_string));
        }
        for field in list(&embed["fields"]) {
            for part in [&field["name"], &field["value"]] {
                out.extend(part.as_str().map(str::to_string));
            }
        }
    }
    out.retain(|text| !text.is_empty());
    out.join("\n")
}

/// A message with everything a reader sees, and whether it is private.
pub fn whole(world: &World, message: &Message) -> String {
    let mut out = Vec::new();
    let place = world.channel(message.channel);
    let where_ = match (message.only, place) {
        (Some(user), _) => format!("to {} alone", world.name_in(None, user)),
        (None, Some(c)) if c.name.is_empty() => {
            format!("to {} directly", world.name_in(None, c.owner))
        }
        (None, Some(c)) => format!("in #{}", c.name),
        (None, None) => "nowhere".into(),
    };
    out.push(format!(
        "── {} {where_}",
        world.name_in(None, message.author)
    ));
    if let Some(answered) = message.reference.and_then(|id| world.messages.get(&id)) {
        let first = answered.content.lines().next().unwrap_or_default();
        let short: String = first.chars().take(60).collect();
        out.push(format!("   (answering \"{short}\")"));
    }
    if !message.content.is_empty() {
        out.push(message.content.clone());
    }
    for embed in &message.embeds {
        out.push("┌".into());
        let text = |value: &Value| value.as_str().map(|text| text.replace('\n', "\n│ "));
        if let Some(title) = text(&embed["title"]) {
            out.push(format!("│ # {title}"));
        }
        if let Some(body) = text(&embed["description"]) {
            out.push(format!("│ {body}"));
        }
        for field in list(&embed["fields"]) {
            out.push(format!(
                "│ ## {}",
                field["name"].as_str().unwrap_or_default()
            ));
            out.push(format!("│ {}", text(&field["value"]).unwrap_or_default()));
        }
        if let Some(url) = embed["image"]["url"].as_str() {
            out.push(format!(
                "│ picture: {}",
                url.rsplit('/').next().unwrap_or(url)
            ));
        }
        if let Some(footer) = text(&embed["footer"]["text"]) {
            out.push(format!("│ _{footer}_"));
        }
        out.push("└".into());
    }
    for file in message
        .attachments
        .iter()
        .filter_map(|id| world.files.get(id))
    {
        out.push(format!("[file {} ({})]", file.name, file.kind));
        if let Some(alt) = &file.description {
            out.push(format!("  alt: {alt}"));
        }
    }
    for row in &message.components {
        let parts: Vec<String> = list(&row["components"])
            .iter()
            .map(|part| {
                let label = part["label"]
                    .as_str()
                    .or(part["placeholder"].as_str())
                    .unwrap_or("?");
                let off = if part["disabled"] == true {
                    " (off)"
                } else {
                    ""
                };
                let options: Vec<String> = list(&part["options"])
                    .iter()
                    .filter_map(|o| o["label"].as_str().map(str::to_string))
                    .collect();
                if options.is_empty() {
                    format!("[{label}{off}]")
                } else {
                    format!("[{label} ▾ {}]", options.join(" / "))
                }
            })
            .collect();
        out.push(parts.join(" "));
    }
    for (emoji, user) in &message.reactions {
        out.push(format!("{emoji} by {}", world.name_in(None, *user)));
    }
    tidy(world, &out.join("\n"))
}

/// A modal as text.
pub fn modal(modal: &Value) -> String {
    let mut out = vec![format!(
        "── a form opens: {}",
        modal["title"].as_str().unwrap_or_default()
    )];
    for row in list(&modal["components"]) {
        for input in list(&row["components"]) {
            let text = |key: &str| input[key].as_str().unwrap_or_default().to_string();
            out.push(format!(
                "{}: [{}{}]",
                text("label"),
                text("value"),
                text("placeholder")
            ));
        }
    }
    out.join("\n")
}

/// Puts names in the place of ids and words in the place of moments.
pub fn tidy(world: &World, text: &str) -> String {
    let mut names: BTreeMap<u64, String> = BTreeMap::new();
    names.extend(
        world
            .users
            .values()
            .map(|u| (u.id, format!("@{}", u.shown))),
    );
    names.extend(
        world
            .channels
            .values()
            .map(|c| (c.id, format!("#{}", c.name))),
    );
    let mut text = text.to_string();
    for (id, name) in names {
        text = text.replace(&id.to_string(), &format!("({name})"));
    }
    while let Some(start) = text.find("<t:1").or_else(|| text.find("<t:2")) {
        let Some(length) = text[start..].find('>') else {
            break;
        };
        let kind = text[start..start + length]
            .rsplit(':')
            .next()
            .unwrap_or_default()
            .to_string();
        text.replace_range(start..=start + length, &format!("⟨moment, {kind}⟩"));
    }
    without_local_times(&text)
}

/// Takes out times such as `18:00 on Thursday, 3 December`.
fn without_local_times(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(" on ") {
        let (before, after) = (&rest[..at], &rest[at + 4..]);
        let clock = before
            .get(before.len().saturating_sub(5)..)
            .is_some_and(|clock| {
                let mut chars = clock.chars();
                clock.len() == 5
                    && chars.all(|c| c.is_ascii_digit() || c == ':')
                    && clock.contains(':')
            });
        let day = after.find(", ").filter(|_| clock).filter(|end| *end < 10);
        let end = day.and_then(|comma| {
            let tail = &after[comma + 2..];
            let digits = tail.find(' ')?;
            tail[..digits].bytes().all(|b| b.is_ascii_digit()).then(|| {
                let month = tail[digits + 1..]
                    .find(|c: char| !c.is_ascii_alphabetic())
                    .unwrap_or(tail.len() - digits - 1);
                comma + 2 + digits + 1 + month
            })
        });
        match end {
            Some(end) => {
                out.push_str(&before[..before.len() - 5]);
                out.push_str("⟨local time⟩");
                rest = &after[end..];
            }
            None => {
                out.push_str(&rest[..at + 4]);
                rest = after;
            }
        }
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn local_times_give_way() {
        assert_eq!(
            without_local_times("It closes at 18:00 on Thursday, 3 December. On we go, on time."),
            "It closes at ⟨local time⟩. On we go, on time."
        );
    }
}
