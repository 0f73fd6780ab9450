//! Everything Sealed Move remembers, on SQLite.

/// The store. Cheap to clone.
#[derive(Clone, Debug)]
pub struct Store {}
