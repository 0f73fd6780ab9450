//! A coach's own cards of topics: a copy of the program's in the coach's words, or one of a topic that the
//! program has none of.

use sealed_move_store::{CardShown, CardWords, Deed, Group, Tx};
use serde_json::json;

use super::{CoachDesk, NewPostContent};
use crate::chess::{
    Language,
    card::{Example, LONGEST_LINE, NoExample},
    name::meant,
};
use crate::desk::{
    CardId, CardLink, CardName, CardRow, CardSheet, ItemId, LONGEST_DEFINITION, LONGEST_LOOK,
    Person, Place, TopicName,
    card_held::{open_problems, shows},
    cards, convert,
    deeds::{DeedNote, did},
    error::{Done, bad_request},
    handle::{coached, coaching},
    refusal::{CardPart, Refusal},
    secrets::Piece,
    text,
    tongue::spoken,
};

/// What a coach writes on a card.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NewCard {
    /// What it is about.
    pub definition: String,
    /// What to look for; may be empty.
    pub look: String,
    /// FEN of the example; empty for none, or for the program's where the card is a pattern's.
    pub fen: String,
    /// Moves of the example, in the letters of the coach's language or English ones; may be none.
    pub moves: String,
}

impl CoachDesk<'_> {
    /// Every card of the group, with the open posts of which each would tell. Coaches only.
    ///
    /// # Errors
    /// When the person does not coach the group.
    pub async fn cards(self, place: &Place, coach: &Person) -> Done<Vec<CardRow>> {
        let (at, by) = (place.clone(), coach.clone());
        let (cards, open) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                Ok((cards::all(db, &group)?, open_problems(db, &group)?))
            })
            .await?;
        let (cards, _) = self.desk.cards_and_posts(cards, open).await?;
        Ok(cards.into_iter().map(CardRow::of).collect())
    }

    /// A card, whether members see it now or not; its pictures with words in this language (a BCP 47 tag).
    /// Coaches only.
    ///
    /// # Errors
    /// When there is none, or the person does not coach the group.
    pub async fn card(
        self,
        place: &Place,
        coach: &Person,
        card: CardId,
        language: &str,
    ) -> Done<CardSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let (settings, found, open) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let settings = convert::kept_settings(&group.settings)?;
                let found = cards::find(cards::all(db, &group)?, card, |known| known.link.card)?;
                Ok((settings, found, open_problems(db, &group)?))
            })
            .await?;
        let (found, _) = self.desk.cards_and_posts(vec![found], open).await?;
        let shown = cards::find(found, card, |(known, _)| known.link.card)?;
        self.desk.card_sheet(&settings, shown, language).await
    }

    /// Writes a card in the coach's own words, in place of the one that is there. Coaches only.
    ///
    /// # Errors
    /// When words are missing or too long, the position cannot be set up, or a move of the example cannot be
    /// played.
    pub async fn write_card(
        self,
        place: &Place,
        coach: &Person,
        card: CardId,
        new: &NewCard,
    ) -> Done<()> {
        let find = move |tx: &Tx<'_>, group: &Group| {
            let name = match card {
                CardId::Pattern(pattern) => CardLink::of_pattern(pattern).named,
                CardId::Topic(_) => {
                    let topics = tx.topics(group.id)?;
                    let topic = cards::find(topics, card, |topic| CardId::Topic(topic.id))?;
                    CardName::Topic(topic.name.into())
                }
            };
            Ok((card, name))
        };
        self.written(place, coach, new, find).await?;
        Ok(())
    }

    /// Writes the card of a topic, which becomes one of the group where it is none yet; a topic called as a
    /// mating pattern is gives that pattern's card. Returns which card it is. Coaches only.
    ///
    /// # Errors
    /// As [`CoachDesk::write_card`].
    pub async fn write_topic_card(
        self,
        place: &Place,
        coach: &Person,
        topic: TopicName,
        new: &NewCard,
    ) -> Done<CardId> {
        let find = move |tx: &Tx<'_>, group: &Group| {
            Ok(match meant(topic.as_str()) {
                Some(pattern) => {
                    let link = CardLink::of_pattern(pattern);
                    (link.card, link.named)
                }
                None => {
                    let id = topic.in_group(tx, group.id)?;
                    (CardId::Topic(id), CardName::Topic(topic.as_str().into()))
                }
            })
        };
        self.written(place, coach, new, find).await
    }

    /// Keeps what was written for the card that `find` names, and writes the deed down.
    async fn written(
        self,
        place: &Place,
        coach: &Person,
        new: &NewCard,
        find: impl FnOnce(&Tx<'_>, &Group) -> Done<(CardId, CardName)> + Send + 'static,
    ) -> Done<CardId> {
        let now = self.desk.now();
        let language = spoken(&self.desk.language_of(place, coach).await?);
        let new = new.clone();
        let seconds = self.desk.inner.options.check_seconds;
        let words = self
            .desk
            .inner
            .checks
            .run("reading a card", seconds, move |_| fit(&new, language))
            .await??;
        let (at, by) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &at, &by)?;
                let (card, name) = find(tx, &group)?;
                tx.keep_card(group.id, &card.kept(), &words, now)?;
                let note = note(name).to_keep();
                did(tx, &group, &by, Deed::WriteCard, None, &note, now)?;
                Ok(card)
            })
            .await
    }

    /// Takes a coach's card back: a pattern has the program's again, a topic none. Coaches only.
    ///
    /// # Errors
    /// When there is no coach's card of it.
    pub async fn take_back_card(self, place: &Place, coach: &Person, card: CardId) -> Done<()> {
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &at, &by)?;
                let known = cards::find(cards::all(tx, &group)?, card, |known| known.link.card)?;
                if !tx.forget_card(group.id, &card.kept())? {
                    return bad_request(Refusal::CardIsOurs);
                }
                let note = note(known.link.named).to_keep();
                did(tx, &group, &by, Deed::TakeBackCard, None, &note, now)
            })
            .await
    }

    /// Puts a card at the end of the queue as words alone, with the position of its example, and returns the
    /// queue entry's id. `words` are what is on it, in the group's language; `title` is what it is called
    /// there. It goes under the group's topic that means the same, or under `title`. While it would tell of an open
    /// problem, or of one that waits in the week, it waits for its reveal. Coaches only.
    ///
    /// # Errors
    /// When there is no such card, or the person does not coach the group.
    pub async fn enqueue_card(
        self,
        place: &Place,
        coach: &Person,
        card: CardId,
        title: TopicName,
        words: &str,
    ) -> Done<ItemId> {
        let (at, by) = (place.clone(), coach.clone());
        let (known, topic) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let known = cards::find(cards::all(db, &group)?, card, |known| known.link.card)?;
                let topics = db.topics(group.id)?;
                let same = topics.into_iter().find(|topic| match card {
                    CardId::Pattern(pattern) => meant(&topic.name) == Some(pattern),
                    CardId::Topic(id) => topic.id == id,
                });
                Ok((known, same.map(|topic| topic.name)))
            })
            .await?;
        let topic = match topic {
            Some(name) => name.parse()?,
            None => title,
        };
        let shown = CardShown {
            line: json!(known.example.as_ref().map_or(&[][..], |one| &one.line)),
            by_coach: known.by_coach(),
        };
        let piece = Piece::Words(shows(&known));
        let new = NewPostContent::Words {
            words: words.to_owned(),
            fen: known.example.map(|example| example.fen),
        };
        self.enqueue_written(place, coach, &new, Some(topic), "", Some((shown, piece)))
            .await
    }
}

