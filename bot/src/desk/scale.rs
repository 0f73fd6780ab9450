//! What a group takes off.

use super::{
    Points, Settings,
    attempt::{self, LATER_WRONG},
    error::DeskError,
    refusal::{Paid, Refusal},
};

/// What a group takes off, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Costs {
    /// Each wrong first move.
    pub wrong: Points,
    /// Whether nothing more can be scored after one.
    pub wrong_ends: bool,
    /// A wrong move later in the line.
    pub later: Points,
    /// Each hint.
    pub hint: Points,
    /// What whoever solves without being shown the move keeps.
    pub least: Points,
}

impl Settings {
    /// What a post with these settings takes off.
    pub fn costs(&self) -> Costs {
        let prices = attempt::prices(self);
        Costs {
            wrong: prices.wrong_cost,
            wrong_ends: prices.wrong_cost == Points::FULL,
            later: prices.wrong_cost.min(LATER_WRONG),
            hint: prices.hint_cost,
            least: prices.least,
        }
    }
}

/// A price as a coach gives it, in points.
///
/// # Errors
/// When it is out of the scale.
pub fn price(what: Paid, points: f64) -> Result<Points, DeskError> {
    Points::checked(points).ok_or(DeskError::BadRequest(Refusal::PriceRange { what }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_price_out_of_the_scale_is_refused_with_what_it_is_for() {
        for (what, named) in [(Paid::Wrong, "wrong first move"), (Paid::Hint, "hint")] {
            for wrong in [-1.0, 5.5, f64::NAN, f64::INFINITY] {
                let error = price(what, wrong).expect_err(named).in_english();
                assert!(error.contains(named), "{error}");
            }
            assert_eq!(price(what, 0.5).ok(), Some(Points::of(0.5)));
        }
    }
}
