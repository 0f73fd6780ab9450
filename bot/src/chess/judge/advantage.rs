//! Judging replies to a win or a draw: by the solution's moves, and off them by search.
//!
//! What search says is a judgement, not a proof, and is worded as one. Between what plainly wins and
//! what plainly does not it says nothing and leaves the reply to the coach.

use shakmaty::{Chess, Move, Position};

use super::{Case, Judgement, Verdict, choice, points, words};
use crate::chess::refute::{self, balance};
use crate::chess::reply::reason::side;
use crate::chess::reply::{NodeId, Reading, Tree};
use crate::chess::search::{Judged, Score, search};
use crate::chess::{
    Branch, Budget, Stipulation, line,
    scene::{Scene, SceneMark},
};

/// Depth of the judgement in half-moves.
const DEPTH: u32 = 12;
/// Positions a judgement may look at.
const NODES: u64 = 400_000;
/// Hundredths of a pawn from which a position counts as won; the same margin as the check's.
const WINNING: i32 = 200;
/// Up to here it does not.
const LEVEL: i32 = 100;

/// Defences whose scores are this close to the best, in hundredths of a pawn, resist equally well.
pub const EQUAL_DEFENCES: i32 = 30;
/// How deep, and over how many positions, defences are compared.
const COMPARED: (u32, u64) = (8, 150_000);
/// Most defences that are compared.
const MOST_COMPARED: usize = 4;

/// What search thinks of a move.
enum Opinion {
    Good,
    Bad(Judged),
    Open,
}

/// Judges what was read.
pub(super) fn judge(case: &Case<'_>, reading: &Reading) -> Judgement {
    let tree = &reading.tree;
    let cursor = tree.cursor();
    let mut known: Vec<&Branch> = known_at(case, tree, cursor);
    let firsts = tree.node(cursor).children.clone();
    // Each of several first moves has to hold.
    for &other in firsts.iter().skip(1) {
        if let Some(judgement) = fault(case, tree, other, &known) {
            return judgement;
        }
    }
    let mut at = cursor;
    while let Some(&node) = tree.node(at).children.first() {
        if let Some(judgement) = fault(case, tree, node, &known) {
            return judgement;
        }
        let mv = tree.node(node).mv;
        let branch = known.iter().find(|branch| Some(branch.mv) == mv).copied();
        let position = &tree.node(node).position;
        if position.is_checkmate() {
            return solved(case, tree, node, false);
        }
        let Some(branch) = branch else {
            // It wins (or holds) another way: that is a solution.
            return solved(case, tree, node, true);
        };
        // A branch whose defences lead no further ends the matter.
        let answered = branch.defences.iter().find(|d| !d.continuations.is_empty());
        let Some(best) = answered else {
            return solved(case, tree, node, false);
        };
        match tree.node(node).children.first() {
            Some(&next) => {
                let written = branch
                    .defences
                    .iter()
                    .find(|d| Some(d.mv) == tree.node(next).mv);
                known = written.map_or_else(Vec::new, |d| d.continuations.iter().collect());
                if tree.node(next).children.is_empty() {
                    return on_the_way(case, tree, node, best.mv);
                }
                at = next;
            }
            None => return on_the_way(case, tree, node, best.mv),
        }
    }
    case.plain(
        Verdict::OnTheWay,
        "Go on from the position on the board. Your move.".to_owned(),
    )
}

fn known_at<'a>(case: &Case<'a>, tree: &Tree, node: NodeId) -> Vec<&'a Branch> {
    let problem = case.problem;
    let mut known: Vec<&Branch> = problem.solution.keys.iter().collect();
    for pair in tree.moves_to(node).chunks(2) {
        let branch = known.iter().find(|branch| Some(&branch.mv) == pair.first());
        let defence = branch.and_then(|b| b.defences.iter().find(|d| Some(&d.mv) == pair.get(1)));
        known = defence.map_or_else(Vec::new, |d| d.continuations.iter().collect());
    }
    known
}

/// The verdict on the solver's move that leads to `node`, unless it is right.
fn fault(case: &Case<'_>, tree: &Tree, node: NodeId, known: &[&Branch]) -> Option<Judgement> {
    let mv = tree.node(node).mv?;
    if known.iter().any(|branch| branch.mv == mv) {
        return None;
    }
    let position = &tree.node(node).position;
    if position.is_checkmate() {
        return None;
    }
    let moves = tree.moves_to(node);
    match opinion(case, position) {
        Opinion::Good => None,
        Opinion::Open => Some(case.undecided(&moves)),
        Opinion::Bad(judged) => Some(wrong(case, tree, node, &moves, &judged)),
    }
}

