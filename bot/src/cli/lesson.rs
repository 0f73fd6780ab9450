//! `lesson`: a topic taught in steps, in and out as PGN, and into the week.

use std::{
    io::{self, Write},
    path::{Path, PathBuf},
    time::Duration,
};

use chrono::NaiveDateTime;
use clap::{Args, Subcommand};
use serde_json::json;

use super::{
    Globals, Outcome,
    check::{
        CheckBounds, TopicStanding, checked, in_order, name_of, read_bytes, seconds, tell,
        tell_words,
    },
    groups::{GroupArgs, Open, acting},
    import::Same,
    output::{json_line, progress},
    queue::{list as list_week, local_time},
    text::{Failure, List, OrFail, Text, failure, number, path, theirs},
    tongue::readers,
};
use crate::{
    chat::common::{
        report::{said_of, topic_said},
        same::same_again,
    },
    chess::{
        check::{CheckOptions, Report, Soundness, TopicOn},
        comments,
        lesson::{Holds, Part, Step, read_lesson},
        read::ReadError,
    },
    desk::{
        CoachDesk, LessonFile, LessonId, LessonPlan, LessonSheet, NewPostContent, Note, PartHolds,
        PartSheet, PartStands, Person, Place, SameChoice, StepSheet, TopicName,
    },
    words::english,
};

/// Teach a topic in steps: a lesson is one file of PGN, a game for each step.
///
/// Words before the first move open a step. A move whose comment begins with [stop] is asked for, and [stop #2]
/// says what is asked. Moves without a stop are an example, no moves are words with a picture, and words that end
/// with a question mark are an open question, as is a step with the tag Homework "yes" or Question "...".
#[derive(Debug, Args)]
pub struct LessonArgs {
    #[command(subcommand)]
    action: LessonAction,
}

#[derive(Debug, Subcommand)]
enum LessonAction {
    /// Read a lesson and verify its stops, without a store
    Check {
        /// The most time for one stop
        #[arg(long, value_name = "SECONDS", default_value_t = 10.0)]
        seconds: f64,
        /// A PGN file, or - for standard input
        file: PathBuf,
    },
    /// Verify a lesson and keep it; nothing goes into the week yet
    Import {
        #[command(flatten)]
        which: GroupArgs,
        /// One JSON object a part
        #[arg(long)]
        json: bool,
        /// The lesson's title, instead of the file's own
        #[arg(long)]
        title: Option<String>,
        /// What stands of a position that is kept already under another name, topic or comment
        #[arg(long, value_name = "WHICH")]
        same: Option<Same>,
        /// A PGN file
        file: PathBuf,
    },
    /// See the group's lessons
    List {
        #[command(flatten)]
        which: GroupArgs,
        /// One JSON object a lesson
        #[arg(long)]
        json: bool,
    },
    /// See a lesson step by step, and where each part stands
    Show {
        #[command(flatten)]
        which: GroupArgs,
        /// One JSON object a part
        #[arg(long)]
        json: bool,
        /// Number of the lesson
        lesson: LessonId,
    },
    /// Put a lesson into the week, in its order: in free slots, unless something else is said
    Plan {
        #[command(flatten)]
        which: GroupArgs,
        /// All at once from this moment on, in the group's own time, such as 2026-12-01T18:00
        #[arg(long, value_name = "WHEN", conflicts_with = "step")]
        at_once: Option<String>,
        /// One step at a moment of its own, such as 3=2026-12-01T18:00; as often as there are such steps
        #[arg(long, value_name = "STEP=WHEN")]
        step: Vec<String>,
        /// Also stops that are not sound
        #[arg(long)]
        anyway: bool,
        /// Also what was posted before
        #[arg(long)]
        again: bool,
        /// Number of the lesson
        lesson: LessonId,
    },
    /// Write a lesson as PGN, which can be taken in again
    Export {
        #[command(flatten)]
        which: GroupArgs,
        /// A file, instead of standard output
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
        /// Number of the lesson
        lesson: LessonId,
    },
    /// Forget a lesson and take it out of the week; its positions and what was posted stay
    Remove {
        #[command(flatten)]
        which: GroupArgs,
        /// Number of the lesson
        lesson: LessonId,
    },
}

