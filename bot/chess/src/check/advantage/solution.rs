//! The solution that replies to a win or a draw are held against.

use shakmaty::{Chess, Move, Position};

use super::{
    super::{CheckOptions, tables},
    deep_enough, is_key,
};
use crate::{Branch, Budget, Defence, Solution, Stipulation, search};

/// The solution of a win or draw: the keys, each with the line the search expects.
pub(in crate::check) fn solution(
    position: &Chess,
    task: Stipulation,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Option<Solution> {
    if position.legal_moves().is_empty() {
        return None;
    }
    if let Some(every) = options
        .endgames
        .as_deref()
        .and_then(|tables| tables::every_move(position, tables))
    {
        let keys = every
            .iter()
            .filter(|(_, known)| tables::meets(task, *known));
        let keys = keys
            .map(|&(mv, _)| Branch {
                mv,
                defences: Vec::new(),
            })
            .collect();
        return Some(Solution {
            keys,
            tries: Vec::new(),
            complete: false,
        });
    }
    let judged = search::search(position, options.depth, 2, budget);
    let keys = judged
        .lines
        .iter()
        .filter(|ranked| is_key(task, ranked.score, options))
        .filter_map(|ranked| branch(&ranked.line))
        .collect();
    deep_enough(&judged).then_some(Solution {
        keys,
        tries: Vec::new(),
        complete: false,
    })
}

/// A line as a tree without side branches: the solver's moves, and one defence to each.
fn branch(line: &[Move]) -> Option<Branch> {
    let (&mv, rest) = line.split_first()?;
    let defences = match rest.split_first() {
        Some((&reply, rest)) => vec![Defence {
            mv: reply,
            continuations: branch(rest).into_iter().collect(),
        }],
        None => Vec::new(),
    };
    Some(Branch { mv, defences })
}
