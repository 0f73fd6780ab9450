//! How much less deep a move is searched, and when it is not searched at all: every number of the
//! forward pruning in one place. All of them are our own, found by trying.
//!
//! None applies in check, to a move that gives check (save captures that lose much), while the best
//! score so far is a mate against the mover, or in a window that reaches into mates. So a side is
//! only ever called mated when all its moves were looked at.

/// Late-move reductions: half-moves by which a late move is searched less deep. They grow with
/// the logarithms of depth and move number.
#[derive(Debug)]
pub(super) struct Reductions([[u8; 64]; 64]);

impl Reductions {
    pub fn new() -> Box<Self> {
        let mut table = [[0; 64]; 64];
        for (depth, row) in table.iter_mut().enumerate().skip(1) {
            for (number, value) in row.iter_mut().enumerate().skip(1) {
                *value = (0.5 + (depth as f64).ln() * (number as f64).ln() / 2.1) as u8;
            }
        }
        Box::new(Self(table))
    }

    /// For the move tried as number `number` (from 0) at `depth`.
    pub fn of(&self, depth: i32, number: usize) -> i32 {
        i32::from(self.0[depth.clamp(0, 63) as usize][number.min(63)])
    }
}

/// How far above the window a position must stand for reverse futility pruning: `depth` half-moves
/// will not lose so much.
pub(super) fn reverse_futility_margin(depth: i32, improving: bool) -> Option<i32> {
    (depth <= 7).then(|| 80 * (depth - i32::from(improving)).max(0) + 10)
}

/// How far below the window a position must stand for razoring.
pub(super) fn razoring_margin(depth: i32) -> Option<i32> {
    (depth <= 2).then(|| 150 + 200 * depth)
}

/// The least depth of a null move.
pub(super) const NULL_MOVE_DEPTH: i32 = 3;
/// From this depth on, what a null move says is verified.
pub(super) const NULL_MOVE_VERIFICATION_DEPTH: i32 = 10;

/// How much less deep the reply to a null move is searched, `above` hundredths of a pawn over the
/// window.
pub(super) fn null_move_reduction(depth: i32, above: i32) -> i32 {
    3 + depth / 4 + i32::from(above >= 200)
}

/// Internal iterative reduction: without a table move to begin with, a shallower search finds one at
/// less cost.
pub(super) fn internal_iterative_reduction(depth: i32) -> i32 {
    i32::from(depth >= 5)
}

/// Late-move pruning: after this many quiet moves the rest of them is hopeless.
pub(super) fn late_move_count(depth: i32, improving: bool) -> usize {
    if depth > 6 {
        return usize::MAX;
    }
    let many = (4 + depth * depth) as usize;
    if improving { many * 3 / 2 } else { many }
}

/// Futility pruning: what a quiet move may be hoped to gain with `depth` half-moves to go.
pub(super) fn futility_margin(depth: i32) -> Option<i32> {
    (depth <= 6).then(|| 80 + 100 * depth)
}

/// History pruning: a quiet move whose history is below this failed too often before.
pub(super) fn history_floor(depth: i32) -> Option<i32> {
    (depth <= 3).then(|| -6_000 * depth)
}

/// Material that a move may lose by static exchange evaluation and still be tried.
pub(super) fn exchange_margin(depth: i32, quiet: bool) -> Option<i32> {
    (depth <= 6).then(|| {
        if quiet {
            30 * depth * depth
        } else {
            110 * depth
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn later_moves_and_deeper_searches_are_reduced_more() {
        let reductions = Reductions::new();
        assert_eq!(reductions.of(3, 0), 0, "never the first");
        for depth in 1..64 {
            for number in 1..63 {
                assert!(reductions.of(depth, number) <= reductions.of(depth, number + 1));
                assert!(reductions.of(depth, number) <= reductions.of(depth + 1, number));
            }
        }
        assert!((4..=7).contains(&reductions.of(16, 30)));
    }
}
