//! A consistent copy of the store, also while serving; the way back; and wiping what was deleted.

use std::{
    ffi::OsString,
    fs,
    path::{Path, PathBuf},
    time::Duration,
};

use rusqlite::{Connection, OpenFlags, TransactionBehavior, backup::Backup};
use tokio::sync::oneshot;

use crate::{Db, Store, StoreError, migrate};

/// Whether a file that exists may be overwritten.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Overwrite {
    /// Leave it and err.
    No,
    /// Put the new one in its place.
    Yes,
}

impl Store {
    /// Writes a consistent copy to `to`, while others read and write. `to` is whole or not there: the copy
    /// grows under another name beside it.
    ///
    /// # Errors
    /// [`StoreError::Exists`] when there is a file and `overwrite` says no, or when it is the store itself;
    /// when `to` cannot be written.
    pub fn backup(&self, to: &Path, overwrite: Overwrite) -> Result<(), StoreError> {
        may_write(to, overwrite)?;
        if same_file(self.path(), to) {
            return Err(StoreError::Exists {
                path: to.to_path_buf(),
            });
        }
        let from = open_to_read(self.path())?;
        copy(&from, self.path(), to)
    }

    /// Rewrites the file without its unused parts and empties the write-ahead log, so that what was
    /// deleted is in neither.
    ///
    /// # Errors
    /// When the store cannot be written, and [`StoreError::Busy`] when another program reads without end.
    pub async fn scrub(&self) -> Result<(), StoreError> {
        self.tend(scrub).await
    }

    /// Moves what the write-ahead log holds into the file and empties the log. Closing the store does so,
    /// too; a program that ends while work in hand still holds the store asks for it.
    ///
    /// # Errors
    /// When the store cannot be written, and [`StoreError::Busy`] when another program reads without end.
    pub async fn fold_log(&self) -> Result<(), StoreError> {
        self.tend(fold_log).await
    }

    async fn tend(
        &self,
        work: fn(&Connection) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        let (answer, result) = oneshot::channel();
        let path = self.path().to_path_buf();
        self.send_write(Box::new(move |sql| {
            let _ = answer.send(work(sql).map_err(|error| error.at(&path)));
        }))?;
        result.await.unwrap_or(Err(StoreError::Stopped))
    }
}

fn scrub(sql: &Connection) -> Result<(), StoreError> {
    // Secure deletion blanks a deleted cell, not the copies that rebalancing left in unused parts of a
    // page; only writing the file anew is sure to lose those.
    sql.execute_batch("VACUUM")?;
    fold_log(sql)
}

fn fold_log(sql: &Connection) -> Result<(), StoreError> {
    // Waits, for as long as the busy timeout says, for readers of the older state.
    let busy: bool = sql.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get(0))?;
    if busy {
        return Err(StoreError::Sql(rusqlite::Error::SqliteFailure(
            rusqlite::ffi::Error::new(rusqlite::ffi::SQLITE_BUSY),
            None,
        )));
    }
    Ok(())
}

/// Makes a store at `to` out of the backup `from`, after checking that it is a whole store of a version
/// this program knows. An older one is brought up to date when it is next opened.
///
/// # Errors
/// [`StoreError::NotAStore`] and [`StoreError::Newer`] for a bad backup; [`StoreError::Exists`] when there
/// is a file at `to` and `overwrite` says no; [`StoreError::Busy`] when a program has it open; or when `to`
/// cannot be written. Until all is well with `from`, nothing at `to` is touched.
pub fn restore(from: &Path, to: &Path, overwrite: Overwrite) -> Result<(), StoreError> {
    let source = open_to_read(from)?;
    verify(&source, from)?;
    may_write(to, overwrite)?;
    if same_file(from, to) {
        return Err(StoreError::Exists {
            path: to.to_path_buf(),
        });
    }
    if to.exists() {
        nobody_has_open(to)?;
    }
    // The log of the file that goes must not be replayed into the one that comes.
    for suffix in ["-wal", "-shm"] {
        let beside = with_suffix(to, suffix);
        if beside.exists() {
            fs::remove_file(&beside).map_err(|error| unwritable(&beside, &error))?;
        }
    }
    copy(&source, from, to)
}

