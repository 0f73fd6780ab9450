//! Leaderboard and own progress as lines that read well on a phone.

use crate::{
    chat::discord::text::{self, Moment, Moves, Plain, Points, Study, number},
    desk::{Leaderboard, OpenAt, Progress},
    words::Words,
};

/// The leaderboard, at most `most` rows.
pub fn leaderboard(words: &Words, board: &Leaderboard, most: usize) -> String {
    let head = words.say(&match &board.topic {
        Some(topic) => Study::LeaderboardOf {
            topic: Plain::of(topic),
        },
        None => Study::Leaderboard,
    });
    if board.rows.is_empty() {
        return format!("{head}\n{}", words.say(&Study::LeaderboardEmpty));
    }
    let mut lines = vec![head];
    for row in board.rows.iter().take(most) {
        let mut text = words.say(&Study::LeaderboardRow {
            name: Plain::of(&row.name),
            points: Points::of(row.points),
            solved: number(row.solved),
            tried: number(row.tried),
        });
        text.push_str(&answered(words, row.answered));
        lines.push(format!("`{:>2}` {text}", row.rank));
    }
    if board.rows.len() > most {
        let more = number(board.rows.len() - most);
        lines.push(words.say(&Study::AndMore { more }));
    }
    lines.join("\n")
}

/// How many questions were answered, behind how many positions were solved; nothing of none.
pub fn answered(words: &Words, answered: usize) -> String {
    match number(answered) {
        0 => String::new(),
        answered => format!(", {}", words.say(&Study::QuestionsAnswered { answered })),
    }
}

/// A member's own standing.
pub fn progress(words: &Words, progress: &Progress) -> String {
    let mut parts = vec![words.say(&match progress.open {
        Some(open) => {
            let (number, closes) = (open.number, Moment::of(open.closes_at));
            match open.at {
                OpenAt::Problem { state, wrong } => Study::StandingNow {
                    number,
                    state,
                    wrong,
                    closes,
                },
                OpenAt::Question { answered } => Study::StandingAsked {
                    number,
                    answered,
                    closes,
                },
            }
        }
        None => Study::NothingOpen,
    })];
    if !progress.line.is_empty() {
        let line = Moves::of(&progress.line);
        parts.push(words.say(&Study::OnYourBoard { line }));
    }
    if progress.topics.is_empty() {
        parts.push(words.say(&Study::NoPartYet));
    } else {
        let points = Points::of(progress.points);
        let mut lines = vec![words.say(&Study::YourPoints { points })];
        for row in &progress.topics {
            let mut text = words.say(&Study::TopicTally {
                topic: Plain::of(&text::topic(words, Some(&row.topic))),
                solved: number(row.solved),
                tried: number(row.tried),
                first: number(row.first_try),
            });
            text.push_str(&answered(words, row.answered));
            lines.push(text);
        }
        parts.push(lines.join("\n"));
    }
    parts.join("\n\n")
}
