//! A member's reply: written down before anything else, then judged, and the verdict kept before it is
//! shown. And what came of it, to be read again.

use sealed_move_store::{NewReply, Tx, Via};

use super::MemberDesk;
use crate::desk::{
    Came, Person, Place, PostId, ReplyId, ReplyRow, VerdictSheet, attempt,
    error::{Done, bad_request, not_found},
    handle::{group_at, member, post_of},
    posting::received,
    refusal::{Refusal, Removed},
    replies::{Arrived, Case, asks, kept_at, kept_reply, key, rows},
    text::{self, LONGEST_REPLY},
    tongue,
};

impl MemberDesk<'_> {
    /// An explicit answer to a post. `source` is the chat's id of the message or interaction: the same
    /// source twice counts once. Somebody new becomes a member.
    ///
    /// # Errors
    /// When the post is not this group's, nothing is written, or the source is somebody else's.
    pub async fn answer(
        self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        text: &str,
    ) -> Done<VerdictSheet> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        if text.is_empty() {
            return bad_request(self.desk.kind(place, post).await?.nothing_written());
        }
        self.desk.rounds().earlier_first(post, &person.user).await?;
        let _turn = self.desk.inner.turns.take(post, &person.user).await;
        let kept = self
            .write_down(place, person, post, source, (text, cut))
            .await?;
        self.desk.verdict_on(kept).await
    }

    /// A message among others that may answer a certain post: judged when it plainly does, `None` where it
    /// is talk. Talk is not kept.
    pub(super) async fn hear_in(
        self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        text: &str,
    ) -> Done<Option<Came>> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        self.desk.rounds().earlier_first(post, &person.user).await?;
        let _turn = self.desk.inner.turns.take(post, &person.user).await;
        // What was cut is longer than any solution, and so no answer.
        let text = if cut { String::new() } else { text };
        Ok(
            match self.desk.arrive(place, person, post, source, text).await? {
                Arrived::Known(kept) => {
                    let sheet = self.desk.verdict_on(*kept).await?;
                    Some(Came::Again(Box::new(sheet)))
                }
                Arrived::Talk => None,
                Arrived::New(arrival) => {
                    let sheet = self.desk.judge_arrival(*arrival).await?;
                    sheet.map(|sheet| Came::Answer(Box::new(sheet)))
                }
            },
        )
    }

    /// A member's verdict once more, as when a page is loaded again.
    pub async fn verdict(
        self,
        place: &Place,
        person: &Person,
        reply: ReplyId,
    ) -> Done<VerdictSheet> {
        let (place, user) = (place.clone(), person.user.clone());
        let kept = self
            .desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let member = db.member_by_user(group.id, &user)?;
                match (member, db.reply(reply)?) {
                    (Some(member), Some(reply)) if reply.member_id == member.id => {
                        kept_reply(db, reply)
                    }
                    _ => not_found(Refusal::NoReplyOfYours),
                }
            })
            .await?;
        self.desk.verdict_on(kept).await
    }

    /// One member's own replies to a post with their verdicts, in the order they came.
    pub async fn my_replies(
        self,
        place: &Place,
        person: &Person,
        post: PostId,
    ) -> Done<Vec<ReplyRow>> {
        let (place, by) = (place.clone(), person.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let post = post_of(db, &group, post)?;
                let Some(member) = db.member_by_user(group.id, &by.user)? else {
                    return Ok(Vec::new());
                };
                rows(
                    db,
                    &tongue::of_person(db, &group, &by)?,
                    &post,
                    db.replies_of(post.id, member.id)?,
                )
            })
            .await
    }

    /// Writes a reply down, once for each source; `cut` where more of it was sent than is kept.
    async fn write_down(
        self,
        place: &Place,
        person: &Person,
        post: PostId,
        source: &str,
        (text, cut): (String, bool),
    ) -> Done<Case> {
        let now = self.desk.now();
        let key = key(place, source);
        let (place, person) = (place.clone(), person.clone());
        let own = self.desk.inner.errands.own.clone();
        self.desk
            .write(move |tx: &Tx<'_>| {
                let group = group_at(tx, &place)?;
                let post = post_of(tx, &group, post)?;
                let asks = asks(tx, &post)?;
                let member = member(tx, &group, &person, now)?;
                let inserted = tx.insert_reply(&NewReply {
                    post_id: post.id,
                    member_id: member,
                    source: Some(key),
                    via: Via::Answer,
                    text,
                    received_at: received(&post, now),
                })?;
                let Some(reply) = tx.reply(inserted.id)? else {
                    return not_found(Refusal::RemovedMeanwhile {
                        what: Removed::Reply,
                    });
                };
                if reply.member_id != member || reply.post_id != post.id {
                    return bad_request(Refusal::TakenAlready);
                }
                if inserted.new {
                    own.owe(tx, &group, reply.id, now)?;
                    if !asks.judged_by_the_bot() {
                        // Whoever answers takes part, whenever the coach comes to read it.
                        attempt::settle(tx, &post, member)?;
                    }
                }
                Ok(Case {
                    cut: cut && inserted.new,
                    ..kept_at(tx, post, asks, reply)?
                })
            })
            .await
    }
}
