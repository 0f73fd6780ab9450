//! Lessons as coaches are writing them.

use rusqlite::{Row, params};
use serde_json::Value;

use crate::{Db, DraftId, GroupId, LessonId, Moment, StoreError, Tx, db::json, time};

/// A draft.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// Its id.
    pub id: DraftId,
    /// The group.
    pub group_id: GroupId,
    /// The lesson that it was opened from, while there is that.
    pub lesson_id: Option<LessonId>,
    /// What was written.
    pub content: Value,
    /// Which one of its states this is, from 1.
    pub revision: i64,
    /// When it was begun.
    pub created_at: Moment,
    /// When it was written to last.
    pub changed_at: Moment,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Draft> {
    Ok(Draft {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        lesson_id: row.get("lesson_id")?,
        content: json(row, "content")?,
        revision: row.get("revision")?,
        created_at: time::get(row, "created_at")?,
        changed_at: time::get(row, "changed_at")?,
    })
}

impl Db<'_> {
    /// A group's drafts, the one written to last first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn drafts(&self, group: GroupId) -> Result<Vec<Draft>, StoreError> {
        self.all(
            "SELECT * FROM drafts WHERE group_id = ?1 ORDER BY changed_at DESC, id DESC",
            [group],
            read,
        )
    }

    /// A draft by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn draft(&self, id: DraftId) -> Result<Option<Draft>, StoreError> {
        self.maybe_one("SELECT * FROM drafts WHERE id = ?1", [id], read)
    }

    /// The draft that was opened from a lesson.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn draft_of_lesson(&self, lesson: LessonId) -> Result<Option<Draft>, StoreError> {
        self.maybe_one("SELECT * FROM drafts WHERE lesson_id = ?1", [lesson], read)
    }
}

impl Tx<'_> {
    /// Begins a draft and returns its id; its revision is 1.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_draft(
        &self,
        group: GroupId,
        lesson: Option<LessonId>,
        content: &Value,
        now: Moment,
    ) -> Result<DraftId, StoreError> {
        self.insert(
            "INSERT INTO drafts (group_id, lesson_id, content, created_at, changed_at)
             VALUES (?1, ?2, ?3, ?4, ?4)",
            params![group, lesson, content.to_string(), time::text(now)],
        )
    }

    /// Writes to a draft, if it still stands at `revision`; returns the new revision, or `None` where somebody
    /// has written meanwhile, and nothing is changed then.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn write_draft(
        &self,
        draft: DraftId,
        revision: i64,
        content: &Value,
        now: Moment,
    ) -> Result<Option<i64>, StoreError> {
        let written = self.run(
            "UPDATE drafts SET content = ?3, revision = revision + 1,
                    changed_at = max(?4, created_at)
             WHERE id = ?1 AND revision = ?2",
            params![draft, revision, content.to_string(), time::text(now)],
        )?;
        Ok((written == 1).then_some(revision + 1))
    }

    /// Says from which lesson a draft was opened.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn set_draft_lesson(
        &self,
        draft: DraftId,
        lesson: Option<LessonId>,
    ) -> Result<(), StoreError> {
        self.run_one(
            "draft",
            draft,
            "UPDATE drafts SET lesson_id = ?2 WHERE id = ?1",
            params![draft, lesson],
        )
    }

    /// Forgets a draft.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn remove_draft(&self, draft: DraftId) -> Result<(), StoreError> {
        self.run_one(
            "draft",
            draft,
            "DELETE FROM drafts WHERE id = ?1",
            params![draft],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        NewLesson,
        fixture::{Fixture, at, new_group},
    };
    use serde_json::json;

    #[test]
    fn a_draft_is_written_to_by_its_revision() {
        let f = Fixture::new();
        let group = f.group;
        let id = f.write(move |tx| tx.insert_draft(group, None, &json!({"title": "A"}), at(1)));
        let later = f.write(move |tx| tx.insert_draft(group, None, &json!({}), at(2)));
        assert_ne!(id, later);
        let first = f.write(move |tx| tx.write_draft(id, 1, &json!({"title": "B"}), at(3)));
        assert_eq!(first, Some(2));
        // The second of two who had the same one before them.
        let second = f.write(move |tx| tx.write_draft(id, 1, &json!({"title": "C"}), at(4)));
        assert_eq!(second, None);
        let kept = f.read(move |db| db.draft(id)).unwrap();
        assert_eq!((kept.revision, kept.changed_at), (2, at(3)));
        assert_eq!(kept.content, json!({"title": "B"}));
        let order: Vec<DraftId> = f
            .read(move |db| db.drafts(group))
            .into_iter()
            .map(|draft| draft.id)
            .collect();
        assert_eq!(order, [id, later]);
        f.write(move |tx| tx.remove_draft(id));
        assert_eq!(f.read(move |db| db.draft(id)), None);
        let gone = f.write(move |tx| tx.write_draft(id, 2, &json!({}), at(5)));
        assert_eq!(gone, None);
    }

    #[test]
    fn a_draft_outlives_its_lesson_and_keeps_to_its_group() {
        let f = Fixture::new();
        let group = f.group;
        let lesson = |group| NewLesson {
            group_id: group,
            title: "Open files".into(),
            topic_id: None,
            source: String::new(),
            created_at: at(0),
        };
        let (own, foreign) = f.write(move |tx| {
            let other = tx.insert_group(&new_group("other"))?;
            Ok((
                tx.insert_lesson(&lesson(group))?,
                tx.insert_lesson(&lesson(other))?,
            ))
        });
        let id = f.write(move |tx| tx.insert_draft(group, Some(own), &json!({}), at(1)));
        assert_eq!(
            f.read(move |db| db.draft_of_lesson(own))
                .map(|draft| draft.id),
            Some(id)
        );
        let refused = |lesson, why: &str| {
            let wrong = f.store.write_blocking(move |tx| {
                tx.insert_draft(group, Some(lesson), &json!({}), at(1))
                    .map(drop)
            });
            let error = wrong.unwrap_err().to_string();
            assert!(error.contains(why), "{error}");
        };
        refused(foreign, "another group");
        refused(own, "UNIQUE");
        f.write(move |tx| tx.remove_lesson(own));
        let kept = f.read(move |db| db.draft(id)).unwrap();
        assert_eq!(kept.lesson_id, None);
    }
}
