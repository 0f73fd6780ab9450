//! Messages as text that a person can read and a snapshot can keep: ids give way to names, times to
//! words.

use std::sync::LazyLock;

use regex::Regex;
use sealed_move_words::words as words_of;
use serde_json::Value;

use super::{
    messages::list,
    world::{File, Message, World},
};
use crate::tongue::Tongue;

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
    let heads = Tongue::ALL.map(|tongue| words_of(tongue.tag()).text("chart-participation") + ". ");
    match heads.iter().find(|head| alt.starts_with(head.as_str())) {
        Some(head) => format!("{head}⟨these days, with their figures⟩"),
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
    let heads = [
        "Solved by ",
        "Gelöst von ",
        "La resolvió ",
        "La resolvieron ",
    ];
    // A list that was cut says how many more there are.
    let cut = [" more.", " weitere.", " más."];
    let whole = heads.iter().any(|head| line.starts_with(head))
        && !cut.iter().any(|tail| line.ends_with(tail));
    let parts = line.strip_suffix('.').filter(|_| whole);
    let Some((count, names)) = parts.and_then(|line| line.split_once(": ")) else {
        return line.into();
    };
    let mut names: Vec<&str> = names.split(", ").collect();
    names.sort_unstable();
    format!("{count}: {}.", names.join(", "))
}

/// A small line that tells the days of a report: "-# 1 to 28 November 2026".
fn without_span(line: &str) -> String {
    static SPAN: LazyLock<Regex> = LazyLock::new(|| {
        let from = r"\d+\.?( (de )?\p{L}+)?( (de )?\d{4})?";
        let to = r"\d+\.? (de )?\p{L}+ (de )?\d{4}";
        pattern(&format!("^-# (\\p{{L}}+ )?{from} (to|bis|a|al) {to}$"))
    });
    SPAN.replace(line, "-# ⟨from day to day⟩").into_owned()
}

/// Takes out times such as `18:00 on Thursday, 3 December`, in any language.
fn without_local_times(text: &str) -> String {
    static MOMENT: LazyLock<Regex> = LazyLock::new(|| {
        pattern(
            r"\d\d:\d\d on \p{L}+, \d+ \p{L}+|\p{L}+, \d+\. \p{L}+, \d\d:\d\d Uhr|\p{L}+ \d+ de \p{L}+ a las \d\d:\d\d",
        )
    });
    MOMENT.replace_all(text, "⟨local time⟩").into_owned()
}

fn pattern(shape: &str) -> Regex {
    Regex::new(shape).unwrap_or_else(|error| panic!("{error}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_days_of_a_report_give_way() {
        for line in [
            "-# 1 to 28 November 2026",
            "-# 12 December 2026 to 8 January 2027",
            "-# 1. bis 28. November 2026",
            "-# 12 de diciembre de 2026 a 8 de enero de 2027",
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
        for (said, wanted) in [
            (
                "It closes at 18:00 on Thursday, 3 December. On we go, on time.",
                "It closes at ⟨local time⟩. On we go, on time.",
            ),
            (
                "Schluss ist am Donnerstag, 3. Dezember, 18:00 Uhr.",
                "Schluss ist am ⟨local time⟩.",
            ),
            (
                "Cierra el jueves 3 de diciembre a las 18:00.",
                "Cierra el ⟨local time⟩.",
            ),
        ] {
            assert_eq!(without_local_times(said), wanted);
        }
    }
}
