//! A member's own answers to questions: what the coach made of each, and the leave to show one to the group.

use sealed_move_store::{Content, Db, Group, Leave, Post};
use serde::Serialize;

use super::{MemberDesk, OwnAnswer};
use crate::desk::{
    ExampleRow, LanguageTag, MemberId, Outcome, Person, Place, PostId, ReplyId, Settled,
    error::{Done, not_found},
    examples::{asked_for, seen},
    handle::{group_at, post_of},
    posting::takes_replies,
    refusal::Refusal,
    replies::rows,
    said::Said,
    telling::Told,
    tongue,
};

/// How many posts back own answers are looked for.
const POSTS_BACK: usize = 60;

/// A question that a member answered.
#[derive(Clone)]
pub struct OwnHomework {
    /// The post.
    pub post: PostId,
    /// Its number.
    pub number: i64,
    /// What was asked.
    pub asked: String,
    /// The member's answer.
    pub own: OwnAnswer,
}

/// An answer that a coach would show, as its writer sees it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct OwnExample {
    /// The answer.
    pub reply: ReplyId,
    /// What they wrote.
    pub text: String,
    /// The coach's words beside it, and the leave.
    #[serde(flatten)]
    pub example: ExampleRow,
}

impl MemberDesk<'_> {
    /// This member's answer to a question, with what the coach made of it.
    ///
    /// # Errors
    /// When there is no such post.
    pub async fn own_answer(self, place: &Place, person: &Person, post: PostId) -> Done<OwnAnswer> {
        let now = self.desk.now();
        let (place, by) = (place.clone(), person.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let language = tongue::of_person(db, &group, &by)?;
                let post = post_of(db, &group, post)?;
                let member = db.member_by_user(group.id, &by.user)?;
                let live = takes_replies(&post, now);
                own_answer(db, &language, &post, member.map(|member| member.id), live)
            })
            .await
    }

    /// The questions that this member answered, the latest first, with their answers.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn my_homework(self, place: &Place, person: &Person) -> Done<Vec<OwnHomework>> {
        let now = self.desk.now();
        let (place, by) = (place.clone(), person.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let language = tongue::of_person(db, &group, &by)?;
                let Some(member) = db.member_by_user(group.id, &by.user)? else {
                    return Ok(Vec::new());
                };
                let mut all = Vec::new();
                for post in db.latest_posts(group.id, POSTS_BACK)? {
                    let Content::Question { asked, .. } = &post.content else {
                        continue;
                    };
                    let live = takes_replies(&post, now);
                    let own = own_answer(db, &language, &post, Some(member.id), live)?;
                    if own.reply.is_some() {
                        all.push(OwnHomework {
                            post: post.id,
                            number: post.number,
                            asked: asked.words.clone(),
                            own,
                        });
                    }
                }
                Ok(all)
            })
            .await
    }

    /// Keeps what this member says to their answer's being shown to the group; they may change it at any time.
    ///
    /// # Errors
    /// When it is not theirs, or no coach has asked for it.
    pub async fn give_leave(
        self,
        place: &Place,
        person: &Person,
        reply: ReplyId,
        leave: Leave,
    ) -> Done<OwnExample> {
        let now = self.desk.now();
        let (place, user) = (place.clone(), person.user.clone());
        let kept = self
            .desk
            .write(move |tx| {
                let group = group_at(tx, &place)?;
                let (reply, example) = asked_of(tx, &group, &user, reply)?;
                if example.leave != Some(leave) {
                    tx.set_leave(reply.id, leave, now)?;
                }
                Ok(OwnExample {
                    reply: reply.id,
                    text: reply.text,
                    example: ExampleRow {
                        words: example.words,
                        leave: Some(leave),
                    },
                })
            })
            .await?;
        self.desk.inner.errands.wake.notify_waiters();
        Ok(kept)
    }
}

/// A person's own answer that a coach would show. Of others' nothing is said, not even whether there is one.
fn asked_of(
    db: &Db<'_>,
    group: &Group,
    user: &str,
    reply: ReplyId,
) -> Done<(sealed_move_store::Reply, sealed_move_store::Example)> {
    let member = db.member_by_user(group.id, user)?;
    match (member, asked_for(db, group, reply)) {
        (Some(member), Ok((reply, example))) if reply.member_id == member.id => {
            Ok((reply, example))
        }
        _ => not_found(Refusal::NobodyAsksToShow),
    }
}

fn own_answer(
    db: &Db<'_>,
    language: &LanguageTag,
    post: &Post,
    member: Option<MemberId>,
    live: bool,
) -> Done<OwnAnswer> {
    let replies = match member {
        Some(member) => db.replies_of(post.id, member)?,
        None => Vec::new(),
    };
    let mut rows = rows(db, language, post, replies)?;
    let examples = rows.iter().filter_map(|row| {
        Some(OwnExample {
            reply: row.reply,
            text: row.text.clone(),
            example: row.example.clone()?,
        })
    });
    let examples = examples.collect();
    let last = rows.pop();
    let others = match &last {
        Some(_) => seen(db, post)?,
        None => Vec::new(),
    };
    Ok(match last {
        Some(last) => OwnAnswer {
            reply: Some(last.reply),
            waiting: last.settled == Settled::Unjudged,
            marked: (last.verdict == Some(Outcome::Marked)).then_some(last.points),
            answer: last.text,
            said: match last.said.is_empty() {
                true => Said::new(language).and(Told::CoachWillRead),
                false => last.said,
            },
            words: last.coach_words.unwrap_or_default(),
            earlier: rows.into_iter().map(|row| row.text).collect(),
            examples,
            others: others
                .into_iter()
                .filter(|other| other.reply != last.reply)
                .collect(),
            live,
        },
        None => OwnAnswer {
            reply: None,
            answer: String::new(),
            said: Said::default(),
            words: String::new(),
            waiting: false,
            marked: None,
            earlier: Vec::new(),
            examples,
            others,
            live,
        },
    })
}
