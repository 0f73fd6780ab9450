//! `/coach preview`: a post exactly as members would see it.

use super::{Answer, Ctx, choose_subject, for_coach, subject::Subject};
use crate::chat::discord::sheets;

/// See a position, or what waits in the week, as members will
#[poise::command(slash_command)]
pub async fn preview(ctx: Ctx<'_>, #[autocomplete = "choose_subject"] position: i64) -> Answer<()> {
    for_coach(ctx, |house, place, coach, _| async move {
        let mode = house.desk.settings(&place).await?.mode;
        let coaching = house.desk.coach();
        let sheet = match Subject::of(position) {
            Subject::Position(position) => coaching.preview(&place, &coach, position).await?,
            Subject::Written(item) => coaching.preview_item(&place, &coach, item).await?,
        };
        // As members will see it, so in the group's language.
        let words = house.words_of_group(&place).await;
        Ok(sheets::post::preview(
            words,
            &sheet,
            mode,
            house.opens_threads(&place),
        ))
    })
    .await
}
