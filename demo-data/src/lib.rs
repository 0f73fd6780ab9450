//! An invented study group: its positions and its past weeks.
