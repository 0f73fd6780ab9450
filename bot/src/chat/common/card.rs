//! What is on a topic card, in words. A chat lays it out; the program's own words are read from under the
//! pattern's name, a coach's are as they were written.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

use serde::Serialize;

use super::text::Tasked;
use crate::{
    desk::values::{Card, Line, Pattern, Source, apart},
    desk::{
        CardId, CardName, CardSheet, CardWords, Desk, DeskError, ItemId, LONGEST_CONTENT, Person,
        Place, ShownExample, TopicName,
    },
    diagram::Text as OnPicture,
    words::{Words, words},
};

/// A part of a card; the messages stand in `cards.ftl`.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Part {
    CardWhatToLookFor,
    CardRelatives,
    CardExample,
    CardSource { source: Source },
    CardByCoach,
    CardExampleSolved { line: Line },
    CardToRead { definition: String, look: String },
}

/// The words on a card.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Told {
    /// What it is called.
    pub title: String,
    /// What it is about.
    pub definition: String,
    /// What to look for; may be empty.
    pub look: String,
    /// Where it is from, in a sentence.
    pub source: String,
    /// What is taken for it, and what tells the two apart.
    pub relatives: Vec<Relative>,
}

/// A pattern that is taken for another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Relative {
    /// Its card.
    pub card: CardId,
    /// What it is called.
    pub title: String,
    /// What tells the two apart.
    pub apart: String,
}

impl Told {
    /// The program's own card in a language.
    pub fn ours(words: &Words, card: &Card) -> Self {
        Self {
            title: pattern(words, card.pattern),
            definition: words.text(&format!("definition-{}", card.pattern)),
            look: words.text(&format!("look-{}", card.pattern)),
            source: words.say(&Part::CardSource {
                source: card.source,
            }),
            relatives: relatives(words, card.pattern, &card.relatives),
        }
    }

    /// A group's card for a reader.
    pub fn of(words: &Words, sheet: &CardSheet) -> Self {
        let pattern = match sheet.link.card {
            CardId::Pattern(pattern) => pattern,
            CardId::Topic(_) => "",
        };
        let (definition, look, source) = match &sheet.words {
            CardWords::Ours(source) => (
                words.text(&format!("definition-{pattern}")),
                words.text(&format!("look-{pattern}")),
                Part::CardSource { source: *source },
            ),
            CardWords::Coachs { definition, look } => {
                (definition.clone(), look.clone(), Part::CardByCoach)
            }
        };
        Self {
            title: title(words, &sheet.link.named),
            definition,
            look,
            source: words.say(&source),
            relatives: relatives(words, pattern, &sheet.relatives),
        }
    }
}

/// What a card is called.
pub fn title(words: &Words, named: &CardName) -> String {
    words.say(named)
}

/// What a pattern is called.
pub fn pattern(words: &Words, pattern: &str) -> String {
    words.say(&Pattern {
        pattern: pattern.to_owned(),
    })
}

fn relatives(words: &Words, of: &str, relatives: &[&'static str]) -> Vec<Relative> {
    let relative = |relative: &&'static str| Relative {
        card: CardId::Pattern(relative),
        title: pattern(words, relative),
        apart: words.text(&apart(of, relative)),
    };
    relatives.iter().map(relative).collect()
}

/// What is asked in an example: what is proved of it, else who is to move.
pub fn task(words: &Words, example: &ShownExample) -> String {
    match example.task {
        Some(task) => words.say(&Tasked::of(example.side, task)),
        None => words.say(&OnPicture::AltToMove { side: example.side }),
    }
}

/// Puts a card at the end of a group's week as words alone with the example's position, in the group's
/// language.
///
/// # Errors
/// When there is no such card, or the person does not coach the group.
pub async fn enqueue(
    desk: &Desk,
    place: &Place,
    coach: &Person,
    card: CardId,
) -> Result<ItemId, DeskError> {
    let words = words(desk.settings(place).await?.language.tag());
    let sheet = desk.coach().card(place, coach, card, words.tag()).await?;
    let told = Told::of(words, &sheet);
    let title: TopicName = told.title.parse()?;
    let text = to_read(words, &told, sheet.example.as_ref());
    desk.coach()
        .enqueue_card(place, coach, card, title, &text)
        .await
}

/// The words that go out with a card: definition and what to look for, and the example's moves where there is
/// room for them.
fn to_read(words: &Words, told: &Told, example: Option<&ShownExample>) -> String {
    let about = match told.look.is_empty() {
        true => told.definition.clone(),
        false => words.say(&Part::CardToRead {
            definition: told.definition.clone(),
            look: told.look.clone(),
        }),
    };
    let solved = example
        .filter(|example| !example.line.is_empty())
        .map(|example| {
            let line = Line::from(example.solution.clone());
            words.say(&Part::CardExampleSolved { line })
        });
    match solved {
        Some(solved) if about.chars().count() + solved.chars().count() + 2 <= LONGEST_CONTENT => {
            format!("{about}\n\n{solved}")
        }
        _ => about,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        chess::{card::cards, name::meant},
        words::tags,
    };

    #[test]
    fn every_pattern_has_a_complete_card_in_every_language() {
        for tag in tags() {
            let words = words(tag);
            for card in cards() {
                let told = Told::ours(words, &card);
                let sentences = [&told.definition, &told.look, &told.source];
                for sentence in sentences {
                    assert!(
                        sentence.ends_with(['.', '?']),
                        "{tag}: {}: {sentence}",
                        card.pattern
                    );
                }
                assert!(
                    told.look.split(['.', '?', ';', ':']).count() > 2,
                    "{tag}: {}",
                    told.look
                );
                assert_eq!(told.relatives.len(), card.relatives.len());
                for relative in &told.relatives {
                    assert!(relative.apart.ends_with('.'), "{tag}: {}", relative.apart);
                }
                assert_eq!(
                    meant(&told.title),
                    Some(card.pattern),
                    "{tag}: {}",
                    told.title
                );
            }
        }
    }

    #[test]
    fn every_card_fits_into_a_post() {
        for tag in tags() {
            let words = words(tag);
            for card in cards() {
                let told = Told::ours(words, &card);
                let text = to_read(words, &told, None);
                assert!(text.contains(&told.definition) && text.contains(&told.look));
                let room = LONGEST_CONTENT - text.chars().count();
                assert!(room > 60, "{tag}: {}: the moves have {room}", card.pattern);
            }
        }
    }
}
