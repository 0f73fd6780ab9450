//! `grade`: judges one reply to one position.

use std::{
    io::{self, Read},
    time::Instant,
};

use anyhow::Context;
use clap::Args;
use serde::Serialize;

use super::{
    Outcome,
    check::seconds,
    output::json_line,
    text::{Failure, Misuse, Or, OrFail, Points, Text, failure, moves},
    tongue::readers,
};
use crate::chess::{
    Budget, Language, Stipulation,
    check::{self, CheckOptions},
    judge::{self, Judgement, Terms, Verdict},
    parse_fen,
};
use crate::words::english;

/// Judge one reply to one position, as a member would be answered.
///
/// The reply is the last argument, after `--` if it begins with a dash, or standard input for `-`.
/// Exit status 1 when the reply is not right.
#[derive(Debug, Args)]
pub struct Grade {
    /// One JSON object
    #[arg(long)]
    json: bool,
    /// The position
    #[arg(long, value_name = "FEN")]
    position: String,
    /// The task: #1 to #20, + or =
    #[arg(long, value_name = "TASK")]
    stipulation: Stipulation,
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

impl Grade {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let limit = seconds(self.seconds)?;
        let position = parse_fen(&self.position).context("--position")?.position;
        let text = if self.reply == "-" {
            standard_input()?
        } else {
            self.reply
        };
        let started = Instant::now();
        let late = || started.elapsed() > limit;
        let budget = Budget::unlimited().until(&late);
        let options = CheckOptions::default();
        let Some(problem) = check::problem(&position, self.stipulation, &options, &budget) else {
            return Err(failure(Failure::TaskNotShown {
                task: self.stipulation.to_string(),
                seconds: Points::of(self.seconds),
            }));
        };
        let judged = judge::judge(&problem, &[], &text, &Terms::answer(self.language), &budget)
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
        points: Points::of(judged.points),
    };
    writeln!(out, "{}", graded.said())?;
    writeln!(out, "{}", readers().tell(&judged.said))?;
    for reading in &judged.readings {
        let reading = moves(reading);
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
