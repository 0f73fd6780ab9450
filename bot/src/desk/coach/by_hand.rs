//! The coach's hand: answering what the bot could not judge, and overruling what it did. The attempt is
//! worked out again and the leaderboard follows; the member is told.

use sealed_move_store::{Content, Deed, NewVerdict, PostState};
use serde::Serialize;

use super::CoachDesk;
use crate::chess::fact::Why;
use crate::desk::{
    ErrandKind, Person, Place, Points, PostId, ReplyId, ReplyRow, Settled, Verdict, VerdictSheet,
    answers::{reply_of, settled},
    attempt::{self, decided},
    convert,
    deeds::{DeedNote, did},
    error::{Done, bad_request},
    groups::place_of,
    handle::{coached, coaching, post_of},
    ledger::Left,
    refusal::Refusal,
    replies::{Asks, kept_reply, line_before, over, rows},
    said::{Said, kept},
    telling::{self, Told},
    text, tongue,
};

/// How many posts back open questions are looked for.
const POSTS_BACK: usize = 30;

/// What a coach gives a reply, besides points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Given {
    /// A verdict, to a reply to a problem.
    Verdict(Verdict),
    /// Nothing: an answer to a question has points alone.
    Mark,
}

/// The same, fit for what the reply answers.
#[derive(Clone, Copy)]
enum Ruled {
    Judged(Verdict),
    Marked,
}

impl Ruled {
    fn kept(self) -> sealed_move_store::Verdict {
        match self {
            Self::Judged(verdict) => convert::verdict(verdict),
            Self::Marked => sealed_move_store::Verdict::Marked,
        }
    }

    fn told(self, number: Option<i64>) -> Told {
        match self {
            Self::Judged(verdict) => telling::coach_looked(number, verdict),
            Self::Marked => Told::CoachMarked { number },
        }
    }
}

/// A reply that waits for the coach.
#[derive(Clone, Debug, Serialize)]
pub struct HomeworkRow {
    /// Id of the post.
    pub post: PostId,
    /// Its number.
    pub number: i64,
    /// What was asked, where it is a question; else empty.
    pub asked: String,
    /// The reply.
    pub reply: ReplyRow,
}

