//! Two members who are one person become one: everything of the second is the first one's afterwards.

use crate::{Db, MemberId, Moment, PostId, ReplyId, StoreError, Tx, time};

/// A post at which both of two members did something, and what is needed to settle it as one attempt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shared {
    /// The post.
    pub post_id: PostId,
    /// When the first of the two gave it up, if one did, and the last reply of either before that (0 for
    /// none).
    pub gave_up: Option<(Moment, ReplyId)>,
}

impl Db<'_> {
    /// The posts to which both members replied, or had an attempt or a hint at.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn shared_posts(&self, one: MemberId, other: MemberId) -> Result<Vec<Shared>, StoreError> {
        let posts: Vec<PostId> = self.all(
            "WITH work AS (
                 SELECT post_id, member_id FROM replies WHERE member_id IN (?1, ?2)
                 UNION SELECT post_id, member_id FROM attempts WHERE member_id IN (?1, ?2)
                 UNION SELECT post_id, member_id FROM hints WHERE member_id IN (?1, ?2)
             )
             SELECT post_id FROM work GROUP BY post_id HAVING count(*) = 2 ORDER BY post_id",
            (one, other),
            |row| row.get("post_id"),
        )?;
        posts
            .into_iter()
            .map(|post_id| {
                Ok(Shared {
                    post_id,
                    gave_up: self.first_gave_up(post_id, one, other)?,
                })
            })
            .collect()
    }

    fn first_gave_up(
        &self,
        post: PostId,
        one: MemberId,
        other: MemberId,
    ) -> Result<Option<(Moment, ReplyId)>, StoreError> {
        self.maybe_one(
            "SELECT a.gave_up_at, max(coalesce(a.gave_up_after, 0), coalesce((
                 SELECT max(r.id) FROM replies r
                 WHERE r.post_id = a.post_id AND r.member_id IN (?2, ?3) AND r.member_id <> a.member_id
                     AND r.received_at < a.gave_up_at), 0)) AS after
             FROM attempts a
             WHERE a.post_id = ?1 AND a.member_id IN (?2, ?3) AND a.gave_up_at IS NOT NULL
             ORDER BY a.gave_up_at, a.member_id LIMIT 1",
            (post, one, other),
            |row| Ok((time::get(row, "gave_up_at")?, row.get("after")?)),
        )
    }
}

