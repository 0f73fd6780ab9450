//! Wins and draws, which are judged by search.

use shakmaty::Chess;

use super::{CheckOptions, Report, Soundness, blank};
use crate::chess::{Budget, Solution, Stipulation, read::Entry};

/// Checks an entry whose task is to win or to draw; `no_mate` is the length up to which a mate was
/// already proved impossible (0 when it was not looked for).
pub(super) fn check_advantage(
    entry: &Entry,
    task: Stipulation,
    no_mate: u8,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let _ = (options, budget);
    let mut report = blank(entry);
    report.stipulation = Some(task);
    report.verdict = Soundness::Undecided;
    let proved = match no_mate {
        0 => String::new(),
        1 => "There is no mate in one move. ".to_owned(),
        moves => format!("There is no mate in {moves} moves or fewer. "),
    };
    report.message = format!(
        "{proved}Whether the side to move {} cannot be judged yet; only mates can be proved.",
        if task == Stipulation::Draw {
            "draws"
        } else {
            "wins"
        }
    );
    report
}

/// The solution of a win or draw.
pub(super) fn solution(
    position: &Chess,
    task: Stipulation,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Option<Solution> {
    let _ = (position, task, options, budget);
    None
}
