//! `/coach export`: the figures as a file for a spreadsheet.

use super::{Answer, Ctx, choose_post, for_coach, leaderboard, one_post};
use crate::{
    chat::discord::{letter::Letter, sheets::summary, text::Coach},
    desk::{PostId, SummaryTable},
};

/// What is exported.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
pub enum What {
    /// Points.
    #[name = "leaderboard"]
    Leaderboard,
    /// Who took part.
    #[name = "summary"]
    Summary,
    /// Replies to a post.
    #[name = "replies"]
    Replies,
}

/// Take the figures away as a CSV file
#[poise::command(slash_command)]
pub async fn export(
    ctx: Ctx<'_>,
    what: What,
    #[min = 1]
    #[max = 3660]
    days: Option<u32>,
    #[autocomplete = "choose_post"] position: Option<i64>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let desk = &house.desk;
        let period = leaderboard::period(house, &place, days, None).await?;
        let (name, bytes) = match what {
            What::Leaderboard => {
                let board = desk.leaderboard(&place, &period).await?;
                ("leaderboard.csv", board.csv()?.into_bytes())
            }
            What::Summary => {
                let report = desk.coach().summary(&place, &period).await?;
                (
                    "summary.csv",
                    report.csv(SummaryTable::Members)?.into_bytes(),
                )
            }
            What::Replies => {
                let post = match position {
                    Some(post) => PostId::of(post),
                    None => one_post(ctx, &place).await?,
                };
                let replies = desk.coach().replies(&place, &coach, post).await?;
                ("replies.csv", summary::replies_csv(&replies))
            }
        };
        Ok(Letter::text(words.say(&Coach::ExportHere)).file(name, bytes))
    })
    .await
}