impl Tx<'_> {
    /// Makes everything of `gone` `keep`'s, ids included, and deletes `gone`. Both are of one group. The
    /// attempts at posts that both worked on are taken away: the caller settles them anew from the
    /// replies and hints, which are all there.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn merge_members(
        &self,
        keep: MemberId,
        gone: MemberId,
        now: Moment,
    ) -> Result<(), StoreError> {
        for shared in self.shared_posts(keep, gone)? {
            self.run(
                "DELETE FROM attempts WHERE post_id = ?1 AND member_id IN (?2, ?3)",
                (shared.post_id, keep, gone),
            )?;
        }
        // What a hint came after is told by the replies of both from now on.
        self.run(
            "UPDATE hints SET after_reply = max(after_reply, coalesce((
                 SELECT max(r.id) FROM replies r
                 WHERE r.post_id = hints.post_id AND r.member_id IN (?1, ?2)
                     AND r.member_id <> hints.member_id AND r.received_at < hints.given_at), 0))
             WHERE member_id IN (?1, ?2)",
            (keep, gone),
        )?;
        // A step that both took was shown once to one person: the earlier moment counts.
        self.run(
            "INSERT INTO hints (post_id, member_id, ply, step, given_at, after_reply)
                 SELECT post_id, ?1, ply, step, given_at, after_reply FROM hints WHERE member_id = ?2
             ON CONFLICT (post_id, member_id, ply, step) DO UPDATE SET
                 given_at = min(given_at, excluded.given_at),
                 after_reply = min(after_reply, excluded.after_reply)",
            (keep, gone),
        )?;
        for column in [
            "attempts SET member_id",
            "replies SET member_id",
            "talk SET member_id",
            "talk SET gone_by",
            "replies SET gone_by",
            "coach_words SET by_id",
            "deeds SET by_id",
            "deeds SET about_id",
            "identities SET member_id",
        ] {
            let name = column.rsplit(' ').next().unwrap_or_default();
            self.run(
                &format!("UPDATE {column} = ?1 WHERE {name} = ?2"),
                (keep, gone),
            )?;
        }
        self.run(
            "UPDATE members SET
                 coach = max(coach, (SELECT coach FROM members WHERE id = ?2)),
                 joined_at = min(joined_at, (SELECT joined_at FROM members WHERE id = ?2)),
                 language = coalesce(language, (SELECT language FROM members WHERE id = ?2)),
                 client_language = coalesce(client_language,
                     (SELECT client_language FROM members WHERE id = ?2))
             WHERE id = ?1",
            (keep, gone),
        )?;
        let user = self
            .member(gone)?
            .map(|member| (member.group_id, member.chat_user));
        self.delete_member(gone)?;
        if let Some((group, user)) = user {
            self.add_identity(group, keep, &user, now)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use crate::{
        AttemptState, Deed, NewDeed, Points, PostId, Verdict,
        fixture::{Fixture, at, attempt, new_reply, new_verdict, open_post},
    };

    #[test]
    fn merging_loses_and_doubles_nothing() {
        let f = Fixture::new();
        let group = f.group;
        let (ana, anna, kim, posts) = f.write(move |tx| {
            let posts: Result<Vec<PostId>, _> = (1..4)
                .map(|n| open_post(tx, group, n, None, 10 * n as i64))
                .collect();
            let posts = posts?;
            let ana = tx.upsert_member(group, "phone", "Ana", at(5))?;
            let anna = tx.upsert_member(group, "tablet", "Anna", at(1))?;
            let kim = tx.upsert_member(group, "kim", "Kim", at(0))?;
            for (n, (post, member)) in [
                (posts[0], ana),
                (posts[0], anna),
                (posts[1], anna),
                (posts[0], kim),
            ]
            .into_iter()
            .enumerate()
            {
                let reply = tx.insert_reply(&new_reply(post, member, None, &format!("r{n}")))?;
                tx.insert_verdict(&new_verdict(reply.id, Verdict::Wrong, "Rd7"))?;
                tx.settle_reply(reply.id, "Look again.", anna, at(7))?;
                tx.upsert_attempt(&attempt(post, member, AttemptState::Playing, 1.0))?;
            }
            tx.upsert_attempt(&attempt(posts[0], anna, AttemptState::GivenUp, 0.0))?;
            tx.next_hint(posts[0], ana, 0, 3, at(9))?;
            tx.next_hint(posts[0], anna, 0, 3, at(8))?;
            tx.next_hint(posts[0], anna, 0, 3, at(10))?;
            tx.next_hint(posts[2], ana, 0, 3, at(11))?;
            tx.next_hint(posts[2], anna, 0, 3, at(12))?;
            for (member, text) in [(ana, "one"), (anna, "two"), (kim, "three")] {
                let line = tx.insert_talk(group, member, text, at(20))?;
                if member == kim {
                    tx.set_talk_gone(line, Some((anna, at(21))))?;
                }
            }
            tx.add_identity(group, anna, "laptop", at(2))?;
            tx.set_coach(anna, true)?;
            tx.insert_deed(&NewDeed {
                group_id: group,
                by_id: anna,
                deed: Deed::Hide,
                about_id: Some(anna),
                note: String::new(),
                done_at: at(3),
            })?;
            Ok((ana, anna, kim, posts))
        });
        let shared = f.read(move |db| db.shared_posts(ana, anna));
        let post = posts[0];
        let first = |member| f.read(move |db| db.replies_of(post, member))[0].reply.id;
        let (of_ana, of_anna) = (first(ana), first(anna));
        assert_eq!(
            shared
                .iter()
                .map(|s| (s.post_id, s.gave_up))
                .collect::<Vec<_>>(),
            [(posts[0], Some((at(7), of_ana))), (posts[2], None)]
        );
        f.write(move |tx| {
            tx.set_language(anna, Some("de"))?;
            tx.set_client_language(ana, "en")?;
            tx.set_client_language(anna, "es")
        });
        let before = f.read(move |db| Ok((db.kept_of(ana)?, db.kept_of(anna)?, db.kept_of(kim)?)));
        let (one, two, other) = (before.0.unwrap(), before.1.unwrap(), before.2.unwrap());
        f.write(move |tx| tx.merge_members(ana, anna, at(30)));
        let after = f.read(move |db| db.kept_of(ana)).unwrap();
        assert_eq!(after.replies.len(), one.replies.len() + two.replies.len());
        let texts: Vec<_> = after
            .replies
            .iter()
            .map(|r| r.reply.text.as_str())
            .collect();
        assert_eq!(texts, ["r0", "r1", "r2"]);
        assert!(
            after
                .replies
                .iter()
                .all(|r| r.verdicts.len() == 1 && r.coach_words.is_some())
        );
        assert_eq!(after.talk.len(), 2);
        // Step 1 of the first post was taken by both: once, at the earlier moment.
        let hints: Vec<_> = after
            .hints
            .iter()
            .map(|h| (h.number, h.step, h.given_at))
            .collect();
        assert_eq!(hints, [(1, 1, at(8)), (1, 2, at(10)), (3, 1, at(11))]);
        // All of them were taken after the replies of both.
        let hints = f.read(move |db| db.hints(post, ana));
        assert!(
            hints.iter().all(|hint| hint.after_reply == of_anna),
            "{hints:?}"
        );
        // What only one of them worked on stands as it was; the rest is settled by the caller.
        assert_eq!(after.attempts.len(), 1);
        assert_eq!(after.attempts[0].attempt.post_id, posts[1]);
        assert_eq!(after.attempts[0].attempt.points, Points::of(1.0));
        assert_eq!((after.coach, after.joined_at), (true, at(1)));
        assert_eq!(after.chosen_language.as_deref(), Some("de"));
        assert_eq!(after.client_language.as_deref(), Some("en"));
        assert_eq!(after.deeds.len(), 1);
        assert_eq!(after.devices, [at(2), at(30)]);
        assert!(f.read(move |db| db.member(anna)).is_none());
        for id in ["phone", "tablet", "laptop"] {
            let found = f.read(move |db| db.member_by_user(group, id)).unwrap();
            assert_eq!(found.id, ana, "{id}");
        }
        let mut kept = f.read(move |db| db.kept_of(kim)).unwrap();
        let hider = kept.talk[0].gone.clone().unwrap();
        assert_eq!((hider.by_id, hider.by.as_deref()), (Some(ana), Some("Ana")));
        kept.talk = other.talk.clone();
        assert_eq!(kept, other, "nobody else is touched");
    }
}
