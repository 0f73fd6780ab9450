//! The engagement summary in words, and as a file for a spreadsheet (RFC 4180).

use crate::{
    chat::discord::words,
    desk::{Leaderboard, ReplyRow, Summary},
};

/// The summary in words.
pub fn text(summary: &Summary) -> String {
    let mut parts = Vec::new();
    let span = match (summary.from, summary.to) {
        (Some(from), Some(to)) => format!(" from {} to {}", words::moment(from), words::moment(to)),
        (Some(from), None) => format!(" since {}", words::moment(from)),
        (None, Some(to)) => format!(" until {}", words::moment(to)),
        (None, None) => String::new(),
    };
    parts.push(format!("**Who took part{span}**"));
    let took: Vec<String> = summary
        .members
        .iter()
        .filter(|member| member.tried > 0)
        .map(|member| {
            format!(
                "{}: {} of {} solved, {} at the first try, {}, {}",
                words::plain(&member.name),
                member.solved,
                member.tried,
                member.first_try,
                words::counted(member.points, "point"),
                words::counted(
                    f64::from(u32::try_from(member.hints).unwrap_or(u32::MAX)),
                    "hint"
                )
            )
        })
        .collect();
    parts.push(if took.is_empty() {
        "Nobody.".into()
    } else {
        took.join("\n")
    });
    for (head, names) in [
        ("Went quiet", &summary.went_quiet),
        ("Came back", &summary.came_back),
    ] {
        if !names.is_empty() {
            parts.push(format!("{head}: {}", words::names(names, 600)));
        }
    }
    if !summary.posts.is_empty() {
        let lines: Vec<String> = summary
            .posts
            .iter()
            .map(|post| {
                let topic = post.topic.as_deref().unwrap_or("no topic");
                let wrong: Vec<String> = post
                    .common_wrong
                    .iter()
                    .take(2)
                    .map(|wrong| format!("{} ×{}", words::plain(&wrong.san), wrong.count))
                    .collect();
                let wrong = if wrong.is_empty() {
                    String::new()
                } else {
                    format!("; most missed with {}", wrong.join(", "))
                };
                format!(
                    "Position {} ({}, {}): {} of {} solved{wrong}",
                    post.number,
                    words::plain(topic),
                    words::plain(&post.stipulation),
                    post.solved,
                    post.tried
                )
            })
            .collect();
        parts.push(format!("**Positions**\n{}", lines.join("\n")));
    }
    if !summary.topics.is_empty() {
        let lines: Vec<String> = summary
            .topics
            .iter()
            .map(|topic| {
                format!(
                    "{}: {} of {} solved, {} at the first try",
                    words::plain(&topic.topic),
                    topic.solved,
                    topic.tried,
                    topic.first_try
                )
            })
            .collect();
        parts.push(format!(
            "**Topics, the weakest first**\n{}",
            lines.join("\n")
        ));
    }
    if !summary.advice.is_empty() {
        parts.push(format!(
            "**What to teach next**\n{}",
            words::plain(&summary.advice)
        ));
    }
    parts.join("\n\n")
}

/// A cell that a spreadsheet would take for a formula is made plain text.
fn cell(text: &str) -> String {
    match text.chars().next() {
        Some('=' | '+' | '-' | '@' | '\t') => format!("'{text}"),
        _ => text.to_owned(),
    }
}

fn written(rows: impl IntoIterator<Item = Vec<String>>) -> Vec<u8> {
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(Vec::new());
    for row in rows {
        // Writing to memory fails only when memory does.
        let _ = writer.write_record(&row);
    }
    writer.into_inner().unwrap_or_default()
}

fn head(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

/// The members' part of the summary.
pub fn members_csv(summary: &Summary) -> Vec<u8> {
    let rows = summary.members.iter().map(|member| {
        vec![
            cell(&member.name),
            member.tried.to_string(),
            member.solved.to_string(),
            member.first_try.to_string(),
            words::points(member.points),
            member.hints.to_string(),
        ]
    });
    let names = head(&["name", "tried", "solved", "first_try", "points", "hints"]);
    written(std::iter::once(names).chain(rows))
}

/// The leaderboard.
pub fn leaderboard_csv(board: &Leaderboard) -> Vec<u8> {
    let rows = board.rows.iter().map(|row| {
        vec![
            row.rank.to_string(),
            cell(&row.name),
            words::points(row.points),
            row.solved.to_string(),
            row.tried.to_string(),
        ]
    });
    let names = head(&["rank", "name", "points", "solved", "tried"]);
    written(std::iter::once(names).chain(rows))
}

/// Replies to a post.
pub fn replies_csv(replies: &[ReplyRow]) -> Vec<u8> {
    let rows = replies.iter().map(|row| {
        let verdict = row.verdict.map(super::verdict::word).unwrap_or_default();
        vec![
            row.received_at.to_rfc3339(),
            cell(&row.name),
            cell(&row.text),
            verdict.to_owned(),
            words::points(row.points),
        ]
    });
    let names = head(&["received_at", "name", "reply", "verdict", "points"]);
    written(std::iter::once(names).chain(rows))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::LeaderboardRow;

    #[test]
    fn names_are_quoted_and_are_no_formulas() {
        let row = |name: &str| LeaderboardRow {
            rank: 1,
            name: name.into(),
            points: 2.5,
            solved: 1,
            tried: 2,
        };
        let board = Leaderboard {
            topic: None,
            rows: vec![row("Ana, \"the fox\""), row("=1+1")],
        };
        let text = String::from_utf8(leaderboard_csv(&board)).expect("text");
        assert_eq!(
            text,
            "rank,name,points,solved,tried\r\n1,\"Ana, \"\"the fox\"\"\",2.5,1,2\r\n1,'=1+1,2.5,1,2\r\n"
        );
    }
}
