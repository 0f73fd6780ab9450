//! A consistent copy of the store, also while serving; and back.

use std::path::Path;

use crate::{Store, StoreError};

/// Whether a file that exists may be overwritten.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Overwrite {
    /// Leave it and err.
    No,
    /// Put the new one in its place.
    Yes,
}

impl Store {
    /// Writes a consistent copy to `to`, while others read and write.
    ///
    /// # Errors
    /// [`StoreError::Exists`] when there is a file and `overwrite` says no; when `to` cannot be written.
    pub fn backup(&self, to: &Path, overwrite: Overwrite) -> Result<(), StoreError> {
        let _ = (to, overwrite);
        todo!()
    }

    /// Empties the write-ahead log into the file, so that what was erased is in neither.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn scrub(&self) -> Result<(), StoreError> {
        todo!()
    }
}

/// Makes a store at `to` out of the backup `from`, after checking that it is a whole store of a version
/// this program knows. No program may have `to` open.
///
/// # Errors
/// [`StoreError::NotAStore`], [`StoreError::Newer`], [`StoreError::Exists`], or when `to` cannot be written.
pub fn restore(from: &Path, to: &Path, overwrite: Overwrite) -> Result<(), StoreError> {
    let _ = (from, to, overwrite);
    todo!()
}
