//! What is being dealt with at the moment: the client library gives every event a task of its own, and an
//! orderly stop waits for those that have begun.

use poise::serenity_prelude as serenity;
use tokio::sync::watch;

/// Counts the events being dealt with.
#[derive(Debug)]
pub struct Hands(watch::Sender<usize>);

impl Default for Hands {
    fn default() -> Self {
        Self(watch::Sender::new(0))
    }
}

/// One event being dealt with, until it is dropped.
#[derive(Debug)]
pub struct Hand<'a>(&'a Hands);

impl Hands {
    /// Begins with an event.
    pub fn take(&self) -> Hand<'_> {
        self.0.send_modify(|count| *count += 1);
        Hand(self)
    }

    /// Ends when nothing is being dealt with.
    pub async fn empty(&self) {
        // The sender is ours, so that waiting cannot fail.
        let _ = self.0.subscribe().wait_for(|count| *count == 0).await;
    }
}

impl Drop for Hand<'_> {
    fn drop(&mut self) {
        self.0
            .0
            .send_modify(|count| *count = count.saturating_sub(1));
    }
}

/// The framework, counting what it is given.
pub struct Counted<F> {
    /// What deals with the events.
    pub inner: F,
    /// Who counts.
    pub hands: std::sync::Arc<Hands>,
}

#[serenity::async_trait]
impl<F: serenity::Framework> serenity::Framework for Counted<F> {
    async fn init(&mut self, client: &serenity::Client) {
        self.inner.init(client).await;
    }

    async fn dispatch(&self, context: serenity::Context, event: serenity::FullEvent) {
        let _hand = self.hands.take();
        self.inner.dispatch(context, event).await;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn waiting_ends_with_the_last_one() {
        let hands = Hands::default();
        hands.empty().await;
        let (one, other) = (hands.take(), hands.take());
        drop(one);
        assert!(futures::FutureExt::now_or_never(hands.empty()).is_none());
        drop(other);
        hands.empty().await;
    }
}