/// What search says of the position after the solver's move.
fn opinion(case: &Case<'_>, after: &Chess) -> Opinion {
    let task = case.problem.stipulation;
    if after.is_stalemate() || after.is_insufficient_material() {
        return match task {
            Stipulation::Draw => Opinion::Good,
            _ => Opinion::Bad(Judged {
                lines: Vec::new(),
                depth: 0,
                nodes: 0,
            }),
        };
    }
    let over = || case.budget.spend(0).is_err();
    let budget = Budget::unlimited()
        .nodes(NODES)
        .table_bytes(case.budget.table_size().min(8 << 20))
        .until(&over);
    let judged = search(after, DEPTH, 1, &budget);
    let _ = case.budget.spend(judged.nodes);
    let Some(best) = judged.lines.first() else {
        return Opinion::Open;
    };
    // The score is the defender's.
    let value = -best.score.rank();
    let (good, bad) = match task {
        Stipulation::Draw => (value >= -LEVEL, value <= -WINNING),
        _ => (value >= WINNING, value <= LEVEL),
    };
    match (good, bad) {
        _ if judged.depth < 6 && !matches!(best.score, Score::Mate(_)) => Opinion::Open,
        (true, _) => Opinion::Good,
        (_, true) => Opinion::Bad(judged),
        _ => Opinion::Open,
    }
}

fn wrong(case: &Case<'_>, tree: &Tree, node: NodeId, moves: &[Move], judged: &Judged) -> Judgement {
    let start = &case.problem.position;
    let after = &tree.node(node).position;
    let defender = side(after.turn());
    let draws = case.problem.stipulation == Stipulation::Draw;
    let shown = judged
        .lines
        .first()
        .map_or_else(Vec::new, |best| point(after, &best.line));
    let mut beyond = after.clone();
    for &mv in &shown {
        beyond.play_unchecked(mv);
    }
    let why = reason(tree, node, after, &beyond, &shown, judged, draws);
    let mut all = moves.to_vec();
    all.extend(&shown);
    let answer = words::numbered_end(start, &all, shown.len());
    let move_text = words::numbered_end(start, moves, 1);
    let mut text = format!(
        "{move_text} does not {}.",
        if draws { "hold" } else { "win" }
    );
    match (shown.is_empty(), why.is_empty()) {
        (true, true) => {}
        (true, false) => text.push_str(&format!(" The point: {why}.")),
        (false, true) => text.push_str(&format!(" {defender} answers {answer}.")),
        (false, false) => text.push_str(&format!(" {defender} answers {answer}: {why}.")),
    }
    if judged.depth > 0 {
        text.push_str(&format!(
            " (Judged by search, {} half-moves deep.)",
            judged.depth
        ));
    }
    let before = &moves[..moves.len() - 1];
    let at_first = before.is_empty();
    Judgement {
        verdict: Verdict::Wrong,
        moves: Vec::new(),
        points: if at_first { 0.0 } else { points::KEY },
        refutation: line::sans(after, &shown),
        why,
        message: text,
        scene: Some(Scene {
            position: beyond,
            last_move: shown.last().and_then(|mv| Some((mv.from()?, mv.to()))),
            marks: shown
                .first()
                .and_then(|mv| Some(SceneMark::Refutation(mv.from()?, mv.to())))
                .into_iter()
                .collect(),
        }),
        line: if before.len() <= case.played.len() {
            case.line.to_vec()
        } else {
            line::sans(start, before)
        },
    }
}

/// The part of the search's line that shows the point: the first reply, and three half-moves when
/// the material is only won with the third.
fn point(after: &Chess, line: &[Move]) -> Vec<Move> {
    let Some(&first) = line.first() else {
        return Vec::new();
    };
    let quiet = !first.is_capture() && first.promotion().is_none();
    let wins_later = line.len() >= 3 && line[2].is_capture() && !line[1].is_capture();
    let forced = {
        let mut next = after.clone();
        next.play_unchecked(first);
        next.is_check()
    };
    let count = if quiet && wins_later && forced { 3 } else { 1 };
    line[..count.min(line.len())].to_vec()
}

