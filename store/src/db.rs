//! The two things a closure handed to the store gets: [`Db`] to read, [`Tx`] to read and write.

use rusqlite::{Connection, Params, Row};
use serde::de::DeserializeOwned;

use crate::{StoreError, ids::Id};

/// A consistent view of the store. Its methods are the reads, one file a subject.
pub struct Db<'c> {
    pub(crate) sql: &'c Connection,
}

/// One writing transaction. Its methods are the writes; the reads come from [`Db`] and see what this
/// transaction has written so far. Kept when the closure returns `Ok`, undone otherwise.
pub struct Tx<'c> {
    db: Db<'c>,
}

impl<'c> Tx<'c> {
    pub(crate) fn new(sql: &'c Connection) -> Self {
        Self { db: Db { sql } }
    }

    /// Runs one statement; returns how many rows it touched.
    pub(crate) fn run(&self, sql: &str, params: impl Params) -> Result<usize, StoreError> {
        Ok(self.sql.prepare_cached(sql)?.execute(params)?)
    }

    /// Runs one `INSERT`; returns the new row's id.
    pub(crate) fn insert<I: Id>(&self, sql: &str, params: impl Params) -> Result<I, StoreError> {
        Ok(I::of(self.sql.prepare_cached(sql)?.insert(params)?))
    }

    /// Runs one statement that must touch exactly the row of `what` with `id`.
    pub(crate) fn run_one(
        &self,
        what: &'static str,
        id: impl Into<i64>,
        sql: &str,
        params: impl Params,
    ) -> Result<(), StoreError> {
        match self.run(sql, params)? {
            0 => Err(StoreError::NoSuch {
                what,
                id: id.into(),
            }),
            _ => Ok(()),
        }
    }
}

impl<'c> std::ops::Deref for Tx<'c> {
    type Target = Db<'c>;
    fn deref(&self) -> &Db<'c> {
        &self.db
    }
}

/// A column that holds JSON.
pub(crate) fn json<T: DeserializeOwned>(row: &Row<'_>, column: &str) -> rusqlite::Result<T> {
    let column = row.as_ref().column_index(column)?;
    serde_json::from_str(row.get_ref(column)?.as_str()?).map_err(|error| {
        rusqlite::Error::FromSqlConversionFailure(
            column,
            rusqlite::types::Type::Text,
            Box::new(error),
        )
    })
}

impl Db<'_> {
    /// The first row of a query, if there is one.
    pub(crate) fn maybe_one<T>(
        &self,
        sql: &str,
        params: impl Params,
        read: impl FnOnce(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Option<T>, StoreError> {
        let mut statement = self.sql.prepare_cached(sql)?;
        let mut rows = statement.query(params)?;
        Ok(match rows.next()? {
            Some(row) => Some(read(row)?),
            None => None,
        })
    }

    /// All rows of a query.
    pub(crate) fn all<T>(
        &self,
        sql: &str,
        params: impl Params,
        read: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Vec<T>, StoreError> {
        let mut statement = self.sql.prepare_cached(sql)?;
        let rows = statement.query_map(params, read)?;
        Ok(rows.collect::<rusqlite::Result<_>>()?)
    }

    /// `PRAGMA data_version` of this connection: another value than before means that some other
    /// connection wrote in between.
    pub(crate) fn data_version(&self) -> Result<i64, StoreError> {
        Ok(self
            .sql
            .query_row("PRAGMA data_version", [], |row| row.get(0))?)
    }
}
