//! Discord.
