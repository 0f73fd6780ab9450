//! Messages as text that a person can read and a snapshot can keep: ids give way to names, times to
//! words.

use serde_json::Value;

use super::{
    messages::list,
    world::{File, Message, World},
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

/// Everything a reader sees of a message: text, files with what is in them, buttons and menus.
pub fn body(world: &World, message: &Message) -> String {
    let mut out = Vec::new();
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
        out.push(file_in_words(file));
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
    tidy(world, &out.join("\n"))
}

/// How much of a file of text is written out.
const MOST_LINES: usize = 200;

/// A file: a picture by what is said of it, a text by what is in it.
fn file_in_words(file: &File) -> String {
    let alt = file
        .description
        .as_ref()
        .map(|alt| format!("\n  alt: {}", without_days(alt)))
        .unwrap_or_default();
    let ending = file.name.rsplit('.').next().unwrap_or_default();
    let text = std::str::from_utf8(&file.bytes)
        .ok()
        .filter(|_| matches!(ending, "csv" | "json" | "txt" | "epd" | "pgn"));
    let kind = match ending {
        "png" | "gif" => "picture",
        _ => "file",
    };
    let Some(text) = text else {
        return format!("[{kind} {}]{alt}", file.name);
    };
    let mut lines: Vec<String> = text
        .lines()
        .take(MOST_LINES)
        .map(|line| format!("  | {}", without_timestamps(line)))
        .collect();
    let all = text.lines().count();
    if all > MOST_LINES {
        lines.push(format!("  | … and {} lines more", all - MOST_LINES));
    }
    format!("[file {}]{alt}\n{}", file.name, lines.join("\n"))
}

/// Leaves out of a chart's words the days that it is about, which are those of the test.
fn without_days(alt: &str) -> String {
    match alt.strip_prefix("Who took part, post by post. ") {
        Some(_) => "Who took part, post by post. ⟨these days, with their figures⟩".into(),
        None => alt.into(),
    }
}

/// Takes out numbers that are ids of this run, which no name stands for.
fn without_ids(text: &str) -> String {
    let mut out = String::new();
    let mut digits = String::new();
    for c in text.chars().chain(['\n']) {
        if c.is_ascii_digit() {
            digits.push(c);
            continue;
        }
        match digits.len() {
            17.. => out.push_str("⟨id⟩"),
            _ => out.push_str(&digits),
        }
        digits.clear();
        out.push(c);
    }
    out.pop();
    out
}

/// Takes out moments such as `2026-12-03T18:00:00Z`.
fn without_timestamps(line: &str) -> String {
    const SHAPE: &[u8] = b"0000-00-00T00:00:00";
    let fits = |at: &[u8]| {
        at.len() >= SHAPE.len()
            && at.iter().zip(SHAPE).all(|(byte, wanted)| match wanted {
                b'0' => byte.is_ascii_digit(),
                b'T' => matches!(byte, b'T' | b' '),
                other => byte == other,
            })
    };
    let (mut out, mut rest) = (String::new(), line);
    while let Some(first) = rest.chars().next() {
        if fits(rest.as_bytes()) {
            out.push_str("⟨moment⟩");
            rest = rest[SHAPE.len()..].trim_start_matches(|c: char| {
                c.is_ascii_digit() || matches!(c, '.' | ':' | '+' | 'Z')
            });
        } else {
            out.push(first);
            rest = &rest[first.len_utf8()..];
        }
    }
    out
}

/// A modal as text.
pub fn modal(modal: &Value) -> String {
    let mut out = vec![format!(
        "a form opens: {}",
        modal["title"].as_str().unwrap_or_default()
    )];
    for row in list(&modal["components"]) {
        for input in list(&row["components"]) {
            let text = |key: &str| input[key].as_str().unwrap_or_default().to_string();
            let inside = match text("value") {
                value if value.is_empty() => text("placeholder"),
                value => value,
            };
            out.push(format!("{}: [{inside}]", text("label")));
        }
    }
    out.join("\n")
}

/// Puts names in the place of ids and words in the place of moments.
pub fn tidy(world: &World, text: &str) -> String {
    let mut text = text.to_string();
    if text.bytes().any(|byte| byte.is_ascii_digit()) {
        for user in world.users.values() {
            let id = user.id.to_string();
            if text.contains(&id) {
                let name = format!("@{}", user.shown);
                text = text.replace(&format!("<@{id}>"), &name).replace(&id, &name);
            }
        }
        for channel in world.channels.values() {
            let id = channel.id.to_string();
            if text.contains(&id) {
                let name = format!("#{}", channel.name);
                text = text.replace(&format!("<#{id}>"), &name).replace(&id, &name);
            }
        }
    }
    while let Some(start) = text.find("<t:") {
        let Some(length) = text[start..].find('>') else {
            break;
        };
        let kind = match text[..start + length].chars().next_back() {
            Some('R') => "⟨so long from now⟩",
            Some('D') => "⟨day⟩",
            _ => "⟨date and time⟩",
        };
        text.replace_range(start..=start + length, kind);
    }
    let lines: Vec<String> = without_ids(&without_local_times(&text))
        .lines()
        .map(|line| without_span(&by_name(line)))
        .collect();
    lines.join("\n")
}

/// Solvers stand in the order of their second, which is luck in a test; here in that of their names.
fn by_name(line: &str) -> String {
    let parts = line
        .strip_prefix("Solved by ")
        .filter(|rest| !rest.ends_with(" more."))
        .and_then(|rest| rest.strip_suffix('.')?.split_once(": "));
    let Some((count, names)) = parts else {
        return line.into();
    };
    let mut names: Vec<&str> = names.split(", ").collect();
    names.sort_unstable();
    format!("Solved by {count}: {}.", names.join(", "))
}

/// A small line that tells the days of a report: "-# 1 to 28 November 2026".
fn without_span(line: &str) -> String {
    const MONTHS: &str = "January February March April May June July August September October \
                          November December";
    let dated = line.strip_prefix("-# ").is_some_and(|days| {
        days.contains(" to ")
            && days.split(' ').all(|word| {
                word == "to"
                    || word.bytes().all(|b| b.is_ascii_digit())
                    || MONTHS.split_whitespace().any(|month| month == word)
            })
    });
    match dated {
        true => "-# ⟨from day to day⟩".to_owned(),
        false => line.to_owned(),
    }
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
    fn the_days_of_a_report_give_way() {
        for line in [
            "-# 1 to 28 November 2026",
            "-# 12 December 2026 to 8 January 2027",
        ] {
            assert_eq!(without_span(line), "-# ⟨from day to day⟩");
        }
        for line in [
            "-# Only you see this.",
            "-# 3 to 4 players",
            "1 to 28 November 2026",
        ] {
            assert_eq!(without_span(line), line);
        }
    }

    #[test]
    fn moments_in_files_give_way() {
        assert_eq!(
            without_timestamps("\"a\",2026-12-03T18:00:00.123+00:00,2026-12-03 18:00:00Z,é"),
            "\"a\",⟨moment⟩,⟨moment⟩,é"
        );
    }

    #[test]
    fn solvers_stand_by_name() {
        assert_eq!(
            by_name("Solved by 2 of 3: Two, One."),
            "Solved by 2 of 3: One, Two."
        );
        let cut = "Solved by 9 of 9: Two, One and 7 more.";
        assert_eq!(by_name(cut), cut);
    }

    #[test]
    fn ids_give_way() {
        assert_eq!(
            without_ids("discord:175928847299117063 2026 x 99999999999999999"),
            "discord:⟨id⟩ 2026 x ⟨id⟩"
        );
    }

    #[test]
    fn local_times_give_way() {
        assert_eq!(
            without_local_times("It closes at 18:00 on Thursday, 3 December. On we go, on time."),
            "It closes at ⟨local time⟩. On we go, on time."
        );
    }
}
