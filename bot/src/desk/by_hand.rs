//! The coach's hand: answering what the bot could not judge, and overruling what it did. The attempt is
//! worked out again and the leaderboard follows; the member is told.

use sealed_move_store::{Deed, NewVerdict, PostState};
use serde::Serialize;

use crate::chess::fact::Why;

use super::{
    Desk, ErrandKind, Person, Place, ReplyRow, Settled, Verdict, VerdictSheet,
    answers::reply_of,
    attempt::{self, decided},
    convert,
    deeds::did,
    errands::Left,
    error::{Done, bad_request},
    groups::place_of,
    handle::{coached, coaching},
    refusal::Refusal,
    replies::{kept_reply, line_before, over, rows, settled},
    said::{Said, kept},
    telling, text, tongue,
};

/// How many posts back open questions are looked for.
const POSTS_BACK: usize = 30;

/// A reply that waits for the coach.
#[derive(Clone, Debug, Serialize)]
pub struct HomeworkRow {
    /// Id of the post.
    pub post: i64,
    /// Its number.
    pub number: i64,
    /// The reply.
    pub reply: ReplyRow,
}

impl Desk {
    /// Replies that wait for the coach: those to positions that only the coach can judge, and those
    /// that the bot could not read or tell apart, where the member has not gone on since. The oldest
    /// first, of the last thirty posts. Coaches only.
    pub async fn homework(&self, place: &Place, coach: &Person) -> Done<Vec<HomeworkRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.read(move |db| {
            let group = coached(db, &place, &coach)?;
            let language = tongue::of_person(db, &group, &coach)?;
            let mut waiting = Vec::new();
            for post in db.latest_posts(group.id, POSTS_BACK)?.into_iter().rev() {
                let replies = db.replies_to(post.id)?;
                let mut listed = rows(db, &language, &post, replies.clone())?.into_iter();
                for (at, reply) in replies.iter().enumerate() {
                    let late = reply.reply.received_at >= post.closes_at
                        && post.state != PostState::Intended;
                    let open = match &reply.verdict {
                        _ if reply.words.is_some() => false,
                        None => !late,
                        Some(verdict) => {
                            !verdict.by_coach && !decided(verdict.verdict) && {
                                let mut later = replies.iter().skip(at + 1);
                                !later.any(|other| {
                                    other.reply.member_id == reply.reply.member_id
                                        && other
                                            .verdict
                                            .as_ref()
                                            .is_some_and(|v| decided(v.verdict))
                                })
                            }
                        }
                    };
                    let Some(listed) = listed.next() else { break };
                    if open {
                        waiting.push(HomeworkRow {
                            post: post.id,
                            number: post.number,
                            reply: listed,
                        });
                    }
                }
            }
            Ok(waiting)
        })
        .await
    }

    /// Overrules the verdict that decided a reply, with `words` to the member (may be empty); the
    /// leaderboard follows. Coaches only.
    ///
    /// # Errors
    /// When no verdict has decided it: then there is nothing to overrule, and it is judged by hand.
    pub async fn overrule(
        &self,
        place: &Place,
        coach: &Person,
        reply: i64,
        verdict: Verdict,
        points: f64,
        words: &str,
    ) -> Done<()> {
        let (at, by) = (place.clone(), coach.clone());
        let settled = self
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let reply = reply_of(db, &group, reply)?;
                let replies = db.replies_of(reply.post_id, reply.member_id)?;
                Ok(replies
                    .iter()
                    .find(|of| of.reply.id == reply.id)
                    .map(settled))
            })
            .await?;
        if settled != Some(Settled::Judged) {
            return bad_request(Refusal::NothingToOverrule);
        }
        self.judge_by_hand(place, coach, reply, verdict, points, words)
            .await
    }

    /// Gives a reply the coach's verdict, with `words` to the member (may be empty). The points, 0 to 5,
    /// stand as given: nothing is taken off for tries and hints. Coaches only.
    pub async fn judge_by_hand(
        &self,
        place: &Place,
        coach: &Person,
        reply: i64,
        verdict: Verdict,
        points: f64,
        words: &str,
    ) -> Done<()> {
        if !(0.0..=5.0).contains(&points) {
            return bad_request(Refusal::PointsRange);
        }
        let (words, cut) = text::body(words, 1_000);
        if cut {
            return bad_request(Refusal::WordsToMemberTooLong { most: 1_000.into() });
        }
        let now = self.now();
        let (at, by) = (place.clone(), coach.clone());
        let own = self.inner.errands.own.clone();
        let (user, text, place, sheet, word) = self
            .write(move |tx| {
                let (group, by) = coaching(tx, &at, &by)?;
                let reply = kept_reply(tx, reply_of(tx, &group, reply)?)?;
                let former = reply.verdict();
                let before = line_before(&reply.replies, Some(reply.reply.id));
                tx.insert_verdict(&NewVerdict {
                    reply_id: reply.reply.id,
                    verdict: convert::verdict(verdict),
                    points,
                    moves: former.map(|f| f.moves.clone()).unwrap_or_default(),
                    refutation: match verdict {
                        Verdict::Wrong => former.map(|f| f.refutation.clone()).unwrap_or_default(),
                        _ => Vec::new(),
                    },
                    // The bot's defence stays on the board where there was one.
                    line: match (verdict, former) {
                        (Verdict::Solved | Verdict::OnTheWay, Some(former))
                            if !former.line.is_empty() =>
                        {
                            former.line.clone()
                        }
                        _ => before,
                    },
                    facts: kept(&[telling::coach_looked(None, verdict)], &Why::default()),
                    words: words.clone(),
                    wrong_first: match verdict {
                        Verdict::Wrong => former.and_then(|f| f.wrong_first.clone()),
                        _ => None,
                    },
                    by_coach: true,
                    given_at: now,
                })?;
                let member = reply.reply.member_id;
                let work = attempt::settle(tx, &reply.post, member)?;
                let note = format!(
                    "position {}: {}",
                    reply.post.number,
                    convert::verdict(verdict)
                );
                did(tx, &group, &by, Deed::Judge, Some(member), &note, now)?;
                let user = tx.member(member)?.map(|member| member.chat_user);
                let sheet = VerdictSheet {
                    reply: reply.reply.id,
                    post: reply.post.id,
                    verdict,
                    said: telling::by_coach(
                        Said::new(&reply.language)
                            .and(telling::coach_looked(Some(reply.post.number), verdict)),
                        &words,
                        work.points(),
                    ),
                    picture: None,
                    your_move: false,
                    over: over(work.state()),
                    hint_label: Said::default(),
                    points: work.points(),
                    readings: Vec::new(),
                };
                let word = own.owe(tx, &group, reply.reply.id, now)?;
                Ok((user, reply.reply.text, place_of(&group), sheet, word))
            })
            .await?;
        if let Some(user) = user {
            let sheet = Box::new(sheet);
            let kind = ErrandKind::TellMember { user, text, sheet };
            self.inner.errands.tell(Left {
                word,
                ..Left::new(place, kind)
            });
        }
        Ok(())
    }
}
