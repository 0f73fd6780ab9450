//! From any older version of the store to the newest, forward only, by `PRAGMA user_version`.

use rusqlite::Connection;

use crate::StoreError;

/// Marks a file as ours (`PRAGMA application_id`): "SeaM" in ASCII.
pub(crate) const APPLICATION_ID: i64 = 0x5365_614D;

/// Step `n` leads from version `n` to `n + 1`; a step that has been released is never changed.
const STEPS: &[&str] = &[include_str!("schema.sql")];

/// The newest version of the store that this program knows.
#[allow(clippy::cast_possible_wrap)]
pub const VERSION: i64 = STEPS.len() as i64;

/// What a file says of itself: its application id, its version, and whether it holds any table.
pub(crate) fn identity(sql: &Connection) -> Result<(i64, i64, bool), StoreError> {
    let id = sql.query_row("PRAGMA application_id", [], |row| row.get(0))?;
    let version = sql.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    let tables = sql.query_row("SELECT count(*) > 0 FROM sqlite_schema", [], |row| {
        row.get(0)
    })?;
    Ok((id, version, tables))
}

/// Errs unless the file is empty or a store that this program knows.
pub(crate) fn accept(sql: &Connection, path: &std::path::Path) -> Result<i64, StoreError> {
    let (id, version, tables) = identity(sql)?;
    if id == 0 && version == 0 && !tables {
        return Ok(0);
    }
    if id != APPLICATION_ID {
        return Err(StoreError::NotAStore {
            path: path.to_path_buf(),
            why: "it is a database of something else".into(),
        });
    }
    if version > VERSION {
        return Err(StoreError::Newer {
            path: path.to_path_buf(),
            found: version,
            known: VERSION,
        });
    }
    Ok(version)
}

/// Brings a file up to version `to`, each step in its own transaction.
pub(crate) fn bring_to(
    sql: &mut Connection,
    path: &std::path::Path,
    to: i64,
) -> Result<(), StoreError> {
    loop {
        let tx = sql.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)?;
        // Read again under the lock: another process may have taken the step meanwhile.
        let version = accept(&tx, path)?;
        if version >= to {
            return Ok(());
        }
        let Some(step) = usize::try_from(version).ok().and_then(|n| STEPS.get(n)) else {
            return Ok(());
        };
        tx.execute_batch(step)?;
        tx.pragma_update(None, "application_id", APPLICATION_ID)?;
        tx.pragma_update(None, "user_version", version + 1)?;
        tx.commit()?;
    }
}