impl LessonArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        match self.action {
            LessonAction::Check {
                seconds: limit,
                file,
            } => check(seconds(limit)?, &file),
            LessonAction::Import {
                which,
                json,
                title,
                same,
                file,
            } => {
                let (name, bytes) = (name_of(&file), read_bytes(&file)?);
                let open = Open::at(place)?;
                let group = open.group(&which)?;
                let lesson = LessonFile {
                    name,
                    bytes,
                    title,
                    replaces: None,
                };
                Here::of(open, group)?.import(lesson, json, same)
            }
            LessonAction::List { which, json } => Here::existing(place, &which)?.list(json),
            LessonAction::Show {
                which,
                json,
                lesson,
            } => {
                let here = Here::existing(place, &which)?;
                let sheet = here.wait(here.desk().lesson(&here.group, &here.coach, lesson))?;
                show(&mut io::stdout().lock(), &sheet, json)?;
                Ok(Outcome::Fine)
            }
            LessonAction::Plan {
                which,
                at_once,
                step,
                anyway,
                again,
                lesson,
            } => {
                let plan = plan(at_once.as_deref(), &step)?;
                Here::existing(place, &which)?.plan(lesson, plan, anyway, again)
            }
            LessonAction::Export { which, out, lesson } => {
                Here::existing(place, &which)?.export(lesson, out.as_deref())
            }
            LessonAction::Remove { which, lesson } => {
                let here = Here::existing(place, &which)?;
                here.wait(here.desk().remove_lesson(&here.group, &here.coach, lesson))?;
                Ok(Outcome::Fine)
            }
        }
    }
}

/// The group whose lessons it is about, and who acts for it.
struct Here {
    open: Open,
    group: Place,
    coach: Person,
}

impl Here {
    fn of(open: Open, group: Place) -> anyhow::Result<Self> {
        let coach = open.wait(acting(&open.desk, &group))?;
        Ok(Self { open, group, coach })
    }

    /// In a store that is there already.
    fn existing(place: &Globals, which: &GroupArgs) -> anyhow::Result<Self> {
        let open = Open::existing(place)?;
        let group = open.existing_group(which)?;
        Self::of(open, group)
    }

    fn desk(&self) -> CoachDesk<'_> {
        self.open.desk.coach()
    }

    fn wait<T>(&self, call: impl Future<Output = T>) -> T {
        self.open.wait(call)
    }

    fn import(&self, file: LessonFile, json: bool, same: Option<Same>) -> anyhow::Result<Outcome> {
        let choice = same.map_or(SameChoice::Keep, SameChoice::from);
        let (bar, progress) = progress();
        let call = self
            .desk()
            .import_lesson(&self.group, &self.coach, file, choice, progress);
        let sheet = self.wait(call)?;
        bar.finish_and_clear();
        let mut out = io::stdout().lock();
        show(&mut out, &sheet, json)?;
        if !json {
            let told = match sheet.lesson {
                Some(id) => Text::LessonKept { lesson: id.get() },
                None => Text::LessonNotKept,
            };
            writeln!(out, "{}", told.said())?;
        }
        Ok(found(&sheet, same.is_some()))
    }

    fn list(&self, json: bool) -> anyhow::Result<Outcome> {
        let lessons = self.wait(self.desk().lessons(&self.group, &self.coach))?;
        let mut out = io::stdout().lock();
        if lessons.is_empty() && !json {
            writeln!(out, "{}", Text::NoLessons.said())?;
        }
        for row in lessons {
            if json {
                json_line(&mut out, &row)?;
                continue;
            }
            let told = Text::LessonRowIs {
                lesson: row.lesson.get(),
                title: theirs(&row.title),
                steps: number(usize::try_from(row.steps).unwrap_or_default()),
                parts: number(row.parts),
                waiting: number(row.waiting),
                posted: number(row.posted),
            };
            writeln!(out, "{}", told.said())?;
        }
        Ok(Outcome::Fine)
    }

    fn plan(
        &self,
        lesson: LessonId,
        plan: LessonPlan,
        anyway: bool,
        again: bool,
    ) -> anyhow::Result<Outcome> {
        let (group, coach) = (&self.group, &self.coach);
        let call = self
            .desk()
            .plan_lesson(group, coach, lesson, plan, anyway, again);
        let planned = self.wait(call)?;
        self.wait(list_week(&self.open.desk, group, false))?;
        if planned.left_out > 0 {
            let number = number(planned.left_out);
            writeln!(io::stdout(), "{}", Text::LessonLeftOut { number }.said())?;
        }
        Ok(Outcome::Fine)
    }

    fn export(&self, lesson: LessonId, out: Option<&Path>) -> anyhow::Result<Outcome> {
        let text = self.wait(self.desk().export_lesson(&self.group, &self.coach, lesson))?;
        match out {
            None => io::stdout().lock().write_all(text.as_bytes())?,
            Some(file) => std::fs::write(file, text)
                .or_fail(|| Failure::FileUnwritable { file: path(file) })?,
        }
        Ok(Outcome::Fine)
    }
}

