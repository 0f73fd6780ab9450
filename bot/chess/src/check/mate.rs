//! Mates: what the prover finds, told to a coach.

use shakmaty::{Chess, Move, Position};

use super::{
    CheckOptions, Report, Soundness,
    advantage::{self, Sought},
    blank, difficulty, variations, words,
};
use crate::{
    Budget, Solution, Spent, Stipulation, line::sans, name::name, prove::Prover, read::Entry,
};

/// An unsound mate of at most this length is also looked for one move longer, so that the coach can
/// be told of it.
const LOOK_LONGER: u8 = 3;

/// Said where the verdict is certain and only what nearly works was not all looked through.
pub(super) const TRIES_CUT: &str = "the time or work allowed ran out before every try was looked for; the keys are \
                         complete, and the difficulty is not estimated";

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
        report.message = if position.is_check() {
            "The side to move is already mated; check who is to move.".to_owned()
        } else {
            "The side to move has no move: it is stalemate. Check who is to move.".to_owned()
        };
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
        .map(|key| words::san(position, key.mv))
        .collect();
    report.line = sans(position, &main);
    report.patterns = patterns(entry, &main);
    report.variations = words::variations(position, &solution);
    report.tries = tries(entry, &solution);
    let tries_known = prover.are_tries_settled(shortest);
    if tries_known {
        report.difficulty = difficulty::estimate(position, &solution, shortest);
    }
    let mut message = Vec::new();
    if shortest < moves {
        report.verdict = Soundness::Short;
        message.push(format!(
            "There is a mate in {shortest}, sooner than the {moves} asked for: {}. Set the task to #{shortest}, or change the position.",
            words::numbered(position, &main)
        ));
    } else if solution.keys.len() > 1 {
        report.verdict = Soundness::SeveralKeys;
        message.push(format!(
            "{} keys mate in {moves}: {}. Change the position so that one remains, or accept them all.",
            solution.keys.len(),
            words::list(&report.keys)
        ));
    } else {
        report.verdict = Soundness::Sound;
    }
    message.extend(promises(entry, &solution, shortest));
    report.warnings = variations::check_mates(entry, moves, prover, budget);
    if !tries_known {
        report.warnings.push(TRIES_CUT.to_owned());
    }
    if report.warnings.len() > usize::from(!tries_known) {
        message.push(variations::SEE_WARNINGS.to_owned());
    }
    report.message = message.join(" ");
    Ok(report)
}

/// The report when there is no mate in `moves`: the nearest miss, and the defence that holds. That
/// there is none is proved by now; how much can be told besides depends on the budget left.
fn unsound(entry: &Entry, moves: u8, prover: &mut Prover<'_>, mut report: Report) -> Report {
    report.verdict = Soundness::Unsound;
    let mut message = vec![match moves {
        1 => "There is no mate in one move.".to_owned(),
        _ => format!("There is no mate in {moves} moves or fewer."),
    }];
    let told = near_miss(entry, moves, prover, &mut report, &mut message)
        .and_then(|()| longer_mate(entry, moves, prover, &mut message));
    if told.is_err() {
        message.push("The time or work allowed ran out before more could be told.".to_owned());
    }
    report.message = message.join(" ");
    report
}

/// Adds the tries, and the defence that holds against the promised move or the best try.
fn near_miss(
    entry: &Entry,
    moves: u8,
    prover: &mut Prover<'_>,
    report: &mut Report,
    message: &mut Vec<String>,
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
        "the promised "
    } else if solution.tries.is_empty() {
        ""
    } else {
        "the try "
    };
    let first = words::numbered(position, &[mv]);
    let mut line = vec![mv];
    if let Some(&reply) = held.first() {
        line.push(reply);
        let reply_text = words::numbered(position, &line);
        let rest = match held.len() {
            1 => "is the only defence that holds".to_owned(),
            n => format!("holds ({n} defences do)"),
        };
        // The line reads "1.Qh5 Nf6": the reply is what follows the first move.
        let reply_text = reply_text
            .strip_prefix(&first)
            .unwrap_or(&reply_text)
            .trim();
        message.push(format!("After {whose}{first}, {reply_text} {rest}."));
    } else if after.legal_moves().is_empty() && !after.is_check() {
        message.push(format!("After {whose}{first} it is stalemate."));
    } else {
        message.push(format!("After {whose}{first} it is not mate."));
    }
    report.line = sans(position, &line);
    Ok(())
}

