//! The transposition table: what is known of positions with the attacker to move.
//!
//! Entries carry the whole position, not a hash of it, so two positions can never be taken for one
//! another and the table cannot change an answer, only save work.

use std::sync::{Mutex, MutexGuard, PoisonError};

use shakmaty::{Chess, Move, Position, Role};

/// A position with the attacker to move, packed without loss (clocks apart, which the prover does
/// not count).
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
            state: corners as u16 | ep << 4,
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

/// What is known of a position.
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

#[derive(Clone, Copy, Default)]
struct Entry {
    key: Key,
    known: Known,
}

/// Kings stand on the board in every position, so an entry without any is empty.
impl Entry {
    fn is_empty(&self) -> bool {
        self.key.words[2] == 0
    }

    fn weight(&self) -> u8 {
        self.known.mate.max(self.known.no_mate)
    }
}

struct Shard {
    entries: Vec<Entry>,
    filled: usize,
}

const SHARDS: usize = 16;
const FIRST_SIZE: usize = 64;

/// Shared by all threads of one proof. Starts small and doubles as it fills, so that a short proof
/// pays for no memory it does not use.
pub(super) struct Table {
    shards: Vec<Mutex<Shard>>,
    most: usize,
}

impl Table {
    /// A table of at most `bytes`; it never takes fewer than a few kilobytes.
    pub(super) fn new(bytes: usize) -> Self {
        let most = bytes / SHARDS / size_of::<Entry>();
        let most = if most.is_power_of_two() {
            most
        } else {
            most.next_power_of_two() / 2
        };
        Self {
            shards: (0..SHARDS)
                .map(|_| {
                    Mutex::new(Shard {
                        entries: Vec::new(),
                        filled: 0,
                    })
                })
                .collect(),
            most: most.max(FIRST_SIZE),
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
        if shard.entries.is_empty() {
            return Known::default();
        }
        let at = hash as usize & (shard.entries.len() - 1);
        for entry in [&shard.entries[at], &shard.entries[at ^ 1]] {
            if entry.key == *key {
                return entry.known;
            }
        }
        Known::default()
    }

    /// Adds to what is known of a position.
    pub(super) fn note(&self, key: &Key, mate: Option<u8>, no_mate: Option<u8>, best: u16) {
        let hash = key.hash();
        let mut shard = self.shard(hash);
        if shard.entries.is_empty() {
            shard.entries = vec![Entry::default(); FIRST_SIZE];
        } else if shard.filled * 4 > shard.entries.len() * 3 && shard.entries.len() < self.most {
            shard.grow();
        }
        let at = hash as usize & (shard.entries.len() - 1);
        let slot = if shard.entries[at].key == *key {
            at
        } else if shard.entries[at ^ 1].key == *key {
            at ^ 1
        } else {
            // The shallower of the two gives way.
            let slot = if shard.entries[at].weight() <= shard.entries[at ^ 1].weight() {
                at
            } else {
                at ^ 1
            };
            if shard.entries[slot].is_empty() {
                shard.filled += 1;
            }
            shard.entries[slot] = Entry {
                key: *key,
                known: Known::default(),
            };
            slot
        };
        let known = &mut shard.entries[slot].known;
        if let Some(mate) = mate
            && (known.mate == 0 || mate < known.mate)
        {
            known.mate = mate;
        }
        if let Some(no_mate) = no_mate {
            known.no_mate = known.no_mate.max(no_mate);
        }
        if best != 0 {
            known.best = best;
        }
    }
}

impl Shard {
    fn grow(&mut self) {
        let size = self.entries.len() * 2;
        let old = std::mem::replace(&mut self.entries, vec![Entry::default(); size]);
        self.filled = 0;
        for entry in old {
            if entry.is_empty() {
                continue;
            }
            let at = entry.key.hash() as usize & (size - 1);
            let slot = if self.entries[at].is_empty() {
                at
            } else {
                at ^ 1
            };
            if self.entries[slot].is_empty() {
                self.filled += 1;
            } else if self.entries[slot].weight() > entry.weight() {
                continue;
            }
            self.entries[slot] = entry;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chess::parse_fen;

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
