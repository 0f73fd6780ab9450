//! The engagement summary and its charts; how they are put together is `figures`' part.

use super::CoachDesk;
use crate::desk::{Period, Picture, Place, Summary, error::Done};

impl CoachDesk<'_> {
    /// The engagement summary, for the coach: who took part and how it went, in the posts of the period
    /// whose replies have ended, and who went quiet or came back, counting open posts too: between two whole
    /// periods of one length with posts in them.
    ///
    /// # Errors
    /// When there is no such group, or no such topic.
    pub async fn summary(self, place: &Place, period: &Period) -> Done<Summary> {
        self.desk.summed_up(place, period).await
    }

    /// Charts for the summary: who took part, how each post and each topic went, and the commonest wrong
    /// moves on their board; in the language with this BCP 47 tag. None when the period has no post whose
    /// replies have ended.
    ///
    /// # Errors
    /// When there is no such group, or no such topic.
    pub async fn summary_charts(
        self,
        place: &Place,
        period: &Period,
        language: &str,
    ) -> Done<Vec<Picture>> {
        self.desk.charted(place, period, language).await
    }
}