fn may_write(to: &Path, overwrite: Overwrite) -> Result<(), StoreError> {
    // symlink_metadata: a dangling link is something, too.
    if overwrite == Overwrite::No && fs::symlink_metadata(to).is_ok() {
        return Err(StoreError::Exists {
            path: to.to_path_buf(),
        });
    }
    Ok(())
}

fn same_file(a: &Path, b: &Path) -> bool {
    match (fs::canonicalize(a), fs::canonicalize(b)) {
        (Ok(a), Ok(b)) => a == b,
        _ => false,
    }
}

fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = OsString::from(path);
    name.push(suffix);
    name.into()
}

fn unwritable(path: &Path, error: &std::io::Error) -> StoreError {
    StoreError::ReadOnly {
        path: path.to_path_buf(),
        why: error.to_string(),
    }
}

fn open_to_read(path: &Path) -> Result<Connection, StoreError> {
    let open = || -> Result<Connection, StoreError> {
        let sql = Connection::open_with_flags(
            path,
            OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX,
        )?;
        sql.busy_timeout(Duration::from_secs(10))?;
        Ok(sql)
    };
    open().map_err(|error| error.at(path))
}

/// Whether the file is a whole store of a version this program knows.
fn verify(sql: &Connection, path: &Path) -> Result<(), StoreError> {
    let not_a_store = |why: String| StoreError::NotAStore {
        path: path.to_path_buf(),
        why,
    };
    let look = || -> Result<(), StoreError> {
        if migrate::accept(sql, path)? == 0 {
            return Err(not_a_store("it is empty".into()));
        }
        let found: String = sql.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
        if found != "ok" {
            return Err(not_a_store(format!("it is damaged: {found}")));
        }
        let db = Db { sql };
        if let Some(table) = db.maybe_one("PRAGMA foreign_key_check", [], |row| {
            row.get::<_, String>(0)
        })? {
            return Err(not_a_store(format!(
                "it is damaged: a row of {table} belongs to nothing"
            )));
        }
        Ok(())
    };
    look().map_err(|error| error.at(path))
}

/// Errs with [`StoreError::Busy`] when another connection has the file open. A file that is no database is
/// nobody's.
fn nobody_has_open(path: &Path) -> Result<(), StoreError> {
    let take = || -> Result<(), StoreError> {
        let sql = Connection::open_with_flags(
            path,
            OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX,
        )?;
        sql.busy_timeout(Duration::from_millis(200))?;
        // In this mode a store with a write-ahead log can only be used by one connection at a time.
        sql.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
        sql.execute_batch("BEGIN EXCLUSIVE; ROLLBACK")?;
        Ok(())
    };
    match take().map_err(|error| error.at(path)) {
        Err(error @ (StoreError::Busy { .. } | StoreError::ReadOnly { .. })) => Err(error),
        _ => Ok(()),
    }
}

/// Copies a database into a file beside `to`, and puts that in its place when it is on disk.
fn copy(from: &Connection, from_path: &Path, to: &Path) -> Result<(), StoreError> {
    let partial = with_suffix(to, ".partial");
    let done = write_copy(from, from_path, &partial)
        .and_then(|()| fs::rename(&partial, to).map_err(|error| unwritable(to, &error)));
    if done.is_err() {
        // What was begun is of no use to anyone; a failure to remove it hides no worse one.
        let _ = fs::remove_file(&partial);
        return done;
    }
    // The new name, too, must outlive a power cut. Not every system lets a folder be synced.
    let folder = to.parent().filter(|folder| !folder.as_os_str().is_empty());
    if let Ok(folder) = fs::File::open(folder.unwrap_or(Path::new("."))) {
        let _ = folder.sync_all();
    }
    Ok(())
}