fn reason(
    tree: &Tree,
    node: NodeId,
    after: &Chess,
    beyond: &Chess,
    shown: &[Move],
    judged: &Judged,
    draws: bool,
) -> String {
    let defender = side(after.turn());
    if after.is_stalemate() {
        return format!("it is stalemate, for {defender} is not in check and has no move");
    }
    if after.is_insufficient_material() {
        return "there is not enough material left to mate".to_owned();
    }
    if let Some(Score::Mate(moves @ 1..)) = judged.lines.first().map(|best| best.score) {
        return match moves {
            1 => format!("that is mate, and it is {defender} who gives it"),
            n => format!(
                "{defender} mates in {}",
                refute::number(u8::try_from(n).unwrap_or(u8::MAX))
            ),
        };
    }
    let Some(parent) = tree.node(node).parent else {
        return String::new();
    };
    let (before, Some(mv), Some(&first)) = (
        &tree.node(parent).position,
        tree.node(node).mv,
        shown.first(),
    ) else {
        return String::new();
    };
    if let Some(clause) = refute::capture_clause(before, mv, after, first) {
        return clause;
    }
    let won = balance(beyond, after.turn()) - balance(after, after.turn());
    if let Some(last) = shown.get(2).filter(|_| won >= 3)
        && let Some(what) = last.capture()
    {
        return format!(
            "it comes with check, and then the {} on {} falls",
            crate::chess::reply::reason::man(what),
            last.to()
        );
    }
    if beyond.is_stalemate() && !draws {
        return format!("{} is stalemated", side(beyond.turn()));
    }
    String::new()
}

fn solved(case: &Case<'_>, tree: &Tree, node: NodeId, other_way: bool) -> Judgement {
    let start = &case.problem.position;
    let moves = tree.moves_to(node);
    let end = &tree.node(node).position;
    let text = words::numbered_end(start, &moves, 1);
    let does = match case.problem.stipulation {
        Stipulation::Draw => "holds",
        _ => "wins",
    };
    let message = if end.is_checkmate() {
        format!("Solved. {} is mate.", words::numbered(start, &moves))
    } else if other_way {
        format!("Yes, {text} {does}, by search at least. That counts in full.")
    } else {
        format!("Solved. {} {does}.", words::numbered(start, &moves))
    };
    Judgement {
        verdict: Verdict::Solved,
        moves: Vec::new(),
        points: points::FULL,
        refutation: Vec::new(),
        why: String::new(),
        message,
        scene: None,
        line: line::sans(start, &moves),
    }
}

/// The defence to play: the main one, or with a choice one of those that stand as well.
fn chosen(case: &Case<'_>, position: &Chess, path: &[Move], main: Move) -> Move {
    if case.defence_choice == 0 {
        return main;
    }
    let mut equal = equal_defences(case, position, main);
    choice::lead_with(&mut equal, case.defence_choice, path);
    equal.first().copied().unwrap_or(main)
}

/// The defences that stand as well as the best, within [`EQUAL_DEFENCES`]; `main` is always one.
fn equal_defences(case: &Case<'_>, position: &Chess, main: Move) -> Vec<Move> {
    let (depth, nodes) = COMPARED;
    let over = || case.budget.spend(0).is_err();
    let budget = Budget::unlimited()
        .nodes(nodes)
        .table_bytes(case.budget.table_size().min(8 << 20))
        .until(&over);
    let judged = search(position, depth, MOST_COMPARED, &budget);
    let _ = case.budget.spend(judged.nodes);
    let mut equal = vec![main];
    let Some(best) = judged.lines.first() else {
        return equal;
    };
    let least = best.score.rank() - EQUAL_DEFENCES;
    equal.extend(
        judged
            .lines
            .iter()
            .filter(|ranked| ranked.score.rank() >= least)
            .filter_map(|ranked| ranked.line.first().copied())
            .filter(|&mv| mv != main),
    );
    equal
}

fn on_the_way(case: &Case<'_>, tree: &Tree, node: NodeId, answer: Move) -> Judgement {
    let start = &case.problem.position;
    let mut moves = tree.moves_to(node);
    let answer = chosen(case, &tree.node(node).position, &moves, answer);
    let right = words::numbered_end(start, &moves, moves.len() - case.played.len());
    moves.push(answer);
    let mut position = tree.node(node).position.clone();
    position.play_unchecked(answer);
    Judgement {
        verdict: Verdict::OnTheWay,
        moves: Vec::new(),
        points: points::KEY,
        refutation: Vec::new(),
        why: String::new(),
        message: format!(
            "{right} is right. {} answers {}. Your move.",
            side(!start.turn()),
            words::numbered_end(start, &moves, 1)
        ),
        scene: Some(Scene {
            position,
            last_move: answer.from().map(|from| (from, answer.to())),
            marks: Vec::new(),
        }),
        line: line::sans(start, &moves),
    }
}
