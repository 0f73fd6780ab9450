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
    include_str!("step_6.sql"),
    include_str!("step_7.sql"),
    include_str!("step_8.sql"),
    include_str!("step_9.sql"),
    include_str!("step_10.sql"),
    include_str!("step_11.sql"),
    include_str!("step_12.sql"),
    include_str!("step_13.sql"),
    include_str!("step_14.sql"),
    include_str!("step_15.sql"),
    include_str!("step_16.sql"),
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
///
/// Foreign keys are off meanwhile, since a step may make a table anew that others point at, and dropping the
/// old one would take their rows along. They cannot be switched within a transaction; each step is
/// committed only when every key points at a row.
fn take(sql: &mut Connection, path: &Path, steps: &[&str]) -> Result<(), StoreError> {
    let kept: bool = sql.pragma_query_value(None, "foreign_keys", |row| row.get(0))?;
    sql.pragma_update(None, "foreign_keys", false)?;
    let taken = take_each(sql, path, steps);
    sql.pragma_update(None, "foreign_keys", kept)?;
    taken
}

fn take_each(sql: &mut Connection, path: &Path, steps: &[&str]) -> Result<(), StoreError> {
    loop {
        let tx = sql.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)?;
        // Read under the lock: another process may have taken the step meanwhile.
        let version = known(&tx, path, steps.len())?;
        let Some(step) = usize::try_from(version).ok().and_then(|n| steps.get(n)) else {
            return Ok(());
        };
        tx.execute_batch(step)?;
        let broken = dangling(&tx)?;
        if !broken.is_empty() {
            return Err(StoreError::CannotOpen {
                path: path.to_path_buf(),
                why: format!(
                    "it is of version {version}, and rows of {} point at nothing; put an earlier backup in its place",
                    broken.join(", ")
                ),
            });
        }
        tx.pragma_update(None, "application_id", APPLICATION_ID)?;
        tx.pragma_update(None, "user_version", version + 1)?;
        tx.commit()?;
    }
}

