//! Where chess is computed and pictures are drawn: blocking threads, a bounded number at a time, each
//! computation with its own time limit and stopped when nobody waits for it any more.

use std::sync::{
    Arc,
    atomic::{AtomicBool, Ordering},
};
use std::time::{Duration, Instant};

use tokio::sync::Semaphore;

use super::error::{DeskError, Done};

/// A bounded pool of blocking computations.
#[derive(Clone, Debug)]
pub(super) struct Pool {
    places: Arc<Semaphore>,
}

/// Says when a computation has to stop: its time is up, or nobody waits for it.
#[derive(Clone, Debug)]
pub(super) struct StopSign {
    at: Instant,
    half: Instant,
    forgotten: Arc<AtomicBool>,
}

impl StopSign {
    /// Whether to stop.
    pub(super) fn stop(&self) -> bool {
        self.forgotten.load(Ordering::Relaxed) || Instant::now() >= self.at
    }

    /// Whether half of the time is gone.
    pub(super) fn halfway(&self) -> bool {
        Instant::now() >= self.half
    }
}

/// Raises the stop sign when the future that waits is dropped.
struct Forget(Arc<AtomicBool>);

impl Drop for Forget {
    fn drop(&mut self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

impl Pool {
    /// A pool of `threads` computations at a time; at least one.
    pub(super) fn new(threads: usize) -> Self {
        Self {
            places: Arc::new(Semaphore::new(threads.max(1))),
        }
    }

    /// Runs `work` when there is room; its time of `seconds` starts then. `doing` names the work in
    /// an error, as in "judging a reply".
    pub(super) async fn run<T: Send + 'static>(
        &self,
        doing: &'static str,
        seconds: f64,
        work: impl FnOnce(&StopSign) -> T + Send + 'static,
    ) -> Done<T> {
        let forgotten = Arc::new(AtomicBool::new(false));
        let _forget = Forget(forgotten.clone());
        let place = self.places.clone().acquire_owned().await;
        let limit = Duration::try_from_secs_f64(seconds).unwrap_or(Duration::from_secs(3600));
        tokio::task::spawn_blocking(move || {
            // Held until the work ends, even when nobody waits any more.
            let _place = place;
            let now = Instant::now();
            let limit = limit.min(Duration::from_secs(24 * 3600));
            work(&StopSign {
                at: now + limit,
                half: now + limit / 2,
                forgotten,
            })
        })
        .await
        .map_err(|error| {
            tracing::error!(%error, "a computation broke down while {doing}");
            DeskError::Fault(doing)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn no_more_than_the_bound_run_at_once() {
        use std::sync::atomic::AtomicUsize;
        let pool = Pool::new(2);
        let running = Arc::new(AtomicUsize::new(0));
        let most = Arc::new(AtomicUsize::new(0));
        let work = (0..8).map(|n| {
            let (running, most) = (running.clone(), most.clone());
            pool.run("counting", 1.0, move |_| {
                let now = running.fetch_add(1, Ordering::SeqCst) + 1;
                most.fetch_max(now, Ordering::SeqCst);
                std::thread::yield_now();
                running.fetch_sub(1, Ordering::SeqCst);
                n
            })
        });
        let done = futures::future::join_all(work).await;
        assert_eq!(
            done.into_iter().flatten().collect::<Vec<_>>(),
            [0, 1, 2, 3, 4, 5, 6, 7]
        );
        assert!(most.load(Ordering::SeqCst) <= 2);
    }

    #[tokio::test]
    async fn what_nobody_waits_for_is_stopped() {
        let pool = Pool::new(1);
        let (started, start) = tokio::sync::oneshot::channel();
        let waiting = tokio::spawn({
            let pool = pool.clone();
            async move {
                pool.run("waiting", 3600.0, move |sign| {
                    let _ = started.send(());
                    while !sign.stop() {
                        std::thread::yield_now();
                    }
                })
                .await
            }
        });
        start.await.expect("started");
        waiting.abort();
        // The only place is free again as soon as the forgotten work has noticed.
        assert!(pool.run("following", 1.0, |_| true).await.expect("ran"));
    }

    #[tokio::test]
    async fn a_panic_is_an_error_and_frees_its_place() {
        let pool = Pool::new(1);
        let broken: Done<()> = pool.run("breaking", 1.0, |_| panic!("on purpose")).await;
        assert!(matches!(broken, Err(DeskError::Fault("breaking"))));
        assert!(pool.run("following", 1.0, |_| true).await.expect("ran"));
    }
}
