//! `summary`: who took part, how it went, what to teach next.

use std::{
    io::{self, Write},
    path::PathBuf,
};

use clap::{Args, ValueEnum};

use super::{
    Globals, Outcome, figures,
    groups::{GroupArgs, Open},
    leaderboard::SpanArgs,
    output::json_line,
    text::{Failure, OrFail, path},
    tongue::readers,
};
use crate::{
    chat::{pictures, said::advised},
    desk::{PictureKind, SummaryTable},
    words::english,
};

/// The engagement summary: who took part, solved, went quiet or came back; how each position and topic
/// went; and so what to teach next.
#[derive(Debug, Args)]
pub struct SummaryArgs {
    #[command(flatten)]
    which: GroupArgs,
    #[command(flatten)]
    span: SpanArgs,
    /// One JSON object
    #[arg(long, conflicts_with = "csv")]
    json: bool,
    /// One of the summary's tables as CSV, with a heading line
    #[arg(long, value_enum, value_name = "TABLE")]
    csv: Option<Table>,
    /// Also draw the charts into this folder
    #[arg(long, value_name = "FOLDER")]
    charts: Option<PathBuf>,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum Table {
    Members,
    Posts,
    Topics,
}

impl SummaryArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        let open = Open::existing(place)?;
        let group = open.existing_group(&self.which)?;
        let zone = open.wait(open.desk.settings(&group))?.zone;
        let period = self.span.read(&group, &open)?;
        let summary = open.wait(open.desk.coach().summary(&group, &period))?;
        let words = readers();
        let mut out = io::stdout().lock();
        match (self.json, self.csv) {
            (true, _) => json_line(&mut out, &advised(&summary, english()))?,
            (false, Some(table)) => {
                let table = match table {
                    Table::Members => SummaryTable::Members,
                    Table::Posts => SummaryTable::Posts,
                    Table::Topics => SummaryTable::Topics,
                };
                out.write_all(summary.csv(table)?.as_bytes())?;
            }
            (false, None) => out.write_all(figures::summary(words, &summary, zone).as_bytes())?,
        }
        if let Some(folder) = self.charts {
            std::fs::create_dir_all(&folder).or_fail(|| Failure::FolderNotMade {
                folder: path(&folder),
            })?;
            let charts = open.wait(open.desk.coach().summary_charts(
                &group,
                &period,
                words.tag(),
            ))?;
            for (number, chart) in charts.iter().enumerate() {
                let ending = match chart.kind {
                    PictureKind::Png => "png",
                    PictureKind::Gif => "gif",
                };
                let file = folder.join(format!("summary-{}.{ending}", number + 1));
                std::fs::write(&file, &chart.bytes)
                    .or_fail(|| Failure::FileUnwritable { file: path(&file) })?;
                eprintln!("{}: {}", file.display(), pictures::alt(chart, words));
            }
        }
        Ok(Outcome::Fine)
    }
}
