//! `/coach week`: what waits, in order, with buttons to move it about.

use super::{Answer, Ctx, for_coach, said};
use crate::{
    chat::discord::{house::House, letter::Letter, sheets, text::Group},
    desk::{ItemId, Person, Place},
    words::Words,
};

/// See and reorder the week
#[poise::command(slash_command)]
pub async fn week(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        open(house, words, &place, &coach, None).await
    })
    .await
}

/// The week as it is now.
pub async fn open(
    house: &House,
    words: &Words,
    place: &Place,
    coach: &Person,
    picked: Option<ItemId>,
) -> Answer<Letter> {
    let queue = house.desk.coach().queue(place).await?;
    let paused = house.desk.coach().paused(place).await?;
    if !house.desk.is_coach(place, &coach.user).await? {
        return said(Group::CoachesOnly);
    }
    let taken_out = house.desk.coach().taken_out(place, coach).await?;
    let letter = sheets::week::letter(words, place, &queue, paused, picked);
    Ok(match taken_out.first() {
        Some(latest) => sheets::week::with_undo(words, place, letter, latest),
        None => letter,
    })
}
