//! Who somebody is, and the words for them.

use poise::serenity_prelude::UserId;

use super::{House, place};
use crate::{
    chat::said::words_of,
    desk::{Person, Place},
    words::{Words, english, words},
};

impl House {
    /// The words for what all see in a group.
    pub async fn words_of_group(&self, place: &Place) -> &'static Words {
        match self.desk.settings(place).await {
            Ok(settings) => words(settings.language.tag()),
            Err(_) => english(),
        }
    }

    /// The words for somebody whom no group knows: of the language that all groups write in, if it is one.
    pub async fn words_for_stranger(&self) -> &'static Words {
        let mut common: Option<&'static Words> = None;
        for place in self.groups().into_iter().map(place) {
            let here = self.words_of_group(&place).await;
            if common.is_some_and(|common| common.tag() != here.tag()) {
                return english();
            }
            common = Some(here);
        }
        common.unwrap_or_else(english)
    }

    /// The words for what one person sees in a group, or of one that is not there.
    pub async fn words_for(&self, place: &Place, person: &Person) -> &'static Words {
        match (self.desk.language_of(place, person).await, &person.language) {
            (Ok(language), _) => words_of(&language),
            (Err(_), Some(language)) => words_of(language),
            (Err(_), None) => english(),
        }
    }

    /// A group that a person belongs to, as far as is known without asking Discord.
    pub async fn group_with(&self, user: UserId) -> Option<Place> {
        let user = user.to_string();
        for place in self.groups().into_iter().map(place) {
            if let Ok(Some(_)) = self.desk.name_of(&place, &user).await {
                return Some(place);
            }
        }
        None
    }

    /// The person in a group: under the name they have there, or the one they come with.
    pub async fn person(&self, place: &Place, user: UserId, name: &str) -> Person {
        let user = user.to_string();
        let known = self.desk.name_of(place, &user).await.ok().flatten();
        Person {
            user,
            name: known.unwrap_or_else(|| name.to_owned()),
            language: None,
        }
    }
}
