//! What is told of a judgement: the findings behind a verdict.

use shakmaty::Chess;

use super::{
    super::{Finding, Soundness, Stands, written},
    Sought,
    by_search::Judgement,
};
use crate::{
    fact::{Centipawns, Line},
    read::Entry,
    search::{Ranked, Score},
};

impl Sought {
    pub(super) fn told(self) -> Option<Finding> {
        match self {
            Self::Nothing => None,
            Self::NoneWithin(moves) => Some(Finding::NoMateSoWin {
                moves: moves.into(),
            }),
            Self::CutShort(0) => Some(Finding::NoMateSought),
            Self::CutShort(moves) => Some(Finding::NoMateThenCut {
                moves: moves.into(),
            }),
        }
    }
}

impl Judgement<'_> {
    /// How the best moves stand, or which `keys` there are.
    pub(super) fn told(&self, keys: &[String]) -> Option<Finding> {
        let depth = self.judged.depth;
        let best = stands(self.position, self.judged.lines.first()?);
        let task = self.task.into();
        Some(if self.too_good {
            Finding::JudgedBetter { depth, best }
        } else if !self.holds {
            Finding::JudgedNone { depth, task, best }
        } else if self.verdict == Soundness::SeveralKeys {
            let keys = written::list(keys);
            Finding::JudgedSeveral { depth, task, keys }
        } else {
            match self.judged.lines.get(1) {
                Some(next) => Finding::JudgedBest {
                    depth,
                    best,
                    next: stands(self.position, next),
                },
                None => Finding::JudgedOnly { depth, best },
            }
        })
    }
}

/// How a ranked first move stands, for the side that makes it.
fn stands(position: &Chess, ranked: &Ranked) -> Stands {
    let line = Line::from(written::san(position, ranked.line[0]));
    match ranked.score {
        Score::Cp(centipawns) => Stands::MoveStandsAt {
            line,
            value: Centipawns { centipawns },
        },
        Score::Mate(moves) if moves > 0 => Stands::MoveMatesIn {
            line,
            moves: moves.unsigned_abs(),
        },
        Score::Mate(moves) => Stands::MoveIsMatedIn {
            line,
            moves: moves.unsigned_abs(),
        },
    }
}

/// What is to be said when the file promises a move that is no key.
pub(super) fn broken_promise(entry: &Entry, keys: &[String]) -> Option<Finding> {
    let promised: Vec<String> = entry
        .best
        .iter()
        .map(|mv| written::san(&entry.position, *mv))
        .collect();
    let kept =
        promised.is_empty() || keys.is_empty() || promised.iter().any(|san| keys.contains(san));
    (!kept).then(|| Finding::SearchPrefers {
        promised: written::list(&promised),
        keys: written::list(keys),
    })
}
