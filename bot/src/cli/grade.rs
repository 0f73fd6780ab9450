//! `grade`: judges one reply to one position.

use std::{
    io::{self, Read},
    path::{Path, PathBuf},
    sync::Arc,
    time::Instant,
};

use anyhow::Context;
use clap::Args;
use serde::Serialize;
use shakmaty::Chess;

use super::{
    Outcome,
    check::{read_bytes, seconds},
    output::json_line,
    text::{Decimal, Failure, Misuse, Or, OrFail, Text, failure, number, path, theirs},
    tongue::readers,
};
use crate::chess::{
    Budget, Language, Stipulation,
    check::{self, CheckOptions, Problem},
    coach_lines::CoachTree,
    judge::{self, Judgement, Terms, Verdict},
    parse_fen,
    read::{self, Entry},
};
use crate::words::english;

/// Judge one reply to one position, as a member would be answered.
///
/// The position is given with its task, or as a file whose own lines are judged along. The reply is the last argument, after `--` if it begins with a dash, or standard input for `-`.
/// Exit status 1 when the reply is not right.
#[derive(Debug, Args)]
pub struct GradeArgs {
    /// One JSON object
    #[arg(long)]
    json: bool,
    /// The position
    #[arg(long, value_name = "FEN", required_unless_present = "pgn")]
    position: Option<String>,
    /// The task: #1 to #20, + or =
    #[arg(long, value_name = "TASK", required_unless_present = "pgn")]
    stipulation: Option<Stipulation>,
    /// In their place, a file whose first position is judged along its own lines
    #[arg(long, value_name = "FILE", conflicts_with_all = ["position", "stipulation"])]
    pgn: Option<PathBuf>,
    /// Which of the file's lines a win or a draw is met with, from 0
    #[arg(
        long,
        value_name = "N",
        default_value_t = 0,
        conflicts_with = "position"
    )]
    line: u64,
    /// Language whose piece letters are read first
    #[arg(long, value_name = "LANGUAGE", default_value = "english", value_parser = language)]
    language: Language,
    /// The most time for the judgement
    #[arg(long, value_name = "SECONDS", default_value_t = 30.0)]
    seconds: f64,
    /// What the member wrote
    #[arg(value_name = "REPLY")]
    reply: String,
}

/// The object written; scripts rely on these names and this order.
#[derive(Serialize)]
struct Line<'a> {
    moves: &'a [String],
    verdict: Verdict,
    points: f64,
    refutation: &'a [String],
    why: String,
    message: String,
    /// Left out when nothing is asked.
    #[serde(skip_serializing_if = "<[String]>::is_empty")]
    readings: &'a [String],
}

impl GradeArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let limit = seconds(self.seconds)?;
        let asked = self.asked()?;
        let text = if self.reply == "-" {
            standard_input()?
        } else {
            self.reply
        };
        let started = Instant::now();
        let late = || started.elapsed() > limit;
        let budget = Budget::unlimited().until(&late);
        let problem = asked.problem(&budget).map_err(|task| {
            failure(Failure::TaskNotShown {
                task: task.map_or_else(|| "+".to_owned(), |task| task.to_string()),
                seconds: Decimal::of(self.seconds),
            })
        })?;
        let terms = Terms {
            line_choice: self.line,
            ..Terms::answer(self.language)
        };
        let judged = judge::judge(&problem, &[], &text, &terms, &budget)
            .or_fail(|| Failure::ReplyHoldsNothing)?;
        let mut out = io::stdout().lock();
        match self.json {
            true => json_line(&mut out, &Line::of(&judged))?,
            false => tell(&mut out, &judged)?,
        }
        Ok(match judged.verdict {
            Verdict::Solved | Verdict::OnTheWay => Outcome::Fine,
            _ => Outcome::Wanting,
        })
    }
}

/// What a reply is judged against.
enum Asked {
    /// A position and its task.
    Given(Chess, Stipulation),
    /// A position of a file, with the coach's own lines.
    Lesson(Box<Entry>),
}

impl GradeArgs {
    fn asked(&self) -> anyhow::Result<Asked> {
        if let Some(file) = &self.pgn {
            return Ok(Asked::Lesson(Box::new(lesson(file)?)));
        }
        // One of the two is there, as the arguments are declared.
        let (fen, task) = (self.position.as_deref(), self.stipulation);
        let position = parse_fen(fen.unwrap_or_default()).context("--position")?;
        Ok(Asked::Given(
            position.position,
            task.unwrap_or(Stipulation::Win),
        ))
    }
}

impl Asked {
    /// The problem to judge by.
    ///
    /// # Errors
    /// The task, where it could not be shown to hold; none where none was found either.
    fn problem(&self, budget: &Budget<'_>) -> Result<Problem, Option<Stipulation>> {
        let options = CheckOptions::default();
        let of =
            |position, task| check::problem(position, task, &options, budget).ok_or(Some(task));
        match self {
            Self::Given(position, task) => of(position, *task),
            Self::Lesson(entry) => {
                let report = check::check(entry, &options, budget);
                let problem = of(&entry.position, report.stipulation.ok_or(None)?)?;
                let coach = CoachTree::of(&entry.position, &report.coach_lines);
                Ok(Problem {
                    coach: coach.map(Arc::new),
                    ..problem
                })
            }
        }
    }
}

/// The first position of a file.
fn lesson(file: &Path) -> anyhow::Result<Entry> {
    let name = file.display().to_string();
    let entries = read::read_file(&name, &read_bytes(file)?);
    let first = entries.into_iter().next();
    let first = first.or_fail(|| Failure::NoProblemInFile { file: path(file) })?;
    first.map_err(|error| {
        failure(Failure::LessonUnreadable {
            file: path(file),
            row: number(error.line),
            what: *error.problem,
        })
    })
}

impl<'a> Line<'a> {
    fn of(judged: &'a Judgement) -> Self {
        let Judgement {
            moves,
            verdict,
            points,
            refutation,
            why,
            said,
            readings,
            ..
        } = judged;
        Self {
            moves,
            verdict: *verdict,
            points: *points,
            refutation,
            // Scripts read this, and a script's output is the same for everybody.
            why: english().say(why),
            message: english().tell(said),
            readings,
        }
    }
}

fn tell(out: &mut impl io::Write, judged: &Judgement) -> anyhow::Result<()> {
    let graded = Text::Graded {
        verdict: judged.verdict,
        points: Decimal::of(judged.points),
    };
    writeln!(out, "{}", graded.said())?;
    writeln!(out, "{}", readers().tell(&judged.said))?;
    // As they would be sent back, which the reader's own letters would not be.
    for reading in &judged.readings {
        let reading = theirs(reading);
        writeln!(out, "{}", Text::MayMean { reading }.said())?;
    }
    Ok(())
}

fn standard_input() -> anyhow::Result<String> {
    let mut bytes = Vec::new();
    io::stdin()
        .lock()
        .take(1 << 20)
        .read_to_end(&mut bytes)
        .or_fail(|| Failure::InputUnreadable)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// A language by its code.
pub(super) fn language(code: &str) -> Result<Language, String> {
    code.parse().map_err(|_| {
        let languages = Or {
            or: Language::ALL
                .iter()
                .map(|language| language.code().to_owned())
                .collect(),
        };
        readers().say(&Misuse::NotALanguage { languages })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_of_replies_is_taken_and_offered() {
        let refused = language("klingon").expect_err("no language of ours");
        for known in Language::ALL {
            assert_eq!(language(known.code()), Ok(known));
            assert!(refused.contains(known.code()), "{refused}");
        }
    }
}
