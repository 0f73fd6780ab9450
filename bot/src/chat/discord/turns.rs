//! Whoever writes two messages in a breath has them dealt with in the order they were written.
//!
//! The client library hands every event over on a task of its own, so a second message could overtake
//! the first on its way to the desk, and a line's next move would be judged before the one it follows.
//! Messages of different people wait for nothing.

use std::{
    collections::{BTreeSet, HashMap, HashSet},
    sync::{Mutex, MutexGuard},
    time::Duration,
};

use tokio::sync::Notify;

/// How long a message waits for an earlier one whose task has not begun yet.
const BREATH: Duration = Duration::from_millis(25);

/// The messages under way.
#[derive(Debug, Default)]
pub struct Turns {
    waiting: Mutex<Waiting>,
    moved: Notify,
}

#[derive(Debug, Default)]
struct Waiting {
    /// By sender: when each was written, with a number that tells equal ones apart.
    by_user: HashMap<u64, BTreeSet<(u64, u64)>>,
    /// Senders one of whose messages is being dealt with.
    busy: HashSet<u64>,
    count: u64,
}

/// A message's turn; given up when it is dropped.
#[derive(Debug)]
pub struct Turn<'a> {
    turns: &'a Turns,
    user: u64,
    key: (u64, u64),
    began: bool,
}

impl Turns {
    fn waiting(&self) -> MutexGuard<'_, Waiting> {
        match self.waiting.lock() {
            Ok(waiting) => waiting,
            Err(poisoned) => poisoned.into_inner(),
        }
    }

    /// Waits until everything that the same person wrote before is dealt with. `written` rises with
    /// time, as the ids of messages do.
    pub async fn take(&self, user: u64, written: u64) -> Turn<'_> {
        let key = {
            let mut waiting = self.waiting();
            waiting.count += 1;
            let key = (written, waiting.count);
            waiting.by_user.entry(user).or_default().insert(key);
            key
        };
        let mut turn = Turn {
            turns: self,
            user,
            key,
            began: false,
        };
        tokio::time::sleep(BREATH).await;
        loop {
            // Listening starts before the check, so a move in between wakes us.
            let moved = self.moved.notified();
            {
                let mut waiting = self.waiting();
                let first = waiting
                    .by_user
                    .get(&user)
                    .and_then(BTreeSet::first)
                    .copied();
                if first == Some(key) && waiting.busy.insert(user) {
                    turn.began = true;
                    return turn;
                }
            }
            moved.await;
        }
    }

    /// Waits until no message of this id is under way, so that its deletion finds what came of it.
    pub async fn past(&self, message: u64) {
        tokio::time::sleep(BREATH).await;
        loop {
            let moved = self.moved.notified();
            let under_way = self
                .waiting()
                .by_user
                .values()
                .any(|keys| keys.iter().any(|(written, _)| *written == message));
            if !under_way {
                return;
            }
            moved.await;
        }
    }
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        let mut waiting = self.turns.waiting();
        if let Some(keys) = waiting.by_user.get_mut(&self.user) {
            keys.remove(&self.key);
            if keys.is_empty() {
                waiting.by_user.remove(&self.user);
            }
        }
        if self.began {
            waiting.busy.remove(&self.user);
        }
        drop(waiting);
        self.turns.moved.notify_waiters();
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;

    #[tokio::test]
    async fn messages_of_one_person_keep_their_order_whatever_task_begins_first() {
        let turns = Arc::new(Turns::default());
        let done = Arc::new(Mutex::new(Vec::new()));
        let mut tasks = Vec::new();
        for written in [3, 1, 2] {
            let (turns, done) = (Arc::clone(&turns), Arc::clone(&done));
            tasks.push(tokio::spawn(async move {
                let _turn = turns.take(7, written).await;
                tokio::time::sleep(Duration::from_millis(2 * written)).await;
                done.lock().expect("whole").push(written);
            }));
        }
        // Another person's message does not wait for them, nor a deletion for anything but its own.
        drop(turns.take(8, 9).await);
        turns.past(99).await;
        for task in tasks {
            task.await.expect("done");
        }
        assert_eq!(*done.lock().expect("whole"), [1, 2, 3]);
        assert!(turns.waiting().by_user.is_empty() && turns.waiting().busy.is_empty());
    }
}
