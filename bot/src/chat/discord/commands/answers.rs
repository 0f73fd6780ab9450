//! `/coach answers`: replies that wait for the coach's hand, one at a time.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use super::{Answer, Ctx, for_coach};
use crate::{
    chat::discord::{buttons, house::House, letter::Letter, words},
    desk::{Person, Place},
};

/// Answer by hand what I could not judge
#[poise::command(slash_command)]
pub async fn answers(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        open(house, &place, &coach, 0).await
    })
    .await
}

/// The waiting reply at `at`, with what can be done with it.
pub async fn open(house: &House, place: &Place, coach: &Person, at: i64) -> Answer<Letter> {
    let rows = house.desk.homework(place, coach).await?;
    if rows.is_empty() {
        return Ok(Letter::text("No answer waits for you."));
    }
    let at = (at.max(0) as usize).min(rows.len() - 1);
    let row = &rows[at];
    let picture = house.desk.post(place, row.post).await?.picture;
    let said = match row.reply.message.as_str() {
        "" => String::new(),
        message => format!("\n\nI said: {}", words::plain(message)),
    };
    let text = format!(
        "**{} of {} waiting** · Position {} · {}\n{}\n\n> {}{said}",
        at + 1,
        rows.len(),
        row.number,
        words::moment(row.reply.received_at),
        words::plain(&row.reply.name),
        words::plain(&words::short(&row.reply.text.replace('\n', " "), 900)),
    );
    let verdict = |word: &str, label: &str, style| {
        let id = format!("{}:{word}", buttons::id("words", place, row.reply.reply));
        buttons::button(id, label, style)
    };
    let turn = |label: &str, to: Option<usize>| {
        let to_id = to.unwrap_or(at) as i64;
        let id = format!("{}:{label}", buttons::id("homework", place, to_id));
        buttons::button(id, label, ButtonStyle::Secondary).disabled(to.is_none())
    };
    Ok(Letter::text(text)
        .picture("position", &picture)
        .row(CreateActionRow::Buttons(vec![
            verdict("solved", "Right …", ButtonStyle::Success),
            verdict("wrong", "Not right …", ButtonStyle::Danger),
            turn("Previous", at.checked_sub(1)),
            turn("Next", Some(at + 1).filter(|to| *to < rows.len())),
        ]))
        .row(CreateActionRow::Buttons(vec![
            buttons::button(
                buttons::id("reply-to", place, row.reply.reply),
                "Answer in private …",
                ButtonStyle::Secondary,
            ),
            buttons::button(
                buttons::id("no-answer", place, row.reply.reply),
                "No answer needed",
                ButtonStyle::Secondary,
            ),
        ])))
}