/// What the options of `plan` come to.
fn plan(at_once: Option<&str>, steps: &[String]) -> anyhow::Result<LessonPlan> {
    let moment = |written: &str| -> anyhow::Result<NaiveDateTime> {
        local_time(written)?.or_fail(|| Failure::TimeNotRead {
            written: theirs(written),
        })
    };
    if let Some(at) = at_once {
        return Ok(LessonPlan::AtOnce(moment(at)?));
    }
    if steps.is_empty() {
        return Ok(LessonPlan::InOrder);
    }
    let date = |given: &String| {
        let unread = || Failure::StepTimeNotRead {
            written: theirs(given),
        };
        let (step, at) = given.split_once('=').or_fail(unread)?;
        let step = step.trim().parse().or_fail(unread)?;
        Ok((step, moment(at.trim())?))
    };
    let dates: anyhow::Result<Vec<_>> = steps.iter().map(date).collect();
    Ok(LessonPlan::Dates(dates?))
}

/// A lesson verified without a store.
fn check(limit: Duration, file: &Path) -> anyhow::Result<Outcome> {
    let bytes = read_bytes(file)?;
    let name = name_of(file);
    let lesson = read_lesson(&name, &bytes);
    if lesson.steps.is_empty() {
        return Err(failure(Failure::NoSteps { file: path(file) }));
    }
    let (options, room) = (CheckOptions::default(), CheckBounds::of(limit));
    let work = |step: &Result<Step, ReadError>| -> Vec<(Option<Part>, Option<Report>)> {
        let report = |entry| checked(&entry, &options, &room, None);
        match step {
            Err(error) => vec![(None, Some(report(Err(error.clone()))))],
            Ok(step) => step
                .parts
                .iter()
                .map(|part| {
                    let entry = part.stop().cloned().map(Ok);
                    (Some(part.clone()), entry.map(report))
                })
                .collect(),
        }
    };
    let mut out = io::stdout().lock();
    let mut wanting = false;
    let mut place = 0;
    let mut steps = lesson.steps.iter();
    in_order(&lesson.steps, None, work, |parts| {
        let mut contrast = false;
        if let Some(Ok(step)) = steps.next() {
            place += 1;
            contrast = step.contrast;
            head(&mut out, place, contrast)?;
        }
        for (part, report) in parts {
            if let Some(report) = &report {
                wanting |= report.verdict != Soundness::Sound;
            }
            match (part, report) {
                (Some(part), report) => match (&part.holds, report) {
                    (Holds::Stop(_), Some(report)) => {
                        tell_lead(&mut out, &part.lead)?;
                        let named = part.stop().and_then(|entry| TopicName::of_entry(entry).0);
                        let held = on_topic(&report, named.map(String::from), contrast);
                        tell(&mut out, &report, held.as_ref())?;
                        let words = &report.comments;
                        let notes = &words.notes;
                        tell_words(&mut out, &words.with_post, &words.at_reveal, notes)?;
                    }
                    (Holds::Question(asked), _) => {
                        tell_question(&mut out, &asked.words, &asked.at_reveal)?;
                        tell_lead(&mut out, &part.lead)?;
                    }
                    (Holds::Words(said), _) => {
                        tell_said(&mut out, &said.words)?;
                        tell_lead(&mut out, &part.lead)?;
                    }
                    (Holds::Stop(_), None) => {}
                },
                (None, Some(report)) => tell(&mut out, &report, None)?,
                (None, None) => {}
            }
        }
        Ok(())
    })?;
    Ok(match wanting {
        true => Outcome::Wanting,
        false => Outcome::Fine,
    })
}

/// A lesson as its coach reads it.
fn show(out: &mut impl Write, sheet: &LessonSheet, json: bool) -> anyhow::Result<()> {
    if !json {
        let title = theirs(&sheet.title);
        let told = match &sheet.topic {
            None => Text::LessonTitled { title },
            Some(topic) => Text::LessonTitledTopic {
                title,
                topic: theirs(topic),
            },
        };
        writeln!(out, "{}\n", told.said())?;
    }
    for step in &sheet.steps {
        if let Some(report) = &step.trouble {
            match json {
                true => json_line(
                    out,
                    &json!({"step": null, "line": step.line, "report": said_of(report, english())}),
                )?,
                false => tell(out, report, None)?,
            }
            continue;
        }
        if !json {
            head(out, step.step, step.contrast)?;
        }
        for part in &step.parts {
            match json {
                true => json_line(out, &json_of(sheet, step, part))?,
                false => tell_part(out, part, step.contrast)?,
            }
        }
    }
    Ok(())
}

