//! `check`: verifies positions from EPD, PGN or FEN lines.

use std::{
    collections::{HashMap, hash_map::Entry as Entered},
    io::{self, Write},
    path::{Path, PathBuf},
    sync::atomic::{AtomicUsize, Ordering},
    sync::mpsc,
    thread,
    time::{Duration, Instant},
};

use clap::{Args, ValueEnum};
use indicatif::{ProgressBar, ProgressStyle};
use serde::Serialize;
use serde_json::Value;

use super::{
    Outcome,
    misuse::between,
    output::json_line,
    text::{Decimal, Failure, List, OrFail, Text, number, path, theirs, unless},
    tongue::readers,
};
use crate::{
    chat::common::report::topic_said,
    chess::{
        Budget, Stipulation,
        check::{
            self, CheckOptions, Finding, Report, Soundness, Statement, TopicCheck, TopicOn,
            topic_check,
        },
        comments::{self, Comments, Note},
        fact::Pattern,
        read::{self, Entry, Item, ReadError},
    },
    desk::{
        FoundWritten, NewPostContent, TopicName,
        endgames::Syzygy,
        opinion::{self, EngineSettings},
    },
    words::english,
};

/// Verify positions: does the task hold against every defence, and is there one key only?
///
/// The kind of file (EPD, PGN, lines of FEN) is seen from its content; `-` reads standard input.
/// Exit status 1 when a position is not sound, or with --topic-on when it does not show its topic.
#[derive(Debug, Args)]
pub struct CheckArgs {
    /// One JSON object a position, on a line of its own
    #[arg(long)]
    json: bool,
    /// The most time for one position
    #[arg(long, value_name = "SECONDS", default_value_t = 10.0)]
    seconds: f64,
    /// Longest mate sought where the file states no task
    #[arg(long, value_name = "N", default_value_t = 5, value_parser = between::<u8>(1, Stipulation::LONGEST.into()))]
    moves: u8,
    /// Positions worked on at once; by default one a core
    #[arg(long, value_name = "N")]
    jobs: Option<usize>,
    /// Megabytes for the table of positions that each proof keeps, at most
    #[arg(long, value_name = "N", default_value_t = 64, value_parser = between::<u16>(1, 4096))]
    table_mb: u16,
    /// Folder of endgame tables in Syzygy format
    #[arg(long, value_name = "FOLDER")]
    tables: Option<PathBuf>,
    /// UCI engine to ask for a second opinion on what could not be proved
    #[arg(long, value_name = "PROGRAM")]
    engine: Option<PathBuf>,
    /// Hold a topic that names a mating pattern against the main line (as without this) or every full-length
    /// line; a position that does not show it is found wanting
    #[arg(long, value_name = "WHICH")]
    topic_on: Option<HeldOn>,
    /// Files to read
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
}

/// What has to show the pattern that a topic names.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum HeldOn {
    MainLine,
    EveryLine,
}

impl HeldOn {
    /// As the check has it; the main line where nothing was said.
    pub(super) fn chosen(wanted: Option<Self>) -> TopicOn {
        match wanted {
            None | Some(Self::MainLine) => TopicOn::MainLine,
            Some(Self::EveryLine) => TopicOn::EveryLine,
        }
    }
}

/// A topic, and how a position stands to it.
pub(super) struct TopicStanding {
    pub(super) name: String,
    pub(super) check: TopicCheck,
}

impl TopicStanding {
    /// Of a position with this topic, where it has one.
    pub(super) fn of(report: &Report, name: Option<String>, on: TopicOn) -> Option<Self> {
        let name = name?;
        let check = topic_check(report, &name, on);
        Some(Self { name, check })
    }

    /// Whether the topic of a position is to be marked as not verified.
    pub(super) fn is_doubtful(topic: Option<&Self>) -> bool {
        topic.is_some_and(|topic| topic.check.is_doubtful())
    }
}

