//! Topic cards: read from a button, and written, queued and taken back by coaches.

use poise::serenity_prelude as serenity;
use serenity::{CreateModal, ModalInteraction};

use super::At;
use crate::{
    chat::{
        common::card,
        discord::{
            commands::{card::one, week},
            forms::{card_form, card_of, field},
            letter::Letter,
            oops::Answer,
            text::Study,
        },
    },
    desk::CardId,
};

/// A card.
pub async fn read(at: At<'_>, card: CardId) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    one(at.house, words, at.place, &person, card).await
}

/// The form for a coach's copy of a card, with what is on it now.
pub async fn edit(at: At<'_>, card: CardId) -> Answer<CreateModal> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    let sheet = desk.card(at.place, &coach, card, words.tag()).await?;
    Ok(card_form(words, at.place, &sheet))
}

/// A copy of a card, sent off.
pub async fn edited(at: At<'_>, card: CardId, form: &ModalInteraction) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    desk.write_card(at.place, &coach, card, &card_of(form))
        .await?;
    saved(one(at.house, words, at.place, &coach, card).await?, words)
}

/// The card of a topic, sent off.
pub async fn written(at: At<'_>, form: &ModalInteraction) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    let topic = field(form, "topic").parse()?;
    let card = desk
        .write_topic_card(at.place, &coach, topic, &card_of(form))
        .await?;
    saved(one(at.house, words, at.place, &coach, card).await?, words)
}

fn saved(mut letter: Letter, words: &crate::words::Words) -> Answer<Letter> {
    letter.text = format!("{}\n\n{}", words.say(&Study::CardSaved), letter.text);
    Ok(letter)
}

/// A coach's card is taken back.
pub async fn taken_back(at: At<'_>, card: CardId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    desk.take_back_card(at.place, &coach, card).await?;
    Ok(Letter::text(words.say(&Study::CardTakenBack)))
}

/// A card goes into the week.
pub async fn enqueued(at: At<'_>, card: CardId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let item = card::enqueue(&at.house.desk, at.place, &coach, card).await?;
    week::open(at.house, words, at.place, &coach, Some(item)).await
}
