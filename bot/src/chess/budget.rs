//! How much work a computation may do. Floor 1 has no clock, so the caller brings the stop signal.

use std::sync::atomic::{AtomicU64, Ordering};

/// Bounds one computation: a number of nodes and a stop signal that the caller answers
/// (a deadline, a cancelled request). Shared by all threads of the computation.
pub struct Budget<'a> {
    nodes: u64,
    used: AtomicU64,
    stop: Option<&'a (dyn Fn() -> bool + Sync)>,
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
        let before = self.used.fetch_add(nodes, Ordering::Relaxed);
        if before.saturating_add(nodes) > self.nodes || self.stop.is_some_and(|stop| stop()) {
            return Err(Spent);
        }
        Ok(())
    }
}
