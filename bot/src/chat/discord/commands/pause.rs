//! `/coach pause` and `/coach resume`: a holiday.

use chrono::TimeZone;

use super::{Answer, Ctx, for_coach, said, time};
use crate::chat::discord::{letter::Letter, words};

/// Post nothing for a while
#[poise::command(slash_command)]
pub async fn pause(
    ctx: Ctx<'_>,
    #[description = "Until when, such as 2027-01-07; until you resume by default"] until: Option<
        String,
    >,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let zone = house.desk.settings(&place).await?.zone;
        let until = match until.as_deref().map(time::local).transpose()? {
            None => None,
            Some(local) => match zone.from_local_datetime(&local).earliest() {
                Some(moment) if moment > house.desk.now() => Some(moment.to_utc()),
                Some(_) => return said("That moment is past."),
                None => return said("The clocks leave that moment out; choose another one."),
            },
        };
        house.desk.pause(&place, &coach, until).await?;
        Ok(Letter::text(match until {
            Some(until) => format!(
                "Paused until {}. An open position stays open.",
                words::moment(until)
            ),
            None => "Paused until you run /coach resume. An open position stays open.".into(),
        }))
    })
    .await
}

/// End a pause
#[poise::command(slash_command)]
pub async fn resume(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        house.desk.resume(&place, &coach).await?;
        Ok(Letter::text("Positions go out again as planned."))
    })
    .await
}