/// What a deed says of which card it was.
fn note(name: CardName) -> DeedNote {
    match name {
        CardName::Pattern(pattern) => DeedNote::NotePattern { pattern },
        CardName::Topic(words) => DeedNote::NoteWords { words },
    }
}

/// Made harmless, bounded, and with an example that can be played.
fn fit(new: &NewCard, language: Language) -> Done<CardWords> {
    let bounded = |raw: &str, part: CardPart, most: usize| match text::body(raw, most) {
        (words, false) => Ok(words),
        (_, true) => bad_request(Refusal::CardTooLong {
            part,
            most: most.into(),
        }),
    };
    let definition = bounded(&new.definition, CardPart::Definition, LONGEST_DEFINITION)?;
    if definition.is_empty() {
        return bad_request(Refusal::CardWithoutWords);
    }
    let look = bounded(&new.look, CardPart::Look, LONGEST_LOOK)?;
    let example = example(new, language)?;
    Ok(CardWords {
        definition,
        look,
        line: json!(example.as_ref().map_or(&[][..], |example| &example.line)),
        fen: example.map(|example| example.fen),
    })
}

fn example(new: &NewCard, language: Language) -> Done<Option<Example>> {
    let (fen, moves) = (new.fen.trim(), new.moves.trim());
    if fen.is_empty() {
        return match moves.is_empty() {
            true => Ok(None),
            false => bad_request(Refusal::MovesWithoutPosition),
        };
    }
    match Example::given(fen, moves, language) {
        Ok(example) => Ok(Some(example)),
        Err(NoExample::Position(why)) => bad_request(Refusal::CannotBeSetUp { why }),
        Err(NoExample::Move { written, after }) => bad_request(Refusal::ExampleFails {
            at: text::name(&written).into(),
            after: u32::try_from(after).unwrap_or(u32::MAX),
        }),
        Err(NoExample::TooLong) => bad_request(Refusal::ExampleTooLong {
            most: LONGEST_LINE.into(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn refused(new: NewCard) -> Refusal {
        fit(&new, Language::English).expect_err("refused").why()
    }

    #[test]
    fn a_card_says_what_is_wrong_with_it() {
        let card = |fen: &str, moves: &str| NewCard {
            definition: "An idea.".into(),
            look: String::new(),
            fen: fen.into(),
            moves: moves.into(),
        };
        let fen = "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1";
        assert_eq!(
            refused(NewCard::default()),
            Refusal::CardWithoutWords,
            "nothing written"
        );
        let long = NewCard {
            look: "x".repeat(LONGEST_LOOK + 1),
            ..card("", "")
        };
        assert!(matches!(
            refused(long),
            Refusal::CardTooLong {
                part: CardPart::Look,
                ..
            }
        ));
        assert_eq!(refused(card("", "Ra8#")), Refusal::MovesWithoutPosition);
        assert!(matches!(
            refused(card("8/8", "")),
            Refusal::CannotBeSetUp { .. }
        ));
        assert_eq!(
            refused(card(fen, "1.Kf1 Ra1")),
            Refusal::ExampleFails {
                at: "Ra1".into(),
                after: 1
            }
        );
        let kept = fit(&card(fen, "1.Ra8"), Language::English).expect("fit");
        assert_eq!(kept.line, json!(["Ra8#"]));
        assert_eq!(kept.fen.as_deref(), Some(fen));
        let bare = fit(&card("", ""), Language::English).expect("fit");
        assert_eq!((bare.fen, bare.line), (None, json!([])));
    }
}
