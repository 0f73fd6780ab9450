//! An orderly stop, as a value that is passed. Whoever holds the [`Stop`] asks for it (or drops it);
//! everyone who holds a [`Shutdown`] hears of it. Touches nothing else.

use tokio::sync::watch;

/// Asks for the stop.
#[derive(Debug)]
pub struct Stop(watch::Sender<bool>);

/// Hears of the stop. Cheap to clone.
#[derive(Clone, Debug)]
pub struct Shutdown(watch::Receiver<bool>);

impl Stop {
    /// A stop not yet asked for, and one who listens for it.
    pub fn new() -> (Self, Shutdown) {
        let (sender, receiver) = watch::channel(false);
        (Self(sender), Shutdown(receiver))
    }

    /// Asks everyone to stop.
    pub fn now(&self) {
        self.0.send_replace(true);
    }
}

impl Shutdown {
    /// Whether the stop was asked for already.
    pub fn asked(&self) -> bool {
        *self.0.borrow() || self.0.has_changed().is_err()
    }

    /// Ends when the stop is asked for, or when nobody is left who could ask.
    pub async fn wait(&mut self) {
        // An error means that the asking side is gone: as good as a stop.
        let _ = self.0.wait_for(|asked| *asked).await;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn a_stop_reaches_every_listener() {
        let (stop, shutdown) = Stop::new();
        let mut other = shutdown.clone();
        assert!(!shutdown.asked());
        stop.now();
        other.wait().await;
        assert!(shutdown.asked());
    }

    #[tokio::test]
    async fn a_dropped_stop_counts_as_asked() {
        let (stop, mut shutdown) = Stop::new();
        drop(stop);
        shutdown.wait().await;
        assert!(shutdown.asked());
    }
}
