//! How far a line has to be given where a win or a draw is asked: until the point is plain.
//!
//! A coach stops listening when the gain is on the board. After a move of the solver the point is plain
//! when
//!
//! - it is mate; or, for `=`, it is stalemate, or the other side can no longer mate, or a position of
//!   the line has come again;
//! - the solver stands two pawns' worth or more better than at the start, and nothing that can be taken
//!   changes that: for `+` two pawns' worth ahead, for `=` at most one behind.
//!
//! However far the point lies, no more than [`MOST_ASKED`] moves of the solver are asked; where the
//! expected line shows none at all (a better ending, a fortress), [`ASKED_UNSEEN`].

use shakmaty::{Chess, Color, Move, Position};

use crate::Stipulation;
use crate::refute::{balance, settled};

/// Most moves of the solver that are asked for.
pub(super) const MOST_ASKED: usize = 4;
/// Moves of the solver that are asked for where no gain is in sight.
pub(super) const ASKED_UNSEEN: usize = 2;
/// What has to be gained since the start, in pawns, for the gain to be plain.
const GAIN: i32 = 2;

/// Why a line may end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    Mate,
    Stalemate,
    NoMaterial,
    Repeats,
    Gained,
    /// Enough has been shown, or nothing is left to ask.
    Enough,
}

/// What a problem is about, for telling when its point is plain.
#[derive(Clone, Debug)]
pub(super) struct Aim {
    task: Stipulation,
    solver: Color,
    /// Material at the start, in pawns, as the solver sees it.
    material: i32,
}

impl Aim {
    pub(super) fn of(start: &Chess, task: Stipulation) -> Self {
        Self {
            task,
            solver: start.turn(),
            material: balance(start, start.turn()),
        }
    }

    /// Whether the point is plain in `position`, reached by a move of the solver through `before`.
    pub(super) fn plain(&self, before: &[Chess], position: &Chess) -> Option<End> {
        if position.is_checkmate() {
            return Some(End::Mate);
        }
        let draws = self.task == Stipulation::Draw;
        if draws {
            if position.is_stalemate() {
                return Some(End::Stalemate);
            }
            if position.has_insufficient_material(!self.solver) {
                return Some(End::NoMaterial);
            }
            if before.iter().any(|earlier| same(earlier, position)) {
                return Some(End::Repeats);
            }
        }
        let least = (self.material + GAIN).max(if draws { -1 } else { GAIN });
        // What can be taken only lowers it.
        let standing = balance(position, self.solver);
        (standing >= least && settled(position, self.solver) >= least).then_some(End::Gained)
    }

    /// Whether the point becomes plain on the way along `line`, the other side's answer first.
    pub(super) fn in_sight(&self, before: &[Chess], position: &Chess, line: &[Move]) -> bool {
        self.moves_to_point(before, position, line).is_some()
    }

    /// How many moves of the solver are asked for, when this line from the start is the solution.
    pub(super) fn asked(&self, start: &Chess, line: &[Move]) -> usize {
        self.moves_to_point(&[], start, line)
            .map_or(ASKED_UNSEEN, |moves| moves.min(MOST_ASKED))
    }

    /// The number of moves of the solver along `line` until the point is plain.
    fn moves_to_point(&self, before: &[Chess], from: &Chess, line: &[Move]) -> Option<usize> {
        let (mut before, mut at, mut moves) = (before.to_vec(), from.clone(), 0);
        for &mv in line {
            if !at.is_legal(mv) {
                break;
            }
            before.push(at.clone());
            at.play_unchecked(mv);
            if at.turn() != self.solver {
                moves += 1;
                if self.plain(&before, &at).is_some() {
                    return Some(moves);
                }
            }
        }
        None
    }
}

/// The same pieces on the same squares with the same rights, as the laws count a repetition (FIDE Laws of
/// Chess, 9.2).
fn same(one: &Chess, other: &Chess) -> bool {
    one.turn() == other.turn()
        && one.board() == other.board()
        && one.castles().castling_rights() == other.castles().castling_rights()
        && one.legal_ep_square() == other.legal_ep_square()
}
