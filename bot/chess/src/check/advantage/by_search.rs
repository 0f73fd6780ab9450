//! The verdict by search: a judgement, with its depth.

use shakmaty::{Chess, Position};

use super::{
    super::{CheckOptions, Finding, Report, Soundness, Statement, written},
    SHALLOWEST, Sought, deep_enough, is_key,
    told::broken_promise,
};
use crate::{
    Budget, Stipulation,
    line::sans,
    read::Entry,
    search::{self, Judged, Ranked},
};

/// How much less deep every move is judged, when the keys are more than one and are to be listed.
const LIST_SHALLOWER: u32 = 4;

/// Completes `report` from a search to the depth of `options`.
pub(super) fn verdict(
    mut report: Report,
    entry: &Entry,
    task: Stipulation,
    sought: Sought,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let position = &entry.position;
    let judged = search::search(position, options.depth, 2, budget);
    let best = &judged.lines[0];
    report.depth = Some(judged.depth);
    report.line = sans(position, &best.line);
    let judgement = Judgement::of(position, task, &judged, options);
    let mut message: Vec<Finding> = sought.told().into_iter().collect();
    if !deep_enough(&judged) {
        report.verdict = Soundness::Undecided;
        message.push(Finding::EndedEarly {
            depth: judged.depth,
            task: task.into(),
        });
        message.push(Finding::AllowMore);
    } else if matches!(sought, Sought::CutShort(_)) && !judgement.holds {
        // A longer mate may be there all the same.
        report.verdict = Soundness::Undecided;
        report.stipulation = None;
        message.extend(judgement.told(&report.keys));
        message.push(Finding::AllowMoreOrShorter);
    } else {
        report.verdict = judgement.verdict;
        if judgement.verdict == Soundness::Sound {
            report.variations = vec![written::numbered(position, &best.line)];
        }
        let (keys, more) = judgement.keys(options, budget);
        message.extend(judgement.told(&keys));
        message.extend(more);
        message.extend(broken_promise(entry, &keys));
        report.keys = keys;
    }
    report.message = message.into_iter().map(Statement::from).collect();
    report
}

/// What the two best moves of a search say of the task.
pub(super) struct Judgement<'a> {
    pub position: &'a Chess,
    pub task: Stipulation,
    pub judged: &'a Judged,
    pub verdict: Soundness,
    pub holds: bool,
    /// A draw is asked for, and there is a win.
    pub too_good: bool,
}

impl<'a> Judgement<'a> {
    fn of(
        position: &'a Chess,
        task: Stipulation,
        judged: &'a Judged,
        options: &CheckOptions,
    ) -> Self {
        let best = judged.lines[0].score.rank();
        let second = judged.lines.get(1).map(|ranked| ranked.score);
        let too_good = task == Stipulation::Draw && best >= options.win_margin;
        let holds = match task {
            Stipulation::Draw => best >= -options.other_margin && !too_good,
            _ => best >= options.win_margin,
        };
        let verdict = match (
            holds,
            second.is_some_and(|score| is_key(task, score, options)),
        ) {
            (false, _) => Soundness::Unsound,
            (true, true) => Soundness::SeveralKeys,
            (true, false) => Soundness::Sound,
        };
        Self {
            position,
            task,
            judged,
            verdict,
            holds,
            too_good,
        }
    }

    /// The keys, and what is to be said where the list may lack some.
    fn keys(&self, options: &CheckOptions, budget: &Budget<'_>) -> (Vec<String>, Option<Finding>) {
        let lines = &self.judged.lines;
        match self.verdict {
            Soundness::Sound => (first_moves(self.position, &lines[..1]), None),
            Soundness::SeveralKeys => {
                let every = self.every_key(options, budget);
                if every.is_empty() {
                    let two = first_moves(self.position, lines);
                    (two, Some(Finding::MayBeMore))
                } else {
                    (every, None)
                }
            }
            _ => (Vec::new(), None),
        }
    }

    /// Every move that meets the task, when two are known to; somewhat less deep than the verdict.
    /// Empty when the budget ended first.
    fn every_key(&self, options: &CheckOptions, budget: &Budget<'_>) -> Vec<String> {
        let position = self.position;
        let count = position.legal_moves().len();
        let depth = self.judged.depth.saturating_sub(LIST_SHALLOWER);
        let depth = depth.max(SHALLOWEST);
        let judged = search::search(position, depth, count, budget);
        if judged.depth < depth && !deep_enough(&judged) {
            return Vec::new();
        }
        let keys: Vec<Ranked> = judged
            .lines
            .into_iter()
            .filter(|ranked| is_key(self.task, ranked.score, options))
            .collect();
        if keys.len() < 2 {
            return Vec::new();
        }
        first_moves(position, &keys)
    }
}

fn first_moves(position: &Chess, lines: &[Ranked]) -> Vec<String> {
    lines
        .iter()
        .map(|ranked| written::san(position, ranked.line[0]))
        .collect()
}
