//! `/lesson`: lessons in from a file, into the week, and out again. For coaches.

use std::sync::Arc;

use poise::serenity_prelude::{self as serenity, AutocompleteChoice, CreateAutocompleteResponse};

use super::{Answer, Ctx, check::fetch, coaching, for_coach, said, time::local, week};
use crate::{
    chat::discord::{
        fit,
        house::House,
        letter::Letter,
        oops::Oops,
        sheets,
        text::{Coach, Label, Plain, number},
    },
    desk::{LessonFile, LessonId, LessonPlan, SameChoice},
};

/// For coaches: lessons, a topic taught in steps
#[poise::command(
    slash_command,
    guild_only,
    subcommand_required,
    subcommands("take_in", "list", "show", "plan", "hand_out", "remove")
)]
pub async fn lesson(_: poise::ApplicationContext<'_, Arc<House>, Oops>) -> Answer<()> {
    // Discord offers only the sub-commands.
    Ok(())
}

/// Take a lesson in from a file of PGN, a game for each step
#[poise::command(slash_command, rename = "take-in")]
async fn take_in(ctx: Ctx<'_>, file: serenity::Attachment, title: Option<String>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let bytes = fetch(house, &file).await?;
        let sheet = house
            .desk
            .coach()
            .import_lesson(
                &place,
                &coach,
                LessonFile {
                    replaces: None,
                    name: file.filename.clone(),
                    bytes,
                    title,
                },
                SameChoice::Keep,
                Arc::new(|_, _| {}),
            )
            .await?;
        let above = words.say(&match sheet.lesson {
            Some(_) => Coach::LessonTakenIn {
                title: Plain::of(&sheet.title),
            },
            None => Coach::LessonLost,
        });
        Ok(sheets::lesson::page(words, &sheet, &above))
    })
    .await
}

/// See the group's lessons
#[poise::command(slash_command)]
async fn list(ctx: Ctx<'_>) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let lessons = house.desk.coach().lessons(&place, &coach).await?;
        Ok(sheets::lesson::rows(words, &lessons))
    })
    .await
}

/// See a lesson step by step, and where each part stands
#[poise::command(slash_command)]
async fn show(ctx: Ctx<'_>, #[autocomplete = "choose_lesson"] lesson: i64) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let lesson = LessonId::of(lesson);
        let sheet = house.desk.coach().lesson(&place, &coach, lesson).await?;
        Ok(sheets::lesson::page(words, &sheet, ""))
    })
    .await
}

/// Put a lesson into the week: in order, or all at once
#[poise::command(slash_command)]
async fn plan(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_lesson"] lesson: i64,
    #[rename = "at-once"] at_once: Option<String>,
    #[min = 1] step: Option<i64>,
    when: Option<String>,
    anyway: Option<bool>,
    again: Option<bool>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let plan = match (at_once.as_deref(), step, when.as_deref()) {
            (Some(at), None, None) => LessonPlan::AtOnce(local(at)?),
            (None, Some(step), Some(at)) => LessonPlan::Dates(vec![(step, local(at)?)]),
            (None, None, None) => LessonPlan::InOrder,
            _ => return said(Coach::LessonPlanUnclear),
        };
        let lesson = LessonId::of(lesson);
        let (anyway, again) = (anyway == Some(true), again == Some(true));
        let planned = house
            .desk
            .coach()
            .plan_lesson(&place, &coach, lesson, plan, anyway, again)
            .await?;
        let told = words.say(&Coach::LessonInWeek {
            number: number(planned.items.len()),
            omitted: number(planned.left_out),
        });
        let first = planned.items.first().copied();
        let mut letter = week::open(house, words, &place, &coach, first).await?;
        letter.text = fit::short(&format!("{told}\n\n{}", letter.text), fit::MESSAGE);
        Ok(letter)
    })
    .await
}

/// Take a lesson away as a file of PGN
#[poise::command(slash_command, rename = "hand-out")]
async fn hand_out(ctx: Ctx<'_>, #[autocomplete = "choose_lesson"] lesson: i64) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let lesson = LessonId::of(lesson);
        let desk = house.desk.coach();
        let title = desk.lesson(&place, &coach, lesson).await?.title;
        let text = desk.export_lesson(&place, &coach, lesson).await?;
        let told = words.say(&Coach::LessonHere {
            title: Plain::of(&title),
        });
        Ok(Letter::text(told).file("lesson.pgn", text.into_bytes()))
    })
    .await
}

/// Forget a lesson and take it out of the week
#[poise::command(slash_command)]
async fn remove(ctx: Ctx<'_>, #[autocomplete = "choose_lesson"] lesson: i64) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let lesson = LessonId::of(lesson);
        let desk = house.desk.coach();
        let title = desk.lesson(&place, &coach, lesson).await?.title;
        desk.remove_lesson(&place, &coach, lesson).await?;
        Ok(Letter::text(words.say(&Coach::LessonGone {
            title: Plain::of(&title),
        })))
    })
    .await
}

/// Choices of lessons, for coaches only.
async fn choose_lesson(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let Ok((place, coach)) = coaching(ctx).await else {
        return CreateAutocompleteResponse::new();
    };
    let words = ctx.data().words_for(&place, &coach).await;
    let lessons = ctx.data().desk.coach().lessons(&place, &coach).await;
    let typed = typed.to_lowercase();
    let choices = lessons
        .unwrap_or_default()
        .into_iter()
        .filter(|row| row.title.to_lowercase().contains(&typed))
        .take(25)
        .map(|row| {
            let label = words.say(&Coach::LessonChoice {
                title: Label::of(&row.title),
                steps: row.steps,
            });
            AutocompleteChoice::new(fit::short(&label, fit::OPTION), row.lesson.get())
        })
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}
