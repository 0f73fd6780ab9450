//! Steps of a post and of its reveal on their way out: which are done, and what came of each in the chat.

use rusqlite::params;

use crate::{Db, Moment, PostId, StoreError, Tx, time};

/// A step that is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepRow {
    /// Its name.
    pub step: String,
    /// The chat's id of what came of it, where something did.
    pub reference: Option<String>,
}

impl Db<'_> {
    /// The steps of a post that are done, in no order.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn steps(&self, post: PostId) -> Result<Vec<StepRow>, StoreError> {
        self.all(
            "SELECT step, reference FROM steps WHERE post_id = ?1 ORDER BY step",
            [post],
            |row| {
                Ok(StepRow {
                    step: row.get("step")?,
                    reference: row.get("reference")?,
                })
            },
        )
    }
}

impl Tx<'_> {
    /// Records that a step of a post is done. The first record of a step stands.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn record_step(
        &self,
        post: PostId,
        step: &str,
        reference: Option<&str>,
        now: Moment,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO steps (post_id, step, reference, done_at) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (post_id, step) DO NOTHING",
            params![post, step, reference, time::text(now)],
        )?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, open_post};

    #[test]
    fn a_step_is_recorded_once_and_its_first_record_stands() {
        let f = Fixture::new();
        let group = f.group;
        let post = f.write(move |tx| open_post(tx, group, 1, None, 10));
        assert!(f.read(move |db| db.steps(post)).is_empty());
        f.write(move |tx| tx.record_step(post, "post-0", Some("m1"), at(11)));
        f.write(move |tx| tx.record_step(post, "post-0", Some("m2"), at(12)));
        f.write(move |tx| tx.record_step(post, "thread", None, at(12)));
        let row = |step: &str, reference: Option<&str>| StepRow {
            step: step.into(),
            reference: reference.map(str::to_owned),
        };
        assert_eq!(
            f.read(move |db| db.steps(post)),
            [row("post-0", Some("m1")), row("thread", None)]
        );
    }
}
