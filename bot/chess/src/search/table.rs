//! The transposition table, shared by all threads without locks: each entry is stored beside its own
//! checksum, so that a torn write is seen as a miss.
//!
//! Two entries share a bucket. The first keeps the deepest look at a position, the second the latest.

use std::sync::atomic::{AtomicU64, Ordering};

use shakmaty::Move;

use super::{MATED_SOON, window::Window};

/// How an entry's score bounds the true one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bound {
    Exact,
    Lower,
    Upper,
}

impl Bound {
    /// What a search of `window` that came to `score` says of the true one.
    pub fn of(score: i32, window: Window) -> Self {
        match score {
            s if s >= window.beta => Self::Lower,
            s if s > window.alpha => Self::Exact,
            _ => Self::Upper,
        }
    }
}

/// What is remembered of a position.
#[derive(Clone, Copy, Debug)]
pub(super) struct Entry {
    pub depth: i32,
    pub score: i32,
    /// The evaluation of the position itself; means nothing in check.
    pub static_eval: i32,
    pub bound: Bound,
    /// The best move, as [`code`] packs it; 0 for none.
    pub best: u16,
}

impl Entry {
    /// The entry as it is stored for a node `ply` half-moves from the root: the tree counts mates from
    /// the root, and the table from the node, which other lines reach sooner or later.
    pub fn counted_from(self, ply: usize) -> Self {
        let score = match self.score {
            MATED_SOON.. => self.score + ply as i32,
            s if s <= -MATED_SOON => s - ply as i32,
            s => s,
        };
        Self { score, ..self }
    }

    /// The score of a node `ply` half-moves from the root, where it ends the search of `window`.
    pub fn cutoff(&self, window: Window, ply: usize) -> Option<i32> {
        let score = match self.score {
            MATED_SOON.. => self.score - ply as i32,
            s if s <= -MATED_SOON => s + ply as i32,
            s => s,
        };
        let settles = match self.bound {
            Bound::Exact => true,
            Bound::Lower => score >= window.beta,
            Bound::Upper => score <= window.alpha,
        };
        settles.then_some(score)
    }
}

pub(super) struct Table {
    buckets: Vec<[Slot; 2]>,
}

/// Checksum and data.
type Slot = [AtomicU64; 2];

impl Table {
    /// A table of at most `bytes`, at least one bucket.
    pub fn new(bytes: usize) -> Self {
        let buckets = (bytes / size_of::<[Slot; 2]>()).max(1);
        Self {
            buckets: (0..buckets).map(|_| Default::default()).collect(),
        }
    }

    fn bucket(&self, hash: u64) -> &[Slot; 2] {
        // The high half of hash × buckets spreads evenly over any number of buckets.
        let index = (u128::from(hash) * self.buckets.len() as u128) >> 64;
        &self.buckets[index as usize]
    }

    pub fn get(&self, hash: u64) -> Option<Entry> {
        self.bucket(hash).iter().find_map(|slot| read(slot, hash))
    }

    /// Keeps `entry`, unless a much deeper look at the same position is known.
    pub fn put(&self, hash: u64, mut entry: Entry) {
        let [deep, late] = self.bucket(hash);
        let slot = match (read(deep, hash), read(late, hash)) {
            (Some(old), _) | (None, Some(old))
                if old.depth > entry.depth + 2 && entry.bound != Bound::Exact =>
            {
                return;
            }
            (Some(old), _) => {
                entry.best = if entry.best == 0 {
                    old.best
                } else {
                    entry.best
                };
                deep
            }
            (None, old) => {
                if let Some(old) = old {
                    entry.best = if entry.best == 0 {
                        old.best
                    } else {
                        entry.best
                    };
                }
                let data = deep[1].load(Ordering::Relaxed);
                if old.is_none() && (data == 0 || unpack(data).depth <= entry.depth) {
                    deep
                } else {
                    late
                }
            }
        };
        let packed = pack(entry);
        slot[0].store(hash ^ packed, Ordering::Relaxed);
        slot[1].store(packed, Ordering::Relaxed);
    }
}

