//! Wins and draws, which are judged by search.
//!
//! The thresholds, in hundredths of a pawn as the side to move sees it, are those of [`CheckOptions`]:
//!
//! - `+` holds when the best move stands at `win_margin` or more; it is the only key when every other
//!   move stands at `other_margin` or less.
//! - `=` holds when the best move stands at `-other_margin` or more (and does not even win by
//!   `win_margin`); it is the only key when every other move stands at `-win_margin` or less.
//!
//! A judgement names its depth and is never called proved.

mod by_search;
mod by_tables;
mod solution;
mod told;

use shakmaty::Position;

use super::{CheckOptions, Finding, Report, Soundness, Statement, blank, ends, tables, variations};
use crate::{
    Budget, Stipulation,
    read::Entry,
    search::{Judged, Score},
};

pub(super) use solution::solution;

/// A judgement less deep than this, in half-moves, is no judgement.
pub(crate) const SHALLOWEST: u32 = 8;

/// What the search for a mate said before a win is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sought {
    /// None was looked for: the task is stated.
    Nothing,
    /// There is no mate in this many moves or fewer, and that was all to be asked.
    NoneWithin(u8),
    /// There is no mate in this many moves or fewer, and then its share of the budget ended.
    CutShort(u8),
}

/// Checks an entry whose task is to win or to draw.
pub(super) fn check_advantage(
    entry: &Entry,
    task: Stipulation,
    sought: Sought,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let mut report = verdict(entry, task, sought, options, budget);
    if matches!(report.verdict, Soundness::Sound | Soundness::SeveralKeys) {
        let checked = variations::check_advantage(entry, task, options, budget);
        report
            .coach_lines
            .note_holding(&entry.position, &checked.holding);
        report.warnings = checked.warnings;
        match report.warnings.is_empty() {
            true => report
                .message
                .extend(checked.told.into_iter().map(Statement::from)),
            false => report.message.push(Finding::VariationsDoubtful.into()),
        }
        report.ends = ends::of_advantage(entry, &report.line, &report.warnings, budget);
    }
    report
}

fn verdict(
    entry: &Entry,
    task: Stipulation,
    sought: Sought,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let position = &entry.position;
    let mut report = blank(entry);
    report.stipulation = Some(task);
    if position.legal_moves().is_empty() {
        report.verdict = Soundness::Unsound;
        report.message.push(Finding::NoMoveLeft.into());
        return report;
    }
    if let Some(every) = options
        .endgames
        .as_deref()
        .and_then(|tables| tables::every_move(position, tables))
    {
        return by_tables::verdict(report, entry, task, &every);
    }
    by_search::verdict(report, entry, task, sought, options, budget)
}

/// Whether the search went deep enough to judge by; mates it found early need no depth.
pub(super) fn deep_enough(judged: &Judged) -> bool {
    judged.depth >= SHALLOWEST
        || judged
            .lines
            .iter()
            .all(|ranked| matches!(ranked.score, Score::Mate(_)))
}

/// Whether a first move with this score meets the task clearly enough to be accepted.
pub(super) fn is_key(task: Stipulation, score: Score, options: &CheckOptions) -> bool {
    match task {
        Stipulation::Draw => score.rank() > -options.win_margin,
        _ => score.rank() > options.other_margin,
    }
}

#[cfg(test)]
mod tests;
