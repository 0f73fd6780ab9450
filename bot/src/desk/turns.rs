//! One thing at a time for each member of a post: two messages sent at once are judged one after the
//! other, the second on the line that the first has left.

use std::hash::{BuildHasher, BuildHasherDefault, DefaultHasher};

use tokio::sync::{Mutex, MutexGuard};

use super::PostId;

/// Locks by member and post. Two members may share one, which costs a wait and nothing else.
pub(super) struct Turns {
    locks: Vec<Mutex<()>>,
    hasher: BuildHasherDefault<DefaultHasher>,
}

impl Default for Turns {
    fn default() -> Self {
        Self {
            locks: (0..256).map(|_| Mutex::new(())).collect(),
            hasher: BuildHasherDefault::default(),
        }
    }
}

impl Turns {
    /// Waits for the member's turn; it lasts while the guard is held.
    pub(super) async fn take(&self, post: PostId, user: &str) -> MutexGuard<'_, ()> {
        let slot = self.hasher.hash_one((post, user)) % self.locks.len() as u64;
        // The remainder is below the number of locks, which is a usize.
        self.locks[slot as usize].lock().await
    }
}
