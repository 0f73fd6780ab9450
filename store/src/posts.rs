//! Posts: an item of content before the group, from the intent to the reveal.

use std::sync::LazyLock;

use rusqlite::{Row, params};

use crate::{
    Content, ContentId, Db, GroupId, ItemId, Moment, Points, PostId, PostState, StoreError, Tx,
    content, time,
};

/// What tries and hints take off at a post, as its members were told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// Points off for each wrong first move.
    pub wrong_cost: Points,
    /// Points off for each hint step.
    pub hint_cost: Points,
    /// Points that whoever solves the post without being shown the move keeps at least.
    pub least: Points,
}

/// A post about to be made out of a queue entry.
#[derive(Clone, Debug, PartialEq)]
pub struct NewPost {
    /// What tries and hints cost.
    pub prices: Prices,
    /// The queue entry; it leaves the queue.
    pub item: ItemId,
    /// Marks the message so that it is sent once, 1 to 25 characters.
    pub nonce: String,
    /// When it was due; a group has one post a slot.
    pub slot: Moment,
    /// When replies will close.
    pub closes_at: Moment,
    /// Now.
    pub intended_at: Moment,
}

/// A post.
#[derive(Clone, Debug, PartialEq)]
pub struct Post {
    /// Its id.
    pub id: PostId,
    /// The group.
    pub group_id: GroupId,
    /// The item of content.
    pub content_id: ContentId,
    /// 1, 2, 3 … within the group.
    pub number: i64,
    /// Marks the message.
    pub nonce: String,
    /// Where it stands.
    pub state: PostState,
    /// When it was due.
    pub slot: Moment,
    /// When the intent was recorded.
    pub intended_at: Moment,
    /// When it was sent.
    pub opened_at: Option<Moment>,
    /// When replies close.
    pub closes_at: Moment,
    /// When the reveal was sent.
    pub closed_at: Option<Moment>,
    /// The chat's id of the message.
    pub message: Option<String>,
    /// The chat's id of the thread.
    pub thread: Option<String>,
    /// The chat's id of the reveal.
    pub reveal: Option<String>,
    /// Whether it is open with something of it still missing in the chat.
    pub half_sent: bool,
    /// What tries and hints cost here.
    pub prices: Prices,
    /// What it holds.
    pub content: Content,
    /// The topic of that.
    pub topic: Option<String>,
}

static SELECT: LazyLock<String> = LazyLock::new(|| {
    format!(
        "SELECT o.*, {}, t.name AS topic FROM posts o JOIN contents c ON c.id = o.content_id {}",
        content::COLUMNS,
        content::JOINS
    )
});

fn read(row: &Row<'_>) -> rusqlite::Result<Post> {
    Ok(Post {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        content_id: row.get("content_id")?,
        number: row.get("number")?,
        nonce: row.get("nonce")?,
        state: row.get("state")?,
        slot: time::get(row, "slot")?,
        intended_at: time::get(row, "intended_at")?,
        opened_at: time::get_maybe(row, "opened_at")?,
        closes_at: time::get(row, "closes_at")?,
        closed_at: time::get_maybe(row, "closed_at")?,
        message: row.get("message")?,
        thread: row.get("thread")?,
        reveal: row.get("reveal")?,
        half_sent: row.get("half_sent")?,
        prices: Prices {
            wrong_cost: row.get("wrong_cost")?,
            hint_cost: row.get("hint_cost")?,
            least: row.get("least")?,
        },
        content: content::read(row)?,
        topic: row.get("topic")?,
    })
}

