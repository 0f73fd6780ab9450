//! The one binary: [`sealed_move`] with the chats that come along.

use std::process::ExitCode;

use sealed_move::chat::Registry;

fn main() -> ExitCode {
    sealed_move::run_with(Registry::default())
}
