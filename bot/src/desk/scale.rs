//! What a group takes off.

use super::{
    Settings,
    attempt::{self, LATER_WRONG},
};
use crate::chess::judge::points;

/// What a group takes off, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Costs {
    /// Each wrong first move.
    pub wrong: f64,
    /// Whether nothing more can be scored after one.
    pub wrong_ends: bool,
    /// A wrong move later in the line.
    pub later: f64,
    /// Each hint.
    pub hint: f64,
    /// What whoever solves without being shown the move keeps.
    pub least: f64,
}

impl Settings {
    /// What a post with these settings takes off.
    pub fn costs(&self) -> Costs {
        let prices = attempt::prices(self);
        Costs {
            wrong: prices.wrong_cost,
            wrong_ends: prices.wrong_cost >= points::FULL,
            later: prices.wrong_cost.min(LATER_WRONG),
            hint: prices.hint_cost,
            least: prices.least,
        }
    }
}