/// Adds the mate one move longer, where there is one and it is short enough to look for.
fn longer_mate(
    entry: &Entry,
    moves: u8,
    prover: &mut Prover<'_>,
    message: &mut Vec<String>,
) -> Result<(), Spent> {
    if moves <= LOOK_LONGER
        && let Some(longer) = prover.shortest(moves + 1)?
    {
        let keys: Vec<String> = prover
            .keys(longer)?
            .iter()
            .map(|(mv, _)| words::san(&entry.position, *mv))
            .collect();
        message.push(format!(
            "There is a mate in {longer}, by {}.",
            words::list(&keys)
        ));
    }
    Ok(())
}

/// What is to be said of moves that the file promises or warns of.
fn promises(entry: &Entry, solution: &Solution, moves: u8) -> Vec<String> {
    let position = &entry.position;
    let is_key = |mv: &Move| solution.keys.iter().any(|key| key.mv == *mv);
    let names = |moves: &[Move]| {
        let names: Vec<String> = moves.iter().map(|mv| words::san(position, *mv)).collect();
        words::list(&names)
    };
    let keys: Vec<Move> = solution.keys.iter().map(|key| key.mv).collect();
    let mut out = Vec::new();
    let broken: Vec<Move> = entry
        .best
        .iter()
        .copied()
        .filter(|mv| !is_key(mv))
        .collect();
    if !broken.is_empty() {
        out.push(format!(
            "The file promises {}, which does not mate in {moves}; {} does.",
            names(&broken),
            names(&keys)
        ));
    }
    let avoided: Vec<Move> = entry.avoid.iter().copied().filter(is_key).collect();
    if !avoided.is_empty() {
        out.push(format!(
            "The file says to avoid {}, which mates in {moves}.",
            names(&avoided)
        ));
    }
    out
}

fn tries(entry: &Entry, solution: &Solution) -> Vec<String> {
    solution
        .tries
        .iter()
        .map(|one| words::numbered(&entry.position, &[one.mv, one.refutation]))
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
    let so_far = match (found, prover.none_within()) {
        (Some((shortest, key)), _) => so_far_found(position, prover, shortest, key),
        (None, 0) => "nothing is proved yet".to_owned(),
        (None, none) => so_far_none(prover, none),
    };
    report.message = format!(
        "The time or work allowed ran out before {task} was settled; {so_far}. Allow more and check again."
    );
    report
}

/// A mate is known, and not yet whether it is the only one of its length.
fn so_far_found(position: &Chess, prover: &Prover<'_>, shortest: u8, key: Move) -> String {
    let first = words::numbered(position, &[key]);
    let standing = prover.standing(shortest);
    let names = |moves: &[Move]| -> Vec<String> {
        let named = moves.iter().take(MOST_NAMED);
        named.map(|mv| words::san(position, *mv)).collect()
    };
    let mut so_far = format!(
        "so far it is proved that {first} mates in {shortest} and that there is no sooner mate"
    );
    if standing.unsettled.is_empty() {
        let also: Vec<Move> = standing.keys.into_iter().filter(|mv| *mv != key).collect();
        so_far.push_str(&match also.as_slice() {
            [] => ", and that it is the only key, but its main line is not known yet".to_owned(),
            also => format!(
                "; the other keys are {}, but the main line is not known yet",
                words::list(&names(also))
            ),
        });
        return so_far;
    }
    if standing.keys.len() > 1 {
        let also: Vec<Move> = standing.keys.into_iter().filter(|mv| *mv != key).collect();
        so_far.push_str(&format!(
            ", and that it is not the only key: {} mates in {shortest} too",
            words::list(&names(&also))
        ));
    } else {
        so_far.push_str(", but not whether it is the only key");
    }
    let mut open = names(&standing.unsettled);
    if standing.unsettled.len() > MOST_NAMED {
        open.push(format!("{} more", standing.unsettled.len() - MOST_NAMED));
    }
    so_far.push_str(&format!(
        "; of the other first moves {} are proved to fail, and it is open whether these mate: {}",
        standing.failed.len(),
        words::list(&open)
    ));
    so_far
}

/// No mate was found in `none` moves or fewer, and the next length is not settled.
fn so_far_none(prover: &Prover<'_>, none: u8) -> String {
    let mut so_far = match none {
        1 => "so far it is proved that there is no mate in one move".to_owned(),
        _ => format!("so far it is proved that there is no mate in {none} moves or fewer"),
    };
    let standing = prover.standing(none + 1);
    if !standing.failed.is_empty() {
        let all = standing.failed.len() + standing.unsettled.len();
        so_far.push_str(&format!(
            ", and that {} of the {all} first moves do not mate in {} either",
            standing.failed.len(),
            none + 1
        ));
    }
    so_far
}
