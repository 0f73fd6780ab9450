//! Problems kept ready for judging, so that a verdict on a listed move need not prove anything again.

use std::sync::{Arc, Mutex};

use tokio::sync::OnceCell;

use super::{
    Desk,
    error::{DeskError, Done},
};
use crate::chess::{self, Budget, Stipulation, check::Problem};

type Key = (String, String);
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
    pub(super) async fn problem(&self, fen: &str, stipulation: &str) -> Done<Option<Problem>> {
        let (position, task) = parse(fen, stipulation)?;
        let cell = self
            .inner
            .problems
            .cell((fen.to_owned(), stipulation.to_owned()));
        let problem = cell
            .get_or_try_init(|| {
                let options = self.inner.options.clone();
                self.inner.proofs.run(
                    "working out a solution",
                    options.check_seconds,
                    move |sign| {
                        let stop = || sign.stop();
                        let budget = Budget::unlimited()
                            .until(&stop)
                            .threads(options.threads)
                            .table_bytes(options.table_bytes);
                        chess::check::problem(&position, task, &options.check, &budget)
                    },
                )
            })
            .await?;
        Ok(problem.clone())
    }
}

/// A stored position and task.
pub(super) fn parse(fen: &str, stipulation: &str) -> Done<(shakmaty::Chess, Stipulation)> {
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
        let key = |n: u8| (n.to_string(), "#2".to_owned());
        let first = problems.cell(key(1));
        problems.cell(key(2));
        assert!(Arc::ptr_eq(&first, &problems.cell(key(1))));
        problems.cell(key(3));
        assert!(
            Arc::ptr_eq(&first, &problems.cell(key(1))),
            "just used, so kept"
        );
        let kept = problems.kept.lock().expect("unpoisoned");
        let keys: Vec<&str> = kept.iter().map(|((n, _), _)| n.as_str()).collect();
        assert_eq!(keys, ["1", "3"]);
    }
}
