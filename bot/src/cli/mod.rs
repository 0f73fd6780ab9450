//! Floor 4: the command line. One file per command.
