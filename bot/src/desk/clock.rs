//! The clock, which tests can set.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use futures::future::BoxFuture;
use tokio::sync::watch;

/// Tells the time and sleeps until a moment.
pub trait Clock: Send + Sync {
    /// The time in UTC.
    fn now(&self) -> DateTime<Utc>;
    /// Ends at `moment` or soon after; at once when it has passed.
    fn sleep_until(&self, moment: DateTime<Utc>) -> BoxFuture<'static, ()>;
}

/// The machine's clock.
#[derive(Clone, Copy, Debug, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now(&self) -> DateTime<Utc> {
        Utc::now()
    }

    fn sleep_until(&self, moment: DateTime<Utc>) -> BoxFuture<'static, ()> {
        Box::pin(async move {
            // In slices, so that a machine that slept or whose clock was set notices within a minute.
            while let Ok(left) = (moment - Utc::now()).to_std() {
                if left.is_zero() {
                    break;
                }
                tokio::time::sleep(left.min(std::time::Duration::from_secs(60))).await;
            }
        })
    }
}

/// A clock that stands until it is set.
#[derive(Clone, Debug)]
pub struct TestClock {
    now: Arc<watch::Sender<DateTime<Utc>>>,
}

impl TestClock {
    /// A clock standing at `now`.
    pub fn at(now: DateTime<Utc>) -> Self {
        Self {
            now: Arc::new(watch::Sender::new(now)),
        }
    }

    /// Sets the clock; sleepers whose moment has come wake.
    pub fn set(&self, now: DateTime<Utc>) {
        self.now.send_replace(now);
    }
}

impl Clock for TestClock {
    fn now(&self) -> DateTime<Utc> {
        *self.now.borrow()
    }

    fn sleep_until(&self, moment: DateTime<Utc>) -> BoxFuture<'static, ()> {
        let mut seen = self.now.subscribe();
        Box::pin(async move {
            // The sender lives in the clock; when it is gone nobody waits for the time any more.
            let _ = seen.wait_for(|now| *now >= moment).await;
        })
    }
}
