//! Steps of help: the piece to look at, the idea, the first move.

use shakmaty::{Chess, Move, Position, Square, attacks};

use super::{advantage, told};
use crate::fact::{And, At, Hint, Pattern};
use crate::pieces::worth;
use crate::{Branch, Budget, Stipulation, check::Problem, name, prove};

/// The hint steps, in order: the piece to look at, the idea, the first move.
pub const HINT_STEPS: u8 = 3;
/// How much work a hint off the solution tree may cost.
const NODES: u64 = 2_000_000;

/// What hint `step` says (1 to [`HINT_STEPS`]) for the position reached by `line`.
///
/// The first step names a piece, the second says what kind of move it is and what it is for; only the
/// third gives the move. `None` when the line has left everything that is known of the solution.
pub fn hint(problem: &Problem, line: &[String], step: u8) -> Option<Vec<Hint>> {
    let played = crate::line::moves(&problem.position, line);
    let mut position = problem.position.clone();
    for &mv in &played {
        position.play_unchecked(mv);
    }
    let (mv, rest) = next_move(problem, &played, &position)?;
    Some(match step {
        0 | 1 => vec![piece(&position, mv)],
        2 => idea(&position, mv, &rest),
        _ => {
            let mut moves = played.clone();
            moves.push(mv);
            let line = told::numbered_end(&problem.position, &moves, 1).into();
            match played.is_empty() {
                true => vec![Hint::FirstMoveIs { line }],
                false => vec![Hint::NextMoveIs { line }],
            }
        }
    })
}

/// The move to find, and the main line after it.
fn next_move(problem: &Problem, played: &[Move], position: &Chess) -> Option<(Move, Vec<Move>)> {
    if let Some(coachs) = coachs_move(problem, played) {
        return Some(coachs);
    }
    if let Some(branch) = problem.solution.after(played).first() {
        return Some((branch.mv, after(branch)));
    }
    let Stipulation::Mate(moves) = problem.stipulation else {
        return advantage::next_move(problem, position).map(|mv| (mv, Vec::new()));
    };
    let left = moves.saturating_sub(u8::try_from(played.len() / 2).ok()?);
    let budget = Budget::unlimited().nodes(NODES);
    let proof = prove::mate(position, left, &budget).ok()?;
    let branch = proof.solution.keys.first()?;
    Some((branch.mv, after(branch)))
}

/// The coach's own move in a win or a draw, and the coach's main line after it. A mate's is proved.
fn coachs_move(problem: &Problem, played: &[Move]) -> Option<(Move, Vec<Move>)> {
    let tree = problem.coach.as_deref()?;
    let at = tree.right(tree.at(played)?)?;
    let rest = tree.moves(&tree.main_line(at));
    tree.node(at).mv.map(|mv| (mv, rest))
}

fn after(branch: &Branch) -> Vec<Move> {
    let mut rest = Vec::new();
    let mut at = branch.defences.first();
    while let Some(defence) = at {
        rest.push(defence.mv);
        let Some(next) = defence.continuations.first() else {
            break;
        };
        rest.push(next.mv);
        at = next.defences.first();
    }
    rest
}

fn piece(position: &Chess, mv: Move) -> Hint {
    let from = match mv.from() {
        Some(from) => from,
        None => mv.to(),
    };
    let alone = position.our(mv.role()).count() == 1;
    let piece = mv.role().into();
    match alone {
        true => Hint::LookAt { piece },
        false => Hint::LookAtOn {
            piece,
            on: At(from),
        },
    }
}

/// What kind of move it is, what it takes from the king, and what picture it leads to.
fn idea(position: &Chess, mv: Move, rest: &[Move]) -> Vec<Hint> {
    let mut next = position.clone();
    next.play_unchecked(mv);
    let mut end = next.clone();
    for &mv in rest {
        if !end.is_legal(mv) {
            break;
        }
        end.play_unchecked(mv);
    }
    let given_up = rest
        .first()
        .is_some_and(|answer| answer.is_capture() && answer.to() == mv.to())
        && worth(mv.role()) > mv.capture().map_or(0, worth);
    let mut said = vec![match (next.is_check(), mv.is_capture(), given_up) {
        (true, _, true) => Hint::CheckGivesUp,
        (true, true, false) => Hint::CheckCaptures,
        (true, false, false) => Hint::CheckPlain,
        (false, _, true) => Hint::QuietGivesUp,
        (false, true, false) => Hint::CaptureNoCheck,
        (false, false, false) => Hint::QuietMove,
    }];
    let taken = flights(position, !position.turn()) & !flights(&next, next.turn());
    if !next.is_check() && taken.any() {
        said.push(Hint::TakesFlights {
            squares: And {
                and: taken.into_iter().map(At).collect(),
            },
        });
    }
    if end.is_checkmate()
        && let Some(pattern) = name::name(&end).patterns.into_iter().next()
    {
        said.push(Hint::PictureAtTheEnd {
            pattern: Pattern { pattern },
        });
    }
    said
}

/// Squares next to the king of `side` that it could step on.
fn flights(position: &Chess, side: shakmaty::Color) -> shakmaty::Bitboard {
    let board = position.board();
    let Some(king) = board.king_of(side) else {
        return shakmaty::Bitboard::EMPTY;
    };
    let mut without = board.occupied();
    without.discard(king);
    (attacks::king_attacks(king) & !board.by_color(side))
        .into_iter()
        .filter(|&square: &Square| board.attacks_to(square, !side, without).is_empty())
        .collect()
}
