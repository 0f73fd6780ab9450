//! The transposition table: what is known of positions, whichever side is to move.
//!
//! Entries carry the whole position, not a hash of it, so two positions can never be taken for one
//! another and the table cannot change an answer, only save work. Short tags in front of the entries
//! keep most questions about unknown positions out of slow memory; a tag alone never answers one.

use std::sync::{Mutex, MutexGuard, PoisonError};

use shakmaty::{Chess, Move, Position, Role};

/// A position, packed without loss (clocks apart, which the prover does not count).
#[derive(Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Key {
    words: [u64; 4],
    state: u16,
}

impl Key {
    pub(super) fn of(position: &Chess) -> Self {
        let board = position.board();
        // Three bits a square tell the role, the fourth word the side.
        let words = [
            (board.pawns() | board.bishops() | board.queens()).0,
            (board.knights() | board.bishops() | board.kings()).0,
            (board.rooks() | board.queens() | board.kings()).0,
            board.white().0,
        ];
        let rights = position.castles().castling_rights().0;
        let corners =
            rights & 1 | (rights >> 7 & 1) << 1 | (rights >> 56 & 1) << 2 | rights >> 63 << 3;
        // A square behind a double step matters only where a pawn stands ready to capture on it.
        let ep = position
            .pseudo_legal_ep_square()
            .map_or(0, |square| u16::from(square) + 1);
        Self {
            words,
            state: corners as u16 | ep << 4 | u16::from(position.turn().is_white()) << 11,
        }
    }

    fn hash(&self) -> u64 {
        let mut hash = u64::from(self.state) ^ 0x9e37_79b9_7f4a_7c15;
        for word in self.words {
            hash = (hash ^ word).wrapping_mul(0xd6e8_feb8_6659_fd93);
            hash ^= hash >> 32;
        }
        hash
    }
}

/// What is known of a position. With the attacker to move his moves are counted from the next one,
/// with the defender to move from the one that answers his.
#[derive(Clone, Copy, Default)]
pub(super) struct Known {
    /// There is a mate in this many moves; 0 when none is known.
    pub(super) mate: u8,
    /// There is no mate in this many moves; 0 when nothing is known.
    pub(super) no_mate: u8,
    /// The move to look at first: from, to and promotion, packed; 0 when there is none.
    pub(super) best: u16,
}

/// From, to and promotion of a move in sixteen bits; never 0, as no move stays on its square.
pub(super) fn pack(mv: Move) -> u16 {
    let from = mv.from().map_or(0, u16::from);
    let promotion = mv.promotion().map_or(0, |role: Role| role as u16);
    from | u16::from(mv.to()) << 6 | promotion << 12
}

/// From and to of a packed move as one index below 4096.
pub(super) fn from_to(mv: Move) -> usize {
    usize::from(pack(mv) & 0xfff)
}

/// A key and what is known of it, side by side without the gaps that two structures would leave.
#[derive(Clone, Copy, Default)]
struct Entry {
    words: [u64; 4],
    state: u16,
    best: u16,
    mate: u8,
    no_mate: u8,
}

impl Entry {
    fn key(&self) -> Key {
        Key {
            words: self.words,
            state: self.state,
        }
    }

    fn is_of(&self, key: &Key) -> bool {
        self.words == key.words && self.state == key.state
    }

    fn weight(&self) -> u8 {
        self.mate.max(self.no_mate)
    }
}

/// Entries that one hash leads to.
const WAYS: usize = 4;

/// A set of entries; a tag of 0 marks an empty one.
type Tags = [u16; WAYS];

#[derive(Default)]
struct Shard {
    tags: Vec<Tags>,
    sets: Vec<[Entry; WAYS]>,
    filled: usize,
}

const SHARDS: usize = 16;
/// Sets a shard begins with.
const FIRST_SETS: usize = 16;

/// Shared by all threads of one proof. Starts small and doubles as it fills, so that a short proof
/// pays for no memory it does not use.
pub(super) struct Table {
    shards: Vec<Mutex<Shard>>,
    /// Sets that a shard may have.
    most: usize,
}

impl Table {
    /// A table of at most `bytes`; it never takes fewer than a few kilobytes.
    pub(super) fn new(bytes: usize) -> Self {
        let most = bytes / SHARDS / (size_of::<[Entry; WAYS]>() + size_of::<Tags>());
        let most = if most.is_power_of_two() {
            most
        } else {
            most.next_power_of_two() / 2
        };
        Self {
            shards: (0..SHARDS).map(|_| Mutex::new(Shard::default())).collect(),
            most: most.max(FIRST_SETS),
        }
    }

