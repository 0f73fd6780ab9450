//! Mates: what the prover finds, told to a coach.

use shakmaty::{Chess, Move, Position};

use super::{
    CheckOptions, Finding, Report, Soundness, Statement, Whose,
    advantage::{self, Sought},
    blank, difficulty, ends, variations, written,
};
use crate::{
    Budget, Solution, Spent, Stipulation,
    fact::{Line, List, number},
    line::sans,
    name::name,
    prove::Prover,
    read::Entry,
};

/// An unsound mate of at most this length is also looked for one move longer, so that the coach can
/// be told of it.
const LOOK_LONGER: u8 = 3;

/// The most unsettled moves that are named.
const MOST_NAMED: usize = 12;

/// Checks "mate in `moves`".
pub(super) fn check_mate(entry: &Entry, moves: u8, budget: &Budget<'_>) -> Report {
    let mut prover = Prover::new(&entry.position, budget);
    match settle(entry, moves, &mut prover, budget) {
        Ok(report) => report,
        Err(Spent) => out_of_time(entry, moves, &prover),
    }
}

/// Without a task in the file: the shortest mate, then a win. The mate is sought with half of the
/// budget at most, so that a win can still be judged with what is left.
pub(super) fn check_unstated(entry: &Entry, options: &CheckOptions, budget: &Budget<'_>) -> Report {
    let most = options.moves.clamp(1, Stipulation::LONGEST);
    let half = budget.half();
    let mut prover = Prover::new(&entry.position, &half);
    let sought = match prover.shortest(most) {
        Ok(Some(moves)) => {
            let mut prover = prover.go_on(budget);
            return match settle(entry, moves, &mut prover, budget) {
                Ok(report) => report,
                Err(Spent) => out_of_time(entry, moves, &prover),
            };
        }
        Ok(None) => Sought::NoneWithin(most),
        // The whole budget is gone, not the half alone.
        Err(Spent) if budget.spend(0).is_err() => {
            let mut report = out_of_time(entry, most, &prover);
            report.stipulation = None;
            return report;
        }
        Err(Spent) => Sought::CutShort(prover.none_within()),
    };
    advantage::check_advantage(entry, Stipulation::Win, sought, options, budget)
}

fn settle(
    entry: &Entry,
    moves: u8,
    prover: &mut Prover<'_>,
    budget: &Budget<'_>,
) -> Result<Report, Spent> {
    let mut report = blank(entry);
    report.stipulation = Some(Stipulation::Mate(moves));
    report.proved = true;
    let position = &entry.position;
    if position.legal_moves().is_empty() {
        report.verdict = Soundness::Unsound;
        report.message.push(match position.is_check() {
            true => Finding::MatedAlready.into(),
            false => Finding::StalematedAlready.into(),
        });
        return Ok(report);
    }
    let Some(shortest) = prover.shortest(moves)? else {
        return Ok(unsound(entry, moves, prover, report));
    };
    let solution = prover.solution(shortest)?;
    let main = solution.main_line();
    report.keys = solution
        .keys
        .iter()
        .map(|key| written::san(position, key.mv))
        .collect();
    report.line = sans(position, &main);
    report.patterns = patterns(entry, &main);
    report.ends = ends::of_mate(entry, &solution, shortest);
    report.variations = written::variations(position, &solution);
    report.tries = tries(entry, &solution);
    let tries_known = prover.are_tries_settled(shortest);
    if tries_known {
        report.difficulty = difficulty::estimate(position, &solution, shortest);
    }
    let mut message = Vec::new();
    if shortest < moves {
        report.verdict = Soundness::Short;
        message.push(Finding::SoonerMate {
            moves: shortest.into(),
            asked: moves.into(),
            line: written::numbered(position, &main).into(),
        });
    } else if solution.keys.len() > 1 {
        report.verdict = Soundness::SeveralKeys;
        message.push(Finding::SeveralMates {
            number: number(solution.keys.len()),
            moves: moves.into(),
            keys: written::list(&report.keys),
        });
    } else {
        report.verdict = Soundness::Sound;
    }
    message.extend(promises(entry, &solution, shortest));
    report.warnings = variations::check_mates(entry, moves, prover, budget);
    if !tries_known {
        report.warnings.push(Finding::TriesCut.into());
    }
    if report.warnings.len() > usize::from(!tries_known) {
        message.push(Finding::VariationsDoubtful);
    }
    report.message = message.into_iter().map(Statement::from).collect();
    Ok(report)
}