/// The object written for each position; scripts rely on these names and this order.
#[derive(Serialize)]
pub(super) struct ReportLine<'a> {
    id: &'a str,
    fen: &'a str,
    stipulation: Option<Stipulation>,
    verdict: Soundness,
    keys: &'a [String],
    line: &'a [String],
    patterns: &'a [String],
    proved: bool,
    nodes: u64,
    seconds: f64,
    /// What the facts of `message_facts` say, in English.
    message: String,
    /// The coach's words, where the file holds some.
    #[serde(skip_serializing_if = "Comments::is_empty")]
    words: &'a Comments,
    /// What else the coach should know, where there is something.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    warnings: Vec<String>,
    #[serde(skip_serializing_if = "<[Statement]>::is_empty")]
    message_facts: &'a [Statement],
    #[serde(skip_serializing_if = "<[Statement]>::is_empty")]
    warning_facts: &'a [Statement],
    /// The topic that the file names.
    #[serde(skip_serializing_if = "Option::is_none")]
    topic: Option<&'a str>,
    /// How the position stands to it.
    #[serde(skip_serializing_if = "Option::is_none")]
    topic_check: Option<Value>,
}

impl CheckArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let limit = seconds(self.seconds)?;
        let mut entries = Vec::new();
        let mut written = Vec::new();
        for file in &self.files {
            let bytes = read_bytes(file)?;
            let items = read::read_items(&name_of(file), &bytes);
            for item in items {
                match item {
                    Ok(Item::Problem(entry)) => entries.push(Ok(*entry)),
                    Ok(item) => written.extend(FoundWritten::of(item, entries.len())),
                    Err(error) => entries.push(Err(error)),
                }
            }
        }
        let mut options = CheckOptions {
            moves: self.moves,
            ..CheckOptions::default()
        };
        if let Some(folder) = &self.tables {
            options.endgames = Some(Syzygy::open(folder)?);
        }
        let engine = self.engine.map(|program| EngineSettings {
            program,
            arguments: Vec::new(),
            options: Default::default(),
            seconds: limit.as_secs_f64(),
        });
        let room = CheckBounds {
            limit,
            table_bytes: usize::from(self.table_mb) << 20,
            threads: spare_threads(self.jobs, entries.len()),
        };
        let mut out = io::stdout().lock();
        let (mut sound, mut wanting, mut unverified) = (0, 0, 0);
        let (on, strict) = (HeldOn::chosen(self.topic_on), self.topic_on.is_some());
        let total = entries.len();
        let mut seen: HashMap<String, String> = HashMap::new();
        // Words need no proof; a position beside them is legal, or it would have been an error.
        let json = self.json;
        let tell_found = |out: &mut io::StdoutLock<'_>, found: &FoundWritten| match json {
            true => json_line(out, found),
            false => Ok(tell_written(out, found)?),
        };
        let none_written = written.is_empty();
        let mut between = written.into_iter().peekable();
        let mut told = 0;
        in_order(
            &entries,
            self.jobs,
            |entry| {
                let report = checked(entry, &options, &room, engine.as_ref());
                let named = entry
                    .as_ref()
                    .ok()
                    .and_then(|entry| TopicName::of_entry(entry).0);
                let topic = TopicStanding::of(&report, named.map(String::from), on);
                (report, topic)
            },
            |(mut report, topic): (Report, Option<TopicStanding>)| {
                while let Some(found) = between.next_if(|found| found.before <= told) {
                    tell_found(&mut out, &found)?;
                }
                told += 1;
                same_again(&mut seen, &mut report);
                let doubtful = TopicStanding::is_doubtful(topic.as_ref());
                unverified += usize::from(doubtful);
                sound += usize::from(report.verdict == Soundness::Sound);
                wanting += usize::from(report.verdict != Soundness::Sound || (strict && doubtful));
                match self.json {
                    true => json_line(&mut out, &ReportLine::on_topic(&report, topic.as_ref())),
                    false => {
                        let said = &report.comments;
                        tell(&mut out, &report, topic.as_ref())?;
                        tell_words(&mut out, &said.with_post, &said.at_reveal, &said.notes)
                    }
                }
            },
        )?;
        for found in between {
            tell_found(&mut out, &found)?;
        }
        if !self.json && (total > 0 || none_written) {
            writeln!(out, "{}", tally(total, sound, wanting).said())?;
            if unverified > 0 {
                let number = number(unverified);
                writeln!(out, "{}", Text::TopicsNotVerified { number }.said())?;
            }
        }
        Ok(if wanting == 0 {
            Outcome::Fine
        } else {
            Outcome::Wanting
        })
    }
}

