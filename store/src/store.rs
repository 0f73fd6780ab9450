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
mod tests;
