//! Hint steps given to members.

use rusqlite::{Row, params};

use crate::{Db, MemberId, Moment, PostId, ReplyId, StoreError, Tx, time};

/// A hint step that a member was given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hint {
    /// The post.
    pub post_id: PostId,
    /// The member.
    pub member_id: MemberId,
    /// On which half-move of the member's line it was asked for, from 0.
    pub ply: u16,
    /// 1 to 3.
    pub step: u8,
    /// When.
    pub given_at: Moment,
    /// The member's last reply to the post before it, 0 for none.
    pub after_reply: ReplyId,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Hint> {
    Ok(Hint {
        post_id: row.get("post_id")?,
        member_id: row.get("member_id")?,
        ply: row.get("ply")?,
        step: row.get("step")?,
        given_at: time::get(row, "given_at")?,
        after_reply: row.get("after_reply")?,
    })
}

impl Db<'_> {
    /// The hint steps a member has had for a post, in order.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn hints(&self, post: PostId, member: MemberId) -> Result<Vec<Hint>, StoreError> {
        self.all(
            "SELECT * FROM hints WHERE post_id = ?1 AND member_id = ?2 ORDER BY ply, step",
            (post, member),
            read,
        )
    }

    /// How many a member has had on one move of the line.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn hint_count_at(
        &self,
        post: PostId,
        member: MemberId,
        ply: u16,
    ) -> Result<u8, StoreError> {
        Ok(self
            .maybe_one(
                "SELECT count(*) FROM hints WHERE post_id = ?1 AND member_id = ?2 AND ply = ?3",
                params![post, member, ply],
                |row| row.get(0),
            )?
            .unwrap_or(0))
    }
}

impl Tx<'_> {
    /// Records the next hint step on a move of the line and returns it; `None` when `most` have been given
    /// on that move already.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn next_hint(
        &self,
        post: PostId,
        member: MemberId,
        ply: u16,
        most: u8,
        now: Moment,
    ) -> Result<Option<u8>, StoreError> {
        let step = self.hint_count_at(post, member, ply)? + 1;
        if step > most {
            return Ok(None);
        }
        self.run(
            "INSERT INTO hints (post_id, member_id, ply, step, given_at, after_reply)
             VALUES (?1, ?2, ?3, ?4, ?5, coalesce((
                 SELECT max(id) FROM replies WHERE post_id = ?1 AND member_id = ?2), 0))",
            params![post, member, ply, step, time::text(now)],
        )?;
        Ok(Some(step))
    }
}

#[cfg(test)]
mod tests {
    use crate::fixture::{Fixture, at, open_post};

    #[test]
    fn steps_come_in_order_and_begin_anew_with_the_next_move() {
        let f = Fixture::new();
        let group = f.group;
        let (post, ana) = f.write(move |tx| {
            let post = open_post(tx, group, 1, None, 0)?;
            Ok((post, tx.upsert_member(group, "u1", "Ana", at(0))?))
        });
        let steps: Vec<_> = (0..4)
            .map(|n| f.write(move |tx| tx.next_hint(post, ana, 0, 3, at(n))))
            .collect();
        assert_eq!(steps, [Some(1), Some(2), Some(3), None]);
        let kept = f.read(move |db| db.hints(post, ana));
        assert_eq!((kept.len(), kept[2].given_at), (3, at(2)));
        assert_eq!(
            f.write(move |tx| tx.next_hint(post, ana, 2, 3, at(9))),
            Some(1)
        );
        assert_eq!(f.read(move |db| db.hint_count_at(post, ana, 2)), 1);
        assert_eq!(f.read(move |db| db.hints(post, ana)).len(), 4);
    }
}
