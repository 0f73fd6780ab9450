//! Settings: a TOML file and the environment, with a default for everything.

use std::path::{Path, PathBuf};

use serde::Deserialize;
use toml::de::DeTable;

use super::{
    Globals,
    settings_fault::SettingsError,
    text::{Failure, OrFail, path, unless},
};
use crate::chat::registry::{Home, Opener, Opening, Parts, Registration, Registry, Section};
use crate::{
    chat::pictures,
    desk::{DeskOptions, Settings, endgames::Syzygy, opinion::EngineSettings},
};

/// The settings file. Every key has a default; an unknown key is an error that names it.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Config {
    /// The store's file; a relative path counts from the settings file.
    pub store: Option<PathBuf>,
    /// The group that a chat has from the beginning, when it is first made, as the club room's; later changes
    /// are made on the coach's page.
    pub group: Settings,
    /// How positions are checked and replies judged.
    pub check: CheckConfig,
    /// An engine to ask for a second opinion on what could not be proved.
    pub engine: Option<EngineSettings>,
    /// The chats, each with the table of its key.
    #[serde(skip)]
    pub chats: Vec<Configured>,
}

/// How positions are checked and replies judged.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct CheckConfig {
    /// The most seconds for one position.
    pub seconds: f64,
    /// The most seconds for one reply.
    pub reply_seconds: f64,
    /// Longest mate sought where a file states no task.
    pub moves: u8,
    /// Megabytes for the prover's table.
    pub table_mb: usize,
    /// Folder of endgame tables in Syzygy format; a relative path counts from the settings file.
    pub endgame_tables: Option<PathBuf>,
}

impl Default for CheckConfig {
    fn default() -> Self {
        Self {
            seconds: 20.0,
            reply_seconds: 5.0,
            moves: 5,
            table_mb: 64,
            endgame_tables: None,
        }
    }
}

/// A chat, with its table of the settings read.
pub struct Configured {
    /// The chat.
    pub registration: Registration,
    opener: Opener,
}

impl Configured {
    /// Its service, where it is to run.
    pub fn open(&self, parts: &Parts) -> Opening {
        (self.opener)(parts)
    }

    /// The group that it has from the beginning.
    pub fn home(&self) -> Option<Home> {
        self.registration.home.map(|home| home())
    }
}

impl std::fmt::Debug for Configured {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.registration.fmt(f)
    }
}

/// Name of the settings file that is looked for beside the store.
pub const CONFIG_NAME: &str = "sealed-move.toml";
/// Name of the store when nothing else is said.
pub const STORE_NAME: &str = "sealed-move.sqlite";

impl Config {
    /// Reads the settings and settles where the store is: `--store`, else the settings' `store`, else
    /// [`STORE_NAME`] beside the settings file or in this folder.
    ///
    /// # Errors
    /// When a file that was named cannot be read, or says something that is no setting.
    pub fn load(place: &Globals) -> anyhow::Result<(Self, PathBuf)> {
        let beside = |file: &Path| file.parent().map(Path::to_path_buf).unwrap_or_default();
        let file = match (&place.config, &place.store) {
            (Some(file), _) => Some(file.clone()),
            (None, store) => {
                let file = store
                    .as_deref()
                    .map(beside)
                    .unwrap_or_default()
                    .join(CONFIG_NAME);
                file.exists().then_some(file)
            }
        };
        let mut config = match &file {
            Some(file) => {
                let text = std::fs::read_to_string(file)
                    .or_fail(|| Failure::SettingsUnreadable { file: path(file) })?;
                Self::parse(&text, &place.chats)
                    .or_fail(|| Failure::SettingsWrong { file: path(file) })?
            }
            None => Self::usual(&place.chats)?,
        };
        let folder = file.as_deref().map(beside).unwrap_or_default();
        if let Some(tables) = &mut config.check.endgame_tables {
            *tables = folder.join(&*tables);
        }
        let store = match (&place.store, &config.store) {
            (Some(store), _) => store.clone(),
            (None, Some(store)) => folder.join(store),
            (None, None) => folder.join(STORE_NAME),
        };
        Ok((config, store))
    }

    /// The limits of the desk's computing.
    ///
    /// # Errors
    /// When the endgame tables that the settings name cannot be used.
    pub fn desk_options(&self) -> anyhow::Result<DeskOptions> {
        let mut options = DeskOptions {
            check_seconds: self.check.seconds,
            reply_seconds: self.check.reply_seconds,
            table_bytes: self.check.table_mb << 20,
            engine: self.engine.clone(),
            ..DeskOptions::speaking(pictures::say)
        };
        options.check.moves = self.check.moves;
        if let Some(folder) = &self.check.endgame_tables {
            options.check.endgames = Some(Syzygy::open(folder)?);
        }
        Ok(options)
    }

