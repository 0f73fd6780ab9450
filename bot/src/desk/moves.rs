//! The moves of a problem and along its solution, by which a message is found to tell one; those last asked
//! about are kept ready.

use std::sync::Arc;

use super::{
    Desk,
    error::Done,
    problems::{Key, Posed},
};
use crate::chess::reply::mentions::Moves;

/// Seconds in which the moves along a solution are gathered.
pub(super) const GATHERING: f64 = 5.0;

/// How many posts' moves are kept ready.
const MOST_KEPT: usize = 64;

/// The moves along the solutions of the posts last asked about.
pub(super) type Gathered = std::sync::Mutex<Vec<KnownMoves>>;

/// A problem, with the moves along its solution.
type KnownMoves = (Key, Arc<Moves>);

impl Desk {
    /// The moves at the start of a problem and along its solution.
    pub(super) async fn moves_along(&self, posed: &Posed) -> Done<Arc<Moves>> {
        let key = posed.key();
        if let Some(moves) = self
            .gathered()
            .iter()
            .find_map(|(kept, moves)| (*kept == key).then(|| moves.clone()))
        {
            return Ok(moves);
        }
        let (board, problem) = (posed.board.clone(), self.problem(posed).await?);
        let moves = self
            .inner
            .quick
            .run("gathering the moves of a solution", GATHERING, move |_| {
                let mut moves = Moves::default();
                moves.add(&board);
                if let Some(problem) = problem {
                    moves.add_solution(&board, &problem.solution);
                }
                Arc::new(moves)
            })
            .await?;
        let mut gathered = self.gathered();
        gathered.insert(0, (key, moves.clone()));
        gathered.truncate(MOST_KEPT);
        Ok(moves)
    }

    fn gathered(&self) -> std::sync::MutexGuard<'_, Vec<KnownMoves>> {
        self.inner
            .gathered
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}
