//! A map that is bounded.

use std::collections::{HashMap, VecDeque};

/// How many remembered things of a kind are kept before the oldest goes.
const MOST_REMEMBERED: usize = 10_000;

/// A map that forgets its oldest entry when it is full.
pub(super) struct Bounded<K, V> {
    pub(super) map: HashMap<K, V>,
    order: VecDeque<K>,
}

impl<K, V> Default for Bounded<K, V> {
    fn default() -> Self {
        Self {
            map: HashMap::new(),
            order: VecDeque::new(),
        }
    }
}

impl<K: Copy + Eq + std::hash::Hash, V> Bounded<K, V> {
    pub(super) fn put(&mut self, key: K, value: V) {
        if self.map.insert(key, value).is_none() {
            self.order.push_back(key);
        }
        while self.map.len() > MOST_REMEMBERED {
            match self.order.pop_front() {
                Some(old) => drop(self.map.remove(&old)),
                None => break,
            }
        }
    }
}