fn write_copy(from: &Connection, from_path: &Path, partial: &Path) -> Result<(), StoreError> {
    if partial.exists() {
        fs::remove_file(partial).map_err(|error| unwritable(partial, &error))?;
    }
    let mut copy = Connection::open(partial).map_err(|e| StoreError::from(e).at(partial))?;
    // Inside one reading transaction the source stands still, and the copy need never start over.
    let source = rusqlite::Transaction::new_unchecked(from, TransactionBehavior::Deferred)
        .map_err(|e| StoreError::from(e).at(from_path))?;
    migrate::accept(&source, from_path).map_err(|error| error.at(from_path))?;
    Backup::new(&source, &mut copy)
        .and_then(|backup| backup.run_to_completion(1000, Duration::ZERO, None))
        .map_err(|e| StoreError::from(e).at(partial))?;
    // One file that can be carried about and read from anywhere, without a log beside it.
    copy.pragma_update(None, "journal_mode", "DELETE")
        .map_err(|e| StoreError::from(e).at(partial))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, queue};

    #[test]
    fn a_copy_taken_while_serving_is_one_moment_of_the_store() {
        let f = Fixture::new();
        let group = f.group;
        let to = f.folder.path().join("copy.db");
        let store = f.store.clone();
        let writing = std::thread::spawn(move || {
            for n in 0..300 {
                store
                    .write_blocking(move |tx| {
                        let member = tx.upsert_member(group, &n.to_string(), "x", at(0))?;
                        tx.insert_talk(group, member, &"hello ".repeat(300), at(0))
                    })
                    .unwrap();
            }
        });
        let mut sizes = Vec::new();
        while !writing.is_finished() {
            f.store.backup(&to, Overwrite::Yes).unwrap();
            verify(&open_to_read(&to).unwrap(), &to).unwrap();
            let copy = Store::open(&to).unwrap();
            let (members, talk) = copy
                .read_blocking(move |db| {
                    Ok((
                        db.members(group)?.len(),
                        db.talk_after(group, 0, 999)?.len(),
                    ))
                })
                .unwrap();
            assert_eq!(members, talk);
            sizes.push(members);
        }
        writing.join().unwrap();
        assert!(sizes.is_sorted() && !sizes.is_empty());
        assert!(!with_suffix(&to, ".partial").exists());
    }

    #[test]
    fn the_log_is_folded_into_a_store_that_stays_open() {
        let f = Fixture::new();
        let group = f.group;
        f.write(move |tx| {
            let member = tx.upsert_member(group, "1", "x", at(0))?;
            tx.insert_talk(group, member, "words of a member", at(0))
        });
        let holds = |path: &Path| {
            let bytes = fs::read(path).unwrap();
            bytes.windows(17).any(|part| part == b"words of a member")
        };
        let log = with_suffix(f.store.path(), "-wal");
        assert!(holds(&log) && !holds(f.store.path()));
        tokio::runtime::Builder::new_current_thread()
            .build()
            .unwrap()
            .block_on(f.store.fold_log())
            .unwrap();
        assert!(holds(f.store.path()));
        assert_eq!(fs::metadata(&log).unwrap().len(), 0);
    }

    #[test]
    fn what_was_copied_comes_back() {
        let f = Fixture::new();
        let group = f.group;
        f.write(move |tx| queue(tx, group, 4));
        let copy = f.folder.path().join("copy.db");
        f.store.backup(&copy, Overwrite::No).unwrap();
        f.write(move |tx| {
            let items = tx.queue(group)?;
            tx.dequeue(items[0].id)
        });
        let path = f.store.path().to_path_buf();

        let refused = restore(&copy, &path, Overwrite::No);
        assert!(
            matches!(refused, Err(StoreError::Exists { .. })),
            "{refused:?}"
        );
        let in_use = restore(&copy, &path, Overwrite::Yes);
        assert!(matches!(in_use, Err(StoreError::Busy { .. })), "{in_use:?}");
        assert_eq!(f.read(move |db| db.queue(group)).len(), 3, "still serving");

        drop(f.store);
        restore(&copy, &path, Overwrite::Yes).unwrap();
        let back = Store::open(&path).unwrap();
        assert_eq!(
            back.read_blocking(move |db| db.queue(group)).unwrap().len(),
            4
        );
    }

    /// The log a killed process left must not be replayed into the file that takes the old one's place.
    #[test]
    fn the_log_of_the_old_store_does_not_reach_the_new_one() {
        let f = Fixture::new();
        let copy = f.folder.path().join("copy.db");
        f.store.backup(&copy, Overwrite::No).unwrap();
        f.write(|tx| tx.jot("late", "news"));
        let killed = f.folder.path().join("killed.db");
        fs::copy(f.store.path(), &killed).unwrap();
        fs::copy(
            with_suffix(f.store.path(), "-wal"),
            with_suffix(&killed, "-wal"),
        )
        .unwrap();
        restore(&copy, &killed, Overwrite::Yes).unwrap();
        let back = Store::open(&killed).unwrap();
        assert_eq!(back.read_blocking(|db| db.jotted("late")).unwrap(), None);
    }

    #[test]
    fn a_damaged_store_can_be_replaced_by_its_backup() {
        let f = Fixture::new();
        let copy = f.folder.path().join("copy.db");
        f.store.backup(&copy, Overwrite::No).unwrap();
        let broken = f.folder.path().join("broken.db");
        fs::write(&broken, "no database at all, alas").unwrap();
        restore(&copy, &broken, Overwrite::Yes).unwrap();
        assert!(Store::open(&broken).is_ok());
    }

    #[test]
    fn a_bad_backup_is_refused_before_anything_is_touched() {
        let f = Fixture::new();
        let folder = f.folder.path();
        let good = folder.join("good.db");
        f.store.backup(&good, Overwrite::No).unwrap();
        let to = folder.join("to.db");
        fs::write(&to, "what was there").unwrap();

        let empty = folder.join("empty.db");
        fs::write(&empty, "").unwrap();
        let text = folder.join("text.db");
        fs::write(&text, "words ".repeat(2000)).unwrap();
        let cut = folder.join("cut.db");
        let bytes = fs::read(&good).unwrap();
        fs::write(&cut, &bytes[..bytes.len() / 2]).unwrap();
        let newer = folder.join("newer.db");
        fs::write(&newer, &bytes).unwrap();
        Connection::open(&newer)
            .unwrap()
            .pragma_update(None, "user_version", 99)
            .unwrap();

        for bad in [&empty, &text, &cut] {
            let error = restore(bad, &to, Overwrite::Yes).unwrap_err();
            assert!(
                matches!(error, StoreError::NotAStore { .. }),
                "{bad:?}: {error:?}"
            );
        }
        let error = restore(&newer, &to, Overwrite::Yes).unwrap_err();
        assert!(
            matches!(error, StoreError::Newer { found: 99, .. }),
            "{error:?}"
        );
        let error = restore(&folder.join("missing.db"), &to, Overwrite::Yes).unwrap_err();
        assert!(matches!(error, StoreError::CannotOpen { .. }), "{error:?}");
        assert_eq!(fs::read(&to).unwrap(), b"what was there");
    }

    #[test]
    fn the_store_is_never_its_own_backup() {
        let f = Fixture::new();
        for refused in [
            f.store.backup(f.store.path(), Overwrite::Yes),
            f.store.backup(f.store.path(), Overwrite::No),
        ] {
            assert!(
                matches!(refused, Err(StoreError::Exists { .. })),
                "{refused:?}"
            );
        }
        let elsewhere = f
            .store
            .backup(Path::new("/no/such/folder/copy.db"), Overwrite::No);
        assert!(
            matches!(elsewhere, Err(StoreError::CannotOpen { .. })),
            "{elsewhere:?}"
        );
    }
}
