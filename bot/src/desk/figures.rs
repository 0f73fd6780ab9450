//! Sums: the leaderboard and the engagement summary.

use super::{Desk, Leaderboard, Period, Picture, Place, Summary, error::Done};

impl Desk {
    /// The leaderboard.
    pub async fn leaderboard(&self, place: &Place, period: &Period) -> Done<Leaderboard> {
        let _ = (place, period);
        todo!()
    }

    /// The engagement summary.
    pub async fn summary(&self, place: &Place, period: &Period) -> Done<Summary> {
        let _ = (place, period);
        todo!()
    }

    /// Charts for the summary.
    pub async fn summary_charts(&self, place: &Place, period: &Period) -> Done<Vec<Picture>> {
        let _ = (place, period);
        todo!()
    }
}
