//! The handle: one writer thread, a few reader threads, and calls that never block an async thread.
//!
//! The writer owns the only connection of this process that writes; what it is handed runs in order, each
//! in one short `BEGIN IMMEDIATE` transaction. Readers see the last committed state (WAL) and wait for
//! nobody. A call whose future is dropped is carried out all the same.

use std::{
    path::{Path, PathBuf},
    sync::{
        Arc, Mutex,
        mpsc::{Receiver, Sender, channel},
    },
    thread::{Builder, JoinHandle},
    time::Duration,
};

use rusqlite::{Connection, OpenFlags, TransactionBehavior};
use tokio::sync::{oneshot, watch};

use crate::{Db, StoreError, Tx, migrate};

/// How long a statement waits for another process before [`StoreError::Busy`].
const BUSY: Duration = Duration::from_secs(10);

/// Reader threads; reads are short, and the machine of a club is small.
const READERS: usize = 3;

type Job = Box<dyn FnOnce(&mut Connection) + Send>;

/// The store. Cheap to clone; all clones are one store, closed when the last one goes.
#[derive(Clone, Debug)]
pub struct Store {
    inner: Arc<Inner>,
}

struct Inner {
    path: PathBuf,
    writer: Option<Sender<Job>>,
    readers: Option<Sender<Job>>,
    threads: Vec<JoinHandle<()>>,
    changes: watch::Sender<u64>,
}

impl std::fmt::Debug for Inner {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Store").field("path", &self.path).finish()
    }
}

impl Drop for Inner {
    fn drop(&mut self) {
        self.writer = None;
        self.readers = None;
        let here = std::thread::current().id();
        for thread in self.threads.drain(..) {
            // The last handle may go inside a job; a thread cannot wait for itself.
            if thread.thread().id() != here {
                let _ = thread.join();
            }
        }
    }
}

impl Store {
    /// Opens the store at `path`, makes it when there is no file, and brings an older one up to date.
    ///
    /// # Errors
    /// [`StoreError::Newer`], [`StoreError::NotAStore`], [`StoreError::ReadOnly`],
    /// [`StoreError::CannotOpen`]: each names the path and the remedy.
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        let writer = open_writer(path, WRITER).map_err(|error| error.at(path))?;
        let mut threads = Vec::with_capacity(READERS + 1);
        let changes = watch::Sender::new(0);

        let (to_writer, jobs) = channel::<Job>();
        threads.push(spawn("store-writer", writer, move |sql| {
            while let Ok(job) = jobs.recv() {
                job(sql);
            }
        })?);

