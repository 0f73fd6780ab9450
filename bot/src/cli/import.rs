//! `import`: verifies positions and keeps them in the store.

use std::{io, path::PathBuf, sync::Arc};

use clap::Args;
use indicatif::ProgressBar;

use super::{
    Outcome, Where,
    check::{read_bytes, tell},
    groups::{Open, Which, acting},
    output::json_line,
};
use crate::desk::Soundness;

/// Verify positions and keep them in the store, with what was checked and how.
///
/// Exit status 1 when a position is not sound; it is kept all the same where the rules apply to it.
#[derive(Debug, Args)]
pub struct Import {
    #[command(flatten)]
    which: Which,
    /// One JSON object a position
    #[arg(long)]
    json: bool,
    /// Also put every sound position at the end of the week
    #[arg(long)]
    queue: bool,
    /// Give every position this topic, instead of the file's own
    #[arg(long, value_name = "NAME")]
    topic: Option<String>,
    /// EPD, PGN or FEN files
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
}

impl Import {
    pub(super) fn run(self, place: &Where) -> anyhow::Result<Outcome> {
        // Every file is read before the store is touched: a wrong name changes nothing.
        let files: Vec<_> = self
            .files
            .iter()
            .map(|file| Ok((file, read_bytes(file)?)))
            .collect::<anyhow::Result<_>>()?;
        let open = Open::at(place)?;
        let group = open.group(&self.which)?;
        let coach = open.wait(acting(&open.desk, &group))?;
        let mut out = io::stdout().lock();
        let mut wanting = false;
        for (file, bytes) in files {
            let name = file
                .file_name()
                .map_or_else(|| "input".into(), |n| n.to_string_lossy().into_owned());
            let bar = ProgressBar::new(0);
            let shown = bar.clone();
            let progress = Arc::new(move |done: usize, of: usize| {
                shown.set_length(of as u64);
                shown.set_position(done as u64);
            });
            let checked = open.wait(open.desk.import(&group, &coach, &name, bytes, progress))?;
            bar.finish_and_clear();
            for item in checked {
                let sound = item.report.verdict == Soundness::Sound;
                wanting |= !sound;
                if let Some(position) = item.position {
                    if let Some(topic) = &self.topic {
                        open.wait(open.desk.set_topic(&group, &coach, position, Some(topic)))?;
                    }
                    if sound && self.queue {
                        open.wait(open.desk.enqueue(&group, &coach, position, false))?;
                    }
                }
                if self.json {
                    json_line(
                        &mut out,
                        &serde_json::json!({ "position": item.position, "topic": item.topic, "report": item.report }),
                    )?;
                } else {
                    tell(&mut out, &item.report)?;
                }
            }
        }
        Ok(if wanting {
            Outcome::Wanting
        } else {
            Outcome::Fine
        })
    }
}
