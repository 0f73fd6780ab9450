//! The program with a third chat: what another package does to add one of its own.

use std::process::ExitCode;

use sealed_move::chat::Registry;
use sealed_move_tests::lines;

fn main() -> ExitCode {
    sealed_move::run_with(Registry::default().with(lines::registration()))
}
