//! `/coach answers`: replies that wait for the coach's hand, one at a time.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use super::{Answer, Ctx, for_coach};
use crate::{
    chat::{
        discord::{
            buttons::{self, Press},
            house::House,
            letter::Letter,
            words,
        },
        said::in_words,
    },
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
pub async fn open(house: &House, place: &Place, coach: &Person, at: usize) -> Answer<Letter> {
    let rows = house.desk.homework(place, coach).await?;
    if rows.is_empty() {
        return Ok(Letter::text("No answer waits for you."));
    }
    let at = at.min(rows.len() - 1);
    let row = &rows[at];
    let picture = house.desk.post(place, row.post).await?.picture;
    let said = match row.reply.said.is_empty() {
        true => String::new(),
        false => format!("\n\nI said: {}", words::plain(&in_words(&row.reply.said))),
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
    let reply = row.reply.reply;
    let verdict = |right, label: &str, style| {
        buttons::button(Press::Judge { reply, right }.id(place), label, style)
    };
    let turn = |label: &str, to: Option<usize>| {
        buttons::turn(|at| Press::Homework(at).id(place), label, at, to)
    };
    Ok(Letter::text(text)
        .picture("position", &picture)
        .row(CreateActionRow::Buttons(vec![
            verdict(true, "Right …", ButtonStyle::Success),
            verdict(false, "Not right …", ButtonStyle::Danger),
            turn("Previous", at.checked_sub(1)),
            turn("Next", Some(at + 1).filter(|to| *to < rows.len())),
        ]))
        .row(CreateActionRow::Buttons(vec![
            buttons::button(
                Press::ReplyTo(reply).id(place),
                "Answer in private …",
                ButtonStyle::Secondary,
            ),
            buttons::button(
                Press::NoAnswer(reply).id(place),
                "No answer needed",
                ButtonStyle::Secondary,
            ),
        ])))
}
