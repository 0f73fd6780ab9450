//! `leaderboard`: points by topic and period.

use std::io::{self, Write};

use clap::Args;

use super::{
    Globals, Outcome, figures,
    groups::{GroupArgs, Open},
    output::json_line,
    tongue::readers,
};
use crate::desk::{Period, Place, USUAL};

/// Points by member, best first: five for a full solution, part points for part of one.
#[derive(Debug, Args)]
pub struct LeaderboardArgs {
    #[command(flatten)]
    which: GroupArgs,
    #[command(flatten)]
    span: SpanArgs,
    /// One JSON object
    #[arg(long, conflicts_with = "csv")]
    json: bool,
    /// CSV with a heading line
    #[arg(long)]
    csv: bool,
}

/// Which posts are counted.
#[derive(Clone, Debug, Args)]
pub struct SpanArgs {
    /// When: all, this week, last week, last 4 weeks, this month, 2026-03, 2026-03-02 to 2026-03-08, …
    #[arg(long, value_name = "PERIOD", default_value = USUAL)]
    period: String,
    /// Posts of this topic only
    #[arg(long, value_name = "NAME")]
    topic: Option<String>,
}

impl SpanArgs {
    /// The period meant, in the group's calendar.
    pub(super) fn read(&self, group: &Place, open: &Open) -> anyhow::Result<Period> {
        let words = Some(self.period.as_str());
        Ok(open.wait(open.desk.period(group, words, self.topic.clone()))?)
    }
}

impl LeaderboardArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        let open = Open::existing(place)?;
        let group = open.existing_group(&self.which)?;
        let zone = open.wait(open.desk.settings(&group))?.zone;
        let period = self.span.read(&group, &open)?;
        let board = open.wait(open.desk.leaderboard(&group, &period))?;
        let mut out = io::stdout().lock();
        if self.json {
            json_line(&mut out, &board)?;
        } else if self.csv {
            out.write_all(board.csv()?.as_bytes())?;
        } else {
            let text = figures::leaderboard(readers(), &board, &period, zone);
            out.write_all(text.as_bytes())?;
        }
        Ok(Outcome::Fine)
    }
}
