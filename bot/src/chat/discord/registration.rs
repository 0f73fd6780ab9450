//! Discord in the list of chats, and its settings.

use serde::Deserialize;

use super::{DiscordOptions, DiscordService, KEY, Token, text::Group};
use crate::chat::registry::{Opener, Opening, Parts, Registration, Section, SettingsError};

/// The table `[discord]` of the settings file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct DiscordSettings {
    /// Whether the message-content intent was granted to the bot.
    message_content: bool,
}

impl Default for DiscordSettings {
    fn default() -> Self {
        Self {
            message_content: true,
        }
    }
}

/// Discord, which runs where there is a token.
pub fn registration() -> Registration {
    Registration {
        key: KEY,
        name: "Discord",
        home: None,
        configure,
    }
}

fn configure(section: Section<'_>) -> Result<Opener, SettingsError> {
    let settings: DiscordSettings = section.read()?;
    Ok(Box::new(move |parts| open(&settings, parts)))
}

fn open(settings: &DiscordSettings, parts: &Parts) -> Opening {
    if !Token::is_set() {
        return Opening::Off(parts.words.say(&Group::TokenNotSet));
    }
    let options = DiscordOptions {
        api: std::env::var("SEALED_MOVE_DISCORD_API")
            .ok()
            .filter(|api| !api.is_empty()),
        message_content: settings.message_content,
    };
    let service = DiscordService::new(parts.desk.clone(), options, parts.words);
    Opening::On(std::sync::Arc::new(service))
}
