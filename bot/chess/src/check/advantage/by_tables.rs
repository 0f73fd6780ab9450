//! The verdict by endgame tables, which is exact.

use shakmaty::Move;

use super::{
    super::{Finding, Report, Soundness, Statement, TableVerdict, tables, written},
    told::broken_promise,
};
use crate::{Stipulation, read::Entry};

/// Completes `report` from what `every` first move leads to.
pub(super) fn verdict(
    mut report: Report,
    entry: &Entry,
    task: Stipulation,
    every: &[(Move, TableVerdict)],
) -> Report {
    let position = &entry.position;
    report.proved = true;
    report.keys = every
        .iter()
        .filter(|(_, known)| tables::meets(task, *known))
        .map(|(mv, _)| written::san(position, *mv))
        .collect();
    let wins = every.iter().any(|(_, known)| *known == TableVerdict::Win);
    report.line = report.keys.first().cloned().into_iter().collect();
    let asked = task.into();
    let (verdict, told) = match report.keys.len() {
        _ if task == Stipulation::Draw && wins => (Soundness::Unsound, Some(Finding::TablesBetter)),
        0 => (
            Soundness::Unsound,
            Some(Finding::TablesNone { task: asked }),
        ),
        1 => (Soundness::Sound, None),
        _ => (
            Soundness::SeveralKeys,
            Some(Finding::TablesSeveral {
                task: asked,
                keys: written::list(&report.keys),
            }),
        ),
    };
    report.verdict = verdict;
    let told = told.into_iter().chain(broken_promise(entry, &report.keys));
    report.message = told.map(Statement::from).collect();
    report
}
