//! What can go wrong with the store, said so that a person knows where and what to do.

use std::path::PathBuf;

/// Why the store could not be opened, read or written.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum StoreError {
    /// The file was written by a newer version of the program.
    #[error(
        "the store {path} was written by a newer Sealed Move (store version {found}, this program knows up to {known}); run the newer program, or restore a backup made by this one"
    )]
    Newer {
        /// The file.
        path: PathBuf,
        /// Its version.
        found: i64,
        /// The newest version this program knows.
        known: i64,
    },
    /// The file is no database, or a database of something else, or damaged.
    #[error(
        "{path} is not a store of Sealed Move ({why}); give the path of a store, or of a file that does not exist yet"
    )]
    NotAStore {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        why: String,
    },
    /// The file or its folder cannot be written.
    #[error(
        "the store {path} cannot be written ({why}); make the file and its folder writable for this user, or choose another path"
    )]
    ReadOnly {
        /// The file.
        path: PathBuf,
        /// What the system said.
        why: String,
    },
    /// The file cannot be opened or made.
    #[error(
        "the store {path} cannot be opened ({why}); check that the folder exists and may be used"
    )]
    CannotOpen {
        /// The file.
        path: PathBuf,
        /// What the system said.
        why: String,
    },
    /// The disk is full.
    #[error(
        "the disk that holds the store {path} is full; make room and try again, nothing already kept is lost"
    )]
    Full {
        /// The file.
        path: PathBuf,
    },
    /// Another program holds the store for too long.
    #[error(
        "the store {path} is in use by another program; wait for it to finish, or stop it, and try again"
    )]
    Busy {
        /// The file.
        path: PathBuf,
    },
    /// Restoring would overwrite a file that exists.
    #[error("{path} exists already; move it away, or say that it may be overwritten")]
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// The group has a post for that slot already.
    #[error("the group has a post for {slot} already")]
    SlotTaken {
        /// The slot.
        slot: crate::Moment,
    },
    /// The row asked for does not exist.
    #[error("there is no {what} with id {id}")]
    NoSuch {
        /// What kind of row.
        what: &'static str,
        /// The id asked for.
        id: i64,
    },
    /// The write breaks a rule of the store, such as one that says a thing exists once.
    #[error("the store refuses this: {0}")]
    Rule(String),
    /// The caller called its own transaction off; nothing was written. The text is the caller's.
    #[error("{0}")]
    CalledOff(String),
    /// A value in the file cannot be read back.
    #[error("the store holds a value that cannot be read: {0}; restore a backup")]
    Damaged(String),
    /// The store's thread has stopped, or a closure handed to it panicked.
    #[error("the store has stopped; start the program again, nothing already kept is lost")]
    Stopped,
    /// Anything else SQLite reports.
    #[error("the store could not be used: {0}")]
    Sql(#[source] rusqlite::Error),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        use rusqlite::Error as E;
        match &error {
            E::SqliteFailure(code, message)
                if code.code == rusqlite::ErrorCode::ConstraintViolation =>
            {
                Self::Rule(message.clone().unwrap_or_else(|| code.to_string()))
            }
            E::FromSqlConversionFailure(..)
            | E::InvalidColumnType(..)
            | E::IntegralValueOutOfRange(..) => Self::Damaged(error.to_string()),
            _ => Self::Sql(error),
        }
    }
}

impl StoreError {
    /// Names the file in errors that SQLite reports without it.
    pub(crate) fn at(self, path: &std::path::Path) -> Self {
        let Self::Sql(rusqlite::Error::SqliteFailure(code, message)) = &self else {
            return self;
        };
        use rusqlite::ErrorCode as C;
        let path = path.to_path_buf();
        let why = message.clone().unwrap_or_else(|| code.to_string());
        match code.code {
            C::NotADatabase => Self::NotAStore { path, why },
            C::DatabaseCorrupt => Self::NotAStore { path, why },
            C::ReadOnly | C::PermissionDenied => Self::ReadOnly { path, why },
            C::CannotOpen => Self::CannotOpen { path, why },
            C::DiskFull => Self::Full { path },
            C::DatabaseBusy | C::DatabaseLocked => Self::Busy { path },
            _ => self,
        }
    }
}
