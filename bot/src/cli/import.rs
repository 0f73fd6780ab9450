//! `import`: verifies positions and keeps them in the store.

use std::{
    io::{self, Write},
    path::PathBuf,
};

use clap::{Args, ValueEnum};

use super::{
    Globals, Outcome,
    check::{HeldOn, TopicStanding, name_of, read_bytes, tell, tell_words, tell_written},
    groups::{GroupArgs, Open, acting},
    output::{json_line, progress},
    text::Text,
    tongue::readers,
};
use crate::{
    chat::common::{
        report::{said_of, topic_said},
        same::same_again,
    },
    desk::{CheckedPosition, InFile, SameChoice, Soundness, TopicName, in_file_order},
    words::english,
};

/// Verify positions and keep them in the store, with what was checked and how.
///
/// Exit status 1 when a position is not sound (it is kept all the same where the rules apply to it), when
/// it is kept already under another name, topic or comment and --same does not say which is to stand, when
/// --queue leaves out one that was posted before, or with --topic-on when one does not show its topic.
#[derive(Debug, Args)]
pub struct ImportArgs {
    #[command(flatten)]
    which: GroupArgs,
    /// One JSON object a position
    #[arg(long)]
    json: bool,
    /// Also put every sound position, question and words at the end of the week; questions and words are not kept otherwise
    #[arg(long)]
    queue: bool,
    /// With --queue, also those that were posted before
    #[arg(long, requires = "queue")]
    again: bool,
    /// What stands of a position that is kept already under another name, topic or comment: the one kept
    /// (as without this), the file's, or the kept one with the file's topic and words besides
    #[arg(long, value_name = "WHICH")]
    same: Option<Same>,
    /// Give every position this topic, instead of the file's own
    #[arg(long, value_name = "NAME")]
    topic: Option<String>,
    /// Hold a topic that names a mating pattern against the main line (as without this) or every full-length
    /// line; a position that does not show it is found wanting
    #[arg(long, value_name = "WHICH")]
    topic_on: Option<HeldOn>,
    /// EPD, PGN or FEN files
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
}

/// Which version of a position stands.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum Same {
    Keep,
    New,
    Both,
}

impl From<Same> for SameChoice {
    fn from(same: Same) -> Self {
        match same {
            Same::Keep => Self::Keep,
            Same::New => Self::New,
            Same::Both => Self::Both,
        }
    }
}

impl ImportArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        // Every file is read before the store is touched: a wrong name changes nothing.
        let files: Vec<_> = self
            .files
            .iter()
            .map(|file| Ok((file, read_bytes(file)?)))
            .collect::<anyhow::Result<_>>()?;
        let topic: Option<TopicName> = self.topic.as_deref().map(str::parse).transpose()?;
        let on = HeldOn::chosen(self.topic_on);
        let open = Open::at(place)?;
        let group = open.group(&self.which)?;
        let coach = open.wait(acting(&open.desk, &group))?;
        let mut out = io::stdout().lock();
        let mut wanting = false;
        for (file, bytes) in files {
            let name = name_of(file);
            let (bar, progress) = progress();
            let choice = self.same.map_or(SameChoice::Keep, SameChoice::from);
            let written = open
                .desk
                .coach()
                .written_in(&group, &coach, &name, bytes.clone());
            let written = open.wait(written)?;
            let checked = open.wait(
                open.desk
                    .coach()
                    .import_choosing(&group, &coach, &name, bytes, choice, progress),
            )?;
            bar.finish_and_clear();
            for item in in_file_order(checked, written) {
                let item = match item {
                    InFile::Position(item) => item,
                    InFile::Written(found) => {
                        if self.queue {
                            open.wait(open.desk.coach().enqueue_found(&group, &coach, &found))?;
                        }
                        match (self.json, self.queue) {
                            (true, _) => json_line(&mut out, &found)?,
                            (false, true) => tell_written(&mut out, &found)?,
                            (false, false) => {
                                tell_written(&mut out, &found)?;
                                writeln!(out, "    {}", Text::WrittenNotKept.said())?;
                            }
                        }
                        continue;
                    }
                };
                let sound = item.report.verdict == Soundness::Sound;
                wanting |= !sound || (item.same.is_some() && self.same.is_none());
                let named = topic.clone().map(String::from);
                let held =
                    TopicStanding::of(&item.report, named.or_else(|| item.topic.clone()), on);
                wanting |= self.topic_on.is_some() && TopicStanding::is_doubtful(held.as_ref());
                let mut left_out = false;
                if let Some(position) = item.position {
                    if let Some(topic) = &topic {
                        open.wait(open.desk.coach().set_topic(
                            &group,
                            &coach,
                            position,
                            Some(topic.clone()),
                        ))?;
                    }
                    if sound && self.queue {
                        let queued = match self.again {
                            true => open.wait(
                                open.desk
                                    .coach()
                                    .enqueue_again(&group, &coach, position, false),
                            ),
                            false => open
                                .wait(open.desk.coach().enqueue(&group, &coach, position, false)),
                        };
                        match (queued, item.posted) {
                            // Posted before, and nobody said: again.
                            (Err(_), Some(_)) if !self.again => {
                                wanting = true;
                                left_out = true;
                            }
                            (queued, _) => {
                                queued?;
                            }
                        }
                    }
                }
                if self.json {
                    json_line(
                        &mut out,
                        &serde_json::json!({
                            "position": item.position,
                            "topic": item.topic,
                            "topic_check": held.map(|held| topic_said(&held.check, english())),
                            "further_topics": item.further_topics,
                            "words": item.words,
                            "same": item.same,
                            "posted": item.posted,
                            "report": said_of(&item.report, english()),
                        }),
                    )?;
                } else {
                    tell(&mut out, &item.report, held.as_ref())?;
                    tell_words(
                        &mut out,
                        &item.words.with_post,
                        &item.words.at_reveal,
                        &item.words.notes,
                    )?;
                    let zone = open.wait(open.desk.settings(&group))?.zone;
                    tell_again(&mut out, &item, zone, self.same, left_out)?;
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

/// Says what was known of a position before, and whether it is left out of the week for it.
fn tell_again(
    out: &mut impl Write,
    item: &CheckedPosition,
    zone: chrono_tz::Tz,
    chosen: Option<Same>,
    left_out: bool,
) -> anyhow::Result<()> {
    if let Some(same) = &item.same {
        let what = same_again(readers(), same, str::to_owned);
        writeln!(out, "    {}", Text::ReportAgain { what }.said())?;
        if chosen.is_none() {
            writeln!(out, "    {}", Text::SameChoices.said())?;
        }
    }
    if let Some(posted) = item.posted {
        let before = Text::ReportPostedBefore {
            number: posted.number,
            date: posted.at.with_timezone(&zone).date_naive().into(),
        };
        let told = match left_out {
            true => format!("{} {}", before.said(), Text::PostedBeforeLeftOut.said()),
            false => before.said(),
        };
        writeln!(out, "    {told}")?;
    }
    if item.same.is_some() || item.posted.is_some() {
        writeln!(out)?;
    }
    Ok(())
}