impl<'a> ReportLine<'a> {
    pub(super) fn of(report: &'a Report) -> Self {
        Self::on_topic(report, None)
    }

    fn on_topic(report: &'a Report, topic: Option<&'a TopicStanding>) -> Self {
        Self {
            id: &report.id,
            fen: &report.fen,
            stipulation: report.stipulation,
            verdict: report.verdict,
            keys: &report.keys,
            line: &report.line,
            patterns: &report.patterns,
            proved: report.proved,
            nodes: report.nodes,
            seconds: report.seconds,
            message: english().tell(&report.message),
            words: &report.comments,
            warnings: report
                .warnings
                .iter()
                .map(|told| english().say(told))
                .collect(),
            message_facts: &report.message,
            warning_facts: &report.warnings,
            topic: topic.map(|topic| topic.name.as_str()),
            topic_check: topic.map(|topic| topic_said(&topic.check, english())),
        }
    }
}

/// Says what a question or words are.
pub(super) fn tell_written(out: &mut impl Write, found: &FoundWritten) -> io::Result<()> {
    match &found.content {
        NewPostContent::Question {
            words, at_reveal, ..
        } => {
            let question = Text::WrittenQuestion {
                id: theirs(&found.id),
                words: theirs(words),
            };
            writeln!(out, "{}", question.said())?;
            if !at_reveal.is_empty() {
                let words = theirs(at_reveal);
                writeln!(out, "    {}", Text::WrittenAtClose { words }.said())?;
            }
        }
        NewPostContent::Words { words, .. } => {
            let written = Text::WrittenWords {
                id: theirs(&found.id),
                words: theirs(words),
            };
            writeln!(out, "{}", written.said())?;
        }
    }
    Ok(())
}

/// A time limit from the command line.
pub(super) fn seconds(given: f64) -> anyhow::Result<Duration> {
    Duration::try_from_secs_f64(given)
        .ok()
        .filter(|limit| !limit.is_zero())
        .or_fail(|| Failure::NoTimeLimit {
            value: given.to_string(),
        })
}

/// What a file is called in what is said of it; standard input has no name of its own.
pub(super) fn name_of(file: &Path) -> String {
    let name = file.file_name().filter(|name| *name != "-");
    name.map_or_else(
        || "input".into(),
        |name| name.to_string_lossy().into_owned(),
    )
}

/// A file's bytes, or standard input's for `-`; never more than a file may weigh.
pub(super) fn read_bytes(file: &Path) -> anyhow::Result<Vec<u8>> {
    use io::Read;
    let most = read::LARGEST_FILE as u64 + 1;
    let mut bytes = Vec::new();
    if file == Path::new("-") {
        io::stdin()
            .lock()
            .take(most)
            .read_to_end(&mut bytes)
            .or_fail(|| Failure::InputUnreadable)?;
    } else {
        std::fs::File::open(file)
            .and_then(|f| f.take(most).read_to_end(&mut bytes))
            .or_fail(|| Failure::FileUnreadable { file: path(file) })?;
    }
    unless(bytes.len() <= read::LARGEST_FILE, || {
        Failure::FileIsTooLarge {
            file: path(file),
            most: number(read::LARGEST_FILE >> 20),
        }
    })?;
    Ok(bytes)
}

/// What one check may take.
pub(super) struct CheckBounds {
    limit: Duration,
    table_bytes: usize,
    /// For a proof; a judgement by search would differ from run to run with more than one.
    threads: usize,
}

impl CheckBounds {
    /// The usual room, a thread for each position.
    pub(super) fn of(limit: Duration) -> Self {
        Self {
            limit,
            table_bytes: 64 << 20,
            threads: 1,
        }
    }
}

/// Threads that each position can have when there are fewer positions than cores.
fn spare_threads(jobs: Option<usize>, positions: usize) -> usize {
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let at_once = jobs.unwrap_or(cores).clamp(1, positions.max(1));
    (cores / at_once).max(1)
}

