//! What a move is worth where a win or a draw is asked: by the rules, by endgame tables, or by search.
//!
//! Tables are exact. What search says is a judgement: it needs some depth to count, and a move is only
//! called wrong when the last two depths agree. Between what plainly wins and what plainly does not,
//! nothing is said.

use shakmaty::{Bitboard, Chess, Color, Move, Position, Rank};

use crate::check::{Problem, SHALLOWEST, TableVerdict};
use crate::judge::Case;
use crate::refute::settled;
use crate::search::{self, Judged, Score};
use crate::{Budget, Stipulation};

/// Depth of the judgement in half-moves.
const DEPTH: u32 = 12;
/// Positions a judgement may look at.
const NODES: u64 = 400_000;
/// The same for a hint.
const NODES_FOR_A_HINT: u64 = 200_000;
/// The same where a table has judged and only the line is sought.
const NODES_FOR_A_LINE: u64 = 100_000;
/// Hundredths of a pawn from which a position counts as won; the same margin as the check's.
const WINNING: i32 = 200;
/// Up to here it does not.
const LEVEL: i32 = 100;
/// With so few pieces and pawns, kings included, a lead says little: whole books are about which of
/// these endings are drawn. Without a table, search is believed only where it wins or loses this much in pawns.
const FEW_MEN: usize = 6;
const DECISIVE: i32 = 4;

/// Whether a move meets the task.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Says {
    Good,
    Bad,
    Open,
}

/// What that rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum By {
    Rules,
    Tables,
    /// Search, so many half-moves deep.
    Search(u32),
}

/// An opinion on a move, and the best play after it.
#[derive(Clone, Debug)]
pub(super) struct Opinion {
    pub(super) says: Says,
    pub(super) by: By,
    /// Best play after the move, the answer first.
    pub(super) line: Vec<Move>,
    /// What the position is worth to the side that answers, where search has said it.
    pub(super) score: Option<Score>,
}

/// Judges the position `after` a move of the solver; `before` are the positions of the line so far.
pub(super) fn opinion(case: &Case<'_>, before: &[Chess], after: &Chess) -> Opinion {
    if let Some(says) = by_rules(case.problem.stipulation, after) {
        return Opinion {
            says,
            by: By::Rules,
            line: Vec::new(),
            score: None,
        };
    }
    match known(case.problem, after) {
        Some(known) => by_tables(case, after, known),
        None => by_search(case, before, after),
    }
}

/// The solver's best move in `position`, if it meets the task.
pub(super) fn best(problem: &Problem, position: &Chess) -> Option<Move> {
    let budget = Budget::unlimited()
        .nodes(NODES_FOR_A_HINT)
        .table_bytes(4 << 20);
    let judged = search::search(position, DEPTH, 1, &budget);
    let best = judged.lines.first()?;
    let first = best.line.first().copied()?;
    let after = |mv| {
        let mut after = position.clone();
        after.play_unchecked(mv);
        after
    };
    let task = problem.stipulation;
    let by_table = |mv: &Move| {
        let after = after(*mv);
        by_rules(task, &after).map_or_else(
            || known(problem, &after).map(|known| meets(task, known)),
            |says| Some(says == Says::Good),
        )
    };
    match by_table(&first) {
        Some(true) => Some(first),
        Some(false) => position
            .legal_moves()
            .into_iter()
            .find(|mv| by_table(mv) == Some(true)),
        None => {
            let least = if task == Stipulation::Draw {
                -LEVEL
            } else {
                WINNING
            };
            (best.score.rank() >= least).then_some(first)
        }
    }
}

/// Whether the solver, who is to move in `position`, has surely not got what the task asks.
pub(super) fn fails(case: &Case<'_>, before: &[Chess], position: &Chess) -> bool {
    let task = case.problem.stipulation;
    let solver = position.turn();
    if position.is_checkmate() {
        return true;
    }
    if position.is_stalemate() || position.has_insufficient_material(solver) {
        return task != Stipulation::Draw;
    }
    if let Some(known) = known(case.problem, position) {
        return match task {
            Stipulation::Draw => known == TableVerdict::Loss,
            _ => known != TableVerdict::Win,
        };
    }
    let mut values: Vec<i32> = Vec::new();
    let judged = searched(case, before, position, NODES, &mut |judged| {
        values.extend(judged.lines.first().map(|best| best.score.rank()));
    });
    let Some(best) = judged.lines.first() else {
        return false;
    };
    let value = best.score.rank();
    let earlier = values.iter().rev().nth(1).copied().unwrap_or(value);
    let most = match task {
        Stipulation::Draw => -WINNING,
        _ => LEVEL,
    };
    let mate = matches!(best.score, Score::Mate(_));
    let sure = mate || judged.depth >= SHALLOWEST && by_men(task, solver, position, &best.line).1;
    sure && value.max(earlier) <= most
}

/// What the rules say at once.
fn by_rules(task: Stipulation, after: &Chess) -> Option<Says> {
    if after.is_checkmate() {
        return Some(Says::Good);
    }
    let drawn = after.is_stalemate();
    let (solver, other) = (!after.turn(), after.turn());
    match task {
        Stipulation::Draw if drawn || after.has_insufficient_material(other) => Some(Says::Good),
        Stipulation::Draw => None,
        _ => (drawn || after.has_insufficient_material(solver)).then_some(Says::Bad),
    }
}

/// What the problem's tables know of a position in which the other side is to move.
fn known(problem: &Problem, after: &Chess) -> Option<TableVerdict> {
    let tables = problem.endgames.as_deref()?;
    let few = after.board().occupied().count() <= tables.most_men();
    (few && !after.castles().any())
        .then(|| tables.known(after))
        .flatten()
}

