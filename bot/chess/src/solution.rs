//! What a proof yields: keys with every variation, and tries with their refutations.

use shakmaty::Move;

/// A move of the solver that meets the stipulation, with everything that can follow it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Branch {
    /// The solver's move.
    pub mv: Move,
    /// Every defence, the longest resistance first; empty when `mv` ends the matter
    /// (mate, or the tree was cut there: see [`Solution::complete`]).
    pub defences: Vec<Defence>,
}

/// A defence and the continuations that still meet the stipulation.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Defence {
    /// The move of the side being mated or beaten.
    pub mv: Move,
    /// Every continuation that meets the stipulation in the moves left; more than one is a dual.
    pub continuations: Vec<Branch>,
}

/// A wrong first move that fails to one good defence only.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Try {
    /// The try.
    pub mv: Move,
    /// Its only refutation.
    pub refutation: Move,
}

/// Keys, variations and tries of a position under its stipulation.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Solution {
    /// Every key, with its variations.
    pub keys: Vec<Branch>,
    /// Moves that nearly work.
    pub tries: Vec<Try>,
    /// False when the tree was cut short, at its size limit or where the budget ended; the keys are complete all the same.
    pub complete: bool,
}

impl Solution {
    /// The solver's moves that are known after these from the start, an even number of them; none where
    /// they leave the tree.
    pub(crate) fn after(&self, moves: &[Move]) -> Vec<&Branch> {
        let mut known: Vec<&Branch> = self.keys.iter().collect();
        for pair in moves.chunks(2) {
            let branch = known.iter().find(|branch| Some(&branch.mv) == pair.first());
            let defence =
                branch.and_then(|b| b.defences.iter().find(|d| Some(&d.mv) == pair.get(1)));
            known = defence.map_or_else(Vec::new, |d| d.continuations.iter().collect());
        }
        known
    }

    /// The main line: the first key, then longest resistance and first continuation throughout.
    pub fn main_line(&self) -> Vec<Move> {
        let mut line = Vec::new();
        let mut at = self.keys.first();
        while let Some(branch) = at {
            line.push(branch.mv);
            let Some(defence) = branch.defences.first() else {
                break;
            };
            line.push(defence.mv);
            at = defence.continuations.first();
        }
        line
    }
}
