//! `backup` and `restore`: a consistent copy of the store, also while serving.

use std::path::PathBuf;

use clap::Args;
use sealed_move_store::{Overwrite, Store};

use super::{
    Globals, Outcome,
    config::Config,
    text::{Failure, Text, path as of, unless},
};

/// Write a consistent copy of the store, also while the bot is serving.
#[derive(Debug, Args)]
pub struct BackupArgs {
    /// Write over the copy if it is there already
    #[arg(long)]
    force: bool,
    /// Where the copy goes
    #[arg(value_name = "FILE")]
    to: PathBuf,
}

/// Put a copy made by `backup` in the store's place. The bot must not be running on it.
#[derive(Debug, Args)]
pub struct RestoreArgs {
    /// Write over the store if there is one
    #[arg(long)]
    force: bool,
    /// The copy
    #[arg(value_name = "FILE")]
    from: PathBuf,
}

impl BackupArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        let (_, path) = Config::load(place)?;
        unless(path.exists(), || Failure::NoStoreToCopy { file: of(&path) })?;
        Store::open(&path)?.backup(&self.to, overwrite(self.force))?;
        let (store, copy) = (of(&path), of(&self.to));
        println!("{}", Text::CopiedTo { store, copy }.said());
        Ok(Outcome::Fine)
    }
}

impl RestoreArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        let (_, path) = Config::load(place)?;
        sealed_move_store::restore(&self.from, &path, overwrite(self.force))?;
        let (store, copy) = (of(&path), of(&self.from));
        println!("{}", Text::RestoredFrom { store, copy }.said());
        Ok(Outcome::Fine)
    }
}

fn overwrite(force: bool) -> Overwrite {
    if force { Overwrite::Yes } else { Overwrite::No }
}