        let (to_readers, jobs) = channel::<Job>();
        let jobs = Arc::new(Mutex::new(jobs));
        for n in 0..READERS {
            let reader = open_reader(path).map_err(|error| error.at(path))?;
            let jobs = Arc::clone(&jobs);
            threads.push(spawn(&format!("store-reader-{n}"), reader, move |sql| {
                while let Some(job) = take(&jobs) {
                    job(sql);
                }
            })?);
        }
        Ok(Self {
            inner: Arc::new(Inner {
                path: path.to_path_buf(),
                writer: Some(to_writer),
                readers: Some(to_readers),
                threads,
                changes,
            }),
        })
    }

    /// The file.
    pub fn path(&self) -> &Path {
        &self.inner.path
    }

    /// A counter that grows with every write this process has committed; wait on it to notice changes.
    /// Another process's writes show in [`Store::data_version`] only.
    pub fn changes(&self) -> watch::Receiver<u64> {
        self.inner.changes.subscribe()
    }

    /// A number that changes when another process has written to the store.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn data_version(&self) -> Result<i64, StoreError> {
        // Asked of the writer's connection, for which every writer of this process is itself.
        let (answer, result) = oneshot::channel();
        self.send_write(Box::new(move |sql| {
            let _ = answer.send(Db { sql }.data_version());
        }))?;
        result.await.unwrap_or(Err(StoreError::Stopped))
    }

    /// Runs `f` on a consistent view of the store, on a reader thread.
    ///
    /// # Errors
    /// What `f` errs with.
    pub async fn read<T, F>(&self, f: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: FnOnce(&Db<'_>) -> Result<T, StoreError> + Send + 'static,
    {
        let (answer, result) = oneshot::channel();
        self.send_read(self.reading(f, |value| {
            let _ = answer.send(value);
        }))?;
        result.await.unwrap_or(Err(StoreError::Stopped))
    }

    /// [`Store::read`] for callers outside async code.
    ///
    /// # Errors
    /// What `f` errs with.
    pub fn read_blocking<T, F>(&self, f: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: FnOnce(&Db<'_>) -> Result<T, StoreError> + Send + 'static,
    {
        let (answer, result) = channel();
        self.send_read(self.reading(f, move |value| {
            let _ = answer.send(value);
        }))?;
        result.recv().unwrap_or(Err(StoreError::Stopped))
    }

    /// Runs `f` in one transaction on the writer thread. When it returns, the result is on disk; when `f`
    /// errs, nothing is written. Keep `f` short: writes queue behind it.
    ///
    /// # Errors
    /// What `f` errs with, and what keeps the transaction from the disk.
    pub async fn write<T, F>(&self, f: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: FnOnce(&Tx<'_>) -> Result<T, StoreError> + Send + 'static,
    {
        let (answer, result) = oneshot::channel();
        self.send_write(self.writing(f, |value| {
            let _ = answer.send(value);
        }))?;
        result.await.unwrap_or(Err(StoreError::Stopped))
    }

    /// [`Store::write`] for callers outside async code.
    ///
    /// # Errors
    /// What `f` errs with, and what keeps the transaction from the disk.
    pub fn write_blocking<T, F>(&self, f: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: FnOnce(&Tx<'_>) -> Result<T, StoreError> + Send + 'static,
    {
        let (answer, result) = channel();
        self.send_write(self.writing(f, move |value| {
            let _ = answer.send(value);
        }))?;
        result.recv().unwrap_or(Err(StoreError::Stopped))
    }

    fn reading<T, F>(
        &self,
        f: F,
        answer: impl FnOnce(Result<T, StoreError>) + Send + 'static,
    ) -> Job
    where
        F: FnOnce(&Db<'_>) -> Result<T, StoreError> + Send + 'static,
    {
        let path = self.inner.path.clone();
        Box::new(move |sql| {
            let result = guarded(|| {
                // One transaction, so that several reads see one state.
                let tx = sql.transaction_with_behavior(TransactionBehavior::Deferred)?;
                f(&Db { sql: &tx })
            });
            answer(result.map_err(|error| error.at(&path)));
        })
    }

    fn writing<T, F>(
        &self,
        f: F,
        answer: impl FnOnce(Result<T, StoreError>) + Send + 'static,
    ) -> Job
    where
        F: FnOnce(&Tx<'_>) -> Result<T, StoreError> + Send + 'static,
    {
        let path = self.inner.path.clone();
        let changes = self.inner.changes.clone();
        Box::new(move |sql| {
            let before = sql.total_changes();
            let result = guarded(|| {
                let tx = sql.transaction_with_behavior(TransactionBehavior::Immediate)?;
                let value = f(&Tx::new(&tx))?;
                tx.commit()?;
                Ok(value)
            });
            // A transaction that touched nothing need wake nobody.
            if result.is_ok() && sql.total_changes() != before {
                changes.send_modify(|n| *n += 1);
            }
            answer(result.map_err(|error| error.at(&path)));
        })
    }

    fn send_read(&self, job: Job) -> Result<(), StoreError> {
        send(self.inner.readers.as_ref(), job)
    }

    pub(crate) fn send_write(&self, job: Job) -> Result<(), StoreError> {
        send(self.inner.writer.as_ref(), job)
    }
}

fn send(to: Option<&Sender<Job>>, job: Job) -> Result<(), StoreError> {
    to.ok_or(StoreError::Stopped)?
        .send(job)
        .map_err(|_| StoreError::Stopped)
}

/// Runs a closure handed in by a caller; its panic must not take the thread along. The transaction inside
/// is undone while the panic unwinds.
fn guarded<T>(f: impl FnOnce() -> Result<T, StoreError>) -> Result<T, StoreError> {
    std::panic::catch_unwind(std::panic::AssertUnwindSafe(f)).unwrap_or(Err(StoreError::Stopped))
}

fn spawn(
    name: &str,
    mut sql: Connection,
    run: impl FnOnce(&mut Connection) + Send + 'static,
) -> Result<JoinHandle<()>, StoreError> {
    Builder::new()
        .name(name.to_owned())
        .spawn(move || run(&mut sql))
        .map_err(|_| StoreError::Stopped)
}

fn take(jobs: &Mutex<Receiver<Job>>) -> Option<Job> {
    jobs.lock().ok()?.recv().ok()
}

const WRITER: OpenFlags = OpenFlags::SQLITE_OPEN_READ_WRITE
    .union(OpenFlags::SQLITE_OPEN_CREATE)
    .union(OpenFlags::SQLITE_OPEN_NO_MUTEX);

fn open_writer(path: &Path, flags: OpenFlags) -> Result<Connection, StoreError> {
    let mut sql = Connection::open_with_flags(path, flags)?;
    sql.busy_timeout(BUSY)?;
    // Before anything is changed: a file that is not ours stays as it is.
    migrate::accept(&sql, path)?;
    if sql.is_readonly("main")? {
        return Err(StoreError::ReadOnly {
            path: path.to_path_buf(),
            why: "the file is read-only".into(),
        });
    }
    sql.pragma_update(None, "journal_mode", "WAL")?;
    // FULL: a verdict is shown only after the reply is on the disk, whatever fails next.
    sql.pragma_update(None, "synchronous", "FULL")?;
    sql.pragma_update(None, "foreign_keys", true)?;
    // Sorting and rewriting leave no files with people's words in the temporary folder.
    sql.pragma_update(None, "temp_store", "MEMORY")?;
    // What is erased is overwritten, not merely unlinked.
    sql.pragma_update(None, "secure_delete", true)?;
    migrate::up_to_date(&mut sql, path)?;
    sql.set_prepared_statement_cache_capacity(128);
    Ok(sql)
}

fn open_reader(path: &Path) -> Result<Connection, StoreError> {
    // Not SQLITE_OPEN_READ_ONLY: a reader of a WAL may have to make the shared-memory file.
    let sql = Connection::open_with_flags(
        path,
        OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX,
    )?;
    sql.busy_timeout(BUSY)?;
    sql.pragma_update(None, "query_only", true)?;
    sql.set_prepared_statement_cache_capacity(64);
    Ok(sql)
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicUsize, Ordering};

    use super::*;
    use crate::fixture::{Fixture, at, new_reply, open_post, queue};

    #[test]
    fn what_was_written_is_there_after_closing() {
        let f = Fixture::new();
        let group = f.group;
        f.write(move |tx| queue(tx, group, 3));
        let path = f.store.path().to_path_buf();
        drop(f.store);
        assert!(
            !path.with_extension("db-wal").exists(),
            "the log is emptied at an orderly close"
        );
        let again = Store::open(&path).unwrap();
        assert_eq!(
            again
                .read_blocking(move |db| db.queue(group))
                .unwrap()
                .len(),
            3
        );
    }

    /// A killed process leaves the file and its log as they are at that moment. The same is had by copying
    /// both while the store is open.
    #[test]
    fn a_crash_loses_nothing_that_was_confirmed() {
        let f = Fixture::new();
        let group = f.group;
        let (post, ana) = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 0)?;
            Ok((post, tx.upsert_member(group, "u1", "Ana", at(0))?))
        });
        for n in 0..20 {
            f.write(move |tx| {
                tx.insert_reply(&new_reply(post, ana, Some(&format!("m{n}")), "Rd7"))
            });
        }
        let crashed = f.folder.path().join("crashed.db");
        std::fs::copy(f.store.path(), &crashed).unwrap();
        std::fs::copy(
            f.store.path().with_extension("db-wal"),
            crashed.with_extension("db-wal"),
        )
        .unwrap();
        let again = Store::open(&crashed).unwrap();
        assert_eq!(
            again
                .read_blocking(move |db| db.replies_to(post))
                .unwrap()
                .len(),
            20
        );
        // The chat replays what it is not sure of; nothing counts twice.
        let replay = again
            .write_blocking(move |tx| tx.insert_reply(&new_reply(post, ana, Some("m7"), "Rd7")))
            .unwrap();
        assert!(!replay.new);
        assert_eq!(
            again
                .read_blocking(|db| db.unjudged_replies())
                .unwrap()
                .len(),
            20
        );
    }

    /// Cut anywhere in its log, the store opens with a prefix of what was written, never with half a
    /// transaction.
    #[test]
    fn a_log_cut_short_anywhere_leaves_whole_transactions() {
        let f = Fixture::new();
        let group = f.group;
        for n in 0..6 {
            // Two rows in one transaction.
            f.write(move |tx| {
                tx.set_setting("count", &n.to_string())?;
                tx.upsert_member(group, &n.to_string(), "x", at(0))
            });
        }
        let file = std::fs::read(f.store.path()).unwrap();
        let log = std::fs::read(f.store.path().with_extension("db-wal")).unwrap();
        let cut = f.folder.path().join("cut.db");
        let mut seen = std::collections::BTreeSet::new();
        for length in (0..=log.len()).step_by(log.len() / 60) {
            std::fs::write(&cut, &file).unwrap();
            std::fs::write(cut.with_extension("db-wal"), &log[..length]).unwrap();
            let store = Store::open(&cut).unwrap();
            let (count, members) = store
                .read_blocking(move |db| Ok((db.setting("count")?, db.members(group)?.len())))
                .unwrap();
            assert_eq!(
                count.map_or(0, |n| n.parse::<usize>().unwrap() + 1),
                members
            );
            seen.insert(members);
            drop(store);
            for beside in ["db", "db-wal", "db-shm"] {
                let _ = std::fs::remove_file(cut.with_extension(beside));
            }
        }
        assert!(
            seen.len() > 3,
            "the cuts fell into different transactions: {seen:?}"
        );
    }

    #[test]
    fn an_error_or_a_panic_undoes_the_whole_transaction() {
        let f = Fixture::new();
        let off = f.store.write_blocking(|tx| {
            tx.set_setting("half", "done")?;
            Err::<(), _>(StoreError::CalledOff("no".into()))
        });
        assert!(matches!(off, Err(StoreError::CalledOff(_))));
        let panicked = f.store.write_blocking(|tx| {
            tx.set_setting("half", "done")?;
            assert!(tx.group(0)?.is_some(), "a slip in a caller's closure");
            Ok(())
        });
        assert!(matches!(panicked, Err(StoreError::Stopped)));
        assert_eq!(f.read(|db| db.setting("half")), None);
        f.write(|tx| tx.set_setting("whole", "done"));
    }

    #[test]
    fn a_reader_cannot_write() {
        let f = Fixture::new();
        let written = f
            .store
            .read_blocking(|db| Ok(db.sql.execute("DELETE FROM groups", [])?));
        assert!(written.is_err());
    }

    #[test]
    fn several_reads_in_one_closure_see_one_state() {
        let f = Fixture::new();
        let store = f.store.clone();
        let (before, after) = f.read(move |db| {
            let before = db.setting("x")?;
            store.write_blocking(|tx| tx.set_setting("x", "1"))?;
            Ok((before, db.setting("x")?))
        });
        assert_eq!((before, after), (None, None));
        assert_eq!(f.read(|db| db.setting("x")).as_deref(), Some("1"));
    }

    #[tokio::test]
    async fn readers_and_a_writer_run_side_by_side() {
        let f = Fixture::new();
        let group = f.group;
        let seen = Arc::new(AtomicUsize::new(0));
        let readers: Vec<_> = (0..8)
            .map(|_| {
                let (store, seen) = (f.store.clone(), Arc::clone(&seen));
                tokio::spawn(async move {
                    let mut last = 0;
                    while last < 200 {
                        let (members, talk) = store
                            .read(move |db| {
                                Ok((
                                    db.members(group)?.len(),
                                    db.talk_after(group, 0, 999)?.len(),
                                ))
                            })
                            .await
                            .unwrap();
                        // Member and line are written together, and never seen apart.
                        assert_eq!(members, talk);
                        assert!(members >= last);
                        last = members;
                        seen.fetch_add(1, Ordering::Relaxed);
                    }
                })
            })
            .collect();
        for n in 0..200 {
            f.store
                .write(move |tx| {
                    let member = tx.upsert_member(group, &n.to_string(), "x", at(0))?;
                    tx.insert_talk(group, member, "hello", at(0))
                })
                .await
                .unwrap();
        }
        for reader in readers {
            reader.await.unwrap();
        }
        assert!(seen.load(Ordering::Relaxed) >= 8);
    }

    #[tokio::test]
    async fn a_call_that_is_given_up_is_carried_out_all_the_same() {
        let f = Fixture::new();
        let (hold, held) = channel::<()>();
        let first = f.store.write(move |_| {
            let _ = held.recv();
            Ok(())
        });
        let second = f.store.write(|tx| tx.set_setting("x", "1"));
        tokio::select! {
            biased;
            _ = async { tokio::join!(first, second) } => panic!("the writer is held"),
            () = tokio::task::yield_now() => {}
        }
        hold.send(()).unwrap();
        f.store.write(|_| Ok(())).await.unwrap();
        assert_eq!(
            f.store.read(|db| db.setting("x")).await.unwrap().as_deref(),
            Some("1")
        );
    }

    #[tokio::test]
    async fn a_change_is_noticed_in_this_process_and_from_another() {
        let f = Fixture::new();
        let mut changes = f.store.changes();
        changes.mark_unchanged();
        f.store.write(|tx| tx.setting("x")).await.unwrap();
        assert!(!changes.has_changed().unwrap(), "nothing was written");
        let _ = f
            .store
            .write(|tx| {
                tx.set_setting("x", "1")?;
                Err::<(), _>(StoreError::CalledOff("no".into()))
            })
            .await;
        f.store.write(|tx| tx.set_setting("x", "1")).await.unwrap();
        changes.changed().await.unwrap();

        let version = f.store.data_version().await.unwrap();
        f.store.write(|tx| tx.set_setting("x", "2")).await.unwrap();
        assert_eq!(
            f.store.data_version().await.unwrap(),
            version,
            "our own write"
        );
        // A second handle stands for another process: it shares nothing but the file.
        let other = Store::open(f.store.path()).unwrap();
        other.write(|tx| tx.set_setting("x", "3")).await.unwrap();
        assert_ne!(f.store.data_version().await.unwrap(), version);
        assert_eq!(
            f.store.read(|db| db.setting("x")).await.unwrap().as_deref(),
            Some("3")
        );
    }

    #[test]
    fn the_last_handle_may_go_inside_a_job() {
        let f = Fixture::new();
        let (done, is_done) = channel();
        let inside = f.store.clone();
        let Fixture { folder, store, .. } = f;
        let _ = store.send_write(Box::new(move |_| {
            // Wait until the job holds the last handle.
            while Arc::strong_count(&inside.inner) > 1 {
                std::thread::yield_now();
            }
            drop(inside);
            let _ = done.send(());
        }));
        drop(store);
        is_done.recv().unwrap();
        drop(folder);
    }

    fn error_of(path: &Path) -> StoreError {
        Store::open(path).unwrap_err()
    }

    #[test]
    fn a_file_that_is_no_store_is_left_as_it_is() {
        let folder = tempfile::tempdir().unwrap();
        let text = folder.path().join("lesson.pgn");
        let words = "[Event \"Lesson\"]\n\n1. e4 e5 *\n".repeat(100);
        std::fs::write(&text, &words).unwrap();
        let zeros = folder.path().join("zeros.db");
        std::fs::write(&zeros, vec![0; 8192]).unwrap();
        let foreign = folder.path().join("foreign.db");
        Connection::open(&foreign)
            .unwrap()
            .execute_batch("CREATE TABLE addresses (x)")
            .unwrap();
        for path in [&text, &zeros, &foreign] {
            let before = std::fs::read(path).unwrap();
            let error = error_of(path);
            assert!(
                matches!(error, StoreError::NotAStore { .. }),
                "{path:?}: {error:?}"
            );
            let text = error.to_string();
            assert!(text.contains(&path.display().to_string()) && text.contains("give the path"));
            assert_eq!(std::fs::read(path).unwrap(), before);
        }
    }

    #[test]
    fn a_store_that_is_damaged_is_not_taken_for_a_whole_one() {
        let f = Fixture::new();
        let path = f.store.path().to_path_buf();
        drop(f.store);
        let mut bytes = std::fs::read(&path).unwrap();
        for byte in &mut bytes[100..4096] {
            *byte = 0xA5;
        }
        std::fs::write(&path, bytes).unwrap();
        assert!(matches!(error_of(&path), StoreError::NotAStore { .. }));
    }

    #[test]
    fn places_where_no_store_can_be_are_named() {
        let folder = tempfile::tempdir().unwrap();
        for path in [
            folder.path().to_path_buf(),
            folder.path().join("no/such/folder/group.db"),
        ] {
            let error = error_of(&path);
            assert!(matches!(error, StoreError::CannotOpen { .. }), "{error:?}");
            assert!(error.to_string().contains(&path.display().to_string()));
        }
    }

    /// Permissions do not bind an administrator, so the connection itself is made read-only here, as it
    /// becomes when the file or the disk is.
    #[test]
    fn a_store_that_cannot_be_written_is_refused_with_the_remedy() {
        let f = Fixture::new();
        let path = f.store.path().to_path_buf();
        drop(f.store);
        let error = open_writer(
            &path,
            OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX,
        )
        .unwrap_err()
        .at(&path);
        assert!(matches!(error, StoreError::ReadOnly { .. }), "{error:?}");
        let text = error.to_string();
        assert!(
            text.contains("group.db") && text.contains("writable"),
            "{text}"
        );
    }

    #[test]
    fn a_full_disk_is_said_and_nothing_kept_is_lost() {
        let f = Fixture::new();
        let group = f.group;
        f.write(move |tx| tx.upsert_member(group, "u1", "Ana", at(0)));
        f.store
            .send_write(Box::new(|sql| {
                let pages: i64 = sql
                    .query_row("PRAGMA page_count", [], |row| row.get(0))
                    .unwrap();
                // The answer is the new limit, hence a query.
                let _: i64 = sql
                    .query_row(
                        &format!("PRAGMA max_page_count = {}", pages + 1),
                        [],
                        |row| row.get(0),
                    )
                    .unwrap();
            }))
            .unwrap();
        let full = f
            .store
            .write_blocking(|tx| tx.set_setting("long", &"x".repeat(100_000)));
        assert!(matches!(full, Err(StoreError::Full { .. })), "{full:?}");
        assert_eq!(f.read(move |db| db.members(group)).len(), 1);
    }
}
