//! Leaderboard and own progress as lines that read well on a phone.

use crate::{
    chat::discord::text::{self, Decimal, Moment, Moves, Plain, Study, number},
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
        let (name, points) = (Plain::of(&row.name), Decimal::of(row.points));
        let text = match (row.tried, row.answered) {
            (0, 1..) => words.say(&Study::LeaderboardAsked {
                name,
                points,
                answered: number(row.answered),
            }),
            (tried, answered) => {
                let solved = words.say(&Study::LeaderboardRow {
                    name,
                    points,
                    solved: number(row.solved),
                    tried: number(tried),
                });
                with_answered(words, solved, answered)
            }
        };
        lines.push(format!("`{:>2}` {text}", row.rank));
    }
    if board.rows.len() > most {
        let more = number(board.rows.len() - most);
        lines.push(words.say(&Study::AndMore { more }));
    }
    lines.join("\n")
}

/// A row, and in a cell of its own how many questions were answered, where any were.
pub fn with_answered(words: &Words, row: String, answered: usize) -> String {
    match number(answered) {
        0 => row,
        answered => format!(
            "{row} · {}",
            words.say(&Study::QuestionsAnswered { answered })
        ),
    }
}

/// How it went at problems and questions of a topic.
pub fn topic(
    words: &Words,
    topic: Option<&str>,
    [solved, tried, first]: [usize; 3],
    answered: usize,
) -> String {
    let topic = Plain::of(&text::topic(words, topic));
    match (tried, answered) {
        (0, 1..) => words.say(&Study::TopicAsked {
            topic,
            answered: number(answered),
        }),
        _ => {
            let row = words.say(&Study::TopicTally {
                topic,
                solved: number(solved),
                tried: number(tried),
                first: number(first),
            });
            with_answered(words, row, answered)
        }
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
        let points = Decimal::of(progress.points);
        let mut lines = vec![words.say(&Study::YourPoints { points })];
        for row in &progress.topics {
            let solved = [row.solved, row.tried, row.first_try];
            lines.push(topic(words, row.topic.as_deref(), solved, row.answered));
        }
        parts.push(lines.join("\n"));
    }
    parts.join("\n\n")
}
