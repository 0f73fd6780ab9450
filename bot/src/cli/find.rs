//! `find`: positions for a topic out of game archives in PGN.

use std::{
    io::{self, Write},
    path::PathBuf,
};

use clap::Args;

use super::{
    Outcome,
    check::{ReportLine, in_order, read_bytes},
    misuse::between,
    output::json_line,
    text::{Failure, List, OrFail, Text, number, theirs, unless},
    tongue::readers,
};
use crate::{
    chess::{
        Budget,
        check::Finding,
        find::{Found, Wanted, find_in},
        name::{meant, names},
        read::read_games,
    },
    words::Words,
};

/// Find positions for a topic in games: forced mates that end in a mating pattern, played or missed.
///
/// Every position found is sound. Without --json they are written as EPD, ready for `import`.
/// Exit status 1 when a game could not be read.
#[derive(Debug, Args)]
pub struct FindArgs {
    /// Mating pattern, by its name or title; without it, any pattern with a name
    #[arg(long, value_name = "TOPIC")]
    topic: Option<String>,
    /// Shortest mate wanted, in moves
    #[arg(long, value_name = "N", default_value_t = 2, value_parser = between::<u8>(1, 6))]
    shortest: u8,
    /// Longest mate wanted, in moves
    #[arg(long, value_name = "N", default_value_t = 3, value_parser = between::<u8>(1, 6))]
    longest: u8,
    /// One JSON object a position, as `check` writes it
    #[arg(long)]
    json: bool,
    /// Games worked on at once; by default one a core
    #[arg(long, value_name = "N")]
    jobs: Option<usize>,
    /// Files of games in PGN; `-` reads standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
}

impl FindArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        unless(self.shortest <= self.longest, || Failure::ShortestTooLong {
            shortest: self.shortest.into(),
            longest: self.longest.into(),
        })?;
        let wanted = Wanted {
            pattern: self.topic.as_deref().map(known).transpose()?,
            shortest: self.shortest,
            longest: self.longest,
            ..Wanted::default()
        };
        let mut out = io::stdout().lock();
        let mut outcome = Outcome::Fine;
        for file in &self.files {
            let name = file.file_name().map_or_else(
                || file.display().to_string(),
                |name| name.to_string_lossy().into_owned(),
            );
            let mut games = Vec::new();
            for game in read_games(&name, &read_bytes(file)?) {
                match game {
                    Ok(game) => games.push(game),
                    Err(error) => {
                        outcome = Outcome::Wanting;
                        eprintln!("sealed-move: {}", readers().say(&Finding::from(&error)));
                    }
                }
            }
            in_order(
                &games,
                self.jobs,
                |game| find_in(game, &wanted, &Budget::unlimited()),
                |found| {
                    for found in found? {
                        if self.json {
                            json_line(&mut out, &ReportLine::of(&found.report))?;
                        } else {
                            writeln!(out, "{}", epd(&found, &name, wanted.pattern, readers()))?;
                        }
                    }
                    Ok(())
                },
            )?;
        }
        out.flush()?;
        Ok(outcome)
    }
}

/// The pattern that a topic means.
fn known(topic: &str) -> anyhow::Result<&'static str> {
    meant(topic).or_fail(|| Failure::NotAPattern {
        topic: theirs(topic),
        patterns: List {
            list: names().map(theirs).collect(),
        },
    })
}

/// What a language calls a pattern.
fn title(words: &Words, pattern: &str) -> String {
    words.text(&format!("pattern-{pattern}"))
}

/// The position as an EPD record with its key, length, id, topic and where it was found.
fn epd(found: &Found, file: &str, wanted: Option<&str>, words: &Words) -> String {
    let report = &found.report;
    // The placement, side, castling and en passant; EPD keeps the clocks elsewhere.
    let board: Vec<&str> = report.fen.split(' ').take(4).collect();
    let topic = wanted
        .or(report.patterns.first().map(String::as_str))
        .map(|pattern| title(words, pattern))
        .unwrap_or_default();
    let mut record = board.join(" ");
    record.push_str(&format!(" bm {};", report.keys.join(" ")));
    if let Some(moves) = report.stipulation.and_then(|task| task.mate_in()) {
        record.push_str(&format!(" dm {moves};"));
    }
    let (file, line) = (theirs(file), number(found.line));
    let origin = words.say(&match found.played {
        true => Text::FoundPlayed { file, line },
        false => Text::FoundMissed { file, line },
    });
    for (code, text) in [
        ("id", report.id.as_str()),
        ("c0", topic.as_str()),
        ("c1", origin.as_str()),
    ] {
        // A string of the standard holds no quotes and no line ends.
        let text: String = text
            .chars()
            .map(|c| if c == '"' || c.is_control() { ' ' } else { c })
            .collect();
        record.push_str(&format!(" {code} \"{text}\";"));
    }
    record
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{chess::read::read_file, words::english};

    #[test]
    fn what_is_found_can_be_imported() {
        let text = "[White \"A \\\"quick\\\" player\"]\n[Black \"B\"]\n[SetUp \"1\"]\n\
            [FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 31\"]\n\n31. Kf1 Kf8 *\n";
        let games = read_games("club.pgn", text.as_bytes());
        let game = games[0].as_ref().expect("a game");
        let found = find_in(game, &Wanted::default(), &Budget::unlimited()).expect("unlimited");
        let record = epd(&found[0], "club.pgn", None, english());
        let entries = read_file("found.epd", record.as_bytes());
        let entry = entries[0].as_ref().expect("a position");
        assert_eq!(entry.topic.as_deref(), Some("Back-rank mate"));
        assert_eq!(
            entry.comments[0].text,
            "missed in the game, club.pgn line 1"
        );
        assert_eq!(entry.best.len(), 1);
        assert!(entry.id.ends_with(", 31"), "{}", entry.id);
    }

    #[test]
    fn a_topic_is_a_name_or_a_title_in_any_language() {
        for topic in [
            "back-rank",
            "Back-rank mate",
            "grundreihenmatt",
            " Mate del pasillo ",
            "Back-row mate",
        ] {
            assert_eq!(known(topic).ok(), Some("back-rank"), "{topic}");
        }
    }

    #[test]
    fn an_unknown_topic_is_answered_with_the_known_ones() {
        let error = known("castling").expect_err("no pattern").to_string();
        assert!(
            error.contains("castling") && error.contains("smothered"),
            "{error}"
        );
    }
}
