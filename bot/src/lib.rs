//! Sealed Move: a chat bot for a chess coach who teaches a study group by topic and posts a position a day.
//!
//! The house has five floors, and a floor uses only the floors below it:
//!
//! 1. [`chess`] and [`diagram`]: pure computation. No clock, store, network, files or async.
//! 2. [`desk`]: what a coach and a member can ask for. Holds the store and a clock that tests can set.
//! 3. [`words`]: facts to sentences, one folder a language.
//! 4. [`chat`]: one trait and one folder per chat. Never touches the store.
//! 5. [`cli`]: one file per command; configuration; start and orderly stop.

// What comes from outside may be wrong; only tests may insist.
#![cfg_attr(not(test), warn(clippy::expect_used))]

pub mod chat;
pub mod cli;
pub mod desk;

/// The program: reads the command line, and does what it asks with the chats that `chats` lists. Another
/// package adds a chat of its own by `Registry::default().with(…)`.
pub fn run_with(chats: chat::Registry) -> std::process::ExitCode {
    cli::main(chats)
}

pub use sealed_move_chess as chess;
pub use sealed_move_diagram as diagram;
pub use sealed_move_words as words;