/// Whether what is known of a position with the other side to move meets the task.
fn meets(task: Stipulation, known: TableVerdict) -> bool {
    match task {
        Stipulation::Draw => known != TableVerdict::Win,
        _ => known == TableVerdict::Loss,
    }
}

fn by_tables(case: &Case<'_>, after: &Chess, found: TableVerdict) -> Opinion {
    let (problem, task) = (case.problem, case.problem.stipulation);
    let good = meets(task, found);
    let judged = searched(case, &[], after, NODES_FOR_A_LINE, &mut |_| {});
    let best = judged.lines.first();
    let mut line = best.map_or_else(Vec::new, |best| best.line.clone());
    if !good {
        // Only a line that keeps what the table promises refutes; the search may not see so far.
        let keeps = |position: &Chess, mv: Move| {
            let mut next = position.clone();
            next.play_unchecked(mv);
            match known(problem, &next) {
                Some(TableVerdict::Loss) => true,
                Some(TableVerdict::Draw) => found == TableVerdict::Draw,
                Some(TableVerdict::Win) => false,
                None => next.is_checkmate() || found == TableVerdict::Draw && over(&next),
            }
        };
        if line.first().is_none_or(|&mv| !keeps(after, mv)) {
            let held = after.legal_moves().into_iter().find(|&mv| keeps(after, mv));
            line = held.into_iter().collect();
        }
        let mut position = after.clone();
        let kept = line
            .iter()
            .enumerate()
            .take_while(|&(place, &mv)| {
                let fine = place % 2 == 1 || keeps(&position, mv);
                position.play_unchecked(mv);
                fine
            })
            .count();
        line.truncate(kept);
    }
    Opinion {
        says: if good { Says::Good } else { Says::Bad },
        by: By::Tables,
        line,
        // A mate is certain whoever finds it; any other score the table knows better.
        score: best
            .map(|best| best.score)
            .filter(|score| matches!(score, Score::Mate(_))),
    }
}

fn over(position: &Chess) -> bool {
    position.is_stalemate() || position.is_insufficient_material()
}

fn by_search(case: &Case<'_>, before: &[Chess], after: &Chess) -> Opinion {
    let task = case.problem.stipulation;
    // Who holds a draw may repeat. Who wins loses nothing by it, so that the same position twice in
    // the reply is no reason to call it drawn.
    let before = match task {
        Stipulation::Draw => before,
        _ => &[],
    };
    let mut values: Vec<i32> = Vec::new();
    let judged = searched(case, before, after, NODES, &mut |judged| {
        values.extend(judged.lines.first().map(|best| -best.score.rank()));
    });
    let open = Opinion {
        says: Says::Open,
        by: By::Search(judged.depth),
        line: Vec::new(),
        score: None,
    };
    let Some(best) = judged.lines.first() else {
        return open;
    };
    // The score is that of the side that answers.
    let value = -best.score.rank();
    let earlier = values.iter().rev().nth(1).copied().unwrap_or(value);
    let (good, bad) = match task {
        Stipulation::Draw => (value >= -LEVEL, value.max(earlier) <= -WINNING),
        _ => (value >= WINNING, value.max(earlier) <= LEVEL),
    };
    let mate = matches!(best.score, Score::Mate(_));
    let (good, bad) = match mate {
        true => (good, bad),
        false => {
            let (may_be_good, may_be_bad) = by_men(task, !after.turn(), after, &best.line);
            (good && may_be_good, bad && may_be_bad)
        }
    };
    let says = match (good, bad) {
        _ if judged.depth < SHALLOWEST && !mate => return open,
        (true, _) => Says::Good,
        (_, true) => Says::Bad,
        _ => Says::Open,
    };
    Opinion {
        says,
        line: best.line.clone(),
        score: Some(best.score),
        ..open
    }
}

/// Whether the pieces left at the end of the best play bear out that a move meets the task, and that it
/// fails.
fn by_men(task: Stipulation, solver: Color, from: &Chess, line: &[Move]) -> (bool, bool) {
    if from.board().occupied().count() > FEW_MEN {
        return (true, true);
    }
    let other = !solver;
    let mut end = from.clone();
    for &mv in line {
        end.play_unchecked(mv);
    }
    let lead = settled(&end, solver);
    // A pawn about to promote can hold against a queen.
    let seventh = |side: Color| {
        let rank = side.fold_wb(Rank::Seventh, Rank::Second);
        let pawns = end.board().pawns() & end.board().by_color(side);
        (pawns & Bitboard::from_rank(rank)).any()
    };
    match task {
        Stipulation::Draw => (
            lead >= 0 || end.has_insufficient_material(other),
            lead <= -DECISIVE && !seventh(solver),
        ),
        _ => (
            lead >= DECISIVE && !seventh(other),
            lead < 0 || end.has_insufficient_material(solver) || end.is_stalemate(),
        ),
    }
}

fn searched(
    case: &Case<'_>,
    before: &[Chess],
    after: &Chess,
    nodes: u64,
    tell: &mut dyn FnMut(&Judged),
) -> Judged {
    within(case, nodes, |budget| {
        search::deepen(after, before, DEPTH, 1, budget, tell)
    })
}

/// Searches with a share of the reply's budget.
pub(super) fn within(
    case: &Case<'_>,
    nodes: u64,
    look: impl FnOnce(&Budget<'_>) -> Judged,
) -> Judged {
    let over = || case.budget.spend(0).is_err();
    let budget = Budget::unlimited()
        .nodes(nodes)
        .table_bytes(case.budget.table_size().min(8 << 20))
        .until(&over);
    let judged = look(&budget);
    let _ = case.budget.spend(judged.nodes);
    judged
}
