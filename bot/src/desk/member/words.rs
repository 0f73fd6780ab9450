//! Private answers of coaches, as the member they are for reads them.

use super::MemberDesk;
use crate::desk::{Person, Place, WordsRow, answers::row, error::Done, handle::group_at};

/// Private answers on a member's page.
const SHOWN: usize = 30;

impl MemberDesk<'_> {
    /// The private answers that a member was given, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn my_words(self, place: &Place, person: &Person) -> Done<Vec<WordsRow>> {
        let (place, user) = (place.clone(), person.user.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let Some(member) = db.member_by_user(group.id, &user)? else {
                    return Ok(Vec::new());
                };
                let mut rows = Vec::new();
                for words in db.words_to(member.id, SHOWN)? {
                    if let Some((row, _)) = row(db, words)? {
                        rows.push(row);
                    }
                }
                Ok(rows)
            })
            .await
    }
}
