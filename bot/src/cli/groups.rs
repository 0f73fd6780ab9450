//! Opening the desk for a command, and which group a command is about.

use std::{path::Path, sync::Arc};

use clap::Args;
use sealed_move_store::Store;

use super::{
    Globals,
    config::{Config, Configured},
    text::{Failure, List, OrFail, failure, path, theirs, unless},
};
use crate::desk::{Desk, Person, Place, SystemClock};

/// Which group a command is about.
#[derive(Clone, Debug, Default, Args)]
pub struct GroupArgs {
    /// The group, by its name or its channel; not needed when there is only one
    #[arg(long, value_name = "GROUP")]
    group: Option<String>,
}

/// A desk on the coach's store, for a command that is over when it returns.
pub struct Open {
    /// The desk.
    pub desk: Desk,
    /// The settings it was opened with.
    pub config: Config,
    runtime: tokio::runtime::Runtime,
}

impl Open {
    /// Opens the store that `place` names.
    pub fn at(place: &Globals) -> anyhow::Result<Self> {
        let (config, store) = Config::load(place)?;
        let runtime = runtime()?;
        let desk = runtime.block_on(async { desk(&config, &store) })?;
        Ok(Self {
            desk,
            config,
            runtime,
        })
    }

    /// Opens the store that `place` names, for a command that only reads or arranges what is there.
    ///
    /// # Errors
    /// When there is no store; none is made.
    pub fn existing(place: &Globals) -> anyhow::Result<Self> {
        let (_, store) = Config::load(place)?;
        let kept = std::fs::metadata(&store).is_ok_and(|file| file.len() > 0);
        unless(kept, || Failure::NoStoreAt { file: path(&store) })?;
        Self::at(place)
    }

    /// The group that a command is about, in a store that is only read: none is made.
    ///
    /// # Errors
    /// When there is none, or not one that is meant.
    pub fn existing_group(&self, which: &GroupArgs) -> anyhow::Result<Place> {
        let places = self.wait(self.desk.all_places())?;
        unless(!places.is_empty(), || Failure::NoGroupYet)?;
        self.group(which)
    }

    /// Runs a call of the desk to its end.
    pub fn wait<T>(&self, call: impl Future<Output = T>) -> T {
        self.runtime.block_on(call)
    }

    /// The group a command is about: the one named, or the only one there is. The group that a chat
    /// has from the beginning, such as the club room's, is made when there is none at all.
    pub fn group(&self, which: &GroupArgs) -> anyhow::Result<Place> {
        self.wait(async {
            let places = self.desk.all_places().await?;
            let home = self.config.chats.iter().find_map(Configured::home);
            if places.is_empty()
                && which.group.is_none()
                && let Some(home) = home
            {
                let settings = self.config.group.clone();
                self.desk
                    .found_group(&home.place, home.manners, None, settings, &home.coach)
                    .await?;
                return Ok(home.place);
            }
            let mut names = Vec::new();
            for place in places {
                let name = self.desk.settings(&place).await?.name;
                names.push((name, place));
            }
            let listed = || {
                let named = names
                    .iter()
                    .map(|(name, place)| format!("{name} ({})", place.channel));
                List {
                    list: named.map(theirs).collect(),
                }
            };
            match &which.group {
                None if names.len() == 1 => Ok(names[0].1.clone()),
                None => Err(failure(Failure::SeveralGroups { groups: listed() })),
                Some(wanted) => {
                    let found: Vec<_> = names
                        .iter()
                        .filter(|(name, place)| {
                            name.eq_ignore_ascii_case(wanted) || place.channel == *wanted
                        })
                        .collect();
                    match found.as_slice() {
                        [(_, place)] => Ok(place.clone()),
                        [] => Err(failure(Failure::NoSuchGroup {
                            wanted: theirs(wanted),
                            groups: listed(),
                        })),
                        _ => Err(failure(Failure::SeveralOfThatName {
                            wanted: theirs(wanted),
                            groups: listed(),
                        })),
                    }
                }
            }
        })
    }
}

/// Who acts at the command line: whoever can open the store acts as the group's first coach.
pub async fn acting(desk: &Desk, place: &Place) -> anyhow::Result<Person> {
    desk.coaches(place)
        .await?
        .into_iter()
        .next()
        .or_fail(|| Failure::NoCoachYet)
}

/// Bytes of a thread's stack. What a press on Discord sets going needs between two and three megabytes where
/// it is built without optimising; pages that are not used take no memory.
const STACK: usize = 16 << 20;

/// The async runtime of a command.
pub fn runtime() -> anyhow::Result<tokio::runtime::Runtime> {
    tokio::runtime::Builder::new_multi_thread()
        .thread_stack_size(STACK)
        .enable_all()
        .build()
        .or_fail(|| Failure::ThreadsNotStarted)
}

/// A desk on the store at `path`, by the machine's clock.
pub fn desk(config: &Config, path: &Path) -> anyhow::Result<Desk> {
    let store = Store::open(path)?;
    Ok(Desk::with_options(
        store,
        Arc::new(SystemClock),
        config.desk_options()?,
    ))
}