fn read([check, data]: &Slot, hash: u64) -> Option<Entry> {
    let data = data.load(Ordering::Relaxed);
    (data != 0 && check.load(Ordering::Relaxed) ^ data == hash).then(|| unpack(data))
}

fn pack(entry: Entry) -> u64 {
    let bound = match entry.bound {
        Bound::Exact => 1,
        Bound::Lower => 2,
        Bound::Upper => 3,
    };
    let short = |value: i32| u64::from(value.clamp(-32_767, 32_767) as i16 as u16);
    u64::from(entry.best)
        | (bound << 16)
        | ((entry.depth.clamp(0, 255) as u64) << 24)
        | (short(entry.score) << 32)
        | (short(entry.static_eval) << 48)
}

fn unpack(data: u64) -> Entry {
    Entry {
        best: data as u16,
        bound: match (data >> 16) & 3 {
            1 => Bound::Exact,
            2 => Bound::Lower,
            _ => Bound::Upper,
        },
        depth: ((data >> 24) & 0xff) as i32,
        score: i32::from((data >> 32) as u16 as i16),
        static_eval: i32::from((data >> 48) as u16 as i16),
    }
}

/// A move packed into 16 bits: from, to, promotion. Never 0 for a legal move.
pub(super) fn code(mv: Move) -> u16 {
    let from = mv.from().map_or(0, u16::from);
    from | (u16::from(mv.to()) << 6) | (mv.promotion().map_or(0, |role| role as u16) << 12)
}

#[cfg(test)]
mod tests {
    use super::{super::MATE, *};

    fn entry(depth: i32, score: i32, best: u16) -> Entry {
        Entry {
            depth,
            score,
            static_eval: -score,
            bound: Bound::Lower,
            best,
        }
    }

    #[test]
    fn entries_come_back_as_they_went_in() {
        let table = Table::new(1 << 10);
        for (hash, score) in [
            (1u64, -31_990),
            (u64::MAX, 31_990),
            (0x1234_5678_9abc_def0, 0),
        ] {
            table.put(hash, entry(7, score, 77));
            let entry = table.get(hash).expect("kept");
            assert_eq!(
                (
                    entry.depth,
                    entry.score,
                    entry.static_eval,
                    entry.bound,
                    entry.best
                ),
                (7, score, -score, Bound::Lower, 77)
            );
        }
        assert!(table.get(2).is_none());
    }

    #[test]
    fn mates_are_kept_by_their_distance_from_the_position() {
        let mates = Entry {
            bound: Bound::Exact,
            ..entry(7, MATE - 9, 77)
        };
        let kept = mates.counted_from(4);
        assert_eq!(kept.score, MATE - 5);
        assert_eq!(kept.cutoff(Window::zero_above(0), 6), Some(MATE - 11));
    }

    #[test]
    fn a_bound_ends_only_the_windows_it_answers() {
        let lower = entry(7, 50, 77);
        assert_eq!(lower.cutoff(Window::new(0, 50), 3), Some(50));
        assert_eq!(lower.cutoff(Window::new(0, 51), 3), None);
        for (score, bound) in [(0, Bound::Upper), (1, Bound::Exact), (50, Bound::Lower)] {
            assert_eq!(Bound::of(score, Window::new(0, 50)), bound);
        }
    }

    #[test]
    fn a_bucket_keeps_the_deepest_and_the_latest() {
        let table = Table::new(1);
        table.put(1, entry(9, 10, 1));
        table.put(2, entry(3, 20, 2));
        table.put(3, entry(2, 30, 3));
        assert_eq!(table.get(1).map(|e| e.depth), Some(9));
        assert!(table.get(2).is_none());
        assert_eq!(table.get(3).map(|e| e.depth), Some(2));
        // A shallower look at a known position neither replaces it nor stands beside it.
        table.put(1, entry(5, 40, 4));
        assert_eq!(table.get(1).map(|e| e.score), Some(10));
        // A look without a best move keeps the one known.
        table.put(3, entry(3, 50, 0));
        assert_eq!(table.get(3).map(|e| (e.score, e.best)), Some((50, 3)));
    }
}
