//! The club room in the list of chats, and its settings.

use std::net::SocketAddr;

use serde::Deserialize;

use super::{ADDRESS, KEY, RoomOptions, RoomService, coach, place, text::Text};
use crate::{
    chat::registry::{Home, Opener, Opening, Parts, Registration, Section, SettingsError},
    desk::{Delivery, Manners, Names},
};

/// The table `[room]` of the settings file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct RoomSettings {
    /// Whether there is a club room at all.
    open: bool,
    /// Address and port; a taken port gives way to a free one.
    address: SocketAddr,
    /// The address members reach the room by, where it stands behind another server.
    public_url: Option<String>,
}

impl Default for RoomSettings {
    fn default() -> Self {
        Self {
            open: true,
            address: ADDRESS,
            public_url: None,
        }
    }
}

/// The club room.
pub fn registration() -> Registration {
    Registration {
        key: KEY,
        name: "The club room",
        home: Some(home),
        configure,
    }
}

/// The room's one group, in which members name themselves.
pub fn home() -> Home {
    Home {
        place: place(),
        manners: Manners {
            names: Names::ByMember,
            delivery: Delivery::Shown,
        },
        coach: coach(),
    }
}

fn configure(section: Section<'_>) -> Result<Opener, SettingsError> {
    let settings: RoomSettings = section.read()?;
    Ok(Box::new(move |parts| open(&settings, parts)))
}

fn open(settings: &RoomSettings, parts: &Parts) -> Opening {
    if !settings.open {
        return Opening::Off(parts.words.say(&Text::RoomNotOpen));
    }
    let mut address = settings.address;
    if let Some(port) = parts.port {
        address.set_port(port);
    }
    Opening::On(std::sync::Arc::new(RoomService {
        desk: parts.desk.clone(),
        options: RoomOptions {
            address,
            group: parts.group.clone(),
            public_url: settings.public_url.clone(),
        },
        statuses: parts.statuses.clone(),
        words: parts.words,
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_room_is_open_on_this_machine_unless_told_otherwise() {
        let settings: RoomSettings = Section::new(None).read().expect("defaults");
        assert!(settings.open && settings.address.ip().is_loopback());
        assert_eq!(settings.address.port(), 7316);
    }
}
