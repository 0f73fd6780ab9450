//! Floor 4: the command line. One file per command; `--json` writes JSON lines on stdout, people's
//! output goes to the terminal, progress to stderr when that is a terminal.

mod backoff;
mod backup;
mod card;
mod check;
pub mod config;

mod demo;
mod demo_fill;
mod diagram;
mod engine;
mod figures;
mod find;
mod grade;
mod groups;
mod help;
mod import;
mod leaderboard;
mod lesson;
mod misuse;
mod name;
mod output;
mod queue;
pub mod serve;
mod settings_fault;
mod summary;
mod supervisor;
mod text;
mod told;
mod tongue;

use std::{path::PathBuf, process::ExitCode};

use clap::{Args, CommandFactory, FromArgMatches, Parser, Subcommand};

use self::{told::told, tongue::readers};
use crate::chat::Registry;

/// Runs a chess study group's position of the day: checks it, posts it, reads the replies, answers
/// wrong moves with their refutation, keeps answers sealed until the reveal, and adds up by topic.
///
/// Exit status: 0 as asked; 1 done, and something was found wanting; 2 it could not be done.
#[derive(Debug, Parser)]
#[command(
    name = "sealed-move",
    version,
    max_term_width = 100,
    disable_help_subcommand = true
)]
pub struct Cli {
    #[command(flatten)]
    place: Globals,
    #[command(subcommand)]
    command: Option<Command>,
}

/// Where the store and the settings are, and which chats there are; the same for every command that needs them.
#[derive(Clone, Debug, Default, Args)]
pub struct Globals {
    /// Settings file; by default sealed-move.toml beside the store, if there is one
    #[arg(long, global = true, value_name = "FILE", env = "SEALED_MOVE_CONFIG")]
    pub config: Option<PathBuf>,
    /// The store; by default the one the settings name, else sealed-move.sqlite in this folder
    #[arg(long, global = true, value_name = "FILE", env = "SEALED_MOVE_STORE")]
    pub store: Option<PathBuf>,
    /// The chats there are.
    #[arg(skip)]
    pub chats: Registry,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Run the bot: scheduler, club room, and Discord where a token is set (the default)
    Serve(serve::ServeArgs),
    /// Run it on a fresh store with an invented group, the first position posted at once
    Demo(demo::DemoArgs),
    /// Verify positions from EPD, PGN or FEN lines
    Check(check::CheckArgs),
    /// Verify positions and keep them in the store
    Import(import::ImportArgs),
    /// See and arrange the week
    Queue(queue::QueueArgs),
    /// Teach a topic in steps
    Lesson(lesson::LessonArgs),
    /// Judge one reply to one position
    Grade(grade::GradeArgs),
    /// Name the mate on the board
    Name(name::NameArgs),
    /// Read what a mating pattern is about, with an example
    Card(card::CardArgs),
    /// Find positions for a topic in games
    Find(find::FindArgs),
    /// Offer the bot's own search to programs that speak UCI
    Engine(engine::EngineArgs),
    /// Draw a position as PNG or SVG
    Diagram(diagram::DiagramArgs),
    /// Points by topic and period
    Leaderboard(leaderboard::LeaderboardArgs),
    /// Who took part, how it went, what to teach next
    Summary(summary::SummaryArgs),
    /// Copy the store, also while serving
    Backup(backup::BackupArgs),
    /// Put a copy in the store's place
    Restore(backup::RestoreArgs),
}

/// How a command ended, when it could be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// As asked.
    Fine,
    /// Done, and something was found wanting.
    Wanting,
}

/// Reads the arguments of the process, and does what they ask with the chats that `chats` lists.
pub fn main(chats: Registry) -> ExitCode {
    let words = readers();
    let read = help::localized(Cli::command(), words)
        .try_get_matches()
        .and_then(|matches| Cli::from_arg_matches(&matches));
    let error = match read {
        Ok(cli) => return run(cli, chats),
        Err(error) => error,
    };
    // Help and version are no error; what is wrong in other ways than we tell is told by the library.
    match error.use_stderr().then(|| misuse::told(&error, words)) {
        Some(Some(told)) => eprintln!("{told}"),
        _ => {
            let _ = error.print();
        }
    }
    match error.exit_code() {
        0 => ExitCode::SUCCESS,
        _ => ExitCode::from(2),
    }
}

/// Runs the command line with the chats that `chats` lists, and says how the process should end.
pub fn run(cli: Cli, chats: Registry) -> ExitCode {
    let place = Globals { chats, ..cli.place };
    let done = match cli
        .command
        .unwrap_or_else(|| Command::Serve(serve::ServeArgs::default()))
    {
        Command::Serve(command) => command.run(&place),
        Command::Demo(command) => command.run(&place),
        Command::Check(command) => command.run(),
        Command::Import(command) => command.run(&place),
        Command::Queue(command) => command.run(&place),
        Command::Lesson(command) => command.run(&place),
        Command::Grade(command) => command.run(),
        Command::Name(command) => command.run(),
        Command::Card(command) => command.run(),
        Command::Find(command) => command.run(),
        Command::Diagram(command) => command.run(),
        Command::Engine(command) => command.run(),
        Command::Leaderboard(command) => command.run(&place),
        Command::Summary(command) => command.run(&place),
        Command::Backup(command) => command.run(&place),
        Command::Restore(command) => command.run(&place),
    };
    match done {
        Ok(Outcome::Fine) => ExitCode::SUCCESS,
        Ok(Outcome::Wanting) => ExitCode::from(1),
        Err(error) if output::is_closed_pipe(&error) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("sealed-move: {}", told(&error, readers()));
            ExitCode::from(2)
        }
    }
}
