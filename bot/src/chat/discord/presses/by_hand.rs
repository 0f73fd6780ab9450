//! What coaches do with replies. Each gives the first one that still waits for their hand; a verdict that
//! overrules gives the reply as it stands then.

use poise::serenity_prelude as serenity;
use serenity::{ComponentInteraction, ComponentInteractionDataKind, ModalInteraction};

use super::At;
use crate::{
    chat::discord::{
        commands::answers,
        forms::{Assessment, field},
        letter::Letter,
        oops::Answer,
    },
    desk::{PostId, ReplyId, Verdict},
};

/// The reply at `waiting` of those that wait, from 0.
pub async fn waiting(at: At<'_>, waiting: usize) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    answers::open(at.house, words, at.place, &coach, waiting).await
}

/// The mark on an answer to a question.
pub async fn marked(at: At<'_>, reply: ReplyId, form: &ModalInteraction) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let Assessment { points, told } = Assessment::read(form)?;
    at.house
        .desk
        .coach()
        .mark_answer(at.place, &coach, reply, points, &told)
        .await?;
    answers::open(at.house, words, at.place, &coach, 0).await
}

/// The verdict on a reply to a problem.
pub async fn judged(
    at: At<'_>,
    reply: ReplyId,
    right: bool,
    form: &ModalInteraction,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let verdict = ruled(right);
    let Assessment { points, told } = Assessment::read(form)?;
    at.house
        .desk
        .coach()
        .judge_by_hand(at.place, &coach, reply, verdict, points, &told)
        .await?;
    answers::open(at.house, words, at.place, &coach, 0).await
}

/// Reply `nth` of those to a post, from 0.
pub async fn replies(at: At<'_>, post: PostId, nth: usize) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let shown = answers::Shown::Nth(nth);
    answers::to_post(at.house, words, at.place, &coach, post, shown).await
}

/// The answers to a question by their first moves, or the first one of the group that was picked in the menu.
pub async fn groups(at: At<'_>, press: &ComponentInteraction, post: PostId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let picked = match &press.data.kind {
        ComponentInteractionDataKind::StringSelect { values } => {
            values.first().and_then(|value| value.parse().ok())
        }
        _ => None,
    };
    match picked {
        Some(nth) => {
            let shown = answers::Shown::Nth(nth);
            answers::to_post(at.house, words, at.place, &coach, post, shown).await
        }
        None => answers::groups(at.house, words, at.place, &coach, post).await,
    }
}

/// Another verdict on a reply that was decided.
pub async fn overruled(
    at: At<'_>,
    post: PostId,
    reply: ReplyId,
    right: bool,
    form: &ModalInteraction,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let Assessment { points, told } = Assessment::read(form)?;
    at.house
        .desk
        .coach()
        .overrule(at.place, &coach, reply, ruled(right), points, &told)
        .await?;
    let shown = answers::Shown::Reply(reply);
    answers::to_post(at.house, words, at.place, &coach, post, shown).await
}

fn ruled(right: bool) -> Verdict {
    match right {
        true => Verdict::Solved,
        false => Verdict::Wrong,
    }
}

/// A private answer without a verdict.
pub async fn answered_privately(
    at: At<'_>,
    reply: ReplyId,
    form: &ModalInteraction,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let told = field(form, "words");
    at.house
        .desk
        .coach()
        .answer_privately(at.place, &coach, reply, &told)
        .await?;
    answers::open(at.house, words, at.place, &coach, 0).await
}

/// The reply needs no answer.
pub async fn no_answer(at: At<'_>, reply: ReplyId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    at.house
        .desk
        .coach()
        .no_answer_needed(at.place, &coach, reply)
        .await?;
    answers::open(at.house, words, at.place, &coach, 0).await
}