    fn shard(&self, hash: u64) -> MutexGuard<'_, Shard> {
        // Entries are plain values: a panic elsewhere cannot leave one half written.
        self.shards[(hash >> 60) as usize % SHARDS]
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
    }

    /// What is known of a position.
    pub(super) fn look(&self, key: &Key) -> Known {
        let hash = key.hash();
        let shard = self.shard(hash);
        match shard.find(key, hash) {
            Some((set, way)) => {
                let entry = &shard.sets[set][way];
                Known {
                    mate: entry.mate,
                    no_mate: entry.no_mate,
                    best: entry.best,
                }
            }
            None => Known::default(),
        }
    }

    /// Adds to what is known of a position.
    pub(super) fn note(&self, key: &Key, mate: Option<u8>, no_mate: Option<u8>, best: u16) {
        let hash = key.hash();
        let mut shard = self.shard(hash);
        let entry = match shard.find(key, hash) {
            Some((set, way)) => &mut shard.sets[set][way],
            None => {
                if shard.is_crowded() && shard.sets.len() < self.most {
                    shard.grow();
                }
                shard.place(key, hash)
            }
        };
        if let Some(mate) = mate
            && (entry.mate == 0 || mate < entry.mate)
        {
            entry.mate = mate;
        }
        if let Some(no_mate) = no_mate {
            entry.no_mate = entry.no_mate.max(no_mate);
        }
        if best != 0 {
            entry.best = best;
        }
    }
}

/// Bits of the hash that neither choose the shard nor, in any table that fits a machine, the set.
fn tag(hash: u64) -> u16 {
    (hash >> 44) as u16 | 1
}

impl Shard {
    fn is_crowded(&self) -> bool {
        self.filled * 4 >= self.sets.len() * WAYS * 3
    }

    fn find(&self, key: &Key, hash: u64) -> Option<(usize, usize)> {
        if self.sets.is_empty() {
            return None;
        }
        let set = hash as usize & (self.sets.len() - 1);
        let tag = tag(hash);
        let tags = &self.tags[set];
        (0..WAYS)
            .find(|&way| tags[way] == tag && self.sets[set][way].is_of(key))
            .map(|way| (set, way))
    }

    /// An entry of this key with nothing known yet: an empty one, or that of the shallowest position
    /// of the set, which gives way.
    fn place(&mut self, key: &Key, hash: u64) -> &mut Entry {
        let set = hash as usize & (self.sets.len() - 1);
        let (tags, entries) = (&mut self.tags[set], &mut self.sets[set]);
        let mut way = 0;
        for other in 0..WAYS {
            if tags[other] == 0 {
                way = other;
                self.filled += 1;
                break;
            }
            if entries[other].weight() < entries[way].weight() {
                way = other;
            }
        }
        tags[way] = tag(hash);
        entries[way] = Entry {
            words: key.words,
            state: key.state,
            ..Entry::default()
        };
        &mut entries[way]
    }

    /// Twice the sets. The entries of a set are shared out between two, so none is lost.
    fn grow(&mut self) {
        let size = (self.sets.len() * 2).max(FIRST_SETS);
        let tags = std::mem::replace(&mut self.tags, vec![Tags::default(); size]);
        let sets = std::mem::replace(&mut self.sets, vec![[Entry::default(); WAYS]; size]);
        self.filled = 0;
        for (tags, entries) in tags.into_iter().zip(sets) {
            for (_, entry) in tags.into_iter().zip(entries).filter(|(tag, _)| *tag != 0) {
                let key = entry.key();
                *self.place(&key, key.hash()) = entry;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;

    fn key(fen: &str) -> Key {
        Key::of(&parse_fen(fen).expect("a position").position)
    }

    #[test]
    fn keys_tell_rights_and_captures_in_passing_apart() {
        let all = key("r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1");
        for rights in ["KQk", "KQq", "Kkq", "Qkq", "-"] {
            assert!(all != key(&format!("r3k2r/8/8/8/8/8/8/R3K2R w {rights} - 0 1")));
        }
        assert!(all == key("r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 33 40"));
        let passing = "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1";
        assert!(key(passing) != key("4k3/8/8/3pP3/8/8/8/4K3 w - - 0 1"));
        let idle = "4k3/8/8/3p3P/8/8/8/4K3 w - d6 0 1";
        assert!(key(idle) == key("4k3/8/8/3p3P/8/8/8/4K3 w - - 0 1"));
    }

    #[test]
    fn keeps_the_sharpest_bounds_and_grows_without_losing_them() {
        let table = Table::new(4 << 20);
        let position = parse_fen("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1")
            .expect("a position")
            .position;
        let mut keys = Vec::new();
        for &mv in &position.legal_moves() {
            let mut child = position.clone();
            child.play_unchecked(mv);
            for &reply in &child.legal_moves() {
                let mut next = child.clone();
                next.play_unchecked(reply);
                keys.push((Key::of(&next), pack(reply)));
            }
        }
        for (i, (key, best)) in keys.iter().enumerate() {
            table.note(key, None, Some(1), *best);
            table.note(key, Some(5), None, 0);
            table.note(key, Some(6), Some((i % 3) as u8), 0);
        }
        let kept = keys
            .iter()
            .filter(|(key, _)| {
                let known = table.look(key);
                known.mate == 5 && known.no_mate >= 1 && known.best != 0
            })
            .count();
        assert!(kept * 10 > keys.len() * 8, "{kept} of {}", keys.len());
    }
}
