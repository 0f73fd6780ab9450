//! Talk between members in the room.

use rusqlite::{Row, params};

use crate::{Db, GroupId, MemberId, Moment, StoreError, Tx, time};

/// A line of talk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TalkLine {
    /// Its id; later lines have higher ones.
    pub id: i64,
    /// Who said it.
    pub member_id: MemberId,
    /// Under which name.
    pub name: String,
    /// Whether a coach said it.
    pub coach: bool,
    /// What, 1 to 4000 characters.
    pub text: String,
    /// When.
    pub said_at: Moment,
    /// Out of everyone's sight since then, by its writer or a coach; `None` while it is to be seen.
    pub gone: Option<Gone>,
}

/// When and by whom something was taken out of sight.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Gone {
    /// When.
    pub at: Moment,
    /// The member who did it; `None` once they were erased.
    #[serde(skip)]
    pub by_id: Option<MemberId>,
    /// Their name.
    pub by: Option<String>,
}

/// Reads what `gone_at`, `gone_by` and `gone_name` of a row say.
pub(crate) fn read_gone(row: &Row<'_>) -> rusqlite::Result<Option<Gone>> {
    Ok(match time::get_maybe(row, "gone_at")? {
        Some(at) => Some(Gone {
            at,
            by_id: row.get("gone_by")?,
            by: row.get("gone_name")?,
        }),
        None => None,
    })
}

fn read(row: &Row<'_>) -> rusqlite::Result<TalkLine> {
    Ok(TalkLine {
        id: row.get("id")?,
        member_id: row.get("member_id")?,
        name: row.get("name")?,
        coach: row.get("coach")?,
        text: row.get("text")?,
        said_at: time::get(row, "said_at")?,
        gone: read_gone(row)?,
    })
}

const SELECT: &str = "SELECT t.id, t.member_id, m.name, m.coach, t.text, t.said_at,
        t.gone_at, t.gone_by, g.name AS gone_name
    FROM talk t JOIN members m ON m.id = t.member_id LEFT JOIN members g ON g.id = t.gone_by";

/// Which lines are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lines {
    /// Those that everyone may see.
    Seen,
    /// Those out of sight among them: for a coach.
    All,
}

impl Lines {
    fn condition(self) -> &'static str {
        match self {
            Self::Seen => "AND t.gone_at IS NULL",
            Self::All => "",
        }
    }
}

impl Db<'_> {
    /// A line by id, in sight or not.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn talk_line(&self, id: i64) -> Result<Option<TalkLine>, StoreError> {
        self.maybe_one(&format!("{SELECT} WHERE t.id = ?1"), [id], read)
    }

    /// The ids of the latest `most` lines up to line `until` that are out of sight: for a page that saw
    /// them before.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn talk_gone(
        &self,
        group: GroupId,
        until: i64,
        most: usize,
    ) -> Result<Vec<i64>, StoreError> {
        self.all(
            "SELECT id FROM talk WHERE group_id = ?1 AND id <= ?2 AND gone_at IS NOT NULL
             ORDER BY id DESC LIMIT ?3",
            params![group, until, i64::try_from(most).unwrap_or(i64::MAX)],
            |row| row.get(0),
        )
    }

    /// At most `most` lines in sight after line `after`, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn talk_after(
        &self,
        group: GroupId,
        after: i64,
        most: usize,
    ) -> Result<Vec<TalkLine>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE t.group_id = ?1 AND t.id > ?2 AND t.gone_at IS NULL ORDER BY t.id LIMIT ?3"),
            params![group, after, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )
    }

    /// The last `most` lines before line `before`, the oldest of them first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn talk_before(
        &self,
        group: GroupId,
        before: i64,
        most: usize,
        lines: Lines,
    ) -> Result<Vec<TalkLine>, StoreError> {
        let which = lines.condition();
        let mut lines = self.all(
            &format!(
                "{SELECT} WHERE t.group_id = ?1 AND t.id < ?2 {which} ORDER BY t.id DESC LIMIT ?3"
            ),
            params![group, before, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )?;
        lines.reverse();
        Ok(lines)
    }
}

impl Tx<'_> {
    /// Keeps a line and returns its id.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_talk(
        &self,
        group: GroupId,
        member: MemberId,
        text: &str,
        now: Moment,
    ) -> Result<i64, StoreError> {
        self.insert(
            "INSERT INTO talk (group_id, member_id, text, said_at) VALUES (?1, ?2, ?3, ?4)",
            params![group, member, text, time::text(now)],
        )
    }

    /// Takes a line out of everyone's sight, or (`None`) puts it back.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_talk_gone(
        &self,
        line: i64,
        gone: Option<(MemberId, Moment)>,
    ) -> Result<(), StoreError> {
        self.run_one(
            "message",
            line,
            "UPDATE talk SET gone_by = ?2, gone_at = ?3 WHERE id = ?1",
            params![
                line,
                gone.map(|(by, _)| by),
                time::maybe(gone.map(|(_, at)| at))
            ],
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
            texts(f.read(move |db| db.talk_before(group, i64::MAX, 2, Lines::Seen))),
            ["line 3", "line 4"]
        );
        let empty = f
            .store
            .write_blocking(move |tx| tx.insert_talk(group, MemberId::of(1), "", at(0)));
        assert!(matches!(empty, Err(StoreError::Rule(_))), "{empty:?}");
    }

    #[test]
    fn a_line_out_of_sight_is_kept_for_the_coach() {
        let f = Fixture::new();
        let group = f.group;
        let (ana, kim, lines) = f.write(move |tx| {
            let ana = tx.upsert_member(group, "u1", "Ana", at(0))?;
            let kim = tx.upsert_member(group, "u2", "Kim", at(0))?;
            let lines: Result<Vec<i64>, _> = (0..3)
                .map(|n| tx.insert_talk(group, ana, &format!("line {n}"), at(n)))
                .collect();
            let lines = lines?;
            tx.set_talk_gone(lines[0], Some((ana, at(5))))?;
            tx.set_talk_gone(lines[1], Some((kim, at(6))))?;
            Ok((ana, kim, lines))
        });
        let seen = f.read(move |db| db.talk_before(group, i64::MAX, 9, Lines::Seen));
        assert_eq!(seen.iter().map(|l| l.id).collect::<Vec<_>>(), [lines[2]]);
        assert_eq!(f.read(move |db| db.talk_after(group, 0, 9)).len(), 1);
        let all = f.read(move |db| db.talk_before(group, i64::MAX, 9, Lines::All));
        let gone = all[1].gone.clone().unwrap();
        assert_eq!(
            (gone.by_id, gone.by.as_deref(), gone.at),
            (Some(kim), Some("Kim"), at(6))
        );
        assert_eq!(all[0].gone.as_ref().unwrap().by_id, Some(ana));
        assert_eq!(
            f.read(move |db| db.talk_gone(group, i64::MAX, 9)),
            [lines[1], lines[0]]
        );
        // Erasing whoever hid it leaves the line hidden.
        f.write(move |tx| tx.delete_member(kim));
        let second = lines[1];
        let gone = f
            .read(move |db| db.talk_line(second))
            .unwrap()
            .gone
            .unwrap();
        assert_eq!((gone.by_id, gone.by), (None, None));
        f.write(move |tx| tx.set_talk_gone(second, None));
        assert!(
            f.read(move |db| db.talk_line(second))
                .unwrap()
                .gone
                .is_none()
        );
    }
}