impl Db<'_> {
    /// A post by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn post(&self, id: PostId) -> Result<Option<Post>, StoreError> {
        self.maybe_one(&format!("{} WHERE o.id = ?1", *SELECT), [id], read)
    }

    /// The post of a group whose message or thread the chat calls `reference`.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn post_by_reference(
        &self,
        group: GroupId,
        reference: &str,
    ) -> Result<Option<Post>, StoreError> {
        self.maybe_one(
            &format!(
                "{} WHERE o.group_id = ?1 AND (o.message = ?2 OR o.thread = ?2)
                 ORDER BY o.number DESC LIMIT 1",
                *SELECT
            ),
            params![group, reference],
            read,
        )
    }

    /// A group's posts in one state, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn posts_in(&self, group: GroupId, state: PostState) -> Result<Vec<Post>, StoreError> {
        self.all(
            &format!(
                "{} WHERE o.group_id = ?1 AND o.state = ?2 ORDER BY o.number",
                *SELECT
            ),
            params![group, state],
            read,
        )
    }

    /// A group's open posts, the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn open_posts(&self, group: GroupId) -> Result<Vec<Post>, StoreError> {
        self.posts_in(group, PostState::Open)
    }

    /// A group's posts that are open or being closed and of which something is still missing in the chat,
    /// the oldest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn half_sent_posts(&self, group: GroupId) -> Result<Vec<Post>, StoreError> {
        self.all(
            &format!(
                "{} WHERE o.group_id = ?1 AND o.state IN ('open', 'closing') AND o.half_sent = 1
                 ORDER BY o.number",
                *SELECT
            ),
            [group],
            read,
        )
    }

    /// A group's posts that have been sent, the latest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn latest_posts(&self, group: GroupId, most: usize) -> Result<Vec<Post>, StoreError> {
        self.all(
            &format!(
                "{} WHERE o.group_id = ?1 AND o.opened_at IS NOT NULL
                 ORDER BY o.number DESC LIMIT ?2",
                *SELECT
            ),
            params![group, i64::try_from(most).unwrap_or(i64::MAX)],
            read,
        )
    }

    /// When a group's latest post was intended.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn latest_intended_at(&self, group: GroupId) -> Result<Option<Moment>, StoreError> {
        self.maybe_one(
            "SELECT intended_at FROM posts WHERE group_id = ?1 ORDER BY intended_at DESC LIMIT 1",
            [group],
            |row| time::get(row, "intended_at"),
        )
    }

    /// Whether a group has a post for `slot`.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn slot_taken(&self, group: GroupId, slot: Moment) -> Result<bool, StoreError> {
        Ok(self
            .maybe_one(
                "SELECT 1 FROM posts WHERE group_id = ?1 AND slot = ?2",
                params![group, time::text(slot)],
                |_| Ok(()),
            )?
            .is_some())
    }
}

