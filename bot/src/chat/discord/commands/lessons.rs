//! `/study lesson`: a lesson stepped through after its reveals, in one private message whose buttons turn the board.

use poise::serenity_prelude as serenity;
use serenity::{
    AutocompleteChoice, CreateActionRow, CreateAutocompleteResponse, CreateSelectMenu,
    CreateSelectMenuKind, CreateSelectMenuOption,
};

use super::{Answer, Ctx, group, member, privately};
use crate::{
    chat::discord::{
        buttons::Press,
        fit,
        house::House,
        letter::Letter,
        sheets::walk,
        text::{Label, Plain, Study, number},
    },
    desk::{LessonId, LessonListed, PartAt, Place},
    words::Words,
};

/// The lessons by their titles.
async fn choose_lesson(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let Ok((place, _)) = group(ctx).await else {
        return CreateAutocompleteResponse::new();
    };
    let typed = typed.to_lowercase();
    let rows = ctx.data().desk.member().lessons(&place).await;
    let choices = rows
        .unwrap_or_default()
        .into_iter()
        .filter(|row| row.title.to_lowercase().contains(&typed))
        .take(25)
        .map(|row| AutocompleteChoice::new(fit::short(&row.title, fit::OPTION), row.lesson.get()))
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}

/// Step through a lesson whose posts are revealed
#[poise::command(slash_command, rename = "lesson")]
pub async fn lesson(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_lesson"] lesson: Option<i64>,
) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        match lesson.map(LessonId::of) {
            Some(lesson) => begin(ctx.data(), words, &place, lesson).await,
            None => list(ctx.data(), words, &place).await,
        }
    })
    .await
}

/// The lessons of which something is revealed, with a menu of them.
pub async fn list(house: &House, words: &Words, place: &Place) -> Answer<Letter> {
    let rows = house.desk.member().lessons(place).await?;
    if rows.is_empty() {
        return Ok(Letter::text(words.say(&Study::NoLessonRevealed)));
    }
    let mut lines = vec![words.say(&Study::LessonsThere)];
    lines.extend(rows.iter().take(25).map(|row| listed(words, row)));
    let options = rows.iter().take(25).map(|row| {
        let label = words.say(&Study::LessonPickOne {
            title: Label::of(&row.title),
        });
        CreateSelectMenuOption::new(fit::short(&label, fit::OPTION), row.lesson.to_string())
    });
    let kind = CreateSelectMenuKind::String {
        options: options.collect(),
    };
    let menu = CreateSelectMenu::new(Press::Lessons.id(place), kind)
        .placeholder(words.say(&Study::LessonPick));
    Ok(Letter::text(lines.join("\n")).row(CreateActionRow::SelectMenu(menu)))
}

fn listed(words: &Words, row: &LessonListed) -> String {
    let head = words.say(&Study::LessonListed {
        title: Plain::of(&row.title),
        revealed: number(row.revealed),
    });
    let rest = walk::to_come(words, &row.to_come);
    match rest.is_empty() {
        true => head,
        false => format!("{head} {rest}"),
    }
}

/// A lesson from its beginning.
pub async fn begin(
    house: &House,
    words: &Words,
    place: &Place,
    lesson: LessonId,
) -> Answer<Letter> {
    let walk = house.desk.member().lesson_walk(place, lesson).await?;
    match walk.parts.first().map(|part| part.at) {
        Some(first) => at(house, words, place, lesson, (first, 0)).await,
        None => list(house, words, place).await,
    }
}

/// A place of a lesson. One whose part is not there any more leads to the beginning of the lesson.
pub async fn at(
    house: &House,
    words: &Words,
    place: &Place,
    lesson: LessonId,
    (part, at): (PartAt, usize),
) -> Answer<Letter> {
    let walk = house.desk.member().lesson_walk(place, lesson).await?;
    let nth = walk
        .parts
        .iter()
        .position(|one| one.at == part)
        .unwrap_or(0);
    let Some(found) = walk.parts.get(nth) else {
        return list(house, words, place).await;
    };
    let at = at.min(found.places.len().saturating_sub(1));
    let letter = walk::letter(words, place, &walk, nth, at);
    if found.places.is_empty() {
        return Ok(letter);
    }
    let picture = house
        .desk
        .member()
        .lesson_board(place, lesson, (found.at, at), words.tag())
        .await?;
    Ok(letter.picture("board", &picture, words))
}
