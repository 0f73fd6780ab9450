//! The one binary: parses the command line and hands it to [`sealed_move::cli`].

use std::process::ExitCode;

use clap::Parser;
use sealed_move::cli::{Cli, run};

fn main() -> ExitCode {
    run(Cli::parse())
}