/// The report when there is no mate in `moves`: the nearest miss, and the defence that holds. That
/// there is none is proved by now; how much can be told besides depends on the budget left.
fn unsound(entry: &Entry, moves: u8, prover: &mut Prover<'_>, mut report: Report) -> Report {
    report.verdict = Soundness::Unsound;
    let mut message = vec![Finding::NoMateIn {
        moves: moves.into(),
    }];
    let told = near_miss(entry, moves, prover, &mut report, &mut message)
        .and_then(|()| longer_mate(entry, moves, prover, &mut message));
    if told.is_err() {
        message.push(Finding::MoreUntold);
    }
    report.message = message.into_iter().map(Statement::from).collect();
    report
}

/// Adds the tries, and the defence that holds against the promised move or the best try.
fn near_miss(
    entry: &Entry,
    moves: u8,
    prover: &mut Prover<'_>,
    report: &mut Report,
    message: &mut Vec<Finding>,
) -> Result<(), Spent> {
    let position = &entry.position;
    let solution = prover.solution(moves)?;
    report.tries = tries(entry, &solution);
    let promised = entry.best.first().copied();
    let nearest = promised
        .or_else(|| solution.tries.first().map(|one| one.mv))
        .or_else(|| position.legal_moves().first().copied());
    let Some(mv) = nearest else { return Ok(()) };
    let mut after = position.clone();
    after.play_unchecked(mv);
    let held = if moves == 1 {
        Vec::new()
    } else {
        prover.refutations(&after, moves - 1)?
    };
    let whose = if promised.is_some() {
        Whose::Promised
    } else if solution.tries.is_empty() {
        Whose::Any
    } else {
        Whose::Try
    };
    let first = Line::from(written::numbered(position, &[mv]));
    let mut line = vec![mv];
    if let Some(&reply) = held.first() {
        line.push(reply);
        message.push(Finding::HoldsAgainst {
            whose,
            first,
            reply: written::answer(&after, reply).into(),
            number: number(held.len()),
        });
    } else if after.legal_moves().is_empty() && !after.is_check() {
        message.push(Finding::LeavesStalemate { whose, first });
    } else {
        message.push(Finding::IsNoMate { whose, first });
    }
    report.line = sans(position, &line);
    Ok(())
}

/// Adds the mate one move longer, where there is one and it is short enough to look for.
fn longer_mate(
    entry: &Entry,
    moves: u8,
    prover: &mut Prover<'_>,
    message: &mut Vec<Finding>,
) -> Result<(), Spent> {
    if moves <= LOOK_LONGER
        && let Some(longer) = prover.shortest(moves + 1)?
    {
        let keys: Vec<String> = prover
            .keys(longer)?
            .iter()
            .map(|(mv, _)| written::san(&entry.position, *mv))
            .collect();
        message.push(Finding::LongerMate {
            moves: longer.into(),
            keys: written::list(&keys),
        });
    }
    Ok(())
}