/// Checks one entry in the room it has, and fills in how long it took.
pub(super) fn checked(
    entry: &Result<Entry, ReadError>,
    options: &CheckOptions,
    room: &CheckBounds,
    engine: Option<&EngineSettings>,
) -> Report {
    let started = Instant::now();
    let mut report = match entry {
        Ok(entry) => {
            let late = || started.elapsed() > room.limit;
            let halfway = || started.elapsed() > room.limit / 2;
            let threads = match entry.stipulation {
                Some(Stipulation::Mate(_)) => room.threads,
                _ => 1,
            };
            let budget = Budget::unlimited()
                .until(&late)
                .halfway(&halfway)
                .table_bytes(room.table_bytes)
                .threads(threads);
            check::check(entry, options, &budget)
        }
        Err(error) => Report::unreadable(error),
    };
    if let (Some(engine), Ok(entry)) = (engine, entry) {
        opinion::consult(engine, &entry.position, &mut report);
    }
    if let Ok(entry) = entry {
        report.warnings.extend(TopicName::of_entry(entry).1);
    }
    report.seconds = (started.elapsed().as_secs_f64() * 1e4).round() / 1e4;
    report
}

/// Works on all items with a thread a core and hands the results over in the items' order.
pub(super) fn in_order<T: Sync, R: Send>(
    items: &[T],
    jobs: Option<usize>,
    work: impl Fn(&T) -> R + Sync,
    mut take: impl FnMut(R) -> anyhow::Result<()>,
) -> anyhow::Result<()> {
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let jobs = jobs.unwrap_or(cores).clamp(1, items.len().max(1));
    let told = Text::CheckProgress {
        done: "{pos}".to_owned(),
        total: "{len}".to_owned(),
        left: "{eta}".to_owned(),
    };
    let bar = ProgressBar::new(items.len() as u64).with_style(
        ProgressStyle::with_template(&format!("{{bar:30}} {}", told.said()))
            .unwrap_or(ProgressStyle::default_bar()),
    );
    let next = AtomicUsize::new(0);
    let (send, receive) = mpsc::channel();
    let result = thread::scope(|scope| {
        for _ in 0..jobs {
            let (send, next, work) = (send.clone(), &next, &work);
            scope.spawn(move || {
                loop {
                    let i = next.fetch_add(1, Ordering::Relaxed);
                    let Some(item) = items.get(i) else { break };
                    if send.send((i, work(item))).is_err() {
                        break;
                    }
                }
            });
        }
        drop(send);
        let mut waiting = std::collections::BTreeMap::new();
        let mut due = 0;
        for (i, done) in receive {
            waiting.insert(i, done);
            bar.inc(1);
            while let Some(done) = waiting.remove(&due) {
                due += 1;
                if let Err(error) = bar.suspend(|| take(done)) {
                    next.store(items.len(), Ordering::Relaxed);
                    return Err(error);
                }
            }
        }
        Ok(())
    });
    bar.finish_and_clear();
    result
}

/// The report on one position as a coach reads it.
pub(super) fn tell(
    out: &mut impl Write,
    report: &Report,
    topic: Option<&TopicStanding>,
) -> anyhow::Result<()> {
    let task = report
        .stipulation
        .map(|s| format!("  {s}"))
        .unwrap_or_default();
    let verdict = report.verdict;
    writeln!(
        out,
        "{}{task}  {}",
        report.id,
        Text::CheckedAs { verdict }.said()
    )?;
    if !report.fen.is_empty() {
        writeln!(out, "    {}", report.fen)?;
    }
    if !report.message.is_empty() {
        writeln!(out, "    {}", readers().tell(&report.message))?;
    }
    if !report.keys.is_empty() {
        let keys = Text::ReportKeys {
            number: number(report.keys.len()),
            keys: List {
                list: report.keys.iter().map(|key| key.as_str().into()).collect(),
            },
        };
        writeln!(out, "    {}", keys.said())?;
    }
    for variation in &report.variations {
        writeln!(out, "    {}", readers().moves(variation))?;
    }
    for attempt in &report.tries {
        let line = attempt.as_str().into();
        writeln!(out, "    {}", Text::ReportTry { line }.said())?;
    }
    if !report.patterns.is_empty() {
        let named = |pattern: &String| Pattern {
            pattern: pattern.clone(),
        };
        let patterns = List {
            list: report.patterns.iter().map(named).collect(),
        };
        writeln!(out, "    {}", Text::ReportPictures { patterns }.said())?;
    }
    for fact in topic.iter().flat_map(|topic| &topic.check.facts) {
        writeln!(out, "    {}", readers().say(fact))?;
    }
    if let Some(difficulty) = report.difficulty {
        let grade = Decimal::of((difficulty * 10.0).round() / 10.0);
        writeln!(out, "    {}", Text::ReportDifficulty { grade }.said())?;
    }
    for warning in &report.warnings {
        let note = theirs(readers().say(warning));
        writeln!(out, "    {}", Text::ReportNote { note }.said())?;
    }
    let (nodes, seconds) = (report.nodes.into(), Decimal::of(report.seconds));
    let how = match (report.proved, report.depth) {
        (true, _) => Text::ReportProved { nodes, seconds },
        (false, Some(depth)) => Text::ReportJudged {
            depth,
            nodes,
            seconds,
        },
        (false, None) => Text::ReportNotProved { nodes, seconds },
    };
    writeln!(out, "    {}\n", how.said())?;
    Ok(())
}

