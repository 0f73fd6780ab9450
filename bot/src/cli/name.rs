//! `name`: names the mate on the board.

use std::io::{self, Write};

use clap::Args;

use super::{
    Outcome,
    output::json_line,
    text::{Failure, OrFail},
    tongue::readers,
};
use crate::chess::{name, parse_fen};

/// Name the mate on the board: pattern, checking pieces, who guards each flight.
///
/// Exit status 1 when the side to move is not mated.
#[derive(Debug, Args)]
pub struct NameArgs {
    /// One JSON object
    #[arg(long)]
    json: bool,
    /// The position, with the mated side to move
    #[arg(value_name = "FEN")]
    position: String,
}

impl NameArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let position = parse_fen(&self.position)
            .or_fail(|| Failure::PositionGiven)?
            .position;
        let naming = name::name(&position);
        let mut out = io::stdout().lock();
        if self.json {
            json_line(&mut out, &naming)?;
        } else {
            let words = readers();
            for fact in naming.facts() {
                writeln!(out, "{}", words.say(&fact))?;
            }
            for pattern in &naming.patterns {
                let title = words.text(&format!("pattern-{pattern}"));
                let definition = words.text(&format!("definition-{pattern}"));
                writeln!(out, "\n{title}: {definition}")?;
            }
        }
        Ok(if naming.mate {
            Outcome::Fine
        } else {
            Outcome::Wanting
        })
    }
}