impl Tx<'_> {
    /// Records that a queue entry is about to be posted: it leaves the queue, gets the group's next
    /// number, and is `intended` until [`Tx::mark_post_open`]. Returns the post's id; errs with
    /// [`StoreError::SlotTaken`] when the group has a post for that slot.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn intend_post(&self, new: &NewPost) -> Result<PostId, StoreError> {
        let Some(item) = self.queued(new.item)? else {
            return Err(StoreError::NoSuch {
                what: "queue entry",
                id: new.item.get(),
            });
        };
        if self.slot_taken(item.group_id, new.slot)? {
            return Err(StoreError::SlotTaken { slot: new.slot });
        }
        self.dequeue(new.item)?;
        self.insert(
            "INSERT INTO posts (group_id, content_id, number, nonce, state, slot, intended_at, closes_at,
                                wrong_cost, hint_cost, least)
             VALUES (?1, ?2,
                     (SELECT coalesce(max(number), 0) + 1 FROM posts WHERE group_id = ?1),
                     ?3, 'intended', ?4, ?5, ?6, ?7, ?8, ?9)",
            params![
                item.group_id,
                item.content_id,
                new.nonce,
                time::text(new.slot),
                time::text(new.intended_at),
                time::text(new.closes_at),
                new.prices.wrong_cost,
                new.prices.hint_cost,
                new.prices.least
            ],
        )
    }

    /// Records that a post was sent, and where it went.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn mark_post_open(
        &self,
        post: PostId,
        opened_at: Moment,
        message: Option<&str>,
        thread: Option<&str>,
    ) -> Result<(), StoreError> {
        self.step(
            post,
            "UPDATE posts SET state = 'open', opened_at = ?2, message = ?3, thread = ?4
             WHERE id = ?1 AND state = 'intended'",
            params![post, time::text(opened_at), message, thread],
        )
    }

    /// Records that an intended post is before the group, and that something of it is still missing.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn mark_post_half_sent(
        &self,
        post: PostId,
        opened_at: Moment,
        message: Option<&str>,
    ) -> Result<(), StoreError> {
        self.mark_post_open(post, opened_at, message, None)?;
        self.step(
            post,
            "UPDATE posts SET half_sent = 1 WHERE id = ?1 AND state = 'open'",
            [post],
        )
    }

    /// Records that nothing of a post is missing any more, and the thread it has. It may have been closed in
    /// the meantime.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn mark_post_whole(&self, post: PostId, thread: Option<&str>) -> Result<(), StoreError> {
        self.step(
            post,
            "UPDATE posts SET half_sent = 0, thread = ?2
             WHERE id = ?1 AND state IN ('open', 'closing')",
            params![post, thread],
        )
    }

    /// Moves the moment when an open post's replies close.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn set_closes_at(&self, post: PostId, closes_at: Moment) -> Result<(), StoreError> {
        self.step(
            post,
            "UPDATE posts SET closes_at = ?2 WHERE id = ?1 AND state IN ('intended', 'open')",
            params![post, time::text(closes_at)],
        )
    }

    /// Ends replies to an open post: its reveal is on its way.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn mark_post_closing(&self, post: PostId) -> Result<(), StoreError> {
        self.step(
            post,
            "UPDATE posts SET state = 'closing' WHERE id = ?1 AND state = 'open'",
            [post],
        )
    }

    /// Records that the reveal was sent, and where it went.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn mark_post_closed(
        &self,
        post: PostId,
        closed_at: Moment,
        reveal: Option<&str>,
    ) -> Result<(), StoreError> {
        self.step(
            post,
            "UPDATE posts SET state = 'closed', closed_at = ?2, reveal = ?3
             WHERE id = ?1 AND state = 'closing'",
            params![post, time::text(closed_at), reveal],
        )
    }

    /// A step of a post's life that is only allowed from the state before it.
    fn step(
        &self,
        post: PostId,
        sql: &str,
        params: impl rusqlite::Params,
    ) -> Result<(), StoreError> {
        if self.run(sql, params)? > 0 {
            return Ok(());
        }
        Err(match self.post(post)? {
            Some(found) => StoreError::Rule(format!(
                "post {post} is {}, which does not allow this step",
                found.state
            )),
            None => StoreError::NoSuch {
                what: "post",
                id: post.get(),
            },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{Fixture, at, close_post, new_group, open_post, queue};

    fn new_post(item: ItemId, nonce: &str, minutes: i64) -> NewPost {
        NewPost {
            prices: crate::fixture::PRICES,
            item,
            nonce: nonce.into(),
            slot: at(minutes),
            closes_at: at(minutes + 60),
            intended_at: at(minutes + 1),
        }
    }

    #[test]
    fn a_post_goes_from_the_queue_to_its_reveal() {
        let f = Fixture::new();
        let group = f.group;
        let items = f.write(move |tx| queue(tx, group, 2));
        let first = items[0];
        let post = f.write(move |tx| tx.intend_post(&new_post(first, "n1", 10)));
        let left = f.read(move |db| db.queue(group));
        assert_eq!((left.len(), left[0].id, left[0].rank), (1, items[1], 0));
        let intended = f.read(move |db| db.post(post)).unwrap();
        assert_eq!((intended.state, intended.number), (PostState::Intended, 1));
        assert!(
            f.read(move |db| db.latest_posts(group, 9)).is_empty(),
            "not sent yet"
        );

        f.write(move |tx| tx.mark_post_open(post, at(11), Some("msg"), Some("thr")));
        assert_eq!(f.read(move |db| db.open_posts(group)).len(), 1);
        assert_eq!(
            f.read(move |db| db.post_by_reference(group, "msg"))
                .unwrap()
                .id,
            post
        );
        assert_eq!(
            f.read(move |db| db.post_by_reference(group, "thr"))
                .unwrap()
                .id,
            post
        );
        assert_eq!(f.read(move |db| db.post_by_reference(group, "other")), None);

        f.write(move |tx| tx.mark_post_closing(post));
        assert_eq!(
            f.read(move |db| db.posts_in(group, PostState::Closing))
                .len(),
            1
        );
        f.write(move |tx| tx.mark_post_closed(post, at(71), Some("rev")));
        let closed = f.read(move |db| db.post(post)).unwrap();
        assert_eq!(closed.state, PostState::Closed);
        assert_eq!(
            (closed.closed_at, closed.reveal.as_deref()),
            (Some(at(71)), Some("rev"))
        );
        assert_eq!(f.read(move |db| db.latest_posts(group, 9)).len(), 1);
    }

    #[test]
    fn a_slot_is_used_once_and_nothing_leaves_the_queue_otherwise() {
        let f = Fixture::new();
        let group = f.group;
        let items = f.write(move |tx| queue(tx, group, 2));
        let (a, b) = (items[0], items[1]);
        f.write(move |tx| tx.intend_post(&new_post(a, "n1", 10)));
        let taken = f
            .store
            .write_blocking(move |tx| tx.intend_post(&new_post(b, "n2", 10)));
        assert!(matches!(taken, Err(StoreError::SlotTaken { slot }) if slot == at(10)));
        let twice = f
            .store
            .write_blocking(move |tx| tx.intend_post(&new_post(b, "n1", 20)));
        assert!(matches!(twice, Err(StoreError::Rule(_))), "{twice:?}");
        assert_eq!(f.read(move |db| db.queue(group)).len(), 1);
    }

    #[test]
    fn a_post_can_be_before_the_group_and_not_yet_whole() {
        let f = Fixture::new();
        let group = f.group;
        let item = f.write(move |tx| queue(tx, group, 1))[0];
        let post = f.write(move |tx| tx.intend_post(&new_post(item, "n1", 10)));
        assert!(
            f.store
                .write_blocking(move |tx| tx.mark_post_whole(post, None))
                .is_err()
        );
        f.write(move |tx| tx.mark_post_half_sent(post, at(11), Some("msg")));
        let open = f.read(move |db| db.open_posts(group));
        assert_eq!((open.len(), open[0].half_sent), (1, true));
        assert_eq!(f.read(move |db| db.half_sent_posts(group)), open);
        f.write(move |tx| tx.mark_post_whole(post, Some("thr")));
        let whole = f.read(move |db| db.post(post)).unwrap();
        assert_eq!(
            (
                whole.half_sent,
                whole.message.as_deref(),
                whole.thread.as_deref()
            ),
            (false, Some("msg"), Some("thr"))
        );
        assert!(f.read(move |db| db.half_sent_posts(group)).is_empty());
    }

    #[test]
    fn a_post_that_is_closed_before_it_is_whole_still_gets_its_thread() {
        let f = Fixture::new();
        let group = f.group;
        let item = f.write(move |tx| queue(tx, group, 1))[0];
        let post = f.write(move |tx| tx.intend_post(&new_post(item, "n1", 10)));
        f.write(move |tx| tx.mark_post_half_sent(post, at(11), Some("msg")));
        f.write(move |tx| tx.mark_post_closing(post));
        assert_eq!(f.read(move |db| db.half_sent_posts(group)).len(), 1);
        f.write(move |tx| tx.mark_post_whole(post, Some("thr")));
        let whole = f.read(move |db| db.post(post)).unwrap();
        assert_eq!(
            (whole.state, whole.thread.as_deref()),
            (PostState::Closing, Some("thr"))
        );
        assert!(f.read(move |db| db.half_sent_posts(group)).is_empty());
    }

    #[test]
    fn numbers_count_within_the_group() {
        let f = Fixture::new();
        let group = f.group;
        let (mine, theirs) = f.write(move |tx| {
            let other = tx.insert_group(&new_group("other"))?;
            open_post(tx, group, 1, None, 10)?;
            Ok((
                open_post(tx, group, 2, None, 20)?,
                open_post(tx, other, 3, None, 10)?,
            ))
        });
        assert_eq!(f.read(move |db| db.post(mine)).unwrap().number, 2);
        assert_eq!(f.read(move |db| db.post(theirs)).unwrap().number, 1);
    }

    #[test]
    fn no_step_is_taken_twice_or_out_of_order() {
        let f = Fixture::new();
        let group = f.group;
        let post = f.write(move |tx| open_post(tx, group, 1, None, 10));
        let reopened = f
            .store
            .write_blocking(move |tx| tx.mark_post_open(post, at(12), None, None));
        assert!(reopened.unwrap_err().to_string().contains("is open"));
        let early = f
            .store
            .write_blocking(move |tx| tx.mark_post_closed(post, at(12), None));
        assert!(early.is_err());
        f.write(move |tx| close_post(tx, post, 70));
        assert!(
            f.store
                .write_blocking(move |tx| tx.mark_post_closing(post))
                .is_err()
        );
        assert!(
            f.store
                .write_blocking(move |tx| tx.set_closes_at(post, at(99)))
                .is_err()
        );
        let nowhere = f
            .store
            .write_blocking(|tx| tx.mark_post_closing(PostId::of(999)));
        assert!(matches!(
            nowhere,
            Err(StoreError::NoSuch {
                what: "post",
                id: 999
            })
        ));
    }
}
