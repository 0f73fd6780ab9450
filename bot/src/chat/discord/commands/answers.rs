//! `/coach answers`: replies that wait for the coach's hand, one at a time.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow};

use super::{Answer, Ctx, for_coach};
use crate::{
    chat::discord::{
        buttons::{self, Press, Way},
        fit,
        house::House,
        letter::Letter,
        text::{Coach, Moment, Plain, Study, number},
    },
    desk::{Content, Person, Place, RepliesTo},
    words::Words,
};

/// Answer by hand what I could not judge
#[poise::command(slash_command)]
pub async fn answers(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        open(house, words, &place, &coach, 0).await
    })
    .await
}

/// The waiting reply at `at`, with what can be done with it.
pub async fn open(
    house: &House,
    words: &'static Words,
    place: &Place,
    coach: &Person,
    at: usize,
) -> Answer<Letter> {
    let rows = house.desk.coach().homework(place, coach).await?;
    if rows.is_empty() {
        return Ok(Letter::text(words.say(&Coach::NoAnswerWaits)));
    }
    let at = at.min(rows.len() - 1);
    let row = &rows[at];
    let content = house.desk.post(place, row.post).await?.content;
    let said = match row.reply.said.is_empty() {
        true => String::new(),
        false => {
            let said = Plain::of(&words.tell(&row.reply.said.facts));
            format!("\n\n{}", words.say(&Coach::IsSaid { said }))
        }
    };
    let head = words.say(&Coach::AnswerWaits {
        at: number(at + 1),
        of: number(rows.len()),
        kind: content.kind().name(),
        number: row.number,
        when: Moment::of(row.reply.received_at),
    });
    let text = format!(
        "{head}\n{}\n\n> {}{said}",
        fit::plain(&row.reply.name),
        fit::plain(&fit::short(&row.reply.text.replace('\n', " "), 900)),
    );
    let reply = row.reply.reply;
    let verdict = |right, label: Coach, style| {
        buttons::button(
            Press::Judge { reply, right }.id(place),
            &words.say(&label),
            style,
        )
    };
    let turn = |way, label: Study, to: Option<usize>| {
        let label = words.say(&label);
        buttons::turn(|at| Press::Homework(at).id(place), way, &label, at, to)
    };
    let mut settle = match row.reply.to {
        RepliesTo::Problem => vec![
            verdict(true, Coach::ButtonRight, ButtonStyle::Success),
            verdict(false, Coach::ButtonNotRight, ButtonStyle::Danger),
        ],
        RepliesTo::Question => vec![buttons::button(
            Press::Mark(reply).id(place),
            &words.say(&Coach::ButtonMark),
            ButtonStyle::Success,
        )],
    };
    settle.extend([
        turn(Way::Back, Study::ButtonPrevious, at.checked_sub(1)),
        turn(
            Way::On,
            Study::ButtonNext,
            Some(at + 1).filter(|to| *to < rows.len()),
        ),
    ]);
    let text = match &content {
        Content::Problem { .. } => text,
        Content::Question(asked) | Content::Words(asked) => {
            let asked = fit::short(&asked.words.replace('\n', " "), 300);
            let asked = Plain::of(&asked);
            format!("{text}\n\n{}", words.say(&Coach::IsAsked { asked }))
        }
    };
    let letter = match content.picture() {
        Some(picture) => Letter::text(text).picture("position", picture, words),
        None => Letter::text(text),
    };
    Ok(letter
        .row(CreateActionRow::Buttons(settle))
        .row(CreateActionRow::Buttons(vec![
            buttons::button(
                Press::ReplyTo(reply).id(place),
                &words.say(&Coach::ButtonAnswerPrivately),
                ButtonStyle::Secondary,
            ),
            buttons::button(
                Press::NoAnswer(reply).id(place),
                &words.say(&Coach::ButtonNoAnswer),
                ButtonStyle::Secondary,
            ),
        ])))
}
