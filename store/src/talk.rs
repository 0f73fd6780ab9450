//! Talk between members in the room.

use rusqlite::{Row, params};

use crate::{Db, Moment, StoreError, Tx, time};

/// A line of talk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TalkLine {
    /// Its id; later lines have higher ones.
    pub id: i64,
    /// Who said it.
    pub member_id: i64,
    /// Under which name.
    pub name: String,
    /// What, 1 to 4000 characters.
    pub text: String,
    /// When.
    pub said_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<TalkLine> {
    Ok(TalkLine {
        id: row.get("id")?,
        member_id: row.get("member_id")?,
        name: row.get("name")?,
        text: row.get("text")?,
        said_at: time::get(row, "said_at")?,
    })
}

const SELECT: &str = "SELECT t.id, t.member_id, m.name, t.text, t.said_at
    FROM talk t JOIN members m ON m.id = t.member_id";

impl Db<'_> {
    /// At most `most` lines after line `after`, the oldest first.
    pub fn talk_after(
        &self,
        group: i64,
        after: i64,
        most: usize,
    ) -> Result<Vec<TalkLine>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE t.group_id = ?1 AND t.id > ?2 ORDER BY t.id LIMIT ?3"),
            params![group, after, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )
    }

    /// The last `most` lines before line `before`, the oldest of them first.
    pub fn talk_before(
        &self,
        group: i64,
        before: i64,
        most: usize,
    ) -> Result<Vec<TalkLine>, StoreError> {
        let mut lines = self.all(
            &format!("{SELECT} WHERE t.group_id = ?1 AND t.id < ?2 ORDER BY t.id DESC LIMIT ?3"),
            params![group, before, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )?;
        lines.reverse();
        Ok(lines)
    }

    /// The latest `most` lines, the oldest of them first.
    pub fn talk_latest(&self, group: i64, most: usize) -> Result<Vec<TalkLine>, StoreError> {
        let mut lines = self.all(
            &format!("{SELECT} WHERE t.group_id = ?1 ORDER BY t.id DESC LIMIT ?2"),
            params![group, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )?;
        lines.reverse();
        Ok(lines)
    }
}

impl Tx<'_> {
    /// Keeps a line and returns its id.
    pub fn insert_talk(
        &self,
        group: i64,
        member: i64,
        text: &str,
        now: Moment,
    ) -> Result<i64, StoreError> {
        self.insert(
            "INSERT INTO talk (group_id, member_id, text, said_at) VALUES (?1, ?2, ?3, ?4)",
            params![group, member, text, time::text(now)],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at};

    #[test]
    fn talk_is_read_from_where_one_left_off() {
        let f = Fixture::new();
        let group = f.group;
        let ids: Vec<i64> = f.write(move |tx| {
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            (0..5)
                .map(|n| tx.insert_talk(group, ana, &format!("line {n}"), at(n)))
                .collect()
        });
        let texts =
            |lines: Vec<TalkLine>| lines.into_iter().map(|line| line.text).collect::<Vec<_>>();
        let second = ids[1];
        assert_eq!(
            texts(f.read(move |db| db.talk_after(group, second, 2))),
            ["line 2", "line 3"]
        );
        assert_eq!(
            texts(f.read(move |db| db.talk_latest(group, 2))),
            ["line 3", "line 4"]
        );
        let empty = f
            .store
            .write_blocking(move |tx| tx.insert_talk(group, 1, "", at(0)));
        assert!(matches!(empty, Err(StoreError::Rule(_))), "{empty:?}");
    }
}
