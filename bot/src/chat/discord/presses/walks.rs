//! Lessons stepped through: the one that was picked, and the places that its buttons lead to.

use poise::serenity_prelude as serenity;
use serenity::{ComponentInteraction, ComponentInteractionDataKind};

use super::At;
use crate::{
    chat::discord::{commands::lessons, letter::Letter, oops::Answer},
    desk::{LessonId, PartAt},
};

/// The lesson that was picked in the menu, from its beginning.
pub async fn picked(at: At<'_>, press: &ComponentInteraction) -> Answer<Letter> {
    let (_, words) = at.reader().await;
    let picked = match &press.data.kind {
        ComponentInteractionDataKind::StringSelect { values } => {
            values.first().and_then(|value| value.parse().ok())
        }
        _ => None,
    };
    match picked.map(LessonId::of) {
        Some(lesson) => lessons::begin(at.house, words, at.place, lesson).await,
        None => lessons::list(at.house, words, at.place).await,
    }
}

/// A place of a lesson.
pub async fn at(at: At<'_>, lesson: LessonId, part: PartAt, to: usize) -> Answer<Letter> {
    let (_, words) = at.reader().await;
    lessons::at(at.house, words, at.place, lesson, (part, to)).await
}
