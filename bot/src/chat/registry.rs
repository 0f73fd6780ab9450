//! Which chats there are: the one place that lists them. Whatever else has to do with several chats goes by
//! their keys, and by what each declares here.
//!
//! A chat's folder gives its [`Registration`]; the settings file has a table of the chat's own by its key,
//! which only the chat reads.

use std::sync::Arc;

use serde::de::DeserializeOwned;
use toml::{Spanned, de::DeValue};

use super::{Service, Statuses, discord, room};
use crate::{
    desk::{ChatKey, Desk, Manners, Person, Place, Settings},
    words::Words,
};

/// The chats that a program knows.
#[derive(Clone, Debug)]
pub struct Registry(Vec<Registration>);

impl Default for Registry {
    /// The chats that come with the program, in the order in which they are named.
    fn default() -> Self {
        Self(Vec::new())
            .with(room::registration())
            .with(discord::registration())
    }
}

impl Registry {
    /// These chats and another one.
    ///
    /// # Panics
    /// When there is one of that key already.
    #[must_use]
    pub fn with(mut self, chat: Registration) -> Self {
        assert!(
            self.0.iter().all(|known| known.key != chat.key),
            "two chats are registered as \"{}\"",
            chat.key
        );
        self.0.push(chat);
        self
    }

    /// Every chat.
    pub fn all(&self) -> &[Registration] {
        &self.0
    }
}

/// A chat as the program knows it before it runs.
#[derive(Clone, Debug)]
pub struct Registration {
    /// The key of its groups in the store, and of its table in the settings file.
    pub key: ChatKey,
    /// Its name as people read it, at the beginning of a sentence.
    pub name: &'static str,
    /// The group that it has from the beginning, where it has one. A command that needs a group when the store
    /// has none makes the first such.
    pub home: Option<fn() -> Home>,
    /// Reads its table of the settings; what comes of it opens the chat.
    pub configure: fn(Section<'_>) -> Result<Opener, SettingsError>,
}

/// The group that a chat has from the beginning.
#[derive(Clone, Debug)]
pub struct Home {
    /// Where.
    pub place: Place,
    /// What the chat declares of itself.
    pub manners: Manners,
    /// Its first coach.
    pub coach: Person,
}

/// What is wrong with a table of the settings; it names the line.
pub type SettingsError = toml::de::Error;

/// Opens a chat that was configured.
pub type Opener = Box<dyn Fn(&Parts) -> Opening + Send + Sync>;

/// What a chat's service is made of, besides its own settings.
#[derive(Clone, Debug)]
pub struct Parts {
    /// The desk.
    pub desk: Desk,
    /// How all chats fare.
    pub statuses: Statuses,
    /// Settings of a group that is founded without its coach's word.
    pub group: Settings,
    /// The port asked for on the command line, for a chat that people come to by their browser.
    pub port: Option<u16>,
    /// The words of whoever started the program, who reads what a chat reports of itself.
    pub words: &'static Words,
}

/// Whether a chat runs.
pub enum Opening {
    /// It does.
    On(Arc<dyn Service>),
    /// It was not asked for; the text says how that shows, such as "no DISCORD_TOKEN is set", to whoever
    /// started the program.
    Off(String),
}

/// A chat's table in the settings file.
pub struct Section<'t>(Option<Spanned<DeValue<'t>>>);

impl<'t> Section<'t> {
    /// The table, where the file has one.
    pub fn new(table: Option<Spanned<DeValue<'t>>>) -> Self {
        Self(table)
    }

    /// Reads it; what it leaves out stands as usual.
    ///
    /// # Errors
    /// When it says something that is no setting of the chat.
    pub fn read<T: DeserializeOwned + Default>(self) -> Result<T, SettingsError> {
        match self.0 {
            Some(table) => T::deserialize(toml::de::ValueDeserializer::from(table)),
            None => Ok(T::default()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_chats_that_come_along_are_two() {
        let registry = Registry::default();
        let all: Vec<(&str, &str)> = registry
            .all()
            .iter()
            .map(|chat| (chat.key.as_str(), chat.name))
            .collect();
        assert_eq!(all, [("room", "The club room"), ("discord", "Discord")]);
    }

    #[test]
    #[should_panic(expected = "two chats are registered as \"room\"")]
    fn a_key_is_one_chats() {
        let _ = Registry::default().with(room::registration());
    }
}
