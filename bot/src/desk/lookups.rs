//! Small questions a chat asks about what is kept: who someone is, what they sent, what lies on the
//! shelf; and values a chat wants remembered over a restart.

use super::{
    calls::{Desk, Done},
    sheets::*,
};

impl Desk {
    /// What a chat asked to have remembered under `key`.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn remembered(&self, key: &str) -> Done<Option<String>> {
        let key = key.to_owned();
        Ok(self.store.read(move |db| db.setting(&key)).await?)
    }

    /// Remembers `value` under `key`, in place of an earlier one. Keys begin with the chat's name.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub async fn remember(&self, key: &str, value: &str) -> Done<()> {
        let (key, value) = (key.to_owned(), value.to_owned());
        Ok(self
            .store
            .write(move |tx| tx.set_setting(&key, &value))
            .await?)
    }

    /// The name under which a person is a member of the group, if they are one.
    pub async fn name_of(&self, place: &Place, user: &str) -> Done<Option<String>> {
        todo!()
    }

    /// One member's own replies to a post with their verdicts, in the order they came.
    pub async fn my_replies(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
    ) -> Done<Vec<ReplyRow>> {
        todo!()
    }

    /// The last `most` lines of talk before line `before` (the very last without it), oldest first.
    pub async fn talk_before(
        &self,
        place: &Place,
        before: Option<i64>,
        most: usize,
    ) -> Done<Vec<TalkRow>> {
        todo!()
    }

    /// Checked positions that are in no week and were never posted, the latest first. Coaches only.
    pub async fn shelf(
        &self,
        place: &Place,
        coach: &Person,
        most: usize,
    ) -> Done<Vec<CheckedPosition>> {
        todo!()
    }
}