fn json_of(sheet: &LessonSheet, step: &StepSheet, part: &PartSheet) -> serde_json::Value {
    let waits: Vec<_> = part
        .waits_for
        .iter()
        .map(|(step, part)| json!({"step": step, "part": part}))
        .collect();
    let mut out = json!({
        "lesson": sheet.lesson,
        "title": sheet.title,
        "step": step.step,
        "part": part.part,
        "line": step.line,
        "contrast": step.contrast,
        "lead": part.lead,
        "waits_for": waits,
        "stands": part.stands,
    });
    let more = match &part.holds {
        PartHolds::Stop(checked) => json!({
            "kind": "problem",
            "position": checked.position,
            "topic": checked.topic,
            "topic_check": on_topic(&checked.report, checked.topic.clone(), step.contrast)
                .map(|held| topic_said(&held.check, english())),
            "words": checked.words,
            "same": checked.same,
            "report": said_of(&checked.report, english()),
        }),
        PartHolds::Written(written) => json!(written),
    };
    if let (Some(out), serde_json::Value::Object(more)) = (out.as_object_mut(), more) {
        out.extend(more);
    }
    out
}

fn head(out: &mut impl Write, step: i64, contrast: bool) -> anyhow::Result<()> {
    writeln!(out, "{}", Text::LessonStepHead { step, contrast }.said())?;
    Ok(())
}

/// How a stop stands to its topic; where that is meant to fail, nothing is said of it.
fn on_topic(report: &Report, topic: Option<String>, contrast: bool) -> Option<TopicStanding> {
    TopicStanding::of(report, topic.filter(|_| !contrast), TopicOn::MainLine)
}

fn tell_part(out: &mut impl Write, part: &PartSheet, contrast: bool) -> anyhow::Result<()> {
    match &part.holds {
        PartHolds::Stop(checked) => {
            tell_lead(out, &part.lead)?;
            let held = on_topic(&checked.report, checked.topic.clone(), contrast);
            tell(out, &checked.report, held.as_ref())?;
            let words = &checked.words;
            tell_words(out, &words.with_post, &words.at_reveal, &words.notes)?;
            if let Some(same) = &checked.same {
                let what = same_again(readers(), same, str::to_owned);
                writeln!(out, "    {}", Text::ReportAgain { what }.said())?;
            }
        }
        PartHolds::Written(NewPostContent::Question {
            words, at_reveal, ..
        }) => {
            tell_question(out, words, at_reveal)?;
            tell_lead(out, &part.lead)?;
        }
        PartHolds::Written(NewPostContent::Words { words, .. }) => {
            tell_said(out, words)?;
            tell_lead(out, &part.lead)?;
        }
    }
    if !part.waits_for.is_empty() {
        let steps: Vec<i64> = part.waits_for.iter().map(|(step, _)| *step).collect();
        let waits = Text::LessonPartWaits {
            number: number(steps.len()),
            steps: List {
                list: steps.iter().map(theirs).collect(),
            },
        };
        writeln!(out, "    {}", waits.said())?;
    }
    match part.stands {
        PartStands::Kept => {}
        PartStands::AsBefore { step } => {
            writeln!(out, "    {}", Text::LessonPartAsBefore { step }.said())?;
        }
        PartStands::NotKept => writeln!(out, "    {}", Text::LessonPartNotKept.said())?,
        PartStands::Waits { item } => {
            let item = item.get();
            writeln!(out, "    {}", Text::LessonPartInWeek { item }.said())?;
        }
        PartStands::Open { number } => {
            writeln!(out, "    {}", Text::LessonPartOpen { number }.said())?;
        }
        PartStands::Closed { number } => {
            writeln!(out, "    {}", Text::LessonPartClosed { number }.said())?;
        }
    }
    writeln!(out)?;
    Ok(())
}

fn tell_lead(out: &mut impl Write, lead: &[Note]) -> anyhow::Result<()> {
    for line in comments::lines(lead, |moves| readers().moves(moves)) {
        writeln!(out, "    {line}")?;
    }
    Ok(())
}

fn tell_question(out: &mut impl Write, words: &str, at_reveal: &str) -> anyhow::Result<()> {
    let words = theirs(words);
    writeln!(out, "    {}", Text::LessonQuestion { words }.said())?;
    if !at_reveal.is_empty() {
        let words = theirs(at_reveal);
        writeln!(out, "    {}", Text::WrittenAtClose { words }.said())?;
    }
    Ok(())
}

fn tell_said(out: &mut impl Write, words: &str) -> anyhow::Result<()> {
    let words = theirs(words);
    writeln!(out, "    {}", Text::LessonSays { words }.said())?;
    Ok(())
}

/// Whether something of a lesson is to be looked at.
fn found(sheet: &LessonSheet, chosen: bool) -> Outcome {
    let part = |part: &PartSheet| match &part.holds {
        PartHolds::Stop(checked) => {
            checked.report.verdict != Soundness::Sound || (checked.same.is_some() && !chosen)
        }
        PartHolds::Written(_) => false,
    };
    let wanting = sheet
        .steps
        .iter()
        .any(|step| step.trouble.is_some() || step.parts.iter().any(part));
    match wanting {
        true => Outcome::Wanting,
        false => Outcome::Fine,
    }
}
