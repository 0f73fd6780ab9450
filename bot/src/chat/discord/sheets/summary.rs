//! The engagement summary in words, and as a file for a spreadsheet (RFC 4180).

use super::{names, tables};
use crate::{
    chat::discord::{
        fit,
        text::{self, Coach, Decimal, List, Moment, Moves, Plain, number},
    },
    desk::{ReplyRow, Summary, SummaryMember, SummaryPost},
    words::{Words, english},
};

/// How many wrong moves of a post are named.
const MOST_MISSED: usize = 2;

/// The summary in words.
pub fn text(words: &Words, summary: &Summary) -> String {
    let (from, to) = (summary.from.map(Moment::of), summary.to.map(Moment::of));
    let mut parts = vec![words.say(&match (from, to) {
        (Some(from), Some(to)) => Coach::WhoTookPartBetween { from, to },
        (Some(from), None) => Coach::WhoTookPartSince { from },
        (None, Some(to)) => Coach::WhoTookPartUntil { to },
        (None, None) => Coach::WhoTookPart,
    })];
    let took: Vec<String> = summary
        .members
        .iter()
        .filter(|member| member.took_part())
        .map(|member| member_tally(words, member))
        .collect();
    parts.push(match took.is_empty() {
        true => words.say(&Coach::NobodyDid),
        false => took.join("\n"),
    });
    if !summary.went_quiet.is_empty() {
        let names = names::in_a_row(words, &summary.went_quiet, 600);
        parts.push(words.say(&Coach::WentQuiet { names }));
    }
    if !summary.came_back.is_empty() {
        let names = names::in_a_row(words, &summary.came_back, 600);
        parts.push(words.say(&Coach::CameBack { names }));
    }
    if !summary.posts.is_empty() {
        let mut lines = vec![words.say(&Coach::SummaryPositions)];
        let tally = |post| words.say(&post_tally(words, post));
        lines.extend(summary.posts.iter().map(tally));
        parts.push(lines.join("\n"));
    }
    if !summary.topics.is_empty() {
        let mut lines = vec![words.say(&Coach::SummaryTopics)];
        lines.extend(summary.topics.iter().map(|row| {
            let solved = [row.solved, row.tried, row.first_try];
            tables::topic(words, row.topic.as_deref(), solved, row.answered)
        }));
        parts.push(lines.join("\n"));
    }
    if !summary.advice.is_empty() {
        let head = words.say(&Coach::SummaryAdvice);
        parts.push(format!(
            "{head}\n{}",
            fit::plain(&words.tell(&summary.advice))
        ));
    }
    parts.join("\n\n")
}

fn member_tally(words: &Words, member: &SummaryMember) -> String {
    let (name, points) = (Plain::of(&member.name), Decimal::of(member.points));
    match (member.tried, member.answered) {
        (0, 1..) => words.say(&Coach::MemberAsked {
            name,
            points,
            answered: number(member.answered),
        }),
        (tried, answered) => {
            let row = words.say(&Coach::MemberTally {
                name,
                solved: number(member.solved),
                tried: number(tried),
                first: number(member.first_try),
                points,
                hints: number(member.hints),
            });
            tables::with_answered(words, row, answered)
        }
    }
}

fn post_tally(words: &Words, post: &SummaryPost) -> Coach {
    let topic = Plain::of(&text::topic(words, post.topic.as_deref()));
    let (solved, tried) = (number(post.solved), number(post.tried));
    let task = match post.kind.task() {
        Some(task) => Plain::of(task),
        None => {
            return Coach::PostTally {
                kind: post.kind.name(),
                number: post.number,
                topic,
                answered: tried,
            };
        }
    };
    let number = post.number;
    let wrong = post.common_wrong.iter().take(MOST_MISSED);
    let missed: Vec<Moves> = wrong
        .map(|wrong| Moves::of(&format!("{} ×{}", wrong.san, wrong.count)))
        .collect();
    match missed.is_empty() {
        true => Coach::PositionTally {
            number,
            topic,
            task,
            solved,
            tried,
        },
        false => Coach::PositionTallyMissed {
            number,
            topic,
            task,
            solved,
            tried,
            missed: List { list: missed },
        },
    }
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

/// Replies to a post.
pub fn replies_csv(replies: &[ReplyRow]) -> Vec<u8> {
    let rows = replies.iter().map(|row| {
        // Data, as the names of the columns are, and so the same in every language.
        let verdict = row
            .verdict
            .map(|outcome| super::verdict::outcome(english(), outcome));
        let verdict = verdict.unwrap_or_default();
        vec![
            row.received_at.to_rfc3339(),
            cell(&row.name),
            cell(&row.text),
            verdict,
            fit::points(row.points.into()),
        ]
    });
    let names = head(&["received_at", "name", "reply", "verdict", "points"]);
    written(std::iter::once(names).chain(rows))
}
