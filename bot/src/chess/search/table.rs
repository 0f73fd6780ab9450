//! The transposition table, shared by all threads without locks: each entry is stored beside its own
//! checksum, so that a torn write is seen as a miss.

use std::sync::atomic::{AtomicU64, Ordering};

use shakmaty::{Move, MoveList};

/// How an entry's score bounds the true one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bound {
    Exact,
    AtLeast,
    AtMost,
}

/// What is remembered of a position.
#[derive(Clone, Copy, Debug)]
pub(super) struct Entry {
    pub depth: i32,
    pub score: i32,
    pub bound: Bound,
    /// The best move, as [`code`] packs it; 0 for none.
    pub best: u16,
}

pub(super) struct Table {
    slots: Vec<[AtomicU64; 2]>,
}

impl Table {
    /// A table of at most `bytes`, at least one slot.
    pub fn new(bytes: usize) -> Self {
        let slots = (bytes / 16).max(1);
        Self {
            slots: (0..slots)
                .map(|_| [AtomicU64::new(0), AtomicU64::new(0)])
                .collect(),
        }
    }

    fn slot(&self, hash: u64) -> &[AtomicU64; 2] {
        // The high half of hash × slots spreads evenly over any number of slots.
        let index = (u128::from(hash) * self.slots.len() as u128) >> 64;
        &self.slots[index as usize]
    }

    pub fn get(&self, hash: u64) -> Option<Entry> {
        let [check, data] = self.slot(hash);
        let data = data.load(Ordering::Relaxed);
        (check.load(Ordering::Relaxed) ^ data == hash && data != 0).then(|| unpack(data))
    }

    /// Keeps `entry`, unless the slot holds a deeper look at the same position.
    pub fn put(&self, hash: u64, entry: Entry) {
        if self
            .get(hash)
            .is_some_and(|old| old.depth > entry.depth && entry.bound != Bound::Exact)
        {
            return;
        }
        let [check, data] = self.slot(hash);
        let packed = pack(entry);
        check.store(hash ^ packed, Ordering::Relaxed);
        data.store(packed, Ordering::Relaxed);
    }
}

fn pack(entry: Entry) -> u64 {
    let bound = match entry.bound {
        Bound::Exact => 1,
        Bound::AtLeast => 2,
        Bound::AtMost => 3,
    };
    u64::from(entry.best)
        | (bound << 16)
        | ((entry.depth.clamp(0, 255) as u64) << 24)
        | ((entry.score as u32 as u64) << 32)
}

fn unpack(data: u64) -> Entry {
    Entry {
        best: data as u16,
        bound: match (data >> 16) & 3 {
            1 => Bound::Exact,
            2 => Bound::AtLeast,
            _ => Bound::AtMost,
        },
        depth: ((data >> 24) & 0xff) as i32,
        score: (data >> 32) as u32 as i32,
    }
}

/// A move packed into 16 bits: from, to, promotion. Never 0 for a legal move.
pub(super) fn code(mv: Move) -> u16 {
    let from = mv.from().map_or(0, u16::from);
    from | (u16::from(mv.to()) << 6) | (mv.promotion().map_or(0, |role| role as u16) << 12)
}

/// The legal move that `code` stands for.
pub(super) fn decode(moves: &MoveList, wanted: u16) -> Option<Move> {
    (wanted != 0)
        .then(|| moves.iter().copied().find(|&mv| code(mv) == wanted))
        .flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn entries_come_back_as_they_went_in() {
        let table = Table::new(1 << 10);
        for (hash, score) in [
            (1u64, -31_990),
            (u64::MAX, 31_990),
            (0x1234_5678_9abc_def0, 0),
        ] {
            table.put(
                hash,
                Entry {
                    depth: 7,
                    score,
                    bound: Bound::AtLeast,
                    best: 77,
                },
            );
            let entry = table.get(hash).expect("kept");
            assert_eq!(
                (entry.depth, entry.score, entry.bound, entry.best),
                (7, score, Bound::AtLeast, 77)
            );
        }
        assert!(table.get(2).is_none());
    }
}
