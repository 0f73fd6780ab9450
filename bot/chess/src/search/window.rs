//! The bounds within which a score is searched exactly.

use std::ops::Neg;

use super::{MATE, MATED_SOON, worker::INFINITE};

/// Scores from `alpha` to `beta`, both left out, as the side to move sees them. A score at or below
/// `alpha` is an upper bound of the true one, a score at or above `beta` a lower bound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Window {
    pub alpha: i32,
    pub beta: i32,
}

impl Window {
    /// Every score.
    pub const FULL: Self = Self::new(-INFINITE, INFINITE);

    pub const fn new(alpha: i32, beta: i32) -> Self {
        Self { alpha, beta }
    }

    /// The zero window that asks only whether a score is above `alpha`.
    pub const fn zero_above(alpha: i32) -> Self {
        Self::new(alpha, alpha + 1)
    }

    /// The zero window that asks only whether a score reaches `beta`.
    pub const fn zero_below(beta: i32) -> Self {
        Self::new(beta - 1, beta)
    }

    /// Whether it is more than a zero window.
    pub const fn is_open(self) -> bool {
        self.beta - self.alpha > 1
    }

    /// Whether no score can be within: the search of it is over.
    pub const fn is_closed(self) -> bool {
        self.alpha >= self.beta
    }

    /// Mate-distance pruning: nothing found from `ply` half-moves on can beat a mate that is already
    /// shorter.
    pub fn within_mate_distance(self, ply: usize) -> Self {
        let ply = ply as i32;
        Self::new(self.alpha.max(-MATE + ply), self.beta.min(MATE - ply - 1))
    }

    /// Whether neither bound is a mate.
    pub const fn is_clear_of_mates(self) -> bool {
        self.alpha > -MATED_SOON && self.beta < MATED_SOON
    }
}

/// The same window as the opponent sees it.
impl Neg for Window {
    type Output = Self;

    fn neg(self) -> Self {
        Self::new(-self.beta, -self.alpha)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_zero_window_holds_no_score() {
        for zero in [Window::zero_above(7), Window::zero_below(8)] {
            assert_eq!(zero, Window::new(7, 8));
            assert!(!zero.is_open() && !zero.is_closed());
            assert_eq!(-zero, Window::new(-8, -7));
        }
        assert!(Window::FULL.is_open());
        assert!(Window::new(8, 8).is_closed());
    }

    #[test]
    fn no_mate_is_sought_that_is_longer_than_one_found() {
        let found = Window::new(MATE - 5, MATE);
        assert!(!found.within_mate_distance(2).is_closed());
        assert!(found.within_mate_distance(4).is_closed());
        assert!(!found.is_clear_of_mates());
        assert!(Window::new(-300, 300).is_clear_of_mates());
    }
}
