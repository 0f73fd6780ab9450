//! Which answers to questions are shown to the group: asked for by coaches, allowed or refused by their writers.

use poise::serenity_prelude as serenity;
use serenity::{CreateModal, ModalInteraction};

use super::At;
use crate::{
    chat::discord::{
        buttons::Press,
        commands::{answers, homework},
        forms::{field, show_form as form_for},
        letter::Letter,
        oops::Answer,
    },
    desk::{Leave, PostId, ReplyId},
};

/// The form for the words beside an answer, begun with those that are kept.
pub async fn show_form(at: At<'_>, press: Press, reply: ReplyId) -> Answer<CreateModal> {
    let (coach, words) = at.reader().await;
    let Press::Show { post, .. } = press else {
        return Ok(form_for(words, at.place, press, ""));
    };
    let rows = at
        .house
        .desk
        .coach()
        .replies(at.place, &coach, post)
        .await?;
    let row = rows.into_iter().find(|row| row.reply == reply);
    let kept = row.and_then(|row| row.example).map(|kept| kept.words);
    Ok(form_for(words, at.place, press, &kept.unwrap_or_default()))
}

/// The writer of an answer is asked whether it may be shown.
pub async fn show(
    at: At<'_>,
    post: PostId,
    reply: ReplyId,
    form: &ModalInteraction,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let beside = field(form, "words");
    at.house
        .desk
        .coach()
        .ask_to_show(at.place, &coach, reply, &beside)
        .await?;
    let shown = answers::Shown::Reply(reply);
    answers::to_post(at.house, words, at.place, &coach, post, shown).await
}

/// An answer is not to be shown after all.
pub async fn no_longer_shown(at: At<'_>, post: PostId, reply: ReplyId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    at.house
        .desk
        .coach()
        .no_longer_show(at.place, &coach, reply)
        .await?;
    let shown = answers::Shown::Reply(reply);
    answers::to_post(at.house, words, at.place, &coach, post, shown).await
}

/// What an answer's writer says.
pub async fn leave(at: At<'_>, reply: ReplyId, leave: Leave) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    let kept = at
        .house
        .desk
        .member()
        .give_leave(at.place, &person, reply, leave)
        .await?;
    Ok(homework::leave_is(words, at.place, &kept))
}

/// A question that the member answered.
pub async fn mine(at: At<'_>, nth: usize) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    homework::open(at.house, words, at.place, &person, nth).await
}