/// The coach's words on a position, by when they go out.
pub(super) fn tell_words(
    out: &mut impl Write,
    with_post: &str,
    at_reveal: &str,
    notes: &[Note],
) -> anyhow::Result<()> {
    let beside = comments::lines(notes, |moves| readers().moves(moves)).join("\n");
    let parts = [
        (Text::WordsWithPost, with_post),
        (Text::WordsAtReveal, at_reveal),
        (Text::WordsBesideMoves, beside.as_str()),
    ];
    for (when, words) in parts.iter().filter(|(_, words)| !words.is_empty()) {
        writeln!(out, "    {}", when.said())?;
        for line in words.lines() {
            writeln!(out, "        {line}")?;
        }
    }
    if parts.iter().any(|(_, words)| !words.is_empty()) {
        writeln!(out)?;
    }
    Ok(())
}

/// Notes a position that came before in the same files, with the same task or another.
fn same_again(seen: &mut HashMap<String, String>, report: &mut Report) {
    if report.verdict == Soundness::Illegal {
        return;
    }
    let placement: Vec<&str> = report.fen.split(' ').take(4).collect();
    match seen.entry(placement.join(" ")) {
        Entered::Vacant(place) => {
            place.insert(report.id.clone());
        }
        Entered::Occupied(first) => {
            let id = first.get().as_str().into();
            report.warnings.push(Finding::PositionAgain { id }.into());
        }
    }
}

fn tally(total: usize, sound: usize, wanting: usize) -> Text {
    let count = number;
    let number = count(total);
    match (total, wanting) {
        (0, _) => Text::NoPositionsFound,
        (_, 0) => Text::CheckedAllSound { number },
        (_, wanting) => Text::SomeToLookAt {
            number,
            sound: count(sound),
            wanting: count(wanting),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Thousands of items, some of them a thousand times the work of their neighbours, come back in
    /// their own order whatever the number of threads.
    #[test]
    fn thousands_come_back_in_their_order() {
        let items: Vec<u64> = (0..5_000).collect();
        let work = |item: &u64| {
            let turns = if item.is_multiple_of(7) { 10_000 } else { 10 };
            let busy = (0..turns).fold(*item, |sum, turn| std::hint::black_box(sum ^ turn));
            (*item, busy)
        };
        for jobs in [1, 2, 5] {
            let mut taken = Vec::new();
            let ended = in_order(&items, Some(jobs), work, |(item, _)| {
                taken.push(item);
                Ok(())
            });
            assert!(ended.is_ok());
            assert_eq!(taken, items, "{jobs}");
        }
    }

    #[test]
    fn the_first_failure_to_write_ends_the_work() {
        let items: Vec<u64> = (0..5_000).collect();
        let mut taken = 0;
        let ended = in_order(
            &items,
            Some(2),
            |item| *item,
            |_| {
                taken += 1;
                anyhow::ensure!(taken < 3, "the disk is full");
                Ok(())
            },
        );
        assert!(ended.is_err());
        assert_eq!(taken, 3);
    }
}