/// What is to be said of moves that the file promises or warns of.
fn promises(entry: &Entry, solution: &Solution, moves: u8) -> Vec<Finding> {
    let position = &entry.position;
    let is_key = |mv: &&Move| solution.keys.iter().any(|key| key.mv == **mv);
    let san = |mv: &Move| written::san(position, *mv);
    let keys: Vec<String> = solution.keys.iter().map(|key| san(&key.mv)).collect();
    let broken: Vec<String> = entry
        .best
        .iter()
        .filter(|mv| !is_key(mv))
        .map(san)
        .collect();
    let avoided: Vec<String> = entry.avoid.iter().filter(is_key).map(san).collect();
    let moves = moves.into();
    let mut out = Vec::new();
    if !broken.is_empty() {
        out.push(Finding::PromiseNoMate {
            promised: written::list(&broken),
            number: number(broken.len()),
            moves,
            keys: written::list(&keys),
            others: number(keys.len()),
        });
    }
    if !avoided.is_empty() {
        out.push(Finding::AvoidedMates {
            avoided: written::list(&avoided),
            number: number(avoided.len()),
            moves,
        });
    }
    out
}

fn tries(entry: &Entry, solution: &Solution) -> Vec<String> {
    solution
        .tries
        .iter()
        .map(|one| written::numbered(&entry.position, &[one.mv, one.refutation]))
        .collect()
}

fn patterns(entry: &Entry, main: &[Move]) -> Vec<String> {
    let mut last = entry.position.clone();
    for &mv in main {
        last.play_unchecked(mv);
    }
    name(&last).patterns
}

fn out_of_time(entry: &Entry, moves: u8, prover: &Prover<'_>) -> Report {
    let position = &entry.position;
    let task = Stipulation::Mate(moves);
    let mut report = blank(entry);
    report.stipulation = Some(task);
    report.verdict = Soundness::Undecided;
    let found = prover.found();
    report.line = found
        .map(|(_, key)| key)
        .or_else(|| entry.best.first().copied())
        .map(|mv| sans(position, &[mv]))
        .unwrap_or_default();
    let mut message = vec![Finding::MateUnsettled { task }];
    match (found, prover.none_within()) {
        (Some((shortest, key)), _) => {
            message.extend(so_far_found(position, prover, shortest, key));
        }
        (None, 0) => message.push(Finding::NothingProvedYet),
        (None, none) => message.extend(so_far_none(prover, none)),
    }
    message.push(Finding::AllowMore);
    report.message = message.into_iter().map(Statement::from).collect();
    report
}

/// A mate is known, and not yet whether it is the only one of its length.
fn so_far_found(position: &Chess, prover: &Prover<'_>, shortest: u8, key: Move) -> Vec<Finding> {
    let moves = shortest.into();
    let standing = prover.standing(shortest);
    let names = |moves: &[Move]| -> Vec<String> {
        let named = moves.iter().take(MOST_NAMED);
        named.map(|mv| written::san(position, *mv)).collect()
    };
    let mut told = vec![Finding::MateProved {
        line: written::numbered(position, &[key]).into(),
        moves,
    }];
    let also: Vec<Move> = standing.keys.into_iter().filter(|mv| *mv != key).collect();
    let (keys, other) = (written::list(&names(&also)), number(also.len()));
    if standing.unsettled.is_empty() {
        told.push(match other {
            0 => Finding::OnlyKeyWithoutLine,
            number => Finding::OtherKeysWithoutLine { keys, number },
        });
        return told;
    }
    told.push(match other {
        0 => Finding::OnlyKeyOpen,
        number => Finding::NotOnlyKey {
            keys,
            number,
            moves,
        },
    });
    let open = names(&standing.unsettled).into_iter().map(Line::from);
    told.push(Finding::FirstMovesOpen {
        failed: number(standing.failed.len()),
        open: List {
            list: open.collect(),
        },
        more: number(standing.unsettled.len().saturating_sub(MOST_NAMED)),
    });
    told
}

/// No mate was found in `none` moves or fewer, and the next length is not settled.
fn so_far_none(prover: &Prover<'_>, none: u8) -> Vec<Finding> {
    let mut told = vec![Finding::NoMateProved { moves: none.into() }];
    let standing = prover.standing(none + 1);
    if !standing.failed.is_empty() {
        told.push(Finding::FirstMovesFail {
            failed: number(standing.failed.len()),
            all: number(standing.failed.len() + standing.unsettled.len()),
            moves: u32::from(none) + 1,
        });
    }
    told
}