impl CoachDesk<'_> {
    /// Gives an answer to a question the coach's mark: points and words to its member, which may be
    /// empty. An earlier mark gives way. Coaches only.
    ///
    /// # Errors
    /// When the reply is to a problem, which is judged.
    pub async fn mark_answer(
        self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        points: Points,
        words: &str,
    ) -> Done<()> {
        self.rule(place, coach, reply, Given::Mark, points, words)
            .await
    }

    /// Replies that wait for the coach: answers to questions, of which each member's last one counts, replies
    /// to positions that only the coach can judge, and those that the bot could not read or tell apart, where
    /// the member has not gone on since. The oldest first, of the last thirty posts. Coaches only.
    pub async fn homework(self, place: &Place, coach: &Person) -> Done<Vec<HomeworkRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let language = tongue::of_person(db, &group, &coach)?;
                let mut waiting = Vec::new();
                for post in db.latest_posts(group.id, POSTS_BACK)?.into_iter().rev() {
                    let (question, asked) = match &post.content {
                        Content::Problem { .. } => (false, ""),
                        Content::Question { asked, .. } => (true, asked.words.as_str()),
                        Content::Words(_) => continue,
                    };
                    let replies = db.replies_to(post.id)?;
                    let mut listed = rows(db, &language, &post, replies.clone())?.into_iter();
                    for (at, reply) in replies.iter().enumerate() {
                        let late = reply.reply.received_at >= post.closes_at
                            && post.state != PostState::Intended;
                        let open = match &reply.verdict {
                            _ if reply.words.is_some() => false,
                            None if question => {
                                let answered_again = replies.iter().skip(at + 1).any(|other| {
                                    other.reply.member_id == reply.reply.member_id
                                        && other.reply.received_at < post.closes_at
                                });
                                !late && !answered_again
                            }
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
                                asked: asked.to_owned(),
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
        self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        verdict: Verdict,
        points: Points,
        words: &str,
    ) -> Done<()> {
        let (at, by) = (place.clone(), coach.clone());
        let settled = self
            .desk
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

    /// Gives a reply to a problem the coach's verdict, with `words` to the member (may be empty). The points
    /// stand as given: nothing is taken off for tries and hints. Coaches only.
    pub async fn judge_by_hand(
        self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        verdict: Verdict,
        points: Points,
        words: &str,
    ) -> Done<()> {
        let given = Given::Verdict(verdict);
        self.rule(place, coach, reply, given, points, words).await
    }

    /// Writes down what a coach gives a reply, and tells its member.
    async fn rule(
        self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        given: Given,
        points: Points,
        words: &str,
    ) -> Done<()> {
        let (words, cut) = text::body(words, 1_000);
        if cut {
            return bad_request(Refusal::WordsToMemberTooLong {
                most: 1_000_usize.into(),
            });
        }
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let own = self.desk.inner.errands.own.clone();
        let (user, text, place, sheet, word) = self
            .desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &at, &by)?;
                let reply = kept_reply(tx, reply_of(tx, &group, reply)?)?;
                let verdict = match (&reply.asks, given) {
                    (Asks::Problem(_), Given::Verdict(verdict)) => Ruled::Judged(verdict),
                    (Asks::Question, Given::Mark) => Ruled::Marked,
                    (Asks::Question, Given::Verdict(_)) => {
                        return bad_request(Refusal::MarkedNotJudged);
                    }
                    (Asks::Problem(_), Given::Mark) => {
                        return bad_request(Refusal::JudgedNotMarked);
                    }
                };
                let former = reply.verdict();
                let before = line_before(&reply.replies, Some(reply.reply.id));
                tx.insert_verdict(&NewVerdict {
                    reply_id: reply.reply.id,
                    verdict: verdict.kept(),
                    points,
                    moves: former.map(|f| f.moves.clone()).unwrap_or_default(),
                    refutation: match verdict {
                        Ruled::Judged(Verdict::Wrong) => {
                            former.map(|f| f.refutation.clone()).unwrap_or_default()
                        }
                        _ => Vec::new(),
                    },
                    // The bot's defence stays on the board where there was one.
                    line: match (verdict, former) {
                        (Ruled::Judged(Verdict::Solved | Verdict::OnTheWay), Some(former))
                            if !former.line.is_empty() =>
                        {
                            former.line.clone()
                        }
                        _ => before,
                    },
                    facts: kept(&[verdict.told(None)], &Why::default()),
                    words: words.clone(),
                    wrong_first: match verdict {
                        Ruled::Judged(Verdict::Wrong) => former.and_then(|f| f.wrong_first.clone()),
                        _ => None,
                    },
                    by_coach: true,
                    given_at: now,
                })?;
                let member = reply.reply.member_id;
                let work = attempt::settle(tx, &reply.post, member)?;
                let note = match verdict {
                    Ruled::Judged(verdict) => DeedNote::NoteVerdict {
                        number: reply.post.number,
                        verdict,
                    },
                    Ruled::Marked => DeedNote::NoteMark {
                        number: reply.post.number,
                        points: points.into(),
                    },
                };
                let note = note.to_keep();
                did(tx, &group, &by, Deed::Judge, Some(member), &note, now)?;
                let user = tx.member(member)?.map(|member| member.chat_user);
                let sheet = VerdictSheet {
                    reply: reply.reply.id,
                    post: reply.post.id,
                    outcome: convert::kept_verdict(verdict.kept()),
                    said: telling::by_coach(
                        Said::new(&reply.language).and(verdict.told(Some(reply.post.number))),
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
            self.desk.inner.errands.tell(Left {
                word,
                ..Left::new(place, kind)
            });
        }
        Ok(())
    }

    /// Replies to a post with their verdicts, in the order they came. Coaches only.
    pub async fn replies(self, place: &Place, coach: &Person, post: PostId) -> Done<Vec<ReplyRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let post = post_of(db, &group, post)?;
                rows(
                    db,
                    &tongue::of_person(db, &group, &coach)?,
                    &post,
                    db.replies_to(post.id)?,
                )
            })
            .await
    }
}
