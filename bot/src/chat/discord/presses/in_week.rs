//! What coaches put into the week and do with what waits in it. Each gives the week as it is then.

use poise::serenity_prelude as serenity;
use serenity::{ComponentInteraction, ComponentInteractionDataKind, ModalInteraction};

use super::At;
use crate::{
    chat::discord::{
        buttons::WeekPress, commands::week, forms::field, letter::Letter, oops::Answer, sheets,
        text::Coach,
    },
    desk::{ItemId, Person, PositionId, TakenOutId, TopicName},
    words::Words,
};

/// Puts a position into the week.
pub async fn enqueued(
    at: At<'_>,
    position: PositionId,
    anyway: bool,
    again: bool,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    match again {
        true => {
            desk.enqueue_again(at.place, &coach, position, anyway)
                .await?
        }
        false => desk.enqueue(at.place, &coach, position, anyway).await?,
    };
    week::open(at.house, words, at.place, &coach, None).await
}

/// Puts a question into the week.
pub async fn question(at: At<'_>, form: &ModalInteraction) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let item = at
        .house
        .desk
        .coach()
        .enqueue_question(
            at.place,
            &coach,
            &field(form, "words"),
            Some(&field(form, "fen")),
            TopicName::filled_in(Some(&field(form, "topic")))?,
            &field(form, "reveal"),
        )
        .await?;
    week::open(at.house, words, at.place, &coach, Some(item)).await
}

/// Puts words alone into the week.
pub async fn words_alone(at: At<'_>, form: &ModalInteraction) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let item = at
        .house
        .desk
        .coach()
        .enqueue_words(
            at.place,
            &coach,
            &field(form, "words"),
            Some(&field(form, "fen")),
            TopicName::filled_in(Some(&field(form, "topic")))?,
        )
        .await?;
    week::open(at.house, words, at.place, &coach, Some(item)).await
}

/// A button or the menu under the week.
pub async fn pressed(
    at: At<'_>,
    press: &ComponentInteraction,
    what: WeekPress,
    item: ItemId,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let queue = at.house.desk.coach().queue(at.place).await?;
    let stands = queue.iter().find(|queued| queued.id == item);
    match (what, stands) {
        (WeekPress::Pick, _) => {
            week::open(at.house, words, at.place, &coach, picked_in(press)).await
        }
        (_, None) => waits_no_longer(at, words, &coach).await,
        (WeekPress::Earlier, Some(queued)) => moved(at, words, &coach, item, queued.earlier).await,
        (WeekPress::Later, Some(queued)) => moved(at, words, &coach, item, queued.later).await,
        (WeekPress::Out, Some(_)) => taken_out(at, words, &coach, item).await,
        (WeekPress::Post, Some(_)) => posted(at, words, &coach, item).await,
        (WeekPress::Look, Some(_)) => looked_at(at, words, &coach, item).await,
    }
}

/// What was picked in the menu.
fn picked_in(press: &ComponentInteraction) -> Option<ItemId> {
    match &press.data.kind {
        ComponentInteractionDataKind::StringSelect { values } => values.first()?.parse().ok(),
        _ => None,
    }
}

async fn waits_no_longer(at: At<'_>, words: &Words, coach: &Person) -> Answer<Letter> {
    let mut letter = week::open(at.house, words, at.place, coach, None).await?;
    let gone = words.say(&Coach::WaitsNoLonger);
    letter.text = format!("{gone}\n\n{}", letter.text);
    Ok(letter)
}

async fn moved(
    at: At<'_>,
    words: &Words,
    coach: &Person,
    item: ItemId,
    to: Option<usize>,
) -> Answer<Letter> {
    if let Some(to) = to {
        let desk = at.house.desk.coach();
        desk.reorder(at.place, coach, item, to).await?;
    }
    week::open(at.house, words, at.place, coach, Some(item)).await
}

async fn taken_out(at: At<'_>, words: &Words, coach: &Person, item: ItemId) -> Answer<Letter> {
    at.house.desk.coach().dequeue(at.place, coach, item).await?;
    week::open(at.house, words, at.place, coach, None).await
}

/// Puts back what was taken out of the week.
pub async fn put_back(at: At<'_>, taken: TakenOutId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    let item = desk.put_back_in_week(at.place, &coach, taken).await?;
    week::open(at.house, words, at.place, &coach, Some(item)).await
}

async fn posted(at: At<'_>, words: &Words, coach: &Person, item: ItemId) -> Answer<Letter> {
    let desk = at.house.desk.coach();
    desk.post_now(at.place, coach, Some(item)).await?;
    Ok(Letter::text(words.say(&Coach::GoesOutNow)))
}

async fn looked_at(at: At<'_>, words: &Words, coach: &Person, item: ItemId) -> Answer<Letter> {
    let (house, place) = (at.house, at.place);
    let mode = house.desk.settings(place).await?.mode;
    let sheet = house.desk.coach().preview_item(place, coach, item).await?;
    // As members will see it, so in the group's language.
    let all = house.words_of_group(place).await;
    let mut letter = sheets::post::preview(all, &sheet, mode, house.opens_threads(place));
    letter.rows = week::open(house, words, place, coach, Some(item))
        .await?
        .rows;
    Ok(letter)
}
