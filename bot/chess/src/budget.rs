//! How much work a computation may do. Floor 1 has no clock, so the caller brings the stop signal.

use std::sync::atomic::{AtomicU64, Ordering};

/// Bounds one computation: a number of nodes and a stop signal that the caller answers
/// (a deadline, a cancelled request). Shared by all threads of the computation.
pub struct Budget<'a> {
    nodes: u64,
    used: AtomicU64,
    stop: Option<&'a (dyn Fn() -> bool + Sync)>,
    halfway: Option<&'a (dyn Fn() -> bool + Sync)>,
    /// The budget this one is a part of.
    whole: Option<&'a Budget<'a>>,
    threads: usize,
    table_bytes: usize,
}

/// The budget ran out before the answer was known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the time or work allowed ran out before the answer was known")]
pub struct Spent;

impl<'a> Budget<'a> {
    /// How many nodes a thread works through between two looks at the stop signal.
    pub const STRIDE: u64 = 1024;

    /// No bound but the work itself; one thread and a table of 16 MiB.
    pub fn unlimited() -> Self {
        Self {
            nodes: u64::MAX,
            used: AtomicU64::new(0),
            stop: None,
            halfway: None,
            whole: None,
            threads: 1,
            table_bytes: 16 << 20,
        }
    }

    /// At most this many nodes, over all threads.
    pub fn nodes(mut self, nodes: u64) -> Self {
        self.nodes = nodes;
        self
    }

    /// Stops soon after `stop` answers true.
    pub fn until(mut self, stop: &'a (dyn Fn() -> bool + Sync)) -> Self {
        self.stop = Some(stop);
        self
    }

    /// `halfway` answers true once half of the time is gone; see [`Budget::half`].
    pub fn halfway(mut self, halfway: &'a (dyn Fn() -> bool + Sync)) -> Self {
        self.halfway = Some(halfway);
        self
    }

    /// Half of what is left, for the first of two questions, so that something remains for the
    /// second: half of the nodes, and the time until [`Budget::halfway`] says so. What is spent of
    /// it is spent of the whole.
    pub fn half(&self) -> Budget<'_> {
        let nodes = match self.nodes {
            u64::MAX => u64::MAX,
            nodes => nodes.saturating_sub(self.used()) / 2,
        };
        Budget {
            nodes,
            used: AtomicU64::new(0),
            stop: self.halfway,
            halfway: None,
            whole: Some(self),
            threads: self.threads,
            table_bytes: self.table_bytes,
        }
    }

    /// Uses this many threads; at least one.
    pub fn threads(mut self, threads: usize) -> Self {
        self.threads = threads.max(1);
        self
    }

    /// Size of the transposition table in bytes.
    pub fn table_bytes(mut self, bytes: usize) -> Self {
        self.table_bytes = bytes;
        self
    }

    /// Threads allowed.
    pub fn thread_count(&self) -> usize {
        self.threads
    }

    /// Bytes allowed for the transposition table.
    pub fn table_size(&self) -> usize {
        self.table_bytes
    }

    /// Nodes spent so far, over all threads.
    pub fn used(&self) -> u64 {
        self.used.load(Ordering::Relaxed)
    }

    /// Books `nodes` more, and errs when the budget is gone. Meant to be called once per
    /// [`Budget::STRIDE`] nodes with the nodes done since the last call.
    pub fn spend(&self, nodes: u64) -> Result<(), Spent> {
        if let Some(whole) = self.whole {
            whole.spend(nodes)?;
        }
        let before = self.used.fetch_add(nodes, Ordering::Relaxed);
        if before.saturating_add(nodes) > self.nodes || self.stop.is_some_and(|stop| stop()) {
            return Err(Spent);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_half_is_spent_of_the_whole() {
        let whole = Budget::unlimited().nodes(100);
        assert_eq!(whole.spend(20), Ok(()));
        let half = whole.half();
        assert_eq!(half.spend(40), Ok(()));
        assert_eq!(half.spend(1), Err(Spent));
        assert_eq!((half.used(), whole.used()), (41, 61));
        assert_eq!(whole.spend(39), Ok(()));
        assert_eq!(whole.spend(1), Err(Spent));
    }

    #[test]
    fn a_half_ends_with_the_whole_and_halfway() {
        let (halfway, over) = (|| true, || true);
        let whole = Budget::unlimited().halfway(&halfway);
        assert_eq!(whole.half().spend(1), Err(Spent));
        assert_eq!(whole.spend(1), Ok(()));
        let whole = Budget::unlimited().until(&over);
        assert_eq!(whole.half().spend(1), Err(Spent));
    }
}
