//! `/study card`: the card of a pattern or a topic. To a coach it comes with what a coach does with one.

use poise::serenity_prelude::{AutocompleteChoice, CreateAutocompleteResponse};

use super::{Answer, Ctx, group, member, privately};
use crate::{
    chat::{
        common::card::title,
        discord::{house::House, letter::Letter, private::Asked, sheets, text::Study},
    },
    desk::{CardId, CardRow, Person, Place},
    words::Words,
};

/// The cards by their titles.
async fn choose_card(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let Ok((place, _)) = group(ctx).await else {
        return CreateAutocompleteResponse::new();
    };
    let words = Asked::Command(ctx.interaction).words(ctx.data()).await;
    let typed = typed.to_lowercase();
    let cards = ctx.data().desk.member().cards(&place).await;
    let choices = cards
        .unwrap_or_default()
        .into_iter()
        .map(|row| (title(words, &row.link.named), row.link.card.to_string()))
        .filter(|(title, card)| title.to_lowercase().contains(&typed) || *card == typed)
        .take(25)
        .map(|(title, card)| AutocompleteChoice::new(title, card))
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}

/// Read what a pattern or a topic is about
#[poise::command(slash_command)]
pub async fn card(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_card"]
    #[max_length = 80]
    topic: Option<String>,
) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let house = ctx.data();
        let words = house.words_for(&place, &person).await;
        let Some(topic) = topic else {
            return list(house, words, &place, &person).await;
        };
        let card = match topic.trim().parse() {
            Ok(card) => card,
            Err(_) => house.desk.member().card_called(&place, &topic).await?,
        };
        one(house, words, &place, &person, card).await
    })
    .await
}

/// The cards there are.
async fn list(house: &House, words: &Words, place: &Place, person: &Person) -> Answer<Letter> {
    let coaches = house.desk.is_coach(place, &person.user).await?;
    let rows = match coaches {
        true => house.desk.coach().cards(place, person).await?,
        false => house.desk.member().cards(place).await?,
    };
    let titles: Vec<String> = rows
        .iter()
        .map(|CardRow { link, .. }| title(words, &link.named))
        .collect();
    let letter = Letter::text(sheets::card::list(words, &titles));
    Ok(match coaches {
        true => letter.row(sheets::card::new_row(words, place)),
        false => letter,
    })
}

/// A card as the person may see it.
pub async fn one(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
    card: CardId,
) -> Answer<Letter> {
    if !house.desk.is_coach(place, &person.user).await? {
        let sheet = house.desk.member().card(place, card, words.tag()).await?;
        return Ok(sheets::card::letter(words, place, &sheet));
    }
    let coach = house.desk.coach();
    let sheet = coach.card(place, person, card, words.tag()).await?;
    let mut letter = sheets::card::letter(words, place, &sheet);
    if !sheet.tells_of.is_empty() {
        let tells = words.say(&Study::CardTells {
            numbers: sheets::card::numbers(&sheet.tells_of),
            copy: sheet.words.by_coach() && matches!(card, CardId::Pattern(_)),
        });
        letter.text = format!("{tells}\n\n{}", letter.text);
    }
    Ok(letter.row(sheets::card::hands(words, place, &sheet)))
}