/// The tables with rows that point at a row which is not there.
fn dangling(sql: &Connection) -> Result<Vec<String>, StoreError> {
    let mut check = sql.prepare("SELECT DISTINCT \"table\" FROM pragma_foreign_key_check")?;
    let tables = check.query_map([], |row| row.get(0))?;
    Ok(tables.collect::<rusqlite::Result<_>>()?)
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

    /// A store of version 2 with two groups: one by the tournaments' rule, one with prices of its own; what
    /// they cost is kept, chatter is no part, and a hint alone is one.
    #[test]
    fn groups_of_version_2_keep_their_prices() {
        let (_folder, path, mut sql) = on_file("two.db");
        take(&mut sql, &path, &STEPS[..2]).unwrap();
        sql.execute_batch(
            "INSERT INTO groups (id, chat, place, name, zone, post_time, days, open_minutes, mode, language,
                                 style, wrong_cost, hint_cost, created_at)
             VALUES (1, 'room', 'a', 'A', 'UTC', '18:00', 127, 60, 'sealed', 'english', 'print', 5, 1, 't'),
                    (2, 'room', 'b', 'B', 'UTC', '18:00', 127, 60, 'sealed', 'english', 'print', 1.5, 0.5, 't');
             INSERT INTO positions (id, group_id, source, fen, stipulation, soundness, report, checker_version,
                                    checked_at, created_at)
             SELECT id, id, 's', 'f', '#2', 'sound', '{}', 1, 't', 't' FROM groups;
             INSERT INTO posts (id, group_id, position_id, number, nonce, state, slot, intended_at, opened_at,
                                closes_at)
             SELECT id, id, id, 1, 'n' || id, 'open', '2026-03-02T12:00:00Z', '2026-03-02T12:00:00Z',
                    '2026-03-02T12:00:00Z', '2026-03-02T13:00:00Z' FROM groups;
             INSERT INTO members (id, group_id, chat_user, name, joined_at)
             VALUES (1, 1, 'chats', 'Chats', 't'), (2, 1, 'hints', 'Hints', 't'), (3, 1, 'tries', 'Tries', 't'),
                    (4, 1, 'gives', 'Gives', 't'), (5, 1, 'given', 'Given', 't');
             INSERT INTO replies (id, post_id, member_id, via, text, received_at)
             VALUES (1, 1, 1, 'answer', 'hello', '2026-03-02T12:01:00Z'),
                    (2, 1, 3, 'answer', 'Rd7', '2026-03-02T12:01:00Z'),
                    (3, 1, 4, 'answer', 'Rd7', '2026-03-02T12:01:00Z'),
                    (4, 1, 5, 'answer', 'Rxd8+', '2026-03-02T12:01:00Z');
             INSERT INTO verdicts (reply_id, verdict, points, moves, refutation, why, message, given_at)
             VALUES (1, 'unreadable', 0, '[]', '[]', '', '', 't'),
                    (2, 'wrong', 0, '[]', '[]', 'the rook takes it', 'Rd7 does not work.', 't'),
                    (3, 'wrong', 0, '[]', '[]', '', '', 't'), (4, 'solved', 3, '[]', '[]', '', '', 't');
             INSERT INTO attempts (post_id, member_id, state, line, points, wrong, first_try, started_at, ended_at)
             VALUES (1, 1, 'playing', '[]', 0, 0, 0, 't', NULL), (1, 3, 'playing', '[]', 0, 1, 0, 't', NULL),
                    (1, 4, 'given-up', '[]', 0, 1, 0, 't', '2026-03-02T12:02:00Z'),
                    (1, 5, 'solved', '[]', 3, 0, 1, 't', '2026-03-02T12:01:00Z');
             INSERT INTO hints (post_id, member_id, ply, step, given_at)
             VALUES (1, 2, 0, 1, '2026-03-02T12:03:00Z'), (1, 3, 0, 1, '2026-03-02T12:03:00Z');",
        )
        .unwrap();
        up_to_date(&mut sql, &path).unwrap();
        let texts = |query: &str| -> Vec<String> {
            sql.prepare(query)
                .unwrap()
                .query_map([], |row| row.get(0))
                .unwrap()
                .collect::<Result<_, _>>()
                .unwrap()
        };
        let groups =
            "SELECT scale || ' ' || wrong_cost || ' ' || hint_cost FROM groups ORDER BY id";
        assert_eq!(texts(groups), ["tournament 5.0 1.0", "club 1.5 0.5"]);
        let posts = "SELECT wrong_cost || ' ' || hint_cost || ' ' || least FROM posts ORDER BY id";
        assert_eq!(texts(posts), ["5.0 1.0 0.0", "1.5 0.5 0.0"]);
        let attempts =
            "SELECT m.name || ' ' || a.state || ' ' || a.points || ' ' || a.first_try || ' '
                               || coalesce(a.gave_up_after, '-')
                        FROM attempts a JOIN members m ON m.id = a.member_id ORDER BY m.id";
        assert_eq!(
            texts(attempts),
            [
                "Hints playing 0.0 0 -",
                "Tries playing 0.0 0 -",
                "Gives given-up 0.0 0 3",
                "Given solved 3.0 0 -"
            ]
        );
        let hints = "SELECT cast(after_reply AS TEXT) FROM hints ORDER BY member_id";
        assert_eq!(texts(hints), ["0", "2"]);
        // A verdict keeps the sentence of its time, and has no facts.
        let said = "SELECT why || '; ' || message || ' ' || coalesce(facts, '-') FROM verdicts WHERE reply_id = 2";
        assert_eq!(texts(said), ["the rook takes it; Rd7 does not work. -"]);
    }

    /// What points at a group, as a store of version 1 holds it: a group in each chat of that time, with rows in
    /// every table.
    const OF_VERSION_1: &str = "
        INSERT INTO groups (id, chat, place, server, name, zone, post_time, days, open_minutes, mode, language, style,
                            wrong_cost, hint_cost, paused, paused_until, slots_from, empty_told_at, created_at)
        VALUES (1, 'room', 'club', NULL, 'Club', 'UTC', '18:00', 127, 60, 'sealed', 'english', 'print', 1, 1,
                0, NULL, '2026-03-01T12:00:00Z', NULL, '2026-03-01T12:00:00Z'),
               (7, 'discord', '77', '70', 'Evening', 'Europe/Lisbon', '17:30', 31, 1380, 'open', 'german', 'dark',
                0.5, 2, 1, '2026-04-01T12:00:00Z', NULL, '2026-03-02T18:00:00Z', '2026-03-01T13:00:00Z');
        INSERT INTO members (id, group_id, chat_user, name, coach, joined_at)
        SELECT id * 10 + n, id, 'u' || n, 'Member ' || n, n = 0, 't' FROM groups, (SELECT 0 AS n UNION SELECT 1);
        INSERT INTO topics (id, group_id, name) SELECT id, id, 'Back rank' FROM groups;
        INSERT INTO positions (id, group_id, topic_id, source, fen, stipulation, soundness, report,
                               checker_version, checked_at, created_at)
        SELECT g.id * 10 + n, g.id, g.id, 's', 'f' || n, '#2', 'sound', '{}', 1, 't', 't'
        FROM groups g, (SELECT 0 AS n UNION SELECT 1);
        INSERT INTO queue (id, group_id, position_id, rank, added_at) SELECT id, id, id * 10 + 1, 1, 't' FROM groups;
        INSERT INTO posts (id, group_id, position_id, number, nonce, state, slot, intended_at, opened_at, closes_at)
        SELECT id, id, id * 10, 1, 'n' || id, 'open', '2026-03-02T12:00:00Z', '2026-03-02T12:00:00Z',
               '2026-03-02T12:00:00Z', '2026-03-02T13:00:00Z' FROM groups;
        INSERT INTO replies (id, post_id, member_id, via, text, received_at)
        SELECT id, id, id * 10 + 1, 'answer', 'Rd7', '2026-03-02T12:01:00Z' FROM groups;
        INSERT INTO verdicts (id, reply_id, verdict, points, moves, refutation, why, message, given_at)
        SELECT id, id, 'wrong', 0, '[]', '[]', '', '', 't' FROM groups;
        INSERT INTO attempts (post_id, member_id, state, line, points, wrong, started_at)
        SELECT id, id * 10 + 1, 'playing', '[]', 0, 1, 't' FROM groups;
        INSERT INTO hints (post_id, member_id, step, given_at)
        SELECT id, id * 10 + 1, 1, '2026-03-02T12:03:00Z' FROM groups;
        INSERT INTO talk (id, group_id, member_id, text, said_at) SELECT id, id, id * 10 + 1, 'Hello', 't' FROM groups;";

    /// From every older version, the groups and all that points at them are there afterwards, and the keys
    /// hold as before.
    #[test]
    fn the_groups_are_made_anew_and_nothing_is_lost() {
        let tables = [
            "groups",
            "members",
            "topics",
            "positions",
            "queue",
            "posts",
            "replies",
            "verdicts",
            "attempts",
            "hints",
            "talk",
        ];
        for older in 1..STEPS.len() {
            let (_folder, path, mut sql) = on_file("full.db");
            take(&mut sql, &path, &STEPS[..1]).unwrap();
            sql.execute_batch(OF_VERSION_1).unwrap();
            let count = |sql: &Connection| -> Vec<i64> {
                tables
                    .iter()
                    .map(|table| {
                        let query = format!("SELECT count(*) FROM {table}");
                        sql.query_row(&query, [], |row| row.get(0)).unwrap()
                    })
                    .collect()
            };
            let before = count(&sql);
            assert!(before.iter().all(|rows| *rows >= 2), "{before:?}");
            take(&mut sql, &path, &STEPS[..older]).unwrap();
            // As the writer's connection has it.
            sql.pragma_update(None, "foreign_keys", true).unwrap();
            up_to_date(&mut sql, &path).unwrap();
            assert_eq!(count(&sql), before, "from version {older}");
            assert_eq!(dangling(&sql).unwrap(), Vec::<String>::new());
            let columns = "id, chat, place, coalesce(server, '-'), name, zone, post_times, days, open_minutes, mode, \
                           language, style, scale, wrong_cost, hint_cost, defences, names, delivery, paused, \
                           coalesce(paused_until, '-'), coalesce(slots_from, '-'), coalesce(empty_told_at, '-'), \
                           created_at";
            let groups: Vec<String> = sql
                .prepare(&format!(
                    "SELECT concat_ws(' ', {columns}) FROM groups ORDER BY id"
                ))
                .unwrap()
                .query_map([], |row| row.get(0))
                .unwrap()
                .collect::<Result<_, _>>()
                .unwrap();
            assert_eq!(
                groups,
                [
                    "1 room club - Club UTC 18:00 127 60 sealed english print club 1.0 1.0 same by-member shown 0 \
                     - 2026-03-01T12:00:00Z - 2026-03-01T12:00:00Z",
                    "7 discord 77 70 Evening Europe/Lisbon 17:30 31 1380 open german dark club 0.5 2.0 same by-chat sent 1 \
                     2026-04-01T12:00:00Z - 2026-03-02T18:00:00Z 2026-03-01T13:00:00Z"
                ],
                "from version {older}"
            );
            // The queue and the posts refer to the problems that their positions are.
            let held: Vec<String> = sql
                .prepare(
                    "SELECT 'queue ' || q.id || ' ' || c.position_id || ' ' || c.kind
                     FROM queue q JOIN contents c ON c.id = q.content_id
                     UNION ALL SELECT 'post ' || o.id || ' ' || c.position_id || ' ' || c.kind
                     FROM posts o JOIN contents c ON c.id = o.content_id ORDER BY 1",
                )
                .unwrap()
                .query_map([], |row| row.get(0))
                .unwrap()
                .collect::<Result<_, _>>()
                .unwrap();
            assert_eq!(
                held,
                [
                    "post 1 10 problem",
                    "post 7 70 problem",
                    "queue 1 11 problem",
                    "queue 7 71 problem"
                ],
                "from version {older}"
            );
            // The keys point at the new table, and are held.
            assert!(
                sql.execute("UPDATE members SET group_id = 99 WHERE id = 11", [])
                    .is_err()
            );
            sql.execute("DELETE FROM talk", []).unwrap();
            sql.execute("DELETE FROM queue", []).unwrap();
            sql.execute("DELETE FROM posts", []).unwrap();
            sql.execute("DELETE FROM groups WHERE id = 7", []).unwrap();
            let left: i64 = sql
                .query_row("SELECT count(*) FROM members", [], |row| row.get(0))
                .unwrap();
            assert_eq!(left, 2, "the members go with their group");
        }
    }

    /// A step that would leave a row pointing at nothing is called off.
    #[test]
    fn a_step_that_breaks_a_key_is_called_off() {
        let steps = [
            "CREATE TABLE a (x INTEGER PRIMARY KEY); CREATE TABLE b (x INTEGER REFERENCES a (x));
             INSERT INTO a VALUES (1); INSERT INTO b VALUES (1);",
            "DELETE FROM a;",
        ];
        let (_folder, path, mut sql) = on_file("keys.db");
        sql.pragma_update(None, "foreign_keys", true).unwrap();
        let error = take(&mut sql, &path, &steps).unwrap_err().to_string();
        assert!(error.contains("rows of b point at nothing"), "{error}");
        assert_eq!(known(&sql, &path, 2).unwrap(), 1);
        let on: bool = sql
            .pragma_query_value(None, "foreign_keys", |row| row.get(0))
            .unwrap();
        assert!(on, "foreign keys are held again");
    }

    /// What the chats kept under keys until version 6 stands in tables of their own afterwards; what was not
    /// readable, or belongs to a group that is gone, is left behind.
    #[test]
    fn only_the_notice_of_an_empty_slot_becomes_a_fact() {
        let (_folder, path, mut sql) = on_file("notices.db");
        take(&mut sql, &path, &STEPS[..1]).unwrap();
        sql.execute_batch(OF_VERSION_1).unwrap();
        take(&mut sql, &path, &STEPS[..10]).unwrap();
        let group: i64 = sql
            .query_row("SELECT min(id) FROM groups", [], |row| row.get(0))
            .unwrap();
        for text in [
            "It is time for a post, and nothing in the queue may be posted, so nothing was. Import positions and queue sound ones; then wait for the next slot, or post at once.",
            "Discord is back.",
        ] {
            sql.execute(
                "INSERT INTO outbox (group_id, text, written_at) VALUES (?1, ?2, '2026-03-02T12:00:00Z')",
                rusqlite::params![group, text],
            )
            .unwrap();
        }
        up_to_date(&mut sql, &path).unwrap();
        let texts: Vec<String> = sql
            .prepare("SELECT text FROM outbox WHERE text <> '' ORDER BY id")
            .unwrap()
            .query_map([], |row| row.get(0))
            .unwrap()
            .collect::<Result<_, _>>()
            .unwrap();
        assert_eq!(texts, ["{\"is\":\"slot-empty\"}", "Discord is back."]);
    }

    #[test]
    fn what_chats_kept_under_keys_is_in_tables() {
        const SETTINGS: &str = r#"
            INSERT INTO settings (key, value) VALUES
            ('room.member-secret', 'aaaa'), ('room.coach-secret', 'bbbb'), ('room.cookie-mark', 'cccc'),
            ('room.notes', '[{"text":"First\nword","at":"2026-03-01T12:00:00Z"},
                             {"text":"It''s \u00fc","at":"2026-03-02T12:00:00.250Z"},{"text":"","at":"?"},7]'),
            ('discord:notes:77', 'A line
and another'), ('discord:notes:78', 'of a group that is gone'),
            ('discord:direct', '[[1180000000000000001,1180000000000000002],[9007199254740993,5]]'),
            ('discord:held', '{"waiting":[{"message":1180000000000000003,"channel":77,"user":12,
                "place":{"chat":"discord","channel":"77"},"text":"perhaps \"Qh7\"?","why":"may-tell",
                "question":"What is it to be?","posts":[{"post":7,"number":1,"topic":null}],"hidden":true,
                "since":"2026-03-02T12:00:00Z"},{"message":4,"channel":78,"user":12,
                "place":{"chat":"discord","channel":"78"},"text":"of a group that is gone","why":"several",
                "question":"?","posts":[],"hidden":false,"since":"2026-03-02T12:00:00Z"}],
                "settled":[5,1180000000000000006]}');"#;
        let rows = |sql: &Connection, query: &str| -> Vec<String> {
            sql.prepare(query)
                .unwrap()
                .query_map([], |row| row.get(0))
                .unwrap()
                .collect::<Result<_, _>>()
                .unwrap()
        };
        for older in 1..7 {
            let (_folder, path, mut sql) = on_file("kept.db");
            take(&mut sql, &path, &STEPS[..1]).unwrap();
            sql.execute_batch(OF_VERSION_1).unwrap();
            sql.execute_batch(SETTINGS).unwrap();
            take(&mut sql, &path, &STEPS[..older]).unwrap();
            up_to_date(&mut sql, &path).unwrap();
            assert_eq!(dangling(&sql).unwrap(), Vec::<String>::new());
            assert_eq!(
                rows(
                    &sql,
                    "SELECT concat_ws(' ', chat, link, secret) FROM link_secrets ORDER BY secret"
                ),
                ["room member aaaa", "room coach bbbb", "room cookies cccc"]
            );
            assert_eq!(
                rows(
                    &sql,
                    "SELECT concat_ws(' ', chat, chat_user, channel) FROM direct_channels ORDER BY channel"
                ),
                [
                    "discord 1180000000000000001 1180000000000000002",
                    "discord 9007199254740993 5"
                ]
            );
            assert_eq!(
                rows(
                    &sql,
                    "SELECT concat_ws(' ', group_id, text, written_at) FROM coach_notes WHERE group_id = 1 ORDER BY id"
                ),
                [
                    "1 First\nword 2026-03-01T12:00:00Z",
                    "1 It's \u{fc} 2026-03-02T12:00:00Z"
                ]
            );
            assert_eq!(
                rows(&sql, "SELECT text FROM coach_notes WHERE group_id = 7"),
                ["A line\nand another"]
            );
            assert_eq!(
                rows(
                    &sql,
                    "SELECT concat_ws('|', group_id, message, channel, chat_user, text, why, posts, hidden, since)
                     FROM held"
                ),
                [
                    "7|1180000000000000003|77|12|perhaps \"Qh7\"?|may-tell|\
                     [{\"post\":7,\"number\":1,\"topic\":null}]|1|2026-03-02T12:00:00Z"
                ]
            );
            assert_eq!(
                rows(&sql, "SELECT message FROM held_settled ORDER BY id"),
                ["5", "1180000000000000006"]
            );
            assert_eq!(
                rows(
                    &sql,
                    "SELECT name FROM sqlite_schema WHERE name = 'settings'"
                ),
                Vec::<String>::new()
            );
        }
    }

    /// Values that nobody could have read keep no store from being opened.
    #[test]
    fn values_that_are_damaged_keep_nobody_out() {
        for damaged in [
            "",
            "nonsense",
            "7",
            "null",
            "[]",
            "{}",
            "[[1]]",
            "[{}]",
            r#"{"waiting":7}"#,
            r#"{"waiting":[{},"x"]}"#,
            r#"["x"]"#,
        ] {
            let (_folder, path, mut sql) = on_file("damaged.db");
            take(&mut sql, &path, &STEPS[..6]).unwrap();
            sql.execute_batch(
                "INSERT INTO groups (id, chat, place, name, zone, post_time, days, open_minutes, mode, language,
                                     style, wrong_cost, hint_cost, created_at)
                 VALUES (1, 'room', 'club', 'A', 'UTC', '18:00', 127, 60, 'sealed', 'english', 'print', 1, 1, 't')",
            )
            .unwrap();
            for key in [
                "room.member-secret",
                "room.notes",
                "discord:direct",
                "discord:held",
                "discord:notes:7",
            ] {
                sql.execute("INSERT INTO settings VALUES (?1, ?2)", [key, damaged])
                    .unwrap();
            }
            up_to_date(&mut sql, &path).unwrap_or_else(|error| panic!("{damaged}: {error}"));
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