    /// The settings where there is no file.
    ///
    /// # Errors
    /// When a chat cannot do without settings.
    pub fn usual(chats: &Registry) -> anyhow::Result<Self> {
        Self::parse("", chats)
    }

    /// The settings that a text makes, with the chats that come along.
    #[cfg(test)]
    pub(super) fn read(text: &str) -> anyhow::Result<Self> {
        Self::parse(text, &Registry::default())
    }

    fn parse(text: &str, chats: &Registry) -> anyhow::Result<Self> {
        let in_its_line = |error| SettingsError::of(text, error);
        let mut file = DeTable::parse(text).map_err(in_its_line)?;
        let mut configured = Vec::new();
        for chat in chats.all() {
            let section = Section::new(file.get_mut().remove(chat.key.as_str()));
            configured.push(Configured {
                registration: chat.clone(),
                opener: (chat.configure)(section).map_err(in_its_line)?,
            });
        }
        let mut config = Self::deserialize(toml::Deserializer::from(file)).map_err(in_its_line)?;
        config.chats = configured;
        for (key, value) in [
            ("check.seconds", config.check.seconds),
            ("check.reply_seconds", config.check.reply_seconds),
        ] {
            unless(value.is_finite() && value > 0.0, || {
                Failure::SettingNoTime {
                    key: key.to_owned(),
                    value: value.to_string(),
                }
            })?;
        }
        let longest = u64::from(crate::chess::Stipulation::LONGEST);
        for (key, value, most) in [
            ("check.table_mb", config.check.table_mb as u64, 4096),
            ("check.moves", u64::from(config.check.moves), longest),
        ] {
            unless((1..=most).contains(&value), || Failure::SettingOutOfRange {
                key: key.to_owned(),
                value: value.to_string(),
                least: 1.to_string(),
                most: most.to_string(),
            })?;
        }
        Ok(config)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::TimeOfDay;

    #[test]
    fn an_empty_file_gives_the_defaults() {
        let config = Config::usual(&Registry::default()).expect("defaults");
        assert_eq!(config.chats.len(), 2);
        assert_eq!(config.group.post_times, TimeOfDay::of(18, 0).into());
    }

    #[test]
    fn what_a_group_cannot_have_is_named_with_its_line() {
        let group = Config::read("[group]\npost_time = \"07:05\"\ndays = 31")
            .expect("settings")
            .group;
        assert_eq!(
            (group.post_times, group.days.bits()),
            (TimeOfDay::of(7, 5).into(), 31)
        );
        let group = Config::read("[group]\npost_time = [\"18:00\", \"09:00\"]")
            .expect("settings")
            .group;
        assert_eq!(group.post_times.to_string(), "09:00 18:00");
        for (text, named) in [
            (
                "post_time = []",
                "no time of day is given; write at least one",
            ),
            (
                "post_time = [\"09:00\", \"09:00\"]",
                "09:00 is given twice; write each time of day once",
            ),
            (
                "post_time = [\"09:00\", \"noon\"]",
                "\"noon\" is not a time of day",
            ),
            (
                "post_time = 18",
                "a time of day such as \"18:00\", or a list",
            ),
            (
                "post_time = \"6pm\"",
                "\"6pm\" is not a time of day; write hours and minutes",
            ),
            ("days = 128", "bit 0 is Monday and bit 6 is Sunday"),
            (
                "zone = \"Atlantis\"",
                "\"Atlantis\" is no time zone of the IANA list; write one such as",
            ),
            ("wrong_cost = 5.5", "points are from 0 to 5"),
        ] {
            let error = format!(
                "{:#}",
                Config::read(&format!("[group]\n{text}")).expect_err(text)
            );
            assert!(error.contains("line 2") && error.contains(named), "{error}");
        }
    }

    #[test]
    fn an_unknown_key_is_named_with_its_line() {
        let error = format!(
            "{:#}",
            Config::read("[room]\nadress = \"127.0.0.1:1\"").expect_err("unknown key")
        );
        assert!(
            error.contains("adress") && error.contains("line 2"),
            "{error}"
        );
    }

    #[test]
    fn a_relative_store_counts_from_the_settings_file() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("here.toml");
        std::fs::write(&file, "store = \"club.sqlite\"").expect("written");
        let place = Globals {
            config: Some(file),
            store: None,
            ..Globals::default()
        };
        let (_, store) = Config::load(&place).expect("loads");
        assert_eq!(store, folder.path().join("club.sqlite"));
    }

    #[test]
    fn a_settings_file_that_was_named_must_be_there() {
        let place = Globals {
            config: Some("/nowhere/at/all.toml".into()),
            store: None,
            ..Globals::default()
        };
        assert!(Config::load(&place).is_err());
    }

    #[test]
    fn impossible_times_are_refused() {
        assert!(Config::read("[check]\nseconds = 0.0").is_err());
        assert!(Config::read("[check]\nmoves = 99").is_err());
    }
}
