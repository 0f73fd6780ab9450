//! From any older version of the store to the newest, forward only, by `PRAGMA user_version`.

use std::path::Path;

use rusqlite::Connection;

use crate::StoreError;

/// Marks a file as ours (`PRAGMA application_id`): "SeaM" in ASCII.
pub(crate) const APPLICATION_ID: i64 = 0x5365_614D;

/// Step `n` leads from version `n` to `n + 1`; a step that has been released is never changed.
const STEPS: &[&str] = &[
    include_str!("schema.sql"),
    include_str!("step_2.sql"),
    include_str!("step_3.sql"),
    include_str!("step_4.sql"),
    include_str!("step_5.sql"),
];

/// The newest version of the store that this program knows.
#[allow(clippy::cast_possible_wrap)]
pub const VERSION: i64 = STEPS.len() as i64;

/// What a file says of itself: its application id, its version, and whether it holds any table.
fn identity(sql: &Connection) -> Result<(i64, i64, bool), StoreError> {
    let id = sql.query_row("PRAGMA application_id", [], |row| row.get(0))?;
    let version = sql.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    let tables = sql.query_row("SELECT count(*) > 0 FROM sqlite_schema", [], |row| {
        row.get(0)
    })?;
    Ok((id, version, tables))
}

/// The version of a file: 0 when it is empty. Errs unless it is that, or a store that this program knows.
pub(crate) fn accept(sql: &Connection, path: &Path) -> Result<i64, StoreError> {
    known(sql, path, STEPS.len())
}

#[allow(clippy::cast_possible_wrap)]
fn known(sql: &Connection, path: &Path, newest: usize) -> Result<i64, StoreError> {
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
    if version > newest as i64 {
        return Err(StoreError::Newer {
            path: path.to_path_buf(),
            found: version,
            known: newest as i64,
        });
    }
    Ok(version)
}

/// Brings a file up to the newest version.
pub(crate) fn up_to_date(sql: &mut Connection, path: &Path) -> Result<(), StoreError> {
    take(sql, path, STEPS)
}

/// Takes the steps that a file has not taken, each in its own transaction.
fn take(sql: &mut Connection, path: &Path, steps: &[&str]) -> Result<(), StoreError> {
    loop {
        let tx = sql.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)?;
        // Read under the lock: another process may have taken the step meanwhile.
        let version = known(&tx, path, steps.len())?;
        let Some(step) = usize::try_from(version).ok().and_then(|n| steps.get(n)) else {
            return Ok(());
        };
        tx.execute_batch(step)?;
        tx.pragma_update(None, "application_id", APPLICATION_ID)?;
        tx.pragma_update(None, "user_version", version + 1)?;
        tx.commit()?;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn schema(sql: &Connection) -> Vec<String> {
        sql.prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name")
            .unwrap()
            .query_map([], |row| row.get(0))
            .unwrap()
            .collect::<Result<_, _>>()
            .unwrap()
    }

    fn on_file(name: &str) -> (tempfile::TempDir, std::path::PathBuf, Connection) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(name);
        let sql = Connection::open(&path).unwrap();
        (folder, path, sql)
    }

    /// Opens a file left behind by each older version; all end alike, with the keys intact.
    #[test]
    fn every_older_version_is_brought_up_to_date() {
        let (_folder, path, mut fresh) = on_file("fresh.db");
        up_to_date(&mut fresh, &path).unwrap();
        for older in 0..STEPS.len() {
            let (_folder, path, mut sql) = on_file("older.db");
            take(&mut sql, &path, &STEPS[..older]).unwrap();
            assert_eq!(accept(&sql, &path).unwrap(), older as i64);
            up_to_date(&mut sql, &path).unwrap();
            assert_eq!(accept(&sql, &path).unwrap(), VERSION);
            assert_eq!(schema(&sql), schema(&fresh), "from version {older}");
            let broken: i64 = sql
                .query_row("SELECT count(*) FROM pragma_foreign_key_check", [], |r| {
                    r.get(0)
                })
                .unwrap();
            assert_eq!(broken, 0);
        }
    }

    /// A step keeps the rows written before it, and each is taken once.
    #[test]
    fn steps_are_taken_once_and_in_order() {
        let steps = [
            "CREATE TABLE a (x INTEGER); INSERT INTO a VALUES (1);",
            "ALTER TABLE a ADD COLUMN y INTEGER; UPDATE a SET y = x + 1;",
            "INSERT INTO a SELECT x + 10, y + 10 FROM a;",
        ];
        let (_folder, path, mut sql) = on_file("steps.db");
        take(&mut sql, &path, &steps[..1]).unwrap();
        sql.execute("INSERT INTO a VALUES (5)", []).unwrap();
        take(&mut sql, &path, &steps).unwrap();
        take(&mut sql, &path, &steps).unwrap();
        let rows: Vec<(i64, i64)> = sql
            .prepare("SELECT x, y FROM a ORDER BY x")
            .unwrap()
            .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
            .unwrap()
            .collect::<Result<_, _>>()
            .unwrap();
        assert_eq!(rows, [(1, 2), (5, 6), (11, 12), (15, 16)]);
    }

    #[test]
    fn a_step_that_fails_leaves_the_version_before_it() {
        let steps = [
            "CREATE TABLE a (x INTEGER);",
            "CREATE TABLE b (x); INSERT INTO nowhere VALUES (1);",
        ];
        let (_folder, path, mut sql) = on_file("fails.db");
        assert!(take(&mut sql, &path, &steps).is_err());
        assert_eq!(known(&sql, &path, 2).unwrap(), 1);
        assert_eq!(schema(&sql), ["CREATE TABLE a (x INTEGER)"]);
    }

    #[test]
    fn a_newer_store_is_refused_with_the_remedy() {
        let (_folder, path, mut sql) = on_file("newer.db");
        up_to_date(&mut sql, &path).unwrap();
        sql.pragma_update(None, "user_version", VERSION + 1)
            .unwrap();
        let error = up_to_date(&mut sql, &path).unwrap_err();
        assert!(
            matches!(error, StoreError::Newer { found, known, .. } if found == VERSION + 1 && known == VERSION)
        );
        let text = error.to_string();
        assert!(
            text.contains("newer.db") && text.contains("run the newer program"),
            "{text}"
        );
    }
}
