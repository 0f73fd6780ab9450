//! `/coach shelf`: checked positions that wait in no week.

use super::{Answer, Ctx, for_coach};
use crate::chat::discord::{house::Opened, letter::Letter, sheets, text::Coach};

/// How many are laid out.
const MOST: usize = 100;

/// See the checked positions that are in no week yet
#[poise::command(slash_command)]
pub async fn shelf(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let mut positions = house.desk.coach().shelf(&place, &coach, MOST).await?;
        if positions.is_empty() {
            return Ok(Letter::text(words.say(&Coach::ShelfEmpty)));
        }
        if let Some(id) = positions.first().and_then(|first| first.position) {
            positions[0].picture = house
                .desk
                .coach()
                .checked(&place, &coach, id)
                .await?
                .picture;
        }
        let report = Opened {
            place,
            coach: coach.user,
            positions,
        };
        let number = house.open_report(report);
        match house.report(number) {
            Some(report) => Ok(sheets::report::page(words, number, &report, 0, &[])),
            None => Ok(Letter::text(words.say(&Coach::ShelfEmpty))),
        }
    })
    .await
}
