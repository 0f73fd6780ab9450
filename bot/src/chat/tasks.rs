//! Work that goes on when whoever asked for it has left: owned, so that a stop waits for it. Together with
//! the supervisor this is the only place where the program spawns a task.

use std::sync::{Mutex, MutexGuard, PoisonError};

use tokio::{sync::oneshot, task::JoinSet};

/// The tasks of one chat.
#[derive(Debug, Default)]
pub struct Tasks(Mutex<JoinSet<()>>);

impl Tasks {
    /// Begins `work`; what it gives arrives at the receiver, which errs when the work broke down.
    pub fn begin<T: Send + 'static>(
        &self,
        work: impl Future<Output = T> + Send + 'static,
    ) -> oneshot::Receiver<T> {
        let (done, result) = oneshot::channel();
        let mut tasks = self.tasks();
        // Those that have ended are let go.
        while tasks.try_join_next().is_some() {}
        tasks.spawn(async move {
            // Whoever asked may have left.
            let _ = done.send(work.await);
        });
        result
    }

    /// Ends when every task has.
    pub async fn finished(&self) {
        let mut tasks = std::mem::take(&mut *self.tasks());
        while tasks.join_next().await.is_some() {}
    }

    fn tasks(&self) -> MutexGuard<'_, JoinSet<()>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn a_task_goes_on_when_nobody_waits_for_it_and_is_waited_for_at_the_end() {
        let tasks = Tasks::default();
        let (go, gone) = oneshot::channel::<()>();
        let (done, mut is_done) = oneshot::channel();
        drop(tasks.begin(async move {
            let _ = gone.await;
            let _ = done.send(7);
        }));
        assert!(is_done.try_recv().is_err());
        let _ = go.send(());
        tasks.finished().await;
        assert_eq!(is_done.try_recv(), Ok(7));
    }

    #[tokio::test]
    async fn a_task_that_breaks_down_says_so_to_whoever_waits() {
        let tasks = Tasks::default();
        let broken = tasks.begin(async { panic!("on purpose") });
        assert!(broken.await.is_err());
        assert_eq!(tasks.begin(async { 1 }).await, Ok(1));
        tasks.finished().await;
    }
}
