//! Stored positions, read once where their row comes out of the store, and the problems they pose, kept ready
//! for judging, so that a verdict on a listed move need not prove anything again.

use std::sync::{Arc, Mutex};

use sealed_move_store::Position;
use serde::Deserialize;
use shakmaty::{Chess, EnPassantMode, Position as _, Setup};
use tokio::sync::OnceCell;

use super::{
    Desk,
    error::{DeskError, Done},
};
use crate::chess::{
    self, Budget, Stipulation,
    check::Problem,
    coach_lines::{CoachLines, CoachTree},
};

/// A stored position with its board and its task.
#[derive(Clone, Debug)]
pub(super) struct Posed {
    /// As the store has it.
    pub(super) position: Position,
    /// The board of its FEN.
    pub(super) board: Chess,
    /// What is asked.
    pub(super) task: Stipulation,
}

impl Posed {
    /// A position that comes out of the store.
    ///
    /// # Errors
    /// When its FEN or its stipulation cannot be read.
    pub(super) fn of(position: Position) -> Done<Self> {
        let (board, task) = read(&position.fen, &position.stipulation)?;
        Ok(Self {
            position,
            board,
            task,
        })
    }

    /// The coach's own lines, as the report keeps them.
    pub(super) fn coach_lines(&self) -> Option<CoachLines> {
        let kept = self.position.check.report.get("coach_lines")?;
        CoachLines::deserialize(kept).ok()
    }

    fn coach_tree(&self) -> Option<Arc<CoachTree>> {
        CoachTree::of(&self.board, &self.coach_lines()?).map(Arc::new)
    }

    /// What tells one problem from another.
    pub(super) fn key(&self) -> Key {
        (self.board.to_setup(EnPassantMode::Legal), self.task)
    }
}

/// A board with its clocks, which endgame tables heed, and its task.
pub(super) type Key = (Setup, Stipulation);
/// `None` inside when the stipulation does not hold or could not be proved in time.
type Cell = Arc<OnceCell<Option<Problem>>>;

/// The problems last used, at most so many, the latest first.
pub(super) struct Problems {
    most: usize,
    kept: Mutex<Vec<(Key, Cell)>>,
}

impl Problems {
    /// Keeps at most `most` problems.
    pub(super) fn new(most: usize) -> Self {
        Self {
            most: most.max(1),
            kept: Mutex::default(),
        }
    }

    fn cell(&self, key: Key) -> Cell {
        let mut kept = self
            .kept
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner);
        let found = kept.iter().position(|(other, _)| *other == key);
        let entry = match found {
            Some(at) => kept.remove(at),
            None => (key, Cell::default()),
        };
        let cell = entry.1.clone();
        kept.insert(0, entry);
        kept.truncate(self.most);
        cell
    }
}

impl Desk {
    /// The problem that a stored position poses; `None` when its stipulation does not hold or could not
    /// be proved in time, so that only the coach can judge replies to it. All who ask for the same one
    /// wait for one proof.
    pub(super) async fn problem(&self, posed: &Posed) -> Done<Option<Problem>> {
        let cell = self.inner.problems.cell(posed.key());
        let problem = cell
            .get_or_try_init(|| {
                let options = self.inner.options.clone();
                let (board, task) = (posed.board.clone(), posed.task);
                self.inner.proofs.run(
                    "working out a solution",
                    options.check_seconds,
                    move |sign| {
                        let stop = || sign.stop();
                        let budget = Budget::unlimited()
                            .until(&stop)
                            .threads(options.threads)
                            .table_bytes(options.table_bytes);
                        chess::check::problem(&board, task, &options.check, &budget)
                    },
                )
            })
            .await?;
        // Kept apart from the proof: another coach may have other lines of the same position.
        Ok(problem.clone().map(|problem| Problem {
            coach: posed.coach_tree(),
            ..problem
        }))
    }
}

fn read(fen: &str, stipulation: &str) -> Done<(Chess, Stipulation)> {
    let unreadable =
        |why: String| DeskError::damaged(format!("a position in it cannot be read ({why})"));
    let position = chess::parse_fen(fen).map_err(|error| unreadable(error.to_string()))?;
    let task = stipulation
        .parse()
        .map_err(|error: chess::StipulationError| unreadable(error.to_string()))?;
    Ok((position.position, task))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_least_lately_used_problem_goes_first() {
        let problems = Problems::new(2);
        let board = Chess::default().to_setup(EnPassantMode::Legal);
        let key = |n: u8| (board.clone(), Stipulation::Mate(n));
        let first = problems.cell(key(1));
        problems.cell(key(2));
        assert!(Arc::ptr_eq(&first, &problems.cell(key(1))));
        problems.cell(key(3));
        assert!(
            Arc::ptr_eq(&first, &problems.cell(key(1))),
            "just used, so kept"
        );
        let kept = problems.kept.lock().expect("unpoisoned");
        let tasks: Vec<Stipulation> = kept.iter().map(|((_, task), _)| *task).collect();
        assert_eq!(tasks, [1, 3].map(Stipulation::Mate));
    }
}
