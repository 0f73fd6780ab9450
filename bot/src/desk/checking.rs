//! Checking a position, for the first time or again, and the report that is kept of it.

use std::time::Instant;

use chrono::{DateTime, Utc};
use sealed_move_store::{Check, Db, Position, Tx};

use super::{
    CoachWords, Desk, PositionId, Report, convert,
    error::{DeskError, Done, not_found},
    opinion,
    pool::StopSign,
    problems::Posed,
    refusal::{Refusal, Removed},
    text,
};
use crate::chess::{
    Budget,
    check::{self, CHECKER_VERSION, CheckOptions, Limits},
    comments::{Comments, MOST_IN_NOTES},
    read::{self, Entry, LARGEST_FILE},
};

impl Desk {
    /// The report on one entry, within the desk's limits.
    pub(super) async fn check(&self, entry: Entry, threads: usize) -> Done<Report> {
        let (options, table) = (
            self.inner.options.check.clone(),
            self.inner.options.table_bytes,
        );
        let seconds = self.inner.options.check_seconds;
        let engine = self.inner.options.engine.clone();
        self.inner
            .checks
            .run("checking a position", seconds, move |sign| {
                let limits = Limits {
                    seconds,
                    moves: options.moves,
                    depth: options.depth,
                    table_bytes: table,
                    threads,
                };
                let mut report = timed_check(&entry, &options, &limits, sign);
                report
                    .coach_lines
                    .clean(|words| text::body(words, MOST_IN_NOTES).0);
                if let Some(engine) = engine {
                    opinion::consult(&engine, &entry.position, &mut report);
                }
                report
            })
            .await
    }

    /// Checks a kept position again when another version of the checker did so last, with the best moves
    /// and variations that the coach's file gave, and keeps the result.
    pub(super) async fn check_again(&self, position: Position) -> Done<Position> {
        if position.check.checker_version == i64::from(CHECKER_VERSION) {
            return Ok(position);
        }
        let posed = Posed::of(position)?;
        let entry = as_given(&posed);
        let position = posed.position;
        let mut report = self.check(entry, self.inner.options.threads).await?;
        if let Some(id) = position.check.report.get("id").and_then(|id| id.as_str()) {
            report.id = id.to_owned();
        }
        let comments: Comments = std::mem::take(&mut report.comments);
        let check = kept_check(&report, self.now())?;
        let id = position.id;
        // Checkers before the fourth left out what stands beside the moves, and those before the fifth the
        // side lines of a win without a word.
        let kept = CoachWords::kept(&position)?;
        let before = position.check.checker_version;
        let found = (before < 4 || before < 5 && kept.notes.is_empty())
            .then(|| CoachWords::of(&comments).notes)
            .filter(|notes| !notes.is_empty());
        let words = match found {
            None => None,
            Some(notes) => Some(CoachWords { notes, ..kept }.to_keep()?),
        };
        self.write(move |tx: &Tx<'_>| {
            tx.replace_check(id, &check)?;
            if let Some(words) = &words {
                tx.set_position_words(id, words)?;
            }
            find(tx, id)
        })
        .await
    }
}

/// A kept report.
pub(super) fn report(kept: &serde_json::Value) -> Done<Report> {
    serde_json::from_value(kept.clone())
        .map_err(|error| DeskError::damaged(format!("a report in it cannot be read ({error})")))
}

/// A kept position as its file gave it; where that is not known, or no longer read in the same way, the
/// position and its task alone, with the coach's lines that are kept.
pub(super) fn as_given(posed: &Posed) -> Entry {
    let Posed {
        position,
        board,
        task,
    } = posed;
    // Empty lines stand for those before it, so that a warning names the line of the coach's file.
    let before = usize::try_from(position.given.line - 1).unwrap_or_default();
    let file = "\n".repeat(before.min(LARGEST_FILE)) + &position.given.text;
    let mut read = read::read_file(&position.source, file.as_bytes());
    let bare = Entry {
        id: position.source.clone(),
        line: before + 1,
        text: position.given.text.clone(),
        position: board.clone(),
        stipulation: Some(*task),
        ..Entry::default()
    };
    let entry = match read.pop() {
        Some(Ok(entry)) if read.is_empty() && entry.position == bare.position => Entry {
            stipulation: Some(*task),
            ..entry
        },
        _ => bare,
    };
    let kept = || posed.coach_lines().filter(|lines| !lines.is_empty());
    Entry {
        variations: entry
            .variations
            .or_else(|| kept().map(|lines| lines.tree(board, before + 1))),
        ..entry
    }
}

pub(super) fn find(db: &Db<'_>, id: PositionId) -> Done<Position> {
    match db.position(id)? {
        Some(position) => Ok(position),
        None => not_found(Refusal::RemovedMeanwhile {
            what: Removed::Position,
        }),
    }
}

/// The check of an entry on this thread, with the seconds it took.
fn timed_check(entry: &Entry, options: &CheckOptions, limits: &Limits, sign: &StopSign) -> Report {
    let (stop, halfway) = (|| sign.stop(), || sign.halfway());
    let budget = Budget::unlimited()
        .until(&stop)
        .halfway(&halfway)
        .threads(limits.threads)
        .table_bytes(limits.table_bytes);
    let began = Instant::now();
    let mut report = check::check(entry, options, &budget);
    report.seconds = began.elapsed().as_secs_f64();
    report.limits = Some(*limits);
    report
}

pub(super) fn kept_check(report: &Report, now: DateTime<Utc>) -> Done<Check> {
    Ok(Check {
        soundness: convert::soundness(report.verdict),
        report: serde_json::to_value(report)
            .map_err(|error| DeskError::damaged(format!("a report cannot be written ({error})")))?,
        checker_version: i64::from(report.version),
        checked_at: now,
    })
}
