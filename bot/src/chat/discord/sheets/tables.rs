//! Leaderboard and own progress as lines that read well on a phone.

use crate::{
    chat::discord::words,
    desk::{Leaderboard, Progress},
};

/// The leaderboard, at most `most` rows.
pub fn leaderboard(board: &Leaderboard, most: usize) -> String {
    let head = match &board.topic {
        Some(topic) => format!("**Leaderboard: {}**", words::plain(topic)),
        None => "**Leaderboard**".to_owned(),
    };
    if board.rows.is_empty() {
        return format!("{head}\nNobody has points yet.");
    }
    let mut lines = vec![head];
    for row in board.rows.iter().take(most) {
        lines.push(format!(
            "`{:>2}` {} · {} · {} of {} solved",
            row.rank,
            words::plain(&row.name),
            words::counted(row.points, "point"),
            row.solved,
            row.tried
        ));
    }
    if board.rows.len() > most {
        lines.push(format!("… and {} more", board.rows.len() - most));
    }
    lines.join("\n")
}

/// A member's own standing.
pub fn progress(progress: &Progress) -> String {
    let mut parts = Vec::new();
    match &progress.now {
        Some(now) => parts.push(words::plain(now)),
        None => parts.push("No position is open at the moment.".into()),
    }
    if !progress.line.is_empty() {
        parts.push(format!("On your board: {}", words::plain(&progress.line)));
    }
    if progress.topics.is_empty() {
        parts.push("You have not taken part in a position yet.".into());
    } else {
        let mut lines = vec![format!(
            "**Your points: {}**",
            words::points(progress.points)
        )];
        for topic in &progress.topics {
            lines.push(format!(
                "{}: {} of {} solved, {} at the first try",
                words::plain(&topic.topic),
                topic.solved,
                topic.tried,
                topic.first_try
            ));
        }
        parts.push(lines.join("\n"));
    }
    parts.join("\n\n")
}
