//! `demo`: the whole job on a fresh store with an invented group.

use clap::Args;

use super::{
    Globals, Outcome,
    config::Config,
    demo_fill,
    groups::desk,
    misuse::between,
    serve::{serve, start_log, to_its_end},
    text::{Failure, OrFail, path as of, unless},
};
use crate::chat::room;

/// Run everything on a fresh store with an invented group; the first position is posted at once.
///
/// Needs no account, key or service. The store is thrown away at the end unless --store names a file.
#[derive(Debug, Default, Args)]
pub struct DemoArgs {
    /// Port of the club room; a taken port gives way to a free one
    #[arg(long, value_name = "PORT", value_parser = between::<u16>(0, u16::MAX.into()))]
    port: Option<u16>,
}

impl DemoArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        start_log();
        let folder = tempfile::Builder::new()
            .prefix("sealed-move-demo-")
            .tempdir()
            .or_fail(|| Failure::NoFolderForDemo)?;
        let path = place
            .store
            .clone()
            .unwrap_or_else(|| folder.path().join("demo.sqlite"));
        unless(!path.exists(), || Failure::DemoStoreThere {
            file: of(&path),
        })?;
        let config = Config::usual(&place.chats)?;
        let outcome = to_its_end(async {
            demo_fill::fill(&config, &path).await?;
            let desk = desk(&config, &path)?;
            desk.coach()
                .post_now(&room::place(), &room::coach(), None)
                .await?;
            serve(desk, &config, self.port).await
        });
        drop(folder);
        outcome
    }
}
