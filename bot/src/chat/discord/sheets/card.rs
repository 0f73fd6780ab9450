//! A topic card: its words, the example with its two pictures, the relatives with a button each.

use poise::serenity_prelude::{ButtonStyle, CreateActionRow};

use crate::{
    chat::{
        common::card::{Part, Told, task},
        discord::{
            buttons::{self, Press},
            fit,
            letter::Letter,
            text::{And, List, Moves, Plain, Study},
        },
    },
    desk::{CardLink, CardSheet, Place},
    words::Words,
};

/// Buttons in a row of Discord's.
const IN_A_ROW: usize = 5;

/// The card as whoever asked reads it. The solution stands between spoiler marks.
pub fn letter(words: &Words, place: &Place, sheet: &CardSheet) -> Letter {
    let told = Told::of(words, sheet);
    let heading = |part: &Part| format!("**{}**", words.say(part));
    let mut parts = vec![format!(
        "**{}**\n{}",
        fit::plain(&told.title),
        fit::plain(&told.definition)
    )];
    if !told.look.is_empty() {
        let look = fit::plain(&told.look);
        parts.push(format!("{}\n{look}", heading(&Part::CardWhatToLookFor)));
    }
    if !told.relatives.is_empty() {
        let relatives: Vec<String> = told
            .relatives
            .iter()
            .map(|relative| {
                format!(
                    "- *{}*: {}",
                    fit::plain(&relative.title),
                    fit::plain(&relative.apart)
                )
            })
            .collect();
        let relatives = relatives.join("\n");
        parts.push(format!("{}\n{relatives}", heading(&Part::CardRelatives)));
    }
    if let Some(example) = &sheet.example {
        let mut lines = vec![heading(&Part::CardExample), task(words, example)];
        if !example.line.is_empty() {
            lines.push(format!("||{}||", words.say(&Moves::of(&example.solution))));
        }
        parts.push(lines.join("\n"));
    }
    parts.push(told.source.clone());
    let mut letter = Letter::text(parts.join("\n\n"));
    if let Some(example) = &sheet.example {
        letter = letter.picture("example", &example.start, words);
        if let Some(end) = &example.end {
            letter = letter.picture("SPOILER_example-end", end, words);
        }
    }
    let relatives: Vec<_> = told
        .relatives
        .iter()
        .take(IN_A_ROW)
        .map(|relative| {
            let id = Press::Card(relative.card).id(place);
            buttons::button(id, &relative.title, ButtonStyle::Secondary)
        })
        .collect();
    match relatives.is_empty() {
        true => letter,
        false => letter.row(CreateActionRow::Buttons(relatives)),
    }
}

/// What a coach does with a card.
pub fn hands(words: &Words, place: &Place, sheet: &CardSheet) -> CreateActionRow {
    let card = sheet.link.card;
    let button = |press: Press, label: Study, style| {
        buttons::button(press.id(place), &words.say(&label), style)
    };
    let mut row = vec![
        button(
            Press::QueueCard(card),
            Study::ButtonQueueCard,
            ButtonStyle::Primary,
        ),
        button(
            Press::EditCard(card),
            Study::ButtonEditCard,
            ButtonStyle::Secondary,
        ),
    ];
    if sheet.words.by_coach() {
        row.push(button(
            Press::TakeBackCard(card),
            Study::ButtonTakeBackCard,
            ButtonStyle::Danger,
        ));
    }
    CreateActionRow::Buttons(row)
}

/// The way to the form for the card of a topic.
pub fn new_row(words: &Words, place: &Place) -> CreateActionRow {
    let label = words.say(&Study::ButtonNewCard);
    let button = buttons::button(Press::NewCard.id(place), &label, ButtonStyle::Secondary);
    CreateActionRow::Buttons(vec![button])
}

/// The titles of all cards.
pub fn list(words: &Words, titles: &[String]) -> String {
    words.say(&Study::CardsThere {
        titles: List {
            list: titles.iter().map(|title| Plain::of(title)).collect(),
        },
    })
}

/// Numbers of posts.
pub fn numbers(all: &[i64]) -> And<Plain> {
    And {
        and: all
            .iter()
            .map(|number| Plain::of(&number.to_string()))
            .collect(),
    }
}

/// Buttons that lead from a reveal, for all to press, to its cards; as many as fit.
pub fn under_reveal(words: &Words, place: &Place, cards: &[CardLink]) -> Option<CreateActionRow> {
    let row: Vec<_> = cards
        .iter()
        .take(IN_A_ROW)
        .map(|link| {
            let title = crate::chat::common::card::title(words, &link.named);
            let label = words.say(&Study::ButtonCard {
                title: crate::chat::discord::text::Label::of(&title),
            });
            let id = Press::Card(link.card).id(place);
            buttons::button(id, &label, ButtonStyle::Secondary)
        })
        .collect();
    (!row.is_empty()).then_some(CreateActionRow::Buttons(row))
}
