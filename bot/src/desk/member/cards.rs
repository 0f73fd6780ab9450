//! Topic cards as members read them.

use super::MemberDesk;
use crate::desk::{
    CardId, CardRow, CardSheet, Place,
    card_held::open_problems,
    cards::{self, for_members},
    convert,
    error::{Done, bad_request},
    handle::group_at,
    refusal::Refusal,
};

impl MemberDesk<'_> {
    /// Every card of the group, those that are held back among them.
    ///
    /// # Errors
    /// When there is no group here.
    pub async fn cards(self, place: &Place) -> Done<Vec<CardRow>> {
        let at = place.clone();
        let (cards, open) = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                Ok((cards::all(db, &group)?, open_problems(db, &group)?))
            })
            .await?;
        let (cards, open) = self.desk.cards_and_posts(cards, open).await?;
        let shown = for_members(cards, &open).into_iter();
        Ok(shown.map(CardRow::of).collect())
    }

    /// A card, its pictures with words in this language (a BCP 47 tag).
    ///
    /// # Errors
    /// When there is none, or it would tell of a post that is open.
    pub async fn card(self, place: &Place, card: CardId, language: &str) -> Done<CardSheet> {
        let at = place.clone();
        let (settings, found, open) = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let settings = convert::kept_settings(&group.settings)?;
                let found = cards::find(cards::all(db, &group)?, card, |known| known.link.card)?;
                Ok((settings, found, open_problems(db, &group)?))
            })
            .await?;
        let (found, open) = self.desk.cards_and_posts(vec![found], open).await?;
        let shown = for_members(found, &open);
        let shown = cards::find(shown, card, |(known, _)| known.link.card)?;
        if !shown.1.is_empty() {
            return bad_request(Refusal::CardHeldBack);
        }
        self.desk.card_sheet(&settings, shown, language).await
    }

    /// The card of a topic of this name, by its name in the code, its title, or the topic's own name.
    ///
    /// # Errors
    /// When there is none.
    pub async fn card_called(self, place: &Place, topic: &str) -> Done<CardId> {
        let (at, topic) = (place.clone(), topic.trim().to_owned());
        self.desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                match cards::of_topic(db, &group, &topic)? {
                    Some(link) => Ok(link.card),
                    None => bad_request(Refusal::NoCardOf {
                        topic: topic.into(),
                    }),
                }
            })
            .await
    }
}
