use std::sync::atomic::{AtomicUsize, Ordering};

use super::*;
use crate::GroupId;
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
        f.write(move |tx| tx.insert_reply(&new_reply(post, ana, Some(&format!("m{n}")), "Rd7")));
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
            tx.jot("count", &n.to_string())?;
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
            .read_blocking(move |db| Ok((db.jotted("count")?, db.members(group)?.len())))
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
        tx.jot("half", "done")?;
        Err::<(), _>(StoreError::CalledOff("no".into()))
    });
    assert!(matches!(off, Err(StoreError::CalledOff(_))));
    let panicked = f.store.write_blocking(|tx| {
        tx.jot("half", "done")?;
        assert!(
            tx.group(GroupId::of(0))?.is_some(),
            "a slip in a caller's closure"
        );
        Ok(())
    });
    assert!(matches!(panicked, Err(StoreError::Stopped)));
    assert_eq!(f.read(|db| db.jotted("half")), None);
    f.write(|tx| tx.jot("whole", "done"));
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
        let before = db.jotted("x")?;
        store.write_blocking(|tx| tx.jot("x", "1"))?;
        Ok((before, db.jotted("x")?))
    });
    assert_eq!((before, after), (None, None));
    assert_eq!(f.read(|db| db.jotted("x")).as_deref(), Some("1"));
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
    let second = f.store.write(|tx| tx.jot("x", "1"));
    tokio::select! {
        biased;
        _ = async { tokio::join!(first, second) } => panic!("the writer is held"),
        () = tokio::task::yield_now() => {}
    }
    hold.send(()).unwrap();
    f.store.write(|_| Ok(())).await.unwrap();
    assert_eq!(
        f.store.read(|db| db.jotted("x")).await.unwrap().as_deref(),
        Some("1")
    );
}

#[tokio::test]
async fn a_change_is_noticed_in_this_process_and_from_another() {
    let f = Fixture::new();
    let mut changes = f.store.changes();
    changes.mark_unchanged();
    f.store.write(|tx| tx.jotted("x")).await.unwrap();
    assert!(!changes.has_changed().unwrap(), "nothing was written");
    let _ = f
        .store
        .write(|tx| {
            tx.jot("x", "1")?;
            Err::<(), _>(StoreError::CalledOff("no".into()))
        })
        .await;
    f.store.write(|tx| tx.jot("x", "1")).await.unwrap();
    changes.changed().await.unwrap();

    let version = f.store.data_version().await.unwrap();
    f.store.write(|tx| tx.jot("x", "2")).await.unwrap();
    assert_eq!(
        f.store.data_version().await.unwrap(),
        version,
        "our own write"
    );
    // A second handle stands for another process: it shares nothing but the file.
    let other = Store::open(f.store.path()).unwrap();
    other.write(|tx| tx.jot("x", "3")).await.unwrap();
    assert_ne!(f.store.data_version().await.unwrap(), version);
    assert_eq!(
        f.store.read(|db| db.jotted("x")).await.unwrap().as_deref(),
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
        .write_blocking(|tx| tx.jot("long", &"x".repeat(100_000)));
    assert!(matches!(full, Err(StoreError::Full { .. })), "{full:?}");
    assert_eq!(f.read(move |db| db.members(group)).len(), 1);
}
