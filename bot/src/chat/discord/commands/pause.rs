//! `/coach pause` and `/coach resume`: a holiday.

use chrono::TimeZone;

use super::{Answer, Ctx, for_coach, said, time};
use crate::chat::discord::{
    letter::Letter,
    text::{Coach, Moment},
};

/// Post nothing for a while
#[poise::command(slash_command)]
pub async fn pause(ctx: Ctx<'_>, until: Option<String>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let zone = house.desk.settings(&place).await?.zone;
        let until = match until.as_deref().map(time::local).transpose()? {
            None => None,
            Some(local) => match zone.from_local_datetime(&local).earliest() {
                Some(moment) if moment > house.desk.now() => Some(moment.to_utc()),
                Some(_) => return said(Coach::MomentPast),
                None => return said(Coach::MomentLeftOut),
            },
        };
        house.desk.coach().pause(&place, &coach, until).await?;
        Ok(Letter::text(words.say(&match until {
            Some(until) => Coach::PausedNow {
                until: Moment::of(until),
            },
            None => Coach::PausedTillResumed,
        })))
    })
    .await
}

/// End a pause
#[poise::command(slash_command)]
pub async fn resume(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        house.desk.coach().resume(&place, &coach).await?;
        Ok(Letter::text(words.say(&Coach::Resumed)))
    })
    .await
}
