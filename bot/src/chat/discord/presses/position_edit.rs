//! A position that waits or is kept, written anew: the form with its text, and that form sent. It is checked at once.

use poise::serenity_prelude as serenity;
use serenity::{CreateModal, ModalInteraction};

use super::At;
use crate::{
    chat::discord::{
        forms::{LONGEST_EDIT, edit_form, field},
        house::Opened,
        letter::Letter,
        oops::{Answer, said},
        sheets,
        text::Coach,
    },
    desk::{DeskError, EditedPosition, PositionId},
};

/// The form, with the position as it is kept.
pub async fn form(at: At<'_>, position: PositionId) -> Answer<CreateModal> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    let kept = desk.position_to_edit(at.place, &coach, position).await?;
    if let Some(why) = kept.barred {
        return Err(DeskError::BadRequest(why).into());
    }
    // More than a form can show would come back cut.
    if kept.text.chars().count() > usize::from(LONGEST_EDIT) {
        return said(Coach::EditTooLong {
            most: LONGEST_EDIT.into(),
        });
    }
    Ok(edit_form(words, at.place, position, &kept))
}

/// What was written is kept and checked; gives its report. Where it is refused, what was typed comes back.
pub async fn sent(at: At<'_>, position: PositionId, form: &ModalInteraction) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    let edited = EditedPosition::Text {
        text: field(form, "text"),
        task: field(form, "task"),
        topic: field(form, "topic"),
    };
    let now = desk
        .edit_position(at.place, &coach, position, edited)
        .await?;
    at.house.edited_in_reports(at.place, position, &now);
    let queue = desk.queue(at.place).await?;
    let report = Opened {
        place: at.place.clone(),
        coach: at.asked.user().id.to_string(),
        positions: vec![now],
    };
    let kept = words.say(&Coach::EditKept);
    let number = at.house.open_report(report);
    let Some(report) = at.house.report(number) else {
        return Ok(Letter::text(kept));
    };
    let shown = sheets::report::page(words, number, &report, 0, &queue);
    Ok(Letter {
        text: format!("{kept}\n\n{}", shown.text),
        ..shown
    })
}
