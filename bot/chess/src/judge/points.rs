//! The scale: five points a problem.
//!
//! Source: the solving rules of the World Federation for Chess Composition. A problem is worth five
//! points; a two-mover needs only the key; longer mates need the full-length variations; of several
//! first moves offered, one wrong spoils the answer. How the five points are parted when something is
//! missing the rules leave to the director of a contest. Ours: one for the key and four shared by the
//! variations, rounded down to a half. As in contests the mating moves themselves need not be written
//! (common practice), so that a variation counts as given with the solver's last move but one.

/// Points for a full solution.
pub const FULL: f64 = 5.0;
/// Points for a right key of a longer mate, with nothing after it.
pub const KEY: f64 = 1.0;

/// Points for the key and this share (0.0 to 1.0) of the full-length variations.
pub fn for_share(share: f64) -> f64 {
    if share >= 1.0 {
        return FULL;
    }
    // A hair is added so that a share of a half does not fall below it by rounding.
    let points = KEY + (FULL - KEY) * share.clamp(0.0, 1.0) + 1e-9;
    (points * 2.0).floor() / 2.0
}

/// Points for `done` right moves of a mate in `moves`, or of a win or draw that asks for `moves`, played
/// one by one.
pub fn for_moves(done: usize, moves: u8) -> f64 {
    if done == 0 {
        return 0.0;
    }
    let rest = f64::from(moves.max(2) - 1);
    for_share(((done - 1) as f64 / rest).min(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_the_five_points() {
        assert_eq!(for_share(1.0), 5.0);
        assert_eq!(for_share(0.0), 1.0);
        assert_eq!(for_share(0.5), 3.0);
        assert_eq!(for_share(1.0 / 3.0), 2.0);
        assert_eq!(for_share(0.99), 4.5);
        assert_eq!(for_moves(0, 3), 0.0);
        assert_eq!(for_moves(1, 3), 1.0);
        assert_eq!(for_moves(2, 3), 3.0);
        assert_eq!(for_moves(3, 3), 5.0);
        assert_eq!(for_moves(2, 4), 2.0);
    }
}
